//! Sentences that come out of the judgement in English, in another language.

use crate::Language;

/// The sentence in the language wanted.
#[must_use]
pub fn sentence(language: Language, english: &str) -> String {
    match language {
        Language::English => english.to_owned(),
        Language::Spanish => english.to_owned(),
    }
}
