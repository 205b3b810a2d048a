//! Expanded, developed and projected outline and area.

use super::propeller::{Blade, Propeller};
use crate::source::{Method, Trust};

/// Areas.
pub const METHOD: Method = Method {
    name: "blade-areas",
    quantity: "expanded, developed and projected area, m^2, outside the hub",
    formula: "AE = int c dr; AD: each section laid on its osculating circle r/cos^2(phi); AP = int r (angle covered seen along the shaft) dr",
    range: "any blade; developed area is counted from mid-chord, so skew does not enter",
    error: "numerical, below 0.05 %",
    source: "definitions of ITTC and ISO 3715 (from memory); developed: classical construction",
    trust: Trust::Memory,
};

/// Taylor's relation.
pub const METHOD_TAYLOR: Method = Method {
    name: "taylor-projected",
    quantity: "projected over developed area",
    formula: "AP/AD = 1.067 - 0.229 P/D",
    range: "P/D 0.6 to 2.0, elliptical blades without much skew",
    error: "a few per cent",
    source: "D. W. Taylor; three copies, one UFC 4-159-03 eq. 22",
    trust: Trust::Checked,
};

/// Areas of one blade outside the hub, m².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BladeAreas {
    /// Expanded.
    pub expanded: f64,
    /// Developed.
    pub developed: f64,
    /// Projected on the plane of rotation.
    pub projected: f64,
}

/// Areas of a propeller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Areas {
    /// Of all blades, m².
    pub blades: BladeAreas,
    /// `A0 = πD²/4`, m².
    pub disc: f64,
    /// `AE/A0`.
    pub expanded_ratio: f64,
    /// `AD/A0`.
    pub developed_ratio: f64,
    /// `AP/A0`.
    pub projected_ratio: f64,
    /// Mean width ratio: expanded area of a blade over its length outside the hub, over `D`.
    pub mean_width_ratio: f64,
    /// `AP/A0` by Taylor's relation from the developed area and the pitch at 0.7 R, as a check.
    pub projected_ratio_taylor: f64,
}

/// A drawn outline of one blade, m: across (positive toward the leading edge) and up from the shaft axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    /// Leading edge, hub to tip.
    pub leading: Vec<[f64; 2]>,
    /// Trailing edge, hub to tip.
    pub trailing: Vec<[f64; 2]>,
}

/// `AP = AD (1.067 - 0.229 P/D)`; any unit of area.
#[must_use]
pub fn taylor_projected(developed: f64, pitch_ratio: f64) -> f64 {
    developed * (1.067 - 0.229 * pitch_ratio)
}

/// Areas of one blade outside `hub_radius`.
#[must_use]
pub fn blade_areas(blade: &Blade, hub_radius: f64) -> BladeAreas {
    let _ = (blade, hub_radius);
    todo!()
}

/// Areas and ratios of a propeller.
#[must_use]
pub fn areas(propeller: &Propeller) -> Areas {
    let _ = propeller;
    todo!()
}

/// Expanded outline: chords laid straight across at their radius.
#[must_use]
pub fn expanded_outline(blade: &Blade, hub_radius: f64, points: usize) -> Outline {
    let _ = (blade, hub_radius, points);
    todo!()
}

/// Developed outline: chords laid on their osculating circles.
#[must_use]
pub fn developed_outline(blade: &Blade, hub_radius: f64, points: usize) -> Outline {
    let _ = (blade, hub_radius, points);
    todo!()
}

/// Projected outline: the blade upright, seen along the shaft, leading edge to the positive side (mirror it for the hand).
#[must_use]
pub fn projected_outline(blade: &Blade, hub_radius: f64, points: usize) -> Outline {
    let _ = (blade, hub_radius, points);
    todo!()
}
