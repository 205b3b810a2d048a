//! Paddlewheel effect from above: where the stern goes, ahead from rest and astern.

use crate::pen::{Hang, P, Pen, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use counsel::fit::report::Fit;

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, fit: &Fit) -> Picture {
    let walk = &fit.walk;
    let mut drawing = Drawing::open(sheet, &walk.sentence);
    let (room, top) = (sheet.width() - 2.0 * MARGIN, drawing.top + 34.0);
    let length = (0.36 * room).min(170.0);
    let pen = &mut drawing.pen;
    for (i, (gear, side)) in [("ahead from rest", walk.ahead), ("astern", walk.astern)].into_iter().enumerate() {
        let cx = MARGIN + room * (0.27 + 0.46 * i as f64);
        let turn = match side {
            "starboard" => 1.0,
            "port" => -1.0,
            _ => 0.0,
        };
        pen.text("e", [cx, top - 14.0], Hang::Middle, gear);
        // The boat as she lay, thin, and after the stern has gone, full; both about a point forward of amidships.
        boat(pen, "h g", cx, top, length, 0.0);
        let degrees: f64 = match walk.size {
            "strong" => 22.0,
            "moderate" => 14.0,
            _ => 7.0,
        };
        let swing = if i == 0 { 0.4 } else { 1.0 } * degrees;
        boat(pen, "m", cx, top, length, turn * swing);
        let (y, x) = (top + 1.04 * length, cx);
        if turn == 0.0 {
            pen.text("s", [x, y + 16.0], Hang::Middle, "neither way");
        } else {
            let end = x + turn * 46.0;
            pen.line("f", [x, y], [end, y]);
            pen.path("f", &[[end - turn * 9.0, y - 6.0], [end, y], [end - turn * 9.0, y + 6.0]]);
            pen.text("", [x + turn * 23.0, y + 18.0], Hang::Middle, format!("stern to {side}"));
        }
    }
    let mut y = top + 1.04 * length + 46.0;
    for reason in &walk.because {
        let said = counsel::phrase::capital(&sheet.say(reason.trim_end_matches('.')));
        y = drawing.prose("s", Words::Said(format!("{said}.")), y, 4);
    }
    let said =
        [sheet.say("The boat from above, bow up."), sheet.say(&walk.sentence), sheet.say_all(&walk.because, ". ")];
    drawing.close("Which way the stern goes", Words::Said(said.join(" ")), y - 8.0)
}

/// A hull from above, bow up, its stern swung to starboard by so many degrees.
fn boat(pen: &mut Pen, class: &str, cx: f64, top: f64, length: f64, degrees: f64) {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let pivot = 0.35 * length;
    let place = |x: f64, y: f64| -> P {
        let y = y * length - pivot;
        let x = x * length;
        // The stern, at large y, goes to the right for a swing to starboard.
        [cx + x * cos + y * sin, top + pivot - x * sin + y * cos]
    };
    let mut outline = Vec::new();
    for side in [1.0, -1.0] {
        let half = |t: f64| side * 0.16 * (t * std::f64::consts::PI * 0.62).sin().max(0.0).powf(0.8);
        let mut run: Vec<P> = (0..=16).map(|i| f64::from(i) / 16.0).map(|t| place(half(t), t)).collect();
        if side < 0.0 {
            run.reverse();
        }
        outline.extend(run);
    }
    pen.shape(class, &outline);
    pen.line(class, place(0.0, 0.97), place(0.0, 1.05));
}
