//! A term of the trade in words, with a boat's numbers where there is one.

use counsel::explain::{OnBoat, Term};
use serde::Serialize;
use words::{Language, Value, number, say, say_with, sentence};

/// A term in words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Explained {
    /// Its name.
    pub term: &'static str,
    /// Its title.
    pub title: String,
    /// What it is, plainly.
    pub plain: String,
    /// The line on the boat asked about.
    pub on_boat: Option<String>,
    /// What is often said.
    pub said: String,
    /// What holds.
    pub holds: String,
    /// How sure it is, and by whom.
    pub trust: String,
    /// Methods the numbers rest on, by their names among the sources.
    pub methods: Vec<&'static str>,
}

/// A term in words.
#[must_use]
pub fn explained(language: Language, term: Term, on_boat: Option<&OnBoat>) -> Explained {
    let part = |part: &str| say(language, &format!("explain-{}-{part}", term.name()));
    Explained {
        term: term.name(),
        title: title(language, term),
        plain: part("plain"),
        on_boat: on_boat.map(|boat| line(language, boat)),
        said: part("wrong"),
        holds: part("right"),
        trust: part("trust"),
        methods: on_boat.map(|boat| boat.methods.clone()).unwrap_or_default(),
    }
}

/// The title of a term.
#[must_use]
pub fn title(language: Language, term: Term) -> String {
    say(language, &format!("explain-{}", term.name()))
}

/// The line on the boat.
#[must_use]
pub fn line(language: Language, boat: &OnBoat) -> String {
    let spoken: Vec<(&str, String)> = boat
        .values
        .iter()
        .map(|v| (v.name, number(language, &sentence(language, &v.text)).replace(" \u{b0}", "\u{b0}")))
        .collect();
    let values: Vec<(&str, Value)> = spoken.iter().map(|(name, text)| (*name, Value::Text(text))).collect();
    say_with(language, &format!("explain-{}-boat-{}", boat.term.name(), boat.case), &values)
}

#[cfg(test)]
mod tests {
    use super::*;
    use counsel::{Options, Prepared};

    #[test]
    fn every_case_of_every_boat_has_its_sentence_with_all_values_filled_in() {
        for name in ["kittiwake", "gannet", "turnstone", "razorbill", "whimbrel", "guillemot", "cormorant"] {
            let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
            let job = job::Job::read(&std::fs::read_to_string(path).expect("a demo")).expect("well formed").job;
            let prepared = Prepared::new(&job, &Options { boats: 200, seed: 1 }).expect("a whole job");
            for term in Term::ALL {
                let boat = prepared.explain(term);
                for language in Language::ALL {
                    let text = explained(language, term, Some(&boat));
                    for said in [&text.title, &text.plain, &text.said, &text.holds, &text.trust] {
                        assert!(!said.starts_with("explain-"), "{name}: {said}");
                    }
                    let line = text.on_boat.expect("a line");
                    assert!(!line.contains("explain-") && !line.contains('{'), "{name}: {line}");
                }
            }
        }
    }
}
