//! Axes: few round ticks, the unit once.

use crate::pen::{Hang, P, Pen};
use crate::style::{HALF, TEXT};
use crate::words::tick;
use counsel::report::Band;

/// A scale from values to pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    from: f64,
    to: f64,
    at: f64,
    end: f64,
    log: bool,
}

impl Scale {
    /// Straight from `from` at pixel `at` to `to` at pixel `end`.
    pub fn new(from: f64, to: f64, at: f64, end: f64) -> Scale {
        let from = if from.is_finite() { from } else { 0.0 };
        let to = if to.is_finite() && to > from { to } else { from + 1.0 };
        Scale { from, to, at, end, log: false }
    }

    /// By the logarithm; both ends above zero.
    pub fn log(from: f64, to: f64, at: f64, end: f64) -> Scale {
        let from = if from.is_finite() && from > 0.0 { from } else { 1e-3 };
        let to = if to.is_finite() && to > 1.0001 * from { to } else { 10.0 * from };
        Scale { from, to, at, end, log: true }
    }

    /// The pixel of a value.
    pub fn px(&self, value: f64) -> f64 {
        let share = if self.log {
            (value.max(1e-12) / self.from).ln() / (self.to / self.from).ln()
        } else {
            (value - self.from) / (self.to - self.from)
        };
        self.at + share * (self.end - self.at)
    }

    /// The pixel, held within the scale.
    pub fn held(&self, value: f64) -> f64 {
        self.px(value.max(self.from).min(self.to))
    }

    /// Whether a value lies on the scale.
    pub fn holds(&self, value: f64) -> bool {
        value >= self.from * (1.0 - 1e-12) - 1e-12 && value <= self.to * (1.0 + 1e-12) + 1e-12
    }

    /// First and last value.
    pub fn ends(&self) -> (f64, f64) {
        (self.from, self.to)
    }
}

/// Round step for about `want` ticks.
pub fn step(from: f64, to: f64, want: f64) -> f64 {
    let raw = ((to - from) / want.max(1.0)).abs().max(1e-9);
    let decade = 10_f64.powf(raw.log10().floor());
    let lead = raw / decade;
    decade
        * if lead <= 1.0 {
            1.0
        } else if lead <= 2.0 {
            2.0
        } else if lead <= 5.0 {
            5.0
        } else {
            10.0
        }
}

/// Ticks on a straight scale.
pub fn ticks(from: f64, to: f64, step: f64) -> Vec<f64> {
    let first = (from / step - 1e-9).ceil();
    (0..60).map(|i| (first + f64::from(i)) * step).take_while(|v| *v <= to + 1e-9 * step).collect()
}

/// A field with two scales.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Left, top, right, bottom, px.
    pub left: f64,
    /// Top.
    pub top: f64,
    /// Right.
    pub right: f64,
    /// Bottom.
    pub bottom: f64,
    /// Across.
    pub x: Scale,
    /// Up.
    pub y: Scale,
}

impl Field {
    /// A field with straight scales.
    pub fn new(ground: [f64; 4], x: (f64, f64), y: (f64, f64)) -> Field {
        let [left, top, right, bottom] = ground;
        Field { left, top, right, bottom, x: Scale::new(x.0, x.1, left, right), y: Scale::new(y.0, y.1, bottom, top) }
    }

    /// The point of two values.
    pub fn at(&self, x: f64, y: f64) -> P {
        [self.x.px(x), self.y.px(y)]
    }

    /// Bottom axis with numbers, its quantity and unit at the right end under them.
    pub fn x_axis(&self, pen: &mut Pen, quantity: &str) {
        let (from, to) = self.x.ends();
        let room = self.right - self.left;
        let step = step(from, to, (room / 85.0).clamp(2.0, 9.0));
        pen.line("l", [self.left, self.bottom], [self.right, self.bottom]);
        for v in ticks(from, to, step) {
            let x = self.x.px(v);
            pen.line("l", [x, self.bottom], [x, self.bottom + 4.0]);
            pen.text("", [x, self.bottom + 17.0], Hang::Middle, tick(v, step));
        }
        pen.text("s", [self.right, self.bottom + 33.0], Hang::End, quantity);
    }

    /// Left axis with hairlines across, its quantity and unit above.
    pub fn y_axis(&self, pen: &mut Pen, quantity: &str, want: f64) {
        let (from, to) = self.y.ends();
        let step = step(from, to, want);
        for v in ticks(from, to, step) {
            let y = self.y.px(v);
            pen.line("h", [self.left, y], [self.right, y]);
            pen.text("", [self.left - 6.0, y + 4.0], Hang::End, tick(v, step));
        }
        let hang = if pen.width(quantity, TEXT) > 40.0 { Hang::Start } else { Hang::End };
        let x = if hang == Hang::Start { self.left - 34.0 } else { self.left - 6.0 };
        pen.text("s", [x, self.top - 9.0], hang, quantity);
    }

    /// A curve clipped to the field, in pieces.
    pub fn curve(&self, pen: &mut Pen, class: &str, points: &[P]) {
        let px: Vec<P> = points.iter().map(|p| self.at(p[0], p[1])).collect();
        pen.paths(class, &self.clip(&px));
    }

    /// Pieces of a line in pixels inside the field.
    pub fn clip(&self, line: &[P]) -> Vec<Vec<P>> {
        let mut pieces: Vec<Vec<P>> = Vec::new();
        for pair in line.windows(2) {
            let Some((a, b)) = self.cut(pair[0], pair[1]) else { continue };
            match pieces.last_mut() {
                Some(piece) if piece.last() == Some(&a) => piece.push(b),
                _ => pieces.push(vec![a, b]),
            }
        }
        pieces
    }

    /// A stretch inside the field (Liang and Barsky 1984).
    fn cut(&self, a: P, b: P) -> Option<(P, P)> {
        if !a.iter().chain(&b).all(|v| v.is_finite()) {
            return None;
        }
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let (mut t0, mut t1) = (0.0, 1.0);
        for (p, q) in
            [(-dx, a[0] - self.left), (dx, self.right - a[0]), (-dy, a[1] - self.top), (dy, self.bottom - a[1])]
        {
            if p == 0.0 {
                if q < 0.0 {
                    return None;
                }
            } else if p < 0.0 {
                t0 = f64::max(t0, q / p);
            } else {
                t1 = f64::min(t1, q / p);
            }
        }
        (t0 <= t1).then(|| ([a[0] + t0 * dx, a[1] + t0 * dy], [a[0] + t1 * dx, a[1] + t1 * dy]))
    }

    /// Spread as ink density: the 80 % band, the inner half (as of a normal spread), the middle.
    pub fn spread(&self, pen: &mut Pen, points: &[(f64, Band)], middle: &str) {
        let inside: Vec<&(f64, Band)> = points.iter().filter(|(x, _)| self.x.holds(*x)).collect();
        let hold = |x: f64, y: f64| [self.x.px(x), self.y.held(y)];
        for (class, share) in [("a", 1.0), ("b", HALF)] {
            let low = inside.iter().map(|(x, b)| hold(*x, b.middle + share * (b.low - b.middle)));
            let high = inside.iter().rev().map(|(x, b)| hold(*x, b.middle + share * (b.high - b.middle)));
            let ring: Vec<P> = low.chain(high).collect();
            if ring.len() > 2 {
                pen.shape(class, &ring);
            }
        }
        let line: Vec<P> = points.iter().map(|(x, b)| [*x, b.middle]).collect();
        self.curve(pen, middle, &line);
    }

    /// A reading: a red-lead cross whose arms are the instrument's spread. `broken` for one taken in another state.
    pub fn cross(&self, pen: &mut Pen, x: [f64; 3], y: [f64; 3], broken: bool) {
        let class = if broken { "r g" } else { "r" };
        let (cx, cy) = (self.x.held(x[1]), self.y.held(y[1]));
        let arm = |s: &Scale, v: f64, c: f64| {
            let p = s.held(v);
            if (p - c).abs() < 5.0 { c + 5.0 * if p < c { -1.0 } else { 1.0 } } else { p }
        };
        let (x0, x1) = (arm(&self.x, x[0] - 1e-9, cx), arm(&self.x, x[2] + 1e-9, cx));
        let (y0, y1) = (arm(&self.y, y[0] - 1e-9, cy), arm(&self.y, y[2] + 1e-9, cy));
        pen.paths(
            class,
            &[
                vec![[x0.min(cx - 5.0), cy], [x1.max(cx + 5.0), cy]],
                vec![[cx, y0.max(cy + 5.0)], [cx, y1.min(cy - 5.0)]],
            ],
        );
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_round_and_few() {
        let s = step(0.0, 37.0, 6.0);
        assert_eq!((s, ticks(0.0, 37.0, s).len()), (10.0, 4));
    }

    #[test]
    fn a_line_is_cut_at_the_field() {
        let field = Field::new([0.0, 0.0, 10.0, 10.0], (0.0, 1.0), (0.0, 1.0));
        let pieces = field.clip(&[[-5.0, 5.0], [5.0, 5.0], [15.0, 5.0]]);
        assert_eq!(pieces, vec![vec![[0.0, 5.0], [5.0, 5.0], [10.0, 5.0]]]);
        assert!(field.clip(&[[f64::NAN, 0.0], [1.0, 1.0]]).is_empty());
    }
}
