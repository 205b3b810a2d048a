//! What was read, as points with their instrument's spread.

use crate::crowd::plan::Plan;
use crate::judge::reading_label;
use crate::panel::{KNOT, fuel_density};
use job::{Job, Quantity};
use serde::Serialize;

/// A value as read with its 80 % band.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Measured {
    /// One chance in ten below.
    pub low: f64,
    /// As read.
    pub middle: f64,
    /// One chance in ten above.
    pub high: f64,
}

/// One reading.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Mark {
    /// Which, in words.
    pub label: String,
    /// Throttle fully open.
    pub full_throttle: bool,
    /// Taken with another propeller, weight, ratio or surface than described now.
    pub other_state: bool,
    /// Engine speed, rpm.
    pub engine_speed: Option<Measured>,
    /// Boat speed, kn.
    pub speed: Option<Measured>,
    /// Fuel of all engines, L/h.
    pub fuel: Option<Measured>,
}

/// The readings of a job.
pub(super) fn marks(job: &Job, plan: &Plan) -> Vec<Mark> {
    let density = fuel_density(plan.knowledge.engine_kind.0);
    job.readings
        .iter()
        .enumerate()
        .map(|(i, reading)| {
            let of = |q: &Option<Quantity>, factor: f64| {
                q.as_ref().map(|q| Measured { low: factor * q.low, middle: factor * q.middle, high: factor * q.high })
            };
            Mark {
                label: reading_label(reading, i),
                full_throttle: reading.full_throttle,
                other_state: reading.state != job::State::default(),
                engine_speed: of(&reading.engine_speed, 60.0),
                speed: of(&reading.speed, 1.0 / KNOT),
                fuel: of(&reading.fuel, 3600.0 / density),
            }
        })
        .collect()
}
