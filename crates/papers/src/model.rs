//! One model for all documents, rendered as HTML and as PDF.

use crate::Size;
use serde::Serialize;

/// One document.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Paper {
    /// Name of its file, without ending.
    pub file: &'static str,
    /// Language tag.
    pub language: &'static str,
    /// Size of the sheet.
    pub size: Size,
    /// What kind of paper, in words.
    pub name: String,
    /// The boat, or the job's title.
    pub boat: String,
    /// Date of issue, as printed.
    pub date: String,
    /// Everything is to stand on one page: pictures take the room that is left.
    pub one_page: bool,
    /// Workshop sheets are set larger and without prose.
    pub workshop: bool,
    /// What stands on it.
    pub blocks: Vec<Block>,
    /// Fingerprint, version, date: the foot of every page.
    pub foot: String,
    /// The safety line, at the foot of every page.
    pub safety: String,
    /// `page` and `of`, in the language.
    pub page_words: [String; 2],
}

/// Part of a document.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Block {
    /// The sentence to repeat.
    Lead {
        /// It.
        text: String,
    },
    /// A heading.
    Heading {
        /// It.
        text: String,
    },
    /// Sentences.
    Text {
        /// They.
        text: String,
    },
    /// Sentences in second ink.
    Quiet {
        /// They.
        text: String,
    },
    /// What must be exactly so: the line of an order.
    Boxed {
        /// It.
        text: String,
    },
    /// A warning of danger to people or engine.
    Caution {
        /// The word before it.
        word: String,
        /// It.
        text: String,
    },
    /// A list; `numbered` where the order matters.
    List {
        /// In order.
        numbered: bool,
        /// Its entries.
        items: Vec<String>,
    },
    /// A few numbers, set large.
    Figures {
        /// They.
        figures: Vec<Figure>,
    },
    /// Findings and other marked entries.
    Entries {
        /// They.
        entries: Vec<Entry>,
    },
    /// A table.
    Table {
        /// It.
        table: Table,
    },
    /// Pictures, side by side where there are two.
    Pictures {
        /// They.
        pictures: Vec<Shown>,
        /// Largest height on paper, mm.
        height: u16,
    },
    /// Lines to fill in by hand, or already filled.
    Lines {
        /// They.
        lines: Vec<Line>,
    },
    /// Room for notes: so many ruled lines.
    Room {
        /// Lines.
        lines: u8,
    },
    /// Text as it was written in a file.
    Source {
        /// It.
        text: String,
    },
}

/// A number set large.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Figure {
    /// The number with its unit.
    pub value: String,
    /// What it is.
    pub label: String,
    /// What it is held against.
    pub beside: String,
}

/// A marked entry.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Entry {
    /// `■`, `▲`, `●`, `✓`.
    pub mark: &'static str,
    /// The mark in a word.
    pub word: String,
    /// One sentence.
    pub sentence: String,
    /// What to do; may be empty.
    pub advice: String,
    /// Who says so; may be empty.
    pub source: String,
}

/// A picture.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Shown {
    /// A whole SVG document in the light sheet's colours.
    pub svg: String,
    /// Its name.
    pub title: String,
    /// What it shows, for those who cannot see it.
    pub desc: String,
}

/// A line with a label.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Line {
    /// What is asked.
    pub label: String,
    /// What is known; empty leaves a line to write on.
    pub value: String,
    /// Unit or choice beside an empty line.
    pub hint: String,
}

/// A table.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Table {
    /// Columns.
    pub columns: Vec<Column>,
    /// Rows of as many cells.
    pub rows: Vec<Vec<Cell>>,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Column {
    /// Head.
    pub head: String,
    /// Numbers hang to the right.
    pub number: bool,
    /// Share of the width; 0 takes what its content needs.
    pub share: u8,
}

/// A cell.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cell {
    /// What stands in it.
    pub text: String,
    /// Left empty to be written in by hand.
    pub blank: bool,
    /// Set in bold.
    pub strong: bool,
}

impl Cell {
    /// A cell to be filled in by hand.
    #[must_use]
    pub fn blank() -> Cell {
        Cell { text: String::new(), blank: true, strong: false }
    }

    /// A cell in bold.
    #[must_use]
    pub fn strong(text: impl Into<String>) -> Cell {
        Cell { text: text.into(), blank: false, strong: true }
    }
}

impl<T: Into<String>> From<T> for Cell {
    fn from(text: T) -> Cell {
        Cell { text: text.into(), blank: false, strong: false }
    }
}

impl Column {
    /// A column of text that takes this share of the width.
    #[must_use]
    pub fn text(head: impl Into<String>, share: u8) -> Column {
        Column { head: head.into(), number: false, share }
    }

    /// A column of numbers, as wide as they are.
    #[must_use]
    pub fn number(head: impl Into<String>) -> Column {
        Column { head: head.into(), number: true, share: 0 }
    }
}

impl Paper {
    /// The document with `change` applied to every text that is shown.
    #[must_use]
    pub fn map_text(mut self, change: &dyn Fn(&str) -> String) -> Paper {
        let apply = |text: &mut String| *text = change(text);
        for text in [&mut self.name, &mut self.boat, &mut self.date, &mut self.foot, &mut self.safety] {
            apply(text);
        }
        for block in &mut self.blocks {
            match block {
                Block::Lead { text }
                | Block::Heading { text }
                | Block::Text { text }
                | Block::Quiet { text }
                | Block::Boxed { text }
                | Block::Source { text } => apply(text),
                Block::Caution { word, text } => {
                    apply(word);
                    apply(text);
                }
                Block::List { items, .. } => items.iter_mut().for_each(apply),
                Block::Figures { figures } => {
                    for figure in figures {
                        [&mut figure.value, &mut figure.label, &mut figure.beside].into_iter().for_each(apply);
                    }
                }
                Block::Entries { entries } => {
                    for entry in entries {
                        let texts = [&mut entry.word, &mut entry.sentence, &mut entry.advice, &mut entry.source];
                        texts.into_iter().for_each(apply);
                    }
                }
                Block::Table { table } => {
                    table.columns.iter_mut().for_each(|column| apply(&mut column.head));
                    table.rows.iter_mut().flatten().for_each(|cell| apply(&mut cell.text));
                }
                Block::Pictures { pictures, .. } => {
                    for picture in pictures {
                        [&mut picture.title, &mut picture.desc].into_iter().for_each(apply);
                    }
                }
                Block::Lines { lines } => {
                    for line in lines {
                        [&mut line.label, &mut line.value, &mut line.hint].into_iter().for_each(apply);
                    }
                }
                Block::Room { .. } => {}
            }
        }
        self
    }
}
