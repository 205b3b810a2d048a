//! Tests of trial logs from outside the crate; one binary.

mod broken;
mod current;
mod formats;
mod help;
mod propose;
mod readings;
mod sentences;
mod steady;
