//! A trial log over time: speed and engine speed, with the steady stretches shaded and numbered by the reading they offer.

use crate::axis::Field;
use crate::pen::{Hang, P, Pen};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::MARGIN;
use crate::words::tick;

/// Height of one field, px.
const HEIGHT: f64 = 150.0;
/// Most points of a curve: two to each, the least and the most, so that no peak is lost where many moments share a pixel.
const PARTS: usize = 420;

/// One moment of the log.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Seconds, rising.
    pub time: f64,
    /// Boat speed, kn.
    pub speed: Option<f64>,
    /// Engine speed, rpm.
    pub engine_speed: Option<f64>,
}

/// A steady stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Steady {
    /// First moment, s.
    pub from: f64,
    /// Last moment, s.
    pub to: f64,
    /// The reading it belongs to.
    pub number: usize,
    /// Its course as it is said.
    pub course: String,
    /// Mean speed, kn.
    pub speed: Option<f64>,
    /// Mean engine speed, rpm.
    pub engine_speed: Option<f64>,
}

/// What the picture says, in the reader's language.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Words<'a> {
    /// The sentence above.
    pub sentence: &'a str,
    /// Its name in the title block.
    pub name: &'a str,
    /// For those who cannot see it.
    pub desc: &'a str,
    /// The speed's axis, with its unit.
    pub speed: &'a str,
    /// The engine speed's axis, with its unit.
    pub engine_speed: &'a str,
    /// The time's axis where the log has a clock, and where it counts from its start.
    pub clock: &'a str,
    /// The time's axis where the log has no clock.
    pub elapsed: &'a str,
}

/// Writes the day of a time, `2026-05-02`.
pub type Day = fn(f64) -> Option<String>;

/// The picture. `day` is given where the times are those of a clock, in seconds since 1970.
#[must_use]
pub fn picture(sheet: &Sheet, log: &[Moment], steady: &[Steady], day: Option<Day>, words: &Words) -> Picture {
    let mut drawing = Drawing::open(sheet, words.sentence);
    let (from, to) = match (log.first(), log.last()) {
        (Some(first), Some(last)) if first.time.is_finite() && last.time > first.time => (first.time, last.time),
        (Some(first), _) if first.time.is_finite() => (first.time, first.time + 1.0),
        _ => (0.0, 1.0),
    };
    let (left, right) = (MARGIN + 46.0, sheet.width() - MARGIN - 8.0);
    let mut top = drawing.top + 36.0;
    let first_top = top;
    let speeds: Vec<(f64, f64)> = log.iter().filter_map(|m| Some((m.time, m.speed?))).collect();
    let turns: Vec<(f64, f64)> = log.iter().filter_map(|m| Some((m.time, m.engine_speed?))).collect();
    let pen = &mut drawing.pen;
    let mut bottom = top;
    for (values, name, mean) in [
        (&speeds, words.speed, (|s: &Steady| s.speed) as fn(&Steady) -> Option<f64>),
        (&turns, words.engine_speed, |s: &Steady| s.engine_speed),
    ] {
        let high = values.iter().map(|v| v.1).filter(|v| v.is_finite()).fold(0.0, f64::max);
        if values.is_empty() {
            continue;
        }
        let field = Field::new([left, top, right, top + HEIGHT], (from, to), (0.0, 1.2 * high.max(1e-3)));
        for stretch in steady {
            let (x0, x1) = (field.x.held(stretch.from), field.x.held(stretch.to));
            pen.shape("w", &[[x0, field.top], [x1, field.top], [x1, field.bottom], [x0, field.bottom]]);
        }
        field.y_axis(pen, name, 4.0);
        for piece in pieces(values, to - from) {
            let line: Vec<P> = piece.iter().map(|(t, v)| field.at(*t, *v)).collect();
            pen.paths("l", &field.clip(&line));
        }
        for stretch in steady {
            if let Some(value) = mean(stretch) {
                let y = field.y.held(value);
                pen.line("r", [field.x.held(stretch.from), y], [field.x.held(stretch.to), y]);
            }
        }
        bottom = field.bottom;
        top = field.bottom + 34.0;
    }
    if bottom > first_top {
        let field = Field::new([left, first_top, right, bottom], (from, to), (0.0, 1.0));
        numbers(pen, &field, steady);
        clock(pen, &field, day, if day.is_some() { words.clock } else { words.elapsed });
        bottom += 40.0;
    }
    drawing.close(words.name, words.desc, bottom)
}

/// The number of each stretch in it, its course where there is room.
fn numbers(pen: &mut Pen, field: &Field, steady: &[Steady]) {
    let mut last = f64::NEG_INFINITY;
    for stretch in steady {
        let (x0, x1) = (field.x.held(stretch.from), field.x.held(stretch.to));
        let middle = 0.5 * (x0 + x1);
        let full = if stretch.course.is_empty() {
            stretch.number.to_string()
        } else {
            format!("{}: {}", stretch.number, stretch.course)
        };
        let text = if x1 - x0 > crate::measure::width(&full, 12.0) + 6.0 { full } else { stretch.number.to_string() };
        let half = 0.5 * crate::measure::width(&text, 12.0);
        // A season's log has more stretches than numbers fit: those that fit are written.
        if middle - half > last + 3.0 {
            pen.text("e o", [middle, field.top + 14.0], Hang::Middle, &text);
            last = middle + half;
        }
    }
}

/// Round steps of a clock, s.
const STEPS: [f64; 17] = [
    5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 900.0, 1800.0, 3600.0, 7200.0, 10_800.0, 21_600.0, 43_200.0,
    86_400.0, 604_800.0,
];

/// The time's axis in steps of a clock.
fn clock(pen: &mut Pen, field: &Field, day: Option<Day>, quantity: &str) {
    let (from, to) = field.x.ends();
    let most = ((field.right - field.left) / 70.0).clamp(2.0, 10.0);
    let step = STEPS.into_iter().find(|s| (to - from) / s <= most).unwrap_or_else(|| ((to - from) / most).ceil());
    let origin = if day.is_some() { 0.0 } else { from };
    pen.line("l", [field.left, field.bottom], [field.right, field.bottom]);
    for v in crate::axis::ticks(from - origin, to - origin, step) {
        let x = field.x.px(v + origin);
        pen.line("l", [x, field.bottom], [x, field.bottom + 4.0]);
        let hang = if x > field.right - 20.0 { Hang::End } else { Hang::Middle };
        pen.text("", [x, field.bottom + 17.0], hang, time(v, step, day));
    }
    pen.text("s", [field.right, field.bottom + 33.0], Hang::End, quantity);
}

fn time(value: f64, step: f64, day: Option<Day>) -> String {
    if step >= 86_400.0 {
        let written = day.and_then(|day| day(value));
        return written.map_or_else(|| tick((value / 86_400.0).floor(), 1.0), |day| day.chars().skip(5).collect());
    }
    let second = if day.is_some() { value.rem_euclid(86_400.0) } else { value }.round() as i64;
    let (h, m, s) = (second / 3600, second / 60 % 60, second % 60);
    if step >= 60.0 { format!("{h:02}:{m:02}") } else { format!("{h:02}:{m:02}:{s:02}") }
}

/// The curve in pieces without holes, thinned to the least and the most of each part.
fn pieces(values: &[(f64, f64)], span: f64) -> Vec<Vec<(f64, f64)>> {
    let part = (span / PARTS as f64).max(1e-9);
    let hole = (4.0 * part).max(15.0);
    let mut pieces: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut gathered: Vec<(f64, f64)> = Vec::new();
    let mut into = f64::NAN;
    let mut last = f64::NEG_INFINITY;
    let flush = |gathered: &mut Vec<(f64, f64)>, pieces: &mut Vec<Vec<(f64, f64)>>| {
        let low = gathered.iter().copied().min_by(|a, b| a.1.total_cmp(&b.1));
        let high = gathered.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1));
        if let (Some(low), Some(high), Some(piece)) = (low, high, pieces.last_mut()) {
            let (a, b) = if low.0 <= high.0 { (low, high) } else { (high, low) };
            piece.push(a);
            if b.0 > a.0 {
                piece.push(b);
            }
        }
        gathered.clear();
    };
    for value in values.iter().filter(|v| v.0.is_finite() && v.1.is_finite()) {
        let index = (value.0 / part).floor();
        if value.0 - last > hole || index != into {
            flush(&mut gathered, &mut pieces);
        }
        if value.0 - last > hole {
            pieces.push(Vec::new());
        }
        into = index;
        last = value.0;
        gathered.push(*value);
    }
    flush(&mut gathered, &mut pieces);
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_peak_is_lost_and_a_hole_stays_one() {
        let mut values: Vec<(f64, f64)> = (0..100_000).map(|t| (f64::from(t), 5.0)).collect();
        values[50_003].1 = 9.0;
        values.drain(20_000..40_000);
        let found = pieces(&values, 1e5);
        assert_eq!(found.len(), 2);
        assert!(found.iter().map(Vec::len).sum::<usize>() <= 2 * PARTS + 4);
        assert!(found[1].iter().any(|v| v.1 == 9.0));
    }

    #[test]
    fn times_are_a_clocks() {
        assert_eq!(time(9.0 * 3600.0 + 40.0 * 60.0, 600.0, Some(|_| None)), "09:40");
        assert_eq!(time(1.7e9, 86_400.0, Some(|_| Some("2026-05-02".to_owned()))), "05-02");
        assert_eq!(time(75.0, 30.0, None), "00:01:15");
    }
}
