//! Open-water characteristics of one propeller, ready for the balance.

use super::polynomial::{Polynomials, slope, value};

/// Open-water characteristics of one screw: polynomials in the advance ratio `J = Va/(nD)`.
///
/// The polynomials hold from `J` 0 (the bollard) to `zero_thrust`. [`Curves::thrust`] and [`Curves::torque`] go on in a straight
/// line beyond it, so that thrust stays monotone and a root can be found from any side, and keep their bollard value below 0.
/// Values beyond either end are for the solver, not for a person.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curves {
    /// `KT = Σ kt[i] J^i`.
    pub kt: [f64; 8],
    /// `KQ = Σ kq[i] J^i`.
    pub kq: [f64; 8],
    /// The advance ratio at which thrust vanishes.
    pub zero_thrust: f64,
}

impl Curves {
    /// Limits polynomials to where they hold. `pitch_ratio` (effective) sets the step of the search for zero thrust.
    #[must_use]
    pub fn new(polynomials: &Polynomials, pitch_ratio: f64) -> Curves {
        let Polynomials { kt, kq } = *polynomials;
        Curves { kt, kq, zero_thrust: first_root(&kt, pitch_ratio) }
    }

    /// Thrust coefficient `KT = T/(ρ n² D⁴)`.
    #[must_use]
    #[inline]
    pub fn thrust(&self, advance_ratio: f64) -> f64 {
        if advance_ratio <= self.zero_thrust {
            value(&self.kt, advance_ratio.max(0.0))
        } else {
            // The slope is held negative in case the fit is flat there.
            slope(&self.kt, self.zero_thrust).min(-0.05) * (advance_ratio - self.zero_thrust)
        }
    }

    /// Torque coefficient `KQ = Q/(ρ n² D⁵)`.
    #[must_use]
    #[inline]
    pub fn torque(&self, advance_ratio: f64) -> f64 {
        if advance_ratio <= self.zero_thrust {
            value(&self.kq, advance_ratio.max(0.0))
        } else {
            let end = self.zero_thrust;
            value(&self.kq, end) + slope(&self.kq, end).min(0.0) * (advance_ratio - end)
        }
    }

    /// Open-water efficiency `η0 = J KT / (2π KQ)`; nothing where there is no thrust.
    #[must_use]
    pub fn efficiency(&self, advance_ratio: f64) -> f64 {
        if !(advance_ratio > 0.0 && advance_ratio < self.zero_thrust) {
            return 0.0;
        }
        let torque = self.torque(advance_ratio);
        if torque > 0.0 {
            (advance_ratio * self.thrust(advance_ratio) / (std::f64::consts::TAU * torque)).max(0.0)
        } else {
            0.0
        }
    }

    /// The curves with thrust and torque multiplied (an error of the series, blades not as the series). Zero thrust stays.
    #[must_use]
    pub fn scaled(&self, thrust: f64, torque: f64) -> Curves {
        Curves { kt: self.kt.map(|c| c * thrust), kq: self.kq.map(|c| c * torque), zero_thrust: self.zero_thrust }
    }

    /// The advance ratio of greatest open-water efficiency and that efficiency, to 1e-6 in `J`.
    ///
    /// The best of 32 equal steps, refined by golden section: some fits have a second, false maximum.
    #[must_use]
    pub fn best(&self) -> (f64, f64) {
        let step = self.zero_thrust / 32.0;
        let mut best = (0.0, 0.0);
        for i in 1..32_u8 {
            let j = step * f64::from(i);
            let eta = self.efficiency(j);
            if eta > best.1 {
                best = (j, eta);
            }
        }
        const GOLDEN: f64 = 0.618_033_988_749_894_8;
        let (mut low, mut high) = (best.0 - step, best.0 + step);
        while high - low > 1e-6 {
            let (left, right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
            if self.efficiency(left) < self.efficiency(right) {
                low = left;
            } else {
                high = right;
            }
        }
        let j = 0.5 * (low + high);
        (j, self.efficiency(j))
    }
}

/// First `J` above 0 where thrust vanishes: steps of a tenth of the pitch ratio, then Newton kept inside the step.
///
/// 0 when there is no thrust at the bollard; three times the pitch ratio when it never vanishes (no fit here does that).
fn first_root(kt: &[f64; 8], pitch_ratio: f64) -> f64 {
    if kt[0].is_nan() || kt[0] <= 0.0 {
        return 0.0;
    }
    let step = if pitch_ratio > 0.3 { 0.1 * pitch_ratio } else { 0.03 };
    let mut low = 0.0;
    let mut steps = 0;
    let mut high = loop {
        let next = low + step;
        if value(kt, next) <= 0.0 {
            break next;
        }
        low = next;
        steps += 1;
        if steps == 30 {
            return low;
        }
    };
    let mut x = 0.5 * (low + high);
    for _ in 0..40 {
        let y = value(kt, x);
        if y > 0.0 {
            low = x;
        } else {
            high = x;
        }
        let next = x - y / slope(kt, x);
        let next = if next > low && next < high { next } else { 0.5 * (low + high) };
        let moved = (next - x).abs();
        x = next;
        if moved < 1e-12 {
            break;
        }
    }
    x
}

#[cfg(test)]
mod tests {
    use super::Curves;
    use crate::openwater::polynomial::Polynomials;

    #[test]
    fn the_first_root_is_taken_and_thrust_falls_beyond_it() {
        // Roots at 1 and 1.5: beyond 1 the polynomial itself turns up again.
        let kt = [0.6, -1.0, 0.4, 0.0, 0.0, 0.0, 0.0, 0.0];
        let kq = [0.08, -0.06, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0];
        let curves = Curves::new(&Polynomials { kt, kq }, 0.9);
        assert!((curves.zero_thrust - 1.0).abs() < 1e-9);
        assert!(curves.thrust(1.6) < curves.thrust(1.3) && curves.thrust(1.3) < 0.0);
        assert!(curves.efficiency(1.2).abs() < 1e-15 && curves.efficiency(f64::NAN).abs() < 1e-15);
    }

    #[test]
    fn no_thrust_at_all_is_a_value() {
        let curves = Curves::new(&Polynomials { kt: [-0.1; 8], kq: [0.1; 8] }, f64::NAN);
        assert!(curves.zero_thrust.abs() < 1e-15 && curves.thrust(0.5) < 0.0);
    }
}
