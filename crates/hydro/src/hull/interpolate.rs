//! Monotone cubic interpolation of small tables (piecewise cubic Hermite; no overshoot between points).

/// Slopes at the points of a table such that the cubic through them keeps every rise a rise and every fall a fall.
///
/// Inner slopes: weighted harmonic mean of the neighbouring secants, zero at a turn; ends: three-point formula, kept
/// within the same bound. Source: F. N. Fritsch and J. Butland 1984, A method for constructing local monotone
/// piecewise cubic interpolants, SIAM J. Sci. Stat. Comput. 5. Needs `x` strictly rising; slices of equal length.
pub(crate) fn slopes(x: &[f64], y: &[f64], slope: &mut [f64]) {
    let n = x.len().min(y.len()).min(slope.len());
    if n < 2 {
        slope.fill(0.0);
        return;
    }
    let secant = |i: usize| (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    let width = |i: usize| x[i + 1] - x[i];
    if n == 2 {
        slope[..2].fill(secant(0));
        return;
    }
    #[allow(clippy::needless_range_loop)] // Neighbours on both sides are read.
    for i in 1..n - 1 {
        let (before, after) = (secant(i - 1), secant(i));
        slope[i] = if before * after > 0.0 {
            let (a, b) = (2.0 * width(i) + width(i - 1), width(i) + 2.0 * width(i - 1));
            (a + b) / (a / before + b / after)
        } else {
            0.0
        };
    }
    slope[0] = end(width(0), width(1), secant(0), secant(1));
    slope[n - 1] = end(width(n - 2), width(n - 3), secant(n - 2), secant(n - 3));
}

/// One-sided slope at an end, from the nearest two widths and secants.
fn end(near: f64, next: f64, secant: f64, secant_next: f64) -> f64 {
    let slope = ((2.0 * near + next) * secant - near * secant_next) / (near + next);
    if slope * secant <= 0.0 {
        0.0
    } else if secant * secant_next <= 0.0 && slope.abs() > 3.0 * secant.abs() {
        3.0 * secant
    } else {
        slope
    }
}

/// The cubic on an interval of width `h` at the fraction `t` of it, ends `a`, `b` with slopes `ma`, `mb`.
pub(crate) fn hermite(t: f64, h: f64, a: f64, b: f64, ma: f64, mb: f64) -> f64 {
    let (t2, u) = (t * t, 1.0 - t);
    let u2 = u * u;
    a * u2 * (1.0 + 2.0 * t) + b * t2 * (3.0 - 2.0 * t) + h * t * u * (ma * u - mb * t)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keeps_the_points_and_their_order() {
        let x = [0.0, 1.0, 1.5, 4.0, 5.0];
        let y = [0.0, 0.1, 3.0, 3.1, 9.0];
        let mut m = [0.0; 5];
        slopes(&x, &y, &mut m);
        for i in 0..4 {
            let h = x[i + 1] - x[i];
            let mut last = y[i];
            for k in 0..=50 {
                let now = hermite(f64::from(k) / 50.0, h, y[i], y[i + 1], m[i], m[i + 1]);
                assert!(now >= last - 1e-12 && now <= y[i + 1] + 1e-12);
                last = now;
            }
            assert!((last - y[i + 1]).abs() < 1e-12);
        }
    }

    #[test]
    fn a_straight_line_stays_straight() {
        let x = [0.0, 1.0, 3.0, 4.0];
        let y = x.map(|x| 2.0 * x + 1.0);
        let mut m = [0.0; 4];
        slopes(&x, &y, &mut m);
        assert!(m.iter().all(|m| (m - 2.0).abs() < 1e-12));
        assert!((hermite(0.3, 2.0, 3.0, 7.0, 2.0, 2.0) - 4.2).abs() < 1e-12);
    }
}
