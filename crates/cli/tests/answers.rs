//! The JSON contract: names, units, order, exit codes.

use crate::command::{fairwake, json};
use crate::schema;

const KITTIWAKE: &str = "examples/kittiwake.toml";
const GUILLEMOT: &str = "examples/guillemot.toml";

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
    let new = |candidate: &&serde_json::Value| ["new-propeller", "ratio"].iter().any(|step| candidate["step"] == *step);
    assert_eq!(list.iter().filter(new).count(), 5);
    for step in ["leave", "clean", "cup", "repitch", "trim"] {
        assert_eq!(list.iter().filter(|candidate| candidate["step"] == step).count(), 1, "{step} in {answer}");
    }
    // Ranked by merit; between near equals the cheaper step goes first.
    let merits: Vec<f64> = list.iter().filter_map(|candidate| candidate["merit"].as_f64()).collect();
    assert!(merits.windows(2).all(|pair| pair[0].round() >= pair[1].round()), "{merits:?}");
    is_band(&list[0]["full_throttle"]["engine_speed"], "rpm");
    schema::check(&answer);
    let towing = json(&["choose", KITTIWAKE, "--duty", "tow", "--most", "1", "--boats", "1000"]);
    assert_eq!(towing["duty"], "tow");
    is_band(&towing["shortlist"][0]["tow_pull"], "N");
}

#[test]
fn diagnose_ranks_causes_and_names_measurements() {
    let answer = json(&["diagnose", GUILLEMOT]);
    assert_eq!(answer["command"], "diagnose");
    let causes = answer["causes"].as_array().expect("causes");
    let chances: Vec<f64> = causes.iter().map(|cause| cause["chance"].as_f64().expect("a chance")).collect();
    assert!(chances.windows(2).all(|pair| pair[0] >= pair[1]), "{chances:?}");
    assert!(chances.iter().sum::<f64>() <= 1.0 + 1e-9, "{chances:?}");
    for cause in causes {
        for key in ["code", "cause", "remedy", "cost", "would_need"] {
            assert!(cause[key].is_string(), "{key} of {cause}");
        }
        for key in ["for", "against"] {
            assert!(cause[key].is_array(), "{key} of {cause}");
        }
    }
    for next in answer["next_measurements"].as_array().expect("measurements") {
        assert!(next["measurement"].is_string() && next["worth"].is_number(), "{next}");
        assert!(next["cost"].is_string() && next["haul_out"].is_boolean(), "{next}");
    }
    assert!(answer["explained"].is_boolean());
    // Nothing but five months afloat changed since the clean trial.
    assert!(causes[0]["code"].as_str().is_some_and(|code| code.contains("growth")), "{}", causes[0]);
    schema::check(&answer);
}

#[test]
fn diagnose_stops_first() {
    let file = std::fs::read_to_string(crate::command::root().join(GUILLEMOT)).expect("the example");
    let cracked = file.replace("symptoms = [", "symptoms = [\"crack\", ");
    let mut command = fairwake(&["diagnose", "-", "--fail-on", "stop", "--boats", "500"]);
    let page = command.write_stdin(cracked).assert().code(1).get_output().stdout.clone();
    let page = String::from_utf8(page).expect("UTF-8");
    let (stop, headline) = (page.find("■ stop"), page.find("Most likely"));
    assert!(stop.is_some() && stop < headline.or(Some(page.len())), "{page}");
    fairwake(&["diagnose", GUILLEMOT, "--fail-on", "stop", "--boats", "500"]).assert().code(0);
}

#[test]
fn judge_names_the_next_measurement() {
    let answer = json(&["judge", KITTIWAKE, "--boats", "500"]);
    assert!(answer["measure_next"].as_str().is_some_and(|text| !text.is_empty()), "{answer}");
}

#[test]
fn survey_tells_the_measured_from_the_stamped() {
    let answer = json(&["survey", "examples/cormorant.toml"]);
    assert_eq!(answer["command"], "survey");
    is_band(&answer["mean_pitch"], "mm");
    // The plain average of the twelve pitches in the file, and the stamp.
    assert!((answer["mean_pitch"]["middle"].as_f64().expect("a number") - 578.2).abs() < 0.1, "{answer}");
    assert!((answer["reference_pitch"].as_f64().expect("a number") - 22.0 * 25.4).abs() < 1e-6);
    assert_eq!(answer["hand"], "right");
    assert_eq!(answer["blades"].as_array().map(Vec::len), Some(4));
    assert_eq!(answer["repair"]["rows"].as_array().map(Vec::len), Some(12));
    assert_eq!(answer["bore"]["nearest"]["shaft"], "2 in");
    schema::check(&answer);
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
