//! Blade number: how often a blade passes the hull in one turn.

use crate::pen::{Hang, P};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use std::f64::consts::TAU;

/// The picture: the passing blades as strokes over one turn and a blade's place at `phase` turns. `None` for no blade, more
/// than 12, or a phase that is no number.
#[must_use]
pub fn picture(sheet: &Sheet, blades: u32, phase: f64) -> Option<Picture> {
    if !(1..=12).contains(&blades) || !phase.is_finite() {
        return None;
    }
    let times = if blades == 1 { "once".to_owned() } else { format!("{blades} times") };
    let sentence = format!("A blade passes the hull {times} in each turn of the shaft.");
    let mut drawing = Drawing::open(sheet, &sentence);
    let radius = 54.0;
    let centre = [MARGIN + radius + 4.0, drawing.top + radius + 16.0];
    let pen = &mut drawing.pen;
    pen.circle("h", centre, radius);
    for k in 0..blades {
        let turn = TAU * (phase.rem_euclid(1.0) + f64::from(k) / f64::from(blades));
        pen.line("f", centre, [centre[0] + radius * turn.sin(), centre[1] - radius * turn.cos()]);
    }
    // Over one turn: a stroke where a blade stands upright, under the hull.
    let (left, right, base) = (centre[0] + radius + 24.0, sheet.width() - MARGIN, centre[1] + 24.0);
    pen.line("m", [left, base], [right, base]);
    for time in passings(blades, phase) {
        let x = left + (right - left) * time;
        let stroke: [P; 2] = [[x, base], [x, base - 48.0]];
        pen.line("f", stroke[0], stroke[1]);
    }
    pen.text("s", [0.5 * (left + right), base + 18.0], Hang::Middle, "one turn from here");
    let bottom = centre[1] + radius + 10.0;
    Some(drawing.close(
        "Blade number",
        format!("{sentence} Left the blades from astern, right the passings over one turn."),
        bottom,
    ))
}

/// When a blade stands upright in the turn that begins at `phase`, turns, each in 0 to 1, in order.
#[must_use]
pub fn passings(blades: u32, phase: f64) -> Vec<f64> {
    let n = f64::from(blades);
    let first = (-phase * n).rem_euclid(1.0) / n;
    (0..blades).map(|k| first + f64::from(k) / n).collect()
}
