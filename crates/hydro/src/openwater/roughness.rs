//! Blade roughness: what it costs in thrust and torque.

use crate::source::{Method, Trust};

/// Roughness of the blades relative to a new propeller.
pub const METHOD: Method = Method {
    name: "blade-roughness-ittc78",
    quantity: "change of KT and KQ by blade roughness",
    formula: "CD = 2 (1 + 2 t/c) (1.89 + 1.62 log10(c/kp))^-2.5; dKT = -dCD 0.3 (P/D) Z c/D, dKQ = dCD 0.25 Z c/D, dCD against kp 30 um",
    range: "turbulent flow over the blade, kp of paint, slime and erosion (to about 1 mm); shell growth is beyond it",
    error: "not known for small propellers; about a third of the change itself",
    source: "ITTC 1978 performance prediction method (as in J. Holtrop & G. G. J. Mennen 1982, with their factor Z kept)",
    trust: Trust::OneCopy,
};

/// Roughness of a new blade, m: the standard value of the 1978 method.
pub const NEW_BLADE: f64 = 30e-6;

/// Drag coefficient of a rough blade section.
///
/// `CD = 2 (1 + 2 t/c) (1.89 + 1.62 log10(c/kp))^-2.5`; `thickness_ratio` is `t/c` at 0.75 R, `chord` and `roughness` in m.
/// The ratio `c/kp` is held at 20 or more, where the logarithm still means something.
#[must_use]
pub fn drag(thickness_ratio: f64, chord: f64, roughness: f64) -> f64 {
    let ratio = (chord / roughness.max(1e-7)).max(20.0);
    let base = 1.89 + 1.62 * ratio.log10();
    // base^-2.5 without the cost of a general power.
    2.0 * (1.0 + 2.0 * thickness_ratio) / (base * base * base.sqrt())
}

/// Change of `(KT, KQ)` from a new blade to one of the given roughness, at any advance ratio.
///
/// `solidity` is `Z c/D` at 0.75 R. The blade number belongs in it: every blade has drag (integrating the drag of `Z` blades
/// over the radius gives 0.31 `Z c/D` for torque where the method rounds to 0.25), and the method prints it. The worked
/// example of Holtrop & Mennen 1982, though, comes out only when it is left out; that is shown in `validation/`.
#[must_use]
pub fn change(pitch_ratio: f64, solidity: f64, thickness_ratio: f64, chord: f64, roughness: f64) -> (f64, f64) {
    let rough = roughness > 0.0 && (roughness - NEW_BLADE).abs() > 1e-12;
    if !rough || chord.is_nan() || chord <= 0.0 {
        return (0.0, 0.0);
    }
    let more = drag(thickness_ratio, chord, roughness) - drag(thickness_ratio, chord, NEW_BLADE);
    (-0.3 * more * pitch_ratio * solidity, 0.25 * more * solidity)
}

#[cfg(test)]
mod tests {
    use super::{NEW_BLADE, change};

    #[test]
    fn a_new_blade_costs_nothing_and_a_rough_one_both_ways() {
        assert_eq!(change(0.8, 1.0, 0.05, 0.15, NEW_BLADE), (0.0, 0.0));
        let (kt, kq) = change(0.8, 1.0, 0.05, 0.15, 300e-6);
        assert!(kt < 0.0 && kq > 0.0);
        let (smoother_kt, smoother_kq) = change(0.8, 1.0, 0.05, 0.15, 10e-6);
        assert!(smoother_kt > 0.0 && smoother_kq < 0.0);
    }
}
