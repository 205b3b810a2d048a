//! Answer of `trial` as plain data.

use counsel::report::{Band, Evidence};
use logs::{KNOT, Log, Proposal, Reduced};
use serde::Serialize;

use crate::commands::new::OpenQuestion;

/// Answer of `trial`.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Trial {
    /// Title of the job.
    pub title: String,
    /// One plain sentence.
    pub headline: String,
    /// The logs read.
    pub logs: Vec<LogRead>,
    /// What concerns the logs together.
    pub doubts: Vec<Doubted>,
    /// Readings proposed, in order of time.
    pub proposals: Vec<Proposed>,
    /// The file that the accepted readings were added to; null when none was.
    pub written: Option<String>,
    /// The readings in the job, reduced, those just accepted among them.
    pub readings: Vec<ReadingReduced>,
    /// Full-throttle readings of the job in the order of their dates; empty without at least two that are dated.
    pub history: Vec<PastReading>,
    /// Full throttle has fallen from that of the clean boat; null when it has not.
    pub growth_alarm: Option<GrowthAlarm>,
    /// Whether the proposals not accepted are weighed in `evidence` too.
    pub proposals_weighed: bool,
    /// What each reading did to the knowledge of the boat; null while `missing` is not empty.
    pub evidence: Option<Evidence>,
    /// What the crowd cannot be drawn without.
    pub missing: Vec<OpenQuestion>,
}

/// Something accepted that looks wrong or weak.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Doubted {
    /// Stable word for machines.
    pub code: &'static str,
    /// What was seen.
    pub message: String,
    /// What to do about it.
    pub help: String,
}

/// A log as read.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LogRead {
    /// The file.
    pub file: String,
    /// `gpx`, `nmea`, `csv`, `signalk`.
    pub format: &'static str,
    /// From its first moment to its last, s.
    pub lasts: f64,
    /// Bytes read.
    pub bytes: u64,
    /// Lines or track points.
    pub lines: u64,
    /// Of these: with something used.
    pub understood: u64,
    /// In order, with nothing used.
    pub unused: u64,
    /// Could not be read.
    pub refused: u64,
    /// Values left out that no instrument of a small craft can mean.
    pub implausible: u64,
    /// Equal to the line before.
    pub repeated: u64,
    /// The first lines refused.
    pub examples: Vec<RefusedLine>,
    /// What looks wrong about it.
    pub doubts: Vec<Doubted>,
}

/// A line that was refused.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RefusedLine {
    /// Its number, from 1.
    pub line: u64,
    /// Its beginning.
    pub text: String,
    /// Why.
    pub why: String,
}

/// A reading that a log offers.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Proposed {
    /// For `--accept`.
    pub number: usize,
    /// As the job file will hold it.
    pub label: String,
    /// As the job file will hold it.
    pub date: Option<String>,
    /// Engine speed, rpm.
    pub engine_speed: Option<f64>,
    /// Speed through the water, kn: its 80 % band.
    pub speed: Band,
    /// Current along the first run, kn.
    pub current: Option<f64>,
    /// How it changed, kn per hour.
    pub current_change: Option<f64>,
    /// Mean speed by the boat's log, kn.
    pub log_speed: Option<f64>,
    /// The runs in order.
    pub runs: Vec<Run>,
    /// `good`, `fair` or `weak`.
    pub quality: &'static str,
    /// The highest engine speed in the logs: perhaps full throttle.
    pub highest: bool,
    /// Said to be taken at full throttle.
    pub full_throttle: bool,
    /// The job held it already.
    pub in_job: bool,
    /// Added to the job just now.
    pub accepted: bool,
    /// What it was made of, in words.
    pub made_of: String,
    /// What to look at.
    pub doubts: Vec<Doubted>,
}

/// One steady run.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Run {
    /// s
    pub lasts: f64,
    /// Course over ground, degrees true.
    pub course: Option<f64>,
    /// Speed over ground, else by the log, kn.
    pub speed: Option<f64>,
    /// rpm
    pub engine_speed: Option<f64>,
}

/// A reading of the job, reduced.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ReadingReduced {
    /// Which, in words.
    pub reading: String,
    /// Taken at full throttle.
    pub full_throttle: bool,
    /// Engine speed, rpm: its 80 % band.
    pub engine_speed: Option<Band>,
    /// Mean speed over the directions, kn: its 80 % band.
    pub speed: Option<Band>,
    /// Current along the first run, kn.
    pub current: Option<f64>,
    /// How it changed from run to run, kn.
    pub current_change: Option<f64>,
    /// What runs in one direction differ by at most, kn.
    pub unsteady: Option<f64>,
    /// The boat's log less the satellites, kn.
    pub log_error: Option<f64>,
    /// What is weak about it.
    pub doubts: Vec<Doubted>,
}

/// A full-throttle reading of the past.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PastReading {
    /// Its label, else its date.
    pub reading: String,
    /// As written.
    pub date: Option<String>,
    /// rpm, with its instrument's 80 % band.
    pub engine_speed: Band,
    /// Days afloat since the bottom was cleaned.
    pub since_scrub: Option<f64>,
    /// Held by the governor: it could have turned faster.
    pub governed: bool,
    /// Taken with the propeller and gearbox of today.
    pub comparable: bool,
    /// Taken clean.
    pub clean: bool,
}

/// Full throttle has fallen.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct GrowthAlarm {
    /// `watch` or `alarm`.
    pub level: &'static str,
    /// What is missing, rpm.
    pub fallen: f64,
    /// The same as a part of the clean speed, 0 to 1.
    pub part: f64,
    /// In words.
    pub message: String,
    /// What to do.
    pub help: String,
    /// What keeps it from being sure.
    pub doubts: Vec<Doubted>,
}

impl From<&logs::Doubt> for Doubted {
    fn from(doubt: &logs::Doubt) -> Doubted {
        Doubted { code: doubt.code, message: doubt.message.clone(), help: doubt.help.clone() }
    }
}

/// Doubts for the report.
pub fn doubted(doubts: &[logs::Doubt]) -> Vec<Doubted> {
    doubts.iter().map(Doubted::from).collect()
}

impl From<&Log> for LogRead {
    fn from(log: &Log) -> LogRead {
        let counts = log.counts;
        let examples = log.examples.iter();
        LogRead {
            file: log.name.clone(),
            format: log.format.word(),
            lasts: log.samples.first().zip(log.samples.last()).map_or(0.0, |(first, last)| last.time - first.time),
            bytes: counts.bytes,
            lines: counts.lines,
            understood: counts.understood,
            unused: counts.unused,
            refused: counts.refused,
            implausible: counts.implausible,
            repeated: counts.repeated,
            examples: examples
                .map(|e| RefusedLine { line: e.line, text: e.text.clone(), why: e.why.clone() })
                .collect(),
            doubts: doubted(&log.doubts),
        }
    }
}

fn around(middle: f64, half: f64) -> Band {
    Band { low: (middle - half) / KNOT, middle: middle / KNOT, high: (middle + half) / KNOT, unit: "kn" }
}

fn knots(speed: Option<f64>) -> Option<f64> {
    speed.map(|speed| speed / KNOT)
}

/// A rotation in rpm with its band.
pub fn turns(quantity: &job::Quantity) -> Band {
    Band { low: 60.0 * quantity.low, middle: 60.0 * quantity.middle, high: 60.0 * quantity.high, unit: "rpm" }
}

impl Proposed {
    /// A proposal with its number, before anything is accepted.
    pub fn of(number: usize, proposal: &Proposal, job: &job::Job) -> Proposed {
        let (reading, runs) = (&proposal.reading, &proposal.runs);
        let run = |s: &logs::Stretch| Run {
            lasts: s.seconds,
            course: s.course,
            speed: s.speed().map(|mean| mean.value / KNOT),
            engine_speed: s.rpm.map(|mean| mean.value),
        };
        Proposed {
            number,
            label: reading.label.clone().unwrap_or_default(),
            date: reading.date.clone(),
            engine_speed: runs.rpm,
            speed: around(runs.speed, runs.half),
            current: knots(runs.current),
            current_change: knots(runs.drift),
            log_speed: knots(runs.by_log),
            runs: runs.stretches.iter().map(run).collect(),
            quality: proposal.quality.word(),
            highest: proposal.full_throttle,
            full_throttle: false,
            in_job: proposal.is_in(job),
            accepted: false,
            made_of: proposal.why.clone(),
            doubts: doubted(&proposal.doubts),
        }
    }
}

impl ReadingReduced {
    /// A reading of a job; `at` is its place in the file, from 0.
    pub fn of(at: usize, reading: &job::Reading) -> ReadingReduced {
        let reduced: Reduced = logs::reduce(reading);
        ReadingReduced {
            reading: name(at, reading),
            full_throttle: reading.full_throttle,
            engine_speed: reading.engine_speed.as_ref().map(turns),
            speed: reduced.speed.map(|speed| around(speed, reduced.half.unwrap_or(0.0))),
            current: knots(reduced.current),
            current_change: knots(reduced.drift),
            unsteady: knots(reduced.unsteady),
            log_error: knots(reduced.log_error),
            doubts: doubted(&reduced.doubts),
        }
    }
}

/// A reading in words.
pub fn name(at: usize, reading: &job::Reading) -> String {
    reading.label.clone().or_else(|| reading.date.clone()).unwrap_or_else(|| format!("reading {}", at + 1))
}
