//! The fit sheet: clearances, the seat on the taper, nut, key, locking, anode, rudder, hand; filled with what is known.

use super::{Desk, Kind};
use crate::{Block, Cell, Column, Line, Paper, Table};
use draw::place::Place;

/// Draws it up.
pub fn paper(desk: &Desk) -> Paper {
    let v = desk.voice;
    let job = &desk.answers.job;
    let mut blocks = vec![Block::Boxed { text: title_line(desk) }, desk.warn("papers-fit-hoist")];
    if let Some(place) = Place::of_job(job) {
        let boat = desk.boat();
        let picture = desk.shown(&draw::place::picture(&desk.sheet(&boat, 760.0), &place));
        blocks.push(Block::Pictures { pictures: vec![picture], height: 100 });
    }
    blocks.push(desk.heading("papers-clearance"));
    let largest = job.propeller.largest_diameter.as_ref().map(|q| v.length(1000.0 * q.middle));
    let fitted = ordered_diameter(desk).map(|mm| v.length(mm));
    blocks.push(Block::Lines {
        lines: vec![
            desk.line("papers-diameter", fitted, "mm / in"),
            desk.line("papers-largest-fits", largest, "mm / in"),
        ],
    });
    blocks.push(clearances(desk));
    blocks.push(Block::Quiet { text: desk.say("papers-clearance-rule") });

    blocks.push(desk.heading("papers-hand-heading"));
    let hand = job.propeller.hand.map(|h| v.words(job::Word::word(h)));
    blocks.push(Block::Lines {
        lines: vec![
            desk.line("papers-hand-stamp", hand, "papers-hand-choice"),
            desk.blank("papers-hand-edge", "papers-hand-choice"),
            desk.blank("papers-hand-shaft", "papers-turn-choice"),
        ],
    });
    blocks.push(desk.warn("papers-hand-caution"));

    blocks.push(desk.heading("papers-seat"));
    blocks.push(Block::List {
        numbered: true,
        items: ["papers-seat-1", "papers-seat-2", "papers-seat-3", "papers-seat-4"].map(|name| desk.say(name)).to_vec(),
    });
    blocks.push(Block::Lines { lines: seat(desk) });
    blocks.push(desk.warn("papers-seat-caution"));

    blocks.push(desk.heading("papers-after-fit"));
    blocks.push(Block::Lines {
        lines: [
            ("papers-turn-by-hand", "papers-yes-no"),
            ("papers-rudder-over", "papers-yes-no"),
            ("papers-puller-room", "papers-yes-no"),
            ("papers-anode", "papers-yes-no"),
            ("papers-continuity", "\u{3a9}"),
            ("papers-bearing-play", "mm / in"),
            ("papers-alignment", "mm / in"),
        ]
        .map(|(label, hint)| desk.blank(label, hint))
        .to_vec(),
    });
    blocks.push(desk.heading("papers-room"));
    blocks.push(Block::Room { lines: 3 });
    let hangs = desk.answers.judgement.as_ref().map(|j| j.hangs_on.as_slice()).unwrap_or_default();
    blocks.extend(desk.small_print(hangs, &[]));
    blocks.push(desk.signed());
    desk.paper(Kind::Fit, blocks)
}

fn title_line(desk: &Desk) -> String {
    match &desk.answers.order {
        Some(candidate) => desk.voice.sentence(&candidate.what),
        None => desk
            .fitted()
            .map_or_else(|| desk.say("papers-order-unknown"), |size| words::number(desk.voice.language, &size)),
    }
}

/// Diameter of what is to be fitted, mm.
fn ordered_diameter(desk: &Desk) -> Option<f64> {
    let fitted = desk.answers.job.propeller.diameter.as_ref().map(|q| 1000.0 * q.middle);
    desk.answers.order.as_ref().map(|c| c.diameter).or(fitted)
}

/// Clearances: wanted where a rule gives it, room for measured.
fn clearances(desk: &Desk) -> Block {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-clearance-where"), 4),
        Column::text(desk.say("papers-at-least"), 3),
        Column::text(desk.say("papers-measured-mmin"), 4),
    ];
    // 15 % of the diameter between tip and hull: common practice.
    let tip = ordered_diameter(desk).map(|mm| v.length(0.15 * mm));
    let rows = [
        ("papers-tip-above", tip),
        ("papers-tip-below", None),
        ("papers-ahead", None),
        ("papers-astern-of", None),
        ("papers-rudder-gap", None),
        ("papers-bearing-gap", None),
    ];
    let rows = rows
        .into_iter()
        .map(|(name, least)| {
            let least = least.map_or_else(|| Cell::from("\u{2013}"), Cell::strong);
            vec![desk.say(name).into(), least, Cell::blank()]
        })
        .collect();
    Block::Table { table: Table { columns, rows } }
}

fn seat(desk: &Desk) -> Vec<Line> {
    [
        ("papers-mark-dry", "mm / in"),
        ("papers-mark-key", "mm / in"),
        ("papers-blue", "%"),
        ("papers-key-top", "mm / in"),
        ("papers-nut-order", ""),
        ("papers-nut-torque", "N m / lbf ft"),
        ("papers-locking", "papers-locking-choice"),
    ]
    .map(|(label, hint)| desk.blank(label, hint))
    .to_vec()
}
