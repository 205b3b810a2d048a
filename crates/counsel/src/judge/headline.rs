//! The one sentence a skipper can repeat, and what an inch of pitch is worth on this boat.

use super::findings::Case;
use crate::band::{Accepted, Place};
use crate::crowd::latent::Latent;
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
    let pitch = plan.dists[Latent::Pitch as usize].middle;
    let thin = case.panel.thinned(192);
    let before = thin.run(case.judged);
    let at = |p: f64, panel: &Panel| panel.run(&Setup { pitch: Some(p), ..*case.judged });
    let after = at(pitch - INCH, &thin);
    let gain: Vec<f64> = before.iter().zip(&after).map(|(b, a)| rpm(a) - rpm(b)).collect();
    let inch = thin.band(&gain, "rpm");
    let better = (case.verdict.right < 0.6).then(|| best_pitch(case, &thin, pitch)).flatten();
    PitchWorth { inch, better }
}

/// The half inch of pitch (5 mm where the job speaks metric) with the greatest chance of the accepted band.
fn best_pitch(case: &Case, thin: &Panel, pitch: f64) -> Option<(f64, Band)> {
    let scouts = thin.thinned(48);
    let step = 0.5 * INCH;
    let first = (0.55 * pitch / step).ceil() as usize;
    let last = (1.5 * pitch / step).floor() as usize;
    let score = |p: f64, panel: &Panel| {
        let runs = panel.run(&Setup { pitch: Some(p), ..*case.judged });
        let inside = panel.share(|i| case.accepted.place(&runs[i]) == Place::Inside);
        // Where the band is narrow no pitch may be likely to hit it: the closest counts.
        let middle = case.accepted.middle() * 60.0;
        let off = runs.iter().map(|r| (rpm(r) / middle - 1.0).abs()).sum::<f64>() / runs.len() as f64;
        (inside - 4.0 * off, runs)
    };
    let best = (first..=last).map(|i| i as f64 * step).max_by(|a, b| score(*a, &scouts).0.total_cmp(&score(*b, &scouts).0))?;
    if (best - pitch).abs() < 0.4 * step {
        return None;
    }
    let runs = thin.run(&Setup { pitch: Some(best), ..*case.judged });
    let speeds: Vec<f64> = runs.iter().map(rpm).collect();
    Some((best, thin.band(&speeds, "rpm")))
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
    let band = |a: &Accepted| format!("{} to {} rpm", crate::phrase::number(a.report.low, 10.0), crate::phrase::number(a.report.high, 10.0));
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
        let now = case.panel.crowd.plan.dists[Latent::Pitch as usize].middle;
        text.push_str(&format!(
            " With {} in of pitch instead of {} it should reach {}.",
            inches(*pitch),
            inches(now),
            span(band)
        ));
    }
    text
}
