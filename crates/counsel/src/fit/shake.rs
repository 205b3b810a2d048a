//! Rates of shaft, blades and engine, what they meet, and what they do to the hull.

use super::Checks;
use super::exchange::Size;
use super::loads::{Loads, Subject};
use super::report::{Avoid, Order};
use crate::phrase::{number, plain, span};
use crate::report::{Band, Gravity};
use hydro::vibration::wake::Ahead;
use hydro::vibration::{balance, orders, pressure, singing};
use job::{Arrangement, Job};

/// Share of full throttle from which an engine is run for hours (common practice).
const CRUISES_FROM: f64 = 0.5;

/// Angle between the arms of a V strut when nobody measured it, degrees (common practice, no source).
const USUAL_V: f64 = 50.0;

/// What stands ahead of the propeller.
pub(crate) struct Shadows {
    /// The wake it leaves, for the blades' force.
    pub wake: Ahead,
    /// Where its shadows stand, rad from upright.
    pub at: Vec<f64>,
    /// In words.
    pub what: String,
    /// Whether the angle of a V strut's arms was taken as usual.
    pub assumed: bool,
}

impl Shadows {
    pub fn of(job: &Job) -> Shadows {
        let one = |what: &str| Shadows {
            wake: Ahead::Strut([0.0, 0.0]),
            at: vec![0.0],
            what: what.to_owned(),
            assumed: false,
        };
        let spread = job.stern.strut_spread.as_ref().map(|q| q.middle);
        match (job.stern.strut_arms, job.boat.arrangement) {
            (Some(2), _) => {
                let degrees = spread.unwrap_or(USUAL_V);
                let half = 0.5 * degrees.to_radians();
                Shadows {
                    wake: Ahead::Strut([half, -half]),
                    at: vec![half, -half],
                    what: format!("the arms of a {} degree V strut", plain(degrees, 2)),
                    assumed: spread.is_none(),
                }
            }
            (Some(1), _) => one("a strut"),
            (_, Some(Arrangement::Aperture | Arrangement::Skeg)) => Shadows {
                wake: Ahead::Deadwood,
                at: vec![0.0, std::f64::consts::PI],
                what: "the deadwood above and below".to_owned(),
                assumed: false,
            },
            // Said to have none: the shaft's slope is all that is uneven.
            (Some(0), _) => Shadows {
                wake: Ahead::InclinedShaft(job.drive.shaft_angle.as_ref().map_or(0.0, |q| q.middle.to_radians())),
                at: Vec::new(),
                what: "nothing".to_owned(),
                assumed: false,
            },
            (_, Some(Arrangement::InclinedShaft | Arrangement::FinKeelStrut | Arrangement::Tunnel)) => one("a strut"),
            (_, Some(Arrangement::Saildrive | Arrangement::Sterndrive | Arrangement::Outboard)) => one("the leg"),
            // Not said: nothing is held against an even number of blades.
            _ => Shadows { wake: Ahead::Deadwood, ..one("what stands ahead") },
        }
    }

    /// Whether two blades or more of a propeller are in shadow at the same moment.
    pub fn meet(&self, size: &Size) -> bool {
        orders::at_once(size.blades, size.wide(), &self.at) > 1
    }
}

/// The reduction: as stated, else as the crowd has it.
fn reduction(subject: &Subject, loads: &Loads) -> f64 {
    let stated = subject.job.drive.reduction.as_ref().map(|q| q.middle);
    stated.unwrap_or(loads.engine.middle / loads.turns.middle.max(1e-9))
}

/// Orders per turn of the engine.
pub(super) fn table(subject: &Subject, loads: &Loads) -> Vec<Order> {
    let reduction = reduction(subject, loads);
    let z = f64::from(subject.blades);
    let full = loads.engine.middle;
    let order = |what, per_turn: f64| Order { what, per_turn, at_full_throttle: per_turn * full };
    let mut list = vec![
        order("shaft", 1.0 / reduction),
        order("blades", z / reduction),
        order("twice blades", 2.0 * z / reduction),
        order("engine", 1.0),
    ];
    if let Some(cylinders) = subject.job.engine.cylinders {
        let two = subject.job.engine.two_stroke == Some(true);
        list.push(order("firing", orders::firing(1.0, cylinders, two)));
    }
    list
}

pub(super) fn checks(subject: &Subject, loads: &Loads, out: &mut Checks) -> Vec<Avoid> {
    let mut avoid = Vec::new();
    beats(subject, loads, out, &mut avoid);
    shadow(subject, out);
    pulse(subject, loads, out);
    unbalance(subject, loads, out);
    tone(subject, loads, out, &mut avoid);
    avoid
}

fn beats(subject: &Subject, loads: &Loads, out: &mut Checks, avoid: &mut Vec<Avoid>) {
    const CODE: &str = "beat";
    const SUBJECT: &str = "beat of blades and firing";
    let rule = "blade rate against firing and engine rate; a beat below 8 Hz is felt as a throb (common practice, no source; an owner's was 6 Hz)";
    let job = subject.job;
    let Some(cylinders) = job.engine.cylinders else {
        return out.unknown(CODE, SUBJECT, rule, "count the cylinders (engine.cylinders)");
    };
    let reduction = reduction(subject, loads);
    let full = loads.engine.middle;
    let firing = orders::firing(1.0, cylinders, job.engine.two_stroke == Some(true));
    let blades = f64::from(subject.blades) / reduction;
    let mut nearest: Option<(f64, &str)> = None;
    // Three cylinders and fewer rock once a turn besides (common practice, no source).
    let rocks = (cylinders <= 3).then_some((1.0, "the engine's turning"));
    for (rate, what) in [Some((firing, "firing")), rocks].into_iter().flatten() {
        let beat = orders::beat(rate, blades);
        // Both rates grow with engine speed: the beat is slow up to some speed, and the trouble is where she cruises.
        let slow_to = orders::FELT / beat.max(1e-9);
        if slow_to > CRUISES_FROM * full {
            avoid.push(Avoid {
                low: 60.0 * CRUISES_FROM * full,
                high: 60.0 * slow_to.min(full),
                why: format!("{} blades throb against {what}", subject.blades),
            });
        }
        if nearest.is_none_or(|(b, _)| beat < b) {
            nearest = Some((beat, what));
        }
    }
    let Some((beat, what)) = nearest else { return };
    let at_full = beat * full;
    let slow = orders::FELT / beat.max(1e-9) > CRUISES_FROM * full;
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity: if slow { Gravity::Watch } else { Gravity::Well },
        known: true,
        hard: false,
        sentence: format!(
            "At full throttle the blades pass {} times a second, firing is {}; the nearest, {what}, beats {} Hz.",
            plain(blades * full, 3),
            plain(firing * full, 3),
            plain(at_full, 2)
        ),
        value: Some(Band { low: 0.95 * at_full, middle: at_full, high: 1.05 * at_full, unit: "Hz" }),
        least: Some(orders::FELT),
        most: None,
        rule: rule.to_owned(),
        measure: if slow {
            "another number of blades parts the two rates; indexing the propeller on the shaft does not".to_owned()
        } else {
            String::new()
        },
        caution: None,
    });
}

fn shadow(subject: &Subject, out: &mut Checks) {
    let ahead = Shadows::of(subject.job);
    let met = ahead.meet(&subject.size());
    let z = subject.blades;
    let apart = plain(360.0 / f64::from(z.max(1)), 2);
    let mut measure = Vec::new();
    if met {
        measure.push("another number of blades, or skew");
    }
    if ahead.assumed {
        measure.push("measure the angle between the arms: it was taken as usual (stern.strut_spread)");
    }
    out.push(super::Check {
        code: "shadow",
        subject: "blades against what stands ahead",
        gravity: if met || ahead.assumed { Gravity::Watch } else { Gravity::Well },
        known: true,
        hard: false,
        sentence: match (met, ahead.at.len()) {
            (true, _) => format!(
                "{z} blades, {apart} degrees apart, pass the shadows of {} two at a time: the shaft feels it.",
                ahead.what
            ),
            (false, 0) => format!("{z} blades: nothing stands ahead to shade them."),
            (false, 1) => format!("{z} blades pass the shadow of {} one at a time.", ahead.what),
            _ => format!("{z} blades, {apart} degrees apart, pass the shadows of {} one at a time.", ahead.what),
        },
        value: None,
        least: None,
        most: None,
        rule: "the angle between shadows should be no multiple of that between blades, 360/Z; behind a flat deadwood three and five are smoother than two and four (from memory)".to_owned(),
        measure: measure.join("; "),
        caution: None,
    });
}

fn pulse(subject: &Subject, loads: &Loads, out: &mut Checks) {
    const CODE: &str = "hull-pulse";
    const SUBJECT: &str = "pressure pulse on the hull";
    let rule = "Holden, Fagerjord & Frostad 1980 (from memory): made from ships, on a boat it compares propellers and gives no level; halving the clearance doubles it";
    let job = subject.job;
    let r = 0.5 * subject.diameter;
    let gap = job
        .stern
        .tip_clearance
        .as_ref()
        .map(|q| q.middle)
        .or_else(|| job.stern.hull_above.as_ref().map(|q| q.middle - r));
    let Some(gap) = gap.filter(|_| !subject.leg) else {
        if !subject.leg {
            out.unknown(CODE, SUBJECT, rule, "measure the tip's clearance to the hull (stern.tip_clearance)");
        }
        return;
    };
    let at = |turns: f64, speed: f64| {
        pressure::pulse(&pressure::Above {
            turns,
            diameter: subject.diameter,
            blades: subject.blades,
            gap: gap + 0.1 * r,
            speed,
            peak: 0.5 * (1.0 - loads.inflow).max(0.02),
            depth: job.propeller.immersion.as_ref().map_or(1.5 * r, |q| q.middle),
        })
        .2 / 1e3
    };
    let value = Band {
        low: at(loads.turns.low, loads.speed.low),
        middle: at(loads.turns.middle, loads.speed.middle),
        high: at(loads.turns.high, loads.speed.high),
        unit: "kPa",
    };
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity: Gravity::Well,
        known: true,
        hard: false,
        sentence: format!(
            "About {} at blade rate at full throttle: to hold one propeller against another, not against a limit.",
            span(&value)
        ),
        value: Some(value),
        least: None,
        most: None,
        rule: rule.to_owned(),
        measure: String::new(),
        caution: None,
    });
}

fn unbalance(subject: &Subject, loads: &Loads, out: &mut Checks) {
    let (mass, known) = super::shaft::mass(subject);
    let allowed = balance::allowed(balance::GENERAL, mass, loads.turns.middle);
    let at_tip = 1e3 * allowed / (0.5 * subject.diameter);
    let from = if known { "stated" } else { "estimated" };
    out.push(super::Check {
        code: "balance",
        subject: "balance",
        gravity: Gravity::Well,
        known: true,
        hard: false,
        sentence: format!(
            "{} kg ({from}) at {} rpm: grade G 6.3 allows {} g at the tip.",
            plain(mass, 2),
            number(60.0 * loads.turns.middle, 10.0),
            plain(at_tip, 2)
        ),
        value: Some(Band { low: at_tip, middle: at_tip, high: at_tip, unit: "g" }),
        least: None,
        most: Some(at_tip),
        rule: "ISO 21940-11, U = 9549 G m/n; G 6.3 machinery in general (propellers stand in no list read); ISO 484 has a rule of its own (from memory)".to_owned(),
        measure: if known { String::new() } else { "weigh the propeller (propeller.mass)".to_owned() },
        caution: None,
    });
}

fn tone(subject: &Subject, loads: &Loads, out: &mut Checks, avoid: &mut Vec<Avoid>) {
    const CODE: &str = "singing";
    const SUBJECT: &str = "singing";
    let rule = "vortices leave a blunt edge at f = St U/t, St 0.18 to 0.22 (from memory), and sing where a blade answers; the blade's lowest mode is estimated to a third";
    let p = &subject.job.propeller;
    let Some(edge) = &p.edge_thickness else {
        return out.unknown(CODE, SUBJECT, rule, "measure the thickness of the trailing edge (propeller.edge_thickness); a bevelled or sharp edge seldom sings");
    };
    let d = subject.diameter;
    let chord = 2.073 * subject.area_ratio * d / f64::from(subject.blades.max(1));
    let per_turn = |x: f64| {
        // Speed of the section for one turn a second, advance left out: 5 % at the outer radii.
        let speed = std::f64::consts::PI * x * d;
        let turns = loads.turns.middle;
        let (low, high) = singing::tone(speed * turns, edge.middle, chord, loads.viscosity);
        (low / turns, high / turns)
    };
    let (inner, outer) = (per_turn(0.7), per_turn(0.95));
    let thickness = p.outer_thickness.as_ref().map_or(0.02 * d, |q| q.middle);
    let metal = if subject.alloy == hydro::blade::Alloy::Aluminium { 70e9 } else { 115e9 };
    let (mode_low, mode_high) = singing::blade_mode(0.4 * d, thickness, metal, subject.alloy.density());
    let reduction = loads.engine.middle / loads.turns.middle.max(1e-9);
    let at = |mode: f64, tone: f64| 60.0 * reduction * mode / tone.max(1e-9);
    let (low, high) = (at(0.8 * mode_low, outer.1), at(1.2 * mode_high, inner.0));
    let full = 60.0 * loads.engine.middle;
    // An edge that thin is as good as sharp (common practice, no source).
    let inside = low < full && edge.middle > 1.2e-3;
    if inside {
        avoid.push(Avoid { low, high: high.min(full), why: "the trailing edge may sing".to_owned() });
    }
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity: if inside { Gravity::Watch } else { Gravity::Well },
        known: true,
        hard: false,
        sentence: format!(
            "With {} mm at the trailing edge a tone could meet the blades' lowest mode between {} and {} rpm of the engine.",
            plain(1e3 * edge.middle, 2),
            number(low, 50.0),
            number(high, 50.0)
        ),
        value: Some(Band { low, middle: 0.5 * (low + high), high, unit: "rpm" }),
        least: None,
        most: None,
        rule: rule.to_owned(),
        measure: if inside { "if she sings under way and stops tied up in gear: bevel the trailing edge on one side, a few light passes at a time, never the leading edge".to_owned() } else { String::new() },
        caution: None,
    });
}
