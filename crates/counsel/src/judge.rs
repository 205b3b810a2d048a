//! `judge`: what is fitted, what it does to the engine and the boat.

mod findings;
mod headline;
mod readings;

use crate::crowd::Crowd;
use crate::crowd::setup::Setup;
use crate::hangs::hangs;
use crate::panel::{KNOT, Panel, Run};
use crate::report::{Crowd as CrowdReport, Judgement, LoadRow};
use crate::{Lack, Options, Prepared};
use hydro::speed::EngineSpeed;
use job::Job;
use rayon::prelude::*;

pub(crate) use readings::label as reading_label;

/// Representatives the questions are asked on.
pub(crate) const PANEL: usize = 800;
/// Representatives for the table of part load.
const TABLE: usize = 256;

/// The state a propeller is judged in: bottom and blades clean, at the loaded weight where one is stated.
#[must_use]
pub(crate) fn judged_setup(job: &Job) -> Setup {
    let loaded = job.boat.loaded_displacement.as_ref();
    Setup::clean(loaded.map(|q| job::assume::Dist::band(q.low, q.middle, q.high)))
}

/// Judges the propeller fitted.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn judge(job: &Job, options: &Options) -> Result<Judgement, Lack> {
    Prepared::new(job, options)?.judge()
}

/// The judgement on a crowd that is drawn and weighed.
pub(crate) fn on(prepared: &Prepared) -> Result<Judgement, Lack> {
    let Prepared { job, options, crowd, accepted, .. } = prepared;
    let panel = prepared.panel();
    let described = panel.run(&Setup::default());
    let judged = judged_setup(job);
    let clean = panel.run(&judged);
    let verdict = accepted.verdict(&panel, &clean);
    let speeds: Vec<f64> = clean.iter().map(|r| r.full.point.engine_speed.rpm()).collect();
    let hangs_on = hangs(&panel, &speeds, 8);
    let limits = panel.limits(&clean);
    let load = load_table(&panel, &described);
    let case = findings::Case {
        job,
        panel: &panel,
        accepted,
        judged: &judged,
        described: &described,
        clean: &clean,
        described_report: panel.full_throttle(&described),
        clean_report: panel.full_throttle(&clean),
        verdict,
        limits,
        load: &load,
        hangs_on: &hangs_on,
    };
    let worth = headline::pitch_worth(&case);
    let findings = findings::findings(&case, &worth);
    let headline = headline::headline(&case, &worth);
    Ok(Judgement {
        title: job.title.clone(),
        headline,
        full_throttle: case.described_report,
        clean_loaded: case.clean_report,
        accepted_band: accepted.report.clone(),
        verdict,
        limits,
        findings,
        measure_next: measure_next(&hangs_on),
        readings: readings::fits(job, crowd),
        pair: crate::pair::pair(job, options)?,
        crowd: crowd_report(crowd),
        notes: crowd.notes(),
        hangs_on: hangs_on.clone(),
        load,
    })
}

/// The measurement that would narrow the answer most: that of the most influential quantity somebody can measure.
pub(crate) fn measure_next(hangs_on: &[crate::report::Hang]) -> String {
    hangs_on
        .iter()
        .find(|h| !h.measure.starts_with("none"))
        .map_or_else(|| "nothing stands out".to_owned(), |h| h.measure.clone())
}

/// What to say of the crowd.
pub(crate) fn crowd_report(crowd: &Crowd) -> CrowdReport {
    let boats = crowd.boats.len();
    let effective = crowd.effective;
    let statement = if crowd.plan.observations.is_empty() {
        format!(
            "{} definite boats drawn from what was stated and assumed; no reading to weigh them by",
            crate::phrase::number(boats as f64, 1.0)
        )
    } else if !crowd.explained {
        "no boat that fits what was stated explains these readings: an instrument, the stamp, the ratio, the engine or \
         the state of the bottom is not as said"
            .to_owned()
    } else {
        format!(
            "{} definite boats weighed by {} reading{}; worth {} evenly weighted ones",
            crate::phrase::number(boats as f64, 1.0),
            crowd.plan.observations.len(),
            if crowd.plan.observations.len() == 1 { "" } else { "s" },
            crate::phrase::plain(effective, 2)
        )
    };
    CrowdReport { boats, effective, explained: crowd.explained, statement, seed: crowd.seed }
}

/// Part load as the boat is described, at round engine speeds up to what the typical boat reaches.
fn load_table(panel: &Panel, runs: &[Run]) -> Vec<LoadRow> {
    let thinned = panel.thinned(TABLE);
    let step = (panel.members.len() / TABLE).max(1);
    let runs: Vec<&Run> = runs.iter().step_by(step).collect();
    let tops: Vec<f64> = runs.iter().map(|r| r.full.point.engine_speed.rpm()).collect();
    let top = thinned.band(&tops, "rpm").middle;
    let stride = match top {
        t if t < 1500.0 => 100.0,
        t if t < 3000.0 => 200.0,
        t if t < 4600.0 => 400.0,
        _ => 500.0,
    };
    let first = (0.4 * top / stride).ceil() as usize;
    let last = (top / stride).floor() as usize;
    (first..=last)
        .map(|i| {
            let rpm = i as f64 * stride;
            let points: Vec<Option<(hydro::running::Point, f64)>> = runs
                .par_iter()
                .map(|run| {
                    // A boat that does not reach this speed has no steady point here.
                    (run.full.point.engine_speed.rpm() >= rpm).then(|| {
                        let point = run.fitted.installation.at_engine_speed(EngineSpeed::from_rpm(rpm)).point;
                        (point, run.fitted.marked_pitch)
                    })
                })
                .collect();
            let of = |f: &dyn Fn(&(hydro::running::Point, f64)) -> f64, unit| {
                let values: Vec<f64> = points.iter().map(|p| p.as_ref().map_or(f64::NAN, f)).collect();
                thinned.band(&values, unit)
            };
            let density = crate::panel::fuel_density(panel.crowd.plan.knowledge.engine_kind.0);
            LoadRow {
                engine_speed: rpm,
                speed: of(&|p| p.0.speed / KNOT, "kn"),
                power: of(&|p| p.0.brake_power / 1000.0, "kW"),
                load: of(&|p| 100.0 * p.0.load().min(2.0), "%"),
                fuel: of(&|p| p.0.fuel * 3600.0 / density, "L/h"),
                apparent_slip: of(
                    &|p| hydro::limits::slip::slip(p.0.speed, p.0.shaft_speed.0, p.1).map_or(f64::NAN, |s| 100.0 * s),
                    "%",
                ),
            }
        })
        .collect()
}
