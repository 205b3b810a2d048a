//! Findings in order of gravity, each with its numbers, its source and what to do.

mod blades;
mod boat;

use super::headline::PitchWorth;
use crate::band::Accepted;
use crate::crowd::latent::Latent;
use crate::crowd::setup::Setup;
use crate::panel::{KNOT, Panel, Run};
use crate::phrase::{chance, inches, number, plain, span};
use crate::report::{Finding, FullThrottle, Gravity, Hang, Limits, LoadRow, Verdict};
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
    as_measured(case, &mut list);
    boat::growth(case, &mut list);
    boat::hump(case, &mut list);
    blades::cavitation(case, &mut list);
    blades::slip(case, &mut list);
    blades::tip_speed(case, &mut list);
    blades::ventilation(case, &mut list);
    boat::shallow(case, &mut list);
    boat::governed(case, &mut list);
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

/// The propeller as stamped against the propeller as measured, on the same boats.
fn as_measured(case: &Case, list: &mut Vec<Finding>) {
    let plan = &case.panel.crowd.plan;
    let (Some(stamped), Some(_)) = (&case.job.propeller.pitch, &case.job.survey) else { return };
    let measured = plan.dists[Latent::Pitch as usize].middle;
    if (stamped.middle / measured - 1.0).abs() < 1e-6 {
        return;
    }
    let diameter = case.job.propeller.diameter.as_ref().map(|q| q.middle);
    let as_stamped = case.panel.run(&Setup { pitch: Some(stamped.middle), diameter, ..Setup::default() });
    let change = |f: &dyn Fn(&Run) -> f64, unit| {
        let values: Vec<f64> = case.described.iter().zip(&as_stamped).map(|(m, s)| f(m) - f(s)).collect();
        case.panel.band(&values, unit)
    };
    let rpm = change(&|r| r.full.point.engine_speed.rpm(), "rpm");
    let knots = change(&|r| r.full.point.speed / KNOT, "kn");
    list.push(Finding {
        gravity: if (stamped.middle / measured - 1.0).abs() > 0.03 { Gravity::Watch } else { Gravity::Well },
        code: "as-measured",
        sentence: format!(
            "Stamped {} in, measured {} in of acting pitch: full throttle as measured less as stamped is {} and {}.",
            inches(stamped.middle),
            inches(measured),
            span(&rpm),
            span(&knots)
        ),
        advice: "Order and re-pitch by the measured pitch; the stamp is only a name.".to_owned(),
        hangs_on: vec![Latent::Pitch.word().to_owned()],
        source: "survey, pitch weighted over the radius as thrust is made".to_owned(),
        caution: None,
    });
}
