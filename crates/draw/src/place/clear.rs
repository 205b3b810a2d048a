//! Lengths on the drawing: diameter, the largest that fits, and what is to spare all round.

use super::{Ground, Place, edge_at};
use crate::pen::{Hang, P, Pen};
use crate::style::TEXT;
use crate::words::{length, millimetres};

/// Draws them.
pub fn draw(pen: &mut Pen, g: &Ground, place: &Place, radius: f64) {
    let (sin, cos) = place.shaft_angle.0.to_radians().sin_cos();
    let put = |x: f64, z: f64| -> P { g.px(x * cos - z * sin, x * sin + z * cos) };
    let half = 0.22 * radius;
    for z in [radius, -radius] {
        pen.line("h", put(-1.6 * half, z), put(half, z));
    }
    // Left of the propeller, where no shaft is.
    let x = -0.62 * radius;
    let (a, b) = (put(x, radius), put(x, -radius));
    for (z, end) in [(radius, a), (-radius, b)] {
        pen.line("h", put(0.0, z), end);
    }
    let label = put(x, -0.45 * radius);
    pen.dimension(a, b, [label[0] - 5.0, label[1]], Hang::End, format!("{} mm", millimetres(2.0 * radius)));
    gaps(pen, g, place, radius);
    let Some(largest) = place.largest else { return };
    for z in [0.5 * largest, -0.5 * largest] {
        pen.line("r g", put(-0.45 * radius, z), put(0.45 * radius, z));
    }
    let spare = 0.5 * largest - radius;
    let at = put(0.45 * radius, -0.5 * largest);
    let text = if spare >= 0.0 {
        format!("largest that fits {}", length(largest))
    } else {
        format!("too large by {} at the tip", length(-spare))
    };
    // At the foot of the ground, clear of the lines it speaks of.
    let x = (at[0] + 14.0).min(g.right - pen.width(&text, TEXT) - 2.0).max(g.left);
    pen.line("h", at, [x - 3.0, g.bottom - 11.0]);
    pen.text("o q", [x, g.bottom - 7.0], Hang::Start, &text);
}

/// What was measured between blades and boat.
fn gaps(pen: &mut Pen, g: &Ground, place: &Place, radius: f64) {
    let room = &place.room;
    let words = |gap: f64| format!("{} mm", millimetres(gap));
    let x = 0.34 * radius;
    for (reach, up) in [(room.above, 1.0), (room.below, -1.0)] {
        let Some(reach) = reach.filter(|reach| *reach > radius) else { continue };
        let (tip, end) = (g.px(x, up * radius), g.px(x, up * reach));
        pen.line("h", g.px(0.0, up * radius), [tip[0] + 3.0, tip[1]]);
        let middle = 0.5 * (tip[1] + end[1]) + 4.0;
        pen.dimension(tip, end, [tip[0] + 6.0, middle], Hang::Start, words(reach - radius));
    }
    let z = 0.7 * radius;
    if let Some(gap) = room.ahead.filter(|gap| *gap > 0.0) {
        let edge = edge_at(place, 0.5);
        let (a, b) = (g.px(edge, z), g.px(edge + gap, z));
        pen.dimension(a, b, [0.5 * (a[0] + b[0]), a[1] - 6.0], Hang::Middle, words(gap));
    }
    let edge = edge_at(place, -0.5);
    let aft = room.aft.or(room.rudder.map(|(stock, balance)| edge + stock - balance)).filter(|gap| *gap > 0.0);
    if let Some(gap) = aft {
        let (a, b) = (g.px(edge - gap, z), g.px(edge, z));
        // The rudder or its horn, wherever its outline is drawn.
        pen.line("l", [a[0], a[1] - 12.0], [a[0], a[1] + 12.0]);
        pen.dimension(a, b, [0.5 * (a[0] + b[0]), a[1] - 6.0], Hang::Middle, words(gap));
    }
}
