//! The engine: full-throttle power over speed, governor, derating, fuel.

use crate::source::Method;
use crate::speed::EngineSpeed;

/// Methods of this room.
pub const METHODS: &[&Method] = &[];

/// Points of a full-throttle curve.
pub const CURVE: usize = 8;

/// A definite engine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Engine {
    /// Full-throttle power at rated speed on the day (derated, as old as it is), W.
    pub rated_power: f64,
    /// Rated speed.
    pub rated_speed: EngineSpeed,
    /// Full-throttle curve as pairs (speed over rated speed, power over rated power), speeds rising; straight between.
    pub curve: [(f64, f64); CURVE],
    /// What holds the top: at or above which no power is left (governor's no-load speed, or limiter).
    pub top: Top,
    /// Best specific fuel consumption, kg/J.
    pub best_consumption: f64,
    /// Idle speed.
    pub idle_speed: EngineSpeed,
}

/// What holds an engine's top speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Top {
    /// Governor with droop: full torque falls in a straight line from rated speed to nothing at no-load speed.
    Governor {
        /// No-load speed.
        no_load: EngineSpeed,
    },
    /// Electronic limiter: full power up to it, none above.
    Limiter {
        /// Speed of the limiter.
        at: EngineSpeed,
    },
}
