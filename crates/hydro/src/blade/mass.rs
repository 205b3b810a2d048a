//! Weight, inertia and static unbalance.

use super::propeller::Propeller;
use super::solid::Fineness;
use crate::source::{Method, Trust};

/// Weight, inertia and static unbalance.
pub const METHOD: Method = Method {
    name: "blade-mass",
    quantity: "mass (kg), moment of inertia about the shaft (kg m^2), static unbalance (kg m)",
    formula: "volume integrals over the closed mesh by the divergence theorem, times the density",
    range: "solid blades without fillets; the root fillet and the keyway are not in it",
    error: "a few per cent for the fillets left out; density 2 %",
    source: "densities: class rules as recalled, common practice, no source",
    trust: Trust::Memory,
};

/// Propeller metals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Alloy {
    /// Manganese bronze (high-tensile brass).
    ManganeseBronze,
    /// Nickel-manganese bronze.
    NickelManganeseBronze,
    /// Nickel-aluminium bronze.
    NickelAluminiumBronze,
    /// Manganese-aluminium bronze.
    ManganeseAluminiumBronze,
    /// Austenitic stainless steel.
    StainlessSteel,
    /// Cast aluminium.
    Aluminium,
}

/// Mass properties of a propeller in air, dry.
#[derive(Clone, Debug, PartialEq)]
pub struct MassProperties {
    /// Volume of metal, m³.
    pub volume: f64,
    /// Mass, kg.
    pub mass: f64,
    /// Mass of each blade outside the hub, kg.
    pub blade_masses: Vec<f64>,
    /// Mass of the hub, kg.
    pub hub_mass: f64,
    /// Centre of mass, m.
    pub centre: [f64; 3],
    /// Moment of inertia about the shaft, kg m² (dry; entrained water not in it).
    pub inertia: f64,
    /// Static unbalance, kg m: mass times distance of its centre from the shaft axis.
    pub unbalance: f64,
    /// Where the heavy side is: angle clockwise from upright seen from astern, rad.
    pub heavy_angle: f64,
}

/// Mass properties of a propeller of a metal of `density`, kg/m³.
#[must_use]
pub fn mass_properties(propeller: &Propeller, density: f64, fineness: Fineness) -> MassProperties {
    let _ = (propeller, density, fineness);
    todo!()
}
