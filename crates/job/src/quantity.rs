//! A stated quantity: its middle, its spread, its source, and where in the file it stands.

use std::ops::Range;

/// What kind of quantity a value is; decides which units are accepted. Values are kept in the SI unit named.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Dimension {
    /// m
    Length,
    /// m²
    Area,
    /// kg
    Mass,
    /// m/s
    Speed,
    /// rev/s
    Rotation,
    /// W
    Power,
    /// N
    Force,
    /// degrees of arc
    Angle,
    /// °C
    Temperature,
    /// s
    Duration,
    /// kg/s of fuel (volumes per time are converted with the fuel's density)
    FuelFlow,
    /// Pa
    Pressure,
    /// pure number (per cent accepted)
    Ratio,
}

/// Where a value comes from. Each source has its own default spread (see `quantity::Source::spread`).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Source {
    /// Maker's rating plate.
    Plate,
    /// Maker's data sheet or manual.
    Sheet,
    /// Sales brochure, class listing.
    Brochure,
    /// Lifted on a scale.
    Weighed,
    /// Measured with a proper tool (tape, calipers, gauge).
    Measured,
    /// Stamped on the propeller hub.
    Stamp,
    /// The boat's own instrument panel.
    Dashboard,
    /// Optical (photo) tachometer or strobe.
    Optical,
    /// Satellite speed.
    Gps,
    /// Paddle-wheel or towed log.
    Log,
    /// Electronic engine display.
    Display,
    /// Somebody remembers.
    Memory,
    /// An estimate.
    Estimate,
    /// Published test or survey by somebody else.
    Published,
}

/// A stated quantity in SI with its 80 % band.
#[derive(Clone, Debug, PartialEq)]
pub struct Quantity {
    /// One chance in ten of lying below.
    pub low: f64,
    /// As likely above as below.
    pub middle: f64,
    /// One chance in ten of lying above.
    pub high: f64,
    /// Where it comes from; `None` when nobody said.
    pub source: Option<Source>,
    /// Whether the spread was stated in the file (true) or follows from the source (false).
    pub own_spread: bool,
    /// As written, for showing back.
    pub text: String,
    /// Bytes in the file.
    pub at: Range<usize>,
}

impl Source {
    /// The word used in a job file.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Source::Plate => "plate",
            Source::Sheet => "sheet",
            Source::Brochure => "brochure",
            Source::Weighed => "weighed",
            Source::Measured => "measured",
            Source::Stamp => "stamp",
            Source::Dashboard => "dashboard",
            Source::Optical => "optical",
            Source::Gps => "gps",
            Source::Log => "log",
            Source::Display => "display",
            Source::Memory => "memory",
            Source::Estimate => "estimate",
            Source::Published => "published",
        }
    }
}
