//! Thrust deduction by formula.

use crate::source::{Method, Trust};

/// What [`single`] and [`twin`] are.
pub const SCHOENHERR: Method = Method {
    name: "schoenherr-deduction",
    quantity: "thrust deduction fraction from the wake fraction",
    formula: "single t = k w (k by rudder); twin t = 0.70 w + 0.06 with struts, 0.25 w + 0.14 with bossings",
    range: "displacement ships",
    error: "the bands of k",
    source: "K. E. Schoenherr in Principles of Naval Architecture, 1939, from memory",
    trust: Trust::Memory,
};

/// Rudder behind a single screw.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Rudder {
    /// Streamlined.
    Streamlined,
    /// Double plate.
    DoublePlate,
    /// Single plate.
    SinglePlate,
}

/// What carries twin shafts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Support {
    /// Struts.
    Struts,
    /// Bossings.
    Bossings,
}

/// Single screw: `t = k w`; lowest, middle and highest for the rudder behind it
/// (k 0.50..0.70 streamlined, 0.70..0.90 double plate, 0.90..1.05 single plate).
#[must_use]
pub fn single(wake: f64, rudder: Rudder) -> (f64, f64, f64) {
    let (low, high) = match rudder {
        Rudder::Streamlined => (0.50, 0.70),
        Rudder::DoublePlate => (0.70, 0.90),
        Rudder::SinglePlate => (0.90, 1.05),
    };
    (low * wake, 0.5 * (low + high) * wake, high * wake)
}

/// Twin screws: `t = 0.70 w + 0.06` with struts, `0.25 w + 0.14` with bossings.
#[must_use]
pub fn twin(wake: f64, support: Support) -> f64 {
    match support {
        Support::Struts => 0.70 * wake + 0.06,
        Support::Bossings => 0.25 * wake + 0.14,
    }
}
