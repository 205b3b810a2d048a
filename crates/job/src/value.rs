//! Checking one value against what its key takes.

use crate::keys::{Key, Measure, Shape};
use crate::near::{list, nearest};
use crate::number::show;
use crate::parts::unit_help;
use crate::problem::Problem;
use crate::quantity::{Dimension, Quantity, Source};
use crate::stated::{self, Fault, Stated};
use crate::words::Word;
use std::ops::Range;
use toml_edit::{Item, TableLike, Value};

/// A checked value.
#[derive(Clone, Debug)]
pub(crate) enum Node {
    Text(String),
    Texts(Vec<String>),
    Flag(bool),
    Count(u8),
    Choice(usize),
    Choices(Vec<usize>),
    Quantity(Stated),
    Band(f64, f64),
    Runs(Vec<Stated>, Range<usize>),
    Numbers(Vec<f64>),
}

/// What a checker needs to know beside the value.
pub(crate) struct Context<'a> {
    /// The whole file.
    pub text: &'a str,
    /// `propeller.pitch`
    pub path: &'a str,
    pub key: &'static Key,
    /// Source named by the key beside it.
    pub by: Option<Source>,
    pub problems: &'a mut Vec<Problem>,
}

impl Context<'_> {
    fn refuse(&mut self, code: &'static str, span: Range<usize>, message: impl Into<String>, help: impl Into<String>) {
        self.problems.push(Problem::error(code, span, message).help(help));
    }

    fn example(&self) -> String {
        format!("for example {} = {}", self.key.name, self.key.example)
    }

    /// Checks a value; `None` when it was refused (the problem is noted).
    pub(crate) fn check(&mut self, item: &Item, span: Range<usize>) -> Option<Node> {
        let Some(value) = item.as_value() else {
            let kind = if item.is_array_of_tables() { "a list of tables" } else { "a table" };
            self.refuse("wrong-type", span, format!("`{}` is a value, not {kind}", self.path), self.example());
            return None;
        };
        match self.key.shape {
            Shape::Text => self.text(value, span).map(Node::Text),
            Shape::Texts => match value.as_array() {
                Some(array) => {
                    let texts: Vec<_> = array.iter().map(|v| self.text(v, span_of(v, &span))).collect();
                    texts.into_iter().collect::<Option<Vec<_>>>().map(Node::Texts)
                }
                None => self.text(value, span).map(|one| Node::Texts(vec![one])),
            },
            Shape::Flag => match value.as_bool() {
                Some(flag) => Some(Node::Flag(flag)),
                None => {
                    self.wrong_type(value, span, "true or false", "write true or false, without quotes");
                    None
                }
            },
            Shape::Date => self.date(value, span).map(Node::Text),
            Shape::Count { least, most } => self.count(value, span, least, most).map(Node::Count),
            Shape::Choice(words) => self.choice(value, span, words).map(Node::Choice),
            Shape::Choices(words) => match value.as_array() {
                Some(array) => {
                    let picked: Vec<_> = array.iter().map(|v| self.choice(v, span_of(v, &span), words)).collect();
                    picked.into_iter().collect::<Option<Vec<_>>>().map(Node::Choices)
                }
                None => self.choice(value, span, words).map(|one| Node::Choices(vec![one])),
            },
            Shape::Quantity(measure) => self.quantity(value, span, &measure).map(Node::Quantity),
            Shape::Band(measure) => self.band(value, span, &measure),
            Shape::Runs(measure) => self.runs(value, span, &measure),
            Shape::Numbers(measure) => self.numbers(value, span, &measure),
            Shape::Table(_) | Shape::Tables(_) => None,
        }
    }

    fn wrong_type(&mut self, value: &Value, span: Range<usize>, wanted: &str, help: impl Into<String>) {
        self.refuse("wrong-type", span, format!("`{}` wants {wanted}, not {}", self.path, type_of(value)), help);
    }

    fn text(&mut self, value: &Value, span: Range<usize>) -> Option<String> {
        match value {
            Value::String(text) => Some(text.value().clone()),
            Value::Integer(_) | Value::Float(_) | Value::Datetime(_) => {
                let raw = self.text.get(span.clone()).unwrap_or_default().to_owned();
                self.wrong_type(value, span, "text", format!("put it in quotes: \"{raw}\""));
                None
            }
            _ => {
                let help = self.example();
                self.wrong_type(value, span, "text", help);
                None
            }
        }
    }

    fn date(&mut self, value: &Value, span: Range<usize>) -> Option<String> {
        let text = match value {
            Value::Datetime(date) => date.value().to_string(),
            _ => self.text(value, span.clone())?,
        };
        let part = |range: Range<usize>| {
            text.get(range).filter(|s| s.bytes().all(|b| b.is_ascii_digit())).and_then(|s| s.parse::<u32>().ok())
        };
        let fits = text.get(4..5) == Some("-")
            && text.get(7..8) == Some("-")
            && text.get(10..11).is_none_or(|s| s == "T" || s == " ")
            && part(0..4).is_some_and(|y| (1900..2200).contains(&y));
        let days = |month: u32, year: u32| match month {
            4 | 6 | 9 | 11 => 30,
            2 if year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400)) => 29,
            2 => 28,
            _ => 31,
        };
        let real = part(5..7)
            .filter(|m| (1..=12).contains(m))
            .is_some_and(|m| part(8..10).is_some_and(|d| (1..=days(m, part(0..4).unwrap_or(1))).contains(&d)));
        if fits && real {
            return Some(text);
        }
        self.refuse("bad-date", span, format!("`{text}` is not a day"), "write year, month, day: \"2026-05-02\"");
        None
    }

    fn count(&mut self, value: &Value, span: Range<usize>, least: u8, most: u8) -> Option<u8> {
        let number = match value {
            Value::Integer(n) => Some(*n.value()),
            Value::Float(n) if n.value().fract() == 0.0 && n.value().abs() < 1e9 => Some(*n.value() as i64),
            Value::String(s) => s.value().trim().parse().ok(),
            _ => None,
        };
        match number {
            Some(n) if (i64::from(least)..=i64::from(most)).contains(&n) => u8::try_from(n).ok(),
            Some(n) => {
                self.refuse(
                    "out-of-range",
                    span,
                    format!("{n} cannot be: `{}` lies between {least} and {most}", self.path),
                    format!("a whole number from {least} to {most}"),
                );
                None
            }
            None if value.is_float() => {
                let raw = self.text.get(span.clone()).unwrap_or_default().to_owned();
                let help = self.example();
                self.refuse("wrong-type", span, format!("`{}` wants a whole number, not {raw}", self.path), help);
                None
            }
            None => {
                let help = self.example();
                self.wrong_type(value, span, "a whole number", help);
                None
            }
        }
    }

    fn choice(&mut self, value: &Value, span: Range<usize>, words: &[(&'static str, &'static str)]) -> Option<usize> {
        let names: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        let Some(text) = value.as_str() else {
            self.wrong_type(value, span, "a word", list(&names));
            return None;
        };
        let plain = |s: &str| s.trim().to_lowercase().replace(['_', '-'], " ");
        if let Some(found) = names.iter().position(|name| plain(name) == plain(text)) {
            return Some(found);
        }
        let guess = match meant(&plain(text), &names) {
            guesses if guesses.is_empty() => String::new(),
            guesses => format!("did you mean {}? ", list(&guesses)),
        };
        let shown: String = text.chars().take(40).collect();
        self.refuse(
            "unknown-choice",
            span,
            format!("`{}` cannot be `{shown}`", self.path),
            format!("{guess}it is one of: {}", list(&names)),
        );
        None
    }

    fn quantity(&mut self, value: &Value, span: Range<usize>, measure: &Measure) -> Option<Stated> {
        match value {
            Value::String(text) => self.stated(text.value(), &span, measure),
            Value::Integer(_) | Value::Float(_) => self.bare_number(value, span, measure),
            Value::InlineTable(table) => self.spelled_out(table, span, measure),
            _ => {
                let wanted = measure.dimension.noun();
                let help = self.example();
                self.wrong_type(value, span, wanted, help);
                None
            }
        }
    }

    fn bare_number(&mut self, value: &Value, span: Range<usize>, measure: &Measure) -> Option<Stated> {
        let number = value.as_float().or_else(|| value.as_integer().map(|n| n as f64))?;
        if !number.is_finite() {
            self.refuse("bad-number", span, format!("`{}` has to be a number that exists", self.path), self.example());
            return None;
        }
        if measure.dimension == Dimension::Ratio {
            // Plain decimals only: the string form knows no exponents.
            return self.stated(&format!("{number}"), &span, measure).map(|mut stated| {
                stated.quantity.text = show(number, 12);
                stated
            });
        }
        self.refuse(
            "needs-unit",
            span,
            format!("{} needs a unit", measure.dimension.noun()),
            unit_help(measure, number),
        );
        None
    }

    /// `{ value = "6.5 t", spread = "0.4 t", source = "weighed" }`
    fn spelled_out(&mut self, table: &toml_edit::InlineTable, span: Range<usize>, measure: &Measure) -> Option<Stated> {
        let before = self.problems.len();
        let (mut value, mut spread, mut source) = (None, None, None);
        for (name, part) in table.iter() {
            let at = span_of(part, &span);
            let text = match part {
                Value::Integer(n) => n.value().to_string(),
                Value::Float(n) => n.value().to_string(),
                Value::String(text) => text.value().clone(),
                _ => {
                    self.wrong_type(
                        part,
                        at,
                        "a text",
                        "{ value = \"6.5 t\", spread = \"0.4 t\", source = \"weighed\" }",
                    );
                    continue;
                }
            };
            match name {
                "value" => value = Some((text, at)),
                "spread" => spread = Some((text, at)),
                "source" => source = Some((text, at)),
                _ => {
                    let at = key_span(table, name).unwrap_or(at);
                    self.refuse(
                        "unknown-key",
                        at,
                        format!("unknown key `{name}` in a spelled-out value"),
                        "it has value, spread and source",
                    );
                }
            }
        }
        let Some((value, at)) = value else {
            if self.problems.len() == before {
                self.refuse(
                    "no-value",
                    span,
                    format!("`{}` has no value", self.path),
                    "{ value = \"6.5 t\", spread = \"0.4 t\", source = \"weighed\" }",
                );
            }
            return None;
        };
        let mut stated = self.stated(&value, &at, measure)?;
        // The pieces mean what they would mean in one string; each fault is shown on the piece that brought it in.
        let mut whole = value;
        if let Some((spread, at)) = spread {
            let spread = spread.trim().trim_start_matches(['±', '+', '-']).trim();
            whole = format!("{whole} ± {spread}");
            stated = self.piece(&whole, &at, measure)?;
        }
        if let Some((source, at)) = source {
            whole = format!("{whole} ({source})");
            stated = self.piece(&whole, &at, measure)?;
        }
        stated.quantity.at = span;
        (self.problems.len() == before || self.problems[before..].iter().all(|p| p.severity == crate::Severity::Doubt))
            .then_some(stated)
    }

    fn piece(&mut self, whole: &str, at: &Range<usize>, measure: &Measure) -> Option<Stated> {
        match stated::read(whole, &self.default_source(measure), self.key.name) {
            Ok(stated) => self.source_agrees(stated, at),
            Err(fault) => {
                self.problems
                    .push(Problem { help: fault.help, ..Problem::error(fault.code, at.clone(), fault.message) });
                None
            }
        }
    }

    fn default_source(&self, measure: &Measure) -> Measure {
        Measure { source: self.by.or(measure.source), ..*measure }
    }

    fn stated(&mut self, text: &str, span: &Range<usize>, measure: &Measure) -> Option<Stated> {
        match stated::read(text, &self.default_source(measure), self.key.name) {
            Ok(mut stated) => {
                stated.quantity.at = span.clone();
                for taken in std::mem::take(&mut stated.taken) {
                    let at = self.inside(text, span, &taken);
                    self.problems.push(Problem { help: taken.help, ..Problem::doubt(taken.code, at, taken.message) });
                }
                self.source_agrees(stated, span)
            }
            Err(fault) => {
                let at = self.inside(text, span, &fault);
                self.problems.push(Problem { help: fault.help, ..Problem::error(fault.code, at, fault.message) });
                None
            }
        }
    }

    fn source_agrees(&mut self, stated: Stated, span: &Range<usize>) -> Option<Stated> {
        if let (true, Some(by), Some(said)) = (stated.said_source, self.by, stated.quantity.source)
            && by != said
        {
            let (said, by) = (said.word(), by.word());
            self.refuse(
                "two-sources",
                span.clone(),
                format!("two sources for `{}`: `{said}` here and `{by}` beside it", self.path),
                "say it once",
            );
            return None;
        }
        Some(stated)
    }

    /// Where in the file a place within a string value stands. Escapes in the string make that unknowable: then all of it.
    fn inside(&self, text: &str, span: &Range<usize>, fault: &Fault) -> Range<usize> {
        let raw = self.text.get(span.clone()).unwrap_or_default();
        match raw.len().checked_sub(text.len()).filter(|extra| *extra == 2 && &raw[1..raw.len() - 1] == text) {
            Some(_) if fault.at.is_empty() => span.clone(),
            Some(_) => span.start + 1 + fault.at.start..span.start + 1 + fault.at.end,
            None => span.clone(),
        }
    }

    fn band(&mut self, value: &Value, span: Range<usize>, measure: &Measure) -> Option<Node> {
        let Quantity { low, high, own_spread, .. } = self.quantity(value, span.clone(), measure)?.quantity;
        if !own_spread {
            self.refuse("wants-range", span, format!("`{}` is a band", self.path), self.example());
            return None;
        }
        Some(Node::Band(low, high))
    }

    fn runs(&mut self, value: &Value, span: Range<usize>, measure: &Measure) -> Option<Node> {
        let Some(array) = value.as_array() else {
            return self.quantity(value, span.clone(), measure).map(|one| Node::Runs(vec![one], span));
        };
        if array.is_empty() {
            self.refuse("no-value", span, format!("`{}` is an empty list", self.path), self.example());
            return None;
        }
        if array.len() > 20 {
            self.refuse(
                "too-many",
                span,
                format!("{} runs in one reading", array.len()),
                "give each throttle setting a reading of its own",
            );
            return None;
        }
        let runs: Vec<_> = array.iter().map(|v| self.quantity(v, span_of(v, &span), measure)).collect();
        runs.into_iter().collect::<Option<Vec<_>>>().map(|runs| Node::Runs(runs, span))
    }

    fn numbers(&mut self, value: &Value, span: Range<usize>, measure: &Measure) -> Option<Node> {
        let Some(array) = value.as_array() else {
            let help = self.example();
            self.wrong_type(value, span, "a list of numbers", help);
            return None;
        };
        let numbers: Vec<_> =
            array.iter().map(|v| self.quantity(v, span_of(v, &span), measure).map(|s| s.quantity.middle)).collect();
        numbers.into_iter().collect::<Option<Vec<_>>>().map(Node::Numbers)
    }
}

/// What people write for a choice; used only to guess.
const HABITS: &[(&str, &str)] = &[
    ("rh", "right"),
    ("lh", "left"),
    ("r", "right"),
    ("l", "left"),
    ("clockwise", "right"),
    ("anticlockwise", "left"),
    ("salt", "sea"),
    ("salt water", "sea"),
    ("river", "fresh"),
    ("lake", "fresh"),
    ("tacho", "dashboard"),
    ("phone", "gps"),
    ("flywheel", "crankshaft"),
    ("gasoline", "petrol"),
    ("sail", "sailing"),
    ("motor yacht", "semi-displacement"),
    ("slime", "light slime"),
    ("weed", "small shell"),
    ("barnacles", "small shell"),
    ("swing arm", "swing gauge"),
    ("pitchometer", "swing gauge"),
    ("pitch blocks", "blocks"),
    ("level", "digital level"),
    ("bevel", "protractor"),
    ("ruler", "rule"),
    ("cmm", "coordinate machine"),
];

/// The choices a word may have meant, in backquotes.
fn meant(text: &str, names: &[&str]) -> Vec<String> {
    let habit = HABITS.iter().find(|(word, name)| *word == text && names.contains(name)).map(|(_, name)| *name);
    let one = habit.or_else(|| nearest(text, names.iter().copied()));
    let several =
        || names.iter().copied().filter(|name| text.len() > 2 && (name.contains(text) || text.contains(name)));
    one.map_or_else(|| several().collect(), |one| vec![one]).into_iter().map(|name| format!("`{name}`")).collect()
}

/// The span of a value, or that of what holds it.
pub(crate) fn span_of(value: &Value, outer: &Range<usize>) -> Range<usize> {
    value.span().unwrap_or_else(|| outer.clone())
}

/// The span of a key in a table.
pub(crate) fn key_span(table: &dyn TableLike, name: &str) -> Option<Range<usize>> {
    table.get_key_value(name).and_then(|(key, _)| key.span())
}

fn type_of(value: &Value) -> &'static str {
    match value {
        Value::String(_) => "a text",
        Value::Integer(_) | Value::Float(_) => "a number",
        Value::Boolean(_) => "true or false",
        Value::Datetime(_) => "a date",
        Value::Array(_) => "a list",
        Value::InlineTable(_) => "a table",
    }
}
