//! Quantiles and shares on a weighted crowd.

use crate::report::Band;

/// Values with weights, to be asked for quantiles.
pub struct Weighted<'a> {
    weights: &'a [f64],
}

impl<'a> Weighted<'a> {
    /// Weights need not sum to 1.
    #[must_use]
    pub fn new(weights: &'a [f64]) -> Weighted<'a> {
        Weighted { weights }
    }

    /// 10 %, 50 %, 90 % of `values`; what is not finite is left out. All zero when nothing is left.
    #[must_use]
    pub fn band(&self, values: &[f64], unit: &'static str) -> Band {
        let mut order: Vec<(f64, f64)> = values
            .iter()
            .zip(self.weights)
            .filter(|(value, weight)| value.is_finite() && **weight > 0.0)
            .map(|(value, weight)| (*value, *weight))
            .collect();
        if order.is_empty() {
            return Band { low: 0.0, middle: 0.0, high: 0.0, unit };
        }
        order.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
        let total: f64 = order.iter().map(|pair| pair.1).sum();
        let at = |share: f64| {
            let target = share * total;
            let mut sum = 0.0;
            for (value, weight) in &order {
                sum += weight;
                if sum >= target {
                    return *value;
                }
            }
            order[order.len() - 1].0
        };
        Band { low: at(0.1), middle: at(0.5), high: at(0.9), unit }
    }

    /// Share of the weight for which `condition` holds.
    pub fn share(&self, mut condition: impl FnMut(usize) -> bool) -> f64 {
        let total: f64 = self.weights.iter().sum();
        let hit = self.weights.iter().enumerate().filter(|(i, _)| condition(*i)).fold(0.0, |sum, (_, w)| sum + w);
        if total > 0.0 { hit / total } else { 0.0 }
    }

    /// Mean and standard deviation.
    #[must_use]
    pub fn moments(&self, values: &[f64]) -> (f64, f64) {
        let total: f64 = self.weights.iter().sum();
        let mean = values.iter().zip(self.weights).map(|(v, w)| v * w).sum::<f64>() / total;
        let variance = values.iter().zip(self.weights).map(|(v, w)| w * (v - mean) * (v - mean)).sum::<f64>() / total;
        (mean, variance.max(0.0).sqrt())
    }

    /// Squared correlation of two columns.
    #[must_use]
    pub fn shared_variance(&self, a: &[f64], b: &[f64]) -> f64 {
        let ((ma, sa), (mb, sb)) = (self.moments(a), self.moments(b));
        if sa <= 0.0 || sb <= 0.0 {
            return 0.0;
        }
        let total: f64 = self.weights.iter().sum();
        let covariance =
            a.iter().zip(b).zip(self.weights).map(|((x, y), w)| w * (x - ma) * (y - mb)).sum::<f64>() / total;
        (covariance / (sa * sb)).powi(2)
    }
}

/// Effective number of equally weighted boats, `(Σw)²/Σw²` (Kish 1965).
#[must_use]
pub fn effective(weights: &[f64]) -> f64 {
    let sum: f64 = weights.iter().sum();
    let squares: f64 = weights.iter().map(|w| w * w).sum();
    if squares > 0.0 { sum * sum / squares } else { 0.0 }
}

/// Indices of `count` boats drawn in proportion to their weight, evenly spaced (systematic resampling, Kitagawa 1996).
#[must_use]
pub fn resample(weights: &[f64], count: usize) -> Vec<usize> {
    let total: f64 = weights.iter().sum();
    let step = total / count as f64;
    let mut picked = Vec::with_capacity(count);
    let (mut sum, mut target) = (0.0, 0.5 * step);
    for (i, weight) in weights.iter().enumerate() {
        sum += weight;
        while sum > target && picked.len() < count {
            picked.push(i);
            target += step;
        }
    }
    while picked.len() < count {
        picked.push(weights.len() - 1);
    }
    picked
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_follow_the_weights() {
        let weights = [1.0, 1.0, 8.0];
        let band = Weighted::new(&weights).band(&[3.0, 1.0, 2.0], "1");
        assert_eq!((band.low, band.middle, band.high), (1.0, 2.0, 2.0));
    }

    #[test]
    fn effective_number_of_even_and_single_weights() {
        assert_eq!(effective(&[2.0; 7]), 7.0);
        assert_eq!(effective(&[0.0, 3.0, 0.0]), 1.0);
    }

    #[test]
    fn resampling_keeps_proportions() {
        let picked = resample(&[0.1, 0.4, 0.5], 10);
        assert_eq!(picked.iter().filter(|i| **i == 1).count(), 4);
        assert_eq!(picked.iter().filter(|i| **i == 2).count(), 5);
    }
}
