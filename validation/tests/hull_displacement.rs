//! Displacement hulls: friction, roughness, Holtrop, Delft, handbook rules, and the error table against them.

use hydro::hull::holtrop::{self, Allowance, Bulb, Extras, Stern, shape, wave};
use hydro::hull::{Form, Parts, delft, error, friction, handbook, roughness};
use hydro::water::{GRAVITY, Water};
use std::collections::BTreeMap;
use validation::{assert_close, rows};

const KNOT: f64 = 1852.0 / 3600.0;

fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or(f64::NAN)
}

/// Water of a paper, density and viscosity as it states them.
fn water(density: f64, viscosity: f64) -> Water {
    Water { density, viscosity, vapour_pressure: 1700.0 }
}

/// A boat with nothing set but what the tests below set.
fn plain() -> Form {
    Form {
        length: 10.0,
        beam: 3.2,
        draught: 0.7,
        mass: 8000.0,
        prismatic: 0.57,
        midship: 0.65,
        waterplane: 0.68,
        lcb_percent: -2.3,
        half_entrance_deg: 20.0,
        transom_ratio: 0.0,
        appendage_area: 0.0,
        appendage_factor: 1.0,
        chine_beam: 3.0,
        deadrise_deg: 15.0,
        lcg: 4.0,
        vcg: 0.5,
        thrust_angle_deg: 0.0,
        air_area: 0.0,
        air_drag: 0.8,
        roughness: 0.0,
    }
}

#[test]
fn friction_lines_give_their_tabulated_values() {
    let source = "ITTC 1957 line, tabulated values";
    for (re, cf) in [(1e6, 0.004_688), (1e7, 0.003_000), (1e8, 0.002_083), (1e9, 0.001_531)] {
        assert_close!(friction::ittc57(re), cf, 5.000_001e-7, source);
    }
    assert_close!(friction::schoenherr(3.6e8), 0.001_74, 5e-6, "Savitsky 1964, worked example, Schoenherr line");
}

/// The 205 m ship of Holtrop & Mennen 1982.
#[test]
fn holtrop_1982_reproduces_its_ship() {
    let sea = water(1025.0, 1.188_31e-6);
    let (length, beam, draught, volume) = (205.0, 32.0, 10.0, 37_500.0);
    let (midship, waterplane, lcb): (f64, f64, f64) = (0.98, 0.75, -0.75);
    let block = volume / (length * beam * draught);
    let cp = block / midship;
    let bulb = Bulb { area: 20.0, height: 4.0 };
    let (transom_area, speed) = (16.0, 25.0 * 0.514_444);
    let form = Form {
        length,
        beam,
        draught,
        mass: volume * sea.density,
        prismatic: cp,
        midship,
        waterplane,
        lcb_percent: lcb,
        half_entrance_deg: shape::entrance_angle(length, beam, volume, cp, waterplane, lcb),
        transom_ratio: transom_area / (beam * draught * midship),
        appendage_area: 50.0,
        appendage_factor: 1.5,
        ..plain()
    };
    let extras = Extras { bulb, stern: 10.0, allowance: Allowance::Published, ..Extras::default() };
    let ship = holtrop::Prepared::new_1982(&form, &sea, &extras);
    let parts = ship.at(speed).value;
    assert_eq!(parts, holtrop::resistance_1982(&form, &sea, speed, &extras).value);
    let froude = speed / (GRAVITY * length).sqrt();
    let c15 = wave::c15(length.powi(3) / volume);
    let c3 = wave::c3(20.0, 4.0, beam, draught, draught);
    let stern = Stern {
        length,
        beam,
        draught,
        draught_aft: draught,
        block,
        prismatic: cp,
        midship,
        lcb_percent: lcb,
        wetted_area: ship.wetted_area() + 50.0,
        viscous: ship.viscous(speed),
        stern: 10.0,
        diameter: 8.0,
        area_ratio: 0.7393,
        pitch_ratio: 1.0,
    };
    let factors = stern.single_1982();
    let bulb_kn = 1e-3 * bulb.resistance(draught, speed, sea.density, GRAVITY);
    let got = BTreeMap::from([
        ("fn", froude),
        ("cp", cp),
        ("lr", shape::length_of_run(length, cp, lcb)),
        ("c12", shape::c12(draught / length)),
        ("form", ship.form_factor()),
        ("wetted", ship.wetted_area()),
        ("cf", friction::ittc57(speed * length / sea.viscosity)),
        ("rf", 1e-3 * parts.friction),
        ("rapp", 1e-3 * parts.appendages),
        ("c7", wave::c7(beam / length)),
        ("ie", form.half_entrance_deg),
        ("c1", wave::c1(beam / length, draught / beam, form.half_entrance_deg)),
        ("c3", c3),
        ("c2", wave::c2(c3)),
        ("c5", wave::c5(form.transom_ratio)),
        ("m1", wave::m1(length, beam, draught, volume, cp)),
        ("c15", c15),
        ("m2", wave::m2(c15, cp, froude)),
        ("lambda", wave::lambda(length / beam, cp)),
        ("rw", 1e-3 * ship.wave(froude)),
        ("pb", bulb.emergence(draught)),
        ("fni", bulb.froude(draught, speed, GRAVITY)),
        ("rb", bulb_kn),
        ("fnt", wave::transom_froude(speed, transom_area, beam, waterplane, GRAVITY)),
        ("ca", ship.allowance()),
        ("ra", 1e-3 * parts.roughness),
        ("total", 1e-3 * parts.total()),
        ("cv", ship.viscous(speed)),
        ("c9", stern.c9()),
        ("c11", stern.c11()),
        ("cp1", stern.cp1()),
        ("wake", factors.wake),
        ("c10", stern.c10()),
        ("thrust_deduction", factors.thrust_deduction),
        ("relative_rotative", factors.relative_rotative),
    ]);
    let mut seen = 0;
    for row in rows("holtrop1982.csv") {
        println!("{} printed {} got {}", row[0], row[1], got[row[0].as_str()]);
        seen += 1;
    }
    for row in rows("holtrop1982.csv") {
        assert_close!(
            got[row[0].as_str()],
            number(&row[1]),
            number(&row[2]),
            format!("Holtrop & Mennen 1982, {}", row[0])
        );
    }
    assert_eq!(seen, got.len());
    assert_eq!(parts.transom, 0.0, "printed: no transom resistance at FnT above 5");
    assert_close!((parts.wave * 1e-3 - bulb_kn) - 1e-3 * ship.wave(froude), 0.0, 1e-9, "bulb stands in the wave part");
}

/// The parent of the Delft series at 10 m, as `delft_parent.csv` describes it.
const PARENT: delft::CanoeBody = delft::CanoeBody {
    length: 10.0,
    beam: 3.1546,
    draught: 0.7906,
    volume: 9.156,
    prismatic: 0.568,
    midship: 0.6463,
    lcb: 5.230,
    lcf: 5.350,
    waterplane: 21.45,
    wetted: 25.43,
};

#[test]
fn delft_regressions_give_the_parent_hull() {
    let at = |year, froude| 1e3 * PARENT.residuary(year).at(froude);
    for row in rows("delft_parent.csv") {
        let froude = number(&row[0]);
        println!(
            "{froude:.2} measured {} got {:.3} {:.3} {:.3}",
            row[1],
            at(delft::Year::Y1981, froude),
            at(delft::Year::Y1998, froude),
            at(delft::Year::Y2008, froude)
        );
        for (cell, year) in [(2, delft::Year::Y1981), (3, delft::Year::Y1998), (4, delft::Year::Y2008)] {
            if !row[cell].is_empty() {
                // Two decimals, and waterplane and wetted area stated to four figures (2.3e-4).
                let tolerance = 0.005 + 2.3e-4 * number(&row[cell]);
                assert_close!(at(year, froude), number(&row[cell]), tolerance, format!("{year:?} at Fn {froude}"));
            }
        }
    }
    assert_close!(
        delft::wetted_area(10.0, 3.1546, 0.7906, 9.156, 0.6463),
        25.43,
        0.005,
        "wetted area of the parent at 10 m"
    );
}

/// One measured model at 10 m, and what was measured: (Fn, Rr/W).
struct Model {
    body: delft::CanoeBody,
    form: Form,
    measured: Vec<(f64, f64)>,
}

const SEA: Water = Water { density: 1025.0, viscosity: 1.188e-6, vapour_pressure: 1700.0 };

fn models() -> Vec<Model> {
    let mut models: BTreeMap<String, Model> = BTreeMap::new();
    for row in rows("gerritsma1981.csv") {
        let v: Vec<f64> = row.iter().map(|cell| number(cell)).collect();
        let (length, beam) = (10.0, 10.0 / v[4]);
        let (draught, volume) = (beam / v[3], (length / v[2]).powi(3));
        let form = Form {
            length,
            beam,
            draught,
            mass: volume * SEA.density,
            prismatic: v[1],
            midship: volume / (length * beam * draught * v[1]),
            lcb_percent: v[0],
            half_entrance_deg: shape::entrance_angle(length, beam, volume, v[1], 0.68, v[0]),
            ..plain()
        };
        models
            .entry(row[..5].join(" "))
            .or_insert_with(|| Model { body: delft::CanoeBody::new(&form, &SEA), form, measured: Vec::new() })
            .measured
            .push((v[5], 1e-3 * v[6]));
    }
    models.into_values().collect()
}

/// Root mean square of the error over all models at each Froude number, with the mean measured.
fn rms(models: &[Model], error: impl Fn(&Model, f64, f64) -> f64) -> Vec<(f64, f64, f64)> {
    (0..14)
        .map(|i| {
            let (mut square, mut sum) = (0.0, 0.0);
            for model in models {
                let (froude, measured) = model.measured[i];
                square += error(model, froude, measured).powi(2);
                sum += measured;
            }
            let n = models.len() as f64;
            (models[0].measured[i].0, (square / n).sqrt(), sum / n)
        })
        .collect()
}

/// Root mean square errors of the 1981 regression, `1000 Rr/W`, at Fn 0.125, 0.150 .. 0.450, as this comparison gave them.
/// They are 3 % of the mean at 0.45, 4 % at 0.35, 8 % at 0.25, 14 % at 0.20: the size the regression's authors accepted.
const RMS_1981: [f64; 14] =
    [0.050, 0.057, 0.077, 0.110, 0.119, 0.143, 0.163, 0.198, 0.206, 0.316, 0.380, 0.519, 0.844, 1.332];

#[test]
fn delft_1981_follows_the_measured_models() {
    let models = models();
    assert_eq!(models.len(), 17);
    let found = rms(&models, |m, froude, measured| 1e3 * (m.body.residuary(delft::Year::Y1981).at(froude) - measured));
    for ((froude, rms, mean), want) in found.into_iter().zip(RMS_1981) {
        println!("1981 Fn {froude:.3} rms {rms:.3} of mean {:.3}", 1e3 * mean);
        assert_close!(rms, want, 0.0006, format!("17 measured models, Fn {froude}"));
        if froude >= 0.2 {
            // A slipped digit in any coefficient would show: the worst honest figure is 14 %.
            assert!(rms < 0.15 * 1e3 * mean, "Fn {froude}: {rms} of {mean}");
        }
    }
}

#[test]
fn bare_hull_regressions_lie_below_the_appended_models() {
    let models = models();
    for (year, at_045) in [(delft::Year::Y1998, -0.158), (delft::Year::Y2008, -0.183)] {
        let mut bias = Vec::new();
        for i in 0..14 {
            let sum: f64 = models
                .iter()
                .map(|m| (m.body.residuary(year).at(m.measured[i].0) / m.measured[i].1).ln())
                .filter(|ln| ln.is_finite())
                .sum();
            bias.push(sum / models.len() as f64);
        }
        println!("{year:?} mean ln(Rr/measured) {bias:.3?}");
        // Fn 0.20 .. 0.45: always low, as keel and rudder are missing; at 0.45 by the figure of the comparison.
        assert!(bias[3..].iter().all(|b| *b < -0.08), "{year:?}: {bias:?}");
        assert_close!(bias[13], at_045, 0.001, format!("{year:?} at Fn 0.45, as this comparison gave it"));
    }
    // Two independent regressions of the same series: on the parent 3 % where anything is to be measured (2 % from 0.40).
    for i in 4..=12 {
        let froude = 0.05 * f64::from(i);
        let ratio = PARENT.residuary(delft::Year::Y2008).at(froude) / PARENT.residuary(delft::Year::Y1998).at(froude);
        assert!((ratio - 1.0).abs() < 0.03, "Fn {froude}: {ratio}");
    }
}

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

/// Schultz 2007 gives the change of total resistance of one frigate; the shift gives that of friction. One share of friction
/// per speed, fitted here by least squares over five rows, has to explain each column.
#[test]
fn similarity_shift_explains_the_frigate_table() {
    let table = rows("schultz2007.csv");
    for (knots, column, share_wanted) in [(15.0, 4, 0.454), (30.0, 5, 0.274)] {
        let re = knots * KNOT * 124.0 / SEA.viscosity;
        let smooth = friction::schoenherr(re);
        // Rows from 100 um up. As-applied paint (30 um) has a roughness function of its own: 12 % against 2 %/0.45 = 4 %.
        let pairs: Vec<(f64, f64)> = table[2..]
            .iter()
            .map(|row| {
                (100.0 * roughness::added_friction(re, 124.0, 1e-6 * number(&row[2])) / smooth, number(&row[column]))
            })
            .collect();
        let share = pairs.iter().map(|(x, y)| x * y).sum::<f64>() / pairs.iter().map(|(x, _)| x * x).sum::<f64>();
        println!("{knots} kn: fitted share of friction {share:.3}");
        assert_close!(share, share_wanted, 0.001, "fitted, not published");
        for (friction_percent, printed) in pairs {
            println!("  friction {friction_percent:.1} % total {:.1} % printed {printed}", share * friction_percent);
            // Whole percents are printed (0.5), and one share for all rows costs up to 0.8: 1.3 in all, as found.
            assert_close!(share * friction_percent, printed, 1.3, "Schultz 2007 (from memory)");
        }
        for grade in roughness::Growth::ALL {
            assert!(table.iter().any(|row| (1e-6 * number(&row[2]) - grade.roughness()).abs() < 1e-9), "{grade:?}");
        }
    }
}

/// Increase of friction on boats, computed beforehand with the local friction of the 1957 line's slope instead of
/// Schoenherr's relation: 1.2 % apart at most, and half a printed percent.
#[test]
fn similarity_shift_on_boats() {
    let heights = [30e-6, 100e-6, 300e-6, 1e-3, 3e-3, 10e-3];
    for (length, knots, want) in [
        (8.0, 6.0, [9.0, 22.0, 44.0, 81.0, 132.0, 215.0]),
        (12.0, 8.0, [10.0, 25.0, 47.0, 85.0, 134.0, 214.0]),
        (12.0, 24.0, [20.0, 42.0, 70.0, 115.0, 173.0, 267.0]),
        (20.0, 10.0, [11.0, 26.0, 49.0, 85.0, 132.0, 207.0]),
    ] {
        let re = knots * KNOT * length / SEA.viscosity;
        for (ks, want) in heights.into_iter().zip(want) {
            let got = 100.0 * roughness::added_friction(re, length, ks) / friction::schoenherr(re);
            assert_close!(got, want, 0.5 + 0.012 * want, format!("{length} m, {knots} kn, ks {ks}"));
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

/// Nothing breaks over a wide field of hulls and speeds, in and out of range.
#[test]
fn wide_inputs_stay_finite_and_friction_rises() {
    let mut state = 0x9e37_79b9_7f4a_7c15_u64;
    let mut draw = |low: f64, high: f64| {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        low + (high - low) * (state >> 11) as f64 / (1u64 << 53) as f64
    };
    for _ in 0..4000 {
        let length = draw(2.0, 60.0);
        let (beam, draught) = (length / draw(1.2, 12.0), length / draw(8.0, 60.0));
        let form = Form {
            length,
            beam,
            draught,
            mass: 1025.0 * length * beam * draught * draw(0.1, 1.1),
            prismatic: draw(0.3, 1.0),
            midship: draw(0.2, 1.0),
            waterplane: draw(0.4, 1.0),
            lcb_percent: draw(-15.0, 10.0),
            half_entrance_deg: draw(2.0, 88.0),
            transom_ratio: draw(0.0, 1.0),
            appendage_area: draw(0.0, 10.0),
            appendage_factor: draw(1.0, 4.0),
            roughness: draw(0.0, 0.02),
            ..plain()
        };
        let extras = Extras {
            bulb: Bulb { area: draw(-1.0, 1.0).max(0.0), height: draw(0.0, 2.0) },
            thruster_diameter: draw(0.0, 0.4),
            allowance: if draw(0.0, 1.0) < 0.5 { Allowance::Sand } else { Allowance::Published },
            ..Extras::default()
        };
        let mut last = 0.0;
        for i in 0..24 {
            let speed = 0.8 * f64::from(i);
            let all = [
                holtrop::resistance_1982(&form, &SEA, speed, &extras).value,
                holtrop::resistance_1984(&form, &SEA, speed, &extras).value,
                delft::resistance_1981(&form, &SEA, speed).value,
                delft::resistance_1998(&form, &SEA, speed).value,
                delft::resistance_2008(&form, &SEA, speed).value,
            ];
            for parts in all {
                let list =
                    [parts.friction, parts.roughness, parts.appendages, parts.wave, parts.transom, parts.total()];
                assert!(list.iter().all(|x| x.is_finite() && *x >= 0.0), "{form:?} {speed}: {parts:?}");
            }
            assert!(all[0].friction >= last);
            last = all[0].friction;
            let rules =
                [handbook::gerr(&form, speed, 0.5).value, handbook::crouch(&form, &SEA, speed, 150.0, 0.55).value];
            assert!(rules.iter().all(|x| x.is_finite() && *x >= 0.0));
        }
        let stern = Stern {
            length,
            beam,
            draught,
            draught_aft: draught,
            block: draw(0.2, 0.94),
            prismatic: form.prismatic,
            midship: form.midship,
            lcb_percent: form.lcb_percent,
            wetted_area: length * beam,
            viscous: draw(0.001, 0.01),
            stern: draw(-25.0, 10.0),
            diameter: draw(0.2, 3.0),
            area_ratio: 0.6,
            pitch_ratio: 0.8,
        };
        for factors in [stern.single_1982(), stern.single_1984(), stern.single_open(), stern.twin()] {
            assert!(factors.wake < 1.0 && factors.thrust_deduction < 1.0 && factors.relative_rotative > 0.5);
        }
    }
}

/// On yacht hulls within their range the residuary resistance rises with speed from Fn 0.2, and joins its ends smoothly.
#[test]
fn residuary_resistance_is_smooth() {
    for model in models() {
        for year in [delft::Year::Y1981, delft::Year::Y1998, delft::Year::Y2008] {
            let curve = model.body.residuary(year);
            let mut last = 0.0;
            for i in 0..2000 {
                let froude = 0.0005 * f64::from(i);
                let now = curve.at(froude);
                assert!(now >= last - 1e-12 || froude < 0.2 || froude > 0.6, "{year:?} Fn {froude}");
                assert!((now - last).abs() < 0.0015, "{year:?} jumps at Fn {froude}");
                last = now;
            }
            assert_eq!(curve.at(0.0), 0.0);
        }
    }
}
