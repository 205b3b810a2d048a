//! The order sheet: one line that says it all, each part of it on its own, the bore drawn, and what to measure on arrival.

use super::{Desk, Kind};
use crate::speak::printable;
use crate::{Block, Cell, Column, Line, Paper, Table};
use counsel::phrase;
use counsel::report::{Candidate, Step};
use draw::bore::Bore;
use job::Word;

/// Draws it up.
pub fn paper(desk: &Desk) -> Paper {
    let v = desk.voice;
    let job = &desk.answers.job;
    let mut blocks = Vec::new();
    let wanted = Wanted::of(desk);
    match &desk.answers.order {
        Some(candidate) => {
            blocks.push(Block::Boxed { text: line(desk, &wanted) });
            if candidate.step < Step::NewPropeller {
                blocks.push(Block::Text { text: v.with("papers-order-work", &[("what", &v.words(&candidate.what))]) });
            }
            if candidate.step == Step::Ratio {
                let ratio = v.number(candidate.reduction, 0.01);
                blocks.push(desk.caution(v.with("papers-order-ratio", &[("ratio", &ratio)])));
            }
        }
        None if wanted.diameter.is_some() && wanted.pitch.is_some() => {
            blocks.push(Block::Boxed { text: line(desk, &wanted) });
            blocks.push(Block::Text { text: desk.say("papers-order-spare") });
        }
        None => blocks.push(Block::Text { text: desk.say("papers-order-unknown") }),
    }
    blocks.push(desk.warn("papers-order-as-written"));
    blocks.push(desk.heading("papers-order-parts"));
    blocks.push(Block::Lines { lines: parts(desk, &wanted) });

    blocks.push(desk.heading("papers-bore"));
    let boat = desk.boat();
    let bore = Bore::of_job(job);
    let picture = desk.shown(&draw::bore::picture(&desk.sheet(&boat, 760.0), &bore));
    blocks.push(Block::Pictures { pictures: vec![picture], height: 95 });
    blocks.push(Block::Lines { lines: bore_lines(desk) });
    if let Ok(survey) = &desk.answers.survey
        && let Some(bore) = &survey.bore
    {
        blocks.push(Block::Text { text: v.sentence(&bore.statement) });
        blocks.extend(bore.warning.as_deref().map(|w| desk.caution(v.sentence(w))));
    }
    blocks.push(desk.warn("papers-order-bore-caution"));

    blocks.push(desk.heading("papers-may-vary"));
    blocks
        .push(Block::List { numbered: false, items: vec![desk.say("papers-vary-never"), desk.say("papers-vary-ask")] });
    blocks.push(desk.heading("papers-receipt"));
    blocks.push(receipt(desk, &wanted));
    blocks.extend(expected(desk));
    let hangs = desk.answers.choice.as_ref().map(|c| c.hangs_on.as_slice()).unwrap_or_default();
    let largest = desk.answers.choice.as_ref().map(|choice| {
        let mm = v.length(choice.largest_diameter);
        let why = v.words(&choice.largest_diameter_source);
        Block::Quiet { text: v.with("papers-largest", &[("what", &mm), ("why", why.trim_end_matches('.'))]) }
    });
    blocks.extend(largest);
    let band = desk.answers.choice.as_ref().map(|c| c.accepted_band.source.clone());
    let sources: Vec<String> = band.into_iter().collect();
    blocks.extend(desk.small_print(hangs, &sources));
    blocks.push(desk.signed());
    desk.paper(Kind::Order, blocks)
}

/// What is to be had; mm.
struct Wanted {
    diameter: Option<f64>,
    pitch: Option<f64>,
    blades: Option<u8>,
    area: Option<f64>,
    cup: Option<String>,
    hand: Option<String>,
    material: Option<String>,
}

impl Wanted {
    fn of(desk: &Desk) -> Wanted {
        let p = &desk.answers.job.propeller;
        let v = desk.voice;
        let hand = p.hand.map(|h| v.words(h.word()));
        let material = p.material.as_deref().map(printable);
        let mm = |q: &Option<job::Quantity>| q.as_ref().map(|q| 1000.0 * q.middle);
        match &desk.answers.order {
            Some(c) => Wanted {
                diameter: Some(c.diameter),
                pitch: Some(c.pitch),
                blades: Some(c.blades),
                area: Some(c.area_ratio),
                cup: Some(cup(desk, c)),
                hand,
                material,
            },
            None => Wanted {
                diameter: mm(&p.diameter),
                pitch: mm(&p.pitch),
                blades: p.blades,
                area: p.area_ratio.as_ref().map(|q| q.middle),
                cup: p.cup.map(|c| v.words(c.word())),
                hand,
                material,
            },
        }
    }
}

fn cup(desk: &Desk, candidate: &Candidate) -> String {
    if candidate.cup > 0.005 {
        desk.voice.with("papers-cup-share", &[("share", &desk.voice.percent(candidate.cup))])
    } else {
        desk.say("papers-cup-none")
    }
}

/// The line that says it all; what is not known stands there as a blank to be filled before it is sent.
fn line(desk: &Desk, wanted: &Wanted) -> String {
    let v = desk.voice;
    let open = || "________".to_owned();
    let size = match (wanted.diameter, wanted.pitch) {
        (Some(d), Some(p)) => phrase::size(d / 1000.0, p / 1000.0),
        _ => open(),
    };
    let size = words::number(v.language, &size);
    let blades = wanted.blades.map_or_else(open, |b| b.to_string());
    let hand = wanted.hand.clone().unwrap_or_else(open);
    let area = wanted.area.map_or_else(open, |a| v.number(a, 0.01));
    let cup = wanted.cup.clone().unwrap_or_else(open);
    let material = wanted.material.clone().unwrap_or_else(open);
    v.with(
        "papers-order-line",
        &[
            ("size", &size),
            ("blades", &blades),
            ("hand", &hand),
            ("area", &area),
            ("cup", &cup),
            ("material", &material),
        ],
    )
}

fn parts(desk: &Desk, wanted: &Wanted) -> Vec<Line> {
    let v = desk.voice;
    vec![
        desk.line("papers-diameter", wanted.diameter.map(|mm| v.length(mm)), "mm / in"),
        desk.line("papers-pitch-where", wanted.pitch.map(|mm| v.length(mm)), "mm / in"),
        desk.line("papers-blades", wanted.blades.map(|b| b.to_string()), ""),
        desk.line("papers-hand", wanted.hand.clone(), "papers-hand-choice"),
        desk.line("papers-area", wanted.area.map(|a| v.number(a, 0.01)), ""),
        desk.line("papers-cup", wanted.cup.clone(), ""),
        desk.line("papers-rake-skew", None, "\u{b0} / \u{b0}"),
        desk.line("papers-material", wanted.material.clone(), ""),
        desk.line("papers-class", None, "S / I / II / III"),
        desk.line("papers-balance", None, "g"),
        desk.line("papers-edge", None, "papers-edge-choice"),
        desk.line("papers-repitch", None, "mm / in"),
    ]
}

fn bore_lines(desk: &Desk) -> Vec<Line> {
    let v = desk.voice;
    let hub = desk.answers.job.survey.as_ref().map(|s| &s.hub);
    let length = |pick: &dyn Fn(&job::survey::Hub) -> Option<f64>| hub.and_then(pick).map(|m| v.fine(1000.0 * m));
    vec![
        desk.line("papers-bore-large", length(&|h| h.bore_large.as_ref().map(|q| q.middle)), "mm / in"),
        desk.line("papers-bore-small", length(&|h| h.bore_small.as_ref().map(|q| q.middle)), "mm / in"),
        desk.line(
            "papers-taper-length",
            length(&|h| h.taper_length.as_ref().or(h.length.as_ref()).map(|q| q.middle)),
            "mm / in",
        ),
        desk.line(
            "papers-taper",
            Bore::of_job(&desk.answers.job).taper().map(|t| format!("1:{}", v.number(t, 0.1))),
            "1:",
        ),
        desk.line("papers-keyway-width", length(&|h| h.keyway_width.as_ref().map(|q| q.middle)), "mm / in"),
        desk.line("papers-keyway-depth", length(&|h| h.keyway_depth.as_ref().map(|q| q.middle)), "mm / in"),
        desk.line("papers-hub-length", length(&|h| h.length.as_ref().map(|q| q.middle)), "mm / in"),
        desk.line("papers-hub-diameter", length(&|h| h.diameter.as_ref().map(|q| q.middle)), "mm / in"),
    ]
}

/// What to measure on arrival: ordered, room for measured, room for accepted.
fn receipt(desk: &Desk, wanted: &Wanted) -> Block {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-check"), 4),
        Column::text(desk.say("papers-ordered"), 4),
        Column::text(desk.say("papers-measured"), 3),
        Column::text(desk.say("papers-accept"), 2),
    ];
    let mut checks: Vec<(&str, Option<String>)> = vec![
        ("papers-hand-check", wanted.hand.clone()),
        ("papers-diameter-check", wanted.diameter.map(|mm| v.length(mm))),
        ("papers-pitch-check", wanted.pitch.map(|mm| v.length(mm))),
        ("papers-blades", wanted.blades.map(|b| b.to_string())),
        ("papers-cup", wanted.cup.clone()),
    ];
    let hub = desk.answers.job.survey.as_ref().map(|s| &s.hub);
    let large = hub.and_then(|h| h.bore_large.as_ref()).map(|q| v.fine(1000.0 * q.middle));
    let small = hub.and_then(|h| h.bore_small.as_ref()).map(|q| v.fine(1000.0 * q.middle));
    checks.extend([("papers-bore-large", large), ("papers-bore-small", small), ("papers-marks-check", None)]);
    let rows = checks
        .into_iter()
        .map(|(name, ordered)| {
            let ordered = ordered.map_or_else(Cell::blank, Cell::strong);
            vec![desk.say(name).into(), ordered, Cell::blank(), Cell::blank()]
        })
        .collect();
    Block::Table { table: Table { columns, rows } }
}

/// What it should do on the boat.
fn expected(desk: &Desk) -> Option<Block> {
    let v = desk.voice;
    let candidate = desk.answers.order.as_ref()?;
    let band = &desk.answers.choice.as_ref()?.accepted_band;
    let values = [
        ("rpm", v.span(&candidate.full_throttle.engine_speed)),
        ("speed", v.span(&candidate.full_throttle.speed)),
        ("band", v.range(band.low, band.high, "rpm")),
        ("chance", v.chance(candidate.in_band)),
    ];
    let values: Vec<(&str, &str)> = values.iter().map(|(key, text)| (*key, text.as_str())).collect();
    Some(Block::Text { text: v.with("papers-order-expected", &values) })
}
