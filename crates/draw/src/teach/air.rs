//! Ventilation against cavitation: where the air comes from, where the vapour forms.

use super::section;
use crate::Drawn;
use crate::pen::{Hang, P, Pen, Words};
use crate::propeller::shape;
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use crate::words::millimetres;
use hydro::blade::Shape;

/// Height of a panel, px.
const HEIGHT: f64 = 210.0;

/// The picture: left the propeller under the surface, to scale, right a blade's cut; `immersion` is that of the shaft's centre,
/// m. `None` without a blade or where the depth is no number.
#[must_use]
pub fn picture(sheet: &Sheet, drawn: &Drawn, immersion: f64) -> Option<Picture> {
    let shape = shape(drawn)?;
    if !(immersion.is_finite() && shape.tip_radius() > 0.0) {
        return None;
    }
    let over = immersion - shape.tip_radius();
    let sentence = if over > 0.0 {
        format!(
            "Air has to come down {} mm from the surface to the tips; vapour forms on the blade itself.",
            millimetres(over)
        )
    } else {
        "The tips break the surface and take air with them; vapour forms on the blade itself.".to_owned()
    };
    let mut drawing = Drawing::open(sheet, &sentence);
    let beside = sheet.width() >= 560.0;
    let column = if beside { 0.5 * sheet.room() } else { sheet.room() };
    let top = drawing.top + 24.0;
    let second = if beside { [MARGIN + column, top] } else { [MARGIN, top + HEIGHT + 92.0] };
    under(&mut drawing.pen, drawn, &shape, [MARGIN, top], column, over);
    cut(&mut drawing.pen, &shape, second, column);
    let pen = &mut drawing.pen;
    for (at, name, words) in [
        ([MARGIN, top], "Ventilation: air", ["revs jump, thrust goes at once;", "cure: deeper, cup, less trim"]),
        (second, "Cavitation: vapour", ["rattle like gravel, metal eaten;", "cure: area, diameter, smooth edges"]),
    ] {
        pen.text("e", [at[0], at[1] - 8.0], Hang::Start, name);
        for (y, line) in [HEIGHT + 20.0, HEIGHT + 36.0].into_iter().zip(words) {
            pen.text("s", [at[0], at[1] + y], Hang::Start, line);
        }
    }
    let desc = [
        &sentence[..],
        "Left air drawn down from the surface to the blades, right vapour on the back of a blade near its leading edge.",
    ];
    let desc = desc.map(|text| sheet.say(text)).join(" ");
    Some(drawing.close("Air and vapour", Words::Said(desc), second[1] + HEIGHT + 44.0))
}

/// From starboard under the surface, with the air's way to the upper blade.
fn under(pen: &mut Pen, drawn: &Drawn, shape: &Shape, at: P, wide: f64, over: f64) {
    let tip = shape.tip_radius();
    // A deep propeller is drawn at most half a diameter under the surface, and the depth is said.
    let shown = over.clamp(-0.6 * tip, tip);
    let s = (HEIGHT - 24.0) / (2.0 * tip + shown.max(0.0) + 0.4 * tip);
    let surface = at[1] + 16.0 + if shown < 0.0 { -s * shown } else { 0.0 };
    let centre = [at[0] + 0.46 * wide, surface + s * (tip + shown)];
    let (left, right, low) = (at[0], at[0] + wide - 16.0, at[1] + HEIGHT);
    pen.shape("w", &[[left, surface], [right, surface], [right, low], [left, low]]);
    pen.line("l", [left, surface], [right, surface]);
    for half in [1.0, -1.0] {
        let edge = |side: f64| -> Vec<P> {
            (0..=24)
                .map(|i| {
                    let w = (1.0 - drawn.hub() / tip).max(0.0).sqrt() * (1.0 - f64::from(i) / 24.0);
                    let cut = shape.cut(tip * (1.0 - w * w));
                    let (x, turn) = cut.place(side * cut.chord, 0.0);
                    [centre[0] + s * x, centre[1] - half * s * cut.radius * turn.cos()]
                })
                .collect()
        };
        let (leading, trailing) = (edge(0.5), edge(-0.5));
        pen.shape("p m", &leading.into_iter().chain(trailing.into_iter().rev()).collect::<Vec<P>>());
    }
    let h = &drawn.propeller.hub;
    let [x0, x1] = [h.forward - h.length, h.forward].map(|x| centre[0] + s * x);
    let r = s * drawn.hub();
    pen.shape("p m", &[[x0, centre[1] - r], [x1, centre[1] - r], [x1, centre[1] + r], [x0, centre[1] + r]]);
    // Down from the surface ahead of the disc to the back of the upper blade.
    let goal = [centre[0] + 0.10 * s * tip, centre[1] - 0.72 * s * tip];
    let start = [centre[0] + 0.9 * s * tip, surface];
    let way: Vec<P> = (0..=14)
        .map(|i| {
            let t = f64::from(i) / 14.0;
            let bend = (1.0 - t) * (1.0 - t);
            [goal[0] + (start[0] - goal[0]) * (1.0 - t * t), goal[1] + (start[1] - goal[1]) * bend]
        })
        .collect();
    pen.path("f g", &way);
    pen.head("k", way[12], way[14], 10.0);
    pen.text("o", [start[0] + 6.0, surface + 16.0], Hang::Start, "air");
}

/// A blade's cut with vapour on its back behind the leading edge.
fn cut(pen: &mut Pen, shape: &Shape, at: P, wide: f64) {
    let cut = shape.cut(0.8 * shape.tip_radius());
    if cut.chord <= 0.0 {
        return;
    }
    let (sin, cos) = cut.blade_angle().sin_cos();
    let s = ((wide - 60.0) / (cut.chord * cos)).min((HEIGHT - 90.0) / (cut.chord * sin + cut.thickness));
    let (x0, base) = (at[0] + 0.5 * wide, at[1] + HEIGHT - 40.0);
    let place = |q: [f64; 2]| -> P {
        let along = q[0] - 0.5 * cut.chord;
        [x0 + s * (along * cos - q[1] * sin), base - s * (q[0] * sin + q[1] * cos)]
    };
    let [face, back] = section(shape, &cut);
    // Bubbles along the forward part of the back: largest a fifth of the chord from the nose.
    for i in 0..9_u8 {
        let along = cut.chord * (0.97 - 0.05 * f64::from(i));
        let Some(near) = back.iter().min_by(|a, b| (a[0] - along).abs().total_cmp(&(b[0] - along).abs())) else {
            return;
        };
        let size = cut.chord * (0.010 + 0.022 * (f64::from(i) / 8.0 * std::f64::consts::PI).sin());
        pen.circle("p l", place([along, near[1] + size]), s * size);
    }
    let [face, back] = [face, back].map(|side| side.into_iter().map(place).collect::<Vec<P>>());
    pen.shape("b", &face.iter().copied().chain(back.iter().rev().copied()).collect::<Vec<P>>());
    pen.path("m", &face);
    pen.path("f", &back);
    let vapour = place([0.78 * cut.chord, cut.thickness]);
    pen.text("o", [vapour[0] - 8.0, vapour[1] - 24.0], Hang::End, "vapour on the back");
    let low = place([0.5 * cut.chord, 0.0]);
    pen.text("s", [low[0] + 10.0, low[1] + 26.0], Hang::Start, "face");
}
