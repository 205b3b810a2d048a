//! The parts by name, on the boat's own propeller.

use super::section;
use crate::Drawn;
use crate::pen::{Hang, P, Words};
use crate::propeller::{astern, caption, name, shape};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;

const SENTENCE: &str = "Astern looks the face, which pushes; forward looks the back, which pulls and does most of the work (common practice, no source).";

/// The picture: from astern, and a cut through a blade; `None` without a blade.
#[must_use]
pub fn picture(sheet: &Sheet, drawn: &Drawn) -> Option<Picture> {
    let shape = shape(drawn).filter(|_| drawn.radius() > 0.0)?;
    let mut drawing = Drawing::open(sheet, SENTENCE);
    let (room, top) = (sheet.room(), drawing.top + 4.0);
    let beside = sheet.width() >= 640.0;
    let half = if beside { 0.54 * room } else { room };
    let disc = (half - 90.0).clamp(170.0, 320.0);
    let pen = &mut drawing.pen;
    let centre = [MARGIN + 0.5 * half, top + 34.0 + 0.5 * disc];
    let low = astern::view(pen, drawn, centre, 0.5 * disc / drawn.radius(), [MARGIN, MARGIN + half]);
    // The cut at 0.7 R, forward up.
    let cut = shape.cut(0.7 * shape.tip_radius());
    let (left, wide) = if beside { (MARGIN + half + 26.0, room - half - 26.0) } else { (MARGIN, room) };
    let head = if beside { top + 0.16 * disc } else { low + 24.0 };
    caption(pen, left, head, Hang::Start, "a blade cut at 0.7 R, seen from its tip", wide);
    let (sin, cos) = cut.blade_angle().sin_cos();
    let across = cut.chord * cos + cut.thickness * sin;
    let s = ((wide - 110.0) / across).min(210.0 / (cut.chord * sin + cut.thickness * cos).max(1e-6));
    let tall = s * (cut.chord * sin + cut.thickness * cos);
    let base = head + 44.0 + tall;
    // Seen from the tip of an upright blade, forward up: a right-handed blade leads to the right.
    let sign = drawn.propeller.hand.sign();
    let x0 = left + 0.5 * wide;
    let place = |q: [f64; 2]| -> P {
        let along = q[0] - 0.5 * cut.chord;
        [x0 + sign * s * (along * cos - q[1] * sin), base - s * (q[0] * sin + q[1] * cos)]
    };
    let [face, back] = section(&shape, &cut).map(|side| side.into_iter().map(place).collect::<Vec<P>>());
    let ring: Vec<P> = face.iter().copied().chain(back.iter().rev().copied()).collect();
    pen.shape("b", &ring);
    pen.path("f", &face);
    pen.path("m", &back);
    let (fore, aft) = (face[face.len() - 1], face[0]);
    let hang = |right: bool| if right { Hang::Start } else { Hang::End };
    name(pen, face[14], [face[14][0] + 14.0 * sign, face[14][1] + 30.0], hang(sign > 0.0), "face");
    name(pen, back[14], [back[14][0] - 14.0 * sign, back[14][1] - 22.0], hang(sign < 0.0), "back");
    pen.text("o", [fore[0] + 6.0 * sign, fore[1] - 10.0], Hang::Middle, "leading edge");
    pen.text("o", [aft[0] - 2.0 * sign, aft[1] + 22.0], Hang::Middle, "trailing edge");
    pen.text("s", [x0, base + 44.0], Hang::Middle, "forward is up, astern is down");
    let bottom = if beside { low.max(base + 50.0) } else { base + 50.0 };
    let cupped = drawn.cup.is_some() || drawn.propeller.blades.iter().any(|b| b.cup.is_some());
    let cup =
        if cupped { "The trailing edge is cupped: bent toward the face." } else { "The trailing edge has no cup." };
    let bottom = drawing.prose("s", cup, bottom + 14.0, 2) - 10.0;
    let desc =
        [SENTENCE, "From astern with tip, edges, root and hub, and a cut through a blade with face and back.", cup];
    Some(drawing.close("Parts", Words::Said(desc.map(|text| sheet.say(text)).join(" ")), bottom))
}
