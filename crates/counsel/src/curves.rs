//! `curves`: engine, propeller and boat over the whole range of speeds, for pictures.

mod flow;
mod marks;

pub use flow::PowerFlow;
pub use marks::{Mark, Measured};

use crate::band::Accepted;
use crate::compare::cruise_speed;
use crate::crowd::physics;
use crate::crowd::setup::Setup;
use crate::judge::judged_setup;
use crate::panel::{KNOT, Panel, Run, fuel_density};
use crate::report::{AcceptedBand, Band, FullThrottle};
use crate::{Change, Lack, Options, Prepared};
use hydro::limits::{burrill, slip};
use hydro::running::Point;
use hydro::speed::EngineSpeed;
use job::{Growth, Job};
use rayon::prelude::*;
use serde::Serialize;

/// Representatives the curves are drawn on.
const DRAWN: usize = 192;
/// Points of a curve.
const POINTS: usize = 25;
/// Least share of the boats that must reach a speed for it to be drawn.
const ENOUGH: f64 = 0.5;

/// Name of the state after a change.
pub const AFTER: &str = "after the change";

/// Everything over rpm and over boat speed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Curves {
    /// Title of the job.
    pub title: String,
    /// Rated speed, rpm.
    pub rated_speed: Band,
    /// Where governor or limiter leaves no power, rpm.
    pub top_speed: Band,
    /// Whether a governor (else a limiter) holds the top.
    pub governed: bool,
    /// What the rating asks for.
    pub accepted_band: AcceptedBand,
    /// Full-throttle power of one engine over rpm, kW, governor included.
    pub engine: Vec<Power>,
    /// What the propeller asks for, state by state; the first is the boat as described.
    pub demand: Vec<Demand>,
    /// Over boat speed, as described.
    pub speeds: Vec<SpeedRow>,
    /// The narrowest place on the way to full speed, where most boats have one.
    pub hump: Option<Hump>,
    /// Speed at which cruising is compared, kn.
    pub cruise_speed: f64,
    /// What was read, in the state described.
    pub marks: Vec<Mark>,
    /// Where the power goes, at the cruising speed and at full throttle (those that could be worked out).
    pub flows: Vec<PowerFlow>,
}

/// Power at one engine speed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Power {
    /// Engine speed, rpm.
    pub engine_speed: f64,
    /// kW
    pub power: Band,
}

/// What the propeller asks for in one state.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Demand {
    /// The state in words: `as described`, `clean, loaded`, `fouled`.
    pub state: &'static str,
    /// Power asked of one engine over rpm, kW, whether the engine has it or not.
    pub points: Vec<Power>,
    /// At full throttle.
    pub full_throttle: FullThrottle,
}

/// One boat speed, steady.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SpeedRow {
    /// Boat speed, kn.
    pub speed: f64,
    /// Share of the boats that reach it.
    pub reached: f64,
    /// Engine speed, rpm.
    pub engine_speed: Band,
    /// Power of one engine, kW.
    pub power: Band,
    /// Fuel of all engines, L/h.
    pub fuel: Band,
    /// Apparent slip, %.
    pub apparent_slip: Band,
    /// Cavitation number on the speed at 0.7 R.
    pub sigma: Band,
    /// Thrust over projected area and the same pressure.
    pub tau: Band,
    /// Part of the back that cavitates, %.
    pub back_cavitation: Band,
}

/// A hump.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Hump {
    /// Where, kn.
    pub speed: Band,
    /// Thrust available over thrust needed.
    pub margin: Band,
}

/// Curves of a job.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn curves(job: &Job, options: &Options) -> Result<Curves, Lack> {
    Ok(Prepared::new(job, options)?.curves(None))
}

/// Curves of a job with the demand after a change as the last state.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn curves_after(job: &Job, change: &Change, options: &Options) -> Result<Curves, Lack> {
    Ok(Prepared::new(job, options)?.curves(Some(change)))
}

/// The curves without a change, and the boats they are drawn on.
pub(crate) struct Ground {
    members: Vec<usize>,
    speeds: Vec<f64>,
    curves: Curves,
}

impl Ground {
    pub(crate) fn of(prepared: &Prepared) -> Ground {
        let crowd = &prepared.crowd;
        let panel = Panel::of(crowd, DRAWN);
        let (curves, speeds) = described(&prepared.job, &panel, &prepared.accepted);
        Ground { members: panel.members, speeds, curves }
    }
}

/// The curves on a crowd that is drawn and weighed.
pub(crate) fn on(prepared: &Prepared, ground: &Ground, change: Option<&Change>) -> Curves {
    let mut curves = ground.curves.clone();
    if let Some(change) = change {
        let panel = Panel::with(&prepared.crowd, ground.members.clone());
        curves.demand.push(demand(&panel, AFTER, &prepared.after(change), &ground.speeds));
    }
    curves
}

fn demand(panel: &Panel, state: &'static str, setup: &Setup, speeds: &[f64]) -> Demand {
    let runs = panel.run(setup);
    Demand { state, points: asked(panel, &runs, speeds), full_throttle: panel.full_throttle(&runs) }
}

/// The curves, and the engine speeds they are drawn at.
fn described(job: &Job, panel: &Panel, accepted: &Accepted) -> (Curves, Vec<f64>) {
    let crowd = panel.crowd;
    let described = panel.run(&Setup::default());
    let cruise = cruise_speed(panel, &described);
    let of = |f: &dyn Fn(&Run) -> f64| described.iter().map(f).collect::<Vec<f64>>();
    let rated_speed = panel.band(&of(&|r| r.fitted.installation.engine.rated_speed.rpm()), "rpm");
    let top_speed = panel.band(&of(&|r| r.fitted.installation.engine.top.speed().rpm()), "rpm");
    let speeds_of_engine = range(&rated_speed, &top_speed);
    let engine = speeds_of_engine
        .iter()
        .map(|&rpm| Power {
            engine_speed: rpm,
            power: panel
                .band(&of(&|r| r.fitted.installation.engine.power_at(EngineSpeed::from_rpm(rpm)) / 1000.0), "kW"),
        })
        .collect();
    let demand = states(job).iter().map(|(state, setup)| demand(panel, state, setup, &speeds_of_engine)).collect();
    let humps: Vec<_> = described.iter().map(|r| r.full.hump).collect();
    let hump = (panel.share(|i| humps[i].is_some()) > 0.5).then(|| Hump {
        speed: panel.band(&humps.iter().map(|h| h.map_or(f64::NAN, |h| h.speed / KNOT)).collect::<Vec<_>>(), "kn"),
        margin: panel.band(&humps.iter().map(|h| h.map_or(f64::NAN, |h| h.margin)).collect::<Vec<_>>(), "1"),
    });
    let full = panel.band(&of(&|r| r.full.point.speed), "m/s");
    let flows = [("cruising", Some(cruise)), ("at full throttle", None)]
        .iter()
        .filter_map(|(at, speed)| flow::flow(panel, &described, at, *speed))
        .collect();
    let curves = Curves {
        title: job.title.clone(),
        rated_speed,
        top_speed,
        governed: physics::engine_kind(crowd.plan.knowledge.engine_kind.0).governed(),
        accepted_band: accepted.report.clone(),
        engine,
        demand,
        speeds: over_speed(panel, &described, full.high / KNOT),
        hump,
        cruise_speed: cruise / KNOT,
        marks: marks::marks(job, &crowd.plan),
        flows,
    };
    (curves, speeds_of_engine)
}

/// States the demand is drawn in. Light and loaded are told apart only where a loaded weight is stated; fouled is the
/// loaded boat after a season: heavy slime on the bottom, light slime on the blades (common practice, no source).
fn states(job: &Job) -> Vec<(&'static str, Setup)> {
    let judged = judged_setup(job);
    let fouled = Setup {
        hull_roughness: Some(physics::hull_roughness(Some(Growth::HeavySlime), None, 15.0, false).dist),
        blade_roughness: Some(physics::blade_roughness(Some(Growth::LightSlime), false).dist),
        ..judged
    };
    let mut states = vec![("as described", Setup::default())];
    if job.boat.loaded_displacement.is_some() {
        states.push(("clean, light", Setup::clean(None)));
        states.push(("clean, loaded", judged));
    } else {
        states.push(("clean", judged));
    }
    states.push(("fouled", fouled));
    states
}

/// Engine speeds drawn: from 0.3 of rated speed to the top, the corners of the engine's limit among them.
fn range(rated: &Band, top: &Band) -> Vec<f64> {
    let (from, to) = (0.3 * rated.middle, top.high.max(1.04 * rated.middle));
    let mut speeds: Vec<f64> = (0..POINTS)
        .map(|i| from + (to - from) * i as f64 / (POINTS - 1) as f64)
        .chain([rated.middle, top.middle])
        .collect();
    speeds.sort_by(f64::total_cmp);
    speeds.dedup_by(|a, b| (*a - *b).abs() < 1e-6 * to);
    speeds
}

fn asked(panel: &Panel, runs: &[Run], speeds: &[f64]) -> Vec<Power> {
    speeds
        .iter()
        .map(|&rpm| {
            let power: Vec<f64> = runs
                .par_iter()
                .map(|r| r.fitted.installation.at_engine_speed(EngineSpeed::from_rpm(rpm)).point.brake_power / 1000.0)
                .collect();
            Power { engine_speed: rpm, power: panel.band(&power, "kW") }
        })
        .collect()
}

/// Load and cavitation number of a boat's propeller at a point.
fn loading(run: &Run, point: &Point) -> (f64, f64) {
    let f = &run.fitted;
    let va = point.speed * (1.0 - f.installation.stern.wake);
    let density = f.installation.water.density;
    let square = burrill::blade_speed_squared(va, point.shaft_speed.0, f.screw.diameter);
    let disc = std::f64::consts::FRAC_PI_4 * f.screw.diameter * f.screw.diameter;
    let projected = disc * burrill::projected_area_ratio(f.screw.expanded_area_ratio, f.screw.effective_pitch_ratio());
    (
        burrill::sigma(f.installation.breakdown.head, density, square),
        burrill::tau(point.thrust, density, projected, square),
    )
}

fn over_speed(panel: &Panel, runs: &[Run], top: f64) -> Vec<SpeedRow> {
    let density = fuel_density(panel.crowd.plan.knowledge.engine_kind.0);
    (0..POINTS)
        .map(|i| top * (0.2 + 0.8 * i as f64 / (POINTS - 1) as f64))
        .map(|speed| {
            let points: Vec<Option<Point>> = runs
                .par_iter()
                .map(|run| run.fitted.installation.at_speed(speed * KNOT).filter(|p| p.load() <= 1.005))
                .collect();
            let of = |f: &dyn Fn(&Run, &Point) -> f64, unit| {
                let values: Vec<f64> =
                    runs.iter().zip(&points).map(|(r, p)| p.as_ref().map_or(f64::NAN, |p| f(r, p))).collect();
                panel.band(&values, unit)
            };
            SpeedRow {
                speed,
                reached: panel.share(|i| points[i].is_some()),
                engine_speed: of(&|_, p| p.engine_speed.rpm(), "rpm"),
                power: of(&|_, p| p.brake_power / 1000.0, "kW"),
                fuel: of(&|_, p| p.fuel * 3600.0 / density, "L/h"),
                apparent_slip: of(
                    &|r, p| slip::slip(p.speed, p.shaft_speed.0, r.fitted.marked_pitch).map_or(f64::NAN, |s| 100.0 * s),
                    "%",
                ),
                sigma: of(&|r, p| loading(r, p).0, "1"),
                tau: of(&|r, p| loading(r, p).1, "1"),
                back_cavitation: of(
                    &|r, p| {
                        let (sigma, tau) = loading(r, p);
                        burrill::back_cavitation(sigma, tau).value
                    },
                    "%",
                ),
            }
        })
        .filter(|row| row.reached >= ENOUGH)
        .collect()
}
