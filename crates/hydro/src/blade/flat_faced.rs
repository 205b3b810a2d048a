//! Flat-faced elliptical blades.

use super::propeller::{Hand, Propeller};
use crate::source::{Method, Trust};

/// Flat-faced blades.
pub const METHOD: Method = Method {
    name: "flat-faced-geometry",
    quantity: "outline and ordinates of flat-faced elliptical blades",
    formula: "expanded outline a half ellipse on the shaft axis; face flat, back parabolic; thickness straight from axis to tip",
    range: "2 to 7 blades",
    error: "stock propellers differ in outline",
    source: "common practice, no source",
    trust: Trust::CommonPractice,
};

/// How wide the blades are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Width {
    /// Mean width ratio.
    MeanWidthRatio(f64),
    /// `AE/A0`.
    ExpandedAreaRatio(f64),
}

/// What to draw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlatFaced {
    /// Blades.
    pub blades: u8,
    /// Width.
    pub width: Width,
    /// `P/D`, constant.
    pub pitch_ratio: f64,
    /// Blade thickness fraction (at the axis, over `D`).
    pub thickness_fraction: f64,
    /// Diameter, m.
    pub diameter: f64,
    /// Hub diameter over `D`.
    pub hub_ratio: f64,
    /// Rake angle, rad, positive aft.
    pub rake: f64,
    /// Skew angle at the tip, rad (grows with the square of the radius outside the hub).
    pub skew: f64,
    /// Hand.
    pub hand: Hand,
}

/// A flat-faced propeller.
#[must_use]
pub fn flat_faced(what: &FlatFaced) -> Propeller {
    let _ = what;
    todo!()
}
