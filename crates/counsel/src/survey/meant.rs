//! What the propeller was meant to be, and how lengths are spoken.

use super::reduction::Reduced;
use crate::phrase::number;
use job::{Job, Source, Word};

/// The pitch the propeller was meant to have.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Meant {
    /// Stated in the survey as the pitch to be trued to, m.
    pub ordered: Option<f64>,
    /// Stamped or stated, m.
    pub stated: Option<f64>,
    /// Where the stated one is from: `stamped`, `stated (sheet)`.
    pub word: String,
}

impl Meant {
    pub fn of(job: &Job, r: &Reduced) -> Meant {
        // A pitch that was measured is no design; it is what a survey replaces.
        let stated = job.propeller.pitch.as_ref().filter(|q| q.source != Some(Source::Measured));
        Meant {
            ordered: r.survey.design_pitch.as_ref().map(|q| q.middle).or_else(|| r.mean_design()),
            stated: stated.map(|q| q.middle),
            word: match stated.and_then(|q| q.source) {
                Some(Source::Stamp) | None => "stamped".to_owned(),
                Some(source) => format!("stated ({})", source.word()),
            },
        }
    }

    /// What the classes hold the pitch against.
    pub fn reference(&self) -> Option<f64> {
        self.ordered.or(self.stated)
    }

    /// That in words.
    pub fn words(&self) -> Option<String> {
        match (self.ordered, self.stated) {
            (Some(p), _) => Some(format!("design pitch {}", inches(p))),
            (None, Some(p)) => Some(format!("{} {}", self.word, inches(p))),
            _ => None,
        }
    }
}

/// `13.1 in`.
pub(super) fn inches(metres: f64) -> String {
    let text = number(metres / 0.0254, 0.1);
    format!("{} in", text.strip_suffix(".0").unwrap_or(&text))
}
