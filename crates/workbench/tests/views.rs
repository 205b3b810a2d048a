//! What follows, the explained terms and the propeller in the round, as a browser asks for them.

use std::io::{Read as _, Write as _};
use std::net::TcpStream;
use std::path::Path;
use std::sync::OnceLock;
use workbench::server::{Listen, bind};
use workbench::store::Folder;

/// A server of two jobs for all tests of this file: a demo boat, and one with script in its words.
fn host() -> &'static str {
    static HOST: OnceLock<String> = OnceLock::new();
    HOST.get_or_init(|| {
        let folder = tempfile::tempdir().expect("a folder").keep();
        let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/kittiwake.toml");
        let text = std::fs::read_to_string(demo).expect("a demo");
        std::fs::write(folder.join("kittiwake.toml"), &text).expect("written");
        let hostile =
            text.replace("Kittiwake: will not", "<script>alert(1)</script> \\\"><img src=x onerror=alert(1)>");
        std::fs::write(folder.join("hostile.toml"), hostile).expect("written");
        std::fs::write(folder.join("bare.toml"), "title = \"nothing known\"\n").expect("written");
        serve(&folder)
    })
}

fn serve(folder: &Path) -> String {
    let options = counsel::Options { boats: 300, seed: 1 };
    let bound = bind(Folder::open(folder).expect("a folder"), Listen::default(), options).expect("a port");
    let host = bound.address.trim_start_matches("http://").trim_end_matches('/').to_owned();
    std::thread::spawn(move || bound.run());
    host
}

fn get(path: &str) -> (u16, String) {
    let host = host();
    let mut stream = TcpStream::connect(host).expect("it listens");
    write!(stream, "GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n").expect("sent");
    let mut answer = String::new();
    stream.read_to_string(&mut answer).expect("UTF-8");
    let status = answer.split(' ').nth(1).and_then(|s| s.parse().ok()).expect("a status");
    (status, answer)
}

#[test]
fn the_right_side_says_the_verdict_first_and_holds_its_picture_and_the_sliders() {
    let (status, page) = get("/jobs/kittiwake/follows?part=1");
    assert_eq!(status, 200);
    let at = |text: &str| page.find(text).unwrap_or_else(|| panic!("no {text} in {page}"));
    assert!(at("Too much propeller, ") < at("<svg") && at("<svg") < at("id=\"try\""));
    assert!(!page.contains("<style") && !page.contains(" style="), "styles stand in files");
}

#[test]
fn a_change_is_tried_from_the_address_alone() {
    let (_, page) = get("/jobs/kittiwake/follows?pitch=0.2286&units=imperial");
    assert!(page.contains("With 17 x 9 in") && page.contains("<html"), "{page}");
    let (_, part) = get("/jobs/kittiwake/try?pitch=0.2286&part=1");
    assert!(part.contains("With 17 x 9 in") && !part.contains("<html"), "{part}");
    let (status, part) = get("/jobs/kittiwake/try?pitch=NaN&blades=1e9&cup=%3Cscript%3E&part=1");
    assert!(status == 200 && part.contains("Move a slider"), "{part}");
}

#[test]
fn every_term_has_its_page_in_both_languages() {
    for term in counsel::explain::Term::ALL {
        for language in ["en", "es"] {
            let (status, page) = get(&format!("/jobs/kittiwake/explain/{}?language={language}", term.name()));
            assert_eq!(status, 200, "{term:?}");
            assert!(!page.contains(">explain-") && !page.contains(">follows-"), "{term:?} {language}: a name unsaid");
        }
    }
    assert_eq!(get("/jobs/kittiwake/explain/sprocket").0, 404);
}

#[test]
fn words_of_a_job_are_never_markup() {
    for part in ["follows", "explain/parts", "blade", "try?pitch=0.25", "explain"] {
        let (status, page) = get(&format!("/jobs/hostile/{part}"));
        assert_eq!(status, 200, "{part}");
        assert!(!page.contains("<script>alert") && !page.contains("<img src=x"), "{part}");
    }
}

#[test]
fn what_is_missing_is_named_and_no_path_leads_out() {
    let (status, page) = get("/jobs/bare/follows");
    assert!(
        status == 200 && page.contains("href=\"/jobs/bare#f-engine-rated-power\"") && page.contains("Rated power"),
        "{page}"
    );
    for path in ["/jobs/..%2Fkittiwake/follows", "/jobs/%2Fetc%2Fpasswd/blade.json", "/jobs/none/explain"] {
        assert_eq!(get(path).0, 404, "{path}");
    }
    assert_eq!(get("/assets/views/..%2Fpage.js").0, 404);
    assert_eq!(get("/jobs/bare/blade.json").0, 404);
}

#[test]
fn the_drawing_follows_the_sliders_of_the_blade_and_says_what_is_not_reckoned() {
    let (status, four) = get("/jobs/kittiwake/try/drawing?part=1&blades=4&pitch=0.2286");
    assert!(status == 200 && four.contains("4 blades") && four.contains("\u{d7} 9 in"), "{four}");
    let (_, fitted) = get("/jobs/kittiwake/try/drawing?part=1");
    let (_, skewed) = get("/jobs/kittiwake/try/drawing?part=1&skew=45");
    let (_, raked) = get("/jobs/kittiwake/try/drawing?part=1&rake=25");
    assert!(fitted.contains("3 blades") && skewed != fitted && raked != fitted && skewed != raked);
    assert!(get("/jobs/kittiwake/try?part=1&skew=45").1.contains("not reckoned here"));
    let (_, page) = get("/jobs/kittiwake/follows?blades=4");
    assert!(page.contains("id=\"tried-drawing\"") && page.contains("4 blades"), "without a script too");
}
