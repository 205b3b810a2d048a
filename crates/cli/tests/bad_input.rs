//! What cannot be done says so in words, with a way out, and exits with code 2.

use std::io::Write as _;

use crate::command::{fairwake, said};

/// Words in the language of the code, not of people.
const INSIDE: [&str; 7] = ["panicked", "unwrap", "Err(", "Some(", "None)", "Kind::", "Custom {"];

fn refused(arguments: &[&str]) -> String {
    let said = said(&mut fairwake(arguments));
    assert!(said.starts_with("code 2\n--- out\n--- err\n"), "{arguments:?}: {said}");
    assert!(!INSIDE.iter().any(|word| said.contains(word)), "{said}");
    said
}

#[test]
fn a_file_that_is_not_there() {
    insta::assert_snapshot!(refused(&["judge", "no/such/boat.toml"]));
}

#[test]
fn a_folder() {
    insta::assert_snapshot!(refused(&["judge", "examples"]));
}

#[test]
fn a_file_that_is_not_text() {
    let mut file = tempfile::NamedTempFile::new().expect("a temporary file");
    file.write_all(b"title = \"\xff\xfe\"\n").expect("written");
    let name = file.path().display().to_string();
    insta::assert_snapshot!(refused(&["judge", &name]).replace(&name, "FILE"));
}

#[test]
fn a_file_that_is_too_long() {
    let mut file = tempfile::NamedTempFile::new().expect("a temporary file");
    file.write_all(&vec![b'#'; 3 << 20]).expect("written");
    let name = file.path().display().to_string();
    insta::assert_snapshot!(refused(&["judge", &name]).replace(&name, "FILE"));
}

#[cfg(unix)]
#[test]
fn a_stream_that_does_not_end() {
    assert!(refused(&["judge", "/dev/zero"]).contains("too long"));
}

#[cfg(unix)]
#[test]
fn a_file_name_that_is_not_text() {
    use std::os::unix::ffi::OsStrExt as _;
    let mut command = fairwake(&["judge"]);
    command.arg(std::ffi::OsStr::from_bytes(b"boat\xff.toml"));
    let said = said(&mut command);
    assert!(said.starts_with("code 2"), "{said}");
    assert!(said.contains("there is no such file"), "{said}");
}

#[test]
fn every_error_of_a_job_file_at_its_place() {
    let mut file = tempfile::NamedTempFile::new().expect("a temporary file");
    file.write_all(b"[boat]\nbeam = 3\nlenght_overall = \"9 m\"\n").expect("written");
    let name = file.path().display().to_string();
    insta::assert_snapshot!(refused(&["judge", &name]).replace(&name, "FILE"));
}

#[test]
fn a_job_that_says_too_little_names_what_is_missing() {
    let mut file = tempfile::NamedTempFile::new().expect("a temporary file");
    file.write_all(b"[boat]\nkind = \"sailing\"\n").expect("written");
    let name = file.path().display().to_string();
    let said = refused(&["judge", &name]);
    assert!(said.contains("engine.rated_power"), "{said}");
}

#[test]
fn nothing_to_try() {
    insta::assert_snapshot!(refused(&["try", "examples/kittiwake.toml"]));
}

#[test]
fn a_change_without_its_unit() {
    insta::assert_snapshot!(refused(&["try", "examples/kittiwake.toml", "--pitch", "9"]));
}

#[test]
fn a_change_that_cannot_exist() {
    for change in
        [["--diameter", "16 kg"], ["--diameter", "-1 in"], ["--pitch", ""], ["--blades", "1"], ["--cup", "some"]]
    {
        refused(&["try", "examples/kittiwake.toml", change[0], change[1]]);
    }
}

#[test]
fn openwater_without_a_propeller() {
    insta::assert_snapshot!(refused(&["openwater"]));
    refused(&[
        "openwater",
        "--blades",
        "3",
        "--area-ratio",
        "0.5",
        "--pitch-ratio",
        "0.8",
        "--from",
        "1",
        "--to",
        "0.5",
    ]);
    refused(&["openwater", "--blades", "3", "--area-ratio", "0.5", "--pitch-ratio", "nan"]);
    refused(&["openwater", "--blades", "3", "--area-ratio", "0.5", "--pitch", "11 in"]);
}

#[test]
fn a_source_nobody_knows() {
    assert!(refused(&["sources", "no such thing"]).contains("no method speaks of"));
}

#[test]
fn numbers_out_of_range() {
    for bad in [["--boats", "3"], ["--boats", "-1"], ["--seed", "x"], ["--most", "0"]] {
        refused(&["choose", "examples/kittiwake.toml", bad[0], bad[1]]);
    }
}

#[cfg(unix)]
#[test]
fn a_reader_that_goes_away_is_not_an_error() {
    use std::process::{Command, Stdio};
    for arguments in [&["sources"][..], &["sources", "--format", "json"], &["completions", "bash"], &["--help"]] {
        let mut child = Command::new(env!("CARGO_BIN_EXE_fairwake"))
            .args(arguments)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program starts");
        drop(child.stdout.take());
        let output = child.wait_with_output().expect("the program ends");
        assert_eq!(String::from_utf8_lossy(&output.stderr), "", "{arguments:?}");
        assert!(output.status.success(), "{arguments:?}: {:?}", output.status);
    }
}
