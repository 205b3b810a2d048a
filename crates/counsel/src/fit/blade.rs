//! Will the blades hold.

use super::Checks;
use super::loads::{Loads, Subject};
use crate::phrase::{plain, span};
use crate::report::{Band, Gravity};
use hydro::fitting::{metals, strength};
use job::Quantity;

const LICENSED: &str = "A plausibility check, not a class approval: a licensed surveyor or class decides, and a cracked, pitted or pink blade is not covered by any of it.";

/// Chord at a radius over the chord at 0.75 R of the series' outline (four blades), read off its table: 0.25 R and 0.6 R.
const CHORD: [(f64, f64); 2] = [(0.25, 0.80), (0.6, 1.05)];

pub(super) fn checks(subject: &Subject, loads: &Loads, out: &mut Checks) {
    let p = &subject.job.propeller;
    for ((x, wide), thick, code, name, key) in [
        (CHORD[0], &p.root_thickness, "blade-root", "stress at the root, 0.25 R", "root_thickness"),
        (CHORD[1], &p.outer_thickness, "blade-outer", "stress at 0.6 R", "outer_thickness"),
    ] {
        section(subject, loads, (x, wide), thick.as_ref(), (code, name, key), out);
    }
}

fn section(
    subject: &Subject,
    loads: &Loads,
    (x, wide): (f64, f64),
    stated: Option<&Quantity>,
    (code, name, key): (&'static str, &'static str, &str),
    out: &mut Checks,
) {
    let d = subject.diameter;
    let chord = wide * 2.073 * subject.area_ratio * d / f64::from(subject.blades.max(1));
    // Bronze three-blades have 0.040 to 0.055 of the diameter at the axis (handbook, from memory).
    let usual = |fraction| strength::usual_thickness(d, fraction, x);
    let (thin, middle, thick) =
        stated.map_or((usual(0.040), usual(0.047), usual(0.055)), |q| (q.low, q.middle, q.high));
    let p = &subject.job.propeller;
    let radians = |q: &Option<Quantity>| q.as_ref().map_or(0.0, |q| q.middle.to_radians());
    let at = |thickness: f64, thrust: f64, torque: f64| {
        // Mass outside: the mean chord, half the thickness there, ogival.
        let mass = subject.alloy.density() * 0.70 * (0.8 * chord) * (0.55 * thickness) * (1.0 - x) * 0.5 * d;
        strength::stress(&strength::Loaded {
            blades: subject.blades,
            thrust,
            torque,
            turns: loads.turns.high,
            tip: 0.5 * d,
            pitch: subject.pitch,
            x,
            chord,
            thickness,
            mass,
            rake: radians(&p.rake),
            skew: radians(&p.skew),
        })
        .whole()
            / 1e6
    };
    let value = Band {
        low: at(thick, loads.thrust.low, loads.torque.low),
        middle: at(middle, loads.thrust.middle, loads.torque.middle),
        high: at(thin, loads.thrust.high, loads.torque.high),
        unit: "N/mm2",
    };
    let most = metals::blade_allowable(subject.alloy) / 1e6;
    let measured = stated.is_some();
    let gravity = match (measured, value.middle / most) {
        (_, over) if over > 2.0 && measured => Gravity::Stop,
        (true, over) if over > 1.2 => Gravity::Mend,
        (_, over) if over > 1.0 => Gravity::Watch,
        _ => Gravity::Well,
    };
    let from = if measured { "measured" } else { "assumed usual for bronze" };
    let metal = if subject.alloy_said { "" } else { ", the metal taken as manganese bronze" };
    out.push(super::Check {
        code,
        subject: name,
        gravity,
        known: true,
        hard: measured,
        sentence: format!(
            "Thickness {} mm ({from}): {} at full throttle, {} N/mm2 is worked to{metal}.",
            plain(1e3 * middle, 3),
            span(&value),
            plain(most, 2)
        ),
        value: Some(value),
        least: None,
        most: Some(most),
        rule: "beam from first principles: thrust, torque, centrifugal pull, rake and skew; allowable stress as class rules are remembered (from memory), skew below 25 degrees".to_owned(),
        measure: if measured { String::new() } else { format!("measure the greatest thickness there (propeller.{key})") },
        caution: Some(LICENSED),
    });
}
