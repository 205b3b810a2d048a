//! `fairwake draw`

use crate::command::{fairwake, json};

#[test]
fn writes_what_was_asked_and_replaces_nothing_unasked() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let to = folder.path().to_str().expect("a path in UTF-8");
    let asked = ["draw", "examples/kittiwake.toml", "--what", "propeller,place", "--dxf", "--stl", "-o", to];
    let said = json(&asked);
    let files: Vec<&str> =
        said["files"].as_array().expect("a list").iter().filter_map(|f| f["file"].as_str()).collect();
    assert_eq!(files.len(), 6, "{files:?}");
    for file in files {
        assert!(std::fs::metadata(file).expect("the file is there").len() > 1000, "{file}");
    }
    let svg = std::fs::read_to_string(folder.path().join("propeller.svg")).expect("the picture");
    assert!(svg.contains("2026-05-02") && svg.contains("Kittiwake") && !svg.contains("var("));
    fairwake(&asked).assert().code(2);
    let again: Vec<&str> = asked.iter().copied().chain(["--force"]).collect();
    fairwake(&again).assert().success();
    assert_eq!(std::fs::read_to_string(folder.path().join("propeller.svg")).expect("the picture"), svg);
}

#[cfg(not(feature = "png"))]
#[test]
fn says_how_to_get_png() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let to = folder.path().to_str().expect("a path in UTF-8");
    let output = fairwake(&["draw", "examples/kittiwake.toml", "--png", "-o", to]).assert().code(2);
    assert!(String::from_utf8_lossy(&output.get_output().stderr).contains("--features png"));
}
