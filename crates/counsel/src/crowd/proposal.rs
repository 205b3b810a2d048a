//! Where to draw boats that explain the readings: a normal distribution bent towards them, mixed with the prior.
//!
//! Each reading's prediction is regressed on the standard normal numbers; with linear predictions `y = b + a·z` and scatter
//! `s`, the boats that explain the readings are normal with precision `P = I + Σ a aᵀ/s²` and mean `P⁻¹ Σ a (obs - b)/s²`.
//! Boats drawn from it carry the weight prior / proposal, so that the answer does not depend on how good the line is;
//! a share of prior boats keeps the weights bounded (defensive mixture, Hesterberg 1995).

use super::linear::Cholesky;
use super::stats::effective;

/// Share of boats drawn from the prior in every proposal.
const PRIOR_SHARE: f64 = 0.15;

/// A mixture of the prior and a bent normal distribution; without the latter the prior alone.
pub struct Proposal<const D: usize> {
    bent: Option<Part<D>>,
}

/// A reading as a line in the draws: slopes, the reading less the line at 0, and its variance.
struct Line {
    slope: Vec<f64>,
    gap: f64,
    variance: f64,
}

/// A normal distribution.
struct Part<const D: usize> {
    mean: Vec<f64>,
    precision: Cholesky,
    log_scale: f64,
}

impl<const D: usize> Part<D> {
    /// What is left of the standard normal distribution by lines and their scatter; `None` when nothing can be fitted.
    fn of(lines: &[Line]) -> Option<Part<D>> {
        let mut precision = vec![0.0; D * D];
        let mut mean = vec![0.0; D];
        for i in 0..D {
            precision[i * D + i] = 1.0;
        }
        for Line { slope, gap, variance } in lines {
            for i in 0..D {
                mean[i] += slope[i] * gap / variance;
                for j in 0..=i {
                    precision[i * D + j] += slope[i] * slope[j] / variance;
                }
            }
        }
        for i in 0..D {
            for j in 0..i {
                precision[j * D + i] = precision[i * D + j];
            }
        }
        let precision = Cholesky::new(&precision, D)?;
        precision.solve(&mut mean);
        // A line fitted far from the readings must not throw the boats where no boat is.
        let length = mean.iter().map(|x| x * x).sum::<f64>().sqrt();
        if length > 5.0 {
            mean.iter_mut().for_each(|x| *x *= 5.0 / length);
        }
        Some(Part { mean, log_scale: 0.5 * precision.log_determinant(), precision })
    }

    /// Numbers in which this distribution is the standard one, `y = Lᵀ(z - mean)`, in place.
    fn round(&self, z: &mut [f64]) {
        z.iter_mut().zip(&self.mean).for_each(|(x, m)| *x -= m);
        self.precision.turn(z);
    }

    fn log_density(&self, z: &[f64]) -> f64 {
        let mut y = [0.0; D];
        for (y, (x, m)) in y.iter_mut().zip(z.iter().zip(&self.mean)) {
            *y = x - m;
        }
        self.log_scale - 0.5 * self.precision.quadratic(&y)
    }
}

impl<const D: usize> Proposal<D> {
    /// The prior alone.
    #[must_use]
    pub fn prior() -> Proposal<D> {
        Proposal { bent: None }
    }

    /// Bent towards observed values by weighted regression of predictions on the draws of a batch of this proposal.
    ///
    /// `z` is `n × D`, `predicted` `n × m` (logarithms; not finite where the boat does not run), `observed` and
    /// `scatter` `m` each. The regression runs in numbers in which the bent part is round, so that no direction is fitted
    /// worse for being narrow already. Falls back to the prior when nothing can be fitted.
    #[must_use]
    pub fn bent(
        &self,
        z: &[f64],
        weights: &[f64],
        predicted: &[f64],
        observed: &[f64],
        scatter: &[f64],
    ) -> Proposal<D> {
        let m = observed.len();
        let mut weights = weights.to_vec();
        let mut y = z.to_vec();
        if let Some(part) = &self.bent {
            // Boats from the prior's share lie elsewhere: the line is wanted where the readings are.
            weights.iter_mut().enumerate().filter(|(i, _)| from_prior(*i)).for_each(|(_, w)| *w = 0.0);
            y.chunks_mut(D).for_each(|row| part.round(row));
        }
        // Boats that show every reading serve for all; the normal equations are then built once.
        let used: Vec<usize> = (0..weights.len())
            .filter(|i| weights[*i] > 0.0 && predicted[i * m..(i + 1) * m].iter().all(|y| y.is_finite()))
            .collect();
        let Some(fits) = Lines::<D>::new(&y, &weights, &used) else { return Proposal::prior() };
        let lines: Vec<Line> = (0..m)
            .map(|r| {
                let (mut offset, mut slope, left) = fits.fit(|i| predicted[i * m + r]);
                if let Some(part) = &self.bent {
                    // With y = Lᵀ(z - mean): a·y = (L a)·(z - mean).
                    slope = part.precision.times(&slope);
                    offset -= slope.iter().zip(&part.mean).map(|(a, m)| a * m).sum::<f64>();
                }
                Line { slope, gap: observed[r] - offset, variance: scatter[r] * scatter[r] + left }
            })
            .collect();
        Proposal { bent: Part::of(&lines) }
    }

    /// The bent part taken to mean and covariance of weighted draws.
    ///
    /// Lines leave out how predictions bend; the draws themselves do not. In numbers in which the bent part is round the
    /// covariance is shrunk to roundness as far as its sampling error asks (Ledoit & Wolf 2004). `None` where there is
    /// nothing to start from.
    #[must_use]
    pub fn moved(&self, z: &[f64], weights: &[f64]) -> Option<Proposal<D>> {
        let part = self.bent.as_ref()?;
        let total: f64 = weights.iter().sum();
        let mut y = z.to_vec();
        let mut mean = vec![0.0; D];
        for (row, w) in y.chunks_mut(D).zip(weights) {
            part.round(row);
            mean.iter_mut().zip(&*row).for_each(|(m, x)| *m += w / total * x);
        }
        let mut covariance = vec![0.0; D * D];
        for (row, w) in y.chunks_mut(D).zip(weights) {
            row.iter_mut().zip(&mean).for_each(|(x, m)| *x -= m);
            for k in 0..D {
                let wk = w / total * row[k];
                for j in 0..=k {
                    covariance[k * D + j] += wk * row[j];
                }
            }
        }
        let mut out_of_round = 0.0;
        for k in 0..D {
            out_of_round += (covariance[k * D + k] - 1.0).powi(2);
            out_of_round += 2.0 * (0..k).map(|j| covariance[k * D + j].powi(2)).sum::<f64>();
        }
        // Expected of a round distribution by sampling alone: d (d + 1)/n.
        let expected = (D * (D + 1)) as f64 / effective(weights).max(1.0);
        let share = (expected / out_of_round.max(1e-12)).min(1.0);
        for k in 0..D {
            for j in 0..=k {
                covariance[k * D + j] *= 1.0 - share;
                covariance[j * D + k] = covariance[k * D + j];
            }
            covariance[k * D + k] += share;
        }
        let inverse = Cholesky::new(&covariance, D)?.inverse();
        let precision = part.precision.after(&Cholesky::new(&inverse, D)?);
        // z = mean + L⁻ᵀ y.
        part.precision.backward(&mut mean);
        mean.iter_mut().zip(&part.mean).for_each(|(x, m)| *x += m);
        Some(Proposal { bent: Some(Part { mean, log_scale: 0.5 * precision.log_determinant(), precision }) })
    }

    /// Turns standard normal numbers into a boat's draws; `index` decides which part of the mixture.
    pub fn place(&self, index: usize, z: &mut [f64]) {
        let Some(part) = self.bent.as_ref().filter(|_| !from_prior(index)) else { return };
        part.precision.backward(z);
        for (x, m) in z.iter_mut().zip(&part.mean) {
            *x += m;
        }
    }

    /// `ln(prior / proposal)` at a boat's draws.
    #[must_use]
    pub fn log_weight(&self, z: &[f64]) -> f64 {
        let Some(part) = &self.bent else { return 0.0 };
        let prior = -0.5 * z.iter().map(|x| x * x).sum::<f64>();
        let bent = part.log_density(z);
        let top = prior.max(bent);
        let mixture = top + (PRIOR_SHARE * (prior - top).exp() + (1.0 - PRIOR_SHARE) * (bent - top).exp()).ln();
        prior - mixture
    }
}

/// Which boats come from the prior: 3 in 20.
fn from_prior(index: usize) -> bool {
    (index * 3) % 20 < 3
}

/// Weighted least squares on the draws of a batch, with an offset.
struct Lines<'a, const D: usize> {
    z: &'a [f64],
    used: &'a [usize],
    /// Weights of the used boats, summing to 1.
    weights: Vec<f64>,
    mean: Vec<f64>,
    factor: Cholesky,
}

impl<'a, const D: usize> Lines<'a, D> {
    fn new(z: &'a [f64], weights: &[f64], used: &'a [usize]) -> Option<Lines<'a, D>> {
        if used.len() < D + 10 {
            return None;
        }
        let total: f64 = used.iter().map(|i| weights[*i]).sum();
        let weights: Vec<f64> = used.iter().map(|i| weights[*i] / total).collect();
        let mut mean = vec![0.0; D];
        for (i, w) in used.iter().zip(&weights) {
            for (mean, z) in mean.iter_mut().zip(&z[i * D..]) {
                *mean += w * z;
            }
        }
        let mut normal = vec![0.0; D * D];
        let mut row = [0.0; D];
        for (i, w) in used.iter().zip(&weights) {
            for (row, (z, mean)) in row.iter_mut().zip(z[i * D..].iter().zip(&mean)) {
                *row = z - mean;
            }
            for k in 0..D {
                let wk = w * row[k];
                for (entry, x) in normal[k * D..=k * D + k].iter_mut().zip(&row) {
                    *entry += wk * x;
                }
            }
        }
        for k in 0..D {
            // A ridge of the order of the sampling error of a variance keeps few boats from fitting noise.
            normal[k * D + k] += 0.02;
            for j in 0..k {
                normal[j * D + k] = normal[k * D + j];
            }
        }
        Some(Lines { z, used, weights, mean, factor: Cholesky::new(&normal, D)? })
    }

    /// Offset, slopes and the variance left of `y` (by boat).
    fn fit(&self, y: impl Fn(usize) -> f64) -> (f64, Vec<f64>, f64) {
        let mean_y: f64 = self.used.iter().zip(&self.weights).map(|(i, w)| w * y(*i)).sum();
        let mut slope = vec![0.0; D];
        for (i, w) in self.used.iter().zip(&self.weights) {
            let dy = w * (y(*i) - mean_y);
            for (right, (z, mean)) in slope.iter_mut().zip(self.z[i * D..].iter().zip(&self.mean)) {
                *right += dy * (z - mean);
            }
        }
        self.factor.solve(&mut slope);
        let offset = mean_y - slope.iter().zip(&self.mean).map(|(a, m)| a * m).sum::<f64>();
        let left = self
            .used
            .iter()
            .zip(&self.weights)
            .map(|(i, w)| {
                let fit: f64 = offset + slope.iter().zip(&self.z[i * D..]).map(|(a, x)| a * x).sum::<f64>();
                w * (y(*i) - fit).powi(2)
            })
            .sum();
        (offset, slope, left)
    }
}
