//! The total resistance of one definite hull, tabulated over speed.

/// Points in a tabulated curve.
pub const POINTS: usize = 24;

/// Total resistance over boat speed on an even grid from rest, `R(0) = 0`; smooth between points, continued beyond the
/// last by its last slope. Small and `Copy`, so that a crowd of boats lies flat in memory.
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
            let slope = r[POINTS - 1] - r[POINTS - 2];
            return r[POINTS - 1] + slope * (x - (POINTS - 1) as f64);
        }
        let i = x as usize;
        let t = x - i as f64;
        let before = if i == 0 { r[1] } else { r[i - 1] };
        let after = if i + 2 < POINTS { r[i + 2] } else { 2.0 * r[i + 1] - r[i] };
        let (p, q) = (r[i], r[i + 1]);
        let m0 = 0.5 * (q - before);
        let m1 = 0.5 * (after - p);
        let t2 = t * t;
        let t3 = t2 * t;
        (2.0 * t3 - 3.0 * t2 + 1.0) * p + (t3 - 2.0 * t2 + t) * m0 + (3.0 * t2 - 2.0 * t3) * q + (t3 - t2) * m1
    }
}
