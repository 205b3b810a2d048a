//! Answers of `diagnose` and of `trial`.

use super::{Band, Crowd};
use serde::Serialize;

/// What a step or a measurement costs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Cost {
    /// Nothing but time.
    Free,
    /// An hour or a hand tool.
    Small,
    /// A diver, a mechanic's visit.
    Middling,
    /// A haul-out or parts.
    Large,
}

/// One suspected cause.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Cause {
    /// Stable word for machines: `growth-on-blades`, `tachometer`, ...
    pub code: &'static str,
    /// In plain words.
    pub cause: String,
    /// Chance, 0 to 1; all causes together with "none of these" sum to 1.
    pub chance: f64,
    /// Chance before the readings and symptoms, 0 to 1.
    pub prior: f64,
    /// What would have to be true, with its band: `a pitch of 16 to 17 in`.
    pub would_need: String,
    /// What speaks for it, with numbers.
    #[serde(rename = "for")]
    pub speaks_for: Vec<String>,
    /// What speaks against it, with numbers.
    pub against: Vec<String>,
    /// What to do if it is the cause.
    pub remedy: String,
    /// What that costs.
    pub cost: Cost,
}

/// One measurement worth making.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NextMeasurement {
    /// Stable word for machines.
    pub code: &'static str,
    /// What to do.
    pub measurement: String,
    /// Expected gain in the chance of naming the right cause, 0 to 1.
    pub worth: f64,
    /// The same as a sentence.
    pub because: String,
    /// What it costs.
    pub cost: Cost,
    /// Whether the boat has to come out of the water.
    pub haul_out: bool,
}

/// Answer of `diagnose`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Diagnosis {
    /// Title of the job.
    pub title: String,
    /// One plain sentence.
    pub headline: String,
    /// Stop-work warnings, first of all.
    pub stop: Vec<String>,
    /// What is missing: full-throttle speed short of what the boat as stated should reach, rpm; negative when it runs above.
    pub missing: Option<Band>,
    /// Causes, likeliest first.
    pub causes: Vec<Cause>,
    /// False when no cause fits the readings.
    pub explained: bool,
    /// Measurements, worthiest first.
    pub next_measurements: Vec<NextMeasurement>,
    /// The two sides of a pair, where the job tells them apart.
    pub pair: Option<super::PairReport>,
    /// What an inch of pitch is worth on this boat, rpm.
    pub inch_of_pitch: Band,
    /// The crowd of the likeliest cause.
    pub crowd: Crowd,
    /// Warnings that travelled with the numbers.
    pub notes: Vec<String>,
}

/// How one quantity was known before and after the readings.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Learnt {
    /// What: `displacement`, `pitch`, ...
    pub quantity: String,
    /// Before, in words.
    pub before: String,
    /// After, in words.
    pub after: String,
    /// Width of the band after over before: below 1 it tightened.
    pub narrowed_to: f64,
    /// How far its middle moved, in standard deviations of before.
    pub moved: f64,
}

/// What one reading did.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ReadingEffect {
    /// Which reading, in words.
    pub reading: String,
    /// What it taught, most first; weighed by this reading alone.
    pub learnt: Vec<Learnt>,
    /// Full-throttle engine speed expected with this reading alone, rpm.
    pub engine_speed: Band,
    /// Full-throttle speed expected with this reading alone, kn.
    pub speed: Band,
}

/// Answer of `trial` on the judgement's side: what the readings did to the knowledge of the boat.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Evidence {
    /// Title of the job.
    pub title: String,
    /// One plain sentence.
    pub headline: String,
    /// Reading by reading.
    pub readings: Vec<ReadingEffect>,
    /// What all together taught, most first.
    pub together: Vec<Learnt>,
    /// Full-throttle engine speed before any reading, rpm.
    pub engine_speed_before: Band,
    /// With all of them.
    pub engine_speed_after: Band,
    /// Full-throttle speed before any reading, kn.
    pub speed_before: Band,
    /// With all of them.
    pub speed_after: Band,
    /// The crowd.
    pub crowd: Crowd,
}
