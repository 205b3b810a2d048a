//! Single sentences, and the sentence parser as the oracle for what the reader makes of them.

use crate::help::*;
use logs::KNOT;

#[test]
fn published_sentences() {
    // Examples printed in the documentation of the sentences (gpsd NMEA notes, parser documentation).
    let rmc = "$GPRMC,225446,A,4916.45,N,12311.12,W,000.5,054.7,191194,020.3,E*68\n";
    let vtg = "$GPVTG,360.0,T,348.7,M,005.5,N,010.2,K*4E\n";
    let vhw = "$GPVHW,100.5,T,105.5,M,10.5,N,19.4,K*4F\n";
    let log = read("a.nmea", format!("{rmc}{vhw}").as_bytes()).unwrap();
    let sample = log.samples[0];
    // 1994-11-19T22:54:46Z
    assert_eq!(sample.time, 785_285_686.0);
    assert!((sample.over_ground.unwrap() - 0.5 * KNOT).abs() < 1e-7);
    assert!((sample.course.unwrap() - 54.7).abs() < 1e-4);
    assert!((sample.through_water.unwrap() - 10.5 * KNOT).abs() < 1e-9);
    let (lat, lon) = sample.position.unwrap();
    assert!((lat - (49.0 + 16.45 / 60.0)).abs() < 1e-9 && (lon + 123.0 + 11.12 / 60.0).abs() < 1e-9);
    // Without RMC's own speed (no fix any more), VTG's is taken.
    let rmc = sentence("GPRMC,225446,A,4916.45,N,12311.12,W,,,191194,020.3,E");
    let sum = |s: &str| s.trim_end().rsplit_once('*').map(|(body, _)| sentence(&body[1..])).unwrap();
    let log = read("a.nmea", format!("{rmc}{}", sum(vtg)).as_bytes()).unwrap();
    assert!((log.samples[0].over_ground.unwrap() - 5.5 * KNOT).abs() < 1e-6);
}

#[test]
fn engine_speeds() {
    let rmc = sentence("GPRMC,100000,A,5015.00,N,00430.00,W,6.0,40.0,020526,,");
    let with = |lines: &[&str]| {
        let rest: String = lines.iter().map(|l| sentence(l)).collect();
        read("a.nmea", format!("{rmc}{rest}").as_bytes()).unwrap()
    };
    let log = with(&["IIRPM,E,1,2418.2,10.5,A", "IIRPM,S,0,-930.0,10.5,A", "IIRPM,E,2,2400,,V"]);
    let sample = log.samples[0];
    assert_eq!(sample.engine_rpm, [None, Some(2418.2), None, None]);
    // A negative number is a direction of rotation.
    assert_eq!(sample.shaft_rpm, [Some(930.0), None, None, None]);
    let log =
        with(&["IIRPM,E,2,2400,,V", "IIRPM,E,9,2400,,A", "IIRPM,E,0,inf,,A", "IIRPM,E,0,99999,,A", "IIRPM,X,0,3,,A"]);
    assert_eq!(log.samples[0].rpm(), None);
    assert!(log.doubts.iter().any(|d| d.code == "rpm-not-valid"), "{:?}", log.doubts);
    assert_eq!((log.counts.refused, log.counts.implausible), (2, 1), "{:?}", log.examples);
}

#[test]
fn checksums_and_strange_sentences() {
    let rmc = sentence("GPRMC,100000,A,5015.00,N,00430.00,W,6.0,40.0,020526,,");
    let text = format!(
        "{rmc}$IIVHW,,T,,M,6.5,N,,K*00\n$IIVHW,,T,,M,6.5,N,12.0,K\n$PGRMC,A,1,2,3*00\n!AIVDM,1,1,,A,x,0*00\n$GPRMC,10\nhello\n$II\n{}",
        sentence("PGRMC,A,236.5,100,6378137.000")
    );
    let log = read("a.nmea", text.as_bytes()).unwrap();
    assert!((log.samples[0].through_water.unwrap() - 6.5 * KNOT).abs() < 1e-9);
    let whys: Vec<&str> = log.examples.iter().map(|e| e.why.as_str()).collect();
    assert_eq!(whys.iter().filter(|w| w.contains("checksum does not fit")).count(), 2, "{whys:?}");
    assert!(log.doubts.iter().any(|d| d.code == "no-checksum"));
    assert_eq!(log.counts.understood, 2);
    assert_eq!(log.counts.lines, 9);
    // The maker's own PGRMC is no RMC, and AIS is somebody else.
    assert_eq!(log.counts.unused, 2);
    assert_eq!(log.counts.refused, 5);
}

#[test]
fn what_the_sentence_parser_reads_is_what_arrives() {
    let mut dice = Dice(7);
    for _ in 0..500 {
        let (speed, course) = (dice.between(0.1, 60.0), dice.between(0.0, 359.9));
        let body = format!("GPRMC,{:02}{:02}{:02},A,5015.00,N,00430.00,W,{speed:.2},{course:.1},020526,,", 3, 14, 15);
        let line = sentence(&body);
        let nmea::ParseResult::RMC(oracle) = nmea::parse_str(line.trim_end()).unwrap() else { panic!() };
        let sample = read("a.nmea", line.as_bytes()).unwrap().samples[0];
        assert!((sample.over_ground.unwrap() - f64::from(oracle.speed_over_ground.unwrap()) * KNOT).abs() < 1e-9);
        assert!((sample.over_ground.unwrap() - speed * KNOT).abs() < 0.006 * KNOT);
        assert!(logs::turn(sample.course.unwrap(), course).abs() < 0.06);
    }
}

#[test]
fn days_that_are_told_late_or_end() {
    // Time before the date, and midnight between.
    let gga = |hms: &str| sentence(&format!("GPGGA,{hms},5015.00,N,00430.00,W,1,08,0.9,0,M,,M,,"));
    let text = gga("235958")
        + &sentence("IIVHW,,T,,M,6.5,N,12.0,K")
        + &sentence("GPRMC,235959,A,5015.00,N,00430.00,W,6.0,40.0,020526,,")
        + &gga("000000")
        + &sentence("IIVHW,,T,,M,6.6,N,12.0,K");
    let log = read("a.nmea", text.as_bytes()).unwrap();
    let day = START - 36_000.0;
    let times: Vec<f64> = log.samples.iter().map(|s| s.time - day).collect();
    assert_eq!(times, [86_398.0, 86_399.0, 86_400.0]);
    // No date at all.
    let log = read("a.nmea", (gga("100000") + &sentence("IIVHW,,T,,M,6.5,N,12.0,K")).as_bytes()).unwrap();
    assert!(log.doubts.iter().any(|d| d.code == "no-date"));
    assert_eq!(log.samples[0].time, 36_000.0);
    // Only a recorder's stamp.
    for stamp in ["1777716000.5 ", "1777716000500;N;", "2026-05-02T10:00:00.5Z ", "\\s:x,c:1777716000*00\\"] {
        let log = read("a.nmea", format!("{stamp}{}", sentence("IIVHW,,T,,M,6.5,N,12.0,K")).as_bytes()).unwrap();
        assert_eq!(log.samples[0].time.floor(), START, "{stamp}");
    }
}
