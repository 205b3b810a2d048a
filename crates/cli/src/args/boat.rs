//! Options of what is asked about the boat as she is.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

/// `fairwake new`
#[derive(Debug, Args)]
pub struct NewArgs {
    /// The job file to write
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Replace the file if it is there
    #[arg(long)]
    pub force: bool,
}

/// `fairwake judge`
#[derive(Debug, Args)]
pub struct JudgeArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Exit with code 1 when one of these is reached
    #[arg(long, value_enum, value_delimiter = ',', value_name = "WHAT")]
    pub fail_on: Vec<FailOn>,
}

/// What `judge --fail-on` can look for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum FailOn {
    // Over-pitched is likelier than not
    OverPitched,
    // Under-pitched is likelier than not
    UnderPitched,
    // A finding says mend, or stop
    Mend,
    // A finding says stop
    Stop,
}

/// `fairwake diagnose`
#[derive(Debug, Args)]
pub struct DiagnoseArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Exit with code 1 when one of these is reached
    #[arg(long, value_enum, value_delimiter = ',', value_name = "WHAT")]
    pub fail_on: Vec<FailOnCause>,
}

/// What `diagnose --fail-on` can look for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum FailOnCause {
    // A warning says stop
    Stop,
    // No cause fits the readings
    Unexplained,
}

/// `fairwake workbench`
#[derive(Debug, Args)]
pub struct WorkbenchArgs {
    /// The folder of job files
    #[arg(value_name = "FOLDER", default_value = ".")]
    pub folder: PathBuf,
    /// Port to listen on [any free one when left out]
    #[arg(long, default_value_t = 0, hide_default_value = true, value_name = "PORT")]
    pub port: u16,
    /// Address of a network to serve, for a phone on the dock: whoever has the printed address with its token may read and
    /// change the jobs, and what is sent is not encrypted [this machine only when left out]
    #[arg(long, value_name = "ADDRESS")]
    pub host: Option<std::net::IpAddr>,
    /// Do not open the browser
    #[arg(long)]
    pub no_browser: bool,
}

/// `fairwake explain`
#[derive(Debug, Args)]
pub struct ExplainArgs {
    /// The term, e.g. pitch [all of them when left out]
    #[arg(value_name = "TERM")]
    pub term: Option<String>,
    /// The job file whose numbers are put in
    #[arg(value_name = "JOB")]
    pub job: Option<PathBuf>,
}
