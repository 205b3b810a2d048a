//! Pairs of definite boats: one hull, two engines and propellers, weighed by what was read on either side.

use crate::crowd::definite::{Definite, Fitted};
use crate::crowd::latent::{COUNT, Latent};
use crate::crowd::normal;
use crate::crowd::plan::{At, Observation, Plan, What};
use crate::crowd::proposal::Proposal;
use crate::crowd::setup::Setup;
use crate::crowd::stats::effective;
use crate::crowd::{gap, stats};
use hydro::running::pair::{self, Together};
use hydro::running::{Installation, Point};
use hydro::speed::EngineSpeed;
use job::{Job, Side, Swapped};
use rayon::prelude::*;

/// Numbers drawn for a pair: what the sides have in common, then what they differ by.
const BOTH: usize = 2 * COUNT;
/// Pairs drawn to find out where the readings point.
const SCOUTS: usize = 1500;
/// Most batches.
const ROUNDS: u32 = 6;
/// Least effective number of pairs aimed at.
const ENOUGH: f64 = 300.0;
/// Readings further off than this many scatters count as a line, as for one boat.
const ROGUE: f64 = 2.5;

/// What a difference between the sides may lie in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    Propeller,
    Engine,
    Gear,
    Tachometer,
}

impl Part {
    pub const ALL: [Part; 4] = [Part::Propeller, Part::Engine, Part::Gear, Part::Tachometer];
}

/// Which part of a side a drawn quantity belongs to, and the share of its variance that both sides have in common: two
/// engines of one make and year and two castings of one pattern are more alike than any two (`estimate`). `None`: of the
/// hull, the same for both.
pub(super) const fn part(latent: Latent) -> Option<(Part, f64)> {
    Some(match latent {
        Latent::Pitch | Latent::Diameter | Latent::Cup => (Part::Propeller, 0.5),
        Latent::BladeRoughness => (Part::Propeller, 0.7),
        Latent::AreaRatio => (Part::Propeller, 0.8),
        Latent::ThrustError | Latent::TorqueError => (Part::Propeller, 0.9),
        Latent::Condition => (Part::Engine, 0.5),
        Latent::TopRatio => (Part::Engine, 0.7),
        Latent::EngineShape | Latent::Power | Latent::Consumption => (Part::Engine, 0.9),
        Latent::DriveLoss | Latent::ShaftDrag => (Part::Gear, 0.5),
        Latent::Reduction => (Part::Gear, 0.9),
        Latent::Tachometer => (Part::Tachometer, 0.2),
        _ => return None,
    })
}

/// What a side has of its own, faults included: one in five lies further out than its spread says, one in twenty far
/// further, because a wrong stamp, a tired engine or a wrong sender strikes one side (`estimate`).
fn fault(z: f64) -> f64 {
    z + 2.0 * z.signum() * (z.abs() - 1.3).max(0.0).powi(2)
}

/// The job of one side: its own propeller, reduction, survey and readings.
pub(super) fn side_job(job: &Job, side: Side) -> Job {
    let mut own = job.clone();
    let said = if side == Side::Port { &job.port } else { &job.starboard };
    if let Some(p) = &said.propeller {
        let to = &mut own.propeller;
        macro_rules! lay { ($($field:ident),*) => { $(if p.$field.is_some() { to.$field.clone_from(&p.$field); })* } }
        lay!(diameter, pitch, blades, hand, area_ratio, width, section, kind, cup, growth, immersion, stamp, material);
    }
    if said.reduction.is_some() {
        own.drive.reduction.clone_from(&said.reduction);
    }
    if own.survey.as_ref().is_some_and(|s| s.side.is_some_and(|of| of != side)) {
        own.survey = None;
    }
    for reading in &mut own.readings {
        if reading.side.is_some_and(|of| of != side) {
            // Read on the other engine: nothing of it was seen on this one.
            (reading.engine_speed, reading.shaft_speed, reading.speed, reading.fuel) = (None, None, None, None);
        }
    }
    own.port = job::Own::default();
    own.starboard = job::Own::default();
    own
}

/// One thing read on one side.
#[derive(Clone, Debug)]
pub(super) struct Seen {
    /// 0 port, 1 starboard.
    pub side: usize,
    pub swapped: Option<Swapped>,
    pub setup: Setup,
    pub observation: Observation,
}

/// Both plans and what was read.
pub(super) struct PairPlan {
    pub plans: [Plan; 2],
    pub seen: Vec<Seen>,
}

impl PairPlan {
    pub fn new(job: &Job) -> Result<PairPlan, crate::Lack> {
        let plans = [Plan::new(&side_job(job, Side::Port))?, Plan::new(&side_job(job, Side::Starboard))?];
        let mut seen = Vec::new();
        for (side, plan) in plans.iter().enumerate() {
            for o in &plan.observations {
                let reading = &job.readings[o.reading];
                // Speed and fuel of the whole boat are read once, whichever side they were written down for.
                if side == 1 && reading.side.is_none() && matches!(o.what, What::Speed | What::Fuel) {
                    continue;
                }
                seen.push(Seen {
                    side,
                    swapped: reading.state.swapped,
                    setup: plan.setups[o.setup],
                    observation: o.clone(),
                });
            }
        }
        Ok(PairPlan { plans, seen })
    }

    /// Both sides' numbers: `common ± own`, each standard normal but for the tail of what is its own.
    fn sides(z: &[f64]) -> [[f64; COUNT]; 2] {
        let mut sides = [[0.0; COUNT]; 2];
        for latent in Latent::ALL {
            let i = *latent as usize;
            let (common, own) = match part(*latent) {
                Some((_, share)) => (share.sqrt() * z[i], (1.0 - share).sqrt() * fault(z[COUNT + i])),
                None => (z[i], 0.0),
            };
            (sides[0][i], sides[1][i]) = (common + own, common - own);
        }
        sides
    }

    fn boats(&self, z: &[f64]) -> [Definite; 2] {
        let sides = PairPlan::sides(z);
        [0, 1].map(|s| Definite::new(&self.plans[s], self.plans[s].values(&sides[s])))
    }

    /// A pair with the parts named taken from the other side: what would be shown if only the rest differed.
    pub fn with_parts_of(&self, z: &[f64], from: usize, keep: impl Fn(Part) -> bool) -> Definite {
        let sides = PairPlan::sides(z);
        let mut values = self.plans[from].values(&sides[from]);
        let other = self.plans[1 - from].values(&sides[1 - from]);
        for latent in Latent::ALL {
            if let Some((of, _)) = part(*latent)
                && !keep(of)
            {
                values[*latent as usize] = other[*latent as usize];
            }
        }
        Definite::new(&self.plans[from], values)
    }

    fn fitted(&self, boats: &[Definite; 2], seen: &Seen) -> [Fitted; 2] {
        let mut fitted = [0, 1].map(|s| boats[s].fitted(&self.plans[s], &seen.setup));
        if seen.swapped == Some(Swapped::Propellers) {
            let [a, b] = fitted;
            let with = |own: Fitted, of: Fitted| Fitted {
                installation: Installation {
                    diameter: of.installation.diameter,
                    open_water: of.installation.open_water,
                    breakdown: of.installation.breakdown,
                    ..own.installation
                },
                ..of
            };
            fitted = [with(a, b), with(b, a)];
        }
        fitted
    }

    /// Fills `shown` with the logarithm of what the pair would show; returns the ln likelihood.
    fn likelihood(&self, boats: &[Definite; 2], shown: &mut [f64]) -> f64 {
        let mut sum = crate::crowd::kind(&self.plans[0], &boats[0]);
        let mut last: Option<(&Seen, [Fitted; 2], Together)> = None;
        for (seen, shown) in self.seen.iter().zip(shown) {
            let o = &seen.observation;
            let same = last.as_ref().is_some_and(|(l, ..)| {
                l.setup == seen.setup && l.swapped == seen.swapped && l.observation.at == o.at && l.side == seen.side
            });
            if !same {
                let fitted = self.fitted(boats, seen);
                let together = run(&fitted, boats, seen);
                // An engine seen at this speed carries the load there.
                sum -= if o.at == At::FullThrottle { 0.0 } else { strain(&together.sides[seen.side]) };
                last = Some((seen, fitted, together));
            }
            let Some((_, fitted, together)) = &last else { continue };
            let side = &together.sides[seen.side];
            let tachometer = if seen.swapped == Some(Swapped::Tachometers) { 1 - seen.side } else { seen.side };
            let (value, bias) = match o.what {
                What::EngineSpeed => (side.engine_speed.0, o.bias * boats[tachometer].row[Latent::Tachometer as usize]),
                What::ShaftSpeed => (side.engine_speed.0 / fitted[seen.side].installation.drive.reduction, 0.0),
                What::Speed => (together.speed, o.bias * boats[0].row[Latent::SpeedInstrument as usize]),
                What::Fuel => (together.fuel(), 0.0),
            };
            *shown = if value > 0.0 { value.ln() + bias } else { f64::NAN };
            let gap = gap(o, *shown);
            sum -= if gap.abs() < ROGUE { 0.5 * gap * gap } else { ROGUE * (gap.abs() - 0.5 * ROGUE) };
        }
        sum
    }
}

fn strain(point: &Point) -> f64 {
    let over = (point.brake_power / point.available_power.max(1.0) - 1.0).max(0.0);
    (0.5 * (over / 0.03).powi(2)).min(8.0)
}

/// At part throttle the other engine is taken to show the same speed: pairs are run in step.
fn run(fitted: &[Fitted; 2], boats: &[Definite; 2], seen: &Seen) -> Together {
    let sides = [&fitted[0].installation, &fitted[1].installation];
    match seen.observation.at {
        At::FullThrottle => pair::full_throttle(sides),
        At::Shown(shown, bias) => {
            let turns = [0, 1].map(|s| {
                let of = if seen.swapped == Some(Swapped::Tachometers) { 1 - s } else { s };
                EngineSpeed(shown * (-bias * boats[of].row[Latent::Tachometer as usize]).exp())
            });
            pair::at_engine_speeds(sides, turns)
        }
        At::Shaft(shaft) => {
            let turns = [0, 1].map(|s| EngineSpeed(shaft * sides[s].drive.reduction));
            pair::at_engine_speeds(sides, turns)
        }
    }
}

/// A weighted crowd of pairs.
pub(super) struct Pairs {
    pub plan: PairPlan,
    /// `pairs × BOTH`.
    pub z: Vec<f64>,
    pub weights: Vec<f64>,
    pub effective: f64,
    /// `pairs × seen`, ln.
    pub shown: Vec<f64>,
    /// The same before any reading was weighed.
    pub before: Vec<f64>,
}

struct Batch {
    z: Vec<f64>,
    shown: Vec<f64>,
    drawn: Vec<f64>,
    fits: Vec<f64>,
}

impl Batch {
    fn draw(plan: &PairPlan, proposal: &Proposal<BOTH>, count: usize, seed: u32) -> Batch {
        let m = plan.seen.len();
        let mut z = vec![0.0; count * BOTH];
        z.par_chunks_mut(BOTH).enumerate().for_each(|(i, row)| {
            for (d, x) in row.iter_mut().enumerate() {
                *x = normal::draw(i as u32, d as u32, seed);
            }
            proposal.place(i, row);
        });
        let rows: Vec<(Vec<f64>, f64)> = z
            .par_chunks(BOTH)
            .map(|row| {
                let mut shown = vec![f64::NAN; m];
                let fit = plan.likelihood(&plan.boats(row), &mut shown);
                (shown, fit)
            })
            .collect();
        let drawn = z.par_chunks(BOTH).map(|row| proposal.log_weight(row)).collect();
        let fits = rows.iter().map(|r| r.1).collect();
        Batch { z, shown: rows.into_iter().flat_map(|r| r.0).collect(), drawn, fits }
    }

    fn weights(&self, power: f64) -> Vec<f64> {
        let logs: Vec<f64> = self.drawn.iter().zip(&self.fits).map(|(d, f)| power * (d + f)).collect();
        let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        logs.iter().map(|l| (l - top).exp()).collect()
    }

    fn tempered(&self, share: f64) -> Vec<f64> {
        let least = share * self.fits.len() as f64;
        let mut power = 1.0;
        loop {
            let weights = self.weights(power);
            if effective(&weights) >= least || power < 1e-4 {
                return weights;
            }
            power *= 0.6;
        }
    }

    fn join(&mut self, other: Batch, proposals: &[Proposal<BOTH>]) {
        self.z.extend(other.z);
        self.shown.extend(other.shown);
        self.fits.extend(other.fits);
        self.drawn = self
            .z
            .par_chunks(BOTH)
            .map(|row| {
                let shares = proposals.iter().map(|p| (-p.log_weight(row)).exp());
                -(shares.sum::<f64>() / proposals.len() as f64).ln()
            })
            .collect();
    }
}

impl Pairs {
    pub fn draw(plan: PairPlan, count: usize, seed: u32) -> Pairs {
        let mut proposal = Proposal::prior();
        let mut before = Vec::new();
        let observed: Vec<f64> = plan.seen.iter().map(|s| s.observation.value.ln()).collect();
        let scatter: Vec<f64> = plan.seen.iter().map(|s| s.observation.scatter).collect();
        for round in 0..2 {
            let scouts = Batch::draw(&plan, &proposal, SCOUTS, seed.wrapping_add(0x9e37 + 0x79b9 * round));
            let weights = scouts.tempered(0.35);
            // "At least" pulls nobody down: such a reading bends nothing, it only weighs.
            let loose: Vec<f64> = scatter
                .iter()
                .zip(&plan.seen)
                .map(|(s, seen)| if seen.observation.at_least { 1e3 } else { *s })
                .collect();
            proposal = proposal.bent(&scouts.z, &weights, &scouts.shown, &observed, &loose);
            if round == 0 {
                before = scouts.shown;
            }
        }
        let mut batch = Batch::draw(&plan, &proposal, count, seed);
        let mut proposals = vec![proposal];
        for round in 1..=ROUNDS {
            if effective(&batch.weights(1.0)) >= ENOUGH.min(0.1 * count as f64) {
                break;
            }
            let weights = batch.tempered(0.15);
            let Some(moved) = proposals.last().and_then(|p| p.moved(&batch.z, &weights)) else { break };
            let next = Batch::draw(&plan, &moved, count, seed.wrapping_add(0x85eb * round));
            proposals.push(moved);
            batch.join(next, &proposals);
        }
        let weights = batch.weights(1.0);
        Pairs { effective: effective(&weights), z: batch.z, shown: batch.shown, weights, before, plan }
    }

    /// Whether the typical pair left lies within 3 scatters of every reading.
    pub fn explained(&self) -> bool {
        let m = self.plan.seen.len();
        m == 0 || {
            let worst = |shown: &[f64]| {
                shown.iter().zip(&self.plan.seen).map(|(s, seen)| gap(&seen.observation, *s).abs()).fold(0.0, f64::max)
            };
            let all: Vec<f64> = self.shown.chunks(m).map(worst).collect();
            stats::Weighted::new(&self.weights).band(&all, "1").middle < 3.0
        }
    }

    /// An evenly weighted part of the crowd, by position.
    pub fn representatives(&self, count: usize) -> Vec<usize> {
        stats::resample(&self.weights, count)
    }

    pub fn row(&self, i: usize) -> &[f64] {
        &self.z[i * BOTH..(i + 1) * BOTH]
    }

    /// The pair at a position.
    pub fn boats(&self, i: usize) -> [Definite; 2] {
        self.plan.boats(self.row(i))
    }
}
