//! The boats the papers are tried on.

use counsel::Options;
use papers::{Answers, Kind, Paper, Setting, Size};
use std::collections::BTreeMap;
use std::sync::Mutex;
use words::Language;

/// A small crowd: the layout is tested here, not the judgement.
pub const FEW: Options = Options { boats: 400, seed: 1 };

/// An example's text.
pub fn example(name: &str) -> String {
    let file = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&file).unwrap_or_else(|error| panic!("{file}: {error}"))
}

/// The answers to a job's text, worked out once for all tests.
pub fn answers(text: &str) -> Answers {
    static KNOWN: Mutex<BTreeMap<String, Answers>> = Mutex::new(BTreeMap::new());
    if let Some(known) = KNOWN.lock().expect("no test broke off").get(text) {
        return known.clone();
    }
    let read = job::Job::read(text).unwrap_or_else(|problems| panic!("{}", job::render(&problems, "job", text, false)));
    let answers = Answers::gather(&read.job, text, &FEW);
    KNOWN.lock().expect("no test broke off").insert(text.to_owned(), answers.clone());
    answers
}

/// A fixed setting.
pub fn setting(language: Language) -> Setting {
    Setting { language, size: Size::A4, date: "2026-05-09".to_owned() }
}

/// All papers of a job.
pub fn papers_of(text: &str, language: Language) -> Vec<Paper> {
    papers::papers(&answers(text), &setting(language), &[]).0
}

/// One of them.
pub fn one(made: &[Paper], kind: Kind) -> &Paper {
    made.iter().find(|paper| paper.file == kind.file()).unwrap_or_else(|| panic!("no {}", kind.file()))
}

/// The job of a name that does its worst: script, typesetting markup, right to left, emoji, three hundred letters.
pub fn strange() -> String {
    let name = format!(
        "</title><script>alert(1)</script> #panic(\\\"x\\\") *b* $x^2$ @who #import \\\"a.typ\\\" \u{5d0}\u{5d1}\u{5d2} \u{645}\u{631}\u{643}\u{628} \u{26f5}\u{1f6a4} {}",
        "W".repeat(300)
    );
    let text = example("survey/dunlin");
    let text = text.replace("Dunlin: shakes since the rope in the propeller", &name);
    let text = text.replace("stamp = \"18RH14\"", &format!("stamp = \"{name}\""));
    let text = text.replace("material = \"manganese bronze\"", &format!("material = \"{name}\""));
    let text = text.replace("surveyor = \"yard at Port Merrin, on the bench\"", &format!("surveyor = \"{name}\""));
    text.replace("[engine]\n", &format!("[engine]\nmodel = \"{name}\"\n"))
}

/// A caller who knows next to nothing.
pub const NEXT_TO_NOTHING: &str = "title = \"Pintail: does not go\"\n\n[boat]\nkind = \"sailing\"\n";
