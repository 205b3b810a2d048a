//! How long the answers take on the demo boats, on one core (`RAYON_NUM_THREADS=1`) or all.

#![allow(missing_docs)]

use counsel::{Change, Options, Prepared, choose, compare, judge};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

fn job(name: &str) -> job::Job {
    let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).expect("the demo job");
    job::Job::read(&text).expect("a well-formed demo job").job
}

fn answers(c: &mut Criterion) {
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
