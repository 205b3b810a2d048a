//! Three areas of one blade: flattened chord by chord, rolled off, and its shadow.

use super::ring;
use crate::Drawn;
use crate::pen::{Hang, P, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use counsel::phrase::number;
use hydro::blade::{Outline, areas, developed_outline, expanded_outline, projected_outline};

/// Height of a blade from axis to tip, px.
const HEIGHT: f64 = 190.0;

/// The picture, all three at one scale; `None` without a blade.
#[must_use]
pub fn picture(sheet: &Sheet, drawn: &Drawn) -> Option<Picture> {
    let blade = drawn.propeller.blades.first()?;
    let (hub, tip) = (drawn.hub(), drawn.radius());
    let of = areas(&drawn.propeller);
    let sign = drawn.propeller.hand.sign();
    let shown: [(&str, &str, Outline, f64); 3] = [
        ("expanded", "every chord at its full length", expanded_outline(blade, hub, 40), of.expanded_ratio),
        ("developed", "as if rolled off flat", developed_outline(blade, hub, 40), of.developed_ratio),
        ("projected", "its shadow along the shaft", projected_outline(blade, hub, 40), of.projected_ratio),
    ];
    if !(tip > 0.0 && shown.iter().all(|s| s.3.is_finite())) {
        return None;
    }
    let sentence = format!(
        "The blades are {} of the disc as metal laid flat, and {} as the water astern sees them.",
        number(of.expanded_ratio, 0.01),
        number(of.projected_ratio, 0.01)
    );
    let mut drawing = Drawing::open(sheet, &sentence);
    let columns = if sheet.width() < 480.0 { 1 } else { 3 };
    let wide = sheet.room() / f64::from(columns);
    let all = shown.iter().flat_map(|s| s.2.leading.iter().chain(&s.2.trailing)).map(|q| sign * q[0]);
    let (low, high) = all.fold((0.0_f64, 0.0_f64), |e, x| (e.0.min(x), e.1.max(x)));
    let s = (HEIGHT / tip).min((wide - 40.0) / (high - low).max(1e-6));
    let top = drawing.top + 12.0;
    let row = s * tip + 74.0;
    for (i, (name, words, outline, ratio)) in shown.iter().enumerate() {
        let (column, line) = if columns == 1 { (0, i) } else { (i, 0) };
        let left = MARGIN + wide * column as f64;
        let cx = left + 0.5 * wide - 0.5 * s * (low + high);
        let axis = top + row * line as f64 + s * tip;
        let place = |q: [f64; 2]| -> P { [cx + s * sign * q[0], axis - s * q[1]] };
        let pen = &mut drawing.pen;
        // The expanded one behind the others, to see what is lost.
        if i > 0 {
            pen.shape("h", &ring(&shown[0].2, place));
        }
        pen.shape(if i == 2 { "b m" } else { "w m" }, &ring(outline, place));
        pen.line("h c", [left + 8.0, axis], [left + wide - 8.0, axis]);
        let middle = left + 0.5 * wide;
        let value = format!("{} {}", pen.say(*name), pen.say(number(*ratio, 0.01)));
        pen.text("e", [middle, axis + 20.0], Hang::Middle, Words::Said(value));
        let words = pen.fit(*words, crate::style::TEXT, wide - 8.0);
        pen.text("s", [middle, axis + 36.0], Hang::Middle, words);
    }
    let lines = if columns == 1 { 3.0 } else { 1.0 };
    let text = "Area of all blades outside the hub over that of the disc. Hairline: the expanded outline again.";
    let bottom = drawing.prose("s", text, top + row * lines - 10.0, 3) - 10.0;
    let desc = format!("{} {}", sheet.say(&sentence), sheet.say("Three outlines of one blade at one scale."));
    Some(drawing.close("Areas", Words::Said(desc), bottom))
}
