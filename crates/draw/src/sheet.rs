//! The sheet a picture is drawn on: the sentence above, the title block below.

use crate::measure::fit;
use crate::pen::{Hang, Pen, Words, escape};
use crate::style::{self, LEADING, MARGIN, SENTENCE, TEXT, Theme};
use std::fmt::Write as _;
use words::Language;

/// A finished picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// A whole SVG document.
    pub svg: String,
    /// Its name with the boat's.
    pub title: String,
    /// What it shows, for those who cannot see it.
    pub desc: String,
}

impl Picture {
    /// The document with a theme's colours in place of variables: for files and for readers that know no CSS variables.
    #[must_use]
    pub fn resolved(&self, theme: Theme) -> String {
        style::resolve(&self.svg, theme)
    }
}

/// What every picture is told: whose boat, which day, how wide, in which language.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet<'a> {
    /// The boat, or the job's title.
    pub boat: &'a str,
    /// The date as it is to be printed.
    pub date: &'a str,
    /// Width, px; held in 320 to 2 000. Below 560 the picture is laid out for a phone.
    pub width: f64,
    /// What is written on it is written in this.
    pub language: Language,
}

impl Sheet<'_> {
    /// Width used, px.
    #[must_use]
    pub fn width(&self) -> f64 {
        if self.width.is_finite() { self.width.clamp(320.0, 2000.0).round() } else { 720.0 }
    }

    /// Whether the picture is laid out for a phone.
    #[must_use]
    pub fn narrow(&self) -> bool {
        self.width() < 560.0
    }

    /// English of ours in the sheet's language.
    pub(crate) fn say(&self, english: &str) -> String {
        crate::pen::said(self.language, english)
    }

    /// Sentences, each in the sheet's language, joined.
    pub(crate) fn say_all(&self, english: &[String], joint: &str) -> String {
        english.iter().map(|text| self.say(text)).collect::<Vec<_>>().join(joint)
    }

    /// Room between the margins, px.
    pub(crate) fn room(&self) -> f64 {
        self.width() - 2.0 * MARGIN
    }
}

/// A picture being drawn.
pub(crate) struct Drawing<'a> {
    sheet: Sheet<'a>,
    /// Draws.
    pub pen: Pen,
    /// Where the picture's own ground begins, px.
    pub top: f64,
}

impl<'a> Drawing<'a> {
    /// Opens a sheet with its sentence.
    pub fn open(sheet: &Sheet<'a>, sentence: impl Into<Words>) -> Drawing<'a> {
        let mut pen = Pen::of(sheet.language);
        let mut y = MARGIN + SENTENCE;
        // Emphasis runs wider.
        let size = 1.13 * SENTENCE;
        let lines = pen.wrap(sentence, size, sheet.room(), if sheet.narrow() { 9 } else { 4 });
        for line in lines {
            pen.text("t", [MARGIN, y], Hang::Start, line);
            y += 1.3 * SENTENCE;
        }
        Drawing { sheet: *sheet, pen, top: y + 2.0 }
    }

    /// Running text over the whole width; returns the next line's base.
    pub fn prose(&mut self, class: &str, text: impl Into<Words>, y: f64, most: usize) -> f64 {
        let mut y = y;
        let size = if class == "e" { 1.12 * TEXT } else { TEXT };
        for line in self.pen.wrap(text, size, self.sheet.room(), most) {
            self.pen.text(class, [MARGIN, y], Hang::Start, line);
            y += LEADING;
        }
        y
    }

    /// Closes the sheet below `bottom`.
    pub fn close(self, name: &str, desc: impl Into<Words>, bottom: f64) -> Picture {
        let (sheet, mut pen) = (self.sheet, self.pen);
        let (left, right) = (MARGIN, sheet.width() - MARGIN);
        let name = pen.say(name);
        let set = |text: &str, size: f64, room: f64| Words::Said(fit(text, size, room));
        let rule = if bottom.is_finite() { bottom.max(self.top).min(6000.0) } else { self.top + 400.0 } + 8.0;
        pen.line("m", [left, rule], [right, rule]);
        // The title block: boat, what is shown, date, divided by short strokes.
        let base = rule + 17.0;
        let date = fit(sheet.date, TEXT, 0.3 * sheet.room());
        let date_width = crate::measure::width(&date, TEXT);
        let name_width = crate::measure::width(&name, TEXT);
        let mut height = base + 10.0;
        if sheet.narrow() {
            pen.text("e", [left, base], Hang::Start, set(sheet.boat, TEXT * 1.12, right - left));
            pen.text("s", [left, base + LEADING], Hang::Start, set(&name, TEXT, right - left - date_width - 12.0));
            pen.text("s", [right, base + LEADING], Hang::End, Words::Said(date.clone()));
            height += LEADING;
        } else {
            let name_at = right - date_width - 14.0;
            pen.text("s", [right, base], Hang::End, Words::Said(date.clone()));
            pen.text("s", [name_at - 10.0, base], Hang::End, Words::Said(name.clone()));
            pen.line("h", [name_at, rule], [name_at, base + 4.0]);
            let stroke = name_at - name_width - 24.0;
            pen.line("h", [stroke, rule], [stroke, base + 4.0]);
            pen.text("e", [left, base], Hang::Start, set(sheet.boat, TEXT * 1.12, stroke - left - 10.0));
        }
        let boat = fit(sheet.boat, TEXT, 900.0);
        let title = if boat.is_empty() { name } else { format!("{name}: {boat}") };
        let desc = crate::measure::clean(&pen.say(desc));
        let (w, h) = (sheet.width(), height.ceil());
        let mut svg = String::new();
        // Writing to a string cannot fail.
        let _ = writeln!(
            svg,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"fw\" role=\"img\" viewBox=\"0 0 {w:.0} {h:.0}\" width=\"{w:.0}\" \
             height=\"{h:.0}\"><title>{}</title><desc>{}</desc><style>{}</style><path class=\"p\" d=\"M0 0H{w:.0}V{h:.0}H0Z\"/>{}</svg>",
            escape(&title),
            escape(&desc),
            style::sheet(),
            pen.finish()
        );
        Picture { svg, title, desc }
    }
}
