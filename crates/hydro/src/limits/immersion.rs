//! Immersion of the blade tips: air drawn from the surface.

use crate::source::{Method, Trust};

/// The rule.
pub const METHOD: Method = Method {
    name: "tip-immersion",
    quantity: "risk of drawing air",
    formula: "(h - D/2)/D: 0.2 and more ample, 0.1 to 0.2 little, below 0.1 risky, below 0 the tips break the surface",
    range: "h from the water surface in the running trim, over the shaft centre",
    error: "wide: waves, trim, load and a plate or hull above the screw matter as much",
    source: "common practice, no source",
    trust: Trust::CommonPractice,
};

/// Loss of thrust with a shallow shaft.
pub const METHOD_LOSS: Method = Method {
    name: "shallow-shaft-thrust",
    quantity: "share of thrust left when the screw is near or through the surface",
    formula: "1 - 0.675 (1 - 0.769 h/R)^1.258 for h/R below 1.3, 1 above",
    range: "heavily loaded open screws (bollard, low speed), h/R 0 to 1.3",
    error: "large; the effect depends on load",
    source: "K. J. Minsaas, H. J. Thon & W. Kauczynski 1986, Influence of ocean environment on thruster performance (from memory)",
    trust: Trust::Memory,
};

/// Risk of drawing air. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ventilation {
    /// A fifth of the diameter or more over the tips.
    Unlikely,
    /// A tenth to a fifth.
    Possible,
    /// Less than a tenth.
    Likely,
    /// Tips break the surface.
    Certain,
}

/// Water over the blade tips, m: `h - D/2`; `shaft_depth` over the shaft centre at the screw, m.
#[must_use]
pub fn tip_immersion(shaft_depth: f64, diameter: f64) -> f64 {
    shaft_depth - 0.5 * diameter
}

/// The risk by [`tip_immersion`] over the diameter.
#[must_use]
pub fn ventilation(shaft_depth: f64, diameter: f64) -> Ventilation {
    match tip_immersion(shaft_depth, diameter) / diameter.max(1e-6) {
        x if x >= 0.2 => Ventilation::Unlikely,
        x if x >= 0.1 => Ventilation::Possible,
        x if x >= 0.0 => Ventilation::Likely,
        _ => Ventilation::Certain,
    }
}

/// Share of thrust left near the surface at low speed and heavy load; `shaft_depth`, `diameter` m. From memory.
#[must_use]
pub fn thrust_left(shaft_depth: f64, diameter: f64) -> f64 {
    let ratio = (2.0 * shaft_depth / diameter.max(1e-6)).clamp(0.0, 1.3);
    1.0 - 0.675 * (1.0 - 0.769 * ratio).max(0.0).powf(1.258)
}
