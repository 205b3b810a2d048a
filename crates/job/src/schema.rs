//! The job file's JSON schema (draft 2020-12), made from the table of keys, for editors that complete and check TOML.

use crate::keys::{Key, Measure, ROOT, Shape};
use crate::quantity::{Dimension, Source};
use crate::words::Word;
use std::fmt::Write as _;

/// The schema as text, ending in a line end.
///
/// It is a little more lenient than the reader: a schema cannot hold a unit against a physical range.
#[must_use]
pub fn schema() -> String {
    let mut out = Json::default();
    out.open('{');
    out.pair("$schema", "https://json-schema.org/draft/2020-12/schema");
    out.pair("title", "Fairwake job file");
    out.pair("description", "What was said about a boat, its engine, drive and propeller, and what was read on it.");
    body(&mut out, ROOT);
    out.name("$defs");
    out.open('{');
    out.name("source");
    out.open('{');
    out.words(Source::WORDS);
    out.close('}');
    out.close('}');
    out.close('}');
    out.text.push('\n');
    out.text
}

fn body(out: &mut Json, keys: &[Key]) {
    out.pair("type", "object");
    out.name("additionalProperties");
    out.raw("false");
    out.name("properties");
    out.open('{');
    for key in keys {
        out.name(key.name);
        out.open('{');
        out.pair("description", &describe(key));
        shape(out, key);
        out.close('}');
    }
    out.close('}');
}

fn describe(key: &Key) -> String {
    let mut text = key.doc.to_owned();
    if let Shape::Choice(words) | Shape::Choices(words) = key.shape {
        let words: Vec<String> = words.iter().map(|(word, means)| format!("{word}: {means}")).collect();
        let _ = write!(text, " {}.", words.join("; "));
    }
    text
}

fn shape(out: &mut Json, key: &Key) {
    match key.shape {
        Shape::Text => out.pair("type", "string"),
        Shape::Texts => {
            out.name("type");
            out.raw("[\"string\", \"array\"]");
            out.name("items");
            out.raw("{ \"type\": \"string\" }");
        }
        Shape::Flag => out.pair("type", "boolean"),
        Shape::Date => {
            out.pair("type", "string");
            out.pair("format", "date");
        }
        Shape::Count { least, most } => {
            out.pair("type", "integer");
            out.name("minimum");
            out.raw(&least.to_string());
            out.name("maximum");
            out.raw(&most.to_string());
        }
        Shape::Choice(words) => out.words(words),
        Shape::Choices(words) => {
            out.pair("type", "array");
            out.name("items");
            out.open('{');
            out.words(words);
            out.close('}');
        }
        Shape::Quantity(measure) => quantity(out, &measure, key.example, false),
        Shape::Band(measure) => quantity(out, &measure, key.example, false),
        Shape::Runs(measure) => quantity(out, &measure, key.example, true),
        Shape::Numbers(measure) => {
            out.pair("type", "array");
            out.name("items");
            out.open('{');
            quantity(out, &measure, "2.0", false);
            out.close('}');
        }
        Shape::Table(keys) => body(out, keys),
        Shape::Tables(keys) => {
            out.pair("type", "array");
            out.name("items");
            out.open('{');
            body(out, keys);
            out.close('}');
        }
    }
}

fn quantity(out: &mut Json, measure: &Measure, example: &str, runs: bool) {
    out.name("examples");
    out.raw(&format!("[{example}]"));
    out.name("anyOf");
    out.open('[');
    if measure.dimension == Dimension::Ratio {
        out.item();
        out.raw(&format!(
            "{{ \"type\": \"number\", \"minimum\": {}, \"maximum\": {} }}",
            measure.range.0, measure.range.1
        ));
    }
    out.item();
    out.raw("{ \"type\": \"string\", \"pattern\": \"[0-9½¼¾⅛⅜⅝⅞]\" }");
    out.item();
    out.raw(
        "{ \"type\": \"object\", \"properties\": { \"value\": { \"type\": [\"string\", \"number\"] }, \"spread\": { \"type\": [\"string\", \"number\"] }, \"source\": { \"$ref\": \"#/$defs/source\" } }, \"required\": [\"value\"], \"additionalProperties\": false }",
    );
    if runs {
        out.item();
        out.raw("{ \"type\": \"array\", \"minItems\": 1, \"maxItems\": 20, \"items\": { \"type\": \"string\", \"pattern\": \"[0-9½¼¾⅛⅜⅝⅞]\" } }");
    }
    out.close(']');
}

/// A writer of indented JSON, no more than is needed here.
#[derive(Default)]
struct Json {
    text: String,
    depth: usize,
    /// Something stands in the object or list in hand already.
    filled: bool,
}

impl Json {
    fn line(&mut self) {
        self.text.push('\n');
        self.text.extend(std::iter::repeat_n("  ", self.depth));
    }
    fn open(&mut self, bracket: char) {
        self.text.push(bracket);
        self.depth += 1;
        self.filled = false;
    }
    fn close(&mut self, bracket: char) {
        self.depth -= 1;
        self.line();
        self.text.push(bracket);
        self.filled = true;
    }
    /// Begins a list item.
    fn item(&mut self) {
        if self.filled {
            self.text.push(',');
        }
        self.line();
    }
    fn name(&mut self, name: &str) {
        self.item();
        self.text.push_str(&string(name));
        self.text.push_str(": ");
    }
    fn raw(&mut self, value: &str) {
        self.text.push_str(value);
        self.filled = true;
    }
    fn pair(&mut self, name: &str, value: &str) {
        self.name(name);
        self.raw(&string(value));
    }
    fn words(&mut self, words: &[(&str, &str)]) {
        self.name("enum");
        let words: Vec<String> = words.iter().map(|(word, _)| string(word)).collect();
        self.raw(&format!("[{}]", words.join(", ")));
    }
}

/// A JSON string.
fn string(text: &str) -> String {
    let mut out = String::from('"');
    for c in text.chars() {
        match c {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            c if c.is_control() => {
                let _ = write!(out, "\\u{:04x}", c as u32);
            }
            c => out.push(c),
        }
    }
    out.push('"');
    out
}
