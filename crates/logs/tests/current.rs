//! Mean of means: published identity, and made-up trials with known truth.

use crate::help::{Dice, START};
use logs::average::mean_of_means;
use logs::{KNOT, Limits, Pairing, Sample};

#[test]
fn published_weights() {
    // (V1+3V2+3V3+V4)/8, (V1+2V2+V3)/4, (V1+V2)/2: the example in the trade reference, 8.900 where the plain mean is 9.000.
    assert!((mean_of_means(&[10.0, 8.0, 9.6, 8.4]).unwrap() - 8.9).abs() < 5e-4);
    assert!((mean_of_means(&[10.0, 8.0, 9.6]).unwrap() - (10.0 + 16.0 + 9.6) / 4.0).abs() < 1e-12);
    assert_eq!(mean_of_means(&[10.0, 8.0]), Some(9.0));
    assert_eq!(mean_of_means(&[]), None);
}

/// Runs of a made-up trial: speed through the water `water` kn, a current of `current` (kn, of hours), waves and receiver
/// noise with a memory of a few seconds. Legs of `seconds`, turns of 60 s.
fn samples(water: f64, runs: usize, seconds: usize, current: &dyn Fn(f64) -> f64, dice: &mut Dice) -> Vec<Sample> {
    let mut out = Vec::new();
    let (mut noise, memory, size) = (0.0, dice.between(0.3, 0.8), dice.between(0.03, 0.12));
    let mut t = 0.0;
    for run in 0..runs {
        let sign = if run % 2 == 0 { 1.0 } else { -1.0 };
        for second in 0..seconds + 60 {
            noise = memory * noise + (1.0 - memory * memory).sqrt() * size * dice.normal();
            let turning = second >= seconds;
            let speed = if turning { 3.0 } else { water + sign * current(t / 3600.0) + noise };
            let course = if turning { 90.0 } else { 90.0 - 50.0 * sign };
            let course = if turning {
                course
            } else if sign > 0.0 {
                40.0
            } else {
                220.0
            };
            out.push(Sample {
                time: START + t,
                over_ground: Some(speed * KNOT),
                course: Some(course),
                engine_rpm: [Some(if turning { 1500.0 } else { 2900.0 }), None, None, None],
                ..Sample::default()
            });
            t += 1.0;
        }
    }
    out
}

/// Of 500 trials, in how many per cent the truth lies in the band from the scatter, and in the band with everything.
fn coverage(runs: usize, degree: usize, seed: u64) -> (f64, f64) {
    let mut dice = Dice(seed);
    let (mut inside, mut wide, mut all) = (0.0, 0.0, 0.0);
    for _ in 0..500 {
        let water = dice.between(5.0, 8.0);
        let seconds = 90 + (dice.next() % 120) as usize;
        // Up to a knot of current that changes by up to 1.5 kn an hour, bent by up to 2 kn an hour squared.
        let c = [dice.between(-1.0, 1.0), dice.between(-1.5, 1.5), dice.between(-2.0, 2.0)];
        let current = |h: f64| c.iter().take(degree + 1).enumerate().map(|(n, c)| c * h.powi(n as i32)).sum::<f64>();
        let samples = samples(water, runs, seconds, &current, &mut dice);
        let sets = logs::pair(&logs::stretches(&samples, &Limits::default()), &Pairing::default());
        let Some(set) = sets.iter().find(|s| s.stretches.len() == runs) else { continue };
        all += 1.0;
        let error = (set.speed / KNOT - water).abs();
        inside += f64::from(u8::from(error <= set.scatter / KNOT));
        wide += f64::from(u8::from(error <= set.half / KNOT));
    }
    assert!(all >= 450.0, "only {all} of 500 trials gave {runs} runs");
    (100.0 * inside / all, 100.0 * wide / all)
}

#[test]
fn eight_of_ten_truths_lie_in_the_band() {
    // 500 draws scatter by 1.8 % around 80 %: three of those either way.
    for (runs, degree, seed) in [(2, 0, 1), (3, 1, 2), (4, 2, 3)] {
        let (scatter, half) = coverage(runs, degree, seed);
        println!(
            "{runs} runs, current of degree {degree}: {scatter:.1} % in the scatter band, {half:.1} % in the full band"
        );
        assert!((74.0..=86.0).contains(&scatter), "{runs} runs: {scatter} %");
        assert!(half >= scatter);
    }
}

#[test]
fn current_and_drift_are_found() {
    let mut dice = Dice(11);
    let samples = samples(6.5, 3, 120, &|h| 0.6 + 1.2 * h, &mut dice);
    let sets = logs::pair(&logs::stretches(&samples, &Limits::default()), &Pairing::default());
    let set = &sets[0];
    assert_eq!(set.stretches.len(), 3);
    // At the middle of the trial, 240 s after its start.
    let truth = 0.6 + 1.2 * 240.0 / 3600.0;
    assert!((set.current.unwrap() / KNOT - truth).abs() < 0.05, "{}", set.current.unwrap() / KNOT);
    assert!((set.drift.unwrap() / KNOT - 1.2).abs() < 0.8, "{}", set.drift.unwrap() / KNOT);
}
