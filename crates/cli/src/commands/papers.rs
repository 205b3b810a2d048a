//! `fairwake papers`: the documents handed over.

use std::fs;
use std::path::PathBuf;

use papers::{Answers, Kind, Paper, Setting, Size};
use serde::Serialize;

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, PaperSize, PapersArgs};
use crate::commands::choose;
use crate::failure::{Failure, shown};
use crate::ink::Ink;
use crate::page::Page;
use crate::{answers, load, sections};

/// Answer of `fairwake papers`.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Handed {
    /// Title of the job.
    pub title: String,
    /// Fingerprint of the job file, as printed on every paper.
    pub fingerprint: String,
    /// Date of issue, as printed.
    pub date: String,
    /// The files written.
    pub files: Vec<HandedFile>,
    /// Papers that could not be made, and why.
    pub left_out: Vec<HandedLack>,
}

/// A file written.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HandedFile {
    /// Where.
    pub file: String,
    /// What it is.
    pub title: String,
}

/// A paper left out.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HandedLack {
    /// Which, as `--only` names it.
    pub paper: &'static str,
    /// Why.
    pub why: String,
}

/// A file to be written: name, bytes, what it is.
type Ready = (String, Vec<u8>, String);

pub fn run(args: &PapersArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    if args.pdf && !cfg!(feature = "pdf") {
        return Err(Failure::Asked {
            what: "this build of the program cannot write PDF".to_owned(),
            instead: "leave --pdf out and print the HTML, which has its print sheet, or build with \
                      `cargo build --release --features pdf`"
                .to_owned(),
        });
    }
    let loaded = load::job(&args.job, colour)?;
    let job = &loaded.job;
    let mut answers = Answers::gather(job, &loaded.text, &answers::options(common));
    if let Some(number) = args.order {
        answers = ordering(answers, usize::from(number))?;
    }
    let setting = Setting {
        language: args.language.language(),
        size: match args.size {
            PaperSize::A4 => Size::A4,
            PaperSize::Letter => Size::Letter,
        },
        date: args.date.clone().unwrap_or_else(papers::today),
    };
    let only = &args.only;
    let (made, left_out) = papers::papers(&answers, &setting, only);
    let mut ready: Vec<Ready> = Vec::new();
    for paper in &made {
        ready.push((format!("{}.html", paper.file), papers::html::page(paper).into_bytes(), paper.name.clone()));
        if args.pdf {
            ready.push((format!("{}.pdf", paper.file), pdf(paper)?, paper.name.clone()));
        }
    }
    if only.is_empty() || only.contains(&Kind::Record) {
        let text = papers::record(&answers, &setting).map_err(|error| Failure::Stream(error.into()))?;
        ready.push(("record.json".to_owned(), text.into_bytes(), "JSON".to_owned()));
    }
    let files = write(args, ready)?;
    let report = Handed {
        title: job.title.clone(),
        fingerprint: papers::fingerprint(&loaded.text),
        date: setting.date,
        files,
        left_out: left_out.into_iter().map(|lack| HandedLack { paper: lack.kind.word(), why: lack.why }).collect(),
    };
    Ok(Outcome { text: Box::new(text), report: Report::Papers(report), doubts: loaded.doubts, reached: false })
}

/// The order made out for a line of the list that `fairwake choose` prints.
fn ordering(answers: Answers, number: usize) -> Result<Answers, Failure> {
    let listed = answers.choice.as_ref().map(|choice| choose::listed(choice, choose::LISTED)).unwrap_or_default();
    let candidate = number.checked_sub(1).and_then(|at| listed.get(at)).cloned();
    match candidate {
        Some(candidate) => Ok(answers.ordering(&candidate)),
        None => Err(Failure::Asked {
            what: format!("the shortlist has no line {number}"),
            instead: match listed.len() {
                0 => "leave --order out; there is no shortlist for this job yet".to_owned(),
                last => format!("take one of 1 to {last}, as `fairwake choose` prints them"),
            },
        }),
    }
}

/// Writes all files, or none when one is there already.
fn write(args: &PapersArgs, ready: Vec<Ready>) -> Result<Vec<HandedFile>, Failure> {
    let fail = |file: PathBuf| move |cause| Failure::Write { file, cause };
    fs::create_dir_all(&args.output).map_err(fail(args.output.clone()))?;
    let at = |name: &str| args.output.join(name);
    if !args.force
        && let Some(there) = ready.iter().map(|(name, ..)| at(name)).find(|file| file.exists())
    {
        return Err(Failure::Exists(there));
    }
    let mut files = Vec::new();
    for (name, bytes, title) in ready {
        let file = at(&name);
        fs::write(&file, bytes).map_err(fail(file.clone()))?;
        files.push(HandedFile { file: shown(&file), title });
    }
    Ok(files)
}

#[cfg(feature = "pdf")]
fn pdf(paper: &Paper) -> Result<Vec<u8>, Failure> {
    papers::pdf::pdf(paper)
        .map_err(|error| Failure::Asked { what: error.to_string(), instead: "take the HTML beside it".to_owned() })
}

#[cfg(not(feature = "pdf"))]
fn pdf(_: &Paper) -> Result<Vec<u8>, Failure> {
    Ok(Vec::new())
}

pub fn text(report: &Report, _: &Common) -> String {
    let mut page = Page::new();
    let Report::Papers(said) = report else { return page.finish() };
    let headline = match said.files.len() {
        0 => "Nothing was written.".to_owned(),
        1 => format!("One file was written, job {}.", said.fingerprint),
        count => format!("{count} files were written, job {}.", said.fingerprint),
    };
    sections::title(&mut page, &said.title);
    sections::headline(&mut page, &headline);
    for file in &said.files {
        page.hanging(&format!("{}  {}", file.file, file.title), Ink::Plain, "  ", "    ");
    }
    for lack in &said.left_out {
        page.hanging(&format!("left out: {}: {}", lack.paper, lack.why), Ink::Plain, "  ", "    ");
    }
    page.gap();
    page.sentences(sections::SAFETY, Ink::Quiet);
    page.finish()
}
