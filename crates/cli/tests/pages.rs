//! The pages for the demo boats. Numbers follow the physics: look at every change before accepting it.

use crate::command::out;

fn page(arguments: &[&str]) -> String {
    let page = out(arguments);
    assert!(page.lines().all(|line| line.chars().count() <= 100), "too wide:\n{page}");
    page
}

#[test]
fn judge_kittiwake() {
    insta::assert_snapshot!(page(&["judge", "examples/kittiwake.toml"]));
}

#[test]
fn judge_gannet() {
    insta::assert_snapshot!(page(&["judge", "examples/gannet.toml"]));
}

#[test]
fn judge_razorbill() {
    insta::assert_snapshot!(page(&["judge", "examples/razorbill.toml"]));
}

#[test]
fn judge_turnstone_imperial() {
    insta::assert_snapshot!(page(&["judge", "examples/turnstone.toml", "--units", "imperial"]));
}

#[test]
fn try_kittiwake() {
    insta::assert_snapshot!(page(&["try", "examples/kittiwake.toml", "--pitch", "11 in"]));
}

#[test]
fn choose_gannet() {
    insta::assert_snapshot!(page(&["choose", "examples/gannet.toml", "--most", "6"]));
}

#[test]
fn diagnose_guillemot() {
    insta::assert_snapshot!(page(&["diagnose", "examples/guillemot.toml"]));
}

#[test]
fn trial_kittiwake() {
    insta::assert_snapshot!(page(&["trial", "examples/kittiwake.toml"]));
}

#[test]
fn trial_guillemot_with_a_log() {
    let log = "examples/logs/guillemot-2026-09-13.csv";
    insta::assert_snapshot!(page(&["trial", "examples/guillemot.toml", log, "--rpm-by", "display"]));
}

#[test]
fn survey_cormorant() {
    insta::assert_snapshot!(page(&["survey", "examples/cormorant.toml"]));
}

#[test]
fn survey_cormorant_imperial() {
    insta::assert_snapshot!(page(&["survey", "examples/cormorant.toml", "--units", "imperial"]));
}

#[test]
fn resistance_kittiwake() {
    insta::assert_snapshot!(page(&["resistance", "examples/kittiwake.toml"]));
}

#[test]
fn openwater_flat_faced() {
    let ask = ["openwater", "--series", "flat-faced", "--blades", "3", "--pitch-ratio", "0.8", "--area-ratio", "0.55"];
    insta::assert_snapshot!(page(&[&ask[..], &["--step", "0.1"]].concat()));
}
