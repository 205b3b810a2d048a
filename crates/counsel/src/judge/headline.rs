//! The one sentence a skipper can repeat, and what an inch of pitch is worth on this boat.

use super::findings::Case;
use crate::band::{Accepted, Place};
use crate::crowd::setup::Setup;
use crate::panel::{Panel, Run};
use crate::phrase::{chance, inches, span};
use crate::report::Band;

const INCH: f64 = 0.0254;

/// What pitch does to this boat.
pub(super) struct PitchWorth {
    /// Gain of full-throttle engine speed for an inch less pitch, rpm.
    pub inch: Band,
    /// The pitch that suits best at this diameter, m, and the engine speed then, where the present one does not.
    pub better: Option<(f64, Band)>,
}

/// Works out what an inch is worth, and which pitch would suit.
pub(super) fn pitch_worth(case: &Case) -> PitchWorth {
    let plan = &case.panel.crowd.plan;
    let pitch = plan.marked_pitch;
    let thin = case.panel.thinned(192);
    let hulls = thin.resistance(case.judged);
    let at = |p: f64| thin.run_on(&Setup { pitch: Some(p), ..*case.judged }, &hulls);
    let gain: Vec<f64> = at(pitch).iter().zip(&at(pitch - INCH)).map(|(b, a)| rpm(a) - rpm(b)).collect();
    let inch = thin.band(&gain, "rpm");
    let better = (case.verdict.right < 0.6).then(|| best_pitch(case, &thin, pitch)).flatten();
    let better = better.map(|p| {
        let speeds: Vec<f64> = at(p).iter().map(rpm).collect();
        (p, thin.band(&speeds, "rpm"))
    });
    PitchWorth { inch, better }
}

/// The half inch of pitch with the greatest chance of the accepted band.
fn best_pitch(case: &Case, thin: &Panel, pitch: f64) -> Option<f64> {
    let scouts = thin.thinned(32);
    let hulls = scouts.resistance(case.judged);
    let middle = case.accepted.middle() * 60.0;
    let step = 0.5 * INCH;
    let first = (0.55 * pitch / step).ceil() as usize;
    let last = (1.5 * pitch / step).floor() as usize;
    let mut best: Option<(f64, f64)> = None;
    for i in first..=last {
        let p = i as f64 * step;
        let runs = scouts.run_on(&Setup { pitch: Some(p), ..*case.judged }, &hulls);
        let inside = scouts.share(|i| case.accepted.place(&runs[i]) == Place::Inside);
        // Where the band is narrow no pitch may be likely to hit it: the closest counts.
        let off = runs.iter().map(|r| (rpm(r) / middle - 1.0).abs()).sum::<f64>() / runs.len() as f64;
        let score = inside - 4.0 * off;
        if best.is_none_or(|(least, _)| score > least) {
            best = Some((score, p));
        }
    }
    best.map(|(_, p)| p).filter(|p| (p - pitch).abs() > 0.4 * step)
}

fn rpm(run: &Run) -> f64 {
    run.full.point.engine_speed.rpm()
}

/// The verdict in one plain sentence or two.
pub(super) fn headline(case: &Case, worth: &PitchWorth) -> String {
    if !case.panel.crowd.explained {
        return "No propeller explains these readings together with what was stated: find the false figure before the \
                propeller is changed."
            .to_owned();
    }
    let band = |a: &Accepted| {
        format!("{} to {} rpm", crate::phrase::number(a.report.low, 10.0), crate::phrase::number(a.report.high, 10.0))
    };
    let v = &case.verdict;
    let expected = span(&case.clean_report.engine_speed);
    let mut text = if v.over_pitched >= 0.6 {
        format!(
            "Too much propeller, {}: clean and loaded the engine reaches {expected} at full throttle where its rating asks for {}.",
            chance(v.over_pitched),
            band(case.accepted)
        )
    } else if v.under_pitched >= 0.6 {
        format!(
            "Too little propeller, {}: clean and loaded the engine runs up to {expected} where its rating asks for {}.",
            chance(v.under_pitched),
            band(case.accepted)
        )
    } else if v.right >= 0.6 {
        format!(
            "The propeller suits the engine, {}: clean and loaded it reaches {expected}, inside the {} its rating asks for.",
            chance(v.right),
            band(case.accepted)
        )
    } else {
        format!(
            "Not settled: too much propeller {}, right {}, too little {}; clean and loaded the engine reaches {expected}, \
             its rating asks for {}.",
            chance(v.over_pitched),
            chance(v.right),
            chance(v.under_pitched),
            band(case.accepted)
        )
    };
    if let (Some((pitch, band)), true) = (&worth.better, v.over_pitched >= 0.6 || v.under_pitched >= 0.6) {
        let now = case.panel.crowd.plan.marked_pitch;
        text.push_str(&format!(
            " With {} in of pitch instead of {} it should reach {}.",
            inches(*pitch),
            inches(now),
            span(band)
        ));
    }
    text
}
