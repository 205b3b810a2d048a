//! The reference page of the job file, made from the table of keys: `docs/job-file.md`.

use crate::keys::{self, Key, Measure, Shape};
use crate::parts::FUEL_FOR_RANGE;
use crate::quantity::Dimension;
use crate::spread::DEFAULTS;
use crate::survey::SURVEY_SPREADS;
use crate::units::{self, UNITS};
use crate::words::Word;
use crate::{Source, number::show};
use std::fmt::Write as _;

const OPENING: &str = include_str!("manual.md");

/// The page as Markdown.
#[must_use]
pub fn manual() -> String {
    let mut out = OPENING.to_owned();
    out.push_str("\n## Sources and their spreads\n\n| source | means | spread when none is stated (80 % band) |\n| --- | --- | --- |\n");
    for (source, (word, means)) in Source::ALL.iter().zip(Source::WORDS) {
        let spreads: Vec<String> = DEFAULTS
            .iter()
            .filter(|row| row.source == *source)
            .map(|row| match (row.key, row.dimension) {
                (Some(key), _) => format!("{key} {}", row.words),
                (None, Some(dimension)) => format!("{} {}", dimension.noun(), row.words),
                (None, None) => row.words.to_owned(),
            })
            .collect();
        let _ = writeln!(
            out,
            "| `{word}` | {means} | {} |",
            if spreads.is_empty() { "± 5 %".to_owned() } else { spreads.join("; ") }
        );
    }
    out.push_str("\nAnything else: ± 5 %. Angles: ± 1°, from memory or estimate ± 3°. Temperatures: ± 2 °C, from memory or estimate ± 5 °C. The figures are common practice, no source.\n");
    out.push_str("\n### Spreads of a survey\n\nA value of a survey that states neither spread nor source has the spread of the tool it was measured with (80 % band; common practice, no source).\n\n| value | with | spread |\n| --- | --- | --- |\n");
    for row in SURVEY_SPREADS {
        let keys: Vec<String> = row.keys.iter().map(|key| cell(key)).collect();
        let _ = writeln!(
            out,
            "| {} | {} | {} |",
            keys.join(", "),
            row.tool.map_or("any other tool", Word::word),
            row.words
        );
    }
    let mut last = String::from("-");
    keys::each(&mut |path, key| {
        if path.ends_with("state.propeller") || matches!(key.shape, Shape::Table(_) | Shape::Tables(_)) {
            return;
        }
        if path != last {
            heading(&mut out, path);
            path.clone_into(&mut last);
        }
        let _ = writeln!(out, "| `{}` | {} | {} | {} |", key.name, takes(key), cell(key.example), key.doc);
    });
    out.push_str("\n### `[reading.state.propeller]`\n\nThe keys of `[propeller]`; say only what differed.\n");
    out.push_str("\n## Units\n\n| quantity | unit | also written | is |\n| --- | --- | --- | --- |\n");
    for unit in UNITS {
        let also: Vec<String> = unit.also.iter().map(|name| cell(name)).collect();
        let _ =
            writeln!(out, "| {} | `{}` | {} | {} |", plain(unit.dimension), unit.name, also.join(" "), unit.definition);
    }
    out.push_str("\nCapital and small letters are told apart only where it matters. Not accepted, because they mean different things to different people: ");
    let names: Vec<String> = units::AMBIGUOUS.iter().map(|(name, _)| format!("`{name}`")).collect();
    let _ = writeln!(out, "{}.", names.join(", "));
    out
}

fn heading(out: &mut String, path: &str) {
    let title = match keys::find(path) {
        None => "\n## Keys\n\n### At the top of the file\n".to_owned(),
        Some(Key { shape: Shape::Tables(_), doc, .. }) => format!("\n### `[[{path}]]`\n\n{doc}\n"),
        Some(Key { doc, .. }) => format!("\n### `[{path}]`\n\n{doc}\n"),
    };
    let _ = writeln!(out, "{title}\n| key | takes | example | meaning |\n| --- | --- | --- | --- |");
}

fn takes(key: &Key) -> String {
    match key.shape {
        Shape::Text => "text".to_owned(),
        Shape::Texts => "list of texts".to_owned(),
        Shape::Flag => "true or false".to_owned(),
        Shape::Date => "a day".to_owned(),
        Shape::Count { least, most } => format!("{least} to {most}"),
        Shape::Choice(words) => words.iter().map(|(word, _)| format!("`{word}`")).collect::<Vec<_>>().join(", "),
        Shape::Choices(words) => {
            format!("list of {}", words.iter().map(|(word, _)| format!("`{word}`")).collect::<Vec<_>>().join(", "))
        }
        Shape::Quantity(measure) => quantity(&measure),
        Shape::Band(measure) => format!("band of {}", quantity(&measure)),
        Shape::Runs(measure) => format!("{}, or a list of them", quantity(&measure)),
        Shape::Numbers(measure) => format!("list of numbers, {}", range(&measure)),
        Shape::Table(_) | Shape::Tables(_) => String::new(),
    }
}

fn quantity(measure: &Measure) -> String {
    let source = measure.source.map_or(String::new(), |source| format!("; source if none is said: {}", source.word()));
    format!("{}, {}{source}", plain(measure.dimension), range(measure))
}

fn range(measure: &Measure) -> String {
    let (low, high) = measure.range;
    match measure.usual.first().and_then(|name| units::find(name, measure.dimension)) {
        Some(unit) => {
            let scale = if unit.volume { FUEL_FOR_RANGE } else { 1.0 };
            format!("{} to {} {}", show(unit.from_si(low / scale), 2), show(unit.from_si(high / scale), 2), unit.name)
        }
        None => format!("{} to {}", show(low, 3), show(high, 3)),
    }
}

fn plain(dimension: Dimension) -> &'static str {
    let noun = dimension.noun();
    noun.strip_prefix("an ").or_else(|| noun.strip_prefix("a ")).unwrap_or(noun)
}

fn cell(text: &str) -> String {
    if text.is_empty() { String::new() } else { format!("`{text}`") }
}
