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
    // Parts that this kind of hull does not have are left out.
    let parts: Vec<(usize, &str)> = said
        .rows
        .first()
        .into_iter()
        .flat_map(|row| row.parts.iter().enumerate())
        .filter(|(at, _)| said.rows.iter().any(|row| row.parts.get(*at).is_some_and(|part| part.1.abs() >= 5.0)))
        .map(|(at, (name, _))| (at, name.as_str()))
        .collect();
    let mut head = vec!["kn", "Froude", resistance.as_str(), power.as_str()];
    head.extend(parts.iter().map(|(_, name)| *name));
    let how = number::shown("N", units);
    let rows: Vec<Vec<Cell>> = said
        .rows
        .iter()
        .map(|row| {
            let mut cells: Vec<Cell> = vec![
                format!("{:.1}", row.speed).into(),
                format!("{:.2}", row.froude).into(),
                number::range(&row.resistance, units).into(),
                number::range(&row.effective_power, units).into(),
            ];
            cells.extend(parts.iter().filter_map(|(at, _)| row.parts.get(*at)).map(|(_, force)| {
                let force = force * how.factor;
                Cell::inked(number::rounded(force, number::step(force, force, force, how.finest)), Ink::Quiet)
            }));
            cells
        })
        .collect();
    page.table(&"r".repeat(head.len()), &head, &rows);
    if !parts.is_empty() {
        page.gap();
        page.sentences(&format!(
                "The parts, {}, are the middle boat's, by the method as published; the correction is what readings and the \
                 method's own error bring to them.",
                unit("N")
            ), Ink::Quiet);
    }
    sections::notes(&mut page, &said.notes);
    page.finish()
}
