//! Friction of a smooth flat plate in turbulent flow: the lines every resistance method stands on.

use crate::source::{Method, Trust};

/// The 1957 line, as `fairwake sources` shows it.
pub const METHOD: Method = Method {
    name: "ittc-57",
    quantity: "friction coefficient CF of a smooth hull, on wetted area and dynamic pressure",
    formula: "CF = 0.075 / (log10 Re - 2)^2",
    range: "turbulent flow, Re 1e6 .. 1e10; a line for model-ship correlation, not a pure plate line",
    error: "a convention; within 3 % of the plate line above Re 1e7, 6 % above it at Re 1e6",
    source: "8th International Towing Tank Conference, Madrid 1957; ITTC recommended procedure 7.5-02-02-01",
    trust: Trust::Checked,
};

/// The plate line, as `fairwake sources` shows it.
pub const METHOD_SCHOENHERR: Method = Method {
    name: "schoenherr-1932",
    quantity: "friction coefficient CF of a smooth flat plate",
    formula: "0.242 / sqrt(CF) = log10(Re CF)",
    range: "turbulent flow, Re 1e6 .. 1e10",
    error: "scatter of the plate tests behind it, about 2 %",
    source: "K. E. Schoenherr 1932, Resistance of flat surfaces moving through a fluid, Trans. SNAME 40; adopted by \
             the American Towing Tank Conference 1947",
    trust: Trust::Checked,
};

/// `0.242 ln 10`: Schoenherr's constant for natural logarithms.
pub(crate) const SCHOENHERR: f64 = 0.242 * std::f64::consts::LN_10;
/// Below this Reynolds number no boat is judged; the lines are held there so that rest has a finite coefficient.
const LOWEST_RE: f64 = 1e4;
/// Its logarithm.
const LOWEST_LN_RE: f64 = 4.0 * std::f64::consts::LN_10;

/// Friction coefficient `CF = 0.075 / (log10 Re - 2)²` of the 1957 line.
///
/// `re`: Reynolds number `V L / ν` on the length the calling method names (whole waterline, 0.7 of it for sailing
/// yachts, mean wetted length when planing). Held constant below 1e4. Source: ITTC 1957.
#[must_use]
pub fn ittc57(re: f64) -> f64 {
    ittc57_at(re.max(LOWEST_RE).ln())
}

/// Friction coefficient of a smooth plate from `0.242 / √CF = log10(Re CF)` (Schoenherr 1932).
///
/// Solved for `y = 1/√CF` by one step of Halley's rule from a parabola in `ln Re`, within 1e-6 of `CF` for Re 1e4 .. 1e11.
#[must_use]
pub fn schoenherr(re: f64) -> f64 {
    let y = schoenherr_y(re.max(LOWEST_RE).ln());
    1.0 / (y * y)
}

/// The 1957 line at `ln Re`, for callers who have the logarithm already.
pub(crate) fn ittc57_at(ln_re: f64) -> f64 {
    let x = ln_re.max(LOWEST_LN_RE) * std::f64::consts::LOG10_E - 2.0;
    0.075 / (x * x)
}

/// `1/√CF` of Schoenherr's line at `ln Re`.
pub(crate) fn schoenherr_y(ln_re: f64) -> f64 {
    // First guess: a parabola through the solution over Re 1e4 .. 1e11, within 0.1. Halley's rule, which knows the
    // curvature -2/y², lands from there in one step (1e-7).
    let y = -3.0365 + ln_re * (1.181_24 + ln_re * 0.009_505);
    let f = SCHOENHERR * y + 2.0 * y.ln() - ln_re;
    let slope = SCHOENHERR + 2.0 / y;
    y - f * slope / (slope * slope + f / (y * y))
}

/// Friction coefficient at the trailing edge of a plate whose mean coefficient is `cf`:
/// `0.558 CF / (0.558 + 2 √CF)` (Schoenherr 1932, by differentiating his line).
#[must_use]
pub fn schoenherr_local(cf: f64) -> f64 {
    let cf = cf.max(0.0);
    0.558 * cf / (0.558 + 2.0 * cf.sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn schoenherr_satisfies_its_own_equation() {
        for i in 0..=70 {
            let re = 10f64.powf(4.0 + 0.1 * f64::from(i));
            let cf = schoenherr(re);
            let rest = 0.242 / cf.sqrt() - (re * cf).log10();
            assert!(rest.abs() < 2e-6, "Re {re:e}: {rest:e}");
        }
    }

    #[test]
    fn local_is_the_slope_of_the_mean() {
        // d(Re CF)/dRe by differences: the printed 0.558 is 2 × 0.242 × ln 10 / 2 rounded, good to 1e-3.
        let (re, h) = (3e7, 1e-4);
        let slope = ((re * (1.0 + h)) * schoenherr(re * (1.0 + h)) - re * (1.0 - h) * schoenherr(re * (1.0 - h)))
            / (2.0 * h * re);
        assert!((slope / schoenherr_local(schoenherr(re)) - 1.0).abs() < 1e-3, "{slope}");
    }

    #[test]
    fn finite_and_falling_everywhere() {
        let mut last = (f64::INFINITY, f64::INFINITY);
        for i in 0..=120 {
            let re = 10f64.powf(0.1 * f64::from(i));
            let now = (ittc57(re), schoenherr(re));
            assert!(now.0.is_finite() && now.1.is_finite() && now.0 > 0.0 && now.1 > 0.0);
            assert!(now.0 <= last.0 && now.1 <= last.1);
            last = now;
        }
        assert!(ittc57(-1.0).is_finite() && schoenherr(0.0).is_finite());
    }
}
