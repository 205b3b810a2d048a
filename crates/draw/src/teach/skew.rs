//! Skew: mid-chords against the reference line, seen along the shaft.

use super::ring;
use crate::Drawn;
use crate::pen::{Hang, P, Words};
use crate::propeller::{name, shape};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use counsel::phrase::number;
use hydro::blade::{projected_outline, skew};

/// Height of the blade from the axis to its tip, px.
const HEIGHT: f64 = 260.0;

/// The picture; `None` without a blade.
#[must_use]
pub fn picture(sheet: &Sheet, drawn: &Drawn) -> Option<Picture> {
    let (shape, blade) = (shape(drawn)?, drawn.propeller.blades.first()?);
    let (hub, tip) = (drawn.hub(), shape.tip_radius());
    let degrees = skew(blade, hub).angle.to_degrees();
    if !(tip > hub && degrees.is_finite()) {
        return None;
    }
    let degrees = number(degrees, 0.1);
    let sentence =
        format!("Skew is {degrees}\u{b0}: so far along the turn the blade's middle moves between root and tip.");
    let mut drawing = Drawing::open(sheet, &sentence);
    let sign = drawn.propeller.hand.sign();
    let s = HEIGHT / tip;
    let (cx, axis) = (MARGIN + 0.5 * sheet.room(), drawing.top + 20.0 + HEIGHT);
    let place = |q: [f64; 2]| -> P { [cx + s * sign * q[0], axis - s * q[1]] };
    let pen = &mut drawing.pen;
    let outline = projected_outline(blade, hub, 40);
    pen.shape("w l", &ring(&outline, place));
    pen.path("f", &outline.leading.iter().map(|q| place(*q)).collect::<Vec<P>>());
    pen.line("h c", [cx, axis + 10.0], [cx, axis - s * tip - 12.0]);
    pen.line("h c", [cx - 0.4 * HEIGHT, axis], [cx + 0.4 * HEIGHT, axis]);
    pen.circle("p m", [cx, axis], s * hub);
    // Mid-chords, and the widest two rays of them from the axis.
    let turn = |r: f64| -shape.cut(r).skew_angle();
    let at = |r: f64, a: f64| place([r * a.sin(), r * a.cos()]);
    let radii: Vec<f64> = (0..=40).map(|i| hub + (tip - hub) * f64::from(i) / 40.0).collect();
    pen.path("m g", &radii.iter().map(|r| at(*r, turn(*r))).collect::<Vec<P>>());
    let ends = radii.iter().map(|r| turn(*r)).fold((f64::INFINITY, f64::NEG_INFINITY), |e, a| (e.0.min(a), e.1.max(a)));
    for a in [ends.0, ends.1] {
        pen.line("h", [cx, axis], at(1.06 * tip, a));
    }
    let arc: Vec<P> = (0..=12).map(|i| at(1.04 * tip, ends.0 + (ends.1 - ends.0) * f64::from(i) / 12.0)).collect();
    pen.path("f", &arc);
    let words = format!("{} {}", pen.say("skew"), pen.say(format!("{degrees}\u{b0}")));
    let side = |x: f64| if x > 0.0 { Hang::Start } else { Hang::End };
    pen.text("o e", [arc[0][0] + sign * -14.0, arc[0][1] + 2.0], side(-sign), Words::Said(words));
    let middle = at(radii[22], turn(radii[22]));
    name(pen, middle, [cx - sign * 0.34 * HEIGHT, middle[1] + 8.0], side(-sign), "skew line");
    let edge = place(outline.leading[24]);
    name(pen, edge, [edge[0] + sign * 20.0, edge[1] + 16.0], side(sign), "leading edge");
    let text = "Skewed back, a blade goes through the slow water behind deadwood or strut a piece at a time, and shakes the boat less.";
    let bottom = drawing.prose("s", text, axis + s * hub + 26.0, 3) - 10.0;
    let desc = format!("{} {}", sheet.say(&sentence), sheet.say("One blade from astern with its skew line."));
    Some(drawing.close("Skew", Words::Said(desc), bottom))
}
