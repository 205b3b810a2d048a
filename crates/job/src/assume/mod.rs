//! What is assumed where nothing was said: a distribution and a source for every quantity the judgement needs.
//!
//! A stated value keeps its own spread. A missing one gets a wide spread by kind of boat. No figure here is tuned to a
//! single boat: each line says where it comes from, and `common practice` or `estimate` where it has no source.

mod engine;
mod hull;
mod propeller;

use crate::model::{Arrangement, EngineKind, Job, Kind};
use crate::quantity::Quantity;
use crate::words::Word;

/// Number of standard deviations between the middle and the edge of an 80 % band of a normal variate.
pub const BAND_Z: f64 = 1.281_551_565_544_6;

/// A spread: two half-normals joined at the middle, in the value or in its logarithm, cut at physical bounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dist {
    /// 10 % point.
    pub low: f64,
    /// 50 % point.
    pub middle: f64,
    /// 90 % point.
    pub high: f64,
    /// Nothing below.
    pub floor: f64,
    /// Nothing above.
    pub ceiling: f64,
    /// Spread in the logarithm.
    pub log: bool,
}

impl Dist {
    /// From the three points of an 80 % band, cut where the band's half-width is exceeded 2.5 times.
    #[must_use]
    pub fn band(low: f64, middle: f64, high: f64) -> Dist {
        let log = low > 0.0 && high / low > 1.3;
        let (floor, ceiling) = if log {
            (middle * (low / middle).powf(2.5), middle * (high / middle).powf(2.5))
        } else {
            (middle - 2.5 * (middle - low), middle + 2.5 * (high - middle))
        };
        Dist { low, middle, high, floor, ceiling, log }
    }

    /// A value known exactly.
    #[must_use]
    pub fn fixed(value: f64) -> Dist {
        Dist { low: value, middle: value, high: value, floor: value, ceiling: value, log: false }
    }

    /// The same, cut at bounds that cannot be passed.
    #[must_use]
    pub fn within(mut self, floor: f64, ceiling: f64) -> Dist {
        self.floor = self.floor.max(floor).min(ceiling);
        self.ceiling = self.ceiling.min(ceiling).max(floor);
        self
    }

    /// Scales all points.
    #[must_use]
    pub fn times(self, factor: f64) -> Dist {
        Dist {
            low: self.low * factor,
            middle: self.middle * factor,
            high: self.high * factor,
            floor: self.floor * factor,
            ceiling: self.ceiling * factor,
            log: self.log,
        }
    }

    /// The value at `z` standard deviations.
    #[must_use]
    #[inline]
    pub fn at(&self, z: f64) -> f64 {
        let a = z / BAND_Z;
        let value = if self.log {
            let edge = if a > 0.0 { self.high / self.middle } else { self.middle / self.low };
            if edge == 1.0 { self.middle } else { self.middle * (a * edge.ln()).exp() }
        } else {
            let width = if a > 0.0 { self.high - self.middle } else { self.middle - self.low };
            self.middle + a * width
        };
        value.clamp(self.floor, self.ceiling)
    }

    /// Whether there is nothing to draw.
    #[must_use]
    pub fn is_fixed(&self) -> bool {
        self.low == self.high
    }
}

/// One quantity as it is known.
#[derive(Clone, Debug, PartialEq)]
pub struct Known {
    /// Its spread, SI.
    pub dist: Dist,
    /// Stated in the job, else assumed.
    pub stated: bool,
    /// Where it comes from, in words.
    pub source: String,
}

impl Known {
    /// As stated; `None` stays `None`.
    #[must_use]
    pub fn stated(quantity: Option<&Quantity>) -> Option<Known> {
        quantity.map(|q| Known {
            dist: Dist::band(q.low, q.middle, q.high),
            stated: true,
            source: q.source.map_or_else(|| "stated".to_owned(), |s| s.word().to_owned()),
        })
    }

    /// Assumed, with a band.
    #[must_use]
    pub fn assumed(low: f64, middle: f64, high: f64, source: impl Into<String>) -> Known {
        Known { dist: Dist::band(low, middle, high), stated: false, source: source.into() }
    }
}

/// Waterline length: stated, or from the length overall or the weight.
#[derive(Clone, Debug, PartialEq)]
pub enum Length {
    /// m
    Waterline(Known),
    /// Ratio to a length overall that is itself known.
    OfOverall {
        /// m
        overall: Known,
        /// LWL/LOA
        ratio: Known,
    },
    /// Ratio `L/∇^(1/3)` to the weight.
    OfWeight(Known),
}

/// Everything the judgement draws from, as stated or assumed.
#[derive(Clone, Debug, PartialEq)]
pub struct Knowledge {
    /// Kind of hull and whether it was stated.
    pub kind: (Kind, bool),
    /// Arrangement of the propeller and whether it was stated.
    pub arrangement: (Arrangement, bool),
    /// Kind of engine and whether it was stated.
    pub engine_kind: (EngineKind, bool),
    /// Number of propellers and whether it was stated.
    pub screws: (u8, bool),
    /// Fresh water.
    pub fresh: bool,
    /// Waterline length.
    pub length: Length,
    /// Mass, kg; or, when `weight_is_ratio`, `L/∇^(1/3)`.
    pub weight: Known,
    /// See `weight`.
    pub weight_is_ratio: bool,
    /// Waterline beam, m; or, when `beam_is_ratio`, the factor on `L/B = 1.45 (L/m)^(1/3)`.
    pub beam: Known,
    /// See `beam`.
    pub beam_is_ratio: bool,
    /// Chine beam over waterline beam.
    pub chine_ratio: Known,
    /// Prismatic coefficient.
    pub prismatic: Known,
    /// Midship coefficient.
    pub midship: Known,
    /// Centre of buoyancy, % of L forward of midships.
    pub lcb: Known,
    /// Half angle of entrance, degrees.
    pub entrance: Known,
    /// Immersed transom area over greatest section.
    pub transom: Known,
    /// Deadrise, degrees.
    pub deadrise: Known,
    /// Centre of gravity forward of the transom over L.
    pub lcg: Known,
    /// Wetted appendages over `L B`.
    pub appendages: Known,
    /// Air drag area over `B²`.
    pub windage: Known,
    /// Water temperature, °C.
    pub water_temperature: Known,
    /// Air temperature, °C.
    pub air_temperature: Known,
    /// Height above the sea, m.
    pub altitude: f64,
    /// Rated power, W.
    pub power: Known,
    /// Rated speed, rev/s.
    pub rated_speed: Known,
    /// No-load or limiter speed over rated speed.
    pub top_ratio: Known,
    /// Power left of the rated, wear and setting.
    pub condition: Known,
    /// Reduction.
    pub reduction: Known,
    /// Shaft angle, degrees.
    pub shaft_angle: Known,
    /// Diameter, m.
    pub diameter: Known,
    /// Pitch, m; `None` when nobody knows it.
    pub pitch: Option<Known>,
    /// Blades and whether stated.
    pub blades: (u8, bool),
    /// Expanded area ratio.
    pub area_ratio: Known,
    /// Share of flat-faced behaviour.
    pub flat_share: Known,
    /// Shaft centre below water, m.
    pub immersion: Known,
}

/// Kind of engine: stated, else by drive, power and rated speed.
#[must_use]
pub(crate) fn engine_kind(job: &Job) -> EngineKind {
    engine::kind(job, hull::kind(job).0).0
}

/// What is known of a job, and what is assumed.
#[must_use]
pub fn knowledge(job: &Job) -> Knowledge {
    let kind = hull::kind(job);
    let engine_kind = engine::kind(job, kind.0);
    let arrangement = hull::arrangement(job, kind.0, engine_kind.0);
    let h = hull::hull(job, kind.0, arrangement.0);
    let e = engine::engine(job, kind.0, engine_kind.0, arrangement.0);
    let p = propeller::propeller(job, arrangement.0, &e);
    Knowledge {
        kind,
        arrangement,
        engine_kind,
        screws: job.boat.screws.map_or((1, false), |n| (n, true)),
        fresh: job.place.fresh.unwrap_or(false),
        length: h.length,
        weight: h.weight.0,
        weight_is_ratio: h.weight.1,
        beam: h.beam.0,
        beam_is_ratio: h.beam.1,
        chine_ratio: h.chine_ratio,
        prismatic: h.prismatic,
        midship: h.midship,
        lcb: h.lcb,
        entrance: h.entrance,
        transom: h.transom,
        deadrise: h.deadrise,
        lcg: h.lcg,
        appendages: h.appendages,
        windage: h.windage,
        water_temperature: Known::stated(job.place.water_temperature.as_ref())
            .unwrap_or_else(|| Known::assumed(10.0, 15.0, 22.0, "usual for temperate waters")),
        air_temperature: Known::stated(job.place.air_temperature.as_ref())
            .unwrap_or_else(|| Known::assumed(15.0, 25.0, 38.0, "usual in engine rooms; common practice")),
        altitude: job.place.altitude.as_ref().map_or(0.0, |q| q.middle),
        power: e.power,
        rated_speed: e.rated_speed,
        top_ratio: e.top_ratio,
        condition: e.condition,
        reduction: e.reduction,
        shaft_angle: e.shaft_angle,
        diameter: p.diameter,
        pitch: p.pitch,
        blades: p.blades,
        area_ratio: p.area_ratio,
        flat_share: p.flat_share,
        immersion: p.immersion,
    }
}

pub use propeller::area_ratio;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_holds_its_points() {
        for dist in [Dist::band(5.8, 6.5, 7.2), Dist::band(1.0, 2.0, 5.0), Dist::band(-4.0, -1.5, 1.0)] {
            assert!((dist.at(-BAND_Z) - dist.low).abs() < 1e-9);
            assert!((dist.at(0.0) - dist.middle).abs() < 1e-12);
            assert!((dist.at(BAND_Z) - dist.high).abs() < 1e-9);
            assert!(dist.at(-9.0) == dist.floor && dist.at(9.0) == dist.ceiling);
        }
    }
}
