//! Allowed unbalance.

use crate::source::{Method, Trust};
use std::f64::consts::TAU;

/// Balance quality grades.
pub const METHOD: Method = Method {
    name: "balance-grade",
    quantity: "allowed unbalance (kg m)",
    formula: "U = G m/w, G mm/s: U[g mm] = 9549 G m[kg]/n[rpm]",
    range: "rigid rotors; G 6.3 machinery in general, G 16 drive shafts; ship propellers stand in no list read",
    error: "a grade, not a limit of harm",
    source: "ISO 21940-11 (three sources)",
    trust: Trust::Checked,
};

/// Grade of machinery in general, mm/s.
pub const GENERAL: f64 = 6.3;
/// Grade of drive shafts, mm/s.
pub const DRIVE_SHAFTS: f64 = 16.0;

/// Allowed unbalance, kg m; `grade` mm/s, `mass` kg, `turns` rev/s.
#[must_use]
pub fn allowed(grade: f64, mass: f64, turns: f64) -> f64 {
    if turns > 0.0 { 1e-3 * grade * mass / (TAU * turns) } else { f64::INFINITY }
}

/// Turning force of an unbalance, N: `U w^2`; kg m, rev/s.
#[must_use]
pub fn force(unbalance: f64, turns: f64) -> f64 {
    unbalance * (TAU * turns).powi(2)
}
