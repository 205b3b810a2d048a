//! What is on offer: changes to the propeller fitted, and new ones in sizes that are sold.

use super::Ground;
use super::fits::LeftOut;
use super::merit::{self, Aim};
use crate::band::Accepted;
use crate::crowd::latent::Latent;
use crate::crowd::physics;
use crate::crowd::plan::Plan;
use crate::crowd::setup::Setup;
use crate::measures;
use crate::phrase::{number, size};
use crate::report::Step;
use job::assume;
use job::{Cup, Duty, Job, Width};
use rayon::prelude::*;

/// Something that could be done.
#[derive(Clone, Debug)]
pub(super) struct Offer {
    pub step: Step,
    pub what: String,
    pub setup: Setup,
}

/// New propellers worth judging on the whole crowd.
pub(super) struct Screened {
    pub offers: Vec<Offer>,
    /// Better ones that do not fit.
    pub left_out: LeftOut,
    pub considered: usize,
}

const INCH: f64 = 0.0254;

/// The step sizes are sold in: half inches, or 12.5 mm where the job speaks metric.
fn half_step(job: &Job) -> f64 {
    let metric = job.propeller.diameter.as_ref().is_some_and(|q| q.text.contains("mm") || q.text.contains("cm"));
    if metric { 0.0125 } else { 0.5 * INCH }
}

/// The largest diameter that fits, m, and who says so.
pub(super) fn largest_diameter(job: &Job, plan: &Plan) -> (f64, String) {
    let fitted = plan.dists[Latent::Diameter as usize].middle;
    let sailing = plan.knowledge.kind.0 == job::Kind::Sailing;
    let room = crate::fit::largest_diameter(job, fitted, sailing);
    match (&job.propeller.largest_diameter, room) {
        (Some(q), Some((room, what))) if room < q.middle => {
            (room, format!("{what}; more was stated as the largest, {} in", crate::phrase::inches(q.middle)))
        }
        (Some(q), _) => (q.middle, "stated".to_owned()),
        (None, Some((room, what))) => (room, what.to_owned()),
        (None, None) => (
            fitted,
            "the diameter fitted, since the room for a larger one was not stated: measure the aperture (largest_diameter)"
                .to_owned(),
        ),
    }
}

/// Cheap changes in the order of their cost.
pub(super) fn cheap(job: &Job, plan: &Plan) -> Vec<Offer> {
    let diameter = plan.dists[Latent::Diameter as usize].middle;
    let pitch = plan.marked_pitch;
    let offer = |step, what: String, setup| Offer { step, what, setup };
    let mut list = vec![
        offer(Step::Leave, format!("leave {} as it is", size(diameter, pitch)), Setup::default()),
        offer(Step::Clean, "clean bottom and blades, same propeller".to_owned(), Setup::default()),
    ];
    if job.propeller.pitch.as_ref().is_some_and(|q| q.high / q.low > 1.03) {
        list.push(offer(
            Step::TrueUp,
            format!("measure every blade and true them up at {} in of pitch", crate::phrase::inches(pitch)),
            Setup { trued: true, ..Setup::default() },
        ));
    }
    let cup = |cup: Cup, words: &str| {
        offer(Step::Cup, words.to_owned(), Setup { cup: Some(physics::cup(Some(cup), false).dist), ..Setup::default() })
    };
    match job.propeller.cup {
        Some(Cup::Light | Cup::Medium | Cup::Heavy) => list.push(cup(Cup::None, "take the cup out")),
        _ => {
            list.push(cup(Cup::Light, "put a light cup on"));
            list.push(cup(Cup::Medium, "put a medium cup on"));
        }
    }
    let step = 2.0 * half_step(job);
    for k in [-4, -3, -2, -1, 1, 2, 3, 4] {
        let twisted = pitch + 0.5 * f64::from(k) * step;
        // Blades are twisted by an inch or two; more belongs to a new propeller (common practice, no source).
        if twisted > 0.3 * diameter {
            list.push(offer(
                Step::Repitch,
                format!("re-pitch to {}", size(diameter, twisted)),
                Setup { pitch: Some(twisted), ..Setup::default() },
            ));
        }
    }
    for k in 1..=3 {
        let trimmed = diameter - 0.5 * f64::from(k) * step;
        if trimmed > 0.9 * diameter {
            list.push(offer(
                Step::Trim,
                format!("trim the diameter to {}", size(trimmed, pitch)),
                Setup { diameter: Some(trimmed), ..Setup::default() },
            ));
        }
    }
    list
}

/// Looks through new propellers, and through other reductions with the propeller that suits each.
#[allow(clippy::too_many_arguments)]
pub(super) fn screen(
    job: &Job,
    plan: &Plan,
    scouts: &Ground,
    accepted: &Accepted,
    duty: Duty,
    cruise: f64,
    largest: f64,
    most: usize,
    breaks: &dyn Fn(&Offer) -> Option<&'static str>,
) -> Screened {
    let leg = physics::is_leg(plan.knowledge.arrangement.0);
    let fitted = plan.dists[Latent::Diameter as usize].middle;
    let half = half_step(job);
    let reference = merit::values(&scouts.panel, &scouts.run(&Setup::default()), cruise);
    let aim = Aim { duty, accepted, cruise, reference };
    let blades: &[u8] = if leg { &[3, 4] } else { &[2, 3, 4, 5] };
    // A leg's propeller keeps to what its housing was made for.
    let floor = if leg { 0.92 * fitted } else { 0.72 * fitted };
    let ceiling = largest + 1e-6;
    let first = (floor / half).ceil() as usize;
    let last = (ceiling / half).floor() as usize;
    let mut reductions = vec![None];
    reductions.extend(job.drive.other_reductions.iter().map(|r| Some(*r)));
    let mut kinds = Vec::new();
    for reduction in &reductions {
        for z in blades {
            for width in [Width::Narrow, Width::Ordinary, Width::Wide] {
                for i in first..=last {
                    // Large propellers are sold in whole inches.
                    let diameter = i as f64 * half;
                    if diameter > 20.0 * INCH && i % 2 == 1 {
                        continue;
                    }
                    kinds.push((*reduction, *z, width, diameter));
                }
            }
        }
    }
    let mut found: Vec<(f64, Offer)> = kinds
        .par_iter()
        .filter_map(|(reduction, z, width, diameter)| {
            best_of(scouts, &aim, half, *reduction, *z, *width, *diameter, leg)
        })
        .collect();
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    let considered = kinds.len() * PITCHES;
    let (offers, left_out) = pick(found, most, breaks);
    Screened { offers, left_out, considered }
}

/// The best propeller of one blade number and nearest width at a diameter, with the reduction there is.
pub(super) fn of_kind(
    job: &Job,
    plan: &Plan,
    scouts: &Ground,
    aim: &Aim,
    blades: u8,
    area_ratio: f64,
    diameter: f64,
) -> Option<Offer> {
    let leg = physics::is_leg(plan.knowledge.arrangement.0);
    let half = half_step(job);
    let area = |width| assume::area_ratio(blades, Some(width), leg).dist.middle;
    let widths = [Width::Narrow, Width::Ordinary, Width::Wide];
    let near = |w: &Width| (area(*w) - area_ratio).abs();
    let width = widths.into_iter().min_by(|a, b| near(a).total_cmp(&near(b)))?;
    let diameter = (diameter / half).floor() * half;
    best_of(scouts, aim, half, None, blades, width, diameter, leg).map(|found| found.1)
}

/// Pitches looked at for each diameter, blade number and width.
const PITCHES: usize = 3;

/// The pitch at which a kind of propeller brings the typical boat to the middle of the band, and the better of its
/// neighbours.
#[allow(clippy::too_many_arguments)]
fn best_of(
    scouts: &Ground,
    aim: &Aim,
    half: f64,
    reduction: Option<f64>,
    z: u8,
    width: Width,
    diameter: f64,
    leg: bool,
) -> Option<(f64, Offer)> {
    let area = assume::area_ratio(z, Some(width), leg).dist.middle;
    let setup = |pitch: f64| Setup {
        diameter: Some(diameter),
        pitch: Some(pitch),
        blades: Some(z),
        area_ratio: Some(area),
        reduction,
        other_propeller: true,
        ..Setup::default()
    };
    // More pitch, less engine speed: halve the interval on the few boats at hand.
    let goal = aim.accepted.middle();
    let few = scouts.few(8);
    let reached = |i: usize| few.typical_engine_speed(&setup(i as f64 * half));
    let (mut low, mut high) = ((0.4 * diameter / half).ceil() as usize, (1.5 * diameter / half).floor() as usize);
    if reached(low) < goal {
        // Even the finest pitch holds the engine down: too large a propeller.
        return None;
    }
    while high - low > 1 {
        let middle = usize::midpoint(low, high);
        if reached(middle) >= goal { low = middle } else { high = middle }
    }
    [low.saturating_sub(1), low, high]
        .into_iter()
        .filter(|i| *i > 0)
        .map(|i| {
            let pitch = i as f64 * half;
            let runs = scouts.run(&setup(pitch));
            let values = merit::values(&scouts.panel, &runs, aim.cruise);
            let back: Vec<f64> = runs.iter().map(|r| measures::at_full_throttle(r).back_cavitation).collect();
            let worth = merit::robust(&aim.utilities(&runs, &values, &back));
            let words = match width {
                Width::Narrow => "narrow",
                Width::Ordinary => "ordinary",
                Width::Wide => "wide",
            };
            let mut what = format!("new {z}-blade, {words} blades, {}", size(diameter, pitch));
            if let Some(ratio) = reduction {
                what = format!("{what} with reduction {}", number(ratio, 0.01));
            }
            let step = if reduction.is_some() { Step::Ratio } else { Step::NewPropeller };
            (worth, Offer { step, what, setup: setup(pitch) })
        })
        .max_by(|a, b| a.0.total_cmp(&b.0))
}

/// The best that fit, no more than two of one blade number and reduction so that the list shows the choice there is; and how
/// many better ones do not fit.
fn pick(
    found: Vec<(f64, Offer)>,
    most: usize,
    breaks: &dyn Fn(&Offer) -> Option<&'static str>,
) -> (Vec<Offer>, LeftOut) {
    let (mut picked, mut left_out) = (Vec::<Offer>::new(), LeftOut::default());
    for (_, offer) in found {
        let alike = |p: &&Offer| p.setup.blades == offer.setup.blades && p.setup.reduction == offer.setup.reduction;
        let near = |p: &Offer| {
            let apart = |a: Option<f64>, b: Option<f64>| (a.unwrap_or(0.0) - b.unwrap_or(0.0)).abs();
            apart(p.setup.diameter, offer.setup.diameter) < 1.01 * INCH && p.setup.area_ratio == offer.setup.area_ratio
        };
        if picked.iter().filter(alike).count() < 2 && !picked.iter().filter(alike).any(near) {
            match breaks(&offer) {
                Some(why) => left_out.one(why),
                None => picked.push(offer),
            }
        }
        if picked.len() == most {
            break;
        }
    }
    (picked, left_out)
}
