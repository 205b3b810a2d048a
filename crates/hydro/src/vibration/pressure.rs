//! Pressure pulse on the hull above the propeller.

use crate::source::{Method, Trust};

/// Holden's regression.
pub const METHOD: Method = Method {
    name: "hull-pulse-holden",
    quantity: "single amplitude of the pressure on the hull at blade rate (Pa)",
    formula: "p0 = (N D)^2/70 Z^-1.5 K0/(d/R); pc = (N D)^2/160 Vs (wTmax - we)/sqrt(ha + 10.4) Kc/(d/R); p = sqrt(p0^2 + pc^2); K0 = 1.8 + 0.4 d/R to 2; Kc = 1.7 - 0.7 d/R below 1, then 1; N rpm, D m, Vs m/s, ha m, d from the 0.9 R point to the hull",
    range: "72 ships of the seventies, little skew; small craft lie far outside",
    error: "30 % on ships; on boats a comparison of one propeller with another, no level",
    source: "K. O. Holden, O. Fagerjord & R. Frostad 1980, Early design-stage approach to reducing hull surface forces due to propeller cavitation, Trans. SNAME 88, as printed by Carlton (from memory)",
    trust: Trust::Memory,
};

/// What the pulse hangs on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Above {
    /// Shaft speed, rev/s.
    pub turns: f64,
    /// Diameter, m.
    pub diameter: f64,
    /// Blades.
    pub blades: u8,
    /// From the blade's 0.9 R point, upright, to the hull, m.
    pub gap: f64,
    /// Boat speed, m/s.
    pub speed: f64,
    /// Greatest wake less the mean wake.
    pub peak: f64,
    /// Depth of the shaft, m.
    pub depth: f64,
}

/// The pulse without and with cavitation, Pa: passing blades, cavities; and both together.
#[must_use]
pub fn pulse(at: &Above) -> (f64, f64, f64) {
    let near = at.gap / (0.5 * at.diameter);
    if near.is_nan() || near <= 0.0 {
        return (f64::INFINITY, f64::INFINITY, f64::INFINITY);
    }
    let nd2 = (60.0 * at.turns * at.diameter).powi(2);
    let k0 = 1.8 + 0.4 * near.min(2.0);
    let kc = if near < 1.0 { 1.7 - 0.7 * near } else { 1.0 };
    let passing = nd2 / 70.0 * f64::from(at.blades.max(1)).powf(-1.5) * k0 / near;
    let cavities = nd2 / 160.0 * at.speed * at.peak.max(0.0) / (at.depth.max(0.0) + 10.4).sqrt() * kc / near;
    (passing, cavities, passing.hypot(cavities))
}
