//! How long each picture takes, its answer given, in both languages.
use counsel::Options;
use criterion::{Criterion, criterion_group, criterion_main};
use draw::place::Place;
use draw::{Drawn, Picture, Sheet};
use std::hint::black_box;
use words::Language;

type Draw<'a> = Box<dyn Fn(&Sheet) -> Picture + 'a>;

fn pictures(c: &mut Criterion) {
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/kittiwake.toml");
    let Some(job) = std::fs::read_to_string(file).ok().and_then(|t| job::Job::read(&t).ok()).map(|r| r.job) else {
        return;
    };
    let options = Options { boats: 400, seed: 1 };
    let (Ok(curves), Ok(choice)) = (counsel::curves(&job, &options), counsel::choose(&job, &options)) else { return };
    let (Ok(evidence), Ok(causes)) = (counsel::evidence(&job, &options), counsel::diagnose(&job, &options)) else {
        return;
    };
    let (Ok(fit), Ok(order)) = (counsel::fit(&job, &options), counsel::order(&job, &options)) else { return };
    let (Some(drawn), Some(place)) = (Drawn::of_job(&job), Place::of_job(&job)) else { return };
    let all: Vec<(&str, Draw)> = vec![
        ("propeller", Box::new(|s| draw::propeller::picture(s, &drawn))),
        ("place", Box::new(|s| draw::place::picture(s, &place))),
        ("demand", Box::new(|s| draw::demand::picture(s, &curves, None))),
        ("flow", Box::new(|s| draw::flow::picture(s, &curves.flows))),
        ("speeds", Box::new(|s| draw::speeds::picture(s, &curves))),
        ("cavitation", Box::new(|s| draw::cavitation::picture(s, &curves))),
        ("shortlist", Box::new(|s| draw::shortlist::picture(s, &choice))),
        ("known", Box::new(|s| draw::known::picture(s, &evidence))),
        ("causes", Box::new(|s| draw::causes::picture(s, &causes))),
        ("rates", Box::new(|s| draw::rates::picture(s, &fit))),
        ("walk", Box::new(|s| draw::walk::picture(s, &fit))),
        ("bore", Box::new(|s| draw::bore::picture(s, &order.bore).unwrap_or_else(|| draw::walk::picture(s, &fit)))),
    ];
    for language in Language::ALL {
        let sheet = Sheet { boat: &job.title, date: "2 May 2026", width: 1200.0, language };
        for (name, draw) in &all {
            c.bench_function(&format!("picture {}: {name}", language.tag()), |b| b.iter(|| draw(black_box(&sheet))));
        }
    }
    c.bench_function("stl: propeller", |b| b.iter(|| draw::stl::propeller(black_box(&drawn.propeller))));
}

criterion_group!(benches, pictures);
criterion_main!(benches);
