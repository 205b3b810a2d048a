//! Options of what is made: pictures and papers.

use std::path::PathBuf;

use super::ChangeArgs;
use clap::{Args, ValueEnum};

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
