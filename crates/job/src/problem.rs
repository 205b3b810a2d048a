//! What is wrong, or looks wrong, in a job file, and how it is shown.

use annotate_snippets::{AnnotationKind, Level, Renderer, Snippet};
use std::ops::Range;

/// How grave a problem is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// The file is refused.
    Error,
    /// Accepted, but looks wrong: somebody should look again.
    Doubt,
}

/// One problem in a job file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// How grave.
    pub severity: Severity,
    /// Stable short name for machines, such as `needs-unit`.
    pub code: &'static str,
    /// What is wrong, with the value.
    pub message: String,
    /// What would be right.
    pub help: Option<String>,
    /// Bytes in the file; always on character boundaries of the text that was read.
    pub span: Range<usize>,
    /// Other places that belong to the problem, each with a few words.
    pub related: Vec<(Range<usize>, String)>,
}

impl Problem {
    /// A reason to refuse the file.
    #[must_use]
    pub fn error(code: &'static str, span: Range<usize>, message: impl Into<String>) -> Self {
        Problem { severity: Severity::Error, code, message: message.into(), help: None, span, related: Vec::new() }
    }

    /// A reason to look again.
    #[must_use]
    pub fn doubt(code: &'static str, span: Range<usize>, message: impl Into<String>) -> Self {
        Problem { severity: Severity::Doubt, ..Problem::error(code, span, message) }
    }

    /// Adds what would be right.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }

    /// Adds another place; an empty place (nothing in the file) is left out.
    #[must_use]
    pub fn with(mut self, span: &Range<usize>, words: impl Into<String>) -> Self {
        if !span.is_empty() {
            self.related.push((span.clone(), words.into()));
        }
        self
    }
}

/// Line and column (both from 1, columns in characters) of a byte offset.
#[must_use]
pub fn line_and_column(text: &str, offset: usize) -> (usize, usize) {
    let offset = floor_boundary(text, offset);
    let before = &text[..offset];
    let start = before.rfind('\n').map_or(0, |at| at + 1);
    (before.matches('\n').count() + 1, before[start..].chars().count() + 1)
}

/// Draws problems with the lines they stand on, a caret below, and the way out; ends with a count.
///
/// Errors and doubts share this one form. `colour` adds ANSI colours; the form without is plain ASCII but for what the
/// file itself holds.
#[must_use]
pub fn render(problems: &[Problem], file_name: &str, text: &str, colour: bool) -> String {
    let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
    let mut out = String::new();
    for problem in problems {
        let level = match problem.severity {
            Severity::Error => Level::ERROR,
            Severity::Doubt => Level::WARNING.with_name("doubt"),
        };
        let primary = clip(text, &problem.span);
        // The renderer reads the whole text for every problem: hand it only the lines it will show.
        let (mut from, mut to) = (primary.start, primary.end);
        for (span, _) in &problem.related {
            let span = clip(text, span);
            (from, to) = (from.min(span.start), to.max(span.end));
        }
        let from = text[..from].rfind('\n').map_or(0, |at| at + 1);
        let to = text[to..].find('\n').map_or(text.len(), |at| to + at);
        let shift = |span: &Range<usize>| {
            let span = clip(text, span);
            span.start - from..span.end - from
        };
        let mut snippet = Snippet::source(&text[from..to])
            .path(file_name)
            .line_start(line_and_column(text, from).0)
            .annotation(AnnotationKind::Primary.span(shift(&problem.span)));
        for (span, words) in &problem.related {
            snippet = snippet.annotation(AnnotationKind::Context.span(shift(span)).label(words.as_str()));
        }
        let mut group = level.primary_title(problem.message.as_str()).id(problem.code).element(snippet);
        if let Some(help) = &problem.help {
            group = group.element(Level::HELP.message(help.as_str()));
        }
        out.push_str(&renderer.render(&[group]));
        out.push_str("\n\n");
    }
    let errors = problems.iter().filter(|p| p.severity == Severity::Error).count();
    let doubts = problems.len() - errors;
    let count = |n: usize, one: &str| if n == 1 { format!("1 {one}") } else { format!("{n} {one}s") };
    let sum = match (errors, doubts) {
        (0, 0) => return out,
        (e, 0) => count(e, "error"),
        (0, d) => count(d, "doubt"),
        (e, d) => format!("{}, {}", count(e, "error"), count(d, "doubt")),
    };
    out.push_str(&sum);
    out.push('\n');
    out
}

/// Brings a span inside the text and onto character boundaries.
fn clip(text: &str, span: &Range<usize>) -> Range<usize> {
    let start = floor_boundary(text, span.start);
    let end = floor_boundary(text, span.end.max(start));
    start..end
}

fn floor_boundary(text: &str, offset: usize) -> usize {
    let mut at = offset.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}
