//! What a definite boat would show, and how well that agrees with what was read.

use super::definite::{Definite, Fitted};
use super::latent::Latent;
use super::plan::{At, Observation, Plan, What};
use super::setup::Setup;
use hydro::speed::EngineSpeed;

/// Readings further off than this many scatters count as a line, not a parabola: one rogue reading must not rule.
const ROGUE: f64 = 2.5;

/// ln of the chance that a boat called planing does not plane at full throttle as described (`common practice, no source`:
/// boats that do not are complained of, and one in ten of those called so is let stand).
const DOES_NOT_PLANE: f64 = -2.3;

/// The same as it is told beside every answer it shapes.
pub(crate) const PLANES: &str = "A boat called planing is taken to plane at full throttle: definite boats that do not count a tenth (common practice, no source)";

/// ln likelihood of what the kind says: a boat called planing planes.
pub(crate) fn kind(plan: &Plan, boat: &Definite) -> f64 {
    if plan.knowledge.kind.0 != job::Kind::Planing || !plan.knowledge.kind.1 {
        return 0.0;
    }
    let unit = (hydro::water::GRAVITY * (boat.form.mass / boat.water.density).cbrt()).sqrt();
    if boat.full.point.speed / unit < 2.0 { DOES_NOT_PLANE } else { 0.0 }
}

/// The order in which a boat's readings are run: each setup by rising engine speed, things read together side by side.
pub(super) fn order(plan: &Plan) -> Vec<usize> {
    let turns = |o: &Observation| match o.at {
        At::Shown(n, _) | At::Shaft(n) => n,
        At::FullThrottle => f64::INFINITY,
    };
    let mut order: Vec<usize> = (0..plan.observations.len()).collect();
    order.sort_by(|a, b| {
        let (a, b) = (&plan.observations[*a], &plan.observations[*b]);
        a.setup.cmp(&b.setup).then(turns(a).total_cmp(&turns(b))).then(a.reading.cmp(&b.reading))
    });
    order
}

/// Fills `shown` with the logarithm of what the boat would show for each observation, run in that [`order`]; returns the ln
/// likelihood.
pub(super) fn likelihood(plan: &Plan, order: &[usize], boat: &Definite, z: &[f64], shown: &mut [f64]) -> f64 {
    let mut sum = 0.0;
    // What is suspected to have come since does not touch readings taken in another state.
    let earlier = plan
        .before
        .as_deref()
        .filter(|_| plan.observations.iter().any(|o| o.setup != 0))
        .map(|before| (&before.plan, Definite::new(&before.plan, before.values(z))));
    let now = (plan, boat);
    let mut fitted = boat.described;
    let mut of = 0;
    let mut steady: Option<(usize, Shown)> = None;
    for &i in order {
        let o = &plan.observations[i];
        let setup = &plan.setups[o.setup];
        let (plan, boat) = earlier.as_ref().filter(|_| o.setup != 0).map_or(now, |(plan, boat)| (plan, boat));
        if of != o.setup {
            (of, steady) = (o.setup, None);
            fitted = boat.fitted(plan, setup);
        }
        let running = match steady {
            Some((reading, running)) if reading == o.reading => running,
            slower => {
                let running = run(boat, &fitted, setup, o, slower.map(|(_, running)| running));
                sum += running.strain;
                running
            }
        };
        steady = Some((o.reading, running));
        let (value, bias) = match o.what {
            What::EngineSpeed => (running.engine_speed, o.bias * boat.row[Latent::Tachometer as usize]),
            What::ShaftSpeed => (running.engine_speed / fitted.installation.drive.reduction, 0.0),
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
pub(crate) fn gap(o: &Observation, shown: f64) -> f64 {
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

/// The boat as she was run; `slower` is another reading of the same setup that may have been run slower.
fn run(boat: &Definite, fitted: &Fitted, setup: &Setup, o: &Observation, slower: Option<Shown>) -> Shown {
    let installation = &fitted.installation;
    let engine_speed = match o.at {
        At::FullThrottle => {
            let full = boat.full_throttle(fitted, setup);
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
    let from = slower.filter(|s| s.engine_speed <= engine_speed).map_or(0.0, |s| s.speed);
    let steady = installation.at_engine_speed_beyond(EngineSpeed(engine_speed), from);
    // The boat was seen to run at this speed, so its engine carries the load; 3 % allowed for the curve's shape.
    let over = (steady.point.brake_power / steady.point.available_power.max(1.0) - 1.0).max(0.0);
    Shown {
        engine_speed,
        speed: steady.point.speed,
        fuel: steady.point.fuel,
        strain: -(0.5 * (over / 0.03).powi(2)).min(8.0),
    }
}
