//! What a propeller must not be asked for: cavitation, blade loading, tip speed, immersion; and slip.

use crate::source::Method;

pub mod breakdown;

pub use breakdown::Breakdown;

/// Methods of this room.
pub const METHODS: &[&Method] = &[];
