//! `fairwake papers`

use crate::command::{fairwake, json};

#[test]
fn writes_what_was_asked_and_replaces_nothing_unasked() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let to = folder.path().to_str().expect("a path in UTF-8");
    let asked = [
        "papers",
        "examples/kittiwake.toml",
        "--only",
        "owner,repair,record",
        "--language",
        "es",
        "--size",
        "letter",
        "--order",
        "5",
        "--date",
        "2026-05-09",
        "--boats",
        "400",
        "-o",
        to,
    ];
    let said = json(&asked);
    let files: Vec<&str> =
        said["files"].as_array().expect("a list").iter().filter_map(|f| f["file"].as_str()).collect();
    assert_eq!(files.len(), 3, "{files:?}");
    assert_eq!(said["left_out"][0]["paper"].as_str(), Some("repair"));
    let page = std::fs::read_to_string(folder.path().join("owners-page.html")).expect("the page");
    let print = said["fingerprint"].as_str().expect("a fingerprint");
    assert!(page.contains("lang=\"es\"") && page.contains("size:letter") && page.contains(print));
    fairwake(&asked).assert().code(2);
    let again: Vec<&str> = asked.iter().copied().chain(["--force"]).collect();
    fairwake(&again).assert().success();
    assert_eq!(std::fs::read_to_string(folder.path().join("owners-page.html")).expect("the page"), page);
}

#[test]
fn an_order_that_is_not_on_the_list_is_refused() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let to = folder.path().to_str().expect("a path in UTF-8");
    for number in ["0", "99"] {
        let asked = ["papers", "examples/kittiwake.toml", "--order", number, "--boats", "400", "-o", to];
        let output = fairwake(&asked).assert().code(2);
        assert!(String::from_utf8_lossy(&output.get_output().stderr).contains("take one of 1 to"));
    }
    assert_eq!(std::fs::read_dir(folder.path()).expect("the folder").count(), 0);
}

#[cfg(not(feature = "pdf"))]
#[test]
fn says_how_to_get_pdf() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let to = folder.path().to_str().expect("a path in UTF-8");
    let output = fairwake(&["papers", "examples/kittiwake.toml", "--pdf", "-o", to]).assert().code(2);
    assert!(String::from_utf8_lossy(&output.get_output().stderr).contains("--features pdf"));
}

#[cfg(feature = "pdf")]
#[test]
fn writes_pdf_beside_the_page() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let to = folder.path().to_str().expect("a path in UTF-8");
    fairwake(&["papers", "examples/kittiwake.toml", "--only", "owner", "--pdf", "--boats", "400", "-o", to])
        .assert()
        .success();
    assert!(std::fs::read(folder.path().join("owners-page.pdf")).expect("the PDF").starts_with(b"%PDF-"));
}
