//! The water and the air: density, viscosity, vapour pressure; atmosphere at a height.

use crate::note::{Note, Noted, Notes};
use crate::source::Method;

pub mod air;
pub mod density;
pub mod vapour;
pub mod viscosity;

pub use air::{air_density, standard_pressure};

/// Methods of this room.
pub const METHODS: &[&Method] = &[&density::METHOD, &viscosity::METHOD, &vapour::METHOD, &air::METHOD];

/// Standard acceleration of gravity, m/s² (exact by convention).
pub const GRAVITY: f64 = 9.806_65;
/// Standard atmosphere, Pa.
pub const ATMOSPHERE: f64 = 101_325.0;
/// Absolute salinity of standard sea water, g/kg (ITTC 7.5-02-01-03, 2011; practical salinity 35).
pub const STANDARD_SALINITY: f64 = 35.165_04;

/// Temperature taken when none can be read, °C.
const USUAL: f64 = 15.0;

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
    pub fn fresh(celsius: f64) -> Noted<Water> {
        Water::of_salinity(celsius, 0.0)
    }

    /// Sea water of standard composition at a temperature in °C.
    #[must_use]
    pub fn sea(celsius: f64) -> Noted<Water> {
        Water::of_salinity(celsius, STANDARD_SALINITY)
    }

    /// Water of an absolute salinity in g/kg (0 fresh, 35.165 the sea; estuaries and inland seas lie between).
    ///
    /// The formulas are held against tables from 0 to 30 °C; outside the temperature is used as it is down to -2 and up
    /// to 40 °C, clamped beyond, and a note travels with the result. A temperature that is not a number counts as 15 °C.
    #[must_use]
    pub fn of_salinity(celsius: f64, grams_per_kg: f64) -> Noted<Water> {
        let mut notes = Notes::NONE;
        notes.add_if(!(0.0..=30.0).contains(&celsius), Note::WaterTemperatureOutside);
        notes.add_if(!(0.0..=42.0).contains(&grams_per_kg), Note::SalinityOutside);
        let t = if celsius.is_finite() { celsius.clamp(-2.0, 40.0) } else { USUAL };
        let s = if grams_per_kg.is_finite() { grams_per_kg.clamp(0.0, 42.0) } else { STANDARD_SALINITY };
        let density = density::density(t, s);
        let water =
            Water { density, viscosity: viscosity::dynamic(t, s) / density, vapour_pressure: vapour::pressure(t, s) };
        Noted::new(water, notes)
    }

    /// Static pressure at a depth in m below the surface under an atmosphere in Pa, Pa: `p + ρ g h`.
    #[must_use]
    pub fn static_pressure(&self, depth: f64, atmosphere: f64) -> f64 {
        atmosphere + self.density * GRAVITY * depth
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_when_the_temperature_is_outside() {
        assert!(Water::sea(15.0).notes.is_empty());
        assert!(Water::sea(31.0).notes.has(Note::WaterTemperatureOutside));
        assert_eq!(Water::fresh(90.0).value, Water::fresh(40.0).value);
    }

    #[test]
    fn no_number_becomes_the_usual_temperature_and_a_note() {
        let water = Water::sea(f64::NAN);
        assert!(water.notes.has(Note::WaterTemperatureOutside));
        assert_eq!(water.value, Water::sea(15.0).value);
        assert!(Water::of_salinity(15.0, f64::NAN).notes.has(Note::SalinityOutside));
    }

    #[test]
    fn brackish_water_lies_between() {
        let [fresh, half, sea] = [0.0, 8.0, STANDARD_SALINITY].map(|s| Water::of_salinity(10.0, s).value);
        assert!(fresh.density < half.density && half.density < sea.density);
        assert!(fresh.vapour_pressure > half.vapour_pressure && half.vapour_pressure > sea.vapour_pressure);
    }
}
