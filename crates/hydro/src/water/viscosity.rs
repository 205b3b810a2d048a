//! Viscosity of water at atmospheric pressure.

use crate::source::{Method, Trust};

/// What [`dynamic`] is.
pub const METHOD: Method = Method {
    name: "water-viscosity-2011",
    quantity: "dynamic viscosity of fresh, brackish and sea water, Pa s (divided by density: kinematic)",
    formula: "mu = 1e-6 sum a_i (T/300)^b_i, times 1 + A s + B s^2 for salt",
    range: "fresh -20..110 C, salt 0..150 g/kg; held against tables at 0..30 C",
    error: "0.04 % against IAPWS 2008 at 0..30 C (our check; 0.004 % above 1 C)",
    source: "IAPWS SR6-08 (2011), liquid water at 0.1 MPa; M. H. Sharqawy, J. H. Lienhard & S. M. Zubair, \
             Thermophysical properties of seawater, Desalination and Water Treatment 16 (2010), eq. 22",
    trust: Trust::Checked,
};

/// Dynamic viscosity at one atmosphere, Pa s.
///
/// Fresh: `μ = 10⁻⁶ Σ ai (T/300)^bi`, T in kelvin (IAPWS SR6-08, 2011). Salt: times `1 + A s + B s²`, `s` in kg/kg,
/// `A = 1.541 + 1.998e-2 t - 9.52e-5 t²`, `B = 7.974 - 7.561e-2 t + 4.724e-4 t²` (Sharqawy, Lienhard & Zubair 2010,
/// eq. 22). Both sets of coefficients are from memory; the result is held against 31 table values each, and at 15 °C
/// against the kinematic viscosities 1.1386e-6 and 1.1892e-6 m²/s of ITTC 7.5-02-01-03 (2011).
#[must_use]
pub fn dynamic(celsius: f64, grams_per_kg: f64) -> f64 {
    const A: [f64; 4] = [280.68, 511.45, 61.131, 0.459_03];
    const B: [f64; 4] = [-1.9, -7.7, -19.6, -40.0];
    let x = (celsius + 273.15) / 300.0;
    let fresh: f64 = A.iter().zip(B).map(|(a, b)| a * x.powf(b)).sum::<f64>() * 1e-6;
    let (t, s) = (celsius, grams_per_kg.max(0.0) * 1e-3);
    let linear = 1.541 + 1.998e-2 * t - 9.52e-5 * t * t;
    let square = 7.974 - 7.561e-2 * t + 4.724e-4 * t * t;
    fresh * (1.0 + linear * s + square * s * s)
}
