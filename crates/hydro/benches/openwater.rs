//! Cost of reducing a propeller series to its polynomials, and of the cavitation limit inside the balance.

use criterion::{Criterion, criterion_group, criterion_main};
use hydro::limits::{Breakdown, burrill};
use hydro::openwater::{Screw, bseries};
use hydro::water::Water;
use std::hint::black_box;

fn openwater(c: &mut Criterion) {
    let screw = Screw {
        diameter: 0.5,
        pitch_ratio: 0.8,
        expanded_area_ratio: 0.55,
        blades: 3,
        flat_share: 0.0,
        ducted: false,
        cup: 0.03,
        blade_roughness: 80e-6,
    };
    let mixed = Screw { flat_share: 0.6, ..screw };
    let steep = Screw { flat_share: 0.6, pitch_ratio: 1.7, ..screw };
    c.bench_function("B-series to polynomials", |b| {
        b.iter(|| bseries::reduce(black_box(0.8), black_box(0.55), black_box(3), black_box(1e6)));
    });
    c.bench_function("B-series to polynomials with Reynolds effect", |b| {
        b.iter(|| bseries::reduce(black_box(0.8), black_box(0.55), black_box(3), black_box(5e6)));
    });
    c.bench_function("curves of a B-series screw", |b| b.iter(|| black_box(&screw).curves(black_box(5e6))));
    c.bench_function("curves of a mixed screw", |b| b.iter(|| black_box(&mixed).curves(black_box(5e6))));
    c.bench_function("curves of a mixed screw of high pitch", |b| b.iter(|| black_box(&steep).curves(black_box(5e6))));

    let curves = screw.curves(5e6).value;
    c.bench_function("thrust and torque at an advance ratio", |b| {
        b.iter(|| (curves.thrust(black_box(0.5)), curves.torque(black_box(0.5))));
    });
    let water = Water { density: 1025.0, viscosity: 1.19e-6, vapour_pressure: 1700.0 };
    let breakdown = Breakdown::new(&screw, &water, 105_000.0);
    c.bench_function("loss when cavitating", |b| {
        b.iter(|| breakdown.limit(black_box(8.0), black_box(25.0), black_box(0.18), black_box(0.03)));
    });
    c.bench_function("back cavitation", |b| b.iter(|| burrill::back_cavitation(black_box(0.4), black_box(0.15))));
}

criterion_group!(benches, openwater);
criterion_main!(benches);
