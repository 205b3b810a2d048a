//! Findings on the blades at work: cavitation, slip, tip speed, air.

use super::Case;
use crate::crowd::latent::Latent;
use crate::judge::readings::label;
use crate::phrase::{number, plain, span};
use crate::report::{Finding, Gravity};
use hydro::limits;

pub(super) fn cavitation(case: &Case, list: &mut Vec<Finding>) {
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
            "At full throttle {} of the blades' back cavitates; {} of the thrust is lost by it. {}",
            span(back),
            span(lost),
            keller(case)
        ),
        advice: "More blade area, a larger slower propeller, or less power through it. Look for a frosted band on the back of \
                 the blades at 0.7 R and outward; listen for gravel that goes when the boat is helped along."
            .to_owned(),
        hangs_on: vec![Latent::AreaRatio.word().to_owned(), Latent::Power.word().to_owned()],
        source: "Burrill & Emerson 1963 lines as fitted by Birk 2019; loss by Blount & Fox 1978 (from memory)".to_owned(),
        caution: None,
    });
}

/// Blade area asked for by Keller's formula at the thrust of the typical boat, as words.
fn keller(case: &Case) -> String {
    let needed: Vec<f64> = case
        .clean
        .iter()
        .map(|r| {
            let s = &r.fitted.screw;
            let stern = if r.fitted.installation.screws > 1 {
                limits::keller::Stern::Twin
            } else {
                limits::keller::Stern::Single
            };
            limits::keller::area_ratio(
                r.full.point.thrust,
                s.diameter,
                s.blades,
                r.fitted.installation.breakdown.head,
                stern,
            )
        })
        .collect();
    format!(
        "Keller's formula asks for a blade area ratio of {}; fitted is about {}.",
        span(&case.panel.band(&needed, "1")),
        number(case.panel.crowd.plan.dists[Latent::AreaRatio as usize].middle, 0.01)
    )
}

pub(super) fn slip(case: &Case, list: &mut Vec<Finding>) {
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

pub(super) fn tip_speed(case: &Case, list: &mut Vec<Finding>) {
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

pub(super) fn ventilation(case: &Case, list: &mut Vec<Finding>) {
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
