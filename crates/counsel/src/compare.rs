//! `try`: the same boat after a change, and the difference boat by boat.

use crate::band::Accepted;
use crate::crowd::latent::Latent;
use crate::crowd::plan::Plan;
use crate::crowd::setup::Setup;
use crate::hangs::hangs;
use crate::judge::{crowd_report, judged_setup};
use crate::panel::{KNOT, Panel, Run, fuel_density};
use crate::phrase::{chance, number, plain, size, span};
use crate::report::{Band, Comparison, Difference, Side};
use crate::{Change, Lack, Options, Prepared};
use job::words::Word;
use job::{Job, Kind};
use rayon::prelude::*;

/// Tries a change.
///
/// Both sides are asked on the same boats, so the difference is sharper than either level.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn compare(job: &Job, change: &Change, options: &Options) -> Result<Comparison, Lack> {
    Ok(Prepared::new(job, options)?.compare(change))
}

/// The boat before any change: the same for every change tried.
pub(crate) struct Before {
    runs: Vec<Run>,
    /// The state judged.
    judged: Setup,
    cruise: f64,
    fuel: Vec<f64>,
    side: Side,
}

impl Before {
    pub(crate) fn of(prepared: &Prepared, panel: &Panel) -> Before {
        let runs = panel.run(&Setup::default());
        let judged = judged_setup(&prepared.job);
        let cruise = cruise_speed(panel, &runs);
        let fuel = cruise_fuel(panel, &runs, cruise);
        let clean = panel.run_on(&judged, &prepared.hulls(panel, &judged));
        let what = describe(&panel.crowd.plan, &Setup::default(), &Change::default());
        let side = side(&prepared.accepted, panel, what, &runs, &clean, &fuel);
        Before { runs, judged, cruise, fuel, side }
    }
}

fn side(accepted: &Accepted, panel: &Panel, what: String, runs: &[Run], clean: &[Run], fuel: &[f64]) -> Side {
    Side {
        what,
        full_throttle: panel.full_throttle(runs),
        verdict: accepted.verdict(panel, clean),
        limits: panel.limits(clean),
        cruise_fuel: panel.band(fuel, "L/h"),
    }
}

/// The boats after a change, against those before.
pub(crate) fn after(prepared: &Prepared, panel: &Panel, before: &Before, change: &Change) -> Comparison {
    let Prepared { job, crowd, accepted, .. } = prepared;
    let setup = prepared.after(change);
    let runs = if setup == Setup::default() {
        before.runs.clone()
    } else {
        panel.run_on(&setup, &prepared.hulls(panel, &setup))
    };
    // A change of weight or growth is judged as changed; the rest clean and loaded.
    let judged = before.judged.with(&setup);
    let clean = panel.run_on(&judged, &prepared.hulls(panel, &judged));
    let fuel = cruise_fuel(panel, &runs, before.cruise);
    let what = describe(&crowd.plan, &setup, change);
    let after = side(accepted, panel, what, &runs, &clean, &fuel);
    let pair = |f: &dyn Fn(&Run) -> f64, unit| {
        let change: Vec<f64> = before.runs.iter().zip(&runs).map(|(b, a)| f(a) - f(b)).collect();
        panel.band(&change, unit)
    };
    let saved: Vec<f64> = before.fuel.iter().zip(&fuel).map(|(b, a)| a - b).collect();
    let difference = Difference {
        engine_speed: pair(&|r| r.full.point.engine_speed.rpm(), "rpm"),
        speed: pair(&|r| r.full.point.speed / KNOT, "kn"),
        cruise_fuel: panel.band(&saved, "L/h"),
    };
    let speeds: Vec<f64> = runs.iter().map(|r| r.full.point.engine_speed.rpm()).collect();
    Comparison {
        title: job.title.clone(),
        headline: headline(&after, &difference, accepted),
        cruise_speed: before.cruise / KNOT,
        before: before.side.clone(),
        after,
        difference,
        accepted_band: accepted.report.clone(),
        hangs_on: hangs(panel, &speeds, 8),
        crowd: crowd_report(crowd),
        notes: crowd.notes(),
    }
}

/// A cruising speed at which fuel is compared, m/s: for planing boats three quarters of the typical top speed, for others
/// the lesser of that share and a length Froude number of 0.33 (common practice, no source).
pub(crate) fn cruise_speed(panel: &Panel, runs: &[Run]) -> f64 {
    let tops: Vec<f64> = runs.iter().map(|r| r.full.point.speed).collect();
    let top = panel.band(&tops, "m/s").middle;
    let share = 0.75 * top;
    let speed = match panel.crowd.plan.knowledge.kind.0 {
        Kind::Planing | Kind::SemiDisplacement => share,
        Kind::Displacement | Kind::Sailing => {
            let lengths: Vec<f64> = panel.boats().map(|b| b.form.length).collect();
            let length = panel.band(&lengths, "m").middle;
            share.min(0.33 * (hydro::water::GRAVITY * length).sqrt())
        }
    };
    // To the tenth of a knot.
    (speed / KNOT * 10.0).round() / 10.0 * KNOT
}

/// Fuel at a speed, L/h, per boat; not a number where the boat cannot hold it.
pub(crate) fn cruise_fuel(panel: &Panel, runs: &[Run], speed: f64) -> Vec<f64> {
    let density = fuel_density(panel.crowd.plan.knowledge.engine_kind.0);
    runs.par_iter()
        .map(|run| match run.fitted.installation.at_speed(speed) {
            Some(point) if point.load() <= 1.0 => point.fuel * 3600.0 / density,
            _ => f64::NAN,
        })
        .collect()
}

/// The propeller of a setup in words, and what else differs.
pub(crate) fn describe(plan: &Plan, setup: &Setup, change: &Change) -> String {
    let diameter = setup.diameter.unwrap_or(plan.dists[Latent::Diameter as usize].middle);
    let pitch = setup.pitch.unwrap_or(plan.marked_pitch);
    let blades = setup.blades.unwrap_or(plan.knowledge.blades.0);
    let mut text = format!("{}, {blades} blades", size(diameter, pitch));
    if let Some(area) = setup.area_ratio {
        text.push_str(&format!(", area ratio {}", number(area, 0.01)));
    }
    if setup.cup.is_some() {
        let cup = change.cup.map_or("cup", |c| match c {
            job::Cup::None => "no cup",
            job::Cup::Light => "light cup",
            job::Cup::Medium => "medium cup",
            job::Cup::Heavy => "heavy cup",
        });
        text.push_str(&format!(", {cup}"));
    }
    if let Some(reduction) = setup.reduction {
        text.push_str(&format!(", reduction {}", number(reduction, 0.01)));
    }
    if let Some(mass) = setup.mass {
        text.push_str(&format!(", {} kg", plain(mass.middle, 3)));
    }
    if let Some(growth) = change.hull_growth.filter(|_| setup.hull_roughness.is_some()) {
        text.push_str(&format!(", bottom {}", growth.word()));
    }
    if let Some(growth) = change.blade_growth.filter(|_| setup.blade_roughness.is_some()) {
        text.push_str(&format!(", blades {}", growth.word()));
    }
    text
}

fn signed(band: &Band) -> String {
    if band.low > 0.0 {
        format!("{} more", span(band))
    } else if band.high < 0.0 {
        let turned = Band { low: -band.high, middle: -band.middle, high: -band.low, unit: band.unit };
        format!("{} less", span(&turned))
    } else {
        format!("{} (about the same)", span(band))
    }
}

fn headline(after: &Side, difference: &Difference, accepted: &Accepted) -> String {
    let v = &after.verdict;
    let (word, p) = if v.over_pitched > v.right && v.over_pitched > v.under_pitched {
        ("still too much propeller", v.over_pitched)
    } else if v.under_pitched > v.right {
        ("too little propeller", v.under_pitched)
    } else {
        ("inside the accepted band", v.right)
    };
    format!(
        "With {} the engine should reach {} at full throttle, {}; speed {}. Clean and loaded: {word}, {} (band {} to {} rpm).",
        after.what,
        span(&after.full_throttle.engine_speed),
        signed(&difference.engine_speed),
        signed(&difference.speed),
        chance(p),
        number(accepted.report.low, 10.0),
        number(accepted.report.high, 10.0)
    )
}
