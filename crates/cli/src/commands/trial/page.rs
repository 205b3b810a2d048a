//! The page of `trial`.

use counsel::report::{Band, Evidence, Gravity, Learnt};

use super::report::{Doubted, LogRead, PastReading, Proposed, ReadingReduced, Trial};
use crate::answer::Report;
use crate::args::{Common, Units};
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::strip::{self, Row, Shape};
use crate::{number, sections, words};

/// Lays the answer out.
pub fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Trial(said) = report else { return page.finish() };
    let units = common.units;
    sections::opening(&mut page, &said.title, &said.headline);
    if let Some(evidence) = &said.evidence {
        sections::picture(&mut page, &drawn(evidence, &names(said, evidence), units));
    }
    logs(&mut page, said);
    proposals(&mut page, said, units);
    readings(&mut page, &said.readings, units);
    history(&mut page, said);
    if !said.missing.is_empty() {
        page.heading("The readings cannot be weighed without");
        for open in &said.missing {
            page.item(&format!("{}: {}", open.key, open.why));
        }
    }
    if let Some(evidence) = &said.evidence {
        taught(&mut page, evidence, &names(said, evidence), said.readings.len(), said.proposals_weighed);
        sections::closing(&mut page, None, &evidence.crowd);
    }
    page.finish()
}

/// The readings weighed, by their numbers on this page: those of the job, then the proposals that are not in it.
fn names(said: &Trial, evidence: &Evidence) -> Vec<String> {
    let open = said.proposals.iter().filter(|proposal| !proposal.in_job && !proposal.accepted);
    let proposed = open.map(|proposal| format!("proposed {}", proposal.number));
    let of_job = (1..=said.readings.len()).map(|number| number.to_string());
    of_job.chain(proposed).take(evidence.readings.len()).collect()
}

/// Full-throttle engine speed as it was expected before, with each reading alone, and with all.
fn drawn(evidence: &Evidence, names: &[String], units: Units) -> Vec<Row> {
    let row = |label: &str, band: &Band, shape| Row {
        label: label.to_owned(),
        at: [band.low, band.middle, band.high],
        shape,
        says: number::band(band, units),
    };
    let mut rows = vec![row("before any reading", &evidence.engine_speed_before, Shape::Thin)];
    if evidence.readings.len() > 1 {
        let alone = names.iter().zip(&evidence.readings).take(8);
        rows.extend(alone.map(|(name, one)| row(&format!("{name} alone"), &one.engine_speed, Shape::Thin)));
    }
    if !evidence.readings.is_empty() {
        rows.push(row("all together", &evidence.engine_speed_after, Shape::Full));
    }
    rows
}

/// What looks weak. The way out is said the first time; `said` holds the codes of those already spoken of.
fn doubt(page: &mut Page, doubts: &[Doubted], indent: &str, said: &mut Vec<&'static str>) {
    let mark = words::gravity(Gravity::Watch).0;
    for doubt in doubts {
        let seen = words::sentence(&doubt.message);
        let text = if said.contains(&doubt.code) {
            format!("{seen}.")
        } else {
            format!("{seen}: {}.", doubt.help.trim_end_matches('.'))
        };
        said.push(doubt.code);
        let lead = format!("{indent}{} ", Ink::Finding(Gravity::Watch).on(mark));
        page.hanging(&text, Ink::Plain, &lead, &format!("{indent}  "));
    }
}

fn logs(page: &mut Page, said: &Trial) {
    if said.logs.is_empty() {
        return;
    }
    page.heading("Logs");
    let mut spoken = Vec::new();
    for log in &said.logs {
        page.hanging(&format!("{}: {}.", log.file, counted(log)), Ink::Plain, "  ", "    ");
        for refused in &log.examples {
            let text = format!("line {}: {}: {}", refused.line, refused.why, refused.text);
            page.hanging(&text, Ink::Quiet, "      ", "        ");
        }
        doubt(page, &log.doubts, "    ", &mut spoken);
    }
    doubt(page, &said.doubts, "  ", &mut spoken);
}

/// What a log's lines were.
fn counted(log: &LogRead) -> String {
    let unit = if log.format == "gpx" { ("track point", "track points") } else { ("line", "lines") };
    let count =
        |number: u64, one: &str, many: &str| words::count(usize::try_from(number).unwrap_or(usize::MAX), one, many);
    let format = match log.format {
        "gpx" => "GPX",
        "nmea" => "NMEA 0183",
        "csv" => "CSV",
        _ => "Signal K",
    };
    let mut text = format!("{format}, {} of {}", count(log.lines, unit.0, unit.1), lasting(log.lasts));
    for (number, one, many) in [
        (log.unused, "without anything of use", "without anything of use"),
        (log.refused, "refused", "refused"),
        (log.repeated, "repeated", "repeated"),
        (log.implausible, "value left out that cannot be", "values left out that cannot be"),
    ] {
        if number > 0 {
            text.push_str(&format!(", {}", count(number, one, many)));
        }
    }
    text
}

/// A stretch of time in words.
fn lasting(seconds: f64) -> String {
    match seconds {
        s if s < 90.0 => format!("{s:.0} s"),
        s if s < 5400.0 => format!("{:.0} min", s / 60.0),
        s if s < 172_800.0 => format!("{:.1} h", s / 3600.0),
        s => format!("{:.0} days", s / 86_400.0),
    }
}

fn proposals(page: &mut Page, said: &Trial, units: Units) {
    if said.proposals.is_empty() {
        return;
    }
    page.heading("Readings proposed");
    let mut spoken = Vec::new();
    for proposal in listed(&said.proposals) {
        page.hanging(&line(proposal, units), Ink::Speak, &format!("{:>3}  ", proposal.number), "     ");
        page.hanging(&format!("{}.", words::sentence(&proposal.made_of)), Ink::Plain, "     ", "     ");
        doubt(page, &proposal.doubts, "     ", &mut spoken);
    }
    let more = said.proposals.len().saturating_sub(LISTED);
    if more > 0 {
        let more = words::count(more, "proposal", "proposals");
        page.set_in(
            &format!("The best are shown; {more} more with --format json. A log of the trial alone is easier to look through."),
            Ink::Quiet,
        );
    }
    page.gap();
    match &said.written {
        Some(file) => page.sentences(&format!("Written to {file}; the rest of it is as it was."), Ink::Speak),
        None if said.proposals.iter().all(|proposal| proposal.in_job) => {}
        None => {
            let top = said.proposals.iter().find(|proposal| proposal.highest && !proposal.full_throttle);
            let number = top.map_or(1, |proposal| proposal.number);
            page.sentences(
                &format!(
                    "Add them with --accept, some with --accept {number}; --full-throttle {number} says that {number} was taken \
                     at full throttle."
                ),
                Ink::Plain,
            );
        }
    }
}

/// Proposals shown.
const LISTED: usize = 16;

/// All proposals, or the best when there are many; in the order of their numbers.
fn listed(proposals: &[Proposed]) -> Vec<&Proposed> {
    let mut best: Vec<&Proposed> = proposals.iter().collect();
    let rank = |proposal: &Proposed| match proposal.quality {
        "good" => 0,
        "fair" => 1,
        _ => 2,
    };
    best.sort_by_key(|proposal| (!proposal.accepted, rank(proposal)));
    best.truncate(LISTED);
    best.sort_by_key(|proposal| proposal.number);
    best
}

/// A proposal in one line.
fn line(proposal: &Proposed, units: Units) -> String {
    let mut parts = vec![proposal.quality.to_owned()];
    parts.extend(proposal.date.clone());
    parts.extend(proposal.engine_speed.map(|rpm| format!("{} rpm", number::rounded(rpm, 1.0))));
    parts.push(number::band(&proposal.speed, units));
    match (proposal.full_throttle, proposal.highest) {
        (true, _) => parts.push("full throttle".to_owned()),
        (false, true) => parts.push("the highest rpm: full throttle?".to_owned()),
        (false, false) => {}
    }
    match (proposal.accepted, proposal.in_job) {
        (true, _) => parts.push("added".to_owned()),
        (_, true) => parts.push("in the job already".to_owned()),
        _ => {}
    }
    words::sentence(&parts.join(", "))
}

fn readings(page: &mut Page, readings: &[ReadingReduced], units: Units) {
    if readings.is_empty() {
        return;
    }
    page.heading("The readings in the job, reduced");
    let mut spoken = Vec::new();
    for (at, reading) in (1..).zip(readings) {
        let mut parts = Vec::new();
        let turns = reading.engine_speed.as_ref();
        parts.extend(
            turns.map(|band| format!("{} rpm ({})", number::rounded(band.middle, 5.0), number::range(band, units))),
        );
        parts.extend(reading.speed.as_ref().map(|band| number::band(band, units)));
        parts.extend(reading.current.filter(|current| current.abs() >= 0.05).map(|current| {
            let way = if current > 0.0 { "with" } else { "against" };
            format!("current {} kn {way} the first run", number::rounded(current.abs(), 0.1))
        }));
        parts.extend(
            reading
                .current_change
                .filter(|change| change.abs() >= 0.05)
                .map(|change| format!("changing by {} kn from run to run", number::rounded(change.abs(), 0.1))),
        );
        parts.extend(reading.log_error.map(|error| format!("log out by {} kn", number::rounded(error, 0.1))));
        let full = if reading.full_throttle { ", full throttle" } else { "" };
        let name = format!("{}{full}", words::sentence(&reading.reading));
        page.hanging(&format!("{name}: {}.", parts.join("; ")), Ink::Plain, &format!("{at:>3}  "), "     ");
        doubt(page, &reading.doubts, "     ", &mut spoken);
    }
}

fn history(page: &mut Page, said: &Trial) {
    if said.history.is_empty() {
        return;
    }
    page.heading("Full throttle over the seasons");
    let row = |past: &PastReading| {
        let band = &past.engine_speed;
        let state = match (past.comparable, past.clean) {
            (false, _) => ", other propeller",
            (_, true) => ", clean",
            _ => "",
        };
        let least = if past.governed { "at least " } else { "" };
        let shape = if past.comparable { Shape::Cross } else { Shape::Thin };
        let says = format!("{least}{}{state}", number::rounded(band.middle, 5.0));
        let label = past.date.clone().unwrap_or_else(|| past.reading.clone());
        Row { label, at: [band.low, band.middle, band.high], shape, says }
    };
    let rows: Vec<Row> = said.history.iter().map(row).collect();
    page.raw(&strip::draw(&rows, "rpm"));
    if let Some(alarm) = &said.growth_alarm {
        let gravity = if alarm.level == "alarm" { Gravity::Mend } else { Gravity::Watch };
        let (mark, word) = words::gravity(gravity);
        let lead = format!("{} {word:<6} ", Ink::Finding(gravity).on(mark));
        page.gap();
        page.hanging(&format!("{}.", words::sentence(&alarm.message)), Ink::Plain, &lead, &" ".repeat(9));
        let indent = " ".repeat(9);
        page.hanging(&format!("What to do: {}.", alarm.help.trim_end_matches('.')), Ink::Plain, &indent, &indent);
        doubt(page, &alarm.doubts, &indent, &mut Vec::new());
        page.hanging(
            "Source: a fall of 100 to 200 rpm or 3 to 5 %; common practice, no source",
            Ink::Quiet,
            &indent,
            &indent,
        );
    }
}

fn taught(page: &mut Page, evidence: &Evidence, names: &[String], of_job: usize, counted: bool) {
    if evidence.readings.is_empty() {
        return;
    }
    page.heading(if counted {
        "What each reading teaches alone, those proposed counted in"
    } else {
        "What each reading taught, alone"
    });
    let mut rows: Vec<Vec<Cell>> = Vec::new();
    for (at, (number, reading)) in names.iter().zip(&evidence.readings).enumerate() {
        let of_job = at < of_job;
        let name = if of_job { format!("{number} {}", words::sentence(&reading.reading)) } else { number.clone() };
        if reading.learnt.is_empty() {
            rows.push(vec![name.into(), "nothing that counts".into()]);
            continue;
        }
        for (first, learnt) in reading.learnt.iter().take(ALONE).enumerate() {
            let name = if first == 0 { name.as_str() } else { "" };
            rows.push(std::iter::once(name.into()).chain(cells(learnt)).collect());
        }
    }
    page.table("llllrr", &["", "", "before", "after", "width", "moved"], &rows);
    // Few boats are left when nothing explains the readings: what they have in common means nothing.
    if !evidence.together.is_empty() && evidence.crowd.explained {
        page.heading("What all together taught");
        let rows: Vec<Vec<Cell>> = evidence.together.iter().map(|learnt| cells(learnt).to_vec()).collect();
        page.table("lllrr", &["", "before", "after", "width", "moved"], &rows);
    }
    page.gap();
    page.hanging(
        "width: of the band after over before; moved: how far its middle went, in standard deviations of before",
        Ink::Quiet,
        "  ",
        "  ",
    );
}

/// Quantities told of each reading.
const ALONE: usize = 3;

fn cells(learnt: &Learnt) -> [Cell; 5] {
    // A method's own error has one wording: its numbers stand at the right.
    let same = learnt.before == learnt.after;
    let moved = number::rounded(learnt.moved, 0.1);
    [
        learnt.quantity.clone().into(),
        learnt.before.clone().into(),
        if same { "".into() } else { learnt.after.clone().into() },
        format!("{:.0} %", 100.0 * learnt.narrowed_to).into(),
        if learnt.moved >= 0.05 { format!("+{moved}").into() } else { moved.into() },
    ]
}
