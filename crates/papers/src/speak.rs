//! Numbers, bands, chances and small words in the reader's language.

use counsel::phrase;
use counsel::report::{Band, Gravity};
use words::{Language, Value};

/// Speaks a language.
#[derive(Clone, Copy, Debug)]
pub struct Voice {
    /// Which.
    pub language: Language,
}

/// Most letters of a name that are printed; the job file keeps them all.
const LONGEST_NAME: usize = 320;

impl Voice {
    /// What stands under this name.
    pub fn say(self, name: &str) -> String {
        words::say(self.language, name)
    }

    /// The same with values put in, which are in the language already.
    pub fn with(self, name: &str, values: &[(&str, &str)]) -> String {
        let values: Vec<(&str, Value)> = values.iter().map(|(key, text)| (*key, Value::Text(text))).collect();
        words::say_with(self.language, name, &values)
    }

    /// The same with a count.
    pub fn count(self, name: &str, count: usize) -> String {
        words::say_with(self.language, name, &[("count", Value::Count(count))])
    }

    /// A sentence of the judgement, first letter large.
    pub fn sentence(self, english: &str) -> String {
        large(&words::sentence(self.language, english))
    }

    /// Words of the judgement within a sentence.
    pub fn words(self, english: &str) -> String {
        words::sentence(self.language, english)
    }

    /// A number at a step.
    pub fn number(self, value: f64, step: f64) -> String {
        if !value.is_finite() {
            return self.say("papers-unknown");
        }
        words::number(self.language, &phrase::number(value, step).replace('-', "\u{2212}"))
    }

    /// A number with so many significant digits.
    pub fn digits(self, value: f64, digits: i32) -> String {
        if !value.is_finite() {
            return self.say("papers-unknown");
        }
        words::number(self.language, &phrase::plain(value, digits).replace('-', "\u{2212}"))
    }

    /// A band without its unit: `3 480 to 3 640`.
    pub fn bare(self, band: &Band) -> String {
        let step = phrase::step_of(band);
        let (low, high) = (self.number(band.low, step), self.number(band.high, step));
        if low == high { low } else { self.with("papers-span", &[("low", &low), ("high", &high)]) }
    }

    /// A band: `3 480 to 3 640 rpm`.
    pub fn span(self, band: &Band) -> String {
        unit(self.bare(band), band.unit)
    }

    /// Two ends of a range with their unit.
    pub fn range(self, low: f64, high: f64, unit_name: &'static str) -> String {
        self.span(&Band { low, middle: 0.5 * (low + high), high, unit: unit_name })
    }

    /// A length, mm in, in mm and inches: `355.6 mm (14.00 in)`; a tenth of a millimetre below a metre.
    pub fn length(self, mm: f64) -> String {
        let millimetres = self.number(mm, if mm.abs() < 1000.0 { 0.1 } else { 1.0 });
        let millimetres = millimetres.trim_end_matches(".0").trim_end_matches(",0").to_owned();
        format!("{millimetres} mm ({} in)", self.inches(mm))
    }

    /// A length that is bored or keyed to, mm in: `31.75 mm (1.250 in)`.
    pub fn fine(self, mm: f64) -> String {
        format!("{} mm ({} in)", self.number(mm, 0.01), self.number(mm / 25.4, 0.001))
    }

    /// A length, mm in, for columns whose head says `mm (in)`: `355.6 (14.00)`.
    pub fn both(self, mm: f64) -> String {
        format!("{} ({})", self.number(mm, 0.1), self.inches(mm))
    }

    /// Inches of a length in mm, to the hundredth, to the thousandth below two.
    pub fn inches(self, mm: f64) -> String {
        let inches = mm / 25.4;
        self.number(inches, if inches.abs() < 2.0 { 0.001 } else { 0.01 })
    }

    /// A band of lengths, mm in, in both units.
    pub fn lengths(self, band: &Band) -> String {
        let half = 0.5 * (band.high - band.low);
        if half < 0.05 {
            return self.length(band.middle);
        }
        let step = if half < 2.0 { 0.1 } else { 1.0 };
        format!(
            "{} mm \u{b1} {} ({} in)",
            self.number(band.middle, step),
            self.number(half, step),
            self.inches(band.middle)
        )
    }

    /// A chance: `9 chances in 10`, as the judgement's sentences say it.
    pub fn chance(self, p: f64) -> String {
        match p {
            p if p.is_nan() => self.say("papers-unknown"),
            p if p >= 0.985 => self.say("papers-chance-over"),
            p if p >= 0.925 => self.say("papers-chance-nineteen"),
            p if p <= 0.015 => self.say("papers-chance-under"),
            p if p < 0.075 => self.say("papers-chance-twentieth"),
            p => self.count("papers-chance", (10.0 * p).round().clamp(1.0, 9.0) as usize),
        }
    }

    /// A share in per cent.
    pub fn percent(self, share: f64) -> String {
        if share < 0.005 { "< 1 %".to_owned() } else { format!("{} %", self.number(100.0 * share, 1.0)) }
    }

    /// Mark and word of a gravity.
    pub fn gravity(self, gravity: Gravity) -> (&'static str, String) {
        match gravity {
            Gravity::Stop => ("\u{25a0}", self.say("papers-stop")),
            Gravity::Mend => ("\u{25b2}", self.say("papers-mend")),
            Gravity::Watch => ("\u{25cf}", self.say("papers-watch")),
            Gravity::Well => ("\u{2713}", self.say("papers-well")),
        }
    }

    /// `yes` or `no`.
    pub fn yes(self, yes: bool) -> String {
        self.say(if yes { "papers-stated" } else { "papers-assumed" })
    }
}

fn unit(number: String, unit: &str) -> String {
    if unit == "1" || unit.is_empty() { number } else { format!("{number} {unit}") }
}

/// First letter large.
pub fn large(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Text that people wrote, made fit to print: no line ends, no marks that turn the direction of what follows, no control
/// characters, not endlessly long.
pub fn printable(text: &str) -> String {
    within(text, LONGEST_NAME)
}

/// The same for text put together of several names, none of which may be lost.
pub fn printable_line(text: &str) -> String {
    within(text, 10 * LONGEST_NAME)
}

fn within(text: &str, most: usize) -> String {
    let mut out = String::with_capacity(text.len());
    for (i, c) in text.trim().chars().enumerate() {
        if i >= most {
            out.push('\u{2026}');
            break;
        }
        match c {
            '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}' => {}
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

/// Sets digits, and a number and its unit, so that no line ends between them.
pub fn tied(text: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let is_unit = |at: usize| {
        let word: String = letters[at..].iter().take_while(|c| !c.is_whitespace() && !",;:.)".contains(**c)).collect();
        matches!(
            word.as_str(),
            "rpm"
                | "kn"
                | "mm"
                | "in"
                | "kW"
                | "hp"
                | "kg"
                | "g"
                | "N"
                | "m"
                | "m/s"
                | "kPa"
                | "%"
                | "L/h"
                | "t"
                | "nmi"
        )
    };
    letters
        .iter()
        .enumerate()
        .map(|(at, &c)| {
            let digit = |at: Option<usize>| at.and_then(|at| letters.get(at)).is_some_and(char::is_ascii_digit);
            let before = digit(at.checked_sub(1));
            // `9 in 10` is a chance, `9 in of pitch` a length.
            let chance = letters[at..].starts_with(&[' ', 'i', 'n', ' ']) && digit(Some(at + 4));
            let threes = digit(Some(at + 1)) && digit(Some(at + 2)) && digit(Some(at + 3)) && !digit(Some(at + 4));
            if c == ' ' && before && (threes || (at + 1 < letters.len() && is_unit(at + 1) && !chance)) {
                '\u{a0}'
            } else {
                c
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_stand_in_both_units_and_in_the_language() {
        let voice = |language| Voice { language };
        assert_eq!(voice(Language::English).length(355.6), "355.6 mm (14.00 in)");
        assert_eq!(voice(Language::Spanish).length(25.4), "25,4 mm (1,000 in)");
        let band = Band { low: 3482.3, middle: 3560.0, high: 3641.9, unit: "rpm" };
        assert_eq!(voice(Language::Spanish).span(&band), "3 480 a 3 640 rpm");
    }

    #[test]
    fn what_people_wrote_cannot_turn_the_line() {
        assert_eq!(printable("a\u{202e}b\nc\u{7}"), "ab c ");
        assert_eq!(printable(&"x".repeat(900)).chars().count(), LONGEST_NAME + 1);
    }

    #[test]
    fn numbers_are_not_torn_apart() {
        assert_eq!(tied("3 480 to 3 640 rpm, 9 in 10"), "3\u{a0}480 to 3\u{a0}640\u{a0}rpm, 9 in 10");
        assert_eq!(tied("9 in of pitch"), "9\u{a0}in of pitch");
    }
}
