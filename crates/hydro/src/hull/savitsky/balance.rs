//! The balance of moments: one unknown, the mean wetted length.

use super::{
    ALLOWANCE, Bottom, Hump, SPEED_COEFFICIENT, State, TRIM, WETTED_RATIO, centre_of_pressure, flat_lift_root,
    lift_per_trim,
};
use crate::hull::form::Parts;
use crate::hull::friction;
use crate::hull::rough_line::RoughLine;
use crate::hull::spray::{self, Spray};
use crate::note::{Note, Noted, Notes};

/// The solver looks no lower than this.
const WETTED_RATIO_FLOOR: f64 = 0.1;
/// The search ends with a step of the wetted ratio shorter than this; with the slope then known, about 1e-5 is left.
const CLOSE: f64 = 4e-3;
/// First guess of the slope of the moment: the travel of the centre of pressure, about 0.5 per unit of wetted ratio.
pub(super) const SLOPE: f64 = -0.5;

/// Where to begin the search at the next speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// Wetted ratio guessed for the next speed.
    pub(super) ratio: f64,
    /// Wetted ratio found at the last speed, and how far it had moved from the one before.
    pub(super) last: f64,
    pub(super) change: f64,
    /// Slope of the moment over the wetted ratio there.
    pub(super) slope: f64,
    /// Fifth root of the flat plate's lift coefficient there.
    pub(super) flat_root: f64,
    /// Friction coefficient there, and `V b/ν`.
    pub(super) coefficient: f64,
    pub(super) reynolds_unit: f64,
}

/// A bottom in its water, with what does not hang on speed worked out.
#[derive(Clone, Copy, Debug)]
pub struct Prepared {
    pub(super) bottom: Bottom,
    pub(super) density: f64,
    pub(super) viscosity: f64,
    pub(super) cos_beta: f64,
    pub(super) tan_beta: f64,
    pub(super) sin_thrust: f64,
    pub(super) cos_thrust: f64,
    pub(super) lever_over_beam: f64,
    /// `1/√(g b)`.
    pub(super) speed_unit: f64,
    /// `1/√(g vol^(1/3))`.
    pub(super) volume_unit: f64,
    pub(super) hump: Hump,
    pub(super) roughness: RoughLine,
    /// `0.1197 β^0.7651` and `15.7132 β^-0.2629 √½` of the porpoising limit.
    pub(super) porpoising: (f64, f64),
    pub(super) spray: Spray,
}

/// What does not change with trim, at one speed.
struct Balance<'a> {
    hull: &'a Prepared,
    lcg_over_beam: f64,
    flat: f64,
    speed_coefficient: f64,
    /// `V b/ν`.
    reynolds_unit: f64,
    /// `ρ/2 V² b²/cos β` over the carried weight.
    friction_unit: f64,
    /// `0.0065 β`.
    deadrise_loss: f64,
    /// `a - f` over the beam.
    friction_arm: f64,
    allowance: f64,
}

/// One trial of the balance.
#[derive(Clone, Copy)]
struct Trial {
    ratio: f64,
    moment: f64,
    trim_deg: f64,
    sin: f64,
    cos: f64,
    velocity_ratio_squared: f64,
}

/// Sine and cosine of a trim, by their series: within 1e-7 up to 45 degrees, where a trial ends.
#[inline]
fn sin_cos(radians: f64) -> (f64, f64) {
    let x = radians;
    let q = x * x;
    let sin = x * (1.0 - q / 6.0 * (1.0 - q / 20.0 * (1.0 - q / 42.0 * (1.0 - q / 72.0))));
    let cos = 1.0 - q / 2.0 * (1.0 - q / 12.0 * (1.0 - q / 30.0 * (1.0 - q / 56.0 * (1.0 - q / 90.0))));
    (sin, cos)
}

impl Balance<'_> {
    /// The moment about the centre of gravity, bow down positive, over weight and beam (1964, eq. 35), at wetted ratio `λ`.
    ///
    /// The lift equation gives the trim straight from `λ`, so that one unknown is left.
    /// `coefficient` of friction is frozen for the search: it moves with the sixth root of `λ` or less.
    #[inline]
    fn trial(&self, ratio: f64, coefficient: f64) -> Trial {
        let (dynamic, buoyant) = lift_per_trim(ratio, self.speed_coefficient);
        let power = self.flat / (dynamic + buoyant);
        self.at_trim(ratio, (power.ln() * (1.0 / 1.1)).exp(), dynamic * power, coefficient)
    }

    #[inline]
    fn at_trim(&self, ratio: f64, trim_deg: f64, dynamic_lift: f64, coefficient: f64) -> Trial {
        let hull = self.hull;
        let (sin, cos) = sin_cos(trim_deg.min(45.0).to_radians());
        // Bottom speed: the dynamic lift, less its loss by deadrise, slows the water along the bottom (1964, eq. 24).
        let lift = (dynamic_lift - self.deadrise_loss * (0.6 * dynamic_lift.ln()).exp()).max(0.0);
        let velocity_ratio_squared = (1.0 - lift / (ratio * cos)).max(0.3);
        let friction = self.friction_unit * velocity_ratio_squared * ratio * (coefficient + self.allowance);
        let sin_thrust = sin * hull.cos_thrust + cos * hull.sin_thrust;
        let arm = self.lcg_over_beam - centre_of_pressure(ratio, self.speed_coefficient) * ratio;
        let moment = (1.0 - sin * sin_thrust) * arm / cos - hull.lever_over_beam * sin + friction * self.friction_arm;
        Trial { ratio, moment, trim_deg, sin, cos, velocity_ratio_squared }
    }

    /// Schoenherr's coefficient on the mean wetted length and the speed along the bottom.
    fn coefficient(&self, ratio: f64, velocity_ratio_squared: f64) -> f64 {
        friction::schoenherr(self.reynolds_unit * ratio * velocity_ratio_squared.sqrt())
    }

    /// The trial at which the moments balance, or the end of the range of wetted ratios nearest to it and `false`; and
    /// the slope there. Secant steps inside a bracket that closes as it goes.
    fn solve(&self, start: f64, slope: f64, coefficient: f64) -> (Trial, f64, bool) {
        let (mut low, mut high) = (WETTED_RATIO_FLOOR, self.hull.bottom.longest_wetted_ratio);
        let (mut low_tried, mut high_tried) = (false, false);
        let mut coefficient = coefficient;
        let mut trial = self.trial(start.clamp(low, high), coefficient);
        let mut slope = slope;
        for _ in 0..40 {
            let x = trial.ratio;
            let mut next = x - trial.moment / slope;
            // A step this short ends the search: what is left after it is of second order.
            let last = (next - x).abs() < CLOSE;
            if trial.moment > 0.0 {
                if x >= high {
                    return (trial, slope, false);
                }
                (low, low_tried) = (x, true);
            } else {
                if x <= low {
                    return (trial, slope, false);
                }
                (high, high_tried) = (x, true);
            }
            if next >= high {
                next = if high_tried { 0.5 * (low + high) } else { high };
            } else if next <= low {
                next = if low_tried { 0.5 * (low + high) } else { low };
            }
            if (next - x).abs() > 0.01 * x {
                coefficient = self.coefficient(next, trial.velocity_ratio_squared);
            }
            let tried = self.trial(next, coefficient);
            if last {
                return (tried, slope, true);
            }
            let secant = (tried.moment - trial.moment) / (next - x);
            slope = if secant < -1e-3 { secant } else { SLOPE };
            trial = tried;
        }
        (trial, slope, true)
    }

    /// At the highest trim the lift equation covers: the wetted ratio follows from the lift alone.
    #[cold]
    fn at_limit(&self, start: f64) -> Trial {
        let trim = TRIM.1;
        let want = self.flat / trim.powf(1.1);
        let mut ratio = start;
        for _ in 0..60 {
            let (dynamic, buoyant) = lift_per_trim(ratio, self.speed_coefficient);
            let step = (dynamic + buoyant - want) / ((0.5 * dynamic + 2.5 * buoyant) / ratio);
            let next = (ratio - step).max(0.5 * ratio);
            let moved = next - ratio;
            ratio = next;
            if moved.abs() < 1e-9 * ratio {
                break;
            }
        }
        ratio = ratio.min(self.hull.bottom.longest_wetted_ratio);
        let (dynamic, _) = lift_per_trim(ratio, self.speed_coefficient);
        self.at_trim(ratio, trim, dynamic * trim.powf(1.1), self.coefficient(ratio, 0.95))
    }
}

impl Prepared {
    /// Running trim, wetted length and drag at `speed` (m/s, positive). `start` is where the search begins, `None` for
    /// the first speed, and is left ready for the next (higher by the same step is best); the answer does not hang on
    /// it beyond the tolerance, about 1e-5 of a beam of wetted length.
    ///
    /// Equations 15 to 37 of Savitsky 1964 with the thrust line at `ε` and its lever. When no trim balances the moments
    /// the hull is held at the last one it allows (15 degrees, or wetted over its whole length) with [`Note::TrimHeld`].
    #[must_use]
    pub fn equilibrium(&self, speed: f64, start: &mut Option<Start>) -> Noted<State> {
        let speed = speed.max(1e-3);
        let bottom = &self.bottom;
        let b = bottom.beam;
        let pressure = 0.5 * self.density * speed * speed;
        // Flaps carry a part of the weight; no more than half, beyond which the formula means nothing.
        let flap = bottom.flap;
        let flap_lift = flap.map_or(0.0, |f| f.lift(b, self.density, speed).clamp(0.0, 0.5 * bottom.weight));
        let carried = (bottom.weight - flap_lift).max(1.0);
        let lcg = (bottom.weight * bottom.lcg - flap.map_or(0.0, |f| f.moment(flap_lift, b))) / carried;
        let lift_coefficient = carried / (pressure * b * b);
        let speed_coefficient = speed * self.speed_unit;
        let deadrise_loss = 0.0065 * bottom.deadrise_deg;
        let reynolds_unit = speed * b / self.viscosity;
        let first = start.unwrap_or_else(|| {
            let ratio = lcg / (0.7 * b);
            Start {
                ratio,
                last: f64::NAN,
                change: 0.0,
                slope: SLOPE,
                flat_root: f64::INFINITY,
                coefficient: friction::schoenherr(0.97 * ratio * reynolds_unit),
                reynolds_unit,
            }
        });
        let flat_root = flat_lift_root(lift_coefficient, deadrise_loss, first.flat_root);
        let flat = flat_root.powi(5);
        let allowance = self.roughness.at(speed).max(ALLOWANCE);
        let balance = Balance {
            hull: self,
            lcg_over_beam: lcg / b,
            flat,
            speed_coefficient,
            reynolds_unit,
            friction_unit: pressure * b * b / (self.cos_beta * carried),
            deadrise_loss,
            friction_arm: (bottom.vcg - bottom.thrust_lever) / b - 0.25 * self.tan_beta,
            allowance,
        };
        // The coefficient falls with about the seventh root of speed.
        let guess = first.coefficient * (1.0 - 0.14 * (reynolds_unit / first.reynolds_unit - 1.0)).clamp(0.7, 1.3);
        let (mut trial, slope, mut balanced) = balance.solve(first.ratio, first.slope, guess);
        // Even steps of speed: the changes of the wetted ratio die away about geometrically.
        let change = if first.last.is_finite() { trial.ratio - first.last } else { 0.0 };
        let decay = if first.change == 0.0 { 0.65 } else { (change / first.change).clamp(0.0, 1.0) };
        if trial.trim_deg > TRIM.1 {
            balanced = false;
            trial = balance.at_limit(trial.ratio);
        }
        let ratio = trial.ratio;
        let tan = trial.sin / trial.cos;
        // Half of LK - LC = (b/π) tan β/tan τ; at vanishing trim it would grow without end, the hull does not.
        let half = (b * self.tan_beta / (std::f64::consts::TAU * tan.max(1e-3))).min(2.0 * b);
        let keel_wetted = ratio * b + half;
        let coefficient = balance.coefficient(ratio, trial.velocity_ratio_squared);
        *start = Some(Start {
            ratio: ratio + decay * change,
            last: ratio,
            change,
            slope,
            flat_root,
            coefficient,
            reynolds_unit,
        });
        let friction =
            balance.friction_unit * carried * trial.velocity_ratio_squared * ratio * (coefficient + allowance);
        let flap_drag = flap.map_or(0.0, |f| f.drag(flap_lift, trial.trim_deg));
        let state = State {
            trim_deg: trial.trim_deg,
            sin_trim: trial.sin,
            cos_trim: trial.cos,
            wetted_ratio: ratio,
            lift_coefficient,
            flat_lift_coefficient: flat,
            bottom_speed: speed * trial.velocity_ratio_squared.sqrt(),
            friction_coefficient: coefficient,
            allowance,
            friction,
            drag: carried * tan + friction / trial.cos + flap_drag,
            flap_drag,
            carried,
            keel_wetted,
            chine_wetted: ratio * b - half,
            draught: keel_wetted * trial.sin,
            balanced,
        };
        let mut notes = Notes::NONE;
        notes.add_if(!balanced, Note::TrimHeld);
        notes.add_if(
            !(SPEED_COEFFICIENT.0..=SPEED_COEFFICIENT.1).contains(&speed_coefficient)
                || state.trim_deg < TRIM.0
                || ratio > WETTED_RATIO
                || state.chine_wetted < 0.0,
            Note::PlaningOutsideTests,
        );
        let limit = self.porpoising.0 * (self.porpoising.1 * lift_coefficient.sqrt()).min(10.0).exp();
        notes.add_if(state.trim_deg > limit, Note::Porpoising);
        Noted::new(state, notes)
    }

    /// Resistance in parts at `speed` (m/s), hump factor and half the whisker spray
    /// ([`spray::SHARE`]) included; `start` as for
    /// [`Prepared::equilibrium`].
    #[must_use]
    pub fn parts(&self, speed: f64, start: &mut Option<Start>) -> Noted<Parts> {
        let Noted { value: state, notes } = self.equilibrium(speed, start);
        let share = state.friction_coefficient / (state.friction_coefficient + state.allowance);
        let friction = state.friction / state.cos_trim;
        let hump = self.hump.factor(speed * self.volume_unit) - 1.0;
        let parts = Parts {
            friction: friction * share,
            roughness: friction * (1.0 - share),
            wave: (state.drag - friction) + hump * state.drag,
            spray: spray::SHARE * self.spray.drag(state.sin_trim / state.cos_trim, self.density, self.viscosity, speed),
            ..Parts::default()
        };
        Noted::new(parts, notes)
    }
}
