//! Tests of the pictures and the geometry files.
#![allow(clippy::unwrap_used, missing_docs, reason = "tests")]

mod common;
mod files;
mod pictures;
mod spanish;
mod stretches;
mod teach;
