//! The tone of a trailing edge.

use crate::source::{Method, Trust};

/// Vortex shedding from the edge.
pub const METHOD: Method = Method {
    name: "singing",
    quantity: "frequency (Hz) at which vortices leave a trailing edge",
    formula: "f = St U/(t + 2 d), St 0.18 to 0.22, d = 0.020 c Re^(-1/7) the turbulent displacement thickness, U at 0.7 to 0.95 R",
    range: "square and round edges; a bevelled or sharp edge sheds weakly",
    error: "a fifth; whether it sings hangs on a blade mode that answers, which is not known here",
    source: "Strouhal number of blunt edges, textbook (from memory); boundary layer 0.16 x/Re^(1/7) and a displacement thickness of an eighth of it: F. M. White, Fluid Mechanics, turbulent flat plate (from memory; the eighth is the integral of 1 - y^(1/7))",
    trust: Trust::Memory,
};

/// Low and high shedding frequency, Hz; `speed` along the section m/s, `edge` thickness m, `chord` m, `nu` m²/s.
#[must_use]
pub fn tone(speed: f64, edge: f64, chord: f64, nu: f64) -> (f64, f64) {
    let reynolds = (speed * chord / nu).max(1e4);
    let thick = edge.max(0.0) + 2.0 * displacement_thickness(chord, reynolds);
    if thick > 0.0 { (0.18 * speed / thick, 0.22 * speed / thick) } else { (0.0, 0.0) }
}

/// Displacement thickness, m, of a turbulent boundary layer after `length` m of flat plate: the seventh-power profile in a layer
/// `0.16 x/Re^(1/7)` thick pushes the stream out by an eighth of it (its momentum thickness is 7/72 of it).
#[must_use]
pub fn displacement_thickness(length: f64, reynolds: f64) -> f64 {
    0.16 / 8.0 * length * reynolds.powf(-1.0 / 7.0)
}

/// The lowest bending frequency of a blade outside the hub in water, Hz, as a cantilever of `length` with mean `thickness`
/// (m): `0.162 t/l^2 sqrt(E/rho)` in air for an even strip; a blade that thins to its tip lies about a half above; water takes it
/// to 0.62 to 0.70 of that (from memory).
#[must_use]
pub fn blade_mode(length: f64, thickness: f64, modulus: f64, density: f64) -> (f64, f64) {
    let air = 1.5 * 0.162 * thickness / (length * length).max(1e-9) * (modulus / density).sqrt();
    (0.62 * air, 0.70 * air)
}
