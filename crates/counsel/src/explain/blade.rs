//! Terms that stand on the propeller's shape.

use super::{Ground, OnBoat, Term};
use crate::phrase::{inches, number, plain};
use crate::survey;
use hydro::blade;
use job::Hand;
use std::f64::consts::{FRAC_PI_4, PI};

pub(super) fn parts(ground: &Ground) -> OnBoat {
    let d = ground.middle(|r| r.fitted.screw.diameter);
    let blades = ground.prepared.crowd.plan.knowledge.blades.0;
    OnBoat::new(
        Term::Parts,
        "boat",
        vec![
            ("blades", blades.to_string()),
            ("path", plain(PI * d, 3)),
            ("tip", ground.span("m/s", |r| PI * r.fitted.screw.diameter * r.full.point.shaft_speed.0)),
        ],
        &["tip-speed"],
    )
}

pub(super) fn areas(ground: &Ground) -> OnBoat {
    let screw = |r: &crate::panel::Run| r.fitted.screw;
    let disc = |r: &crate::panel::Run| FRAC_PI_4 * screw(r).diameter.powi(2);
    let projected = |r: &crate::panel::Run| {
        let s = screw(r);
        hydro::limits::burrill::projected_area_ratio(s.expanded_area_ratio, s.effective_pitch_ratio())
    };
    OnBoat::new(
        Term::Areas,
        "boat",
        vec![
            ("ratio", ground.span("1", |r| screw(r).expanded_area_ratio)),
            (
                "blade",
                plain(ground.middle(|r| 1e4 * disc(r) * screw(r).expanded_area_ratio / f64::from(screw(r).blades)), 2),
            ),
            ("shadow", number(ground.middle(|r| 100.0 * projected(r) / screw(r).expanded_area_ratio), 1.0)),
            ("load", ground.span("kPa", |r| r.full.point.thrust / (1000.0 * disc(r) * projected(r)))),
        ],
        &["burrill-1943"],
    )
}

pub(super) fn pitch(ground: &Ground) -> OnBoat {
    let marked = ground.prepared.crowd.plan.marked_pitch;
    let d = ground.middle(|r| r.fitted.screw.diameter);
    let angle = |x: f64| number((marked / (PI * x * d)).atan().to_degrees(), 1.0);
    OnBoat::new(
        Term::Pitch,
        "boat",
        vec![
            ("inches", inches(marked)),
            ("mm", number(1000.0 * marked, 1.0)),
            ("root", angle(0.3)),
            ("mid", angle(0.7)),
            ("tip", angle(1.0)),
            ("true", ground.span("mm", |r| 1000.0 * r.fitted.screw.pitch_ratio * r.fitted.screw.diameter)),
            ("advance", ground.span("mm", |r| 1000.0 * r.full.point.speed / r.full.point.shaft_speed.0.max(1e-9))),
        ],
        &["running-balance"],
    )
}

pub(super) fn hand(ground: &Ground) -> OnBoat {
    let case = match ground.prepared.job.propeller.hand {
        Some(Hand::Right) => "right",
        Some(Hand::Left) => "left",
        Some(Hand::Pair) => "pair",
        None => "unknown",
    };
    OnBoat::new(Term::Hand, case, Vec::new(), &[])
}

pub(super) fn twin(ground: &Ground) -> OnBoat {
    let screws = ground.prepared.crowd.plan.knowledge.screws.0;
    let case = match (screws, ground.prepared.job.propeller.hand) {
        (0 | 1, _) => "single",
        (_, Some(Hand::Pair)) => "pair",
        (_, Some(_)) => "same",
        (_, None) => "unknown",
    };
    let thrust = ground.span("N", |r| r.full.point.thrust);
    let power = ground.span("kW", |r| r.full.point.brake_power / 1000.0);
    OnBoat::new(
        Term::Twin,
        case,
        vec![("screws", screws.to_string()), ("thrust", thrust), ("power", power)],
        &["running-balance"],
    )
}

pub(super) fn paddlewheel(ground: &Ground) -> OnBoat {
    let screws = ground.prepared.crowd.plan.knowledge.screws.0;
    let case = match ground.prepared.job.propeller.hand {
        _ if screws > 1 => "twin",
        Some(Hand::Left) => "left",
        Some(Hand::Right) => "right",
        Some(Hand::Pair) => "twin",
        None => "unknown",
    };
    let angle = ground.span("\u{b0}", |r| r.fitted.installation.stern.shaft_angle_deg);
    OnBoat::new(Term::Paddlewheel, case, vec![("angle", angle)], &[])
}

pub(super) fn rake(ground: &Ground) -> OnBoat {
    let Some(measured) = survey::measured(&ground.prepared.job) else {
        return OnBoat::new(Term::Rake, "unknown", Vec::new(), &[]);
    };
    let p = &measured.propeller;
    let hub = p.hub.radius();
    let rakes: Vec<blade::Rake> = p.blades.iter().map(|b| blade::rake(b, hub)).collect();
    let mean = |f: fn(&blade::Rake) -> f64| rakes.iter().map(f).sum::<f64>() / rakes.len().max(1) as f64;
    OnBoat::new(
        Term::Rake,
        "boat",
        vec![("angle", number(mean(|r| r.angle.to_degrees()), 0.5)), ("tip", number(1000.0 * mean(|r| r.at_tip), 1.0))],
        &["blade-angles"],
    )
}

pub(super) fn skew(ground: &Ground) -> OnBoat {
    let Some(measured) = survey::measured(&ground.prepared.job) else {
        return OnBoat::new(Term::Skew, "unknown", Vec::new(), &[]);
    };
    let p = &measured.propeller;
    let hub = p.hub.radius();
    let skews: Vec<f64> = p.blades.iter().map(|b| blade::skew(b, hub).angle.to_degrees()).collect();
    let mean = skews.iter().sum::<f64>() / skews.len().max(1) as f64;
    let pitch = 360.0 / p.count().max(1.0);
    OnBoat::new(
        Term::Skew,
        "boat",
        vec![("angle", number(mean, 1.0)), ("share", number(100.0 * mean / pitch, 5.0))],
        &["blade-angles"],
    )
}
