//! What a candidate is worth, boat by boat, and the ranking by what stays good over the crowd.
//!
//! The weights below say how much a per cent of one thing is worth in per cents of another. They are judgement
//! (`common practice, no source`), the same for every boat, and stand in this file only.

use crate::band::{Accepted, Place};
use crate::compare::cruise_fuel;
use crate::panel::{Panel, Run};
use crate::phrase::{chance, span};
use crate::report::{Candidate, Step};
use job::Duty;
use rayon::prelude::*;

/// What counts of one boat with one propeller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Values {
    /// Full-throttle speed, m/s.
    pub speed: f64,
    /// Fuel at the cruising speed, L/h; not a number where it cannot be held.
    pub fuel: f64,
    /// Pull at the bollard, all propellers, N.
    pub pull: f64,
}

/// What is aimed at.
pub(super) struct Aim<'a> {
    pub duty: Duty,
    pub accepted: &'a Accepted,
    pub cruise: f64,
    /// The fitted propeller, clean, on the same boats.
    pub reference: Vec<Values>,
}

/// What counts of each boat.
pub(super) fn values(panel: &Panel, runs: &[Run], cruise: f64) -> Vec<Values> {
    let fuel = cruise_fuel(panel, runs, cruise);
    runs.par_iter()
        .zip(fuel)
        .map(|(run, fuel)| Values { speed: run.full.point.speed, fuel, pull: run.fitted.installation.bollard().pull })
        .collect()
}

/// An engine speed one per cent below the accepted band weighs like this many per cent of speed.
const BELOW: f64 = 2.5;
/// One per cent above.
const ABOVE: f64 = 1.5;
/// On the limiter, at whatever speed.
const LIMITED: f64 = 0.02;
/// Per cent of the back cavitating that a displacement and a planing boat are used to; beyond, each ten per cent weigh
/// like one per cent of speed.
const USUAL_CAVITATION: f64 = 15.0;

impl Aim<'_> {
    /// Worth of each boat with this propeller: gain over the propeller fitted, less what the engine and the blades suffer.
    pub fn utilities(&self, runs: &[Run], values: &[Values], back: &[f64]) -> Vec<f64> {
        let gain = |now: f64, then: f64| {
            if now > 0.0 && then > 0.0 { (now / then).ln().clamp(-0.7, 0.7) } else { -0.2 }
        };
        runs.iter()
            .zip(values)
            .zip(&self.reference)
            .zip(back)
            .map(|(((run, v), reference), back)| {
                let speed = gain(v.speed, reference.speed);
                // A speed that cannot be held at all is worse than any fuel.
                let fuel = if reference.fuel.is_finite() { gain(reference.fuel, v.fuel) } else { 0.0 };
                let pull = gain(v.pull, reference.pull);
                let performance = match self.duty {
                    Duty::TopSpeed => speed,
                    Duty::Cruise => 0.25 * speed + 0.4 * fuel,
                    Duty::Tow => 0.2 * speed + 0.5 * pull,
                    Duty::Mixed => 0.5 * speed + 0.15 * fuel + 0.15 * pull,
                };
                performance - self.engine(run) - 0.001 * (back - USUAL_CAVITATION).max(0.0)
            })
            .collect()
    }

    /// What the engine suffers outside its band.
    fn engine(&self, run: &Run) -> f64 {
        let (low, high) = self.accepted.edges(run);
        let n = run.full.point.engine_speed.0;
        match self.accepted.place(run) {
            Place::Inside => 0.0,
            Place::Below => BELOW * (low / n).ln(),
            Place::Above => ABOVE * (n / high).ln().max(0.0) + LIMITED,
        }
    }
}

/// What a step costs in money and trouble, in shares of speed: between near equals the cheaper one goes first.
pub(super) fn cost(step: Step) -> f64 {
    match step {
        Step::Leave | Step::Clean => 0.0,
        Step::TrueUp => 0.003,
        Step::Cup => 0.004,
        Step::Repitch => 0.005,
        Step::Trim => 0.007,
        Step::NewPropeller => 0.025,
        Step::Ratio => 0.06,
    }
}

/// Mean over the worse half of the boats: good only where it stays good.
pub(super) fn robust(utilities: &[f64]) -> f64 {
    let mut sorted: Vec<f64> = utilities.iter().copied().filter(|u| u.is_finite()).collect();
    if sorted.is_empty() {
        return -10.0;
    }
    sorted.sort_unstable_by(f64::total_cmp);
    let half = sorted.len().div_ceil(2);
    sorted[..half].iter().sum::<f64>() / half as f64
}

/// How fast merit falls with worth.
const STEEP: f64 = 5.0;

/// The worth a merit came from, `top` the best worth of its list: the inverse of what [`rank`] does.
pub(super) fn worth(merit: f64, top: f64) -> f64 {
    top + (merit / 100.0).max(1e-12).ln() / STEEP
}

/// Turns worth into merit (best 100, a tenth of speed less is worth about 60), sorts, and says why.
pub(super) fn rank(list: &mut [Candidate], accepted: &Accepted) {
    let best = list.iter().map(|c| c.merit).fold(f64::NEG_INFINITY, f64::max);
    for c in list.iter_mut() {
        c.merit = 100.0 * (STEEP * (c.merit - best)).exp();
    }
    // Between near equals the cheaper step goes first.
    list.sort_by(|a, b| {
        (b.merit.round(), a.step).partial_cmp(&(a.merit.round(), b.step)).unwrap_or(std::cmp::Ordering::Equal)
    });
    for c in list.iter_mut() {
        c.why = why(c, accepted);
    }
}

fn why(c: &Candidate, accepted: &Accepted) -> String {
    let n = &c.full_throttle.engine_speed;
    let engine = if c.verdict.over_pitched > 0.5 {
        format!("keeps the engine {} below its band", percent(accepted.report.low / n.middle - 1.0))
    } else if c.verdict.under_pitched > 0.5 {
        format!("lets the engine run past its band or onto its governor, {}", chance(c.verdict.under_pitched))
    } else {
        format!("in the band {}", chance(c.in_band))
    };
    let cavitation = if c.back_cavitation.middle > USUAL_CAVITATION {
        format!("; cavitates over {} of the back", span(&c.back_cavitation))
    } else {
        String::new()
    };
    let speed = format!("; {} at full throttle", span(&c.full_throttle.speed));
    let state = if c.step == Step::Leave { " as it is now" } else { "" };
    format!("{engine}{state}{speed}{cavitation}")
}

fn percent(share: f64) -> String {
    format!("{} %", crate::phrase::plain(100.0 * share.max(0.0), 2))
}
