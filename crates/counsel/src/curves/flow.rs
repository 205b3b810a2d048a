//! Where the brake power goes.

use crate::panel::{KNOT, Panel, Run};
use crate::report::Band;
use hydro::running::Point;
use hydro::running::split::{Split, split};
use rayon::prelude::*;
use serde::Serialize;

/// Power of one engine, followed to the hull. The parts of the typical boat sum to `brake`; the bands are the crowd's.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PowerFlow {
    /// When, in words: `cruising`, `at full throttle`.
    pub at: String,
    /// Boat speed, kn.
    pub speed: f64,
    /// Engine speed, rpm.
    pub engine_speed: f64,
    /// Screws, each with its own engine.
    pub screws: u8,
    /// Brake power, kW.
    pub brake: f64,
    /// Lost in gearbox and shaft bearings, kW.
    pub drive: f64,
    /// Left in the wash astern, kW.
    pub axial: f64,
    /// Left in the turning of the wash, kW.
    pub swirl: f64,
    /// Friction of the blades and what uneven load and cavitation cost, kW.
    pub friction: f64,
    /// Because the shaft is not level, kW.
    pub shaft_angle: f64,
    /// Between propeller and hull, kW: the suction on the stern less what the wake gives back; negative where the wake
    /// gives more.
    pub interaction: f64,
    /// To move the hull (and a tow), kW.
    pub hull: f64,
    /// Band of the brake power over the crowd, kW.
    pub brake_band: Band,
    /// Band of the share of the brake power that moves the hull, %.
    pub useful: Band,
}

/// The flow at a speed, m/s, or at full throttle.
pub(super) fn flow(panel: &Panel, runs: &[Run], at: &str, speed: Option<f64>) -> Option<PowerFlow> {
    let points: Vec<Option<(Point, Split)>> = runs
        .par_iter()
        .map(|run| {
            let boat = &run.fitted.installation;
            let point = match speed {
                Some(v) => boat.at_speed(v).filter(|p| p.load() <= 1.005)?,
                None => run.full.point,
            };
            (point.brake_power > 1.0 && point.speed > 0.1).then(|| split(boat, &point).map(|s| (point, s)))?
        })
        .collect();
    if panel.share(|i| points[i].is_some()) < 0.5 {
        return None;
    }
    let of = |f: &dyn Fn(&Point, &Split) -> f64, unit| {
        let values: Vec<f64> = points.iter().map(|p| p.as_ref().map_or(f64::NAN, |(p, s)| f(p, s))).collect();
        panel.band(&values, unit)
    };
    let brake_band = of(&|p, _| p.brake_power / 1000.0, "kW");
    let useful = of(&|p, s| 100.0 * s.hull / p.brake_power, "%");
    // The typical boat: nearest the middle in power and in what reaches the hull.
    let off = |p: &Point, s: &Split| {
        (p.brake_power / (1000.0 * brake_band.middle) - 1.0).abs()
            + (100.0 * s.hull / p.brake_power / useful.middle - 1.0).abs()
    };
    let (i, (point, parts)) = points
        .iter()
        .enumerate()
        .filter_map(|(i, p)| p.map(|p| (i, p)))
        .min_by(|(_, (p, a)), (_, (q, b))| off(p, a).total_cmp(&off(q, b)))?;
    Some(PowerFlow {
        at: at.to_owned(),
        speed: point.speed / KNOT,
        engine_speed: point.engine_speed.rpm(),
        screws: runs[i].fitted.installation.screws,
        brake: point.brake_power / 1000.0,
        drive: parts.drive / 1000.0,
        axial: parts.axial / 1000.0,
        swirl: parts.swirl / 1000.0,
        friction: parts.friction / 1000.0,
        shaft_angle: parts.shaft_angle / 1000.0,
        interaction: parts.interaction / 1000.0,
        hull: parts.hull / 1000.0,
        brake_band,
        useful,
    })
}
