//! The total resistance of one definite hull, tabulated over speed.

use super::shape::Shape;

/// Points in a tabulated curve.
pub const POINTS: usize = 24;

/// Total resistance over boat speed on an even grid from rest, `R(0) = 0`; smooth between points, continued beyond the
/// last by its last slope (level when that falls). Small and `Copy`, so that a crowd of boats lies flat in memory.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    /// Step of speed between points, m/s; point `i` stands at `i * step`.
    pub step: f64,
    /// Resistance at each point, N.
    pub resistance: [f64; POINTS],
}

impl Curve {
    /// Tabulates `resistance(speed)` up to `top_speed`, m/s.
    pub fn tabulate(top_speed: f64, mut resistance: impl FnMut(f64) -> f64) -> Curve {
        let step = top_speed / (POINTS - 1) as f64;
        let mut table = [0.0; POINTS];
        for (i, point) in table.iter_mut().enumerate().skip(1) {
            *point = resistance(i as f64 * step);
        }
        Curve { step, resistance: table }
    }

    /// Highest tabulated speed, m/s.
    #[must_use]
    pub fn top_speed(&self) -> f64 {
        self.step * (POINTS - 1) as f64
    }

    /// Resistance at `speed` (m/s), N: Catmull-Rom cubic between points, straight beyond the last.
    #[must_use]
    pub fn at(&self, speed: f64) -> f64 {
        let x = (speed / self.step).max(0.0);
        let r = &self.resistance;
        if x >= (POINTS - 1) as f64 {
            // Past a hump the last slope may fall; carried on for long it would end below nothing.
            let slope = (1.5 * r[POINTS - 1] - 2.0 * r[POINTS - 2] + 0.5 * r[POINTS - 3]).max(0.0);
            return r[POINTS - 1] + slope * (x - (POINTS - 1) as f64);
        }
        let i = x as usize;
        let t = x - i as f64;
        let before = if i == 0 { r[1] } else { r[i - 1] };
        let after = if i + 2 < POINTS { r[i + 2] } else { 3.0 * r[i + 1] - 3.0 * r[i] + before };
        let (p, q) = (r[i], r[i + 1]);
        let m0 = 0.5 * (q - before);
        let m1 = 0.5 * (after - p);
        let t2 = t * t;
        let t3 = t2 * t;
        (2.0 * t3 - 3.0 * t2 + 1.0) * p + (t3 - 2.0 * t2 + t) * m0 + (3.0 * t2 - 2.0 * t3) * q + (t3 - t2) * m1
    }

    /// The same boat with the method wrong by `shape` for standard normal numbers `z`; `unit_speed` is the speed (m/s) at
    /// which the Froude number of the shape is 1 (see [`unit_speed`](super::shape::unit_speed)).
    #[must_use]
    pub fn with_error(&self, shape: &Shape, unit_speed: f64, z: [f64; 3]) -> Curve {
        self.map(|speed, resistance| resistance * shape.factor(speed / unit_speed, z))
    }

    /// Each point changed by `f(speed, resistance)`; rest stays at rest.
    #[must_use]
    pub fn map(&self, mut f: impl FnMut(f64, f64) -> f64) -> Curve {
        let mut changed = *self;
        for (i, point) in changed.resistance.iter_mut().enumerate().skip(1) {
            *point = f(i as f64 * self.step, *point);
        }
        changed
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hull::form::Kind;

    #[test]
    fn a_square_law_is_met_between_points() {
        let curve = Curve::tabulate(10.0, |v| 3.0 * v * v);
        for i in 1..100 {
            let v = 0.1 * f64::from(i);
            assert!((curve.at(v) - 3.0 * v * v).abs() < 0.05, "{v}");
        }
        assert_eq!(curve.at(0.0), 0.0);
    }

    #[test]
    fn a_falling_end_does_not_turn_negative() {
        let curve = Curve::tabulate(10.0, |v| 100.0 * v * (-0.3 * v).exp());
        assert!(curve.at(1000.0) > 0.0);
    }

    #[test]
    fn error_leaves_rest_alone_and_scales_the_anchor() {
        let curve = Curve::tabulate(8.0, |v| v * v);
        let shape = Shape::of(Kind::Planing);
        let unit = 8.0 / shape.anchors[2];
        let wrong = curve.with_error(&shape, unit, [0.0, 0.0, 1.0]);
        assert_eq!(wrong.at(0.0), 0.0);
        assert!((wrong.at(8.0) / 64.0 - shape.sd[2].exp()).abs() < 1e-12);
    }
}
