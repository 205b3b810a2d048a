//! The coordinates of the older propeller charts, `Bp` and `δ`.

use crate::source::{Method, Trust};
use std::f64::consts::TAU;

/// Power and diameter coefficient.
pub const METHOD: Method = Method {
    name: "bp-delta",
    quantity: "Bp and delta of Taylor's charts",
    formula: "Bp = N sqrt(P)/Va^2.5, delta = N D/Va (rpm, horsepower, knots, feet or metres)",
    range: "none: a definition",
    error: "none; charts differ in horsepower, length and water, which the arguments name",
    source: "D. W. Taylor's coefficients; worked example of a published course design (MAU charts)",
    trust: Trust::Checked,
};

/// One knot, m/s (exact).
pub const KNOT: f64 = 1852.0 / 3600.0;

/// The units a chart is drawn in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Chart {
    /// British horsepower (550 ft lbf/s) and feet.
    British,
    /// Metric horsepower (75 kgf m/s) and metres.
    Metric,
}

impl Chart {
    /// One horsepower, W.
    #[must_use]
    pub const fn horsepower(self) -> f64 {
        match self {
            Chart::British => 745.699_871_582_270_2,
            Chart::Metric => 735.498_75,
        }
    }

    /// Unit of diameter, m.
    #[must_use]
    pub const fn length(self) -> f64 {
        match self {
            Chart::British => 0.3048,
            Chart::Metric => 1.0,
        }
    }
}

/// `Bp = N √P / Va^2.5`; `power` W delivered to the propeller, `n` rev/s, `va` m/s. Infinite when `va` is 0.
#[must_use]
pub fn bp(power: f64, n: f64, va: f64, chart: Chart) -> f64 {
    60.0 * n * (power.max(0.0) / chart.horsepower()).sqrt() / (va.max(0.0) / KNOT).powf(2.5)
}

/// `δ = N D / Va`; `n` rev/s, `diameter` m, `va` m/s. Infinite when `va` is 0.
#[must_use]
pub fn delta(n: f64, diameter: f64, va: f64, chart: Chart) -> f64 {
    60.0 * n * (diameter / chart.length()) / (va.max(0.0) / KNOT)
}

/// `Bp` of a working point: `60 √(2πρ/hp) kn^2.5 √(KQ/J⁵)`, that is 33.47 `√(KQ/J⁵)` in sea water on a British chart.
///
/// `density` kg/m³. Textbooks print 33.07 or 33.08, which is fresh water.
#[must_use]
pub fn bp_of_coefficients(kq: f64, advance_ratio: f64, density: f64, chart: Chart) -> f64 {
    60.0 * (TAU * density / chart.horsepower()).sqrt() * KNOT.powf(2.5) * (kq.max(0.0) / advance_ratio.powi(5)).sqrt()
}

/// `δ` of an advance ratio: 101.27/`J` in feet.
#[must_use]
pub fn delta_of_advance(advance_ratio: f64, chart: Chart) -> f64 {
    60.0 * KNOT / chart.length() / advance_ratio
}
