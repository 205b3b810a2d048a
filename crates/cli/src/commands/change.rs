//! `fairwake try`: the same judgement before and after a change.

use counsel::Change;
use counsel::report::{Comparison, Side};

use crate::Outcome;
use crate::answer::Report;
use crate::args::{ChangeArgs, Common, FailOnChange, TryArgs, Units};
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::strip::Shape;
use crate::{answers, load, number, sections};

pub fn run(args: &TryArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    let change = change(&args.change);
    if change.is_empty() {
        return Err(Failure::Asked {
            what: "nothing to try: no change was named".to_owned(),
            instead: "name at least one of --diameter, --pitch, --blades, --area, --cup, --reduction, --displacement, \
                      --growth, --blade-growth"
                .to_owned(),
        });
    }
    let loaded = load::job(&args.job, colour)?;
    let comparison = answers::compare(&loaded.job, &change, common)?;
    let after = comparison.after.verdict;
    let reached = args.fail_on.iter().any(|what| match what {
        FailOnChange::OverPitched => after.over_pitched > 0.5,
        FailOnChange::UnderPitched => after.under_pitched > 0.5,
    });
    Ok(Outcome { text: Box::new(text), report: Report::Try(Box::new(comparison)), doubts: loaded.doubts, reached })
}

/// What the arguments ask to change.
pub fn change(args: &ChangeArgs) -> Change {
    Change {
        diameter: args.diameter,
        pitch: args.pitch,
        blades: args.blades,
        area_ratio: args.area,
        cup: args.cup,
        reduction: args.reduction,
        displacement: args.displacement,
        hull_growth: args.growth,
        blade_growth: args.blade_growth,
    }
}

pub fn text(report: &Report, common: &Common) -> String {
    let mut page = Page::new();
    let Report::Try(said) = report else { return page.finish() };
    let units = common.units;
    sections::opening(&mut page, &said.title, &said.headline);
    let rows = [
        sections::accepted(&said.accepted_band, units),
        sections::engine_speed("before", &said.before.full_throttle, Shape::Thin, units),
        sections::engine_speed("after", &said.after.full_throttle, Shape::Full, units),
    ];
    sections::picture(&mut page, &rows);
    for (when, side) in [("Before", &said.before), ("After", &said.after)] {
        page.hanging(&side.what, Ink::Plain, &format!("{when:<7}"), "       ");
    }
    difference(&mut page, said, units);
    sections::verdict(&mut page, &[("before", &said.before.verdict), ("after", &said.after.verdict)]);
    let states = [("before", &said.before.full_throttle), ("after", &said.after.full_throttle)];
    sections::full_throttle(&mut page, &states, units);
    sections::limits(&mut page, &[("before", &said.before.limits), ("after", &said.after.limits)], units);
    sections::hangs_on(&mut page, &said.hangs_on);
    sections::notes(&mut page, &said.notes);
    sections::closing(&mut page, Some(&said.accepted_band), &said.crowd);
    page.finish()
}

fn difference(page: &mut Page, said: &Comparison, units: Units) {
    page.heading("The difference, boat by boat (sharper than the levels)");
    let cruise = |side: &Side| number::band(&side.cruise_fuel, units);
    let at = number::plain(said.cruise_speed, "kn", units);
    let rows: Vec<Vec<Cell>> = vec![
        vec!["engine speed at full throttle".into(), number::difference(&said.difference.engine_speed, units).into()],
        vec!["boat speed at full throttle".into(), number::difference(&said.difference.speed, units).into()],
        vec![
            format!("fuel at {at}").into(),
            format!(
                "{} (before {}, after {})",
                number::difference(&said.difference.cruise_fuel, units),
                cruise(&said.before),
                cruise(&said.after)
            )
            .into(),
        ],
    ];
    page.table("ll", &[], &rows);
}
