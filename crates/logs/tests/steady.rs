use crate::help::*;
use logs::{KNOT, Limits, Sample};

fn steady(moments: &[Moment], limits: &Limits) -> Vec<logs::Stretch> {
    let samples: Vec<Sample> = moments
        .iter()
        .map(|m| Sample {
            time: m.t,
            over_ground: Some(m.ground * KNOT),
            course: Some(m.course),
            engine_rpm: [Some(m.rpm), None, None, None],
            ..Sample::default()
        })
        .collect();
    logs::stretches(&samples, limits)
}

#[test]
fn finds_the_legs_and_nothing_else() {
    let found = steady(&trial(), &Limits::default());
    let rpm: Vec<f64> = found.iter().map(|s| s.rpm.unwrap().value.round()).collect();
    assert_eq!(rpm, [2900.0, 2900.0, 2300.0, 2300.0]);
    for (stretch, (from, to)) in found.iter().zip([(0.0, 119.0), (150.0, 279.0), (310.0, 409.0), (440.0, 529.0)]) {
        // No second of a turn is in it, and at most the trimmed ends are missing.
        assert!(
            stretch.from - START >= from && stretch.to - START <= to,
            "{} {}",
            stretch.from - START,
            stretch.to - START
        );
        assert!(stretch.from - START <= from + 6.0 && stretch.to - START >= to - 6.0);
        assert!(stretch.rpm.unwrap().error < 1e-6 && stretch.trend.abs() < 1e-6);
    }
    // Longer ones only.
    let found = steady(&trial(), &Limits { seconds: 100.0, ..Limits::default() });
    assert_eq!(found.len(), 2);
    assert!(steady(&trial(), &Limits { seconds: 200.0, ..Limits::default() }).is_empty());
}

#[test]
fn north_is_no_step_and_lying_still_no_run() {
    let mut moments = track(&[(200.0, 2900.0, 6.5, 0.0)], (0.0, 0.0));
    for (at, m) in moments.iter_mut().enumerate() {
        m.course = if at % 2 == 0 { 358.0 } else { 3.0 };
    }
    let found = steady(&moments, &Limits::default());
    assert_eq!(found.len(), 1);
    assert!(logs::turn(found[0].course.unwrap(), 0.5).abs() < 0.1);
    assert!(steady(&track(&[(200.0, 900.0, 0.2, 0.0)], (0.0, 0.0)), &Limits::default()).is_empty());
}

#[test]
fn limits_hold() {
    let limits = Limits::default();
    // Engine speed swings by ± 1 %: steady; by ± 3 %: not.
    for (swing, count) in [(0.01, 1), (0.03, 0)] {
        let mut moments = track(&[(180.0, 2900.0, 6.5, 40.0)], (0.0, 0.0));
        for m in &mut moments {
            m.rpm *= 1.0 + swing * ((m.t - START) / 8.0).sin();
        }
        assert_eq!(steady(&moments, &limits).len(), count, "{swing}");
    }
    // A boat that gathers way slowly: the part that changes by less than the limits is taken, with a doubt or none at all.
    let mut moments = track(&[(300.0, 2900.0, 6.5, 40.0)], (0.0, 0.0));
    for m in &mut moments {
        m.ground = 6.5 - 3.0 * (-(m.t - START) / 60.0).exp();
    }
    let found = steady(&moments, &limits);
    assert_eq!(found.len(), 1);
    assert!(found[0].from - START > 90.0, "{}", found[0].from - START);
    assert!((found[0].over_ground.unwrap().value / KNOT - 6.5).abs() < 0.2);
    // A steady rise that just fits into the band is named.
    for m in &mut moments {
        m.ground = 6.0 + 0.38 * (m.t - START) / 300.0;
    }
    let found = steady(&moments, &limits);
    assert!(found.iter().any(|s| s.doubts.iter().any(|d| d.code == "trend")), "{found:?}");
}

#[test]
fn gaps_and_slow_logs() {
    // One sample in five seconds: still found; a gap of a minute: two stretches.
    let slow: Vec<Moment> = track(&[(400.0, 2900.0, 6.5, 40.0)], (0.0, 0.0)).into_iter().step_by(5).collect();
    assert_eq!(steady(&slow, &Limits::default()).len(), 1);
    let gap: Vec<Moment> = track(&[(400.0, 2900.0, 6.5, 40.0)], (0.0, 0.0))
        .into_iter()
        .filter(|m| !(150.0..210.0).contains(&(m.t - START)))
        .collect();
    assert_eq!(steady(&gap, &Limits::default()).len(), 2);
    assert!(steady(&[], &Limits::default()).is_empty());
}

#[test]
fn the_standard_error_sees_slow_waves() {
    // Noise with a memory of 5 s: the mean of 300 s scatters more than 300 independent values would.
    let mut dice = Dice(21);
    let (mut squares, mut stated, mut naive) = (0.0, 0.0, 0.0);
    let memory = (-1.0f64 / 5.0).exp();
    for _ in 0..400 {
        let mut noise = dice.normal();
        let record: Vec<(f64, f64)> = (0..300)
            .map(|t| {
                noise = memory * noise + (1.0 - memory * memory).sqrt() * dice.normal();
                (f64::from(t), noise)
            })
            .collect();
        let mean = logs::average::block_mean(&record).unwrap();
        squares += mean.value * mean.value;
        stated += mean.error * mean.error;
        naive += record.iter().map(|r| (r.1 - mean.value).powi(2)).sum::<f64>() / 300.0 / 299.0;
    }
    let (true_error, stated, naive) =
        ((squares / 400.0f64).sqrt(), (stated / 400.0f64).sqrt(), (naive / 400.0f64).sqrt());
    // 400 draws know the true scatter to 3.5 %; the stated one is to lie within 20 % of it, the naive one is a third.
    assert!((stated / true_error - 1.0).abs() < 0.2, "{stated} {true_error}");
    assert!(naive / true_error < 0.5);
}
