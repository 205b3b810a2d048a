//! How long one definite boat takes: a full-throttle balance (aim: below 2 µs), a steady state at an engine speed (1 µs).

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use hydro::drive::Drive;
use hydro::engine::{Engine, Kind, Top};
use hydro::hull::Curve;
use hydro::limits::Breakdown;
use hydro::openwater::Screw;
use hydro::running::Installation;
use hydro::speed::EngineSpeed;
use hydro::stern::Stern;
use hydro::water::{ATMOSPHERE, Water};

fn boat(
    diameter: f64,
    pitch_ratio: f64,
    resistance: Curve,
    kind: Kind,
    power: f64,
    rpm: f64,
    reduction: f64,
) -> Installation {
    let screw = Screw {
        diameter,
        pitch_ratio,
        expanded_area_ratio: 0.6,
        blades: 3,
        flat_share: 0.0,
        ducted: false,
        cup: 0.0,
        blade_roughness: 30e-6,
    };
    let water = Water::sea(15.0).value;
    Installation {
        water,
        resistance,
        tow: 0.0,
        screws: 1,
        stern: Stern { wake: 0.1, thrust_deduction: 0.08, relative_rotative: 0.98, shaft_angle_deg: 8.0 },
        diameter,
        open_water: screw.curves(2e6).value,
        breakdown: Breakdown::new(&screw, &water, ATMOSPHERE + 5e3),
        drive: Drive { reduction, efficiency: 0.95 },
        engine: Engine::usual(
            kind,
            power,
            EngineSpeed::from_rpm(rpm),
            Top::Governor { no_load: EngineSpeed::from_rpm(1.08 * rpm) },
        ),
    }
}

fn running(c: &mut Criterion) {
    let wave = Curve::tabulate(5.5, |v| 55.0 * v * v + 3.0 * v.powi(5));
    let launch = boat(0.4064, 0.7, wave, Kind::NaturalDiesel, 21.6e3, 3600.0, 2.6);
    let hump = Curve::tabulate(22.0, |v| 22.0 * v * v + 4200.0 * (-((v - 6.5_f64) / 2.5).powi(2)).exp() * (v / 6.5));
    let planing = boat(0.50, 1.0, hump, Kind::TurboDiesel, 220e3, 3600.0, 1.75);
    for (name, boat) in [("launch", launch), ("planing", planing)] {
        c.bench_function(&format!("{name}: full throttle"), |b| b.iter(|| black_box(&boat).full_throttle()));
        let speed = EngineSpeed(0.8 * boat.engine.rated_speed.0);
        c.bench_function(&format!("{name}: at engine speed"), |b| b.iter(|| black_box(&boat).at_engine_speed(speed)));
        c.bench_function(&format!("{name}: engine power"), |b| b.iter(|| boat.engine.power_at(black_box(speed))));
    }
}

criterion_group!(benches, running);
criterion_main!(benches);
