//! Hull form, weight and surface where the owner cannot know them, by kind of boat.

use super::{Known, Length};
use crate::model::{Arrangement, EngineKind, Job, Kind};

pub(super) struct Hull {
    pub length: Length,
    pub weight: (Known, bool),
    pub beam: (Known, bool),
    pub chine_ratio: Known,
    pub prismatic: Known,
    pub midship: Known,
    pub lcb: Known,
    pub entrance: Known,
    pub transom: Known,
    pub deadrise: Known,
    pub lcg: Known,
    pub appendages: Known,
    pub windage: Known,
}

/// Kind of hull: stated, else from the propeller's place, the engine, or how fast the boat was seen to go.
pub(super) fn kind(job: &Job) -> (Kind, bool) {
    if let Some(kind) = job.boat.kind {
        return (kind, true);
    }
    let length = job.boat.length_waterline.as_ref().or(job.boat.length_overall.as_ref()).map(|q| q.middle);
    let fastest = job.readings.iter().filter_map(|r| r.speed.as_ref()).map(|q| q.middle).fold(0.0, f64::max);
    // Froude number on the length at hand: past 0.9 only planing boats go, past 0.5 no displacement boat does.
    let froude = length.map_or(0.0, |l| fastest / (9.806_65 * l).sqrt());
    let kind = match job.boat.arrangement {
        Some(Arrangement::Outboard | Arrangement::Sterndrive) => Kind::Planing,
        Some(Arrangement::Saildrive) => Kind::Sailing,
        _ if matches!(job.engine.kind, Some(EngineKind::Outboard)) || froude > 0.9 => Kind::Planing,
        _ if froude > 0.5 => Kind::SemiDisplacement,
        _ => Kind::Displacement,
    };
    (kind, false)
}

/// Where the propeller works: stated, else the most usual for the kind.
pub(super) fn arrangement(job: &Job, kind: Kind, engine: EngineKind) -> (Arrangement, bool) {
    match job.boat.arrangement {
        Some(arrangement) => (arrangement, true),
        None if engine == EngineKind::Outboard => (Arrangement::Outboard, false),
        None => (
            match kind {
                Kind::Displacement => Arrangement::Aperture,
                Kind::Sailing => Arrangement::FinKeelStrut,
                Kind::SemiDisplacement | Kind::Planing => Arrangement::InclinedShaft,
            },
            false,
        ),
    }
}

/// One band per kind: displacement, sailing, semi-displacement, planing.
fn by_kind(kind: Kind, bands: [(f64, f64, f64); 4], source: &str) -> Known {
    let (low, middle, high) = bands[match kind {
        Kind::Displacement => 0,
        Kind::Sailing => 1,
        Kind::SemiDisplacement => 2,
        Kind::Planing => 3,
    }];
    Known::assumed(low, middle, high, source)
}

const USUAL: &str = "usual for the kind of boat; common practice, no source";

pub(super) fn hull(job: &Job, kind: Kind, arrangement: Arrangement) -> Hull {
    let boat = &job.boat;
    let slenderness = || {
        by_kind(
            kind,
            [(4.1, 4.6, 5.2), (4.3, 4.8, 5.5), (4.4, 4.9, 5.5), (4.4, 5.0, 5.8)],
            "length over cube root of displacement usual for the kind; common practice, no source",
        )
    };
    let length = match (Known::stated(boat.length_waterline.as_ref()), Known::stated(boat.length_overall.as_ref())) {
        (Some(waterline), _) => Length::Waterline(waterline),
        (None, Some(overall)) => Length::OfOverall {
            overall,
            ratio: by_kind(
                kind,
                [(0.85, 0.91, 0.96), (0.75, 0.82, 0.90), (0.85, 0.90, 0.95), (0.80, 0.87, 0.93)],
                "waterline over length overall usual for the kind; common practice, no source",
            ),
        },
        (None, None) => Length::OfWeight(slenderness()),
    };
    let weight = match Known::stated(boat.displacement.as_ref()) {
        Some(known) => (known, false),
        None => (slenderness(), true),
    };
    let beam = if let Some(known) = Known::stated(boat.beam_waterline.as_ref()) {
        (known, false)
    } else if let Some(mut known) = Known::stated(boat.beam.as_ref()) {
        // Flare and topsides: the waterline is narrower than the boat.
        let (low, middle, high) = match kind {
            Kind::Sailing => (0.80, 0.88, 0.94),
            Kind::Displacement => (0.87, 0.93, 0.98),
            Kind::SemiDisplacement => (0.83, 0.90, 0.95),
            Kind::Planing => (0.78, 0.86, 0.92),
        };
        let b = known.dist.middle;
        known.dist = super::Dist::band(b * low, b * middle, b * high);
        known.source = format!("{}; waterline beam from greatest beam, common practice", known.source);
        (known, false)
    } else {
        (
            by_kind(
                kind,
                [(0.86, 1.0, 1.18), (0.88, 1.0, 1.15), (0.86, 1.0, 1.16), (0.86, 1.0, 1.16)],
                "L/B = 1.45 cube root of L in metres; common practice, no source",
            ),
            true,
        )
    };
    let prismatic = Known::stated(boat.prismatic_coefficient.as_ref()).unwrap_or_else(|| {
        by_kind(kind, [(0.54, 0.59, 0.65), (0.53, 0.555, 0.59), (0.59, 0.64, 0.70), (0.65, 0.70, 0.76)], USUAL)
    });
    let midship = match Known::stated(boat.block_coefficient.as_ref()) {
        // CB = CP CM; a stated CB fixes CM once CP is drawn at its middle.
        Some(mut block) => {
            block.dist = block.dist.times(1.0 / prismatic.dist.middle).within(0.3, 0.98);
            block
        }
        None => by_kind(kind, [(0.62, 0.72, 0.84), (0.64, 0.71, 0.78), (0.62, 0.70, 0.80), (0.58, 0.66, 0.76)], USUAL),
    };
    let lcg = match (&boat.centre_of_gravity, &length) {
        (Some(q), Length::Waterline(l)) => {
            let l = l.dist.middle;
            Known {
                dist: super::Dist::band(q.low / l, q.middle / l, q.high / l),
                stated: true,
                source: "stated".to_owned(),
            }
        }
        (Some(q), Length::OfOverall { overall, ratio }) => {
            let l = overall.dist.middle * ratio.dist.middle;
            Known {
                dist: super::Dist::band(q.low / l, q.middle / l, q.high / l),
                stated: true,
                source: "stated".to_owned(),
            }
        }
        _ => by_kind(kind, [(0.46, 0.49, 0.52), (0.45, 0.47, 0.49), (0.41, 0.45, 0.48), (0.33, 0.38, 0.43)], USUAL),
    };
    let appendages = match (kind, arrangement) {
        (_, Arrangement::Outboard | Arrangement::Sterndrive) => Known::assumed(0.015, 0.03, 0.05, USUAL),
        (Kind::Sailing, Arrangement::Aperture) => Known::assumed(0.35, 0.50, 0.70, USUAL),
        (Kind::Sailing, _) => Known::assumed(0.18, 0.28, 0.42, USUAL),
        (Kind::Displacement, _) => Known::assumed(0.05, 0.12, 0.30, USUAL),
        (Kind::SemiDisplacement, _) => Known::assumed(0.04, 0.08, 0.16, USUAL),
        (Kind::Planing, _) => Known::assumed(0.03, 0.05, 0.08, USUAL),
    };
    Hull {
        length,
        weight,
        beam,
        chine_ratio: match (&boat.beam_chine, &boat.beam, &boat.beam_waterline) {
            (Some(chine), None, Some(waterline)) => {
                let b = waterline.middle;
                Known {
                    dist: super::Dist::band(chine.low / b, chine.middle / b, chine.high / b),
                    stated: true,
                    source: "stated".to_owned(),
                }
            }
            (Some(chine), Some(beam), _) => {
                let b = beam.middle * if kind == Kind::Planing { 0.86 } else { 0.90 };
                Known {
                    dist: super::Dist::band(chine.low / b, chine.middle / b, chine.high / b),
                    stated: true,
                    source: "stated".to_owned(),
                }
            }
            _ => Known::assumed(0.92, 0.98, 1.03, USUAL),
        },
        prismatic,
        midship,
        lcb: by_kind(kind, [(-4.0, -1.5, 1.0), (-5.0, -3.3, -2.0), (-7.0, -4.0, -1.5), (-13.0, -9.0, -5.0)], USUAL),
        entrance: Known::stated(boat.half_entrance_angle.as_ref()).unwrap_or_else(|| {
            by_kind(kind, [(17.0, 24.0, 33.0), (17.0, 21.0, 26.0), (15.0, 21.0, 28.0), (18.0, 25.0, 33.0)], USUAL)
        }),
        transom: by_kind(kind, [(0.01, 0.06, 0.3), (0.005, 0.03, 0.12), (0.25, 0.5, 0.75), (0.7, 0.85, 0.97)], USUAL),
        deadrise: Known::stated(boat.deadrise.as_ref()).unwrap_or_else(|| {
            by_kind(kind, [(5.0, 10.0, 18.0), (5.0, 10.0, 18.0), (6.0, 11.0, 17.0), (11.0, 16.0, 21.0)], USUAL)
        }),
        lcg,
        appendages,
        windage: by_kind(kind, [(0.3, 0.55, 1.0), (0.35, 0.6, 1.0), (0.3, 0.5, 0.8), (0.2, 0.35, 0.6)], USUAL),
    }
}
