//! Findings in order of gravity, each with its numbers, its source and what to do.

use super::headline::PitchWorth;
use super::readings::label;
use crate::band::Accepted;
use crate::crowd::latent::Latent;
use crate::crowd::plan::DEEP_LENGTHS;
use crate::crowd::setup::Setup;
use crate::panel::{KNOT, Panel, Run};
use crate::phrase::{chance, number, plain, span};
use crate::report::{Finding, FullThrottle, Gravity, Hang, Limits, LoadRow, Verdict};
use hydro::hull::depth::{self, Depth};
use hydro::limits;
use job::Job;

/// Everything the findings look at.
pub(super) struct Case<'a> {
    pub job: &'a Job,
    pub panel: &'a Panel<'a>,
    pub accepted: &'a Accepted,
    pub judged: &'a Setup,
    pub described: &'a [Run],
    pub clean: &'a [Run],
    pub described_report: FullThrottle,
    pub clean_report: FullThrottle,
    pub verdict: Verdict,
    pub limits: Limits,
    pub load: &'a [LoadRow],
    pub hangs_on: &'a [Hang],
}

const TRIAL_CAUTION: &str = "Hold full throttle only as long as the engine's maker allows, with oil pressure, coolant and \
                             exhaust temperature watched, in clear water with somebody at the lookout.";

/// All findings, gravest first.
pub(super) fn findings(case: &Case, worth: &PitchWorth) -> Vec<Finding> {
    let mut list = Vec::new();
    unexplained(case, &mut list);
    propeller(case, worth, &mut list);
    growth(case, &mut list);
    hump(case, &mut list);
    cavitation(case, &mut list);
    slip(case, &mut list);
    tip_speed(case, &mut list);
    ventilation(case, &mut list);
    shallow(case, &mut list);
    governed(case, &mut list);
    list.sort_by_key(|finding| finding.gravity);
    list
}

fn hangs(case: &Case) -> Vec<String> {
    case.hangs_on.iter().take(3).map(|h| h.quantity.clone()).collect()
}

fn unexplained(case: &Case, list: &mut Vec<Finding>) {
    if case.panel.crowd.explained {
        return;
    }
    list.push(Finding {
        gravity: Gravity::Mend,
        code: "readings-unexplained",
        sentence: "No definite boat that fits what was stated shows these readings.".to_owned(),
        advice:
            "Prove the tachometer with an optical one, read the ratio from engine and shaft speed, look at bottom and \
                 blades, and have the pitch measured, in this order of cost, before anything is bought."
                .to_owned(),
        hangs_on: vec!["the readings and the stated particulars together".to_owned()],
        source: "weighing of definite boats".to_owned(),
        caution: None,
    });
}

fn propeller(case: &Case, worth: &PitchWorth, list: &mut Vec<Finding>) {
    let v = &case.verdict;
    let speed = &case.clean_report.engine_speed;
    let band = &case.accepted.report;
    let inch = format!("an inch of pitch is worth {} on this boat", span(&worth.inch));
    let source = format!("accepted band: {}", band.source);
    if v.over_pitched > 0.4 {
        let deep = speed.middle < 0.85 * band.low;
        list.push(Finding {
            gravity: if v.over_pitched > 0.75 { Gravity::Mend } else { Gravity::Watch },
            code: "over-pitched",
            sentence: format!(
                "Clean and loaded the engine reaches {} at full throttle, {} short of its band: too much propeller, {}.",
                span(speed),
                shortfall(band.low - speed.middle, band.low),
                chance(v.over_pitched)
            ),
            advice: format!(
                "Clean bottom and blades first, prove the tachometer and full travel of the throttle, then take pitch, cup or \
                 diameter out; {inch}."
            ),
            hangs_on: hangs(case),
            source,
            caution: Some(if deep {
                format!(
                    "Until then do not hold the engine near full throttle: it is overloaded at every speed above about {} rpm. {TRIAL_CAUTION}",
                    number(0.8 * speed.middle, 50.0)
                )
            } else {
                TRIAL_CAUTION.to_owned()
            }),
        });
    } else if v.under_pitched > 0.4 {
        list.push(Finding {
            gravity: if v.under_pitched > 0.75 { Gravity::Mend } else { Gravity::Watch },
            code: "under-pitched",
            sentence: format!(
                "Clean and loaded the engine runs up to {} with {} to be held by its governor or limiter: too little propeller, {}.",
                span(speed),
                chance(case.clean_report.governed),
                chance(v.under_pitched)
            ),
            advice: format!("Add pitch or cup, or a propeller with more of both; {inch}. An engine on its governor says only \
                             \"at least\": do not order by one reading alone."),
            hangs_on: hangs(case),
            source,
            caution: Some(TRIAL_CAUTION.to_owned()),
        });
    } else if v.right > 0.5 {
        list.push(Finding {
            gravity: Gravity::Well,
            code: "propeller-suits",
            sentence: format!(
                "Clean and loaded the engine reaches {}, inside its band, {}.",
                span(speed),
                chance(v.right)
            ),
            advice: format!(
                "Leave it. Read full throttle every month: a drop of 100 to 200 rpm is growth. For scale, {inch}."
            ),
            hangs_on: hangs(case),
            source,
            caution: None,
        });
    }
    if let Some(row) = case.load.iter().rev().find(|row| row.load.middle < 99.0)
        && row.load.middle > 90.0
        && v.over_pitched > 0.6
    {
        list.push(Finding {
            gravity: Gravity::Watch,
            code: "load-at-cruise",
            sentence: format!(
                "At {} rpm the propeller already takes {} of what the engine can give there.",
                number(row.engine_speed, 10.0),
                span(&row.load)
            ),
            advice: "Cruise below the speed where load passes 80 %, and watch exhaust temperature and smoke."
                .to_owned(),
            hangs_on: hangs(case),
            source: "torque balance at steady engine speed; 80 % is common practice, no source".to_owned(),
            caution: None,
        });
    }
}

fn shortfall(missing: f64, of: f64) -> String {
    format!("{} rpm ({} %)", plain(missing.max(0.0), 2), plain(100.0 * missing.max(0.0) / of, 2))
}

fn growth(case: &Case, list: &mut Vec<Finding>) {
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

fn hump(case: &Case, list: &mut Vec<Finding>) {
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

fn cavitation(case: &Case, list: &mut Vec<Finding>) {
    let back = &case.limits.back_cavitation;
    let lost = &case.limits.thrust_lost;
    if back.high < 5.0 && lost.high < 3.0 {
        list.push(Finding {
            gravity: Gravity::Well,
            code: "cavitation",
            sentence: format!("Little cavitation at full throttle: {} of the blades' back.", span(back)),
            advice: "None.".to_owned(),
            hangs_on: vec![Latent::AreaRatio.word().to_owned()],
            source: "Burrill & Emerson 1963 lines as fitted by Birk 2019; projected area after Taylor".to_owned(),
            caution: None,
        });
        return;
    }
    let planing = matches!(case.panel.crowd.plan.knowledge.kind.0, job::Kind::Planing | job::Kind::SemiDisplacement);
    let heavy = if planing { back.middle > 25.0 || lost.middle > 8.0 } else { back.middle > 10.0 || lost.middle > 5.0 };
    list.push(Finding {
        gravity: if heavy { Gravity::Mend } else { Gravity::Watch },
        code: "cavitation",
        sentence: format!(
            "At full throttle {} of the blades' back cavitates; {} of the thrust is lost by it.",
            span(back),
            span(lost)
        ),
        advice: "More blade area, a larger slower propeller, or less power through it. Look for a frosted band on the back of \
                 the blades at 0.7 R and outward; listen for gravel that goes when the boat is helped along."
            .to_owned(),
        hangs_on: vec![Latent::AreaRatio.word().to_owned(), Latent::Power.word().to_owned()],
        source: "Burrill & Emerson 1963 lines as fitted by Birk 2019; loss by Blount & Fox 1978 (from memory)".to_owned(),
        caution: None,
    });
}

fn slip(case: &Case, list: &mut Vec<Finding>) {
    // By the reading itself where there is one: no model, only pitch, ratio and speed as stated.
    let plan = &case.panel.crowd.plan;
    let pitch = plan.marked_pitch;
    let ratio = plan.dists[Latent::Reduction as usize].middle;
    let read = case.job.readings.iter().enumerate().filter(|(_, r)| r.state.propeller.is_none()).find_map(|(i, r)| {
        let shaft = r.shaft_speed.as_ref().map(|q| q.middle).or_else(|| {
            r.engine_speed.as_ref().map(|q| q.middle / r.state.reduction.as_ref().map_or(ratio, |s| s.middle))
        })?;
        let speed = r.speed.as_ref()?.middle;
        let slip = limits::slip::slip(speed, shaft, pitch)?;
        Some((label(r, i), 100.0 * slip, speed))
    });
    let expected = &case.limits.apparent_slip;
    let (sentence, odd) = match read {
        Some((name, slip, speed)) => {
            let usual = 100.0 * limits::slip::usual(speed);
            (
                format!(
                    "Apparent slip by {name}: {} %; expected at full throttle {}, real slip {}. A handbook figure for this speed is {} %.",
                    number(slip, 1.0),
                    span(expected),
                    span(&case.limits.real_slip),
                    number(usual, 1.0)
                ),
                // The handbook figure scatters by a quarter of itself: three of these are odd.
                slip < 2.0 || slip > 1.75 * usual,
            )
        }
        None => (
            format!(
                "Apparent slip expected at full throttle {}, real slip {}.",
                span(expected),
                span(&case.limits.real_slip)
            ),
            false,
        ),
    };
    list.push(Finding {
        gravity: if odd { Gravity::Watch } else { Gravity::Well },
        code: "slip",
        sentence,
        advice: if odd {
            "A slip far from the usual is first a doubt about pitch, ratio, tachometer or speed: measure those."
                .to_owned()
        } else {
            format!(
                "Slip is not loss: a propeller that pushes must slip, and this one's efficiency is {}.",
                span(&case.limits.efficiency)
            )
        },
        hangs_on: vec![Latent::Pitch.word().to_owned(), Latent::Reduction.word().to_owned()],
        source: "apparent slip = 1 - V/(n P); usual slip Gerr 1989 formula 5-2 (from memory)".to_owned(),
        caution: None,
    });
}

fn tip_speed(case: &Case, list: &mut Vec<Finding>) {
    use limits::tip_speed::{TipSpeed, judged};
    let tip = &case.limits.tip_speed;
    if matches!(judged(tip.middle), TipSpeed::Quiet | TipSpeed::Usual) {
        return;
    }
    list.push(Finding {
        gravity: Gravity::Watch,
        code: "tip-speed",
        sentence: format!("The blade tips run at {}.", span(tip)),
        advice: "Expect noise and tip cavitation; a slower, larger propeller would be quieter.".to_owned(),
        hangs_on: vec![Latent::Diameter.word().to_owned(), Latent::Reduction.word().to_owned()],
        source: "common practice, no source".to_owned(),
        caution: None,
    });
}

fn ventilation(case: &Case, list: &mut Vec<Finding>) {
    use limits::immersion::{Ventilation, ventilation};
    let Some(depth) = &case.job.propeller.immersion else { return };
    let diameter = case.panel.crowd.plan.dists[Latent::Diameter as usize].middle;
    if matches!(ventilation(depth.middle, diameter), Ventilation::Unlikely) {
        return;
    }
    list.push(Finding {
        gravity: Gravity::Watch,
        code: "ventilation",
        sentence: format!(
            "The blade tip runs {} m below the surface at rest: it may draw air in turns and in a following sea.",
            plain(limits::immersion::tip_immersion(depth.middle, diameter), 2)
        ),
        advice: "Deeper shaft, smaller diameter, cup, more blades; move weight aft.".to_owned(),
        hangs_on: vec![Latent::Immersion.word().to_owned()],
        source: "common practice, no source".to_owned(),
        caution: None,
    });
}

fn shallow(case: &Case, list: &mut Vec<Finding>) {
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

fn governed(case: &Case, list: &mut Vec<Finding>) {
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
