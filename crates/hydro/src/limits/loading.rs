//! Thrust per blade area, as the small-craft handbook judges it.

use crate::openwater::bp_delta::KNOT;
use crate::source::{Method, Trust};

/// Allowable blade loading.
pub const METHOD: Method = Method {
    name: "blade-loading-handbook",
    quantity: "allowable thrust per developed blade area",
    formula: "psi = 1.9 Va^0.5 h^0.08 (Va knots, h shaft depth in feet); actual = T/AD",
    range: "small craft with inboard engines",
    error: "not known; on projected area the same load reads about a sixth higher",
    source: "D. Gerr 1989, Propeller Handbook, formulas 5-6 and 5-7 (numbers and titles seen, constants from memory)",
    trust: Trust::Memory,
};

/// One pound-force per square inch, Pa.
pub const PSI: f64 = 6_894.757_293_168;

/// Allowable thrust per developed area, Pa: `1.9 Va^0.5 h^0.08` psi; `va` m/s, `shaft_depth` m. From memory.
#[must_use]
pub fn allowable(va: f64, shaft_depth: f64) -> f64 {
    PSI * 1.9 * (va.max(0.0) / KNOT).sqrt() * (shaft_depth.max(0.0) / 0.3048).powf(0.08)
}

/// Actual thrust per area, Pa: `T/A`; `area` m² of blade, developed for [`allowable`]. Nothing when there is no area.
///
/// The handbook writes `326 SHP η/(Va A)`, which is the same with 325.87 rounded.
#[must_use]
pub fn actual(thrust: f64, area: f64) -> f64 {
    if area > 0.0 { thrust / area } else { 0.0 }
}
