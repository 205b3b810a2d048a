//! Terms that stand on how the boat runs.

use super::{Ground, OnBoat, Term};
use crate::Change;
use crate::measures;
use crate::phrase::{chance, number, plain, span};
use crate::report::Band;
use hydro::limits::immersion;
use job::Cup;

const INCH: f64 = 0.0254;

/// A difference in words that a sentence can take up: `60 to 90 rpm less`.
fn more_or_less(band: &Band) -> (&'static str, String) {
    if band.high < 0.0 {
        let turned = Band { low: -band.high, middle: -band.middle, high: -band.low, unit: band.unit };
        ("less", span(&turned))
    } else if band.low > 0.0 {
        ("more", span(band))
    } else {
        ("even", span(band))
    }
}

pub(super) fn slip(ground: &Ground) -> OnBoat {
    let of = |f: fn(&measures::Measures) -> f64| ground.span("%", move |r| 100.0 * f(&measures::at_full_throttle(r)));
    let best = ground.middle(|r| 100.0 * r.fitted.installation.open_water.best().1);
    OnBoat::new(
        Term::Slip,
        "boat",
        vec![
            ("apparent", of(|m| m.apparent_slip)),
            ("real", of(|m| m.real_slip)),
            ("efficiency", of(|m| m.efficiency)),
            ("best", number(best, 1.0)),
        ],
        &["slip", "running-balance"],
    )
}

pub(super) fn blades(ground: &Ground) -> OnBoat {
    let z = ground.prepared.crowd.plan.knowledge.blades.0;
    // A fourth blade of the same outline brings its own area.
    let area = ground.middle(|r| r.fitted.screw.expanded_area_ratio);
    let more = if z < 7 { z + 1 } else { z - 1 };
    let change = Change {
        blades: Some(more),
        area_ratio: Some(area * f64::from(more) / f64::from(z.max(1))),
        ..Change::default()
    };
    let tried = ground.prepared.compare(&change).difference;
    let (case, difference) = more_or_less(&tried.engine_speed);
    OnBoat::new(
        Term::Blades,
        case,
        vec![
            ("blades", z.to_string()),
            ("rate", ground.span("Hz", |r| f64::from(r.fitted.screw.blades) * r.full.point.shaft_speed.0)),
            ("other", more.to_string()),
            ("difference", difference),
            ("speed", span(&tried.speed)),
        ],
        &["running-balance"],
    )
}

pub(super) fn cup(ground: &Ground) -> OnBoat {
    let marked = ground.prepared.crowd.plan.marked_pitch;
    let medium = hydro::openwater::cup::Cup::Medium.fraction();
    let has = matches!(ground.prepared.job.propeller.cup, Some(Cup::Light | Cup::Medium | Cup::Heavy));
    let change = Change { cup: Some(if has { Cup::None } else { Cup::Medium }), ..Change::default() };
    let tried = ground.prepared.compare(&change).difference;
    let case = if has { "has" } else { "none" };
    OnBoat::new(
        Term::Cup,
        case,
        vec![
            ("low", number(1000.0 * marked * medium.low, 1.0)),
            ("high", number(1000.0 * marked * medium.high, 1.0)),
            ("difference", more_or_less(&tried.engine_speed).1),
        ],
        &["cup-in-words"],
    )
}

pub(super) fn ventilation(ground: &Ground) -> OnBoat {
    let plan = &ground.prepared.crowd.plan;
    let depth = plan.knowledge.immersion.dist;
    let d = ground.middle(|r| r.fitted.screw.diameter);
    let over = |h: f64| 1000.0 * immersion::tip_immersion(h, d);
    let band = Band { low: over(depth.low), middle: over(depth.middle), high: over(depth.high), unit: "mm" };
    let case = match immersion::ventilation(depth.middle, d) {
        immersion::Ventilation::Unlikely => "deep",
        immersion::Ventilation::Possible | immersion::Ventilation::Likely => "shallow",
        immersion::Ventilation::Certain => "breaks",
    };
    OnBoat::new(
        Term::Ventilation,
        case,
        vec![("water", span(&band)), ("back", ground.span("%", |r| measures::at_full_throttle(r).back_cavitation))],
        &["tip-immersion", "burrill-1943"],
    )
}

pub(super) fn curves(ground: &Ground) -> OnBoat {
    let answer = ground.prepared.compare(&Change::default());
    let v = &answer.before.verdict;
    let (case, share) = if v.over_pitched >= v.right && v.over_pitched >= v.under_pitched {
        ("below", v.over_pitched)
    } else if v.under_pitched > v.right {
        ("above", v.under_pitched)
    } else {
        ("inside", v.right)
    };
    OnBoat::new(
        Term::Curves,
        case,
        vec![
            ("speed", span(&answer.before.full_throttle.engine_speed)),
            ("power", span(&answer.before.full_throttle.power)),
            ("from", number(answer.accepted_band.low, 10.0)),
            ("to", number(answer.accepted_band.high, 10.0)),
            ("chance", chance(share)),
        ],
        &["running-balance"],
    )
}

pub(super) fn measuring(ground: &Ground) -> OnBoat {
    let marked = ground.prepared.crowd.plan.marked_pitch;
    let change = Change { pitch: Some(marked - INCH), ..Change::default() };
    let inch = ground.prepared.compare(&change).difference.engine_speed;
    let full = ground.middle(|r| r.full.point.engine_speed.rpm());
    let off = 0.05 * full;
    OnBoat::new(
        Term::Measuring,
        "boat",
        vec![
            ("off", number(off, 10.0)),
            ("inch", span(&inch)),
            ("wrong", plain(off / inch.middle.abs().max(1.0), 2)),
            ("speed", ground.span("kn", |r| r.full.point.speed / crate::panel::KNOT)),
        ],
        &["running-balance"],
    )
}
