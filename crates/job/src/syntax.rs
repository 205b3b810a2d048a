//! TOML that does not parse: every broken line at once, with a guess at what was meant.
//!
//! The TOML parser stops at its first error. Here the line it stopped at is blanked (same length, so that all places
//! stay right) and the parser is asked again.

use crate::problem::Problem;
use std::ops::Range;
use toml_edit::Document;

/// Enough to see what is wrong with a file; a file worse than this is no job file.
const MOST: usize = 20;

/// A document as far as it could be read, with what could not.
pub(crate) struct Parsed {
    /// `None` when the rest cannot be trusted: a table header was broken, so that keys would land in the wrong table.
    pub document: Option<Document<String>>,
    pub problems: Vec<Problem>,
}

pub(crate) fn parse(text: &str) -> Parsed {
    let mut left = text.to_owned();
    let mut problems: Vec<Problem> = Vec::new();
    let mut trust = true;
    let mut blanked: Vec<usize> = Vec::new();
    for _ in 0..200 {
        let error = match Document::parse(left.clone()) {
            Ok(document) => return Parsed { document: trust.then_some(document), problems },
            Err(error) => error,
        };
        let span = error.span().unwrap_or(0..0);
        let mut line = line_of(&left, span.start);
        if blanked.contains(&line.start) || problems.len() >= MOST {
            break;
        }
        let alone = &left[line.clone()];
        let mut message = error.message();
        // A line that is right in itself: something before it was left open.
        if starts_something(alone)
            && !message.contains("duplicate key")
            && Document::parse(alone).is_ok()
            && let Some(open) = left_open(&left[..line.start])
        {
            line = open;
            message = "this is not closed";
        }
        let source = &left[line.clone()];
        // The tail of a value whose first line is gone already is no new mistake.
        let follows = blanked.iter().any(|at| line_of(&left, *at).end + 1 >= line.start && *at < line.start);
        // Nor are keys that come together because a header is gone.
        let thrown_together = !trust && message.contains("duplicate key");
        if !thrown_together && (!follows || starts_something(source)) {
            problems.push(explain(&left, text, &line, span, message));
        }
        trust &= !source.trim_start().starts_with('[');
        blanked.push(line.start);
        let blank: String = source.bytes().map(|b| if b == b'\r' { '\r' } else { ' ' }).collect();
        left.replace_range(line, &blank);
    }
    Parsed { document: None, problems }
}

/// The line around a place, without its line end.
fn line_of(text: &str, at: usize) -> Range<usize> {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    // An error at the very end of a file that ends in a line end belongs to the last line with something on it.
    if at == text.len() && text[..at].ends_with('\n') {
        at = text.trim_end().len();
    }
    let start = text[..at].rfind('\n').map_or(0, |n| n + 1);
    let end = text[at..].find('\n').map_or(text.len(), |n| at + n);
    start..end
}

/// The last line before `end` that opens a list or a table of values and does not close it.
fn left_open(before: &str) -> Option<Range<usize>> {
    let line = line_of(before, before.trim_end().len());
    let text = &before[line.clone()];
    let count = |c| text.matches(c).count();
    (text.contains('=') && (count('[') > count(']') || count('{') > count('}'))).then_some(line)
}

fn starts_something(line: &str) -> bool {
    let line = line.trim_start();
    line.starts_with('[') || line.split_once('=').is_some_and(|(key, _)| is_key(key.trim()))
}

fn is_key(text: &str) -> bool {
    !text.is_empty() && text.chars().all(|c| c.is_ascii_alphanumeric() || "_-.\"'".contains(c))
}

fn explain(left: &str, text: &str, line: &Range<usize>, span: Range<usize>, message: &str) -> Problem {
    let source = left[line.clone()].trim_end();
    let trimmed = source.trim_start();
    let start = line.start + source.len() - trimmed.len();
    let whole = start..line.start + source.len();
    let span =
        if span.is_empty() || span.start >= line.end { whole.clone() } else { span.start..span.end.min(line.end) };
    if message.contains("duplicate key") {
        return duplicate(text, whole, trimmed);
    }
    let syntax = |span: Range<usize>, message: &str, help: String| Problem::error("syntax", span, message).help(help);
    if trimmed.contains(['“', '”', '„', '‘']) {
        let straight = trimmed.replace(['“', '”', '„', '‘', '’'], "\"");
        return syntax(whole, "typographic quotes", format!("write straight ones: {straight}"));
    }
    if let Some(header) = trimmed.strip_prefix('[') {
        let name = header.trim_matches(['[', ']', ' ']);
        let help = if trimmed.starts_with("[[") { format!("[[{name}]]") } else { format!("[{name}]") };
        return syntax(whole, "this table header is not complete", help);
    }
    let Some((key, value)) = trimmed.split_once('=') else {
        if let Some((key, value)) = trimmed.split_once(':').filter(|(key, _)| is_key(key.trim())) {
            return syntax(
                whole,
                "a key and its value are joined by `=`",
                format!("{} = {}", key.trim(), quoted(value)),
            );
        }
        return syntax(whole, "this is neither `key = value` nor a `[table]`", "a remark starts with #".to_owned());
    };
    let (key, value) = (key.trim(), value.trim());
    if !is_key(key) {
        return syntax(
            start..start + key.len().max(1),
            "a key is made of letters, digits and _",
            "for example length_waterline = \"8.4 m\"".to_owned(),
        );
    }
    let at = whole.end - value.len();
    if value.is_empty() || value.starts_with('#') {
        return syntax(
            whole,
            "the value is missing",
            "leave the line out: what is not said is assumed, with a wide spread".to_owned(),
        );
    }
    let quotes = value.matches('"').count();
    if value.starts_with('"') && quotes == 1 {
        return syntax(at..whole.end, "the closing quote is missing", format!("{key} = {value}\""));
    }
    if !value.starts_with(['"', '\'', '[', '{']) {
        let value = value.split('#').next().unwrap_or(value).trim();
        if let Some(rest) = value.strip_prefix('=') {
            return syntax(
                at..at + value.len(),
                "one `=` is enough",
                format!("{key} = {}", rest.trim_start_matches('=').trim()),
            );
        }
        let number = value.replace(',', ".");
        if value.contains(',') && number.parse::<f64>().is_ok() {
            return syntax(at..at + value.len(), "a decimal comma", format!("write a decimal point: {key} = {number}"));
        }
        return syntax(at..at + value.len(), "the value has to stand in quotes", format!("{key} = {}", quoted(value)));
    }
    let message = if message.is_empty() { "this is not TOML" } else { message };
    let help = match value.as_bytes().first() {
        Some(b'[') => "close it with ]; a list is written [\"6.5 kn\", \"6.1 kn\"]",
        Some(b'{') => "close it with }: { value = \"6.5 t\", spread = \"0.4 t\", source = \"weighed\" }",
        _ => "a text stands in one pair of quotes; marks of inches and feet are written in and ft",
    };
    syntax(span, message, help.to_owned())
}

fn quoted(value: &str) -> String {
    let bare = value.trim().trim_matches(['"', '\'']);
    // The unit of inches is a quote itself.
    format!("\"{}\"", bare.replace('"', " in"))
}

fn duplicate(text: &str, whole: Range<usize>, line: &str) -> Problem {
    let name = |line: &str| line.split(['=', '#']).next().unwrap_or_default().trim().to_owned();
    let wanted = name(line);
    let header = wanted.starts_with('[');
    let mut first = 0..0;
    let mut offset = 0;
    for other in text[..whole.start].split_inclusive('\n') {
        let start = offset + other.len() - other.trim_start().len();
        if name(other.trim()) == wanted && (header || other.contains('=')) {
            first = start..offset + other.trim_end().len();
            if header {
                break;
            }
        }
        offset += other.len();
    }
    let shown = wanted.trim_matches(['[', ']']);
    let help = if wanted.starts_with("[reading") {
        "readings repeat as [[reading]], with two brackets".to_owned()
    } else if header {
        "put all keys of a table under one header".to_owned()
    } else {
        "keep one of them".to_owned()
    };
    Problem::error("duplicate-key", whole, format!("`{shown}` is there twice")).help(help).with(&first, "first here")
}
