//! Cavitation, loading, slip: against printed values and second evaluations.

use hydro::limits::burrill::{self, Line};
use hydro::limits::{Breakdown, immersion, keller, loading, slip, tip_speed};
use hydro::note::Note;
use hydro::openwater::{Screw, bp_delta::KNOT, radojcic};
use hydro::water::Water;
use std::f64::consts::PI;
use validation::{assert_close, rows};

fn numbers(file: &str) -> Vec<Vec<f64>> {
    let rows: Vec<Vec<f64>> =
        rows(file).iter().map(|row| row.iter().map(|cell| cell.parse().expect("a number")).collect()).collect();
    assert!(!rows.is_empty(), "{file}");
    rows
}

const WATER: Water = Water { density: 1025.0, viscosity: 1.19e-6, vapour_pressure: 1700.0 };

fn screw(area: f64, pitch: f64) -> Screw {
    Screw {
        diameter: 0.5,
        pitch_ratio: pitch,
        expanded_area_ratio: area,
        blades: 3,
        flat_share: 1.0,
        ducted: false,
        cup: 0.0,
        blade_roughness: 30e-6,
    }
}

#[test]
fn keller_of_holtrop_and_mennen() {
    let data = rows("holtrop1982_propeller.csv");
    let get = |name: &str| -> f64 { data.iter().find(|row| row[0] == name).unwrap()[1].parse().unwrap() };
    let head = get("surface_pressure") + 1025.0 * 9.81 * get("shaft_depth");
    let got = keller::area_ratio(get("thrust"), get("diameter"), 4, head, keller::Stern::Single);
    assert_close!(got, get("area_ratio"), 0.5e-4, "Holtrop & Mennen 1982");
}

#[test]
fn burrill_lines() {
    let lines =
        [Line::Back2, Line::Back5, Line::Back10, Line::Back20, Line::Back30, Line::Lower, Line::Merchant, Line::Fast];
    let table = rows("burrill1943_lines.csv");
    assert_eq!(table.len(), 17);
    for row in &table {
        let sigma: f64 = row[0].parse().unwrap();
        let check = |column: usize, got: f64| {
            if let Ok(want) = row[column].parse() {
                assert_close!(got, want, 0.5001e-4, "Burrill lines, second evaluation");
            }
        };
        for (i, line) in lines.into_iter().enumerate() {
            check(1 + i, burrill::birk(line, sigma));
        }
        check(9, burrill::molland(Line::Merchant, sigma).unwrap());
        check(10, burrill::molland(Line::Lower, sigma).unwrap());
        check(11, burrill::molland(Line::Fast, sigma).unwrap());
        check(12, burrill::logarithmic(Line::Back2, sigma).unwrap());
        check(13, burrill::logarithmic(Line::Back5, sigma).unwrap());
        check(14, burrill::logarithmic(Line::Back10, sigma).unwrap());
    }
}

/// The independent readings of Carlton's figure: how far the fit in use lies from them, and that the spread tells it.
#[test]
fn burrill_against_readings_of_carlton() {
    for row in numbers("carlton2012_fig9_21.csv") {
        let (sigma, five, ten) = (row[0], row[1], row[2]);
        assert_close!(burrill::carlton(Line::Back5, sigma).unwrap(), five, 1e-12, "Carlton 2012, fig. 9.21");
        assert_close!(burrill::carlton(Line::Back10, sigma).unwrap(), ten, 1e-12, "Carlton 2012, fig. 9.21");
        if (0.15..=2.0).contains(&sigma) {
            // Readings and fit may differ by three standard deviations of the spread between fits.
            let spread = burrill::spread(sigma);
            assert!(spread > 0.01 && spread < 0.30, "{sigma} {spread}");
            for (line, want) in [(Line::Back5, five), (Line::Back10, ten)] {
                let off = (burrill::line(line, sigma).value / want).ln().abs();
                assert!(off < 3.0 * spread, "{sigma}: {off} against {spread}");
            }
        }
    }
    // In the middle, where small craft run, all agree best.
    assert!(burrill::spread(0.5) < 0.05, "{}", burrill::spread(0.5));
}

#[test]
fn back_cavitation_is_smooth_and_monotone() {
    for sigma in [0.05, 0.1, 0.149, 0.151, 0.2, 0.4, 1.0, 2.0, 5.0] {
        for (line, percent) in
            [(Line::Back2, 2.5), (Line::Back5, 5.0), (Line::Back10, 10.0), (Line::Back20, 20.0), (Line::Back30, 30.0)]
        {
            let on = burrill::back_cavitation(sigma, burrill::line(line, sigma).value);
            assert_close!(on.value, percent, 1e-9, "definition");
        }
        let mut before = -1e-12;
        for i in 0..400 {
            let got = burrill::back_cavitation(sigma, 0.003 * f64::from(i)).value;
            assert!(got >= before && got <= 100.0, "{sigma} {i}: {got} after {before}");
            before = got;
        }
        // In σ at a load: less pressure, more cavitation, no jump where the low end begins.
        let (a, b) = (burrill::back_cavitation(sigma, 0.1).value, burrill::back_cavitation(sigma * 1.001, 0.1).value);
        assert!(b <= a + 1e-9 && a - b < 0.02 * a + 0.02, "{sigma} {a} {b}");
    }
    assert!(burrill::back_cavitation(0.1, 0.05).notes.has(Note::CavitationOutsideDiagram));
    assert!(burrill::back_cavitation(0.5, 0.15).notes.is_empty());
    assert!(burrill::back_cavitation(f64::NAN, f64::NAN).value.is_finite());
    assert_close!(burrill::projected_area_ratio(1.0, 1.0), 0.838, 0.5e-3, "UFC 4-159-03 eq. 22");
}

#[test]
fn decrements_of_radojcic() {
    for row in numbers("radojcic1988_kca_cavitating.csv") {
        let (developed, pitch, j, sigma) = (row[0], row[1], row[2], row[3]);
        let atmospheric = radojcic::published(pitch, developed);
        assert_close!(atmospheric.thrust(j), row[4], 0.6e-5, "Radojcic 1988");
        assert_close!(10.0 * atmospheric.torque(j), row[5], 0.6e-5, "Radojcic 1988");
        let (thrust, torque) = radojcic::published_loss(pitch, developed, sigma, atmospheric.thrust(j));
        assert_close!(thrust, row[6], 0.6e-5, "Radojcic 1988");
        assert_close!(10.0 * torque, row[7], 0.6e-5, "Radojcic 1988");
        // The rule where the loss ends.
        let (kt, kq) = (atmospheric.thrust(j), atmospheric.torque(j));
        let (thrust, torque) = radojcic::loss(pitch, developed, sigma, kt, kq);
        assert!(thrust >= 0.0 && thrust <= kt && torque >= 0.0 && torque <= kq);
        assert!(sigma < 0.2001 || thrust == 0.0, "{row:?}");
    }
}

/// The loss of thrust and torque in the balance against all decrements: root mean square 0.07 and 0.04 of what is left, as its record
/// says, to a load of 1.6 times the limit.
#[test]
fn breakdown_against_radojcic() {
    let (mut thrust, mut torque, mut count) = (0.0, 0.0, 0.0);
    for row in numbers("radojcic1988_kca_cavitating.csv") {
        let (developed, pitch, j, sigma) = (row[0], row[1], row[2], row[3]);
        let atmospheric = radojcic::published(pitch, developed);
        let (kt, kq) = (atmospheric.thrust(j), atmospheric.torque(j));
        let screw = screw(radojcic::expanded_area_ratio(developed, 3), pitch);
        // The shaft speed at which this water has that σ.
        let head_pressure = 105_000.0;
        let speed_squared = (head_pressure - WATER.vapour_pressure) / (0.5 * WATER.density * sigma);
        let n = (speed_squared / (j * j + (0.7 * PI) * (0.7 * PI))).sqrt() / screw.diameter;
        let va = j * n * screw.diameter;
        assert_close!(burrill::blade_speed_squared(va, n, screw.diameter), speed_squared, 1e-6, "definition");
        let breakdown = Breakdown::new(&screw, &WATER, head_pressure);
        let (left_kt, left_kq) = breakdown.limit(va, n, kt, kq);
        assert_close!(breakdown.thrust_lost(n, kt, kq), 1.0 - left_kt / kt, 1e-12, "definition");
        if breakdown.load(n, kt, kq) < 1.6 {
            let (lost_kt, lost_kq) = radojcic::loss(pitch, developed, sigma, kt, kq);
            thrust += (left_kt / kt - (1.0 - lost_kt / kt)).powi(2);
            torque += (left_kq / kq - (1.0 - lost_kq / kq)).powi(2);
            count += 1.0;
        }
    }
    let (thrust, torque) = (f64::sqrt(thrust / count), f64::sqrt(torque / count));
    assert!(count > 35.0);
    assert_close!(thrust, 0.066, 0.005, "Radojcic 1988, scatter about the smooth loss");
    assert_close!(torque, 0.038, 0.005, "Radojcic 1988, scatter about the smooth loss");
}

/// Far beyond the limit the thrust is that of the vacuum and no more; the coefficients move without a jump.
#[test]
fn breakdown_ends_at_the_limit_and_is_smooth() {
    let screw = screw(0.6, 1.1);
    let head_pressure = 105_000.0;
    let breakdown = Breakdown::new(&screw, &WATER, head_pressure);
    let area = PI / 4.0 * 0.25 * burrill::projected_area_ratio(0.6, 1.1);
    let limit = 1.2 * (head_pressure - WATER.vapour_pressure) * area;
    let curves = screw.curves(0.0).value;
    let mut before = (0.0, 0.0, 0.0);
    for i in 1..2000 {
        let n = 0.1 * f64::from(i);
        let va = 0.6 * n * screw.diameter;
        let (kt, kq) = breakdown.limit(va, n, curves.thrust(0.6), curves.torque(0.6));
        let thrust = kt * WATER.density * n * n * screw.diameter.powi(4);
        let torque = kq * WATER.density * n * n * screw.diameter.powi(5);
        assert!(thrust > before.0 && torque > before.1 && thrust < limit);
        // No kink: the thrust gained per step changes by little.
        let gain = thrust - before.0;
        assert!(i < 10 || (gain - before.2).abs() < 0.01 * limit, "{n}");
        before = (thrust, torque, gain);
    }
    assert!(before.0 > 0.95 * limit);
    let (kt, kq) = breakdown.limit(0.0, 20.0, -0.1, -0.01);
    assert_eq!((kt, kq), (-0.1, -0.01));
    let dry = Breakdown::new(&screw, &WATER, 0.0).limit(5.0, 30.0, 0.2, 0.03);
    assert!(dry.0.is_finite() && dry.0 >= 0.0 && dry.0 < 0.01);
}

#[test]
fn slip_and_loading() {
    // 18 in of pitch at 1500 rpm and 12 kn: 0.4599 with 101.27 (definition, by hand).
    let got = slip::slip(12.0 * KNOT, 25.0, 18.0 * 0.0254).unwrap();
    assert_close!(got, 0.4599, 0.5e-4, "handbook formula 5-1, by hand");
    let pitch = slip::pitch_for(12.0 * KNOT, 25.0, got).unwrap();
    assert_close!(pitch, 18.0 * 0.0254, 1e-9, "definition");
    assert!(slip::slip(1.0, 0.0, 0.4).is_none() && slip::pitch_for(1.0, 10.0, 1.0).is_none());
    let real = slip::slip(12.0 * KNOT * 0.9, 25.0, 18.0 * 0.0254).unwrap();
    assert_close!(slip::apparent_of_real(real, 0.1), got, 1e-12, "definition");
    for (knots, want) in [(5.0, 0.559), (7.0, 0.462), (10.0, 0.377), (15.0, 0.299), (20.0, 0.254), (40.0, 0.171)] {
        assert_close!(
            slip::usual(knots * KNOT),
            want,
            0.5001e-3,
            "handbook formula 5-2 (from memory), second evaluation"
        );
    }
    // 20 kn and 2 ft: 8.98 psi.
    assert_close!(
        loading::allowable(20.0 * KNOT, 0.6096) / loading::PSI,
        8.98,
        0.5e-2,
        "handbook formula 5-6 (from memory)"
    );
    // 326 SHP eta/(Va A): 100 hp, 0.6, 15 kn, 200 sq in is 6.52 psi; the exact constant is 325.87.
    let thrust = 100.0 * 745.6999 * 0.6 / (15.0 * KNOT);
    let area = 200.0 * 0.0254 * 0.0254;
    assert_close!(loading::actual(thrust, area) / loading::PSI, 6.52, 0.5e-2, "handbook formula 5-7 (from memory)");
    // Slip is not loss: at the best efficiency of a common propeller it is well above nothing (common practice, no source).
    let curves = screw(0.5, 0.8).curves(0.0).value;
    let (j, _) = curves.best();
    let best = 1.0 - j / 0.8;
    assert!((0.05..0.30).contains(&best), "{best}");
}

#[test]
fn tips() {
    assert_close!(tip_speed::tip_speed(25.0, 0.5), 39.27, 0.5e-2, "definition");
    assert_eq!(tip_speed::judged(60.96 + 0.01), tip_speed::TipSpeed::Prone);
    assert_eq!(tip_speed::judged(30.0), tip_speed::TipSpeed::Quiet);
    assert_close!(immersion::tip_immersion(0.4, 0.5), 0.15, 1e-12, "definition");
    assert_eq!(immersion::ventilation(0.4, 0.5), immersion::Ventilation::Unlikely);
    assert_eq!(immersion::ventilation(0.2, 0.5), immersion::Ventilation::Certain);
    // Deep enough: nothing lost; the two branches meet at h/R 1.3 (0.769 · 1.3 = 0.9997).
    assert_close!(immersion::thrust_left(0.4, 0.5), 1.0, 1e-4, "Minsaas et al. 1986 (from memory)");
    assert_close!(immersion::thrust_left(0.0, 0.5), 0.325, 1e-12, "Minsaas et al. 1986 (from memory)");
}
