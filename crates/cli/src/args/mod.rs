//! What can be said on the command line; the options of each command stand with those of its kind.

mod boat;
mod change;
mod made;
mod measured;
mod methods;

pub use boat::*;
pub use change::*;
pub use made::*;
pub use measured::*;
pub use methods::*;

use clap::{Args, Parser, Subcommand, ValueEnum};

/// The right propeller on a small craft, and kept right.
#[derive(Debug, Parser)]
#[command(
    name = "fairwake",
    version,
    max_term_width = 100,
    disable_help_subcommand = true,
    subcommand_required = true,
    arg_required_else_help = true,
    after_help = "Exit codes: 0 done, 1 done and what --fail-on names was reached, 2 could not.\n\
                  A judgement is advice. Rules, surveyors and the makers of engine and gearbox outrank it."
)]
pub struct Cli {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
    /// How to answer.
    #[command(flatten)]
    pub common: Common,
}

/// Options that every command takes.
#[derive(Clone, Copy, Debug, Args)]
#[command(next_help_heading = "How to answer")]
pub struct Common {
    /// Text for people, or JSON for programs (whose values name their units, whatever --units says)
    #[arg(long, global = true, value_enum, default_value_t = Format::Text, value_name = "FORMAT")]
    pub format: Format,
    /// Units of the text: mm, kg, kW, L or in, lb, hp, US gal; boat speed is in knots either way
    #[arg(long, global = true, value_enum, default_value_t = Units::Metric, value_name = "UNITS")]
    pub units: Units,
    /// Seed of the draw of definite boats: the same seed gives the same answer
    #[arg(long, global = true, default_value_t = 1, value_name = "NUMBER")]
    pub seed: u32,
    /// How many definite boats to draw
    #[arg(long, global = true, default_value_t = 4000, value_name = "NUMBER",
          value_parser = clap::value_parser!(u32).range(100..=1_000_000))]
    pub boats: u32,
    /// Colour in the text; NO_COLOR in the environment is honoured by `auto`
    #[arg(long, global = true, value_enum, default_value_t = Colour::Auto, value_name = "WHEN")]
    pub colour: Colour,
}

/// Form of the answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Format {
    // Text for people.
    Text,
    // JSON for programs.
    Json,
}

/// Units of the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Units {
    // Millimetres, kilograms, kilowatts, litres.
    Metric,
    // Inches, pounds, horsepower, US gallons.
    Imperial,
}

/// When to colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Colour {
    // When a person reads it.
    Auto,
    // Always.
    Always,
    // Never.
    Never,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Ask the call's questions and write a job file
    New(NewArgs),
    /// Judge the propeller fitted: does it suit engine and boat, and how sure is that
    Judge(JudgeArgs),
    /// Try a change: before, after, and the difference
    Try(TryArgs),
    /// Shortlist: work on what is fitted in the order of its cost, then new propellers and ratios, best first
    Choose(ChooseArgs),
    /// Rank the causes of what is wrong by the readings and symptoms, and name what to measure next
    Diagnose(DiagnoseArgs),
    /// Reduce the trial runs in a job and in logs, and tell what each taught about the boat
    Trial(TrialArgs),
    /// The propeller as it was measured: pitches, accuracy class, repair sheet, bore
    Survey(SurveyArgs),
    /// Does it fit, will it hold: clearances, shaft, bore, strength, vibration, hand
    Fit(FitArgs),
    /// The order in one line, what may vary, and the check of what arrives
    Order(OrderArgs),
    /// Draw: the propeller, engine and demand, where the power goes, and more; STL and DXF for the workshop
    Draw(DrawArgs),
    /// Write the documents to hand over: owner's page, judgement note, survey card, repair, order, fit and sea-trial sheets, record
    Papers(PapersArgs),
    /// Open-water characteristics of a propeller by a published series
    Openwater(OpenWaterArgs),
    /// Resistance of the hull over speed
    Resistance(ResistanceArgs),
    /// The trade's terms, told with this boat's numbers
    Explain(ExplainArgs),
    /// Every method used: formula, range, error, source, and how far to trust it
    Sources(SourcesArgs),
    /// Serve a folder of job files as a local page and open the browser
    Workbench(WorkbenchArgs),
    /// Print a completion script for a shell
    Completions(CompletionsArgs),
}
