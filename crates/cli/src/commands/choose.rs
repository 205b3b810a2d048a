//! `fairwake choose`: a shortlist of changes and propellers, the cheap ones first.

use counsel::report::{Band, Candidate, Choice, Step};

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

/// Whether it works on the propeller fitted.
fn on_what_is_fitted(candidate: &Candidate) -> bool {
    candidate.step < Step::NewPropeller
}

/// How many new propellers and ratios are listed when nobody says.
pub const LISTED: u16 = 8;

/// The shortlist in the order and number in which it is printed: work on what is fitted first.
pub fn listed(choice: &Choice, most: u16) -> Vec<Candidate> {
    let mut all = choice.shortlist.clone();
    shorten(&mut all, usize::from(most));
    let (mut work, new): (Vec<Candidate>, Vec<Candidate>) = all.into_iter().partition(on_what_is_fitted);
    work.sort_by_key(|candidate| candidate.step);
    work.extend(new);
    work
}

/// Of a list ranked by merit keeps the best of each kind of work on what is fitted, and the `most` best of the rest.
pub fn shorten(shortlist: &mut Vec<Candidate>, most: usize) {
    let mut kinds = Vec::new();
    let mut new = 0;
    shortlist.retain(|candidate| {
        if on_what_is_fitted(candidate) {
            let first = !kinds.contains(&candidate.step);
            kinds.push(candidate.step);
            first
        } else {
            new += 1;
            new <= most
        }
    });
}

/// Rows of the picture beside the propeller fitted and the accepted band.
const DRAWN: usize = 6;

pub fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Choose(said) = report else { return page.finish() };
    let units = common.units;
    let (mut work, new): (Vec<&Candidate>, Vec<&Candidate>) = said.shortlist.iter().partition(|c| on_what_is_fitted(c));
    work.sort_by_key(|candidate| candidate.step);
    let lines: Vec<(usize, &Candidate)> = (1..).zip(work.iter().chain(&new).copied()).collect();
    let (work, new) = lines.split_at(work.len());

    sections::opening(&mut page, &said.title, &said.headline);
    sections::picture(&mut page, &drawn(said, &lines, units));
    let groups = [
        ("Work on what is fitted, in the order of its cost", rows(work, units)),
        ("New propellers and ratios, best first", rows(new, units)),
    ];
    let head = head(said, units);
    let head: Vec<&str> = head.iter().map(String::as_str).collect();
    page.grouped("rlrrrrrr", &head, &groups);

    page.heading("Why they rank so");
    for (number, candidate) in &lines {
        let lead = format!("{number:>4}  ");
        let what = format!("{}; area ratio {:.2}.", words::sentence(&candidate.what), candidate.area_ratio);
        page.hanging(&what, Ink::Speak, &lead, "      ");
        page.hanging(&words::sentence(&candidate.why), Ink::Plain, "      ", "      ");
    }
    page.gap();
    let largest = number::trade_length(said.largest_diameter, units);
    let looked = words::count(said.considered, "propeller", "propellers");
    page.sentences(
        &format!(
            "{looked} looked at for the duty `{}`; largest diameter {largest}: {}. Merit: 100 is the best of all, over the \
             worse half of the boats and less what the step costs; 60 is about a tenth of speed behind.",
            said.duty,
            said.largest_diameter_source.trim_end_matches('.')
        ),
        Ink::Plain,
    );
    if let Some(room) = &said.room {
        page.set_in(room, Ink::Plain);
    }
    if said.misfits > 0 {
        let left = words::count(said.misfits, "candidate", "candidates");
        let why: Vec<String> = said.left_out.iter().map(|m| format!("{} ({})", m.what, m.count)).collect();
        page.set_in(&format!("{left} left out for what `fit` forbids: {}.", words::list(&why, "and")), Ink::Plain);
    }
    sections::hangs_on(&mut page, &said.hangs_on);
    sections::notes(&mut page, &said.notes);
    sections::closing(&mut page, Some(&said.accepted_band), &said.crowd);
    page.finish()
}

/// The propeller fitted and the candidates of most merit over one scale of engine speed.
fn drawn(said: &Choice, lines: &[(usize, &Candidate)], units: Units) -> Vec<Row> {
    let mut by_merit: Vec<&(usize, &Candidate)> = lines.iter().filter(|(_, c)| c.step != Step::Leave).collect();
    by_merit.sort_by(|a, b| b.1.merit.total_cmp(&a.1.merit));
    by_merit.truncate(DRAWN);
    let mut rows = vec![sections::accepted(&said.accepted_band, units)];
    for (number, candidate) in lines {
        let fitted = candidate.step == Step::Leave;
        if !fitted && !by_merit.iter().any(|(of, _)| of == number) {
            continue;
        }
        let label = match candidate.step {
            // The ratio stands in the table: here is room for the size.
            Step::Ratio => format!("{number} {}", size(candidate, units)),
            _ => format!("{number} {}", name(candidate, units)),
        };
        let shape = if fitted { Shape::Thin } else { Shape::Full };
        rows.push(sections::engine_speed(&label, &candidate.full_throttle, shape, units));
    }
    rows
}

/// A candidate in few words: what changes of the propeller fitted, or the size of a new one.
fn name(candidate: &Candidate, units: Units) -> String {
    let length = |mm: f64| match units {
        Units::Metric => format!("{mm:.0} mm"),
        Units::Imperial => format!("{} in", number::inches(mm)),
    };
    match candidate.step {
        Step::Leave => "as it is".to_owned(),
        Step::Clean => "clean".to_owned(),
        Step::TrueUp => "true up".to_owned(),
        Step::Cup if candidate.cup > 0.0 => format!("cup {:.1} %", 100.0 * candidate.cup),
        Step::Cup => "no cup".to_owned(),
        Step::Repitch => format!("pitch {}", length(candidate.pitch)),
        Step::Trim => format!("trim {}", length(candidate.diameter)),
        Step::NewPropeller => size(candidate, units),
        Step::Ratio => format!("{} at {:.2}", size(candidate, units), candidate.reduction),
    }
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

fn towing(said: &Choice) -> bool {
    said.shortlist.iter().any(|c| c.tow_pull.is_some())
}

fn head(said: &Choice, units: Units) -> Vec<String> {
    let unit = |unit| number::shown(unit, units).unit;
    let fuel = format!("{} at {}", unit("L/h"), number::plain(said.cruise_speed, "kn", units));
    let best_at = if towing(said) { format!("pull, {}", unit("N")) } else { "kn".to_owned() };
    ["", "", "merit", "rpm", &best_at, &fuel, "back cav. %", "in band"].map(str::to_owned).to_vec()
}

fn rows(lines: &[(usize, &Candidate)], units: Units) -> Vec<Vec<Cell>> {
    let range = |band: &Band| Cell::from(number::range(band, units));
    let row = |(number, c): &(usize, &Candidate)| {
        vec![
            number.to_string().into(),
            name(c, units).into(),
            format!("{:.0}", c.merit).into(),
            range(&c.full_throttle.engine_speed),
            range(c.tow_pull.as_ref().unwrap_or(&c.full_throttle.speed)),
            range(&c.cruise_fuel),
            range(&c.back_cavitation),
            words::short_chance(c.in_band).into(),
        ]
    };
    lines.iter().map(row).collect()
}
