//! The HTML: what a person finds on it, in both languages.

use crate::boats::{answers, example, one, papers_of, setting};
use counsel::phrase::span;
use papers::{Block, Kind, html};
use words::Language;

/// The page with its pictures cut out, one tag a line.
fn bones(page: &str) -> String {
    let mut out = String::new();
    let mut rest = page;
    while let Some(at) = rest.find("<svg") {
        out.push_str(&rest[..at]);
        let end = rest[at..].find("</svg>").map_or(rest.len(), |end| at + end + 6);
        let title = rest[at..end].split("<title>").nth(1).and_then(|t| t.split('<').next()).unwrap_or("?");
        out.push_str(&format!("[picture: {title}]"));
        rest = &rest[end..];
    }
    out.push_str(rest);
    let start = out.find("<body").unwrap_or(0);
    out[start..].replace("><", ">\n<").replace('\u{a0}', " ")
}

#[test]
fn the_owners_page() {
    let made = papers_of(&example("kittiwake"), Language::English);
    insta::assert_snapshot!(bones(&html::page(one(&made, Kind::Owner))));
}

#[test]
fn the_order_sheet_in_spanish() {
    let made = papers_of(&example("survey/dunlin"), Language::Spanish);
    insta::assert_snapshot!(bones(&html::page(one(&made, Kind::Order))));
}

#[test]
fn the_fit_sheet() {
    let made = papers_of(&example("guillemot"), Language::English);
    insta::assert_snapshot!(bones(&html::page(one(&made, Kind::Fit))));
}

#[test]
fn one_sentence_two_pictures_three_numbers() {
    let made = papers_of(&example("kittiwake"), Language::English);
    let owner = one(&made, Kind::Owner);
    let count = |pick: &dyn Fn(&Block) -> usize| owner.blocks.iter().map(pick).sum::<usize>();
    assert_eq!(count(&|b| usize::from(matches!(b, Block::Lead { .. }))), 1);
    assert_eq!(count(&|b| if let Block::Pictures { pictures, .. } = b { pictures.len() } else { 0 }), 2);
    assert_eq!(count(&|b| if let Block::Figures { figures } = b { figures.len() } else { 0 }), 3);
}

#[test]
fn what_suits_is_not_replaced_unasked() {
    let fitting = answers(&example("survey/dunlin"));
    let suits = fitting.judgement.as_ref().is_ok_and(|judgement| judgement.verdict.right > 0.5);
    assert!(suits && fitting.order.is_none());
    let best = fitting.choice.as_ref().and_then(|choice| choice.shortlist.first()).cloned().expect("a shortlist");
    let asked = fitting.ordering(&best);
    let made = papers::papers(&asked, &setting(Language::English), &[Kind::Order]).0;
    let page = html::page(&made[0]).replace('\u{a0}', " ");
    for mm in [best.diameter, best.pitch] {
        assert!(page.contains(&format!("{mm:.1} mm (")) || page.contains(&format!("{mm:.0} mm (")), "{mm}");
    }
    assert!(answers(&example("kittiwake")).order.is_some());
}

#[test]
fn a_survey_brings_its_two_sheets_and_nothing_else_does() {
    let with = papers_of(&example("survey/dunlin"), Language::English);
    assert_eq!(with.len(), 8);
    let (without, left_out) = papers::papers(&answers(&example("kittiwake")), &setting(Language::English), &[]);
    assert_eq!(without.len(), 6);
    let kinds: Vec<Kind> = left_out.iter().map(|lack| lack.kind).collect();
    assert_eq!(kinds, [Kind::SurveyCard, Kind::Repair]);
    assert!(left_out.iter().all(|lack| lack.why.contains("survey")));
}

#[test]
fn every_paper_states_its_origin() {
    for (text, language) in [("survey/dunlin", Language::English), ("cormorant", Language::Spanish)] {
        let text = example(text);
        let print = papers::fingerprint(&text);
        for paper in papers_of(&text, language) {
            let page = html::page(&paper);
            for wanted in [print.as_str(), papers::VERSION, "2026-05-09", paper.safety.as_str()] {
                assert!(page.contains(wanted), "{} has no {wanted}", paper.file);
            }
            // Names of sentences never reach a reader.
            assert!(!page.contains("papers-"), "{}", paper.file);
        }
    }
}

#[test]
fn the_record_holds_the_job_to_the_byte_and_all_answers() {
    let text = example("survey/dunlin");
    let answers = answers(&text);
    let record = papers::record(&answers, &setting(Language::English)).expect("a record");
    let data: serde_json::Value = serde_json::from_str(&record).expect("JSON");
    assert_eq!(data["job"]["file"].as_str(), Some(text.as_str()));
    assert_eq!(data["job"]["values"]["propeller"]["pitch"].as_str(), Some("14 in"));
    assert_eq!(data["fingerprint"].as_str(), Some(papers::fingerprint(&text).as_str()));
    for answer in ["judge", "choose", "diagnose", "survey"] {
        assert!(data["answers"][answer]["headline"].is_string(), "{answer}");
    }
}

#[test]
fn the_bands_agreed_beforehand_are_those_of_the_judgement() {
    let text = example("kittiwake");
    let answers = answers(&text);
    let judgement = answers.judgement.as_ref().expect("a judgement");
    let made = papers::papers(&answers, &setting(Language::English), &[Kind::SeaTrial]).0;
    let page = html::page(&made[0]).replace('\u{a0}', " ");
    for band in [&judgement.clean_loaded.engine_speed, &judgement.clean_loaded.speed] {
        assert!(page.contains(&span(band)), "{}", span(band));
    }
    assert!(page.contains("class=\"blank\""));
}

/// What a stated order would do is on the sea-trial sheet with its speed, and the fit sheet shows the propeller ordered.
#[test]
fn a_stated_order_has_its_speed_and_its_picture() {
    let text = example("kittiwake");
    let answers = answers(&text);
    let ordered = answers.order.as_ref().expect("an order");
    let speed = span(ordered.speed.as_ref().expect("its speed"));
    let made = papers_of(&text, Language::English);
    let trial = html::page(one(&made, Kind::SeaTrial)).replace('\u{a0}', " ");
    assert!(trial.contains(&speed), "{speed}");
    let fit = html::page(one(&made, Kind::Fit)).replace('\u{a0}', " ");
    assert!(fit.contains("406 mm, 16 in across"), "the picture of another propeller");
}
