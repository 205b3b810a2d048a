//! The two sides of a pair, laid side by side on the pages of `judge` and `diagnose`.

use counsel::report::{Band, PairReport, SideSheet};

use crate::args::Units;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::{number, words};

/// What is shown of a side.
type Of<'a> = &'a dyn Fn(&SideSheet) -> Cell;

/// The section; nothing for a boat whose job does not tell its sides apart.
pub fn section(page: &mut Page, pair: Option<&PairReport>, units: Units) {
    let Some(pair) = pair else { return };
    page.heading("Port and starboard, both at full throttle as she is");
    page.set_in(&pair.headline, Ink::Speak);
    page.gap();
    let band = |band: &Band| number::band(band, units);
    let rows: [(&str, Of); 9] = [
        ("propeller as stated", &|s| s.propeller.clone().into()),
        ("pitch that acts", &|s| band(&s.pitch).into()),
        ("read", &|s| {
            s.read.map_or_else(
                || Cell::from("-"),
                |rpm| Cell::inked(number::with_unit(number::rounded(rpm, 10.0), "rpm"), Ink::Measured),
            )
        }),
        ("true engine speed", &|s| band(&s.engine_speed).into()),
        ("tachometer wrong by", &|s| band(&s.tachometer).into()),
        ("power taken", &|s| band(&s.power).into()),
        ("load", &|s| band(&s.load).into()),
        ("thrust", &|s| band(&s.thrust).into()),
        ("too much propeller", &|s| words::chance(s.verdict.over_pitched).into()),
    ];
    let rows: Vec<Vec<Cell>> =
        rows.iter().map(|(name, of)| vec![(*name).into(), of(&pair.port), of(&pair.starboard)]).collect();
    page.table("lll", &["", "port", "starboard"], &rows);
    page.set_in(
        &format!(
            "Starboard less port: {}, {}.",
            number::difference(&pair.engine_speed_difference, units),
            number::difference(&pair.power_difference, units)
        ),
        Ink::Plain,
    );
    page.gap();
    let causes: Vec<Vec<Cell>> = pair
        .causes
        .iter()
        .map(|c| {
            vec![
                c.cause.into(),
                words::chance(c.chance).into(),
                number::difference(&c.difference, units).into(),
                c.cost.into(),
            ]
        })
        .collect();
    page.table("llll", &["it lies in the", "chance", "makes of it", "cost of looking"], &causes);
    for cause in pair.causes.iter().filter(|c| c.chance > 0.2) {
        page.item(&cause.remedy);
    }
    page.set_in(&format!("To part them: {}.", pair.measure_next), Ink::Plain);
    if !pair.explained {
        page.set_in("No pair of alike boats explains what was read on both sides.", Ink::Speak);
    }
    for note in &pair.notes {
        page.set_in(note, Ink::Quiet);
    }
}
