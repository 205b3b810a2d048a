//! Writing SVG.

use crate::measure;
use std::fmt::Write as _;
use words::Language;

/// A point, px.
pub type P = [f64; 2];

/// Where a text hangs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hang {
    /// Begins at the point.
    Start,
    /// Centred on it.
    Middle,
    /// Ends there.
    End,
}

/// What is to be set: English of ours, to be said in the sheet's language, or words that stand as they are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Words {
    /// Ours, in English.
    Ours(String),
    /// Names people gave, and what was said already.
    Said(String),
}

impl From<&str> for Words {
    fn from(text: &str) -> Words {
        Words::Ours(text.to_owned())
    }
}

impl From<String> for Words {
    fn from(text: String) -> Words {
        Words::Ours(text)
    }
}

impl From<&String> for Words {
    fn from(text: &String) -> Words {
        Words::Ours(text.clone())
    }
}

impl From<&Words> for Words {
    fn from(words: &Words) -> Words {
        words.clone()
    }
}

/// Collects SVG elements. Coordinates are kept to a tenth of a pixel.
#[derive(Clone, Debug, Default)]
pub struct Pen {
    out: String,
    /// What is written is written in it.
    language: Language,
}

/// A number with at most one decimal, none where it is whole.
fn number(out: &mut String, value: f64) {
    let tenths = (if value.is_finite() { value.clamp(-9e5, 9e5) } else { 0.0 } * 10.0).round();
    let tenths = if tenths == 0.0 { 0.0 } else { tenths };
    // Writing to a string cannot fail.
    let _ =
        if tenths % 10.0 == 0.0 { write!(out, "{:.0}", tenths / 10.0) } else { write!(out, "{:.1}", tenths / 10.0) };
}

/// XML text.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            _ => out.push(c),
        }
    }
    out
}

/// English of ours in a language.
pub fn said(language: Language, english: &str) -> String {
    if language == Language::English {
        english.to_owned()
    } else if english.contains(char::is_alphabetic) {
        words::sentence(language, &measure::clean(english))
    } else {
        // Numbers need no catalogue.
        words::number(language, english)
    }
}

impl Pen {
    /// A pen that writes this language.
    pub fn of(language: Language) -> Pen {
        Pen { out: String::new(), language }
    }

    /// The words in the sheet's language.
    pub fn say(&self, words: impl Into<Words>) -> String {
        match words.into() {
            Words::Said(text) => text,
            Words::Ours(text) => said(self.language, &text),
        }
    }

    /// The words in the sheet's language, shortened to the room.
    pub fn fit(&self, words: impl Into<Words>, size: f64, room: f64) -> Words {
        Words::Said(measure::fit(&self.say(words), size, room))
    }

    /// The words in the sheet's language in lines no wider than `room`, at most `most` of them.
    pub fn wrap(&self, words: impl Into<Words>, size: f64, room: f64, most: usize) -> Vec<Words> {
        measure::wrap(&self.say(words), size, room, most).into_iter().map(Words::Said).collect()
    }

    /// How wide the words are in the sheet's language, px.
    pub fn width(&self, words: impl Into<Words>, size: f64) -> f64 {
        measure::width(&self.say(words), size)
    }

    /// What was drawn.
    pub fn finish(self) -> String {
        self.out
    }

    fn path_of(&mut self, class: &str, runs: &[&[P]], closed: bool) {
        let mut d = String::new();
        for run in runs {
            let mut last: Option<P> = None;
            let end = run.len().saturating_sub(1);
            for (i, p) in run.iter().enumerate() {
                if !(p[0].is_finite() && p[1].is_finite()) {
                    continue;
                }
                let near = last.is_some_and(|l| (l[0] - p[0]).abs() + (l[1] - p[1]).abs() < 0.5);
                if near && i != end {
                    continue;
                }
                d.push(if last.is_none() { 'M' } else { 'L' });
                number(&mut d, p[0]);
                d.push(' ');
                number(&mut d, p[1]);
                last = Some(*p);
            }
            if closed && last.is_some() {
                d.push('Z');
            }
        }
        if !d.is_empty() {
            let _ = write!(self.out, "<path class=\"{class}\" d=\"{d}\"/>");
        }
    }

    /// A line through points.
    pub fn path(&mut self, class: &str, points: &[P]) {
        self.path_of(class, &[points], false);
    }

    /// A closed shape.
    pub fn shape(&mut self, class: &str, points: &[P]) {
        self.path_of(class, &[points], true);
    }

    /// Several lines in one element.
    pub fn paths(&mut self, class: &str, runs: &[Vec<P>]) {
        let runs: Vec<&[P]> = runs.iter().map(Vec::as_slice).collect();
        self.path_of(class, &runs, false);
    }

    /// A straight line.
    pub fn line(&mut self, class: &str, a: P, b: P) {
        self.path_of(class, &[&[a, b]], false);
    }

    /// A circle.
    pub fn circle(&mut self, class: &str, at: P, radius: f64) {
        let mut d = String::new();
        let r = radius.max(0.0);
        d.push('M');
        number(&mut d, at[0] - r);
        d.push(' ');
        number(&mut d, at[1]);
        for side in [2.0, -2.0] {
            d.push('a');
            number(&mut d, r);
            d.push(' ');
            number(&mut d, r);
            d.push_str(" 0 1 0 ");
            number(&mut d, side * r);
            d.push_str(" 0");
        }
        let _ = write!(self.out, "<path class=\"{class}\" d=\"{d}Z\"/>");
    }

    /// A line of text in `class`. The caller has seen to its width.
    pub fn text(&mut self, class: &str, at: P, hang: Hang, words: impl Into<Words>) {
        let text = measure::clean(&self.say(words));
        if text.is_empty() {
            return;
        }
        self.out.push_str("<text");
        if !class.is_empty() {
            let _ = write!(self.out, " class=\"{class}\"");
        }
        self.out.push_str(" x=\"");
        number(&mut self.out, at[0]);
        self.out.push_str("\" y=\"");
        number(&mut self.out, at[1]);
        self.out.push('"');
        match hang {
            Hang::Start => {}
            Hang::Middle => self.out.push_str(" text-anchor=\"middle\""),
            Hang::End => self.out.push_str(" text-anchor=\"end\""),
        }
        let _ = write!(self.out, ">{}</text>", escape(&text));
    }

    /// Hatched strip, clipped by hand.
    pub fn hatch(&mut self, x0: f64, y0: f64, x1: f64, y1: f64) {
        if x1 - x0 < 0.5 || y1 - y0 < 0.5 {
            return;
        }
        let mut runs = Vec::new();
        let (w, h) = (x1 - x0, y1 - y0);
        let mut c = crate::style::HATCH * 0.5;
        // Lines x + y = c from the lower left to the upper right.
        while c < w + h {
            let (from_x, to_x) = ((c - h).max(0.0), c.min(w));
            runs.push(vec![[x0 + from_x, y0 + (c - from_x)], [x0 + to_x, y0 + (c - to_x)]]);
            c += crate::style::HATCH;
        }
        self.paths("h", &runs);
    }

    /// An arrow head at `tip` coming from `from`.
    pub fn head(&mut self, class: &str, from: P, tip: P, size: f64) {
        let (dx, dy) = (tip[0] - from[0], tip[1] - from[1]);
        let length = dx.hypot(dy);
        if length < 1e-9 {
            return;
        }
        let (ux, uy) = (dx / length, dy / length);
        let back = [tip[0] - size * ux, tip[1] - size * uy];
        let half = 0.32 * size;
        self.shape(
            class,
            &[tip, [back[0] - half * uy, back[1] + half * ux], [back[0] + half * uy, back[1] - half * ux]],
        );
    }

    /// A dimension line between two points, its text beside the middle.
    pub fn dimension(&mut self, a: P, b: P, text_at: P, hang: Hang, text: impl Into<Words>) {
        self.line("h", a, b);
        self.head("k", b, a, 7.0);
        self.head("k", a, b, 7.0);
        self.text("o", text_at, hang, text);
    }
}
