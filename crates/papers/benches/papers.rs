//! How long all papers of one job take: the questions asked, the pages laid out, the PDFs set.
use counsel::Options;
use criterion::{Criterion, criterion_group, criterion_main};
use papers::{Answers, Setting, Size};
use std::hint::black_box;

fn all(c: &mut Criterion) {
    let mut group = c.benchmark_group("papers");
    group.sample_size(10);
    for name in ["kittiwake", "survey/dunlin"] {
        let file = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
        let Ok(text) = std::fs::read_to_string(file) else { continue };
        let Ok(read) = job::Job::read(&text) else { continue };
        let options = Options::default();
        let setting = Setting { language: words::Language::English, size: Size::A4, date: "2026-05-09".to_owned() };
        group.bench_function(format!("{name}: questions"), |b| {
            b.iter(|| Answers::gather(black_box(&read.job), &text, &options))
        });
        let answers = Answers::gather(&read.job, &text, &options);
        group.bench_function(format!("{name}: pages"), |b| {
            b.iter(|| {
                let (made, _) = papers::papers(black_box(&answers), &setting, &[]);
                made.iter().map(|paper| papers::html::page(paper).len()).sum::<usize>()
            })
        });
        #[cfg(feature = "pdf")]
        group.bench_function(format!("{name}: pdf"), |b| {
            b.iter(|| {
                let (made, _) = papers::papers(black_box(&answers), &setting, &[]);
                made.iter().filter_map(|paper| papers::pdf::pdf(paper).ok()).map(|bytes| bytes.len()).sum::<usize>()
            })
        });
    }
    group.finish();
}

criterion_group!(benches, all);
criterion_main!(benches);
