//! Cup: the trailing edge bent toward the face, and what it does to the line from nose to tail.

use crate::pen::{Hang, P, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use crate::words::millimetres;
use std::f64::consts::TAU;

/// A flat-faced section with a lip. Lengths in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lip {
    /// Radius of the section; above 0.
    pub radius: f64,
    /// Pitch of the face there; above 0.
    pub pitch: f64,
    /// Chord; above 0.
    pub chord: f64,
    /// Greatest thickness, under half of the chord.
    pub thickness: f64,
    /// How far the edge is bent below the line of the face, under a fifth of the chord.
    pub drop: f64,
    /// Length of the lip along the chord, under the chord.
    pub length: f64,
}

impl Lip {
    /// Pitch of the line from nose to the lip's edge: the face's angle and `atan(drop/chord)` on top.
    #[must_use]
    pub fn nose_tail_pitch(&self) -> f64 {
        let angle = self.pitch.atan2(TAU * self.radius) + self.drop.atan2(self.chord);
        TAU * self.radius * angle.tan()
    }

    fn drawable(&self) -> bool {
        let all = [self.radius, self.pitch, self.chord, self.thickness, self.drop, self.length];
        all.iter().all(|v| v.is_finite() && *v > 0.0)
            && self.thickness < 0.5 * self.chord
            && self.drop < 0.2 * self.chord
            && self.length < self.chord
            && self.nose_tail_pitch() < 4.0 * self.pitch
    }

    /// Height of the face over its line at `along` from the trailing edge: the lip is a parabola tangent to the face.
    fn face(&self, along: f64) -> f64 {
        let into = (1.0 - along / self.length).max(0.0);
        -self.drop * into * into
    }

    /// Height of the back: a circular-backed section's parabola over the face.
    fn back(&self, along: f64) -> f64 {
        let t = along / self.chord;
        self.face(along) + 4.0 * self.thickness * t * (1.0 - t) + 0.04 * self.thickness
    }
}

/// The picture, to scale, chord level; `None` where a length is not one.
#[must_use]
pub fn picture(sheet: &Sheet, lip: &Lip) -> Option<Picture> {
    if !lip.drawable() {
        return None;
    }
    let more = lip.nose_tail_pitch() - lip.pitch;
    let sentence = format!(
        "A lip of {} mm turns the line from nose to tail by {} mm of pitch: cup is pitch by another name, and goes when the edge is ground.",
        millimetres(lip.drop),
        millimetres(more)
    );
    let mut drawing = Drawing::open(sheet, &sentence);
    let s = (sheet.room() - 30.0) / lip.chord;
    let (left, base) = (MARGIN + 15.0, drawing.top + 44.0 + s * lip.thickness);
    let place = |along: f64, off: f64| -> P { [left + s * along, base - s * off] };
    let steps = |from: f64, to: f64| (0..=40).map(move |i| from + (to - from) * f64::from(i) / 40.0);
    let pen = &mut drawing.pen;
    let face: Vec<P> = steps(0.0, lip.chord).map(|x| place(x, lip.face(x))).collect();
    let back: Vec<P> = steps(0.0, lip.chord).map(|x| place(x, lip.back(x))).collect();
    pen.shape("b", &face.iter().copied().chain(back.iter().rev().copied()).collect::<Vec<P>>());
    pen.path("l", &back);
    pen.path("f", &face);
    // As it would be without: the face runs straight on.
    pen.line("l g", place(0.0, 0.0), place(lip.length, 0.0));
    pen.line("h c", place(0.0, -lip.drop), place(lip.chord, 0.0));
    let middle = place(0.62 * lip.chord, 0.0);
    pen.text("o", [middle[0], base + 20.0], Hang::Middle, "face");
    let crown = place(0.5 * lip.chord, lip.thickness);
    pen.text("o", [crown[0], crown[1] - 12.0], Hang::Middle, "back");
    let (nose, tail) = (place(lip.chord, 0.0), place(0.0, -lip.drop));
    for (part, x, hang, words) in
        [(nose, nose[0] - 10.0, Hang::End, "leading edge"), (tail, tail[0] + 10.0, Hang::Start, "trailing edge")]
    {
        pen.line("h", part, [x, crown[1] + 6.0]);
        pen.text("o", [x, crown[1]], hang, words);
    }
    let low = tail[1] + 24.0;
    pen.line("h", tail, [tail[0], low - 10.0]);
    pen.text("e", [left, low + 4.0], Hang::Start, format!("lip {} mm", millimetres(lip.drop)));
    pen.text("s", [left, low + 20.0], Hang::Start, "chain line: from nose to tail");
    let text = "Cup is also said to put off cavitation and to hold off air (common practice, no source). Broken line: the same edge without it.";
    let bottom = drawing.prose("s", text, low + 42.0, 4) - 10.0;
    let desc = format!("{} {}", sheet.say(&sentence), sheet.say("Section with a cupped trailing edge, to scale."));
    Some(drawing.close("Cup", Words::Said(desc), bottom))
}
