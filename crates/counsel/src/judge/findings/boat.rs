//! Findings on the boat and its readings: growth, hump, shallow water, governor.

use super::{Case, hangs};
use crate::crowd::latent::Latent;
use crate::crowd::plan::DEEP_LENGTHS;
use crate::judge::readings::label;
use crate::panel::{KNOT, Panel};
use crate::phrase::{chance, plain, span};
use crate::report::{Finding, Gravity};
use hydro::hull::depth::{self, Depth};

pub(super) fn growth(case: &Case, list: &mut Vec<Finding>) {
    let lost: Vec<f64> = case
        .clean
        .iter()
        .zip(case.described)
        .map(|(c, d)| c.full.point.engine_speed.rpm() - d.full.point.engine_speed.rpm())
        .collect();
    let knots: Vec<f64> =
        case.clean.iter().zip(case.described).map(|(c, d)| (c.full.point.speed - d.full.point.speed) / KNOT).collect();
    let rpm = case.panel.band(&lost, "rpm");
    let kn = case.panel.band(&knots, "kn");
    let stated = case.panel.crowd.plan.origin[Latent::HullRoughness as usize].0
        || case.panel.crowd.plan.origin[Latent::BladeRoughness as usize].0;
    if rpm.middle < 0.015 * case.clean_report.engine_speed.middle && kn.middle < 0.04 * case.clean_report.speed.middle {
        return;
    }
    list.push(Finding {
        gravity: if stated { Gravity::Mend } else { Gravity::Watch },
        code: "growth",
        sentence: format!(
            "Growth as {} costs {} and {} at full throttle.",
            if stated { "described" } else { "usual when nobody knows" },
            span(&rpm),
            span(&kn)
        ),
        advice: "Clean bottom and blades and run again the same day before any pitch is changed: it is the cheapest step and \
                 the most often needed."
            .to_owned(),
        hangs_on: vec![Latent::HullRoughness.word().to_owned(), Latent::BladeRoughness.word().to_owned()],
        source: "roughness similarity (Granville; grades Schultz 2007, from memory), blades ITTC 1978".to_owned(),
        caution: Some("Divers under a boat: engine stopped, key out, somebody on deck.".to_owned()),
    });
}

pub(super) fn hump(case: &Case, list: &mut Vec<Finding>) {
    let stuck = case.clean_report.stuck_at_hump;
    if stuck < 0.15 {
        return;
    }
    let margins: Vec<f64> =
        case.clean.iter().map(|r| r.full.hump.map_or(f64::NAN, |h| 100.0 * (h.margin - 1.0))).collect();
    list.push(Finding {
        gravity: if stuck > 0.5 { Gravity::Mend } else { Gravity::Watch },
        code: "hump",
        sentence: format!(
            "The boat may not get over its hump, {}; thrust to spare there {}.",
            chance(stuck),
            span(&case.panel.band(&margins, "%"))
        ),
        advice:
            "Less pitch, more blade area, less weight aft, trim tabs down; note the engine speed it hangs at and the \
                 seconds to plane."
                .to_owned(),
        hangs_on: hangs(case),
        source: "full-throttle thrust against resistance on the way up".to_owned(),
        caution: None,
    });
}

pub(super) fn shallow(case: &Case, list: &mut Vec<Finding>) {
    let stated = case.job.place.depth.as_ref().map(|q| q.middle);
    for (i, reading) in case.job.readings.iter().enumerate() {
        let Some(depth) = reading.depth.as_ref().map(|q| q.middle).or(stated) else { continue };
        let Some(speed) = reading.speed.as_ref().map(|q| q.middle) else { continue };
        let froude = depth::froude(speed, depth);
        let (gravity, what) = match Depth::of(speed, depth) {
            Depth::Deep => continue,
            // Deep for the boat's length: the wave she makes does not feel the bottom.
            _ if deep_for(case.panel, depth) => continue,
            Depth::Watch => (Gravity::Watch, "the bottom already slows the boat"),
            Depth::Refuse => (Gravity::Watch, "too shallow to judge by: it was left out of the weighing"),
        };
        list.push(Finding {
            gravity,
            code: "shallow-water",
            sentence: format!(
                "{} was taken in {} m of water, depth Froude number {}: {what}.",
                label(reading, i),
                plain(depth, 2),
                plain(froude, 2)
            ),
            advice: "Repeat the run in water at least twice as deep.".to_owned(),
            hangs_on: vec!["water depth".to_owned()],
            source: "depth Froude number V/√(g h): watched above 0.6, refused above 0.8; common practice, no source"
                .to_owned(),
            caution: None,
        });
    }
}

/// Whether a depth is more than [`DEEP_LENGTHS`] of the typical boat's lengths.
fn deep_for(panel: &Panel, depth: f64) -> bool {
    let lengths: Vec<f64> = panel.boats().map(|b| b.form.length).collect();
    depth > DEEP_LENGTHS * panel.band(&lengths, "m").middle
}

pub(super) fn governed(case: &Case, list: &mut Vec<Finding>) {
    let rated = case.panel.crowd.plan.dists[Latent::RatedSpeed as usize].middle;
    for (i, reading) in case.job.readings.iter().enumerate() {
        let said = reading.governed == Some(true);
        let seems = reading.full_throttle && reading.engine_speed.as_ref().is_some_and(|q| q.middle >= 0.995 * rated);
        if !(said || seems) {
            continue;
        }
        list.push(Finding {
            gravity: Gravity::Watch,
            code: "governed-reading",
            sentence: format!(
                "{} {} held by the governor or limiter: it says only \"at least\", not how far under-pitched.",
                label(reading, i),
                if said { "was" } else { "may have been" }
            ),
            advice: format!(
                "Expect less change from a little more pitch than an inch is usually worth; chance of being governed as described {}.",
                chance(case.described_report.governed)
            ),
            hangs_on: vec![Latent::TopRatio.word().to_owned()],
            source: "full torque falls to nothing between rated and no-load speed".to_owned(),
            caution: None,
        });
    }
}
