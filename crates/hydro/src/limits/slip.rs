//! Slip: how far the boat stays behind the screw's pitch.
//!
//! Slip is not a loss. A screw without slip gives (nearly) no thrust; the best efficiency of common propellers lies at a real slip of
//! 15 to 25 %, and a heavy slow boat on a small propeller runs at 40 % with nothing wrong. What is lost is told by the efficiency. Slip is worth
//! watching on one boat over time, or against its like.

use crate::openwater::bp_delta::KNOT;
use crate::source::{Method, Trust};

/// The definition.
pub const METHOD: Method = Method {
    name: "slip",
    quantity: "apparent and real slip",
    formula: "s = 1 - V/(n P); apparent with the boat's speed, real with the speed of advance V (1 - w)",
    range: "shaft speed, not engine speed; speed through the water",
    error: "none of its own: that of pitch, shaft speed and speed",
    source: "definition; D. Gerr 1989, Propeller Handbook, formula 5-1",
    trust: Trust::Checked,
};

/// What is usual.
pub const METHOD_USUAL: Method = Method {
    name: "slip-usual",
    quantity: "usual apparent slip at a speed",
    formula: "s = 1.4/V^0.57, V in knots",
    range: "5 to 40 kn",
    error: "about a quarter of itself from boat to boat",
    source: "D. Gerr 1989, Propeller Handbook, formula 5-2 (from memory)",
    trust: Trust::Memory,
};

/// Slip `1 - speed/(n P)`: apparent with the boat's `speed` (m/s), real with the speed of advance. `n` rev/s of the shaft, `pitch` m.
///
/// None when the shaft stands or the pitch is nothing.
#[must_use]
pub fn slip(speed: f64, n: f64, pitch: f64) -> Option<f64> {
    let advance = n * pitch;
    (advance > 0.0).then(|| 1.0 - speed / advance)
}

/// Apparent slip that hides behind a real one: `1 - (1 - real)/(1 - w)`; `wake` is the wake fraction, below 1.
#[must_use]
pub fn apparent_of_real(real: f64, wake: f64) -> f64 {
    1.0 - (1.0 - real) / (1.0 - wake.min(0.9))
}

/// Pitch (m) that gives a speed (m/s) at a shaft speed (rev/s) and slip; none when nothing turns or slip is 1 or more.
#[must_use]
pub fn pitch_for(speed: f64, n: f64, slip: f64) -> Option<f64> {
    (n > 0.0 && slip < 1.0).then(|| speed / (n * (1.0 - slip)))
}

/// Usual apparent slip at a boat speed (m/s), from memory; the speed is held within 5 to 40 kn.
#[must_use]
pub fn usual(speed: f64) -> f64 {
    1.4 / (speed / KNOT).clamp(5.0, 40.0).powf(0.57)
}
