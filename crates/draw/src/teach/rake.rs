//! Rake: one blade from the side, upright and leaning aft.

use crate::Drawn;
use crate::pen::{Hang, P, Pen, Words};
use crate::propeller::shape;
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use crate::words::millimetres;
use counsel::phrase::number;
use hydro::blade::Shape;
use hydro::fitting::clearance::raked_aft;

/// Height from the axis to the tip, px.
const HEIGHT: f64 = 210.0;

/// The picture: without rake, and with so many degrees (aft positive). `None` without a blade or beyond 60 degrees.
#[must_use]
pub fn picture(sheet: &Sheet, drawn: &Drawn, degrees: f64) -> Option<Picture> {
    let shape = shape(drawn)?;
    let tip = shape.tip_radius();
    if !(degrees.abs() <= 60.0 && tip > 0.0) {
        return None;
    }
    let moved = raked_aft(tip, degrees.to_radians());
    let words = number(degrees.abs(), 0.1);
    let words = words.trim_end_matches(".0");
    let way = if degrees < 0.0 { "forward" } else { "aft" };
    let sentence = format!(
        "With {words}\u{b0} of rake the tip stands {} mm further {way} than the root.",
        millimetres(moved.abs())
    );
    let mut drawing = Drawing::open(sheet, &sentence);
    let column = 0.5 * sheet.room();
    let s = (HEIGHT / tip).min(0.42 * column / (moved.abs() + 0.2 * tip));
    let axis = drawing.top + 34.0 + s * tip;
    for (i, angle) in [0.0, degrees.to_radians()].into_iter().enumerate() {
        let at = [MARGIN + column * (i as f64 + 0.5), axis];
        let pen = &mut drawing.pen;
        blade(pen, drawn, &shape, at, s, angle);
        let text = if i == 0 { "no rake".to_owned() } else { format!("rake {words}\u{b0} {way}") };
        pen.text("e", [at[0], axis + s * drawn.hub() + 26.0], Hang::Middle, text);
        if i == 1 && moved.abs() > 1e-4 {
            let y = axis - s * tip - 10.0;
            let [a, b] = [at[0], at[0] - s * moved];
            pen.line("h", [a, axis], [a, y - 4.0]);
            pen.line("h", [b, y + 8.0], [b, y - 4.0]);
            pen.dimension(
                [a, y],
                [b, y],
                [0.5 * (a + b), y - 6.0],
                Hang::Middle,
                format!("{} mm", millimetres(moved.abs())),
            );
        }
    }
    let text = "Rake changes the room to strut and rudder first. Deep under a hull it does little for speed; near the surface it lifts the bow (common practice, no source).";
    let bottom = drawing.prose("s", text, axis + s * drawn.hub() + 52.0, 4) - 10.0;
    let desc = format!("{} {}", sheet.say(&sentence), sheet.say("Forward is to the right."));
    Some(drawing.close("Rake", Words::Said(desc), bottom))
}

/// An upright blade from starboard, forward to the right, its own rake replaced.
fn blade(pen: &mut Pen, drawn: &Drawn, shape: &Shape, at: P, s: f64, angle: f64) {
    let (hub, tip) = (drawn.hub(), shape.tip_radius());
    let place = |x: f64, z: f64| -> P { [at[0] + s * x, at[1] - s * z] };
    let edge = |half: f64| -> Vec<P> {
        (0..=30)
            .map(|i| {
                let w = (1.0 - hub / tip).max(0.0).sqrt() * (1.0 - f64::from(i) / 30.0);
                let cut = shape.cut(tip * (1.0 - w * w));
                let (x, turn) = cut.place(half * cut.chord, 0.0);
                (x + cut.rake - raked_aft(cut.radius, angle), cut.radius * turn.cos())
            })
            // The root's edges go round the hub, out of sight.
            .filter(|(_, up)| *up >= hub)
            .map(|(x, up)| place(x, up))
            .collect()
    };
    let (leading, trailing) = (edge(0.5), edge(-0.5));
    pen.shape("w l", &leading.iter().copied().chain(trailing.iter().rev().copied()).collect::<Vec<P>>());
    pen.path("f", &leading);
    pen.line("l c", place(0.0, 0.0), place(-raked_aft(1.04 * tip, angle), 1.04 * tip));
    let h = &drawn.propeller.hub;
    let (fore, aft) = (h.forward, h.forward - h.length);
    let (rf, ra) = (0.5 * h.fore_diameter, 0.5 * h.aft_diameter);
    pen.shape("p m", &[place(fore, rf), place(aft, ra), place(aft, -ra), place(fore, -rf)]);
    pen.line("h c", [at[0] - 80.0, at[1]], [at[0] + 80.0, at[1]]);
}
