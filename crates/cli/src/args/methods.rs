//! Options of the methods by themselves.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use job::Cup;

use crate::value;

/// `fairwake openwater`
#[derive(Debug, Args)]
pub struct OpenWaterArgs {
    /// Take the propeller from this job file; options below replace what it says
    #[arg(value_name = "JOB")]
    pub job: Option<PathBuf>,
    /// The propeller series
    #[arg(long, value_enum, value_name = "SERIES")]
    pub series: Option<SeriesWord>,
    /// Number of blades
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u8).range(2..=7))]
    pub blades: Option<u8>,
    /// Pitch over diameter
    #[arg(long, value_name = "RATIO", value_parser = value::pitch_ratio)]
    pub pitch_ratio: Option<f64>,
    /// Expanded area ratio
    #[arg(long, value_name = "RATIO", value_parser = value::series_area_ratio)]
    pub area_ratio: Option<f64>,
    /// Diameter, when the pitch is given as a length
    #[arg(long, value_name = "LENGTH", value_parser = value::length, requires = "pitch")]
    pub diameter: Option<f64>,
    /// Pitch as a length, instead of the pitch ratio
    #[arg(long, value_name = "LENGTH", value_parser = value::pitch, requires = "diameter", conflicts_with = "pitch_ratio")]
    pub pitch: Option<f64>,
    /// Reynolds number of the blade at 0.75 R [the series' own when left out]
    #[arg(long, value_name = "NUMBER", value_parser = value::reynolds)]
    pub reynolds: Option<f64>,
    /// Cup of the trailing edge
    #[arg(long, value_name = "CUP", value_parser = value::word::<Cup>())]
    pub cup: Option<Cup>,
    /// First advance ratio
    #[arg(long, default_value_t = 0.0, value_name = "J", value_parser = value::advance_ratio)]
    pub from: f64,
    /// Last advance ratio [where the thrust ends when left out]
    #[arg(long, value_name = "J", value_parser = value::advance_ratio)]
    pub to: Option<f64>,
    /// Step of the advance ratio
    #[arg(long, default_value_t = 0.05, value_name = "J", value_parser = value::step)]
    pub step: f64,
}

/// A propeller series.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum SeriesWord {
    // Wageningen B-series, airfoil sections, 2 to 7 blades
    B,
    // Flat-faced sections with round backs
    FlatFaced,
    // Kaplan blades in a nozzle
    Ducted,
}

/// `fairwake resistance`
#[derive(Debug, Args)]
pub struct ResistanceArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
}

/// `fairwake sources`
#[derive(Debug, Args)]
pub struct SourcesArgs {
    /// Show only methods in which this word occurs
    #[arg(value_name = "TERM")]
    pub term: Option<String>,
}

/// `fairwake completions`
#[derive(Debug, Args)]
pub struct CompletionsArgs {
    /// The shell
    #[arg(value_enum, value_name = "SHELL")]
    pub shell: clap_complete::Shell,
}
