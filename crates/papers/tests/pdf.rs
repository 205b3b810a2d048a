//! The PDFs, read back by another program (pdftotext of poppler-utils).

use crate::boats::{NEXT_TO_NOTHING, answers, example, one, papers_of, setting, strange};
use counsel::phrase::span;
use papers::{Answers, Kind, Paper, Size, pdf::pdf};
use std::process::Command;
use words::Language;

/// The text of a paper; `None` where pdftotext cannot be had, which `cargo xtask test` says.
fn text(paper: &Paper) -> Option<String> {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let file = folder.path().join("paper.pdf");
    std::fs::write(&file, pdf(paper).expect("a PDF")).expect("written");
    let read = Command::new("pdftotext").arg("-layout").arg(&file).arg("-").output().ok()?;
    assert!(read.status.success(), "{}", String::from_utf8_lossy(&read.stderr));
    let text = String::from_utf8_lossy(&read.stdout).into_owned();
    Some(text.replace('\u{200b}', "").split_whitespace().collect::<Vec<_>>().join(" "))
}

/// Pages by their objects.
fn pages(bytes: &[u8]) -> usize {
    let text = String::from_utf8_lossy(bytes);
    text.matches("/Type/Page").count() + text.matches("/Type /Page").count()
        - text.matches("/Type/Pages").count()
        - text.matches("/Type /Pages").count()
}

fn holds(paper: &Paper, wanted: &[String]) {
    let Some(text) = text(paper) else { return };
    for words in wanted {
        let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains(&words), "{} has no `{words}`:\n{text}", paper.file);
    }
}

#[test]
fn pages_are_counted() {
    let made = papers_of(&example("survey/dunlin"), Language::English);
    assert!(pages(&pdf(one(&made, Kind::SurveyCard)).expect("a PDF")) >= 2);
}

fn made(answers: &Answers, language: Language) -> Vec<Paper> {
    papers::papers(answers, &setting(language), &[]).0
}

#[test]
fn the_key_numbers_are_found_in_the_text() {
    let answers = answers(&example("kittiwake"));
    let judgement = answers.judgement.as_ref().expect("a judgement");
    let made = made(&answers, Language::English);
    let reached = span(&judgement.clean_loaded.engine_speed);
    let speed = span(&judgement.clean_loaded.speed);
    let print = papers::fingerprint(&answers.text);
    holds(one(&made, Kind::Owner), &[reached.clone(), speed.clone(), print.clone()]);
    holds(one(&made, Kind::Judgement), &[reached.clone(), speed.clone(), print.clone()]);
    holds(one(&made, Kind::SeaTrial), &[reached, speed, print.clone()]);
    let order = answers.order.as_ref().expect("an order");
    let sheet = answers.sheet.as_ref().expect("an order sheet");
    let diameter = &sheet.fields.iter().find(|field| field.what == "diameter").expect("a diameter").value;
    holds(one(&made, Kind::Order), &[diameter.clone(), sheet.line.clone(), span(&order.engine_speed), print.clone()]);
    holds(one(&made, Kind::Fit), std::slice::from_ref(&print));
    holds(one(&made, Kind::Record), &[print, "duty = \"mixed\"".to_owned()]);
}

#[test]
fn the_workshops_numbers_are_found_in_mm_and_inches() {
    let answers = answers(&example("survey/dunlin"));
    let survey = answers.survey.as_ref().expect("a survey");
    let made = made(&answers, Language::English);
    let repair = one(&made, Kind::Repair);
    for row in &survey.repair.rows {
        holds(repair, &[format!("{:.1} ({:.2})", row.target, row.target / 25.4)]);
    }
    let mut pitches = Vec::new();
    for section in survey.blades.iter().flat_map(|b| &b.sections) {
        let pitch = section.pitch.expect("measured").middle;
        pitches.push(format!("{:.1} ({:.2})", pitch, pitch / 25.4));
    }
    holds(one(&made, Kind::SurveyCard), &pitches);
    holds(one(&made, Kind::Order), &["31.75 mm (1.250 in)".to_owned()]);
}

#[test]
fn spanish_reads_as_spanish() {
    let made = papers_of(&example("survey/dunlin"), Language::Spanish);
    holds(one(&made, Kind::Order), &["Hoja de pedido".to_owned(), "31,75 mm (1,250 in)".to_owned()]);
}

#[test]
fn the_owners_page_is_one_page_whatever_the_boat() {
    let strange = strange();
    let texts =
        ["cormorant", "gannet", "guillemot", "kittiwake", "razorbill", "turnstone", "whimbrel", "survey/dunlin"]
            .map(example)
            .into_iter()
            .chain([strange]);
    for text in texts {
        let answers = answers(&text);
        if answers.judgement.is_err() {
            continue;
        }
        for (language, size) in [(Language::English, Size::A4), (Language::Spanish, Size::Letter)] {
            let mut setting = setting(language);
            setting.size = size;
            let made = papers::papers(&answers, &setting, &[Kind::Owner]).0;
            assert_eq!(pages(&pdf(&made[0]).expect("a PDF")), 1, "{} {language:?}", answers.job.title);
        }
    }
}

#[test]
fn strange_names_are_set_and_stay_text() {
    for paper in papers_of(&strange(), Language::English) {
        holds(&paper, &["<script>alert(1)</script> #panic(\"x\") *b* $x^2$ @who".to_owned()]);
    }
}

#[test]
fn extreme_values_are_set() {
    let large = example("kittiwake")
        .replace("diameter = \"17 in\"", "diameter = \"2.9 m\"")
        .replace("pitch = \"14 in\"", "pitch = \"3.1 m\"")
        .replace("largest_diameter = \"18 in (measured)\"", "largest_diameter = \"3.0 m\"")
        .replace("reduction = 2.6", "reduction = 9.5");
    for paper in papers_of(&large, Language::English) {
        holds(&paper, &["2.9 m".to_owned()].into_iter().filter(|_| paper.file == "record").collect::<Vec<_>>());
        let page = papers::html::page(&paper);
        assert!(!page.contains("NaN") && !page.contains("inf "), "{}", paper.file);
    }
}

#[test]
fn missing_data_leave_lines_to_fill_in() {
    for paper in papers_of(NEXT_TO_NOTHING, Language::Spanish) {
        holds(&paper, &["Pintail".to_owned()]);
    }
}

#[test]
fn the_same_job_and_date_give_the_same_bytes() {
    for paper in papers_of(&example("survey/dunlin"), Language::Spanish) {
        assert!(pdf(&paper).expect("a PDF") == pdf(&paper).expect("a PDF"), "{}", paper.file);
    }
}
