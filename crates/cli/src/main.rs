//! The program `fairwake`.
fn main() {}
