//! Where full throttle should end up, and the chances of being there.

use crate::crowd::latent::Latent;
use crate::crowd::physics;
use crate::crowd::plan::Plan;
use crate::panel::{Panel, Run};
use crate::report::{AcceptedBand, Verdict};
use hydro::engine::band::accepted_band;
use hydro::running::Held;
use hydro::speed::EngineSpeed;
use job::Job;

/// The accepted band of a job's engine, and how to lay it on a boat of the crowd.
#[derive(Clone, Debug, PartialEq)]
pub struct Accepted {
    /// As reported.
    pub report: AcceptedBand,
    /// Over the middle of the rated speed.
    low: f64,
    high: f64,
    /// The band was stated by the maker: it does not move with an unknown rated speed.
    stated: bool,
    /// Lowest and highest, rev/s.
    absolute: (f64, f64),
    limiter: bool,
}

/// Where one boat's full throttle lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Below the band.
    Below,
    /// Inside.
    Inside,
    /// Above, or on the limiter.
    Above,
}

impl Accepted {
    /// The band for a job.
    #[must_use]
    pub fn of(job: &Job, plan: &Plan) -> Accepted {
        let kind = physics::engine_kind(plan.knowledge.engine_kind.0);
        let rated = plan.dists[Latent::RatedSpeed as usize].middle;
        let maker = job.engine.full_throttle_band.map(|(low, high)| (EngineSpeed(low), EngineSpeed(high)));
        let band = accepted_band(kind, job.engine.rating.map(physics::rating), EngineSpeed(rated), maker);
        Accepted {
            report: AcceptedBand {
                low: band.low.rpm(),
                high: band.high.rpm(),
                unit: "rpm",
                source: band.source.to_owned(),
            },
            low: band.low.0 / rated,
            high: band.high.0 / rated,
            stated: maker.is_some() || plan.origin[Latent::RatedSpeed as usize].0,
            absolute: (band.low.0, band.high.0),
            limiter: !kind.governed(),
        }
    }

    /// Middle of the band, rev/s.
    #[must_use]
    pub fn middle(&self) -> f64 {
        0.5 * (self.absolute.0 + self.absolute.1)
    }

    /// The band laid on a boat, rev/s.
    #[must_use]
    pub fn edges(&self, run: &Run) -> (f64, f64) {
        let rated = run.fitted.installation.engine.rated_speed.0;
        if self.stated { self.absolute } else { (self.low * rated, self.high * rated) }
    }

    /// Where a run lies.
    #[must_use]
    pub fn place(&self, run: &Run) -> Place {
        let n = run.full.point.engine_speed.0;
        let (low, high) = self.edges(run);
        if n < low {
            Place::Below
        } else if n > high || (self.limiter && run.full.held == Held::Limiter) {
            Place::Above
        } else {
            Place::Inside
        }
    }

    /// Chances over a panel.
    #[must_use]
    pub fn verdict(&self, panel: &Panel, runs: &[Run]) -> Verdict {
        let share = |place: Place| panel.share(|i| self.place(&runs[i]) == place);
        Verdict { over_pitched: share(Place::Below), right: share(Place::Inside), under_pitched: share(Place::Above) }
    }
}
