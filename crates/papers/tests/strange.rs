//! What people write never breaks a paper, and never becomes part of its markup.

use crate::boats::{NEXT_TO_NOTHING, answers, papers_of, setting, strange};
use papers::{Kind, html};
use words::Language;

#[test]
fn names_stay_text() {
    for language in Language::ALL {
        for paper in papers_of(&strange(), language) {
            let page = html::page(&paper);
            assert!(!page.contains("<script"), "{}", paper.file);
            assert_eq!(page.matches("</title>").count(), 1 + page.matches("<svg").count(), "{}", paper.file);
            assert!(page.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), "{}", paper.file);
        }
    }
}

#[test]
fn the_date_is_text_too() {
    let answers = answers(crate::boats::NEXT_TO_NOTHING);
    let mut setting = setting(Language::English);
    setting.date = "\"}</style><script>x</script>".to_owned();
    for paper in papers::papers(&answers, &setting, &[]).0 {
        let page = html::page(&paper);
        assert!(!page.contains("<script") && page.matches("</style>").count() == 1 + page.matches("<svg").count());
    }
}

#[test]
fn a_caller_who_knows_nothing_gets_sheets_to_fill_in() {
    let (made, left_out) = papers::papers(&answers(NEXT_TO_NOTHING), &setting(Language::English), &[]);
    let made: Vec<&str> = made.iter().map(|paper| paper.file).collect();
    assert_eq!(made, ["order-sheet", "fit-sheet", "sea-trial-sheet", "record"]);
    let why: Vec<Kind> = left_out.iter().map(|lack| lack.kind).collect();
    assert_eq!(why, [Kind::Owner, Kind::Judgement, Kind::SurveyCard, Kind::Repair]);
    assert!(left_out[0].why.contains("engine.rated_power"), "{}", left_out[0].why);
}

#[test]
fn the_same_job_and_date_give_the_same_bytes() {
    let pages = || -> Vec<String> { papers_of(&strange(), Language::Spanish).iter().map(html::page).collect() };
    assert!(pages() == pages());
}
