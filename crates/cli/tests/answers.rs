//! The JSON contract: names, units, order, exit codes.

use crate::command::{fairwake, json};
use crate::schema;

const KITTIWAKE: &str = "examples/kittiwake.toml";

fn is_band(value: &serde_json::Value, unit: &str) {
    let number = |key: &str| value[key].as_f64().unwrap_or_else(|| panic!("{key} in {value}"));
    assert!(number("low") <= number("middle") && number("middle") <= number("high"), "{value}");
    assert_eq!(value["unit"], unit);
}

fn is_chances(verdict: &serde_json::Value) {
    let sum: f64 = ["over_pitched", "right", "under_pitched"].iter().filter_map(|key| verdict[key].as_f64()).sum();
    assert!((sum - 1.0).abs() < 1e-9, "{verdict}");
}

#[test]
fn judge_names_what_was_promised() {
    let answer = json(&["judge", KITTIWAKE]);
    assert_eq!(answer["schema"], "fairwake/1");
    assert_eq!(answer["command"], "judge");
    is_band(&answer["full_throttle"]["engine_speed"], "rpm");
    is_band(&answer["full_throttle"]["speed"], "kn");
    assert!(answer["full_throttle"]["governed"].as_f64().is_some_and(|p| (0.0..=1.0).contains(&p)));
    is_chances(&answer["verdict"]);
    schema::check(&answer);
}

#[test]
fn try_gives_before_after_and_difference() {
    let answer = json(&["try", KITTIWAKE, "--pitch", "11 in"]);
    assert_eq!(answer["command"], "try");
    for side in ["before", "after"] {
        is_band(&answer[side]["full_throttle"]["engine_speed"], "rpm");
        is_chances(&answer[side]["verdict"]);
    }
    is_band(&answer["difference"]["engine_speed"], "rpm");
    let faster = answer["difference"]["engine_speed"]["middle"].as_f64().expect("a number");
    assert!(faster > 0.0, "less pitch frees the engine: {faster}");
    schema::check(&answer);
}

#[test]
fn choose_gives_a_shortlist_with_the_propeller_fitted() {
    let answer = json(&["choose", KITTIWAKE, "--most", "5", "--boats", "1000"]);
    let list = answer["shortlist"].as_array().expect("a list");
    assert_eq!(list.len(), 5);
    assert!(list.iter().any(|candidate| candidate["step"] == "leave"), "{answer}");
    is_band(&list[0]["full_throttle"]["engine_speed"], "rpm");
    schema::check(&answer);
    let towing = json(&["choose", KITTIWAKE, "--duty", "tow", "--most", "1", "--boats", "1000"]);
    assert_eq!(towing["duty"], "tow");
    is_band(&towing["shortlist"][0]["tow_pull"], "N");
}

#[test]
fn resistance_rises_with_speed() {
    let answer = json(&["resistance", KITTIWAKE, "--boats", "1000"]);
    let rows = answer["rows"].as_array().expect("rows");
    let middles: Vec<f64> = rows.iter().filter_map(|row| row["resistance"]["middle"].as_f64()).collect();
    assert!(middles.len() > 5 && middles.windows(2).all(|pair| pair[0] < pair[1]), "{middles:?}");
    schema::check(&answer);
}

#[test]
fn openwater_rows_and_reynolds_number() {
    let ask = ["openwater", "--series", "b", "--blades", "4", "--pitch-ratio", "1", "--area-ratio", "0.55"];
    let own = json(&ask);
    let first = &own["rows"][0];
    let keys: Vec<&String> = first.as_object().expect("an object").keys().collect();
    assert_eq!(keys, ["advance_ratio", "efficiency", "thrust_coefficient", "torque_coefficient"]);
    assert_eq!(own["reynolds"], 2e6);
    schema::check(&own);

    let at = |reynolds: &str| json(&[&ask[..], &["--reynolds", reynolds]].concat());
    assert_eq!(own["rows"], at("2e6")["rows"], "the series' own Reynolds number is 2e6");
    assert_ne!(own["rows"], at("2e7")["rows"]);

    let steps = json(&[&ask[..], &["--from", "0.1", "--to", "0.5", "--step", "0.1"]].concat());
    let rows = steps["rows"].as_array().expect("rows");
    assert_eq!(rows.len(), 5);
    assert_eq!(rows[4]["advance_ratio"], 0.5);
}

#[test]
fn openwater_takes_a_job_and_lengths() {
    let of_job = json(&["openwater", KITTIWAKE, "--series", "flat-faced", "--area-ratio", "0.55"]);
    assert_eq!(of_job["pitch_ratio"], 14.0 / 17.0);
    assert_eq!(of_job["series"], "flat-faced");
    let ask = ["openwater", "--blades", "3", "--area-ratio", "0.5", "--diameter", "400 mm", "--pitch", "300 mm"];
    assert!((json(&ask)["pitch_ratio"].as_f64().expect("a number") - 0.75).abs() < 1e-12);
}

#[test]
fn sources_name_every_method_with_its_trust() {
    let answer = json(&["sources"]);
    for method in answer["methods"].as_array().expect("methods") {
        for key in ["name", "quantity", "formula", "range", "error", "source", "trust"] {
            assert!(method[key].as_str().is_some_and(|text| !text.trim().is_empty()), "{key} of {method}");
        }
    }
    schema::check(&answer);
    let few = json(&["sources", "Holtrop"]);
    assert!(few["methods"].as_array().map(Vec::len) < answer["methods"].as_array().map(Vec::len));
}

#[test]
fn the_same_seed_gives_the_same_answer() {
    let ask = ["judge", KITTIWAKE, "--boats", "500"];
    assert_eq!(json(&ask), json(&ask));
    assert_ne!(json(&ask), json(&[&ask[..], &["--seed", "2"]].concat()));
}

#[test]
fn fail_on_sets_the_exit_code_and_nothing_else() {
    let code = |arguments: &[&str], code| {
        let assert = fairwake(arguments).assert().code(code);
        assert!(!assert.get_output().stdout.is_empty());
    };
    code(&["judge", KITTIWAKE, "--fail-on", "over-pitched"], 1);
    code(&["judge", KITTIWAKE, "--fail-on", "under-pitched"], 0);
    code(&["judge", KITTIWAKE, "--fail-on", "under-pitched,mend"], 1);
    code(&["judge", "examples/turnstone.toml", "--fail-on", "under-pitched"], 1);
    code(&["try", KITTIWAKE, "--pitch", "13 in", "--fail-on", "over-pitched"], 1);
    code(&["try", KITTIWAKE, "--pitch", "8 in", "--fail-on", "over-pitched"], 0);
}
