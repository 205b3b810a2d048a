//! The stern: wake, thrust deduction, relative rotative efficiency, shaft angle.

use crate::source::Method;

/// Methods of this room.
pub const METHODS: &[&Method] = &[];

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
