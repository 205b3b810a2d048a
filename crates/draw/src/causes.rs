//! Causes: their chances, and what speaks for and against.

use crate::pen::{Hang, Pen, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{LEADING, MARGIN, TEXT};
use crate::words::short_chance;
use counsel::report::{Cause, Diagnosis};

/// Most causes drawn.
const MOST: usize = 6;
/// Strokes in a tally.
const STROKES: u8 = 20;

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, diagnosis: &Diagnosis) -> Picture {
    let mut drawing = Drawing::open(sheet, &diagnosis.headline);
    let mut y = drawing.top + 4.0;
    for stop in diagnosis.stop.iter().take(3) {
        y = drawing.prose("e", Words::Said(format!("\u{25a0} {}", sheet.say(&format!("Stop: {stop}")))), y + 14.0, 3);
    }
    let shown: Vec<&Cause> = diagnosis
        .causes
        .iter()
        .enumerate()
        .filter(|(i, c)| *i < MOST && (*i < 2 || c.chance > 0.015))
        .map(|(_, c)| c)
        .collect();
    y += 6.0;
    for cause in &shown {
        y = entry(&mut drawing.pen, sheet, cause, y);
    }
    let left: f64 = 1.0 - shown.iter().map(|c| c.chance).sum::<f64>();
    let pen = &mut drawing.pen;
    pen.line("h", [MARGIN, y], [sheet.width() - MARGIN, y]);
    let rest = if left > 0.005 { format!("Other causes together {}. ", short_chance(left)) } else { String::new() };
    let text = format!(
        "{rest}Each stroke is one chance in {STROKES}; the triangle marks the chance before anything was read. + speaks for, \u{2212} against."
    );
    let mut bottom = drawing.prose("s", &text, y + 16.0, 4);
    if let Some(next) = diagnosis.next_measurements.first() {
        bottom = drawing.prose(
            "e",
            Words::Said(format!("{} {}", sheet.say("Measure next:"), sheet.say(&next.measurement))),
            bottom + 6.0,
            3,
        );
    }
    drawing.close("Causes", desc(sheet, diagnosis, &shown), bottom - 10.0)
}

/// One cause; returns where the next begins.
fn entry(pen: &mut Pen, sheet: &Sheet, cause: &Cause, top: f64) -> f64 {
    pen.line("h", [MARGIN, top], [sheet.width() - MARGIN, top]);
    let tally = if sheet.narrow() { sheet.room() - 86.0 } else { 0.26 * sheet.room() };
    let text_left = if sheet.narrow() { MARGIN } else { MARGIN + tally + 96.0 };
    let text_room = sheet.width() - MARGIN - text_left;
    let pitch = tally / f64::from(STROKES);
    let y = top + 10.0;
    let filled = (f64::from(STROKES) * cause.chance.clamp(0.0, 1.0)).round();
    let (mut full, mut empty) = (Vec::new(), Vec::new());
    for i in 0..STROKES {
        // Every fifth stands a little apart, as a tally is cut.
        let x = MARGIN + 2.0 + pitch * (f64::from(i) * 0.94 + 0.3 * f64::from(i / 5));
        let run = vec![[x, y], [x, y + 14.0]];
        if f64::from(i) < filled { full.push(run) } else { empty.push(run) }
    }
    pen.paths("f", &full);
    pen.paths("h", &empty);
    let prior = f64::from(STROKES) * cause.prior.clamp(0.0, 1.0);
    let x = MARGIN + 2.0 + pitch * (prior * 0.94 + 0.3 * (prior / 5.0).floor()) - 0.5 * pitch;
    let x = x.max(MARGIN + 2.0);
    pen.shape("l", &[[x, y + 17.0], [x - 4.0, y + 23.0], [x + 4.0, y + 23.0]]);
    pen.text("e", [MARGIN + tally + 8.0, y + 12.0], Hang::Start, short_chance(cause.chance));
    let mut base = if sheet.narrow() { y + 40.0 } else { y + 11.0 };
    let write = |pen: &mut Pen, class: &str, text: Words, indent: f64, most: usize, base: &mut f64| {
        for line in pen.wrap(text, TEXT * if class == "e" { 1.12 } else { 1.0 }, text_room - indent, most) {
            pen.text(class, [text_left + indent, *base], Hang::Start, &line);
            *base += LEADING;
        }
    };
    write(pen, "e", (&cause.cause).into(), 0.0, 2, &mut base);
    for (sign, list) in [("+", &cause.speaks_for), ("\u{2212}", &cause.against)] {
        for reason in list.iter().take(2) {
            pen.text("", [text_left, base], Hang::Start, sign);
            write(pen, "", reason.into(), 14.0, 2, &mut base);
        }
    }
    if !cause.would_need.is_empty() {
        write(
            pen,
            "s",
            Words::Said(format!("{} {}", pen.say("would need"), pen.say(&cause.would_need))),
            14.0,
            2,
            &mut base,
        );
    }
    (base - 2.0).max(top + 42.0)
}

fn desc(sheet: &Sheet, diagnosis: &Diagnosis, shown: &[&Cause]) -> Words {
    let mut said = Vec::new();
    if !diagnosis.explained {
        said.push(sheet.say("No cause fits the readings well."));
    }
    said.push(sheet.say("Causes, likeliest first."));
    let reasons = |list: &[String]| match list {
        [] => sheet.say("nothing"),
        list => sheet.say_all(list, ", "),
    };
    for c in shown {
        let chances = format!("{} (before reading {})", short_chance(c.chance), short_chance(c.prior));
        said.push(format!("{}: {};", sheet.say(&c.cause), sheet.say(&chances)));
        said.push(format!("{} {};", sheet.say("speaks for it:"), reasons(&c.speaks_for)));
        said.push(format!("{} {}.", sheet.say("against it:"), reasons(&c.against)));
    }
    Words::Said(said.join(" "))
}
