//! The crowd: definite boats drawn from what was said and assumed, weighed by the readings.

pub mod definite;
pub mod latent;
mod linear;
pub mod normal;
pub mod physics;
pub mod plan;
pub(crate) mod proposal;
mod reading;
pub mod setup;
pub mod stats;

use definite::Definite;
use hydro::note::Notes;
use latent::COUNT;
use plan::Plan;
use proposal::Proposal;
use rayon::prelude::*;
pub(crate) use reading::{gap, kind};
use stats::{Weighted, effective};

/// Boats drawn to find out where the readings point.
const SCOUTS: usize = 512;
/// Rounds of scouting: the lines are fitted anew where the last ones led.
const SCOUTING: u32 = 3;
/// Effective share of a scouting party that needs no further one.
const GOOD: f64 = 0.3;
/// Most batches added where the first leaves too few effective boats.
const ROUNDS: u32 = 12;
/// Least effective number of boats aimed at in a crowd of this size: bands want four hundred, a small crowd is content with
/// a tenth of itself.
fn enough(count: usize) -> f64 {
    if count >= 2000 { 400.0 } else { 0.1 * count as f64 }
}

/// A weighted crowd of definite boats.
pub struct Crowd {
    /// What was drawn from.
    pub plan: Plan,
    /// The boats.
    pub boats: Vec<Definite>,
    /// Standard normal numbers of each boat, `boats × COUNT`.
    pub z: Vec<f64>,
    /// Weights, summing to 1.
    pub weights: Vec<f64>,
    /// Effective number of boats.
    pub effective: f64,
    /// Logarithm of what each boat would show for each observation, `boats × observations`.
    pub shown: Vec<f64>,
    /// The same for boats drawn before any reading was weighed.
    pub before: Vec<f64>,
    /// Whether the readings are explained: the typical boat left lies within 3 scatters of every reading.
    pub explained: bool,
    /// Logarithm of the mean likelihood over the prior: how well this kind of boat explains the readings at all.
    pub log_evidence: f64,
    /// Seed of the draw.
    pub seed: u32,
}

/// Draws of a batch of boats and what follows from them.
struct Batch {
    z: Vec<f64>,
    boats: Vec<Definite>,
    shown: Vec<f64>,
    /// ln of prior/proposal.
    drawn: Vec<f64>,
    /// Sum over all proposals drawn from of proposal/prior.
    shares: Vec<f64>,
    /// ln likelihood.
    fits: Vec<f64>,
}

impl Batch {
    fn draw(plan: &Plan, proposal: &Proposal<COUNT>, count: usize, seed: u32) -> Batch {
        let mut z = vec![0.0; count * COUNT];
        z.par_chunks_mut(COUNT).enumerate().for_each(|(i, row)| {
            for (d, x) in row.iter_mut().enumerate() {
                *x = normal::draw(i as u32, d as u32, seed);
            }
            proposal.place(i, row);
        });
        let boats: Vec<Definite> = z.par_chunks(COUNT).map(|row| Definite::new(plan, plan.values(row))).collect();
        let m = plan.observations.len();
        let mut shown = vec![f64::NAN; count * m];
        let mut fits = vec![0.0; count];
        fits.par_iter_mut().zip(&boats).for_each(|(fit, boat)| *fit = reading::kind(plan, boat));
        if m > 0 {
            let order = reading::order(plan);
            shown
                .par_chunks_mut(m)
                .zip(fits.par_iter_mut())
                .zip(&boats)
                .zip(z.par_chunks(COUNT))
                .for_each(|(((shown, fit), boat), z)| *fit += reading::likelihood(plan, &order, boat, z, shown));
        }
        let drawn: Vec<f64> = z.par_chunks(COUNT).map(|row| proposal.log_weight(row)).collect();
        let shares = drawn.iter().map(|d| (-d).exp()).collect();
        Batch { z, boats, shown, drawn, shares, fits }
    }

    /// Weights `(prior × likelihood / proposal)^power`, greatest 1.
    fn weights(&self, power: f64) -> Vec<f64> {
        let logs: Vec<f64> = self.drawn.iter().zip(&self.fits).map(|(d, f)| power * (d + f)).collect();
        let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        logs.iter().map(|l| (l - top).exp()).collect()
    }

    /// The strongest weights that leave `least` effective boats.
    fn tempered(&self, least: f64) -> Vec<f64> {
        let mut power = 1.0;
        loop {
            let weights = self.weights(power);
            if effective(&weights) >= least || power < 1e-4 {
                return weights;
            }
            power *= 0.6;
        }
    }

    fn bent(&self, plan: &Plan, from: &Proposal<COUNT>) -> Proposal<COUNT> {
        let weights = self.tempered(0.35 * self.boats.len() as f64);
        let mut observed: Vec<f64> = plan.observations.iter().map(|o| o.value.ln()).collect();
        let mut scatter: Vec<f64> = plan.observations.iter().map(|o| o.scatter).collect();
        let m = observed.len();
        for (i, _) in plan.observations.iter().enumerate().filter(|(_, o)| o.at_least) {
            // "At least" pulls no boat down: where the boats that fit show more already, the reading is as good as none.
            let shown: Vec<f64> = self.shown.iter().skip(i).step_by(m).copied().collect();
            let finite: Vec<f64> =
                weights.iter().zip(&shown).map(|(w, x)| if x.is_finite() { *w } else { 0.0 }).collect();
            let values: Vec<f64> = shown.iter().map(|x| if x.is_finite() { *x } else { 0.0 }).collect();
            let (mean, sd) = Weighted::new(&finite).moments(&values);
            if mean > observed[i] {
                observed[i] = mean;
                scatter[i] = scatter[i].hypot(3.0 * sd);
            }
        }
        from.bent(&self.z, &weights, &self.shown, &observed, &scatter)
    }

    /// Adds a batch of as many boats as each before, drawn from the last of `proposals`; all proposals together count as one
    /// mixture (the balance heuristic of Veach & Guibas 1995), so that no boat weighs more for having been drawn by the
    /// worse of them.
    fn join(&mut self, mut other: Batch, proposals: &[Proposal<COUNT>]) {
        let Some((last, earlier)) = proposals.split_last() else { return };
        let add = |batch: &mut Batch, from: &[Proposal<COUNT>]| {
            batch.shares.par_iter_mut().zip(batch.z.par_chunks(COUNT)).for_each(|(share, row)| {
                *share += from.iter().map(|p| (-p.log_weight(row)).exp()).sum::<f64>();
            });
        };
        add(self, std::slice::from_ref(last));
        add(&mut other, earlier);
        self.z.extend(other.z);
        self.boats.extend(other.boats);
        self.shown.extend(other.shown);
        self.fits.extend(other.fits);
        self.shares.extend(other.shares);
        let count = proposals.len() as f64;
        self.drawn = self.shares.iter().map(|share| -(share / count).ln()).collect();
    }
}

impl Crowd {
    /// Draws `count` boats and weighs them by the readings of the plan; more where so many leave too few effective ones.
    #[must_use]
    pub fn draw(plan: Plan, count: usize, seed: u32) -> Crowd {
        if plan.observations.is_empty() {
            let batch = Batch::draw(&plan, &Proposal::prior(), count, seed);
            return Crowd::of(plan, batch, Vec::new(), seed);
        }
        let scouts = SCOUTS.min((count / 2).max(256)).min(count);
        let mut proposal = Proposal::prior();
        let mut before = Vec::new();
        for round in 0..SCOUTING {
            let batch = Batch::draw(&plan, &proposal, scouts, seed.wrapping_add(0x9e37 + 0x79b9 * round));
            if round > 0 && effective(&batch.weights(1.0)) > GOOD * scouts as f64 {
                break;
            }
            proposal = batch.bent(&plan, &proposal);
            if round == 0 {
                before = batch.shown;
            }
        }
        let mut batch = Batch::draw(&plan, &proposal, count, seed);
        let mut proposals = vec![proposal];
        for round in 1..=ROUNDS {
            if effective(&batch.weights(1.0)) >= enough(count) {
                break;
            }
            let weights = batch.tempered(0.15 * batch.boats.len() as f64);
            let Some(moved) = proposals.last().and_then(|p| p.moved(&batch.z, &weights)) else { break };
            let next = Batch::draw(&plan, &moved, count, seed.wrapping_add(0x85eb * round));
            proposals.push(moved);
            batch.join(next, &proposals);
        }
        Crowd::of(plan, batch, before, seed)
    }

    fn of(plan: Plan, batch: Batch, before: Vec<f64>, seed: u32) -> Crowd {
        let top = batch.drawn.iter().zip(&batch.fits).map(|(d, f)| d + f).fold(f64::NEG_INFINITY, f64::max);
        let mut weights = batch.weights(1.0);
        let total: f64 = weights.iter().sum();
        let log_evidence = top + (total / weights.len() as f64).ln();
        weights.iter_mut().for_each(|w| *w /= total);
        let m = plan.observations.len();
        let explained = m == 0 || {
            let worst: Vec<f64> = batch
                .shown
                .chunks(m)
                .map(|shown| {
                    shown.iter().zip(&plan.observations).map(|(s, o)| reading::gap(o, *s).abs()).fold(0.0, f64::max)
                })
                .collect();
            Weighted::new(&weights).band(&worst, "1").middle < 3.0
        };
        Crowd {
            effective: effective(&weights),
            boats: batch.boats,
            z: batch.z,
            shown: batch.shown,
            weights,
            before,
            explained,
            log_evidence,
            plan,
            seed,
        }
    }

    /// Logarithm of what each boat would show for the observations of another plan of the same boats, `boats × observations`.
    #[must_use]
    pub fn would_show(&self, asked: &Plan) -> Vec<f64> {
        let m = asked.observations.len();
        let mut shown = vec![f64::NAN; self.boats.len() * m];
        if m > 0 {
            let order = reading::order(asked);
            shown.par_chunks_mut(m).zip(&self.boats).zip(self.z.par_chunks(COUNT)).for_each(|((shown, boat), z)| {
                reading::likelihood(asked, &order, boat, z, shown);
            });
        }
        shown
    }

    /// The warnings that travelled with at least one boat in ten.
    #[must_use]
    pub fn notes(&self) -> Vec<String> {
        let total: f64 = self.weights.iter().sum();
        let planes = reading::PLANES.to_owned();
        let kind = &self.plan.knowledge.kind;
        let assumed = (kind.0 == job::Kind::Planing && kind.1).then_some(planes);
        let travelled = hydro::note::Note::ALL
            .iter()
            .filter(|note| {
                let share: f64 = self
                    .boats
                    .iter()
                    .zip(&self.weights)
                    .filter(|(boat, _)| Notes::has(boat.notes, **note))
                    .map(|(_, w)| w)
                    .sum();
                share > 0.1 * total
            })
            .map(|note| note.text().to_owned());
        assumed.into_iter().chain(travelled).collect()
    }

    /// One latent's draws over the crowd.
    #[must_use]
    pub fn column(&self, latent: latent::Latent) -> Vec<f64> {
        self.z.iter().skip(latent as usize).step_by(COUNT).copied().collect()
    }

    /// The drawn values of one latent over the crowd.
    #[must_use]
    pub fn values(&self, latent: latent::Latent) -> Vec<f64> {
        self.boats.iter().map(|b| b.row[latent as usize]).collect()
    }

    /// An evenly weighted crowd of `count` of these boats, by position.
    #[must_use]
    pub fn representatives(&self, count: usize) -> Vec<usize> {
        if self.effective >= 0.999 * self.boats.len() as f64 {
            // Any leading stretch of the sequence is evenly spread already.
            return (0..count.min(self.boats.len())).collect();
        }
        stats::resample(&self.weights, count.min(self.boats.len()))
    }
}
