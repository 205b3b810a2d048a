use crate::help::*;
use logs::{Format, KNOT, Settings, Trial};

fn both(trial: &Trial) {
    let sets: Vec<_> = trial.proposals.iter().map(|p| &p.runs).collect();
    assert_eq!(sets.len(), 2, "{:#?}", trial.proposals.iter().map(|p| &p.why).collect::<Vec<_>>());
    for (set, (water, rpm)) in sets.iter().zip([(6.7, 2900.0), (6.0, 2300.0)]) {
        assert_eq!(set.stretches.len(), 2);
        // The log's own rounding: speeds to 0.01 kn, positions to 0.0001 minutes or 1e-7 degrees.
        assert!((set.speed / KNOT - water).abs() < 0.01, "{}", set.speed / KNOT);
        assert!((set.current.unwrap() / KNOT - 0.4).abs() < 0.02, "{:?}", set.current);
        if let Some(found) = set.rpm {
            assert!((found - rpm).abs() < 0.5, "{found}");
        }
    }
}

#[test]
fn all_formats_tell_the_same_trial() {
    let moments = trial();
    for (format, text) in [
        (Format::Nmea, nmea(&moments)),
        (Format::Csv, csv(&moments)),
        (Format::SignalK, signalk(&moments)),
        (Format::Gpx, gpx(&moments)),
    ] {
        let log = read("trial.txt", text.as_bytes()).unwrap();
        assert_eq!(log.format, format);
        assert_eq!(log.samples.len(), moments.len(), "{format:?}");
        assert_eq!(log.counts.refused, 0, "{:?}", log.examples);
        assert_eq!(log.counts.bytes, text.len() as u64);
        for (sample, moment) in log.samples.iter().zip(&moments) {
            assert!((sample.time - moment.t).abs() < 1e-6);
            if format != Format::Gpx {
                assert!((sample.over_ground.unwrap() - moment.ground * KNOT).abs() < 0.006 * KNOT);
                assert!((sample.through_water.unwrap() - moment.water * KNOT).abs() < 0.006 * KNOT);
                assert!((sample.rpm().unwrap() - moment.rpm).abs() < 0.5);
                assert!(logs::turn(sample.course.unwrap(), moment.course).abs() < 0.06);
            }
            let depth = if format == Format::SignalK { 12.4 } else { 12.7 };
            assert!(sample.depth.is_none_or(|d| (d - depth).abs() < 1e-9));
            // 4.1 L/h
            assert!(sample.fuel.is_none_or(|f| (f * 3.6e6 - 4.1).abs() < 1e-5));
        }
        let trial = logs::trial(&[log], &Settings::default());
        both(&trial);
        assert!(trial.proposals[0].full_throttle == (format != Format::Gpx) && !trial.proposals[1].full_throttle);
    }
}

#[test]
fn a_track_and_an_engine_log_are_joined() {
    let moments = trial();
    let engine: String = std::iter::once("time (s),rpm\n".to_owned())
        .chain(moments.iter().map(|m| format!("{},{}\n", m.t, m.rpm)))
        .collect();
    let logs = [read("t.gpx", gpx(&moments).as_bytes()).unwrap(), read("e.csv", engine.as_bytes()).unwrap()];
    let trial = logs::trial(&logs, &Settings::default());
    both(&trial);
    assert!(trial.proposals.iter().all(|p| p.runs.rpm.is_some()));
}

#[test]
fn gpx_speed_and_course_are_taken_where_they_stand() {
    let text = r#"<gpx xmlns:x="y"><trk><trkseg>
        <trkpt lat="50.1" lon="-4.2"><time>2026-05-02T10:00:00Z</time><extensions><x:speed>3.5</x:speed><x:course>91</x:course></extensions></trkpt>
        <trkpt lat="50.1" lon="-4.2"><time>2026-05-02T10:00:01+00:00</time><speed>3.6</speed></trkpt>
        <trkpt lat="50.1" lon="-4.2"></trkpt><trkpt lat="50.1" lon="-4.2"/>
        <trkpt lat="200" lon="-4.2"><time>2026-05-02T10:00:02Z</time></trkpt>
        </trkseg></trk></gpx>"#;
    let log = read("x.gpx", text.as_bytes()).unwrap();
    assert_eq!(log.samples.len(), 2);
    assert_eq!((log.samples[0].over_ground, log.samples[1].over_ground), (Some(3.5), Some(3.6)));
    assert!((log.samples[0].course.unwrap() - 91.0).abs() < 1e-9);
    assert_eq!((log.counts.lines, log.counts.understood, log.counts.refused, log.counts.implausible), (5, 2, 2, 1));
    assert!(log.doubts.is_empty(), "{:?}", log.doubts);
}

#[test]
fn headers_of_tables() {
    let good = |text: &str| read("a.csv", text.as_bytes()).unwrap_or_else(|e| panic!("{text}: {e}")).samples[0];
    let kn = |v: f64| (v * KNOT * 1e9).round();
    let near = |v: Option<f64>| (v.unwrap() * 1e9).round();
    assert_eq!(near(good("time (s),speed (kn)\n0,6.5\n").over_ground), kn(6.5));
    assert_eq!(near(good("time_s;SOG_kn;rpm\n0;6,5;2900\n").over_ground), kn(6.5));
    assert_eq!(near(good("Time,Speed over ground\ns,kn\n0,6.5\n").over_ground), kn(6.5));
    assert_eq!(
        near(good("# made by hand\n\nsea trial of 2 May\ntime (min)\tspeed (km/h)\n1\t12.038\n").over_ground),
        kn(6.5)
    );
    assert_eq!(
        near(good("date,time,\"speed, gps (mph)\"\n2026-05-02,10:00:00,\"10.0\"\n").over_ground),
        (4.4704e9f64).round()
    );
    let two = good(
        "timestamp,rpm port,rpm stbd,engine 3 rpm,prop rpm,course (rad)\n1777716000000,2900,2880,5,1115,3.14159265358979\n",
    );
    assert_eq!((two.engine_rpm[0], two.engine_rpm[1], two.engine_rpm[2]), (Some(2900.0), Some(2880.0), Some(5.0)));
    assert_eq!((two.shaft_rpm[0], two.time), (Some(1115.0), START));
    assert!((two.course.unwrap() - 180.0).abs() < 1e-9);
    // 50 ft and 1.3 US gal/h
    let feet = good("time (s),depth (ft),fuel rate (US gal/h),engineSpeed (Hz)\n3,50,1.3,48\n");
    assert!((feet.depth.unwrap() - 15.24).abs() < 1e-12 && (feet.engine_rpm[0].unwrap() - 2880.0).abs() < 1e-9);
    assert!((feet.fuel.unwrap() - 1.3 * 231.0 * 0.0254f64.powi(3) / 3600.0).abs() < 1e-15);

    for (text, code, says) in [
        ("time (s),speed\n0,6.5\n", "needs-unit", "speed (kn)"),
        ("time,speed (kn)\n0,6.5\n1,6.5\n", "needs-unit", "time (s)"),
        ("time (s),speed (furlongs)\n0,6.5\n", "unknown-unit", "kn, m/s"),
        ("speed (kn),rpm\n6.5,2900\n", "no-time-column", "time (s)"),
        ("time (s),wind speed (kn)\n0,12\n", "no-columns", "rpm"),
        ("time (s),speed (kn)\n", "no-rows", "again"),
        ("time,speed (kn)\n02/05/2026 10:00,6.5\n", "time-form", "2026-05-02T10:11:12Z"),
        ("a,b\nc,d\n", "no-header", "time (s)"),
        ("time (s),speed (kn)\nx,y\n", "nothing-used", "right file"),
    ] {
        let refusal = read("a.csv", text.as_bytes()).unwrap_err();
        assert_eq!(refusal.code, code, "{text}: {refusal}");
        assert!(refusal.help.contains(says), "{refusal}");
    }
}

#[test]
fn signalk_keeps_to_its_own_vessel() {
    let line = |context: &str, path: &str, value: &str| {
        format!(
            "{{\"context\":\"{context}\",\"updates\":[{{\"timestamp\":\"2026-05-02T10:00:00Z\",\"values\":[{{\"path\":\"{path}\",\"value\":{value}}}]}}]}}\n"
        )
    };
    let sog = "navigation.speedOverGround";
    let own = "vessels.urn:mrn:signalk:uuid:1";
    let hello = format!("{{\"name\":\"x\",\"self\":\"{own}\"}}\n");
    let text =
        hello + &line("vessels.urn:mrn:imo:mmsi:2", sog, "9.0") + &line(own, sog, "3.0") + &line(own, sog, "null");
    let log = read("a.jsonl", text.as_bytes()).unwrap();
    assert_eq!(log.samples[0].over_ground, Some(3.0));
    assert_eq!(log.doubts[0].code, "other-vessels");
    // Without a word on which vessel is ours, the one with an engine is.
    let text = line("vessels.urn:mrn:imo:mmsi:2", sog, "9.0")
        + &line(own, "propulsion.port.revolutions", "48")
        + &line(own, sog, "3.0");
    let log = read("a.jsonl", text.as_bytes()).unwrap();
    assert_eq!((log.samples[0].over_ground, log.samples[0].engine_rpm[0]), (Some(3.0), Some(2880.0)));
}

#[test]
fn progress_reaches_the_end() {
    let text = nmea(&trial()).repeat(40);
    let mut told = Vec::new();
    let size = Some(text.len() as u64);
    let options = logs::Options::default();
    logs::read("a", &mut text.as_bytes(), size, &options, &mut |done, of| told.push((done, of))).unwrap();
    assert!(told.windows(2).all(|w| w[0].0 < w[1].0) && told.len() > 2, "{told:?}");
    assert_eq!(told.last(), Some(&(text.len() as u64, size)));
}
