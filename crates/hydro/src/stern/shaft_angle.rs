//! What a shaft set at an angle to the flow costs.

use crate::source::{Method, Trust};

/// What this file is.
pub const METHOD: Method = Method {
    name: "shaft-angle",
    quantity: "speed of advance along the shaft, thrust along the boat's course, share lost",
    formula: "Va = V (1 - w) cos psi; T_x = T cos psi; loss 1 - cos psi",
    range: "0..15 degrees; above 12 degrees not advised",
    error: "leaves out the side force and the fluctuation of thrust and torque once a turn",
    source: "small-angle decomposition; forces in oblique flow: J. B. Hadler, The prediction of power performance on \
             planing craft, Trans. SNAME 74 (1966); loss at 6, 10 and 14 degrees as the trade states it, from memory",
    trust: Trust::Memory,
};

/// Highest angle to the flow that is advised, degrees (common practice, no source).
pub const ADVISED_DEG: f64 = 12.0;

/// Share of the shaft's direction along the course, `cos ψ`, for an angle in degrees (kept within ±60).
#[must_use]
pub fn along(angle_deg: f64) -> f64 {
    if angle_deg.is_finite() { angle_deg.clamp(-60.0, 60.0).to_radians().cos() } else { 1.0 }
}

/// Thrust along the course, N: `T cos ψ`.
#[must_use]
pub fn horizontal_thrust(thrust: f64, angle_deg: f64) -> f64 {
    thrust * along(angle_deg)
}

/// Share of thrust lost to the angle, `1 - cos ψ`.
///
/// The losses the trade states (6° 0.5 %, 10° 1.5 %, 14° 3 %) are this very expression rounded, not an addition to it.
#[must_use]
pub fn loss(angle_deg: f64) -> f64 {
    1.0 - along(angle_deg)
}
