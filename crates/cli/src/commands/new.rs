//! `fairwake new`: asks the call's questions and writes a job file.

use std::io;
use std::path::PathBuf;

use job::Job;
use serde::Serialize;
use toml_edit::Value;

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, NewArgs};
use crate::asking::{Said, place};
use crate::failure::{Failure, shown};
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::questions::{self, PLACES, Place};
use crate::{answers, asking, save};

/// Answer of `new`.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Recorded {
    /// The file written.
    pub file: String,
    /// What is known, in the order asked.
    pub known: Vec<KnownAnswer>,
    /// What is open, in the order asked.
    pub open: Vec<OpenQuestion>,
    /// Whether `judge` can work with it.
    pub enough: bool,
    /// What `judge` cannot do without.
    pub missing: Vec<OpenQuestion>,
    /// The next command.
    pub next: String,
}

/// An answer.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KnownAnswer {
    /// Where it stands in the job file.
    pub key: String,
    /// As said.
    pub said: String,
    /// Half of the 80 % band over the middle, %; null for what is not a quantity.
    pub spread: Option<f64>,
    /// Where it comes from, in the job file's word; null when nobody said.
    pub source: Option<&'static str>,
}

/// An open question.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OpenQuestion {
    /// Where the answer would stand in the job file.
    pub key: String,
    /// What is lost while it is open; may be empty.
    pub why: String,
}

impl OpenQuestion {
    /// What a judgement lacks.
    pub fn of(lack: &counsel::Lack) -> Vec<OpenQuestion> {
        let open = |m: &counsel::Missing| OpenQuestion { key: m.key.to_owned(), why: format!("{}; {}", m.why, m.how) };
        lack.missing.iter().map(open).collect()
    }
}

pub fn run(args: &NewArgs, common: &Common) -> Result<Outcome, Failure> {
    if args.job.exists() && !args.force {
        return Err(Failure::Exists(args.job.clone()));
    }
    let said = asking::all(&mut io::stdin().lock(), &mut anstream::stderr())?;
    let file = laid_out(&said);
    // Every answer was read alone; together they may still contradict each other, which `judge` would refuse.
    let lay_out = |problems: &[job::Problem]| job::render(problems, &shown(&args.job), &file, false);
    let read = Job::read(&file).map_err(|problems| Failure::Job(lay_out(&problems)))?;
    if args.force {
        save::replacing(&args.job, &file)?
    } else {
        save::new(&args.job, &file)?
    }
    let doubts = if read.doubts.is_empty() { String::new() } else { lay_out(&read.doubts) };
    let recorded = recorded(args.job.clone(), &said, &read.job, common);
    Ok(Outcome { report: Report::New(recorded), text: Box::new(text), doubts, reached: false })
}

/// The job file: what was said, and what is open as comments to fill in.
fn laid_out(said: &Said) -> String {
    let mut file = String::from("# Written by `fairwake new`. Lines that begin with # are open questions.\n");
    for (at, place) in PLACES.iter().enumerate() {
        let questions = || questions::all().filter(|question| question.place == *place);
        let reading = matches!(place, Place::FullThrottle | Place::Cruise);
        if reading && !questions().any(|question| said.contains_key(&(at, question.key))) {
            continue;
        }
        if at > 0 {
            file.push('\n');
        }
        file.push_str(&place.opens());
        for question in questions() {
            match said.get(&(at, question.key)) {
                Some(value) => file.push_str(&format!("{} = {}\n", question.key, value.to_string().trim())),
                None => file.push_str(&format!("# {} = \"\"    # {}\n", question.key, question.ask)),
            }
        }
    }
    file
}

fn recorded(file: PathBuf, said: &Said, job: &Job, common: &Common) -> Recorded {
    let mut known = Vec::new();
    let mut open = Vec::new();
    for question in questions::all() {
        let key = question.place.names(question.key);
        match said.get(&(place(question.place), question.key)) {
            Some(value) => {
                let quantity = questions::quantity(job, question);
                known.push(KnownAnswer {
                    key,
                    said: spoken(value),
                    spread: quantity.map(|q| 50.0 * (q.high - q.low) / q.middle).filter(|spread| spread.is_finite()),
                    source: quantity.and_then(|q| q.source).map(job::Word::word),
                });
            }
            None => open.push(OpenQuestion { key, why: question.open.to_owned() }),
        }
    }
    let missing: Vec<OpenQuestion> = match answers::judge(job, &Common { boats: 100, ..*common }) {
        Err(Failure::Lack(lack)) => OpenQuestion::of(&lack),
        _ => Vec::new(),
    };
    let name = shown(&file);
    let quoted = if name.contains([' ', '\'', '"', '$', '&', '(', ')']) {
        format!("'{}'", name.replace('\'', r"'\''"))
    } else {
        name.clone()
    };
    let enough = missing.is_empty();
    let next = if enough {
        format!("fairwake judge {quoted}")
    } else {
        format!("edit {quoted}, then fairwake judge {quoted}")
    };
    Recorded { file: name, known, open, enough, missing, next }
}

/// A value as it was said, without the file's quotes.
fn spoken(value: &Value) -> String {
    match value {
        Value::Array(parts) => parts.iter().map(spoken).collect::<Vec<_>>().join(", "),
        Value::String(text) => text.value().clone(),
        other => other.to_string().trim().to_owned(),
    }
}

fn text(report: &Report, _: &Common) -> String {
    let mut page = Page::new();
    let Report::New(said) = report else { return page.finish() };
    let (known, asked) = (said.known.len(), said.known.len() + said.open.len());
    let can = if said.enough { "Enough to judge." } else { "Not enough to judge yet." };
    page.sentences(&format!("Wrote {}. {known} of {asked} questions answered. {can}", said.file), Ink::Speak);
    let quantities: Vec<Vec<Cell>> = said
        .known
        .iter()
        .filter_map(|known| {
            let spread = known.spread?;
            let spread = format!("± {} %", counsel::phrase::plain(spread, if spread < 10.0 { 1 } else { 2 }));
            let source = known.source.unwrap_or("nobody said how");
            Some(vec![known.key.clone().into(), known.said.clone().into(), spread.into(), source.into()])
        })
        .collect();
    if !quantities.is_empty() {
        page.heading("How well it is known (8 chances in 10)");
        page.table("llrl", &[], &quantities);
    }
    if !said.missing.is_empty() {
        page.heading("It cannot be judged without");
        for open in &said.missing {
            page.item(&format!("{}: {}", open.key, open.why));
        }
    }
    let costly: Vec<Vec<Cell>> = said
        .open
        .iter()
        .filter(|open| !open.why.is_empty() && !said.missing.iter().any(|m| m.key == open.key))
        .map(|open| vec![open.key.clone().into(), open.why.clone().into()])
        .collect();
    if !costly.is_empty() {
        page.heading("Open, and worth finding out");
        page.table("ll", &[], &costly);
    }
    page.gap();
    page.sentences(&format!("Next: {}", said.next), Ink::Speak);
    page.finish()
}
