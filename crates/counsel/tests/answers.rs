//! Promises every answer keeps.

use crate::{example, job};
use counsel::report::{Band, Step};
use counsel::{Change, Options, choose, compare, diagnose, evidence, judge};

const FEW: Options = Options { boats: 1000, seed: 1 };
const EXAMPLES: [&str; 4] = ["kittiwake", "gannet", "razorbill", "turnstone"];

fn width(band: &Band) -> f64 {
    band.high - band.low
}

#[test]
fn the_same_seed_gives_the_same_answer() {
    for name in EXAMPLES {
        let job = example(name);
        assert_eq!(judge(&job, &FEW), judge(&job, &FEW), "{name}");
    }
}

#[test]
fn another_seed_gives_nearly_the_same_answer() {
    for name in EXAMPLES {
        let job = example(name);
        let options = |seed| Options { boats: 4000, seed };
        let (a, b) = (judge(&job, &options(1)).unwrap(), judge(&job, &options(2)).unwrap());
        // The middle of a band scatters by its standard deviation over the root of the effective boats; 1 000
        // representatives and a few hundred effective boats leave about a tenth of the band's width.
        let (x, y) = (a.full_throttle.engine_speed, b.full_throttle.engine_speed);
        assert!((x.middle - y.middle).abs() < 0.2 * width(&x), "{name}: {x:?} {y:?}");
        assert!((a.verdict.right - b.verdict.right).abs() < 0.12, "{name}: {:?} {:?}", a.verdict, b.verdict);
    }
}

#[test]
fn chances_sum_to_one() {
    for name in EXAMPLES {
        let judged = judge(&example(name), &FEW).unwrap();
        let v = judged.verdict;
        assert!((v.over_pitched + v.right + v.under_pitched - 1.0).abs() < 1e-9, "{name}: {v:?}");
        let diagnosed = diagnose(&example(name), &FEW).unwrap();
        let sum: f64 = diagnosed.causes.iter().map(|c| c.chance).sum();
        assert!((sum - 1.0).abs() < 1e-9, "{name}: {sum}");
        assert!(diagnosed.causes.windows(2).all(|w| w[0].chance >= w[1].chance), "{name}");
    }
}

#[test]
fn readings_narrow_the_answer_and_enough_boats_remain() {
    for name in EXAMPLES {
        let full = example(name);
        let bare = job::Job { readings: Vec::new(), ..full.clone() };
        let options = Options::default();
        let (with, without) = (judge(&full, &options).unwrap(), judge(&bare, &options).unwrap());
        if full.readings.is_empty() {
            continue;
        }
        assert!(with.crowd.effective >= 400.0, "{name}: {}", with.crowd.effective);
        assert!(with.crowd.explained, "{name}");
        assert!(
            width(&with.full_throttle.speed) <= 1.05 * width(&without.full_throttle.speed),
            "{name}: {:?} {:?}",
            with.full_throttle.speed,
            without.full_throttle.speed
        );
    }
}

#[test]
fn a_difference_is_sharper_than_the_levels() {
    let job = example("kittiwake");
    let change = Change { pitch: Some(0.254), ..Change::default() };
    let answer = compare(&job, &change, &FEW).unwrap();
    assert!(answer.difference.engine_speed.low > 0.0, "less pitch frees the engine: {:?}", answer.difference);
    assert!(
        width(&answer.difference.engine_speed)
            < width(&answer.before.full_throttle.engine_speed).max(width(&answer.after.full_throttle.engine_speed))
    );
}

#[test]
fn a_change_to_what_is_changes_nothing() {
    let job = example("kittiwake");
    let pitch = job.propeller.pitch.as_ref().unwrap().middle;
    let answer = compare(&job, &Change { pitch: Some(pitch), ..Change::default() }, &FEW).unwrap();
    let d = answer.difference;
    assert!(d.engine_speed.low.abs() < 1e-6 && d.engine_speed.high.abs() < 1e-6, "{d:?}");
}

#[test]
fn growth_slows_and_weight_slows() {
    let job = example("razorbill");
    let grown = Change {
        hull_growth: Some(job::Growth::MediumShell),
        blade_growth: Some(job::Growth::SmallShell),
        ..Change::default()
    };
    let heavy = Change { displacement: job.boat.displacement.as_ref().map(|q| 1.3 * q.middle), ..Change::default() };
    for change in [grown, heavy] {
        let d = compare(&job, &change, &FEW).unwrap().difference;
        assert!(d.speed.high < 0.0 && d.engine_speed.middle <= 0.0, "{change:?}: {d:?}");
    }
}

#[test]
fn the_shortlist_keeps_to_its_limits() {
    for name in EXAMPLES {
        let job = example(name);
        let choice = choose(&job, &FEW).unwrap();
        let fitted = choice.shortlist.iter().find(|c| c.step == Step::Leave).expect("the propeller fitted");
        for c in &choice.shortlist {
            assert!(c.diameter <= choice.largest_diameter.max(fitted.diameter) + 0.5, "{name}: {}", c.what);
            assert!((2..=5).contains(&c.blades) || c.blades == fitted.blades, "{name}: {}", c.what);
            assert!((0.0..=100.0).contains(&c.merit) && !c.why.is_empty(), "{name}: {}", c.what);
        }
        assert!(choice.shortlist.windows(2).all(|w| w[0].merit.round() >= w[1].merit.round()), "{name}");
        assert!(choice.considered > 40, "{name}: {}", choice.considered);
    }
}

#[test]
fn the_first_of_the_shortlist_serves_better_than_what_is_fitted() {
    for name in ["kittiwake", "gannet", "turnstone"] {
        let choice = choose(&example(name), &FEW).unwrap();
        let fitted = choice.shortlist.iter().find(|c| c.step == Step::Clean).unwrap();
        assert!(choice.shortlist[0].in_band > fitted.in_band + 0.3, "{name}: {}", choice.shortlist[0].what);
    }
}

#[test]
fn what_a_reading_taught_is_told() {
    let answer = evidence(&example("kittiwake"), &FEW).unwrap();
    assert_eq!(answer.readings.len(), example("kittiwake").readings.len());
    assert!(!answer.together.is_empty());
    assert!(width(&answer.engine_speed_after) < width(&answer.engine_speed_before));
}

#[test]
fn what_cannot_be_assumed_is_asked_for_all_at_once() {
    let lack = judge(&job("title = \"nothing known\"\n"), &FEW).unwrap_err();
    let keys: Vec<&str> = lack.missing.iter().map(|m| m.key).collect();
    assert_eq!(keys, ["boat.length_waterline", "engine.rated_power", "propeller.pitch"]);
    assert!(lack.to_string().contains("read the rating plate"), "{lack}");
}

#[test]
fn four_poor_numbers_get_an_honest_verdict() {
    let judged = judge(
        &job("[boat]\nlength_overall = \"about 9 m\"\n[engine]\nrated_power = \"about 28 hp\"\n\
             [propeller]\ndiameter = \"16 in\"\npitch = \"11 in\"\n"),
        &FEW,
    )
    .unwrap();
    // Honest: with so little known the band must be wide, and it must say what to measure.
    let n = judged.full_throttle.engine_speed;
    assert!(width(&n) > 0.15 * n.middle, "{n:?}");
    assert!(!judged.hangs_on.is_empty() && !judged.measure_next.is_empty());
    assert!(judged.hangs_on.windows(2).all(|w| w[0].share >= w[1].share));
}

#[test]
fn readings_that_cannot_be_are_called_that() {
    // A long-keeled sailing boat of 6 t with 20 hp at 18 knots.
    let judged = judge(
        &job("[boat]\nkind = \"sailing\"\nlength_waterline = \"8 m\"\ndisplacement = \"6 t (weighed)\"\n\
             [engine]\nrated_power = \"20 hp\"\nrated_speed = \"3000 rpm\"\n[drive]\nreduction = 2.0\n\
             [propeller]\ndiameter = \"16 in\"\npitch = \"10 in\"\nblades = 3\n\
             [[reading]]\nfull_throttle = true\nengine_speed = \"2900 rpm\"\nspeed = [\"18.2 kn\", \"17.8 kn\"]\n"),
        &FEW,
    )
    .unwrap();
    assert!(!judged.crowd.explained);
    assert!(judged.findings.iter().any(|f| f.code == "readings-unexplained"));
    assert!(judged.headline.starts_with("No propeller explains"), "{}", judged.headline);
}
