//! What was accepted but looks wrong: values that contradict each other or what boats are.
//!
//! The bounds are common practice, no source, set wide: a doubt should make a reader nod, not shrug.

use crate::model::*;
use crate::number::show;
use crate::problem::Problem;
use crate::quantity::{Quantity, Source};
use crate::read::Fields;
use crate::stamp::{self, INCH};
use std::ops::Range;

const KNOT: f64 = 1852.0 / 3600.0;
const G: f64 = 9.806_65;
/// Sea water, kg/m³; near enough for a doubt.
const WATER: f64 = 1025.0;

struct Doubts<'a>(&'a mut Vec<Problem>);

impl Doubts<'_> {
    fn push(
        &mut self,
        code: &'static str,
        at: &Range<usize>,
        message: impl Into<String>,
        help: impl Into<String>,
        with: &[(&Quantity, &str)],
    ) {
        let problem = Problem::doubt(code, at.clone(), message).help(help);
        self.0.push(with.iter().fold(problem, |problem, (q, words)| problem.with(&q.at, *words)));
    }
}

/// Adds the doubts a job raises; `fields` says where its words stand.
pub(crate) fn find(job: &Job, fields: &Fields, problems: &mut Vec<Problem>) {
    let mut doubts = Doubts(problems);
    hull(&job.boat, &fields.table("boat"), &mut doubts);
    engine(&job.engine, &mut doubts);
    drive(&job.drive, &mut doubts);
    propeller(&job.propeller, &fields.table("propeller"), &mut doubts);
    sides(job, fields, &mut doubts);
    for (reading, fields) in job.readings.iter().zip(fields.tables("reading")) {
        instruments(reading, job, &mut doubts);
        speed(reading, job, &mut doubts);
        if let Some(propeller_then) = &reading.state.propeller {
            propeller(propeller_then, &fields.table("state").table("propeller"), &mut doubts);
        }
    }
}

/// Sides belong to two screws; a boat with one has none, and one with more needs more than two names.
fn sides(job: &Job, fields: &Fields, doubts: &mut Doubts) {
    let told = [("port", job.port != Own::default()), ("starboard", job.starboard != Own::default())];
    let of_survey = job.survey.as_ref().is_some_and(|s| s.side.is_some());
    let side_read = job.readings.iter().any(|r| r.side.is_some() || r.state.swapped.is_some());
    if job.boat.screws == Some(2) || !(told.iter().any(|t| t.1) || of_survey || side_read) {
        return;
    }
    let help = "say screws = 2 in [boat] for a pair; with another number the sides are not told apart";
    let message = job.boat.screws.map_or_else(
        || "a side is spoken of, and the number of screws is not said".to_owned(),
        |n| format!("a side is spoken of on a boat with {n} screw{}", if n == 1 { "" } else { "s" }),
    );
    let place = told.iter().find(|t| t.1).map(|t| fields.table(t.0).span);
    let reading = || fields.tables("reading").find(|f| f.node("side").is_some()).map(|f| f.at("side"));
    let at = place.or_else(reading).unwrap_or_else(|| fields.table("survey").span);
    doubts.push("sides", &at, message, help, &[]);
}

fn hull(boat: &Boat, fields: &Fields, doubts: &mut Doubts) {
    let longer = |a: &Option<Quantity>, b: &Option<Quantity>, room: f64| match (a, b) {
        (Some(a), Some(b)) if a.low > b.high * room => Some((a.clone(), b.clone())),
        _ => None,
    };
    if let Some((a, b)) = longer(&boat.length_waterline, &boat.length_overall, 1.0) {
        doubts.push(
            "lengths",
            &a.at,
            "the waterline is longer than the boat",
            "one of the two lengths is wrong",
            &[(&b, "the boat")],
        );
    }
    if let Some((a, b)) = longer(&boat.beam_waterline, &boat.beam, 1.02) {
        doubts.push(
            "beams",
            &a.at,
            "the waterline is broader than the boat",
            "one of the two beams is wrong",
            &[(&b, "the boat")],
        );
    }
    let length = boat.length_waterline.as_ref().or(boat.length_overall.as_ref());
    if let (Some(length), Some(beam)) = (length, boat.beam_waterline.as_ref().or(boat.beam.as_ref())) {
        let ratio = length.middle / beam.middle;
        if !(1.5..=12.0).contains(&ratio) {
            let message = format!("length over beam is {}; most boats lie between 2 and 6", show(ratio, 2));
            doubts.push(
                "length-beam",
                &beam.at,
                message,
                "look at both, and at their units",
                &[(length, "the length")],
            );
        }
    }
    if let (Some(length), Some(mass)) = (length, &boat.displacement) {
        // Length over the cube root of the volume: about 4 for a heavy workboat, 5 to 6 for yachts, 8 for a narrow racer.
        let slenderness = length.middle / (mass.middle / WATER).cbrt();
        if !(2.8..=10.0).contains(&slenderness) {
            let (what, typical) =
                (if slenderness < 2.8 { "heavy" } else { "light" }, WATER * (length.middle / 5.5).powi(3));
            let message = format!(
                "very {what} for her length: a boat of this length often weighs around {} t",
                show(typical / 1000.0, 2)
            );
            doubts.push(
                "displacement-length",
                &mass.at,
                message,
                "look at the weight and its unit",
                &[(length, "the length")],
            );
        }
    }
    if boat.kind == Some(Kind::Sailing) && boat.arrangement == Some(Arrangement::Sterndrive) {
        let problem = Problem::doubt("arrangement", fields.at("arrangement"), "a sailing boat with a sterndrive");
        doubts.0.push(problem.help("one of the two is wrong").with(&fields.at("kind"), "the kind of boat"));
    }
}

fn engine(engine: &Engine, doubts: &mut Doubts) {
    let (rated, free) = (&engine.rated_speed, &engine.no_load_speed);
    if let (Some(rated), Some(free)) = (rated, free)
        && free.high < rated.low
    {
        doubts.push(
            "no-load-speed",
            &free.at,
            "without load the engine turns slower than at full load",
            "a governor lets it run 3 to 12 % above rated speed without load",
            &[(rated, "rated speed")],
        );
    }
    if let (Some(rated), Some((low, high))) = (rated, engine.full_throttle_band)
        && (rated.high < low || rated.low > high)
    {
        let message = format!(
            "the rated speed lies outside the full-throttle band, {} to {} rpm",
            show(low * 60.0, 4),
            show(high * 60.0, 4)
        );
        doubts.push("rated-band", &rated.at, message, "one of the two is wrong", &[]);
    }
    let top = engine.curve.iter().max_by(|a, b| a.1.middle.total_cmp(&b.1.middle));
    if let (Some((_, top)), Some(power)) = (top, &engine.rated_power)
        && (top.middle / power.middle - 1.0).abs() > 0.15
    {
        let message = format!(
            "the curve's highest power is {} kW, the rated power {} kW",
            show(top.middle / 1000.0, 3),
            show(power.middle / 1000.0, 3)
        );
        doubts.push(
            "curve-power",
            &top.at,
            message,
            "look whether both are in the same unit and measured at the same place",
            &[(power, "rated power")],
        );
    }
    if let (Some(power), Some(EngineKind::NaturalDiesel | EngineKind::TurboDiesel), Some(speed)) =
        (&engine.rated_power, engine.kind, rated)
        && speed.middle > 5000.0 / 60.0
    {
        doubts.push(
            "diesel-speed",
            &speed.at,
            "a diesel that is rated above 5000 rpm",
            "look at kind in [engine], or at the speed",
            &[(power, "its power")],
        );
    }
}

fn drive(drive: &Drive, doubts: &mut Doubts) {
    if let Some(q) = &drive.reduction
        && q.middle < 0.7
    {
        let help = format!("if the plate means the inverse, write {}", show(1.0 / q.middle, 3));
        doubts.push("inverted-reduction", &q.at, "the propeller would turn much faster than the engine", help, &[]);
    }
}

fn propeller(propeller: &Propeller, fields: &Fields, doubts: &mut Doubts) {
    if let (Some(d), Some(p)) = (&propeller.diameter, &propeller.pitch) {
        let ratio = p.middle / d.middle;
        if !(0.4..=2.0).contains(&ratio) {
            let message = format!("pitch over diameter is {}; most propellers lie between 0.5 and 1.5", show(ratio, 2));
            doubts.push(
                "pitch-ratio",
                &p.at,
                message,
                "look whether the two are swapped or in different units",
                &[(d, "the diameter")],
            );
        }
    }
    if let (Some(d), Some(room)) = (&propeller.diameter, &propeller.largest_diameter)
        && d.low > room.high
    {
        doubts.push(
            "largest-diameter",
            &d.at,
            "the propeller is larger than the largest that fits",
            "one of the two is wrong",
            &[(room, "the largest that fits")],
        );
    }
    if let Some((diameter, pitch)) = propeller.stamp.as_deref().and_then(stamp::read) {
        for (stated, stamped, name) in [(&propeller.diameter, diameter, "diameter"), (&propeller.pitch, pitch, "pitch")]
        {
            // A measured value may well differ from the stamp; that is why it was measured.
            if let Some(q) = stated
                && q.source == Some(Source::Stamp)
                && (q.middle / (stamped * INCH) - 1.0).abs() > 0.005
            {
                let message = format!("the stamp reads as a {name} of {} in", show(stamped, 4));
                doubts.push("stamp", &q.at, message, format!("if the {name} was measured, say so: (measured)"), &[]);
            }
        }
    }
    if let (Some(hand), Some(stated)) = (propeller.stamp.as_deref().and_then(stamp::hand), propeller.hand)
        && matches!(stated, Hand::Right | Hand::Left)
        && stated != hand
    {
        let problem = Problem::doubt("stamp", fields.at("hand"), "the stamp and the stated hand disagree")
            .help("look at the blades from astern: a right-hand propeller turns clockwise going ahead");
        doubts.0.push(problem.with(&fields.at("stamp"), "the stamp"));
    }
}

fn instruments(reading: &Reading, job: &Job, doubts: &mut Doubts) {
    let Some(turns) = &reading.engine_speed else { return };
    let rpm = |q: &Quantity| show(q.middle * 60.0, 4);
    if let Some(rated) = &job.engine.rated_speed {
        if turns.middle > 1.2 * rated.middle {
            let message = format!("the engine turns at {} rpm, far above its rated {} rpm", rpm(turns), rpm(rated));
            doubts.push(
                "engine-speed",
                &turns.at,
                message,
                "look at the tachometer and at the rating plate",
                &[(rated, "rated speed")],
            );
        } else if reading.full_throttle && turns.middle < 0.4 * rated.middle {
            let message = format!("at full throttle only {} rpm of the rated {} rpm", rpm(turns), rpm(rated));
            doubts.push(
                "engine-speed",
                &turns.at,
                message,
                "look whether this is the shaft's speed; or whether full_throttle is right",
                &[(rated, "rated speed")],
            );
        }
    }
    let reduction = reading.state.reduction.as_ref().or(job.drive.reduction.as_ref());
    if let (Some(shaft), Some(reduction)) = (&reading.shaft_speed, reduction) {
        let seen = turns.middle / shaft.middle;
        if (seen / reduction.middle - 1.0).abs() > 0.10 {
            let message = format!(
                "engine over shaft speed gives a reduction of {}, stated is {}",
                show(seen, 3),
                show(reduction.middle, 3)
            );
            doubts.push(
                "shaft-speed",
                &shaft.at,
                message,
                "one of the three is wrong: tachometer, shaft reading or gearbox plate",
                &[(turns, "engine speed"), (reduction, "reduction")],
            );
        }
    }
}

fn speed(reading: &Reading, job: &Job, doubts: &mut Doubts) {
    let Some(speed) = &reading.speed else {
        return;
    };
    if let (Some(slow), Some(fast)) = (min(&reading.speeds), max(&reading.speeds))
        && fast.middle - slow.middle > (0.5 * speed.middle).max(2.0 * KNOT)
    {
        let current = 0.5 * (fast.middle - slow.middle) / KNOT;
        doubts.push("runs-differ", &speed.at, format!("the runs differ by a current of {} kn", show(current, 2)), "give each throttle setting a reading of its own; runs of one reading are the same throttle in opposite directions", &[]);
    }
    let fitted = &job.propeller;
    let pitch = reading.state.propeller.as_ref().and_then(|p| p.pitch.as_ref()).or(fitted.pitch.as_ref());
    let reduction = reading.state.reduction.as_ref().or(job.drive.reduction.as_ref());
    let shaft = match (&reading.shaft_speed, &reading.engine_speed, reduction) {
        (Some(shaft), ..) => Some(shaft.middle),
        (None, Some(engine), Some(reduction)) => Some(engine.middle / reduction.middle),
        _ => None,
    };
    if let (Some(pitch), Some(shaft)) = (pitch, shaft) {
        // A screw in a nut; blades carry a little more than the pitch of their face, hence the 10 %.
        let nut = pitch.middle * shaft;
        if speed.middle > 1.1 * nut {
            let message = format!(
                "{} kn is faster than the propeller screws itself through the water, {} kn",
                show(speed.middle / KNOT, 3),
                show(nut / KNOT, 3)
            );
            doubts.push(
                "faster-than-pitch",
                &speed.at,
                message,
                "look at pitch, reduction and engine speed",
                &[(pitch, "the pitch")],
            );
            return;
        }
    }
    let length = job.boat.length_waterline.as_ref().or(job.boat.length_overall.as_ref());
    if let (Some(length), Some(Kind::Displacement | Kind::Sailing)) = (length, job.boat.kind) {
        let froude = speed.middle / (G * length.middle).sqrt();
        if froude > 0.7 {
            let hull = 0.4 * (G * length.middle).sqrt() / KNOT;
            let message =
                format!("{} kn is far beyond hull speed, about {} kn", show(speed.middle / KNOT, 3), show(hull, 2));
            doubts.push(
                "faster-than-hull",
                &speed.at,
                message,
                "look at the speed's unit, and at kind in [boat]",
                &[(length, "the length")],
            );
        }
    }
}

fn min(runs: &[Quantity]) -> Option<&Quantity> {
    runs.iter().min_by(|a, b| a.middle.total_cmp(&b.middle))
}

fn max(runs: &[Quantity]) -> Option<&Quantity> {
    runs.iter().max_by(|a, b| a.middle.total_cmp(&b.middle))
}
