//! The running point: where hull, propeller and engine agree.

use crate::drive::Drive;
use crate::engine::Engine;
use crate::hull::Curve;
use crate::limits::Breakdown;
use crate::openwater::Curves;
use crate::source::Method;
use crate::speed::{EngineSpeed, ShaftSpeed};
use crate::stern::Stern;
use crate::water::Water;

/// Methods of this room.
pub const METHODS: &[&Method] = &[];

/// A definite boat, ready to run: everything reduced to small tables.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Installation {
    /// The water.
    pub water: Water,
    /// Resistance of the whole boat over speed.
    pub resistance: Curve,
    /// Further steady pull at every speed (tow, dragging rope), N.
    pub tow: f64,
    /// Number of propellers, each with its own engine, sharing the load evenly.
    pub screws: u8,
    /// Hull-propeller interaction.
    pub stern: Stern,
    /// Propeller diameter, m.
    pub diameter: f64,
    /// Open-water characteristics of one propeller (Reynolds, roughness, cup and series error included).
    pub open_water: Curves,
    /// Loss of thrust and torque when cavitating.
    pub breakdown: Breakdown,
    /// Reduction and losses.
    pub drive: Drive,
    /// The engine.
    pub engine: Engine,
}

/// A steady state of the boat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Boat speed, m/s.
    pub speed: f64,
    /// Engine speed.
    pub engine_speed: EngineSpeed,
    /// Shaft speed.
    pub shaft_speed: ShaftSpeed,
    /// Advance ratio `J = V(1-w)/(nD)`.
    pub advance_ratio: f64,
    /// Thrust of one propeller along the shaft, N.
    pub thrust: f64,
    /// Torque of one propeller, N m.
    pub torque: f64,
    /// Power absorbed by one propeller, W.
    pub delivered_power: f64,
    /// Power taken from one engine, W.
    pub brake_power: f64,
    /// Full-throttle power of the engine at this speed, W (governor included).
    pub available_power: f64,
    /// Open-water efficiency.
    pub efficiency: f64,
    /// Share of thrust lost to cavitation, 0 to 1.
    pub thrust_lost: f64,
    /// Fuel of all engines, kg/s.
    pub fuel: f64,
}
