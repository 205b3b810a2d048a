//! Many jobs, many at once.

use crate::bench::{Bench, demo};
use std::time::{Duration, Instant};

#[test]
fn two_thousand_jobs_are_listed_in_under_a_second_when_known_and_a_change_is_seen() {
    let text = demo("kittiwake");
    let bench = Bench::with(Duration::from_secs(30), |folder| {
        for n in 0..2000 {
            std::fs::write(folder.join(format!("boat-{n}.toml")), text.replace("Kittiwake", &format!("Boat {n}")))
                .expect("written");
        }
    });
    let start = Instant::now();
    let page = bench.get("/").body;
    let first = start.elapsed();
    assert_eq!(page.matches("<li>").count(), 2000);
    let start = Instant::now();
    assert!(bench.get("/?q=boat+1999").body.contains("Boat 1999"));
    let again = start.elapsed();
    // Unoptimised and on a busy machine; the release build's figures stand in the documentation.
    assert!(first < Duration::from_secs(10) && again < Duration::from_secs(1), "{first:?}, {again:?}");
    std::fs::write(bench.folder.path().join("boat-7.toml"), "title = \"Renamed by hand\"\n").expect("written");
    assert!(bench.get("/?q=renamed").body.contains("Renamed by hand"));
}

#[test]
fn fifty_at_once_all_get_their_answer() {
    let bench = Bench::new();
    let paths = ["/", "/jobs/kittiwake", "/jobs/kittiwake/follows?part=1", "/new", "/assets/page.css"];
    std::thread::scope(|scope| {
        for n in 0..50 {
            let bench = &bench;
            scope.spawn(move || {
                for k in 0..4 {
                    let path = paths[(n + k) % paths.len()];
                    assert_eq!(bench.get(path).status, 200, "{path}");
                }
            });
        }
    });
}

#[test]
fn saves_from_many_threads_all_stand_in_the_file() {
    let bench = Bench::new();
    let base = bench.version();
    let keys =
        ["call.notes", "boat.beam_waterline", "boat.hull_draught", "engine.model", "propeller.stamp", "place.altitude"];
    let values = ["a", "2.8 m", "0.6 m", "b", "c", "5 m"];
    let was = [
        "long-keel sloop; the old 16 x 11 was lost ashore, the new one came off a boat of the same length",
        "",
        "",
        "",
        "17 RH 14",
        "",
    ];
    std::thread::scope(|scope| {
        for n in 0..keys.len() {
            let (bench, base) = (&bench, &base);
            scope.spawn(move || assert_eq!(bench.set(base, keys[n], was[n], values[n]).status, 200, "{}", keys[n]));
        }
    });
    let document = job::Document::parse(&bench.file()).expect("reads");
    for (key, value) in keys.iter().zip(values) {
        assert_eq!(workbench::store::shown(&document, key), *value);
    }
}
