//! The order sheet: one line that says it all, each part of it on its own, the bore drawn, and what to measure on arrival.

use super::{Desk, Kind};
use crate::speak::{large, printable, printable_line};
use crate::{Block, Cell, Column, Line, Paper, Table};
use counsel::order::report::{BoreDrawing, OrderSheet, ReceiptRow};
use counsel::report::Step;

/// Every part of an order; one that is not settled is left open to be written in.
const PARTS: [&str; 19] = [
    "diameter",
    "pitch",
    "blades",
    "hand",
    "blade area",
    "sections",
    "cup",
    "rake",
    "skew",
    "bore, large end",
    "bore, small end",
    "taper",
    "keyway",
    "hub length",
    "material",
    "accuracy",
    "balance",
    "trailing edge",
    "room to twist later",
];

/// Draws it up.
pub fn paper(desk: &Desk) -> Paper {
    let mut blocks = match &desk.answers.sheet {
        Some(sheet) => head(desk, sheet),
        None => vec![Block::Text { text: desk.say("papers-order-unknown") }],
    };
    blocks.push(desk.warn("papers-order-as-written"));
    blocks.push(desk.heading("papers-order-parts"));
    blocks.push(Block::Lines { lines: parts(desk, desk.answers.sheet.as_ref()) });

    blocks.push(desk.heading("papers-bore"));
    let bore = desk.answers.sheet.as_ref().map(|sheet| sheet.bore).unwrap_or_default();
    let boat = desk.boat();
    if let Some(picture) = draw::bore::picture(&desk.sheet(&boat, 760.0), &bore) {
        blocks.push(Block::Pictures { pictures: vec![desk.shown(&picture)], height: 85 });
    }
    blocks.push(Block::Lines { lines: bore_lines(desk, &bore) });
    if let Ok(survey) = &desk.answers.survey
        && let Some(bore) = &survey.bore
    {
        blocks.push(Block::Text { text: desk.voice.sentence(&bore.statement) });
        blocks.extend(bore.warning.as_deref().map(|w| desk.caution(desk.voice.sentence(w))));
    }
    blocks.push(desk.warn("papers-order-bore-caution"));
    if let Some(sheet) = &desk.answers.sheet {
        blocks.extend(rest(desk, sheet));
    }
    let choice = desk.answers.choice.as_ref();
    blocks.extend(choice.map(|choice| {
        let mm = desk.voice.length(choice.largest_diameter);
        let why = desk.voice.words(&choice.largest_diameter_source);
        Block::Quiet { text: desk.voice.with("papers-largest", &[("what", &mm), ("why", why.trim_end_matches('.'))]) }
    }));
    let hangs = choice.map(|c| c.hangs_on.as_slice()).unwrap_or_default();
    let sources: Vec<String> = choice.map(|c| c.accepted_band.source.clone()).into_iter().collect();
    blocks.push(desk.signed());
    blocks.extend(desk.small_print(hangs, &sources));
    desk.paper(Kind::Order, blocks)
}

/// The line, and what kind of order it is.
fn head(desk: &Desk, sheet: &OrderSheet) -> Vec<Block> {
    let v = desk.voice;
    let mut blocks: Vec<Block> = sheet
        .refused
        .iter()
        .map(|why| Block::Caution { word: desk.say("papers-refused"), text: v.sentence(why) })
        .collect();
    blocks.push(Block::Boxed { text: v.sentence(&printable_line(&sheet.line)) });
    match &desk.answers.order {
        Some(ordered) => {
            if ordered.step.is_some_and(|step| step < Step::NewPropeller) {
                blocks.push(Block::Text { text: v.with("papers-order-work", &[("what", &v.words(&ordered.what))]) });
            }
            if let Some(reduction) = ordered.reduction {
                let ratio = v.number(reduction, 0.01);
                blocks.push(desk.caution(v.with("papers-order-ratio", &[("ratio", &ratio)])));
            }
        }
        None => blocks.push(Block::Text { text: desk.say("papers-order-spare") }),
    }
    blocks
}

fn parts(desk: &Desk, sheet: Option<&OrderSheet>) -> Vec<Line> {
    let v = desk.voice;
    let fields = sheet.map(|sheet| sheet.fields.as_slice()).unwrap_or_default();
    let others = fields.iter().map(|field| field.what).filter(|what| !PARTS.contains(what));
    PARTS
        .into_iter()
        .chain(others)
        .map(|part| {
            let field = fields.iter().find(|field| field.what == part);
            let value = field.map(|field| {
                let value = v.words(&printable(&field.value));
                if field.from == "order" { value } else { format!("{value} ({})", v.words(field.from)) }
            });
            let hint = match part {
                "hand" => desk.say("papers-hand-choice"),
                "trailing edge" => desk.say("papers-edge-choice"),
                "accuracy" => "S / I / II / III".to_owned(),
                "rake" | "skew" => "\u{b0}".to_owned(),
                "blades" | "material" | "sections" | "cup" | "blade area" => String::new(),
                "taper" => "1:".to_owned(),
                "balance" => "G".to_owned(),
                _ => "mm / in".to_owned(),
            };
            Line { label: large(&v.words(part)), value: value.unwrap_or_default(), hint }
        })
        .collect()
}

fn bore_lines(desk: &Desk, bore: &BoreDrawing) -> Vec<Line> {
    let v = desk.voice;
    let fine = |mm: Option<f64>| mm.map(|mm| v.fine(mm));
    let depth = desk.answers.job.shaft.key_depth.as_ref().map(|q| v.fine(1000.0 * q.middle));
    let taper = bore.taper.filter(|taper| *taper > 1e-4).map(|taper| format!("1:{}", v.number(1.0 / taper, 0.1)));
    vec![
        desk.line("papers-bore-large", fine(bore.large), "mm / in"),
        desk.line("papers-bore-small", fine(bore.small), "mm / in"),
        desk.line("papers-taper-length", fine(bore.length), "mm / in"),
        desk.line("papers-taper", taper, "1:"),
        desk.line("papers-keyway-width", fine(bore.key), "mm / in"),
        desk.line("papers-keyway-depth", depth, "mm / in"),
        desk.line("papers-hub-diameter", fine(bore.hub), "mm / in"),
        desk.blank("papers-bore-checked", "papers-yes-no"),
    ]
}

/// What is open, what may vary, what to measure on arrival, what it should do.
fn rest(desk: &Desk, sheet: &OrderSheet) -> Vec<Block> {
    let v = desk.voice;
    let list = |texts: &[String]| Block::List {
        numbered: false,
        items: texts.iter().map(|text| v.sentence(&printable(text))).collect(),
    };
    let mut blocks = Vec::new();
    if !sheet.doubts.is_empty() {
        blocks.extend([desk.heading("papers-doubts"), list(&sheet.doubts)]);
    }
    blocks.extend([desk.heading("papers-may-vary"), list(&sheet.may_vary)]);
    blocks.push(Block::Text { text: v.sentence(&sheet.must_not_vary) });
    blocks.extend([desk.heading("papers-receipt"), receipt(desk, &sheet.receipt)]);
    blocks.extend(sheet.received.as_deref().map(|said| Block::Text { text: v.sentence(said) }));
    blocks.extend(sheet.cautions.iter().map(|caution| desk.caution(v.sentence(caution))));
    if let (Some(ordered), Some(choice)) = (&desk.answers.order, &desk.answers.choice) {
        let band = &choice.accepted_band;
        let speed = ordered.speed.as_ref().map(|speed| format!(", {}", v.span(speed))).unwrap_or_default();
        let rpm = format!("{}{speed}", v.span(&ordered.engine_speed));
        let values = [("rpm", rpm), ("band", v.range(band.low, band.high, "rpm")), ("chance", v.chance(ordered.right))];
        let values: Vec<(&str, &str)> = values.iter().map(|(key, text)| (*key, text.as_str())).collect();
        blocks.push(Block::Text { text: v.with("papers-order-expected", &values) });
    }
    blocks
}

/// What to measure on arrival: ordered, accept, send back, room for measured.
fn receipt(desk: &Desk, rows: &[ReceiptRow]) -> Block {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-check"), 5),
        Column::text(desk.say("papers-ordered"), 4),
        Column::text(desk.say("papers-accept"), 4),
        Column::text(desk.say("papers-send-back"), 4),
        Column::text(desk.say("papers-measured"), 3),
    ];
    let value = |x: f64, unit: &str| match unit {
        "mm" => v.length(x),
        "" => v.digits(x, 3),
        unit => format!("{} {unit}", v.digits(x, 3)),
    };
    let rows = rows
        .iter()
        .map(|row| {
            let exact = row.accept_from.is_some() && row.accept_from == row.accept_to;
            let accept = match (row.accept_from, row.accept_to) {
                _ if exact => desk.say("papers-exactly"),
                (Some(low), Some(high)) => {
                    v.with("papers-span", &[("low", &value(low, row.unit)), ("high", &value(high, row.unit))])
                }
                (Some(low), None) => v.with("papers-from-on", &[("value", &value(low, row.unit))]),
                (None, Some(high)) => v.with("papers-up-to", &[("value", &value(high, row.unit))]),
                (None, None) => String::new(),
            };
            let below = row.reject_below.map(|x| v.with("papers-below", &[("value", &value(x, row.unit))]));
            let above = row.reject_above.map(|x| v.with("papers-above", &[("value", &value(x, row.unit))]));
            let back = below.into_iter().chain(above).collect::<Vec<String>>().join("; ");
            let back = if exact { desk.say("papers-otherwise") } else { back };
            let measured = row.measured.map_or_else(Cell::blank, |x| {
                let said = row.said.map(|said| format!(": {}", v.words(said))).unwrap_or_default();
                Cell::strong(format!("{}{said}", value(x, row.unit)))
            });
            let check = format!("{}: {}", large(&v.words(row.what)), v.words(row.how));
            vec![check.into(), Cell::strong(v.words(&printable(&row.ordered))), accept.into(), back.into(), measured]
        })
        .collect();
    Block::Table { table: Table { columns, rows } }
}
