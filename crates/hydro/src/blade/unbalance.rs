//! Shaft-rate force and moment of blades that differ.

use super::propeller::Propeller;
use crate::source::{Method, Trust};

/// Hydrodynamic unbalance.
pub const METHOD: Method = Method {
    name: "hydrodynamic-unbalance",
    quantity: "force (N) and moment (N m) that turn with the shaft",
    formula: "blade thrust = T/Z (1 + a dP/P + b dA/A), torque alike; force = sum Q_i/r along the tangent, moment = sum T_i r; r = 0.7 R",
    range: "small differences between blades, quasi-steady, open water",
    error: "an estimate: blades act on each other, which evens differences out; half to once the value is likely",
    source: "ours, from blade-element reasoning",
    trust: Trust::CommonPractice,
};

/// Load of the whole propeller at one working point, and how a blade's share follows its pitch and area.
///
/// The exponents are logarithmic derivatives of the series at that point: `d ln KT/d ln(P/D)` and so on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BladeLoad {
    /// Thrust, N.
    pub thrust: f64,
    /// Torque, N m.
    pub torque: f64,
    /// `d ln T/d ln P`.
    pub thrust_by_pitch: f64,
    /// `d ln Q/d ln P`.
    pub torque_by_pitch: f64,
    /// `d ln T/d ln A`.
    pub thrust_by_area: f64,
    /// `d ln Q/d ln A`.
    pub torque_by_area: f64,
}

/// What turns with the shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct ShaftRate {
    /// Force square to the shaft, N.
    pub force: f64,
    /// Bending moment, N m.
    pub moment: f64,
    /// Thrust of each blade, N.
    pub thrusts: Vec<f64>,
    /// Torque of each blade, N m.
    pub torques: Vec<f64>,
}

/// Estimates force and moment at shaft rate from the differences of effective pitch, area and spacing between blades.
#[must_use]
pub fn shaft_rate(propeller: &Propeller, load: &BladeLoad) -> ShaftRate {
    let _ = (propeller, load);
    todo!()
}
