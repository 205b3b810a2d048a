//! Wakes over a turn: what stands ahead of the propeller, their harmonics, and which of those reach the bearings.

use crate::source::{Method, Trust};
use std::f64::consts::TAU;

/// Harmonics and selection.
pub const METHOD: Method = Method {
    name: "wake-harmonics",
    quantity: "harmonics of the inflow over a turn; those that reach thrust and torque (q = m Z) and side force (q = m Z +- 1)",
    formula: "V(th) = a0 + sum a_q cos(q th) + b_q sin(q th), th from upright in the direction of turning",
    range: "alike blades; the wakes here are analytic shapes, not measurements",
    error: "exact for the shape; a real deadwood's wake is known to a third at best",
    source: "Fourier; selection rule exact for alike blades; shape of the deadwood's wake ours, after what is printed of single screws (synthetic)",
    trust: Trust::CommonPractice,
};

/// What stands ahead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ahead {
    /// A deadwood or skeg: narrow, above and (weaker) below.
    Deadwood,
    /// Strut arms, each by its angle from upright, rad.
    Strut([f64; 2]),
    /// A shaft inclined by this angle, rad, in an even stream.
    InclinedShaft(f64),
}

/// Axial inflow over ship speed behind a deadwood at `x = r/R`, angle `th` from upright: the synthetic field
/// `0.95 - 0.35 (1 - 0.3 (x - 0.3)) exp(-(d/18 deg)^2) - 0.15 exp(-((th - 180 deg)/15 deg)^2)`.
#[must_use]
pub fn deadwood(x: f64, th: f64) -> f64 {
    let from = |centre: f64| {
        let d = (th - centre).rem_euclid(TAU);
        d.min(TAU - d).to_degrees()
    };
    let (top, bottom) = (from(0.0), from(0.5 * TAU));
    0.95 - 0.35 * (1.0 - 0.3 * (x - 0.3)) * (-(top / 18.0).powi(2)).exp() - 0.15 * (-(bottom / 15.0).powi(2)).exp()
}

/// Axial and tangential inflow over ship speed at `x = r/R`; tangential positive in the direction of turning.
#[must_use]
pub fn inflow(ahead: &Ahead, x: f64, th: f64) -> (f64, f64) {
    match ahead {
        Ahead::Deadwood => (deadwood(x, th), 0.0),
        Ahead::Strut(arms) => {
            // An arm's wake has the same width in metres at every radius: 18 deg at the tip.
            let dip = |arm: f64| {
                let d = (th - arm).rem_euclid(TAU);
                let away = d.min(TAU - d).to_degrees() * x.max(0.2);
                0.18 * (-(away / 12.0).powi(2)).exp()
            };
            (0.97 - arms.iter().map(|arm| dip(*arm)).sum::<f64>(), 0.0)
        }
        Ahead::InclinedShaft(angle) => (angle.cos(), angle.sin() * th.sin()),
    }
}

/// Harmonic `q` of a function of the angle: cosine and sine parts, by 360 even steps (the mean for `q = 0`).
#[must_use]
pub fn harmonic(of: impl Fn(f64) -> f64, q: u32) -> (f64, f64) {
    const STEPS: u32 = 360;
    let (mut a, mut b) = (0.0, 0.0);
    for i in 0..STEPS {
        let th = TAU * f64::from(i) / f64::from(STEPS);
        let value = of(th);
        a += value * (f64::from(q) * th).cos();
        b += value * (f64::from(q) * th).sin();
    }
    let scale = if q == 0 { 1.0 } else { 2.0 } / f64::from(STEPS);
    (scale * a, scale * b)
}

/// Sum over `blades` alike blades of one blade's harmonic `q`: `blades` times it when `q` is a multiple, else nothing.
#[must_use]
pub fn reaches_thrust(q: u32, blades: u8) -> bool {
    blades > 0 && q.is_multiple_of(u32::from(blades))
}
