//! The fit sheet: every check with its rule, clearances and seat to be filled in, nut, key, locking, anode, rudder, hand.

use super::{Desk, Kind};
use crate::speak::large;
use crate::{Block, Cell, Column, Line, Paper, Table};
use counsel::fit::report::{Check, Fit};
use draw::place::Place;
use job::Word;

/// Draws it up.
pub fn paper(desk: &Desk) -> Paper {
    let v = desk.voice;
    let job = &desk.answers.job;
    let fit = desk.answers.fit.as_ref();
    let mut blocks = vec![Block::Boxed { text: title_line(desk) }];
    blocks.extend(fit.map(|fit| Block::Text { text: v.sentence(&fit.headline) }));
    blocks.push(desk.warn("papers-fit-hoist"));
    if let Some(place) = Place::of_job(&desk.answers.fitting) {
        let boat = desk.boat();
        let picture = desk.shown(&draw::place::picture(&desk.sheet(&boat, 760.0), &place));
        blocks.push(Block::Pictures { pictures: vec![picture], height: 100 });
    }
    if let Some(fit) = fit {
        blocks.push(desk.heading("papers-checks"));
        blocks.push(checks(desk, &fit.checks));
        let mut cautions: Vec<&str> = fit.checks.iter().filter_map(|check| check.caution).collect();
        cautions.dedup();
        blocks.extend(cautions.into_iter().map(|caution| desk.caution(v.sentence(caution))));
    }
    blocks.push(desk.heading("papers-clearance"));
    let largest = job.propeller.largest_diameter.as_ref().map(|q| v.length(1000.0 * q.middle));
    let diameter = on_the_shaft(desk);
    blocks.push(Block::Lines {
        lines: vec![
            desk.line("papers-diameter", diameter.map(|mm| v.length(mm)), "mm / in"),
            desk.line("papers-largest-fits", largest, "mm / in"),
        ],
    });
    blocks.push(clearances(desk, diameter, fit));
    blocks.push(Block::Quiet { text: desk.say("papers-clearance-rule") });
    blocks.extend(hand(desk, fit));
    blocks.push(desk.heading("papers-seat"));
    blocks.push(Block::List {
        numbered: true,
        items: ["papers-seat-1", "papers-seat-2", "papers-seat-3", "papers-seat-4"].map(|name| desk.say(name)).to_vec(),
    });
    blocks.push(Block::Lines { lines: seat(desk) });
    blocks.push(desk.warn("papers-seat-caution"));
    blocks.push(desk.heading("papers-after-fit"));
    blocks.push(Block::Lines { lines: afloat(desk) });
    if let Some(fit) = fit.filter(|fit| !fit.avoid.is_empty()) {
        let items = fit.avoid.iter().map(|band| {
            let values = [("band", v.range(band.low, band.high, "rpm")), ("why", v.words(&band.why))];
            v.with("papers-avoid", &values.each_ref().map(|(key, text)| (*key, text.as_str())))
        });
        blocks.push(Block::List { numbered: false, items: items.collect() });
    }
    blocks.push(desk.heading("papers-room"));
    blocks.push(Block::Room { lines: 3 });
    blocks.push(desk.signed());
    blocks.extend(fit.map(|fit| desk.notes(&fit.notes)).unwrap_or_default());
    let hangs = desk.answers.judgement.as_ref().map(|j| j.hangs_on.as_slice()).unwrap_or_default();
    let rules: Vec<String> = fit.map(|fit| fit.checks.iter().map(|c| c.rule.clone()).collect()).unwrap_or_default();
    blocks.extend(desk.small_print(hangs, &rules));
    desk.paper(Kind::Fit, blocks)
}

fn title_line(desk: &Desk) -> String {
    match &desk.answers.order {
        Some(ordered) => desk.voice.sentence(&ordered.what),
        None => desk
            .fitted()
            .map_or_else(|| desk.say("papers-order-unknown"), |size| words::number(desk.voice.language, &size)),
    }
}

/// Every check: what it says, and room for what is measured where it is not known.
fn checks(desk: &Desk, checks: &[Check]) -> Block {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-check"), 3),
        Column::text(desk.say("papers-says"), 8),
        Column::text(desk.say("papers-measured"), 2),
    ];
    let rows = checks
        .iter()
        .map(|check| {
            let (mark, word) = v.gravity(check.gravity);
            let subject = large(&v.words(check.subject));
            if check.known {
                let say = v.sentence(&check.sentence);
                let what = Cell::strong(format!("{mark} {word}: {subject}"));
                vec![what, say.into(), "\u{2013}".into()]
            } else {
                vec![
                    subject.into(),
                    v.with("papers-not-known", &[("what", &v.words(&check.measure))]).into(),
                    Cell::blank(),
                ]
            }
        })
        .collect();
    Block::Table { table: Table { columns, rows } }
}

/// Diameter of what is to be on the shaft, mm.
fn on_the_shaft(desk: &Desk) -> Option<f64> {
    let fitted = desk.answers.job.propeller.diameter.as_ref().map(|q| 1000.0 * q.middle);
    desk.answers.order.as_ref().and_then(|ordered| ordered.diameter).or(fitted)
}

/// Clearances: wanted where a rule gives it, what is known, room for measured.
fn clearances(desk: &Desk, diameter: Option<f64>, fit: Option<&Fit>) -> Block {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-clearance-where"), 4),
        Column::text(desk.say("papers-at-least"), 3),
        Column::text(desk.say("papers-as-said"), 3),
        Column::text(desk.say("papers-measured-mmin"), 4),
    ];
    // 15 % of the diameter between tip and hull: common practice.
    let tip = diameter.map(|mm| v.length(0.15 * mm));
    let place = fit.map(|fit| fit.place).unwrap_or_default();
    let rows = [
        ("papers-tip-above", tip, place.above),
        ("papers-tip-below", None, place.below),
        ("papers-ahead", None, place.ahead),
        ("papers-astern-of", None, place.aft),
        ("papers-rudder-gap", None, None),
        ("papers-bearing-gap", None, None),
    ];
    let dash = || Cell::from("\u{2013}");
    let rows = rows
        .into_iter()
        .map(|(name, least, said)| {
            let said = said.map_or_else(dash, |mm| v.length(mm).into());
            vec![desk.say(name).into(), least.map_or_else(dash, Cell::strong), said, Cell::blank()]
        })
        .collect();
    Block::Table { table: Table { columns, rows } }
}

fn hand(desk: &Desk, fit: Option<&Fit>) -> Vec<Block> {
    let v = desk.voice;
    let mut blocks = vec![desk.heading("papers-hand-heading")];
    if let Some(fit) = fit {
        blocks.push(Block::Text { text: v.sentence(&fit.hand.sentence) });
        blocks.extend(fit.hand.pair.as_deref().map(|pair| Block::Text { text: v.sentence(pair) }));
    }
    let stated = desk.answers.job.propeller.hand.map(|h| v.words(h.word()));
    blocks.push(Block::Lines {
        lines: vec![
            desk.line("papers-hand-stamp", stated, "papers-hand-choice"),
            desk.blank("papers-hand-edge", "papers-hand-choice"),
            desk.blank("papers-hand-shaft", "papers-turn-choice"),
        ],
    });
    blocks.push(desk.warn("papers-hand-caution"));
    blocks.extend(fit.map(|fit| Block::Text { text: v.sentence(&fit.walk.sentence) }));
    blocks
}

fn seat(desk: &Desk) -> Vec<Line> {
    let v = desk.voice;
    let done = &desk.answers.job.fitting;
    let length = |q: &Option<job::Quantity>| q.as_ref().map(|q| v.length(1000.0 * q.middle));
    vec![
        desk.line("papers-mark-dry", length(&done.seat_dry), "mm / in"),
        desk.line("papers-mark-key", length(&done.seat_keyed), "mm / in"),
        desk.line("papers-blue", done.blue_contact.as_ref().map(|q| v.percent(q.middle)), "%"),
        desk.blank("papers-key-top", "mm / in"),
        desk.line("papers-nut-order", done.nut_order.map(|order| v.words(order.word())), ""),
        desk.blank("papers-nut-torque", "N m / lbf ft"),
        desk.line("papers-locking", yes(desk, done.locked), "papers-locking-choice"),
    ]
}

fn afloat(desk: &Desk) -> Vec<Line> {
    let done = &desk.answers.job.fitting;
    let ohms = done.anode_ohms.as_ref().map(|q| format!("{} \u{3a9}", desk.voice.digits(q.middle, 2)));
    vec![
        desk.line("papers-turn-by-hand", yes(desk, done.turns_free), "papers-yes-no"),
        desk.line("papers-rudder-over", yes(desk, done.turns_free), "papers-yes-no"),
        desk.blank("papers-puller-room", "papers-yes-no"),
        desk.blank("papers-anode", "papers-yes-no"),
        desk.line("papers-continuity", ohms, "\u{3a9}"),
        desk.blank("papers-bearing-play", "mm / in"),
        desk.blank("papers-alignment", "mm / in"),
    ]
}

fn yes(desk: &Desk, done: Option<bool>) -> Option<String> {
    done.map(|done| desk.say(if done { "papers-yes" } else { "papers-no" }))
}
