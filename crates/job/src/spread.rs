//! The spread a value has when nobody stated one: by its source, its dimension and, for a few, its key.
//!
//! Every spread is an 80 % band (8 chances in 10). The figures are common practice, no source, except where said.

use crate::quantity::{Dimension, Source};

/// A spread without numbers of its own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Spread {
    /// Half width as a part of the value.
    Relative(f64),
    /// Half width in SI.
    Absolute(f64),
    /// Low, middle and high as multiples of what was said: sources known to be wrong in one direction.
    Shifted(f64, f64, f64),
}

const KNOT: f64 = 1852.0 / 3600.0;

/// The spread of a single satellite speed: the current is in it.
pub const ONE_RUN: f64 = 0.3 * KNOT;
/// The spread of the mean of satellite speeds both ways.
pub const BOTH_WAYS: f64 = 0.1 * KNOT;
/// A dashboard's engine speed, as a part of the value.
pub const DASHBOARD: f64 = 0.04;
/// A dashboard's engine speed on a diesel, as a part of the value: it counts the alternator, whose pulleys and belt it takes
/// for granted. Out by 100 rpm as often as not, and by 500 rpm now and then (owners' and mechanics' reports), is a standard
/// deviation of 150 rpm at 3000 rpm. Others count the ignition or are told by the engine.
pub const DIESEL_DASHBOARD: f64 = 0.06;
/// What `about` means, as a part of the value.
pub const ABOUT: f64 = 0.10;

/// One row of the table of defaults.
#[derive(Clone, Copy, Debug)]
pub struct Default {
    /// Source.
    pub source: Source,
    /// Dimension; `None` for any.
    pub dimension: Option<Dimension>,
    /// Key; `None` for any.
    pub key: Option<&'static str>,
    /// The spread.
    pub spread: Spread,
    /// The same in words, for the reference page.
    pub words: &'static str,
}

const fn row(source: Source, dimension: Option<Dimension>, spread: Spread, words: &'static str) -> Default {
    Default { source, dimension, key: None, spread, words }
}

/// The defaults; the first row that fits holds.
#[rustfmt::skip]
pub const DEFAULTS: &[Default] = &[
    row(Source::Dashboard, Some(Dimension::Rotation), Spread::Relative(DASHBOARD), "± 4 %; on a diesel, where it mostly counts the alternator, ± 6 %"),
    row(Source::Optical, Some(Dimension::Rotation), Spread::Relative(0.002), "± 0.2 %"),
    row(Source::Display, Some(Dimension::Rotation), Spread::Relative(0.005), "± 0.5 %"),
    row(Source::Gps, Some(Dimension::Speed), Spread::Absolute(ONE_RUN), "± 0.3 kn for one run (the current is in it), ± 0.1 kn for the mean of both ways"),
    row(Source::Log, Some(Dimension::Speed), Spread::Relative(0.05), "± 5 %"),
    // A brochure gives the light boat. One cruiser listed at 24 000 lb weighed just under 29 000 lb, +21 % (owner's report).
    row(Source::Brochure, Some(Dimension::Mass), Spread::Shifted(1.05, 1.15, 1.25), "5 to 25 % more than said, most likely 15 %: a brochure gives the light boat"),
    row(Source::Weighed, Some(Dimension::Mass), Spread::Relative(0.015), "± 1.5 %"),
    Default { key: Some("pitch"), ..row(Source::Stamp, Some(Dimension::Length), Spread::Relative(0.04), "± 4 %") },
    Default { key: Some("diameter"), ..row(Source::Stamp, Some(Dimension::Length), Spread::Relative(0.005), "± 0.5 %") },
    Default { key: Some("pitch"), ..row(Source::Measured, Some(Dimension::Length), Spread::Relative(0.01), "± 1 %") },
    row(Source::Measured, Some(Dimension::Length), Spread::Relative(0.005), "± 0.5 %"),
    row(Source::Plate, Some(Dimension::Power), Spread::Relative(0.05), "± 5 %"),
    row(Source::Plate, Some(Dimension::Rotation), Spread::Relative(0.005), "± 0.5 %"),
    row(Source::Plate, Some(Dimension::Ratio), Spread::Relative(0.005), "± 0.5 %"),
    // A ratio, a diameter or a pitch that is remembered is mostly a catalogue figure: right, or the neighbouring one.
    row(Source::Memory, Some(Dimension::Ratio), Spread::Relative(0.05), "± 5 %"),
    row(Source::Memory, Some(Dimension::Length), Spread::Relative(0.05), "± 5 %"),
    row(Source::Memory, None, Spread::Relative(0.10), "± 10 %"),
    row(Source::Estimate, None, Spread::Relative(0.15), "± 15 %"),
    row(Source::Sheet, None, Spread::Relative(0.01), "± 1 %"),
    row(Source::Published, None, Spread::Relative(0.02), "± 2 %"),
];

/// The spread of a value nobody gave a spread: the first fitting row of [`DEFAULTS`], else ± 5 %.
///
/// Angles and temperatures have no natural zero to take a part of: ± 1° and ± 2 °C, from memory or estimate ± 3° and ± 5 °C.
#[must_use]
pub fn default(source: Option<Source>, dimension: Dimension, key: &str) -> Spread {
    let vague = matches!(source, Some(Source::Memory | Source::Estimate));
    match dimension {
        Dimension::Angle => return Spread::Absolute(if vague { 3.0 } else { 1.0 }),
        Dimension::Temperature => return Spread::Absolute(if vague { 5.0 } else { 2.0 }),
        _ => {}
    }
    DEFAULTS
        .iter()
        .find(|d| {
            Some(d.source) == source && d.dimension.is_none_or(|x| x == dimension) && d.key.is_none_or(|k| k == key)
        })
        .map_or(Spread::Relative(0.05), |d| d.spread)
}

impl Spread {
    /// Low, middle and high (SI) of a value said to be `value`.
    #[must_use]
    pub fn band(self, value: f64) -> (f64, f64, f64) {
        match self {
            Spread::Relative(part) => {
                let half = value.abs() * part;
                (value - half, value, value + half)
            }
            Spread::Absolute(half) => (value - half, value, value + half),
            Spread::Shifted(low, middle, high) => (low * value, middle * value, high * value),
        }
    }
}
