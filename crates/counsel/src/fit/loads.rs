//! What the crowd puts on shaft and blades, and what is known of the propeller in hand.

use crate::crowd::Crowd;
use crate::crowd::latent::Latent;
use crate::crowd::plan::Plan;
use crate::judge::judged_setup;
use crate::panel::{Panel, Run};
use crate::report::Band;
use crate::{Lack, Options};
use hydro::blade::Alloy;
use job::{Arrangement, Job, Kind, Quantity};

/// Representatives the loads are taken on.
const LOADED: usize = 320;

/// Loads of one shaft at full throttle, clean and loaded.
pub(super) struct Loads {
    pub crowd: Crowd,
    /// N m on the propeller shaft.
    pub torque: Band,
    /// rev/s of the shaft.
    pub turns: Band,
    /// rev/s of the engine.
    pub engine: Band,
    /// N
    pub thrust: Band,
    /// m/s
    pub speed: Band,
    /// W at the shaft.
    pub power: Band,
    /// Advance ratio on the speed of advance.
    pub advance: f64,
    /// Thrust coefficient.
    pub kt: f64,
    /// 1 - wake.
    pub inflow: f64,
    pub water: f64,
    pub viscosity: f64,
    /// Slope of resistance over speed at the sailing speed, N s/m, and that speed m/s.
    pub sailing: Option<(f64, f64)>,
}

impl Loads {
    pub fn of(job: &Job, options: &Options) -> Result<Loads, Lack> {
        let crowd = Crowd::draw(Plan::new(job)?, options.boats, options.seed);
        let panel = Panel::of(&crowd, LOADED);
        let runs = panel.run(&judged_setup(job));
        let of = |f: &dyn Fn(&Run) -> f64, unit| panel.band(&runs.iter().map(f).collect::<Vec<f64>>(), unit);
        let middle = |f: &dyn Fn(&Run) -> f64| of(f, "1").middle;
        let kt = |r: &Run| {
            let (n, d) = (r.full.point.shaft_speed.0, r.fitted.installation.diameter);
            r.full.point.thrust / (r.fitted.installation.water.density * n * n * d.powi(4)).max(1e-9)
        };
        let sailing = job.under_sail.speed.as_ref().map(|q| q.middle).map(|v| {
            let slopes: Vec<f64> = runs
                .iter()
                .map(|r| {
                    let at = |v: f64| r.fitted.installation.resistance.at(v);
                    (at(1.05 * v) - at(0.95 * v)) / (0.1 * v)
                })
                .collect();
            (panel.band(&slopes, "1").middle, v)
        });
        let loads = Loads {
            torque: of(&|r| r.full.point.torque, "N m"),
            turns: of(&|r| r.full.point.shaft_speed.0, "1"),
            engine: of(&|r| r.full.point.engine_speed.0, "1"),
            thrust: of(&|r| r.full.point.thrust, "N"),
            speed: of(&|r| r.full.point.speed, "m/s"),
            power: of(&|r| r.full.point.delivered_power, "W"),
            advance: middle(&|r| r.full.point.advance_ratio),
            kt: middle(&kt),
            inflow: middle(&|r| 1.0 - r.fitted.installation.stern.wake),
            water: middle(&|r| r.fitted.installation.water.density),
            viscosity: middle(&|r| r.fitted.installation.water.viscosity),
            sailing,
            crowd,
        };
        Ok(loads)
    }
}

/// The propeller the checks are for.
pub(super) struct Subject<'a> {
    pub job: &'a Job,
    pub diameter: f64,
    pub pitch: f64,
    pub blades: u8,
    pub area_ratio: f64,
    pub alloy: Alloy,
    pub alloy_said: bool,
    pub sailing: bool,
    pub planing: bool,
    pub leg: bool,
    pub twin: bool,
}

impl<'a> Subject<'a> {
    pub fn of(job: &'a Job, plan: &Plan) -> Subject<'a> {
        let at = |latent: Latent| plan.dists[latent as usize].middle;
        Subject {
            job,
            diameter: at(Latent::Diameter),
            pitch: at(Latent::Pitch),
            blades: plan.knowledge.blades.0,
            area_ratio: at(Latent::AreaRatio),
            alloy: crate::survey::alloy(job),
            alloy_said: job.propeller.material.is_some(),
            sailing: plan.knowledge.kind.0 == Kind::Sailing,
            planing: matches!(plan.knowledge.kind.0, Kind::Planing),
            leg: matches!(
                plan.knowledge.arrangement.0,
                Arrangement::Outboard | Arrangement::Sterndrive | Arrangement::Saildrive
            ),
            twin: plan.knowledge.screws.0 > 1,
        }
    }

    /// `16 x 11 in, 3 blades`.
    pub fn words(&self) -> String {
        let blades = self.blades;
        format!("{}, {blades} blades", crate::phrase::size(self.diameter, self.pitch))
    }
}

/// A stated quantity as a band in another unit.
pub(super) fn band(q: &Quantity, scale: f64, unit: &'static str) -> Band {
    Band { low: scale * q.low, middle: scale * q.middle, high: scale * q.high, unit }
}
