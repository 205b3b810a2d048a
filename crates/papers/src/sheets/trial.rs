//! The sea-trial sheet: bands agreed beforehand, the ladder to be filled in both ways, and what was read so far.

use super::{Desk, Kind};
use crate::speak::printable;
use crate::{Block, Cell, Column, Line, Paper, Table};
use counsel::report::{Band, Judgement};
use job::{Quantity, Reading};

/// Knots in a metre per second.
const KNOT: f64 = 1852.0 / 3600.0;

/// Draws it up.
pub fn paper(desk: &Desk) -> Paper {
    let mut blocks = vec![Block::Text { text: desk.say("papers-trial-how") }, desk.warn("papers-trial-caution")];
    let judgement = desk.answers.judgement.as_ref().ok();
    blocks.push(desk.heading("papers-conditions"));
    blocks.push(Block::Lines { lines: conditions(desk) });
    blocks.push(desk.heading("papers-agreed"));
    match judgement {
        Some(judgement) => {
            blocks.push(agreed(desk, judgement));
            blocks.push(Block::Text { text: desk.say("papers-agreed-rule") });
        }
        None => blocks.push(Block::Text { text: desk.say("papers-agreed-none") }),
    }
    blocks.push(desk.heading("papers-ladder"));
    blocks.push(ladder(desk, judgement));
    blocks.push(desk.heading("papers-more-trial"));
    blocks.push(Block::Lines {
        lines: [
            ("papers-no-load", "rpm"),
            ("papers-optical", "rpm"),
            ("papers-smoke", ""),
            ("papers-exhaust", "\u{b0}C"),
            ("papers-boost", "kPa"),
            ("papers-vibration", "Hz"),
            ("papers-astern", ""),
            ("papers-stopping", "m"),
            ("papers-walk", ""),
            ("papers-photos", "papers-yes-no"),
        ]
        .map(|(label, hint)| desk.blank(label, hint))
        .to_vec(),
    });
    blocks.extend(read(desk));
    blocks.extend(judgement.map(|j| held(desk, j)).unwrap_or_default());
    blocks.push(desk.heading("papers-room"));
    blocks.push(Block::Room { lines: 3 });
    let hangs = judgement.map(|j| j.hangs_on.as_slice()).unwrap_or_default();
    let sources: Vec<String> = judgement.map(|j| j.accepted_band.source.clone()).into_iter().collect();
    blocks.extend(desk.small_print(hangs, &sources));
    blocks.push(Block::Lines {
        lines: vec![
            desk.blank("papers-agreed-by-owner", ""),
            desk.blank("papers-agreed-by-yard", ""),
            desk.blank("papers-verdict-trial", "papers-verdict-choice"),
        ],
    });
    desk.paper(Kind::SeaTrial, blocks)
}

fn conditions(desk: &Desk) -> Vec<Line> {
    [
        ("papers-date", ""),
        ("papers-where", ""),
        ("papers-water-depth", "m"),
        ("papers-water-temperature", "\u{b0}C"),
        ("papers-wind-sea", ""),
        ("papers-tanks", ""),
        ("papers-people", ""),
        ("papers-last-scrub", ""),
        ("papers-propeller", ""),
        ("papers-instruments", ""),
    ]
    .map(|(label, hint)| {
        let value = (label == "papers-propeller").then(|| desk.fitted()).flatten();
        desk.line(label, value.map(|size| words::number(desk.voice.language, &size)), hint)
    })
    .to_vec()
}

/// What full throttle should show, with the propeller fitted and with what is ordered.
fn agreed(desk: &Desk, judgement: &Judgement) -> Block {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-full-loaded"), 5),
        Column::text(desk.say("papers-engine-speed"), 3),
        Column::text(desk.say("papers-boat-speed"), 3),
        Column::text(desk.say("papers-agreed-col"), 2),
    ];
    let row = |what: String, engine_speed: &Band, speed: Option<&Band>| {
        let speed = speed.map_or_else(|| Cell::from("\u{2013}"), |speed| Cell::strong(v.span(speed)));
        vec![what.into(), Cell::strong(v.span(engine_speed)), speed, Cell::blank()]
    };
    let now = &judgement.clean_loaded;
    let fitted = desk.fitted().map(|size| words::number(v.language, &size)).unwrap_or_default();
    let mut rows = vec![row(v.with("papers-fitted-now", &[("size", &fitted)]), &now.engine_speed, Some(&now.speed))];
    if let Some(ordered) = &desk.answers.order {
        rows.push(row(v.sentence(&ordered.what), &ordered.engine_speed, ordered.speed.as_ref()));
    }
    let band = &judgement.accepted_band;
    rows.push(vec![
        desk.say("papers-accepted").into(),
        Cell::strong(v.range(band.low, band.high, "rpm")),
        "\u{2013}".into(),
        Cell::blank(),
    ]);
    Block::Table { table: Table { columns, rows } }
}

/// Engine speeds to hold, each both ways.
fn ladder(desk: &Desk, judgement: Option<&Judgement>) -> Block {
    let v = desk.voice;
    let columns = [
        "rpm",
        "papers-expected-kn",
        "papers-there",
        "papers-back",
        "papers-mean",
        "papers-lh-read",
        "papers-temperature",
    ]
    .iter()
    .enumerate()
    .map(|(i, name)| {
        let head = if i == 0 { (*name).to_owned() } else { desk.say(name) };
        Column::text(head, if i == 0 { 4 } else { 3 + u8::from(i == 6) })
    })
    .collect();
    // With a change ordered the speeds of the boat as she is would mislead.
    let known = judgement.filter(|_| desk.answers.order.is_none());
    let mut rows: Vec<Vec<Cell>> = judgement
        .map(|j| j.load.as_slice())
        .unwrap_or_default()
        .iter()
        .map(|row| {
            let speed = known.map_or_else(|| Cell::from("\u{2013}"), |_| v.bare(&row.speed).into());
            vec![Cell::strong(v.number(row.engine_speed, 10.0)), speed]
        })
        .collect();
    if rows.is_empty() {
        rows = (0..8).map(|_| vec![Cell::blank(), "\u{2013}".into()]).collect();
    }
    let full = match &desk.answers.order {
        Some(ordered) => ordered.speed,
        None => judgement.map(|j| j.clean_loaded.speed),
    };
    rows.push(vec![
        Cell::strong(desk.say("papers-full")),
        full.map_or_else(|| Cell::from("\u{2013}"), |speed| v.bare(&speed).into()),
    ]);
    for row in &mut rows {
        row.extend((0..5).map(|_| Cell::blank()));
    }
    Block::Table { table: Table { columns, rows } }
}

/// Readings taken so far.
fn read(desk: &Desk) -> Vec<Block> {
    let readings = &desk.answers.job.readings;
    if readings.is_empty() {
        return Vec::new();
    }
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-reading"), 4),
        Column::text(desk.say("papers-date"), 2),
        Column::text("rpm", 2),
        Column::text(desk.say("papers-kn"), 2),
        Column::text(desk.say("papers-per-direction"), 3),
        Column::text(desk.say("papers-notes-head"), 4),
    ];
    let rows = readings
        .iter()
        .map(|r| {
            let middle = |q: &Option<Quantity>, factor: f64, step: f64| {
                q.as_ref().map_or_else(|| "\u{2013}".to_owned(), |q| v.number(factor * q.middle, step))
            };
            let speeds: Vec<String> = r.speeds.iter().map(|s| v.number(s.middle / KNOT, 0.1)).collect();
            vec![
                name(desk, r).into(),
                r.date.as_deref().map(printable).unwrap_or_default().into(),
                Cell::strong(middle(&r.engine_speed, 60.0, 10.0)),
                Cell::strong(middle(&r.speed, 1.0 / KNOT, 0.1)),
                speeds.join(" / ").into(),
                r.notes.as_deref().map(printable).unwrap_or_default().into(),
            ]
        })
        .collect();
    vec![desk.heading("papers-read-so-far"), Block::Table { table: Table { columns, rows } }]
}

fn name(desk: &Desk, reading: &Reading) -> String {
    let label = reading.label.as_deref().map(printable).unwrap_or_default();
    let full = if reading.full_throttle { desk.say("papers-full") } else { String::new() };
    let parts: Vec<String> = [label, full].into_iter().filter(|part| !part.is_empty()).collect();
    parts.join(", ")
}

/// What was read against what was expected.
fn held(desk: &Desk, judgement: &Judgement) -> Vec<Block> {
    if judgement.readings.is_empty() {
        return Vec::new();
    }
    let columns = vec![
        Column::text(desk.say("papers-reading"), 4),
        Column::text(desk.say("papers-quantity"), 2),
        Column::number(desk.say("papers-measured")),
        Column::number(desk.say("papers-expected")),
        Column::number(desk.say("papers-weighed")),
        Column::text(desk.say("papers-fits"), 3),
    ];
    let rows = judgement.readings.iter().map(|fit| desk.reading_row(fit)).collect();
    vec![desk.heading("papers-readings-heading"), Block::Table { table: Table { columns, rows } }]
}
