//! What can be said on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use job::survey::Tool;
use job::{Cup, Duty, Growth, Source};

use crate::value;

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

/// `fairwake draw`
#[derive(Debug, Args)]
pub struct DrawArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Which pictures [all of them when left out]
    #[arg(long, value_enum, value_delimiter = ',', value_name = "LIST")]
    pub what: Vec<DrawWhat>,
    /// The folder to write into; made when it is not there
    #[arg(short, long, default_value = ".", value_name = "DIR")]
    pub output: PathBuf,
    /// Width of the pictures in pixels; below 560 they are laid out for a phone
    #[arg(long, default_value_t = 900, value_name = "PIXELS", value_parser = clap::value_parser!(u16).range(320..=2000))]
    pub width: u16,
    /// Language of the pictures
    #[arg(long, value_enum, default_value_t = LanguageWord::En, value_name = "LANGUAGE")]
    pub language: LanguageWord,
    /// Date printed on them [that of the last reading when left out]
    #[arg(long, value_name = "TEXT")]
    pub date: Option<String>,
    /// Light ink on a dark ground
    #[arg(long)]
    pub dark: bool,
    /// Each picture as PNG too (builds with the feature `png`)
    #[arg(long)]
    pub png: bool,
    /// Blade, hub and propeller as STL
    #[arg(long)]
    pub stl: bool,
    /// Expanded outline and pitch templates at full size as DXF
    #[arg(long)]
    pub dxf: bool,
    /// Replace files that are there
    #[arg(long)]
    pub force: bool,
    /// Changes, drawn as before and after.
    #[command(flatten)]
    pub change: ChangeArgs,
}

/// What `draw` can draw.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum DrawWhat {
    // The propeller: from astern, from the side, expanded
    Propeller,
    // Engine limit and propeller demand
    Demand,
    // Where the power goes
    Flow,
    // Engine speed, fuel and slip over boat speed
    Speeds,
    // Cavitation over the speed range
    Cavitation,
    // The shortlist at a glance
    Shortlist,
    // What the readings taught
    Known,
    // Causes and their evidence
    Causes,
    // The propeller in its place
    Place,
    // Rates of shaft, blades and engine, and what they meet
    Rates,
    // Which way the stern goes
    Walk,
    // The bore for the workshop
    Bore,
}

impl DrawWhat {
    /// Every one.
    pub const ALL: [DrawWhat; 12] = [
        DrawWhat::Propeller,
        DrawWhat::Demand,
        DrawWhat::Flow,
        DrawWhat::Speeds,
        DrawWhat::Cavitation,
        DrawWhat::Shortlist,
        DrawWhat::Known,
        DrawWhat::Causes,
        DrawWhat::Place,
        DrawWhat::Rates,
        DrawWhat::Walk,
        DrawWhat::Bore,
    ];

    /// Name of its file, without ending.
    pub const fn file(self) -> &'static str {
        match self {
            DrawWhat::Propeller => "propeller",
            DrawWhat::Demand => "demand",
            DrawWhat::Flow => "flow",
            DrawWhat::Speeds => "speeds",
            DrawWhat::Cavitation => "cavitation",
            DrawWhat::Shortlist => "shortlist",
            DrawWhat::Known => "known",
            DrawWhat::Causes => "causes",
            DrawWhat::Place => "place",
            DrawWhat::Rates => "rates",
            DrawWhat::Walk => "walk",
            DrawWhat::Bore => "bore",
        }
    }
}

/// `fairwake papers`
#[derive(Debug, Args)]
pub struct PapersArgs {
    /// The job file
    #[arg(value_name = "JOB")]
    pub job: PathBuf,
    /// Which papers [all of them when left out]
    #[arg(long, value_parser = paper(), value_delimiter = ',', value_name = "LIST")]
    pub only: Vec<papers::Kind>,
    /// The folder to write into; made when it is not there
    #[arg(short, long, default_value = ".", value_name = "DIR")]
    pub output: PathBuf,
    /// Language of the papers
    #[arg(long, value_enum, default_value_t = LanguageWord::En, value_name = "LANGUAGE")]
    pub language: LanguageWord,
    /// Size of the sheets
    #[arg(long, value_enum, default_value_t = PaperSize::A4, value_name = "SIZE")]
    pub size: PaperSize,
    /// Each paper as PDF too (builds with the feature `pdf`)
    #[arg(long)]
    pub pdf: bool,
    /// Make the order out for this line of the list that `fairwake choose` prints [its best when left out]
    #[arg(long, value_name = "NUMBER")]
    pub order: Option<u16>,
    /// Date of issue printed on them [today when left out]
    #[arg(long, value_name = "TEXT")]
    pub date: Option<String>,
    /// Replace files that are there
    #[arg(long)]
    pub force: bool,
}

/// Reads the word of a paper.
fn paper() -> impl clap::builder::TypedValueParser<Value = papers::Kind> {
    use clap::builder::{PossibleValuesParser, TypedValueParser as _};
    PossibleValuesParser::new(papers::Kind::ALL.map(papers::Kind::word))
        .try_map(|word| papers::Kind::of_word(&word).ok_or("no such paper"))
}

/// A language of pictures and papers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum LanguageWord {
    // English
    En,
    // Spanish
    Es,
}

impl LanguageWord {
    /// The language it names.
    pub const fn language(self) -> words::Language {
        match self {
            LanguageWord::En => words::Language::English,
            LanguageWord::Es => words::Language::Spanish,
        }
    }
}

/// A size of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum PaperSize {
    // 210 by 297 mm
    A4,
    // 8.5 by 11 in
    Letter,
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
