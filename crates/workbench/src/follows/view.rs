//! For whom a part is laid out.

use axum::http::HeaderMap;
use counsel::report::Band;
use std::collections::BTreeMap;
use words::{Language, Value, number, say, say_with, sentence};

/// Units of a page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Units {
    /// Millimetres, kilograms.
    #[default]
    Metric,
    /// Inches, pounds.
    Imperial,
}

/// Language, units, width of the pictures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Spoken.
    pub language: Language,
    /// Of lengths and weights.
    pub units: Units,
    /// Width of a picture, px: below 560 it is laid out for a phone.
    pub width: f64,
}

impl Default for View {
    fn default() -> View {
        View { language: Language::English, units: Units::Metric, width: 640.0 }
    }
}

/// Width of the pictures for a browser that says it is a phone's, px.
const PHONE: f64 = 390.0;

impl View {
    /// Width of the pictures by what the address says or, failing that, by what the browser says of itself.
    #[must_use]
    pub fn width_for(pairs: &BTreeMap<String, String>, headers: &HeaderMap) -> f64 {
        let said = |name: &str| headers.get(name).and_then(|v| v.to_str().ok()).unwrap_or_default();
        let phone = said("sec-ch-ua-mobile") == "?1" || said("user-agent").contains("Mobi");
        let usual = if phone { PHONE } else { View::default().width };
        pairs.get("width").and_then(|w| w.parse().ok()).filter(|w: &f64| w.is_finite()).unwrap_or(usual)
    }

    /// What stands under a name.
    #[must_use]
    pub fn say(&self, name: &str) -> String {
        say(self.language, name)
    }

    /// What stands under a name, with values.
    #[must_use]
    pub fn say_with(&self, name: &str, values: &[(&str, &str)]) -> String {
        let values: Vec<(&str, Value)> = values.iter().map(|(k, v)| (*k, Value::Text(v))).collect();
        say_with(self.language, name, &values)
    }

    /// A sentence made by the judgement.
    #[must_use]
    pub fn speak(&self, english: &str) -> String {
        unbroken(&number(self.language, &sentence(self.language, english)))
    }

    /// A band in words.
    #[must_use]
    pub fn band(&self, band: &Band) -> String {
        let converted = match (self.units, band.unit) {
            (Units::Imperial, "kW") => Some((1.0 / 0.745_699_871_582_27, "hp")),
            (Units::Imperial, "L/h") => Some((1.0 / 3.785_411_784, "US gal/h")),
            (Units::Imperial, "kg") => Some((1.0 / 0.453_592_37, "lb")),
            (Units::Imperial, "N") => Some((1.0 / 4.448_221_615_260_5, "lbf")),
            (Units::Imperial, "kPa") => Some((1.0 / 6.894_757_293_168, "psi")),
            (Units::Imperial, "mm") => Some((1.0 / 25.4, "in")),
            _ => None,
        };
        let band = converted.map_or(*band, |(by, unit)| Band {
            low: by * band.low,
            middle: by * band.middle,
            high: by * band.high,
            unit,
        });
        self.speak(&counsel::phrase::span(&band))
    }

    /// A length, m, in the units of the page.
    #[must_use]
    pub fn length(&self, metres: f64) -> String {
        match self.units {
            Units::Metric => format!("{} mm", number(self.language, &counsel::phrase::number(1000.0 * metres, 1.0))),
            Units::Imperial => format!("{} in", number(self.language, &counsel::phrase::inches(metres))),
        }
    }

    /// A mass, kg, in the units of the page.
    #[must_use]
    pub fn mass(&self, kilograms: f64) -> String {
        let (value, unit) = match self.units {
            Units::Metric => (kilograms, "kg"),
            Units::Imperial => (kilograms / 0.453_592_37, "lb"),
        };
        format!("{} {unit}", number(self.language, &counsel::phrase::number(value, 10.0)))
    }

    /// An SVG to stand in the page: its style is the page's own, so that no style stands inline.
    #[must_use]
    pub fn bare(svg: &str) -> String {
        match (svg.find("<style>"), svg.find("</style>")) {
            (Some(from), Some(to)) if from < to => format!("{}{}", &svg[..from], &svg[to + "</style>".len()..]),
            _ => svg.to_owned(),
        }
    }
}

/// The space within a number holds its parts on one line.
fn unbroken(text: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let digit = |at: Option<usize>| at.and_then(|at| letters.get(at)).is_some_and(char::is_ascii_digit);
    // Three digits follow and no fourth: a number's thousands, not two numbers.
    let thousands = |at: usize| (1..=3).all(|k| digit(Some(at + k))) && !digit(Some(at + 4));
    letters
        .iter()
        .enumerate()
        .map(|(at, &c)| if c == ' ' && digit(at.checked_sub(1)) && thousands(at) { '\u{a0}' } else { c })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_loses_its_style_and_nothing_else() {
        assert_eq!(
            View::bare("<svg><title>a</title><style>.x{}</style><path/></svg>"),
            "<svg><title>a</title><path/></svg>"
        );
        assert_eq!(View::bare("<svg/>"), "<svg/>");
    }

    #[test]
    fn a_number_stays_on_its_line() {
        assert_eq!(unbroken("2 740 to 2 980 rpm, 9 in 10"), "2\u{a0}740 to 2\u{a0}980 rpm, 9 in 10");
    }

    #[test]
    fn a_pound_force_and_an_inch_are_the_defined_ones() {
        let view = View { units: Units::Imperial, ..View::default() };
        let force = Band { low: 444.82, middle: 889.64, high: 1334.47, unit: "N" };
        assert_eq!(view.band(&force), "100 to 300 lbf");
        assert_eq!(view.length(0.4064), "16 in");
    }
}
