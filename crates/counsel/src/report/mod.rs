//! The answers as plain data: what the command line prints, the page shows and the papers lay out.
//!
//! Every uncertain quantity is a [`Band`]: 10 %, 50 %, 90 % of the weighted crowd, and its unit. Speeds are in knots,
//! rotation in rpm, lengths in millimetres, powers in kilowatts: a front end converts for the reader.

mod evidence;

pub use crate::pair::report::{OddSide, PairCause, PairReport, SideSheet};
pub use evidence::*;

use serde::Serialize;

/// An uncertain quantity: one chance in ten below `low`, one in ten above `high`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Band {
    /// 10 % of the crowd lies below.
    pub low: f64,
    /// Half of the crowd lies below.
    pub middle: f64,
    /// 90 % of the crowd lies below.
    pub high: f64,
    /// Unit: `rpm`, `kn`, `kW`, `L/h`, `mm`, `%`, `m/s`, `kPa`, `N`, `kg`, `1` (pure number).
    pub unit: &'static str,
}

/// The boat at full throttle in one state.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FullThrottle {
    /// Engine speed, rpm.
    pub engine_speed: Band,
    /// Boat speed, kn.
    pub speed: Band,
    /// Chance that the engine is held by its governor or limiter, 0 to 1.
    pub governed: f64,
    /// Power taken from one engine, kW.
    pub power: Band,
    /// Fuel of all engines together, L/h.
    pub fuel: Band,
    /// Chance that the boat does not get over its hump although a faster running point exists, 0 to 1.
    pub stuck_at_hump: f64,
}

/// Chances that the propeller is over-pitched, right, under-pitched for its engine. They sum to 1.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Verdict {
    /// Full-throttle speed below the accepted band: too much propeller.
    pub over_pitched: f64,
    /// Inside the accepted band.
    pub right: f64,
    /// Above the band or on the governor: too little propeller.
    pub under_pitched: f64,
}

/// The band of full-throttle engine speed the engine's rating asks for.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AcceptedBand {
    /// rpm
    pub low: f64,
    /// rpm
    pub high: f64,
    /// `rpm`
    pub unit: &'static str,
    /// Who says so.
    pub source: String,
}

/// How grave a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "lowercase")]
pub enum Gravity {
    /// Stop: danger to people or engine.
    Stop,
    /// Mend.
    Mend,
    /// Watch.
    Watch,
    /// Well.
    Well,
}

/// One finding.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Finding {
    /// How grave.
    pub gravity: Gravity,
    /// Stable word for machines: `over-pitched`, `cavitation`, ...
    pub code: &'static str,
    /// One plain sentence with its numbers.
    pub sentence: String,
    /// What to do.
    pub advice: String,
    /// What the finding hangs on most.
    pub hangs_on: Vec<String>,
    /// The rule and who says so.
    pub source: String,
    /// Caution where people can get hurt.
    pub caution: Option<String>,
}

/// A stated or assumed quantity an answer hangs on.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Hang {
    /// What: `displacement`, `pitch`, ...
    pub quantity: String,
    /// The value used, with its band, in words: `6.5 t, 6.1 to 6.9`.
    pub value: String,
    /// Whether it was stated in the job (else assumed).
    pub stated: bool,
    /// Where it comes from.
    pub source: String,
    /// Share of the variance of the full-throttle engine speed that goes with it, 0 to 1.
    pub share: f64,
    /// What would narrow it.
    pub measure: String,
}

/// Limits and measures of the propeller at full throttle, clean.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Limits {
    /// Apparent slip, %: on stated pitch, shaft speed and boat speed.
    pub apparent_slip: Band,
    /// Real slip, %: on speed of advance through the wake.
    pub real_slip: Band,
    /// Open-water efficiency, %.
    pub efficiency: Band,
    /// Part of the blades' back that cavitates, %.
    pub back_cavitation: Band,
    /// Share of thrust lost to cavitation, %.
    pub thrust_lost: Band,
    /// Speed of the blade tip, m/s.
    pub tip_speed: Band,
    /// Thrust over projected blade area, kPa.
    pub blade_loading: Band,
    /// Thrust of one propeller, N.
    pub thrust: Band,
}

/// One engine speed in the table of load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LoadRow {
    /// Engine speed, rpm.
    pub engine_speed: f64,
    /// Boat speed, kn.
    pub speed: Band,
    /// Power taken, kW.
    pub power: Band,
    /// Power taken over the engine's full-throttle power at that speed, %.
    pub load: Band,
    /// Fuel of all engines, L/h.
    pub fuel: Band,
    /// Apparent slip, %.
    pub apparent_slip: Band,
}

/// One reading against the crowd.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ReadingFit {
    /// Which reading, in words.
    pub reading: String,
    /// `engine speed` (rpm), `speed` (kn) or `fuel` (L/h).
    pub quantity: &'static str,
    /// As read.
    pub measured: f64,
    /// Expected before any reading was weighed.
    pub expected: Band,
    /// After weighing.
    pub weighed: Band,
    /// How far the reading lies from what was expected, in standard deviations of both together.
    pub surprise: f64,
}

/// The crowd an answer was given on.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Crowd {
    /// Definite boats drawn.
    pub boats: usize,
    /// Effective number after weighing.
    pub effective: f64,
    /// Whether some boat explains the readings.
    pub explained: bool,
    /// In words.
    pub statement: String,
    /// Seed of the draw.
    pub seed: u32,
}

/// Answer of `judge`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Judgement {
    /// Title of the job.
    pub title: String,
    /// One plain sentence a skipper can repeat.
    pub headline: String,
    /// Full throttle as the boat is described (its weight, its growth).
    pub full_throttle: FullThrottle,
    /// Full throttle with clean bottom and blades, at the loaded weight if one is stated.
    pub clean_loaded: FullThrottle,
    /// What the rating asks for.
    pub accepted_band: AcceptedBand,
    /// The verdict, on the clean and loaded boat.
    pub verdict: Verdict,
    /// Limits and measures.
    pub limits: Limits,
    /// Part load.
    pub load: Vec<LoadRow>,
    /// Findings in order of gravity.
    pub findings: Vec<Finding>,
    /// What the answer hangs on, most influential first.
    pub hangs_on: Vec<Hang>,
    /// The one measurement that would narrow the answer most, in words.
    pub measure_next: String,
    /// Readings against the crowd.
    pub readings: Vec<ReadingFit>,
    /// The two sides of a pair, where the job tells them apart.
    pub pair: Option<PairReport>,
    /// The crowd.
    pub crowd: Crowd,
    /// Warnings that travelled with the numbers.
    pub notes: Vec<String>,
}

/// One side of a change.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Side {
    /// The propeller (and ratio, weight, growth where changed) in words.
    pub what: String,
    /// Full throttle as described.
    pub full_throttle: FullThrottle,
    /// The verdict, clean and loaded.
    pub verdict: Verdict,
    /// Limits and measures.
    pub limits: Limits,
    /// Fuel at the cruising speed compared, L/h.
    pub cruise_fuel: Band,
}

/// Difference after minus before, boat by boat.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Difference {
    /// rpm
    pub engine_speed: Band,
    /// kn
    pub speed: Band,
    /// L/h at the cruising speed compared.
    pub cruise_fuel: Band,
}

/// Answer of `try`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Comparison {
    /// Title of the job.
    pub title: String,
    /// One plain sentence.
    pub headline: String,
    /// Speed at which cruising fuel is compared, kn.
    pub cruise_speed: f64,
    /// As it is.
    pub before: Side,
    /// After the change.
    pub after: Side,
    /// After minus before.
    pub difference: Difference,
    /// What the rating asks for.
    pub accepted_band: AcceptedBand,
    /// What the answer hangs on.
    pub hangs_on: Vec<Hang>,
    /// The crowd.
    pub crowd: Crowd,
    /// Warnings that travelled with the numbers.
    pub notes: Vec<String>,
}

/// What kind of step a candidate is, in order of cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Step {
    /// Leave as it is.
    Leave,
    /// Clean bottom and blades.
    Clean,
    /// Make the blades alike, at the pitch they were meant to have.
    TrueUp,
    /// Put a cup on, or take it out.
    Cup,
    /// Twist the blades to another pitch.
    Repitch,
    /// Take diameter off.
    Trim,
    /// Another propeller.
    NewPropeller,
    /// Another reduction, with the propeller that suits it.
    Ratio,
}

/// One line of the shortlist.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Candidate {
    /// Kind of step.
    pub step: Step,
    /// In words: `re-pitch to 16 x 9 in`.
    pub what: String,
    /// mm
    pub diameter: f64,
    /// mm
    pub pitch: f64,
    /// Number of blades.
    pub blades: u8,
    /// Expanded area ratio.
    pub area_ratio: f64,
    /// Cup as a fraction of pitch.
    pub cup: f64,
    /// Reduction.
    pub reduction: f64,
    /// Full throttle, clean and loaded.
    pub full_throttle: FullThrottle,
    /// Chance of lying inside the accepted band.
    pub in_band: f64,
    /// Chances, clean and loaded.
    pub verdict: Verdict,
    /// Fuel at the cruising speed compared, L/h.
    pub cruise_fuel: Band,
    /// Part of the blades' back that cavitates at full throttle, %.
    pub back_cavitation: Band,
    /// Steady pull at the towing speed (duty tow), N.
    pub tow_pull: Option<Band>,
    /// What the ranking goes by: higher is better, 0 to 100.
    pub merit: f64,
    /// Why it ranks where it ranks.
    pub why: String,
}

/// A hard limit of `fit`, and how many candidates broke it first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Misfit {
    /// The limit in words: `shaft diameter`, `tip to hull`, `hub round the bore`, ...
    pub what: &'static str,
    /// How many candidates.
    pub count: usize,
}

/// Answer of `choose`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Choice {
    /// Title of the job.
    pub title: String,
    /// One plain sentence.
    pub headline: String,
    /// Stated duty: `top speed`, `cruise`, `tow`, `mixed`.
    pub duty: &'static str,
    /// Speed at which cruising fuel is compared, kn.
    pub cruise_speed: f64,
    /// Ranked, best first; the propeller fitted stands among them.
    pub shortlist: Vec<Candidate>,
    /// How many were looked at.
    pub considered: usize,
    /// Largest diameter allowed, mm, and why.
    pub largest_diameter: f64,
    /// Where that limit comes from.
    pub largest_diameter_source: String,
    /// What the room for the propeller costs, and what another reduction would give back, where the room is known.
    pub room: Option<String>,
    /// How many were left out because they break a hard limit of `fit`: room, shaft or blades.
    pub misfits: usize,
    /// The same by what they break, the most frequent first.
    pub left_out: Vec<Misfit>,
    /// What the rating asks for.
    pub accepted_band: AcceptedBand,
    /// What the answer hangs on.
    pub hangs_on: Vec<Hang>,
    /// The crowd.
    pub crowd: Crowd,
    /// Warnings that travelled with the numbers.
    pub notes: Vec<String>,
}
