//! The picture that proves a sentence: bands over one scale, drawn with characters.

use crate::ink::Ink;
use crate::number;

/// How a row is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// What is asked for: a hatched strip; its edges run down through the rows below.
    Hatched,
    /// What is expected: full ink, the middle as a line.
    Full,
    /// What was before: thin.
    Thin,
    /// What was read: a cross with its instrument's spread.
    Cross,
}

/// One row.
#[derive(Clone, Debug)]
pub struct Row {
    /// Name at the left, at most [`LABEL`] characters.
    pub label: String,
    /// Low, middle, high.
    pub at: [f64; 3],
    /// How it is drawn.
    pub shape: Shape,
    /// Words at the right.
    pub says: String,
}

/// Width of the names.
pub const LABEL: usize = 21;
/// Width of the scale.
const WIDTH: usize = 46;

/// Draws rows over one scale with the unit named once.
#[must_use]
pub fn draw(rows: &[Row], unit: &str) -> String {
    let finite = || rows.iter().flat_map(|row| row.at).filter(|x| x.is_finite());
    let (low, high) = finite().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), x| (l.min(x), h.max(x)));
    if low > high {
        return String::new();
    }
    let scale = Scale::around(low, high);
    let edges = rows
        .iter()
        .find(|row| row.shape == Shape::Hatched)
        .map(|row| [scale.column(row.at[0]), scale.column(row.at[2])])
        .unwrap_or_default();
    let mut out = String::new();
    for row in rows {
        let label: String = row.label.chars().take(LABEL).collect();
        out.push_str(&format!("  {label:<LABEL$} "));
        let cells = row.cells(&scale, edges);
        let ink = row.ink();
        let mut run = String::new();
        let mut inked = false;
        for (cell, of_row) in cells.into_iter().chain([(' ', false)]) {
            if of_row != inked {
                out.push_str(&if inked { ink.on(&run) } else { Ink::Quiet.on_marks(&run) });
                run.clear();
                inked = of_row;
            }
            run.push(cell);
        }
        out.push_str(&Ink::Quiet.on_marks(&run));
        out.push_str(&format!(" {}\n", ink.on(&row.says)));
    }
    out.push_str(&scale.axis(unit));
    out
}

impl Ink {
    /// Ink on marks only: blank stretches stay blank.
    fn on_marks(self, text: &str) -> String {
        if text.trim().is_empty() { text.to_owned() } else { self.on(text) }
    }
}

impl Row {
    fn ink(&self) -> Ink {
        match self.shape {
            Shape::Hatched => Ink::Accepted,
            Shape::Full => Ink::Plain,
            Shape::Thin => Ink::Quiet,
            Shape::Cross => Ink::Measured,
        }
    }

    /// The cells of the row, and which of them are its own ink.
    fn cells(&self, scale: &Scale, edges: [usize; 2]) -> Vec<(char, bool)> {
        let mut cells = vec![(' ', false); WIDTH];
        if edges != [0, 0] && self.shape != Shape::Hatched {
            for edge in edges {
                cells[edge] = ('╎', false);
            }
        }
        if self.at.iter().any(|x| !x.is_finite()) {
            return cells;
        }
        let [low, middle, high] = self.at.map(|x| scale.column(x));
        let (body, ends, mark) = match self.shape {
            Shape::Hatched => ('╱', None, None),
            Shape::Full => ('▒', None, Some('┃')),
            Shape::Thin => ('╌', None, Some('│')),
            Shape::Cross => ('─', Some(('├', '┤')), Some('✕')),
        };
        for cell in &mut cells[low..=high] {
            *cell = (body, true);
        }
        if let Some((left, right)) = ends {
            cells[low].0 = left;
            cells[high].0 = right;
        }
        if let Some(mark) = mark {
            cells[middle].0 = mark;
        }
        cells
    }
}

struct Scale {
    low: f64,
    high: f64,
    step: f64,
}

impl Scale {
    /// A scale with room at both ends and few round ticks.
    fn around(low: f64, high: f64) -> Scale {
        let room = ((high - low) * 0.06).max(high.abs() * 0.01).max(1e-9);
        let (low, high) = (low - room, high + room);
        let rough = (high - low) / 6.0;
        let ten = 10f64.powf(rough.log10().floor());
        let step = [1.0, 2.0, 5.0, 10.0].map(|m| m * ten).into_iter().find(|s| *s >= rough).unwrap_or(10.0 * ten);
        Scale { low, high, step }
    }

    fn column(&self, x: f64) -> usize {
        let share = ((x - self.low) / (self.high - self.low)).clamp(0.0, 1.0);
        (share * (WIDTH - 1) as f64).round() as usize
    }

    fn axis(&self, unit: &str) -> String {
        let mut line = vec!['─'; WIDTH];
        let mut names = vec![' '; WIDTH + 8];
        let mut tick = (self.low / self.step).ceil() * self.step;
        while tick <= self.high {
            let at = self.column(tick);
            line[at] = '┴';
            let name = number::rounded(tick, self.step);
            let start = at.saturating_sub(name.chars().count() / 2);
            for (cell, letter) in names[start..].iter_mut().zip(name.chars()) {
                *cell = letter;
            }
            tick += self.step;
        }
        let blank = " ".repeat(LABEL + 3);
        let line: String = line.into_iter().collect();
        let names: String = names.into_iter().collect();
        format!(
            "{}\n{}\n",
            Ink::Quiet.on(&format!("{blank}{line} {unit}")),
            Ink::Quiet.on(&format!("{blank}{}", names.trim_end()))
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(label: &str, at: [f64; 3], shape: Shape) -> Row {
        Row { label: label.to_owned(), at, shape, says: String::new() }
    }

    #[test]
    fn what_lies_inside_the_band_is_drawn_inside_it() {
        let rows = [
            row("accepted", [3500.0, 3550.0, 3600.0], Shape::Hatched),
            row("expected", [2800.0, 2900.0, 3000.0], Shape::Full),
            row("read", [3520.0, 3550.0, 3580.0], Shape::Cross),
        ];
        let drawn = draw(&rows, "rpm");
        let lines: Vec<Vec<char>> =
            drawn.lines().map(|l| anstream::adapter::strip_str(l).to_string().chars().collect()).collect();
        let hatch = |c: &char| *c == '╱';
        let (first, last) = (lines[0].iter().position(hatch), lines[0].iter().rposition(hatch));
        let cross = lines[2].iter().position(|c| *c == '✕');
        assert!(first < cross && cross < last, "{drawn}");
        assert!(lines[1].iter().rposition(|c| *c == '▒') < first, "{drawn}");
        assert!(lines.iter().all(|line| line.len() <= 100), "{drawn}");
    }

    #[test]
    fn nothing_known_draws_nothing_and_one_point_draws_one_mark() {
        assert_eq!(draw(&[], "rpm"), "");
        assert_eq!(draw(&[row("x", [f64::NAN; 3], Shape::Full)], "rpm"), "");
        let drawn = draw(&[row("x", [5.0; 3], Shape::Full)], "kn");
        assert_eq!(drawn.matches('┃').count(), 1);
    }
}
