//! `trial`: what each reading did to the knowledge of the boat.

use crate::crowd::Crowd;
use crate::crowd::latent::{COUNT, Latent};
use crate::crowd::plan::Plan;
use crate::crowd::stats::Weighted;
use crate::hangs;
use crate::judge::{crowd_report, reading_label};
use crate::panel::KNOT;
use crate::phrase::span;
use crate::report::{Band, Evidence, Learnt, ReadingEffect};
use crate::{Lack, Options};
use job::Job;

/// Boats drawn to see what a single reading does.
const EACH: usize = 1000;
/// Least narrowing, or least move in standard deviations, worth telling.
const NARROWED: f64 = 0.92;
const MOVED: f64 = 0.3;

/// What the readings in a job taught, one by one and together.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn evidence(job: &Job, options: &Options) -> Result<Evidence, Lack> {
    let with = |readings: &[job::Reading], boats: usize| -> Result<Crowd, Lack> {
        let job = Job { readings: readings.to_vec(), ..job.clone() };
        Ok(Crowd::draw(Plan::new(&job)?, boats, options.seed))
    };
    let before = with(&[], options.boats)?;
    let after = with(&job.readings, options.boats)?;
    let readings = job
        .readings
        .iter()
        .enumerate()
        .map(|(i, reading)| {
            let crowd = with(std::slice::from_ref(reading), EACH.min(options.boats))?;
            Ok(ReadingEffect {
                reading: reading_label(reading, i),
                learnt: learnt(&before, &crowd, 4),
                engine_speed: engine_speed(&crowd),
                speed: speed(&crowd),
            })
        })
        .collect::<Result<Vec<_>, Lack>>()?;
    let (was, now) = (engine_speed(&before), engine_speed(&after));
    let narrowed = (now.high - now.low) / (was.high - was.low).max(1e-9);
    let headline = if job.readings.is_empty() {
        "No reading yet: full throttle both ways by GPS is worth most.".to_owned()
    } else if !after.explained {
        "The readings and what was stated do not agree: one of them is false. `diagnose` ranks the causes.".to_owned()
    } else {
        format!(
            "The readings narrow full throttle from {} to {}, {} of the width.",
            span(&was),
            span(&now),
            crate::phrase::plain(narrowed, 1)
        )
    };
    Ok(Evidence {
        title: job.title.clone(),
        headline,
        readings,
        together: learnt(&before, &after, 10),
        engine_speed_before: was,
        engine_speed_after: now,
        speed_before: speed(&before),
        speed_after: speed(&after),
        crowd: crowd_report(&after),
    })
}

fn engine_speed(crowd: &Crowd) -> Band {
    let values: Vec<f64> = crowd.boats.iter().map(|b| b.full.point.engine_speed.rpm()).collect();
    Weighted::new(&crowd.weights).band(&values, "rpm")
}

fn speed(crowd: &Crowd) -> Band {
    let values: Vec<f64> = crowd.boats.iter().map(|b| b.full.point.speed / KNOT).collect();
    Weighted::new(&crowd.weights).band(&values, "kn")
}

/// What moved or tightened, most first.
fn learnt(before: &Crowd, after: &Crowd, most: usize) -> Vec<Learnt> {
    let weighted = Weighted::new(&after.weights);
    let mut list: Vec<(f64, Learnt)> = Latent::ALL
        .iter()
        .filter(|latent| !before.plan.dists[**latent as usize].is_fixed())
        .filter_map(|latent| {
            let z: Vec<f64> = after.z.iter().skip(*latent as usize).step_by(COUNT).copied().collect();
            let (moved, narrowed_to) = weighted.moments(&z);
            let told = (1.0 - narrowed_to).max(0.0) + moved.abs();
            (narrowed_to < NARROWED || moved.abs() > MOVED).then(|| {
                let values = |crowd: &Crowd| Weighted::new(&crowd.weights).band(&crowd.values(*latent), "1");
                let learnt = Learnt {
                    quantity: latent.word().to_owned(),
                    before: hangs::value(*latent, &values(before), &before.plan),
                    after: hangs::value(*latent, &values(after), &after.plan),
                    narrowed_to,
                    moved,
                };
                (told, learnt)
            })
        })
        .collect();
    list.sort_by(|a, b| b.0.total_cmp(&a.0));
    list.truncate(most);
    list.into_iter().map(|(_, learnt)| learnt).collect()
}
