//! Tasks that people and CI run.
fn main() {}
