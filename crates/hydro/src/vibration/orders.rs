//! Rates of shaft, blades and engine, and where they meet.

use crate::source::{Method, Trust};
use std::f64::consts::{PI, TAU};

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

/// Blade number against what stands ahead of it.
pub const SHADOWS: Method = Method {
    name: "vibration-shadows",
    quantity: "shadows passed by blades at the same moment, of the arms, struts and deadwood ahead",
    formula: "two shadows at angles a and b from upright are passed at once when |a - b| is a multiple of 360/Z to within the lesser of half the blade's chord seen along the shaft and 90/Z degrees, where two equal pulses still add to 1.41 of one: |1 + exp(i Z d)| = 2 cos(Z d/2)",
    range: "shadows alike and narrow; a raked or skewed edge passes a straight shadow gradually and feels less",
    error: "of the angles; the depth of the shadows is left out",
    source: "V-strut arms should not be spaced at 360/Z, and two and four blades meet both shadows of a flat deadwood (from memory); the margin is derived here from the sum of two pulses at blade rate",
    trust: Trust::Memory,
};

/// How far, rad, two passages may lie apart and still be felt as one ([`SHADOWS`]); `width` is the angle that a blade's chord
/// takes up round the shaft, rad.
#[must_use]
pub fn apart(blades: u8, width: f64) -> f64 {
    let quarter = 0.5 * PI / f64::from(blades.max(1));
    if width.is_finite() { quarter.min(0.5 * width.max(0.0)) } else { quarter }
}

/// The greatest number of `shadows` (rad from upright, seen from astern) that have a blade in them at the same moment
/// ([`SHADOWS`]).
#[must_use]
pub fn at_once(blades: u8, width: f64, shadows: &[f64]) -> usize {
    if blades == 0 {
        return 0;
    }
    let (spacing, apart) = (TAU / f64::from(blades), apart(blades, width));
    let meet = |a: f64, b: f64| {
        let off = (a - b).rem_euclid(spacing);
        // A hair, so that a margin of nothing still meets itself.
        off.min(spacing - off) <= apart + 1e-9
    };
    shadows.iter().map(|a| shadows.iter().filter(|b| meet(*a, **b)).count()).max().unwrap_or(0)
}
