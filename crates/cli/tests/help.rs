//! Help, version, completions, colour.

use crate::command::{fairwake, out, said};

#[test]
fn help_of_the_program() {
    insta::assert_snapshot!(out(&["--help"]));
}

#[test]
fn every_command_has_help_that_fits_the_page() {
    for command in [
        "new",
        "judge",
        "try",
        "choose",
        "diagnose",
        "trial",
        "survey",
        "openwater",
        "resistance",
        "sources",
        "completions",
    ] {
        let help = out(&[command, "--help"]);
        assert!(help.contains(&format!("Usage: fairwake {command}")), "{help}");
        for common in ["--format", "--units", "--seed", "--boats", "--colour"] {
            assert!(help.contains(common), "{command} does not take {common}");
        }
        assert!(help.lines().all(|line| line.chars().count() <= 100), "{help}");
    }
}

#[test]
fn version_is_one_line() {
    assert_eq!(out(&["--version"]), format!("fairwake {}\n", env!("CARGO_PKG_VERSION")));
}

#[test]
fn without_arguments_the_help_goes_to_standard_error() {
    let said = said(&mut fairwake(&[]));
    assert!(said.starts_with("code 2\n--- out\n--- err\n"), "{said}");
    assert!(said.contains("Usage: fairwake"), "{said}");
}

#[test]
fn completions_name_every_command_in_every_shell() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let script = out(&["completions", shell]);
        for command in ["judge", "diagnose", "survey", "sources"] {
            assert!(script.contains(command), "{shell}: {command}");
        }
    }
}

#[test]
fn colour_is_for_people_unless_asked() {
    let plain = out(&["sources"]);
    assert!(!plain.contains('\u{1b}'), "coloured into a pipe");
    assert!(out(&["sources", "--colour", "always"]).contains('\u{1b}'));
    assert!(!out(&["sources", "--colour", "never"]).contains('\u{1b}'));
    let mut forced = fairwake(&["sources"]);
    forced.env("CLICOLOR_FORCE", "1");
    assert!(said(&mut forced).contains('\u{1b}'));
    forced.env("NO_COLOR", "1");
    assert!(!said(&mut forced).contains('\u{1b}'), "NO_COLOR is not honoured");
    assert!(out(&["--help", "--colour", "always"]).contains('\u{1b}'));
}
