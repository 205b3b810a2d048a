//! Means, and how well they are known.

use crate::sample::KNOT;

/// A mean over time with its standard error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mean {
    /// The mean.
    pub value: f64,
    /// Its standard error, in the same unit.
    pub error: f64,
    /// Degrees of freedom of the standard error.
    pub freedom: f64,
}

impl Mean {
    /// Half the 80 % band of the mean: what the scatter of the record says, without the instrument's own error.
    #[must_use]
    pub fn half(&self) -> f64 {
        student(self.freedom) * self.error
    }
}

/// The point of Student's t that has one chance in ten above it, for `freedom` degrees of freedom (1 and more).
///
/// Expansion in 1/ν around the normal quantile z: M. Abramowitz & I. A. Stegun, Handbook of Mathematical Functions, 1964,
/// eq. 26.7.5 (from memory; held against the printed table in the tests). For ν = 1 and 2 the exact closed forms.
#[must_use]
pub fn student(freedom: f64) -> f64 {
    const Z: f64 = 1.281_551_565_544_6;
    let v = freedom.max(1.0);
    // Between the exact values of 1 and 2 and the expansion from 3 on: straight lines in 1/ν.
    let (one, two) = (3.077_684, 1.885_618);
    let expansion = |v: f64| {
        let z = Z;
        z + (z.powi(3) + z) / (4.0 * v)
            + (5.0 * z.powi(5) + 16.0 * z.powi(3) + 3.0 * z) / (96.0 * v * v)
            + (3.0 * z.powi(7) + 19.0 * z.powi(5) + 17.0 * z.powi(3) - 15.0 * z) / (384.0 * v.powi(3))
    };
    let between = |a: f64, va: f64, b: f64, vb: f64| b + (a - b) * (1.0 / v - 1.0 / vb) / (1.0 / va - 1.0 / vb);
    if v < 2.0 {
        between(one, 1.0, two, 2.0)
    } else if v < 3.0 {
        between(two, 2.0, expansion(3.0), 3.0)
    } else {
        expansion(v)
    }
}

/// Mean over time of values whose neighbours are alike (waves, a slow receiver): the record is cut into blocks, and the
/// scatter of the blocks' means gives the standard error (batch means, common practice in time-series work; from memory).
///
/// Blocks last at least ten seconds, and there are at most twelve. Errors that last longer than a block are not seen.
/// `None` for an empty record. Times rise; values are finite.
#[must_use]
pub fn block_mean(record: &[(f64, f64)]) -> Option<Mean> {
    let (first, last) = (record.first()?.0, record.last()?.0);
    let value = record.iter().map(|(_, v)| v).sum::<f64>() / record.len() as f64;
    let span = (last - first).max(0.0);
    let blocks = ((span / 10.0).floor() as usize).min(12).min(record.len());
    if blocks < 2 {
        // Too short to tell: the scatter itself is the error.
        let scatter = record.iter().map(|(_, v)| (v - value).powi(2)).sum::<f64>() / record.len() as f64;
        return Some(Mean { value, error: scatter.sqrt(), freedom: 1.0 });
    }
    let mut sums = vec![(0.0, 0.0); blocks];
    for (t, v) in record {
        let at = (((t - first) / span * blocks as f64) as usize).min(blocks - 1);
        sums[at] = (sums[at].0 + v, sums[at].1 + 1.0);
    }
    let means: Vec<f64> = sums.iter().filter(|(_, n)| *n > 0.0).map(|(s, n)| s / n).collect();
    let n = means.len() as f64;
    if n < 2.0 {
        return Some(Mean { value, error: 0.0, freedom: 1.0 });
    }
    let middle = means.iter().sum::<f64>() / n;
    let variance = means.iter().map(|m| (m - middle).powi(2)).sum::<f64>() / (n - 1.0);
    // Neighbouring blocks that are still alike make the error larger.
    let alike = means.windows(2).map(|w| (w[0] - middle) * (w[1] - middle)).sum::<f64>() / (n - 1.0);
    let stretch = if n >= 6.0 && alike > 0.0 { 1.0 + 2.0 * (alike / variance).clamp(0.0, 0.5) } else { 1.0 };
    Some(Mean { value, error: (variance / n * stretch).sqrt(), freedom: n - 1.0 })
}

/// Weights of the mean of means of `runs` runs, alternately there and back: 1; 1 1; 1 2 1; 1 3 3 1; ... over their sum.
///
/// They take out a current that changes as a polynomial of degree `runs` - 2 in equally spaced runs, for the alternating
/// binomial sum of such a polynomial is zero. (The current correction of ship trials: G. Strasser et al., A verification
/// of the ITTC/ISO speed/power trials analysis, J. Mar. Sci. Technol. 20, 2015; abstract read, the weights from memory.)
#[must_use]
pub fn weights(runs: usize) -> Vec<f64> {
    let mut weights = vec![1.0];
    for _ in 1..runs.min(64) {
        let mut next = vec![0.0; weights.len() + 1];
        for (at, w) in weights.iter().enumerate() {
            next[at] += 0.5 * w;
            next[at + 1] += 0.5 * w;
        }
        weights = next;
    }
    weights
}

/// Mean of means of speeds in the order they were run, alternately there and back: (V₁+V₂)/2, (V₁+2V₂+V₃)/4,
/// (V₁+3V₂+3V₃+V₄)/8. `None` for no speed.
#[must_use]
pub fn mean_of_means(speeds: &[f64]) -> Option<f64> {
    (!speeds.is_empty()).then(|| weights(speeds.len()).iter().zip(speeds).map(|(w, v)| w * v).sum())
}

/// Speed through the water and current from runs alternately there and back, at their real times: Vᵢ = V ± c(tᵢ) with c a
/// polynomial of degree runs - 2 (at most 2), by least squares.
///
/// Gives V, and the coefficients of c around the mean time (along the first run's direction), per second. `None` for fewer
/// than two runs, or for times that don't tell the runs apart.
#[must_use]
pub fn timed(speeds: &[f64], times: &[f64]) -> Option<(f64, Vec<f64>)> {
    let n = speeds.len().min(times.len());
    if n < 2 {
        return None;
    }
    let degree = (n - 2).min(2);
    let middle = times[..n].iter().sum::<f64>() / n as f64;
    // Scaled time keeps the equations well conditioned.
    let scale = times[..n].iter().map(|t| (t - middle).abs()).fold(0.0, f64::max);
    let scale = if scale > 0.0 { scale } else { 1.0 };
    let size = degree + 2;
    let mut a = vec![vec![0.0; size + 1]; size];
    for (at, speed) in speeds[..n].iter().enumerate() {
        let sign = if at % 2 == 0 { 1.0 } else { -1.0 };
        let t = (times[at] - middle) / scale;
        let row: Vec<f64> = std::iter::once(1.0).chain((0..=degree).map(|power| sign * t.powi(power as i32))).collect();
        for i in 0..size {
            for j in 0..size {
                a[i][j] += row[i] * row[j];
            }
            a[i][size] += row[i] * speed;
        }
    }
    let solved = solve(a)?;
    let current = solved[1..].iter().enumerate().map(|(power, c)| c / scale.powi(power as i32)).collect();
    Some((solved[0], current))
}

/// Solves a small linear system (right side in the last column) by elimination with pivoting.
fn solve(mut a: Vec<Vec<f64>>) -> Option<Vec<f64>> {
    let n = a.len();
    for at in 0..n {
        let pivot = (at..n).max_by(|x, y| a[*x][at].abs().total_cmp(&a[*y][at].abs()))?;
        if a[pivot][at].abs() < 1e-9 {
            return None;
        }
        a.swap(at, pivot);
        for row in 0..n {
            if row != at {
                let factor = a[row][at] / a[at][at];
                let pivot = a[at].clone();
                for (value, from) in a[row].iter_mut().zip(&pivot).skip(at) {
                    *value -= factor * from;
                }
            }
        }
    }
    Some((0..n).map(|at| a[at][n] / a[at][at]).collect())
}

/// Half the 80 % band of a mean of means from those of its runs.
///
/// Besides the runs' scatter (Welch-Satterthwaite for the degrees of freedom) it holds what no scatter shows: `floor` for
/// the instrument, wind and steering (0.05 kn: the best that double runs give, common practice, no source), and, for two
/// runs, a tidal current that changes between them by up to half of itself an hour (2π / 12.42 h of a tide).
#[must_use]
pub fn combined(runs: &[Mean], times: &[f64], current: f64) -> (f64, f64) {
    let w = weights(runs.len());
    let parts: Vec<f64> = runs.iter().zip(&w).map(|(m, w)| (w * m.error).powi(2)).collect();
    let total: f64 = parts.iter().sum();
    let below: f64 = parts.iter().zip(runs).map(|(p, m)| p * p / m.freedom.max(1.0)).sum();
    let freedom = if below > 0.0 { total * total / below } else { f64::MAX };
    let scatter = student(freedom) * total.sqrt();
    let drift = match times {
        [a, b] => 0.5 * current.abs().max(0.3 * KNOT) * (0.5 / 3600.0) * (b - a).abs(),
        _ => 0.0,
    };
    (scatter, (scatter.powi(2) + FLOOR.powi(2) + drift.powi(2)).sqrt())
}

/// The best that runs both ways give, m/s.
pub const FLOOR: f64 = 0.05 * KNOT;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn student_meets_the_printed_table() {
        // 90 % points printed in tables of Student's t (e.g. Abramowitz & Stegun table 26.10; from memory), 3 decimals.
        for (v, want) in
            [(1.0, 3.078), (2.0, 1.886), (3.0, 1.638), (5.0, 1.476), (10.0, 1.372), (30.0, 1.310), (1e9, 1.282)]
        {
            assert!((student(v) - want).abs() < 0.0021, "{v}: {}", student(v));
        }
    }

    #[test]
    fn weights_cancel_what_they_should() {
        assert_eq!(weights(2), [0.5, 0.5]);
        assert_eq!(weights(3), [0.25, 0.5, 0.25]);
        assert_eq!(weights(4), [0.125, 0.375, 0.375, 0.125]);
        // A current 2 + 3t + t² over four runs; the water speed is 8.
        let speeds: Vec<f64> = (0..4)
            .map(f64::from)
            .map(|t| 8.0 + if t as i32 % 2 == 0 { 1.0 } else { -1.0 } * (2.0 + 3.0 * t + t * t))
            .collect();
        assert!((mean_of_means(&speeds).unwrap() - 8.0).abs() < 1e-12);
        let (v, c) = timed(&speeds, &[0.0, 1.0, 2.0, 3.0]).unwrap();
        assert!((v - 8.0).abs() < 1e-9);
        // At the mean time 1.5 the current is 2 + 4.5 + 2.25 and grows by 3 + 2 · 1.5.
        assert!((c[0] - 8.75).abs() < 1e-9 && (c[1] - 6.0).abs() < 1e-9);
    }
}
