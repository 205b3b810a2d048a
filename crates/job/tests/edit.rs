//! Saving: one thing changes, everything else stays to the byte.

use job::*;

/// Lines that differ, as (old, new); the same number of lines is expected.
fn changed<'a>(old: &'a str, new: &'a str) -> Vec<(&'a str, &'a str)> {
    assert_eq!(old.lines().count(), new.lines().count(), "{new}");
    old.lines().zip(new.lines()).filter(|(a, b)| a != b).collect()
}

#[test]
fn untouched_is_unchanged() {
    for text in [crate::FULL, "", "# only a remark", "\r\n[boat]\r\nkind = \"sailing\"\t# yes\r\n\r\n", "a = 1"] {
        assert_eq!(Document::parse(text).unwrap().to_string(), text);
    }
}

#[test]
fn a_value_changes_and_its_remark_stays() {
    let mut document = Document::parse(crate::FULL).unwrap();
    document.set("boat.displacement", "6.8 t (weighed)").unwrap();
    document.set("drive.reduction", "2.4").unwrap();
    document.set("propeller.blades", "4").unwrap();
    document.set("reading.0.speed", "[\"6.6 kn\", \"6.2 kn\"]").unwrap();
    document.set("reading.1.state.propeller.pitch", "10 in").unwrap();
    document.set("propeller.pitch", "12 in").unwrap();
    document.set("call.changed", "[\"nothing\"]").unwrap();
    let new = document.to_string();
    assert_eq!(
        changed(crate::FULL, &new),
        [
            ("changed = [\"new propeller\", \"bottom painted\"]", "changed = [\"nothing\"]"),
            (
                "displacement = \"6.5 t ± 0.4 (weighed)\" # by the yard's lift",
                "displacement = \"6.8 t (weighed)\" # by the yard's lift"
            ),
            ("reduction = 2.6", "reduction = 2.4"),
            ("pitch = { value = \"11 in\", spread = \"0.25 in\", source = \"measured\" }", "pitch = \"12 in\""),
            ("blades = 3", "blades = 4"),
            ("speed = [\"6.5 kn\", \"6.1 kn\"]", "speed = [\"6.6 kn\", \"6.2 kn\"]"),
            ("pitch = \"9 in\"", "pitch = \"10 in\""),
        ]
    );
    assert_eq!(document.get("boat.displacement").as_deref(), Some("\"6.8 t (weighed)\""));
    assert_eq!(document.get("reading.1.state.propeller.pitch").as_deref(), Some("\"10 in\""));
    assert_eq!(document.get("reading.9.speed"), None);
    Job::read(&new).unwrap();
}

#[test]
fn what_is_missing_is_added() {
    let old = "# Kittiwake\n\n[boat] # the hull\nkind = \"sailing\"\n\n[[reading]]\nengine_speed = \"2900 rpm\"\n";
    let mut document = Document::parse(old).unwrap();
    document.set("boat.beam", "3.1 m").unwrap();
    document.set("place.water", "fresh").unwrap();
    document.set("reading.0.state.growth", "clean").unwrap();
    document.set("reading.1.engine_speed", "2500 rpm").unwrap();
    document.set("reading.1.full_throttle", "true").unwrap();
    let new = document.to_string();
    for line in old.lines() {
        assert!(new.contains(line), "{line} was lost:\n{new}");
    }
    let job = Job::read(&new).unwrap_or_else(|p| panic!("{new}\n{p:?}")).job;
    assert!(job.boat.beam.is_some());
    assert_eq!(job.place.fresh, Some(true));
    assert_eq!(job.readings.len(), 2);
    assert_eq!(job.readings[0].state.growth, Some(Growth::Clean));
    assert!(job.readings[1].full_throttle);
    assert!(document.remove("boat.beam"));
    assert!(!document.remove("boat.beam"));
    assert!(document.remove("reading.1"));
    assert!(document.remove("place"));
    assert!(document.remove("reading.0.state"));
    assert_eq!(document.to_string(), old);
}

#[test]
fn an_empty_file_can_be_filled() {
    let mut document = Document::parse("").unwrap();
    document.set("title", "Kittiwake").unwrap();
    document.set("propeller.diameter", "16 in").unwrap();
    document.set("reading.0.speed", "6 kn").unwrap();
    let job = Job::read(&document.to_string()).unwrap().job;
    assert_eq!(job.title, "Kittiwake");
    assert!(job.propeller.diameter.is_some() && job.readings[0].speed.is_some());
}

#[test]
fn wrong_values_are_refused_and_change_nothing() {
    let mut document = Document::parse(crate::FULL).unwrap();
    for (path, value, code, marked) in [
        ("propeller.pitch", "11", "needs-unit", "11"),
        ("propeller.pitch", "11 kg", "wrong-unit", "kg"),
        ("propeller.pitch", "{ value = ", "wrong-type", ""),
        ("propeller.blades", "many", "wrong-type", ""),
        ("propeller.blades", "9", "out-of-range", "9"),
        ("propeller.blades", "3\nhand = \"left\"", "wrong-type", ""),
        ("boat.kind", "boot", "unknown-choice", "boot"),
        ("drive.reduction", "26", "out-of-range", "26"),
        ("propeller.colour", "red", "unknown-key", ""),
        ("pitch", "11 in", "unknown-key", ""),
        ("propeller", "16 x 11", "unknown-key", ""),
        ("reading.7.speed", "6 kn", "no-place", ""),
        ("title.0", "6 kn", "no-place", ""),
        ("", "6 kn", "unknown-key", ""),
    ] {
        let problems = document.set(path, value).unwrap_err();
        assert_eq!(problems[0].code, code, "{path} {value}: {problems:?}");
        assert!(value[problems[0].span.clone()].contains(marked), "{path} {value}: {problems:?}");
    }
    assert_eq!(document.to_string(), crate::FULL);
    let help = document.set("pitch", "11 in").unwrap_err()[0].help.clone().unwrap();
    assert_eq!(
        help,
        "did you mean propeller.pitch, port.propeller.pitch, starboard.propeller.pitch, order.pitch, receipt.pitch, reading.state.propeller.pitch, survey.design.pitch or survey.blade.section.pitch?"
    );
}

#[test]
fn a_reading_is_appended_and_nothing_else_moves() {
    let trial = Job::read("[[reading]]\nlabel = \"after\"\nfull_throttle = true\nengine_speed = \"3 550 rpm\"\nby = \"optical\"\nspeed = [\"7.1 kn\", \"6.8 kn\"]\n[reading.state]\nsince_scrub = \"1 days\"\n").unwrap();
    let reading = &trial.job.readings[0];
    for old in [crate::FULL, "", "[boat]\nkind = \"sailing\"", "# at the end\r\n[boat]\r\nkind = \"sailing\" # yes\r\n"]
    {
        let mut document = Document::parse(old).unwrap();
        document.append_reading(reading).unwrap();
        let new = document.to_string();
        assert!(new.starts_with(old.trim_end()), "{new}");
        assert_eq!(new.contains('\r'), old.contains('\r'));
        assert!(
            !new.replace("\r\n", "").contains('\r') && (!old.contains('\r') || !new.replace("\r\n", "").contains('\n'))
        );
        let job = Job::read(&new).unwrap().job;
        let last = job.readings.last().unwrap();
        assert_eq!(last.label, reading.label);
        assert_eq!(
            last.engine_speed.as_ref().map(|q| (q.middle, q.source)),
            reading.engine_speed.as_ref().map(|q| (q.middle, q.source))
        );
        assert_eq!(last.speeds.len(), 2);
        assert!(last.state.since_scrub.is_some());
    }
    let mut inline = Document::parse("reading = [{ speed = \"6 kn\" }]\n").unwrap();
    inline.append_reading(reading).unwrap();
    assert_eq!(Job::read(&inline.to_string()).unwrap().job.readings.len(), 2);
    assert!(Document::parse("reading = 3").unwrap().append_reading(reading).is_err());
    assert!(Document::parse("[boat\n").is_err());
}
