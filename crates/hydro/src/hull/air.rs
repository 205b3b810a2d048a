//! Air resistance of what stands above the water.

use crate::source::{Method, Trust};

/// The register entry.
pub const METHOD: Method = Method {
    name: "air-drag",
    quantity: "air resistance, N",
    formula: "R = ρa/2 V² A CD",
    range: "still air; CD 0.7 for a clean motorboat, 0.8 to 1.0 with flybridge or canvas, mast and rigging 1.0 to 1.2 on their own area",
    error: "CD within about a quarter",
    source: "CD 0.70 in Savitsky, DeLorme and Datla 2007, 0.8 default in ITTC 1978 performance prediction; from memory",
    trust: Trust::Memory,
};

/// Density of air at 15 °C and standard pressure, kg/m³ (ISO 2533 standard atmosphere).
pub const DENSITY: f64 = 1.225;
/// Drag coefficient of a clean motorboat, 0.70 (from memory).
pub const CLEAN_MOTORBOAT: f64 = 0.70;
/// Drag coefficient with flybridge or canvas, 0.8 to 1.0 (from memory).
pub const WITH_CANVAS: f64 = 0.90;

/// Air resistance `ρa/2 V² A CD`, N: `area` m², `drag` coefficient, `air_speed` over the boat m/s.
#[must_use]
pub fn resistance(area: f64, drag: f64, air_speed: f64) -> f64 {
    0.5 * DENSITY * air_speed * air_speed.abs() * area.max(0.0) * drag.max(0.0)
}

#[cfg(test)]
mod tests {
    use super::resistance;

    #[test]
    fn ten_metres_a_second_on_a_square_metre() {
        assert!((resistance(1.0, 1.0, 10.0) - 61.25).abs() < 1e-12);
        // Wind from astern faster than the boat pushes.
        assert!(resistance(1.0, 1.0, -10.0) < 0.0);
    }
}
