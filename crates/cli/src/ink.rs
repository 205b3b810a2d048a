//! Colour by meaning: code says what a piece of text is, one table says how it looks.

use anstyle::{Ansi256Color, AnsiColor, Color, Effects, Style};
use counsel::report::Gravity;

/// What a piece of text is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// Ordinary text.
    Plain,
    /// The sentence the answer opens with, and headings.
    Speak,
    /// Sources, units, asides.
    Quiet,
    /// Really measured on this boat.
    Measured,
    /// What the engine's rating asks for.
    Accepted,
    /// A finding's mark.
    Finding(Gravity),
}

impl Ink {
    fn style(self) -> Style {
        let colour = |c: AnsiColor| Style::new().fg_color(Some(Color::Ansi(c)));
        match self {
            Ink::Plain => Style::new(),
            Ink::Speak => Style::new().effects(Effects::BOLD),
            Ink::Quiet => Style::new().effects(Effects::DIMMED),
            Ink::Measured => Style::new().fg_color(Some(Color::Ansi256(Ansi256Color(166)))),
            Ink::Accepted => colour(AnsiColor::Cyan),
            Ink::Finding(Gravity::Stop) => Style::new().effects(Effects::BOLD | Effects::INVERT),
            Ink::Finding(Gravity::Mend) => colour(AnsiColor::Yellow).effects(Effects::BOLD),
            Ink::Finding(Gravity::Watch) => colour(AnsiColor::Blue),
            Ink::Finding(Gravity::Well) => colour(AnsiColor::Green),
        }
    }

    /// Puts text on paper in this ink.
    #[must_use]
    pub fn on(self, text: &str) -> String {
        if self == Ink::Plain || text.is_empty() {
            return text.to_owned();
        }
        let style = self.style();
        format!("{style}{text}{style:#}")
    }
}
