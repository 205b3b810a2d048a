//! Dimensions in millimetres and inches.

use super::Drawn;
use crate::pen::{Hang, Pen};
use crate::sheet::Sheet;
use crate::style::{LEADING, MARGIN, TEXT};
use crate::words::length;
use counsel::phrase::number;
use hydro::blade::{self, Shape};

/// The table under the views; returns its lower end.
pub fn table(pen: &mut Pen, sheet: &Sheet, drawn: &Drawn, top: f64) -> f64 {
    let rows = rows(drawn);
    let columns: usize = match sheet.width() {
        w if w < 560.0 => 1,
        w if w < 1000.0 => 2,
        _ => 3,
    };
    let per = rows.len().div_ceil(columns);
    let gap = 28.0;
    let wide = (sheet.room() - gap * (columns as f64 - 1.0)) / columns as f64;
    for (i, (name, value)) in rows.iter().enumerate() {
        let (column, row) = (i / per, i % per);
        let x = MARGIN + (wide + gap) * column as f64;
        let y = top + (LEADING + 4.0) * row as f64 + 14.0;
        pen.line("h", [x, y + 5.0], [x + wide, y + 5.0]);
        let words = pen.fit(value, TEXT, 0.66 * wide);
        let room = wide - pen.width(&words, TEXT).min(0.66 * wide) - 8.0;
        pen.text("", [x + wide, y], Hang::End, words);
        let name = pen.fit(*name, TEXT, room);
        pen.text("s", [x, y], Hang::Start, name);
    }
    top + (LEADING + 4.0) * per as f64 + 6.0
}

fn rows(drawn: &Drawn) -> Vec<(&'static str, String)> {
    let p = &drawn.propeller;
    let Some(first) = p.blades.first() else { return Vec::new() };
    let hub = drawn.hub();
    let areas = blade::areas(p);
    let shape = Shape::of(first);
    let cut = shape.cut(0.7 * shape.tip_radius());
    let pitches: Vec<f64> = p.blades.iter().map(|b| blade::effective_pitch(b, hub)).collect();
    let mean = pitches.iter().sum::<f64>() / p.count();
    let ratio = if p.diameter() > 0.0 { mean / p.diameter() } else { 0.0 };
    let usual = if drawn.surveyed { "" } else { " (usual)" };
    let skew = blade::skew(first, hub).angle.to_degrees();
    let mut rows = vec![
        ("diameter", length(p.diameter())),
        ("pitch that acts", length(mean)),
        ("pitch over diameter", number(ratio, 0.01)),
        ("pitch at 0.7 R", length(cut.pitch)),
        ("chord at 0.7 R", length(cut.chord)),
        ("thickness at 0.7 R", format!("{}{usual}", length(cut.thickness))),
        ("expanded area over disc", number(areas.expanded_ratio, 0.01)),
        ("projected area over disc", number(areas.projected_ratio, 0.01)),
        ("skew", format!("{}\u{b0}", number(skew, 0.1))),
        ("hub diameter", format!("{}{usual}", length(2.0 * hub))),
        ("hub length", format!("{}{usual}", length(p.hub.length))),
        ("bore", if p.hub.bore_fore > 0.0 { format!("{}{usual}", length(p.hub.bore_fore)) } else { "none".to_owned() }),
    ];
    if let Some(marked) = drawn.marked_pitch {
        rows.insert(2, ("pitch as marked", length(marked)));
    }
    rows
}
