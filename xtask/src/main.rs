//! Tasks that people and CI run: `cargo xtask test`, `bench`, `validate`, `generate`.
#![expect(clippy::print_stdout, clippy::print_stderr, reason = "a task runner talks to a terminal")]

mod browser;
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
    /// The page in headless Chromium; part of `test`
    Browser,
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
        Task::Browser => test::page(),
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
    generate::put(&run::root().join("docs/validation.md"), &page)?;
    outside()
}

/// The second computations by general-purpose libraries of Python: packages, script, its arguments, the file it makes.
const OUTSIDE: [(&str, &[&str], &str); 2] = [
    ("validation/scripts/blade_mesh.py", &[], "validation/data/trimesh_blades.csv"),
    ("validation/scripts/exports.py", &["PROGRAM"], "validation/data/exports.csv"),
];
const PACKAGES: [&str; 6] = ["trimesh==5.2.0", "scipy==1.17.1", "shapely==2.2.0", "ezdxf==1.4.5", "numpy", "networkx"];

/// Runs them anew in an environment of their own, where Python is at hand.
fn outside() -> Result<(), String> {
    let root = run::root();
    let place = root.join("target/validate-python");
    let python = place.join("bin/python");
    let ran = |command: &mut std::process::Command, what: &str| -> Result<String, String> {
        let output = command
            .current_dir(&root)
            .stderr(std::process::Stdio::inherit())
            .output()
            .map_err(|error| format!("{what}: {error}"))?;
        if !output.status.success() {
            return Err(format!("{what} failed"));
        }
        String::from_utf8(output.stdout).map_err(|_| format!("{what} printed no text"))
    };
    if std::process::Command::new("python3").arg("--version").output().is_err() {
        println!("python3 is not here: the second computations stay as they were recorded");
        return Ok(());
    }
    if !python.exists() {
        ran(std::process::Command::new("python3").args(["-m", "venv"]).arg(&place), "python3 -m venv")?;
        ran(
            std::process::Command::new(&python).args(["-m", "pip", "install", "--quiet"]).args(PACKAGES),
            "pip install",
        )?;
    }
    run::cargo(&["build", "--release", "--quiet", "--package", "fairwake"])?;
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root.join("target"), PathBuf::from);
    let program = target.join("release/fairwake");
    for (script, arguments, made) in OUTSIDE {
        let mut command = std::process::Command::new(&python);
        command.arg(script);
        for argument in arguments {
            if *argument == "PROGRAM" {
                command.arg(&program)
            } else {
                command.arg(argument)
            };
        }
        let text = ran(&mut command, script)?;
        generate::put(&root.join(made), &text)?;
    }
    Ok(())
}
