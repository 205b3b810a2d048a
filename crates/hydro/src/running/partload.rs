//! Part throttle: steady states at an engine speed or a boat speed, and what the propeller asks along the way.

use super::balance::Frame;
use super::{Installation, Point};
use crate::hull::curve::POINTS;
use crate::numeric;
use crate::speed::EngineSpeed;

/// A steady state at a given engine speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steady {
    /// The state.
    pub point: Point,
    /// The engine cannot hold this speed there: more power is asked than it has.
    pub beyond_engine: bool,
    /// A faster steady state exists at this engine speed, beyond a hump ([`Installation::at_engine_speed_over_the_hump`]).
    pub faster: bool,
}

/// What the propeller asks and the engine has, at one engine speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// Engine speed.
    pub engine_speed: EngineSpeed,
    /// Boat speed in that steady state, m/s.
    pub speed: f64,
    /// Power asked of one engine, W.
    pub asked: f64,
    /// Full-throttle power of one engine, governor or limiter included, W.
    pub available: f64,
}

impl Installation {
    /// The steady state at an engine speed, reached from rest: the lowest boat speed at which thrust carries resistance.
    #[must_use]
    pub fn at_engine_speed(&self, speed: EngineSpeed) -> Steady {
        self.at_engine_speed_beyond(speed, 0.0)
    }

    /// [`Installation::at_engine_speed`] where the steady state of a lower engine speed is known to stand at boat speed
    /// `from`, m/s: with faster turning every boat speed below has thrust to spare, and is not looked at again.
    #[must_use]
    pub fn at_engine_speed_beyond(&self, speed: EngineSpeed, from: f64) -> Steady {
        let frame = Frame::new(self);
        let n = self.drive.shaft(speed).0;
        let step = self.scan_step();
        // No thrust can be had beyond this boat speed.
        let fastest = frame.fastest(n);
        let mut i = if from > 0.0 { (from / step - 1e-6) as usize } else { 0 };
        let mut low = i as f64 * step;
        let mut pull = if n > 0.0 && fastest > low { frame.pull_at(low, n) } else { 0.0 };
        let mut surplus = pull - frame.needed(i, step);
        if surplus.is_nan() || surplus <= 0.0 {
            return if low > 0.0 { self.at_engine_speed(speed) } else { self.steady(&frame, 0.0, n.max(0.0), false) };
        }
        let mut passed = 0;
        loop {
            i += 1;
            let high = (i as f64 * step).min(fastest);
            let ended = high >= fastest;
            let needed = if ended { frame.resistance(high) } else { frame.needed(i, step) };
            // Where half the last thrust is plenty, every other speed needs no looking at.
            if passed < 1 && !ended && 2.0 * needed < pull {
                passed += 1;
                continue;
            }
            passed = 0;
            pull = frame.pull_at(high, n);
            if ended || pull <= needed {
                let ends = ((low, surplus), (high, pull - needed));
                let v = numeric::root_between(ends.0, ends.1, 1e-12 * high, |v| frame.surplus_at(v, n)).unwrap_or(high);
                let faster = !ended && frame.faster_at(high, step, n, fastest).is_some();
                return self.steady(&frame, v, n, faster);
            }
            (low, surplus) = (high, pull - needed);
        }
    }

    /// The fastest steady state at an engine speed: where a boat already over its hump runs. The same as
    /// [`Installation::at_engine_speed`] where there is only one.
    #[must_use]
    pub fn at_engine_speed_over_the_hump(&self, speed: EngineSpeed) -> Steady {
        let frame = Frame::new(self);
        let slow = self.at_engine_speed(speed);
        let n = self.drive.shaft(speed).0;
        let step = self.scan_step();
        let Some(mut low) =
            slow.faster.then(|| frame.faster_at(slow.point.speed + 1e-3 * step, step, n, frame.fastest(n))).flatten()
        else {
            return slow;
        };
        let fastest = frame.fastest(n);
        while low + step < fastest && frame.surplus_at(low + step, n) > 0.0 {
            low += step;
        }
        let v = frame.cross_at(low, (low + step).min(fastest), n);
        self.steady(&frame, v, n, false)
    }

    /// The steady state at a boat speed, m/s: engine speed and power needed. `None` when no shaft speed gives the thrust
    /// (cavitation, or nothing to push with) or the speed is no speed. The engine may not have the power: see [`Point::load`].
    #[must_use]
    pub fn at_speed(&self, speed: f64) -> Option<Point> {
        if !(speed.is_finite() && speed >= 0.0) {
            return None;
        }
        let frame = Frame::new(self);
        let needed = frame.resistance(speed);
        if !(frame.pull > 0.0 && self.open_water.zero_thrust > 0.0) {
            return None;
        }
        // Slowest turning that pushes at all; at rest any.
        let slowest = speed / frame.fastest(1.0);
        if needed <= 0.0 {
            return (slowest > 0.0).then(|| frame.point(speed, slowest, frame.pull));
        }
        let mut low = slowest.max(1e-4 * frame.top);
        let mut high = low.max(0.25 * frame.top) * 1.25;
        let most = 4.0 * frame.top.max(slowest);
        while frame.surplus_at(speed, high) < 0.0 {
            low = high;
            high *= 1.25;
            if high > most {
                return None;
            }
        }
        let n = numeric::root(low, high, 1e-13 * high, |n| frame.surplus_at(speed, n))?;
        Some(frame.point(speed, n, frame.pull))
    }

    /// Steady states at even engine speeds from idle (0.2 of rated speed for an engine without) to the full-throttle
    /// point, `steps` of them, the last the full-throttle point itself.
    #[must_use]
    pub fn part_load(&self, steps: usize) -> Vec<Point> {
        let full = self.full_throttle().point;
        let from = self.lowest_shown().min(full.engine_speed.0);
        let even = |i: usize| from + (full.engine_speed.0 - from) * i as f64 / (steps.max(2) - 1) as f64;
        let mut points: Vec<Point> =
            (0..steps.saturating_sub(1)).map(|i| self.at_engine_speed(EngineSpeed(even(i))).point).collect();
        if steps > 0 {
            points.push(full);
        }
        points
    }

    /// Power asked by the propeller and power available from the engine at even engine speeds from idle to 5 % above the
    /// engine's rated speed (or its top, where that lies higher), for a plot of one against the other.
    #[must_use]
    pub fn demand(&self, steps: usize) -> Vec<Demand> {
        let from = self.lowest_shown();
        let to = (1.05 * self.engine.rated_speed.0).max(self.engine.top.speed().0);
        (0..steps)
            .map(|i| {
                let engine_speed = EngineSpeed(from + (to - from) * i as f64 / (steps.max(2) - 1) as f64);
                let point = self.at_engine_speed(engine_speed).point;
                let available = self.engine.power_at(engine_speed);
                Demand { engine_speed, speed: point.speed, asked: point.brake_power, available }
            })
            .collect()
    }

    /// Step between the tabulated speeds, m/s; a metre a second for a table without extent.
    pub(super) fn scan_step(&self) -> f64 {
        let step = self.resistance.top_speed() / (POINTS - 1) as f64;
        if step > 0.0 && step.is_finite() { step } else { 1.0 }
    }

    fn lowest_shown(&self) -> f64 {
        if self.engine.idle_speed.0 > 0.0 { self.engine.idle_speed.0 } else { 0.2 * self.engine.rated_speed.0 }
    }

    fn steady(&self, frame: &Frame, v: f64, n: f64, faster: bool) -> Steady {
        // A shaft at rest has no advance ratio: a thousandth of the top speed stands for it.
        let point = frame.point(v, n.max(1e-3 * frame.top), frame.pull);
        let beyond_engine = point.brake_power > point.available_power * (1.0 + 1e-9);
        Steady { point, beyond_engine, faster }
    }
}

impl Frame<'_> {
    /// Boat speed at which a shaft speed makes no thrust, m/s.
    fn fastest(&self, n: f64) -> f64 {
        let unit = self.coefficients(1.0, 1.0).j;
        if unit > 0.0 { self.boat.open_water.zero_thrust * n / unit } else { f64::INFINITY }
    }

    /// Resistance and tow at a step of the scan, N: mostly a tabulated speed.
    fn needed(&self, i: usize, step: f64) -> f64 {
        let curve = &self.boat.resistance;
        if i < POINTS && (curve.step - step).abs() <= 1e-12 * step {
            curve.resistance[i] + self.boat.tow
        } else {
            self.resistance(i as f64 * step)
        }
    }

    fn cross_at(&self, low: f64, high: f64, n: f64) -> f64 {
        numeric::root(low, high, 1e-13 * high, |v| self.surplus_at(v, n)).unwrap_or(high)
    }

    /// A boat speed beyond `from` with thrust to spare at a fixed shaft speed. Thrust falls with boat speed, so only
    /// where less is needed than at `from` is there anything to find.
    fn faster_at(&self, from: f64, step: f64, n: f64, fastest: f64) -> Option<f64> {
        let needed = self.resistance(from);
        let first = (from / step) as usize + 1;
        (first..POINTS)
            .map(|i| (i, i as f64 * step))
            .take_while(|(_, v)| *v < fastest)
            .find(|&(i, v)| self.needed(i, step) < needed && self.surplus_at(v, n) > 0.0)
            .map(|(_, v)| v)
    }
}
