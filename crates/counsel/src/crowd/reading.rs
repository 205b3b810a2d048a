//! What a definite boat would show, and how well that agrees with what was read.

use super::definite::Definite;
use super::latent::Latent;
use super::plan::{At, Observation, Plan, What};
use hydro::running::Installation;
use hydro::speed::EngineSpeed;

/// Readings further off than this many scatters count as a line, not a parabola: one rogue reading must not rule.
const ROGUE: f64 = 2.5;

/// ln of the chance that a boat called planing does not plane at full throttle as described (`common practice, no source`:
/// boats that do not are complained of, and one in ten of those called so is let stand).
const DOES_NOT_PLANE: f64 = -2.3;

/// ln likelihood of what the kind says: a boat called planing planes.
pub(super) fn kind(plan: &Plan, boat: &Definite) -> f64 {
    if plan.knowledge.kind.0 != job::Kind::Planing || !plan.knowledge.kind.1 {
        return 0.0;
    }
    let full = boat.fitted(plan, &plan.setups[0]).installation.full_throttle();
    let unit = (hydro::water::GRAVITY * (boat.form.mass / boat.water.density).cbrt()).sqrt();
    if full.point.speed / unit < 2.0 { DOES_NOT_PLANE } else { 0.0 }
}

/// Fills `shown` with the logarithm of what the boat would show for each observation; returns the ln likelihood.
pub(super) fn likelihood(plan: &Plan, boat: &Definite, shown: &mut [f64]) -> f64 {
    let mut sum = 0.0;
    let mut last: Option<(usize, Installation)> = None;
    let mut steady: Option<(usize, Shown)> = None;
    for (i, o) in plan.observations.iter().enumerate() {
        let installation = match &last {
            Some((setup, installation)) if *setup == o.setup => *installation,
            _ => boat.fitted(plan, &plan.setups[o.setup]).installation,
        };
        last = Some((o.setup, installation));
        let running = match steady {
            Some((reading, running)) if reading == o.reading => running,
            _ => {
                let running = run(boat, &installation, o);
                sum += running.strain;
                running
            }
        };
        steady = Some((o.reading, running));
        let (value, bias) = match o.what {
            What::EngineSpeed => (running.engine_speed, o.bias * boat.row[Latent::Tachometer as usize]),
            What::ShaftSpeed => (running.engine_speed / installation.drive.reduction, 0.0),
            What::Speed => (running.speed, o.bias * boat.row[Latent::SpeedInstrument as usize]),
            What::Fuel => (running.fuel, 0.0),
        };
        shown[i] = if value > 0.0 { value.ln() + bias } else { f64::NAN };
        let gap = gap(o, shown[i]);
        sum -= if gap.abs() < ROGUE { 0.5 * gap * gap } else { ROGUE * (gap.abs() - 0.5 * ROGUE) };
    }
    sum
}

/// How many scatters the reading lies from what the boat would show. 0 where the reading only says "at least".
pub(super) fn gap(o: &Observation, shown: f64) -> f64 {
    if !shown.is_finite() {
        return 6.0;
    }
    let gap = (shown - o.value.ln()) / o.scatter;
    if o.at_least { gap.min(0.0) } else { gap }
}

#[derive(Clone, Copy)]
struct Shown {
    engine_speed: f64,
    speed: f64,
    fuel: f64,
    /// ln likelihood of the engine carrying this load at all.
    strain: f64,
}

fn run(boat: &Definite, installation: &Installation, o: &Observation) -> Shown {
    let engine_speed = match o.at {
        At::FullThrottle => {
            let full = installation.full_throttle();
            return Shown {
                engine_speed: full.point.engine_speed.0,
                speed: full.point.speed,
                fuel: full.point.fuel,
                strain: 0.0,
            };
        }
        At::Shown(shown, bias) => shown * (-bias * boat.row[Latent::Tachometer as usize]).exp(),
        At::Shaft(shaft) => shaft * installation.drive.reduction,
    };
    let steady = installation.at_engine_speed(EngineSpeed(engine_speed));
    // The boat was seen to run at this speed, so its engine carries the load; 3 % allowed for the curve's shape.
    let over = (steady.point.brake_power / steady.point.available_power.max(1.0) - 1.0).max(0.0);
    Shown {
        engine_speed,
        speed: steady.point.speed,
        fuel: steady.point.fuel,
        strain: -(0.5 * (over / 0.03).powi(2)).min(8.0),
    }
}
