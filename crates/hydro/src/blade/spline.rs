//! Monotone cubic spline (PCHIP): no overshoot between readings.

/// Monotone piecewise cubic Hermite interpolation (F. N. Fritsch & J. Butland 1984, SIAM J. Sci. Stat. Comput. 5; three-point
/// ends held monotone). Straight beyond the ends.
#[derive(Clone, Debug, Default)]
pub(super) struct Spline {
    x: Vec<f64>,
    y: Vec<f64>,
    slope: Vec<f64>,
}

impl Spline {
    /// Through `points`, whose `x` rise strictly (points that do not are left out).
    pub(super) fn through(points: impl IntoIterator<Item = (f64, f64)>) -> Spline {
        let mut spline = Spline::default();
        for (x, y) in points {
            if spline.x.last().is_none_or(|&last| x > last + 1e-12) {
                spline.x.push(x);
                spline.y.push(y);
            }
        }
        spline.slope = slopes(&spline.x, &spline.y);
        spline
    }

    /// Value at `x`.
    pub(super) fn at(&self, x: f64) -> f64 {
        let n = self.x.len();
        if n == 0 {
            return 0.0;
        }
        if x <= self.x[0] {
            return self.y[0] + self.slope[0] * (x - self.x[0]);
        }
        if x >= self.x[n - 1] {
            return self.y[n - 1] + self.slope[n - 1] * (x - self.x[n - 1]);
        }
        let i = self.x.partition_point(|&k| k <= x) - 1;
        let h = self.x[i + 1] - self.x[i];
        let t = (x - self.x[i]) / h;
        let (t2, t3) = (t * t, t * t * t);
        self.y[i] * (2.0 * t3 - 3.0 * t2 + 1.0)
            + h * self.slope[i] * (t3 - 2.0 * t2 + t)
            + self.y[i + 1] * (3.0 * t2 - 2.0 * t3)
            + h * self.slope[i + 1] * (t3 - t2)
    }
}

fn slopes(x: &[f64], y: &[f64]) -> Vec<f64> {
    let n = x.len();
    if n < 2 {
        return vec![0.0; n];
    }
    let h: Vec<f64> = x.windows(2).map(|p| p[1] - p[0]).collect();
    let d: Vec<f64> = y.windows(2).zip(&h).map(|(p, h)| (p[1] - p[0]) / h).collect();
    if n == 2 {
        return vec![d[0]; 2];
    }
    let mut slope = vec![end(h[0], h[1], d[0], d[1])];
    for i in 1..n - 1 {
        slope.push(if d[i - 1] * d[i] <= 0.0 {
            0.0
        } else {
            let (a, b) = (2.0 * h[i] + h[i - 1], h[i] + 2.0 * h[i - 1]);
            (a + b) / (a / d[i - 1] + b / d[i])
        });
    }
    slope.push(end(h[n - 2], h[n - 3], d[n - 2], d[n - 3]));
    slope
}

/// Slope at an end: three points, held to the sense of the first piece.
fn end(h0: f64, h1: f64, d0: f64, d1: f64) -> f64 {
    let slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if slope * d0 <= 0.0 {
        0.0
    } else if d0 * d1 < 0.0 && slope.abs() > 3.0 * d0.abs() {
        3.0 * d0
    } else {
        slope
    }
}

/// `∫ f dx` from `a` to `b` by Simpson's rule on `2 n` strips.
pub(super) fn integral(a: f64, b: f64, n: u16, mut f: impl FnMut(f64) -> f64) -> f64 {
    let strips = 2 * n.max(1);
    let h = (b - a) / f64::from(strips);
    let mut sum = f(a) + f(b);
    for i in 1..strips {
        sum += f(a + h * f64::from(i)) * if i % 2 == 1 { 4.0 } else { 2.0 };
    }
    sum * h / 3.0
}

#[cfg(test)]
mod tests {
    use super::{Spline, integral};

    #[test]
    fn keeps_straight_lines_and_does_not_overshoot() {
        let line = Spline::through([(0.0, 1.0), (1.0, 3.0), (4.0, 9.0)]);
        for x in [-1.0, 0.5, 2.0, 6.0] {
            assert!((line.at(x) - (1.0 + 2.0 * x)).abs() < 1e-12, "{x}");
        }
        let step = Spline::through([(0.0, 0.0), (1.0, 0.0), (2.0, 1.0), (3.0, 1.0)]);
        for i in 0..=300 {
            let y = step.at(f64::from(i) / 100.0);
            assert!((0.0..=1.0).contains(&y), "{y}");
        }
    }

    #[test]
    fn passes_its_points_and_takes_none() {
        let s = Spline::through([(0.0, 1.0), (0.3, 1.4), (0.9, 0.2), (1.0, 0.0)]);
        assert!((s.at(0.3) - 1.4).abs() < 1e-12 && (s.at(0.9) - 0.2).abs() < 1e-12);
        assert_eq!(Spline::through([]).at(1.0), 0.0);
        assert_eq!(Spline::through([(1.0, 2.0)]).at(7.0), 2.0);
    }

    #[test]
    fn simpson_is_exact_for_cubics() {
        assert!((integral(0.0, 2.0, 1, |x| x * x * x) - 4.0).abs() < 1e-12);
    }
}
