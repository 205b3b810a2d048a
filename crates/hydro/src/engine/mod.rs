//! The engine: full-throttle power over speed, governor or limiter, derating, fuel.

use std::f64::consts::TAU;

use crate::source::Method;
use crate::speed::EngineSpeed;

pub mod band;
pub mod derating;
pub mod fuel;
pub mod maker;
pub mod shape;

pub use band::{Accepted, accepted_band};

/// Methods of this room.
pub const METHODS: &[&Method] = &[&shape::METHOD, &shape::TOP, &derating::METHOD, &band::METHOD, &fuel::METHOD];

/// Points of a full-throttle curve.
pub const CURVE: usize = 8;

/// Pairs (speed over rated speed, power over rated power), speeds rising.
pub type FullThrottleCurve = [(f64, f64); CURVE];

/// Kind of engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Naturally aspirated diesel.
    NaturalDiesel,
    /// Turbocharged diesel.
    TurboDiesel,
    /// Petrol inboard.
    Petrol,
    /// Outboard.
    Outboard,
    /// Electric motor.
    Electric,
}

impl Kind {
    /// Every kind.
    pub const ALL: &'static [Kind] =
        &[Kind::NaturalDiesel, Kind::TurboDiesel, Kind::Petrol, Kind::Outboard, Kind::Electric];

    /// Whether a governor (not a limiter) holds the top.
    #[must_use]
    pub const fn governed(self) -> bool {
        matches!(self, Kind::NaturalDiesel | Kind::TurboDiesel)
    }
}

/// Duty an engine is rated for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Rating {
    /// Pleasure.
    Pleasure,
    /// Light commercial.
    LightDuty,
    /// Medium continuous.
    MediumDuty,
    /// Continuous.
    Continuous,
}

/// A definite engine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Engine {
    /// Full-throttle power at rated speed on the day (derated, as old as it is), W.
    pub rated_power: f64,
    /// Rated speed.
    pub rated_speed: EngineSpeed,
    /// Full-throttle curve; straight between points, of even torque below the first, level above the last.
    pub curve: FullThrottleCurve,
    /// What holds the top: at or above which no power is left (governor's no-load speed, or limiter).
    pub top: Top,
    /// What it burns.
    pub fuel: fuel::Map,
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

impl Top {
    /// The highest speed the engine can hold.
    #[must_use]
    pub const fn speed(self) -> EngineSpeed {
        match self {
            Top::Governor { no_load } => no_load,
            Top::Limiter { at } => at,
        }
    }
}

/// Full-throttle power and its slope at one speed, and the stretch of speeds on which one smooth expression holds.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    /// Power, W.
    pub power: f64,
    /// Slope, W per rev/s.
    pub slope: f64,
    /// Lower end of the stretch, rev/s.
    pub from: f64,
    /// Upper end of the stretch, rev/s.
    pub to: f64,
}

impl Engine {
    /// An engine with the usual curve and fuel map of its kind (middle values), its idle speed 0.22 of rated speed
    /// (electric: at rest) but no lower than 550 rpm where the rated speed allows that.
    #[must_use]
    pub fn usual(kind: Kind, rated_power: f64, rated_speed: EngineSpeed, top: Top) -> Engine {
        let idle = (0.22 * rated_speed.0).max(550.0 / 60.0).min(0.4 * rated_speed.0);
        Engine {
            rated_power,
            rated_speed,
            curve: shape::usual_curve(kind, 0.0),
            top,
            fuel: fuel::Map::new(kind, fuel::best_consumption(kind).1),
            idle_speed: if kind == Kind::Electric { EngineSpeed(0.0) } else { EngineSpeed(idle) },
        }
    }

    /// Full-throttle power at a speed, governor or limiter included, W.
    #[must_use]
    #[inline]
    pub fn power_at(&self, speed: EngineSpeed) -> f64 {
        match self.top {
            // A hair allowed: the speed may have gone through the reduction and back.
            Top::Limiter { at } if speed.0 > at.0 * (1.0 + 1e-9) => 0.0,
            _ => self.piece(speed.0).power,
        }
    }

    /// Full-throttle power at a speed as if neither governor nor limiter acted, W.
    #[must_use]
    pub fn ungoverned_power(&self, speed: EngineSpeed) -> f64 {
        self.curve_piece(speed.0).power
    }

    /// Full-throttle torque at a speed, governor or limiter included, N m.
    #[must_use]
    pub fn torque_at(&self, speed: EngineSpeed) -> f64 {
        // At rest the torque of the lowest stretch, which is even.
        let speed = speed.0.max(1e-3 * self.rated_speed.0);
        self.power_at(EngineSpeed(speed)) / (TAU * speed)
    }

    /// Fuel of one engine at a speed and a power in W, kg/s.
    #[must_use]
    pub fn fuel(&self, speed: EngineSpeed, power: f64) -> f64 {
        let full = self.ungoverned_power(speed);
        self.fuel.flow(speed.0 / self.rated_speed.0, power, full, self.rated_power)
    }

    /// No-load speed of a governor, kept a little above rated speed so that the droop is a line.
    fn no_load(&self, no_load: EngineSpeed) -> f64 {
        no_load.0.max(1.001 * self.rated_speed.0)
    }

    /// The highest speed the engine can hold, rev/s.
    pub(crate) fn top_speed(&self) -> f64 {
        match self.top {
            Top::Governor { no_load } => self.no_load(no_load),
            Top::Limiter { at } => at.0,
        }
    }

    /// Power and slope at a speed; above a limiter the curve goes on (the limiter is the caller's business).
    #[inline]
    pub(crate) fn piece(&self, speed: f64) -> Piece {
        let rated = self.rated_speed.0;
        if let Top::Governor { no_load } = self.top {
            if speed > rated {
                let end = self.no_load(no_load);
                let scale = self.curve_piece(rated).power / (rated * (end - rated));
                let power = (scale * speed * (end - speed)).max(0.0);
                return Piece { power, slope: scale * (end - 2.0 * speed), from: rated, to: end };
            }
            let mut piece = self.curve_piece(speed);
            piece.to = piece.to.min(rated);
            return piece;
        }
        self.curve_piece(speed)
    }

    #[inline]
    fn curve_piece(&self, speed: f64) -> Piece {
        let rated = self.rated_speed.0;
        let x = speed / rated;
        let c = &self.curve;
        let last = c[CURVE - 1];
        if x < c[0].0 {
            let slope = c[0].1 / c[0].0 * self.rated_power / rated;
            return Piece { power: slope * speed.max(0.0), slope, from: 0.0, to: c[0].0 * rated };
        }
        if x >= last.0 {
            let power = last.1 * self.rated_power;
            return Piece { power, slope: 0.0, from: last.0 * rated, to: f64::INFINITY };
        }
        let i = c[1..CURVE - 1].iter().filter(|point| point.0 <= x).count();
        let (a, b) = (c[i], c[i + 1]);
        let slope = (b.1 - a.1) / (b.0 - a.0);
        Piece {
            power: (a.1 + (x - a.0) * slope) * self.rated_power,
            slope: slope * self.rated_power / rated,
            from: a.0 * rated,
            to: b.0 * rated,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn diesel() -> Engine {
        let rated = EngineSpeed::from_rpm(3000.0);
        Engine::usual(Kind::NaturalDiesel, 30e3, rated, Top::Governor { no_load: EngineSpeed::from_rpm(3300.0) })
    }

    #[test]
    fn gives_rated_power_at_rated_speed_and_none_at_no_load() {
        let engine = diesel();
        assert!((engine.power_at(engine.rated_speed) - 30e3).abs() < 1e-6);
        assert_eq!(engine.power_at(EngineSpeed::from_rpm(3300.0)), 0.0);
        assert_eq!(engine.power_at(EngineSpeed::from_rpm(3900.0)), 0.0);
        // Torque falls in a straight line: half of it half-way.
        let half = engine.torque_at(EngineSpeed::from_rpm(3150.0)) / engine.torque_at(engine.rated_speed);
        assert!((half - 0.5).abs() < 1e-12, "{half}");
    }

    #[test]
    fn slope_is_the_derivative_of_power() {
        let engine = diesel();
        for i in 1..330 {
            let n = f64::from(i) * 10.03 / 60.0;
            let piece = engine.piece(n);
            let h = 1e-6;
            if n - h < piece.from || n + h > piece.to {
                continue;
            }
            let slope = (engine.piece(n + h).power - engine.piece(n - h).power) / (2.0 * h);
            assert!((slope - piece.slope).abs() < 1e-2, "{n}: {slope} {}", piece.slope);
        }
    }

    #[test]
    fn a_limiter_leaves_nothing_above() {
        let rated = EngineSpeed::from_rpm(5500.0);
        let at = EngineSpeed::from_rpm(6200.0);
        let engine = Engine::usual(Kind::Outboard, 60e3, rated, Top::Limiter { at });
        assert!(engine.power_at(at) > 0.8 * 60e3);
        assert_eq!(engine.power_at(EngineSpeed(at.0 + 0.1)), 0.0);
    }
}
