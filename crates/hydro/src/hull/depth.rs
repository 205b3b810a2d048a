//! Shallow water: when the deep-water curves still hold, and when they do not.

use crate::note::{Note, Notes};
use crate::source::{Method, Trust};
use crate::water::GRAVITY;

/// Depth Froude number and its limits.
pub const METHOD: Method = Method {
    name: "depth-froude-number",
    quantity: "whether a deep-water resistance holds at a water depth",
    formula: "Fnh = V / sqrt(g h); deep below 0.6, watch to 0.8, no judgement above",
    range: "any",
    error: "linear waves lose 0.2 % of speed at Fnh 0.6 and 2 % at 0.8 (wave part only); the hull's blockage comes on top",
    source: "wave part: dispersion of linear waves, used by O. Schlichting 1934 for ships in shallow water; the limits 0.6 and \
             0.8 are common practice, no source",
    trust: Trust::CommonPractice,
};

/// Deep-water results hold below this.
pub const WATCH_FROM: f64 = 0.6;
/// No judgement above this.
pub const REFUSE_FROM: f64 = 0.8;

/// What a water depth does to a reading or a prediction.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Depth {
    /// Deep enough.
    Deep,
    /// Some loss of speed: read with care.
    Watch,
    /// Too shallow to judge a boat or a propeller by.
    Refuse,
}

impl Depth {
    /// Judges a speed (m/s) over a depth (m). A depth that is not a positive number is refused.
    #[must_use]
    pub fn of(speed: f64, depth: f64) -> Depth {
        let froude = froude(speed, depth);
        if froude.is_nan() || froude > REFUSE_FROM {
            Depth::Refuse
        } else if froude > WATCH_FROM {
            Depth::Watch
        } else {
            Depth::Deep
        }
    }

    /// The warning to send along.
    #[must_use]
    pub const fn notes(self) -> Notes {
        let mut notes = Notes::NONE;
        match self {
            Depth::Deep => {}
            Depth::Watch => notes.add(Note::ShallowWater),
            Depth::Refuse => notes.add(Note::TooShallowToJudge),
        }
        notes
    }
}

/// Depth Froude number `V/√(g h)`; infinite without water.
#[must_use]
pub fn froude(speed: f64, depth: f64) -> f64 {
    if depth > 0.0 && speed.is_finite() { speed.abs() / (GRAVITY * depth).sqrt() } else { f64::INFINITY }
}

/// Speed in shallow water over the deep-water speed that makes waves of the same length: `√tanh(g h/V²)`, `V` the
/// deep-water speed (m/s). The wave part of Schlichting's 1934 reasoning, from the dispersion of linear waves; a lower
/// bound of the loss, for the hull's blockage is left out. Meant up to [`REFUSE_FROM`].
#[must_use]
pub fn wave_speed_ratio(deep_speed: f64, depth: f64) -> f64 {
    let f = froude(deep_speed, depth);
    if f.is_infinite() {
        return 0.0;
    }
    (1.0 / (f * f).max(1e-6)).tanh().sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_stand_where_they_are_said_to() {
        let at = |f: f64| Depth::of(f * (GRAVITY * 4.0).sqrt(), 4.0);
        assert_eq!(
            [at(0.0), at(0.59), at(0.61), at(0.79), at(0.81)],
            [Depth::Deep, Depth::Deep, Depth::Watch, Depth::Watch, Depth::Refuse]
        );
        assert_eq!(Depth::of(2.0, 0.0), Depth::Refuse);
        assert_eq!(Depth::of(f64::NAN, 3.0), Depth::Refuse);
        assert!(Depth::Refuse.notes().has(Note::TooShallowToJudge));
    }

    #[test]
    fn wave_speed_is_that_of_the_dispersion_relation() {
        // A wave as long as the deep-water one of V: c² = (g/k) tanh(k h) with k = g/V².
        let (v, h) = (3.0, 2.0);
        let k = GRAVITY / (v * v);
        let c = (GRAVITY / k * (k * h).tanh()).sqrt();
        assert!((wave_speed_ratio(v, h) - c / v).abs() < 1e-12);
        assert!((wave_speed_ratio(0.0, h) - 1.0).abs() < 1e-12);
    }
}
