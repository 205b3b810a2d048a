//! What we know: how each reading tightened the picture.

use crate::axis::{Scale, step, ticks};
use crate::pen::{Hang, Words};
use crate::rows::strip;
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{LEADING, MARGIN, TEXT};
use crate::words::{span, tick};
use counsel::phrase::number;
use counsel::report::{Band, Evidence, Learnt};

/// Most readings and most learnt quantities drawn.
const MOST: usize = 8;

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, evidence: &Evidence) -> Picture {
    let mut drawing = Drawing::open(sheet, &evidence.headline);
    let narrow = sheet.narrow();
    let mut rows: Vec<(String, Band, bool)> =
        vec![(sheet.say("before any reading"), evidence.engine_speed_before, false)];
    rows.extend(
        evidence
            .readings
            .iter()
            .take(MOST)
            .map(|r| (sheet.say(&format!("with {} alone", r.reading)), r.engine_speed, true)),
    );
    let left_out = evidence.readings.len().saturating_sub(MOST);
    rows.push(("with all readings".to_owned(), evidence.engine_speed_after, false));
    let low = rows.iter().map(|r| r.1.low).fold(f64::INFINITY, f64::min);
    let high = rows.iter().map(|r| r.1.high).fold(0.0, f64::max);
    let names = if narrow { sheet.room() } else { 0.33 * sheet.room() };
    let left = if narrow { MARGIN } else { MARGIN + names + 10.0 };
    let value_room = if narrow { 0.0 } else { 150.0 };
    let right = sheet.width() - MARGIN - value_room;
    let pad = 0.04 * (high - low).max(1.0);
    let scale = Scale::new(low - pad, high + pad, left, right);
    let top = drawing.top + 12.0;
    let height = if narrow { 56.0 } else { 30.0 };
    let pen = &mut drawing.pen;
    let mut y0 = top;
    for (i, (name, band, alone)) in rows.iter().enumerate() {
        pen.line("h", [MARGIN, y0], [sheet.width() - MARGIN, y0]);
        let name = pen.fit(name, TEXT * 1.05, names);
        let class = if *alone { "q" } else { "e" };
        let y = if narrow {
            pen.text(class, [MARGIN, y0 + 15.0], Hang::Start, &name);
            pen.text("", [MARGIN, y0 + 30.0], Hang::Start, span(band));
            y0 + 43.0
        } else {
            pen.text(class, [MARGIN, y0 + 19.0], Hang::Start, &name);
            pen.text("", [sheet.width() - MARGIN, y0 + 19.0], Hang::End, span(band));
            y0 + 15.0
        };
        strip(pen, &scale, band, y, if i + 1 == rows.len() { 8.0 } else { 6.0 });
        y0 += height;
    }
    let (from, to) = scale.ends();
    let s = step(from, to, ((right - left) / 90.0).clamp(2.0, 7.0));
    pen.line("l", [left, y0], [right, y0]);
    for v in ticks(from, to, s) {
        let x = scale.px(v);
        pen.line("l", [x, y0], [x, y0 + 4.0]);
        pen.text("", [x, y0 + 17.0], Hang::Middle, tick(v, s));
    }
    pen.text("s", [right, y0 + 33.0], Hang::End, "rpm expected at full throttle");
    if left_out > 0 {
        pen.text("s", [MARGIN, y0 + 33.0], Hang::Start, format!("{left_out} more not drawn"));
    }
    let mut y = y0 + 62.0;
    if !evidence.together.is_empty() {
        pen.text(
            "e",
            [MARGIN, y],
            Hang::Start,
            if narrow {
                "Taught: hollow before, full after"
            } else {
                "What the readings taught (hollow before, full after)"
            },
        );
        y += 8.0;
        for learnt in evidence.together.iter().take(MOST) {
            y = row(pen, sheet, learnt, y);
        }
    }
    drawing.close("What we know", desc(sheet, evidence), y)
}

/// One quantity: its old band as a hollow bar of full length, the new one inside, moved and narrowed.
fn row(pen: &mut crate::pen::Pen, sheet: &Sheet, learnt: &Learnt, top: f64) -> f64 {
    let narrow = sheet.narrow();
    let bar = if narrow { sheet.room() } else { 180.0 };
    let bar_left = if narrow { MARGIN } else { sheet.width() - MARGIN - bar };
    let text_room = if narrow { sheet.room() } else { bar_left - MARGIN - 12.0 };
    pen.line("h", [MARGIN, top], [sheet.width() - MARGIN, top]);
    let quantity = pen.fit(&learnt.quantity, TEXT, text_room);
    pen.text("", [MARGIN, top + 16.0], Hang::Start, quantity);
    let change = if learnt.before == learnt.after {
        let way = if learnt.moved > 0.0 { "up" } else { "down" };
        format!(
            "{} of its spread {way}, {} of the width left",
            number(learnt.moved.abs(), 0.1),
            number(learnt.narrowed_to, 0.01)
        )
    } else {
        format!("{}  \u{2192}  {}", pen.say(&learnt.before), pen.say(&learnt.after))
    };
    let change = pen.fit(&change, TEXT, text_room);
    pen.text("s", [MARGIN, top + 16.0 + LEADING], Hang::Start, change);
    // ±1.2816 standard deviations of before fill half of the bar; a move shifts the new band within the whole.
    let unit = bar / 4.0 / 1.2816;
    let centre = bar_left + 0.5 * bar;
    let held = |x: f64| x.max(bar_left).min(bar_left + bar);
    let y = if narrow { top + 44.0 } else { top + 18.0 };
    let (w0, w1) = (centre - 0.25 * bar, centre + 0.25 * bar);
    pen.shape("h", &[[w0, y - 7.0], [w1, y - 7.0], [w1, y + 7.0], [w0, y + 7.0]]);
    let middle = centre + learnt.moved * unit;
    let half = 0.25 * bar * learnt.narrowed_to.clamp(0.0, 2.0);
    let (n0, n1) = (held(middle - half), held(middle + half));
    pen.shape("b", &[[n0, y - 7.0], [n1, y - 7.0], [n1, y + 7.0], [n0, y + 7.0]]);
    pen.line("m", [held(middle), y - 9.0], [held(middle), y + 9.0]);
    if narrow { top + 58.0 } else { top + 40.0 }
}

fn desc(sheet: &Sheet, evidence: &Evidence) -> Words {
    let mut rows = vec![format!("before any reading {}", span(&evidence.engine_speed_before))];
    rows.extend(
        evidence
            .readings
            .iter()
            .take(MOST)
            .map(|r| format!("{}: {}", sheet.say(&r.reading), sheet.say(&span(&r.engine_speed)))),
    );
    rows.push(format!("with all readings {}", span(&evidence.engine_speed_after)));
    let learnt = evidence.together.iter().take(MOST).map(|l| {
        let width = sheet.say(&format!("{} of the width", number(l.narrowed_to, 0.01)));
        format!("{}: {} \u{2192} {}, {width}", sheet.say(&l.quantity), sheet.say(&l.before), sheet.say(&l.after))
    });
    Words::Said(format!(
        "{} {}. {}.",
        sheet.say("Engine speed expected at full throttle:"),
        sheet.say_all(&rows, "; "),
        learnt.collect::<Vec<_>>().join("; ")
    ))
}
