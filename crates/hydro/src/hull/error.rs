//! How far each resistance method may be off: standard deviation of `ln R` by Froude number.
//!
//! Where the sizes come from (replayed in `validation/tests/hull_displacement/`):
//! - Delft and Holtrop up to Fn 0.45: total resistance at 10 m against 17 measured yacht models with keel and rudder, root
//!   mean square of `ln(R/R_measured)` about zero, so a method's bias on such boats is inside it (bare-hull methods lie 13 %
//!   to 17 % low there), joined with [`BOAT`].
//! - Delft 1981 and Holtrop above Fn 0.45: mean distance from the 2008 regression on the same models, joined with its own.
//! - Speed rules: speed against nine boats that reached it, three times (Gerr) or twice (Crouch) the error of ln V, joined
//!   with [`EFFICIENCY`]; Gerr below Fn 0.45 against the 17 models, for the rule is no resistance curve there.
//!
//! The comparisons are few and of one kind of boat: the figures are good to about a factor of 1.5.

use crate::source::{Method as Record, Trust};

/// The error table.
pub const METHOD: Record = Record {
    name: "resistance-error",
    quantity: "standard deviation of ln(resistance) of each displacement-hull method by Froude number",
    formula: "table, straight between Froude numbers",
    range: "Fn 0.1 .. 1.2",
    error: "good to a factor of 1.5: sizes come from 17 yacht models and nine lifeboats and launches",
    source: "own comparison with Gerritsma, Onnink and Versluis 1981 (open data) and boats' published speeds; a real boat \
             against a model of it 0.06, efficiency 0.16: common practice, no source",
    trust: Trust::CommonPractice,
};

/// What a real boat adds to a model's error: lines that differ, what is fixed below the water. Common practice, no source.
pub const BOAT: f64 = 0.06;
/// Spread of ln overall efficiency when a resistance is worked back from power (0.40 .. 0.60). Common practice, no source.
pub const EFFICIENCY: f64 = 0.16;

/// The displacement-hull methods that have an error of their own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Method {
    /// Holtrop & Mennen 1982.
    Holtrop1982,
    /// Holtrop 1984.
    Holtrop1984,
    /// Delft 1981, keel and rudder included.
    Delft1981,
    /// Delft 1998, bare canoe body.
    Delft1998,
    /// Delft 2008, bare canoe body.
    Delft2008,
    /// Speed-length rule worked back.
    Gerr,
    /// Planing speed rule worked back.
    Crouch,
    /// Points somebody towed, within their speeds.
    Measured,
}

/// Froude numbers of the table.
const FROUDE: [f64; 13] = [0.10, 0.20, 0.25, 0.30, 0.35, 0.40, 0.45, 0.50, 0.60, 0.70, 0.80, 1.00, 1.20];

impl Method {
    /// Every method.
    pub const ALL: [Method; 8] = [
        Method::Holtrop1982,
        Method::Holtrop1984,
        Method::Delft1981,
        Method::Delft1998,
        Method::Delft2008,
        Method::Gerr,
        Method::Crouch,
        Method::Measured,
    ];

    #[rustfmt::skip]
    const fn table(self) -> [f64; 13] {
        match self {
            Method::Holtrop1982 => [0.15, 0.15, 0.225, 0.17, 0.20, 0.20, 0.18, 0.19, 0.30, 0.53, 0.60, 0.70, 0.80],
            Method::Holtrop1984 => [0.16, 0.13, 0.195, 0.16, 0.18, 0.18, 0.52, 0.65, 0.75, 0.72, 0.70, 0.70, 0.70],
            Method::Delft1981 => [0.09, 0.075, 0.07, 0.066, 0.065, 0.063, 0.065, 0.09, 0.17, 0.36, 0.50, 0.60, 0.70],
            Method::Delft1998 => [0.16, 0.18, 0.172, 0.153, 0.15, 0.134, 0.158, 0.17, 0.17, 0.25, 0.35, 0.50, 0.60],
            Method::Delft2008 => [0.16, 0.187, 0.182, 0.15, 0.165, 0.155, 0.18, 0.18, 0.18, 0.20, 0.25, 0.40, 0.50],
            Method::Gerr => [1.70, 1.49, 1.36, 1.20, 0.96, 0.46, 0.22, 0.30, 0.40, 0.35, 0.30, 0.50, 0.80],
            Method::Crouch => [1.00, 1.00, 1.00, 1.00, 1.00, 1.00, 0.80, 0.65, 0.50, 0.42, 0.35, 0.30, 0.30],
            Method::Measured => [0.05; 13],
        }
    }
}

/// Standard deviation of `ln R` of a method at a Froude number on the waterline length; held at the table's ends.
#[must_use]
pub fn sd(method: Method, froude: f64) -> f64 {
    let table = method.table();
    let last = FROUDE.len() - 1;
    if froude.is_nan() || froude <= FROUDE[0] {
        return table[0];
    }
    if froude >= FROUDE[last] {
        return table[last];
    }
    let i = FROUDE.partition_point(|known| *known <= froude) - 1;
    let t = (froude - FROUDE[i]) / (FROUDE[i + 1] - FROUDE[i]);
    table[i] + t * (table[i + 1] - table[i])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sensible_number_for_every_method_and_speed() {
        for method in Method::ALL {
            for i in -10..200 {
                let sd = sd(method, 0.01 * f64::from(i));
                assert!(sd > 0.0 && sd < 2.0);
            }
            assert!(sd(method, f64::NAN) > 0.0);
        }
    }

    #[test]
    fn the_table_stands_at_its_froude_numbers() {
        assert_eq!(sd(Method::Gerr, 0.45), 0.22);
        assert!((sd(Method::Holtrop1984, 0.425) - 0.35).abs() < 1e-12);
    }
}
