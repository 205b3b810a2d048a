//! Changes by key.

use super::Version;
use job::keys::{self, Key, Shape};
use job::{Document, Job, Problem, Severity};
use serde::{Deserialize, Serialize};

/// One change: the value a page showed, and the one entered. Empty is unknown: the key is taken out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Edit {
    /// Path such as `engine.rated_power` or `reading.0.speed`; a table's path with nothing entered takes the table out.
    pub path: String,
    /// As the page showed it.
    pub was: String,
    /// As entered.
    pub now: String,
}

/// What was entered and not saved, and why.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Left {
    /// Where.
    pub path: String,
    /// As entered.
    pub value: String,
    /// What is wrong.
    pub why: String,
    /// What would be right.
    pub help: Option<String>,
    /// What somebody else wrote there meanwhile.
    pub theirs: Option<String>,
}

/// What came of a save.
#[derive(Clone, Debug)]
pub struct Saved {
    /// The state now.
    pub version: Version,
    /// What was not saved.
    pub left: Vec<Left>,
    /// Whether the file had been changed meanwhile by somebody else.
    pub merged: bool,
}

pub(super) struct Applied {
    pub text: String,
    pub left: Vec<Left>,
    pub merged: bool,
}

/// A value as a field shows it.
#[must_use]
pub fn shown(document: &Document, path: &str) -> String {
    document.get(path).map(|toml| plain(&toml)).unwrap_or_default()
}

/// TOML as people write it in a field: bare text, lists parted by commas.
fn plain(toml: &str) -> String {
    match toml.trim().parse::<toml_edit::Value>() {
        Ok(toml_edit::Value::String(text)) => text.into_value(),
        Ok(toml_edit::Value::Array(list)) => {
            let parts: Vec<String> = list
                .iter()
                .map(|v| v.as_str().map_or_else(|| v.to_string().trim().to_owned(), str::to_owned))
                .collect();
            parts.join(", ")
        }
        _ => toml.trim().to_owned(),
    }
}

/// What a field holds as the job file wants it.
fn written(key: &Key, value: &str) -> String {
    let parts = || value.split(',').map(str::trim).filter(|part| !part.is_empty());
    let list = || {
        let quoted: Vec<String> = parts().map(|part| toml_edit::Value::from(part).to_string()).collect();
        format!("[{}]", quoted.join(", "))
    };
    match key.shape {
        Shape::Texts | Shape::Choices(_) => list(),
        Shape::Runs(_) if parts().count() > 1 => list(),
        Shape::Numbers(_) if !value.starts_with('[') => format!("[{value}]"),
        _ => value.to_owned(),
    }
}

fn refused(edit: &Edit, problem: Option<&Problem>) -> Left {
    Left {
        path: edit.path.clone(),
        value: edit.now.clone(),
        why: problem.map(|p| p.message.clone()).unwrap_or_default(),
        help: problem.and_then(|p| p.help.clone()),
        theirs: None,
    }
}

fn worst(text: &str) -> Option<Problem> {
    Job::read(text).err()?.into_iter().find(|p| p.severity == Severity::Error)
}

/// Makes the changes that can be made. `seen` is the text of the page that asks, where the file is no longer that one;
/// `Some(None)` when nobody knows it any more.
pub(super) fn apply(text: &str, seen: Option<Option<String>>, edits: &[Edit]) -> Applied {
    let merged = seen.is_some();
    let mut left = Vec::new();
    let mut document = match Document::parse(text) {
        Ok(document) => document,
        Err(problems) => {
            left.extend(edits.iter().map(|edit| refused(edit, problems.first())));
            return Applied { text: text.to_owned(), left, merged };
        }
    };
    let seen = seen.map(|seen| seen.and_then(|text| Document::parse(&text).ok()));
    let mut broken = worst(text).is_some();
    for edit in edits {
        let now = edit.now.trim();
        let theirs = shown(&document, &edit.path);
        if theirs == now && !(now.is_empty() && is_table(&edit.path)) {
            continue;
        }
        let moved = seen.as_ref().is_some_and(|seen| !same_place(&document, seen.as_ref(), &edit.path));
        if moved || (theirs != edit.was.trim() && !is_table(&edit.path)) {
            let mut asked = refused(edit, None);
            asked.theirs = Some(theirs);
            left.push(asked);
            continue;
        }
        let mut trial = document.clone();
        let done = if now.is_empty() {
            trial.remove(&edit.path);
            Ok(())
        } else {
            let value = keys::find(&edit.path).map_or_else(|| now.to_owned(), |key| written(key, now));
            trial.set(&edit.path, &value)
        };
        if let Err(problems) = done {
            left.push(refused(edit, problems.first()));
            continue;
        }
        match worst(&trial.to_string()) {
            Some(problem) if !broken => left.push(refused(edit, Some(&problem))),
            worst => {
                broken = worst.is_some();
                document = trial;
            }
        }
    }
    Applied { text: document.to_string(), left, merged }
}

fn is_table(path: &str) -> bool {
    path.rsplit('.').next().is_some_and(|last| last.parse::<usize>().is_ok())
        || keys::find(path).is_some_and(|key| matches!(key.shape, Shape::Table(_)))
}

/// Whether the numbered table of a path is still the one that was seen: what names it has not changed, and none was put in
/// or taken out; else it must be alike in what was read.
fn same_place(now: &Document, seen: Option<&Document>, path: &str) -> bool {
    let parts: Vec<&str> = path.split('.').collect();
    parts.iter().enumerate().filter(|(_, part)| part.parse::<usize>().is_ok()).all(|(at, _)| {
        let Some(seen) = seen else { return false };
        let (list, table) = (parts[..at].join("."), parts[..=at].join("."));
        let alike = |keys: &[&str]| {
            keys.iter().all(|key| {
                let place = format!("{table}.{key}");
                place == path || now.get(&place) == seen.get(&place)
            })
        };
        let kept = length(now, &list) == length(seen, &list);
        alike(&["label", "date", "number"])
            && (kept || alike(&["full_throttle", "engine_speed", "speed", "radius", "pitch"]))
    })
}

/// How many tables a list has.
fn length(document: &Document, list: &str) -> usize {
    let keys = match keys::find(list).map(|key| key.shape) {
        Some(Shape::Tables(keys)) => keys,
        _ => return 0,
    };
    (0..1000).take_while(|n| keys.iter().any(|key| document.get(&format!("{list}.{n}.{}", key.name)).is_some())).count()
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "title = \"Tern\" # hers\n[engine]\nrated_power = \"29 hp\"\n[[reading]]\nlabel = \"a\"\nspeed = \"6 kn\"\n[[reading]]\nlabel = \"b\"\nspeed = \"5 kn\"\n";

    fn edit(path: &str, was: &str, now: &str) -> Edit {
        Edit { path: path.to_owned(), was: was.to_owned(), now: now.to_owned() }
    }

    #[test]
    fn a_change_by_somebody_else_at_another_key_is_merged() {
        let theirs = TEXT.replace("29 hp", "30 hp");
        let applied = apply(&theirs, Some(Some(TEXT.to_owned())), &[edit("boat.kind", "", "sailing")]);
        assert!(applied.left.is_empty() && applied.merged);
        assert!(applied.text.contains("30 hp") && applied.text.contains("sailing") && applied.text.contains("# hers"));
    }

    #[test]
    fn the_same_key_is_asked_about_with_both_values() {
        let theirs = TEXT.replace("29 hp", "30 hp");
        let applied = apply(&theirs, Some(Some(TEXT.to_owned())), &[edit("engine.rated_power", "29 hp", "31 hp")]);
        assert_eq!(applied.text, theirs);
        assert_eq!(applied.left[0].theirs.as_deref(), Some("30 hp"));
        assert_eq!(applied.left[0].value, "31 hp");
    }

    #[test]
    fn a_reading_that_moved_is_not_taken_for_another() {
        let theirs = TEXT.replace("[[reading]]\nlabel = \"a\"\nspeed = \"6 kn\"\n", "");
        let applied = apply(&theirs, Some(Some(TEXT.to_owned())), &[edit("reading.0.notes", "", "flat")]);
        assert_eq!(applied.text, theirs);
        assert_eq!(applied.left.len(), 1);
    }

    #[test]
    fn what_cannot_be_is_left_with_its_reason_and_the_rest_is_saved() {
        let edits = [edit("engine.rated_power", "29 hp", "lots"), edit("reading.0.speed", "6 kn", "6.5 kn, 6.1 kn")];
        let applied = apply(TEXT, None, &edits);
        assert_eq!(applied.left.len(), 1);
        assert!(!applied.left[0].why.is_empty());
        assert!(
            applied.text.contains("29 hp") && applied.text.contains("[\"6.5 kn\", \"6.1 kn\"]"),
            "{}",
            applied.text
        );
        let unknown = apply(&applied.text, None, &[edit("reading.0.speed", "6.5 kn, 6.1 kn", "")]);
        assert!(unknown.left.is_empty() && !unknown.text.contains("6.5"));
    }
}
