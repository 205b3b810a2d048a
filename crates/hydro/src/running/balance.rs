//! The two equations at one speed of boat and shaft, and the shaft speed at which full throttle meets the propeller.

use std::f64::consts::TAU;

use super::{Installation, Point};
use crate::openwater::Curves;
use crate::speed::{EngineSpeed, ShaftSpeed};
use crate::stern::shaft_angle;

/// Share of rated power to which a power balance is solved.
const EXACT: f64 = 1e-11;
/// Share of rated power at which a scan takes one Newton step more and goes on.
const ROUGH: f64 = 0.02;

/// Constants of one installation, worked out once per question.
pub(super) struct Frame<'a> {
    pub boat: &'a Installation,
    /// `J n / V`, 1/m.
    advance: f64,
    /// `1 - w`.
    inflow: f64,
    /// `ρ D⁴`.
    thrust: f64,
    /// `ρ D⁵ / ηR`.
    torque: f64,
    /// Pull over the thrust of one propeller.
    pub pull: f64,
    /// Of the drive.
    efficiency: f64,
    reduction: f64,
    /// Shaft speed of the engine's idle and of its top.
    pub idle: f64,
    pub top: f64,
    /// The characteristics' value and slope where thrust vanishes.
    zero: Zero,
    /// Terms of the longer polynomial that are not zero.
    terms: usize,
}

/// Characteristics at the advance ratio without thrust, to go on beyond it in straight lines.
#[derive(Clone, Copy)]
struct Zero {
    j: f64,
    kt: f64,
    kt_slope: f64,
    kq: f64,
    kq_slope: f64,
}

/// Thrust and torque coefficients with their slopes over `J`.
#[derive(Clone, Copy)]
pub(super) struct Coefficients {
    pub j: f64,
    pub kt: f64,
    kt_slope: f64,
    pub kq: f64,
    kq_slope: f64,
    /// Slopes over the logarithm of `n` at the same `J`: cavitation only.
    kt_turning: f64,
    kq_turning: f64,
    /// `KT` left over `KT` without cavitation.
    pub left: f64,
}

/// Both equations at one speed of boat and shaft, with their slopes.
#[derive(Clone, Copy)]
struct Both {
    /// Power the engine gives the shaft less power absorbed, W; slopes over `n` and `V`.
    gap: f64,
    gap_n: f64,
    gap_v: f64,
    /// Pull, N; slopes over `n` and `V`.
    pull: f64,
    pull_n: f64,
    pull_v: f64,
    /// The stretch of shaft speeds on which the engine's power is smooth.
    from: f64,
    to: f64,
}

/// A shaft speed at full throttle, with the thrust there (first order where rough).
#[derive(Clone, Copy)]
pub(super) struct Met {
    pub n: f64,
    /// Pull of all propellers, N.
    pub pull: f64,
    /// The engine cannot carry the propeller at idle.
    pub stalled: bool,
}

impl<'a> Frame<'a> {
    pub fn new(boat: &'a Installation) -> Frame<'a> {
        let (stern, d, rho) = (&boat.stern, boat.diameter, boat.water.density);
        let along = shaft_angle::along(stern.shaft_angle_deg);
        let reduction = boat.drive.reduction;
        let curves = &boat.open_water;
        let j = curves.zero_thrust.max(0.0);
        let terms = (1..8).rev().find(|&i| curves.kt[i] != 0.0 || curves.kq[i] != 0.0).map_or(1, |i| i + 1);
        let (kt, kt_slope) = value_and_slope(&curves.kt[..terms], j);
        let (kq, kq_slope) = value_and_slope(&curves.kq[..terms], j);
        let d4 = d * d * d * d;
        Frame {
            boat,
            advance: (1.0 - stern.wake) * along / d,
            inflow: 1.0 - stern.wake,
            thrust: rho * d4,
            torque: rho * d4 * d / stern.relative_rotative,
            pull: along * (1.0 - stern.thrust_deduction) * f64::from(boat.screws),
            efficiency: boat.drive.efficiency,
            reduction,
            idle: boat.engine.idle_speed.0 / reduction,
            top: boat.engine.top_speed() / reduction,
            zero: Zero { j, kt, kt_slope: kt_slope.min(0.0), kq: kq.max(0.0), kq_slope: kq_slope.min(0.0) },
            terms,
        }
    }

    /// Resistance and tow, N.
    #[inline]
    pub fn resistance(&self, v: f64) -> f64 {
        self.boat.resistance.at(v) + self.boat.tow
    }

    #[inline]
    pub fn coefficients(&self, v: f64, n: f64) -> Coefficients {
        let Curves { kt, kq, .. } = &self.boat.open_water;
        let j = self.advance * v / n;
        let z = &self.zero;
        if j > z.j {
            // Beyond the tested range the polynomials turn at will: go on straight.
            let beyond = j - z.j;
            let kq = z.kq + z.kq_slope * beyond;
            let (kq, kq_slope) = if kq > 0.0 { (kq, z.kq_slope) } else { (0.0, 0.0) };
            return Coefficients {
                j,
                kt: z.kt + z.kt_slope * beyond,
                kt_slope: z.kt_slope,
                kq,
                kq_slope,
                kt_turning: 0.0,
                kq_turning: 0.0,
                left: 1.0,
            };
        }
        let (kt, mut kt_slope) = value_and_slope(&kt[..self.terms], j);
        let (kq, mut kq_slope) = value_and_slope(&kq[..self.terms], j);
        let (breakdown, va) = (&self.boat.breakdown, self.inflow * v);
        let (kt_left, kq_left) = breakdown.limit(va, n, kt, kq);
        let (mut kt_turning, mut kq_turning) = (0.0, 0.0);
        if kt > 0.0 && kq > 0.0 && (kt_left < 0.9999 * kt || kq_left < 0.9999 * kq) {
            // How what is left changes with what there was, and with turning faster: by small differences.
            const H: f64 = 1e-5;
            let (kt_more, kq_more) = breakdown.limit(va, n, kt * (1.0 + H), kq * (1.0 + H));
            let (kt_faster, kq_faster) = breakdown.limit(va, n * (1.0 + H), kt, kq);
            kt_slope *= (kt_more - kt_left) / (H * kt);
            kq_slope *= (kq_more - kq_left) / (H * kq);
            (kt_turning, kq_turning) = ((kt_faster - kt_left) / H, (kq_faster - kq_left) / H);
        }
        let left = if kt > 0.0 { (kt_left / kt).clamp(0.0, 1.0) } else { 1.0 };
        Coefficients { j, kt: kt_left, kt_slope, kq: kq_left, kq_slope, kt_turning, kq_turning, left }
    }

    #[inline]
    fn both(&self, v: f64, n: f64) -> Both {
        let c = self.coefficients(v, n);
        let piece = self.boat.engine.piece(n * self.reduction);
        let (n2, over) = (n * n, TAU * self.torque);
        let thrust = self.pull * self.thrust;
        Both {
            gap: piece.power * self.efficiency - over * n2 * n * c.kq,
            gap_n: piece.slope * self.reduction * self.efficiency
                - over * n2 * (3.0 * c.kq - c.j * c.kq_slope + c.kq_turning),
            gap_v: -over * n2 * c.kq_slope * self.advance,
            pull: thrust * n2 * c.kt,
            pull_n: thrust * n * (2.0 * c.kt - c.j * c.kt_slope + c.kt_turning),
            pull_v: thrust * n * c.kt_slope * self.advance,
            from: piece.from / self.reduction,
            to: piece.to / self.reduction,
        }
    }

    /// Newton's rule on both equations at once, from a good guess of a crossing between boat speeds `low` and `high`.
    ///
    /// `None` when it does not settle there within a few steps (a kink of the engine's curve, a false guess): the caller
    /// then brackets.
    pub fn meet_both(&self, mut v: f64, mut n: f64, low: f64, high: f64) -> Option<(f64, f64)> {
        let power = EXACT * self.boat.engine.rated_power * self.efficiency;
        for _ in 0..8 {
            let e = self.both(v, n);
            let needed = self.resistance(v);
            let surplus = e.pull - needed;
            let limited = n >= self.top && e.gap >= 0.0;
            if surplus.abs() <= 1e-11 * needed && (limited || e.gap.abs() <= power) {
                return Some((v, n));
            }
            let h = 1e-6 * high;
            let surplus_v = e.pull_v - (self.resistance(v + h) - needed) / h;
            if limited {
                v -= surplus / surplus_v;
            } else {
                let det = e.gap_n * surplus_v - e.gap_v * e.pull_n;
                v += (e.pull_n * e.gap - e.gap_n * surplus) / det;
                n = (n + (e.gap_v * surplus - surplus_v * e.gap) / det).min(self.top);
            }
            if !(v >= low && v <= high && n > self.idle) {
                return None;
            }
        }
        None
    }

    /// Thrust of one propeller, N.
    #[inline]
    fn thrust_of(&self, c: &Coefficients, n: f64) -> f64 {
        self.thrust * n * n * c.kt
    }

    /// Pull of all propellers, N: [`Frame::coefficients`] without what only the engine's side needs.
    #[inline]
    pub fn pull_at(&self, v: f64, n: f64) -> f64 {
        let Curves { kt, kq, .. } = &self.boat.open_water;
        let j = self.advance * v / n;
        let kt = if j > self.zero.j {
            self.zero.kt + self.zero.kt_slope * (j - self.zero.j)
        } else {
            let (kt, kq) = (value(&kt[..self.terms], j), value(&kq[..self.terms], j));
            self.boat.breakdown.limit(self.inflow * v, n, kt, kq).0
        };
        self.pull * self.thrust * n * n * kt
    }

    /// Pull of all propellers less resistance and tow at a fixed shaft speed, N.
    #[inline]
    pub fn surplus_at(&self, v: f64, n: f64) -> f64 {
        self.pull_at(v, n) - self.resistance(v)
    }

    /// The shaft speed between idle and top at which full throttle meets the propeller at boat speed `v`.
    ///
    /// Newton's rule inside a bracket. A rough answer is good to about 1e-4, enough to scan; an exact one to 1e-11 of
    /// rated power.
    #[inline]
    pub fn meet(&self, v: f64, guess: f64, exact: bool) -> Met {
        self.meet_between(v, guess, (self.lowest(), self.top), exact)
    }

    /// Idle, or next to nothing for an engine that turns from rest.
    fn lowest(&self) -> f64 {
        self.idle.min(0.99 * self.top).max(1e-6 * self.top)
    }

    fn meet_between(&self, v: f64, guess: f64, (mut low, mut high): (f64, f64), exact: bool) -> Met {
        let engine = &self.boat.engine;
        let scale = engine.rated_power * self.efficiency;
        let tolerance = if exact { EXACT } else { ROUGH } * scale;
        let (mut at_low, mut at_high) = (false, false);
        // Not `clamp`, which panics on ends that are no numbers.
        let mut n = guess.max(low).min(high);
        let mut met = Met { n, pull: 0.0, stalled: false };
        for _ in 0..60 {
            let Both { gap, gap_n: slope, pull, pull_n, from, to, .. } = self.both(v, n);
            (met.n, met.pull) = (n, pull);
            if gap >= 0.0 {
                if n >= self.top {
                    return met;
                }
                low = n;
                at_low = true;
            } else {
                if n <= self.lowest() {
                    met.stalled = true;
                    return met;
                }
                high = n;
                at_high = true;
            }
            let mut next = if slope < 0.0 { n - gap / slope } else { f64::NAN };
            if gap.abs() <= tolerance && next.is_finite() {
                if exact {
                    return met;
                }
                if next >= from && next <= to && next < self.top {
                    // First order: thrust at the next step without working it out again.
                    met.pull += pull_n * (next - n);
                    met.n = next;
                    return met;
                }
            }
            if !(next > low && next < high) {
                // Out of the bracket, or uphill: try the untried end, else halve.
                next = if (gap >= 0.0 || next >= high) && !at_high {
                    high
                } else if (gap < 0.0 || next <= low) && !at_low {
                    low
                } else {
                    0.5 * (low + high)
                };
            }
            if (next - n).abs() <= 1e-15 * n {
                return met;
            }
            n = next;
        }
        met
    }

    /// The first shaft speed from idle up at which full throttle meets the propeller at rest: where a boat starting off
    /// gets to. Cavitation is left out of the search and put in by the last solution.
    pub fn meet_at_rest(&self, exact: bool) -> Met {
        let engine = &self.boat.engine;
        let demand = TAU * self.torque * self.boat.open_water.kq[0] / self.efficiency;
        let enough = |n: f64| engine.piece(n * self.reduction).power >= demand * n * n * n;
        let mut below = self.lowest();
        if !enough(below) {
            let pull = self.pull * self.thrust_of(&self.coefficients(0.0, below), below);
            return Met { n: below, pull, stalled: true };
        }
        for (x, _) in engine.curve {
            let n = x * engine.rated_speed.0 / self.reduction;
            if n <= below || n >= self.top {
                continue;
            }
            if !enough(n) {
                return self.meet_between(0.0, 0.5 * (below + n), (below, self.top), exact);
            }
            below = n;
        }
        let guess = if enough(self.top) { self.top } else { 0.5 * (below + self.top) };
        self.meet_between(0.0, guess, (below, self.top), exact)
    }

    /// Everything about one speed of boat and shaft.
    pub fn point(&self, v: f64, n: f64, pull: f64) -> Point {
        let boat = self.boat;
        let c = self.coefficients(v, n);
        let thrust = self.thrust_of(&c, n);
        let torque = self.torque * n * n * c.kq;
        let delivered_power = TAU * n * torque;
        let brake_power = delivered_power / self.efficiency;
        let engine_speed = EngineSpeed(n * self.reduction);
        let resistance = self.resistance(v);
        let screws = f64::from(boat.screws);
        let over = |a: f64, b: f64| if b > 0.0 { a / b } else { 0.0 };
        Point {
            speed: v,
            engine_speed,
            shaft_speed: ShaftSpeed(n),
            advance_ratio: c.j,
            thrust,
            pull: pull * thrust,
            resistance,
            torque,
            delivered_power,
            brake_power,
            available_power: boat.engine.power_at(engine_speed),
            efficiency: over(c.j * c.kt, TAU * c.kq),
            quasi_propulsive: over(resistance * v, screws * delivered_power),
            thrust_lost: 1.0 - c.left,
            fuel: screws * boat.engine.fuel(engine_speed, brake_power),
        }
    }
}

/// Value and slope of a polynomial.
#[inline]
fn value_and_slope(c: &[f64], x: f64) -> (f64, f64) {
    let (mut value, mut slope) = (0.0, 0.0);
    for &c in c.iter().rev() {
        slope = slope * x + value;
        value = value * x + c;
    }
    (value, slope)
}

/// Value of a polynomial.
#[inline]
fn value(c: &[f64], x: f64) -> f64 {
    c.iter().rev().fold(0.0, |sum, c| sum * x + c)
}
