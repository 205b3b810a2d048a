//! `fairwake explain`: the trade's terms, with a boat's numbers.

use std::path::{Path, PathBuf};

use ::words::Language;
use counsel::explain::Term;
use serde::Serialize;
use workbench::explain::explained;

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, ExplainArgs};
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::Page;
use crate::{answers, load, sections, words};

/// The command line speaks English.
const SPOKEN: Language = Language::English;

/// Answer of `explain`.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Explanation {
    /// Title of the job, where one was named.
    pub title: Option<String>,
    /// The terms: one, or all of them where none was named.
    pub terms: Vec<ExplainedTerm>,
}

/// One term.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ExplainedTerm {
    /// Its name on the command line.
    pub term: &'static str,
    /// Its title.
    pub title: String,
    /// What it is, plainly.
    pub plain: String,
    /// The line on this boat.
    pub on_boat: Option<String>,
    /// What is often said.
    pub often_said: String,
    /// What holds.
    pub what_holds: String,
    /// How sure it is, and by whom.
    pub trust: String,
    /// Methods the numbers rest on, by their names in `fairwake sources`.
    pub methods: Vec<&'static str>,
}

pub fn run(args: &ExplainArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    let named = args.term.as_ref().map(|name| Term::of_name(&name.to_lowercase()).ok_or(name));
    // A file alone in the place of the term: all terms on that boat.
    let (wanted, file) = match (named, &args.job) {
        (Some(Ok(term)), job) => (vec![term], job.clone()),
        (Some(Err(name)), None) if name == "-" || Path::new(name).exists() => {
            (Term::ALL.to_vec(), Some(PathBuf::from(name)))
        }
        (Some(Err(name)), _) => return Err(unknown(name)),
        (None, job) => (Term::ALL.to_vec(), job.clone()),
    };
    let one_term = wanted.len() == 1;
    let loaded = file.as_ref().map(|file| load::job(file, colour)).transpose()?;
    let prepared = loaded.as_ref().map(|l| answers::prepared(&l.job, common)).transpose()?;
    let terms = wanted
        .into_iter()
        .map(|term| {
            let boat = prepared.as_ref().map(|p| p.explain(term));
            let text = explained(SPOKEN, term, boat.as_ref());
            ExplainedTerm {
                term: text.term,
                title: text.title,
                plain: text.plain,
                on_boat: text.on_boat,
                often_said: text.said,
                what_holds: text.holds,
                trust: text.trust,
                methods: text.methods,
            }
        })
        .collect();
    let (title, doubts) = loaded.map_or((None, String::new()), |l| (Some(l.job.title), l.doubts));
    Ok(Outcome {
        report: Report::Explain(Explanation { title, terms }),
        text: if one_term { Box::new(one) } else { Box::new(list) },
        doubts,
        reached: false,
    })
}

fn unknown(name: &str) -> Failure {
    let names: Vec<&str> = Term::ALL.iter().map(|t| t.name()).collect();
    Failure::Asked {
        what: format!("`{name}` is not a term that is explained here"),
        instead: format!("one of {}; or `fairwake explain` for the list", words::list(&names, "and")),
    }
}

fn one(report: &Report, _: &Common) -> String {
    let mut page = Page::new();
    let Report::Explain(said) = report else { return page.finish() };
    sections::title(&mut page, said.title.as_deref().unwrap_or_default());
    for term in &said.terms {
        page.heading(&term.title);
        page.sentences(&term.plain, Ink::Plain);
        let say = |name: &str| ::words::say(SPOKEN, name);
        if let Some(line) = &term.on_boat {
            page.heading(&say("explain-on-boat"));
            page.sentences(line, Ink::Plain);
        }
        page.gap();
        for (name, text) in
            [("explain-said", &term.often_said), ("explain-truth", &term.what_holds), ("explain-trust", &term.trust)]
        {
            let lead = format!("{:<12} ", say(name));
            page.hanging(text, Ink::Plain, &lead, &" ".repeat(13));
        }
        if !term.methods.is_empty() {
            let lead = format!("{:<12} ", say("explain-rests"));
            let text = format!("{} (`fairwake sources NAME`)", term.methods.join(", "));
            page.hanging(&text, Ink::Quiet, &lead, &" ".repeat(13));
        }
        if term.on_boat.is_none() {
            page.gap();
            page.sentences(&say("explain-no-job"), Ink::Quiet);
        }
    }
    page.finish()
}

fn list(report: &Report, _: &Common) -> String {
    let mut page = Page::new();
    let Report::Explain(said) = report else { return page.finish() };
    sections::title(&mut page, said.title.as_deref().unwrap_or_default());
    page.heading(&::words::say(SPOKEN, "explain-list"));
    for term in &said.terms {
        // With a job each line says what the term is on that boat.
        let line = term.on_boat.as_ref().unwrap_or(&term.title);
        page.hanging(line, Ink::Plain, &format!("  {:<12} ", term.term), &" ".repeat(15));
    }
    page.gap();
    page.sentences("`fairwake explain pitch JOB` tells one of them on your boat.", Ink::Quiet);
    page.finish()
}
