//! Tests of trial logs from outside the crate; one binary.
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "tests")]

mod broken;
mod current;
mod formats;
mod help;
mod propose;
mod readings;
mod sentences;
mod steady;
