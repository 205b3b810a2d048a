//! How long the answers take on the demo boats, on one core (`RAYON_NUM_THREADS=1`) or all.

#![allow(missing_docs)]

use counsel::crowd::Crowd;
use counsel::crowd::plan::Plan;
use counsel::{Change, Options, Prepared, choose, compare, judge};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

fn job(name: &str) -> job::Job {
    let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).expect("the demo job");
    job::Job::read(&text).expect("a well-formed demo job").job
}

/// Full throttle and nine settings below it, as an optical tachometer and runs both ways by GPS would show them on a boat
/// like the demo boat kittiwake.
const TEN: [(f64, f64); 10] = [
    (2900.0, 6.4),
    (1200.0, 3.55),
    (1500.0, 4.35),
    (1800.0, 4.95),
    (2000.0, 5.3),
    (2200.0, 5.65),
    (2400.0, 5.9),
    (2500.0, 6.0),
    (2600.0, 6.1),
    (2750.0, 6.25),
];

/// Kittiwake with ten sharp readings.
fn ten() -> job::Job {
    let readings: String = TEN
        .iter()
        .enumerate()
        .map(|(i, (rpm, kn))| {
            let full = i == 0;
            format!(
                "[[reading]]\nfull_throttle = {full}\nengine_speed = \"{rpm} rpm\"\nby = \"optical\"\n\
                 speed = [\"{:.2} kn\", \"{:.2} kn\"]\n",
                kn + 0.05,
                kn - 0.05
            )
        })
        .collect();
    let readings = job::Job::read(&readings).expect("readings").job.readings;
    job::Job { readings, ..job("kittiwake") }
}

fn answers(c: &mut Criterion) {
    let weighed = ten();
    c.bench_function("weigh 4 000 boats, ten sharp readings", |b| {
        b.iter(|| Crowd::draw(Plan::new(black_box(&weighed)).expect("a whole job"), 4000, 1).effective);
    });
    let options = Options::default();
    for name in ["kittiwake", "turnstone"] {
        let full = job(name);
        let bare = job::Job { readings: Vec::new(), ..full.clone() };
        c.bench_function(&format!("judge {name}, no reading"), |b| b.iter(|| judge(black_box(&bare), &options)));
        c.bench_function(&format!("judge {name}, its readings"), |b| b.iter(|| judge(black_box(&full), &options)));
        let change = Change { pitch: Some(0.2286), ..Change::default() };
        c.bench_function(&format!("try {name}"), |b| b.iter(|| compare(black_box(&full), &change, &options)));
        let prepared = Prepared::new(&full, &options).expect("a whole job");
        let _ = (prepared.compare(&change), prepared.curves(None));
        c.bench_function(&format!("one more pitch, {name}"), |b| b.iter(|| prepared.compare(black_box(&change))));
        c.bench_function(&format!("its curves, {name}"), |b| b.iter(|| prepared.curves(Some(black_box(&change)))));
        c.bench_function(&format!("choose {name}"), |b| b.iter(|| choose(black_box(&full), &options)));
    }
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(10);
    targets = answers
}
criterion_main!(benches);
