//! The owner's page: one page, one sentence, two pictures, three numbers, what to watch.

use super::{Desk, Kind};
use crate::{Block, Entry, Figure, Paper};
use counsel::Lack;
use counsel::report::{Gravity, Judgement};
use draw::Drawn;
use draw::place::Place;

/// Most findings on the page.
const MOST: usize = 3;

/// Draws it up.
pub fn paper(desk: &Desk) -> Result<Paper, Lack> {
    let judgement = desk.answers.judgement.as_ref().map_err(Clone::clone)?;
    let v = desk.voice;
    let mut blocks = vec![Block::Lead { text: v.sentence(&judgement.headline) }];
    blocks.extend(stop(desk, judgement));
    blocks.push(Block::Figures { figures: figures(desk, judgement) });

    let boat = desk.boat();
    let sheet = desk.sheet(&boat, 400.0);
    let mut pictures = Vec::new();
    if let Some(curves) = &desk.answers.curves {
        pictures.push(desk.shown(&draw::demand::picture(&sheet, curves, None)));
    }
    if let Some(place) = Place::of_job(&desk.answers.job) {
        pictures.push(desk.shown(&draw::place::picture(&sheet, &place)));
    } else if let Some(drawn) = Drawn::of_job(&desk.answers.job) {
        pictures.push(desk.shown(&draw::propeller::picture(&sheet, &drawn)));
    }
    if !pictures.is_empty() {
        blocks.push(Block::Pictures { pictures, height: 110 });
    }

    let entries = watch(desk, judgement);
    if !entries.is_empty() {
        blocks.push(desk.heading("papers-watch-heading"));
        blocks.push(Block::Entries { entries });
    }
    if !judgement.measure_next.is_empty() {
        blocks
            .push(Block::Text { text: v.with("papers-measure-next", &[("what", &v.words(&judgement.measure_next))]) });
    }
    let band = &judgement.accepted_band;
    blocks.push(Block::Text { text: v.with("papers-monthly", &[("band", &v.range(band.low, band.high, "rpm"))]) });
    blocks.push(Block::Quiet { text: desk.inputs_sentence() });
    blocks.extend(desk.hangs_sentence(&judgement.hangs_on).map(|text| Block::Quiet { text }));
    blocks.extend(desk.sources([band.source.as_str()]));
    Ok(desk.paper(Kind::Owner, blocks))
}

fn stop(desk: &Desk, judgement: &Judgement) -> Vec<Block> {
    let warnings = desk.answers.diagnosis.iter().flat_map(|d| &d.stop).map(|w| desk.voice.sentence(w));
    let findings = judgement.findings.iter().filter(|f| f.gravity == Gravity::Stop);
    warnings.chain(findings.map(|f| desk.voice.sentence(&f.sentence))).take(2).map(|text| desk.caution(text)).collect()
}

fn figures(desk: &Desk, judgement: &Judgement) -> Vec<Figure> {
    let v = desk.voice;
    let state = &judgement.clean_loaded;
    let band = &judgement.accepted_band;
    let wanted = v.range(band.low, band.high, "rpm");
    let order = desk.answers.order.as_ref();
    let last = match order {
        Some(ordered) => Figure {
            value: v.span(&ordered.engine_speed),
            label: desk.say("papers-fig-after"),
            beside: v.sentence(&ordered.what),
        },
        None => Figure {
            value: v.span(&state.fuel),
            label: desk.say("papers-fig-fuel"),
            beside: desk.say("papers-fig-fuel-beside"),
        },
    };
    vec![
        Figure {
            value: v.span(&state.engine_speed),
            label: desk.say("papers-fig-rpm"),
            beside: v.with("papers-fig-wanted", &[("band", &wanted)]),
        },
        Figure {
            value: v.span(&state.speed),
            label: desk.say("papers-fig-speed"),
            beside: desk.say("papers-fig-speed-beside"),
        },
        last,
    ]
}

/// The gravest findings that are not well.
fn watch(desk: &Desk, judgement: &Judgement) -> Vec<Entry> {
    let v = desk.voice;
    judgement
        .findings
        .iter()
        .filter(|f| matches!(f.gravity, Gravity::Mend | Gravity::Watch))
        .take(MOST)
        .map(|f| {
            let (mark, word) = v.gravity(f.gravity);
            let advice = if f.gravity == Gravity::Mend {
                let caution = f.caution.as_deref().map(|c| format!(" {}", v.sentence(c))).unwrap_or_default();
                format!("{}{caution}", v.sentence(&f.advice))
            } else {
                String::new()
            };
            Entry { mark, word, sentence: v.sentence(&f.sentence), advice, source: String::new() }
        })
        .collect()
}
