//! The papers of a job, opened from the page.

use crate::bench::Bench;
use papers::Kind;

#[test]
fn every_paper_opens_or_says_why_not_and_loads_nothing() {
    let bench = Bench::new();
    let list = bench.get("/jobs/kittiwake/papers");
    assert_eq!(list.status, 200);
    for kind in Kind::ALL {
        let at = format!("/jobs/kittiwake/papers/{}", kind.file());
        assert!(list.body.contains(&format!("href=\"{at}\"")), "{at}");
        let paper = bench.get(&at);
        assert_eq!(paper.status, 200, "{at}");
        let policy = paper.header("content-security-policy").expect("a policy");
        assert!(policy.starts_with("default-src 'none'") && !policy.contains("script-src 'unsafe"), "{policy}");
        assert!(!paper.body.contains("src=\"http"), "{at}");
    }
    assert!(bench.get("/jobs/kittiwake/papers/order-sheet").body.contains("279.4"), "the 11 in ordered");
    assert_eq!(bench.get("/jobs/kittiwake/papers/nothing").status, 404);
}

#[test]
fn a_paper_follows_the_job_as_it_is_now() {
    let bench = Bench::new();
    let before = bench.get("/jobs/kittiwake/papers/record").body;
    assert_eq!(
        bench.set(&bench.version(), "title", "Kittiwake: will not rev out since the refit", "Kittiwake renamed").status,
        200
    );
    let after = bench.get("/jobs/kittiwake/papers/record").body;
    assert!(!before.contains("Kittiwake renamed") && after.contains("Kittiwake renamed"));
}

#[test]
fn a_file_that_cannot_be_read_says_where() {
    let bench = Bench::new();
    std::fs::write(bench.folder.path().join("kittiwake.toml"), "title = \"A\"\n[engine]\npower = \"nine\"\n")
        .expect("written");
    let paper = bench.get("/jobs/kittiwake/papers/owners-page");
    assert!(paper.body.contains("unknown key `power` in [engine]") && paper.body.contains("3:1"), "{}", paper.body);
}

#[test]
fn fit_hand_walk_and_order_stand_on_the_page_and_follow_the_inputs() {
    let bench = Bench::new();
    assert!(bench.get("/jobs/kittiwake").body.contains("follows"));
    let before = bench.get("/jobs/kittiwake/fits").body;
    for words in ["Hand and paddlewheel effect", "Right-handed", "The order", "right-hand", "<svg"] {
        assert!(before.contains(words), "{words}");
    }
    assert_eq!(bench.set(&bench.version(), "order.hand", "right", "left").status, 200);
    let after = bench.get("/jobs/kittiwake/fits").body;
    assert!(after.contains("contradicts the job"), "a left-hand propeller on a right-hand shaft is refused");
}
