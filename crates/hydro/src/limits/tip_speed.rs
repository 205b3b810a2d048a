//! Tip speed: a crude sign of noise and cavitation.

use crate::source::{Method, Trust};
use std::f64::consts::PI;

/// The limits in words.
pub const METHOD: Method = Method {
    name: "tip-speed",
    quantity: "circumferential speed of the blade tip and what it means",
    formula: "v = pi n D; below 35 m/s quiet, from 45 high, above 60 (12 000 ft/min) prone to cavitate",
    range: "propellers under the water, shaft near horizontal",
    error: "wide: load and inflow matter more",
    source: "common practice, no source",
    trust: Trust::CommonPractice,
};

/// What a tip speed means. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TipSpeed {
    /// Below 35 m/s.
    Quiet,
    /// 35 to 45 m/s.
    Usual,
    /// 45 to 60 m/s.
    High,
    /// Above 60 m/s.
    Prone,
}

/// Circumferential speed of the tip, m/s; `n` rev/s, `diameter` m.
#[must_use]
pub fn tip_speed(n: f64, diameter: f64) -> f64 {
    PI * n * diameter
}

/// What a tip speed (m/s) means.
#[must_use]
pub fn judged(speed: f64) -> TipSpeed {
    match speed {
        v if v < 35.0 => TipSpeed::Quiet,
        v if v < 45.0 => TipSpeed::Usual,
        v if v <= 60.0 => TipSpeed::High,
        _ => TipSpeed::Prone,
    }
}
