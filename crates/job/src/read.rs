//! Reading a job file: text in, typed job out, or every problem at once.

use crate::assemble;
use crate::doubts;
use crate::keys::{self, Key, ROOT, Shape};
use crate::model::Job;
use crate::near::{list, nearest};
use crate::problem::{Problem, Severity};
use crate::quantity::Source;
use crate::survey;
use crate::syntax;
use crate::value::{Context, Node, key_span};
use crate::words::Word;
use std::ops::Range;
use toml_edit::{Item, TableLike};

/// A job file that was accepted.
#[derive(Clone, Debug)]
pub struct Read {
    /// The job.
    pub job: Job,
    /// What was accepted but looks wrong, in order of place.
    pub doubts: Vec<Problem>,
}

/// A job file is a page or two; anything beyond this was not meant for us.
const LARGEST: usize = 1 << 20;

impl Job {
    /// Reads a job file.
    ///
    /// Nothing is required: what is missing is assumed later. Whatever is there has to be right.
    ///
    /// # Errors
    /// Every error of the file in order of place, together with the doubts met on the way.
    pub fn read(text: &str) -> Result<Read, Vec<Problem>> {
        if text.len() > LARGEST {
            let message = format!("this file is {} kB long", text.len() / 1024);
            return Err(vec![Problem::error("not-a-job", 0..0, message).help("a job file is a page or two")]);
        }
        let syntax::Parsed { document, mut problems } = syntax::parse(text);
        let mut job = Job::default();
        if let Some(document) = document {
            if document.as_table().is_empty() && problems.is_empty() {
                let help = "begin with: fairwake new; or write [boat], [engine], [drive], [propeller] and [[reading]]";
                problems.push(Problem::error("empty", 0..0, "there is nothing in this file").help(help));
            }
            let mut walk = Walk { text, problems: &mut problems };
            let fields = walk.table(document.as_table(), ROOT, "", 0..text.len());
            job = assemble::job(&fields, &mut problems);
            doubts::find(&job, &fields, &mut problems);
            survey::find_problems(&job, &mut problems);
        }
        problems.sort_by_key(|p| (p.span.start, p.severity, p.span.end));
        if problems.iter().any(|p| p.severity == Severity::Error) {
            return Err(problems);
        }
        Ok(Read { job, doubts: problems })
    }
}

/// The checked content of one table.
#[derive(Clone, Debug, Default)]
pub(crate) struct Fields {
    /// Name, place and value.
    pub values: Vec<(&'static str, Range<usize>, Node)>,
    pub tables: Vec<(&'static str, Fields)>,
    /// Keys that are there but were refused.
    pub refused: Vec<&'static str>,
    pub span: Range<usize>,
}

struct Walk<'a> {
    text: &'a str,
    problems: &'a mut Vec<Problem>,
}

impl Walk<'_> {
    fn table(&mut self, table: &dyn TableLike, keys: &'static [Key], path: &str, span: Range<usize>) -> Fields {
        let mut fields = Fields { span: span.clone(), ..Fields::default() };
        for (name, item) in table.iter() {
            if item.is_none() {
                continue;
            }
            let name_span = key_span(table, name).unwrap_or_else(|| span.clone());
            let Some(key) = keys.iter().find(|key| key.name == name) else {
                self.unknown(name, name_span, keys, path, item);
                continue;
            };
            let full = if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") };
            let at = item.span().unwrap_or_else(|| name_span.clone());
            match key.shape {
                Shape::Table(inner) => match item.as_table_like() {
                    Some(below) => fields.tables.push((key.name, self.table(below, inner, &full, at))),
                    None if item.is_array_of_tables() => self.refuse(
                        at,
                        format!("`{full}` is one table"),
                        format!("[{full}], with one pair of brackets, and once only"),
                    ),
                    None => self.refuse(at, format!("`{full}` is a table"), format!("write its keys under [{full}]")),
                },
                Shape::Tables(inner) => self.tables(item, key, inner, &full, at, &mut fields),
                _ => {
                    let by = named_source(key, table);
                    let mut context = Context { text: self.text, path: &full, key, by, problems: self.problems };
                    match context.check(item, at.clone()) {
                        Some(node) => fields.values.push((key.name, at, node)),
                        None => fields.refused.push(key.name),
                    }
                }
            }
        }
        fields
    }

    fn tables(
        &mut self,
        item: &Item,
        key: &Key,
        inner: &'static [Key],
        full: &str,
        at: Range<usize>,
        fields: &mut Fields,
    ) {
        if let Some(array) = item.as_array_of_tables() {
            for table in array {
                let span = table.span().unwrap_or_else(|| at.clone());
                fields.tables.push((key.name, self.table(table, inner, full, span)));
            }
        } else if let Some(array) = item.as_array() {
            for value in array {
                let span = value.span().unwrap_or_else(|| at.clone());
                match value.as_inline_table() {
                    Some(table) => fields.tables.push((key.name, self.table(table, inner, full, span))),
                    None => self.refuse(
                        span,
                        format!("`{full}` is a list of tables"),
                        format!("write [[{full}]] and its keys below"),
                    ),
                }
            }
        } else if item.is_table_like() {
            self.refuse(
                at,
                format!("`{full}` repeats"),
                format!("write [[{full}]], with two pairs of brackets, even for a single one"),
            );
        } else {
            self.refuse(at, format!("`{full}` is a list of tables"), format!("write [[{full}]] and its keys below"));
        }
    }

    fn refuse(&mut self, span: Range<usize>, message: String, help: String) {
        self.problems.push(Problem::error("wrong-type", span, message).help(help));
    }

    fn unknown(&mut self, name: &str, span: Range<usize>, keys: &'static [Key], path: &str, item: &Item) {
        let place = if path.is_empty() { "at the top of the file".to_owned() } else { format!("in [{path}]") };
        let names: Vec<&str> = keys.iter().map(|key| key.name).collect();
        let lower = name.to_lowercase();
        let hinted = keys.iter().find(|key| key.hints.contains(&lower.as_str())).map(|key| key.name);
        let near = hinted.or_else(|| nearest(name, names.iter().copied()));
        let help = match near {
            Some(near) => format!("did you mean `{near}`?"),
            None => match elsewhere(name, path, item.is_table_like() || item.is_array_of_tables()) {
                Some(other) => other,
                None => format!("keys {place} are {}", list(&names)),
            },
        };
        let shown: String = name.chars().take(40).collect();
        self.problems.push(Problem::error("unknown-key", span, format!("unknown key `{shown}` {place}")).help(help));
    }
}

/// Says under which table a key of that name belongs: one below the present table rather than one far off.
fn elsewhere(name: &str, path: &str, is_table: bool) -> Option<String> {
    let mut found: Option<(bool, String)> = None;
    keys::each(&mut |other, key| {
        let same = key.name == name || key.hints.contains(&name.to_lowercase().as_str());
        let below = !path.is_empty() && other.starts_with(path);
        let better = found.as_ref().is_none_or(|(near, _)| below && !near);
        if same && other != path && better && matches!(key.shape, Shape::Table(_) | Shape::Tables(_)) == is_table {
            let text = if other.is_empty() {
                format!("`{}` stands at the top of the file, before the first table", key.name)
            } else {
                format!("`{}` belongs in [{other}]", key.name)
            };
            found = Some((below, text));
        }
    });
    found.map(|(_, text)| text)
}

/// The source named by the key beside (`by = "optical"`).
fn named_source(key: &Key, table: &dyn TableLike) -> Option<Source> {
    let (Shape::Quantity(measure) | Shape::Runs(measure)) = key.shape else { return None };
    let word = table.get(measure.by?)?.as_str()?;
    Source::from_word(word.trim().to_lowercase().as_str())
}
