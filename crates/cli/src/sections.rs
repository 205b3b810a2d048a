//! Parts that several answers have in common.

use counsel::report::{AcceptedBand, Crowd, Finding, FullThrottle, Gravity, Hang, Limits, Verdict};
use job::{Job, State};

use crate::args::Units;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::strip::{Row, Shape};
use crate::{number, words};

/// The line that stands under every judgement.
pub const SAFETY: &str = "This is advice, not a survey. Whoever works on engine, shaft or propeller, or goes to sea \
    on it, answers for it: the engine and gearbox makers' sheets and a surveyor outrank it.";

/// Title and the sentence to repeat.
pub fn opening(page: &mut Page, heading: &str, sentence: &str) {
    title(page, heading);
    headline(page, sentence);
}

/// The title.
pub fn title(page: &mut Page, title: &str) {
    if !title.is_empty() {
        page.sentences(title, Ink::Quiet);
        page.gap();
    }
}

/// The sentence to repeat.
pub fn headline(page: &mut Page, headline: &str) {
    page.sentences(headline, Ink::Speak);
    page.gap();
}

/// Warnings to stop work, before anything else.
pub fn stop(page: &mut Page, warnings: &[String]) {
    let (mark, word) = words::gravity(Gravity::Stop);
    let lead = format!("{} {word:<6} ", Ink::Finding(Gravity::Stop).on(mark));
    for warning in warnings {
        page.hanging(&words::sentence(warning), Ink::Speak, &lead, &" ".repeat(9));
    }
    page.gap();
}

/// The accepted band as a row of the picture.
pub fn accepted(band: &AcceptedBand, units: Units) -> Row {
    let shown =
        counsel::report::Band { low: band.low, middle: (band.low + band.high) / 2.0, high: band.high, unit: "rpm" };
    Row {
        label: "accepted".to_owned(),
        at: [shown.low, shown.middle, shown.high],
        shape: Shape::Hatched,
        says: number::band(&shown, units),
    }
}

/// Engine speed at full throttle as a row of the picture.
pub fn engine_speed(label: &str, throttle: &FullThrottle, shape: Shape, units: Units) -> Row {
    let band = throttle.engine_speed;
    Row { label: label.to_owned(), at: [band.low, band.middle, band.high], shape, says: number::band(&band, units) }
}

/// What was read at full throttle in the state the job describes, as rows of the picture (three at most).
pub fn readings(job: &Job, units: Units) -> Vec<Row> {
    let here = job.readings.iter().filter(|r| r.full_throttle && r.state == State::default());
    let speeds = here.filter_map(|reading| {
        let at = reading.engine_speed.as_ref()?;
        let [low, middle, high] = [at.low, at.middle, at.high].map(|per_second| per_second * 60.0);
        let band = counsel::report::Band { low, middle, high, unit: "rpm" };
        let read = number::plain(middle, "rpm", units);
        Some(Row {
            label: "read".to_owned(),
            at: [low, middle, high],
            shape: Shape::Cross,
            says: format!("{read} ({})", number::range(&band, units)),
        })
    });
    speeds.take(3).collect()
}

/// The numbers at full throttle, one column per state.
pub fn full_throttle(page: &mut Page, states: &[(&str, &FullThrottle)], units: Units) {
    page.heading("At full throttle");
    let line = |name: &str, say: &dyn Fn(&FullThrottle) -> String| -> Vec<Cell> {
        std::iter::once(name.to_owned().into()).chain(states.iter().map(|(_, state)| say(state).into())).collect()
    };
    let mut rows = vec![
        line("engine speed", &|s| number::band(&s.engine_speed, units)),
        line("boat speed", &|s| number::band(&s.speed, units)),
        line("power of one engine", &|s| number::band(&s.power, units)),
        line("fuel, all engines", &|s| number::band(&s.fuel, units)),
        line("held by the governor", &|s| words::chance(s.governed)),
    ];
    if states.iter().any(|(_, state)| state.stuck_at_hump >= 0.005) {
        rows.push(line("stuck at the hump", &|s| words::chance(s.stuck_at_hump)));
    }
    page.table(&"l".repeat(states.len() + 1), &head(states), &rows);
}

/// The three chances, one column per state.
pub fn verdict(page: &mut Page, states: &[(&str, &Verdict)]) {
    page.heading("The verdict, clean and loaded");
    let line = |name: &str, pick: &dyn Fn(&Verdict) -> f64| -> Vec<Cell> {
        let cells = states.iter().map(|(_, verdict)| {
            let p = pick(verdict);
            Cell::from(format!("{}, {}", words::chance(p), words::likelihood(p)))
        });
        std::iter::once(Cell::from(name.to_owned())).chain(cells).collect()
    };
    let rows = [
        line("over-pitched", &|v| v.over_pitched),
        line("right", &|v| v.right),
        line("under-pitched", &|v| v.under_pitched),
    ];
    let head = head(states);
    page.table(&"l".repeat(states.len() + 1), if states.len() > 1 { &head } else { &[] }, &rows);
}

/// Heads of a table with one column per state.
fn head<'a, T>(states: &[(&'a str, T)]) -> Vec<&'a str> {
    std::iter::once("").chain(states.iter().map(|(name, _)| *name)).collect()
}

/// Limits and measures, one column per state.
pub fn limits(page: &mut Page, states: &[(&str, &Limits)], units: Units) {
    page.heading("The propeller at full throttle");
    let line = |name: &str, pick: &dyn Fn(&Limits) -> counsel::report::Band| -> Vec<Cell> {
        let cells = states.iter().map(|(_, limits)| Cell::from(number::band(&pick(limits), units)));
        std::iter::once(Cell::from(name.to_owned())).chain(cells).collect()
    };
    let rows = [
        line("apparent slip (stated pitch, boat speed)", &|l| l.apparent_slip),
        line("real slip (speed through the wake)", &|l| l.real_slip),
        line("efficiency in open water", &|l| l.efficiency),
        line("part of the blades' back that cavitates", &|l| l.back_cavitation),
        line("thrust lost to cavitation", &|l| l.thrust_lost),
        line("speed of the tip", &|l| l.tip_speed),
        line("thrust over projected blade area", &|l| l.blade_loading),
        line("thrust of one propeller", &|l| l.thrust),
    ];
    let head = head(states);
    page.table(&"l".repeat(states.len() + 1), if states.len() > 1 { &head } else { &[] }, &rows);
}

/// Findings by gravity, with what to do.
pub fn findings(page: &mut Page, findings: &[Finding]) {
    if findings.is_empty() {
        return;
    }
    page.heading("Findings");
    for finding in findings {
        let (mark, word) = words::gravity(finding.gravity);
        let lead = format!("{} {word:<6} ", Ink::Finding(finding.gravity).on(mark));
        let indent = " ".repeat(9);
        page.hanging(&finding.sentence, Ink::Plain, &lead, &indent);
        if !finding.advice.is_empty() {
            page.hanging(&format!("What to do: {}", finding.advice), Ink::Plain, &indent, &indent);
        }
        if let Some(caution) = &finding.caution {
            page.hanging(&format!("Caution: {caution}"), Ink::Speak, &indent, &indent);
        }
        if !finding.hangs_on.is_empty() {
            let on = words::list(&finding.hangs_on, "and");
            page.hanging(&format!("Hangs on {on}."), Ink::Quiet, &indent, &indent);
        }
        if !finding.source.is_empty() {
            page.hanging(&format!("Source: {}", finding.source), Ink::Quiet, &indent, &indent);
        }
    }
}

/// What the answer hangs on, most influential first.
pub fn hangs_on(page: &mut Page, hangs: &[Hang]) {
    if hangs.is_empty() {
        return;
    }
    page.heading("What it hangs on, most influential first");
    let rows: Vec<Vec<Cell>> = hangs
        .iter()
        .map(|hang| {
            let share = if hang.share < 0.005 { "-".to_owned() } else { format!("{:.0} %", hang.share * 100.0) };
            let known = if hang.stated { "stated" } else { "assumed" };
            let ink = if hang.stated { Ink::Plain } else { Ink::Quiet };
            vec![
                hang.quantity.clone().into(),
                hang.value.clone().into(),
                Cell::inked(known, ink),
                share.into(),
                hang.source.clone().into(),
            ]
        })
        .collect();
    page.table("lllrl", &["", "taken as", "", "share", "from"], &rows);
}

/// Warnings that travelled with the numbers.
pub fn notes(page: &mut Page, notes: &[String]) {
    if notes.is_empty() {
        return;
    }
    page.heading("Notes");
    for note in notes {
        page.item(&words::sentence(note));
    }
}

/// On what crowd the answer stands, and the safety line.
pub fn closing(page: &mut Page, band: Option<&AcceptedBand>, crowd: &Crowd) {
    page.gap();
    if let Some(band) = band.filter(|band| !band.source.is_empty()) {
        page.sentences(&format!("Accepted band: {}.", band.source.trim_end_matches('.')), Ink::Quiet);
    }
    let ink = if crowd.explained { Ink::Quiet } else { Ink::Speak };
    if !crowd.statement.is_empty() {
        page.sentences(&format!("{}.", words::sentence(crowd.statement.trim_end_matches('.'))), ink);
    }
    let effective = counsel::phrase::plain(crowd.effective, 2);
    let boats = words::count(crowd.boats, "boat", "boats");
    page.sentences(
        &format!(
            "Drawn: {boats}, seed {}; effective after weighing: {effective}. Bands hold 8 chances in 10.",
            crowd.seed
        ),
        Ink::Quiet,
    );
    page.sentences(SAFETY, Ink::Quiet);
}

/// Draws the picture between two gaps.
pub fn picture(page: &mut Page, rows: &[Row]) {
    page.raw(&crate::strip::draw(rows, "rpm"));
    page.gap();
}
