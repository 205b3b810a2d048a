//! Labels at the lines, pushed apart so that none covers another.

use crate::pen::{Hang, P, Pen, Words};
use crate::style::{LEADING, TEXT};

struct Label {
    class: &'static str,
    at: P,
    text: Words,
}

/// Labels in one column.
pub struct Column {
    x: f64,
    room: f64,
    hang: Hang,
    labels: Vec<Label>,
}

impl Column {
    /// A column of labels at `x` with `room` for each.
    pub fn new(x: f64, room: f64, hang: Hang) -> Column {
        Column { x, room, hang, labels: Vec::new() }
    }

    /// A label for the point `at`.
    pub fn add(&mut self, class: &'static str, at: P, text: impl Into<Words>) {
        self.labels.push(Label { class, at, text: text.into() });
    }

    /// Sets them between `top` and `bottom`, each with a hairline to its point.
    pub fn set(mut self, pen: &mut Pen, top: f64, bottom: f64) {
        // At one height the nearest comes first, so that hairlines do not cross.
        let side = if self.hang == Hang::End { 1.0 } else { -1.0 };
        self.labels.sort_by(|a, b| {
            a.at[1].round().total_cmp(&b.at[1].round()).then((side * a.at[0]).total_cmp(&(side * b.at[0])))
        });
        let mut places: Vec<f64> = self.labels.iter().map(|l| l.at[1].max(top).min(bottom)).collect();
        // Down, then up again from the foot: no two closer than a line.
        for i in 1..places.len() {
            places[i] = places[i].max(places[i - 1] + LEADING);
        }
        if let Some(last) = places.last_mut() {
            *last = last.min(bottom);
        }
        for i in (1..places.len()).rev() {
            places[i - 1] = places[i - 1].min(places[i] - LEADING);
        }
        for (label, y) in self.labels.iter().zip(places) {
            let words = pen.fit(&label.text, TEXT, self.room);
            let reach = match self.hang {
                Hang::End => self.x + 3.0,
                _ => self.x - 3.0,
            };
            pen.line("h", label.at, [reach, y]);
            pen.text(label.class, [self.x, y + 4.0], self.hang, words);
        }
    }
}
