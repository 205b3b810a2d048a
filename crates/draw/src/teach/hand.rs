//! Hand: seen from astern, which way it turns and which edge leads.

use super::ring;
use crate::Drawn;
use crate::pen::{Hang, P, Pen, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use hydro::blade::{Hand, projected_outline};
use std::f64::consts::PI;

/// The picture: the boat's own beside its mirror image; `None` without a blade.
#[must_use]
pub fn picture(sheet: &Sheet, drawn: &Drawn) -> Option<Picture> {
    if drawn.propeller.blades.is_empty() || drawn.radius() <= 0.0 {
        return None;
    }
    let right = drawn.propeller.hand == Hand::Right;
    let sentence = if right {
        "Right-handed: seen from astern it turns clockwise going ahead, and the right edge of the upright blade leads."
    } else {
        "Left-handed: seen from astern it turns anticlockwise going ahead, and the left edge of the upright blade leads."
    };
    let mut drawing = Drawing::open(sheet, sentence);
    let column = 0.5 * sheet.room();
    let radius = (0.5 * column - 22.0).min(120.0);
    let cy = drawing.top + 44.0 + radius;
    for (i, hand) in [Hand::Left, Hand::Right].into_iter().enumerate() {
        let at = [MARGIN + column * (i as f64 + 0.5), cy];
        one(&mut drawing.pen, drawn, hand, at, radius / drawn.radius(), hand == drawn.propeller.hand);
    }
    let text = "The heavy edge leads. Turning a propeller end for end does not change its hand: the edge that led still leads.";
    let bottom = drawing.prose("s", text, cy + radius + 58.0, 4) - 10.0;
    let desc =
        format!("{} {}", sheet.say(sentence), sheet.say("Left its left-handed form, right its right-handed one."));
    Some(drawing.close("Hand", Words::Said(desc), bottom))
}

/// One hand; the one fitted is drawn full.
fn one(pen: &mut Pen, drawn: &Drawn, hand: Hand, at: P, s: f64, own: bool) {
    let (p, sign) = (&drawn.propeller, hand.sign());
    for (i, blade) in p.blades.iter().enumerate() {
        let (sin, cos) = (sign * p.angles.get(i).copied().unwrap_or(0.0)).sin_cos();
        let place = |q: [f64; 2]| -> P {
            let (x, y) = (sign * q[0], q[1]);
            [at[0] + s * (x * cos + y * sin), at[1] - s * (y * cos - x * sin)]
        };
        let outline = projected_outline(blade, 0.96 * drawn.hub(), 34);
        pen.shape(if own { "w l" } else { "p h" }, &ring(&outline, place));
        let leading: Vec<P> = outline.leading.iter().map(|q| place(*q)).collect();
        pen.path(if own { "f" } else { "m" }, &leading);
    }
    pen.circle(if own { "p m" } else { "p h" }, at, s * drawn.hub());
    let radius = s * drawn.radius() + 8.0;
    let arc: Vec<P> = (0..=16)
        .map(|k| {
            let a = sign * PI * (0.10 + 0.22 * f64::from(k) / 16.0);
            [at[0] + radius * a.sin(), at[1] - radius * a.cos()]
        })
        .collect();
    pen.path(if own { "f" } else { "m" }, &arc);
    if let [.., before, last] = arc[..] {
        let tip = [last[0] + 1.6 * (last[0] - before[0]), last[1] + 1.6 * (last[1] - before[1])];
        pen.head("k", before, tip, 11.0);
    }
    let low = at[1] + radius + 14.0;
    pen.text(if own { "e" } else { "" }, [at[0], low], Hang::Middle, crate::propeller::hand_word(hand));
    pen.text("s", [at[0], low + 15.0], Hang::Middle, if own { "this one" } else { "the other hand" });
}
