//! Weight, inertia and static unbalance.

use super::propeller::Propeller;
use super::solid::{Fineness, blade_mesh, hub_mesh};
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

impl Alloy {
    /// Density, kg/m³. Bronzes as class rules are remembered to state them (memory); steel and aluminium: common practice, no
    /// source.
    #[must_use]
    pub const fn density(self) -> f64 {
        match self {
            Alloy::ManganeseBronze | Alloy::NickelManganeseBronze => 8300.0,
            Alloy::NickelAluminiumBronze => 7600.0,
            Alloy::ManganeseAluminiumBronze => 7500.0,
            Alloy::StainlessSteel => 7900.0,
            Alloy::Aluminium => 2700.0,
        }
    }
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
    let hub = hub_mesh(&propeller.hub, fineness).moments();
    let mut p = MassProperties {
        volume: hub.volume,
        mass: 0.0,
        blade_masses: Vec::with_capacity(propeller.blades.len()),
        hub_mass: density * hub.volume,
        centre: hub.centre.map(|c| c * hub.volume),
        inertia: density * (hub.second[1] + hub.second[2]),
        unbalance: 0.0,
        heavy_angle: 0.0,
    };
    for i in 0..propeller.blades.len() {
        let blade = blade_mesh(propeller, i, fineness).moments();
        p.blade_masses.push(density * blade.volume);
        p.volume += blade.volume;
        p.inertia += density * (blade.second[1] + blade.second[2]);
        for (sum, centre) in p.centre.iter_mut().zip(blade.centre) {
            *sum += centre * blade.volume;
        }
    }
    p.mass = density * p.volume;
    p.unbalance = density * p.centre[1].hypot(p.centre[2]);
    if p.unbalance > 0.0 {
        // y = -r sin θ, z = r cos θ.
        p.heavy_angle = (-p.centre[1]).atan2(p.centre[2]);
    }
    if p.volume > 0.0 {
        p.centre = p.centre.map(|c| c / p.volume);
    }
    p
}
