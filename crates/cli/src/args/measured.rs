//! Options of what was measured: trials and surveys.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use job::Source;
use job::survey::Tool;

use crate::value;

/// `fairwake trial`
#[derive(Debug, Args)]
pub struct TrialArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Logs of one trial: GPX, NMEA 0183, CSV with a header, Signal K delta lines
    #[arg(value_name = "LOG")]
    pub logs: Vec<PathBuf>,
    /// Add proposed readings to the job file: their numbers, or all that it does not hold yet
    #[arg(long, value_name = "NUMBERS|all", value_parser = value::accept, num_args = 0..=1, default_missing_value = "all")]
    pub accept: Option<value::Accept>,
    /// These proposed readings were taken at full throttle
    #[arg(long, value_name = "NUMBERS", value_delimiter = ',')]
    pub full_throttle: Vec<usize>,
    /// What the engine speed in the logs was read by
    #[arg(long, value_name = "SOURCE", value_parser = value::word::<Source>(), default_value = "dashboard")]
    pub rpm_by: Source,
    /// How long throttle and course must have been held, s
    #[arg(long, value_name = "SECONDS", value_parser = value::seconds, default_value = "60")]
    pub steady: f64,
    /// Format of the logs, where it is not told right from their content
    #[arg(long, value_enum, value_name = "FORMAT")]
    pub log_format: Option<LogFormat>,
}

/// `fairwake survey`
#[derive(Debug, Args)]
pub struct SurveyArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Take the blades from the table (CSV) of a pitch gauge or a coordinate machine
    #[arg(long, value_name = "CSV")]
    pub gauge: Option<PathBuf>,
    /// The tool that made the table, which sets the spreads
    #[arg(long, value_name = "TOOL", value_parser = value::word::<Tool>(), requires = "gauge")]
    pub tool: Option<Tool>,
    /// Take the points clicked round a blade on a photograph (CSV: x, y in pixels); the job's [survey.photo] says centre and scale
    #[arg(long, value_name = "CSV")]
    pub outline: Option<PathBuf>,
    /// Add the tables' blades or points to the job file, which must hold none yet
    #[arg(long)]
    pub add: bool,
}

/// What a log is written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum LogFormat {
    // Track
    Gpx,
    // NMEA 0183 sentences
    Nmea,
    // Table with a header
    Csv,
    // Signal K delta lines
    #[value(name = "signalk")]
    SignalK,
}
