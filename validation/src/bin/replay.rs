//! Prints the page of the replayed real boats: `cargo xtask validate` writes it to `docs/validation.md`.

use std::io::Write as _;

fn main() -> std::io::Result<()> {
    let options = counsel::Options::default();
    let outcomes = validation::boats::replay(&options);
    let mut out = std::io::stdout();
    out.write_all(validation::page::page(&outcomes, &options).as_bytes())?;
    out.write_all(validation::page::truths(&options).as_bytes())
}
