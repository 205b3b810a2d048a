//! Whisker spray: the wetted bottom ahead of the stagnation line.

use crate::source::{Method, Trust};

/// The register entry.
pub const METHOD: Method = Method {
    name: "whisker-spray-2007",
    quantity: "drag of the spray ahead of the stagnation line of a planing hull, N",
    formula: "ΔD = ρ/2 V² Δλ b² CF, Δλ = cos θ/(4 sin 2α cos β), tan α = (π/2) tan τ/tan β, θ = 2α/cos β",
    range: "deadrise above about 5 degrees; nothing once θ reaches 90 degrees",
    error: "no printed example was found; the wetted area (eq. 7) was seen, direction and friction are from memory",
    source: "D. Savitsky, M.F. DeLorme and R. Datla, 2007, Inclusion of whisker spray drag in performance prediction method for high-speed planing hulls, Marine Technology 44(1), 35-56",
    trust: Trust::Memory,
};

/// Largest effective spray length over beam that is used: the formula grows without end as the trim vanishes.
const LONGEST: f64 = 1.5;

/// Share of the spray drag a boat of unknown bottom is given: spray rails throw most of it off, a bare bottom keeps all of
/// it, and most planing boats have some rails. Common practice, no source; set after fourteen outboard boats had been looked at, whose
/// mean implied efficiency it moves from 0.63 to 0.59 (LCG at 0.33 of the waterline): they do not check it.
pub const SHARE: f64 = 0.5;

/// The spray of one hull, with what hangs on deadrise alone worked out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spray {
    beam: f64,
    cos_beta: f64,
    /// `(π/2)/tan β`; zero for a flat bottom, which has no such spray.
    ratio: f64,
}

impl Spray {
    /// For a chine beam (m) and deadrise (degrees).
    #[must_use]
    pub fn new(beam: f64, deadrise_deg: f64) -> Spray {
        let (sin, cos) = deadrise_deg.to_radians().sin_cos();
        let ratio = if sin < 1e-3 { 0.0 } else { std::f64::consts::FRAC_PI_2 * cos / sin };
        Spray { beam, cos_beta: cos, ratio }
    }

    /// Effective increase of wetted length over beam, `Δλ = cos θ/(4 sin 2α cos β)` (0 when `θ >= 90°`), and `sin 2α`, for
    /// the tangent of the trim. Source: [`METHOD`].
    fn wetted_ratio(&self, tan_trim: f64) -> Option<(f64, f64)> {
        let tan_alpha = self.ratio * tan_trim;
        // θ of 90 degrees is α = 45 cos β, so nothing is left from tan α = 1 on.
        if !(tan_alpha > 0.0 && tan_alpha < 1.0) {
            return None;
        }
        let theta = 2.0 * tan_alpha.atan() / self.cos_beta;
        let sin_2alpha = 2.0 * tan_alpha / (1.0 + tan_alpha * tan_alpha);
        let cos_theta = theta.cos();
        (cos_theta > 0.0).then(|| (cos_theta / (4.0 * sin_2alpha * self.cos_beta), sin_2alpha))
    }

    /// Drag of whisker spray, N, at `speed` (m/s) for the tangent of the trim.
    #[must_use]
    pub fn drag(&self, tan_trim: f64, density: f64, viscosity: f64, speed: f64) -> f64 {
        let Some((ratio, sin_2alpha)) = self.wetted_ratio(tan_trim) else { return 0.0 };
        let run = self.beam / (3.0 * self.cos_beta * sin_2alpha.max(0.05));
        let coefficient = friction(speed * run / viscosity);
        0.5 * density * speed * speed * ratio.min(LONGEST) * self.beam * self.beam * coefficient
    }
}

/// Effective increase of wetted length over beam by spray, `Δλ`, at trim `τ` and deadrise `β` (degrees).
///
/// `Δλ = cos θ/(4 sin 2α cos β)`, 0 when `θ >= 90°`; source: [`METHOD`].
#[must_use]
pub fn wetted_ratio(trim_deg: f64, deadrise_deg: f64) -> f64 {
    Spray::new(1.0, deadrise_deg).wetted_ratio(trim_deg.to_radians().tan()).map_or(0.0, |(ratio, _)| ratio)
}

/// Friction coefficient of the spray sheet: `1.328/Re^0.5` below Re 1.5e6, else `0.074/Re^0.2 - 4800/Re`.
#[must_use]
pub fn friction(reynolds: f64) -> f64 {
    let re = reynolds.max(1e3);
    if re < 1.5e6 { 1.328 / re.sqrt() } else { 0.074 * (-0.2 * re.ln()).exp() - 4800.0 / re }
}

#[cfg(test)]
mod tests {
    use super::{friction, wetted_ratio};

    #[test]
    fn spray_length_of_the_formula() {
        // Values worked out by hand-held arithmetic apart from this code, from the formula in the register entry.
        for (beta, tau, want) in [(10.0, 2.0, 0.366), (15.0, 4.0, 0.255), (20.0, 2.0, 0.857), (25.0, 4.0, 0.539)] {
            let got = wetted_ratio(tau, beta);
            assert!((got - want).abs() < 6e-4, "beta {beta} tau {tau}: {got}, want {want}");
        }
    }

    #[test]
    fn no_spray_forward_beyond_a_right_angle() {
        assert_eq!(wetted_ratio(10.0, 10.0), 0.0);
        assert_eq!(wetted_ratio(4.0, 0.0), 0.0);
    }

    #[test]
    fn friction_has_both_branches() {
        assert!((friction(1e6) - 1.328e-3).abs() < 1e-12);
        assert!((friction(1e7) - (0.074 / 1e7_f64.powf(0.2) - 4.8e-4)).abs() < 1e-12);
    }
}
