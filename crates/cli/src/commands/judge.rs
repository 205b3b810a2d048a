//! `fairwake judge`: what is fitted, what it does to engine and boat.

use counsel::report::{Gravity, Judgement, LoadRow, ReadingFit};

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, FailOn, JudgeArgs, Units};
use crate::commands::pair;
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::strip::{Row, Shape};
use crate::{answers, load, number, sections, words};

pub fn run(args: &JudgeArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    let loaded = load::job(&args.job, colour)?;
    let judgement = answers::judge(&loaded.job, common)?;
    let reached = args.fail_on.iter().any(|what| is_reached(*what, &judgement));
    let read = sections::readings(&loaded.job, common.units);
    Ok(Outcome {
        text: Box::new(move |report, common| text(report, &read, common)),
        report: Report::Judge(Box::new(judgement)),
        doubts: loaded.doubts,
        reached,
    })
}

fn is_reached(what: FailOn, judgement: &Judgement) -> bool {
    match what {
        FailOn::OverPitched => judgement.verdict.over_pitched > 0.5,
        FailOn::UnderPitched => judgement.verdict.under_pitched > 0.5,
        FailOn::Mend => judgement.findings.iter().any(|f| f.gravity <= Gravity::Mend),
        FailOn::Stop => judgement.findings.iter().any(|f| f.gravity == Gravity::Stop),
    }
}

pub fn text(report: &Report, read: &[Row], common: &Common) -> String {
    let mut page = Page::new();
    let Report::Judge(said) = report else { return page.finish() };
    let units = common.units;
    sections::opening(&mut page, &said.title, &said.headline);

    let mut rows = vec![
        sections::accepted(&said.accepted_band, units),
        sections::engine_speed("clean and loaded", &said.clean_loaded, Shape::Full, units),
        sections::engine_speed("as described", &said.full_throttle, Shape::Thin, units),
    ];
    rows.extend_from_slice(read);
    sections::picture(&mut page, &rows);
    sections::verdict(&mut page, &[("", &said.verdict)]);

    let states = [("as described", &said.full_throttle), ("clean and loaded", &said.clean_loaded)];
    sections::full_throttle(&mut page, &states, units);
    sections::findings(&mut page, &said.findings);
    sections::limits(&mut page, &[("", &said.limits)], units);
    load_table(&mut page, &said.load, units);
    readings_table(&mut page, &said.readings);
    pair::section(&mut page, said.pair.as_ref(), units);
    sections::hangs_on(&mut page, &said.hangs_on);
    if !said.measure_next.is_empty() {
        page.heading("Measure next");
        page.set_in(&words::sentence(&said.measure_next), Ink::Plain);
    }
    sections::notes(&mut page, &said.notes);
    sections::closing(&mut page, Some(&said.accepted_band), &said.crowd);
    page.finish()
}

fn load_table(page: &mut Page, load: &[LoadRow], units: Units) {
    if load.is_empty() {
        return;
    }
    page.heading("Load over engine speed");
    let unit = |unit| number::shown(unit, units).unit;
    let head = [
        "rpm".to_owned(),
        "speed, kn".to_owned(),
        format!("power, {}", unit("kW")),
        "load, %".to_owned(),
        format!("fuel, {}", unit("L/h")),
        "slip, %".to_owned(),
    ];
    let head: Vec<&str> = head.iter().map(String::as_str).collect();
    let rows: Vec<Vec<Cell>> = load
        .iter()
        .map(|row| {
            let range = |band| Cell::from(number::range(band, units));
            vec![
                number::rounded(row.engine_speed, 1.0).into(),
                range(&row.speed),
                range(&row.power),
                range(&row.load),
                range(&row.fuel),
                range(&row.apparent_slip),
            ]
        })
        .collect();
    page.table("rrrrrr", &head, &rows);
}

fn readings_table(page: &mut Page, readings: &[ReadingFit]) {
    if readings.is_empty() {
        return;
    }
    page.heading("What was read, and what was expected before it was read");
    let rows: Vec<Vec<Cell>> = readings
        .iter()
        .map(|fit| {
            let unit = fit.expected.unit;
            let (low, high) = (fit.weighed.low, fit.weighed.high);
            let step = number::step(low, fit.measured, high, number::shown(unit, Units::Metric).finest);
            let measured = number::with_unit(number::rounded(fit.measured, step), unit);
            vec![
                fit.reading.clone().into(),
                fit.quantity.into(),
                Cell::inked(measured, Ink::Measured),
                number::range(&fit.expected, Units::Metric).into(),
                number::range(&fit.weighed, Units::Metric).into(),
                words::surprise(fit.surprise).into(),
            ]
        })
        .collect();
    page.table("llrrrl", &["", "", "read", "expected", "weighed", ""], &rows);
}
