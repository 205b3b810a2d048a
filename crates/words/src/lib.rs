//! What the page and the papers say, in English and Spanish; numbers by language.
//!
//! Labels and sentences of the front ends stand in `ftl/<language>/<room>.ftl` and are asked for by their name ([`say`]).
//! Sentences that `counsel` and `hydro` have already made in English pass through [`sentence`].

mod catalogue;
mod language;
mod number;
mod sentence;

pub use catalogue::{Value, say, say_with};
pub use language::Language;
pub use number::number;
pub use sentence::{sentence, untranslated};
