//! What fits: candidates that a hard limit of `fit` or the blades' shadow speaks against.

use super::sizes::{self, Offer};
use super::{Ground, candidate};
use crate::choose::merit::{self, Aim};
use crate::crowd::plan::Plan;
use crate::fit::exchange::{self, Size};
use crate::panel::{Panel, Run};
use crate::phrase::{inches, number, span};
use crate::report::{Candidate, Misfit, Step};
use hydro::vibration::orders;
use job::Job;
use std::collections::BTreeMap;

/// A hair over what was measured, for rounding.
const ROUNDING: f64 = 1.002;

/// The hard limit of `fit` that an offer breaks; leaving things as they are is always on the list.
pub(super) fn breaks(job: &Job, panel: &Panel, offer: &Offer, largest: f64, runs: &[Run]) -> Option<&'static str> {
    if offer.step <= Step::Clean {
        return None;
    }
    if diameter_of(offer, &panel.crowd.plan) > ROUNDING * largest {
        return Some("diameter");
    }
    exchange::breaks(job, panel, runs, &offer.setup)
}

/// How many were left out for what.
#[derive(Default)]
pub(super) struct LeftOut(BTreeMap<&'static str, usize>);

impl LeftOut {
    pub fn one(&mut self, why: &'static str) {
        *self.0.entry(why).or_default() += 1;
    }

    pub fn count(&self) -> usize {
        self.0.values().sum()
    }

    /// The most frequent first.
    pub fn listed(&self) -> Vec<Misfit> {
        let mut list: Vec<Misfit> = self.0.iter().map(|(what, count)| Misfit { what, count: *count }).collect();
        list.sort_by_key(|m| std::cmp::Reverse(m.count));
        list
    }
}

/// What shaking takes off the worth, in shares of speed as [`merit::cost`] has them, with the reason (common practice, no source:
/// a shake is worth a tenth of a knot or so).
fn shakes(job: &Job, one: &Candidate) -> Option<(f64, String)> {
    let (blades, reduction) = (one.blades, one.reduction);
    let full_throttle = one.full_throttle.engine_speed.middle;
    let ahead = crate::fit::Shadows::of(job);
    let size = Size { diameter: one.diameter / 1000.0, pitch: one.pitch / 1000.0, blades, area_ratio: one.area_ratio };
    let mut worth = 0.0;
    let mut why = Vec::new();
    if ahead.meet(&size) {
        worth += 0.015;
        why.push(format!("{blades} blades pass the shadows ahead two at a time"));
    }
    if let Some(cylinders) = job.engine.cylinders {
        let firing = orders::firing(1.0, cylinders, job.engine.two_stroke == Some(true));
        let beat = orders::beat(firing, f64::from(blades) / reduction) * full_throttle / 60.0;
        if beat < orders::FELT {
            worth += 0.02;
            why.push(format!("blades and firing beat {} Hz at full throttle", number(beat, 0.1)));
        }
    }
    (worth > 0.0).then(|| (worth, why.join("; ")))
}

/// What a bore that wants more hub than is usual takes off the worth, with the words: the workshop has to be asked (common practice,
/// no source).
fn tight_hub(job: &Job, one: &Candidate) -> Option<(f64, String)> {
    let shaft = job.order.shaft.as_ref().or(job.shaft.diameter.as_ref())?;
    let leg = matches!(
        job.boat.arrangement,
        Some(job::Arrangement::Outboard | job::Arrangement::Sterndrive | job::Arrangement::Saildrive)
    );
    let (usual, _) = crate::fit::usual_hub(one.diameter / 1000.0);
    let wanted = crate::fit::HUB_OVER_BORE.1 * shaft.middle;
    (one.step >= Step::NewPropeller && !leg && usual < wanted).then(|| {
        let mm = |metres: f64| number(1000.0 * metres, 1.0);
        let why = format!(
            "the bore for a {} mm shaft wants a hub of {} mm, {} mm are usual: ask the workshop whether it takes it",
            mm(shaft.middle),
            mm(wanted),
            mm(usual)
        );
        (0.005, why)
    })
}

/// What counts against a candidate besides its speed: shaking, and a hub that is tight.
pub(super) fn against(job: &Job, one: &Candidate) -> Option<(f64, String)> {
    let both: Vec<(f64, String)> = [shakes(job, one), tight_hub(job, one)].into_iter().flatten().collect();
    let worth = both.iter().map(|b| b.0).sum();
    let why: Vec<String> = both.into_iter().map(|b| b.1).collect();
    (!why.is_empty()).then(|| (worth, why.join("; ")))
}

/// Takes off a candidate's worth what counts against it.
pub(super) fn weigh_down(job: &Job, one: &mut Candidate) {
    if let Some((worth, _)) = against(job, one) {
        one.merit -= worth;
    }
}

/// A gain that counts, in shares of speed.
const COUNTS: f64 = 0.005;

/// What the room costs, and what another reduction would give back. `top` is the best worth before it was made a merit.
pub(super) fn room(
    job: &Job,
    grounds: (&Ground, &Ground),
    aim: &Aim,
    largest: f64,
    top: f64,
    shortlist: &[Candidate],
    fitted: &[Run],
) -> Option<String> {
    let (ground, scouts) = grounds;
    let plan = &ground.panel.crowd.plan;
    let new = shortlist.iter().filter(|c| c.step == Step::NewPropeller);
    let Some(best) = new.max_by(|a, b| a.merit.total_cmp(&b.merit)) else {
        return Some(
            "No new propeller that would suit her fits this place and this shaft: look at both before anything else."
                .to_owned(),
        );
    };
    // A propeller of the same blades, a fifth larger: if that is no better, the room costs nothing.
    let larger = sizes::of_kind(job, plan, scouts, aim, best.blades, best.area_ratio, 1.2 * largest);
    let free = larger.map(|offer| {
        let mut one = candidate(&offer, plan, ground, aim, fitted, &ground.run(&offer.setup));
        weigh_down(job, &mut one);
        one
    });
    let as_it_is = merit::worth(best.merit, top);
    let mut text = if let Some(free) = free.filter(|free| free.merit > as_it_is + COUNTS) {
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

/// Diameter of an offer, m.
fn diameter_of(offer: &Offer, plan: &Plan) -> f64 {
    offer.setup.diameter.unwrap_or(plan.dists[crate::crowd::latent::Latent::Diameter as usize].middle)
}
