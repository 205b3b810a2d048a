//! Blade forces in a wake by strips, and what skew does to them.

use crate::source::{Method, Trust};
use crate::vibration::wake::{self, Ahead};
use std::f64::consts::{PI, TAU};

/// Strips with the Sears function.
pub const METHOD: Method = Method {
    name: "blade-force-strips",
    quantity: "blade-rate thrust over mean thrust; its fall with skew",
    formula: "T_q = |sum over r of pi rho c U w_q(r) S(k) e^(i q th_s(r)) cos(phi) dr| Z, k = q (c/D) cos(phi)/x; skew alone: |int L e^(i q th_s) dr|/int L dr with L = x times an ellipse over the span",
    range: "attached flow, small gusts, moderate skew",
    error: "an estimate: strips say too much on wide blades (taken off by (1 + 2/aspect)); the ratio with and without skew is better than either",
    source: "W. R. Sears 1941, Some aspects of non-stationary airfoil theory, J. Aeronaut. Sci. 8; strips: textbook",
    trust: Trust::Checked,
};

/// The Sears function `S(k)` about mid-chord, by the Bessel functions.
#[must_use]
pub fn sears(k: f64) -> (f64, f64) {
    if k <= 1e-9 {
        return (1.0, 0.0);
    }
    let (j0, j1, y0, y1) = bessel(k);
    // C = H1/(H1 + i H0), Hn = Jn - i Yn.
    let (a, b) = (j1, -y1);
    let (c, d) = (j1 + y0, j0 - y1);
    let size = c * c + d * d;
    let theodorsen = ((a * c + b * d) / size, (b * c - a * d) / size);
    // S = (J0 - i J1) C + i J1.
    (j0 * theodorsen.0 + j1 * theodorsen.1, j0 * theodorsen.1 - j1 * theodorsen.0 + j1)
}

/// `J0, J1, Y0, Y1` by their integrals over half a turn (Bessel's, and Y's with its tail), to 1e-8.
fn bessel(x: f64) -> (f64, f64, f64, f64) {
    // Even steps on a periodic integrand converge faster than any power.
    const STEPS: u32 = 200;
    let (mut j0, mut j1) = (0.0, 0.0);
    for i in 0..STEPS {
        let t = PI * (f64::from(i) + 0.5) / f64::from(STEPS);
        j0 += (x * t.sin()).cos();
        j1 += (t - x * t.sin()).cos();
    }
    let (j0, j1) = (j0 / f64::from(STEPS), j1 / f64::from(STEPS));
    let (y0, y1) = (neumann(x, 0), neumann(x, 1));
    (j0, j1, y0, y1)
}

/// `Yn(x) = (1/pi) int_0^pi sin(x sin t - n t) dt - (1/pi) int_0^inf (e^(n t) + (-1)^n e^(-n t)) e^(-x sinh t) dt`.
fn neumann(x: f64, n: u32) -> f64 {
    let order = f64::from(n);
    let first = simpson(0.0, PI, 400, |t| (x * t.sin() - order * t).sin());
    // e^(-x sinh t) is below 1e-17 beyond this.
    let end = (2.0 * 42.0 / x + 1.0).asinh().max(1.0);
    let sign = if n.is_multiple_of(2) { 1.0 } else { -1.0 };
    let second = simpson(0.0, end, 4000, |t| ((order * t).exp() + sign * (-order * t).exp()) * (-x * t.sinh()).exp());
    (first - second) / PI
}

fn simpson(from: f64, to: f64, steps: u32, f: impl Fn(f64) -> f64) -> f64 {
    let h = (to - from) / f64::from(steps);
    let inner: f64 = (1..steps).map(|i| if i % 2 == 1 { 4.0 } else { 2.0 } * f(from + h * f64::from(i))).sum();
    h / 3.0 * (f(from) + inner + f(to))
}

/// What is left of a wake harmonic's force when the blade passes it gradually: `|int L e^(i q th_s) dr|/int L dr` over the
/// skew line (r/R, rad, from the hub out), with the weight `L = x` times an ellipse over the span, and the wake's phase alike at all radii.
#[must_use]
pub fn phase_factor(skew: &[(f64, f64)], q: u32) -> f64 {
    let Some((first, last)) = skew.first().zip(skew.last()) else { return 1.0 };
    const STEPS: u32 = 400;
    let (mut re, mut im, mut all) = (0.0, 0.0, 0.0);
    for i in 0..STEPS {
        let x = first.0 + (last.0 - first.0) * (f64::from(i) + 0.5) / f64::from(STEPS);
        let across = (2.0 * x - first.0 - last.0) / (last.0 - first.0);
        let load = x * (1.0 - across * across).max(0.0).sqrt();
        let angle = f64::from(q) * along(skew, x);
        re += load * angle.cos();
        im += load * angle.sin();
        all += load;
    }
    if all > 0.0 { re.hypot(im) / all } else { 1.0 }
}

fn along(line: &[(f64, f64)], x: f64) -> f64 {
    let at = line.partition_point(|p| p.0 < x).clamp(1, line.len().max(2) - 1);
    match (line.get(at - 1), line.get(at)) {
        (Some(a), Some(b)) if b.0 > a.0 => a.1 + (b.1 - a.1) * ((x - a.0) / (b.0 - a.0)).clamp(0.0, 1.0),
        (Some(a), _) => a.1,
        _ => 0.0,
    }
}

/// A propeller in a wake.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InWake {
    /// Blades.
    pub blades: u8,
    /// Diameter, m.
    pub diameter: f64,
    /// Pitch over diameter.
    pub pitch_ratio: f64,
    /// Chord at 0.7 R over diameter.
    pub chord_ratio: f64,
    /// Advance ratio on ship speed.
    pub advance_ratio: f64,
    /// Thrust coefficient.
    pub thrust_coefficient: f64,
}

/// Amplitude of blade-rate thrust over mean thrust ([`METHOD`]), for a skew that grows as the square from nothing at 0.4 R
/// to `skew` (rad) at the tip.
#[must_use]
pub fn blade_rate_thrust(at: &InWake, ahead: &Ahead, skew: f64) -> f64 {
    let q = u32::from(at.blades);
    const STRIPS: u32 = 24;
    let (mut re, mut im) = (0.0, 0.0);
    for i in 0..STRIPS {
        let x = 0.2 + 0.8 * (f64::from(i) + 0.5) / f64::from(STRIPS);
        let dx = 0.8 / f64::from(STRIPS);
        // Chord of the series' outline, near enough: full at 0.6 R, round at the tip.
        let chord = at.chord_ratio * (1.0 - ((x - 0.6) / 0.42).powi(4)).clamp(0.0, 1.0).sqrt();
        let phi = (at.pitch_ratio / (PI * x)).atan();
        let speed = PI * x / phi.cos();
        let k = f64::from(q) * chord * phi.cos() / x;
        let (axial, turning) = (
            wake::harmonic(|th| wake::inflow(ahead, x, th).0, q),
            wake::harmonic(|th| wake::inflow(ahead, x, th).1, q),
        );
        let gust = |a: f64, t: f64| at.advance_ratio * (a * phi.cos() - t * phi.sin());
        let (gr, gi) = (gust(axial.0, turning.0), -gust(axial.1, turning.1));
        let (sr, si) = sears(k);
        // In units of rho n^2 D^4, per blade; wide blades answer less than strips.
        let aspect = 0.8 / (2.0 * at.chord_ratio).max(0.05);
        let size = PI * chord * speed * phi.cos() * 0.5 * dx / (1.0 + 2.0 / aspect.max(0.3));
        // A section displaced backward meets the wake later.
        let turn = -f64::from(q) * skew * ((x - 0.4).max(0.0) / 0.6).powi(2);
        let (lr, li) = (gr * sr - gi * si, gr * si + gi * sr);
        re += size * (lr * turn.cos() - li * turn.sin());
        im += size * (lr * turn.sin() + li * turn.cos());
    }
    let thrust = at.thrust_coefficient.abs().max(1e-3);
    f64::from(at.blades) * re.hypot(im) / thrust
}

/// Quasi-steady loads of an inclined shaft: amplitude of one blade's thrust over its mean, and the sideways offset of the line
/// of thrust over R, towards the blade going down. `slope` is `dKT/dJ`.
///
/// `T1 = (T/Z)(2 - J KT'/KT) J sin psi/(0.7 pi)`; `e/R = 0.35 (2 - J KT'/KT) J sin psi/(0.7 pi)` (derived).
#[must_use]
pub fn inclined(j: f64, kt: f64, slope: f64, angle: f64) -> (f64, f64) {
    let factor = (2.0 - j * slope / kt) * j * angle.sin() / (0.7 * PI);
    (factor, 0.35 * factor)
}

/// A whole turn, for pictures: thrust of one blade over its mean at `th`, quasi-steady, at 0.7 R.
#[must_use]
pub fn blade_over_turn(at: &InWake, ahead: &Ahead, skew: f64, th: f64) -> f64 {
    let mean = wake::harmonic(|t| wake::inflow(ahead, 0.7, t).0, 0).0;
    // A skewed blade averages the wake over the angle it covers.
    let spread = |d: f64| wake::inflow(ahead, 0.7, (th - skew * d).rem_euclid(TAU)).0;
    let local = [0.0, 0.25, 0.5, 0.75, 1.0].iter().map(|d| spread(*d)).sum::<f64>() / 5.0;
    let slope = -at.advance_ratio * 0.45 / at.thrust_coefficient.max(0.02);
    1.0 + slope * (local - mean)
}
