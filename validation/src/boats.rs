//! Replay of real boats: what a caller knew goes in, what was read on the water must come out inside the band.

use counsel::report::Band;
use counsel::{Options, foresee};
use job::{Job, Reading, State};
use std::path::{Path, PathBuf};

/// One boat of the index.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Its name.
    pub id: String,
    /// Its job file.
    pub file: String,
    /// outboard, planing inboard, semi-displacement, displacement, sailing.
    pub family: String,
    /// test, caution, part load, speed only, diagnosis, excluded.
    pub used: String,
    full_throttle: bool,
    part_throttle: bool,
    given: Option<usize>,
    doubt: Vec<usize>,
    /// Full-throttle engine speeds of nominally identical boats, rpm.
    pub sisters: Vec<f64>,
}

/// Two states of one boat.
#[derive(Clone, Debug)]
pub struct Pair {
    /// State read.
    pub a: String,
    /// State foretold.
    pub b: String,
    /// What changed.
    pub changed: String,
    /// Weight was added or taken off, but the weight itself is not known.
    pub unknown_weight: bool,
}

/// How a boat was asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Way {
    /// Particulars in, full-throttle reading out.
    Blind,
    /// Full-throttle reading in, part-throttle readings out.
    Calibrated,
    /// One state in, the other out.
    Pair,
}

impl Way {
    /// In words.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Way::Blind => "particulars in, full throttle out",
            Way::Calibrated => "one reading in, the others out",
            Way::Pair => "one state in, the other out",
        }
    }
}

/// One measured value against its band.
#[derive(Clone, Debug)]
pub struct Outcome {
    /// Boat.
    pub id: String,
    /// Family.
    pub family: String,
    /// Fit for blind tests, or with a doubt.
    pub used: String,
    /// How it was asked.
    pub way: Way,
    /// What was read.
    pub quantity: &'static str,
    /// Where: full throttle, or the engine speed.
    pub at: String,
    /// As read.
    pub measured: f64,
    /// What the program said.
    pub band: Band,
    /// The point is doubted in the index.
    pub doubted: bool,
}

impl Outcome {
    /// Whether the measured value lies inside.
    #[must_use]
    pub fn inside(&self) -> bool {
        self.band.low <= self.measured && self.measured <= self.band.high
    }

    /// Half the width of the band over its middle.
    #[must_use]
    pub fn half_width(&self) -> f64 {
        0.5 * (self.band.high - self.band.low) / self.band.middle
    }

    /// ln(measured/middle).
    #[must_use]
    pub fn error(&self) -> f64 {
        (self.measured / self.band.middle).ln()
    }
}

/// The folder of the boats.
#[must_use]
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("boats")
}

/// The index: boats and pairs.
///
/// # Panics
/// When the index cannot be read.
#[must_use]
pub fn index() -> (Vec<Entry>, Vec<Pair>) {
    let text = std::fs::read_to_string(folder().join("index.toml")).expect("the index of the boats");
    let table: toml::Table = text.parse().expect("a well-formed index");
    let list = |key: &str| table.get(key).and_then(toml::Value::as_array).cloned().unwrap_or_default();
    let word = |t: &toml::Value, key: &str| t.get(key).and_then(toml::Value::as_str).unwrap_or_default().to_owned();
    let flag = |t: &toml::Value, key: &str| t.get(key).and_then(toml::Value::as_bool).unwrap_or(false);
    let boats = list("boat")
        .iter()
        .map(|t| Entry {
            id: word(t, "id"),
            file: word(t, "file"),
            family: word(t, "family"),
            used: word(t, "use"),
            full_throttle: flag(t, "full_throttle"),
            part_throttle: flag(t, "part_throttle"),
            given: t.get("given").and_then(toml::Value::as_integer).and_then(|i| usize::try_from(i).ok()),
            doubt: t
                .get("doubt")
                .and_then(toml::Value::as_array)
                .map(|points| {
                    points
                        .iter()
                        .flat_map(|p| match p.get("point").or(p.get("points")) {
                            Some(toml::Value::Array(list)) => list.clone(),
                            Some(one) => vec![one.clone()],
                            None => vec![p.clone()],
                        })
                        .filter_map(|p| p.as_integer().and_then(|i| usize::try_from(i).ok()))
                        .collect()
                })
                .unwrap_or_default(),
            sisters: t
                .get("sisters")
                .and_then(toml::Value::as_array)
                .map(|l| l.iter().filter_map(|x| x.as_float().or(x.as_integer().map(|i| i as f64))).collect())
                .unwrap_or_default(),
        })
        .collect();
    let pairs = list("pair")
        .iter()
        .map(|t| Pair {
            a: word(t, "a"),
            b: word(t, "b"),
            changed: word(t, "changed"),
            unknown_weight: t.get("weight_change").is_some(),
        })
        .collect();
    (boats, pairs)
}

/// A boat's job.
///
/// # Panics
/// When the file cannot be read: a replay without its boats must fail.
#[must_use]
pub fn job(file: &str) -> Job {
    let path = folder().join(file);
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    match Job::read(&text) {
        Ok(read) => read.job,
        Err(problems) => panic!("{}", job::render(&problems, file, &text, false)),
    }
}

/// Replays every usable boat in every way it allows.
#[must_use]
pub fn replay(options: &Options) -> Vec<Outcome> {
    let (boats, pairs) = index();
    let mut outcomes = Vec::new();
    for entry in boats.iter().filter(|b| b.used != "excluded") {
        let full = job(&entry.file);
        if entry.full_throttle {
            blind(entry, &full, options, &mut outcomes);
        }
        if entry.part_throttle {
            calibrated(entry, &full, options, &mut outcomes);
        }
    }
    for pair in &pairs {
        let find = |id: &str| boats.iter().find(|b| b.id == id);
        let (Some(a), Some(b)) = (find(&pair.a), find(&pair.b)) else { continue };
        if a.used == "excluded" || b.used == "excluded" || pair.unknown_weight {
            continue;
        }
        paired(a, b, options, &mut outcomes);
        paired(b, a, options, &mut outcomes);
    }
    outcomes
}

fn blind(entry: &Entry, full: &Job, options: &Options, outcomes: &mut Vec<Outcome>) {
    let bare = Job { readings: Vec::new(), ..full.clone() };
    push_full_throttle(entry, &bare, &full.readings, Way::Blind, options, outcomes);
}

/// What the boat's own instruments are expected to show at full throttle as she is, against what they showed.
fn push_full_throttle(
    entry: &Entry,
    known: &Job,
    readings: &[Reading],
    way: Way,
    options: &Options,
    outcomes: &mut Vec<Outcome>,
) {
    let Ok(told) = foresee(known, readings, options) else { return };
    let wanted = |reading: &Reading| reading.full_throttle && reading.state == State::default();
    for f in told.iter().filter(|f| wanted(&readings[f.reading]) && f.quantity != "shaft speed" && f.quantity != "fuel")
    {
        outcomes.push(Outcome {
            id: entry.id.clone(),
            family: entry.family.clone(),
            used: entry.used.clone(),
            way,
            quantity: f.quantity,
            at: "full throttle".to_owned(),
            measured: f.given,
            band: f.band,
            doubted: entry.doubt.contains(&f.reading),
        });
    }
}

fn calibrated(entry: &Entry, full: &Job, options: &Options, outcomes: &mut Vec<Outcome>) {
    let given = entry.given.or_else(|| full.readings.iter().position(|r| r.full_throttle));
    let Some(given) = given.filter(|i| *i < full.readings.len()) else { return };
    let known = Job { readings: vec![full.readings[given].clone()], ..full.clone() };
    let Ok(told) = foresee(&known, &full.readings, options) else { return };
    for f in told.iter().filter(|f| f.reading != given) {
        let reading = &full.readings[f.reading];
        let at = if reading.full_throttle {
            "full throttle".to_owned()
        } else {
            reading.engine_speed.as_ref().map_or_else(String::new, |n| format!("{:.0} rpm", 60.0 * n.middle))
        };
        outcomes.push(Outcome {
            id: entry.id.clone(),
            family: entry.family.clone(),
            used: entry.used.clone(),
            way: Way::Calibrated,
            quantity: f.quantity,
            at,
            measured: f.given,
            band: f.band,
            doubted: entry.doubt.contains(&f.reading),
        });
    }
}

/// State `b` foretold from what was read in state `a`.
fn paired(a: &Entry, b: &Entry, options: &Options, outcomes: &mut Vec<Outcome>) {
    let (was, now) = (job(&a.file), job(&b.file));
    let state = State {
        displacement: (was.boat.displacement != now.boat.displacement).then(|| was.boat.displacement.clone()).flatten(),
        since_scrub: was.boat.since_scrub.clone(),
        growth: was.boat.growth.or(now.boat.growth.map(|_| job::Growth::Clean)),
        propeller: Some(was.propeller.clone()),
        reduction: was.drive.reduction.clone(),
        swapped: None,
    };
    let readings: Vec<Reading> = was
        .readings
        .iter()
        .enumerate()
        .filter(|(i, r)| !a.doubt.contains(i) && r.state == State::default())
        .map(|(_, r)| Reading { state: state.clone(), ..r.clone() })
        .collect();
    if readings.is_empty() {
        return;
    }
    let known = Job { readings, ..now.clone() };
    push_full_throttle(b, &known, &now.readings, Way::Pair, options, outcomes);
}
