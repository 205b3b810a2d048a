//! What readings not yet taken would show.

use crate::crowd::Crowd;
use crate::crowd::normal;
use crate::crowd::plan::Plan;
use crate::crowd::stats::Weighted;
use crate::panel::fuel_density;
use crate::report::Band;
use crate::{Lack, Options};
use job::{Job, Reading};

/// What one thing read would show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foreseen {
    /// Position in the readings asked for.
    pub reading: usize,
    /// `engine speed`, `shaft speed`, `speed`, `fuel`.
    pub quantity: &'static str,
    /// As given in the reading asked for (the truth, where it is known).
    pub given: f64,
    /// What the crowd, weighed by the job's own readings, would show on that instrument, scatter of instrument and run included.
    pub band: Band,
}

/// Foresees `asked` on the crowd weighed by the readings in `job`. The values in `asked` only say what is asked for; the
/// engine speed of a part-throttle reading sets the point it is asked at.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn foresee(job: &Job, asked: &[Reading], options: &Options) -> Result<Vec<Foreseen>, Lack> {
    let crowd = Crowd::draw(Plan::new(job)?, options.boats, options.seed);
    let asked = crowd.plan.asked(&Job { readings: asked.to_vec(), ..job.clone() });
    let shown = crowd.would_show(&asked);
    let m = asked.observations.len();
    let density = fuel_density(crowd.plan.knowledge.engine_kind.0);
    Ok(asked
        .observations
        .iter()
        .enumerate()
        .map(|(i, o)| {
            let (quantity, unit, factor) = o.what.told(density);
            // The run's own scatter, by another draw of the same sequence, one per boat.
            let scatter = |boat: usize| o.scatter * normal::draw(boat as u32, i as u32, crowd.seed ^ 0x5bd1);
            let values: Vec<f64> =
                shown.iter().skip(i).step_by(m).enumerate().map(|(b, x)| factor * (x + scatter(b)).exp()).collect();
            let band = Weighted::new(&crowd.weights).band(&values, unit);
            Foreseen { reading: o.reading, quantity, given: factor * o.value, band }
        })
        .collect())
}
