//! The running point: where hull, propeller and engine agree.
//!
//! Two equations hold in a steady state: the engine's power through the drive is what the propeller absorbs,
//! `PB ηD = 2π n Q`, `Q = KQ(J) ρ n² D⁵ / ηR`; and thrust along the course carries the resistance,
//! `z T cos ψ (1 - t) = R(V) + tow`, `T = KT(J) ρ n² D⁴`, at `J = V (1 - w) cos ψ / (n D)`.

use crate::drive::Drive;
use crate::engine::Engine;
use crate::hull::Curve;
use crate::limits::Breakdown;
use crate::openwater::Curves;
use crate::source::{Method, Trust};
use crate::speed::{EngineSpeed, ShaftSpeed};
use crate::stern::Stern;
use crate::water::Water;

mod balance;
mod bollard;
mod full_throttle;
pub mod pair;
mod partload;
pub mod split;

pub use full_throttle::{FullThrottle, Held, Hump};
pub use partload::{Demand, Steady};

/// Methods of this room.
pub const METHODS: &[&Method] = &[&METHOD, &pair::METHOD, &split::METHOD];

/// What the balance is.
pub const METHOD: Method = Method {
    name: "running-balance",
    quantity: "boat speed, engine speed, powers and fuel of a steady state",
    formula: "PB etaD = 2 pi n Q / etaR; z T cos psi (1-t) = R + tow",
    range: "steady ahead motion, engines and screws alike",
    error: "solved to 1e-9 of thrust and power; the error is that of what goes in",
    source: "textbook propulsion balance: ITTC 7.5-02-03-01.4, 1978 Performance Prediction Method",
    trust: Trust::Checked,
};

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
    /// Advance ratio along the shaft `J = V(1-w) cos ψ/(nD)`.
    pub advance_ratio: f64,
    /// Thrust of one propeller along the shaft, N.
    pub thrust: f64,
    /// Thrust of all propellers along the course less thrust deduction, N: in a steady state, resistance plus tow; at
    /// the bollard, the pull.
    pub pull: f64,
    /// Resistance and tow at this speed, N.
    pub resistance: f64,
    /// Torque of one propeller, N m.
    pub torque: f64,
    /// Power absorbed by one propeller, W.
    pub delivered_power: f64,
    /// Power taken from one engine, W.
    pub brake_power: f64,
    /// Full-throttle power of the engine at this speed, W (governor included).
    pub available_power: f64,
    /// Open-water efficiency, cavitation included.
    pub efficiency: f64,
    /// Quasi-propulsive coefficient `R V / (z PD)`, tow counted with the resistance.
    pub quasi_propulsive: f64,
    /// Share of thrust lost to cavitation, 0 to 1.
    pub thrust_lost: f64,
    /// Fuel of all engines, kg/s.
    pub fuel: f64,
}

impl Point {
    /// Efficiency behind the hull `ηB = η0 ηR`.
    #[must_use]
    pub fn behind_efficiency(&self, stern: &Stern) -> f64 {
        self.efficiency * stern.relative_rotative
    }

    /// Share of the engine's full-throttle power that is taken; above 1 where the engine cannot give it, 0 without one.
    #[must_use]
    pub fn load(&self) -> f64 {
        if self.available_power > 0.0 {
            self.brake_power / self.available_power
        } else if self.brake_power > 0.0 {
            f64::INFINITY
        } else {
            0.0
        }
    }

    /// Slip against the pitch at which this propeller makes no thrust, `1 - J/J(KT=0)`: above zero whenever it pushes.
    /// Slip on a stamped pitch lies lower by as much as the section's camber adds to the pitch.
    #[must_use]
    pub fn slip(&self, open_water: &Curves) -> f64 {
        if open_water.zero_thrust > 0.0 { 1.0 - self.advance_ratio / open_water.zero_thrust } else { 0.0 }
    }
}
