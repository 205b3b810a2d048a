//! Readings that a log offers, ready to be added to a job file.

use crate::clock::{date_text, time_text};
use crate::doubt::Doubt;
use crate::runs::Runs;
use crate::sample::KNOT;
use job::{EngineKind, Job, Reading, Source, Word};
use std::fmt::Write as _;

/// What the log does not say.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposing {
    /// Names of the logs, for the notes.
    pub from: String,
    /// What the engine speed was read by. A log rarely says; the boat's own sender is taken, with its wide spread.
    pub rpm_by: Source,
    /// Kind of engine, for the fuel's density.
    pub engine: Option<EngineKind>,
}

impl Default for Proposing {
    fn default() -> Proposing {
        Proposing { from: String::new(), rpm_by: Source::Dashboard, engine: None }
    }
}

/// How much a proposed reading is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Quality {
    /// One direction, or without engine speed.
    Weak,
    /// Both ways, with something to look at.
    Fair,
    /// Both ways at a known engine speed, nothing amiss.
    Good,
}

impl Quality {
    /// The word for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Quality::Weak => "weak",
            Quality::Fair => "fair",
            Quality::Good => "good",
        }
    }
}

/// A reading that could be added to the job.
#[derive(Clone, Debug, PartialEq)]
pub struct Proposal {
    /// The reading, exactly as the job file will hold it.
    pub reading: Reading,
    /// What it was made of, in a sentence.
    pub why: String,
    /// How much it is worth.
    pub quality: Quality,
    /// The highest engine speed in the log: perhaps full throttle. Only a person knows.
    pub full_throttle: bool,
    /// What to look at.
    pub doubts: Vec<Doubt>,
    /// The runs behind it.
    pub runs: Runs,
}

impl Proposal {
    /// The reading with full throttle said, once a person confirmed it.
    #[must_use]
    pub fn at_full_throttle(&self) -> Reading {
        let mut reading = self.reading.clone();
        reading.full_throttle = true;
        reading.notes = reading.notes.map(|n| n.replace(ASK, "")).filter(|n| !n.is_empty());
        reading
    }

    /// Whether the job holds this reading already.
    #[must_use]
    pub fn is_in(&self, job: &Job) -> bool {
        let key = |r: &Reading| (r.label.clone(), r.date.clone(), r.speeds.iter().map(|q| q.text.clone()).collect());
        let own: (_, _, Vec<String>) = key(&self.reading);
        job.readings.iter().any(|r| key(r) == own)
    }
}

const ASK: &str = "full throttle? It is the highest engine speed in the log; ";

/// Makes a proposal of each set of runs, in order of time.
#[must_use]
pub fn propose(sets: &[Runs], with: &Proposing) -> Vec<Proposal> {
    let top = sets.iter().filter_map(|s| s.rpm).fold(f64::NEG_INFINITY, f64::max);
    sets.iter()
        .filter_map(|runs| {
            // Equal to the highest within what a tachometer wanders.
            let highest = runs.rpm.is_some_and(|rpm| rpm >= 0.985 * top);
            let reading = reading(runs, highest, with)?;
            let both = runs.stretches.len() > 1;
            let quality = match (both, runs.rpm.is_some(), runs.doubts.is_empty()) {
                (true, true, true) => Quality::Good,
                (true, true, false) => Quality::Fair,
                _ => Quality::Weak,
            };
            Some(Proposal {
                reading,
                why: why(runs),
                quality,
                full_throttle: highest,
                doubts: runs.doubts.clone(),
                runs: runs.clone(),
            })
        })
        .collect()
}

fn clean(text: &str) -> String {
    text.chars().filter(|c| !c.is_control()).take(80).collect()
}

fn courses(runs: &Runs) -> String {
    let list: Vec<String> = runs.stretches.iter().filter_map(|s| s.course).map(|c| format!("{c:03.0}°")).collect();
    list.join(", ")
}

fn why(runs: &Runs) -> String {
    let mut text = match runs.stretches.len() {
        1 => "one steady run".to_owned(),
        n => format!("{n} runs there and back"),
    };
    let seconds: Vec<String> = runs.stretches.iter().map(|s| format!("{:.0}", s.seconds)).collect();
    let _ = write!(text, " of {} s", seconds.join(", "));
    let courses = courses(runs);
    if !courses.is_empty() {
        let _ = write!(text, " on {courses}");
    }
    if let Some(rpm) = runs.rpm {
        let _ = write!(text, " at {rpm:.0} rpm");
    }
    let _ = write!(text, ": {:.2} ± {:.2} kn", runs.speed / KNOT, runs.half / KNOT);
    if let Some(current) = runs.current {
        let _ = write!(
            text,
            ", current {:.2} kn {}",
            current.abs() / KNOT,
            if current >= 0.0 { "with" } else { "against" }
        );
        text.push_str(" the first run");
    }
    if let Some(drift) = runs.drift {
        let _ = write!(text, ", changing by {:+.2} kn an hour", drift / KNOT);
    }
    text
}

fn reading(runs: &Runs, highest: bool, with: &Proposing) -> Option<Reading> {
    let first = runs.stretches.first()?;
    let last = runs.stretches.last()?;
    let quantity = |text: String, dimension, key: &str| job::Quantity::parse(&text, dimension, key).ok();
    let rpm = |value: f64, key: &str, by: Source| {
        let mut quantity = quantity(format!("{value:.0} rpm ({})", by.word()), job::Dimension::Rotation, key)?;
        // The source is written beside it.
        quantity.text = format!("{value:.0} rpm");
        Some(quantity)
    };
    let by_ground = runs.stretches.iter().all(|s| s.over_ground.is_some());
    let source = if by_ground { Source::Gps } else { Source::Log };
    // Each run's band such that those of all runs come together to the band of their mean.
    let sum: f64 = crate::average::weights(runs.stretches.len()).iter().map(|w| w * w).sum::<f64>();
    let each = runs.half / sum.sqrt();
    let mut speeds = Vec::new();
    for stretch in &runs.stretches {
        let speed = if by_ground { stretch.over_ground } else { stretch.speed() }?;
        let text = format!("{:.2} kn ± {:.2}", speed.value / KNOT, (each / KNOT).max(0.01));
        let mut quantity = quantity(format!("{text} ({})", source.word()), job::Dimension::Speed, "speed")?;
        quantity.text = text;
        speeds.push(quantity);
    }
    let mut notes = String::new();
    if highest {
        notes.push_str(ASK);
    }
    let _ = write!(notes, "steady {:.0} s", runs.stretches.iter().map(|s| s.seconds).sum::<f64>());
    let courses = courses(runs);
    if !courses.is_empty() {
        let _ = write!(notes, ", courses {courses}");
    }
    if let Some(current) = runs.current {
        let _ = write!(notes, ", current {:.2} kn", current.abs() / KNOT);
    }
    if let Some(log) = runs.by_log {
        let _ = write!(notes, ", log {:.2} kn", log / KNOT);
    }
    let range = format!("{}-{}", time_text(first.from), time_text(last.to));
    let zone = if first.from < 3.0e8 { "" } else { " UTC" };
    let file = clean(&with.from);
    let label = if file.is_empty() { format!("log {range}{zone}") } else { format!("{file} {range}{zone}") };
    let fuel = runs.stretches.iter().filter_map(|s| s.fuel).collect::<Vec<_>>();
    let fuel = (!fuel.is_empty()).then(|| fuel.iter().sum::<f64>() / fuel.len() as f64 * 3.6e6);
    let depth = runs.stretches.iter().filter_map(|s| s.depth).reduce(f64::min);
    let shaft: Vec<f64> = runs.stretches.iter().filter_map(|s| s.shaft_rpm).collect();
    let engines = runs.stretches.iter().all(|s| s.engine_rpm.iter().any(Option::is_some));
    let draft = Reading {
        label: Some(label),
        date: date_text(first.from),
        engine_speed: runs.rpm.filter(|_| engines).and_then(|v| rpm(v, "engine_speed", with.rpm_by)),
        shaft_speed: (!shaft.is_empty())
            .then(|| shaft.iter().sum::<f64>() / shaft.len() as f64)
            .and_then(|v| quantity(format!("{v:.0} rpm"), job::Dimension::Rotation, "shaft_speed")),
        speeds,
        fuel: fuel.and_then(|v| quantity(format!("{v:.2} L/h"), job::Dimension::FuelFlow, "fuel")),
        depth: depth.and_then(|v| quantity(format!("{v:.1} m"), job::Dimension::Length, "depth")),
        notes: Some(notes),
        ..Reading::default()
    };
    // As the file will hold it: written and read again.
    let mut carrier = Job { readings: vec![draft], ..Job::default() };
    carrier.engine.kind = with.engine;
    let mut read = Job::read(&carrier.to_toml()).ok()?;
    (read.job.readings.len() == 1).then(|| read.job.readings.remove(0))
}
