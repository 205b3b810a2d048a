//! Logs as they come: cut off, shuffled, doubled, garbled, misnamed, packed, empty.

use crate::help::*;
use logs::{Format, KNOT, Settings};
use proptest::prelude::*;

fn all() -> [(Format, String); 4] {
    let moments = trial();
    [
        (Format::Nmea, nmea(&moments)),
        (Format::Csv, csv(&moments)),
        (Format::SignalK, signalk(&moments)),
        (Format::Gpx, gpx(&moments)),
    ]
}

#[test]
fn cut_off() {
    for (format, text) in all() {
        for part in [0.999, 0.9, 0.5] {
            let cut = &text.as_bytes()[..(text.len() as f64 * part) as usize];
            let log = read("trial", cut).unwrap();
            assert_eq!(log.format, format);
            assert!(log.samples.len() as f64 > 0.98 * part * trial().len() as f64 - 2.0, "{format:?}");
            assert!(log.counts.refused <= 1, "{:?}", log.examples);
            if format == Format::Gpx {
                assert!(log.doubts.iter().any(|d| d.code == "cut" || d.code == "stopped"), "{:?}", log.doubts);
            } else if log.counts.refused == 1 {
                assert!(log.examples[0].why.contains("ends within"), "{:?}", log.examples);
            }
        }
    }
}

#[test]
fn shuffled_rows_come_back_in_order() {
    for (format, text) in all().into_iter().filter(|(f, _)| matches!(f, Format::Csv | Format::SignalK)) {
        let head = usize::from(format == Format::Csv);
        let mut lines: Vec<&str> = text.lines().collect();
        let mut dice = Dice(3);
        for at in (head + 1..lines.len()).rev() {
            lines.swap(at, head + (dice.next() % (at - head + 1) as u64) as usize);
        }
        let mixed = read("a", (lines.join("\n") + "\n").as_bytes()).unwrap();
        let straight = read("a", text.as_bytes()).unwrap();
        assert_eq!(mixed.samples, straight.samples);
        assert!(mixed.doubts.iter().any(|d| d.code == "out-of-order"));
    }
}

#[test]
fn shuffled_sentences_warn() {
    let text = nmea(&trial());
    let mut lines: Vec<&str> = text.lines().collect();
    let mut dice = Dice(5);
    for at in (1..lines.len()).rev() {
        lines.swap(at, (dice.next() % (at + 1) as u64) as usize);
    }
    let log = read("a", (lines.join("\n") + "\n").as_bytes()).unwrap();
    let doubt = log.doubts.iter().find(|d| d.code == "out-of-order").unwrap();
    assert!(doubt.help.contains("uncertain"), "{doubt}");
    // Whatever is proposed from it, no engine speed that was never run may come out as steady.
    for proposal in logs::trial(&[log], &Settings::default()).proposals {
        if let Some(rpm) = proposal.runs.rpm {
            assert!([2900.0, 2300.0, 1200.0].iter().any(|r: &f64| (r - rpm).abs() < 30.0), "{rpm}");
        }
    }
}

#[test]
fn doubled_logs_change_nothing() {
    for (format, text) in all() {
        let twice = match format {
            Format::Gpx => text.replace("</trkseg></trk></gpx>\n", "") + text.split_once("<trkseg>").unwrap().1,
            Format::Csv => text.clone() + text.split_once('\n').unwrap().1,
            _ => text.repeat(2),
        };
        let (once, twice) = (read("a", text.as_bytes()).unwrap(), read("a", twice.as_bytes()).unwrap());
        assert_eq!(once.samples.len(), twice.samples.len());
        assert!(
            twice.doubts.iter().any(|d| d.code == "out-of-order" && d.message.contains("once")),
            "{:?}",
            twice.doubts
        );
        let (a, b) = (logs::trial(&[once], &Settings::default()), logs::trial(&[twice], &Settings::default()));
        for (x, y) in a.proposals.iter().zip(&b.proposals) {
            assert!((x.runs.speed - y.runs.speed).abs() < 1e-6 && (x.runs.half - y.runs.half).abs() < 1e-6);
        }
    }
    let each: String = csv(&trial()).lines().flat_map(|l| [l, "\n", l, "\n"]).collect();
    let log = read("a.csv", each.as_bytes()).unwrap();
    assert!(log.counts.repeated as usize >= trial().len() - 2);
}

#[test]
fn values_that_cannot_be() {
    let mut text = csv(&trial());
    for bad in ["NaN", "inf", "-inf", "1e308", "-5", "abc", ""] {
        text += &format!("2026-05-02T11:00:00Z,2900,{bad},6.7,40,12,4\n");
    }
    text += "9999-99-99T11:00:00Z,1,1,1,1,1,1\n2026-05-02T11:00:00Z\n,,,,,,\n";
    let log = read("a.csv", text.as_bytes()).unwrap();
    assert_eq!(log.counts.implausible, 6, "{:?}", log.examples);
    assert_eq!(log.counts.refused, 3);
    assert!(log.samples.iter().all(|s| s.over_ground.is_none_or(|v| v.is_finite() && v < 4.0)));
    let huge = "time (s),rpm\n1e300,5\n-1e300,5\nnan,5\n1e9,5\n";
    assert_eq!(read("a.csv", huge.as_bytes()).unwrap().counts.refused, 3);
}

#[test]
fn single_outliers_do_not_break_a_run() {
    let mut moments = trial();
    for at in [20, 55, 90, 170, 200, 310] {
        moments[at].ground = 25.0;
        moments[at + 3].rpm = 0.0;
    }
    let trial = logs::trial(&[read("a", nmea(&moments).as_bytes()).unwrap()], &Settings::default());
    assert_eq!(trial.proposals.len(), 2);
    assert!((trial.proposals[0].runs.speed / KNOT - 6.7).abs() < 0.01);
    assert!(trial.proposals[0].runs.stretches[0].outliers >= 4);
}

#[test]
fn what_is_no_log_is_refused_by_name() {
    let png = [b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".as_slice(), &[0; 300]].concat();
    let utf16: Vec<u8> = "\u{feff}time,rpm\n".encode_utf16().flat_map(u16::to_le_bytes).collect();
    let cases: [(&[u8], &str); 11] = [
        (b"", "empty"),
        (b" \r\n \n", "empty"),
        (&png, "binary"),
        (&[0; 5000], "binary"),
        (&utf16, "utf-16"),
        (b"\x1f\x8b\x08 whatever", "packed"),
        (b"PK\x03\x04 whatever", "packed"),
        (b"<?xml version=\"1.0\"?><kml></kml>", "not-gpx"),
        (b"{\"a\":1}\n{\"a\":2}\n", "not-signalk"),
        (b"Dear skipper,\nthank you for the nice day.\n", "no-header"),
        (b"Call me\nlater\n", "no-log"),
    ];
    for (bytes, code) in cases {
        let refusal = read("x.csv", bytes).unwrap_err();
        assert_eq!(refusal.code, code, "{refusal}");
        assert!(!refusal.help.is_empty());
    }
    assert_eq!(read("a.gpx", b"<gpx></gpx>").unwrap_err().code, "nothing-used");
}

#[test]
fn the_name_does_not_decide() {
    let log = read("trial.csv", nmea(&trial()).as_bytes()).unwrap();
    assert_eq!(log.format, Format::Nmea);
    assert_eq!(log.doubts[0].code, "wrong-name");
    // Unless it is told.
    assert_eq!(read_as(Format::Csv, nmea(&trial()).as_bytes()).unwrap_err().code, "no-header");
}

#[test]
fn lines_without_end_are_bounded() {
    let mut text = nmea(&trial()).into_bytes();
    text.extend(std::iter::repeat_n(b'x', 3_000_000));
    text.push(b'\n');
    text.extend(nmea(&trial()).into_bytes());
    let log = read("a", &text).unwrap();
    assert_eq!(log.counts.refused, 1);
    assert!(log.examples[0].text.len() < 200);
    let mut text = gpx(&trial()).replace("</trkseg></trk></gpx>\n", "").into_bytes();
    text.extend(std::iter::repeat_n(b'x', 9_000_000));
    let log = read("a", &text).unwrap();
    assert!(log.doubts.iter().any(|d| d.code == "stopped" && d.message.contains("megabyte")), "{:?}", log.doubts);
    assert_eq!(log.samples.len(), trial().len());
}

#[test]
fn many_days_stay_within_memory() {
    // Ten days at one row each 2 s, then shuffled by halves.
    let rows: Vec<String> = (0..432_000).map(|t| format!("{},2900,6.5\n", 1_777_716_000 + 2 * t)).collect();
    let text = "time (s),rpm,speed (kn)\n".to_owned() + &rows[216_000..].concat() + &rows[..216_000].concat();
    let log = read("a.csv", text.as_bytes()).unwrap();
    assert!(log.samples.len() <= 1 << 18 && log.bin == 4, "{} {}", log.samples.len(), log.bin);
    assert!(log.samples.windows(2).all(|w| w[0].time < w[1].time));
    let trial = logs::trial(&[log], &Settings::default());
    assert_eq!(trial.stretches.len(), 1);
    assert!((trial.stretches[0].seconds - 864_000.0).abs() < 20.0);
}

/// Everything that is made of a log has to be finite and in order, whatever the log was.
fn sound(bytes: &[u8], format: Option<Format>) {
    let read = match format {
        None => read("garbage", bytes),
        Some(format) => read_as(format, bytes),
    };
    let log = match read {
        Ok(log) => log,
        Err(refusal) => {
            assert!(!refusal.message.is_empty() && !refusal.help.is_empty());
            return;
        }
    };
    for pair in log.samples.windows(2) {
        assert!(pair[0].time <= pair[1].time);
    }
    for s in &log.samples {
        let values = [s.over_ground, s.course, s.through_water, s.depth, s.fuel, s.position.map(|p| p.0 + p.1)];
        let rpm = s.engine_rpm.iter().chain(&s.shaft_rpm);
        assert!(s.time.is_finite() && values.iter().chain(rpm).flatten().all(|v| v.is_finite()), "{s:?}");
    }
    let trial = logs::trial(&[log], &Settings::default());
    for p in &trial.proposals {
        assert!(p.runs.speed.is_finite() && p.runs.half.is_finite() && p.runs.scatter.is_finite(), "{p:?}");
        assert!(p.reading.speeds.iter().all(|q| q.middle.is_finite()));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn garbage(bytes in proptest::collection::vec(any::<u8>(), 0..2000), kind in 0usize..5) {
        sound(&bytes, Format::ALL.get(kind).copied());
    }

    #[test]
    fn logs_with_damage(which in 0usize..4, seed in any::<u64>(), hits in 1usize..60) {
        let (format, text) = &all()[which];
        let mut bytes = text.clone().into_bytes();
        bytes.truncate(30_000);
        let mut dice = Dice(seed);
        for _ in 0..hits {
            let at = (dice.next() % bytes.len() as u64) as usize;
            match dice.next() % 4 {
                0 => bytes[at] = dice.next() as u8,
                1 => { bytes.remove(at); }
                2 => {
                    let to = (at + (dice.next() % 300) as usize).min(bytes.len());
                    let piece = bytes[at..to].to_vec();
                    let put = (dice.next() % bytes.len() as u64) as usize;
                    bytes.splice(put..put, piece);
                }
                _ => bytes[at] = b"0123456789.,-eN\n<>\"{}*$"[(dice.next() % 23) as usize],
            }
        }
        sound(&bytes, None);
        sound(&bytes, Some(*format));
    }
}
