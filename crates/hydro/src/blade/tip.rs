//! The section nobody can measure: the tip.

use super::estimate::Estimate;

/// Pitch, chord, skew-back, rake, thickness of one station.
pub(super) struct Row {
    /// Radius, m.
    pub radius: f64,
    /// Pitch, chord, skew-back, rake, thickness, m.
    pub values: [Estimate; 5],
}

/// How many of the outer stations each quantity is carried on from, and the power of the curve. Pitch, rake and thickness run
/// on straight; skew grows faster outward, so it takes a parabola.
const REACH: [(usize, usize); 5] = [(4, 1), (0, 0), (6, 2), (5, 1), (4, 1)];

/// Spread of a value carried on to the tip, over the tip radius (pitch: of the pitch), besides that of the stations. Ours.
const CARRIED: [f64; 5] = [0.01, 0.0, 0.005, 0.004, 0.002];

/// A section of no chord at the tip, the rest carried on from the outer stations by least squares.
pub(super) fn close(rows: &[Row], tip: f64) -> Row {
    let mut values = [Estimate::exact(0.0); 5];
    for (k, value) in values.iter_mut().enumerate() {
        let (reach, power) = REACH[k];
        if reach == 0 {
            continue;
        }
        let outer = &rows[rows.len().saturating_sub(reach)..];
        let points: Vec<(f64, Estimate)> = outer.iter().map(|r| (r.radius / tip, r.values[k])).collect();
        let carried = carry(&points, power.min(points.len().saturating_sub(1)));
        let scale = if k == 0 { carried.value } else { tip };
        *value = carried.and_sd(CARRIED[k] * scale);
    }
    // Pitch never leaves what the blade has by much, thickness never vanishes below nothing.
    if let Some(last) = rows.last() {
        values[0].value = values[0].value.clamp(0.8 * last.values[0].value, 1.25 * last.values[0].value);
        values[4].value = values[4].value.clamp(0.2 * last.values[4].value, last.values[4].value.max(0.0));
    }
    Row { radius: tip, values }
}

/// Least squares polynomial of `power` 0, 1 or 2 read at `x = 1`: a fixed sum of the values, so the spread follows.
fn carry(points: &[(f64, Estimate)], power: usize) -> Estimate {
    // Weights w with Σ w f(x) = f(1) for every polynomial of that power, smallest Σ w²: w = A (AᵀA)⁻¹ (1, 0, 0), in u = x - 1.
    let moment = |k: i32| points.iter().map(|p| (p.0 - 1.0).powi(k)).sum::<f64>();
    let s: [f64; 5] = [moment(0), moment(1), moment(2), moment(3), moment(4)];
    let row = match power {
        2 => {
            let det = s[0] * (s[2] * s[4] - s[3] * s[3]) - s[1] * (s[1] * s[4] - s[3] * s[2])
                + s[2] * (s[1] * s[3] - s[2] * s[2]);
            [(s[2] * s[4] - s[3] * s[3]) / det, (s[2] * s[3] - s[1] * s[4]) / det, (s[1] * s[3] - s[2] * s[2]) / det]
        }
        1 => {
            let det = s[0] * s[2] - s[1] * s[1];
            [s[2] / det, -s[1] / det, 0.0]
        }
        _ => [s[0].recip(), 0.0, 0.0],
    };
    let (mut value, mut variance) = (0.0, 0.0);
    for (x, e) in points {
        let u = x - 1.0;
        let weight = row[0] + row[1] * u + row[2] * u * u;
        value += weight * e.value;
        variance += (weight * e.sd).powi(2);
    }
    if value.is_finite() && variance.is_finite() {
        Estimate::new(value, variance.sqrt())
    } else {
        points.last().map_or(Estimate::exact(0.0), |p| p.1)
    }
}

#[cfg(test)]
mod tests {
    use super::carry;
    use crate::blade::Estimate;

    #[test]
    fn polynomials_are_carried_on_exactly() {
        let f = |x: f64| 3.0 - 2.0 * x + 5.0 * x * x;
        let points: Vec<(f64, Estimate)> =
            [0.5, 0.6, 0.7, 0.8, 0.9, 0.95].map(|x| (x, Estimate::new(f(x), 0.1))).to_vec();
        let tip = carry(&points, 2);
        assert!((tip.value - 6.0).abs() < 1e-9, "{tip:?}");
        assert!(tip.sd > 0.05 && tip.sd < 0.2, "{tip:?}");
        let line: Vec<(f64, Estimate)> = points.iter().map(|p| (p.0, Estimate::exact(1.0 + p.0))).collect();
        assert!((carry(&line, 1).value - 2.0).abs() < 1e-12);
    }
}
