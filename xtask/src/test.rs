//! `cargo xtask test`: everything that must hold, each step once, all steps even when one fails.

use std::io::{BufRead as _, BufReader};
use std::process::{Command, Stdio};
use std::time::Instant;

use crate::{browser, generate, run};

/// What a step came to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Count {
    passed: u32,
    failed: u32,
}

/// What is built in for lints and tests alike: one set, so that nothing is built twice. With `pdf` a cold build takes about a
/// quarter of an hour longer; it is kept in the cache of [`run::cache`].
pub(crate) const FEATURES: [&str; 2] = ["--features", "fairwake/pdf"];

/// Sees to the program that reads the PDFs back.
fn read_back() {
    let there = || Command::new("pdftotext").arg("-v").output().is_ok();
    if there() {
        return;
    }
    // Only the one who looks after the machine may install; elsewhere apt-get refuses and says so.
    let quietly = |arguments: &[&str]| {
        Command::new("apt-get")
            .args(arguments)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .status()
            .is_ok_and(|s| s.success())
    };
    let installed = quietly(&["update"]) && quietly(&["install", "--yes", "--no-install-recommends", "poppler-utils"]);
    if !installed || !there() {
        println!("== pdftotext cannot be had here: the words of the PDFs are NOT read back (install poppler-utils)\n");
    }
}

/// Runs all steps. A step that is not a run of tests counts as one test.
pub fn all() -> Result<(), String> {
    let mut total = Count::default();
    let mut failed = Vec::new();
    let mut step = |name: &str, work: &dyn Fn() -> Count| {
        println!("== {name}");
        let start = Instant::now();
        let count = work();
        total.passed += count.passed;
        total.failed += count.failed;
        if count.failed > 0 {
            failed.push(name.to_owned());
        }
        println!("== {name}: {:.1} s\n", start.elapsed().as_secs_f64());
    };
    step("format", &|| one(run::cargo(&["fmt", "--all", "--check"])));
    step("lints", &|| {
        let mut arguments = vec!["clippy", "--workspace", "--all-targets", "--quiet"];
        arguments.extend(FEATURES);
        arguments.extend(["--", "--deny", "warnings"]);
        one(run::cargo(&arguments))
    });
    read_back();
    step("tests", &tests);
    step("browser", &in_the_browser);
    step("generated files", &|| one(generate::check()));
    step("documentation", &|| one(documentation()));
    step("the README's first command", &|| one(readme()));

    for name in &failed {
        println!("failed: {name}");
    }
    println!("{} passed, {} failed", total.passed, total.failed);
    if failed.is_empty() { Ok(()) } else { Err("not everything holds".to_owned()) }
}

/// The page in a browser alone.
pub fn page() -> Result<(), String> {
    let count = in_the_browser();
    println!("{} passed, {} failed", count.passed, count.failed);
    if count.failed == 0 { Ok(()) } else { Err("not everything holds".to_owned()) }
}

fn one(done: Result<(), String>) -> Count {
    match done {
        Ok(()) => Count { passed: 1, failed: 0 },
        Err(why) => {
            println!("{why}");
            Count { passed: 0, failed: 1 }
        }
    }
}

/// All tests of the workspace, counted from what the harness says.
fn tests() -> Count {
    let mut arguments = vec!["test", "--workspace", "--no-fail-fast"];
    arguments.extend(FEATURES);
    let mut child = match run::command(&arguments).stdout(Stdio::piped()).spawn() {
        Ok(child) => child,
        Err(error) => return one(Err(format!("cargo does not start: {error}"))),
    };
    let mut count = Count::default();
    if let Some(printed) = child.stdout.take() {
        for line in BufReader::new(printed).lines().map_while(Result::ok) {
            println!("{line}");
            if let Some(more) = summary(&line) {
                count.passed += more.passed;
                count.failed += more.failed;
            }
        }
    }
    let ended_well = child.wait().is_ok_and(|status| status.success());
    if !ended_well && count.failed == 0 {
        // It did not even build, or a test took the whole process down.
        count.failed = 1;
    }
    count
}

/// Reads `test result: ok. 12 passed; 0 failed; ...`.
fn summary(line: &str) -> Option<Count> {
    let (_, rest) = line.strip_prefix("test result: ")?.split_once(". ")?;
    let number =
        |word: &str| rest.split(';').find_map(|part| part.trim().strip_suffix(word)?.trim().parse::<u32>().ok());
    Some(Count { passed: number("passed")?, failed: number("failed")? })
}

/// The page in a browser: one test for each script. Where there is no browser and none can be had, that is said and nothing
/// fails, except for the one who looks after the machine: there it must be had.
fn in_the_browser() -> Count {
    match browser::ready() {
        browser::Ready::Yes(chromium) => {
            browser::all(&chromium).into_iter().map(one).fold(Count::default(), |sum, count| Count {
                passed: sum.passed + count.passed,
                failed: sum.failed + count.failed,
            })
        }
        // Who may install and still has none has a fault to mend.
        browser::Ready::No(why) if browser::may_install() => one(Err(why)),
        browser::Ready::No(why) => {
            println!("the page is NOT tried in a browser here. {why}");
            Count::default()
        }
    }
}

fn documentation() -> Result<(), String> {
    let arguments = ["doc", "--workspace", "--no-deps", "--quiet"];
    let status = run::command(&arguments).env("RUSTDOCFLAGS", "--deny warnings").status();
    if status.is_ok_and(|status| status.success()) { Ok(()) } else { Err("the documentation has warnings".to_owned()) }
}

/// Runs the first command of the README as it stands there.
fn readme() -> Result<(), String> {
    let readme =
        std::fs::read_to_string(run::root().join("README.md")).map_err(|error| format!("README.md: {error}"))?;
    let line = first_command(&readme).ok_or("README.md shows no command that begins with `cargo run`")?;
    let arguments: Vec<&str> = line.split_whitespace().skip(1).collect();
    run::cargo(&arguments)
}

/// The first line of a code block that runs the program.
fn first_command(readme: &str) -> Option<&str> {
    let mut inside = false;
    readme.lines().map(str::trim).find(|line| {
        if line.starts_with("```") {
            inside = !inside;
        }
        inside && line.starts_with("cargo run ")
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_summary_of_the_harness_is_read() {
        let line = "test result: FAILED. 12 passed; 3 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.01s";
        assert_eq!(summary(line), Some(Count { passed: 12, failed: 3 }));
        assert_eq!(summary("test one ... ok"), None);
    }

    #[test]
    fn the_first_command_stands_in_a_code_block() {
        let readme = "cargo run nothing\n```sh\n# see\ncargo run --release -- judge x\n```\n";
        assert_eq!(first_command(readme), Some("cargo run --release -- judge x"));
        assert_eq!(first_command("none"), None);
    }
}
