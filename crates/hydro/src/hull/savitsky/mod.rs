//! Planing resistance by Savitsky's equations, with the whole balance of moments.

mod balance;

pub use balance::{Prepared, Start};

use super::form::{Form, Parts};
use super::rough_line::RoughLine;
use super::spray::Spray;
use crate::note::Noted;
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
/// Source: Savitsky 1964, eq. 16. Solved to 1e-9.
#[must_use]
pub fn flat_lift(lift_coefficient: f64, deadrise_deg: f64) -> f64 {
    let u = flat_lift_root(lift_coefficient, 0.0065 * deadrise_deg, f64::INFINITY);
    u * u * u * u * u
}

/// `u = CL0^0.2`, the root of `u⁵ - k u³ = CLb` with `k = 0.0065 β`, by Newton's rule from a guess above it.
///
/// Right of the root the curve rises and is convex, so Newton comes down to it without overshoot; a guess from below
/// is thrown above by the first step.
#[inline]
fn flat_lift_root(lift_coefficient: f64, k: f64, guess: f64) -> f64 {
    let mut u = if guess.is_finite() { guess } else { lift_coefficient.powf(0.2) + 0.62 * k.sqrt() };
    for _ in 0..20 {
        let u2 = u * u;
        let step = (u2 * u * (u2 - k) - lift_coefficient) / (u2 * (5.0 * u2 - 3.0 * k)).max(1e-30);
        u -= step;
        // The rest is of second order.
        if step.abs() < 1e-5 * u {
            break;
        }
    }
    u
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
        let unit = (GRAVITY * (self.weight / (GRAVITY * water.density)).cbrt()).sqrt();
        self.prepare_with(water, RoughLine::new(self.roughness, self.reach(), water.viscosity, unit))
    }

    /// About the length wetted on the plane, `LCG/0.75`: what the added friction of roughness goes by.
    fn reach(&self) -> f64 {
        self.lcg.max(0.2 * self.beam) / 0.75
    }

    /// The same with the line of added friction known for another length of the same hull.
    pub(super) fn prepare_beside(&self, water: &Water, line: RoughLine) -> Prepared {
        self.prepare_with(water, line.on_length(self.reach()))
    }

    fn prepare_with(&self, water: &Water, roughness: RoughLine) -> Prepared {
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
            lever_over_beam: self.thrust_lever / self.beam,
            speed_unit: 1.0 / (GRAVITY * self.beam).sqrt(),
            volume_unit: 1.0 / (GRAVITY * volume.cbrt()).sqrt(),
            hump: Hump::new(self.lcg / self.beam),
            roughness,
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

/// Resistance of a bare planing hull at `speed` (m/s), in parts, N; hump factor and half the whisker spray included.
#[must_use]
pub fn resistance(form: &Form, water: &Water, speed: f64) -> Noted<Parts> {
    Bottom::of(form).prepare(water).parts(speed, &mut None)
}

#[cfg(test)]
mod tests;
