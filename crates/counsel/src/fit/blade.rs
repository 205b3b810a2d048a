//! Will the blades hold.

use super::Checks;
use super::loads::{Loads, Subject};
use crate::phrase::{plain, span};
use crate::report::{Band, Gravity};
use hydro::fitting::{metals, strength};
use job::survey::SurveySection;
use job::{Job, Quantity};

const LICENSED: &str = "A plausibility check, not a class approval: a licensed surveyor or class decides, and a cracked, pitted or pink blade is not covered by any of it.";

/// Chord at a radius over the chord at 0.75 R of the series' outline (four blades), read off its table: 0.25 R and 0.6 R.
const CHORD: [(f64, f64); 2] = [(0.25, 0.80), (0.6, 1.05)];

/// How far from a section's radius a surveyed one may stand and still speak for it, in tip radii.
const NEAR: f64 = 0.06;

/// Beyond this times what is worked to a blade is not to be run at all: the most that any rule read lets pass for short lives is 1.5.
const NOT_AT_ALL: f64 = 2.0;

/// Beyond this skew the beam says too little.
const SKEWED: f64 = 25.0;

pub(super) fn checks(subject: &Subject, loads: &Loads, out: &mut Checks) {
    let p = &subject.job.propeller;
    for ((x, wide), thick, code, name, key) in [
        (CHORD[0], &p.root_thickness, "blade-root", "stress at the root, 0.25 R", "root_thickness"),
        (CHORD[1], &p.outer_thickness, "blade-outer", "stress at 0.6 R", "outer_thickness"),
    ] {
        section(subject, loads, (x, wide), thick.as_ref(), (code, name, key), out);
    }
}

/// Something measured in the survey at a radius, of the blade that has least of it: between two sections by the straight line,
/// else at one close by.
fn surveyed(job: &Job, x: f64, of: impl Fn(&SurveySection) -> Option<&Quantity>) -> Option<f64> {
    let survey = job.survey.as_ref()?;
    let tip = job.propeller.diameter.as_ref().map(|q| 0.5 * q.middle);
    let blades = survey.blades.iter().filter_map(|blade| {
        let radius = blade.tip_radius.as_ref().map(|q| q.middle).or(tip)?;
        let place = |s: &SurveySection| {
            s.radius_ratio.as_ref().map(|q| q.middle).or(s.radius.as_ref().map(|q| q.middle / radius))
        };
        let mut line: Vec<(f64, f64)> =
            blade.sections.iter().filter_map(|s| Some((place(s)?, of(s)?.middle))).collect();
        line.sort_by(|a, b| a.0.total_cmp(&b.0));
        let between = line.windows(2).find(|w| w[0].0 <= x && x <= w[1].0 && w[1].0 > w[0].0);
        between.map(|w| w[0].1 + (w[1].1 - w[0].1) * (x - w[0].0) / (w[1].0 - w[0].0)).or_else(|| {
            let off = |at: &&(f64, f64)| (at.0 - x).abs();
            line.iter().filter(|at| off(at) <= NEAR).min_by(|a, b| off(a).total_cmp(&off(b))).map(|at| at.1)
        })
    });
    blades.min_by(f64::total_cmp)
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
    let job = subject.job;
    let known_chord = surveyed(job, x, |s| s.chord.as_ref());
    let chord = known_chord.unwrap_or(wide * 2.073 * subject.area_ratio * d / f64::from(subject.blades.max(1)));
    // Bronze three-blades have 0.040 to 0.055 of the diameter at the axis (handbook, from memory).
    let usual = |fraction| strength::usual_thickness(d, fraction, x);
    let read = stated
        .cloned()
        .or_else(|| surveyed(job, x, |s| s.thickness.as_ref()).map(|t| Quantity::exact(t, format!("{} mm", 1e3 * t))));
    let (thin, middle, thick) =
        read.as_ref().map_or((usual(0.040), usual(0.047), usual(0.055)), |q| (q.low, q.middle, q.high));
    let p = &job.propeller;
    let survey = job.survey.as_ref();
    let degrees = |q: Option<&Quantity>| q.map_or(0.0, |q| q.middle);
    let rake = degrees(p.rake.as_ref().or(survey.and_then(|s| s.rake.as_ref())));
    let skew = degrees(p.skew.as_ref().or(survey.and_then(|s| s.skew.as_ref())));
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
            rake: rake.to_radians(),
            skew: skew.to_radians(),
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
    let allowed = metals::blade_allowable(subject.alloy, super::shaft::duty(job));
    let (worked_to, most) = (allowed.worked_to / 1e6, allowed.most / 1e6);
    let measured = read.is_some();
    let open = !measured && value.high > worked_to;
    let skewed = skew.abs() > SKEWED;
    let gravity = if measured && value.middle > NOT_AT_ALL * worked_to {
        Gravity::Stop
    } else if measured && value.middle > most {
        Gravity::Mend
    } else if value.high > worked_to || skewed {
        Gravity::Watch
    } else {
        Gravity::Well
    };
    let from = if measured { "measured" } else { "assumed usual for bronze" };
    let wide_from = if known_chord.is_some() { "measured" } else { "of the series' outline" };
    let metal = if subject.alloy_said { "" } else { ", the metal taken as manganese bronze" };
    let mut sentence = format!(
        "Blade at {} R, {} mm thick ({from}), chord {} mm ({wide_from}): {} at full throttle, {} N/mm2 is worked to{metal}.",
        plain(x, 2),
        plain(1e3 * middle, 3),
        plain(1e3 * chord, 3),
        span(&value),
        plain(worked_to, 2)
    );
    if open {
        sentence.push_str(" Whether it holds cannot be said until its thickness is measured.");
    }
    if skewed {
        sentence.push_str(
            " With this much skew a beam says too little: the maker's or a class society's calculation decides.",
        );
    }
    let mut measure = Vec::new();
    if !measured {
        measure.push(format!("measure the greatest thickness there (propeller.{key})"));
    }
    if !subject.alloy_said {
        measure.push("find out its metal (propeller.material)".to_owned());
    }
    if measured && gravity <= Gravity::Mend {
        measure.push(
            "a thicker or wider blade, a stronger alloy, or less power; have it looked at by a licensed surveyor"
                .to_owned(),
        );
    }
    out.push(super::Check {
        code,
        subject: name,
        gravity,
        known: true,
        hard: measured,
        sentence,
        value: Some(value),
        least: None,
        most: Some(worked_to),
        rule: format!(
            "beam from first principles: thrust, torque, centrifugal pull, rake and skew; allowable stress as class rules are remembered (from memory), up to {} N/mm2 let through for this duty; skew below 25 degrees",
            plain(most, 2)
        ),
        measure: measure.join("; "),
        caution: Some(LICENSED),
    });
}
