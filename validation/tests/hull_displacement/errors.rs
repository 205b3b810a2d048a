//! The error table against what the comparisons show.

use super::{KNOT, SEA, models, number, rms};
use hydro::hull::holtrop::{self, Extras};
use hydro::hull::{Form, Parts, delft, error, handbook};
use hydro::water::GRAVITY;
use validation::{assert_close, rows};

/// A way to a total resistance, N, at a speed.
type Way = fn(&Form, f64) -> f64;

const WAYS: [(error::Method, Way); 6] = [
    (error::Method::Delft1981, |f, v| delft::resistance_1981(f, &SEA, v).value.total()),
    (error::Method::Delft1998, |f, v| delft::resistance_1998(f, &SEA, v).value.total()),
    (error::Method::Delft2008, |f, v| delft::resistance_2008(f, &SEA, v).value.total()),
    (error::Method::Holtrop1982, |f, v| holtrop::resistance_1982(f, &SEA, v, &Extras::default()).value.total()),
    (error::Method::Holtrop1984, |f, v| holtrop::resistance_1984(f, &SEA, v, &Extras::default()).value.total()),
    (error::Method::Gerr, |f, v| handbook::gerr(f, v, handbook::EFFICIENCY_DISPLACEMENT).value),
];

/// The error table's sizes up to Fn 0.45, from the total resistance of 17 measured models at 10 m.
#[test]
fn error_table_is_what_the_models_show() {
    let models = models();
    for (method, way) in WAYS {
        let found = rms(&models, |m, froude, measured| {
            let speed = froude * (GRAVITY * m.form.length).sqrt();
            let skin: Parts = delft::resistance_1981(&m.form, &SEA, speed).value;
            (way(&m.form, speed) / (skin.friction + measured * m.form.mass * GRAVITY)).ln()
        });
        for (froude, rms, _) in found {
            let joined = rms.hypot(error::BOAT);
            let sd = error::sd(method, froude);
            println!("{method:?} Fn {froude:.3} rms {rms:.3} joined {joined:.3} table {sd:.3}");
            // Never smaller than seen by more than a tenth of it, nor larger by more than half: the table is straight
            // between few points. The speed rule crosses the measured curves near Fn 0.44: its small rms there is an
            // accident, and boats that reached their speed set its size instead.
            if method != error::Method::Gerr || froude < 0.41 {
                assert!(sd > 0.9 * joined && sd < 1.5 * joined + 0.02, "{method:?} Fn {froude}: {sd} against {joined}");
            }
        }
    }
}

/// Above Fn 0.45 no measured models: the 2008 regression is the yardstick.
#[test]
fn methods_carried_past_their_range_part_as_the_error_table_says() {
    let models = models();
    for (method, way) in WAYS {
        for froude in [0.5, 0.55, 0.6, 0.7] {
            let mean: f64 = models
                .iter()
                .map(|m| {
                    let speed = froude * (GRAVITY * m.form.length).sqrt();
                    (way(&m.form, speed) / delft::resistance_2008(&m.form, &SEA, speed).value.total()).ln()
                })
                .sum::<f64>()
                / models.len() as f64;
            let sd = error::sd(method, froude);
            println!("{method:?} Fn {froude}: {mean:+.2} from 2008, table {sd:.2}");
            // 2008 itself lies 0.15 low on hulls with keel and rudder, the 1981 method does not.
            let own = if method == error::Method::Delft1981 { 0.15 } else { 0.0 };
            assert!((mean - own).abs() < 1.25 * sd, "{method:?} Fn {froude}: {mean}");
        }
    }
}

#[test]
fn speed_rule_against_boats_that_reached_it() {
    let (mut square, mut boats) = (0.0, 0.0);
    for row in rows("gerr_check_boats.csv") {
        let (mass, length) = (number(&row[1]) * 0.453_592_37, number(&row[2]) * 0.3048);
        let off = handbook::gerr_speed(mass, 745.699_871_6, length) / (number(&row[3]) * KNOT) - 1.0;
        println!("{:30} {:+.1} %", row[0], 100.0 * off);
        match row[4].as_str() {
            // The scatter found when the rule was checked: -9 .. +8 %, rms 5 %.
            "displacement" => {
                assert!((-0.09..=0.085).contains(&off), "{}: {off}", row[0]);
                square += off * off;
                boats += 1.0;
            }
            // What the rule is not for: it must be seen to fail, or the warning is idle.
            _ => assert!(off.abs() > 0.2, "{}: {off}", row[0]),
        }
    }
    let rms = f64::sqrt(square / boats);
    assert_close!(rms, 0.051, 0.001, "nine boats");
    let joined = (3.0 * rms).hypot(error::EFFICIENCY);
    assert_close!(
        error::sd(error::Method::Gerr, 0.45),
        joined,
        0.01,
        "three times the error of speed, and of efficiency"
    );
}

/// Crouch's constant implied by boats at 18 to 26 kn against the handbook's 150 for cruisers.
#[test]
fn planing_rule_against_boats() {
    let implied = [161.0, 151.0, 173.0, 178.0];
    for c in implied {
        assert_close!(
            handbook::crouch_speed(453_592.37, 745_699.871_6, c) / KNOT,
            c / 1000f64.sqrt(),
            1e-9 * c,
            "V = C/sqrt(lb/hp)"
        );
    }
    let rms = (implied.iter().map(|c: &f64| (c / 150.0).ln().powi(2)).sum::<f64>() / 4.0).sqrt();
    assert_close!(error::sd(error::Method::Crouch, 1.0), (2.0 * rms).hypot(error::EFFICIENCY), 0.02, "four boats");
}
