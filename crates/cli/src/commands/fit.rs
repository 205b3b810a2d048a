//! `fairwake fit`: clearances, shaft, bore, strength, vibration, handing.

use counsel::fit::report::{Check, Fit};
use counsel::report::{Band, Gravity};

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, FitArgs, Units};
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::{answers, load, number, sections, words};

pub fn run(args: &FitArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    let loaded = load::job(&args.job, colour)?;
    let job = if args.ordered { counsel::order::ordered(&loaded.job) } else { loaded.job };
    let fit = answers::fit(&job, common)?;
    let reached = args.fail_on.iter().any(|what| {
        let worst = match what {
            crate::args::FailOnFit::Stop => Gravity::Stop,
            crate::args::FailOnFit::Mend => Gravity::Mend,
        };
        fit.checks.iter().any(|c| c.known && c.gravity <= worst)
    });
    Ok(Outcome { text: Box::new(text), report: Report::Fit(Box::new(fit)), doubts: loaded.doubts, reached })
}

pub fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Fit(said) = report else { return page.finish() };
    let units = common.units;
    sections::opening(&mut page, &said.title, &said.headline);
    page.set_in(&format!("For {}, at full throttle, clean and loaded.", said.propeller), Ink::Quiet);
    let (known, wanted): (Vec<&Check>, Vec<&Check>) = said.checks.iter().partition(|c| c.known);
    page.heading("What was looked at, gravest first");
    for check in known {
        one(&mut page, check);
    }
    if !wanted.is_empty() {
        page.heading("Not known: what to measure");
        for check in wanted {
            page.hanging(
                &format!("{}: {}.", words::sentence(check.subject), check.measure),
                Ink::Plain,
                "  - ",
                "    ",
            );
        }
    }
    hand(&mut page, said);
    orders(&mut page, said);
    side_by_side(&mut page, said, units);
    sections::notes(&mut page, &said.notes);
    sections::closing(&mut page, None, &said.crowd);
    page.finish()
}

fn one(page: &mut Page, check: &Check) {
    let (mark, word) = words::gravity(check.gravity);
    let lead = format!("{} {word:<6} ", Ink::Finding(check.gravity).on(mark));
    let indent = " ".repeat(9);
    page.hanging(&check.sentence, Ink::Plain, &lead, &indent);
    if !check.measure.is_empty() && check.gravity != Gravity::Well {
        page.hanging(&format!("What to do: {}.", check.measure), Ink::Plain, &indent, &indent);
    }
    if let Some(caution) = check.caution.filter(|_| check.gravity != Gravity::Well) {
        page.hanging(&format!("Caution: {caution}"), Ink::Speak, &indent, &indent);
    }
    page.hanging(&format!("Rule: {}", check.rule), Ink::Quiet, &indent, &indent);
}

fn hand(page: &mut Page, said: &Fit) {
    page.heading("Hand and paddlewheel effect");
    page.set_in(&said.hand.sentence, Ink::Plain);
    if let Some(pair) = &said.hand.pair {
        page.set_in(pair, Ink::Plain);
    }
    page.set_in(&said.walk.sentence, Ink::Plain);
    for reason in &said.walk.because {
        page.item(&words::sentence(reason));
    }
}

fn orders(page: &mut Page, said: &Fit) {
    page.heading("Rates");
    let rows: Vec<Vec<Cell>> = said
        .orders
        .iter()
        .map(|o| {
            vec![o.what.into(), format!("{:.3}", o.per_turn).into(), number::rounded(o.at_full_throttle, 0.1).into()]
        })
        .collect();
    page.table("lrr", &["", "for one turn of the engine", "Hz at full throttle"], &rows);
    for band in &said.avoid {
        let span = format!("{} to {} rpm", number::rounded(band.low, 10.0), number::rounded(band.high, 10.0));
        page.item(&format!("Avoid for long {span}: {}.", band.why));
    }
}

fn side_by_side(page: &mut Page, said: &Fit, units: Units) {
    page.heading("Blade numbers side by side, at equal load and pitch ratio");
    let rows: Vec<Vec<Cell>> = said
        .blades
        .iter()
        .map(|b| {
            vec![
                b.blades.to_string().into(),
                number::trade_length(b.diameter, units).into(),
                format!("{:.0} %", b.efficiency).into(),
                format!("{:.0} Hz", b.blade_rate).into(),
                format!("{:.0} %", 100.0 * b.pulse).into(),
                if b.in_shadow { "two at a time".into() } else { "one at a time".into() },
            ]
        })
        .collect();
    page.table(
        "rrrrrl",
        &["blades", "diameter needed", "open water", "blade rate", "pulse against fitted", "past the shadow ahead"],
        &rows,
    );
    page.gap();
    let rows: Vec<Vec<Cell>> = said
        .rake
        .iter()
        .map(|r| {
            vec![
                format!("{:.0}°", r.rake).into(),
                format!("{:.1} %", r.longer).into(),
                number::trade_length(r.tip_aft, units).into(),
            ]
        })
        .collect();
    page.table("rrr", &["rake", "blade longer by", "tip aft by"], &rows);
    page.gap();
    let rows: Vec<Vec<Cell>> = said
        .skew
        .iter()
        .map(|s| {
            vec![
                format!("{:.0}°", s.skew).into(),
                format!("{:.1} %", s.blade_rate_thrust).into(),
                format!("{:.0} %", s.left).into(),
            ]
        })
        .collect();
    page.table("rrr", &["skew", "blade-rate thrust of the mean", "of that without skew"], &rows);
    if !said.under_sail.is_empty() {
        page.heading("Under sail");
        let band = |b: &Band| number::band(b, units);
        let rows: Vec<Vec<Cell>> = said
            .under_sail
            .iter()
            .map(|s| vec![s.carried.into(), band(&s.drag).into(), band(&s.lost).into()])
            .collect();
        page.table("lll", &["propeller", "drag", "speed lost"], &rows);
    }
}
