//! How long a picture takes, its answer given.
use counsel::Options;
use criterion::{Criterion, criterion_group, criterion_main};
use draw::{Drawn, Sheet};
use std::hint::black_box;

fn pictures(c: &mut Criterion) {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/kittiwake.toml");
    let Some(job) = std::fs::read_to_string(file).ok().and_then(|t| job::Job::read(&t).ok()).map(|r| r.job) else {
        return;
    };
    let options = Options { boats: 400, seed: 1 };
    let (Ok(curves), Some(drawn)) = (counsel::curves(&job, &options), Drawn::of_job(&job)) else { return };
    let sheet = Sheet { boat: &job.title, date: "2 May 2026", width: 1200.0 };
    c.bench_function("picture: propeller", |b| b.iter(|| draw::propeller::picture(black_box(&sheet), &drawn)));
    c.bench_function("picture: engine and demand", |b| {
        b.iter(|| draw::demand::picture(black_box(&sheet), &curves, None))
    });
    c.bench_function("picture: speeds", |b| b.iter(|| draw::speeds::picture(black_box(&sheet), &curves)));
    c.bench_function("stl: propeller", |b| b.iter(|| draw::stl::propeller(black_box(&drawn.propeller))));
}

criterion_group!(benches, pictures);
criterion_main!(benches);
