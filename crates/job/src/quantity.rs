//! A stated quantity: its middle, its spread, its source, and where in the file it stands.

use crate::keys::{self, Measure};
use crate::model::EngineKind;
use crate::problem::Problem;
use crate::stated;
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
    /// N m
    Torque,
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

/// Where a value comes from. Each source has its own default spread (see [`crate::spread`]).
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

impl Quantity {
    /// Reads a quantity string such as `"17 in ± 0.25 (measured)"` on its own, outside a file.
    ///
    /// `key` is the name of the value (`pitch`, `displacement`), used in messages and for spreads that depend on it. Fuel
    /// volumes are taken as diesel.
    ///
    /// # Errors
    /// What is wrong with the string; the span counts bytes within it.
    pub fn parse(text: &str, dimension: Dimension, key: &str) -> Result<Quantity, Problem> {
        let any = Measure { dimension, range: (f64::MIN, f64::MAX), usual: &[], source: None, by: None };
        let measure = keys::measure_of(key).filter(|m| m.dimension == dimension).unwrap_or(any);
        let stated = stated::read(text, &measure, key)
            .map_err(|fault| Problem { help: fault.help, ..Problem::error(fault.code, fault.at, fault.message) })?;
        let mut quantity = stated.quantity;
        if stated.volume {
            quantity.scale(fuel_density(None));
        }
        quantity.at = 0..text.len();
        Ok(quantity)
    }

    /// A quantity known exactly.
    #[must_use]
    pub fn exact(value: f64, text: impl Into<String>) -> Quantity {
        Quantity { low: value, middle: value, high: value, source: None, own_spread: true, text: text.into(), at: 0..0 }
    }

    pub(crate) fn scale(&mut self, factor: f64) {
        self.low *= factor;
        self.middle *= factor;
        self.high *= factor;
    }
}

/// Density of an engine's fuel, kg/m³: diesel 840, petrol 745 (common practice, no source; diesel when unknown).
#[must_use]
pub fn fuel_density(kind: Option<EngineKind>) -> f64 {
    match kind {
        Some(EngineKind::Petrol | EngineKind::Outboard) => 745.0,
        _ => 840.0,
    }
}
