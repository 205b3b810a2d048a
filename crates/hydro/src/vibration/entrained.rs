//! Water carried along by a propeller that vibrates.

use crate::source::{Method, Trust};
use std::f64::consts::PI;

/// Schwanecke's formulas.
pub const METHOD: Method = Method {
    name: "entrained-water-schwanecke",
    quantity: "entrained mass (kg) and polar inertia (kg m2) of a propeller",
    formula: "m11 = 0.2812 pi rho D^3/Z EAR^2; m44 = 0.0703 rho D^5/(pi Z) (P/D)^2 EAR^2; m44 = m11 (P/2pi)^2",
    range: "solid blades at small vibration",
    error: "plain strips give the same within 5 %; true values are lower, 0.5 to 0.75 of them",
    source: "H. Schwanecke 1963, as printed by Carlton (from memory); the constants obey their own relations",
    trust: Trust::Memory,
};

/// Entrained axial mass, kg; `density` kg/m³, diameter m.
#[must_use]
pub fn mass(density: f64, diameter: f64, blades: u8, area_ratio: f64) -> f64 {
    0.2812 * PI * density * diameter.powi(3) / f64::from(blades.max(1)) * area_ratio * area_ratio
}

/// Entrained polar inertia, kg m².
#[must_use]
pub fn inertia(density: f64, diameter: f64, blades: u8, area_ratio: f64, pitch_ratio: f64) -> f64 {
    0.0703 * density * diameter.powi(5) / (PI * f64::from(blades.max(1))) * (pitch_ratio * area_ratio).powi(2)
}
