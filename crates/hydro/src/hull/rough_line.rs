//! Added friction of a rough bottom as a short curve over speed, for the inner loops.

use super::roughness;

/// Added friction coefficient of a rough bottom over speed: a cubic in the logarithm of speed through four values, since
/// the coefficient itself is dear and moves slowly. Within 1 % over volume Froude numbers 1 to 8.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct RoughLine {
    unit: f64,
    length: f64,
    ks: f64,
    viscosity: f64,
    /// The value at the third of the speeds.
    middle: f64,
    /// Newton's divided differences.
    c: [f64; 4],
}

/// `ln` of the volume Froude numbers it goes through: 0.9, 1.8, 3.6, 7.2.
const ROUGH_AT: [f64; 4] = [-0.105_360_5, 0.587_786_7, 1.280_933_8, 1.974_081_0];

impl RoughLine {
    /// For roughness `ks` (m) on a `length` (m); `unit` is the speed (m/s) at volume Froude number 1.
    pub(super) fn new(ks: f64, length: f64, viscosity: f64, unit: f64) -> RoughLine {
        let mut c = ROUGH_AT.map(|x| roughness::added_friction(x.exp() * unit * length / viscosity, length, ks));
        let middle = c[2];
        for order in 1..4 {
            for i in (order..4).rev() {
                c[i] = (c[i] - c[i - 1]) / (ROUGH_AT[i] - ROUGH_AT[i - order]);
            }
        }
        RoughLine { unit, length, ks, viscosity, middle, c }
    }

    /// The line for another length of the same hull, by the proportion at one speed (the proportion moves by less than
    /// 2 % over the range).
    pub(super) fn on_length(&self, length: f64) -> RoughLine {
        if self.middle <= 0.0 {
            return *self;
        }
        let speed = ROUGH_AT[2].exp() * self.unit;
        let there = roughness::added_friction(speed * length / self.viscosity, length, self.ks);
        let factor = there / self.middle;
        RoughLine { length, middle: there, c: self.c.map(|c| factor * c), ..*self }
    }

    /// Added friction coefficient at a speed, m/s.
    pub(super) fn at(&self, speed: f64) -> f64 {
        let x = (speed / self.unit).clamp(0.5, 12.0).ln();
        let [a, b, c, d] = self.c;
        a + (x - ROUGH_AT[0]) * (b + (x - ROUGH_AT[1]) * (c + (x - ROUGH_AT[2]) * d))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_line_of_added_friction_follows_the_method() {
        for ks in [5e-6, 30e-6, 150e-6, 1e-3, 5e-3] {
            let (length, unit) = (3.5, 3.4);
            let line = RoughLine::new(ks, length, 1.19e-6, unit);
            for i in 0..60 {
                let speed = unit * (1.0 + 7.0 * f64::from(i) / 59.0);
                let want = roughness::added_friction(speed * length / 1.19e-6, length, ks);
                assert!((line.at(speed) - want).abs() < 0.01 * want + 2e-6, "{ks} {speed}: {} {want}", line.at(speed));
            }
        }
    }

    #[test]
    fn another_length_by_proportion() {
        for ks in [5e-6, 30e-6, 150e-6, 1e-3] {
            let line = RoughLine::new(ks, 6.3, 1.19e-6, 3.4).on_length(3.2);
            for fnv in [1.0, 2.0, 4.0, 7.0] {
                let want = roughness::added_friction(fnv * 3.4 * 3.2 / 1.19e-6, 3.2, ks);
                assert!(
                    (line.at(fnv * 3.4) - want).abs() < 0.03 * want + 2e-6,
                    "{ks} {fnv}: {} {want}",
                    line.at(fnv * 3.4)
                );
            }
        }
    }
}
