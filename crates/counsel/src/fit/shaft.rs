//! Shaft, bearings, key, bore, gearbox, and how the propeller went on.

use super::Checks;
use super::loads::{Loads, Subject, band};
use crate::phrase::{number, plain, span};
use crate::report::{Band, Gravity};
use hydro::fitting::metals::{self, ShaftMetal};
use hydro::fitting::shaft::{self, Duty};
use hydro::fitting::{keys, whirling};
use hydro::vibration::entrained;
use job::{Job, Rating};

const LICENSED: &str = "Shafts are sized by the builder, the engine and gearbox makers or a licensed surveyor; a broken shaft leaves a hole in the boat.";

pub(super) fn checks(subject: &Subject, loads: &Loads, out: &mut Checks) {
    let job = subject.job;
    gearbox(job, loads, out);
    if subject.leg {
        return;
    }
    let metal = job.shaft.material.as_deref().and_then(metals::shaft_metal);
    diameter(job, loads, metal, out);
    key(job, loads, out);
    bearings(subject, loads, metal, out);
    overhang(job, out);
    bore(job, out);
    hub(subject, out);
    record(job, out);
}

/// The safety factor asked for by the engine's duty.
pub(super) fn duty(job: &Job) -> Duty {
    match job.engine.rating {
        Some(Rating::MediumDuty | Rating::Continuous) => Duty::Working,
        _ if matches!(job.engine.kind, Some(job::EngineKind::Petrol | job::EngineKind::Outboard)) => Duty::Light,
        _ => Duty::Yacht,
    }
}

/// Torque the shaft must stand: the highest of the crowd's band.
pub(super) fn least_diameter(job: &Job, torque: f64) -> Option<f64> {
    let metal = job.shaft.material.as_deref().and_then(metals::shaft_metal)?;
    Some(shaft::handbook(torque, metal.torsional_yield, shaft::least_safety(duty(job)).0))
}

fn diameter(job: &Job, loads: &Loads, metal: Option<&ShaftMetal>, out: &mut Checks) {
    const CODE: &str = "shaft-diameter";
    const SUBJECT: &str = "shaft diameter";
    let (safety, who) = shaft::least_safety(duty(job));
    let rule = format!("ABYC P-6 and handbooks: d = (16 Q SF/(pi St))^(1/3), SF {who}");
    let (Some(d), Some(metal)) = (&job.shaft.diameter, metal) else {
        return out.unknown(
            CODE,
            SUBJECT,
            &rule,
            "measure the shaft's diameter in the bearing and find out its metal (shaft.diameter, shaft.material)",
        );
    };
    let at = |torque: f64, d: f64| shaft::safety(torque, metal.torsional_yield, d);
    let value = Band {
        low: at(loads.torque.high, d.low),
        middle: at(loads.torque.middle, d.middle),
        high: at(loads.torque.low, d.high),
        unit: "1",
    };
    let need = 1e3 * shaft::handbook(loads.torque.high, metal.torsional_yield, safety);
    let iacs = 1e3 * shaft::iacs(loads.power.high, loads.turns.middle, metal.tensile, true);
    let weaker = d.middle > metal.strong_to;
    let gravity = match value.low {
        s if s < 1.5 => Gravity::Stop,
        s if s < 0.98 * safety => Gravity::Mend,
        _ if weaker => Gravity::Watch,
        _ => Gravity::Well,
    };
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity,
        known: true,
        hard: true,
        sentence: format!(
            "A {} mm shaft of {} has a safety factor of {} in torsion, where {} is asked for: {} mm by this rule; the class societies' rule for ships asks for {} mm.",
            plain(1e3 * d.middle, 3),
            metal.name,
            span(&value),
            plain(safety, 2),
            plain(need, 3),
            plain(iacs, 3)
        ),
        value: Some(value),
        least: Some(safety),
        most: None,
        rule: format!("{rule}; metal {}; IACS UR M68 beside it", metal.trust),
        measure: if gravity == Gravity::Well {
            String::new()
        } else if weaker {
            format!(
                "ask the maker for the strength at this diameter: the figure used holds up to about {} mm",
                plain(1e3 * metal.strong_to, 2)
            )
        } else { "a stronger metal, a larger shaft, or less torque: a smaller reduction or a lighter propeller".to_owned() },
        caution: Some(LICENSED),
    });
}

fn key(job: &Job, loads: &Loads, out: &mut Checks) {
    const CODE: &str = "key";
    const SUBJECT: &str = "key";
    let rule = "the whole torque on the key: shear 2 Q/(d b L), mean diameter of the taper; a third of the steel's yield, 80 N/mm2, for a key that must not work loose (common practice); DIN 6885-1 widths beside it";
    let s = &job.shaft;
    let (Some(width), Some(length), Some(d)) = (&s.key_width, &s.key_length, &s.diameter) else {
        return out.unknown(
            CODE,
            SUBJECT,
            rule,
            "measure the key: width and length (shaft.key_width, shaft.key_length)",
        );
    };
    let small = s.small_end.as_ref().map_or(0.85 * d.middle, |q| q.middle);
    let mean = 0.5 * (d.middle + small);
    let at = |torque: f64| keys::shear(torque, mean, width.middle, length.middle) / 1e6;
    let value =
        Band { low: at(loads.torque.low), middle: at(loads.torque.middle), high: at(loads.torque.high), unit: "N/mm2" };
    let usual = keys::din_6885(mean).map_or(String::new(), |key| {
        format!("; a {} mm key is usual on {} mm", plain(key.width, 2), plain(1e3 * mean, 3))
    });
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity: if value.high > 160.0 {
            Gravity::Mend
        } else if value.high > 80.0 {
            Gravity::Watch
        } else {
            Gravity::Well
        },
        known: true,
        hard: false,
        sentence: format!(
            "If the taper carried nothing the key would see {} in shear{usual}. A seated taper carries most of it.",
            span(&value)
        ),
        value: Some(value),
        least: None,
        most: Some(80.0),
        rule: rule.to_owned(),
        measure: String::new(),
        caution: None,
    });
}

fn bearings(subject: &Subject, loads: &Loads, metal: Option<&ShaftMetal>, out: &mut Checks) {
    const CODE: &str = "whirling";
    const SUBJECT: &str = "bearing spacing and whirling";
    let rule = "first whirling speed, beam between two bearings with the propeller on its overhang (Dunkerley), 1.25 times the highest shaft speed; the handbook's spacing has no margin in it";
    let job = subject.job;
    let (Some(spacing), Some(d), Some(metal)) = (&job.shaft.bearing_spacing, &job.shaft.diameter, metal) else {
        return out.unknown(CODE, SUBJECT, rule, "measure the longest distance between two bearings, the shaft and its metal (shaft.bearing_spacing, shaft.diameter, shaft.material)");
    };
    let dry = mass(subject).0;
    let wet = entrained::mass(loads.water, subject.diameter, subject.blades, subject.area_ratio);
    let overhang = job.shaft.overhang.as_ref().map_or(d.middle, |q| q.middle)
        + 0.5 * job.propeller.hub_length.as_ref().map_or(2.5 * d.middle, |q| q.middle);
    let span_of = |length: f64| whirling::Span {
        diameter: d.middle,
        length,
        overhang,
        propeller: dry + 0.5 * wet,
        modulus: metal.modulus,
        density: metal.density,
        water: loads.water,
    };
    let ratio = |length: f64, turns: f64| span_of(length).first() / turns;
    let value = Band {
        low: 0.85 * ratio(spacing.high, loads.turns.high),
        middle: ratio(spacing.middle, loads.turns.middle),
        high: 1.15 * ratio(spacing.low, loads.turns.low),
        unit: "1",
    };
    let most = span_of(1.0).spacing(loads.turns.high, 1.25);
    let gravity = if value.middle < 1.05 {
        Gravity::Mend
    } else if value.low < 1.25 {
        Gravity::Watch
    } else {
        Gravity::Well
    };
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity,
        known: true,
        hard: false,
        sentence: format!(
            "{} m between bearings: the first whirling speed is {} times the shaft's at full throttle, where 1.25 is wanted; the bare shaft could span {} m.",
            plain(spacing.middle, 3),
            span(&value),
            plain(most, 2)
        ),
        value: Some(value),
        least: Some(1.25),
        most: None,
        rule: rule.to_owned(),
        measure: if gravity == Gravity::Well { String::new() } else { "a bearing between, or a stiffer shaft; look whether she shakes at full throttle".to_owned() },
        caution: None,
    });
}

/// Mass of the propeller, kg, and whether it is known.
pub(super) fn mass(subject: &Subject) -> (f64, bool) {
    let job = subject.job;
    let stated = job.propeller.mass.as_ref().or(job.survey.as_ref().and_then(|s| s.mass.as_ref()));
    if let Some(q) = stated {
        return (q.middle, true);
    }
    // Blades as plates of the series' mean thickness and a hub of 0.2 D by 0.2 D: 30 % (estimate).
    let d = subject.diameter;
    let density = subject.alloy.density();
    let blades = subject.area_ratio * 0.25 * std::f64::consts::PI * d * d * 0.022 * d;
    let hub = 0.25 * std::f64::consts::PI * (0.2 * d).powi(2) * 0.2 * d * 0.75;
    (density * (blades + hub), false)
}

fn overhang(job: &Job, out: &mut Checks) {
    const CODE: &str = "overhang";
    const SUBJECT: &str = "hub to the last bearing";
    let rule = "at most one shaft diameter (from memory)";
    let (Some(overhang), Some(d)) = (&job.shaft.overhang, &job.shaft.diameter) else {
        return out.unknown(
            CODE,
            SUBJECT,
            rule,
            "measure from the after end of the bearing to the hub (shaft.overhang)",
        );
    };
    let value = band(overhang, 1e3, "mm");
    let most = 1e3 * d.middle;
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity: if value.middle > 1.5 * most {
            Gravity::Mend
        } else if value.middle > 1.02 * most {
            Gravity::Watch
        } else {
            Gravity::Well
        },
        known: true,
        hard: false,
        sentence: format!(
            "The hub stands {} behind the bearing, at most {} mm is good.",
            span(&value),
            number(most, 1.0)
        ),
        value: Some(value),
        least: None,
        most: Some(most),
        rule: rule.to_owned(),
        measure: String::new(),
        caution: None,
    });
}

fn gearbox(job: &Job, loads: &Loads, out: &mut Checks) {
    let drive = &job.drive;
    let by_power = drive.gearbox_power.as_ref().zip(drive.gearbox_speed.as_ref()).map(|(power, at)| {
        (shaft::torque(power.middle, at.middle), "the maker's limit: its power at its speed, as torque")
    });
    let by_torque = drive.gearbox_torque.as_ref().map(|q| (q.middle, "the maker's limit of the input torque"));
    // Both said: the lower one holds.
    let limit = by_power.into_iter().chain(by_torque).min_by(|a, b| a.0.total_cmp(&b.0));
    match (limit, &drive.gearbox_output_torque) {
        (None, None) => {
            out.unknown(
                "gearbox",
                "gearbox torque",
                "the maker's limit: of the power at a speed, of the input torque or of the output torque",
                "read the gearbox's plate or sheet: greatest input power and at which engine speed (drive.gearbox_power, drive.gearbox_speed), or a torque (drive.gearbox_torque, drive.gearbox_output_torque)",
            );
        }
        (limit, output) => {
            if let Some((most, rule)) = limit {
                gearbox_input(loads, most, rule, out);
            }
            if let Some(output) = output {
                gearbox_output(loads, output.middle, out);
            }
        }
    }
}

/// How a gearbox stands to a limit.
fn strained(value: &Band, most: f64) -> Gravity {
    if value.middle > 1.1 * most {
        Gravity::Mend
    } else if value.high > most {
        Gravity::Watch
    } else {
        Gravity::Well
    }
}

fn gearbox_check(
    code: &'static str,
    subject: &'static str,
    sentence: String,
    value: Band,
    most: f64,
    rule: &str,
) -> super::Check {
    let gravity = strained(&value, most);
    super::Check {
        code,
        subject,
        gravity,
        known: true,
        hard: false,
        sentence,
        value: Some(value),
        least: None,
        most: Some(most),
        rule: rule.to_owned(),
        measure: if gravity == Gravity::Well {
            String::new()
        } else {
            "ask the gearbox's maker before she is run hard".to_owned()
        },
        caution: None,
    }
}

fn gearbox_input(loads: &Loads, most: f64, rule: &str, out: &mut Checks) {
    // What the propeller takes at full throttle, brought back to the engine's side.
    let back = |torque: f64| torque * loads.turns.middle / loads.engine.middle.max(1e-9) / 0.96;
    let value = Band {
        low: back(loads.torque.low),
        middle: back(loads.torque.middle),
        high: back(loads.torque.high),
        unit: "N m",
    };
    let sentence = format!(
        "The engine puts {} into the gearbox, its limit is {} N m; on the shaft that is {} where {} N m come of the limit.",
        span(&value),
        plain(most, 3),
        span(&loads.torque),
        plain(most / back(1.0).max(1e-9), 3)
    );
    out.push(gearbox_check("gearbox", "gearbox input torque", sentence, value, most, rule));
}

fn gearbox_output(loads: &Loads, most: f64, out: &mut Checks) {
    let value = loads.torque;
    let sentence =
        format!("The propeller takes {} from the gearbox's output, its limit is {} N m.", span(&value), plain(most, 3));
    out.push(gearbox_check(
        "gearbox-output",
        "gearbox output torque",
        sentence,
        value,
        most,
        "the maker's limit at the output flange; a larger reduction raises what goes out and not what goes in",
    ));
}

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

fn bore(job: &Job, out: &mut Checks) {
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
fn record(job: &Job, out: &mut Checks) {
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
