//! A job prepared once answers as one asked anew.

use crate::example;
use counsel::{Change, Options, Prepared, compare, curves, curves_after, judge};
use job::{Cup, Growth};

const FEW: Options = Options { boats: 600, seed: 7 };

/// Positions a hand goes through on the sliders, there and back.
fn moves() -> Vec<Change> {
    let pitch = |p| Change { pitch: Some(p), ..Change::default() };
    vec![
        pitch(0.25),
        Change { displacement: Some(7000.0), ..pitch(0.25) },
        Change { diameter: Some(0.45), blades: Some(4), ..Change::default() },
        Change { cup: Some(Cup::Medium), hull_growth: Some(Growth::HeavySlime), ..Change::default() },
        Change { area_ratio: Some(0.6), reduction: Some(2.4), ..Change::default() },
        pitch(0.25),
        Change::default(),
    ]
}

#[test]
fn whatever_was_asked_before_the_answer_is_that_of_a_job_asked_anew() {
    for name in ["kittiwake", "turnstone"] {
        let job = example(name);
        let prepared = Prepared::new(&job, &FEW).expect("a whole job");
        for change in moves() {
            assert_eq!(Ok(prepared.compare(&change)), compare(&job, &change, &FEW), "{name} {change:?}");
            let drawn = prepared.curves(Some(&change));
            assert_eq!(prepared.tried(&change), (prepared.compare(&change), drawn.clone()), "{name} {change:?}");
            assert_eq!(Ok(drawn), curves_after(&job, &change, &FEW), "{name} {change:?}");
        }
        assert_eq!(prepared.judge(), judge(&job, &FEW), "{name}");
        assert_eq!(Ok(prepared.curves(None)), curves(&job, &FEW), "{name}");
    }
}

#[test]
fn a_change_to_what_is_fitted_already_changes_nothing() {
    let job = example("kittiwake");
    let prepared = Prepared::new(&job, &FEW).expect("a whole job");
    let answer = prepared.compare(&Change::default());
    let d = &answer.difference;
    assert_eq!((d.engine_speed.low, d.engine_speed.high, d.speed.low, d.speed.high), (0.0, 0.0, 0.0, 0.0));
    assert_eq!(answer.before.full_throttle, answer.after.full_throttle);
    assert_eq!(answer.before.verdict, answer.after.verdict);
}
