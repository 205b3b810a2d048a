//! Usual values by arrangement: what to assume when nothing is known, with bands wide enough to be honest.

use super::{Arrangement, wake};
use crate::source::{Method, Trust};

/// What [`typical`] is.
pub const METHOD: Method = Method {
    name: "stern-typical",
    quantity: "wake, thrust deduction and relative rotative efficiency by arrangement: low, middle, high (80 % band)",
    formula: "table; the wake of apertures and shafts on displacement hulls moves with the block coefficient",
    range: "small craft",
    error: "the bands",
    source: "working values without a published table for yachts, outboards, sterndrives and tunnels; planing shafts after \
             D. L. Blount & D. L. Fox, Small-craft power prediction, Marine Technology 13 (1976), as a range from memory",
    trust: Trust::CommonPractice,
};
/// What [`bollard_deduction`] is.
pub const BOLLARD: Method = Method {
    name: "bollard-deduction",
    quantity: "thrust deduction at the bollard: low, middle, high (80 % band)",
    formula: "0.02..0.07 clear of the hull, more behind a deadwood",
    range: "open propellers",
    error: "the bands",
    source: "working values from memory; behind deadwood and skeg assumed",
    trust: Trust::Memory,
};

/// Low, middle, high: an 80 % band.
pub type Band = (f64, f64, f64);

/// Usual interaction of hull and propeller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Typical {
    /// Wake fraction.
    pub wake: Band,
    /// Thrust deduction fraction.
    pub thrust_deduction: Band,
    /// Relative rotative efficiency.
    pub relative_rotative: Band,
    /// How far to trust it.
    pub trust: Trust,
}

/// Usual values for an arrangement, number of screws and block coefficient (of the canoe body).
#[must_use]
pub fn typical(arrangement: Arrangement, screws: u8, block_coefficient: f64) -> Typical {
    let cb = if block_coefficient.is_finite() { block_coefficient.clamp(0.30, 0.80) } else { 0.45 };
    let around = |middle: f64, below: f64, above: f64| (middle - below, middle, middle + above);
    let (wake, thrust_deduction, relative_rotative, trust) = match arrangement {
        Arrangement::Aperture => {
            // Long keel 0.20..0.30 as a working value, drawn towards what Taylor and Gerr say for this fullness.
            let middle = (0.25 + wake::taylor_table(cb, 1).value + wake::gerr_block(cb, 1)) / 3.0;
            (around(middle, 0.05, 0.05), (0.14, 0.175, 0.21), (0.97, 1.0, 1.03), Trust::CommonPractice)
        }
        Arrangement::Skeg => ((0.10, 0.125, 0.15), (0.08, 0.10, 0.12), (0.97, 0.99, 1.02), Trust::CommonPractice),
        Arrangement::FinKeelStrut | Arrangement::Saildrive => {
            ((0.03, 0.065, 0.10), (0.03, 0.055, 0.08), (0.96, 0.985, 1.01), Trust::CommonPractice)
        }
        Arrangement::Outboard | Arrangement::Sterndrive => {
            ((0.0, 0.015, 0.03), (0.0, 0.015, 0.03), (0.97, 0.99, 1.01), Trust::CommonPractice)
        }
        // Planing twin screws: 1-t about 0.92 (0.82..1.0), 1-w 0.98..1.05, etaR 0.95..1.0. A single screw sits in the
        // keel's wake: a little more.
        Arrangement::InclinedShaft if screws > 1 => {
            ((-0.04, 0.0, 0.03), (0.03, 0.08, 0.14), (0.95, 0.975, 1.0), Trust::Memory)
        }
        Arrangement::InclinedShaft => {
            ((-0.01, 0.035, 0.09), (0.03, 0.08, 0.14), (0.95, 0.98, 1.01), Trust::CommonPractice)
        }
        Arrangement::Tunnel => ((-0.02, 0.04, 0.10), (0.03, 0.08, 0.14), (0.95, 0.98, 1.01), Trust::CommonPractice),
    };
    Typical { wake, thrust_deduction, relative_rotative, trust }
}

/// Thrust deduction at the bollard by arrangement.
#[must_use]
pub fn bollard_deduction(arrangement: Arrangement) -> Band {
    match arrangement {
        Arrangement::Aperture => (0.04, 0.08, 0.12),
        Arrangement::Skeg => (0.03, 0.06, 0.10),
        Arrangement::Outboard | Arrangement::Sterndrive => (0.01, 0.02, 0.04),
        Arrangement::FinKeelStrut | Arrangement::Saildrive | Arrangement::InclinedShaft | Arrangement::Tunnel => {
            (0.02, 0.045, 0.07)
        }
    }
}
