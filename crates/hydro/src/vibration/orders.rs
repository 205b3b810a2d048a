//! Rates of shaft, blades and engine, and where they meet.

use crate::source::{Method, Trust};

/// Rates and beats.
pub const METHOD: Method = Method {
    name: "vibration-orders",
    quantity: "frequencies (Hz) of shaft, blades, engine turns and firing; their beats",
    formula: "shaft n; blades m Z n; firing N c/2 (four strokes) or N c (two strokes); beat |f1 - f2|",
    range: "any",
    error: "exact in what goes in: the beat is as uncertain as the reduction times the higher rate",
    source: "definition",
    trust: Trust::Checked,
};

/// Firing rate, Hz; engine turns rev/s.
#[must_use]
pub fn firing(turns: f64, cylinders: u8, two_stroke: bool) -> f64 {
    turns * f64::from(cylinders) * if two_stroke { 1.0 } else { 0.5 }
}

/// Blade rate, Hz; shaft turns rev/s.
#[must_use]
pub fn blade_rate(turns: f64, blades: u8) -> f64 {
    turns * f64::from(blades)
}

/// Beat of two rates, Hz.
#[must_use]
pub fn beat(a: f64, b: f64) -> f64 {
    (a - b).abs()
}

/// Beats slower than this are felt as a throb, Hz (`common practice, no source`; one owner's slow beating was 6 Hz).
pub const FELT: f64 = 8.0;

/// Blade number against what stands ahead of it (`from memory`): whether two blades or more pass a shadow at once.
///
/// A flat deadwood shadows both the upper and the lower blade of an even number; strut arms shadow as many blades at once as
/// blades and arms have factors in common.
#[must_use]
pub fn in_shadow(blades: u8, arms: u8) -> bool {
    let (mut a, mut b) = (blades, arms);
    while b > 0 {
        (a, b) = (b, a % b);
    }
    arms > 0 && blades > 0 && a > 1
}
