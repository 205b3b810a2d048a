//! Flat-faced elliptical blades.

use super::b_series::finish;
use super::form::{EDGE_SHARE, Form};
use super::propeller::{Hand, Propeller};
use super::section::Section;
use crate::source::{Method, Trust};
use std::f64::consts::PI;

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

/// Thickness at the tip over that at the axis. Ours.
const TIP_SHARE: f64 = 0.1;

/// Radii at which sections are drawn, besides the hub, `r/R`.
const RADII: [f64; 12] = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.975, 1.0];

/// A flat-faced propeller: chord `c0 √(1 - x²)`, thickness straight from the axis to a tenth of that at the tip, pitch constant.
#[must_use]
pub fn flat_faced(what: &FlatFaced) -> Propeller {
    let (d, radius, hub) = (what.diameter, 0.5 * what.diameter, what.hub_ratio);
    // Area of the quarter circle outside the hub, in units of R c0.
    let quarter = 0.5 * (hub.clamp(0.0, 1.0).acos() - hub * (1.0 - hub * hub).max(0.0).sqrt());
    let blade_area = match what.width {
        Width::MeanWidthRatio(ratio) => ratio * d * (1.0 - hub) * radius,
        Width::ExpandedAreaRatio(ratio) => ratio * 0.25 * PI * d * d / f64::from(what.blades.max(1)),
    };
    let widest = if quarter > 0.0 { blade_area / (radius * quarter) } else { 0.0 };
    let sections = std::iter::once(hub)
        .chain(RADII.into_iter().filter(|&x| x > hub + 0.01))
        .map(|x| {
            let chord = widest * (1.0 - x * x).max(0.0).sqrt();
            let thickness = d * what.thickness_fraction * (1.0 - (1.0 - TIP_SHARE) * x);
            let mut section = Section {
                radius: x * radius,
                pitch: what.pitch_ratio * d,
                leading: 0.5 * chord,
                trailing: 0.5 * chord,
                rake: x * radius * what.rake.tan(),
                offsets: Form::FlatFaced.offsets(x, thickness, EDGE_SHARE * thickness),
            };
            section.set_skew_angle(what.skew * ((x - hub) / (1.0 - hub)).powi(2));
            section
        })
        .collect();
    finish(sections, radius, what.blades, what.hand, hub * d)
}
