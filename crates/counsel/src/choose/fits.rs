//! What fits: candidates that the place, the shaft or the blades' shadow speak against.

use super::sizes::{self, Offer};
use super::{Ground, candidate};
use crate::choose::merit::Aim;
use crate::crowd::plan::Plan;
use crate::panel::Run;
use crate::phrase::{inches, number, span};
use crate::report::{Candidate, Step};
use hydro::vibration::orders;
use job::Job;

/// A hair over what was measured, for rounding.
const ROUNDING: f64 = 1.002;

/// Whether an offer passes every hard limit of `fit`; leaving things as they are is always on the list.
pub(super) fn passes(job: &Job, step: Step, diameter: f64, largest: f64, runs: &[Run]) -> bool {
    if step <= Step::Clean {
        return true;
    }
    diameter <= ROUNDING * largest && shaft_holds(job, runs)
}

/// The shaft stands the torque of the crowd's upper tenth.
fn shaft_holds(job: &Job, runs: &[Run]) -> bool {
    let Some(shaft) = &job.shaft.diameter else { return true };
    let mut torques: Vec<f64> = runs.iter().map(|r| r.full.point.torque).filter(|q| q.is_finite()).collect();
    torques.sort_by(f64::total_cmp);
    let Some(high) = torques.get(torques.len() * 9 / 10) else { return true };
    // The same edge as the check's: 2 % of the safety factor is rounding, and the shaft's own spread counts against it.
    crate::fit::least_diameter(job, 0.98 * high).is_none_or(|need| shaft.low >= need)
}

/// What shaking takes off the merit, with the reason (common practice, no source: a shake is worth a tenth of a knot or so).
pub(super) fn shakes(job: &Job, blades: u8, reduction: f64, full_throttle: f64) -> Option<(f64, String)> {
    let shadows = crate::fit::shadows(job);
    let mut worth = 0.0;
    let mut why = Vec::new();
    if orders::in_shadow(blades, shadows) {
        worth += 1.5;
        why.push(format!("{blades} blades pass the shadow ahead two at a time"));
    }
    if let Some(cylinders) = job.engine.cylinders {
        let firing = orders::firing(1.0, cylinders, job.engine.two_stroke == Some(true));
        let beat = orders::beat(firing, f64::from(blades) / reduction) * full_throttle / 60.0;
        if beat < orders::FELT {
            worth += 2.0;
            why.push(format!("blades and firing beat {} Hz at full throttle", number(beat, 0.1)));
        }
    }
    (worth > 0.0).then(|| (worth, why.join("; ")))
}

/// What the room costs, and what another reduction would give back.
pub(super) fn room(
    job: &Job,
    plan: &Plan,
    grounds: (&Ground, &Ground),
    aim: &Aim,
    largest: f64,
    shortlist: &[Candidate],
    fitted: &[Run],
) -> Option<String> {
    let (ground, scouts) = grounds;
    let new = shortlist.iter().filter(|c| c.step == Step::NewPropeller);
    let Some(best) = new.max_by(|a, b| a.merit.total_cmp(&b.merit)) else {
        return Some(
            "No new propeller that would suit her fits this place and this shaft: look at both before anything else."
                .to_owned(),
        );
    };
    // A propeller of the same blades, a fifth larger: if that is no better, the room costs nothing.
    let larger = sizes::of_kind(job, plan, scouts, aim, best.blades, best.area_ratio, 1.2 * largest);
    let free = larger.map(|offer| candidate(&offer, plan, ground, aim, fitted));
    let mut text = if let Some(free) = free.filter(|free| free.merit > best.merit + 1.0) {
        format!(
            "The room costs something: with {} in instead of {} in she would make {} instead of {} and burn {} instead of {} at the cruising speed compared.",
            inches(free.diameter / 1000.0),
            inches(best.diameter / 1000.0),
            span(&free.full_throttle.speed),
            span(&best.full_throttle.speed),
            span(&free.cruise_fuel),
            span(&best.cruise_fuel)
        )
    } else {
        "The room costs nothing that counts: a fifth more diameter would do no better.".to_owned()
    };
    match shortlist.iter().filter(|c| c.step == Step::Ratio).max_by(|a, b| a.merit.total_cmp(&b.merit)) {
        Some(ratio) if ratio.merit > best.merit => text.push_str(&format!(
            " Another reduction gives some of it back in the same room: {}, {} and {}.",
            ratio.what,
            span(&ratio.full_throttle.speed),
            span(&ratio.cruise_fuel)
        )),
        Some(_) => text.push_str(" None of the other reductions stated does better in the same room."),
        None if !job.drive.other_reductions.is_empty() => {}
        None => text.push_str(" Other reductions were not stated (drive.other_reductions)."),
    }
    Some(text)
}

/// The offer as `choose` names it, without what speaks against it.
pub(super) fn diameter_of(offer: &Offer, plan: &Plan) -> f64 {
    offer.setup.diameter.unwrap_or(plan.dists[crate::crowd::latent::Latent::Diameter as usize].middle)
}
