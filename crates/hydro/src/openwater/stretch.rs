//! Pitch ratios beyond the tested range of a series.
//!
//! A polynomial of the sixth degree in `P/D` must not be followed outside the pitch ratios it was fitted to (at `P/D` 2 the
//! flat-faced one promises an efficiency above 1). Instead the curves at the limit are stretched: at the same `J/(P/D)`,
//! which is the same real slip, thrust and torque grow with fixed powers of the pitch ratio.

use super::polynomial::{Polynomials, held};
use crate::source::{Method, Trust};

/// How propellers of uncommon pitch are treated.
pub const METHOD: Method = Method {
    name: "pitch-stretch",
    quantity: "thrust and torque coefficients beyond the tested pitch ratios",
    formula: "r = (P/D)/limit, J' = J/r; above: KT = r^0.75 KT'(J'), KQ = r^1.75 KQ'(J'); below: r^1.15, r^1.5",
    range: "P/D 0.25 to 2.5; held beyond",
    error: "own extrapolation, no source. The powers above lie within those of the flat-faced KCA fit between P/D 1.4 and 1.8 \
            (thrust 0.6 to 1.1, torque 1.5 to 2.1 over slip and area), those below within the two series' lowest tenth; \
            a power is off by about 0.2, that is 3 % at a pitch ratio a sixth beyond the limit",
    source: "this project; powers compared with Radojcic 1988 and with the series themselves near their limits",
    trust: Trust::CommonPractice,
};

/// Powers of thrust and torque above the tested range. Their difference is 1, so that the efficiency at equal slip stays that
/// of the limit and cannot run away.
const ABOVE: (f64, f64) = (0.75, 1.75);
/// Powers below the tested range: friction does not shrink with pitch, so the efficiency falls (as `r^0.65` at equal slip).
const BELOW: (f64, f64) = (1.15, 1.5);

/// Smallest and largest pitch ratio that is stretched to.
pub(super) const SPAN: (f64, f64) = (0.25, 2.5);

/// The pitch ratio at which a series is to be evaluated.
pub(super) fn inside(pitch_ratio: f64, tested: (f64, f64)) -> f64 {
    held(pitch_ratio, tested.0, tested.1)
}

/// Stretches curves made at `limit` to `pitch_ratio`; leaves them alone when both agree.
pub(super) fn stretch(curves: Polynomials, pitch_ratio: f64, limit: f64) -> Polynomials {
    let ratio = held(pitch_ratio, SPAN.0, SPAN.1) / limit;
    if (ratio - 1.0).abs() < 1e-12 {
        return curves;
    }
    let (thrust, torque) = if ratio > 1.0 { ABOVE } else { BELOW };
    let scaled = |k: [f64; 8], power: f64| {
        let mut factor = ratio.powf(power);
        k.map(|c| {
            let this = c * factor;
            factor /= ratio;
            this
        })
    };
    Polynomials { kt: scaled(curves.kt, thrust), kq: scaled(curves.kq, torque) }
}
