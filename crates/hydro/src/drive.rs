//! The drive between engine and propeller: reduction and losses.

use crate::source::Method;
use crate::speed::{EngineSpeed, ShaftSpeed};

/// Methods of this room.
pub const METHODS: &[&Method] = &[];

/// A definite drive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drive {
    /// Engine revolutions per shaft revolution, ahead.
    pub reduction: f64,
    /// Power at the propeller over power at the place the engine's power is declared, gear and bearings.
    pub efficiency: f64,
}

impl Drive {
    /// Shaft speed at an engine speed.
    #[must_use]
    pub fn shaft(&self, engine: EngineSpeed) -> ShaftSpeed {
        ShaftSpeed(engine.0 / self.reduction)
    }

    /// Engine speed at a shaft speed.
    #[must_use]
    pub fn engine(&self, shaft: ShaftSpeed) -> EngineSpeed {
        EngineSpeed(shaft.0 * self.reduction)
    }
}
