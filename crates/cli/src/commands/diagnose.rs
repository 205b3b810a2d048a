//! `fairwake diagnose`: causes ranked by how well they explain what was read and seen, and what to measure next.

use counsel::report::{Band, Cause, Diagnosis, NextMeasurement};

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, DiagnoseArgs, FailOnCause, Units};
use crate::bars::{self, Bar};
use crate::commands::pair;
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::{answers, load, number, sections, words};

pub fn run(args: &DiagnoseArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    let loaded = load::job(&args.job, colour)?;
    let diagnosis = answers::diagnose(&loaded.job, common)?;
    let reached = args.fail_on.iter().any(|what| match what {
        FailOnCause::Stop => !diagnosis.stop.is_empty(),
        FailOnCause::Unexplained => !diagnosis.explained,
    });
    Ok(Outcome { text: Box::new(text), report: Report::Diagnose(Box::new(diagnosis)), doubts: loaded.doubts, reached })
}

/// Causes less likely than this are named together.
const LEAST: f64 = 0.03;
/// Causes spoken of at length, and drawn.
const MOST: usize = 7;
/// Gain in the chance of naming the right cause that is worth telling.
const WORTH: f64 = 0.005;
/// Measurements listed.
const MEASUREMENTS: usize = 6;

pub fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Diagnose(said) = report else { return page.finish() };
    let units = common.units;
    sections::title(&mut page, &said.title);
    sections::stop(&mut page, &said.stop);
    sections::headline(&mut page, &said.headline);
    page.raw(&bars::draw(&drawn(said)));
    page.gap();
    scale(&mut page, said, units);

    let likely = said.causes.iter().take_while(|cause| cause.chance >= LEAST).take(MOST).count();
    let (likely, unlikely) = said.causes.split_at(likely);
    if !likely.is_empty() {
        page.heading("Causes, likeliest first");
    }
    for (rank, one) in (1..).zip(likely) {
        cause(&mut page, rank, one);
    }
    hardly(&mut page, unlikely);
    cheapest_first(&mut page, likely);
    pair::section(&mut page, said.pair.as_ref(), units);
    measurements(&mut page, &said.next_measurements);
    sections::notes(&mut page, &said.notes);
    sections::closing(&mut page, None, &said.crowd);
    page.finish()
}

/// The bars: the likely causes, the others together, and that it is none of them.
fn drawn(said: &Diagnosis) -> Vec<Bar> {
    let shown = said.causes.iter().take_while(|cause| cause.chance >= LEAST).take(MOST).count();
    let (shown, others) = said.causes.split_at(shown);
    let bar = |label: &str, chance, before, ink| Bar { label: label.to_owned(), chance, before, ink };
    let mut bars: Vec<Bar> =
        shown.iter().map(|cause| bar(&cause.cause, cause.chance, Some(cause.prior), Ink::Plain)).collect();
    let sum = |causes: &[Cause], of: fn(&Cause) -> f64| causes.iter().map(of).sum::<f64>();
    if !others.is_empty() {
        let (chance, before) = (sum(others, |c| c.chance), sum(others, |c| c.prior));
        let name = words::count(others.len(), "other cause", "other causes");
        bars.push(bar(&name, chance, Some(before), Ink::Quiet));
    }
    if !said.causes.is_empty() {
        let (chance, before) = (1.0 - sum(&said.causes, |c| c.chance), 1.0 - sum(&said.causes, |c| c.prior));
        bars.push(bar("none of these", chance.max(0.0), Some(before.max(0.0)), Ink::Quiet));
    }
    bars
}

/// What is missing, and what an inch of pitch is worth: the two numbers that tell pitch from everything else.
fn scale(page: &mut Page, said: &Diagnosis, units: Units) {
    page.hanging("│ where each stood before the readings and symptoms", Ink::Quiet, "  ", "  ");
    page.gap();
    let inch = number::band(&said.inch_of_pitch, units);
    let text = match &said.missing {
        Some(missing) if missing.middle < 0.0 => {
            let more = Band { low: -missing.high, middle: -missing.middle, high: -missing.low, ..*missing };
            format!("{} more than the boat as stated should turn at full throttle", number::signed(&more, units))
        }
        Some(missing) => format!("missing at full throttle: {}", number::signed(missing, units)),
        None => "no full-throttle reading to tell what is missing".to_owned(),
    };
    page.sentences(&format!("For scale: {text}; an inch of pitch is worth {inch} on this boat."), Ink::Plain);
}

fn cause(page: &mut Page, rank: usize, cause: &Cause) {
    let indent = " ".repeat(14);
    let said = format!(
        "{}: {}, {} ({} before).",
        words::sentence(&cause.cause),
        words::chance(cause.chance),
        words::likelihood(cause.chance),
        words::chance(cause.prior)
    );
    page.hanging(&said, Ink::Speak, &format!("{rank:>3}  "), "     ");
    let mut line = |name: &str, text: &str| {
        if !text.is_empty() {
            page.hanging(&words::sentence(text), Ink::Plain, &format!("     {name:<9}"), &indent);
        }
    };
    line("needs", &cause.would_need);
    for (at, text) in cause.speaks_for.iter().enumerate() {
        line(if at == 0 { "for" } else { "" }, text);
    }
    for (at, text) in cause.against.iter().enumerate() {
        line(if at == 0 { "against" } else { "" }, text);
    }
    line("remedy", &cause.remedy);
    line("cost", words::cost(cause.cost));
}

/// The unlikely causes, those of one chance together.
fn hardly(page: &mut Page, causes: &[Cause]) {
    let mut groups: Vec<(String, Vec<&str>)> = Vec::new();
    for cause in causes {
        let chance = words::chance(cause.chance);
        match groups.last_mut() {
            Some((of, names)) if *of == chance => names.push(&cause.cause),
            _ => groups.push((chance, vec![&cause.cause])),
        }
    }
    page.gap();
    for (chance, names) in groups {
        let each = if names.len() > 1 { " each" } else { "" };
        page.set_in(&format!("Hardly, {chance}{each}: {}.", names.join("; ")), Ink::Quiet);
    }
}

/// The likely causes in the order of what their remedies cost.
fn cheapest_first(page: &mut Page, likely: &[Cause]) {
    if likely.len() < 2 {
        return;
    }
    let mut order: Vec<&Cause> = likely.iter().collect();
    order.sort_by_key(|cause| cause.cost);
    page.heading("To look at, cheapest first");
    let rows: Vec<Vec<Cell>> = order
        .iter()
        .map(|cause| {
            let chance = words::short_chance(cause.chance);
            vec![cause.cause.clone().into(), chance.into(), words::cost(cause.cost).into()]
        })
        .collect();
    page.table("lrl", &[], &rows);
}

fn measurements(page: &mut Page, measurements: &[NextMeasurement]) {
    if measurements.is_empty() {
        return;
    }
    page.heading("Measure next, worthiest first");
    let worth: Vec<&NextMeasurement> =
        measurements.iter().filter(|one| one.worth >= WORTH).take(MEASUREMENTS).collect();
    if worth.is_empty() {
        page.set_in(
            "No measurement on the list would change this answer: do what it says, then read full throttle again.",
            Ink::Plain,
        );
    }
    for (rank, one) in (1..).zip(worth) {
        // Why says what it is worth, in numbers.
        let place = if one.haul_out { "hauled out" } else { "afloat" };
        let text = words::sentence(one.measurement.trim_end_matches('.'));
        page.hanging(&format!("{text}."), Ink::Speak, &format!("{rank:>3}  "), "     ");
        let cost = format!("{}, {place}. {}", words::sentence(words::cost(one.cost)), one.because);
        page.hanging(&cost, Ink::Plain, "     ", "     ");
    }
}
