//! Sentences that come out of the judgement in English, in another language.
//!
//! `counsel` and `hydro` speak English, with their numbers already in the sentence. A catalogue (`sentences/es.tsv`, that of the pictures in `sentences/draw.es.tsv`) holds each
//! sentence with holes (`{}`) where its numbers and names stand, and the same in the other language; what stands in a hole is
//! translated in its turn. A sentence the catalogue does not know is left in English rather than half guessed;
//! [`untranslated`] tells which.

use std::collections::HashMap;
use std::sync::LazyLock;

use crate::{Language, number};

/// The catalogue: one line for one sentence, English, a tab, Spanish. Holes are `{}` in order, or `{1}`, `{2}` where the
/// Spanish changes their order.
const SPANISH: &str = concat!(include_str!("../sentences/es.tsv"), include_str!("../sentences/draw.es.tsv"));

/// The sentence in the language wanted; what the catalogue does not know stays English.
#[must_use]
pub fn sentence(language: Language, english: &str) -> String {
    match language {
        Language::English => english.to_owned(),
        Language::Spanish => Reader::default().translated(english).map_or_else(|| english.to_owned(), |(said, _)| said),
    }
}

/// Whether the catalogue has no words for this sentence, so that it would stand in English on the page.
#[must_use]
pub fn untranslated(language: Language, english: &str) -> bool {
    language == Language::Spanish && Reader::default().translated(english).is_none()
}

/// Letters that a sentence must have outside its holes to be recognised by them alone: below it every hole must be known too.
/// Read off the catalogue, not derived: with eight or fewer it holds labels and joints (`{} to {} rpm`, `As fitted: {}`), whose
/// holes are words of ours; from nine on come sentences round a name that people gave (`with {} alone`, `reading of {}`). On
/// the wrong side nothing false is said: the sentence stays in English as a whole.
const THIN: usize = 9;

/// A sentence with holes: what is fixed around them, and the other language's parts.
struct Template {
    fixed: Vec<&'static str>,
    /// Letters outside the holes.
    letters: usize,
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
    /// Those that may begin with a letter: the ones that do, and the ones that begin with a hole, in their order.
    by_first: HashMap<char, Vec<usize>>,
    /// Those that begin with a hole.
    open: Vec<usize>,
}

static CATALOGUE: LazyLock<Catalogue> = LazyLock::new(|| {
    let mut whole = HashMap::new();
    let mut templates = Vec::new();
    for (english, spanish) in SPANISH.lines().filter_map(|line| line.split_once('\t')) {
        if english.contains("{}") {
            let fixed: Vec<&str> = english.split("{}").collect();
            let letters = fixed.iter().flat_map(|text| text.chars()).filter(|c| c.is_alphabetic()).count();
            templates.push(Template { fixed, letters, parts: parts(spanish) });
        } else {
            whole.insert(english, spanish);
        }
    }
    templates.sort_by_key(|template| std::cmp::Reverse(template.fixed.iter().map(|text| text.len()).sum::<usize>()));
    let first = |template: &Template| template.fixed.first().and_then(|text| text.chars().next());
    let with = |letter: Option<char>| -> Vec<usize> {
        let fits = |template: &Template| first(template).is_none_or(|c| Some(c) == letter);
        templates.iter().enumerate().filter(|(_, template)| fits(template)).map(|(at, _)| at).collect()
    };
    let by_first = templates.iter().filter_map(first).map(|letter| (letter, with(Some(letter)))).collect();
    let open = with(None);
    Catalogue { whole, templates, by_first, open }
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

/// A text in the other language, and whether all of it is: names and what is not known may stand in its holes as they were.
type Read = Option<(String, bool)>;

/// Reads one sentence. What was found for a part of it is kept: parts come back in many readings of the whole.
#[derive(Default)]
struct Reader {
    found: HashMap<String, Read>,
}

impl Reader {
    /// The text in the other language. A hole is shorter than its sentence, so this comes to an end.
    fn translated(&mut self, english: &str) -> Read {
        let text = english.trim();
        if text.is_empty() {
            return Some((english.to_owned(), true));
        }
        if let Some(found) = self.found.get(text) {
            return found.clone();
        }
        let said = self.read(text);
        self.found.insert(text.to_owned(), said.clone());
        said
    }

    /// The first way in which all of the text is known, else the first in which part of it is.
    fn read(&mut self, text: &str) -> Read {
        let measured = |_: &mut Reader, text: &str| measured(text);
        let ways = [Reader::known, Reader::as_placed, measured, Reader::in_pieces, Reader::with_aside];
        let mut partly = None;
        for way in ways {
            match way(self, text) {
                Some((said, true)) => return Some((said, true)),
                said => partly = partly.or(said),
            }
        }
        partly
    }

    /// With a full stop put on, or with the first letter's case changed, where the sentence was used.
    fn as_placed(&mut self, text: &str) -> Read {
        let bare = text.trim_end_matches('.');
        if bare != text
            && let Some((said, whole)) = self.known(bare)
        {
            return Some((said + ".", whole));
        }
        let (other, upper) = with_other_first_letter(text)?;
        let bare = other.trim_end_matches('.');
        let said =
            self.known(&other).or_else(|| self.known(bare).map(|(said, whole)| (said + &other[bare.len()..], whole)));
        said.map(|(said, whole)| (first_letter(&said, upper), whole))
    }

    /// The sentence as the catalogue has it, whole or with holes.
    fn known(&mut self, text: &str) -> Read {
        if let Some(said) = CATALOGUE.whole.get(text) {
            return Some(((*said).to_owned(), true));
        }
        let first = text.chars().next()?;
        let may = CATALOGUE.by_first.get(&first).unwrap_or(&CATALOGUE.open);
        let mut partly = None;
        for at in may {
            let template = &CATALOGUE.templates[*at];
            for holes in readings(text, &template.fixed) {
                match self.filled(template, &holes) {
                    Some((said, true)) => return Some((said, true)),
                    // `{} to {}` fits half of all sentences: where little is fixed, everything in the holes must be known.
                    Some(said) if partly.is_none() && template.letters >= THIN => partly = Some(said),
                    _ => {}
                }
            }
        }
        partly
    }

    /// The other language's sentence with these holes; what is not known is left as it is.
    fn filled(&mut self, template: &Template, holes: &[&str]) -> Read {
        let (mut said, mut whole) = (String::new(), true);
        for part in &template.parts {
            match part {
                Part::Text(text) => said.push_str(text),
                Part::Hole(at) => {
                    let hole = holes.get(*at)?;
                    let (words, known) =
                        self.translated(hole).unwrap_or_else(|| (number(Language::Spanish, hole), false));
                    said.push_str(&words);
                    whole &= known;
                }
            }
        }
        Some((said, whole))
    }

    /// What people noted stands in brackets behind words of ours, and stays as it was.
    fn with_aside(&mut self, text: &str) -> Read {
        let (ours, aside) = text.strip_suffix(')')?.split_once(" (")?;
        let (said, _) = self.translated(ours)?;
        let (aside, _) = self.translated(aside).unwrap_or_else(|| (aside.to_owned(), false));
        Some((format!("{said} ({aside})"), false))
    }

    /// Clauses joined by the program: each on its own, when every one of them is known.
    fn in_pieces(&mut self, text: &str) -> Read {
        let mut partly = None;
        for joint in [". ", "; ", ": ", ", "] {
            match self.at_joints(text, joint) {
                Some((said, true)) => return Some((said, true)),
                said => partly = partly.or(said),
            }
        }
        partly
    }

    fn at_joints(&mut self, text: &str, joint: &str) -> Read {
        if !text.contains(joint) {
            return None;
        }
        let (mut said, mut whole) = (Vec::new(), true);
        let mut pieces = text.split(joint).peekable();
        while let Some(piece) = pieces.next() {
            // A sentence keeps its full stop while it is looked up.
            let stop = joint == ". " && pieces.peek().is_some();
            let (words, known) = self.translated(&if stop { format!("{piece}.") } else { piece.to_owned() })?;
            said.push(if stop { words.trim_end_matches('.').to_owned() } else { words });
            whole &= known;
        }
        Some((said.join(joint), whole))
    }
}

/// Most ways looked at in which one text fits one sentence.
const READINGS: usize = 12;

/// What stands in the holes, in every way in which the fixed text is found in this order from end to end. No hole is empty.
fn readings<'a>(text: &'a str, fixed: &[&str]) -> Vec<Vec<&'a str>> {
    let mut found = Vec::new();
    if let Some((first, rest)) = fixed.split_first()
        && let Some((last, middle)) = rest.split_last()
        && let Some(left) = text.strip_prefix(first).and_then(|left| left.strip_suffix(last))
    {
        fit(left, middle, &mut Vec::new(), &mut found);
    }
    found
}

fn fit<'a>(left: &'a str, pieces: &[&str], holes: &mut Vec<&'a str>, found: &mut Vec<Vec<&'a str>>) {
    // A hole of several sentences means that the fixed text was found by chance.
    let sound = |hole: &str| !hole.is_empty() && !hole.contains(". ");
    let Some((piece, pieces)) = pieces.split_first() else {
        if sound(left) {
            found.push(holes.iter().copied().chain([left]).collect());
        }
        return;
    };
    for (at, _) in left.match_indices(piece) {
        if found.len() >= READINGS {
            return;
        }
        if sound(&left[..at]) {
            holes.push(&left[..at]);
            fit(&left[at + piece.len()..], pieces, holes, found);
            holes.pop();
        }
    }
}

/// A quantity that needs no sentence: numbers, units, and the few words between them.
fn measured(text: &str) -> Read {
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
                | "m/s" | "L/h" | "g/kWh" | "\u{b5}m" | "\u{b0}C" | "\u{b0}" | "R" | "N/mm2" | "kPa" | "kN" | "g"
                | "" | "=" | "/" | "+" | "-" | "\u{d7}" => Some(word),
                "degrees" => Some("grados"),
                "rough" => Some("de rugosidad"),
                "high" => Some("de m\u{e1}s"),
                "low" => Some("de menos"),
                "blades" => Some("palas"),
                _ => None,
            }
        })
        .collect();
    let words = words?;
    digits.then(|| (number(Language::Spanish, &words.join(" ")), true))
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
