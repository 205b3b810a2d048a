//! An evenly weighted part of the crowd on which the questions are asked.

use crate::crowd::Crowd;
use crate::crowd::definite::Definite;
use crate::crowd::definite::Fitted;
use crate::crowd::latent::{COUNT, Latent};
use crate::crowd::normal;
use crate::crowd::plan::{RUN_ENGINE_SPEED, RUN_SPEED};
use crate::crowd::setup::Setup;
use crate::crowd::stats::Weighted;
use crate::measures::{self, Measures};
use crate::report::{Band, FullThrottle, Limits};
use hydro::hull::Curve;
use hydro::running::{FullThrottle as Running, Held};
use rayon::prelude::*;

/// Knots in a metre per second.
pub const KNOT: f64 = 1852.0 / 3600.0;

/// Representatives of a crowd.
pub struct Panel<'a> {
    /// The crowd they come from.
    pub crowd: &'a Crowd,
    /// Positions in the crowd.
    pub members: Vec<usize>,
    even: Vec<f64>,
}

/// One representative at full throttle in one setup.
#[derive(Clone, Copy)]
pub struct Run {
    /// The boat in that setup.
    pub fitted: Fitted,
    /// At full throttle.
    pub full: Running,
}

impl<'a> Panel<'a> {
    /// `count` representatives.
    #[must_use]
    pub fn of(crowd: &'a Crowd, count: usize) -> Panel<'a> {
        Panel::with(crowd, crowd.representatives(count))
    }

    /// The boats at these positions.
    #[must_use]
    pub(crate) fn with(crowd: &'a Crowd, members: Vec<usize>) -> Panel<'a> {
        Panel { crowd, even: vec![1.0; members.len()], members }
    }

    /// The first `count` representatives, evenly thinned.
    #[must_use]
    pub fn thinned(&self, count: usize) -> Panel<'a> {
        let step = (self.members.len() / count.max(1)).max(1);
        let members: Vec<usize> = self.members.iter().copied().step_by(step).collect();
        Panel { crowd: self.crowd, even: vec![1.0; members.len()], members }
    }

    /// The boats.
    pub fn boats(&self) -> impl Iterator<Item = &'a Definite> + '_ {
        self.members.iter().map(|i| &self.crowd.boats[*i])
    }

    /// All of them at full throttle in a setup.
    #[must_use]
    pub fn run(&self, setup: &Setup) -> Vec<Run> {
        if *setup == Setup::default() {
            return self.boats().map(|boat| Run { fitted: boat.described, full: boat.full }).collect();
        }
        self.run_on(setup, &self.resistance(setup))
    }

    /// Their resistance in a setup.
    #[must_use]
    pub fn resistance(&self, setup: &Setup) -> Vec<Curve> {
        self.members.par_iter().map(|i| self.crowd.boats[*i].resistance(&self.crowd.plan, setup)).collect()
    }

    /// All of them at full throttle in a setup, on resistances known already.
    #[must_use]
    pub fn run_on(&self, setup: &Setup, resistance: &[Curve]) -> Vec<Run> {
        self.members
            .par_iter()
            .zip(resistance)
            .map(|(i, curve)| {
                let fitted = self.crowd.boats[*i].fitted_on(&self.crowd.plan, setup, *curve);
                Run { full: fitted.installation.full_throttle(), fitted }
            })
            .collect()
    }

    /// The band of a quantity over the panel.
    #[must_use]
    pub fn band(&self, values: &[f64], unit: &'static str) -> Band {
        Weighted::new(&self.even).band(values, unit)
    }

    /// Share of the panel for which a condition holds.
    pub fn share(&self, condition: impl FnMut(usize) -> bool) -> f64 {
        Weighted::new(&self.even).share(condition)
    }

    /// One latent's standard normal numbers.
    #[must_use]
    pub fn draws(&self, latent: Latent) -> Vec<f64> {
        self.members.iter().map(|i| self.crowd.z[i * COUNT + latent as usize]).collect()
    }

    /// Squared correlation with a latent.
    #[must_use]
    pub fn shared_variance(&self, latent: Latent, values: &[f64]) -> f64 {
        Weighted::new(&self.even).shared_variance(&self.draws(latent), values)
    }

    /// The full-throttle block of an answer, as it would be read on another day: the run's own scatter included.
    #[must_use]
    pub fn full_throttle(&self, runs: &[Run]) -> FullThrottle {
        let of = |f: fn(&Run) -> f64| runs.iter().map(f).collect::<Vec<f64>>();
        FullThrottle {
            engine_speed: self
                .band(&self.on_a_day(of(|r| r.full.point.engine_speed.rpm()), RUN_ENGINE_SPEED, 0), "rpm"),
            speed: self.band(&self.on_a_day(of(|r| r.full.point.speed / KNOT), RUN_SPEED, 1), "kn"),
            governed: self.share(|i| matches!(runs[i].full.held, Held::Governor | Held::Limiter)),
            power: self.band(&of(|r| r.full.point.brake_power / 1000.0), "kW"),
            fuel: self.band(&self.litres(runs, |r| r.full.point.fuel), "L/h"),
            stuck_at_hump: self.share(|i| !runs[i].full.climbs),
        }
    }

    /// Values with a scatter (sd of the logarithm) drawn anew for each boat, the same for the same boat and `what`.
    fn on_a_day(&self, mut values: Vec<f64>, scatter: f64, what: u32) -> Vec<f64> {
        for (i, value) in values.iter_mut().enumerate() {
            *value *= (scatter * normal::draw(i as u32, what, self.crowd.seed ^ 0x2c1b)).exp();
        }
        values
    }

    /// Fuel in litres per hour.
    pub fn litres(&self, runs: &[Run], kilograms_per_second: impl Fn(&Run) -> f64) -> Vec<f64> {
        let density = fuel_density(self.crowd.plan.knowledge.engine_kind.0);
        runs.iter().map(|r| kilograms_per_second(r) * 3600.0 / density).collect()
    }

    /// Limits and measures at full throttle.
    #[must_use]
    pub fn limits(&self, runs: &[Run]) -> Limits {
        let measured: Vec<Measures> = runs.iter().map(measures::at_full_throttle).collect();
        let of = |f: fn(&Measures) -> f64| measured.iter().map(f).collect::<Vec<f64>>();
        Limits {
            apparent_slip: self.band(&of(|m| 100.0 * m.apparent_slip), "%"),
            real_slip: self.band(&of(|m| 100.0 * m.real_slip), "%"),
            efficiency: self.band(&of(|m| 100.0 * m.efficiency), "%"),
            back_cavitation: self.band(&of(|m| m.back_cavitation), "%"),
            thrust_lost: self.band(&of(|m| 100.0 * m.thrust_lost), "%"),
            tip_speed: self.band(&of(|m| m.tip_speed), "m/s"),
            blade_loading: self.band(&of(|m| m.blade_loading / 1000.0), "kPa"),
            thrust: self.band(&of(|m| m.thrust), "N"),
        }
    }
}

/// Density of the fuel, kg/L.
#[must_use]
pub fn fuel_density(kind: job::EngineKind) -> f64 {
    job::quantity::fuel_density(Some(kind)) / 1000.0
}
