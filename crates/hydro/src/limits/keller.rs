//! Least blade area against cavitation.

use crate::source::{Method, Trust};

/// Keller's rule.
pub const METHOD: Method = Method {
    name: "keller-1966",
    quantity: "least expanded area ratio AE/A0",
    formula: "AE/A0 = (1.3 + 0.3 Z) T/((p0 - pv) D^2) + k; k 0.2 single screw, 0.1 twin screw, 0 fast twin screw",
    range: "merchant ships; stated for small craft by analogy only",
    error: "k alone is worth 0.1 to 0.2",
    source: "W. H. auf'm Keller 1966, Schip en Werf; J. Holtrop & G. G. J. Mennen 1982, Int. Shipb. Progress 29 (worked example)",
    trust: Trust::Checked,
};

/// Which margin `k` the rule takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stern {
    /// One screw: 0.2.
    Single,
    /// Two screws: 0.1.
    Twin,
    /// Two screws behind a transom, fast: 0.
    FastTwin,
}

impl Stern {
    /// The margin `k`.
    #[must_use]
    pub const fn margin(self) -> f64 {
        match self {
            Stern::Single => 0.2,
            Stern::Twin => 0.1,
            Stern::FastTwin => 0.0,
        }
    }
}

/// Least expanded area ratio by Keller.
///
/// `thrust` N of one screw, `diameter` m, `head` static pressure at the shaft (atmosphere included) less vapour pressure, Pa.
#[must_use]
pub fn area_ratio(thrust: f64, diameter: f64, blades: u8, head: f64, stern: Stern) -> f64 {
    let load = thrust.max(0.0) / (head.max(100.0) * diameter * diameter);
    (1.3 + 0.3 * f64::from(blades)) * load + stern.margin()
}
