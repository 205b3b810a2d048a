//! Tests of the job file from outside the crate; one binary.

mod broken;
mod docs;
mod edit;
mod fuzz;
mod good;
mod survey;
mod units;

/// A full job file: every key of the format at least once.
pub const FULL: &str = include_str!("full.toml");
