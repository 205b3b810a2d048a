//! Tasks that people and CI run: `cargo xtask test`, `bench`, `validate`, `generate`.
#![expect(clippy::print_stdout, clippy::print_stderr, reason = "a task runner talks to a terminal")]

mod generate;
mod run;
mod test;

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};

#[derive(Debug, Parser)]
#[command(name = "xtask", about, disable_help_subcommand = true)]
struct Xtask {
    #[command(subcommand)]
    task: Task,
}

#[derive(Debug, Subcommand)]
enum Task {
    /// Everything that must hold: format, lints, tests, generated files, documentation, the README's first command
    Test,
    /// Time the hot paths
    Bench,
    /// Replay the real boats and write docs/validation.md
    Validate,
    /// Write the generated pages and schemas in docs/
    Generate {
        /// Write nothing; fail when something is out of date
        #[arg(long)]
        check: bool,
        /// Write the manual pages and the completion scripts to this folder too
        #[arg(long, value_name = "FOLDER")]
        to: Option<PathBuf>,
    },
}

fn main() -> ExitCode {
    let done = match Xtask::parse().task {
        Task::Test => test::all(),
        Task::Bench => run::cargo(&["bench", "--workspace"]),
        Task::Validate => validate(),
        Task::Generate { check: true, .. } => generate::check(),
        Task::Generate { check: false, to } => generate::write(to.as_deref()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}

/// The replay prints the page; it is only put in place when the replay came to its end.
fn validate() -> Result<(), String> {
    let page = run::output(&["run", "--release", "--quiet", "--package", "validation", "--bin", "replay"])?;
    generate::put(&run::root().join("docs/validation.md"), &page)
}
