//! The stern: wake, thrust deduction, relative rotative efficiency, shaft angle.
//!
//! Taylor's convention throughout: `Va = V(1 - w)`, `T (1 - t) = R`, hull efficiency `ηH = (1 - t)/(1 - w)`. Some books
//! use `Wf = 1 - w`.

use crate::source::Method;

pub mod deduction;
pub mod shaft_angle;
pub mod typical;
pub mod wake;

pub use typical::{Band, Typical, bollard_deduction, typical};

/// Methods of this room.
pub const METHODS: &[&Method] = &[
    &wake::TAYLOR,
    &wake::TAYLOR_LINE,
    &wake::GERR_BLOCK,
    &wake::GERR_SPEED,
    &deduction::SCHOENHERR,
    &shaft_angle::METHOD,
    &typical::METHOD,
    &typical::BOLLARD,
];

/// Where the propeller works.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Arrangement {
    /// Aperture in a long keel or deadwood.
    Aperture,
    /// Fin keel, shaft and strut (bracket).
    FinKeelStrut,
    /// Behind a skeg.
    Skeg,
    /// Saildrive leg.
    Saildrive,
    /// Outboard leg.
    Outboard,
    /// Sterndrive leg.
    Sterndrive,
    /// Inclined shaft under a planing or semi-displacement hull.
    InclinedShaft,
    /// Propeller tunnel.
    Tunnel,
}

/// Interaction of a definite boat's hull and propeller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stern {
    /// Taylor wake fraction `w = 1 - Va/V`.
    pub wake: f64,
    /// Thrust deduction fraction `t = 1 - R/T`.
    pub thrust_deduction: f64,
    /// Relative rotative efficiency `ηR = KQ open water / KQ behind`.
    pub relative_rotative: f64,
    /// Angle of the shaft to the flow, degrees.
    pub shaft_angle_deg: f64,
}

impl Stern {
    /// A propeller in undisturbed water: no wake, no deduction, straight flow.
    pub const OPEN: Stern = Stern { wake: 0.0, thrust_deduction: 0.0, relative_rotative: 1.0, shaft_angle_deg: 0.0 };

    /// Thrust deduction at the bollard, where the flow into the propeller is its own only: two fifths of that under way,
    /// at least 0.02 (and never more than under way). Common practice, no source; with the usual deductions it falls inside
    /// the 0.02..0.07 stated for propellers clear of the hull. Bands by arrangement: [`bollard_deduction`].
    #[must_use]
    pub fn bollard_deduction(&self) -> f64 {
        (0.4 * self.thrust_deduction).max(0.02).min(self.thrust_deduction.max(0.0))
    }

    /// Hull efficiency `ηH = (1 - t)/(1 - w)`.
    #[must_use]
    pub fn hull_efficiency(&self) -> f64 {
        (1.0 - self.thrust_deduction) / (1.0 - self.wake)
    }
}
