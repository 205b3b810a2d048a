//! Shaft, key and bearings.

use super::Checks;
use super::bore;
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
    super::gearbox::gearbox(job, loads, out);
    if subject.leg {
        return;
    }
    let metal = job.shaft.material.as_deref().and_then(metals::shaft_metal);
    diameter(job, loads, metal, out);
    key(job, loads, out);
    bearings(subject, loads, metal, out);
    overhang(job, out);
    bore::bore(job, out);
    bore::hub(subject, out);
    bore::record(job, out);
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
