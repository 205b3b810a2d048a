//! Changing a job file without disturbing its comments, order and spacing.

use crate::keys::{self, Key, Shape};
use crate::model::Reading;
use crate::near::list;
use crate::problem::{Problem, Severity};
use crate::quantity::Dimension;
use crate::syntax;
use crate::value::Context;
use crate::write::{quote, reading_block};
use std::fmt;
use toml_edit::{DocumentMut, Item, Table, TableLike, Value};

/// A job file held for editing. Only its TOML has to be right, so that wrong values can be put right here.
#[derive(Clone, Debug)]
pub struct Document {
    inner: DocumentMut,
    /// The text as it came; given back to the byte until something is changed.
    original: String,
    touched: bool,
}

impl Document {
    /// Takes a file's text.
    ///
    /// # Errors
    /// What keeps it from being TOML.
    pub fn parse(text: &str) -> Result<Document, Vec<Problem>> {
        let parsed = syntax::parse(text);
        match (parsed.document, parsed.problems.is_empty()) {
            (Some(document), true) => {
                Ok(Document { inner: document.into_mut(), original: text.to_owned(), touched: false })
            }
            _ => Err(parsed.problems),
        }
    }

    /// The value at a path such as `propeller.pitch` or `reading.0.speed`, as TOML. `None` when it is not there.
    #[must_use]
    pub fn get(&self, path: &str) -> Option<String> {
        let mut item = self.inner.as_item();
        for part in path.split('.') {
            item = match part.parse::<usize>() {
                Ok(index) => item.get(index)?,
                Err(_) => item.get(part)?,
            };
        }
        item.as_value().map(|value| {
            let mut bare = value.clone();
            bare.decor_mut().clear();
            bare.to_string()
        })
    }

    /// Sets one value, adding its table where needed. Texts, words and quantities are given plain (`17 in`), lists as TOML
    /// (`["6.5 kn", "6.1 kn"]`). A list position equal to the length adds a table to the list.
    ///
    /// # Errors
    /// Why the value or the path is refused; spans count bytes within `value`. The document is then unchanged.
    pub fn set(&mut self, path: &str, value: &str) -> Result<(), Vec<Problem>> {
        let key = key_at(path)?;
        let value = checked(path, key, value)?;
        // On a copy, so that a refusal half way leaves no empty tables behind.
        let mut inner = self.inner.clone();
        let (tables, name) = path.rsplit_once('.').unwrap_or(("", path));
        let table = table_at(inner.as_table_mut(), tables)
            .ok_or_else(|| refusal(format!("there is no place `{tables}` in this file")))?;
        match table.get_mut(name) {
            Some(Item::Value(old)) => {
                let decor = old.decor().clone();
                *old = value;
                *old.decor_mut() = decor;
            }
            Some(Item::None) | None => {
                table.insert(name, Item::Value(value));
            }
            Some(_) => return Err(refusal(format!("`{path}` is a table in this file"))),
        }
        self.inner = inner;
        self.touched = true;
        Ok(())
    }

    /// Takes a value or a table out, with the comments that stand directly at it. Says whether it was there.
    pub fn remove(&mut self, path: &str) -> bool {
        let (tables, name) = path.rsplit_once('.').unwrap_or(("", path));
        let mut item = self.inner.as_item_mut();
        for part in tables.split('.').filter(|part| !part.is_empty()) {
            let below = match part.parse::<usize>() {
                Ok(index) => item.get_mut(index),
                Err(_) => item.get_mut(part),
            };
            let Some(below) = below else { return false };
            item = below;
        }
        match (name.parse::<usize>(), item) {
            (Ok(index), Item::ArrayOfTables(list)) if index < list.len() => {
                list.remove(index);
                self.touched = true;
                true
            }
            (Ok(index), Item::Value(Value::Array(list))) if index < list.len() => {
                list.remove(index);
                self.touched = true;
                true
            }
            (_, item) => {
                let gone = item.as_table_like_mut().and_then(|table| table.remove(name)).is_some();
                self.touched |= gone;
                gone
            }
        }
    }

    /// Adds a reading behind the others.
    ///
    /// # Errors
    /// When the file holds its readings in a way that nothing can be added to.
    pub fn append_reading(&mut self, reading: &Reading) -> Result<(), Vec<Problem>> {
        let block = reading_block(reading);
        let Ok(block_document) = block.parse::<DocumentMut>() else {
            return Err(refusal("the reading cannot be written".to_owned()));
        };
        if let Some(list) = self.inner.get_mut("reading").and_then(Item::as_array_mut) {
            let table = block_document.get("reading").and_then(Item::as_array_of_tables).and_then(|list| list.get(0));
            let Some(table) = table else { return Err(refusal("the reading cannot be written".to_owned())) };
            list.push(table.clone().into_inline_table());
            self.touched = true;
            return Ok(());
        }
        // At the end of the text nothing else is touched.
        let text = self.to_string();
        let text = format!("{}\n{block}", text.trim_end());
        let Ok(inner) = text.parse::<DocumentMut>() else {
            return Err(refusal("`reading` is not a list of [[reading]] tables in this file".to_owned()));
        };
        self.inner = inner;
        self.touched = true;
        Ok(())
    }
}

impl fmt::Display for Document {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.touched {
            return f.write_str(&self.original);
        }
        // The writer drops a byte order mark, ends its own lines in \n, and always ends the last one.
        let mut text = self.inner.to_string();
        if self.original.contains("\r\n") {
            text = text.replace("\r\n", "\n").replace('\n', "\r\n");
        }
        if self.original.starts_with('\u{feff}') && !text.starts_with('\u{feff}') {
            text.insert(0, '\u{feff}');
        }
        f.write_str(&text)
    }
}

fn refusal(message: String) -> Vec<Problem> {
    vec![Problem::error("no-place", 0..0, message)]
}

fn key_at(path: &str) -> Result<&'static Key, Vec<Problem>> {
    match keys::find(path) {
        Some(key) if !matches!(key.shape, Shape::Table(_) | Shape::Tables(_)) => Ok(key),
        _ => {
            let mut names = Vec::new();
            let last = path.rsplit('.').next().unwrap_or(path);
            keys::each(&mut |table, key| {
                if key.name == last && !matches!(key.shape, Shape::Table(_) | Shape::Tables(_)) {
                    names.push(if table.is_empty() { key.name.to_owned() } else { format!("{table}.{}", key.name) });
                }
            });
            let problem = Problem::error("unknown-key", 0..0, format!("there is no key `{path}`"));
            Err(vec![if names.is_empty() { problem } else { problem.help(format!("did you mean {}?", list(&names))) }])
        }
    }
}

/// The value as TOML, checked against its key.
fn checked(path: &str, key: &'static Key, value: &str) -> Result<Value, Vec<Problem>> {
    let value = value.trim();
    let bare = match key.shape {
        Shape::Flag | Shape::Count { .. } | Shape::Numbers(_) => true,
        Shape::Texts | Shape::Choices(_) | Shape::Runs(_) => value.starts_with('['),
        Shape::Quantity(m) => value.starts_with('{') || m.dimension == Dimension::Ratio && value.parse::<f64>().is_ok(),
        _ => false,
    };
    let toml = if bare { value.to_owned() } else { quote(value) };
    let snippet = format!("{} = {toml}", key.name);
    // A refused value is shown within what the caller gave.
    let offset = key.name.len() + 3 + usize::from(!bare);
    let local = |mut problem: Problem| {
        let place = |at: usize| at.saturating_sub(offset).min(value.len());
        problem.span = place(problem.span.start)..place(problem.span.end);
        problem.related.clear();
        problem
    };
    let no_value = |span: std::ops::Range<usize>| {
        let problem = Problem::error("wrong-type", span, format!("`{value}` is no value for `{path}`"));
        vec![local(problem.help(format!("for example {}", key.example)))]
    };
    let document =
        toml_edit::Document::parse(snippet.as_str()).map_err(|error| no_value(error.span().unwrap_or(0..0)))?;
    let plain = toml.parse::<Value>().map_err(|_| no_value(0..snippet.len()))?;
    let mut problems = Vec::new();
    let item = document.get(key.name).cloned().unwrap_or_default();
    let span = item.span().unwrap_or(0..snippet.len());
    Context { text: &snippet, path, key, by: None, problems: &mut problems }.check(&item, span);
    if problems.iter().any(|p| p.severity == Severity::Error) {
        return Err(problems.into_iter().filter(|p| p.severity == Severity::Error).map(local).collect());
    }
    Ok(plain)
}

/// Finds or makes the table at a path.
fn table_at<'a>(root: &'a mut Table, path: &str) -> Option<&'a mut dyn TableLike> {
    let mut table: &mut dyn TableLike = root;
    let mut parts = path.split('.').filter(|part| !part.is_empty()).peekable();
    while let Some(part) = parts.next() {
        let index = parts.next_if(|next| next.parse::<usize>().is_ok()).and_then(|next| next.parse::<usize>().ok());
        if table.get(part).is_none_or(Item::is_none) {
            let new = if index.is_some() {
                Item::ArrayOfTables(toml_edit::ArrayOfTables::new())
            } else {
                Item::Table(spaced())
            };
            table.insert(part, new);
        }
        let item = table.get_mut(part)?;
        table = match (index, item) {
            (None, item) => item.as_table_like_mut()?,
            (Some(index), Item::ArrayOfTables(list)) => {
                if index == list.len() {
                    list.push(spaced());
                }
                list.get_mut(index)?
            }
            (Some(index), item) => item.as_array_mut()?.get_mut(index)?.as_inline_table_mut()?,
        };
    }
    Some(table)
}

/// A new table with an empty line before it.
fn spaced() -> Table {
    let mut table = Table::new();
    table.decor_mut().set_prefix("\n");
    table
}
