//! The disc of water a propeller takes hold of.

use super::{Ground, OnBoat, Term};
use crate::panel::Run;
use crate::phrase;
use hydro::source::{Method, Trust};
use std::f64::consts::FRAC_PI_4;

/// The ideal propeller.
pub const METHOD: Method = Method {
    name: "ideal-propeller",
    quantity: "water through the disc, kg/s; speed added to it, m/s; ideal efficiency",
    formula: "c = T/(rho A Va^2/2); u/Va = (sqrt(1+c) - 1)/2 at the disc, twice that far astern; eta_i = 2/(1 + sqrt(1+c)); \
              m = rho A (Va + u)",
    range: "open propellers pushing ahead; no swirl, no friction: no real propeller reaches it",
    error: "exact for what it leaves out; a good propeller reaches about four fifths of it (common practice)",
    source: "actuator disc of W. J. M. Rankine 1865 and R. E. Froude 1889 as in textbooks (from memory)",
    trust: Trust::Memory,
};

/// What an ideal propeller does: `thrust` N, `area` of the disc m², `va` speed of advance m/s, `density` kg/m³. Gives the
/// water through the disc (kg/s), the speed added far astern (m/s), and the ideal efficiency.
#[must_use]
pub fn ideal(thrust: f64, area: f64, va: f64, density: f64) -> (f64, f64, f64) {
    let (thrust, va) = (thrust.max(0.0), va.max(0.0));
    // From T = rho A (Va + u) 2u: the same as the formula over Va, and right at the bollard too.
    let induced = 0.5 * ((va * va + 2.0 * thrust / (density * area)).sqrt() - va);
    let efficiency = if va + induced > 0.0 { va / (va + induced) } else { 0.0 };
    (density * area * (va + induced), 2.0 * induced, efficiency)
}

fn of(run: &Run, diameter: f64) -> (f64, f64, f64) {
    let boat = &run.fitted.installation;
    let point = &run.full.point;
    let va = point.advance_ratio * point.shaft_speed.0 * run.fitted.screw.diameter;
    ideal(point.thrust, FRAC_PI_4 * diameter * diameter, va, boat.water.density)
}

pub(super) fn diameter(ground: &Ground) -> OnBoat {
    let diameter = |run: &Run| run.fitted.screw.diameter;
    let d = ground.middle(diameter);
    let tonnes = ground.span("t", |r| 0.06 * of(r, diameter(r)).0);
    let added = ground.span("kn", |r| of(r, diameter(r)).1 / crate::panel::KNOT);
    let now = ground.middle(|r| 100.0 * of(r, diameter(r)).2);
    let larger = ground.middle(|r| 100.0 * of(r, 1.1 * diameter(r)).2);
    OnBoat::new(
        Term::Diameter,
        "boat",
        vec![
            ("inches", phrase::inches(d)),
            ("mm", phrase::number(1000.0 * d, 1.0)),
            ("disc", phrase::plain(FRAC_PI_4 * d * d, 2)),
            ("tonnes", tonnes),
            ("added", added),
            ("now", phrase::number(now, 1.0)),
            ("larger", phrase::number(larger, 1.0)),
        ],
        &[METHOD.name, "running-balance"],
    )
}

#[cfg(test)]
mod tests {
    use super::ideal;

    #[test]
    fn the_momentum_given_to_the_water_is_the_thrust() {
        let (mass, added, efficiency) = ideal(2500.0, 0.13, 2.6, 1025.0);
        assert!((mass * added - 2500.0).abs() < 1e-9);
        // Thrust power over that and the energy left in the wash.
        let useful = 2500.0 * 2.6;
        assert!((efficiency - useful / (useful + 0.5 * mass * added * added)).abs() < 1e-12);
    }

    #[test]
    fn at_the_bollard_water_is_moved_and_nothing_is_won() {
        let (mass, added, efficiency) = ideal(1000.0, 0.1, 0.0, 1000.0);
        assert_eq!(efficiency, 0.0);
        assert!((mass * added - 1000.0).abs() < 1e-9);
    }
}
