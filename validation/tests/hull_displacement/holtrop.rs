//! Holtrop & Mennen 1982: the 205 m ship, item by item.

use super::{number, plain};
use hydro::hull::Form;
use hydro::hull::friction;
use hydro::hull::holtrop::{self, Allowance, Bulb, Extras, Stern, shape, wave};
use hydro::water::{GRAVITY, Water};
use std::collections::BTreeMap;
use validation::{assert_close, rows};

/// Water of a paper, density and viscosity as it states them.
fn water(density: f64, viscosity: f64) -> Water {
    Water { density, viscosity, vapour_pressure: 1700.0 }
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
