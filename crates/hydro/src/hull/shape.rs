//! How wrong a resistance method is on a real boat: a smooth factor over speed.

use super::form::{Form, Kind};
use crate::water::{GRAVITY, Water};

/// Error of a resistance method over speed, for one kind of boat: the standard deviation of `ln R` at three anchors
/// (low speed, hump, high speed), each with an error of its own, passing smoothly into the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// Speeds of the anchors in the kind's own Froude number (see [`unit_speed`]).
    pub anchors: [f64; 3],
    /// Standard deviation of `ln R` there.
    pub sd: [f64; 3],
    /// Where the deviations come from, for a person to read.
    pub basis: &'static str,
}

/// Displacement boats, over the length Froude number: both regressions behind the choice lie 0.15 to 0.18 (root mean
/// square of `ln R`) from 17 measured yacht models, mostly low for want of a keel ([`error`](super::error)); two lifeboats at full
/// throttle (Fn 0.40) would need an overall efficiency of 0.31, so real power boats can lie 30 to 40 % higher.
const DISPLACEMENT: Shape = Shape {
    anchors: [0.20, 0.36, 0.50],
    sd: [0.18, 0.25, 0.22],
    basis: "both regressions lie 15 to 18 % from 17 measured yacht models; two real lifeboats lie about a third above the choice: enlarged, estimate",
};
/// Sailing yachts, over the length Froude number: 1981 polynomial within 0.065 to 0.075 of 17 measured models, a real
/// boat's lines included ([`error`](super::error)); above Fn 0.45 no measurement (0.09 to 0.17 between regressions).
const SAILING: Shape = Shape {
    anchors: [0.20, 0.36, 0.55],
    sd: [0.10, 0.08, 0.14],
    basis: "yacht series within 8 % of 17 measured models up to Froude number 0.45; above it the distance between regressions",
};
/// Semi-displacement boats, over the volume Froude number. One 44 ft hull with three engines implies an overall efficiency
/// of 0.58 at FnV 1.45 and 0.39 to 0.42 at 1.7 to 1.8, where 0.5 would be ordinary.
const SEMI_DISPLACEMENT: Shape = Shape {
    anchors: [0.8, 1.5, 2.6],
    sd: [0.18, 0.16, 0.18],
    basis: "estimate: five lifeboats at full throttle scatter by about 17 % in implied efficiency; methods differ as much",
};
/// Planing boats, over the volume Froude number. Fourteen outboard boats at full throttle scatter 0.25 in `ln R` with
/// weights known to 8 to 18 % and nominal bottoms (replayed in `validation`); the part of the method is about half of that.
const PLANING: Shape = Shape {
    anchors: [0.8, 1.6, 3.5],
    sd: [0.20, 0.16, 0.15],
    basis: "estimate: the planing equations meet their own example within 3 %; fourteen outboard boats scatter 25 % in all, weight and bottom unknown",
};

impl Shape {
    /// The error of the methods [`total`](super::total()) uses for a kind.
    #[must_use]
    pub const fn of(kind: Kind) -> Shape {
        match kind {
            Kind::Displacement => DISPLACEMENT,
            Kind::Sailing => SAILING,
            Kind::SemiDisplacement => SEMI_DISPLACEMENT,
            Kind::Planing => PLANING,
        }
    }

    /// Weights of the three anchors at a Froude number: their squares add to one, so that the scatter does not shrink
    /// between anchors. Smooth, constant outside the outer anchors.
    #[must_use]
    pub fn weights(&self, froude: f64) -> [f64; 3] {
        let [low, middle, high] = self.anchors;
        let turn = |from: f64, to: f64| (smooth(from, to, froude) * std::f64::consts::FRAC_PI_2).sin_cos();
        if froude < middle {
            let (sin, cos) = turn(low, middle);
            [cos, sin, 0.0]
        } else {
            let (sin, cos) = turn(middle, high);
            [0.0, cos, sin]
        }
    }

    /// Factor on the resistance, `exp(Σ sd_k w_k z_k)`, for standard normal numbers `z` (low speed, hump, high speed).
    #[must_use]
    pub fn factor(&self, froude: f64, z: [f64; 3]) -> f64 {
        let w = self.weights(froude);
        (self.sd[0] * w[0] * z[0] + self.sd[1] * w[1] * z[1] + self.sd[2] * w[2] * z[2]).exp()
    }
}

/// Factor on the resistance of a kind of boat at a Froude number (length Froude number for displacement and sailing,
/// volume Froude number for the others), see [`Shape`].
#[must_use]
pub fn factor(kind: Kind, froude: f64, z: [f64; 3]) -> f64 {
    Shape::of(kind).factor(froude, z)
}

/// Speed at which the kind's own Froude number is 1, m/s: `√(gL)` for displacement and sailing boats, `√(g vol^(1/3))`
/// for the others.
#[must_use]
pub fn unit_speed(kind: Kind, form: &Form, water: &Water) -> f64 {
    let length = match kind {
        Kind::Displacement | Kind::Sailing => form.length,
        Kind::SemiDisplacement | Kind::Planing => (form.mass / water.density).cbrt(),
    };
    (GRAVITY * length.max(0.01)).sqrt()
}

/// Rises smoothly from 0 at `from` to 1 at `to` (cubic, level at both ends).
#[must_use]
pub(super) fn smooth(from: f64, to: f64, x: f64) -> f64 {
    let t = ((x - from) / (to - from)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

#[cfg(test)]
mod tests {
    use super::*;

    const KINDS: [Kind; 4] = [Kind::Displacement, Kind::Sailing, Kind::SemiDisplacement, Kind::Planing];

    #[test]
    fn scatter_keeps_its_size_between_anchors() {
        for kind in KINDS {
            let shape = Shape::of(kind);
            for i in 0..200 {
                let froude = 0.025 * f64::from(i);
                let sum: f64 = shape.weights(froude).iter().map(|w| w * w).sum();
                assert!((sum - 1.0).abs() < 1e-12);
            }
            for k in 0..3 {
                let mut z = [0.0; 3];
                z[k] = 1.0;
                assert!((shape.factor(shape.anchors[k], z) - shape.sd[k].exp()).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn factor_is_smooth_over_speed() {
        for kind in KINDS {
            let shape = Shape::of(kind);
            let [low, middle, high] = shape.anchors;
            // Steepest slope of a weight: π/2 of a turn, 1.5 of the cubic, over the nearer pair of anchors.
            let steepest = 1.5 * std::f64::consts::FRAC_PI_2 / (middle - low).min(high - middle);
            for z in [[2.0, -2.0, 2.0], [-1.0, 1.0, 0.5]] {
                let most: f64 = (0..3).map(|k| shape.sd[k] * f64::abs(z[k])).sum::<f64>() * steepest * 0.002;
                let mut last = factor(kind, 0.0, z);
                for i in 1..2000 {
                    let now = factor(kind, 0.002 * f64::from(i), z);
                    assert!((now / last).ln().abs() <= most, "{kind:?} at {i}");
                    last = now;
                }
            }
        }
    }
}
