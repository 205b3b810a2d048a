//! Rates over engine speed: shaft, blades, engine and firing as lines from nothing, the speeds to avoid as hatched strips.

use crate::axis::Field;
use crate::pen::{Hang, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{MARGIN, TEXT};
use crate::words::span;
use counsel::fit::report::Fit;
use counsel::phrase::number;

/// Height of the field, px.
const HEIGHT: f64 = 300.0;

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, fit: &Fit) -> Picture {
    let mut drawing = Drawing::open(sheet, sentence(sheet, fit));
    let engine = fit.orders.iter().find(|o| o.what == "engine");
    let full = engine.map_or(3000.0, |o| 60.0 * o.at_full_throttle / o.per_turn.max(1e-9));
    let most = fit.orders.iter().map(|o| o.at_full_throttle).fold(10.0, f64::max);
    // Room for the names at the lines' ends.
    let label = |what: &str, hz: f64| format!("{what} {}", number(hz, if hz < 20.0 { 0.1 } else { 1.0 }));
    let widths = fit.orders.iter().map(|o| drawing.pen.width(label(o.what, o.at_full_throttle), 1.06 * TEXT));
    let names = widths.fold(40.0, f64::max) + 10.0;
    let (left, top) = (MARGIN + 42.0, drawing.top + 26.0);
    let field =
        Field::new([left, top, sheet.width() - MARGIN - names, top + HEIGHT], (0.0, 1.02 * full), (0.0, 1.06 * most));
    let pen = &mut drawing.pen;
    for (i, band) in fit.avoid.iter().enumerate() {
        let (x0, x1) = (field.x.held(band.low), field.x.held(band.high));
        pen.hatch(x0, field.top, x1, field.bottom);
        let y = field.top + 14.0 + 15.0 * (i % 3) as f64;
        let text = pen.fit(&band.why, 12.0, (x1 - field.left - 8.0).max(60.0));
        pen.text("o", [x1 - 4.0, y], Hang::End, text);
    }
    field.y_axis(pen, "times a second, Hz", 5.0);
    field.x_axis(pen, "engine speed, rpm");
    // Names set apart where lines end close together.
    let mut ends: Vec<(f64, &str, f64)> =
        fit.orders.iter().map(|o| (field.y.px(o.at_full_throttle), o.what, o.at_full_throttle)).collect();
    ends.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut last = f64::NEG_INFINITY;
    for (y, what, hz) in ends {
        let class = match what {
            "blades" => "f",
            "firing" => "m g",
            "shaft" => "m",
            _ => "h",
        };
        pen.line(class, field.at(0.0, 0.0), field.at(full, hz));
        let at = y.max(last + 13.0);
        last = at;
        let x = field.x.px(full) + 5.0;
        let emphasis = if what == "blades" { "e" } else { "" };
        pen.text(emphasis, [x, at + 4.0], Hang::Start, label(what, hz));
    }
    let x = field.x.px(full);
    pen.line("l g", [x, field.top], [x, field.bottom]);
    pen.text("o s", [x - 4.0, field.bottom - 6.0], Hang::End, "full throttle");
    let mut y = field.bottom + 46.0;
    for check in fit.checks.iter().filter(|c| c.known && matches!(c.code, "tip-clearance" | "shadow" | "hull-pulse")) {
        let value = check.value.as_ref().map_or(String::new(), |v| format!(": {}", sheet.say(&span(v))));
        let text = if check.code == "shadow" {
            sheet.say(&check.sentence)
        } else {
            format!("{}{}.", counsel::phrase::capital(&sheet.say(check.subject)), value)
        };
        y = drawing.prose("s", Words::Said(text), y, 2);
    }
    drawing.close("Rates and what they meet", desc(sheet, fit), y - 8.0)
}

fn sentence(sheet: &Sheet, fit: &Fit) -> Words {
    match fit.avoid.first() {
        Some(band) => {
            let range = format!("Between {} and {} rpm", number(band.low, 10.0), number(band.high, 10.0));
            Words::Said(format!(
                "{} {}: {}",
                sheet.say(&range),
                sheet.say(&band.why),
                sheet.say("do not cruise there.")
            ))
        }
        None => "No rate of shaft, blades and engine meets another where she is run.".into(),
    }
}

fn desc(sheet: &Sheet, fit: &Fit) -> Words {
    let rates: Vec<String> =
        fit.orders.iter().map(|o| format!("{} {} Hz", o.what, number(o.at_full_throttle, 0.1))).collect();
    let avoid: Vec<String> = fit
        .avoid
        .iter()
        .map(|b| {
            let range = format!("{} to {} rpm", number(b.low, 10.0), number(b.high, 10.0));
            format!("{}, {}", sheet.say(&range), sheet.say(&b.why))
        })
        .collect();
    let avoid = if avoid.is_empty() { sheet.say("nothing") } else { avoid.join("; ") };
    Words::Said(format!(
        "{} {}. {} {avoid}.",
        sheet.say("Frequencies over engine speed, straight from nothing. At full throttle:"),
        sheet.say_all(&rates, ", "),
        sheet.say("To avoid:"),
    ))
}
