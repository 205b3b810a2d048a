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

/// Displacement boats, over the length Froude number.
///
/// No open measurement of small power boats was found. A model series outside which they lie scatters 10 to 15 %; the
/// handbook speed formula meets eleven real boats within about 8 % of speed, which is a quarter of the power.
const DISPLACEMENT: Shape = Shape {
    anchors: [0.20, 0.36, 0.50],
    sd: [0.15, 0.15, 0.18],
    basis: "estimate: a ship regression carried to small boats; a handbook speed formula meets real boats within 8 % of speed",
};
/// Sailing yachts, over the length Froude number.
///
/// The 1981 polynomial against 308 measurements of its own models: root mean square of the residuary resistance 0.55 of
/// its mean at Fn 0.15 or below, 0.15 at 0.20, 0.06 at 0.30, 0.03 at 0.45; friction, sure within a few per cent, is most
/// of the total at low speed. A yacht outside the series and its appendages add the rest (estimate).
const SAILING: Shape = Shape {
    anchors: [0.20, 0.36, 0.50],
    sd: [0.10, 0.09, 0.10],
    basis: "yacht series against 308 measurements (3 to 15 % of the residuary part), enlarged for yachts outside it: estimate",
};
/// Semi-displacement boats, over the volume Froude number.
const SEMI_DISPLACEMENT: Shape = Shape {
    anchors: [0.8, 1.5, 2.6],
    sd: [0.15, 0.13, 0.14],
    basis: "estimate: no open measurement; methods differ by 10 to 20 % on the same hull",
};
/// Planing boats, over the volume Froude number.
const PLANING: Shape = Shape {
    anchors: [0.8, 1.6, 3.5],
    sd: [0.18, 0.15, 0.13],
    basis: "estimate: the planing equations meet their own example within 3 %, real boats at full throttle scatter 10 to 15 %",
};

impl Shape {
    /// The error of the methods [`total`](super::total) uses for a kind.
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
            for z in [[2.0, -2.0, 2.0], [-1.0, 1.0, 0.5]] {
                let mut last = factor(kind, 0.0, z);
                for i in 1..2000 {
                    let now = factor(kind, 0.002 * f64::from(i), z);
                    assert!((now / last - 1.0).abs() < 0.02, "{kind:?} at {i}");
                    last = now;
                }
            }
        }
    }
}
