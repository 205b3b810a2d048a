//! The readings held against the crowd, before and after weighing.

use crate::crowd::Crowd;
use crate::crowd::stats::Weighted;
use crate::panel::fuel_density;
use crate::report::ReadingFit;
use job::Job;

/// One line per thing read.
pub(super) fn fits(job: &Job, crowd: &Crowd) -> Vec<ReadingFit> {
    let m = crowd.plan.observations.len();
    let density = fuel_density(crowd.plan.knowledge.engine_kind.0);
    let even = vec![1.0; crowd.before.len() / m.max(1)];
    crowd
        .plan
        .observations
        .iter()
        .enumerate()
        .map(|(i, o)| {
            let (quantity, unit, factor) = o.what.told(density);
            let column =
                |shown: &[f64]| -> Vec<f64> { shown.iter().skip(i).step_by(m).map(|x| factor * x.exp()).collect() };
            let before = column(&crowd.before);
            let expected = Weighted::new(&even).band(&before, unit);
            let logs: Vec<f64> = crowd.before.iter().skip(i).step_by(m).copied().filter(|x| x.is_finite()).collect();
            let (mean, sd) = Weighted::new(&vec![1.0; logs.len()]).moments(&logs);
            ReadingFit {
                reading: label(&job.readings[o.reading], o.reading),
                quantity,
                measured: factor * o.value,
                expected,
                weighed: Weighted::new(&crowd.weights).band(&column(&crowd.shown), unit),
                surprise: (o.value.ln() - mean) / sd.hypot(o.scatter),
            }
        })
        .collect()
}

/// What to call a reading.
pub(crate) fn label(reading: &job::Reading, index: usize) -> String {
    match (&reading.label, &reading.date) {
        (Some(label), _) => label.clone(),
        (None, Some(date)) => format!("reading of {date}"),
        _ => format!("reading {}", index + 1),
    }
}
