//! `fairwake trial`: logs in, readings into the job file, nothing else disturbed.

use std::fs;
use std::path::PathBuf;

use crate::command::{fairwake, json, root, said};
use crate::schema;

const LOG: &str = "examples/logs/guillemot-2026-09-13.csv";

/// A copy of Guillemot with a remark and a blank line more, and where it lies.
fn copy() -> (tempfile::TempDir, PathBuf, String) {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let file = folder.path().join("guillemot.toml");
    let text = fs::read_to_string(root().join("examples/guillemot.toml")).expect("the example");
    let text = text.replace("[engine]", "# the owner's own remark\n\n[engine]   # and another");
    fs::write(&file, &text).expect("written");
    (folder, file, text)
}

fn readings(text: &str) -> usize {
    text.lines().filter(|line| line.trim() == "[[reading]]").count()
}

#[test]
fn accepted_readings_go_to_the_end_and_nothing_else_changes() {
    let (folder, file, before) = copy();
    let name = file.to_str().expect("a plain path");
    let ask = ["trial", name, LOG, "--rpm-by", "display", "--full-throttle", "2", "--accept", "2,3", "--boats", "500"];
    let answer = json(&ask);
    let after = fs::read_to_string(&file).expect("there");
    let (old, new) = after.split_at(before.trim_end().len());
    assert_eq!(old, before.trim_end(), "what stood in the file is as it was, to the byte");
    assert_eq!(readings(new), 2);
    assert!(new.contains("full_throttle = true") && new.contains("by = \"display\""), "{new}");
    assert_eq!(answer["written"], name);
    assert_eq!(answer["readings"].as_array().map(Vec::len), Some(readings(&after)));
    assert_eq!(fs::read_dir(folder.path()).expect("a folder").count(), 1, "a temporary file was left behind");
    schema::check(&answer);

    // The same again: they are there already. The rest can still be added.
    let again = json(&ask);
    assert_eq!(again["written"], serde_json::Value::Null);
    assert_eq!(fs::read_to_string(&file).expect("there"), after);
    let rest = json(&["trial", name, LOG, "--rpm-by", "display", "--accept", "--boats", "500"]);
    let proposals = rest["proposals"].as_array().expect("proposals");
    let added = proposals.iter().filter(|proposal| proposal["accepted"] == true).count();
    assert_eq!(added, proposals.len() - 2, "{rest}");
}

#[test]
fn proposals_say_what_the_log_was_made_from() {
    let answer = json(&["trial", "examples/guillemot.toml", LOG, "--boats", "500"]);
    schema::check(&answer);
    assert_eq!(answer["logs"][0]["format"], "csv");
    let best = &answer["proposals"][1];
    assert_eq!(best["quality"], "good");
    // The log was made for 9.6 kn through the water at 2513 rpm, in 0.35 kn of current 7 degrees off the course.
    for (key, want, within) in [("engine_speed", 2513.0, 5.0), ("current", 0.35, 0.05)] {
        let got = best[key].as_f64().expect("a number");
        assert!((got - want).abs() < within, "{key}: {got}");
    }
    let speed = best["speed"]["middle"].as_f64().expect("a number");
    assert!((speed - 9.6).abs() < 0.06, "{speed}");
    assert_eq!(answer["written"], serde_json::Value::Null);
}

#[test]
fn seasons_and_the_growth_alarm() {
    let answer = json(&["trial", "examples/guillemot.toml", "--boats", "500"]);
    assert_eq!(answer["history"].as_array().map(Vec::len), Some(3));
    assert_eq!(answer["growth_alarm"]["level"], "alarm");
    // 2830 rpm clean in April, 2520 rpm in September.
    assert_eq!(answer["growth_alarm"]["fallen"], 310.0);
    schema::check(&answer);
}

#[test]
fn a_job_that_cannot_be_judged_still_takes_readings() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let file = folder.path().join("new.toml");
    fs::write(&file, "title = \"nameless\"\n").expect("written");
    let name = file.to_str().expect("a plain path");
    let answer = json(&["trial", name, LOG, "--accept"]);
    assert_eq!(answer["evidence"], serde_json::Value::Null);
    assert!(answer["missing"].as_array().is_some_and(|missing| !missing.is_empty()), "{answer}");
    assert!(readings(&fs::read_to_string(&file).expect("there")) > 1);
    schema::check(&answer);
}

#[test]
fn what_cannot_be_is_refused_and_nothing_is_written() {
    let (folder, file, before) = copy();
    let name = file.to_str().expect("a plain path").to_owned();
    let log = |file: &str, text: &[u8]| {
        let path = folder.path().join(file);
        fs::write(&path, text).expect("written");
        path.to_str().expect("a plain path").to_owned()
    };
    let nonsense = log("nonsense.csv", b"a,b\n1,2\n");
    let empty = log("empty.nmea", b"");
    let binary = log("picture.csv", &[0x89, b'P', b'N', b'G', 0, 1, 2, 255]);
    for (arguments, why) in [
        (vec![LOG, "--accept", "9"], "there is no proposed reading 9"),
        (vec![LOG, "--accept", "0"], "there is no proposed reading 0"),
        (vec![LOG, "--full-throttle", "77", "--accept"], "there is no proposed reading 77"),
        (vec!["--accept"], "no log was named"),
        (vec!["--accept", LOG], "logs stand before --accept"),
        (vec!["no-such-log.gpx", "--accept"], "there is no such file"),
        (vec!["examples", "--accept"], "it is a folder"),
        (vec![&nonsense, "--accept"], "nonsense.csv"),
        (vec![&empty, "--accept"], "empty"),
        (vec![&binary, "--accept"], "picture.csv"),
    ] {
        let said = said(&mut fairwake(&[&["trial", &name], &arguments[..]].concat()));
        assert!(said.starts_with("code 2\n--- out\n--- err\n"), "{arguments:?}: {said}");
        assert!(said.contains(why), "{arguments:?}: {said}");
        assert_eq!(fs::read_to_string(&file).expect("there"), before, "{arguments:?}");
    }
    let mut piped = fairwake(&["trial", "-", LOG, "--accept"]);
    assert!(said(piped.write_stdin(before.clone())).contains("cannot be added to"));
}

#[test]
fn a_log_cut_in_the_middle_of_a_line_is_still_read() {
    let (folder, file, _) = copy();
    let whole = fs::read(root().join(LOG)).expect("the example");
    let cut = folder.path().join("cut.csv");
    fs::write(&cut, &whole[..whole.len() / 2 + 7]).expect("written");
    let (job, log) = (file.to_str().expect("a plain path"), cut.to_str().expect("a plain path"));
    let answer = json(&["trial", job, log, "--boats", "500"]);
    assert!(answer["proposals"].as_array().is_some_and(|proposals| !proposals.is_empty()), "{answer}");
}
