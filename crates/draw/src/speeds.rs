//! Engine speed, fuel and slip over boat speed.

use crate::axis::Field;
use crate::pen::{Hang, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{MARGIN, TEXT};
use crate::words::{bare, span};
use counsel::curves::{Curves, Mark, Measured, SpeedRow};
use counsel::phrase::number;
use counsel::report::Band;

/// Height of one field, px.
const HEIGHT: f64 = 132.0;

/// What one field shows.
struct Shown {
    name: &'static str,
    band: fn(&SpeedRow) -> Band,
    read: fn(&Mark) -> Option<Measured>,
    from_zero: bool,
}

const FIELDS: [Shown; 3] = [
    Shown { name: "engine speed, rpm", band: |r| r.engine_speed, read: |m| m.engine_speed, from_zero: false },
    Shown { name: "fuel, L/h, all engines", band: |r| r.fuel, read: |m| m.fuel, from_zero: true },
    Shown { name: "apparent slip, %", band: |r| r.apparent_slip, read: |_| None, from_zero: true },
];

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, curves: &Curves) -> Picture {
    let mut drawing = Drawing::open(sheet, sentence(curves));
    let rows = &curves.speeds;
    let most = curves.marks.iter().filter_map(|m| m.speed).map(|s| s.high);
    let top_speed = rows.iter().map(|r| r.speed).chain(most).fold(1.0, f64::max);
    let from = rows.iter().map(|r| r.speed).fold(top_speed, f64::min).min(0.4 * top_speed);
    let (left, right) = (MARGIN + 42.0, sheet.width() - MARGIN - 6.0);
    let mut y = drawing.top + 34.0;
    for (i, shown) in FIELDS.iter().enumerate() {
        let pen = &mut drawing.pen;
        let values: Vec<(f64, Band)> = rows.iter().map(|r| (r.speed, (shown.band)(r))).collect();
        let read = curves.marks.iter().filter_map(shown.read).map(|m| m.high);
        let high = values.iter().map(|v| v.1.high).chain(read).fold(1e-6, f64::max);
        let low = values.iter().map(|v| v.1.low).fold(high, f64::min);
        let low = if shown.from_zero { low.min(0.0) } else { 0.9 * low };
        let field = Field::new([left, y, right, y + HEIGHT], (from, 1.02 * top_speed), (low, 1.06 * high));
        // Cruise as a hatched strip through all three.
        let cruise = curves.cruise_speed;
        if field.x.holds(cruise) {
            let (c0, c1) = (field.x.held(0.96 * cruise), field.x.held(1.04 * cruise));
            pen.hatch(c0, field.top, c1, field.bottom);
            if i == 0 {
                pen.text("", [0.5 * (c0 + c1), field.top - 9.0], Hang::Middle, "cruise");
            }
        }
        if let Some(hump) = &curves.hump
            && field.x.holds(hump.speed.middle)
        {
            let x = field.x.px(hump.speed.middle);
            pen.line("l g", [x, field.top], [x, field.bottom]);
            if i == 0 {
                pen.text("o", [x, field.top + 12.0], Hang::Middle, "hump");
            }
        }
        field.y_axis(pen, shown.name, 4.0);
        field.spread(pen, &values, "m");
        for mark in &curves.marks {
            let (Some(speed), Some(value)) = (mark.speed, (shown.read)(mark)) else { continue };
            field.cross(
                pen,
                [speed.low, speed.middle, speed.high],
                [value.low, value.middle, value.high],
                mark.other_state,
            );
            if i == 0 {
                let at = field.at(speed.middle, value.middle);
                let room = (at[0] - left - 16.0).max(0.0);
                let text = pen.fit(&mark.label, TEXT, room.min(240.0));
                if room > 60.0 {
                    pen.text("o q", [at[0] - 9.0, at[1] - 7.0], Hang::End, text);
                }
            }
        }
        if i + 1 == FIELDS.len() {
            field.x_axis(pen, "boat speed, kn");
        } else {
            pen.line("l", [left, field.bottom], [right, field.bottom]);
        }
        y = field.bottom + 36.0;
    }
    let mut bottom = y;
    if curves.marks.iter().any(|m| m.other_state && m.speed.is_some() && m.engine_speed.is_some()) {
        bottom = drawing.prose(
            "s",
            "A broken cross was read with another propeller or in another state of the boat.",
            y + 16.0,
            2,
        ) - 10.0;
    }
    drawing.close("Speed, rpm, fuel and slip", desc(sheet, curves), bottom)
}

fn at_cruise(curves: &Curves) -> Option<&SpeedRow> {
    curves
        .speeds
        .iter()
        .min_by(|a, b| (a.speed - curves.cruise_speed).abs().total_cmp(&(b.speed - curves.cruise_speed).abs()))
}

fn sentence(curves: &Curves) -> String {
    let cruise = at_cruise(curves).map_or_else(String::new, |row| {
        format!(
            "Near {} kn the engine turns {} and burns {}.",
            number(row.speed, 0.1),
            span(&row.engine_speed),
            span(&row.fuel)
        )
    });
    let top =
        curves.demand.first().map_or_else(String::new, |d| format!(" Flat out {}.", span(&d.full_throttle.speed)));
    let hump = curves.hump.as_ref().map_or_else(String::new, |h| {
        format!(" The hump lies at {}, with {} times the thrust it needs.", span(&h.speed), bare(&h.margin))
    });
    format!("{cruise}{top}{hump}")
}

fn desc(sheet: &Sheet, curves: &Curves) -> Words {
    let rows: Vec<String> = curves
        .speeds
        .iter()
        .step_by(6)
        .map(|r| {
            format!(
                "at {} kn {}, {}, slip {}",
                number(r.speed, 0.1),
                span(&r.engine_speed),
                span(&r.fuel),
                span(&r.apparent_slip)
            )
        })
        .collect();
    Words::Said(format!(
        "{} {}. {}",
        sheet.say("Engine speed, fuel and apparent slip over boat speed with their bands:"),
        sheet.say_all(&rows, "; "),
        sheet.say("Readings are red-lead crosses.")
    ))
}
