//! Full-throttle engine speed over the seasons, and the alarm for growth.

use crate::clock;
use crate::doubt::Doubt;
use job::{Growth, Job, Reading, Source};

/// A full-throttle reading in the course of time.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Index of the reading in the job.
    pub reading: usize,
    /// Its label.
    pub label: Option<String>,
    /// Its date as written, and the days since 1970 when it can be read.
    pub date: Option<String>,
    /// Days from 1970-01-01.
    pub day: Option<i64>,
    /// Engine speed, rpm.
    pub rpm: f64,
    /// What it was read by.
    pub by: Option<Source>,
    /// Time afloat since the bottom was cleaned, s.
    pub since_scrub: Option<f64>,
    /// Held by the governor: the engine could have turned faster.
    pub governed: bool,
    /// Taken with the propeller and gearbox of today.
    pub comparable: bool,
    /// Taken clean: scrubbed less than six weeks before, or said to be clean.
    pub clean: bool,
}

/// How far it has fallen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// From 3 % or 100 rpm on: look, and plan a scrub.
    Watch,
    /// From 5 % or 200 rpm on: clean hull and propeller before anything else.
    Alarm,
}

/// The full-throttle speed has fallen from that of the clean boat.
#[derive(Clone, Debug, PartialEq)]
pub struct Alarm {
    /// How far.
    pub level: Level,
    /// Index into the rows of the clean state.
    pub clean: usize,
    /// Index into the rows of the latest state.
    pub latest: usize,
    /// What is missing, rpm.
    pub fallen: f64,
    /// The same as a part of the clean speed.
    pub part: f64,
    /// In words.
    pub message: String,
    /// What to do.
    pub help: String,
}

/// Readings over the seasons.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    /// Full-throttle readings: those with a date in its order, then those without.
    pub rows: Vec<Row>,
    /// The growth alarm, when there is one.
    pub alarm: Option<Alarm>,
    /// What keeps the comparison from being sure.
    pub doubts: Vec<Doubt>,
}

/// Six weeks: when a bottom still counts as clean (common practice, no source: scrub first if it is longer ago).
const CLEAN: f64 = 6.0 * 7.0 * 86_400.0;

/// Collects the full-throttle readings of a job. The alarm's limits, a fall of 100 to 200 rpm or 3 to 5 %, are common practice,
/// no source.
#[must_use]
pub fn history(job: &Job) -> History {
    let mut rows: Vec<Row> = job.readings.iter().enumerate().filter_map(|(at, r)| row(job, at, r)).collect();
    rows.sort_by_key(|r| (r.day.is_none(), r.day));
    let mut history = History { rows, alarm: None, doubts: Vec::new() };
    let rows = &history.rows;
    // The latest dated one; among the undated ones the order of the file says nothing.
    let Some(latest) = rows.iter().rposition(|r| r.comparable && r.day.is_some()) else { return history };
    let earlier = || rows.iter().enumerate().filter(|(at, r)| *at < latest && r.comparable && r.day.is_some());
    let best = |a: &(usize, &Row), b: &(usize, &Row)| a.1.rpm.total_cmp(&b.1.rpm);
    let said = earlier().filter(|(_, r)| r.clean).max_by(best);
    let Some((clean, reference)) = said.or_else(|| earlier().max_by(best)) else { return history };
    let now = &rows[latest];
    let fallen = reference.rpm - now.rpm;
    let part = fallen / reference.rpm;
    let level = if fallen >= 200.0 || part >= 0.05 {
        Level::Alarm
    } else if fallen >= 100.0 || part >= 0.03 {
        Level::Watch
    } else {
        return history;
    };
    let mut doubts = Vec::new();
    if reference.by != now.by {
        doubts.push(Doubt::new(
            "other-tachometer",
            "the two engine speeds were read by different instruments",
            "compare readings of one instrument, or check both with an optical tachometer",
        ));
    }
    if !reference.clean {
        doubts.push(Doubt::new(
            "clean-unknown",
            "no earlier reading is known to be of a clean boat: the highest is taken",
            "say since_scrub in the readings",
        ));
    }
    let least = if reference.governed { "at least " } else { "" };
    let date = |r: &Row| r.date.clone().unwrap_or_default();
    let message = format!(
        "full throttle has fallen by {least}{fallen:.0} rpm ({:.0} %): {:.0} rpm on {}, {:.0} rpm on {}",
        part * 100.0,
        reference.rpm,
        date(reference),
        now.rpm,
        date(now)
    );
    let help = if now.clean {
        "she is said to be clean now: look at the propeller, the weight, the throttle cable and the engine"
    } else {
        match level {
            Level::Watch => "growth is the usual cause: look at hull and propeller, and read it again within a month",
            Level::Alarm => {
                "clean hull and propeller before looking at pitch or engine; do not run an engine that cannot reach its speed hard"
            }
        }
    };
    history.alarm = Some(Alarm { level, clean, latest, fallen, part, message, help: help.to_owned() });
    history.doubts = doubts;
    history
}

fn row(job: &Job, at: usize, reading: &Reading) -> Option<Row> {
    let turns = reading.engine_speed.as_ref().filter(|_| reading.full_throttle)?;
    let date = reading.date.clone();
    let day = date.as_deref().and_then(|d| clock::date(d.trim().get(..10)?.as_bytes()));
    let state = &reading.state;
    let since = state.since_scrub.as_ref().or(job.boat.since_scrub.as_ref()).map(|q| q.middle);
    let growth = state.growth.or(job.boat.growth);
    let clean = match (state.growth, state.since_scrub.as_ref()) {
        (Some(growth), _) => growth == Growth::Clean,
        (None, Some(since)) => since.middle <= CLEAN,
        (None, None) => since.map_or(growth == Some(Growth::Clean), |s| s <= CLEAN),
    };
    Some(Row {
        reading: at,
        label: reading.label.clone(),
        date,
        day,
        rpm: turns.middle * 60.0,
        by: turns.source,
        since_scrub: since,
        governed: reading.governed == Some(true),
        comparable: state.propeller.is_none() && state.reduction.is_none(),
        clean,
    })
}
