//! Pages and schemas made from the code, so that they cannot drift from it.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use clap::ValueEnum as _;

use crate::run;

/// The generated files of `docs/` and their content.
fn files() -> Result<Vec<(&'static str, String)>, String> {
    let mut files = vec![
        ("docs/answers.schema.json", answers()),
        ("docs/job.schema.json", job::schema::schema()),
        ("docs/job-file.md", job::manual::manual()),
        ("docs/cli.md", command_line()),
        ("README.md", readme()?),
    ];
    for (file, arguments) in PICTURES {
        let svg = fairwake::picture_of(arguments).map_err(|why| format!("{file}: {why}"))?;
        files.push((file, svg));
    }
    Ok(files)
}

/// The pictures that README and docs show.
const PICTURES: [(&str, &[&str]); 6] = [
    ("docs/pictures/demand.svg", &["examples/kittiwake.toml", "--what", "demand", "--pitch", "11 in"]),
    ("docs/pictures/propeller.svg", &["examples/cormorant.toml", "--what", "propeller"]),
    ("docs/pictures/place.svg", &["examples/kittiwake.toml", "--what", "place"]),
    ("docs/pictures/flow.svg", &["examples/gannet.toml", "--what", "flow"]),
    ("docs/pictures/causes.svg", &["examples/guillemot.toml", "--what", "causes"]),
    ("docs/pictures/rates.svg", &["examples/kittiwake.toml", "--what", "rates"]),
];

/// The README with its pages as the program prints them now.
///
/// `<!-- page: judge FILE | 3 -->` stands before a code block that shows the first three paragraphs of that page; `_` stands
/// for a blank within a word.
fn readme() -> Result<String, String> {
    // Files are named as a reader at the root would name them, and pages repeat the names.
    std::env::set_current_dir(run::root()).map_err(|error| format!("the workspace: {error}"))?;
    let old = fs::read_to_string(run::root().join("README.md")).map_err(|error| format!("README.md: {error}"))?;
    let mut new = String::new();
    let mut lines = old.lines();
    while let Some(line) = lines.next() {
        let _ = writeln!(new, "{line}");
        let Some(asked) = line.strip_prefix("<!-- page: ").and_then(|rest| rest.strip_suffix(" -->")) else { continue };
        let (command, paragraphs) =
            asked.split_once(" | ").ok_or_else(|| format!("README.md: no ` | ` in `{line}`"))?;
        let paragraphs: usize = paragraphs.parse().map_err(|_| format!("README.md: no number in `{line}`"))?;
        let arguments: Vec<String> = command.split_whitespace().map(|word| word.replace('_', " ")).collect();
        let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
        let page = fairwake::page_of(&arguments).map_err(|why| format!("README.md: `{command}`: {why}"))?;
        let shown: Vec<&str> = page.split("\n\n").take(paragraphs).map(|text| text.trim_end_matches('\n')).collect();
        let _ = writeln!(new, "\n```text\n{}\n```", shown.join("\n\n"));
        // Past the old block: from here to its closing fence.
        for fence in ["```text", "```"] {
            if !lines.by_ref().any(|line| line.trim_end() == fence) {
                return Err(format!("README.md: no code block after `{line}`"));
            }
        }
    }
    Ok(new)
}

/// Fails when a generated file is not what the code would write.
pub fn check() -> Result<(), String> {
    let stale: Vec<&str> = files()?
        .into_iter()
        .filter(|(name, text)| fs::read_to_string(run::root().join(name)).ok().as_ref() != Some(text))
        .map(|(name, _)| name)
        .collect();
    if stale.is_empty() {
        return Ok(());
    }
    Err(format!("out of date: {}; run `cargo xtask generate`", stale.join(", ")))
}

/// Writes the generated files; manual pages and completion scripts only where a folder is named for them.
pub fn write(to: Option<&Path>) -> Result<(), String> {
    for (name, text) in files()? {
        put(&run::root().join(name), &text)?;
    }
    let Some(folder) = to else { return Ok(()) };
    fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let wrong = |error: std::io::Error| format!("{}: {error}", folder.display());
    clap_mangen::generate_to(fairwake::command(), folder).map_err(wrong)?;
    for shell in clap_complete::Shell::value_variants() {
        clap_complete::generate_to(*shell, &mut fairwake::command(), "fairwake", folder).map_err(wrong)?;
    }
    Ok(())
}

/// Writes a file and says so.
pub fn put(file: &Path, text: &str) -> Result<(), String> {
    if let Some(folder) = file.parent() {
        fs::create_dir_all(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    }
    fs::write(file, text).map_err(|error| format!("{}: {error}", file.display()))?;
    println!("wrote {}", file.display());
    Ok(())
}

/// The JSON schema of every answer.
fn answers() -> String {
    let schema = schemars::schema_for!(fairwake::answer::Answer);
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

/// The help of every command as one page.
fn command_line() -> String {
    let mut page = String::from(
        "# Command line\n\n\
         Made from the program by `cargo xtask generate`; `fairwake COMMAND --help` prints the same.\n\n\
         Exit codes: 0 done; 1 done, and what `--fail-on` names was reached; 2 could not. A reader that goes away (a closed \
         pipe) is not an error. Errors and questions go to standard error, answers to standard output. Where a JOB is asked \
         for, `-` reads it from standard input.\n",
    );
    let mut program = fairwake::command().term_width(100).color(clap::ColorChoice::Never);
    program.build();
    let mut section = |name: &str, command: &mut clap::Command| {
        let help = command.render_long_help().to_string();
        let lines: Vec<&str> = help.lines().map(str::trim_end).collect();
        let _ = write!(page, "\n## {name}\n\n```text\n{}\n```\n", lines.join("\n").trim_end());
    };
    section("fairwake", &mut program.clone());
    for command in program.get_subcommands_mut().filter(|command| !command.is_hide_set()) {
        let name = format!("fairwake {}", command.get_name());
        section(&name, command);
    }
    page
}

#[cfg(test)]
mod tests {
    #[test]
    fn generated_files_are_up_to_date() {
        assert_eq!(super::check(), Ok(()));
    }
}
