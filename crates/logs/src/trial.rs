//! From logs to proposals in one go.

use crate::doubt::Doubt;
use crate::propose::{Proposal, Proposing, propose};
use crate::read::{Log, join};
use crate::runs::{Pairing, pair};
use crate::steady::{Limits, Stretch, stretches};

/// All settings.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings {
    /// What counts as steady.
    pub limits: Limits,
    /// What belongs together.
    pub pairing: Pairing,
    /// What the logs don't say.
    pub proposing: Proposing,
}

/// What logs of one trial gave.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// First and last moment, as in [`crate::Sample::time`].
    pub span: Option<(f64, f64)>,
    /// Steady stretches found.
    pub stretches: Vec<Stretch>,
    /// Readings proposed, in order of time.
    pub proposals: Vec<Proposal>,
    /// What concerns the logs together; each log has doubts of its own.
    pub doubts: Vec<Doubt>,
}

/// Joins logs of the same trial, finds the steady stretches, pairs them and proposes readings.
#[must_use]
pub fn trial(logs: &[Log], settings: &Settings) -> Trial {
    let samples = join(logs);
    let found = stretches(&samples, &settings.limits);
    let mut proposing = settings.proposing.clone();
    if proposing.from.is_empty() {
        let name = |log: &Log| log.name.rsplit(['/', '\\']).next().unwrap_or_default().to_owned();
        proposing.from = logs.iter().map(name).collect::<Vec<_>>().join(" + ");
    }
    let proposals = propose(&pair(&found, &settings.pairing), &proposing);
    let mut doubts = Vec::new();
    let span = |log: &Log| Some((log.samples.first()?.time, log.samples.last()?.time));
    for (at, a) in logs.iter().enumerate() {
        for b in &logs[at + 1..] {
            if let (Some(x), Some(y)) = (span(a), span(b))
                && (x.1 < y.0 || y.1 < x.0)
            {
                let message = format!("{} and {} do not overlap in time", a.name, b.name);
                doubts.push(Doubt::new("no-overlap", message, "two days, or clocks that disagree: each is used alone"));
            }
        }
    }
    if found.is_empty() {
        let least = settings.limits.seconds;
        let message = format!("no stretch of {least:.0} s in which speed, engine speed and course stayed the same");
        let help = "hold throttle and course for two minutes each way; or widen the limits";
        doubts.push(Doubt::new("nothing-steady", message, help));
    }
    Trial {
        span: samples.first().zip(samples.last()).map(|(a, b)| (a.time, b.time)),
        stretches: found,
        proposals,
        doubts,
    }
}
