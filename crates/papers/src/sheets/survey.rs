//! The survey card: what was measured on the propeller, blade by blade.

use super::{Desk, Kind};
use crate::speak::printable;
use crate::{Block, Cell, Column, Entry, Line, Paper, Table};
use counsel::Lack;
use counsel::survey::SurveyReport;
use counsel::survey::report::BladeSheet;
use draw::Drawn;
use job::Word;

/// Draws it up.
pub fn paper(desk: &Desk) -> Result<Paper, Lack> {
    let survey = desk.answers.survey.as_ref().map_err(Clone::clone)?;
    let v = desk.voice;
    let mut blocks = vec![Block::Lead { text: v.sentence(&survey.headline) }];
    for caution in &survey.repair.cautions {
        blocks.push(desk.caution(v.sentence(caution)));
    }
    blocks.push(Block::Lines { lines: identity(desk, survey) });
    if let Some(drawn) = Drawn::of_job(&desk.answers.job) {
        let boat = desk.boat();
        let picture = desk.shown(&draw::propeller::picture(&desk.sheet(&boat, 900.0), &drawn));
        blocks.push(Block::Pictures { pictures: vec![picture], height: 150 });
    }
    for blade in &survey.blades {
        let mean = blade.mean_pitch.as_ref().map_or_else(|| desk.say("papers-unknown"), |m| v.lengths(m));
        let tip = blade.tip_radius.as_ref().map_or_else(|| desk.say("papers-unknown"), |t| v.lengths(t));
        let name = printable(&blade.name);
        let values = [("name", name.as_str()), ("mean", mean.as_str()), ("tip", tip.as_str())];
        blocks.push(Block::Heading { text: v.with("papers-blade-heading", &values) });
        blocks.push(blade_table(desk, blade));
    }
    blocks.extend(damage(desk, survey));
    blocks.push(desk.heading("papers-accuracy"));
    blocks.push(Block::Text { text: v.sentence(&survey.accuracy.statement) });
    blocks.push(Block::Lines {
        lines: vec![
            desk.line("papers-class", Some(v.words(&survey.accuracy.words)), ""),
            desk.line("papers-within", Some(v.words(&survey.accuracy.within_spread)), ""),
            desk.line("papers-among", Some(v.words(&survey.accuracy.among_blades)), ""),
        ],
    });
    if !survey.accuracy.decided_by.is_empty() {
        let items = survey.accuracy.decided_by.iter().map(|d| v.sentence(d)).collect();
        blocks.push(Block::List { numbered: false, items });
    }
    blocks.push(Block::Text { text: v.sentence(&survey.turning.statement) });
    blocks.push(desk.heading("papers-findings"));
    let entries = survey.findings.iter().map(|f| {
        let (mark, word) = v.gravity(f.gravity);
        Entry { mark, word, sentence: v.sentence(&f.sentence), advice: v.sentence(&f.advice), source: String::new() }
    });
    blocks.push(Block::Entries { entries: entries.collect() });
    if let Some(bore) = &survey.bore {
        blocks.push(desk.heading("papers-bore"));
        blocks.push(Block::Text { text: v.sentence(&bore.statement) });
        blocks.extend(bore.warning.as_deref().map(|w| desk.caution(v.sentence(w))));
    }
    blocks.extend(desk.notes(&survey.notes));
    let sources: Vec<String> =
        survey.findings.iter().map(|f| f.source.clone()).chain(survey.accuracy.sources.iter().cloned()).collect();
    blocks.push(desk.signed());
    blocks.extend(desk.small_print(&[], &sources));
    Ok(desk.paper(Kind::SurveyCard, blocks))
}

/// Who, when, with what, and the main measures.
fn identity(desk: &Desk, survey: &SurveyReport) -> Vec<Line> {
    let v = desk.voice;
    let said = desk.answers.job.survey.as_ref();
    let word = |w: Option<&'static str>| w.map(|w| v.words(w));
    let measured = format!("{} / {}", survey.blades_measured, survey.blades_of);
    vec![
        desk.line("papers-date", survey.date.as_deref().map(printable), ""),
        desk.line("papers-surveyor", survey.surveyor.as_deref().map(printable), ""),
        desk.line("papers-tool", word(said.and_then(|s| s.tool).map(|t| t.word())), ""),
        desk.line("papers-in-stamp", desk.answers.job.propeller.stamp.as_deref().map(printable), ""),
        desk.line("papers-blades-measured", Some(measured), ""),
        desk.line("papers-hand", word(survey.hand), "papers-hand-choice"),
        desk.line("papers-diameter", survey.diameter.as_ref().map(|d| v.lengths(d)), "mm / in"),
        desk.line("papers-mean-pitch", survey.mean_pitch.as_ref().map(|d| v.lengths(d)), "mm / in"),
        desk.line("papers-acting-pitch", survey.effective_pitch.as_ref().map(|d| v.lengths(d)), "mm / in"),
        desk.line("papers-blade-spread", survey.blade_spread.as_ref().map(|d| v.span(d)), "%"),
        desk.line("papers-ring", word(said.and_then(|s| s.ring).map(|t| t.word())), "papers-ring-choice"),
        desk.line("papers-colour", word(said.and_then(|s| s.colour).map(|t| t.word())), "papers-colour-choice"),
    ]
}

fn blade_table(desk: &Desk, blade: &BladeSheet) -> Block {
    let v = desk.voice;
    let length = |mm: Option<f64>| mm.map_or_else(Cell::blank, |mm| v.both(mm).into());
    let columns = [
        "r/R",
        "papers-radius-mmin",
        "papers-pitch-mmin",
        "papers-chord-mmin",
        "papers-thickness-mmin",
        "papers-track-mmin",
        "papers-cup-mmin",
    ]
    .map(|name| Column::number(if name == "r/R" { name.to_owned() } else { desk.say(name) }))
    .to_vec();
    let rows = blade
        .sections
        .iter()
        .map(|s| {
            vec![
                Cell::strong(v.number(s.radius_ratio, 0.01)),
                v.both(s.radius).into(),
                length(s.pitch.map(|b| b.middle)),
                length(s.chord.map(|b| b.middle)),
                length(s.thickness.map(|b| b.middle)),
                length(s.track.map(|b| b.middle)),
                length(s.cup_drop),
            ]
        })
        .collect();
    Block::Table { table: Table { columns, rows } }
}

fn damage(desk: &Desk, survey: &SurveyReport) -> Vec<Block> {
    if survey.damage.is_empty() {
        return vec![Block::Text { text: desk.say("papers-no-damage") }];
    }
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-place"), 3),
        Column::text(desk.say("papers-what"), 3),
        Column::text(desk.say("papers-likely"), 3),
        Column::text(desk.say("papers-remedy"), 4),
    ];
    let rows = survey
        .damage
        .iter()
        .map(|d| [v.words(&d.place), v.words(&d.what), v.words(&d.likely), v.words(&d.remedy)].map(Cell::from).to_vec())
        .collect();
    vec![desk.heading("papers-damage"), Block::Table { table: Table { columns, rows } }]
}
