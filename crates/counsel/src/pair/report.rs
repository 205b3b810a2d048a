//! The answer for a pair as plain data.

use crate::report::{AcceptedBand, Band, Verdict};
use serde::Serialize;

/// Two engines and propellers on one hull, side by side.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PairReport {
    /// One plain sentence.
    pub headline: String,
    /// Port.
    pub port: SideSheet,
    /// Starboard.
    pub starboard: SideSheet,
    /// Boat speed with both at full throttle, kn.
    pub speed: Band,
    /// True engine speed, starboard less port, at full throttle, rpm.
    pub engine_speed_difference: Band,
    /// Power taken, starboard less port, at full throttle, kW.
    pub power_difference: Band,
    /// Chance that the sides' full throttles differ by more than 2 %.
    pub uneven: f64,
    /// Which side lies farther from what is expected of it, and the chance of that.
    pub odd_side: Option<OddSide>,
    /// What the difference between the instruments lies in, most likely first.
    pub causes: Vec<PairCause>,
    /// The measurement that would part these causes.
    pub measure_next: String,
    /// The band the engines' rating asks for.
    pub accepted_band: AcceptedBand,
    /// Pairs drawn, and their effective number.
    pub pairs: usize,
    /// Effective number of pairs after weighing.
    pub effective: f64,
    /// Whether some pair explains the readings of both sides.
    pub explained: bool,
    /// Assumptions that travelled with the numbers.
    pub notes: Vec<String>,
}

/// One side.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SideSheet {
    /// Its propeller as stated, in words.
    pub propeller: String,
    /// Pitch that acts, mm.
    pub pitch: Band,
    /// True engine speed at full throttle, rpm.
    pub engine_speed: Band,
    /// What its own instrument would show, rpm.
    pub shown: Band,
    /// What was read at full throttle as the boat is, rpm.
    pub read: Option<f64>,
    /// Error of its tachometer, %.
    pub tachometer: Band,
    /// Power taken, kW.
    pub power: Band,
    /// Power taken over what the engine has at that speed, %.
    pub load: Band,
    /// Thrust, N.
    pub thrust: Band,
    /// Chances of too much, right and too little propeller at full throttle as the boat is.
    pub verdict: Verdict,
}

/// The side that is odd.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OddSide {
    /// `port` or `starboard`.
    pub side: &'static str,
    /// 0 to 1.
    pub chance: f64,
}

/// What the difference lies in.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PairCause {
    /// `propellers`, `engines`, `gears`, `tachometers`.
    pub cause: &'static str,
    /// Chance that this is the greater part of the difference, 0 to 1.
    pub chance: f64,
    /// How much of the difference it makes, rpm: starboard less port.
    pub difference: Band,
    /// What to do about it.
    pub remedy: String,
    /// What that costs, in words.
    pub cost: &'static str,
}
