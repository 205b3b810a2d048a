//! Fuel over speed and power.

use super::Kind;
use crate::source::{Method, Trust};

/// What [`Map`] is.
pub const METHOD: Method = Method {
    name: "engine-fuel",
    quantity: "fuel flow of an engine at a speed and power, kg/s",
    formula: "flow = c [P + P0 x (a + b x)], x = N/N0: a straight line over power at each speed; petrol richer near full throttle",
    range: "idle to full throttle",
    error: "best consumption: 80 % band of its kind; part load 10 % (assumed)",
    source: "straight fuel line over power after P. W. Willans (1888); friction shares, best values from memory: diesel 200..230 \
             g/kWh, small or old 240..270, four-stroke petrol 280..350",
    trust: Trust::CommonPractice,
};

/// Grams per kilowatt-hour to kilograms per joule.
const G_PER_KWH: f64 = 1.0 / 3.6e9;

/// Best specific fuel consumption by kind, kg/J: low, middle, high (80 % band). Nothing for electric motors.
#[must_use]
pub fn best_consumption(kind: Kind) -> (f64, f64, f64) {
    let (low, middle, high) = match kind {
        Kind::NaturalDiesel => (220.0, 245.0, 270.0),
        Kind::TurboDiesel => (200.0, 215.0, 232.0),
        Kind::Petrol => (275.0, 300.0, 345.0),
        // Two-strokes, 400 to 500 when old, are among them: the kind does not say which.
        Kind::Outboard => (285.0, 330.0, 430.0),
        Kind::Electric => (0.0, 0.0, 0.0),
    };
    (low * G_PER_KWH, middle * G_PER_KWH, high * G_PER_KWH)
}

/// What an engine burns: a straight line over power at each speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Map {
    /// Best specific consumption, kg/J, at 0.7 of rated speed and 1.1 of rated torque.
    pub best: f64,
    /// Friction torque at rest over rated torque.
    pub friction: f64,
    /// Its rise to rated speed, over rated torque.
    pub friction_rise: f64,
    /// Richer mixture at full throttle: share added, from 0.8 of full power on.
    pub enrichment: f64,
}

impl Map {
    /// The usual map of a kind for a best specific consumption, kg/J.
    ///
    /// Friction shares stand for friction and pumping mean pressures of 2 bar against 7 bar brake mean pressure (natural
    /// diesel), 14 bar (turbo diesel), 10 bar (petrol).
    #[must_use]
    pub const fn new(kind: Kind, best: f64) -> Map {
        let (friction, friction_rise, enrichment) = match kind {
            Kind::NaturalDiesel => (0.16, 0.10, 0.0),
            Kind::TurboDiesel => (0.09, 0.07, 0.0),
            Kind::Petrol | Kind::Outboard => (0.16, 0.10, 0.12),
            Kind::Electric => (0.0, 0.0, 0.0),
        };
        Map { best, friction, friction_rise, enrichment }
    }

    /// Fuel flow, kg/s: at `x` of rated speed, `power` taken, `full` power at that speed, rated power, all W.
    #[must_use]
    pub fn flow(&self, x: f64, power: f64, full: f64, rated: f64) -> f64 {
        let at_best = 1.0 + (self.friction + 0.7 * self.friction_rise) / 1.1;
        let inside = power.max(0.0) + rated * x * (self.friction + self.friction_rise * x);
        let load = if full > 0.0 { (power / full).clamp(0.0, 1.0) } else { 1.0 };
        let rich = 1.0 + self.enrichment * ((load - 0.8) / 0.2).max(0.0);
        self.best / at_best * inside * rich
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn best_value_stands_at_the_best_point() {
        for kind in [Kind::NaturalDiesel, Kind::TurboDiesel] {
            let best = best_consumption(kind).1;
            let map = Map::new(kind, best);
            let power = 0.7 * 1.1 * 50e3;
            assert!((map.flow(0.7, power, power, 50e3) / power / best - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn part_load_costs_more_per_joule_and_idle_still_burns() {
        for &kind in &Kind::ALL[..4] {
            let map = Map::new(kind, best_consumption(kind).1);
            let part = map.flow(0.63, 0.25, 0.7, 1.0) / 0.25;
            let full = map.flow(1.0, 1.0, 1.0, 1.0);
            assert!(part > full, "{kind:?}");
            assert!(map.flow(0.25, 0.0, 0.2, 1.0) > 0.0);
        }
    }
}
