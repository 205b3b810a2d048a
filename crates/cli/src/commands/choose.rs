//! `fairwake choose`: a shortlist of changes and propellers.

use counsel::report::{Candidate, Choice, Step};

use crate::Outcome;
use crate::answer::Report;
use crate::args::{ChooseArgs, Common, Units};
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::strip::{Row, Shape};
use crate::{answers, load, number, sections, words};

pub fn run(args: &ChooseArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    let mut loaded = load::job(&args.job, colour)?;
    loaded.job.duty = args.duty.or(loaded.job.duty);
    let mut choice = answers::choose(&loaded.job, common)?;
    shorten(&mut choice.shortlist, usize::from(args.most));
    Ok(Outcome {
        text: Box::new(text),
        report: Report::Choose(Box::new(choice)),
        doubts: loaded.doubts,
        reached: false,
    })
}

/// Keeps the best, and the propeller fitted wherever it ranks.
pub fn shorten(shortlist: &mut Vec<Candidate>, most: usize) {
    let fitted = shortlist.iter().position(|c| c.step == Step::Leave).filter(|at| *at >= most);
    let fitted = fitted.map(|at| shortlist.swap_remove(at));
    shortlist.truncate(most);
    if let Some(fitted) = fitted {
        shortlist.pop();
        shortlist.push(fitted);
    }
}

/// Rows of the picture.
const DRAWN: usize = 8;

pub fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Choose(said) = report else { return page.finish() };
    let units = common.units;
    sections::opening(&mut page, &said.title, &said.headline);
    sections::picture(&mut page, &drawn(said, units));
    table(&mut page, said, units);

    page.heading("Why they rank so");
    for (rank, candidate) in said.shortlist.iter().enumerate() {
        let lead = format!("{:>4}  ", rank + 1);
        let what = format!("{}; area ratio {:.2}.", words::sentence(&candidate.what), candidate.area_ratio);
        page.hanging(&what, Ink::Speak, &lead, "      ");
        page.hanging(&words::sentence(&candidate.why), Ink::Plain, "      ", "      ");
    }
    page.gap();
    let largest = number::trade_length(said.largest_diameter, units);
    let looked = words::count(said.considered, "propeller", "propellers");
    page.sentences(
        &format!(
            "{looked} looked at for the duty `{}`; largest diameter {largest}: {}.",
            said.duty,
            said.largest_diameter_source.trim_end_matches('.')
        ),
        Ink::Plain,
    );
    sections::hangs_on(&mut page, &said.hangs_on);
    sections::notes(&mut page, &said.notes);
    sections::closing(&mut page, &said.accepted_band, &said.crowd);
    page.finish()
}

/// The best candidates and the propeller fitted over one scale of engine speed.
fn drawn(said: &Choice, units: Units) -> Vec<Row> {
    let mut rows = vec![sections::accepted(&said.accepted_band, units)];
    for (rank, candidate) in said.shortlist.iter().enumerate() {
        let fitted = candidate.step == Step::Leave;
        if rank >= DRAWN && !fitted {
            continue;
        }
        let size = size(candidate, units);
        let label = if fitted { format!("{} fitted", rank + 1) } else { format!("{} {size}", rank + 1) };
        let shape = if fitted { Shape::Thin } else { Shape::Full };
        rows.push(sections::engine_speed(&label, &candidate.full_throttle, shape, units));
    }
    rows
}

/// `16 x 11 in x 3`
fn size(candidate: &Candidate, units: Units) -> String {
    match units {
        Units::Metric => format!("{:.0} x {:.0} mm x {}", candidate.diameter, candidate.pitch, candidate.blades),
        Units::Imperial => {
            let (diameter, pitch) = (number::inches(candidate.diameter), number::inches(candidate.pitch));
            format!("{diameter} x {pitch} in x {}", candidate.blades)
        }
    }
}

fn table(page: &mut Page, said: &Choice, units: Units) {
    let unit = |unit| number::shown(unit, units).unit;
    let cruise = number::plain(said.cruise_speed, "kn", units);
    let fuel = format!("{} at {cruise}", unit("L/h"));
    let towing = said.shortlist.iter().any(|c| c.tow_pull.is_some());
    let pull = format!("pull, {}", unit("N"));
    let mut head = vec!["", "propeller", "rpm", "kn", fuel.as_str(), "back cav. %", "in the band"];
    let mut align = "rlrrrrr".to_owned();
    if towing {
        head.push(&pull);
        align.push('r');
    }
    let rows: Vec<Vec<Cell>> = said
        .shortlist
        .iter()
        .enumerate()
        .map(|(rank, c)| {
            let range = |band| Cell::from(number::range(band, units));
            let mut row: Vec<Cell> = vec![
                (rank + 1).to_string().into(),
                size(c, units).into(),
                range(&c.full_throttle.engine_speed),
                range(&c.full_throttle.speed),
                range(&c.cruise_fuel),
                range(&c.back_cavitation),
                words::short_chance(c.in_band).into(),
            ];
            if towing {
                row.push(c.tow_pull.as_ref().map_or_else(|| "-".into(), range));
            }
            row
        })
        .collect();
    page.heading("Shortlist, best first");
    page.table(&align, &head, &rows);
}
