//! A state of the boat other than the one described: another propeller, ratio, weight or surface.

use super::physics;
use crate::change::Change;
use job::assume::{self, Dist};
use job::{Growth, State};

/// What differs from the boat as described. Distributions are drawn with the same standard normal number as the quantity
/// they replace, so that a difference between two states is not blurred by what both have in common.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Setup {
    /// Diameter, m.
    pub diameter: Option<f64>,
    /// Marked pitch, m.
    pub pitch: Option<f64>,
    /// Blades.
    pub blades: Option<u8>,
    /// Expanded area ratio, middle.
    pub area_ratio: Option<f64>,
    /// Cup.
    pub cup: Option<Dist>,
    /// Reduction.
    pub reduction: Option<f64>,
    /// Mass, kg.
    pub mass: Option<Dist>,
    /// Roughness of the bottom, m.
    pub hull_roughness: Option<Dist>,
    /// Roughness of the blades, m.
    pub blade_roughness: Option<Dist>,
    /// Blades made alike at the marked pitch.
    pub trued: bool,
    /// Another propeller, not the fitted one worked over: its true pitch and area are its own.
    pub other_propeller: bool,
}

impl Setup {
    /// From a change asked for. Pitch, cup and less diameter can be had from the propeller fitted; anything else is
    /// another propeller.
    #[must_use]
    pub fn of_change(change: &Change, fitted_diameter: f64, fitted_blades: u8) -> Setup {
        Setup {
            diameter: change.diameter,
            pitch: change.pitch,
            blades: change.blades,
            area_ratio: change.area_ratio,
            cup: change.cup.map(|c| physics::cup(Some(c), false).dist),
            reduction: change.reduction,
            mass: change.displacement.map(Dist::fixed),
            hull_roughness: change.hull_growth.map(|g| physics::hull_roughness(Some(g), None, 15.0, false).dist),
            blade_roughness: change.blade_growth.map(|g| physics::blade_roughness(Some(g), false).dist),
            trued: false,
            other_propeller: change.blades.is_some_and(|z| z != fitted_blades)
                || change.diameter.is_some_and(|d| d > 1.002 * fitted_diameter)
                || change.area_ratio.is_some(),
        }
    }

    /// From the state a reading was taken in.
    #[must_use]
    pub fn of_state(state: &State, fitted_blades: u8, leg: bool) -> Setup {
        let p = state.propeller.as_ref();
        let diameter = p.and_then(|p| p.diameter.as_ref()).map(|q| q.middle);
        let blades = p.and_then(|p| p.blades);
        let width = p.and_then(|p| p.width);
        let stated_area = p.and_then(|p| p.area_ratio.as_ref()).map(|q| q.middle);
        let area_ratio = stated_area.or_else(|| {
            (width.is_some() || blades.is_some_and(|z| z != fitted_blades))
                .then(|| assume::area_ratio(blades.unwrap_or(fitted_blades), width, leg).dist.middle)
        });
        Setup {
            diameter,
            pitch: p.and_then(|p| p.pitch.as_ref()).map(|q| q.middle),
            blades,
            area_ratio,
            cup: p.and_then(|p| p.cup).map(|c| physics::cup(Some(c), false).dist),
            reduction: state.reduction.as_ref().map(|q| q.middle),
            mass: state.displacement.as_ref().map(|q| Dist::band(q.low, q.middle, q.high)),
            hull_roughness: (state.growth.is_some() || state.since_scrub.is_some()).then(|| {
                physics::hull_roughness(state.growth, state.since_scrub.as_ref().map(|q| q.middle), 15.0, false).dist
            }),
            blade_roughness: match (p.and_then(|p| p.growth).or(state.growth), &state.since_scrub) {
                (Some(growth), _) => Some(physics::blade_roughness(Some(growth), false).dist),
                (None, Some(time)) => Some(physics::blade_roughness_after(time.middle, 15.0).dist),
                (None, None) => None,
            },
            trued: false,
            // Only pitch or cup given: the same propeller before or after work. A diameter, blade number or width given:
            // another propeller with errors of its own.
            other_propeller: p.is_some_and(|p| p.diameter.is_some() || p.blades.is_some() || p.width.is_some())
                || area_ratio.is_some(),
        }
    }

    /// Clean bottom and blades, at a weight if one is given.
    #[must_use]
    pub fn clean(mass: Option<Dist>) -> Setup {
        Setup {
            mass,
            hull_roughness: Some(physics::hull_roughness(Some(Growth::Clean), None, 15.0, false).dist),
            blade_roughness: Some(physics::blade_roughness(Some(Growth::Clean), false).dist),
            ..Setup::default()
        }
    }

    /// This setup with the other's fields laid over it.
    #[must_use]
    pub fn with(self, other: &Setup) -> Setup {
        Setup {
            diameter: other.diameter.or(self.diameter),
            pitch: other.pitch.or(self.pitch),
            blades: other.blades.or(self.blades),
            area_ratio: other.area_ratio.or(self.area_ratio),
            cup: other.cup.or(self.cup),
            reduction: other.reduction.or(self.reduction),
            mass: other.mass.or(self.mass),
            hull_roughness: other.hull_roughness.or(self.hull_roughness),
            blade_roughness: other.blade_roughness.or(self.blade_roughness),
            trued: self.trued || other.trued,
            other_propeller: self.other_propeller || other.other_propeller,
        }
    }

    /// Whether the hull runs as described.
    #[must_use]
    pub fn same_hull(&self) -> bool {
        self.mass.is_none() && self.hull_roughness.is_none()
    }
}
