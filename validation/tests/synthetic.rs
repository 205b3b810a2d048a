//! Boats whose truth is known. The full numbers stand in `docs/validation.md`; here fewer, with bounds from the binomial.

use counsel::Options;
use validation::causes;
use validation::synthetic::{coverage, inside};

/// Of 90 truths at 80 %, 99.7 times in 100 between 67 and 93 % lie inside (binomial, 3 sd = 12.6 %).
#[test]
fn bands_hold_hidden_truths_after_a_change() {
    let trials = coverage(90, 2026, &Options { boats: 800, seed: 1 }, false);
    let share = |f: &dyn Fn(&validation::synthetic::Trial) -> bool| {
        trials.iter().filter(|t| f(t)).count() as f64 / trials.len() as f64
    };
    assert_eq!(trials.len(), 90);
    for (what, share) in [
        ("engine speed", share(&|t| inside(&t.engine_speed))),
        ("speed", share(&|t| inside(&t.speed))),
        ("difference", share(&|t| inside(&t.difference))),
    ] {
        assert!((0.67..=0.93).contains(&share), "{what}: {share:.2} of {} inside", trials.len());
    }
}

/// Ten sharp readings leave at least 400 boats' worth but for one draw in a dozen.
#[test]
fn ten_sharp_readings_leave_enough_boats() {
    let trials = coverage(12, 77, &Options::default(), true);
    let enough = trials.iter().filter(|t| t.effective >= 400.0).count();
    assert!(enough >= 11, "{:?}", trials.iter().map(|t| t.effective.round()).collect::<Vec<_>>());
}

/// Of 40 causes planted, the true one ranked first at least as often as it would be by luck of the commonest alone, and
/// among the first three in most; expected are about half and four fifths, so that 3 sd (24 % and 19 %) leave 27 and 61 %.
#[test]
fn planted_causes_are_named() {
    let cases = causes::cases(40, 77, &Options { boats: 600, seed: 1 });
    let share = |places: usize| cases.iter().filter(|c| c.place() < places).count() as f64 / cases.len() as f64;
    assert!(share(1) >= 0.27 && share(3) >= 0.61, "first {:.2}, among three {:.2}", share(1), share(3));
    // Chances are chances: the mean stated for the first cause is what comes true, within 3 sd.
    let stated = cases.iter().map(|c| c.told[0].1).sum::<f64>() / cases.len() as f64;
    assert!((stated - share(1)).abs() < 0.24, "stated {stated:.2}, true {:.2}", share(1));
}
