//! The shortlist at a glance.

use crate::axis::{Scale, step, ticks};
use crate::pen::{Hang, Words};
use crate::rows::strip;
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{LEADING, MARGIN, TEXT};
use crate::words::{short_chance, span, tick};
use counsel::phrase::number;
use counsel::report::{Candidate, Choice, Step};

/// Most lines drawn.
const MOST: usize = 9;

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, choice: &Choice) -> Picture {
    let mut drawing = Drawing::open(sheet, &choice.headline);
    let mut list: Vec<(usize, &Candidate)> = choice.shortlist.iter().enumerate().take(MOST).collect();
    // The propeller fitted is always there to compare with.
    if let Some(fitted) = choice.shortlist.iter().enumerate().skip(MOST).find(|(_, c)| c.step == Step::Leave) {
        list.truncate(MOST - 1);
        list.push(fitted);
    }
    let narrow = sheet.narrow();
    let band = &choice.accepted_band;
    let low = list.iter().map(|(_, c)| c.full_throttle.engine_speed.low).fold(band.low, f64::min);
    let high = list.iter().map(|(_, c)| c.full_throttle.engine_speed.high).fold(band.high, f64::max);
    let names = if narrow { sheet.room() } else { 0.36 * sheet.room() };
    let chance_room = 102.0;
    let fuel_room = if narrow { 0.0 } else { 96.0 };
    let left = if narrow { MARGIN } else { MARGIN + names + 8.0 };
    let right = sheet.width() - MARGIN - chance_room - fuel_room;
    let scale = Scale::new(low - 0.03 * (high - low), high + 0.03 * (high - low), left, right);
    let top = drawing.top + 40.0;
    let height = if narrow { 66.0 } else { 40.0 };
    let bottom = top + height * list.len() as f64;
    let pen = &mut drawing.pen;
    let (b0, b1) = (scale.held(band.low), scale.held(band.high).max(scale.held(band.low) + 2.0));
    if narrow {
        // Clear of the words.
        for i in 0..list.len() {
            let y = top + height * i as f64 + 50.0;
            pen.hatch(b0, y - 12.0, b1, y + 12.0);
        }
    } else {
        pen.hatch(b0, top, b1, bottom);
        pen.line("h", [b0, top - 4.0], [b0, bottom]);
        pen.line("h", [b1, top - 4.0], [b1, bottom]);
    }
    let accepted = format!("accepted {} to {}", number(band.low, 10.0), number(band.high, 10.0));
    let half = 0.5 * pen.width(&accepted, TEXT);
    let middle = (0.5 * (b0 + b1)).min(right - half).max(left + half);
    pen.text("", [middle, top - 10.0], Hang::Middle, &accepted);
    let chance_at = right + 10.0;
    let fuel_at = sheet.width() - MARGIN;
    pen.text("s", [chance_at, top - 10.0], Hang::Start, "in it");
    if !narrow {
        pen.text("s", [fuel_at, top - 10.0], Hang::End, "fuel, L/h");
    }
    for (i, (place, c)) in list.iter().enumerate() {
        let y0 = top + height * i as f64;
        pen.line("h", [MARGIN, y0], [sheet.width() - MARGIN, y0]);
        let name = format!("{}. {}", place + 1, c.what);
        let y = if narrow {
            for (k, line) in (0_u8..).zip(&pen.wrap(&name, TEXT * if i == 0 { 1.12 } else { 1.0 }, names, 2)) {
                let base = y0 + 15.0 + LEADING * f64::from(k);
                pen.text(if i == 0 { "e" } else { "" }, [MARGIN, base], Hang::Start, line);
            }
            y0 + 50.0
        } else {
            let lines = pen.wrap(&name, TEXT * if i == 0 { 1.12 } else { 1.0 }, names, 2);
            for (k, line) in (0_u8..).zip(&lines) {
                let base = y0 + if lines.len() > 1 { 16.0 } else { 24.0 } + LEADING * f64::from(k);
                pen.text(if i == 0 { "e" } else { "" }, [MARGIN, base], Hang::Start, line);
            }
            y0 + 20.0
        };
        strip(pen, &scale, &c.full_throttle.engine_speed, y, 7.0);
        pen.text("", [chance_at, y + 4.0], Hang::Start, short_chance(c.in_band));
        if !narrow {
            let fuel =
                if c.cruise_fuel.middle > 0.0 { span(&c.cruise_fuel).replace(" L/h", "") } else { "none".to_owned() };
            let fuel = pen.fit(&fuel, TEXT, fuel_room - 8.0);
            pen.text("s", [fuel_at, y + 4.0], Hang::End, fuel);
        }
    }
    let (from, to) = scale.ends();
    let s = step(from, to, ((right - left) / 90.0).clamp(2.0, 7.0));
    pen.line("l", [left, bottom], [right, bottom]);
    for v in ticks(from, to, s) {
        let x = scale.px(v);
        pen.line("l", [x, bottom], [x, bottom + 4.0]);
        pen.text("", [x, bottom + 17.0], Hang::Middle, tick(v, s));
    }
    let end_at = if narrow { sheet.width() - MARGIN } else { right };
    pen.text("s", [end_at, bottom + 33.0], Hang::End, "rpm at full throttle, clean and loaded");
    let mut end = bottom + 36.0;
    if !narrow {
        let text =
            format!("Fuel at {} kn. {} sizes were looked at.", number(choice.cruise_speed, 0.1), choice.considered);
        let words = pen.fit(&text, TEXT, left - MARGIN);
        pen.text("s", [MARGIN, bottom + 33.0], Hang::Start, words);
        end = bottom + 36.0;
    }
    drawing.close("Shortlist", desc(sheet, choice, &list), end)
}

fn desc(sheet: &Sheet, choice: &Choice, list: &[(usize, &Candidate)]) -> Words {
    let rows: Vec<String> = list
        .iter()
        .map(|(i, c)| {
            format!(
                "{}: {}, {}",
                i + 1,
                sheet.say(&c.what),
                sheet.say(&format!(
                    "{} at full throttle, inside the band {}",
                    span(&c.full_throttle.engine_speed),
                    short_chance(c.in_band)
                ))
            )
        })
        .collect();
    let what = format!(
        "Shortlist for duty {}, best first, each with the engine speed it would reach at full throttle.",
        choice.duty
    );
    Words::Said(format!("{} {}.", sheet.say(&what), rows.join("; ")))
}
