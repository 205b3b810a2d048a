//! One turn unrolled: the way round, the pitch, and what the boat really went.

use crate::pen::{Hang, Pen};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use std::f64::consts::TAU;

/// What the picture needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Advance {
    /// Diameter, m; above 0.
    pub diameter: f64,
    /// Pitch at 0.7 of the radius, m; above 0.
    pub pitch: f64,
    /// What the boat goes in one turn, `V/n`, m; not below 0.
    pub gone: f64,
}

impl Advance {
    /// Way round at 0.7 of the radius, `2 pi 0.7 R`, m.
    #[must_use]
    pub fn round(&self) -> f64 {
        TAU * 0.35 * self.diameter
    }

    /// Apparent slip, `1 - V/(n P)`.
    #[must_use]
    pub fn slip(&self) -> f64 {
        1.0 - self.gone / self.pitch
    }

    fn drawable(&self) -> bool {
        let all = [self.diameter, self.pitch, self.gone];
        all.iter().all(|v| v.is_finite()) && self.diameter > 0.0 && self.pitch > 0.0 && self.gone >= 0.0
    }
}

/// The picture, to scale; `None` where a length is not one.
#[must_use]
pub fn picture(sheet: &Sheet, of: &Advance) -> Option<Picture> {
    if !of.drawable() || !of.slip().is_finite() {
        return None;
    }
    let mm = |m: f64| format!("{:.0} mm", 1000.0 * m);
    let slip = 100.0 * of.slip();
    let said =
        if slip >= 0.0 { format!("{slip:.0} % apparent slip") } else { format!("{:.0} % more than its pitch", -slip) };
    let sentence = format!("In one turn the pitch is {}, and the boat goes {}: {said}.", mm(of.pitch), mm(of.gone));
    let mut drawing = Drawing::open(sheet, &sentence);
    let tall = of.pitch.max(of.gone);
    let side = if sheet.narrow() { 126.0 } else { 150.0 };
    let scale = ((sheet.room() - side) / of.round()).min(280.0 / tall);
    let (left, base) = (MARGIN, drawing.top + 26.0 + scale * tall);
    let right = left + scale * of.round();
    let (pitch, gone) = (base - scale * of.pitch, base - scale * of.gone);
    let pen: &mut Pen = &mut drawing.pen;
    pen.line("m", [left, base], [right, base]);
    pen.line("m", [right, base], [right, pitch.min(gone)]);
    pen.line("f", [left, base], [right, pitch]);
    pen.line("m", [left, base], [right, gone]);
    pen.text(
        "s",
        [0.5 * (left + right), base + 18.0],
        Hang::Middle,
        format!("once round at 0.7 R: {}", mm(of.round())),
    );
    let mut column = crate::labels::Column::new(right + 16.0, side - 16.0, Hang::Start);
    column.add("", [right, pitch], format!("pitch {}", mm(of.pitch)));
    column.add("s", [right, gone], format!("gone {}", mm(of.gone)));
    column.set(pen, drawing.top + 8.0, base);
    Some(drawing.close("One turn unrolled", format!("{sentence} Drawn to scale at 0.7 of the radius."), base + 26.0))
}
