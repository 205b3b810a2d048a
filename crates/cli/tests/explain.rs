//! `fairwake explain`.

use assert_cmd::Command;

fn explain(arguments: &[&str]) -> (Option<i32>, String, String) {
    let mut command = Command::cargo_bin("fairwake").expect("the program");
    let out = command
        .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples"))
        .arg("explain")
        .args(["--boats", "300"])
        .args(arguments)
        .output()
        .expect("it runs");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
    (out.status.code(), text(out.stdout), text(out.stderr))
}

#[test]
fn without_a_term_all_are_listed() {
    let (code, page, _) = explain(&[]);
    assert_eq!(code, Some(0));
    for term in counsel::explain::Term::ALL {
        assert!(page.contains(&format!("  {} ", term.name())), "{term:?} in {page}");
    }
}

#[test]
fn a_term_is_told_with_the_boats_numbers_when_a_job_is_named() {
    let (_, bare, _) = explain(&["pitch"]);
    assert!(!bare.contains("On your boat") && bare.contains("Name a job file"), "{bare}");
    let (code, page, _) = explain(&["pitch", "kittiwake.toml"]);
    assert_eq!(code, Some(0));
    assert!(page.contains("On your boat\nYour mark says 14 in (356 mm)."), "{page}");
    let (_, list, _) = explain(&["gannet.toml"]);
    assert!(list.contains("Yours is left-handed"), "{list}");
}

#[test]
fn json_holds_the_same() {
    let (code, text, _) = explain(&["ventilation", "kittiwake.toml", "--format", "json"]);
    assert_eq!(code, Some(0));
    let answer: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!((&answer["command"], &answer["schema"]), (&"explain".into(), &"fairwake/1".into()));
    assert_eq!(answer["terms"][0]["methods"][0], "tip-immersion");
    assert!(answer["terms"][0]["on_boat"].as_str().is_some_and(|line| line.contains("of water")), "{text}");
}

#[test]
fn an_unknown_term_is_refused_with_those_there_are() {
    let (code, _, said) = explain(&["sprocket"]);
    assert_eq!(code, Some(2));
    assert!(said.contains("`sprocket`") && said.contains("paddlewheel"), "{said}");
}
