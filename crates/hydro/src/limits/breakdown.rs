//! Loss of thrust and torque when the blades cavitate.
//!
//! When the whole back of the blades has turned to vapour, thrust cannot grow any more: what is left is the pressure above that
//! of vapour times the projected area, plus what the face gives. In coefficients this is `τc = 1.2 σ`, in newtons simply
//! `T = 1.2 (p - pv) AP`, at any speed: the speeds cancel.

use super::burrill::projected_area_ratio;
use crate::openwater::Screw;
use crate::source::{Method, Trust};
use crate::water::Water;
use std::f64::consts::PI;

/// The limit and the way to it.
pub const METHOD: Method = Method {
    name: "cavitation-breakdown",
    quantity: "share of thrust and torque left when cavitating",
    formula: "x = K/Kmax, left = (1 + x^3)/(1 + x^3 + x^4); Tmax = 1.2 (p - pv) AP, Qmax = 1.2 * 0.200 (P/D) (p - pv) AP D",
    range: "flat-faced three-bladed screws, AD/A0 0.5 to 1.1, P/D 1.0 to 1.4, x to 1.6 (a third of the thrust left)",
    error: "0.07 of thrust, 0.04 of torque (root mean square against 38 points of Radojcic 1988); for airfoil sections not known",
    source: "limits D. L. Blount & D. L. Fox 1978, Design considerations for propellers in a cavitating environment, Marine \
             Technology 15 (from memory); the transition is ours, fitted to D. Radojcic 1988 (one copy), who also asks for 1.2 \
             times their torque limit",
    trust: Trust::Memory,
};

/// `τc/σ` of a fully cavitating flat-faced screw (Blount & Fox 1978, from memory).
pub const THRUST_LIMIT: f64 = 1.2;
/// `Qc/(σ P/D)` of the same (Blount & Fox 1978, from memory).
pub const TORQUE_LIMIT: f64 = 0.200;
/// What the torque limit is multiplied with to agree with Radojcic's decrements (the best fit is 1.24, the minimum is flat).
/// For thrust the best fit is 1.04, so there the limit stands as it is.
pub const TORQUE_LIMIT_FACTOR: f64 = 1.2;

/// Thrust and torque limit of one screw in one water: made once per definite boat, applied inside the balance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Breakdown {
    /// Static pressure above vapour pressure at the shaft, Pa.
    pub head: f64,
    /// `ρ D⁴ / Tmax`, s²: times `n² KT` it is the load over the limit.
    thrust: f64,
    /// `ρ D⁵ / Qmax`, s².
    torque: f64,
    /// Nozzle and screw share the thrust.
    ducted: bool,
}

impl Breakdown {
    /// `head_pressure` is atmosphere plus `ρ g h` at the shaft centre, Pa.
    ///
    /// Cup is counted as pitch only; that cupped blades hold on longer is common practice without a number. In a nozzle the
    /// thrust loses the same share as the torque (assumed, no source).
    #[must_use]
    pub fn new(screw: &Screw, water: &Water, head_pressure: f64) -> Breakdown {
        // At least 100 Pa, so that a water at boiling point still divides.
        let head = (head_pressure - water.vapour_pressure).max(100.0);
        let pitch = screw.effective_pitch_ratio().clamp(0.25, 2.5);
        let disc = PI / 4.0 * screw.diameter * screw.diameter;
        let area = (disc * projected_area_ratio(screw.expanded_area_ratio, pitch)).max(1e-9);
        let square = screw.diameter * screw.diameter;
        let thrust = water.density * square * square / (THRUST_LIMIT * head * area);
        let torque = water.density * square * square / (TORQUE_LIMIT_FACTOR * TORQUE_LIMIT * pitch * head * area);
        Breakdown { head, thrust, torque, ducted: screw.ducted }
    }

    /// The same screw with limits `factor` times as high: blades that hold on longer than the flat-faced series.
    #[must_use]
    pub fn eased(self, factor: f64) -> Breakdown {
        let factor = if factor.is_finite() { factor.clamp(0.2, 10.0) } else { 1.0 };
        Breakdown { thrust: self.thrust / factor, torque: self.torque / factor, ..self }
    }

    /// Thrust and torque coefficients left at shaft speed `n` (rev/s).
    ///
    /// Smooth in all arguments; both grow steadily with what the screw would give without cavitation. The speed of advance
    /// cancels out and is taken only because a caller should not need to know that.
    #[must_use]
    #[inline]
    pub fn limit(&self, _va: f64, n: f64, kt: f64, kq: f64) -> (f64, f64) {
        let square = n * n;
        let torque = left(square * kq * self.torque);
        let thrust = if self.ducted { torque } else { left(square * kt * self.thrust) };
        (kt * thrust, kq * torque)
    }

    /// Share of thrust lost, 0 to 1, at shaft speed `n` (rev/s) for the coefficients without cavitation.
    #[must_use]
    #[inline]
    pub fn thrust_lost(&self, n: f64, kt: f64, kq: f64) -> f64 {
        let load = if self.ducted { kq * self.torque } else { kt * self.thrust };
        1.0 - left(n * n * load)
    }

    /// Load over the limit of thrust (of torque in a nozzle): below 0.3 less than 1 % is lost, at 1 a third.
    #[must_use]
    pub fn load(&self, n: f64, kt: f64, kq: f64) -> f64 {
        n * n * if self.ducted { kq * self.torque } else { kt * self.thrust }
    }
}

/// Share left at a load `x` over the limit: 1 at first, `1/x` in the end, `x left(x)` monotone, two multiplications and one division.
#[inline]
fn left(x: f64) -> f64 {
    let x = x.max(0.0);
    let cube = x * x * x;
    // Beyond any real load the cube would overflow.
    if x > 1e6 {
        return 1.0 / x;
    }
    (1.0 + cube) / (1.0 + cube + cube * x)
}

#[cfg(test)]
mod tests {
    use super::left;

    #[test]
    fn what_is_left_grows_with_the_load_and_ends_at_the_limit() {
        let mut before = 0.0;
        for i in 1..4000 {
            let x = 0.01 * f64::from(i);
            assert!(x * left(x) > before, "{x}");
            before = x * left(x);
        }
        assert!((1000.0 * left(1000.0) - 1.0).abs() < 2e-3);
        assert!(left(0.3) > 0.99 && (left(-1.0) - 1.0).abs() < 1e-15);
    }
}
