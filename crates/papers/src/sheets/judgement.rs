//! The judgement note: what the engine can give against what is asked of it, what is certain, what is guessed, and the one
//! measurement that would change the verdict.

use super::{Desk, Kind};
use crate::speak::large;
use crate::{Block, Cell, Column, Entry, Paper, Table};
use counsel::Lack;
use counsel::report::{Diagnosis, FullThrottle, Judgement, PairReport};

/// Draws it up.
pub fn paper(desk: &Desk) -> Result<Paper, Lack> {
    let judgement = desk.answers.judgement.as_ref().map_err(Clone::clone)?;
    let v = desk.voice;
    let mut blocks = vec![Block::Lead { text: v.sentence(&judgement.headline) }];
    for warning in desk.answers.diagnosis.iter().flat_map(|d| &d.stop) {
        blocks.push(desk.caution(v.sentence(warning)));
    }
    let boat = desk.boat();
    if let Some(curves) = &desk.answers.curves {
        let picture = desk.shown(&draw::demand::picture(&desk.sheet(&boat, 760.0), curves, None));
        blocks.push(Block::Pictures { pictures: vec![picture], height: 105 });
    }
    blocks.push(verdict(desk, judgement));
    blocks.push(full_throttle(desk, judgement));
    blocks.push(desk.heading("papers-findings"));
    for finding in &judgement.findings {
        let (mark, word) = v.gravity(finding.gravity);
        let entry = Entry {
            mark,
            word,
            sentence: v.sentence(&finding.sentence),
            advice: v.sentence(&finding.advice),
            source: v.words(&finding.source),
        };
        blocks.push(Block::Entries { entries: vec![entry] });
        blocks.extend(finding.caution.as_deref().map(|c| desk.caution(v.sentence(c))));
    }
    blocks.extend(load(desk, judgement));
    blocks.extend(readings(desk, judgement));
    blocks.extend(judgement.pair.as_ref().map(|pair| sides(desk, pair)).unwrap_or_default());
    blocks.extend(desk.answers.diagnosis.as_ref().map(|d| causes(desk, d)).unwrap_or_default());
    blocks.push(desk.heading("papers-said"));
    blocks.push(desk.inputs_table());
    blocks.extend(desk.hangs_on(&judgement.hangs_on, 10));
    if !judgement.measure_next.is_empty() {
        blocks
            .push(Block::Text { text: v.with("papers-measure-next", &[("what", &v.words(&judgement.measure_next))]) });
    }
    blocks.extend(desk.notes(&judgement.notes));
    blocks.push(Block::Quiet { text: v.sentence(&judgement.crowd.statement) });
    let sources = judgement.findings.iter().map(|f| f.source.as_str());
    blocks.extend(desk.sources(std::iter::once(judgement.accepted_band.source.as_str()).chain(sources)));
    blocks.push(Block::Quiet { text: desk.say("papers-bands") });
    Ok(desk.paper(Kind::Judgement, blocks))
}

fn verdict(desk: &Desk, judgement: &Judgement) -> Block {
    let v = desk.voice;
    let rows = [
        ("papers-over", judgement.verdict.over_pitched),
        ("papers-right", judgement.verdict.right),
        ("papers-under", judgement.verdict.under_pitched),
    ];
    let rows = rows.map(|(name, p)| vec![Cell::from(desk.say(name)), v.chance(p).into()]).to_vec();
    let columns = vec![Column::text(desk.say("papers-verdict"), 3), Column::text(desk.say("papers-chance-head"), 2)];
    Block::Table { table: Table { columns, rows } }
}

fn full_throttle(desk: &Desk, judgement: &Judgement) -> Block {
    let v = desk.voice;
    let states = [&judgement.full_throttle, &judgement.clean_loaded];
    let row = |name: &str, say: &dyn Fn(&FullThrottle) -> String| {
        let mut row = vec![Cell::from(desk.say(name))];
        row.extend(states.iter().map(|state| Cell::from(say(state))));
        row
    };
    let band = &judgement.accepted_band;
    let mut rows = vec![
        row("papers-engine-speed", &|s| v.span(&s.engine_speed)),
        row("papers-boat-speed", &|s| v.span(&s.speed)),
        row("papers-power", &|s| v.span(&s.power)),
        row("papers-fuel", &|s| v.span(&s.fuel)),
        row("papers-governed", &|s| v.chance(s.governed)),
    ];
    let wanted = Cell::strong(v.range(band.low, band.high, "rpm"));
    rows.insert(1, vec![desk.say("papers-accepted").into(), wanted.clone(), wanted]);
    let columns = vec![
        Column::text(desk.say("papers-at-full"), 3),
        Column::text(desk.say("papers-as-described"), 2),
        Column::text(desk.say("papers-clean-loaded"), 2),
    ];
    Block::Table { table: Table { columns, rows } }
}

fn load(desk: &Desk, judgement: &Judgement) -> Vec<Block> {
    if judgement.load.is_empty() {
        return Vec::new();
    }
    let v = desk.voice;
    let columns = ["rpm", "papers-kn", "papers-kw", "papers-load", "papers-lh", "papers-slip"]
        .map(|name| Column::number(if name.starts_with("papers-") { desk.say(name) } else { name.to_owned() }))
        .to_vec();
    let rows = judgement
        .load
        .iter()
        .map(|r| {
            let mut row = vec![Cell::strong(v.number(r.engine_speed, 10.0))];
            row.extend([&r.speed, &r.power, &r.load, &r.fuel, &r.apparent_slip].map(|band| Cell::from(v.bare(band))));
            row
        })
        .collect();
    vec![desk.heading("papers-load-heading"), Block::Table { table: Table { columns, rows } }]
}

fn readings(desk: &Desk, judgement: &Judgement) -> Vec<Block> {
    if judgement.readings.is_empty() {
        return Vec::new();
    }
    let columns = vec![
        Column::text(desk.say("papers-reading"), 3),
        Column::text(desk.say("papers-quantity"), 2),
        Column::number(desk.say("papers-measured")),
        Column::number(desk.say("papers-expected")),
        Column::number(desk.say("papers-weighed")),
        Column::text(desk.say("papers-fits"), 2),
    ];
    let rows = judgement.readings.iter().map(|fit| desk.reading_row(fit)).collect();
    vec![desk.heading("papers-readings-heading"), Block::Table { table: Table { columns, rows } }]
}

impl Desk<'_> {
    /// One reading against the crowd: name, quantity, measured, expected, weighed, how it fits.
    pub(super) fn reading_row(&self, fit: &counsel::report::ReadingFit) -> Vec<Cell> {
        let v = self.voice;
        let step = if fit.expected.unit == "rpm" { 10.0 } else { 0.1 };
        let word = match fit.surprise.abs() {
            d if d < 1.3 => "papers-as-expected",
            d if d < 2.0 => "papers-little-off",
            d if d < 3.0 => "papers-surprise",
            _ => "papers-no-fit",
        };
        vec![
            crate::speak::printable(&fit.reading).into(),
            v.words(fit.quantity).into(),
            Cell::strong(format!("{} {}", v.number(fit.measured, step), fit.expected.unit)),
            v.bare(&fit.expected).into(),
            v.bare(&fit.weighed).into(),
            self.say(word).into(),
        ]
    }
}

fn sides(desk: &Desk, pair: &PairReport) -> Vec<Block> {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-pair"), 3),
        Column::text(desk.say("papers-port"), 3),
        Column::text(desk.say("papers-starboard"), 3),
    ];
    let both = [&pair.port, &pair.starboard];
    let row = |name: &str, say: &dyn Fn(&counsel::report::SideSheet) -> String| {
        let mut row = vec![Cell::from(desk.say(name))];
        row.extend(both.iter().map(|side| Cell::from(say(side))));
        row
    };
    let rows = vec![
        row("papers-propeller", &|s| v.words(&s.propeller)),
        row("papers-acting-pitch", &|s| v.lengths(&s.pitch)),
        row("papers-engine-speed", &|s| v.span(&s.engine_speed)),
        row("papers-power", &|s| v.span(&s.power)),
    ];
    vec![
        desk.heading("papers-pair-heading"),
        Block::Text { text: v.sentence(&pair.headline) },
        Block::Table { table: Table { columns, rows } },
    ]
}

fn causes(desk: &Desk, diagnosis: &Diagnosis) -> Vec<Block> {
    let v = desk.voice;
    let columns = vec![
        Column::text(desk.say("papers-cause"), 4),
        Column::text(desk.say("papers-chance-head"), 2),
        Column::text(desk.say("papers-would-need"), 4),
        Column::text(desk.say("papers-remedy"), 5),
    ];
    let rows = diagnosis
        .causes
        .iter()
        .filter(|c| c.chance >= 0.03)
        .take(6)
        .map(|c| {
            [large(&v.words(&c.cause)), v.chance(c.chance), v.words(&c.would_need), v.words(&c.remedy)]
                .map(Cell::from)
                .to_vec()
        })
        .collect::<Vec<_>>();
    let mut blocks = vec![desk.heading("papers-causes-heading"), Block::Text { text: v.sentence(&diagnosis.headline) }];
    if !rows.is_empty() {
        blocks.push(Block::Table { table: Table { columns, rows } });
    }
    blocks
}
