//! Two engines with propellers of their own on one hull.

use super::balance::Frame;
use super::{Installation, Point};
use crate::numeric;
use crate::source::{Method, Trust};
use crate::speed::EngineSpeed;

/// The balance of a pair.
pub const METHOD: Method = Method {
    name: "pair-balance",
    quantity: "common boat speed, and engine speed, thrust and power of each side of a pair",
    formula: "each side: PB etaD = 2 pi n Q / etaR at the common speed; (Tp + Ts) cos psi (1-t) = R + tow",
    range: "steady ahead motion on a straight course; the rudder angle that unequal thrusts ask for is left out",
    error: "that of what goes in; a rudder held against a tenth of unequal thrust costs about a per cent of speed (estimate)",
    source: "the balance of one screw (ITTC 7.5-02-03-01.4) written for two",
    trust: Trust::Checked,
};

/// A steady state of a pair: port and starboard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Together {
    /// Boat speed, m/s.
    pub speed: f64,
    /// Each side, port first. `pull` and `fuel` of a side count all screws as if they were alike: half of it is the side's.
    pub sides: [Point; 2],
}

impl Together {
    /// Fuel of both engines, kg/s.
    #[must_use]
    pub fn fuel(&self) -> f64 {
        0.5 * (self.sides[0].fuel + self.sides[1].fuel)
    }
}

/// Both at full throttle. Each installation says two screws and carries the resistance of the whole boat; resistance and
/// tow are taken from the first.
///
/// The common speed lies between those that the boat would reach with two of the one and with two of the other.
#[must_use]
pub fn full_throttle(sides: [&Installation; 2]) -> Together {
    let alone = sides.map(|side| side.full_throttle().point);
    let frames = sides.map(Frame::new);
    let mut guess = alone.map(|point| point.shaft_speed.0);
    let speed = between(alone.map(|p| p.speed), |v| {
        let mut pull = 0.0;
        for (frame, n) in frames.iter().zip(&mut guess) {
            let met = frame.meet(v, *n, true);
            *n = met.n;
            pull += 0.5 * met.pull;
        }
        pull - frames[0].resistance(v)
    });
    let at = |i: usize| {
        let n = frames[i].meet(speed, alone[i].shaft_speed.0, true).n;
        frames[i].point(speed, n, frames[i].pull)
    };
    Together { speed, sides: [at(0), at(1)] }
}

/// Each at its own engine speed.
#[must_use]
pub fn at_engine_speeds(sides: [&Installation; 2], speeds: [EngineSpeed; 2]) -> Together {
    let alone = [0, 1].map(|i| sides[i].at_engine_speed(speeds[i]).point.speed);
    let frames = sides.map(Frame::new);
    let turns = [0, 1].map(|i| sides[i].drive.shaft(speeds[i]).0);
    let pull = |i: usize, v: f64| if turns[i] > 0.0 { frames[i].pull_at(v, turns[i]) } else { 0.0 };
    let speed = between(alone, |v| 0.5 * (pull(0, v) + pull(1, v)) - frames[0].resistance(v));
    Together { speed, sides: [0, 1].map(|i| frames[i].point(speed, turns[i], frames[i].pull)) }
}

/// The root between two speeds at which one side alone leaves want and the other surplus; their mean when they are one.
fn between(ends: [f64; 2], mut surplus: impl FnMut(f64) -> f64) -> f64 {
    let [low, high] = [ends[0].min(ends[1]), ends[0].max(ends[1])];
    let middle = 0.5 * (low + high);
    if high - low <= 1e-9 * high {
        return middle;
    }
    // A hump between the two may leave no change of sign: the middle is then as good as any.
    numeric::root(low, high, 1e-9 * high, &mut surplus).unwrap_or(middle)
}
