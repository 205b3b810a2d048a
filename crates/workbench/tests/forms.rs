//! The forms as they work without a script.

use crate::bench::Bench;

#[test]
fn a_job_is_begun_by_the_calls_questions_and_stays_as_it_was_answered() {
    let bench = Bench::new();
    let answer = bench.post(
        "/new",
        &[
            ("v:title", "Tern: slow since spring"),
            ("v:engine.rated_power", "29 hp"),
            ("s:engine.rated_power", "plate"),
            ("v:boat.kind", ""),
            ("v:reading.0.speed", "6.5 kn"),
            ("v:reading.0.speed", "6.1 kn"),
            ("v:call.symptoms", ""),
            ("v:call.symptoms", "black smoke"),
        ],
        "",
    );
    assert_eq!((answer.status, answer.header("location")), (303, Some("/jobs/tern")), "{}", answer.body);
    let text = std::fs::read_to_string(bench.folder.path().join("tern.toml")).expect("written");
    let job = job::Job::read(&text).expect("a job").job;
    assert_eq!(job.engine.rated_power.expect("stated").source, Some(job::Source::Plate));
    assert!(text.contains("[\"6.5 kn\", \"6.1 kn\"]") && !text.contains("kind"), "{text}");
}

#[test]
fn a_new_job_with_a_wrong_answer_is_shown_again_with_everything_entered() {
    let bench = Bench::new();
    let fields = [
        ("v:title", "Tern"),
        ("v:propeller.pitch", "eleven"),
        ("v:reading.0.speed", "6.5 kn"),
        ("v:reading.0.speed", "6.1 kn"),
        ("v:call.symptoms", ""),
        ("v:call.symptoms", "black smoke"),
        ("v:call.symptoms", "vibration"),
    ];
    let answer = bench.post("/new", &fields, "");
    assert_eq!(answer.status, 422);
    assert!(answer.body.contains("value=\"6.5 kn\"") && answer.body.contains("value=\"6.1 kn\""));
    assert!(answer.body.contains("value=\"black smoke\" checked"));
    assert!(answer.body.contains("value=\"eleven\"") && answer.body.contains("value=\"Tern\""));
    assert!(!bench.folder.path().join("tern.toml").exists());
    let unknown: Vec<(&str, &str)> = fields.into_iter().chain([("unknown", "propeller.pitch")]).collect();
    let answer = bench.post("/new", &unknown, "");
    assert!(answer.status == 200 && !answer.body.contains("eleven") && answer.body.contains("value=\"6.5 kn\""));
    assert!(!bench.folder.path().join("tern.toml").exists());
}

#[test]
fn what_cannot_be_read_is_kept_beside_and_the_file_stays_readable() {
    let bench = Bench::new();
    let before = bench.file();
    let answer = bench.set(&bench.version(), "propeller.pitch", "14 in", "twelve or so");
    assert_eq!(answer.status, 422, "{}", answer.body);
    assert_eq!(bench.file(), before);
    let page = bench.get("/jobs/kittiwake").body;
    assert!(page.contains("value=\"twelve or so\"") && page.contains("aria-invalid=\"true\""));
    assert_eq!(bench.set(&bench.version(), "propeller.pitch", "14 in", "12 in").status, 200);
    assert!(!bench.get("/jobs/kittiwake").body.contains("twelve or so"));
}

#[test]
fn undo_goes_back_step_by_step_and_no_state_is_lost() {
    let bench = Bench::new();
    let first = bench.file();
    assert_eq!(bench.set(&bench.version(), "propeller.pitch", "14 in", "13 in").status, 200);
    let second = bench.file();
    assert_eq!(bench.set(&bench.version(), "propeller.blades", "3", "4").status, 200);
    let third = bench.file();
    bench.post("/jobs/kittiwake/undo", &[], "");
    assert_eq!(bench.file(), second);
    bench.post("/jobs/kittiwake/undo", &[], "");
    assert_eq!(bench.file(), first, "comments and order as they were");
    bench.post("/jobs/kittiwake/undo", &[], "");
    assert_eq!(bench.file(), first);
    bench.post("/jobs/kittiwake/restore", &[("number", "3")], "");
    assert_eq!(bench.file(), third);
    assert_eq!(bench.get("/jobs/kittiwake/history").status, 200);
}

#[test]
fn a_source_is_one_tap_and_dont_know_takes_the_value_out() {
    let bench = Bench::new();
    let path = "engine.rated_power";
    let (v, w, s) = (format!("v:{path}"), format!("w:{path}"), format!("s:{path}"));
    let answer =
        bench.post("/jobs/kittiwake/set", &[(&w, "29 hp"), (&v, "29 hp"), (&s, "memory"), ("section", "engine")], "");
    assert_eq!((answer.status, answer.header("location")), (303, Some("/jobs/kittiwake#engine")));
    assert!(bench.file().contains("rated_power = \"29 hp (memory)\""));
    bench.post("/jobs/kittiwake/set", &[(&w, "29 hp (memory)"), (&v, "29 hp"), (&s, "memory"), ("unknown", path)], "");
    assert!(!bench.file().contains("rated_power"));
    assert!(bench.get("/jobs/kittiwake/follows?part=1").body.contains("read the rating plate"));
}

#[test]
fn a_reading_is_added_and_taken_out_again() {
    let bench = Bench::new();
    let before = bench.file();
    assert_eq!(bench.set(&bench.version(), "reading.3.engine_speed", "", "2950 rpm").status, 200);
    assert_eq!(job::Job::read(&bench.file()).expect("reads").job.readings.len(), 4);
    bench.post("/jobs/kittiwake/set", &[("base", &bench.version()), ("remove", "reading.3")], "");
    assert_eq!(bench.file().trim_end(), before.trim_end());
}

#[test]
fn the_propeller_is_drawn_as_the_form_has_it_and_nothing_is_saved_by_looking() {
    let bench = Bench::new();
    let before = bench.file();
    assert!(bench.get("/jobs/kittiwake").body.contains("3 blades, right-handed, 17 \u{d7} 14 in"));
    let draw = |fields: &[(&str, &str)]| bench.post("/jobs/kittiwake/drawing", fields, "").body;
    let typed = draw(&[
        ("w:propeller.blades", "3"),
        ("v:propeller.blades", "5"),
        ("w:propeller.hand", "right"),
        ("v:propeller.hand", "left"),
    ]);
    assert!(typed.contains("5 blades, left-handed") && typed.contains("<svg") && !typed.contains("<style"), "{typed}");
    // What cannot be read yet, half typed, leaves the rest as it is.
    let half = draw(&[
        ("w:propeller.pitch", "14 in"),
        ("v:propeller.pitch", "1x"),
        ("w:propeller.blades", "3"),
        ("v:propeller.blades", "4"),
    ]);
    assert!(half.contains("4 blades") && half.contains("\u{d7} 14 in"), "{half}");
    let none = draw(&[
        ("w:propeller.pitch", "14 in"),
        ("v:propeller.pitch", ""),
        ("w:propeller.stamp", "17 RH 14"),
        ("v:propeller.stamp", ""),
    ]);
    assert!(none.contains("enough for a first drawing"), "{none}");
    assert_eq!(bench.file(), before);
}

#[test]
fn a_survey_card_is_drawn_blade_by_blade_as_its_fields_are_filled() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/survey/dunlin.toml");
    let text = std::fs::read_to_string(path).expect("a demo");
    let bench = Bench::with(std::time::Duration::from_secs(30), |folder| {
        std::fs::write(folder.join("dunlin.toml"), &text).expect("written");
    });
    let page = bench.get("/jobs/dunlin").body;
    assert!(page.contains("Drawn from measurements, blade by blade"));
    let drawn = bench.post("/jobs/dunlin/drawing", &[], "").body;
    let document = job::Document::parse(&text).expect("reads");
    let path = "survey.blade.0.tip_radius";
    let was = workbench::store::shown(&document, path);
    let (w, v) = (format!("w:{path}"), format!("v:{path}"));
    let longer = bench.post("/jobs/dunlin/drawing", &[(&w, &was), (&v, "235 mm")], "").body;
    assert!(longer.contains("<svg") && longer != drawn, "{path}, {was}: {longer}");
}

#[test]
fn every_page_speaks_spanish_and_no_name_shows_through() {
    let bench = Bench::new();
    for path in [
        "/",
        "/new",
        "/jobs/kittiwake",
        "/jobs/kittiwake/log",
        "/jobs/kittiwake/history",
        "/jobs/kittiwake/papers",
        "/jobs/kittiwake/follows",
    ] {
        for tag in ["en", "es"] {
            let request = format!(
                "GET {path} HTTP/1.1\r\nHost: {}\r\nCookie: fairwake-language={tag}\r\nConnection: close\r\n\r\n",
                bench.at
            );
            let page = bench.raw(request.as_bytes());
            assert_eq!(page.status, 200, "{path}");
            assert!(page.body.contains(&format!("<html lang=\"{tag}\"")), "{path}");
            let shown =
                page.body.split('>').filter_map(|part| part.split('<').next()).find(|text| text.contains("workbench-"));
            assert_eq!(shown, None, "{path} {tag}");
        }
    }
}

#[test]
fn a_file_goes_out_as_it_is_and_comes_in_again_beside() {
    let bench = Bench::new();
    let out = bench.get("/jobs/kittiwake/file");
    assert_eq!(out.body, bench.file());
    bench.post("/jobs/kittiwake/duplicate", &[], "");
    assert_eq!(std::fs::read_to_string(bench.folder.path().join("kittiwake-2.toml")).expect("copied"), bench.file());
}
