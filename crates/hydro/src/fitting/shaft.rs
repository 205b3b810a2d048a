//! Diameter of the propeller shaft.

use crate::source::{Method, Trust};
use std::f64::consts::PI;

/// The handbook rule.
pub const HANDBOOK: Method = Method {
    name: "shaft-handbook",
    quantity: "shaft diameter (m)",
    formula: "d[in] = (321000 SHP SF/(St N))^(1/3): the diameter at which torsion reaches St/SF; 321000 is 16/pi x 63025 rounded",
    range: "solid shafts in torsion; SF takes bending, key, thrust and time",
    error: "the safety factor is the judgement: 2 light petrol pleasure craft, 3 yachts, to 8 heavy commercial, 10 asked by one authority; the key's part of it is printed as 4/3 and as 1.25 in one sentence",
    source: "ABYC P-6 and handbooks quoting it (three sources)",
    trust: Trust::Checked,
};

/// The class societies' unified rule.
pub const IACS: Method = Method {
    name: "shaft-iacs-m68",
    quantity: "shaft diameter (m)",
    formula: "d[mm] = F k (P/n x 560/(Rm+160))^(1/3), P kW, n rpm, Rm N/mm2, F 100, k 1.26 keyed",
    range: "propeller shafts of ships, Rm 400 to 600 N/mm2 (above 600 it counts as 600)",
    error: "a rule, not a strength: keyless k 1.22 is from memory",
    source: "IACS UR M68, as used with BV 2013 in a worked shafting report of 2022",
    trust: Trust::Checked,
};

/// The Canadian rule for small passenger vessels.
pub const TP11717: Method = Method {
    name: "shaft-tp11717",
    quantity: "shaft diameter (m)",
    formula: "d[mm] = 106.41 (H/R)^(1/3) max((414/S)^(1/3), 0.85) + K Pd/C; K = min(0.0008 Pd, 1), C 100 carbon steel, 144 corrosion resistant",
    range: "small passenger vessels",
    error: "a rule; the form of the intermediate shaft",
    source: "Transport Canada TP 11717, as worked by a consultant (one copy)",
    trust: Trust::Checked,
};

/// Torque of a power at a speed, `Q = P/(2 pi n)`, N m; `power` W, `turns` rev/s.
#[must_use]
pub fn torque(power: f64, turns: f64) -> f64 {
    if turns > 0.0 { power / (2.0 * PI * turns) } else { 0.0 }
}

/// Shear stress at the skin of a solid shaft, `16 Q/(pi d^3)`, Pa.
#[must_use]
pub fn shear(torque: f64, diameter: f64) -> f64 {
    if diameter > 0.0 { 16.0 * torque / (PI * diameter.powi(3)) } else { f64::INFINITY }
}

/// [`HANDBOOK`]: the diameter, m, at which torsion reaches `torsional_yield` (Pa) over `safety`.
#[must_use]
pub fn handbook(torque: f64, torsional_yield: f64, safety: f64) -> f64 {
    if torsional_yield > 0.0 { (16.0 * torque * safety / (PI * torsional_yield)).cbrt() } else { f64::INFINITY }
}

/// The safety factor of a shaft by [`HANDBOOK`].
#[must_use]
pub fn safety(torque: f64, torsional_yield: f64, diameter: f64) -> f64 {
    let shear = shear(torque, diameter);
    if shear > 0.0 { torsional_yield / shear } else { f64::INFINITY }
}

/// Safety factors in print for a duty: what yachts take, and what working boats take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Duty {
    /// Light petrol pleasure craft.
    Light,
    /// Yachts.
    Yacht,
    /// Working and passenger boats.
    Working,
}

/// The least safety factor in print for a duty, and what it is from.
#[must_use]
pub const fn least_safety(duty: Duty) -> (f64, &'static str) {
    match duty {
        Duty::Light => (2.0, "2 for light petrol pleasure craft (a yacht-design school's magazine, 2011)"),
        Duty::Yacht => (3.0, "3 for yachts (two sources)"),
        Duty::Working => {
            (8.0, "8 for heavy working boats (one copy), up to 7.5 for inspected passenger vessels (a magazine)")
        }
    }
}

/// [`IACS`]: diameter, m; `power` W, `turns` rev/s, `tensile` Pa.
#[must_use]
pub fn iacs(power: f64, turns: f64, tensile: f64, keyed: bool) -> f64 {
    let (kilowatts, rpm, strength) = (power / 1e3, 60.0 * turns, (tensile / 1e6).min(600.0));
    if rpm <= 0.0 {
        return f64::INFINITY;
    }
    let k = if keyed { 1.26 } else { 1.22 };
    1e-3 * 100.0 * k * (kilowatts / rpm * 560.0 / (strength + 160.0)).cbrt()
}

/// The parts of [`TP11717`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tp11717 {
    /// `106.41 (H/R)^(1/3)`, mm.
    pub base: f64,
    /// Factor of the material.
    pub material: f64,
    /// Allowance for the propeller, mm.
    pub propeller: f64,
}

impl Tp11717 {
    /// The parts for a power (W), shaft speed (rev/s), tensile strength (Pa) and propeller diameter (m).
    #[must_use]
    pub fn new(power: f64, turns: f64, tensile: f64, propeller: f64, corrosion_resistant: bool) -> Tp11717 {
        let across = 1e3 * propeller;
        let c = if corrosion_resistant { 144.0 } else { 100.0 };
        Tp11717 {
            base: 106.41 * (power / 1e3 / (60.0 * turns)).cbrt(),
            material: (414.0 / (tensile / 1e6)).cbrt().max(0.85),
            propeller: (0.0008 * across).min(1.0) * across / c,
        }
    }

    /// Diameter, m.
    #[must_use]
    pub fn diameter(&self) -> f64 {
        1e-3 * (self.base * self.material + self.propeller)
    }
}
