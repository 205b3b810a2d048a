//! `fairwake resistance`: what the hull asks for over speed.

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, ResistanceArgs};
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::{answers, load, number, sections};

pub fn run(args: &ResistanceArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    let loaded = load::job(&args.job, colour)?;
    let table = answers::resistance(&loaded.job, common)?;
    Ok(Outcome {
        text: Box::new(text),
        report: Report::Resistance(Box::new(table)),
        doubts: loaded.doubts,
        reached: false,
    })
}

fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Resistance(said) = report else { return page.finish() };
    let units = common.units;
    sections::opening(&mut page, &said.title, &format!("Resistance by {}.", said.method.trim_end_matches('.')));
    let unit = |unit| number::shown(unit, units).unit;
    let (resistance, power) = (format!("resistance, {}", unit("N")), format!("effective power, {}", unit("kW")));
    let parts: Vec<&str> =
        said.rows.first().map(|row| row.parts.iter().map(|(name, _)| name.as_ref()).collect()).unwrap_or_default();
    let mut head = vec!["kn", "Froude", resistance.as_str(), power.as_str()];
    head.extend(&parts);
    let rows: Vec<Vec<Cell>> = said
        .rows
        .iter()
        .map(|row| {
            let mut cells: Vec<Cell> = vec![
                format!("{:.1}", row.speed).into(),
                format!("{:.3}", row.froude).into(),
                number::range(&row.resistance, units).into(),
                number::range(&row.effective_power, units).into(),
            ];
            let how = number::shown("N", units);
            cells.extend(row.parts.iter().map(|(_, force)| {
                let force = force * how.factor;
                Cell::inked(number::rounded(force, number::step(force, force, force, how.finest)), Ink::Quiet)
            }));
            cells
        })
        .collect();
    page.table(&"r".repeat(head.len()), &head, &rows);
    if !parts.is_empty() {
        page.gap();
        page.sentences(&format!("The parts, {}, are those of the middle boat.", unit("N")), Ink::Quiet);
    }
    sections::notes(&mut page, &said.notes);
    page.finish()
}
