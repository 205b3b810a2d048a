//! Renders every picture of the demo boats to look at: `cargo test -p draw --features png -- --ignored look`.
#[cfg(feature = "png")]
use draw::*;

#[cfg(feature = "png")]
#[test]
#[ignore = "writes files to look at"]
fn look() {
    use counsel::Options;
    let folder = std::path::PathBuf::from(
        std::env::var("LOOK").unwrap_or_else(|_| std::env::temp_dir().to_string_lossy().into_owned()),
    );
    let only = std::env::var("ONLY").unwrap_or_default();
    for boat in ["kittiwake", "gannet", "razorbill", "turnstone"] {
        let text =
            std::fs::read_to_string(format!("{}/../../examples/{boat}.toml", env!("CARGO_MANIFEST_DIR"))).unwrap();
        let job = job::Job::read(&text).unwrap().job;
        let options = Options { boats: 1000, seed: 1 };
        let curves = counsel::curves(&job, &options).unwrap();
        let change =
            counsel::Change { pitch: job.propeller.pitch.as_ref().map(|p| 0.88 * p.middle), ..Default::default() };
        let comparison = counsel::compare(&job, &change, &options).unwrap();
        let changed = counsel::curves_after(&job, &change, &options).unwrap();
        let choice = counsel::choose(&job, &options).unwrap();
        let evidence = counsel::evidence(&job, &options).unwrap();
        let diagnosis = counsel::diagnose(&job, &options).unwrap();
        for width in [360.0, 1200.0] {
            let sheet = Sheet { boat: &job.title, date: "2 May 2026", width };
            let mut all = vec![
                ("demand", demand::picture(&sheet, &curves, None)),
                ("change", demand::picture(&sheet, &changed, Some(&comparison))),
                ("flow", flow::picture(&sheet, &curves.flows)),
                ("speeds", speeds::picture(&sheet, &curves)),
                ("cavitation", cavitation::picture(&sheet, &curves)),
                ("shortlist", shortlist::picture(&sheet, &choice)),
                ("known", known::picture(&sheet, &evidence)),
                ("causes", causes::picture(&sheet, &diagnosis)),
            ];
            if let Some(drawn) = Drawn::of_job(&job) {
                all.push(("propeller", propeller::picture(&sheet, &drawn)));
                let mut bent = drawn.clone();
                bent.surveyed = true;
                bent.origin = "Drawn from measurements, blade by blade.".into();
                bent.cup = None;
                for (i, b) in bent.propeller.blades.iter_mut().enumerate() {
                    let by = [1.0, 1.04, 0.985, 1.01][i.min(3)];
                    for s in &mut b.sections {
                        s.pitch *= by + 0.03 * (s.radius / b.tip_radius - 0.7);
                    }
                    if i == 1 {
                        b.tip_radius *= 0.99;
                        b.sections.retain(|s| s.radius < 0.985 * b.tip_radius);
                    }
                    b.cup = Some(hydro::blade::Cup {
                        drop: 0.003,
                        length: 0.01,
                        from: 0.5 * b.tip_radius,
                        to: 0.95 * b.tip_radius,
                    });
                }
                all.push(("bent", propeller::picture(&sheet, &bent)));
            }
            if let Some(place) = place::Place::of_job(&job) {
                all.push(("place", place::picture(&sheet, &place)));
            }
            for (name, picture) in all {
                if !only.is_empty() && !only.contains(name) {
                    continue;
                }
                let file = folder.join(format!("{boat}-{name}-{width}"));

                std::fs::write(file.with_extension("png"), draw::png::png(&picture, 1.0, Theme::Light).unwrap())
                    .unwrap();
                std::fs::write(file.with_extension("svg"), &picture.svg).unwrap();
            }
        }
    }
}
