//! Cavitation: where this propeller sits under the published lines over its speed range.

use crate::axis::{Field, Scale};
use crate::labels::Column;
use crate::pen::{Hang, P, Words};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use crate::words::{bare, span};
use counsel::curves::{Curves, SpeedRow};
use counsel::phrase::number;
use counsel::report::Band;
use hydro::limits::burrill::{self, Line};

/// Height of the field, px.
const HEIGHT: f64 = 300.0;

const LINES: [(Line, &str); 5] = [
    (Line::Back30, "30 %"),
    (Line::Back20, "20 %"),
    (Line::Back10, "10 %"),
    (Line::Back5, "5 %"),
    (Line::Back2, "2.5 %"),
];

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, curves: &Curves) -> Picture {
    let mut drawing = Drawing::open(sheet, sentence(curves));
    let rows: Vec<&SpeedRow> =
        curves.speeds.iter().filter(|r| r.sigma.middle > 0.0 && r.tau.middle.is_finite()).collect();
    let ends = rows.iter().fold((f64::INFINITY, 0.0_f64), |e, r| (e.0.min(r.sigma.low), e.1.max(r.sigma.middle)));
    let least = if ends.0.is_finite() { (0.8 * ends.0).clamp(0.03, 0.5) } else { 0.1 };
    let most = ends.1.clamp(2.0, 4.0);
    let tau_most = rows.iter().map(|r| r.tau.high).fold(0.35, f64::max).min(1.2);
    let room = if sheet.narrow() { 66.0 } else { 130.0 };
    let ground = [MARGIN + 34.0, drawing.top + 34.0, sheet.width() - MARGIN - room, drawing.top + 34.0 + HEIGHT];
    let mut field = Field::new(ground, (least, most), (0.0, 1.05 * tau_most));
    // Running faster lowers the cavitation number: faster lies to the right.
    field.x = Scale::log(least, most, field.right, field.left);
    let pen = &mut drawing.pen;
    field.y_axis(
        pen,
        if sheet.narrow() {
            "load \u{3c4}; lines: % of the back cavitating"
        } else {
            "load \u{3c4}, thrust over projected area and dynamic pressure"
        },
        5.0,
    );
    pen.line("l", [field.left, field.bottom], [field.right, field.bottom]);
    let wanted: &[f64] = &[0.05, 0.1, 0.2, 0.3, 0.5, 1.0, 2.0, 3.0];
    let mut last = f64::INFINITY;
    for v in wanted.iter().filter(|v| field.x.holds(**v)) {
        let x = field.x.px(*v);
        pen.line("l", [x, field.bottom], [x, field.bottom + 4.0]);
        if last - x > 26.0 {
            pen.text("", [x, field.bottom + 17.0], Hang::Middle, number(*v, if *v < 0.1 { 0.01 } else { 0.1 }));
            last = x;
        }
    }
    pen.text(
        "s",
        [field.right, field.bottom + 33.0],
        Hang::End,
        if sheet.narrow() {
            "cavitation number \u{3c3}; faster \u{2192}"
        } else {
            "cavitation number \u{3c3}; faster lies to the right"
        },
    );
    let mut column = Column::new(field.right + 12.0, room - 14.0, Hang::Start);
    let sigmas: Vec<f64> = (0..=40).map(|i| most * (least / most).powf(f64::from(i) / 40.0)).collect();
    let mut first = true;
    for (line, name) in LINES {
        let points: Vec<P> = sigmas.iter().map(|s| [*s, burrill::line(line, *s).value]).collect();
        // Outside the diagram's range the lines are a stretch of ours: broken.
        let within: Vec<P> =
            points.iter().copied().filter(|p| p[0] >= burrill::LEAST_SIGMA && p[0] <= burrill::LARGEST_SIGMA).collect();
        field.curve(pen, "l", &within);
        let beyond: Vec<P> = points.iter().copied().filter(|p| p[0] <= 1.06 * burrill::LEAST_SIGMA).collect();
        field.curve(pen, "h g", &beyond);
        let before: Vec<P> = points.iter().copied().filter(|p| p[0] >= 0.94 * burrill::LARGEST_SIGMA).collect();
        field.curve(pen, "h g", &before);
        let px: Vec<P> = points.iter().map(|p| field.at(p[0], p[1])).collect();
        if let Some(end) = field.clip(&px).last().and_then(|piece| piece.last()) {
            let of = if first && !sheet.narrow() { " of the back" } else { "" };
            first = false;
            column.add("", *end, format!("{name}{of}"));
        }
    }
    column.set(pen, field.top, field.bottom);
    // This propeller's way.
    let way: Vec<(f64, Band)> = rows.iter().map(|r| (r.sigma.middle.max(least).min(most), r.tau)).collect();
    field.spread(pen, &way, "f");
    let every = (rows.len() / 5).max(1);
    let mut last_x = f64::NEG_INFINITY;
    for (i, row) in rows.iter().enumerate().rev() {
        let slot = (rows.len() - 1 - i).is_multiple_of(every);
        let at = field.at(row.sigma.middle, row.tau.middle);
        if !slot || !field.x.holds(row.sigma.middle) || (last_x - at[0]).abs() < 46.0 {
            continue;
        }
        last_x = at[0];
        pen.circle("p l", at, 3.5);
        pen.text(
            "o e",
            [at[0], (at[1] + 20.0).min(field.bottom - 4.0)],
            Hang::Middle,
            format!("{} kn", number(row.speed, 0.1)),
        );
    }
    let text = "Lines: share of the blades' back that cavitates, after Burrill 1943 and Burrill & Emerson 1963, as fitted by Birk \
                2019; broken beyond the range of the diagram. Between published fits they differ by up to a quarter at the ends.";
    let bottom = drawing.prose("s", text, field.bottom + 56.0, 6) - 12.0;
    drawing.close("Cavitation", desc(sheet, curves), bottom)
}

fn fastest(curves: &Curves) -> Option<&SpeedRow> {
    curves.speeds.last()
}

fn sentence(curves: &Curves) -> String {
    let Some(row) = fastest(curves) else { return "No steady speed was found to judge cavitation at.".to_owned() };
    let back = &row.back_cavitation;
    let word = match back.middle {
        b if b > 15.0 => "too much: thrust goes, blades are eaten",
        b if b > 7.0 => "more than is good for the blades",
        b if b > 3.0 => "bearable",
        _ => "little",
    };
    format!("At {} kn some {} of the blades' back cavitates: {word}.", number(row.speed, 0.1), span(back))
}

fn desc(sheet: &Sheet, curves: &Curves) -> Words {
    let rows: Vec<String> = curves
        .speeds
        .iter()
        .step_by(6)
        .map(|r| {
            format!(
                "{} kn: cavitation number {}, load {}, back cavitation {}",
                number(r.speed, 0.1),
                bare(&r.sigma),
                bare(&r.tau),
                span(&r.back_cavitation)
            )
        })
        .collect();
    let what = "Thrust load of the propeller over its cavitation number, under the published lines of back cavitation.";
    Words::Said(format!("{} {}.", sheet.say(what), sheet.say_all(&rows, "; ")))
}
