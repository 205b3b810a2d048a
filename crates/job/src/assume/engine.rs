//! Engine, gearbox and shaft where they were not stated.

use super::Known;
use crate::model::{Arrangement, EngineKind, Job, Kind};

pub(super) struct Machinery {
    pub power: Known,
    pub rated_speed: Known,
    pub top_ratio: Known,
    pub condition: Known,
    pub reduction: Known,
    pub shaft_angle: Known,
}

/// Kind of engine: stated, else by drive and rated speed.
pub(super) fn kind(job: &Job, hull: Kind) -> (EngineKind, bool) {
    if let Some(kind) = job.engine.kind {
        return (kind, true);
    }
    let rpm = job.engine.rated_speed.as_ref().map(|q| q.middle * 60.0);
    let kilowatts = job.engine.rated_power.as_ref().map_or(20.0, |q| q.middle / 1000.0);
    let kind = match job.boat.arrangement {
        Some(Arrangement::Outboard) => EngineKind::Outboard,
        Some(Arrangement::Sterndrive) if rpm.is_none_or(|r| r > 4100.0) => EngineKind::Petrol,
        _ if rpm.is_some_and(|r| r >= 4300.0) => EngineKind::Petrol,
        _ if hull == Kind::Sailing || kilowatts < 55.0 => EngineKind::NaturalDiesel,
        _ => EngineKind::TurboDiesel,
    };
    (kind, false)
}

pub(super) fn engine(job: &Job, hull: Kind, kind: EngineKind, arrangement: Arrangement) -> Machinery {
    let engine = &job.engine;
    let power =
        Known::stated(engine.rated_power.as_ref()).unwrap_or_else(|| Known::assumed(1e3, 20e3, 400e3, "not known"));
    let rated_speed = Known::stated(engine.rated_speed.as_ref()).unwrap_or_else(|| {
        if let Some((low, high)) = engine.full_throttle_band {
            // Declared power stands at the middle of the recommended band (ISO 8665 as quoted by engine makers).
            let middle = 0.5 * (low + high);
            return Known::assumed(0.97 * middle, middle, 1.03 * middle, "middle of the maker's full-throttle band");
        }
        let (low, middle, high) = match kind {
            EngineKind::Outboard => (5250.0, 5500.0, 5850.0),
            EngineKind::Petrol => (4200.0, 4600.0, 5000.0),
            EngineKind::NaturalDiesel => (2700.0, 3200.0, 3600.0),
            EngineKind::TurboDiesel => (2400.0, 2900.0, 3600.0),
            EngineKind::Electric => (1400.0, 2200.0, 3500.0),
        };
        Known::assumed(low / 60.0, middle / 60.0, high / 60.0, "usual for the kind of engine; common practice")
    });
    let top_ratio = match Known::stated(engine.no_load_speed.as_ref()) {
        Some(mut known) => {
            known.dist = known.dist.times(1.0 / rated_speed.dist.middle);
            known
        }
        None => match kind {
            EngineKind::NaturalDiesel => {
                Known::assumed(1.05, 1.08, 1.11, "mechanical governor, about 8 to 10 %; from memory")
            }
            EngineKind::TurboDiesel => Known::assumed(1.03, 1.06, 1.10, "governor droop; from memory"),
            EngineKind::Petrol => Known::assumed(1.06, 1.12, 1.20, "limiter above the band; common practice"),
            EngineKind::Outboard => {
                let top = engine.full_throttle_band.map_or(1.09, |(_, high)| high / rated_speed.dist.middle);
                Known::assumed(
                    top * 1.01,
                    top * 1.035,
                    top * 1.07,
                    "limiter just above the maker's band; common practice",
                )
            }
            EngineKind::Electric => Known::assumed(1.00, 1.02, 1.06, "controller limit; common practice"),
        },
    };
    let reduction = Known::stated(job.drive.reduction.as_ref()).unwrap_or_else(|| match arrangement {
        Arrangement::Outboard => {
            let kilowatts = power.dist.middle / 1000.0;
            let (low, middle, high) = if kilowatts < 12.0 {
                (1.90, 2.08, 2.4)
            } else if kilowatts < 60.0 {
                (1.80, 2.0, 2.35)
            } else {
                (1.75, 1.92, 2.2)
            };
            Known::assumed(low, middle, high, "usual for outboards of this power; common practice")
        }
        Arrangement::Sterndrive => Known::assumed(1.5, 1.78, 2.1, "usual for sterndrives; common practice"),
        Arrangement::Saildrive => Known::assumed(2.0, 2.2, 2.6, "usual for saildrives; common practice"),
        _ if hull == Kind::Planing => Known::assumed(1.25, 1.6, 2.0, "usual for planing inboards; common practice"),
        _ => Known::assumed(1.9, 2.2, 2.7, "usual for inboards; common practice"),
    });
    let shaft_angle = Known::stated(job.drive.shaft_angle.as_ref()).unwrap_or_else(|| match arrangement {
        Arrangement::Outboard | Arrangement::Sterndrive => Known::assumed(-1.0, 2.0, 5.0, "trimmed near level"),
        Arrangement::Saildrive => Known::assumed(-1.0, 1.0, 3.0, "level"),
        Arrangement::InclinedShaft => Known::assumed(8.0, 11.0, 14.0, "usual under planing hulls; common practice"),
        _ => Known::assumed(3.0, 7.0, 11.0, "usual; common practice"),
    });
    Machinery {
        power,
        rated_speed,
        top_ratio,
        condition: match kind {
            EngineKind::Electric => Known::assumed(0.97, 1.0, 1.01, "estimate"),
            // Auxiliaries and small working diesels are old, drive alternators, breathe hot air and hardly ever reach
            // their rated speed; "tired" is the commonest word in the reports. The lower edge follows the scatter of
            // sisters: five of one class, one engine and one propeller read 2600 to 3500 rpm (owners' reports), and power
            // goes with the cube of engine speed.
            EngineKind::NaturalDiesel => Known::assumed(
                0.72,
                0.92,
                1.04,
                "makers' tolerance, age, full travel of the throttle, what is driven off it; estimate",
            ),
            _ => Known::assumed(0.90, 0.97, 1.02, "makers' tolerance ±5 % and wear; estimate"),
        },
        reduction,
        shaft_angle,
    }
}
