//! Orders, balance, pulse, entrained water, gusts against printed numbers and exact relations.

use hydro::vibration::{balance, entrained, gust, orders, pressure, singing, wake};
use std::f64::consts::{PI, TAU};
use validation::{assert_close, rows};

/// An owner's slow beating (acceptance case, grade B): four cylinders at 2000 rpm, 2.19:1, four blades: firing 66.7, blades 60.9, beat
/// 5.8 Hz; three blades 45.7 and 21 Hz; to 0.2 Hz.
#[test]
fn the_slow_beating() {
    let engine = 2000.0 / 60.0;
    let firing = orders::firing(engine, 4, false);
    let blades = |z| orders::blade_rate(engine / 2.19, z);
    assert_close!(firing, 66.7, 0.2, "owner's case 24");
    assert_close!(blades(4), 60.9, 0.2, "owner's case 24");
    assert_close!(orders::beat(firing, blades(4)), 5.8, 0.2, "owner's case 24");
    assert_close!(blades(3), 45.7, 0.2, "owner's case 24");
    assert_close!(orders::beat(firing, blades(3)), 21.0, 0.2, "owner's case 24");
    assert!(orders::beat(firing, blades(4)) < orders::FELT && orders::beat(firing, blades(3)) > orders::FELT);
}

/// Blades and shadows by their real angles, `from memory`: two and four blades behind a flat deadwood meet both shadows at once, three and
/// five do not; the arms of a V strut should not stand 360/Z apart.
#[test]
fn blades_against_shadows() {
    let v = |degrees: f64| [0.5 * degrees.to_radians(), -0.5 * degrees.to_radians()];
    let met = |z: u8, at: &[f64]| orders::at_once(z, 50_f64.to_radians(), at) > 1;
    assert_eq!([2, 3, 4, 5].map(|z| met(z, &[0.0, PI])), [true, false, true, false]);
    for z in 3..=7 {
        assert!(met(z, &v(360.0 / f64::from(z))), "{z} blades, arms 360/Z apart");
        assert!(
            !met(z, &v(540.0 / f64::from(z))) && !met(z, &v(180.0 / f64::from(z))),
            "{z} blades, arms half between"
        );
    }
    // 50 degrees: 40 off the 90 of four blades, 1.4 off the 51.4 of seven.
    assert_eq!([2, 3, 4, 5, 6, 7].map(|z| met(z, &v(50.0))), [false, false, false, false, true, true]);
    assert_eq!(orders::at_once(4, 0.5, &[0.0]), 1);
    assert_eq!(orders::at_once(4, 0.5, &[]), 0);
    assert_eq!(orders::at_once(4, 0.5, &[0.0, 0.5 * PI, PI]), 3);
}

/// The margin against a count over a whole turn: with half of their chord or more in common, both shadows have a blade's chord
/// over them for half of the passage or longer; and two equal pulses at blade rate that far apart add to no less than 1.41 of one
/// (phasor sum, any text on vibration: 2 cos(Z d/2)).
#[test]
fn the_margin_of_a_shadow() {
    for (z, width) in [(3_u8, 0.9), (4, 0.7), (5, 0.3), (2, 1.2), (4, 0.2)] {
        let apart = orders::apart(z, width);
        for spread in (4..180).map(|d| f64::from(d).to_radians()) {
            let met = orders::at_once(z, width, &[0.0, spread]) > 1;
            // Turn by turn: is a chord over this angle?
            let over = |turned: f64, at: f64| {
                let off = (turned - at).rem_euclid(TAU / f64::from(z));
                off.min(TAU / f64::from(z) - off) <= 0.5 * width
            };
            let (mut both, mut one) = (0, 0);
            for i in 0..7200 {
                let turned = TAU * f64::from(i) / 7200.0;
                one += u32::from(over(turned, 0.0));
                both += u32::from(over(turned, 0.0) && over(turned, spread));
            }
            let shared = f64::from(both) / f64::from(one.max(1));
            let phase = f64::from(z) * spread;
            let sum = (1.0 + phase.cos()).hypot(phase.sin());
            assert!(!met || shared > 0.49 && sum > 1.40, "{z} {width} {spread}: {shared} {sum}");
            assert!(met || shared < 0.51 || sum < 1.42, "{z} {width} {spread}: {shared} {sum}");
        }
        assert!(apart > 0.0 && apart <= 0.5 * PI / f64::from(z) + 1e-12);
    }
}

/// The seventh-power law: displacement thickness by its own integral over the profile is an eighth of the layer, momentum thickness 7/72; with
/// White's layer of 0.16 x/Re^(1/7) the latter gives his drag of a plate, 0.031/Re^(1/7), to its printed digits (F. M. White, Fluid Mechanics,
/// turbulent flat plate; from memory).
#[test]
fn the_layer_before_a_trailing_edge() {
    const STEPS: u32 = 200_000;
    let (mut displaced, mut momentum) = (0.0, 0.0);
    for i in 0..STEPS {
        let u = ((f64::from(i) + 0.5) / f64::from(STEPS)).powf(1.0 / 7.0);
        displaced += (1.0 - u) / f64::from(STEPS);
        momentum += u * (1.0 - u) / f64::from(STEPS);
    }
    let reynolds: f64 = 3e6;
    let layer = 0.16 * 0.15 / reynolds.powf(1.0 / 7.0);
    assert_close!(singing::displacement_thickness(0.15, reynolds) / layer, displaced, 1e-5, "the profile's integral");
    assert_close!(2.0 * 0.16 * momentum, 0.031, 0.0005, "White, drag of a plate, two digits");
    // By hand: U 20 m/s, edge 2 mm, chord 150 mm, nu 1e-6: Re 3e6, Re^(1/7) 8.420, d 0.3563 mm; f = 0.18 x 20/2.7126e-3 = 1327 Hz.
    let (low, high) = singing::tone(20.0, 0.002, 0.15, 1e-6);
    assert_close!(low, 1327.1, 0.3, "by hand, four digits of d");
    assert_close!(high / low, 0.22 / 0.18, 1e-9, "the two Strouhal numbers");
}

/// ISO 21940-11: 9549 G m/n; 40 kg at 900 rpm, G 6.3: 2674 g mm, 7.6 g at 350 mm.
#[test]
fn balance_grades() {
    let allowed = balance::allowed(6.3, 40.0, 15.0);
    assert_close!(1e6 * allowed, 2674.0, 0.5, "ISO 21940-11, derived example");
    assert_close!(1e3 * allowed / 0.35, 7.6, 0.05, "the same at 350 mm");
    assert_close!(1e6 * balance::allowed(1.0, 1.0, 1.0 / 60.0), 9549.3, 0.05, "30000/pi");
}

/// Holden 1980 as worked by hand: D 0.6, 1000 rpm, Z 4, d/R 0.5, 12 m/s, peak 0.2, depth 0.6: 2571, 4396, 5093 Pa.
#[test]
fn the_pulse_on_the_hull() {
    let at = pressure::Above {
        turns: 1000.0 / 60.0,
        diameter: 0.6,
        blades: 4,
        gap: 0.15,
        speed: 12.0,
        peak: 0.2,
        depth: 0.6,
    };
    let (passing, cavities, whole) = pressure::pulse(&at);
    assert_close!(passing, 2571.0, 0.5, "Holden 1980, example");
    assert_close!(cavities, 4396.0, 1.0, "the same");
    assert_close!(whole, 5093.0, 1.0, "the same");
    // An engine maker's guidance for ships: half the clearance doubles the pulse.
    let near = pressure::pulse(&pressure::Above { gap: 0.075, ..at }).2;
    assert_close!(near / whole, 2.0, 0.25, "makers' guidance");
}

/// Schwanecke's constants obey their own relation, m44 = m11 (P/2pi)^2, to their printed digits, and plain strips on the
/// tables of real propellers give the same within 5 % (ratios 1.01, 1.04 for P4119 and P4381).
#[test]
fn entrained_water() {
    let (rho, d, z, area, pd) = (1025.0, 0.5, 4, 0.55, 0.9);
    let (m, i) = (entrained::mass(rho, d, z, area), entrained::inertia(rho, d, z, area, pd));
    assert_close!(i / (m * (pd * d / TAU).powi(2)), 1.0, 0.015, "Schwanecke 1963: 0.0703 and 0.2812 to their digits");
    for (file, z, area, want) in [("denny1968_p4119.csv", 3, 0.60, 1.01), ("boswell1971_p4381.csv", 5, 0.725, 1.04)] {
        let table: Vec<[f64; 3]> = rows(file).iter().map(|r| [0, 1, 2].map(|i| r[i].parse().unwrap_or(0.0))).collect();
        // m11 = Z int rho pi/4 c^2 cos^2 phi dr (blade-strip added mass, Korotkin, Added Masses of Ship Structures, 8.12).
        let strip = |row: &[f64; 3]| {
            let [x, c, p] = *row;
            let phi = (p / (PI * x)).atan();
            0.25 * PI * (c * c) * phi.cos().powi(2)
        };
        let integral: f64 =
            table.windows(2).map(|w| 0.5 * (strip(&w[0]) + strip(&w[1])) * (w[1][0] - w[0][0]) * 0.5).sum();
        let strips = f64::from(z) * 1000.0 * integral;
        assert_close!(entrained::mass(1000.0, 1.0, z, area) / strips, want, 0.03, file);
    }
}

/// Sears 1941, computed by exact Hankel functions elsewhere: five digits.
#[test]
fn the_sears_function() {
    for row in rows("sears1941.csv") {
        let value = |i: usize| row[i].parse::<f64>().unwrap_or(f64::NAN);
        let (re, im) = gust::sears(value(0));
        assert_close!(re, value(1), 1.5e-5, "sears1941.csv");
        assert_close!(im, value(2), 1.5e-5, "sears1941.csv");
    }
}

/// The phase factors of the skew series, with the same weight: 4381 to 4384 at q = 4, 5, 6, 10 (derived elsewhere from the tables, three digits).
#[test]
fn skew_lets_a_blade_pass_gradually() {
    // The skew stands in the sixth column, in P4382's table in the seventh.
    for (file, column, want) in [
        ("boswell1971_p4381.csv", 5, [1.0, 1.0, 1.0, 1.0]),
        ("boswell1971_p4382.csv", 6, [0.839, 0.758, 0.666, 0.291]),
        ("boswell1971_p4383.csv", 5, [0.473, 0.294, 0.167, 0.085]),
        ("boswell1971_p4384.csv", 5, [0.169, 0.122, 0.110, 0.049]),
    ] {
        let line: Vec<(f64, f64)> = rows(file)
            .iter()
            .map(|r| (r[0].parse().unwrap_or(0.0), r[column].parse::<f64>().unwrap_or(0.0).to_radians()))
            .collect();
        for (q, want) in [4, 5, 6, 10].into_iter().zip(want) {
            // Three printed digits, another rule of quadrature.
            assert_close!(gust::phase_factor(&line, q), want, 0.0015, file);
        }
    }
}

/// The synthetic deadwood's harmonics as tabulated (four digits), and the selection rule: a wake with one harmonic only gives
/// nothing elsewhere.
#[test]
fn harmonics_and_what_they_reach() {
    for row in rows("skeg_synthetic_harmonics.csv") {
        let value = |i: usize| row[i].parse::<f64>().unwrap_or(f64::NAN);
        for (i, x) in [0.3, 0.5, 0.7, 0.9].into_iter().enumerate() {
            let (a, b) = wake::harmonic(|th| wake::deadwood(x, th), value(0) as u32);
            assert_close!(a, value(i + 1), 2e-4, "skeg_synthetic_harmonics.csv, four to five digits");
            assert_close!(b, 0.0, 1e-9, "even about upright");
        }
    }
    let only_three = |th: f64| 0.8 + 0.1 * (3.0 * th).cos();
    for q in 1..12 {
        let (a, b) = wake::harmonic(only_three, q);
        assert_close!(a.hypot(b), if q == 3 { 0.1 } else { 0.0 }, 1e-12, "Fourier");
        assert_eq!(wake::reaches_thrust(q, 3), q % 3 == 0);
    }
    // Behind an inclined shaft the inflow has one cycle a turn: no thrust at blade rate, whatever the skew.
    let at = gust::InWake {
        blades: 3,
        diameter: 0.5,
        pitch_ratio: 1.0,
        chord_ratio: 0.33,
        advance_ratio: 0.7,
        thrust_coefficient: 0.2,
    };
    assert!(gust::blade_rate_thrust(&at, &wake::Ahead::InclinedShaft(0.2), 0.0) < 1e-9);
    // Behind a deadwood skew takes off, and more skew more.
    let force = |skew: f64| gust::blade_rate_thrust(&at, &wake::Ahead::Deadwood, skew);
    let (none, some, more) = (force(0.0), force(0.35), force(0.70));
    assert!(none > some && some > more, "{none} {some} {more}");
    assert!((0.01..0.6).contains(&none), "{none}");
}

/// Inclined shaft, derived example: J 0.8, KT 0.17, KT' -0.43, 10 degrees: e/R 0.089.
#[test]
fn the_line_of_thrust_of_an_inclined_shaft() {
    let (_, offset) = gust::inclined(0.8, 0.17, -0.43, 10_f64.to_radians());
    assert_close!(offset, 0.089, 0.0005, "derived example");
}
