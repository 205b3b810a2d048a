//! Reading a quantity string: `"6.5 t ± 0.4 (weighed)"`, `"5000..6000 rpm"`, `"about 27 ft 6 in"`, `"2.6:1"`.

use crate::keys::Measure;
use crate::near::{list, nearest};
use crate::number::{self, Bad, show};
use crate::parts::{FUEL_FOR_RANGE, about, example, feet_and_inches, split_at_first, unit_help};
use crate::quantity::{Dimension, Quantity, Source};
use crate::spread;
use crate::units::{self, Unit};
use crate::words::Word;
use std::ops::Range;

/// What is wrong with a quantity string; `at` counts bytes within the string.
#[derive(Clone, Debug)]
pub(crate) struct Fault {
    pub code: &'static str,
    pub message: String,
    pub help: Option<String>,
    pub at: Range<usize>,
}

/// What a quantity string says.
#[derive(Clone, Debug)]
pub(crate) struct Stated {
    pub quantity: Quantity,
    /// The source came from the string itself.
    pub said_source: bool,
    /// The value is a volume of fuel (m³/s) that waits for a density.
    pub volume: bool,
    /// Accepted with one meaning although there is another.
    pub taken: Vec<Fault>,
}

struct Reader<'a> {
    text: &'a str,
    measure: &'a Measure,
    key: &'a str,
    taken: Vec<Fault>,
}

/// A number with its unit; `None` for a bare number.
#[derive(Clone, Copy)]
struct Amount {
    number: f64,
    si: f64,
    unit: Option<&'static Unit>,
}

/// Reads `text` as the quantity `measure` describes, under the name `key`.
pub(crate) fn read(text: &str, measure: &Measure, key: &str) -> Result<Stated, Fault> {
    Reader { text, measure, key, taken: Vec::new() }.run()
}

impl<'a> Reader<'a> {
    fn at(&self, part: &str) -> Range<usize> {
        let start = (part.as_ptr() as usize).saturating_sub(self.text.as_ptr() as usize).min(self.text.len());
        start..(start + part.len()).min(self.text.len())
    }

    fn fault<T>(
        &self,
        code: &'static str,
        part: &str,
        message: impl Into<String>,
        help: impl Into<String>,
    ) -> Result<T, Fault> {
        Err(Fault { code, message: message.into(), help: Some(help.into()), at: self.at(part) })
    }

    fn run(mut self) -> Result<Stated, Fault> {
        let all = self.text.trim();
        if matches!(all.to_lowercase().as_str(), "" | "?" | "??" | "unknown" | "n/a" | "na" | "-" | "none" | "tbd") {
            return self.fault(
                "no-value",
                self.text,
                "there is no value here",
                "leave the line out: what is not said is assumed, with a wide spread",
            );
        }
        let (body, source) = self.source(all)?;
        let said_source = source.is_some();
        let source = source.or(self.measure.source);
        let (body, about) = about(body);
        if body.is_empty() {
            return self.fault("no-value", all, "there is no value here", self.example());
        }
        let (low, middle, high, own, stated, volume);
        if let Some((head, tail)) = split_at_first(body, &["±", "+/-", "+-", "-+"]) {
            if about {
                return self.fault(
                    "two-spreads",
                    all,
                    "`about` and a spread of its own",
                    "`about` means ± 10 %: say one of the two",
                );
            }
            if split_at_first(head, &["..", "…"]).is_some() {
                return self.fault("two-spreads", all, "a range and a spread of its own", "say one of the two");
            }
            let amount = self.amount(head, None)?;
            let half = self.half_width(tail, &amount)?;
            (low, middle, high, own) = (amount.si - half, amount.si, amount.si + half, true);
            if self.measure.range.0 > 0.0 && low <= 0.0 {
                return self.fault(
                    "spread-too-wide",
                    tail,
                    "the spread reaches down to nothing",
                    "a spread is the half width of the band the value lies in 8 times in 10",
                );
            }
            (stated, volume) = ([amount; 2], amount.unit.is_some_and(|u| u.volume));
        } else if let Some((head, tail)) = split_at_first(body, &["...", "..", "…"]) {
            let top = self.amount(tail, None)?;
            let bottom = self.amount(head, top.unit)?;
            if bottom.si > top.si {
                return self.fault(
                    "range-backwards",
                    body,
                    "the range runs backwards",
                    "write the smaller value first",
                );
            }
            volume = top.unit.is_some_and(|u| u.volume);
            if bottom.unit.is_some_and(|u| u.volume) != volume {
                return self.fault(
                    "wrong-unit",
                    body,
                    "one end is a volume, the other a mass",
                    "use one unit for both ends",
                );
            }
            (low, middle, high, own) = (bottom.si, 0.5 * (bottom.si + top.si), top.si, true);
            stated = [bottom, top];
        } else {
            let amount = self.amount(body, None)?;
            (low, middle, high) = if about && self.measure.dimension != Dimension::Temperature {
                spread::Spread::Relative(spread::ABOUT).band(amount.si)
            } else {
                spread::default(source, self.measure.dimension, self.key).band(amount.si)
            };
            own = about;
            (stated, volume) = ([amount; 2], amount.unit.is_some_and(|u| u.volume));
        }
        for amount in stated {
            self.within_range(body, &amount)?;
        }
        let floor = if self.measure.range.0 >= 0.0 { 0.0 } else { f64::NEG_INFINITY };
        let quantity =
            Quantity { low: low.max(floor), middle, high, source, own_spread: own, text: all.to_owned(), at: 0..0 };
        Ok(Stated { quantity, said_source, volume, taken: self.taken })
    }

    /// Takes a source in parentheses off the end.
    fn source(&self, all: &'a str) -> Result<(&'a str, Option<Source>), Fault> {
        let sources = || list(&Source::WORDS.iter().map(|(word, _)| *word).collect::<Vec<_>>());
        let Some(open) = all.find('(') else {
            return match all.find(')') {
                Some(at) => self.fault(
                    "parenthesis",
                    &all[at..at + 1],
                    "a closing parenthesis without an opening one",
                    "a source stands in parentheses at the end: (weighed)",
                ),
                None => Ok((all, None)),
            };
        };
        let inner = &all[open + 1..];
        let Some(word) = inner.strip_suffix(')').filter(|w| !w.contains(['(', ')'])) else {
            return self.fault(
                "parenthesis",
                &all[open..],
                "the source has to stand in one pair of parentheses at the end",
                "for example \"6.5 t (weighed)\"",
            );
        };
        let lower = word.trim().to_lowercase();
        match Source::from_word(&lower) {
            Some(source) => Ok((all[..open].trim_end(), Some(source))),
            None => {
                let guess = nearest(&lower, Source::WORDS.iter().map(|(w, _)| *w))
                    .map_or(String::new(), |w| format!("did you mean `{w}`? "));
                self.fault(
                    "unknown-source",
                    word,
                    format!("unknown source `{}`", word.trim()),
                    format!("{guess}a source is {}", sources()),
                )
            }
        }
    }

    /// A number and its unit. `else_unit` serves a bare number (the left end of a range).
    fn amount(&mut self, part: &'a str, else_unit: Option<&'static Unit>) -> Result<Amount, Fault> {
        let part = part.trim();
        let (number, rest) = self.number(part)?;
        let mut word = rest.trim();
        if self.measure.dimension == Dimension::Ratio
            && let Some(after) = word.strip_prefix(':')
        {
            match number::read(after.trim()) {
                Ok((1.0, used)) if used == after.trim().len() => word = "",
                Ok((other, used)) if number == 1.0 && used == after.trim().len() => {
                    return self.fault(
                        "ratio-form",
                        part,
                        format!("`{part}` reads as an inverted ratio"),
                        format!("a reduction is engine turns for one propeller turn: \"{}:1\"", show(other, 6)),
                    );
                }
                _ => {
                    return self.fault(
                        "ratio-form",
                        part,
                        format!("`{part}` is not a ratio"),
                        "write it as 2.6 or \"2.6:1\"",
                    );
                }
            }
        }
        let lone = word.trim_end_matches('.');
        // 27 ft 6 in, 27'6"
        if let Some((feet, inches)) = feet_and_inches(word)
            && self.measure.dimension == Dimension::Length
        {
            let (more, tail) = self.number(inches)?;
            let unit = units::find(feet, Dimension::Length);
            let small = tail.trim().trim_end_matches('.');
            if small.is_empty() || units::find(small, Dimension::Length).is_some_and(|u| u.name == "in") {
                let si = unit.map_or(0.0, |u| u.to_si(number)) + more * 0.0254;
                return Ok(Amount { number: si / 0.3048, si, unit });
            }
            return self.fault(
                "unknown-unit",
                small,
                format!("`{small}` after feet"),
                "feet are followed by inches: \"27 ft 6 in\"",
            );
        }
        if lone.is_empty() {
            if let Some(unit) = else_unit {
                return Ok(Amount { number, si: unit.to_si(number), unit: Some(unit) });
            }
            if self.measure.dimension == Dimension::Ratio {
                return Ok(Amount { number, si: number, unit: None });
            }
            return self.needs_unit(part, number);
        }
        let unit = self.unit(lone, number)?;
        Ok(Amount { number, si: unit.to_si(number), unit: Some(unit) })
    }

    fn number(&self, part: &'a str) -> Result<(f64, &'a str), Fault> {
        match number::read(part) {
            Ok((number, used)) => Ok((number, &part[used..])),
            Err(Bad::None) => self.fault("no-number", part, format!("there is no number in `{part}`"), self.example()),
            Err(Bad::DecimalComma(point, used)) => {
                let (text, tail) = part.split_at(used);
                self.fault(
                    "decimal-comma",
                    text,
                    format!("`{text}`: a decimal comma"),
                    format!("write a decimal point: \"{point}{tail}\""),
                )
            }
            Err(Bad::Malformed(used)) => self.fault(
                "bad-number",
                &part[..used],
                format!("`{}` is not a number", &part[..used]),
                "write digits with a decimal point; thousands may be set off by a space, as in \"1 500\"",
            ),
        }
    }

    fn unit(&mut self, word: &'a str, number: f64) -> Result<&'static Unit, Fault> {
        let dimension = self.measure.dimension;
        let lower = word.to_lowercase();
        if let Some((_, help)) = units::AMBIGUOUS.iter().find(|(name, _)| *name == lower) {
            return self.fault(
                "ambiguous-unit",
                word,
                format!("`{word}` means different things to different people"),
                *help,
            );
        }
        if let Some((_, meaning, help)) = units::TAKEN.iter().find(|(name, ..)| *name == lower) {
            self.taken.push(Fault {
                code: "unit-taken",
                message: format!("`{word}` is taken as {meaning}"),
                help: Some((*help).to_owned()),
                at: self.at(word),
            });
        }
        let names = list(&dimension.units().map(|u| u.name).collect::<Vec<_>>());
        match units::find(word, dimension) {
            Some(unit) if unit.dimension == dimension => Ok(unit),
            Some(unit) => {
                let help = match (dimension, unit.name) {
                    (Dimension::Force, "kg") => format!("did you mean \"{} kgf\"?", show(number, 6)),
                    (Dimension::Force, "lb") => format!("did you mean \"{} lbf\"?", show(number, 6)),
                    (Dimension::Ratio, _) => "write the number alone".to_owned(),
                    _ => format!("{} is written in {names}", dimension.noun()),
                };
                self.fault(
                    "wrong-unit",
                    word,
                    format!("`{word}` is the unit of {}, not of {}", unit.dimension.noun(), dimension.noun()),
                    help,
                )
            }
            None => {
                let dash = word.trim_start_matches(['-', '–', '—']);
                if dash.len() < word.len() && number::read(dash.trim()).is_ok() || lower.starts_with("to ") {
                    let upper = dash.trim().trim_start_matches("to ").trim();
                    return self.fault(
                        "range-form",
                        word,
                        "a range is written with two points",
                        format!("\"{}..{upper}\"", show(number, 6)),
                    );
                }
                if lower.starts_with(['x', '×']) && lower.contains(|c: char| c.is_ascii_digit()) {
                    return self.fault(
                        "two-values",
                        word,
                        "two values in one place",
                        "diameter and pitch are two keys: diameter = \"16 in\", pitch = \"11 in\"",
                    );
                }
                if dimension == Dimension::Ratio {
                    return self.fault(
                        "unknown-unit",
                        word,
                        format!("`{word}` after a pure number"),
                        "write the number alone, or with %",
                    );
                }
                let every = dimension.units().flat_map(|u| std::iter::once(u.name).chain(u.also.iter().copied()));
                let guess = nearest(word, every).map_or(String::new(), |near| format!("did you mean `{near}`? "));
                let first = word.chars().take(30).collect::<String>();
                self.fault(
                    "unknown-unit",
                    word,
                    format!("unknown unit `{first}`"),
                    format!("{guess}{} is written in {names}", dimension.noun()),
                )
            }
        }
    }

    fn half_width(&mut self, tail: &'a str, amount: &Amount) -> Result<f64, Fault> {
        let tail = tail.trim();
        if tail.is_empty() {
            return self.fault(
                "no-number",
                self.text,
                "the spread is missing",
                "for example \"6.5 t ± 0.4\" or \"6.5 t ± 6 %\"",
            );
        }
        let (number, rest) = self.number(tail)?;
        if number < 0.0 {
            return self.fault("bad-spread", tail, "a spread is never negative", "it is the half width of the band");
        }
        let word = rest.trim().trim_end_matches('.');
        let temperature = self.measure.dimension == Dimension::Temperature;
        match (word, amount.unit) {
            ("%", unit) if unit.is_none_or(|u| u.name != "%") => {
                if temperature {
                    return self.fault(
                        "bad-spread",
                        tail,
                        "per cent of a temperature means nothing",
                        "write degrees: \"14 °C ± 2\"",
                    );
                }
                Ok(amount.si.abs() * number / 100.0)
            }
            ("", None) => Ok(number),
            ("", Some(unit)) => Ok(number * unit.factor),
            _ => {
                let unit = self.unit(word, number)?;
                if amount.unit.is_some_and(|u| u.volume != unit.volume) {
                    return self.fault(
                        "wrong-unit",
                        word,
                        "the value is a volume, the spread a mass, or the other way round",
                        "use one unit for both",
                    );
                }
                Ok(number * unit.factor)
            }
        }
    }

    fn within_range(&self, body: &'a str, amount: &Amount) -> Result<(), Fault> {
        let scale = if amount.unit.is_some_and(|u| u.volume) { FUEL_FOR_RANGE } else { 1.0 };
        let (low, high) = self.measure.range;
        // A hair of room, so that a bound written in another unit is still inside.
        let room = 1e-9 * (high - low);
        if (low - room..=high + room).contains(&(amount.si * scale)) {
            return Ok(());
        }
        let unit = amount.unit;
        let name = unit.map_or(String::new(), |u| format!(" {}", u.name));
        let back = |si: f64| show(unit.map_or(si, |u| u.from_si(si / scale)), 3);
        let others: Vec<String> = self
            .measure
            .usual
            .iter()
            .filter_map(|other| {
                let other = units::find(other, self.measure.dimension)?;
                let si = other.to_si(amount.number) * if other.volume { FUEL_FOR_RANGE } else { 1.0 };
                (unit.is_some_and(|u| u.name != other.name) && (low..=high).contains(&si))
                    .then(|| format!("\"{} {}\"", show(amount.number, 6), other.name))
            })
            .collect();
        let guess = if unit.is_none() && high < 2.0 && (low..=high).contains(&(amount.number / 100.0)) {
            format!("; did you mean \"{} %\"?", show(amount.number, 6))
        } else if others.is_empty() {
            String::new()
        } else {
            format!("; did you mean {}?", list(&others))
        };
        let comma = if body.contains(',') { "; if the comma is a decimal comma, write a point" } else { "" };
        self.fault(
            "out-of-range",
            body,
            format!(
                "{}{name} cannot be: `{}` lies between {}{name} and {}{name}",
                show(amount.number, 6),
                self.key,
                back(low),
                back(high)
            ),
            format!("look at the number{} again{guess}{comma}", if unit.is_some() { " and its unit" } else { "" }),
        )
    }

    fn needs_unit<T>(&self, part: &'a str, number: f64) -> Result<T, Fault> {
        self.fault(
            "needs-unit",
            part,
            format!("{} needs a unit", self.measure.dimension.noun()),
            unit_help(self.measure, number),
        )
    }

    fn example(&self) -> String {
        example(self.measure)
    }
}
