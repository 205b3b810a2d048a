//! Where to draw boats that explain the readings: a normal distribution bent towards them, mixed with the prior.
//!
//! Each reading's prediction is regressed on the standard normal numbers; with linear predictions `y = b + a·z` and scatter
//! `s`, the boats that explain the readings are normal with precision `P = I + Σ a aᵀ/s²` and mean `P⁻¹ Σ a (obs - b)/s²`.
//! Boats drawn from it carry the weight prior / proposal, so that the answer does not depend on how good the line is;
//! a share of prior boats keeps the weights bounded (defensive mixture, Hesterberg 1995).

use super::latent::COUNT;
use super::linear::Cholesky;

/// Share of boats drawn from the prior in every proposal.
const PRIOR_SHARE: f64 = 0.15;

/// A mixture of the prior and a bent normal distribution.
pub struct Proposal {
    mean: Vec<f64>,
    precision: Option<Cholesky>,
    log_scale: f64,
}

impl Proposal {
    /// The prior alone.
    #[must_use]
    pub fn prior() -> Proposal {
        Proposal { mean: vec![0.0; COUNT], precision: None, log_scale: 0.0 }
    }

    /// Bent towards observed values by weighted regression of predictions on draws.
    ///
    /// `z` is `n × COUNT`, `predicted` `n × m` (logarithms; not finite where the boat does not run), `observed` and
    /// `scatter` `m` each. Falls back to the prior when nothing can be fitted.
    #[must_use]
    pub fn bent(z: &[f64], weights: &[f64], predicted: &[f64], observed: &[f64], scatter: &[f64]) -> Proposal {
        let m = observed.len();
        let mut precision = vec![0.0; COUNT * COUNT];
        for i in 0..COUNT {
            precision[i * COUNT + i] = 1.0;
        }
        let mut pull = vec![0.0; COUNT];
        // Boats that show every reading serve for all; the normal equations are then built once.
        let used: Vec<usize> = (0..weights.len())
            .filter(|i| weights[*i] > 0.0 && predicted[i * m..(i + 1) * m].iter().all(|y| y.is_finite()))
            .collect();
        let Some(lines) = Lines::new(z, weights, &used) else { return Proposal::prior() };
        for r in 0..m {
            let (offset, slope, left) = lines.fit(|i| predicted[i * m + r]);
            let s2 = scatter[r] * scatter[r] + left;
            let gap = observed[r] - offset;
            for i in 0..COUNT {
                pull[i] += slope[i] * gap / s2;
                for j in 0..=i {
                    precision[i * COUNT + j] += slope[i] * slope[j] / s2;
                }
            }
        }
        for i in 0..COUNT {
            for j in 0..i {
                precision[j * COUNT + i] = precision[i * COUNT + j];
            }
        }
        match Cholesky::new(&precision, COUNT) {
            Some(factor) => {
                let mut mean = pull;
                factor.solve(&mut mean);
                // A line fitted far from the readings must not throw the boats where no boat is.
                let length = mean.iter().map(|x| x * x).sum::<f64>().sqrt();
                if length > 5.0 {
                    mean.iter_mut().for_each(|x| *x *= 5.0 / length);
                }
                Proposal { mean, log_scale: 0.5 * factor.log_determinant(), precision: Some(factor) }
            }
            None => Proposal::prior(),
        }
    }

    /// Turns standard normal numbers into a boat's draws; `index` decides which part of the mixture.
    pub fn place(&self, index: usize, z: &mut [f64]) {
        let Some(factor) = &self.precision else { return };
        // Every k-th boat comes from the prior: 3 in 20.
        if (index * 3) % 20 < 3 {
            return;
        }
        factor.backward(z);
        for (x, m) in z.iter_mut().zip(&self.mean) {
            *x += m;
        }
    }

    /// `ln(prior / proposal)` at a boat's draws.
    #[must_use]
    pub fn log_weight(&self, z: &[f64]) -> f64 {
        let Some(factor) = &self.precision else { return 0.0 };
        let prior = -0.5 * z.iter().map(|x| x * x).sum::<f64>();
        let mut y = [0.0; COUNT];
        for (y, (x, m)) in y.iter_mut().zip(z.iter().zip(&self.mean)) {
            *y = x - m;
        }
        let bent = self.log_scale - 0.5 * factor.quadratic(&y);
        let top = prior.max(bent);
        let mixture = top + (PRIOR_SHARE * (prior - top).exp() + (1.0 - PRIOR_SHARE) * (bent - top).exp()).ln();
        prior - mixture
    }
}

/// Weighted least squares on the draws of a batch, with an offset.
struct Lines<'a> {
    z: &'a [f64],
    used: &'a [usize],
    /// Weights of the used boats, summing to 1.
    weights: Vec<f64>,
    mean: Vec<f64>,
    factor: Cholesky,
}

impl<'a> Lines<'a> {
    fn new(z: &'a [f64], weights: &[f64], used: &'a [usize]) -> Option<Lines<'a>> {
        if used.len() < COUNT + 10 {
            return None;
        }
        let total: f64 = used.iter().map(|i| weights[*i]).sum();
        let weights: Vec<f64> = used.iter().map(|i| weights[*i] / total).collect();
        let mut mean = vec![0.0; COUNT];
        for (i, w) in used.iter().zip(&weights) {
            for (mean, z) in mean.iter_mut().zip(&z[i * COUNT..]) {
                *mean += w * z;
            }
        }
        let mut normal = vec![0.0; COUNT * COUNT];
        let mut row = [0.0; COUNT];
        for (i, w) in used.iter().zip(&weights) {
            for (row, (z, mean)) in row.iter_mut().zip(z[i * COUNT..].iter().zip(&mean)) {
                *row = z - mean;
            }
            for k in 0..COUNT {
                let wk = w * row[k];
                for (entry, x) in normal[k * COUNT..=k * COUNT + k].iter_mut().zip(&row) {
                    *entry += wk * x;
                }
            }
        }
        for k in 0..COUNT {
            // A ridge of the order of the sampling error of a variance keeps few boats from fitting noise.
            normal[k * COUNT + k] += 0.02;
            for j in 0..k {
                normal[j * COUNT + k] = normal[k * COUNT + j];
            }
        }
        Some(Lines { z, used, weights, mean, factor: Cholesky::new(&normal, COUNT)? })
    }

    /// Offset, slopes and the variance left of `y` (by boat).
    fn fit(&self, y: impl Fn(usize) -> f64) -> (f64, Vec<f64>, f64) {
        let mean_y: f64 = self.used.iter().zip(&self.weights).map(|(i, w)| w * y(*i)).sum();
        let mut slope = vec![0.0; COUNT];
        for (i, w) in self.used.iter().zip(&self.weights) {
            let dy = w * (y(*i) - mean_y);
            for (right, (z, mean)) in slope.iter_mut().zip(self.z[i * COUNT..].iter().zip(&self.mean)) {
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
                let fit: f64 = offset + slope.iter().zip(&self.z[i * COUNT..]).map(|(a, x)| a * x).sum::<f64>();
                w * (y(*i) - fit).powi(2)
            })
            .sum();
        (offset, slope, left)
    }
}
