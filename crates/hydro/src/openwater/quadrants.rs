//! One screw in four quadrants: ahead and astern, water from ahead and from behind.
//!
//! Only B4-70 with pitch ratio 1.0 is at hand. It serves for the bollard and for going astern, as a ratio to going ahead; its
//! first quadrant differs by 2 to 5 % from the series' polynomials, so the two must not be joined without an offset.

use crate::source::{Method, Trust};
use std::f64::consts::PI;

/// The screw and its Fourier series.
pub const METHOD: Method = Method {
    name: "b4-70-four-quadrants",
    quantity: "thrust and torque coefficients CT*, CQ* over the hydrodynamic pitch angle",
    formula: "beta = atan2(Va, 0.7 pi n D); C = sum A_k cos k beta + B_k sin k beta, k 0 to 20",
    range: "B4-70, P/D 1.0, all four quadrants",
    error: "2 to 5 % against the polynomials of the same screw; other screws astern differ more",
    source: "W. P. A. van Lammeren, J. D. van Manen & M. W. C. Oosterveld 1969, Trans. SNAME 77; bollard values printed by O. N. \
             Smogeli 2006, Control of Marine Propellers, NTNU",
    trust: Trust::Checked,
};

/// Thrust and torque coefficients at a hydrodynamic pitch angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quadrant {
    /// `CT* = T/(½ ρ (π/4) D² V²)`, `V² = Va² + (0.7 π n D)²`.
    pub ct: f64,
    /// `CQ* = Q/(½ ρ (π/4) D³ V²)`.
    pub cq: f64,
}

/// Hydrodynamic pitch angle at 0.7 R, rad: 0 is the bollard ahead, π the bollard astern.
#[must_use]
pub fn angle(va: f64, n: f64, diameter: f64) -> f64 {
    va.atan2(0.7 * PI * n * diameter)
}

/// Both coefficients at an angle `beta` (rad).
#[must_use]
pub fn at(beta: f64) -> Quadrant {
    let (mut ct, mut cq) = (0.0, 0.0);
    for (k, [a_t, b_t, a_q, b_q]) in (0_u32..).zip(HARMONICS) {
        let (sin, cos) = (f64::from(k) * beta).sin_cos();
        ct += a_t * cos + b_t * sin;
        cq += a_q * cos + b_q * sin;
    }
    Quadrant { ct, cq }
}

impl Quadrant {
    /// `(KT, KQ)` of the same state: `KT = (π/8) CT* (J² + (0.7π)²)`, `KQ` likewise. Without meaning when the shaft stands.
    #[must_use]
    pub fn coefficients(self, advance_ratio: f64) -> (f64, f64) {
        let factor = PI / 8.0 * (advance_ratio * advance_ratio + (0.7 * PI) * (0.7 * PI));
        (factor * self.ct, factor * self.cq)
    }
}

/// `(KT, KQ)` at the bollard, going ahead.
#[must_use]
pub fn bollard_ahead() -> (f64, f64) {
    at(0.0).coefficients(0.0)
}

/// `(KT, KQ)` at the bollard, going astern; both negative.
#[must_use]
pub fn bollard_astern() -> (f64, f64) {
    at(PI).coefficients(0.0)
}

/// Share of the ahead bollard thrust that is left astern, `(at equal shaft speed, at equal torque)`: about 0.78 and 0.83.
///
/// Of this one screw; flat-faced and symmetrical blades do better astern, cupped ones worse (common practice, no source).
#[must_use]
pub fn astern_share() -> (f64, f64) {
    let (ahead, astern) = (bollard_ahead(), bollard_astern());
    let thrust = -astern.0 / ahead.0;
    (thrust, thrust / (-astern.1 / ahead.1))
}

/// `[A of CT, B of CT, A of CQ, B of CQ]` for the harmonics 0 to 20.
const HARMONICS: [[f64; 4]; 21] = [
    [2.5350e-2, 0.0, 2.4645e-3, 0.0],
    [1.7820e-1, -7.4777e-1, 2.6718e-2, -1.1081e-1],
    [1.4674e-2, -1.3822e-2, 1.6056e-3, 1.5909e-4],
    [2.8054e-2, 1.0077e-1, 6.5822e-3, 1.6455e-2],
    [-1.6328e-2, -1.1318e-2, -2.2497e-3, -2.0601e-3],
    [-5.3041e-2, 4.7186e-2, -7.8062e-3, 8.5343e-3],
    [6.0605e-4, 1.0666e-2, 2.4126e-4, 8.7856e-4],
    [3.6823e-2, -9.0239e-3, 6.1475e-3, -3.1327e-3],
    [-2.5429e-3, -7.8452e-3, -1.6065e-3, -9.6650e-4],
    [-1.7680e-2, 2.3941e-2, -3.3291e-3, 4.3190e-3],
    [2.7331e-3, 8.0787e-3, 1.2311e-3, 1.2453e-3],
    [2.1436e-2, -1.4942e-4, 3.1123e-3, 9.5986e-5],
    [-2.4782e-3, -3.1925e-3, -1.2559e-3, -7.9986e-4],
    [1.2317e-3, 9.2620e-3, 1.3948e-3, 1.5073e-3],
    [5.0980e-3, 1.5527e-3, 8.8397e-4, 2.4595e-4],
    [7.8076e-3, -6.5683e-3, 5.0358e-5, -1.6918e-3],
    [-3.7816e-3, -6.1655e-4, -7.9990e-4, 5.1603e-4],
    [3.5353e-3, 5.1033e-3, 1.3345e-3, 1.1504e-3],
    [5.3014e-3, -6.0263e-4, 1.1928e-3, -4.7976e-4],
    [2.1940e-3, -8.2244e-3, -1.3556e-4, -1.4566e-3],
    [-2.8306e-3, -6.3789e-4, -7.0825e-4, 2.3280e-4],
];
