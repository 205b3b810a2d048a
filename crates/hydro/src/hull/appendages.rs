//! Drag of what hangs under a hull: shafts, struts, rudders, skegs, lower units.

use super::friction;
use crate::source::{Method, Trust};
use std::f64::consts::PI;

/// Drag of single parts.
pub const METHOD: Method = Method {
    name: "hadler-1966-appendages",
    quantity: "drag of shafts, struts and rudders under a planing hull, N",
    formula: "shaft: ρ/2 V² l d (1.1 sin³ε + π CF); strut or rudder: ρ/2 V² S 2 CF {1 + 2 t/c + 60 (t/c)⁴}; where one pierces the surface: 0.24 ρ/2 V² t²",
    range: "fully wetted, not cavitating",
    error: "not printed in what was seen; about a quarter of the appendage drag",
    source: "J.B. Hadler, 1966, The prediction of power performance on planing craft, SNAME Transactions 74, 563-610; from memory",
    trust: Trust::Memory,
};

/// Appendages of a planing boat taken together.
pub const METHOD_FACTOR: Method = Method {
    name: "blount-fox-appendage-factor",
    quantity: "bare over appended resistance of planing boats with shafts",
    formula: "ηA = 1/(0.005 FnV² + 1.05)",
    range: "twin inclined shafts, volume Froude number up to about 4",
    error: "not printed in what was seen",
    source: "D.L. Blount and D.L. Fox, 1976, Small-craft power prediction, Marine Technology 13(1), 14-45; from memory",
    trust: Trust::Memory,
};

/// Lower unit of an outboard or sterndrive.
pub const METHOD_LOWER_UNIT: Method = Method {
    name: "lower-unit-drag",
    quantity: "drag area CD A of an outboard's or sterndrive's lower unit, m²",
    formula: "0.0016 (P/100 kW)^0.5, half to twice",
    range: "30 to 300 kW a leg, propeller and cavitation plate at their usual depth",
    error: "a factor of two either way: no published value was found",
    source: "common practice, no source",
    trust: Trust::CommonPractice,
};

/// Drag of appendages by their wetted area, N: `ρ/2 V² S (1+k2) CF` with `CF` of the hull (ITTC-57).
///
/// Source: Holtrop and Mennen 1982. `area` m², `factor` the equivalent `(1+k2)`.
#[must_use]
pub fn by_area(area: f64, factor: f64, friction_coefficient: f64, density: f64, speed: f64) -> f64 {
    0.5 * density * speed * speed * area.max(0.0) * factor.max(0.0) * friction_coefficient
}

/// Drag of an inclined bare shaft, N: `ρ/2 V² l d (1.1 sin³ε + π CF)`, `CF` on its wetted length `l` (Schoenherr).
///
/// `length` and `diameter` m, `angle_deg` to the flow, degrees. Source: Hadler 1966 ([`METHOD`]); from memory.
#[must_use]
pub fn shaft(length: f64, diameter: f64, angle_deg: f64, density: f64, viscosity: f64, speed: f64) -> f64 {
    let sin = angle_deg.to_radians().sin().abs();
    let friction = friction::schoenherr(speed * length / viscosity);
    0.5 * density * speed * speed * length * diameter * (1.1 * sin * sin * sin + PI * friction)
}

/// Drag of a strut, rudder or skeg, N: `ρ/2 V² S 2 CF {1 + 2 t/c + 60 (t/c)⁴}`, `CF` on the chord (Schoenherr).
///
/// `area` of one side m², `chord` m, `thickness_ratio` `t/c`. Source: Hadler 1966 ([`METHOD`]); from memory.
#[must_use]
pub fn foil(area: f64, chord: f64, thickness_ratio: f64, density: f64, viscosity: f64, speed: f64) -> f64 {
    let t = thickness_ratio.max(0.0);
    let friction = friction::schoenherr(speed * chord / viscosity);
    density * speed * speed * area * friction * (1.0 + 2.0 * t + 60.0 * t * t * t * t)
}

/// Spray drag of a strut or rudder that pierces the surface, N: `0.24 ρ/2 V² t²`, `thickness` m. Source as [`foil`].
#[must_use]
pub fn piercing(thickness: f64, density: f64, speed: f64) -> f64 {
    0.12 * density * speed * speed * thickness * thickness
}

/// Bare over appended resistance of a planing boat with inclined shafts, `ηA = 1/(0.005 FnV² + 1.05)`.
///
/// Source: Blount and Fox 1976 ([`METHOD_FACTOR`]); from memory.
#[must_use]
pub fn planing_factor(volume_froude: f64) -> f64 {
    1.0 / (0.005 * volume_froude * volume_froude + 1.05)
}

/// Drag area `CD A` (m²) of one outboard or sterndrive leg of a rated `power` (W): low, middle and high of an assumption
/// ([`METHOD_LOWER_UNIT`]; common practice, no source).
#[must_use]
pub fn lower_unit(power: f64) -> [f64; 3] {
    let middle = 0.0016 * (power.max(0.0) / 100e3).sqrt();
    [0.5 * middle, middle, 2.0 * middle]
}

/// The `(1+k2)` that gives a wetted `area` (m²) the drag of a drag area `CD A` (m²), by [`by_area`]: how single parts
/// and legs come into a [`Form`](super::Form), which carries one area and one factor.
#[must_use]
pub fn equivalent_factor(drag_area: f64, area: f64, friction_coefficient: f64) -> f64 {
    if area > 0.0 && friction_coefficient > 0.0 { drag_area / (area * friction_coefficient) } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEA: (f64, f64) = (1025.976, 1.1892e-6);

    #[test]
    fn shaft_along_the_flow_is_friction_on_its_skin() {
        let (l, d, v) = (1.5, 0.035, 10.0);
        let skin = 0.5 * SEA.0 * v * v * PI * l * d * friction::schoenherr(v * l / SEA.1);
        assert!((shaft(l, d, 0.0, SEA.0, SEA.1, v) - skin).abs() < 1e-9);
        assert!(shaft(l, d, 14.0, SEA.0, SEA.1, v) > 1.5 * skin);
    }

    #[test]
    fn thin_foil_is_two_sides_of_friction() {
        let plate = 2.0 * 0.5 * SEA.0 * 100.0 * 0.06 * friction::schoenherr(10.0 * 0.25 / SEA.1);
        assert!((foil(0.06, 0.25, 0.0, SEA.0, SEA.1, 10.0) - plate).abs() < 1e-9);
    }

    #[test]
    fn factor_as_the_publication_describes_it() {
        // 5 % at rest, 7 % at 2, 13 % at 4.
        for (fnv, percent) in [(0.0, 5.0), (2.0, 7.0), (4.0, 13.0)] {
            assert!((100.0 / planing_factor(fnv) - 100.0 - percent).abs() < 0.5);
        }
    }

    #[test]
    fn equivalent_factor_returns_the_drag_area() {
        let cf = 0.0028;
        let k = equivalent_factor(0.0016, 0.3, cf);
        assert!((by_area(0.3, k, cf, SEA.0, 15.0) - 0.5 * SEA.0 * 225.0 * 0.0016).abs() < 1e-9);
        assert_eq!(equivalent_factor(0.0016, 0.0, cf), 0.0);
    }
}
