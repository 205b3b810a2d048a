//! Hub round the bore, bore and taper, and how the propeller went on.

use super::Checks;
use super::loads::{Subject, band};
use crate::phrase::{number, plain, span};
use crate::report::{Band, Gravity};
use job::Job;

/// What of its diameter a hub of a solid propeller measures outside, usual and at the most; and how many bores it must be across
/// at the least and rather (all from memory).
const HUB: (f64, f64) = (0.18, 0.20);
pub(crate) const HUB_OVER_BORE: (f64, f64) = (1.8, 2.0);

/// The hub's diameter, m, usual and at the most, where nobody measured it.
pub(crate) fn usual_hub(diameter: f64) -> (f64, f64) {
    (HUB.0 * diameter, HUB.1 * diameter)
}

/// The bore has to leave metal in the hub.
pub(super) fn hub(subject: &Subject, out: &mut Checks) {
    const CODE: &str = "hub-bore";
    const SUBJECT: &str = "hub round the bore";
    let rule = "hub outside 1.8 to 2 times the shaft (from memory); where nobody measured it, up to a fifth of the propeller's diameter (from memory)";
    let job = subject.job;
    let measured = job.propeller.hub_diameter.as_ref().or(job.survey.as_ref().and_then(|s| s.hub.diameter.as_ref()));
    let Some(d) = &job.shaft.diameter else {
        return out.unknown(CODE, SUBJECT, rule, "measure the shaft's diameter in the bearing and the hub's outside (shaft.diameter, propeller.hub_diameter)");
    };
    let (usual, largest) = usual_hub(subject.diameter);
    let value = measured
        .map_or(Band { low: 1e3 * usual, middle: 1e3 * largest, high: 1e3 * largest, unit: "mm" }, |q| {
            band(q, 1e3, "mm")
        });
    let least = 1e3 * HUB_OVER_BORE.0 * d.middle;
    let rather = 1e3 * HUB_OVER_BORE.1 * d.middle;
    let gravity = if value.middle < 0.995 * least {
        Gravity::Mend
    } else if value.low < 0.995 * rather {
        Gravity::Watch
    } else {
        Gravity::Well
    };
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity,
        known: true,
        hard: true,
        sentence: format!(
            "A hub of {} ({}) round a {} mm shaft, where {} to {} mm are wanted.",
            span(&value),
            if measured.is_some() { "measured" } else { "assumed usual for this diameter" },
            plain(1e3 * d.middle, 3),
            number(least, 1.0),
            number(rather, 1.0)
        ),
        value: Some(value),
        least: Some(least),
        most: None,
        rule: rule.to_owned(),
        measure: match (gravity, measured.is_some()) {
            (Gravity::Well, _) => String::new(),
            (_, false) => "measure the hub's outside (propeller.hub_diameter), or ask the workshop whether the hub of this diameter takes the shaft".to_owned(),
            (_, true) => "a propeller with a larger hub".to_owned(),
        },
        caution: (gravity == Gravity::Mend)
            .then_some("A hub bored too thin splits on its taper or over the keyway."),
    });
}

pub(super) fn bore(job: &Job, out: &mut Checks) {
    const CODE: &str = "bore";
    const SUBJECT: &str = "bore and taper";
    let rule = "SAE J755 by its exact rules (two copies to 3 1/2 in); ISO 4566 in part, from one fitting sheet and memory: measure two diameters and a length, never assume";
    let s = &job.shaft;
    let by_two = match (&s.diameter, &s.small_end, &s.taper_length) {
        (Some(d), Some(small), Some(length)) => Some((d.middle - small.middle) / length.middle),
        _ => None,
    };
    let (Some(d), Some(taper)) = (&s.diameter, by_two.or(s.taper.map(job::fit::TaperRatio::value))) else {
        return out.unknown(CODE, SUBJECT, rule, "measure the taper by two diameters and the length between (shaft.diameter, shaft.small_end, shaft.taper_length)");
    };
    let ends = crate::survey::bore::shaft_ends();
    let near = ends
        .iter()
        .filter(|end| (end.taper - taper).abs() < 0.012 && (end.shaft / d.middle - 1.0).abs() < 0.01)
        .min_by(|a, b| (a.shaft - d.middle).abs().total_cmp(&(b.shaft - d.middle).abs()));
    let disagrees = by_two.zip(s.taper).is_some_and(|(two, said)| (two - said.value()).abs() > 0.006);
    let words = near.map_or_else(
        || "no standard shaft end known here: the bore is made to the shaft".to_owned(),
        |end| format!("{} {} ({})", end.standard, end.name, end.trust),
    );
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity: if disagrees { Gravity::Mend } else { Gravity::Well },
        known: true,
        hard: false,
        sentence: format!(
            "Shaft {} mm, taper 1 in {}: {words}.{}",
            plain(1e3 * d.middle, 4),
            plain(1.0 / taper.max(1e-4), 3),
            if disagrees { " The two diameters and the taper stated do not agree: one of them is wrong." } else { "" }
        ),
        value: Some(Band { low: taper, middle: taper, high: taper, unit: "1" }),
        least: None,
        most: None,
        rule: rule.to_owned(),
        measure: "fit it first without the key and blue it".to_owned(),
        caution: None,
    });
}

/// How it went on.
pub(super) fn record(job: &Job, out: &mut Checks) {
    let f = &job.fitting;
    if *f == job::fit::Fitting::default() {
        return out.unknown(
            "seating",
            "seating on the taper",
            "the same mark without and with the key; blue over 70 % (an installation sheet) to 80 % (trade, from memory) of the taper, heavier at the large end",
            "fit it dry without the key and mark the shaft, then with the key to the same mark; blue it (fitting)",
        );
    }
    let mut bad: Vec<(Gravity, String)> = Vec::new();
    let mut good = Vec::new();
    if let (Some(dry), Some(keyed)) = (&f.seat_dry, &f.seat_keyed) {
        let off = 1e3 * (dry.middle - keyed.middle).abs();
        if off > 0.3 {
            bad.push((
                Gravity::Stop,
                format!(
                    "with the key it seats {} mm off the mark it reached without: the key holds it off the taper",
                    plain(off, 2)
                ),
            ));
        } else {
            good.push("it seats on the same mark with and without the key".to_owned());
        }
    }
    if let Some(blue) = &f.blue_contact {
        let percent = 100.0 * blue.middle;
        if percent < 70.0 {
            bad.push((Gravity::Mend, format!("blue over {} % of the taper only", plain(percent, 2))));
        } else {
            good.push(format!("blue over {} % of the taper", plain(percent, 2)));
        }
    }
    match f.locked {
        Some(false) => bad.push((Gravity::Stop, "the nuts are not locked".to_owned())),
        Some(true) => good.push("the nuts are locked".to_owned()),
        None => {}
    }
    if let Some(ohms) = &f.anode_ohms {
        if ohms.middle > 1.0 {
            bad.push((
                Gravity::Watch,
                format!(
                    "{} ohms from propeller to anode, where 1 is the most: the anode does not protect it",
                    plain(ohms.middle, 2)
                ),
            ));
        } else {
            good.push("the anode is bonded".to_owned());
        }
    }
    match f.turns_free {
        Some(false) => bad.push((Gravity::Stop, "it touches when turned by hand".to_owned())),
        Some(true) => good.push("it turns free by hand, rudder hard over both ways".to_owned()),
        None => {}
    }
    if f.nut_order == Some(job::fit::NutOrder::ThickFirst) {
        good.push("full nut against the hub (the trade disputes the order; the half nut first is the mechanically right one, from memory)".to_owned());
    }
    let gravity = bad.iter().map(|b| b.0).min().unwrap_or(Gravity::Well);
    let said: Vec<String> = bad.into_iter().map(|b| b.1).chain(good).collect();
    out.push(super::Check {
        code: "seating",
        subject: "seating on the taper",
        gravity,
        known: true,
        hard: false,
        sentence: format!("As fitted: {}.", said.join("; ")),
        value: None,
        least: None,
        most: None,
        rule: "the same mark without and with the key (three sources); blue 70 to 80 %; at most 1 ohm to the anode (a surveyor's note)".to_owned(),
        measure: String::new(),
        caution: (gravity == Gravity::Stop).then_some("Do not run the engine in gear before this is put right: the propeller can come off."),
    });
}
