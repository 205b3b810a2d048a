//! Full throttle: where a boat starting from rest ends up.

use super::balance::{Frame, Met};
use super::{Installation, Point};
use crate::engine::Top;
use crate::hull::curve::POINTS;
use crate::numeric;

/// How far beyond the tabulated resistance the top speed is looked for, over the table's top speed.
const BEYOND: f64 = 4.0;

/// What holds the engine at full throttle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Held {
    /// The propeller takes all the torque the engine has: rated speed is not passed.
    EngineTorque,
    /// The governor, past rated speed.
    Governor,
    /// The limiter: the engine could give more.
    Limiter,
    /// The propeller is too heavy even for idle speed: the engine stalls.
    Stalled,
}

/// The narrowest place between thrust and resistance on the way to top speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hump {
    /// Boat speed, m/s.
    pub speed: f64,
    /// Full-throttle thrust available over thrust needed there: 1 just climbs, below 1 does not.
    pub margin: f64,
}

/// Full throttle, starting from rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FullThrottle {
    /// The state reached.
    pub point: Point,
    /// What holds the engine there.
    pub held: Held,
    /// The hump, where there is one before (or, when it is not climbed, beyond) the state reached. Humps with twice the
    /// thrust needed are not looked for.
    pub hump: Option<Hump>,
    /// Whether the boat gets as fast as it could: no faster steady state beyond a hump that it cannot climb.
    pub climbs: bool,
}

/// One step of the scan.
#[derive(Clone, Copy)]
struct Step {
    v: f64,
    n: f64,
    pull: f64,
    needed: f64,
}

impl Step {
    fn new(frame: &Frame, v: f64, met: Met) -> Step {
        Step { v, n: met.n, pull: met.pull, needed: frame.resistance(v) }
    }

    fn surplus(&self) -> f64 {
        self.pull - self.needed
    }

    fn ratio(&self) -> f64 {
        if self.needed > 0.0 { self.pull / self.needed } else { f64::INFINITY }
    }
}

impl Installation {
    /// Full throttle from rest: the first steady state met when thrust available is followed up from standstill.
    #[must_use]
    pub fn full_throttle(&self) -> FullThrottle {
        let frame = Frame::new(self);
        let rest = frame.meet_at_rest(false);
        let pull_at_rest = frame.pull;
        if rest.stalled {
            let point = frame.point(0.0, rest.n, pull_at_rest);
            return FullThrottle { point, held: Held::Stalled, hump: None, climbs: true };
        }
        let start = Step::new(&frame, 0.0, rest);
        if start.surplus() <= 0.0 {
            // No thrust, or a tow that holds the boat: it stays where it is.
            let n = frame.meet_at_rest(true).n;
            return frame.reached(0.0, n, None, true);
        }
        let step = self.scan_step();
        let last_step = (BEYOND * (POINTS - 1) as f64) as usize;
        let (mut before, mut here) = (start, start);
        let mut hump: Option<Hump> = None;
        let mut passed = 0;
        for i in 1..=last_step {
            let v = i as f64 * step;
            // Where half the last thrust is plenty, two speeds in three need no looking at.
            if passed < 2 && i < POINTS && 2.0 * frame.resistance(v) < here.pull {
                passed += 1;
                continue;
            }
            passed = 0;
            let rate = if here.v > before.v { (here.n - before.n) / (here.v - before.v) } else { 0.0 };
            let there = Step::new(&frame, v, frame.meet(v, here.n + rate * (v - here.v), false));
            // A dip of thrust over need between even steps: look into it, it may already be a wall.
            if there.ratio() > here.ratio()
                && here.ratio() < before.ratio()
                && here.v - before.v < 1.5 * step
                && let Some(dip) = frame.dip(before, here, there)
            {
                if hump.is_none_or(|h| dip.ratio() < h.margin) {
                    hump = Some(Hump { speed: dip.v, margin: dip.ratio() });
                }
                if dip.surplus() <= 0.0 {
                    let from = if dip.v > here.v { here } else { before };
                    let (v, n) = frame.cross(from, dip);
                    return frame.reached(v, n, hump, false);
                }
            }
            if there.surplus() <= 0.0 {
                let (v, n) = frame.cross(here, there);
                let wall = frame.faster(i, step, here, there);
                return frame.reached(v, n, wall.or(hump), wall.is_none());
            }
            (before, here) = (here, there);
        }
        // Thrust wherever looked for: a boat without resistance. The last speed looked at stands.
        let n = frame.meet(here.v, here.n, true).n;
        frame.reached(here.v, n, hump, true)
    }
}

impl Frame<'_> {
    fn reached(&self, v: f64, n: f64, hump: Option<Hump>, climbs: bool) -> FullThrottle {
        let point = self.point(v, n, self.pull);
        let engine = &self.boat.engine;
        let held = match engine.top {
            Top::Limiter { .. } if n >= self.top => Held::Limiter,
            Top::Governor { .. } if point.engine_speed.0 > engine.rated_speed.0 => Held::Governor,
            _ => Held::EngineTorque,
        };
        FullThrottle { point, held, hump, climbs }
    }

    /// The lowest ratio of thrust to need between three even steps, by a parabola.
    fn dip(&self, a: Step, b: Step, c: Step) -> Option<Step> {
        let (fall, rise) = (a.ratio() - b.ratio(), c.ratio() - b.ratio());
        let shift = 0.5 * (fall - rise) / (fall + rise);
        if !shift.is_finite() {
            return None;
        }
        let v = b.v + shift.clamp(-0.5, 0.5) * (c.v - b.v);
        Some(Step::new(self, v, self.meet(v, b.n, true)))
    }

    /// The crossing from surplus to want between two steps.
    fn cross(&self, from: Step, to: Step) -> (f64, f64) {
        let share = from.surplus() / (from.surplus() - to.surplus());
        if share.is_finite() {
            let guess = |a: f64, b: f64| a + share * (b - a);
            let margin = 0.02 * (to.v - from.v);
            let (low, high) = (from.v - margin, to.v + margin);
            if let Some(met) = self.meet_both(guess(from.v, to.v), guess(from.n, to.n), low, high) {
                return met;
            }
        }
        let mut n = from.n;
        let mut surplus = |v: f64| {
            let guess = if to.v > from.v { from.n + (v - from.v) / (to.v - from.v) * (to.n - from.n) } else { n };
            let met = self.meet(v, guess, true);
            n = met.n;
            met.pull - self.resistance(v)
        };
        // The scan is rough: an end whose sign the exact solution turns is itself the crossing within 1e-4.
        let (mut low, mut high) = (from.v, to.v);
        let width = high - low;
        for _ in 0..4 {
            if let Some(v) = numeric::root(low, high, 1e-12 * high, &mut surplus) {
                surplus(v);
                return (v, n);
            }
            low = (low - 0.02 * width).max(0.0);
            high += 0.02 * width;
        }
        surplus(to.v);
        (to.v, n)
    }

    /// Whether a faster steady state lies beyond the crossing at step `i`; if so the hump between.
    ///
    /// Only where the boat would need less, or little more, than the thrust at the crossing is it worth looking.
    fn faster(&self, i: usize, step: f64, before: Step, crossing: Step) -> Option<Hump> {
        let within = 1.15 * before.pull.max(crossing.pull);
        let mut least = crossing;
        let mut previous = crossing;
        for j in i + 1..POINTS {
            let v = j as f64 * step;
            if self.resistance(v) > within {
                continue;
            }
            let there = Step::new(self, v, self.meet(v, previous.n, false));
            if there.surplus() > 0.0 {
                // Steps passed over as needing too much may be the narrowest.
                for k in i + 1..j {
                    let v = k as f64 * step;
                    let between = Step::new(self, v, self.meet(v, previous.n, false));
                    if between.ratio() < least.ratio() {
                        least = between;
                    }
                }
                return Some(Hump { speed: least.v, margin: least.ratio() });
            }
            previous = there;
        }
        None
    }
}
