//! The program `fairwake`: arguments, messages and exit codes. What it says comes from `counsel` and `hydro`.

pub mod answer;
mod answers;
mod args;
mod asking;
mod bars;
mod commands;
mod failure;
#[cfg(test)]
mod fixture;
mod ink;
mod load;
#[cfg(test)]
mod looks;
mod number;
mod page;
mod questions;
mod save;
mod sections;
mod strip;
mod value;
mod words;

use std::ffi::OsString;
use std::io::{self, Write as _};
use std::process::ExitCode;

use anstream::{AutoStream, ColorChoice};
use clap::{CommandFactory as _, FromArgMatches as _};

use args::{Cli, Colour, Command, Common, Format};
use failure::Failure;

/// Lays an answer out as a page.
type LayOut = dyn Fn(&answer::Report, &Common) -> String;

/// What a command hands back.
struct Outcome {
    /// The answer in both forms; only the wanted one is laid out.
    report: answer::Report,
    /// The page for people; only made when wanted.
    text: Box<LayOut>,
    /// Doubts about the job file, for standard error.
    doubts: String,
    /// What `--fail-on` names was reached.
    reached: bool,
}

/// The command line as data, for completions and the manual.
#[must_use]
pub fn command() -> clap::Command {
    Cli::command()
}

/// Runs the program: 0 done, 1 done and `--fail-on` reached, 2 could not.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> ExitCode {
    let arguments: Vec<OsString> = arguments.into_iter().collect();
    let parsed = command()
        .color(colour_of_help(&arguments))
        .try_get_matches_from(arguments)
        .and_then(|matches| Cli::from_arg_matches(&matches));
    let cli = match parsed {
        Ok(cli) => cli,
        Err(error) => {
            // Nobody is left to tell when this fails.
            let _ = error.print();
            return if error.use_stderr() { ExitCode::from(2) } else { ExitCode::SUCCESS };
        }
    };
    match answer(cli) {
        Ok(reached) => ExitCode::from(u8::from(reached)),
        Err((failure, _)) if failure.is_broken_pipe() => ExitCode::SUCCESS,
        Err((failure, colour)) => {
            let mut err = AutoStream::new(io::stderr(), choice(colour));
            let _ = match &failure {
                Failure::Job(laid_out) => writeln!(err, "{}", laid_out.trim_end()),
                _ => err.write_all(labelled("error:", &failure.to_string()).as_bytes()),
            };
            if let Some(way_out) = failure.way_out() {
                let _ = err.write_all(labelled("instead:", &way_out).as_bytes());
            }
            ExitCode::from(2)
        }
    }
}

/// A labelled message, wrapped line by line.
fn labelled(label: &str, text: &str) -> String {
    let mut page = page::Page::new();
    let indent = " ".repeat(label.len() + 1);
    let mut lead = format!("{} ", ink::Ink::Speak.on(label));
    for line in text.lines() {
        page.hanging(line, ink::Ink::Plain, &lead, &indent);
        lead.clone_from(&indent);
    }
    page.finish()
}

/// The page a command would print, without colour: for documents that show it.
///
/// # Errors
/// Why there is none, in words.
pub fn page_of(arguments: &[&str]) -> Result<String, String> {
    let all = std::iter::once("fairwake").chain(arguments.iter().copied());
    let cli = <Cli as clap::Parser>::try_parse_from(all).map_err(|error| error.to_string())?;
    let outcome = outcome(&cli, false).map_err(|failure| failure.to_string())?;
    let text = (outcome.text)(&outcome.report, &cli.common);
    Ok(anstream::adapter::strip_str(&text).to_string())
}

/// The picture that `fairwake draw ..` would write first, as SVG on the light sheet: for documents that show it.
///
/// # Errors
/// Why there is none, in words.
pub fn picture_of(arguments: &[&str]) -> Result<String, String> {
    let all = ["fairwake", "draw"].into_iter().chain(arguments.iter().copied());
    let cli = <Cli as clap::Parser>::try_parse_from(all).map_err(|error| error.to_string())?;
    let Command::Draw(args) = &cli.command else { return Err("not a picture".to_owned()) };
    let svg = commands::draw::one(args, &cli.common).map_err(|failure| failure.to_string())?;
    svg.ok_or_else(|| "nothing to draw".to_owned())
}

/// Runs the command and prints its answer. Returns whether `--fail-on` was reached.
fn answer(cli: Cli) -> Result<bool, (Failure, Colour)> {
    let common = cli.common;
    let colour = AutoStream::choice(&io::stderr());
    let colour = match common.colour {
        Colour::Always => true,
        Colour::Never => false,
        Colour::Auto => colour != ColorChoice::Never,
    };
    let with_colour = |failure| (failure, common.colour);
    if let Command::Completions(args) = &cli.command {
        return commands::completions::run(args).map(|()| false).map_err(with_colour);
    }
    let outcome = outcome(&cli, colour).map_err(with_colour)?;
    print(outcome, &common).map_err(|cause| (Failure::Stream(cause), common.colour))
}

/// Runs the command. `colour` is for doubts and errors that are laid out with the lines they stand on.
fn outcome(cli: &Cli, colour: bool) -> Result<Outcome, Failure> {
    let common = &cli.common;
    match &cli.command {
        Command::New(args) => commands::new::run(args, common),
        Command::Judge(args) => commands::judge::run(args, common, colour),
        Command::Try(args) => commands::change::run(args, common, colour),
        Command::Choose(args) => commands::choose::run(args, common, colour),
        Command::Diagnose(args) => commands::diagnose::run(args, common, colour),
        Command::Trial(args) => commands::trial::run(args, common, colour),
        Command::Survey(args) => commands::survey::run(args, colour),
        Command::Fit(args) => commands::fit::run(args, common, colour),
        Command::Order(args) => commands::order::run(args, common, colour),
        Command::Draw(args) => commands::draw::run(args, common, colour),
        Command::Openwater(args) => commands::openwater::run(args, colour),
        Command::Resistance(args) => commands::resistance::run(args, common, colour),
        Command::Sources(args) => commands::sources::run(args),
        Command::Completions(_) => Err(Failure::Asked {
            what: "a completion script is not a page".to_owned(),
            instead: "run `fairwake completions`".to_owned(),
        }),
    }
}

fn print(outcome: Outcome, common: &Common) -> io::Result<bool> {
    if !outcome.doubts.is_empty() {
        let _ = AutoStream::new(io::stderr(), choice(common.colour)).write_all(outcome.doubts.as_bytes());
    }
    let stdout = io::stdout();
    match common.format {
        Format::Text => {
            let text = (outcome.text)(&outcome.report, common);
            let mut out = AutoStream::new(stdout, choice(common.colour));
            out.write_all(text.as_bytes())?;
            out.flush()?;
        }
        Format::Json => {
            let mut out = stdout.lock();
            out.write_all(outcome.report.to_json()?.as_bytes())?;
            out.flush()?;
        }
    }
    Ok(outcome.reached)
}

fn choice(colour: Colour) -> ColorChoice {
    match colour {
        Colour::Auto => ColorChoice::Auto,
        Colour::Always => ColorChoice::Always,
        Colour::Never => ColorChoice::Never,
    }
}

/// `--colour` must hold for help and complaints too, which are printed before the arguments are known.
fn colour_of_help(arguments: &[OsString]) -> clap::ColorChoice {
    let says = |word: &str| {
        let joined = format!("--colour={word}");
        arguments.iter().any(|a| *a == *joined)
            || arguments.windows(2).any(|pair| *pair[0] == *"--colour" && *pair[1] == *word)
    };
    match (says("always"), says("never")) {
        (true, _) => clap::ColorChoice::Always,
        (_, true) => clap::ColorChoice::Never,
        _ => clap::ColorChoice::Auto,
    }
}
