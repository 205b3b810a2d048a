//! `fairwake order`: the order in one line, what may vary, and the check of what arrives.

use counsel::order::report::{OrderSheet, ReceiptRow};

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, OrderArgs};
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::{answers, load, number, sections, words};

pub fn run(args: &OrderArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    let loaded = load::job(&args.job, colour)?;
    let sheet = answers::order(&loaded.job, common)?;
    if !sheet.refused.is_empty() && !args.draft {
        let listed: Vec<String> = sheet.refused.iter().map(|why| format!("- {}", words::sentence(why))).collect();
        return Err(Failure::Asked {
            what: format!("this order must not go out\n{}", listed.join("\n")),
            instead: "put that right in the job file, or look at it as a draft with --draft".to_owned(),
        });
    }
    let reached = sheet.accepted == Some(false) && args.fail_on_receipt;
    Ok(Outcome { text: Box::new(text), report: Report::Order(Box::new(sheet)), doubts: loaded.doubts, reached })
}

pub fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Order(said) = report else { return page.finish() };
    sections::title(&mut page, &said.title);
    if said.refused.is_empty() {
        sections::headline(&mut page, &said.line);
    } else {
        sections::headline(&mut page, "A draft that must not go out yet.");
        for why in &said.refused {
            page.hanging(&words::sentence(why), Ink::Speak, "  ■ ", "    ");
        }
        page.gap();
        page.set_in(&said.line, Ink::Plain);
    }
    page.heading("Field by field");
    let rows: Vec<Vec<Cell>> =
        said.fields.iter().map(|f| vec![f.what.into(), f.value.clone().into(), f.from.into()]).collect();
    page.table("lll", &["", "", "from"], &rows);
    page.set_in(&format!("May vary: {}.", words::list(&said.may_vary, "and")), Ink::Plain);
    page.set_in(&said.must_not_vary, Ink::Speak);
    page.set_in(
        &format!(
            "With it she should reach {} at full throttle, clean and loaded: too much propeller {}, right {}, too little {}.",
            number::band(&said.engine_speed, common.units),
            words::chance(said.verdict.over_pitched),
            words::chance(said.verdict.right),
            words::chance(said.verdict.under_pitched)
        ),
        Ink::Plain,
    );
    for doubt in &said.doubts {
        page.item(doubt);
    }
    receipt(&mut page, said);
    for caution in &said.cautions {
        page.set_in(&format!("Caution: {caution}"), Ink::Speak);
    }
    page.sentences(sections::SAFETY, Ink::Quiet);
    page.finish()
}

fn receipt(page: &mut Page, said: &OrderSheet) {
    page.heading("On arrival: measure before it goes near the shaft");
    let limit = |row: &ReceiptRow, low: Option<f64>, high: Option<f64>| {
        if row.unit.is_empty() {
            return "exactly".to_owned();
        }
        let step = if row.unit == "mm" && high.is_some_and(|h| h < 120.0) { 0.01 } else { 0.1 };
        let text = |v: f64| number::rounded(v, step);
        match (low, high) {
            (Some(low), Some(high)) => format!("{} to {} {}", text(low), text(high), row.unit),
            (None, Some(high)) => format!("up to {} {}", text(high), row.unit),
            _ => String::new(),
        }
    };
    let rows: Vec<Vec<Cell>> = said
        .receipt
        .iter()
        .map(|row| {
            let step = match row.unit {
                "" => 1.0,
                "mm" if row.accept_to.is_none_or(|to| to >= 120.0) => 0.1,
                "kg" => 0.1,
                _ => 0.01,
            };
            let measured = match (row.measured, row.said) {
                (Some(m), _) => number::rounded(m, step),
                // Looked at and no number: the hand.
                (None, Some(_)) => "seen".to_owned(),
                (None, None) => "______".to_owned(),
            };
            vec![
                row.what.into(),
                row.ordered.clone().into(),
                limit(row, row.accept_from, row.accept_to).into(),
                limit(row, row.reject_below, row.reject_above).into(),
                Cell::inked(measured, Ink::Measured),
                row.said.unwrap_or("").into(),
            ]
        })
        .collect();
    page.table("llllrl", &["", "ordered", "accept", "send back outside", "measured", ""], &rows);
    if let Some(received) = &said.received {
        page.set_in(received, Ink::Speak);
    }
}
