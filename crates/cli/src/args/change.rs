//! Options of what is to be changed, chosen, fitted and ordered.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use job::{Cup, Duty, Growth};

use crate::value;

/// `fairwake try`
#[derive(Debug, Args)]
pub struct TryArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// The changes.
    #[command(flatten)]
    pub change: ChangeArgs,
    /// Exit with code 1 when, after the change, one of these is likelier than not
    #[arg(long, value_enum, value_delimiter = ',', value_name = "WHAT")]
    pub fail_on: Vec<FailOnChange>,
}

/// What `try --fail-on` can look for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum FailOnChange {
    // Over-pitched is likelier than not
    OverPitched,
    // Under-pitched is likelier than not
    UnderPitched,
}

/// What can be changed.
#[derive(Debug, Args)]
#[command(next_help_heading = "Changes to try")]
pub struct ChangeArgs {
    /// Diameter, e.g. "15 in" or "380 mm"
    #[arg(long, value_name = "LENGTH", value_parser = value::length)]
    pub diameter: Option<f64>,
    /// Pitch, e.g. "9 in"
    #[arg(long, value_name = "LENGTH", value_parser = value::pitch)]
    pub pitch: Option<f64>,
    /// Number of blades
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u8).range(2..=7))]
    pub blades: Option<u8>,
    /// Expanded area ratio, e.g. 0.55
    #[arg(long, value_name = "RATIO", value_parser = value::area_ratio)]
    pub area: Option<f64>,
    /// Cup of the trailing edge
    #[arg(long, value_name = "CUP", value_parser = value::word::<Cup>())]
    pub cup: Option<Cup>,
    /// Reduction ahead, e.g. 2.6
    #[arg(long, value_name = "RATIO", value_parser = value::reduction)]
    pub reduction: Option<f64>,
    /// Weight of the boat in running trim, e.g. "7.2 t"
    #[arg(long, value_name = "MASS", value_parser = value::mass)]
    pub displacement: Option<f64>,
    /// State of the bottom
    #[arg(long, value_name = "STATE", value_parser = value::word::<Growth>())]
    pub growth: Option<Growth>,
    /// State of the blades
    #[arg(long, value_name = "STATE", value_parser = value::word::<Growth>())]
    pub blade_growth: Option<Growth>,
}

/// `fairwake choose`
#[derive(Debug, Args)]
pub struct ChooseArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// What the propeller is for, instead of what the job says
    #[arg(long, value_name = "DUTY", value_parser = value::word::<Duty>())]
    pub duty: Option<Duty>,
    /// How many new propellers and ratios to list; the best of each kind of work on what is fitted is always there
    #[arg(long, default_value_t = crate::commands::choose::LISTED, value_name = "NUMBER", value_parser = clap::value_parser!(u16).range(1..=500))]
    pub most: u16,
}

/// `fairwake fit`
#[derive(Debug, Args)]
pub struct FitArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Check the propeller of [order] instead of the one fitted
    #[arg(long)]
    pub ordered: bool,
    /// Leave with exit code 1 when a check is as grave as this
    #[arg(long, value_enum, value_delimiter = ',', value_name = "LIST")]
    pub fail_on: Vec<FailOnFit>,
}

/// What `fit --fail-on` can look for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum FailOnFit {
    // A check says stop
    Stop,
    // A check says mend
    Mend,
}

/// `fairwake order`
#[derive(Debug, Args)]
pub struct OrderArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Show the order although something forbids sending it
    #[arg(long)]
    pub draft: bool,
    /// Leave with exit code 1 when what arrived is not what was ordered
    #[arg(long)]
    pub fail_on_receipt: bool,
}
