//! Trial logs brought to a job, and readings taken from them.

use crate::bench::{Answer, Bench, demo};
use std::time::Duration;

/// The demo trial of another boat of the harbour: a ladder both ways, with its own job file.
fn bench() -> Bench {
    Bench::with(Duration::from_secs(30), |folder| {
        std::fs::write(folder.join("guillemot.toml"), demo("guillemot")).expect("written");
    })
}

fn trial() -> Vec<u8> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/logs/guillemot-2026-09-13.csv");
    std::fs::read(path).expect("a demo log")
}

fn bring(bench: &Bench, files: &[(&str, &[u8])]) -> Answer {
    let mut body = Vec::new();
    for (name, bytes) in files {
        let head = format!("--b\r\nContent-Disposition: form-data; name=\"log\"; filename=\"{name}\"\r\n\r\n");
        body.extend_from_slice(head.as_bytes());
        body.extend_from_slice(bytes);
        body.extend_from_slice(b"\r\n");
    }
    body.extend_from_slice(b"--b--\r\n");
    let mut request = format!(
        "POST /jobs/guillemot/log HTTP/1.1\r\nHost: {}\r\nConnection: close\r\nContent-Type: multipart/form-data; boundary=b\r\nContent-Length: {}\r\n\r\n",
        bench.at,
        body.len()
    )
    .into_bytes();
    request.extend_from_slice(&body);
    bench.raw(&request)
}

fn file(bench: &Bench) -> String {
    std::fs::read_to_string(bench.folder.path().join("guillemot.toml")).expect("there")
}

fn offered() -> logs::Trial {
    let job = job::Job::read(&demo("guillemot")).expect("reads").job;
    let log =
        logs::read("guillemot-2026-09-13.csv", &mut &trial()[..], None, &logs::Options::default(), &mut |_, _| {});
    let mut settings = logs::Settings::default();
    settings.proposing.engine = job.engine.kind;
    logs::trial(&[log.expect("a log")], &settings)
}

/// A reading as a file holds it, wherever it stands there.
fn written(reading: &job::Reading) -> String {
    job::Job { readings: vec![reading.clone()], ..job::Job::default() }.to_toml()
}

#[test]
fn a_log_is_shown_over_time_and_its_readings_are_taken_as_the_reader_gives_them() {
    let bench = bench();
    let before = file(&bench);
    let came = bring(&bench, &[("guillemot-2026-09-13.csv", &trial())]);
    assert_eq!(came.status, 303, "{}", came.body);
    let at = came.header("location").expect("a page").to_owned();
    let shown = bench.get(&at).body;
    let offered = offered().proposals;
    assert!(offered.len() > 2);
    assert_eq!(shown.matches("name=\"take\"").count(), offered.len());
    assert_eq!(shown.matches("class=\"w\"").count(), 2 * offered.iter().map(|p| p.runs.stretches.len()).sum::<usize>());
    assert!(shown.contains("<svg") && shown.contains("engine speed, rpm") && !shown.contains("<style"));
    let id = at.rsplit('=').next().expect("named").to_owned();
    let taken =
        bench.post("/jobs/guillemot/log/take", &[("log", &id), ("take", "1"), ("take", "3"), ("full", "3")], "");
    assert_eq!((taken.status, taken.header("location")), (303, Some("/jobs/guillemot#readings")), "{}", taken.body);
    let text = file(&bench);
    assert!(text.starts_with(before.trim_end()), "what stood there stays to the byte");
    let readings = job::Job::read(&text).expect("reads").job.readings;
    let [.., first, third] = readings.as_slice() else { panic!("two more") };
    assert_eq!(written(first), written(&offered[0].reading));
    assert_eq!(written(third), written(&offered[2].at_full_throttle()));
    // Taken again it is not added again, and the page says it is there.
    bench.post("/jobs/guillemot/log/take", &[("log", &id), ("take", "1")], "");
    assert_eq!(file(&bench), text);
    assert!(bench.get(&at).body.contains("The job holds it already"));
    assert!(bench.get("/jobs/guillemot").body.contains("guillemot-2026-09-13.csv 09:"), "it stands among the readings");
    bench.post("/jobs/guillemot/undo", &[], "");
    assert_eq!(file(&bench), before);
}

#[test]
fn what_is_no_log_is_refused_with_its_reason_and_nothing_is_kept() {
    let bench = bench();
    let before = file(&bench);
    for (name, bytes, says) in [
        ("a.gpx", &b"\x00\x01\x02\xff"[..], "not a text file"),
        ("a.csv", b"<html><body>hello</body></html>", "not GPX"),
        ("a.gz", b"\x1f\x8b\x08\x00", "packed"),
        ("a.csv", b"time (s),rpm\n", "no rows"),
        ("<script>alert(1)</script>.csv", b"", "empty"),
        ("a.gpx", b"<?xml version=\"1.0\"?><!DOCTYPE x [<!ENTITY a \"aaaa\">]><gpx>&a;</gpx>", "could be used"),
    ] {
        let answer = bring(&bench, &[("good.csv", &trial()), (name, bytes)]);
        assert_eq!(answer.status, 422, "{name}: {}", answer.body);
        assert!(answer.body.contains(says) && !answer.body.contains("<script>alert"), "{name}: {}", answer.body);
    }
    let huge = bring(&bench, &[("a.csv", &vec![b'1'; 20 << 20])]).status;
    assert!(matches!(huge, 0 | 400 | 413), "{huge}");
    assert!(!bench.folder.path().join(".fairwake/logs").exists());
    assert_eq!(file(&bench), before);
    for at in ["/jobs/guillemot/log?log=..%2F..%2Fguillemot.toml", "/jobs/guillemot/log?log=0123456789abcdef"] {
        assert_eq!(bench.get(at).status, 404, "{at}");
    }
    assert_eq!(bench.post("/jobs/guillemot/log/take", &[("log", "0123456789abcdef"), ("take", "1")], "").status, 404);
    let cross = "Origin: http://evil.example\r\n";
    assert_eq!(bench.post("/jobs/guillemot/log/take", &[("take", "1")], cross).status, 403);
}

#[test]
fn a_files_name_stays_a_name_and_only_so_many_are_kept() {
    let bench = bench();
    let came = bring(&bench, &[("../../<img src=x>.csv", &trial())]);
    let at = came.header("location").expect("taken").to_owned();
    let shown = bench.get(&at).body;
    assert!(!shown.contains("<img") && shown.contains("-img src-x-.csv"), "{shown}");
    for n in 0..20 {
        let log: String = std::iter::once("time (s),rpm,speed (kn)\n".to_owned())
            .chain((0..90).map(|t| format!("{t},{},6.5\n", 2000 + n)))
            .collect();
        assert_eq!(bring(&bench, &[("run.csv", log.as_bytes())]).status, 303);
    }
    let kept = std::fs::read_dir(bench.folder.path().join(".fairwake/logs/guillemot")).expect("kept").count();
    assert_eq!(kept, workbench::store::LOGS_KEPT);
}

#[test]
fn every_word_of_the_page_is_said_in_both_languages() {
    let bench = bench();
    let at = bring(&bench, &[("run.csv", &trial())]).header("location").expect("taken").to_owned();
    for (tag, word) in [("en", "Take these"), ("es", "Tomar estas")] {
        let request = format!(
            "GET {at} HTTP/1.1\r\nHost: {}\r\nCookie: fairwake-language={tag}\r\nConnection: close\r\n\r\n",
            bench.at
        );
        let page = bench.raw(request.as_bytes()).body;
        assert!(page.contains(word) && !page.contains(">workbench-"), "{tag}");
    }
}
