//! Papers in Spanish: what is ours is said in it.

use crate::boats::{example, papers_of};
use papers::html;
use std::collections::BTreeSet;
use words::Language;

const BOATS: [&str; 8] =
    ["kittiwake", "gannet", "razorbill", "turnstone", "guillemot", "cormorant", "whimbrel", "survey/dunlin"];

/// The lines of a page as they are read, without style, source text of the job, and what is between backquotes.
fn lines(page: &str) -> Vec<String> {
    let page = page.split("<pre>").next().unwrap_or_default();
    let mut text = String::new();
    for part in page.split("<style>").flat_map(|part| part.rsplit("</style>").next()) {
        let mut inside = false;
        for c in part.chars() {
            match c {
                '<' => {
                    inside = true;
                    text.push('\n');
                }
                '>' => inside = false,
                c if !inside => text.push(c),
                _ => {}
            }
        }
    }
    let text = text.replace("&quot;", "\"").replace("&amp;", "&").replace(['\u{200b}', '\u{2060}'], "");
    text.lines().map(|line| line.trim().replace('\u{a0}', " ")).filter(|line| !line.is_empty()).collect()
}

fn worded(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !c.is_alphabetic()).filter(|word| word.chars().count() > 1)
}

/// Lines of a Spanish page that stand word for word in the English one and have a verb's worth of English in them.
const ENGLISH: [&str; 22] = [
    "the", "of", "and", "with", "is", "are", "was", "were", "at", "by", "to", "from", "not", "where", "which", "below",
    "above", "this", "that", "for", "has", "than",
];

#[test]
fn no_sentence_is_left_in_english() {
    let mut left: BTreeSet<String> = BTreeSet::new();
    for boat in BOATS {
        let text = example(boat);
        let job = job::Job::read(&text).expect("an example").job;
        let labels = job.readings.iter().filter_map(|r| r.label.clone());
        let capital = labels.clone().map(|label| counsel::phrase::capital(&label));
        let own: Vec<String> = labels.chain(capital).chain([job.title.clone()]).collect();
        for paper in papers_of(&text, Language::Spanish) {
            for line in lines(&html::page(&paper)) {
                // What was written in the job is quoted as it is; so are its keys.
                let ours = own.iter().fold(line.clone(), |line, name| line.replace(name.as_str(), " "));
                let ours: Vec<&str> = ours.split(' ').filter(|word| !word.contains('_')).collect();
                let ours = ours.join(" ");
                // A name shortened in a picture ends in three points.
                let english = !line.ends_with('\u{2026}') && worded(&ours).any(|word| ENGLISH.contains(&word));
                if english && !text.contains(line.trim_matches(|c: char| !c.is_alphanumeric())) {
                    left.insert(format!("{boat} {}: {line}", paper.file));
                }
            }
        }
    }
    let list: Vec<String> = left.into_iter().collect();
    assert!(list.is_empty(), "{} lines:\n{}", list.len(), list.join("\n"));
}

/// Words and numbers alike in both languages.
const ALIKE: [&str; 5] = ["error", "total", "usual", "JSON", "Material"];

#[test]
fn no_word_alone_is_left_in_english() {
    let mut left: BTreeSet<String> = BTreeSet::new();
    for boat in BOATS {
        let text = example(boat);
        let english: BTreeSet<String> =
            papers_of(&text, Language::English).iter().flat_map(|paper| lines(&html::page(paper))).collect();
        for paper in papers_of(&text, Language::Spanish) {
            for line in lines(&html::page(&paper)).into_iter().filter(|line| english.contains(line)) {
                let worded = worded(&line).any(|word| word.chars().count() > 3 && !ALIKE.contains(&word));
                // A size, a maker's name or a title is as the job has it, some of it with a mark put on.
                let bare = line.trim_matches(|c: char| !c.is_alphanumeric());
                if worded && !text.contains(bare) && !text.contains(&bare.to_lowercase()) && !line.ends_with('\u{2026}')
                {
                    left.insert(format!("{boat} {}: {line}", paper.file));
                }
            }
        }
    }
    let list: Vec<String> = left.into_iter().collect();
    assert!(list.is_empty(), "{} lines:\n{}", list.len(), list.join("\n"));
}
