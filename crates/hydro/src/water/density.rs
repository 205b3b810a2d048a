//! Density of water at atmospheric pressure.

use super::STANDARD_SALINITY;
use crate::source::{Method, Trust};

/// What [`density`] is.
pub const METHOD: Method = Method {
    name: "water-density-1981",
    quantity: "density of fresh, brackish and sea water at the surface, kg/m3",
    formula: "rho = rho_w(t) + A(t) S + B(t) S^1.5 + C S^2",
    range: "0..40 C, practical salinity 0..42; held against tables at 0..30 C",
    error: "0.004 kg/m3 against IAPWS-95 and TEOS-10 at 0..30 C (our check)",
    source: "F. J. Millero & A. Poisson, International one-atmosphere equation of state of seawater, Deep-Sea Research \
             28A (1981); UNESCO Technical Papers in Marine Science 44 (1983)",
    trust: Trust::Checked,
};

/// Density at one atmosphere, kg/m³.
///
/// `ρ = ρw(t) + A(t) S + B(t) S^1.5 + C S²`, `celsius` in °C on the scale of 1968 (0.007 °C from today's at 30 °C, left
/// out), `grams_per_kg` absolute salinity; the formula's own practical salinity is 35/35.16504 of it.
/// Range 0..40 °C, salinity 0..42. Millero & Poisson 1981.
///
/// The values of the ITTC procedure 7.5-02-01-03 (2011) printed for sea water lie 0.043..0.048 kg/m³ higher: all seven
/// found in print equal TEOS-10 at 10.1325 dbar *above* one atmosphere, so that the table counts the atmosphere twice.
/// 45 parts in a million: harmless for a propeller. This function gives the surface value.
#[must_use]
pub fn density(celsius: f64, grams_per_kg: f64) -> f64 {
    let t = celsius;
    let s = grams_per_kg.max(0.0) * (35.0 / STANDARD_SALINITY);
    let fresh = polynomial(&[999.842_594, 6.793_952e-2, -9.095_290e-3, 1.001_685e-4, -1.120_083e-6, 6.536_332e-9], t);
    let a = polynomial(&[8.244_93e-1, -4.089_9e-3, 7.643_8e-5, -8.246_7e-7, 5.387_5e-9], t);
    let b = polynomial(&[-5.724_66e-3, 1.022_7e-4, -1.654_6e-6], t);
    fresh + a * s + b * s * s.sqrt() + 4.831_4e-4 * s * s
}

fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c)
}
