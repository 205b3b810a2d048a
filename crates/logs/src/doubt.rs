//! What was accepted but should be looked at, and what could not be accepted.

use std::fmt;

/// Something accepted that looks wrong or weak.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Doubt {
    /// A short name that stays the same.
    pub code: &'static str,
    /// What was seen.
    pub message: String,
    /// What to do about it.
    pub help: String,
}

impl Doubt {
    pub(crate) fn new(code: &'static str, message: impl Into<String>, help: impl Into<String>) -> Doubt {
        Doubt { code, message: message.into(), help: help.into() }
    }
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({})", self.message, self.help)
    }
}

/// Why a log could not be used at all.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// A short name that stays the same.
    pub code: &'static str,
    /// What is wrong.
    pub message: String,
    /// The way out.
    pub help: String,
}

impl Refusal {
    pub(crate) fn new(code: &'static str, message: impl Into<String>, help: impl Into<String>) -> Refusal {
        Refusal { code, message: message.into(), help: help.into() }
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}; {}", self.message, self.help)
    }
}

impl std::error::Error for Refusal {}
