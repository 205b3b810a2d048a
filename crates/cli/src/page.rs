//! A page of text, 100 columns wide: sentences, lists and tables.

use crate::ink::Ink;

/// Columns of a page.
pub const COLUMNS: usize = 100;

/// A page being written.
#[derive(Debug, Default)]
pub struct Page {
    text: String,
}

/// One cell of a table.
#[derive(Clone, Debug)]
pub struct Cell {
    text: String,
    ink: Ink,
}

impl<S: Into<String>> From<S> for Cell {
    fn from(text: S) -> Cell {
        Cell { text: text.into(), ink: Ink::Plain }
    }
}

impl Cell {
    /// A cell in some ink.
    pub fn inked(text: impl Into<String>, ink: Ink) -> Cell {
        Cell { text: text.into(), ink }
    }
}

impl Page {
    /// An empty page.
    #[must_use]
    pub fn new() -> Page {
        Page::default()
    }

    /// The page as text.
    #[must_use]
    pub fn finish(self) -> String {
        self.text
    }

    /// An empty line.
    pub fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    /// A heading with a gap before it.
    pub fn heading(&mut self, text: &str) {
        self.gap();
        self.hanging(text, Ink::Speak, "", "");
    }

    /// Sentences from the left edge.
    pub fn sentences(&mut self, text: &str, ink: Ink) {
        self.hanging(text, ink, "", "");
    }

    /// Sentences set in by two.
    pub fn set_in(&mut self, text: &str, ink: Ink) {
        self.hanging(text, ink, "  ", "  ");
    }

    /// An item of a list.
    pub fn item(&mut self, text: &str) {
        self.hanging(text, Ink::Plain, "  - ", "    ");
    }

    /// Text wrapped at the page's width; `first` opens the first line, `next`, which is as wide, each later one.
    pub fn hanging(&mut self, text: &str, ink: Ink, first: &str, next: &str) {
        let mut lead = first;
        for line in wrap(text, COLUMNS.saturating_sub(width(next))) {
            self.text.push_str(lead);
            self.text.push_str(&ink.on(&line));
            self.text.push('\n');
            lead = next;
        }
    }

    /// Something already laid out.
    pub fn raw(&mut self, text: &str) {
        self.text.push_str(text);
    }

    /// A table; `align` has a letter for each column, `l` or `r`. Text columns are wrapped when it would be too wide.
    pub fn table(&mut self, align: &str, head: &[&str], rows: &[Vec<Cell>]) {
        let letters: Vec<char> = align.chars().collect();
        let widths = widths(&letters, head, rows.iter());
        self.rows(&letters, &widths, head, rows);
    }

    /// Tables with columns in common, each under its heading; those without rows are left out.
    pub fn grouped(&mut self, align: &str, head: &[&str], groups: &[(&str, Vec<Vec<Cell>>)]) {
        let letters: Vec<char> = align.chars().collect();
        let widths = widths(&letters, head, groups.iter().flat_map(|(_, rows)| rows));
        for (name, rows) in groups.iter().filter(|(_, rows)| !rows.is_empty()) {
            self.heading(name);
            self.rows(&letters, &widths, head, rows);
        }
    }

    fn rows(&mut self, letters: &[char], widths: &[usize], head: &[&str], rows: &[Vec<Cell>]) {
        if !head.is_empty() {
            let cells: Vec<Cell> = head.iter().map(|h| Cell::inked(*h, Ink::Quiet)).collect();
            self.row(letters, widths, &cells);
        }
        for row in rows {
            self.row(letters, widths, row);
        }
    }

    fn row(&mut self, letters: &[char], widths: &[usize], cells: &[Cell]) {
        let lines: Vec<Vec<String>> = cells.iter().zip(widths).map(|(cell, size)| wrap(&cell.text, *size)).collect();
        let height = lines.iter().map(Vec::len).max().unwrap_or(0);
        for at in 0..height {
            let mut line = String::new();
            let mut blank = 2;
            for (column, cell) in cells.iter().enumerate() {
                let Some(size) = widths.get(column) else { break };
                let text = lines.get(column).and_then(|lines| lines.get(at)).map_or("", String::as_str);
                let room = size.saturating_sub(width(text));
                let (before, after) = if letters.get(column) == Some(&'r') { (room, 0) } else { (0, room) };
                blank += before;
                if !text.is_empty() {
                    line.push_str(&" ".repeat(blank));
                    line.push_str(&cell.ink.on(text));
                    blank = 0;
                }
                blank += after + 2;
            }
            self.text.push_str(&line);
            self.text.push('\n');
        }
    }
}

/// Widths of a table's columns.
fn widths<'a>(letters: &[char], head: &[&str], rows: impl Iterator<Item = &'a Vec<Cell>> + Clone) -> Vec<usize> {
    let columns = letters.len();
    let cells = |at: usize| rows.clone().filter_map(move |row| row.get(at));
    let mut widths: Vec<usize> = (0..columns)
        .map(|at| {
            // Heads may break between words.
            let head = head.get(at).map_or(0, |h| h.split(' ').map(width).max().unwrap_or(0));
            cells(at).map(|cell| width(&cell.text)).fold(head, usize::max)
        })
        .collect();
    let total = 2 + widths.iter().sum::<usize>() + 2 * columns.saturating_sub(1);
    let longest_word: Vec<usize> = (0..columns)
        .map(|at| cells(at).flat_map(|cell| cell.text.split(' ')).map(width).max().unwrap_or(0).min(COLUMNS / 3))
        .collect();
    // Too wide: take from the widest text column, column by column, so that lines break where there is most to break.
    for _ in COLUMNS..total {
        let texts = (0..columns).filter(|at| letters[*at] == 'l' && widths[*at] > longest_word[*at]);
        let Some(widest) = texts.max_by_key(|at| (widths[*at], *at)) else { break };
        widths[widest] -= 1;
    }
    widths
}

/// Characters, not bytes.
#[must_use]
pub fn width(text: &str) -> usize {
    text.chars().count()
}

/// Breaks text into lines of at most `columns` characters.
#[must_use]
pub fn wrap(text: &str, columns: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for piece in pieces(text) {
        let need = if line.is_empty() { width(&piece) } else { width(&line) + 1 + width(&piece) };
        if !line.is_empty() && need > columns {
            lines.push(std::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(&piece);
        while width(&line) > columns.max(1) {
            let cut = line.char_indices().nth(columns.max(1)).map_or(line.len(), |(at, _)| at);
            let rest = line.split_off(cut);
            lines.push(std::mem::replace(&mut line, rest));
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

/// Words; a number is kept whole with its groups of three and a per cent sign.
fn pieces(text: &str) -> Vec<String> {
    let mut pieces: Vec<String> = Vec::new();
    for word in text.split([' ', '\n', '\t', '\r']).filter(|word| !word.is_empty()) {
        let group = word.starts_with('%') || word.chars().take_while(char::is_ascii_digit).count() == 3;
        match pieces.last_mut() {
            Some(last) if group && last.chars().next_back().is_some_and(|c| c.is_ascii_digit()) => {
                last.push(' ');
                last.push_str(word);
            }
            _ => pieces.push(word.to_owned()),
        }
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_keep_to_their_width_and_numbers_stay_whole() {
        assert_eq!(
            wrap("the engine should reach 3 480 to 3 640 rpm", 28),
            ["the engine should reach", "3 480 to 3 640 rpm"]
        );
        assert_eq!(wrap("", 10), [""]);
        assert!(wrap(&"x".repeat(250), 100).iter().all(|line| width(line) <= 100));
    }

    #[test]
    fn wide_tables_wrap_their_last_text_column() {
        let mut page = Page::new();
        page.table("lrl", &["what", "rpm", "why"], &[vec!["a".into(), "3".into(), "word ".repeat(60).into()]]);
        let text = page.finish();
        assert!(text.lines().all(|line| width(line) <= COLUMNS + 10), "{text}");
        assert!(text.lines().count() > 3);
    }
}
