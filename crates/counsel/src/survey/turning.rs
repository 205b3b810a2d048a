//! What turns with the shaft: unequal weights, and blades that do not pull alike.

use super::reduction::Reduced;
use super::repair::shaft_speed;
use super::report::TurningSheet;
use super::{alloy, band};
use crate::phrase::plain;
use hydro::blade::{BladeLoad, Estimate, Fineness, mass_properties, shaft_rate};
use hydro::openwater::Screw;
use job::Job;
use std::f64::consts::TAU;

/// Power lost between the plate and the propeller (common practice, no source).
const GEARBOX: f64 = 0.96;

/// Sea water, kg/m³; a few per cent matter nothing here.
const WATER: f64 = 1025.0;

/// Unbalance does not need fine meshes: it is the difference of blades meshed alike.
const COARSE: Fineness = Fineness { radial: 10, chordwise: 8, around: 16 };

/// The sheet, where every blade was measured well enough to be held against the others.
pub(super) fn sheet(job: &Job, r: &Reduced) -> TurningSheet {
    let mut sheet = TurningSheet::default();
    let Some(measured) = r.measured.as_ref().filter(|_| r.blades.len() == r.count && r.count >= 2) else {
        sheet.statement = "Unbalance is not estimated: not every blade was measured.".to_owned();
        return sheet;
    };
    let each = |of: &dyn Fn(&job::survey::SurveySection) -> bool| {
        r.blades.iter().all(|b| b.sections.iter().filter(|s| of(s.said)).count() >= 2)
    };
    let (wide, thick) = (each(&|s| s.chord.is_some()), each(&|s| s.thickness.is_some()));
    let mut said = Vec::new();
    if wide && thick {
        let density = alloy(job).density();
        let unbalance = measured.estimate(|p| mass_properties(p, density, COARSE).unbalance);
        sheet.unbalance = Some(above_zero(unbalance, 1e6, "g mm"));
        let heavy = mass_properties(&measured.propeller, density, COARSE).heavy_angle;
        let away = |i: &usize| {
            let at = measured.propeller.angles.get(*i).copied().unwrap_or(0.0);
            (heavy - at + TAU / 2.0).rem_euclid(TAU) - TAU / 2.0
        };
        let nearest = (0..r.blades.len()).min_by(|a, b| away(a).abs().total_cmp(&away(b).abs()));
        // A heavy side is named only where the unbalance stands out of what was measured.
        sheet.heavy_side = nearest.filter(|_| unbalance.value > 1.28 * unbalance.sd).map(|i| r.blades[i].name.clone());
        let tip = r.diameter.map_or(0.0, |d| 0.5 * d.value);
        if tip > 0.0 {
            let side =
                sheet.heavy_side.as_ref().map_or("no side stands out".to_owned(), |b| format!("heavy near blade {b}"));
            let [low, high] = sheet.unbalance.map_or([0.0; 2], |b| [b.low, b.high].map(|v| v / (1000.0 * tip)));
            said.push(format!(
                "Static unbalance from the measured shape: {} to {} g at the tip, {side}; the knife edges decide.",
                plain(low, 2),
                plain(high, 2)
            ));
        }
    } else {
        said.push(
            "Static unbalance is not estimated: it needs width and thickness at two radii of every blade.".to_owned(),
        );
    }
    match load(job, r) {
        Some((load, turns)) => {
            let force = measured.estimate(|p| shaft_rate(p, &load).force);
            let moment = measured.estimate(|p| shaft_rate(p, &load).moment);
            sheet.force = Some(estimated(force, "N"));
            sheet.moment = Some(estimated(moment, "N m"));
            sheet.shaft_speed = Some(60.0 * turns);
            let (f, m) = (estimated(force, "N"), estimated(moment, "N m"));
            said.push(format!(
                "At full power ({} rpm on the shaft) the unequal blades turn a force of {} to {} N and a moment of {} to {} N m with the shaft, {} times a second: an estimate, blades even each other out.",
                plain(60.0 * turns, 3),
                plain(f.low, 2),
                plain(f.high, 2),
                plain(m.low, 2),
                plain(m.high, 2),
                plain(turns, 2)
            ));
        }
        None => said.push(
            "The force of unequal blades is not estimated: it needs rated power, rated speed, reduction, pitch and diameter."
                .to_owned(),
        ),
    }
    sheet.statement = said.join(" ");
    sheet
}

/// A magnitude and its band: never below nothing.
fn above_zero(e: Estimate, scale: f64, unit: &'static str) -> crate::report::Band {
    let mut b = band(e, scale, unit);
    b.low = b.low.max(0.0);
    b
}

/// Blades act on each other, which evens differences out: half to once the computed value is likely
/// ([`hydro::blade::shaft_rate`]); what was measured widens it.
fn estimated(e: Estimate, unit: &'static str) -> crate::report::Band {
    let whole = above_zero(e, 1.0, unit);
    crate::report::Band { low: 0.5 * whole.low, middle: 0.75 * whole.middle, high: whole.high, unit }
}

/// Load at rated power and shaft speed (rev/s): the working point of the series that takes this torque, with the way thrust and
/// torque there follow pitch and area.
fn load(job: &Job, r: &Reduced) -> Option<(BladeLoad, f64)> {
    let turns = shaft_speed(job)?;
    let power = job.engine.rated_power.as_ref()?.middle;
    let lost = if job.engine.rated_at == Some(job::PowerAt::PropellerShaft) { 1.0 } else { GEARBOX };
    let torque = lost * power / (TAU * turns);
    let (diameter, pitch) = (r.diameter?.value, r.effective()?.value);
    let screw = Screw {
        diameter,
        pitch_ratio: pitch / diameter,
        expanded_area_ratio: r.areas().map_or(0.5, |(a, _)| a.expanded_ratio),
        blades: u8::try_from(r.count).ok()?,
        flat_share: 0.0,
        ducted: false,
        cup: 0.0,
        blade_roughness: 30e-6,
    };
    let reynolds = screw.reynolds(0.5 * pitch * turns, turns, 1.2e-6);
    let at = |screw: &Screw| screw.curves(reynolds).value;
    let (dynamic, curves) = (WATER * turns * turns * diameter.powi(4), at(&screw));
    let wanted = torque / (dynamic * diameter);
    // Torque falls with the advance ratio; standing still is the end of it.
    let (mut low, mut high) = (0.0, curves.zero_thrust);
    for _ in 0..50 {
        let middle = 0.5 * (low + high);
        if curves.torque(middle) > wanted { low = middle } else { high = middle }
    }
    let advance = 0.5 * (low + high);
    let (kt, kq) = (curves.thrust(advance), curves.torque(advance));
    if !(kt > 0.0 && kq > 0.0) {
        return None;
    }
    const STEP: f64 = 0.02;
    let slope = |other: Screw| {
        let more = at(&other);
        [(more.thrust(advance) / kt - 1.0) / STEP, (more.torque(advance) / kq - 1.0) / STEP]
    };
    let by_pitch = slope(Screw { pitch_ratio: screw.pitch_ratio * (1.0 + STEP), ..screw });
    let by_area = slope(Screw { expanded_area_ratio: screw.expanded_area_ratio * (1.0 + STEP), ..screw });
    let load = BladeLoad {
        thrust: kt * dynamic,
        torque: kq * dynamic * diameter,
        thrust_by_pitch: by_pitch[0],
        torque_by_pitch: by_pitch[1],
        thrust_by_area: by_area[0],
        torque_by_area: by_area[1],
    };
    Some((load, turns))
}
