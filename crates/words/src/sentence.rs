//! Sentences that come out of the judgement in English, in another language.
//!
//! `counsel` and `hydro` speak English, with their numbers already in the sentence. A catalogue (`sentences/es.tsv`) holds each
//! sentence with holes (`{}`) where its numbers and names stand, and the same in the other language; what stands in a hole is
//! translated in its turn. A sentence the catalogue does not know is left in English rather than half guessed;
//! [`untranslated`] tells which.

use std::collections::HashMap;
use std::sync::LazyLock;

use crate::{Language, number};

/// The catalogue: one line for one sentence, English, a tab, Spanish. Holes are `{}` in order, or `{1}`, `{2}` where the
/// Spanish changes their order.
const SPANISH: &str = include_str!("../sentences/es.tsv");

/// Holes inside holes inside holes: deeper is a loop, not a sentence.
const DEEPEST: u8 = 6;

/// The sentence in the language wanted; what the catalogue does not know stays English.
#[must_use]
pub fn sentence(language: Language, english: &str) -> String {
    match language {
        Language::English => english.to_owned(),
        Language::Spanish => translated(english, 0).unwrap_or_else(|| english.to_owned()),
    }
}

/// Whether the catalogue has no words for this sentence, so that it would stand in English on the page.
#[must_use]
pub fn untranslated(language: Language, english: &str) -> bool {
    language == Language::Spanish && translated(english, 0).is_none()
}

/// Letters that a sentence must have outside its holes to be recognised by them alone.
const THIN: usize = 9;

/// A sentence with holes: what is fixed around them, and the other language's parts.
struct Template {
    fixed: Vec<&'static str>,
    parts: Vec<Part>,
}

/// A part of the other language's sentence.
enum Part {
    Text(&'static str),
    /// What stood in this hole, translated.
    Hole(usize),
}

struct Catalogue {
    /// Sentences without holes.
    whole: HashMap<&'static str, &'static str>,
    /// Sentences with holes, the most fixed text first: the most particular sentence wins.
    templates: Vec<Template>,
}

static CATALOGUE: LazyLock<Catalogue> = LazyLock::new(|| {
    let mut whole = HashMap::new();
    let mut templates = Vec::new();
    for (english, spanish) in SPANISH.lines().filter_map(|line| line.split_once('\t')) {
        if english.contains("{}") {
            templates.push(Template { fixed: english.split("{}").collect(), parts: parts(spanish) });
        } else {
            whole.insert(english, spanish);
        }
    }
    templates.sort_by_key(|template| std::cmp::Reverse(template.fixed.iter().map(|text| text.len()).sum::<usize>()));
    Catalogue { whole, templates }
});

/// `a {} b {2} c` as its parts.
fn parts(text: &'static str) -> Vec<Part> {
    let mut found = Vec::new();
    let mut rest = text;
    let mut next = 0;
    while let Some((before, after)) = rest.split_once('{') {
        let Some((name, after)) = after.split_once('}') else { break };
        found.push(Part::Text(before));
        found.push(Part::Hole(name.parse::<usize>().map_or(next, |number| number.saturating_sub(1))));
        next += 1;
        rest = after;
    }
    found.push(Part::Text(rest));
    found
}

fn translated(english: &str, depth: u8) -> Option<String> {
    if depth > DEEPEST {
        return None;
    }
    let text = english.trim();
    if text.is_empty() {
        return Some(english.to_owned());
    }
    known(text, depth)
        .or_else(|| {
            // A full stop, a colon or a bracket may have been put on, or a first letter raised, where the sentence was used.
            let bare = text.trim_end_matches('.');
            (bare != text).then(|| known(bare, depth).map(|said| said + ".")).flatten()
        })
        .or_else(|| {
            with_other_first_letter(text).and_then(|(other, upper)| {
                let bare = other.trim_end_matches('.');
                let said =
                    known(&other, depth).or_else(|| known(bare, depth).map(|said| said + &other[bare.len()..]))?;
                Some(first_letter(&said, upper))
            })
        })
        .or_else(|| measured(text))
        .or_else(|| in_pieces(text, depth))
}

/// The sentence as the catalogue has it, whole or with holes.
fn known(text: &str, depth: u8) -> Option<String> {
    if let Some(said) = CATALOGUE.whole.get(text) {
        return Some((*said).to_owned());
    }
    CATALOGUE.templates.iter().find_map(|template| {
        let holes = holes(text, &template.fixed)?;
        // `{} to {}` fits half of all sentences: where little is fixed, everything in the holes must be known too.
        let thin = template.fixed.iter().flat_map(|text| text.chars()).filter(|c| c.is_alphabetic()).count() < THIN;
        let mut said = String::new();
        for part in &template.parts {
            match part {
                Part::Text(text) => said.push_str(text),
                Part::Hole(at) => {
                    let hole = holes.get(*at)?;
                    match translated(hole, depth + 1) {
                        Some(words) => said.push_str(&words),
                        None if thin => return None,
                        None => said.push_str(&number(Language::Spanish, hole)),
                    }
                }
            }
        }
        Some(said)
    })
}

/// What stands in the holes, when the fixed text is found in this order from end to end. No hole is empty.
fn holes<'a>(text: &'a str, fixed: &[&str]) -> Option<Vec<&'a str>> {
    let (first, rest) = fixed.split_first()?;
    let (last, middle) = rest.split_last()?;
    let mut left = text.strip_prefix(first)?.strip_suffix(last)?;
    let mut found = Vec::with_capacity(rest.len());
    for piece in middle {
        let (hole, after) = left.split_once(piece)?;
        found.push(hole);
        left = after;
    }
    found.push(left);
    // A hole of several sentences means that the fixed text was found by chance.
    found.iter().all(|hole| !hole.is_empty() && !hole.contains(". ")).then_some(found)
}

/// A quantity that needs no sentence: numbers, units, and the few words between them.
fn measured(text: &str) -> Option<String> {
    let mut digits = false;
    let words: Option<Vec<&str>> = text
        .split(' ')
        .map(|word| {
            let bare = word.trim_matches(|c: char| "()[],;:.%\u{2212}±".contains(c));
            if bare.chars().any(|c| c.is_ascii_digit()) && !bare.chars().any(|c| c.is_alphabetic() && c.is_uppercase())
            {
                digits = true;
                return Some(word);
            }
            match bare {
                "to" => Some("a"),
                "by" | "x" => Some("por"),
                "in" | "mm" | "m" | "cm" | "kn" | "rpm" | "kW" | "hp" | "kg" | "t" | "N" | "Nm" | "Hz" | "s"
                | "m/s" | "L/h" | "N/mm2" | "kPa" | "kN" | "g" | "" | "=" | "/" | "+" | "-" | "\u{d7}" => Some(word),
                "degrees" => Some("grados"),
                "blades" => Some("palas"),
                _ => None,
            }
        })
        .collect();
    let words = words?;
    digits.then(|| number(Language::Spanish, &words.join(" ")))
}

/// Clauses joined by the program: each on its own, when every one of them is known.
fn in_pieces(text: &str, depth: u8) -> Option<String> {
    [". ", "; ", ": ", ", "].iter().find_map(|joint| {
        if !text.contains(joint) {
            return None;
        }
        let said: Option<Vec<String>> = text.split(joint).map(|piece| translated(piece, depth + 1)).collect();
        Some(said?.join(joint))
    })
}

/// The same with the first letter's case changed, and whether the text's own is a capital.
fn with_other_first_letter(text: &str) -> Option<(String, bool)> {
    let first = text.chars().next()?;
    let upper = first.is_uppercase();
    let other = first_letter(text, !upper);
    (other != text).then_some((other, upper))
}

fn first_letter(text: &str, upper: bool) -> String {
    let mut letters = text.chars();
    let Some(first) = letters.next() else { return String::new() };
    let first: String = if upper { first.to_uppercase().collect() } else { first.to_lowercase().collect() };
    first + letters.as_str()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spanish(english: &str) -> String {
        sentence(Language::Spanish, english)
    }

    #[test]
    fn numbers_are_carried_over_in_the_language_s_form() {
        assert_eq!(
            spanish("Keller's formula asks for a blade area ratio of 0.55 to 0.61; fitted is about 0.50."),
            "La fórmula de Keller pide una relación de área de 0,55 a 0,61; la montada tiene cerca de 0,50."
        );
    }

    #[test]
    fn the_first_letter_and_the_full_stop_are_those_of_the_place() {
        assert_eq!(spanish("trim the diameter to 13.5 in"), "recortar el diámetro a 13,5 in");
        assert_eq!(spanish("Trim the diameter to 13.5 in."), "Recortar el diámetro a 13,5 in.");
    }

    #[test]
    fn clauses_joined_by_the_program_are_each_translated_or_none_is() {
        assert_eq!(spanish("count them; trim the diameter to 14 in"), "cuéntelas; recortar el diámetro a 14 in");
        let half = "count them; sing to the heron";
        assert_eq!(spanish(half), half);
        assert!(untranslated(Language::Spanish, half));
    }

    #[test]
    fn what_is_not_known_stays_as_it_was_and_says_so() {
        let text = "Kittiwake of Port Merrin";
        assert_eq!(spanish(text), text);
        assert!(untranslated(Language::Spanish, text));
        assert!(!untranslated(Language::English, text));
    }

    #[test]
    fn every_line_has_two_sides_and_as_many_holes_on_either() {
        for line in SPANISH.lines() {
            let Some((english, spanish)) = line.split_once('\t') else { panic!("no tab in `{line}`") };
            assert!(!english.is_empty() && !spanish.is_empty(), "{line}");
            assert!(!english.contains("{}{}"), "two holes side by side cannot be told apart: {line}");
            let holes = english.matches("{}").count();
            let mut asked: Vec<usize> = parts(spanish)
                .iter()
                .filter_map(|part| if let Part::Hole(at) = part { Some(*at) } else { None })
                .collect();
            asked.sort_unstable();
            assert_eq!(asked, (0..holes).collect::<Vec<_>>(), "{line}");
        }
    }
}
