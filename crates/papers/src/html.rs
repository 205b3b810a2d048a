//! The document as one HTML file: complete, without scripts, nothing loaded from elsewhere, with its print sheet.

use crate::Size;
use crate::model::{Block, Cell, Entry, Line, Paper, Shown, Table};
use crate::speak::tied;
use maud::{DOCTYPE, Markup, PreEscaped, html};
use std::fmt::Write as _;

const STYLE: &str = include_str!("style.css");

/// The file.
#[must_use]
pub fn page(paper: &Paper) -> String {
    let paper = &paper.clone().map_text(&tied);
    let kind = format!("{} {}", paper.file, if paper.workshop { "workshop" } else { "letter" });
    let title = format!("{}: {}", paper.name, paper.boat);
    html! {
        (DOCTYPE)
        html lang=(paper.language) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'";
                title { (title) }
                style { (PreEscaped(STYLE)) (PreEscaped(print_sheet(paper))) }
            }
            body class=(kind) {
                main {
                    header {
                        p.name { (paper.name) }
                        h1 dir="auto" { (paper.boat) }
                        p.date { (paper.date) }
                    }
                    @for block in &paper.blocks { (of(block)) }
                }
                footer {
                    p.safety { (paper.safety) }
                    p { (paper.foot) }
                }
            }
        }
    }
    .into_string()
}

/// Size of the sheet and its foot: the words go into a style sheet, so every letter that is not plain is written by its number.
fn print_sheet(paper: &Paper) -> String {
    let size = match paper.size {
        Size::A4 => "A4",
        Size::Letter => "letter",
    };
    let [page, of] = &paper.page_words;
    format!(
        "@page{{size:{size};margin:14mm 14mm 16mm;@bottom-left{{content:\"{}\";font:8pt Georgia,serif;color:#5b6b73}}\
         @bottom-right{{content:\"{} \" counter(page) \" {} \" counter(pages);font:8pt Georgia,serif;color:#5b6b73}}}}",
        css(&paper.foot),
        css(page),
        css(of)
    )
}

/// Text as the content of a CSS string.
fn css(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        if c.is_ascii_alphanumeric() {
            out.push(c);
        } else {
            // Writing to a string cannot fail.
            let _ = write!(out, "\\{:x} ", u32::from(c));
        }
    }
    out
}

fn of(block: &Block) -> Markup {
    match block {
        Block::Lead { text } => html! { p.lead dir="auto" { (text) } },
        Block::Heading { text } => html! { h2 dir="auto" { (text) } },
        Block::Text { text } => html! { p dir="auto" { (text) } },
        Block::Quiet { text } => html! { p.quiet dir="auto" { (text) } },
        Block::Boxed { text } => html! { p.boxed dir="auto" { (text) } },
        Block::Caution { word, text } => html! { p.caution dir="auto" { strong { (word) ": " } (text) } },
        Block::List { numbered: true, items } => html! { ol { @for item in items { li dir="auto" { (item) } } } },
        Block::List { numbered: false, items } => html! { ul { @for item in items { li dir="auto" { (item) } } } },
        Block::Figures { figures } => html! {
            dl.figures {
                @for figure in figures {
                    div { dt { (figure.label) } dd { strong { (figure.value) } span { (figure.beside) } } }
                }
            }
        },
        Block::Entries { entries } => html! { ul.entries { @for entry in entries { (of_entry(entry)) } } },
        Block::Table { table } => of_table(table),
        Block::Pictures { pictures, height } => of_pictures(pictures, *height),
        Block::Lines { lines } => html! { dl.lines { @for line in lines { (of_line(line)) } } },
        Block::Room { lines } => html! { div.room aria-hidden="true" { @for _ in 0..*lines { div {} } } },
        Block::Source { text } => html! { pre { code { (text) } } },
    }
}

fn of_entry(entry: &Entry) -> Markup {
    html! {
        li {
            span.mark aria-hidden="true" { (entry.mark) }
            div {
                p dir="auto" { strong { (entry.word) ". " } (entry.sentence) }
                @if !entry.advice.is_empty() { p dir="auto" { (entry.advice) } }
                @if !entry.source.is_empty() { p.quiet dir="auto" { (entry.source) } }
            }
        }
    }
}

fn of_table(table: &Table) -> Markup {
    html! {
        // A region that can be reached and moved by keyboard where it is wider than a phone.
        div.wide tabindex="0" {
            table {
                thead { tr { @for column in &table.columns { th scope="col" class=[column.number.then_some("n")] { (column.head) } } } }
                tbody {
                    @for row in &table.rows {
                        tr {
                            @for (cell, column) in row.iter().zip(&table.columns) {
                                td class=(class(cell, column.number)) {
                                    @if cell.strong { strong { (cell.text) } } @else { bdi { (cell.text) } }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn class(cell: &Cell, number: bool) -> &'static str {
    match (cell.blank, number) {
        (true, _) => "blank",
        (false, true) => "n",
        (false, false) => "t",
    }
}

fn of_pictures(pictures: &[Shown], height: u16) -> Markup {
    let style = format!("--tall:{height}mm");
    html! {
        div.pictures.two[pictures.len() > 1] style=(style) {
            @for picture in pictures { figure { (PreEscaped(&picture.svg)) } }
        }
    }
}

fn of_line(line: &Line) -> Markup {
    html! {
        div {
            dt { (line.label) }
            @if line.value.is_empty() {
                dd.open { span {} em { (line.hint) } }
            } @else {
                dd { bdi { (line.value) } }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn text_cannot_leave_its_string_in_the_style_sheet() {
        assert_eq!(super::css("a\"}</style>"), "a\\22 \\7d \\3c \\2f style\\3e ");
    }
}
