//! Where the brake power of one engine goes, from gearbox to hull.

use super::{Installation, Point};
use crate::source::{Method, Trust};
use std::f64::consts::{PI, TAU};

/// How the propeller's losses are split.
pub const METHOD: Method = Method {
    name: "propeller-loss-split",
    quantity: "delivered power left in axial wash, swirl, blade friction, W",
    formula: "axial T (sqrt(Va^2 + 2T/(rho A)) - Va)/2; swirl Q^2/(rho A R^2 (Va + u)), the least a torque can leave; the rest is \
              blade friction and uneven load; shaft angle: what the same boat needs more than on a level shaft",
    range: "positive thrust, open propellers; a split for understanding: the sum is that of the balance",
    error: "the sum closes exactly; between swirl and friction the split is good to a tenth of the delivered power (estimate)",
    source: "actuator disc of W. J. M. Rankine 1865 and R. E. Froude 1889 as in textbooks (from memory); swirl: angular momentum of \
             a wash that turns as one, ours",
    trust: Trust::Memory,
};

/// Power of one engine, part by part, W. All parts sum to the brake power.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Split {
    /// Lost in gearbox and shaft bearings.
    pub drive: f64,
    /// Left in the wash astern.
    pub axial: f64,
    /// Left in the turning of the wash.
    pub swirl: f64,
    /// Friction of the blades and what uneven load and cavitation cost.
    pub friction: f64,
    /// Needed more than on a level shaft.
    pub shaft_angle: f64,
    /// Between propeller and hull: suction on the stern less what the wake gives back; negative where the wake gives more.
    pub interaction: f64,
    /// To move the hull and a tow.
    pub hull: f64,
}

impl Split {
    /// The parts, W.
    #[must_use]
    pub const fn parts(&self) -> [f64; 7] {
        [self.drive, self.axial, self.swirl, self.friction, self.shaft_angle, self.interaction, self.hull]
    }
}

/// The split of a running point of a boat; `None` where a part is no number.
#[must_use]
pub fn split(boat: &Installation, point: &Point) -> Option<Split> {
    let inclined = boat.stern.shaft_angle_deg.abs() > 0.01;
    let level = inclined
        .then(|| {
            let mut level = *boat;
            level.stern.shaft_angle_deg = 0.0;
            level.at_speed(point.speed)
        })
        .flatten()
        .unwrap_or(*point);
    let rotative = boat.stern.relative_rotative;
    let (area, radius) = (0.25 * PI * boat.diameter * boat.diameter, 0.5 * boat.diameter);
    let density = boat.water.density;
    let advance = |p: &Point| p.advance_ratio * p.shaft_speed.0 * boat.diameter;
    // Level: open-water power, thrust power, and what the momentum of the wash must take.
    let va = advance(&level);
    let (thrust, torque) = (level.thrust, level.torque * rotative);
    let lost = TAU * level.shaft_speed.0 * torque - thrust * va;
    let induced = 0.5 * ((va * va + 2.0 * thrust.max(0.0) / (density * area)).sqrt() - va);
    let axial = (thrust * induced).clamp(0.0, lost.max(0.0));
    let through = density * area * (va + induced).max(0.05);
    let swirl = (torque * torque / (through * radius * radius)).clamp(0.0, (lost - axial).max(0.0));
    // As it is: what the open-water losses have grown by is the shaft angle's.
    let open = point.delivered_power * rotative;
    let pushed = point.thrust * advance(point);
    let hull = point.resistance * point.speed / f64::from(boat.screws.max(1));
    let split = Split {
        drive: point.brake_power - point.delivered_power,
        axial,
        swirl,
        friction: lost - axial - swirl,
        shaft_angle: open - pushed - lost,
        interaction: point.delivered_power - open + pushed - hull,
        hull,
    };
    split.parts().iter().all(|p| p.is_finite()).then_some(split)
}
