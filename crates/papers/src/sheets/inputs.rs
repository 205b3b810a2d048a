//! What was said about the boat, in short.

use super::Desk;
use crate::speak::{large, printable};
use crate::{Block, Cell, Column, Table};
use job::{Quantity, Word};

impl Desk<'_> {
    /// What is written in the job: label and value.
    pub(super) fn inputs(&self) -> Vec<(String, String)> {
        let job = &self.answers.job;
        let mut said = Vec::new();
        let mut add = |label: &str, value: Option<String>| {
            if let Some(value) = value.filter(|value| !value.is_empty()) {
                said.push((self.say(label), value));
            }
        };
        let written =
            |q: &Option<Quantity>| q.as_ref().map(|q| words::number(self.voice.language, &printable(&q.text)));
        let length = |q: &Option<Quantity>| q.as_ref().map(|q| self.voice.length(1000.0 * q.middle));
        let word = |w: &'static str| self.voice.words(w);
        add("papers-in-kind", job.boat.kind.map(|k| word(k.word())));
        add("papers-in-lwl", written(&job.boat.length_waterline));
        add("papers-in-displacement", written(&job.boat.displacement));
        add("papers-in-loaded", written(&job.boat.loaded_displacement));
        add("papers-in-scrub", written(&job.boat.since_scrub));
        add("papers-in-engine", job.engine.model.as_deref().map(printable));
        add("papers-in-power", written(&job.engine.rated_power));
        add("papers-in-speed", written(&job.engine.rated_speed));
        add("papers-in-reduction", written(&job.drive.reduction));
        add("papers-in-stamp", job.propeller.stamp.as_deref().map(printable));
        add("papers-diameter", length(&job.propeller.diameter));
        add("papers-pitch", length(&job.propeller.pitch));
        add("papers-blades", job.propeller.blades.map(|b| b.to_string()));
        add("papers-hand", job.propeller.hand.map(|h| word(h.word())));
        add("papers-in-readings", Some(job.readings.len().to_string()));
        said
    }

    /// The same in one sentence.
    pub(super) fn inputs_sentence(&self) -> String {
        let all: Vec<String> = self.inputs().into_iter().map(|(label, value)| format!("{label} {value}")).collect();
        self.voice.with("papers-from", &[("what", &all.join("; "))])
    }

    /// The same as a table of two columns.
    pub(super) fn inputs_table(&self) -> Block {
        let rows: Vec<Vec<Cell>> = self.inputs().into_iter().map(|(l, v)| vec![large(&l).into(), v.into()]).collect();
        let columns = vec![Column::text(self.say("papers-stated-head"), 2), Column::text(self.say("papers-value"), 3)];
        Block::Table { table: Table { columns, rows } }
    }

    /// The propeller fitted, as the trade writes it.
    pub(super) fn fitted(&self) -> Option<String> {
        let p = &self.answers.job.propeller;
        Some(counsel::phrase::size(p.diameter.as_ref()?.middle, p.pitch.as_ref()?.middle))
    }
}
