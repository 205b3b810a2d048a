//! A resistance somebody measured: towed points made a curve.

use super::curve::Curve;
use super::form::Form;
use super::friction::ittc57;
use super::interpolate;
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use crate::water::Water;

/// Points towed by somebody.
pub const METHOD: Method = Method {
    name: "towed-points",
    quantity: "resistance over speed, N",
    formula: "monotone cubic through the points; V^2 from rest to the first, V^2 beyond the last",
    range: "the towed speeds",
    error: "the measurement's own, commonly 5 % with a spring balance; at another weight also the scaling's",
    source: "interpolation: Fritsch and Butland 1984; scaling: friction with the square root of displacement (wetted area at \
             one length), the rest with its 4/3 power (the form of Keuning and Sonnenberg 1998)",
    trust: Trust::CommonPractice,
};

/// Most points used of a measurement.
pub const MOST: usize = 32;

/// What was towed, cleaned: rising speeds, positive forces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Towed {
    points: usize,
    speed: [f64; MOST],
    force: [f64; MOST],
    slope: [f64; MOST],
}

/// Why points do not make a curve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unusable {
    /// No point with a positive speed and force was given.
    NoPoints,
    /// More points than are used ([`MOST`]).
    TooMany,
    /// A speed or force is not a positive number.
    NotPositive,
    /// A speed stands twice.
    SpeedTwice,
}

impl Towed {
    /// Sorts points (speed m/s, force N) and makes the curve through them. A point at rest with no force is dropped.
    ///
    /// # Errors
    /// [`Unusable`] tells what is wrong with the points.
    pub fn new(points: &[(f64, f64)]) -> Result<Towed, Unusable> {
        let mut towed = Towed { points: 0, speed: [0.0; MOST], force: [0.0; MOST], slope: [0.0; MOST] };
        for &(speed, force) in points.iter().filter(|point| **point != (0.0, 0.0)) {
            if !(speed > 0.0 && force > 0.0 && speed.is_finite() && force.is_finite()) {
                return Err(Unusable::NotPositive);
            }
            let n = towed.points;
            if n == MOST {
                return Err(Unusable::TooMany);
            }
            let at = towed.speed[..n].partition_point(|known| *known < speed);
            if at < n && towed.speed[at] == speed {
                return Err(Unusable::SpeedTwice);
            }
            towed.speed.copy_within(at..n, at + 1);
            towed.force.copy_within(at..n, at + 1);
            (towed.speed[at], towed.force[at]) = (speed, force);
            towed.points += 1;
        }
        let n = towed.points;
        if n == 0 {
            return Err(Unusable::NoPoints);
        }
        interpolate::slopes(&towed.speed[..n], &towed.force[..n], &mut towed.slope[..n]);
        Ok(towed)
    }

    /// Resistance at a speed (m/s), N, and whether the speed was towed.
    #[must_use]
    pub fn at(&self, speed: f64) -> Noted<f64> {
        let n = self.points;
        let (first, last) = (self.speed[0], self.speed[n - 1]);
        let square = |i: usize| self.force[i] * (speed.max(0.0) / self.speed[i]).powi(2);
        let mut notes = Notes::NONE;
        let value = if speed <= first {
            notes.add_if(speed < 0.999 * first, Note::OutsideTowedSpeeds);
            square(0)
        } else if speed >= last {
            notes.add_if(speed > 1.001 * last, Note::OutsideTowedSpeeds);
            square(n - 1)
        } else {
            let i = self.speed[..n].partition_point(|known| *known <= speed).clamp(1, n - 1) - 1;
            let h = self.speed[i + 1] - self.speed[i];
            let t = (speed - self.speed[i]) / h;
            interpolate::hermite(t, h, self.force[i], self.force[i + 1], self.slope[i], self.slope[i + 1])
        };
        Noted::new(if value.is_finite() { value } else { 0.0 }, notes)
    }

    /// The curve up to `top_speed` (m/s) at the weight it was towed at.
    #[must_use]
    pub fn curve(&self, top_speed: f64) -> Noted<Curve> {
        let mut notes = Notes::NONE;
        notes.add_if(top_speed > 1.001 * self.speed[self.points - 1], Note::OutsideTowedSpeeds);
        Noted::new(Curve::tabulate(top_speed.max(0.1), |speed| self.at(speed).value), notes)
    }

    /// The curve up to `top_speed` (m/s) for the hull `form` (which holds the weight wanted) when it was towed at
    /// `towed_mass` (kg) and the same waterline length.
    ///
    /// Friction (1957 line on the canoe body's wetted area at the towed weight, at most the measured force) goes with
    /// `√mass`, the rest with `mass^(4/3)`. Noted when the weights differ by more than 2 %; beyond ±25 % held there.
    #[must_use]
    pub fn curve_at(&self, form: &Form, water: &Water, towed_mass: f64, top_speed: f64) -> Noted<Curve> {
        let ratio = if towed_mass > 0.0 { (form.mass / towed_mass).clamp(0.75, 1.25) } else { 1.0 };
        let Noted { mut notes, .. } = self.curve(top_speed);
        notes.add_if((ratio - 1.0).abs() > 0.02, Note::TowedAtOtherWeight);
        let (friction, rest) = (ratio.sqrt(), ratio.cbrt() * ratio);
        let length = form.length.max(0.5);
        let volume = form.mass / ratio / water.density;
        let (beam, draught) = (form.beam.max(0.1), form.draught.max(0.03));
        let wetted = super::delft::wetted_area(length, beam, draught, volume, form.midship.clamp(0.3, 1.0));
        let curve = Curve::tabulate(top_speed.max(0.1), |speed| {
            let force = self.at(speed).value;
            let plate = 0.5 * water.density * speed * speed * wetted * ittc57(speed * 0.7 * length / water.viscosity);
            let smooth = plate.min(force);
            smooth * friction + (force - smooth) * rest
        });
        Noted::new(curve, notes)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn goes_through_its_points_in_any_order() {
        let points = [(3.0, 900.0), (1.0, 80.0), (2.0, 350.0), (0.0, 0.0), (3.5, 1900.0)];
        let towed = Towed::new(&points).unwrap();
        for (speed, force) in points {
            assert!((towed.at(speed).value - force).abs() < 1e-9, "{speed}");
        }
        let mut last = 0.0;
        for i in 0..=500 {
            let now = towed.at(0.01 * f64::from(i));
            assert!(now.value >= last && now.value.is_finite());
            last = now.value;
        }
        assert!(towed.at(5.0).notes.has(Note::OutsideTowedSpeeds) && towed.at(2.5).notes.is_empty());
    }

    #[test]
    fn refuses_what_is_no_measurement() {
        assert_eq!(Towed::new(&[]), Err(Unusable::NoPoints));
        assert_eq!(Towed::new(&[(1.0, f64::NAN)]), Err(Unusable::NotPositive));
        assert_eq!(Towed::new(&[(1.0, -3.0)]), Err(Unusable::NotPositive));
        assert_eq!(Towed::new(&[(1.0, 3.0), (1.0, 4.0)]), Err(Unusable::SpeedTwice));
        assert_eq!(Towed::new(&[(1.0, 3.0); 40]), Err(Unusable::SpeedTwice));
    }

    #[test]
    fn a_single_point_is_a_square_law() {
        let towed = Towed::new(&[(2.0, 400.0)]).unwrap();
        assert!((towed.at(1.0).value - 100.0).abs() < 1e-9 && (towed.at(4.0).value - 1600.0).abs() < 1e-9);
    }
}
