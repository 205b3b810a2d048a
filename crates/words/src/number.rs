//! Numbers as a language writes them.

use crate::Language;

/// A number as written in English by the rest of the program (`3 480`, `6.25`) in the language's own form: Spanish takes a
/// decimal comma. Thousands are set apart by a space in both (ISO 80000-1).
#[must_use]
pub fn number(language: Language, english: &str) -> String {
    match language {
        Language::English => english.to_owned(),
        Language::Spanish => {
            let letters: Vec<char> = english.chars().collect();
            let digit = |at: Option<usize>| at.and_then(|at| letters.get(at)).is_some_and(char::is_ascii_digit);
            letters
                .iter()
                .enumerate()
                .map(|(at, &c)| {
                    let decimal = c == '.' && digit(at.checked_sub(1)) && digit(at.checked_add(1));
                    if decimal { ',' } else { c }
                })
                .collect()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spanish_takes_a_decimal_comma_and_leaves_full_stops() {
        assert_eq!(number(Language::Spanish, "6.25 kn. 3 480 rpm."), "6,25 kn. 3 480 rpm.");
        assert_eq!(number(Language::English, "6.25 kn"), "6.25 kn");
    }
}
