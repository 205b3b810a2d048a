//! A job whose crowd is drawn and weighed once, and asked many questions.
//!
//! Drawing and weighing take most of an answer's time and are the same for every change tried: a slider moves the propeller,
//! not what is known of the boat. What is kept here is exactly what [`crate::compare`], [`crate::judge`] and
//! [`curves`](fn@crate::curves) would work out anew, so the answers are the same to the bit.

use crate::band::Accepted;
use crate::compare::Before;
use crate::crowd::Crowd;
use crate::crowd::latent::Latent;
use crate::crowd::plan::Plan;
use crate::crowd::setup::Setup;
use crate::curves::{self, Ground};
use crate::judge::{self, PANEL};
use crate::panel::Panel;
use crate::report::{Comparison, Judgement};
use crate::{Change, Curves, Lack, Options, compare};
use hydro::hull::Curve;
use job::Job;
use job::assume::Dist;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

/// States of the hull kept: those the sliders of weight and growth were last left at, as described and as judged.
const HULLS: usize = 8;

/// What a hull's resistance depends on: weight and roughness.
type HullState = (Option<Dist>, Option<Dist>);

/// What is fitted, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fitted {
    /// Pitch as marked, m.
    pub pitch: f64,
    /// Diameter, m.
    pub diameter: f64,
    /// Blades.
    pub blades: u8,
    /// Expanded area ratio.
    pub area_ratio: f64,
    /// Reduction.
    pub reduction: f64,
    /// Mass of the boat, kg.
    pub mass: f64,
}

/// A job with its weighed crowd.
pub struct Prepared {
    pub(crate) job: Job,
    pub(crate) options: Options,
    pub(crate) crowd: Crowd,
    pub(crate) accepted: Accepted,
    /// Positions of the panel's boats.
    members: Vec<usize>,
    /// How the boat is before any change; worked out with the first one tried.
    before: OnceLock<Before>,
    /// What the curves stand on; worked out with the first drawn.
    ground: OnceLock<Ground>,
    /// Resistances of the panel in changed states of the hull, the last used last.
    hulls: Mutex<Vec<(HullState, Arc<Vec<Curve>>)>>,
}

impl Prepared {
    /// Draws and weighs the crowd of a job.
    ///
    /// # Errors
    /// When something is missing that cannot be assumed.
    pub fn new(job: &Job, options: &Options) -> Result<Prepared, Lack> {
        let crowd = Crowd::draw(Plan::new(job)?, options.boats, options.seed);
        let accepted = Accepted::of(job, &crowd.plan);
        let members = crowd.representatives(PANEL);
        Ok(Prepared {
            job: job.clone(),
            options: *options,
            crowd,
            accepted,
            members,
            before: OnceLock::new(),
            ground: OnceLock::new(),
            hulls: Mutex::new(Vec::new()),
        })
    }

    /// The job.
    #[must_use]
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// The boats the questions are asked on.
    pub(crate) fn panel(&self) -> Panel<'_> {
        Panel::with(&self.crowd, self.members.clone())
    }

    /// Resistances of the panel in a setup: a slider of the propeller moved after one of the hull finds them worked out.
    pub(crate) fn hulls(&self, panel: &Panel, setup: &Setup) -> Arc<Vec<Curve>> {
        let state = (setup.mass, setup.hull_roughness);
        let kept = || self.hulls.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, curves)) = kept().iter().find(|(s, _)| *s == state) {
            return Arc::clone(curves);
        }
        let curves = Arc::new(panel.resistance(setup));
        let mut hulls = kept();
        if hulls.len() >= HULLS {
            hulls.remove(0);
        }
        hulls.push((state, Arc::clone(&curves)));
        curves
    }

    /// The setup after a change.
    pub(crate) fn after(&self, change: &Change) -> Setup {
        let plan = &self.crowd.plan;
        Setup::of_change(change, plan.dists[Latent::Diameter as usize].middle, plan.knowledge.blades.0)
    }

    /// What is fitted, at the middle of what is known of it: where the sliders stand at first.
    #[must_use]
    pub fn fitted(&self) -> Fitted {
        let plan = &self.crowd.plan;
        let masses: Vec<f64> = self.panel().boats().map(|boat| boat.form.mass).collect();
        Fitted {
            pitch: plan.marked_pitch,
            diameter: plan.dists[Latent::Diameter as usize].middle,
            blades: plan.knowledge.blades.0,
            area_ratio: plan.dists[Latent::AreaRatio as usize].middle,
            reduction: plan.dists[Latent::Reduction as usize].middle,
            mass: self.panel().band(&masses, "kg").middle,
        }
    }

    /// Number of propellers.
    #[must_use]
    pub fn screws(&self) -> u8 {
        self.crowd.plan.knowledge.screws.0
    }

    /// Way made through the water in one turn of the shaft at full throttle, m, the middle of the crowd.
    #[must_use]
    pub fn advance_per_turn(&self) -> f64 {
        let panel = self.panel();
        let way: Vec<f64> = panel.boats().map(|b| b.full.point.speed / b.full.point.shaft_speed.0.max(1e-9)).collect();
        panel.band(&way, "m").middle
    }

    /// What [`crate::compare`] answers.
    #[must_use]
    pub fn compare(&self, change: &Change) -> Comparison {
        let panel = self.panel();
        let before = self.before.get_or_init(|| Before::of(self, &panel));
        compare::after(self, &panel, before, change)
    }

    /// Both at once: what a slider's move asks for. Each has stretches that one core does alone; the other takes the other.
    #[must_use]
    pub fn tried(&self, change: &Change) -> (Comparison, Curves) {
        rayon::join(|| self.compare(change), || self.curves(Some(change)))
    }

    /// What [`crate::judge`] answers.
    ///
    /// # Errors
    /// When the sides of a pair cannot be told apart for want of something.
    pub fn judge(&self) -> Result<Judgement, Lack> {
        judge::on(self)
    }

    /// What [`curves`](fn@crate::curves) answers, and [`crate::curves_after`] where there is a change.
    #[must_use]
    pub fn curves(&self, change: Option<&Change>) -> Curves {
        let ground = self.ground.get_or_init(|| Ground::of(self));
        curves::on(self, ground, change)
    }
}
