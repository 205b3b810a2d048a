//! Cup: the lip bent into the trailing edge, as more pitch.

use crate::source::{Method, Trust};

/// What a cup in words is worth.
pub const METHOD: Method = Method {
    name: "cup-in-words",
    quantity: "cup as a fraction added to the pitch",
    formula: "effective pitch = pitch (1 + fraction); light 0.025, medium 0.05, heavy 0.08",
    range: "flat-faced and similar stock propellers",
    error: "wide: half to twice the middle. Makers say half an inch to one and a half inches of pitch, a handbook 1 in or 5 %; \
            the same words mean different radii and lengths in different shops",
    source: "common practice, no source",
    trust: Trust::CommonPractice,
};

/// Cup as a shop names it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Cup {
    /// None.
    None,
    /// Light.
    Light,
    /// Medium, also called single.
    Medium,
    /// Heavy, also called double.
    Heavy,
}

/// Low, middle and high of a guess (about an 80 % band).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Guess {
    /// Nine in ten are more.
    pub low: f64,
    /// As likely more as less.
    pub middle: f64,
    /// Nine in ten are less.
    pub high: f64,
}

impl Cup {
    /// The fraction added to the pitch. Common practice, no source.
    #[must_use]
    pub const fn fraction(self) -> Guess {
        match self {
            Cup::None => Guess { low: 0.0, middle: 0.0, high: 0.0 },
            Cup::Light => Guess { low: 0.010, middle: 0.025, high: 0.045 },
            Cup::Medium => Guess { low: 0.025, middle: 0.050, high: 0.085 },
            Cup::Heavy => Guess { low: 0.040, middle: 0.080, high: 0.125 },
        }
    }
}

/// The uncupped pitch that acts like `effective_pitch` once cupped (any unit of length).
#[must_use]
pub fn pitch_before_cup(effective_pitch: f64, fraction: f64) -> f64 {
    effective_pitch / (1.0 + fraction.max(0.0))
}
