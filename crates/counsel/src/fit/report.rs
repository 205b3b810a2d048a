//! The answer of `fit` as plain data. Lengths in millimetres, as everywhere in answers.

use crate::report::{Band, Crowd, Gravity};
use serde::Serialize;

/// Answer of `fit`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Fit {
    /// Title of the job.
    pub title: String,
    /// One plain sentence.
    pub headline: String,
    /// The propeller the checks are for, in words.
    pub propeller: String,
    /// Everything looked at, gravest first; what is not known after that.
    pub checks: Vec<Check>,
    /// Which way it turns and which hand it needs.
    pub hand: HandSheet,
    /// Which way the stern goes.
    pub walk: Walk,
    /// Orders over engine speed.
    pub orders: Vec<Order>,
    /// Engine speeds to avoid.
    pub avoid: Vec<Avoid>,
    /// Blade numbers side by side.
    pub blades: Vec<BladeRow>,
    /// What rake does.
    pub rake: Vec<RakeRow>,
    /// What skew does.
    pub skew: Vec<SkewRow>,
    /// Drag under sail.
    pub under_sail: Vec<SailRow>,
    /// Where things stand, for the drawing.
    pub place: Place,
    /// The crowd the loads come from.
    pub crowd: Crowd,
    /// Assumptions that travelled with the numbers.
    pub notes: Vec<String>,
}

/// One check.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Check {
    /// Stable word: `tip-clearance`, `shaft-diameter`, ...
    pub code: &'static str,
    /// What is checked, in words.
    pub subject: &'static str,
    /// How grave.
    pub gravity: Gravity,
    /// False: nothing could be said, `measure` tells what is wanted.
    pub known: bool,
    /// A limit no propeller may pass: `choose` keeps to it and an order is refused beyond it.
    pub hard: bool,
    /// One plain sentence with its numbers.
    pub sentence: String,
    /// The value, where it is one.
    pub value: Option<Band>,
    /// What it should be at least, in the unit of the value.
    pub least: Option<f64>,
    /// What it should be at most.
    pub most: Option<f64>,
    /// The rule, and who says so.
    pub rule: String,
    /// What to do, or what to measure.
    pub measure: String,
    /// Caution where people can get hurt.
    pub caution: Option<&'static str>,
}

/// Hand and turning.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HandSheet {
    /// The hand needed: `right`, `left`, `pair`; `None` when the facts are missing or disagree.
    pub needed: Option<&'static str>,
    /// Each fact, with what it says.
    pub facts: Vec<Fact>,
    /// Whether two independent facts agree.
    pub proven: bool,
    /// In words.
    pub sentence: String,
    /// For a pair: which side which hand, and what the other way round would do.
    pub pair: Option<String>,
}

/// A fact about the hand.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Fact {
    /// Where it is from.
    pub from: &'static str,
    /// `right` or `left`.
    pub says: &'static str,
}

/// Paddlewheel effect.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Walk {
    /// Where the stern goes, ahead from rest: `starboard`, `port`, `neither`.
    pub ahead: &'static str,
    /// Astern.
    pub astern: &'static str,
    /// `small`, `moderate`, `strong`.
    pub size: &'static str,
    /// What makes it so on this boat.
    pub because: Vec<String>,
    /// In words.
    pub sentence: String,
}

/// One order over engine speed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Order {
    /// `shaft`, `blades`, `twice blades`, `engine`, `firing`.
    pub what: &'static str,
    /// Cycles for one turn of the engine.
    pub per_turn: f64,
    /// Hz at full throttle.
    pub at_full_throttle: f64,
}

/// A band of engine speeds to pass through quickly.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Avoid {
    /// rpm
    pub low: f64,
    /// rpm
    pub high: f64,
    /// Why.
    pub why: String,
}

/// A number of blades at equal load.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BladeRow {
    /// Blades.
    pub blades: u8,
    /// Diameter that takes the same torque at the same pitch ratio and shaft speed, mm.
    pub diameter: f64,
    /// Open-water efficiency there, %.
    pub efficiency: f64,
    /// Blade rate at full throttle, Hz.
    pub blade_rate: f64,
    /// Pulse of the passing blades on the hull over that of the propeller fitted.
    pub pulse: f64,
    /// Two blades or more pass a shadow of what stands ahead at once.
    pub in_shadow: bool,
}

/// A rake.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RakeRow {
    /// Degrees aft.
    pub rake: f64,
    /// Length and surface of a blade over an upright one of equal diameter, %.
    pub longer: f64,
    /// Tip aft of where an upright one stands, mm.
    pub tip_aft: f64,
}

/// A skew.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SkewRow {
    /// Degrees at the tip.
    pub skew: f64,
    /// Blade-rate thrust over mean thrust, %; an estimate.
    pub blade_rate_thrust: f64,
    /// The same over that without skew, %.
    pub left: f64,
}

/// Drag under sail.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SailRow {
    /// `locked`, `free`, `folded`, `feathered`.
    pub carried: &'static str,
    /// Drag, N.
    pub drag: Band,
    /// Speed lost, kn.
    pub lost: Band,
}

/// Where things stand, mm; what is not known is `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Place {
    /// Diameter.
    pub diameter: f64,
    /// Tip to hull above.
    pub above: Option<f64>,
    /// Tip to sole piece below.
    pub below: Option<f64>,
    /// Blade to what stands ahead.
    pub ahead: Option<f64>,
    /// Blade to the rudder.
    pub aft: Option<f64>,
    /// Shaft centre below the water.
    pub immersion: Option<f64>,
    /// Shaft diameter.
    pub shaft: Option<f64>,
}
