//! The air: standard pressure at a height, density.

use super::{ATMOSPHERE, vapour};
use crate::source::{Method, Trust};

/// What [`standard_pressure`] and [`air_density`] are.
pub const METHOD: Method = Method {
    name: "standard-atmosphere",
    quantity: "pressure of the standard atmosphere at a height, Pa; density of air, kg/m3",
    formula: "p = 101325 (1 - 2.25577e-5 h)^5.25588; rho = (p - e)/(287.05 T) + e/(461.5 T)",
    range: "0..11 000 m",
    error: "the weather moves the pressure by 3 %",
    source: "ICAO standard atmosphere (ISO 2533:1975), from memory; held against its 1.225 kg/m3 and 89 875 Pa at 1000 m",
    trust: Trust::Memory,
};

/// Pressure of the standard atmosphere at a height above the sea in m, Pa (ISO 2533:1975, from memory).
///
/// Heights are clamped to -500..11 000 m; a height that is not a number counts as the sea's.
#[must_use]
pub fn standard_pressure(height: f64) -> f64 {
    let h = if height.is_finite() { height.clamp(-500.0, 11_000.0) } else { 0.0 };
    ATMOSPHERE * (1.0 - 2.255_77e-5 * h).powf(5.255_88)
}

/// Density of air, kg/m³: ideal gases, dry air plus vapour.
///
/// `celsius` in °C, `pressure` in Pa, `humidity` relative, 0 to 1.
#[must_use]
pub fn air_density(celsius: f64, pressure: f64, humidity: f64) -> f64 {
    let t = if celsius.is_finite() { celsius.clamp(-60.0, 60.0) } else { 15.0 };
    let kelvin = t + 273.15;
    let vapour = vapour::pressure(t, 0.0) * humidity.clamp(0.0, 1.0);
    (pressure - vapour).max(0.0) / (287.05 * kelvin) + vapour / (461.5 * kelvin)
}
