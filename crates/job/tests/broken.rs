//! Broken and doubtful job files with the exact messages they bring.
//!
//! Each file in `broken/` holds cases: `#### name`, the job file, `----`, the message. To take over changed messages, run
//! the tests once with `JOB_BLESS=1` and read the difference.

use job::survey::csv;
use job::{Job, Problem, line_and_column, render};
use std::fmt::Write as _;
use std::path::PathBuf;

fn check(name: &str, least: usize) {
    let job = |toml: &str| match Job::read(toml) {
        Ok(read) => read.doubts,
        Err(problems) => problems,
    };
    check_with(name, "boat.toml", least, &job);
}

fn check_with(name: &str, shown_as: &str, least: usize, problems_of: &dyn Fn(&str) -> Vec<Problem>) {
    let path: PathBuf = [env!("CARGO_MANIFEST_DIR"), "tests", "broken", name].iter().collect();
    let old = std::fs::read_to_string(&path).expect("the file of cases");
    let mut new = String::new();
    let mut cases = 0;
    for case in old.split("#### ").skip(1) {
        let (title, rest) = case.split_once('\n').expect("a title line");
        let toml = rest.split_once("----\n").map_or_else(|| rest.trim_end_matches("----"), |(toml, _)| toml);
        let problems = problems_of(toml);
        assert!(!problems.is_empty(), "{name}: {title}: no problem seen");
        for problem in &problems {
            assert!(toml.get(problem.span.clone()).is_some(), "{name}: {title}: {problem:?} points outside the file");
            assert!(problem.help.is_some(), "{name}: {title}: no way out in {problem:?}");
        }
        let shown = render(&problems, shown_as, toml, false);
        let (line, column) = line_and_column(toml, problems[0].span.start);
        assert!(
            shown.contains(&format!("--> {shown_as}:{line}:{column}\n")),
            "{name}: {title}: {line}:{column}\n{shown}"
        );
        let _ = write!(new, "#### {title}\n{toml}----\n{shown}");
        cases += 1;
    }
    assert!(cases >= least, "{name} holds {cases} cases");
    if std::env::var_os("JOB_BLESS").is_some() {
        std::fs::write(&path, &new).expect("written");
    } else if new != old {
        let differs = new.lines().zip(old.lines()).position(|(a, b)| a != b).unwrap_or(0);
        let near: Vec<&str> = new.lines().skip(differs.saturating_sub(12)).take(24).collect();
        panic!("{name} line {}: the messages changed; now:\n{}", differs + 1, near.join("\n"));
    }
}

#[test]
fn syntax() {
    check("syntax.txt", 16);
}

#[test]
fn keys() {
    check("keys.txt", 20);
}

#[test]
fn units() {
    check("units.txt", 19);
}

#[test]
fn numbers() {
    check("numbers.txt", 30);
}

#[test]
fn ranges() {
    check("ranges.txt", 16);
}

#[test]
fn choices() {
    check("choices.txt", 11);
}

#[test]
fn doubts() {
    check("doubts.txt", 22);
}

#[test]
fn survey() {
    check("survey.txt", 40);
}

/// Tables of a gauge or a coordinate machine, for a propeller of 16 x 11 in with three blades.
#[test]
fn gauge_tables() {
    let job = Job::read("[propeller]\ndiameter = \"16 in\"\npitch = \"11 in\"\nblades = 3\n").expect("a good file").job;
    check_with("gauge.txt", "gauge.csv", 14, &|text| match csv::import(text, &job, None) {
        Ok(imported) => imported.doubts,
        Err(problems) => problems,
    });
}

/// Line and column counted by hand.
#[test]
fn carets_stand_where_they_should() {
    for (toml, code, line, column, marked) in [
        ("[propeller]\ndiameter = 16\n", "needs-unit", 2, 12, "16"),
        ("[propeller]\ndiameter = \"16 kg\"\n", "wrong-unit", 2, 16, "kg"),
        ("[propeller]\r\n\r\npitch = \"11 inchs\"\r\n", "unknown-unit", 3, 13, "inchs"),
        ("# Köln ± ü\n[boat]\nbeam = \"3 m ± 1 kg\"  # ß\n", "wrong-unit", 3, 17, "kg"),
        ("[boat]\ndisplacement = \"6,5 t\"\n", "decimal-comma", 2, 17, "6,5"),
        ("[boat]\n  kind = \"boot\"\n", "unknown-choice", 2, 10, "\"boot\""),
        ("\u{feff}[boat]\nbeem = \"3 m\"\n", "unknown-key", 2, 1, "beem"),
        ("[[reading]]\nspeed = [\"6 kn\",\n  \"7 kg\"]\n", "wrong-unit", 3, 6, "kg"),
        ("[boat]\ndisplacement = \"6.5 t (guess)\"\n", "unknown-source", 2, 24, "guess"),
        ("boat.kind = \"boot\"\n", "unknown-choice", 1, 13, "\"boot\""),
        ("place = { water = \"salt\" }\n", "unknown-choice", 1, 19, "\"salt\""),
    ] {
        let problems = Job::read(toml).unwrap_err();
        assert_eq!(problems.len(), 1, "{toml}: {problems:?}");
        let problem = &problems[0];
        assert_eq!(problem.code, code, "{toml}");
        assert_eq!(&toml[problem.span.clone()], marked, "{toml}");
        assert_eq!(line_and_column(toml, problem.span.start), (line, column), "{toml}");
    }
}

#[test]
fn colour_changes_nothing_but_colour() {
    let toml = "[propeller]\ndiameter = 16\n";
    let problems = Job::read(toml).unwrap_err();
    let coloured = render(&problems, "boat.toml", toml, true);
    assert!(coloured.contains("\u{1b}["));
    let mut plain = String::new();
    let mut rest = coloured.as_str();
    while let Some((before, after)) = rest.split_once('\u{1b}') {
        plain.push_str(before);
        rest = after.split_once('m').unwrap().1;
    }
    plain.push_str(rest);
    assert_eq!(plain, render(&problems, "boat.toml", toml, false));
}
