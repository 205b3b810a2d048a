//! What stands at the end of the papers: assumptions by influence, sources, the crowd.

use super::Desk;
use crate::speak::large;
use crate::{Block, Cell, Column, Table};
use counsel::report::Hang;

impl Desk<'_> {
    /// What the answer hangs on, most influential first; at most `most`.
    pub(super) fn hangs_on(&self, hangs: &[Hang], most: usize) -> Vec<Block> {
        if hangs.is_empty() {
            return Vec::new();
        }
        let v = self.voice;
        let columns = vec![
            Column::text(self.say("papers-quantity"), 3),
            Column::text(self.say("papers-taken-as"), 4),
            Column::text(self.say("papers-stated-or"), 2),
            Column::number(self.say("papers-share")),
            Column::text(self.say("papers-from-where"), 5),
        ];
        let rows = hangs
            .iter()
            .take(most)
            .map(|h| {
                let quantity = large(&v.words(&h.quantity));
                let row: [Cell; 5] = [
                    quantity.into(),
                    v.words(&h.value).into(),
                    v.yes(h.stated).into(),
                    v.percent(h.share).into(),
                    v.words(&h.source).into(),
                ];
                row.to_vec()
            })
            .collect();
        vec![self.heading("papers-hangs-on"), Block::Table { table: Table { columns, rows } }]
    }

    /// The three most influential in a sentence, for sheets without room for a table.
    pub(super) fn hangs_sentence(&self, hangs: &[Hang]) -> Option<String> {
        let v = self.voice;
        let parts: Vec<String> = hangs
            .iter()
            .take(3)
            .map(|h| format!("{} ({}, {})", v.words(&h.quantity), v.words(&h.value), v.yes(h.stated)))
            .collect();
        (!parts.is_empty()).then(|| v.with("papers-hangs-sentence", &[("what", &parts.join("; "))]))
    }

    /// Sources, each once.
    pub(super) fn sources<'s>(&self, sources: impl IntoIterator<Item = &'s str>) -> Option<Block> {
        let mut said: Vec<String> = Vec::new();
        for source in sources {
            let text = self.voice.words(source);
            let text = text.trim().trim_end_matches('.').to_owned();
            if !text.is_empty() && !said.contains(&text) {
                said.push(text);
            }
        }
        (!said.is_empty())
            .then(|| Block::Quiet { text: self.voice.with("papers-sources", &[("what", &said.join("; "))]) })
    }

    /// Warnings that travelled with the numbers.
    pub(super) fn notes(&self, notes: &[String]) -> Vec<Block> {
        if notes.is_empty() {
            return Vec::new();
        }
        let items = notes.iter().map(|note| self.voice.sentence(note)).collect();
        vec![self.heading("papers-notes"), Block::List { numbered: false, items }]
    }

    /// What a workshop sheet says of where it comes from: inputs, assumptions, sources; small.
    pub(super) fn small_print(&self, hangs: &[Hang], sources: &[String]) -> Vec<Block> {
        let mut blocks = vec![Block::Quiet { text: self.inputs_sentence() }];
        blocks.extend(self.hangs_sentence(hangs).map(|text| Block::Quiet { text }));
        blocks.extend(self.sources(sources.iter().map(String::as_str)));
        blocks
    }

    /// Lines for name, date and signature.
    pub(super) fn signed(&self) -> Block {
        Block::Lines { lines: vec![self.blank("papers-done-by", ""), self.blank("papers-signed", "")] }
    }

    /// An empty line.
    pub(super) fn blank(&self, label: &str, hint: &str) -> crate::Line {
        let hint = if hint.starts_with("papers-") { self.say(hint) } else { hint.to_owned() };
        crate::Line { label: large(&self.say(label)), value: String::new(), hint }
    }

    /// A line with what is known, else empty.
    pub(super) fn line(&self, label: &str, value: Option<String>, hint: &str) -> crate::Line {
        crate::Line { value: value.unwrap_or_default(), ..self.blank(label, hint) }
    }
}
