//! `fairwake sources`: where each number comes from.

use hydro::source::Method;
use serde::Serialize;

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, SourcesArgs};
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::Page;
use crate::words;

/// Answer of `sources`.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Sources {
    /// The methods, room by room.
    pub methods: Vec<MethodRecord>,
}

/// One method.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MethodRecord {
    /// Stable short name.
    pub name: &'static str,
    /// What it gives, with its unit.
    pub quantity: &'static str,
    /// The formula, or the main relation.
    pub formula: &'static str,
    /// The range it was tested in.
    pub range: &'static str,
    /// Its own error, and how that is known.
    pub error: &'static str,
    /// Author, year, title.
    pub source: &'static str,
    /// How far to trust it.
    pub trust: &'static str,
}

impl From<&Method> for MethodRecord {
    fn from(method: &Method) -> MethodRecord {
        let Method { name, quantity, formula, range, error, source, trust } = *method;
        MethodRecord { name, quantity, formula, range, error, source, trust: trust.text() }
    }
}

impl MethodRecord {
    fn speaks_of(&self, term: &str) -> bool {
        [self.name, self.quantity, self.formula, self.range, self.error, self.source, self.trust]
            .iter()
            .any(|text| text.to_lowercase().contains(term))
    }
}

pub fn run(args: &SourcesArgs) -> Result<Outcome, Failure> {
    let mut methods: Vec<MethodRecord> =
        hydro::source::methods().chain(counsel::methods()).map(MethodRecord::from).collect();
    if let Some(term) = &args.term {
        let lower = term.to_lowercase();
        let (found, others): (Vec<MethodRecord>, Vec<MethodRecord>) =
            methods.into_iter().partition(|m| m.speaks_of(&lower));
        if found.is_empty() {
            let names: Vec<&str> = others.iter().map(|m| m.name).collect();
            return Err(Failure::Asked {
                what: format!("no method speaks of `{term}`"),
                instead: format!("a word from these names, or none for all: {}", words::list(&names, "and")),
            });
        }
        methods = found;
    }
    Ok(Outcome {
        report: Report::Sources(Sources { methods }),
        text: Box::new(text),
        doubts: String::new(),
        reached: false,
    })
}

fn text(report: &Report, _: &Common) -> String {
    let mut page = Page::new();
    let Report::Sources(sources) = report else { return page.finish() };
    let number = words::count(sources.methods.len(), "method", "methods");
    page.sentences(&format!("{number}: what each gives, how, in which range, how well, and who says so."), Ink::Speak);
    for method in &sources.methods {
        page.heading(method.name);
        for (word, says) in [
            ("gives", method.quantity),
            ("formula", method.formula),
            ("range", method.range),
            ("error", method.error),
            ("source", method.source),
            ("trust", method.trust),
        ] {
            page.hanging(says, Ink::Plain, &format!("  {word:<8} "), &" ".repeat(11));
        }
    }
    page.finish()
}
