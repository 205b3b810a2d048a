//! What the crowd puts on shaft and blades, and what is known of the propeller in hand.

use super::exchange::Size;
use crate::crowd::latent::Latent;
use crate::crowd::plan::Plan;
use crate::panel::{Panel, Run};
use crate::report::Band;
use hydro::blade::Alloy;
use hydro::hull::Form;
use job::{Arrangement, Job, Kind, Quantity};

/// Loads of one shaft at full throttle, clean and loaded.
pub(crate) struct Loads {
    /// A boat of the crowd's form.
    pub form: Option<Form>,
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
    /// From a panel's runs at full throttle.
    pub fn of(job: &Job, panel: &Panel, runs: &[Run]) -> Loads {
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
        Loads {
            form: panel.crowd.boats.first().map(|b| b.form),
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
        }
    }

    /// With more thrust, torque and power.
    pub fn raised(mut self, factor: f64) -> Loads {
        for load in [&mut self.torque, &mut self.thrust, &mut self.power] {
            (load.low, load.middle, load.high) = (factor * load.low, factor * load.middle, factor * load.high);
        }
        self
    }
}

/// The propeller the checks are for.
pub(crate) struct Subject<'a> {
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

    /// With the blades of another size.
    pub fn sized(self, size: &Size) -> Subject<'a> {
        let Size { diameter, pitch, blades, area_ratio } = *size;
        Subject { diameter, pitch, blades, area_ratio, ..self }
    }

    /// Its size.
    pub fn size(&self) -> Size {
        Size { diameter: self.diameter, pitch: self.pitch, blades: self.blades, area_ratio: self.area_ratio }
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
