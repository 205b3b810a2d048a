//! `fairwake new`: questions on standard error, answers on standard input, a job file at the end.

use crate::command::{fairwake, said};

/// Questions are asked in the order of the call; an empty line or `unknown` passes one by, a bad answer is asked again.
const ANSWERS: &str = "Kittiwake: will not rev out\nslow\nunknown\nnew propeller, scrubbed\nwith the p\n\
                       black smoke, shaft-r\n\nnat\n29\n29 hp\n3600 rpm\n\n\nple\n2.6\n\n16RH11\n16 in\n11 in\n3\nfix\nright\n\n?\n17 in\n\
                       sailing\nfin\n1\n\n8.4 m\n\n6.5 t (weighed)\n5 months\n2900 rpm\nopt\n6.5 kn, 6.1 kn\ngps\n12 m\n\
                       2200 rpm\n\n5.4 kn\n\nmixed\n";

#[test]
fn writes_what_was_said_and_what_is_open() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut command = fairwake(&["new", "boat.toml"]);
    command.current_dir(folder.path()).write_stdin(ANSWERS);
    let said = said(&mut command);
    let file = std::fs::read_to_string(folder.path().join("boat.toml")).expect("the file is written");
    assert!(said.starts_with("code 0\n"), "{said}");
    let (answer, asked) = said.split_once("--- err\n").expect("both streams");
    insta::assert_snapshot!("the_answer", answer);
    insta::assert_snapshot!("the_file", file);
    assert!(asked.contains("a power needs a unit"), "the bad answer is refused with its reason: {asked}");

    // What was written is a job file that can be judged.
    fairwake(&["judge", "boat.toml"]).current_dir(folder.path()).assert().success();
}

#[test]
fn never_replaces_a_file_unasked() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let file = folder.path().join("boat.toml");
    std::fs::write(&file, "title = \"mine\"\n").expect("written");
    let mut command = fairwake(&["new", "boat.toml"]);
    command.current_dir(folder.path()).write_stdin(ANSWERS);
    insta::assert_snapshot!(said(&mut command));
    assert_eq!(std::fs::read_to_string(&file).expect("still there"), "title = \"mine\"\n");

    fairwake(&["new", "boat.toml", "--force"]).current_dir(folder.path()).write_stdin(ANSWERS).assert().success();
    assert!(std::fs::read_to_string(&file).expect("replaced").contains("Kittiwake"));
    let left: Vec<_> = std::fs::read_dir(folder.path()).expect("a folder").collect();
    assert_eq!(left.len(), 1, "a temporary file was left behind");
}

#[test]
fn nobody_answers() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut command = fairwake(&["new", "boat.toml"]);
    command.current_dir(folder.path()).write_stdin("");
    let said = said(&mut command);
    assert!(said.starts_with("code 2\n--- out\n--- err\n"), "{said}");
    assert!(!folder.path().join("boat.toml").exists());
}

#[test]
fn a_folder_that_is_not_there() {
    let mut command = fairwake(&["new", "no/such/folder/boat.toml"]);
    command.write_stdin(ANSWERS);
    let said = said(&mut command);
    assert!(said.starts_with("code 2"), "{said}");
    assert!(said.contains("cannot write no/such/folder/boat.toml"), "{said}");
}

#[test]
fn all_unknown_is_written_and_says_what_is_missing() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut command = fairwake(&["new", "boat.toml", "--format", "json"]);
    command.current_dir(folder.path()).write_stdin("\nunknown\ndon't know\n?\n-\n");
    let output = command.output().expect("the program starts");
    let answer: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert_eq!(answer["command"], "new");
    assert_eq!(answer["enough"], false);
    let missing = answer["missing"].as_array().expect("a list");
    assert!(missing.iter().any(|open| open["key"] == "engine.rated_power"), "{answer}");
}
