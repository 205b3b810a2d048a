//! Planing resistance by Savitsky's equations, with the whole balance of moments.

use super::form::{Form, Parts};
use super::friction;
use super::roughness;
use super::spray::Spray;
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use crate::water::{GRAVITY, Water};

/// The register entry.
pub const METHOD: Method = Method {
    name: "savitsky-1964",
    quantity: "resistance and trim of a prismatic planing hull, N and degrees",
    formula: "CLb = CL0 - 0.0065 β CL0^0.6, CL0 = τ^1.1 (0.0120 λ^0.5 + 0.0055 λ^2.5/Cv²), D = Δ tan τ + Df/cos τ",
    range: "speed coefficient 0.60 to 13, trim 2 to 15 degrees, mean wetted length up to 4 beams",
    error: "worked example of the paper: friction within 3 %, trim within 0.1 degree (its own two densities bracket it)",
    source: "D. Savitsky, 1964, Hydrodynamic design of planing hulls, Marine Technology 1(1), 71-95, eqs 15-37",
    trust: Trust::Checked,
};

/// The register entry of the correction about the hump.
pub const METHOD_HUMP: Method = Method {
    name: "blount-fox-1976",
    quantity: "factor on the planing resistance about the hump",
    formula: "M = 0.98 + 2 (LCG/b)^1.45 exp{-2(FnV-0.85)} - 3 (LCG/b) exp{-3(FnV-0.85)}",
    range: "volume Froude number from 1; used with LCG/b 0.6 to 2.4",
    error: "not printed in what was seen",
    source: "D.L. Blount and D.L. Fox, 1976, Small-craft power prediction, Marine Technology 13(1), 14-45; from memory",
    trust: Trust::Memory,
};

/// The register entry of the flaps.
pub const METHOD_FLAP: Method = Method {
    name: "savitsky-brown-1976-flaps",
    quantity: "lift, drag and moment of transom flaps, N and N m",
    formula: "lift = 0.046 LF δ σ b ρ/2 V², drag = 0.0052 lift (τ + δ), moment = lift {0.6 b + LF (1 - σ)}",
    range: "small deflections (about 0 to 15 degrees), chord below a tenth of the wetted length",
    error: "not printed in what was seen",
    source: "D. Savitsky and P.W. Brown, 1976, Marine Technology 13(4), 381-400; from memory",
    trust: Trust::Memory,
};

/// The register entry of the porpoising limit.
pub const METHOD_PORPOISING: Method = Method {
    name: "porpoising-limit",
    quantity: "trim above which a planing boat porpoises, degrees",
    formula: "τ = 0.1197 β^0.7651 exp{15.7132 (CLb/2)^0.5 β^-0.2629}",
    range: "deadrise 10 to 30 degrees",
    error: "not known: a fit to figure 18 of Savitsky 1964, not verified",
    source: "T. Celano, 1998, fit to Savitsky 1964 figure 18; from memory",
    trust: Trust::Memory,
};

/// Standard friction allowance of the method, `ΔCF` (1964, worked example).
pub const ALLOWANCE: f64 = 0.0004;
/// Range of the speed coefficient `Cv` the lift equation was fitted in.
const SPEED_COEFFICIENT: (f64, f64) = (0.60, 13.0);
/// Range of trim, degrees.
const TRIM: (f64, f64) = (2.0, 15.0);
/// Highest mean wetted length over beam.
const WETTED_RATIO: f64 = 4.0;
/// The solver looks no lower than this.
const WETTED_RATIO_FLOOR: f64 = 0.1;
/// The search ends with a step of the wetted ratio shorter than this; with the slope then known, 1e-5 is left.
const CLOSE: f64 = 2e-3;
/// First guess of the slope of the moment: the travel of the centre of pressure, about 0.5 per unit of wetted ratio.
const SLOPE: f64 = -0.5;

/// Flaps across the transom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flap {
    /// Chord `LF`, m.
    pub chord: f64,
    /// Span over beam `σ`, 0 to 1.
    pub span_ratio: f64,
    /// Deflection down from the bottom line `δ`, degrees.
    pub deflection_deg: f64,
}

impl Flap {
    /// Lift, N: `0.046 LF δ σ b (ρ/2) V²`, `δ` in degrees.
    ///
    /// Source: Savitsky and Brown 1976 ([`METHOD_FLAP`]); from memory.
    #[must_use]
    pub fn lift(&self, beam: f64, density: f64, speed: f64) -> f64 {
        0.046 * self.chord * self.deflection_deg * self.span_ratio * beam * 0.5 * density * speed * speed
    }

    /// Drag, N, of a flap of that `lift` at trim `τ` (degrees): `0.0052 lift (τ + δ)`. Same source.
    #[must_use]
    pub fn drag(&self, lift: f64, trim_deg: f64) -> f64 {
        0.0052 * lift * (trim_deg + self.deflection_deg)
    }

    /// Moment of that `lift` about the transom, N m: `lift {0.6 b + LF (1 - σ)}`. Same source.
    #[must_use]
    pub fn moment(&self, lift: f64, beam: f64) -> f64 {
        lift * (0.6 * beam + self.chord * (1.0 - self.span_ratio))
    }
}

/// A prismatic planing bottom at a definite weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bottom {
    /// Weight `Δ`, N.
    pub weight: f64,
    /// Beam over the chines `b`, m.
    pub beam: f64,
    /// Deadrise `β`, degrees.
    pub deadrise_deg: f64,
    /// Centre of gravity forward of the transom, m.
    pub lcg: f64,
    /// Centre of gravity above the keel, m.
    pub vcg: f64,
    /// Thrust line to keel `ε`, degrees.
    pub thrust_angle_deg: f64,
    /// Distance `f` of the centre of gravity above the thrust line, normal to it, m.
    pub thrust_lever: f64,
    /// Longest mean wetted length over beam that the hull can show.
    pub longest_wetted_ratio: f64,
    /// Sand-grain roughness `ks`, m; the larger of its friction and of [`ALLOWANCE`] is used.
    pub roughness: f64,
    /// Transom flaps.
    pub flap: Option<Flap>,
}

/// How a planing hull runs at one speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Trim `τ`, degrees.
    pub trim_deg: f64,
    /// Its sine.
    pub sin_trim: f64,
    /// Its cosine.
    pub cos_trim: f64,
    /// Mean wetted length over beam `λ`.
    pub wetted_ratio: f64,
    /// Lift coefficient `CLb = Δ/(ρ/2 V² b²)` and that of the flat plate `CL0`.
    pub lift_coefficient: f64,
    /// `CL0`.
    pub flat_lift_coefficient: f64,
    /// Mean speed along the bottom `V1`, m/s.
    pub bottom_speed: f64,
    /// Friction coefficient `CF` (Schoenherr).
    pub friction_coefficient: f64,
    /// Friction allowance `ΔCF`.
    pub allowance: f64,
    /// Friction along the bottom `Df`, N.
    pub friction: f64,
    /// Resistance `D`, N: `Δ tan τ + Df/cos τ`, flaps included.
    pub drag: f64,
    /// Drag of the flaps, N.
    pub flap_drag: f64,
    /// Weight carried by the bottom (flap lift taken off), N.
    pub carried: f64,
    /// Wetted keel `LK`, m.
    pub keel_wetted: f64,
    /// Wetted chine `LC`, m (negative: the chines run dry).
    pub chine_wetted: f64,
    /// Draught of the keel at the transom, m.
    pub draught: f64,
    /// Whether the moments balance; when not, the boat is held at the last trim the hull allows.
    pub balanced: bool,
}

/// Lift coefficient of the flat plate `CL0` from `CLb = CL0 - 0.0065 β CL0^0.60`, `β` in degrees.
///
/// Source: Savitsky 1964, eq. 16. With `u = CL0^0.2` it is `u⁵ - 0.0065 β u³ = CLb`; Newton from above, to 1e-12.
#[must_use]
pub fn flat_lift(lift_coefficient: f64, deadrise_deg: f64) -> f64 {
    let k = 0.0065 * deadrise_deg;
    // Right of the root the curve rises and is convex, so Newton comes down to it without overshoot.
    let mut u = lift_coefficient.powf(0.2) + 0.62 * k.sqrt();
    for _ in 0..12 {
        let u2 = u * u;
        let step = (u2 * u * (u2 - k) - lift_coefficient) / (u2 * (5.0 * u2 - 3.0 * k)).max(1e-30);
        u -= step;
        if step.abs() < 1e-9 * u {
            break;
        }
    }
    let u2 = u * u;
    u2 * u2 * u
}

/// Lift of a flat plate over `τ^1.1`: the dynamic part `0.0120 λ^0.5` and the buoyant part `0.0055 λ^2.5/Cv²`.
///
/// Source: Savitsky 1964, eq. 15; `0.60 <= Cv <= 13`, `λ <= 4`, `τ` 2 to 15 degrees.
#[inline]
#[must_use]
pub fn lift_per_trim(wetted_ratio: f64, speed_coefficient: f64) -> (f64, f64) {
    let root = wetted_ratio.sqrt();
    let square = wetted_ratio * wetted_ratio;
    (0.0120 * root, 0.0055 * square * root / (speed_coefficient * speed_coefficient))
}

/// Centre of pressure forward of the transom over mean wetted length, `Cp = 0.75 - 1/(5.21 Cv²/λ² + 2.39)`.
///
/// Source: Savitsky 1964, eq. 21.
#[inline]
#[must_use]
pub fn centre_of_pressure(wetted_ratio: f64, speed_coefficient: f64) -> f64 {
    let q = speed_coefficient / wetted_ratio;
    0.75 - 1.0 / (5.21 * q * q + 2.39)
}

/// Added friction coefficient of a rough bottom over speed: a cubic in the logarithm of speed through four values, since
/// the coefficient itself is dear and moves slowly. Within 1 % over volume Froude numbers 1 to 8.
#[derive(Clone, Copy, Debug)]
struct RoughLine {
    unit: f64,
    /// Newton's divided differences.
    c: [f64; 4],
}

/// `ln` of the volume Froude numbers it goes through: 0.9, 1.8, 3.6, 7.2.
const ROUGH_AT: [f64; 4] = [-0.105_360_5, 0.587_786_7, 1.280_933_8, 1.974_081_0];

impl RoughLine {
    fn new(ks: f64, length: f64, viscosity: f64, unit: f64) -> RoughLine {
        let mut c = ROUGH_AT.map(|x| roughness::added_friction(x.exp() * unit * length / viscosity, length, ks));
        for order in 1..4 {
            for i in (order..4).rev() {
                c[i] = (c[i] - c[i - 1]) / (ROUGH_AT[i] - ROUGH_AT[i - order]);
            }
        }
        RoughLine { unit, c }
    }

    fn at(&self, speed: f64) -> f64 {
        let x = (speed / self.unit).clamp(0.5, 12.0).ln();
        let [a, b, c, d] = self.c;
        a + (x - ROUGH_AT[0]) * (b + (x - ROUGH_AT[1]) * (c + (x - ROUGH_AT[2]) * d))
    }
}

/// The hump factor of one hull.
#[derive(Clone, Copy, Debug)]
struct Hump {
    /// `2 (LCG/b)^1.45`.
    rise: f64,
    /// `3 LCG/b`.
    fall: f64,
}

impl Hump {
    fn new(lcg_over_beam: f64) -> Hump {
        let x = lcg_over_beam.clamp(0.6, 2.4);
        Hump { rise: 2.0 * x.powf(1.45), fall: 3.0 * x }
    }

    fn factor(self, volume_froude: f64) -> f64 {
        let e = (-(volume_froude.max(1.0) - 0.85)).exp();
        0.98 + e * e * (self.rise - self.fall * e)
    }
}

/// Factor on the planing resistance about the hump, `M` (see [`METHOD_HUMP`]); inputs held inside the range used.
#[must_use]
pub fn hump_factor(lcg_over_beam: f64, volume_froude: f64) -> f64 {
    Hump::new(lcg_over_beam).factor(volume_froude)
}

/// `0.1197 β^0.7651` and `15.7132 β^-0.2629 √½`.
fn porpoising_constants(deadrise_deg: f64) -> (f64, f64) {
    let beta = deadrise_deg.clamp(10.0, 30.0);
    (0.1197 * beta.powf(0.7651), 15.7132 * beta.powf(-0.2629) * std::f64::consts::FRAC_1_SQRT_2)
}

/// Trim above which porpoising is likely, degrees (see [`METHOD_PORPOISING`]); deadrise held to 10..30 degrees.
#[must_use]
pub fn porpoising_trim(lift_coefficient: f64, deadrise_deg: f64) -> f64 {
    let (scale, growth) = porpoising_constants(deadrise_deg);
    scale * (growth * lift_coefficient.max(0.0).sqrt()).min(10.0).exp()
}

/// Where to begin the search at the next speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// Wetted ratio guessed for the next speed.
    ratio: f64,
    /// Wetted ratio found at the last speed.
    last: f64,
    /// Slope of the moment over the wetted ratio there.
    slope: f64,
}

/// A bottom in its water, with what does not hang on speed worked out.
#[derive(Clone, Copy, Debug)]
pub struct Prepared {
    bottom: Bottom,
    density: f64,
    viscosity: f64,
    cos_beta: f64,
    tan_beta: f64,
    sin_thrust: f64,
    cos_thrust: f64,
    /// `1/√(g b)`.
    speed_unit: f64,
    /// `1/√(g vol^(1/3))`.
    volume_unit: f64,
    hump: Hump,
    roughness: RoughLine,
    /// `0.1197 β^0.7651` and `15.7132 β^-0.2629 √½` of the porpoising limit.
    porpoising: (f64, f64),
    spray: Spray,
}

/// What does not change with trim, at one speed.
struct Balance<'a> {
    hull: &'a Prepared,
    carried: f64,
    lcg_over_beam: f64,
    flat: f64,
    ln_flat: f64,
    speed: f64,
    speed_coefficient: f64,
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
    velocity_ratio: f64,
    coefficient: f64,
    /// Friction over the carried weight.
    friction: f64,
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
    #[inline]
    fn trial(&self, ratio: f64) -> Trial {
        let (dynamic, buoyant) = lift_per_trim(ratio, self.speed_coefficient);
        let ln_power = self.ln_flat - (dynamic + buoyant).ln();
        self.at_trim(ratio, (ln_power * (1.0 / 1.1)).exp(), dynamic * ln_power.exp())
    }

    #[inline]
    fn at_trim(&self, ratio: f64, trim_deg: f64, dynamic_lift: f64) -> Trial {
        let hull = self.hull;
        let (sin, cos) = sin_cos(trim_deg.min(45.0).to_radians());
        // Bottom speed: the dynamic lift, less its loss by deadrise, slows the water along the bottom (1964, eq. 24).
        let lift = (dynamic_lift - self.deadrise_loss * (0.6 * dynamic_lift.ln()).exp()).max(0.0);
        let square = (1.0 - lift / (ratio * cos)).max(0.3);
        let velocity_ratio = square.sqrt();
        let coefficient = friction::schoenherr(velocity_ratio * self.speed * ratio * hull.bottom.beam / hull.viscosity);
        let friction = self.friction_unit * square * ratio * (coefficient + self.allowance);
        let sin_thrust = sin * hull.cos_thrust + cos * hull.sin_thrust;
        let arm = self.lcg_over_beam - centre_of_pressure(ratio, self.speed_coefficient) * ratio;
        let moment = (1.0 - sin * sin_thrust) * arm / cos - hull.bottom.thrust_lever / hull.bottom.beam * sin
            + friction * self.friction_arm;
        Trial { ratio, moment, trim_deg, sin, cos, velocity_ratio, coefficient, friction }
    }

    /// The trial at which the moments balance, or the end of the range of wetted ratios nearest to it and `false`; and
    /// the slope there. Secant steps inside a bracket that closes as it goes.
    fn solve(&self, start: f64, slope: f64) -> (Trial, f64, bool) {
        let (mut low, mut high) = (WETTED_RATIO_FLOOR, self.hull.bottom.longest_wetted_ratio);
        let (mut low_tried, mut high_tried) = (false, false);
        let mut trial = self.trial(start.clamp(low, high));
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
            let tried = self.trial(next);
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
        self.at_trim(ratio, trim, dynamic * trim.powf(1.1))
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
        let flat = flat_lift(lift_coefficient, bottom.deadrise_deg);
        let allowance = self.roughness.at(speed).max(ALLOWANCE);
        let balance = Balance {
            hull: self,
            carried,
            lcg_over_beam: lcg / b,
            flat,
            ln_flat: flat.ln(),
            speed,
            speed_coefficient,
            friction_unit: pressure * b * b / (self.cos_beta * carried),
            deadrise_loss: 0.0065 * bottom.deadrise_deg,
            friction_arm: (bottom.vcg - bottom.thrust_lever) / b - 0.25 * self.tan_beta,
            allowance,
        };
        let first = start.unwrap_or_else(|| Start { ratio: lcg / (0.7 * b), last: f64::NAN, slope: SLOPE });
        let (mut trial, slope, mut balanced) = balance.solve(first.ratio, first.slope);
        // Even steps of speed: the next wetted ratio lies about as far on as this one did.
        let change = if first.last.is_finite() { trial.ratio - first.last } else { 0.0 };
        *start = Some(Start { ratio: trial.ratio + 0.6 * change, last: trial.ratio, slope });
        if trial.trim_deg > TRIM.1 {
            balanced = false;
            trial = balance.at_limit(trial.ratio);
        }
        let ratio = trial.ratio;
        let tan = trial.sin / trial.cos;
        // Half of LK - LC = (b/π) tan β/tan τ; at vanishing trim it would grow without end, the hull does not.
        let half = (b * self.tan_beta / (std::f64::consts::TAU * tan.max(1e-3))).min(2.0 * b);
        let keel_wetted = ratio * b + half;
        let friction = trial.friction * carried;
        let flap_drag = flap.map_or(0.0, |f| f.drag(flap_lift, trial.trim_deg));
        let state = State {
            trim_deg: trial.trim_deg,
            sin_trim: trial.sin,
            cos_trim: trial.cos,
            wetted_ratio: ratio,
            lift_coefficient,
            flat_lift_coefficient: flat,
            bottom_speed: speed * trial.velocity_ratio,
            friction_coefficient: trial.coefficient,
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

    /// Resistance in parts at `speed` (m/s), hump factor and whisker spray included; `start` as for
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
            spray: self.spray.drag(state.sin_trim / state.cos_trim, self.density, self.viscosity, speed),
            ..Parts::default()
        };
        Noted::new(parts, notes)
    }
}

impl Bottom {
    /// The bottom of a hull form. The thrust acts under the transom, a tenth of the beam below the keel (an assumption:
    /// forms don't carry the place of the propeller). Values that no planing boat has are held inside wide limits.
    #[must_use]
    pub fn of(form: &Form) -> Bottom {
        let beam = form.chine_beam.max(0.05);
        let thrust_angle_deg = form.thrust_angle_deg.clamp(-10.0, 25.0);
        let (sin, cos) = thrust_angle_deg.to_radians().sin_cos();
        let lcg = form.lcg.clamp(0.15 * form.length, 0.65 * form.length);
        let vcg = form.vcg.clamp(0.0, 1.5 * beam);
        Bottom {
            weight: form.mass * GRAVITY,
            beam,
            deadrise_deg: form.deadrise_deg.clamp(0.0, 35.0),
            lcg,
            vcg,
            thrust_angle_deg,
            thrust_lever: ((vcg + 0.1 * beam) * cos - lcg * sin).clamp(-0.5 * beam, beam),
            longest_wetted_ratio: (form.length / beam).clamp(1.0, 6.0),
            roughness: form.roughness,
            flap: None,
        }
    }

    /// Works out what does not hang on speed.
    #[must_use]
    pub fn prepare(&self, water: &Water) -> Prepared {
        let (sin_beta, cos_beta) = self.deadrise_deg.to_radians().sin_cos();
        let (sin_thrust, cos_thrust) = self.thrust_angle_deg.to_radians().sin_cos();
        let volume = self.weight / (GRAVITY * water.density);
        Prepared {
            bottom: *self,
            density: water.density,
            viscosity: water.viscosity,
            cos_beta,
            tan_beta: sin_beta / cos_beta,
            sin_thrust,
            cos_thrust,
            speed_unit: 1.0 / (GRAVITY * self.beam).sqrt(),
            volume_unit: 1.0 / (GRAVITY * volume.cbrt()).sqrt(),
            hump: Hump::new(self.lcg / self.beam),
            // The length wetted on the plane is about LCG/0.75; the added friction hardly hangs on it.
            roughness: RoughLine::new(
                self.roughness,
                self.lcg.max(0.2 * self.beam) / 0.75,
                water.viscosity,
                (GRAVITY * volume.cbrt()).sqrt(),
            ),
            porpoising: porpoising_constants(self.deadrise_deg),
            spray: Spray::new(self.beam, self.deadrise_deg),
        }
    }

    /// Running trim, wetted length and drag at one `speed` (m/s), see [`Prepared::equilibrium`].
    #[must_use]
    pub fn equilibrium(&self, water: &Water, speed: f64) -> Noted<State> {
        self.prepare(water).equilibrium(speed, &mut None)
    }
}

/// Running state of a hull form at `speed`, m/s.
#[must_use]
pub fn equilibrium(form: &Form, water: &Water, speed: f64) -> Noted<State> {
    Bottom::of(form).equilibrium(water, speed)
}

/// Resistance of a bare planing hull at `speed` (m/s), in parts, N; hump factor and whisker spray included.
#[must_use]
pub fn resistance(form: &Form, water: &Water, speed: f64) -> Noted<Parts> {
    Bottom::of(form).prepare(water).parts(speed, &mut None)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn boat(lcg: f64, deadrise_deg: f64) -> Bottom {
        Bottom {
            weight: 2000.0 * GRAVITY,
            beam: 2.1,
            deadrise_deg,
            lcg,
            vcg: 0.5,
            thrust_angle_deg: 0.0,
            thrust_lever: 0.6,
            longest_wetted_ratio: 3.0,
            roughness: 30e-6,
            flap: None,
        }
    }

    fn sea() -> Water {
        Water { density: 1025.976, viscosity: 1.1892e-6, vapour_pressure: 1674.0 }
    }

    #[test]
    fn the_answer_does_not_depend_on_the_start() {
        for speed in [6.0, 9.0, 14.0, 22.0] {
            let cold = boat(2.2, 18.0).equilibrium(&sea(), speed).value;
            for ratio in [0.2, 1.0, 2.9, 7.0] {
                let mut start = Some(Start { ratio, last: ratio, slope: SLOPE });
                let warm = boat(2.2, 18.0).prepare(&sea()).equilibrium(speed, &mut start).value;
                assert!((warm.drag / cold.drag - 1.0).abs() < 5e-5, "{speed} {ratio}: {} {}", warm.drag, cold.drag);
            }
        }
    }

    #[test]
    fn extreme_centres_of_gravity_are_held_not_blown_up() {
        let (mut held, mut free) = (0, 0);
        for i in 0..40 {
            for speed in [4.0, 8.0, 12.0, 20.0, 30.0] {
                let noted = boat(0.15 + 0.15 * f64::from(i), 18.0).equilibrium(&sea(), speed);
                let state = noted.value;
                // No more than the whole bottom wetted at the highest trim, no less than friction of a small part.
                let skin = 0.5 * 1026.0 * speed * speed * 2.1 * 2.1 * 0.004;
                let most = 2000.0 * GRAVITY * 15.01_f64.to_radians().tan() + 3.3 * skin;
                assert!(state.drag > 0.05 * skin && state.drag < most, "{i} {speed}: {} {most}", state.drag);
                assert!(state.trim_deg > 0.0 && state.trim_deg < 15.01);
                assert_eq!(state.balanced, !noted.notes.has(Note::TrimHeld));
                if state.balanced { free += 1 } else { held += 1 }
            }
        }
        assert!(held > 5 && free > 50, "{held} {free}");
    }

    #[test]
    fn weight_aft_porpoises_and_the_flat_bottom_has_no_deadrise_loss() {
        assert!(boat(1.2, 15.0).equilibrium(&sea(), 14.0).notes.has(Note::Porpoising));
        assert!((flat_lift(0.08, 0.0) - 0.08).abs() < 1e-12);
        assert!(flat_lift(0.08, 20.0) > 0.09);
    }

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
    fn hump_factor_dies_away_with_speed() {
        assert!(hump_factor(1.2, 2.0) > hump_factor(1.2, 3.0));
        assert!((hump_factor(1.2, 6.0) - 0.98).abs() < 0.001);
    }
}
