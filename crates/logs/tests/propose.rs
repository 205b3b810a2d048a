use crate::help::*;
use job::{Document, Job, Source};
use logs::{Proposing, Quality, Settings};

const KITTIWAKE: &str = "# Kittiwake of Port Merrin\ntitle = \"Kittiwake\"   # kept\n\n[engine]\nkind   =  \"natural diesel\"\nrated_power = \"29 hp\"\n\n[propeller]\ndiameter = \"17 in\"\n\n[[reading]]\nlabel = \"by hand\"\nspeed = \"6 kn\"\n";

fn proposals() -> Vec<logs::Proposal> {
    let log = read("logs/merrin.nmea", nmea(&trial()).as_bytes()).unwrap();
    logs::trial(&[log], &Settings::default()).proposals
}

#[test]
fn readings_go_into_the_file_and_come_back_the_same() {
    let mut document = Document::parse(KITTIWAKE).unwrap();
    let proposals = proposals();
    for proposal in &proposals {
        document.append_reading(&proposal.reading).unwrap();
    }
    let text = document.to_string();
    assert!(text.starts_with(KITTIWAKE.trim_end()), "{text}");
    let read = Job::read(&text).unwrap();
    assert!(read.doubts.is_empty(), "{:?}", read.doubts);
    assert_eq!(read.job.readings.len(), 3);
    for (proposal, back) in proposals.iter().zip(&read.job.readings[1..]) {
        let mut back = back.clone();
        // Only the places in the file differ.
        let mut mine = proposal.reading.clone();
        for r in [&mut back, &mut mine] {
            for q in
                [&mut r.engine_speed, &mut r.speed, &mut r.depth, &mut r.fuel, &mut r.shaft_speed].into_iter().flatten()
            {
                q.at = 0..0;
            }
            r.speeds.iter_mut().for_each(|q| q.at = 0..0);
        }
        assert_eq!(mine, back);
        assert!(proposal.is_in(&read.job));
        // The mean in the file is the mean found, and its band the band found, to the digits written.
        let (speed, runs) = (back.speed.unwrap(), &proposal.runs);
        assert!((speed.middle - runs.speed).abs() < 0.006 * logs::KNOT);
        assert!((0.5 * (speed.high - speed.low) - runs.half).abs() < 0.006 * logs::KNOT);
        assert_eq!(speed.source, Some(Source::Gps));
    }
    assert!(!proposals[0].is_in(&Job::read(KITTIWAKE).unwrap().job));
}

#[test]
fn says_what_it_is_made_of() {
    let proposals = proposals();
    let first = &proposals[0];
    assert_eq!(first.quality, Quality::Good, "{:?}", first.doubts);
    assert!(first.full_throttle && !first.reading.full_throttle);
    assert!(first.reading.notes.as_deref().unwrap().starts_with("full throttle?"));
    assert!(first.at_full_throttle().full_throttle);
    assert!(!first.at_full_throttle().notes.unwrap().contains("full throttle?"));
    assert_eq!(first.reading.date.as_deref(), Some("2026-05-02"));
    assert_eq!(first.reading.engine_speed.as_ref().unwrap().source, Some(Source::Dashboard));
    assert!(first.why.contains("2 runs there and back") && first.why.contains("2900 rpm"), "{}", first.why);
    assert_eq!(first.reading.label.as_deref(), Some("merrin.nmea 10:00:00-10:04:34 UTC"));
    assert!((first.reading.depth.as_ref().unwrap().middle - 12.7).abs() < 1e-9);

    let display = Proposing { rpm_by: Source::Display, ..Proposing::default() };
    let settings = Settings { proposing: display, ..Settings::default() };
    let log = read("a.nmea", nmea(&trial()).as_bytes()).unwrap();
    let again = logs::trial(&[log], &settings).proposals;
    let turns = again[0].reading.engine_speed.as_ref().unwrap();
    assert_eq!(turns.source, Some(Source::Display));
    assert!((turns.high / turns.middle - 1.005).abs() < 1e-9);
}

#[test]
fn one_way_is_weak_and_says_so() {
    let log = read("a.csv", csv(&track(&[(200.0, 2900.0, 6.7, 40.0)], (0.5, 40.0))).as_bytes()).unwrap();
    let proposal = &logs::trial(&[log], &Settings::default()).proposals[0];
    assert_eq!(proposal.quality, Quality::Weak);
    assert!(proposal.doubts.iter().any(|d| d.code == "one-way"));
    // The whole current stays in it: ± 0.3 kn at the least.
    assert!(proposal.runs.half / logs::KNOT >= 0.3);
    assert_eq!(proposal.reading.speeds.len(), 1);
    // Fuel: 4.1 L/h of diesel at 840 kg/m³.
    assert!((proposal.reading.fuel.as_ref().unwrap().middle - 4.1e-3 * 840.0 / 3600.0).abs() < 1e-9);
}

#[test]
fn three_and_four_runs_and_broken_legs() {
    let leg = |seconds: f64, course: f64| (seconds, 2900.0, 6.7, course);
    let legs = [leg(100.0, 40.0), leg(100.0, 220.0), leg(100.0, 40.0), leg(100.0, 220.0)];
    for runs in 2..=4 {
        let log = read("a.csv", csv(&track(&legs[..runs], (0.5, 40.0))).as_bytes()).unwrap();
        let proposals = logs::trial(&[log], &Settings::default()).proposals;
        assert_eq!(proposals.len(), 1);
        assert_eq!(proposals[0].reading.speeds.len(), runs);
    }
    // Somebody's wake in the middle of the first leg.
    let mut moments = track(&[leg(200.0, 40.0), leg(120.0, 220.0)], (0.5, 40.0));
    for m in &mut moments[90..110] {
        m.ground -= 1.5;
    }
    let log = read("a.csv", csv(&moments).as_bytes()).unwrap();
    let proposals = logs::trial(&[log], &Settings::default()).proposals;
    assert_eq!(proposals.len(), 1, "{:?}", proposals.iter().map(|p| &p.why).collect::<Vec<_>>());
    assert_eq!(proposals[0].runs.stretches.len(), 2);
    assert!(proposals[0].runs.stretches[0].seconds > 140.0);
}

#[test]
fn other_settings_and_crossing_courses_are_not_paired() {
    let log = |legs: &[(f64, f64, f64, f64)]| read("a.csv", csv(&track(legs, (0.0, 0.0))).as_bytes()).unwrap();
    let paired = |legs: &[(f64, f64, f64, f64)]| {
        logs::trial(&[log(legs)], &Settings::default()).proposals.iter().any(|p| p.runs.stretches.len() > 1)
    };
    assert!(paired(&[(100.0, 2900.0, 6.7, 40.0), (100.0, 2920.0, 6.7, 240.0)]));
    assert!(!paired(&[(100.0, 2900.0, 6.7, 40.0), (100.0, 2800.0, 6.6, 220.0)]));
    assert!(!paired(&[(100.0, 2900.0, 6.7, 40.0), (100.0, 2900.0, 6.7, 130.0)]));
    assert!(!paired(&[(100.0, 2900.0, 6.7, 40.0), (100.0, 2900.0, 6.7, 250.0)]));
}

#[test]
fn a_log_name_cannot_break_the_file() {
    let log = read("x\"\n[[y]]\\ '''.csv", csv(&trial()).as_bytes()).unwrap();
    for proposal in logs::trial(&[log], &Settings::default()).proposals {
        let mut document = Document::parse(KITTIWAKE).unwrap();
        document.append_reading(&proposal.reading).unwrap();
        let job = Job::read(&document.to_string()).unwrap().job;
        assert_eq!(job.readings[1].label, proposal.reading.label);
    }
}
