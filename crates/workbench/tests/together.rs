//! Two pages, an outside editor.

use crate::bench::Bench;

#[test]
fn two_pages_at_different_keys_merge_and_at_the_same_key_are_asked() {
    let bench = Bench::new();
    let base = bench.version();
    assert_eq!(bench.set(&base, "propeller.pitch", "14 in", "13 in").status, 200);
    let merged = bench.set(&base, "propeller.blades", "3", "4");
    assert!(merged.status == 200 && merged.body.contains("\"merged\":true"), "{}", merged.body);
    let asked = bench.set(&base, "propeller.pitch", "14 in", "12 in");
    assert!(asked.status == 422 && asked.body.contains("\"theirs\":\"13 in\""), "{}", asked.body);
    let text = bench.file();
    assert!(text.contains("pitch = \"13 in\"") && text.contains("blades = 4"));
    let page = bench.get("/jobs/kittiwake").body;
    assert!(page.contains("value=\"12 in\"") && page.contains("wrote 13 in here"), "both values stand on the page");
    assert_eq!(bench.set(&bench.version(), "propeller.pitch", "13 in", "12 in").status, 200);
}

#[test]
fn an_outside_editor_loses_nothing_and_its_state_is_kept() {
    let bench = Bench::new();
    let base = bench.version();
    assert_eq!(bench.set(&base, "propeller.blades", "3", "4").status, 200);
    let edited = bench.file().replace("displacement = \"6.5 t ± 0.4\"", "displacement = \"7 t\" # lifted");
    std::fs::write(bench.folder.path().join("kittiwake.toml"), &edited).expect("an editor writes");
    assert_eq!(bench.set(&base, "propeller.hand", "right", "left").status, 200);
    assert!(bench.file().contains("# lifted") && bench.file().contains("hand = \"left\""));
    bench.post("/jobs/kittiwake/undo", &[], "");
    assert_eq!(bench.file(), edited);
}

#[test]
fn a_reading_taken_out_by_another_page_is_not_written_into_the_next() {
    let bench = Bench::new();
    assert_eq!(bench.set(&bench.version(), "propeller.blades", "3", "4").status, 200);
    let base = bench.version();
    bench.post("/jobs/kittiwake/set", &[("base", &base), ("remove", "reading.0")], "");
    let before = bench.file();
    let asked = bench.set(&base, "reading.1.notes", "", "flat sea");
    assert_eq!(asked.status, 422, "{}", asked.body);
    assert_eq!(bench.file(), before);
}

#[test]
fn a_file_broken_by_an_editor_is_shown_with_the_place_and_nothing_is_written() {
    let bench = Bench::new();
    std::fs::write(bench.folder.path().join("kittiwake.toml"), "title = \"x\"\n[boat\n").expect("written");
    let page = bench.get("/jobs/kittiwake");
    assert!(page.status == 200 && page.body.contains("[boat"), "{}", page.body);
    assert_eq!(bench.set("0", "propeller.pitch", "", "12 in").status, 422);
    assert_eq!(bench.file(), "title = \"x\"\n[boat\n");
    assert!(bench.get("/").body.contains("cannot be judged"));
}
