//! The record's page: what the record file holds, and the job file as it is.

use super::{Desk, Kind};
use crate::speak::printable;
use crate::{Block, Paper, fingerprint};

/// Longest job file printed, letters; the record file holds all of it.
const PRINTED: usize = 20_000;

/// Draws it up.
pub fn paper(desk: &Desk) -> Paper {
    let v = desk.voice;
    let print = fingerprint(&desk.answers.text);
    let mut blocks = vec![Block::Lead { text: v.with("papers-record-lead", &[("print", &print)]) }];
    blocks.push(Block::Text { text: desk.say("papers-record-how") });
    blocks.push(desk.heading("papers-record-answers"));
    let answers = desk.answers;
    let mut items = Vec::new();
    match &answers.judgement {
        Ok(judgement) => items.push(v.sentence(&judgement.headline)),
        Err(lack) => items.extend(lack.missing.iter().map(|m| {
            let (key, why, how) = (m.key, v.words(m.why), v.words(m.how));
            v.with("papers-missing", &[("key", key), ("why", &why), ("how", &how)])
        })),
    }
    items.extend(answers.diagnosis.as_ref().map(|d| v.sentence(&d.headline)));
    items.extend(answers.choice.as_ref().map(|c| v.sentence(&c.headline)));
    items.extend(answers.evidence.as_ref().map(|e| v.sentence(&e.headline)));
    items.extend(answers.survey.as_ref().ok().map(|s| v.sentence(&s.headline)));
    blocks.push(Block::List { numbered: false, items });
    blocks.push(desk.inputs_table());
    if let Ok(judgement) = &answers.judgement {
        blocks.extend(desk.hangs_on(&judgement.hangs_on, 10));
        blocks.push(Block::Quiet { text: v.sentence(&judgement.crowd.statement) });
        blocks.extend(desk.sources([judgement.accepted_band.source.as_str()]));
    }
    blocks.push(Block::Quiet { text: desk.say("papers-bands") });
    blocks.push(desk.heading("papers-record-job"));
    let mut text: String = answers
        .text
        .lines()
        .map(|line| format!("{}\n", kept(line)))
        .collect::<String>()
        .chars()
        .take(PRINTED)
        .collect();
    if answers.text.chars().count() > PRINTED {
        text.push('\u{2026}');
    }
    blocks.push(Block::Source { text });
    desk.paper(Kind::Record, blocks)
}

/// A line with its indentation, without marks that turn its direction.
fn kept(line: &str) -> String {
    let indent: String = line.chars().take_while(|c| *c == ' ' || *c == '\t').collect();
    format!("{}{}", indent.replace('\t', "    "), printable(line))
}
