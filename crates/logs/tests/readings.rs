//! Readings of the job file reduced, and their history.

use job::Job;
use logs::{KNOT, Level, Reduced, reduce};

fn one(reading: &str) -> Reduced {
    let job = Job::read(&format!("[[reading]]\n{reading}")).unwrap_or_else(|e| panic!("{reading}: {e:?}")).job;
    reduce(&job.readings[0])
}

fn codes(reduced: &Reduced) -> Vec<&'static str> {
    reduced.doubts.iter().map(|d| d.code).collect()
}

#[test]
fn means_of_speeds_never_of_times() {
    // 10 kn and 8 kn over the same distance: the mean of the speeds is 9, that of the times 8.889.
    let reduced = one("speed = [\"10.0 kn\", \"8.0 kn\"]\n");
    assert!((reduced.speed.unwrap() / KNOT - 9.0).abs() < 1e-9);
    assert!((reduced.current.unwrap() / KNOT - 1.0).abs() < 1e-9);
    assert!(codes(&reduced).contains(&"strong-current"));
    assert!((reduced.half.unwrap() / KNOT - 0.1).abs() < 1e-9);
    // The published four runs.
    let reduced = one("speed = [\"10.0 kn\", \"8.0 kn\", \"9.6 kn\", \"8.4 kn\"]\n");
    assert!((reduced.speed.unwrap() / KNOT - 8.9).abs() < 5e-4);
    assert!((reduced.unsteady.unwrap() / KNOT - 0.4).abs() < 1e-9);
    // A current of 1.1, 0.9, 0.7, ... kn would be linear: here it is the least-squares one.
    let reduced = one("speed = [\"8.1 kn\", \"6.1 kn\", \"7.7 kn\"]\n");
    assert!((reduced.speed.unwrap() / KNOT - 7.0).abs() < 1e-9);
    assert!((reduced.current.unwrap() / KNOT - 0.9).abs() < 1e-9);
    assert!((reduced.drift.unwrap() / KNOT + 0.2).abs() < 1e-9);
}

#[test]
fn weak_readings_are_named() {
    let has = |text: &str, code: &str| {
        let reduced = one(text);
        assert!(codes(&reduced).contains(&code), "{text}: {:?}", reduced.doubts);
        assert!(reduced.doubts.iter().all(|d| !d.message.is_empty() && !d.help.is_empty()));
    };
    has("engine_speed = \"2930 rpm\"\n", "rpm-dashboard");
    has("engine_speed = \"2900 rpm (memory)\"\n", "rpm-remembered");
    has("engine_speed = \"2900 rpm\"\nby = \"optical\"\n", "round-rpm");
    has("speed = \"6.43 kn\"\n", "one-way");
    has("speed = \"6.43 kn\"\nspeed_by = \"log\"\n", "log-only");
    has("speed = [\"6.43 kn\", \"6.43 kn\"]\n", "equal-both-ways");
    has("speed = [\"6.5 kn\", \"6.0 kn\"]\n", "round-speed");
    has("speed = [\"7.93 kn\", \"6.61 kn\"]\n", "strong-current");
    has("speed = [\"6.93 kn\", \"6.61 kn\", \"6.13 kn\"]\n", "unsteady");
    has("full_throttle = true\nspeed = \"6.43 kn\"\n", "no-rpm");
    has("speed = [\"6.5 kn (gps)\", \"6.1 kn (gps)\", \"5.8 kn (log)\"]\n", "log-and-gps");
    let mixed = one("speed = [\"6.5 kn (gps)\", \"6.1 kn (gps)\", \"5.8 kn (log)\"]\n");
    assert!((mixed.speed.unwrap() / KNOT - 6.3).abs() < 1e-9 && (mixed.log_error.unwrap() / KNOT + 0.5).abs() < 1e-9);
    // A good reading raises none.
    let good = one(
        "full_throttle = true\nengine_speed = \"2913 rpm\"\nby = \"optical\"\nspeed = [\"6.93 kn\", \"6.51 kn\"]\n",
    );
    assert_eq!(codes(&good), Vec::<&str>::new());
    assert_eq!(one("label = \"x\"\n"), Reduced::default());
}

fn job(readings: &[(&str, &str, &str)]) -> Job {
    let text: String = readings
        .iter()
        .map(|(date, rpm, more)| {
            format!("[[reading]]\ndate = \"{date}\"\nfull_throttle = true\nengine_speed = \"{rpm} rpm\"\n{more}")
        })
        .collect();
    Job::read(&text).unwrap().job
}

#[test]
fn growth_over_a_season() {
    let clean = "[reading.state]\nsince_scrub = \"1 week\"\n";
    let old = "[reading.state]\nsince_scrub = \"5 months\"\n";
    let other = "[reading.state.propeller]\npitch = \"11 in\"\n";
    let level = |rows: &[(&str, &str, &str)]| logs::history(&job(rows)).alarm.map(|a| a.level);
    assert_eq!(level(&[("2026-04-10", "3600", clean), ("2026-07-01", "3540", old)]), None);
    assert_eq!(level(&[("2026-04-10", "3600", clean), ("2026-07-01", "3490", old)]), Some(Level::Watch));
    assert_eq!(level(&[("2026-04-10", "3600", clean), ("2026-09-01", "3390", old)]), Some(Level::Alarm));
    // A slow engine: 60 of 1800 rpm are 3 %.
    assert_eq!(level(&[("2026-04-10", "1800", clean), ("2026-07-01", "1740", old)]), Some(Level::Watch));
    assert_eq!(level(&[("2026-04-10", "1800", clean), ("2026-07-01", "1700", old)]), Some(Level::Alarm));
    // The order in the file does not matter; another propeller does not count; nor does a single reading.
    assert_eq!(level(&[("2026-09-01", "3390", old), ("2026-04-01", "3600", clean)]), Some(Level::Alarm));
    assert_eq!(level(&[("2025-04-10", "3900", other), ("2026-09-01", "3390", old)]), None);
    assert_eq!(level(&[("2026-09-01", "3390", old)]), None);
    assert_eq!(logs::history(&Job::default()), logs::History::default());
    // A scrub brings it back.
    let rows = [("2026-04-10", "3600", clean), ("2026-07-01", "3390", old), ("2026-07-05", "3580", clean)];
    assert_eq!(level(&rows), None);
    let history = logs::history(&job(&rows[..2]));
    assert_eq!(history.rows.len(), 2);
    assert!((history.rows[0].since_scrub.unwrap() - 7.0 * 86_400.0).abs() < 1.0);
    let alarm = history.alarm.unwrap();
    assert!((alarm.fallen - 210.0).abs() < 1e-6 && alarm.message.contains("210 rpm"), "{}", alarm.message);
    assert!(alarm.help.contains("clean hull and propeller"));
    // Clean and still down: not growth.
    let alarm = logs::history(&job(&[("2026-04-10", "3600", clean), ("2026-07-01", "3300", clean)])).alarm.unwrap();
    assert!(alarm.help.contains("cable"));
    // Another tachometer, and no clean reading: said.
    let history = logs::history(&job(&[("2026-04-10", "3600", "by = \"optical\"\n"), ("2026-07-01", "3300", "")]));
    let codes: Vec<&str> = history.doubts.iter().map(|d| d.code).collect();
    assert_eq!(codes, ["other-tachometer", "clean-unknown"]);
}
