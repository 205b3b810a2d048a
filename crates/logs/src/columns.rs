//! The header of a table: what each column holds, and in which unit.

use crate::doubt::{Doubt, Refusal};
use crate::sample::{Channel, ENGINES};
use job::Dimension;
use job::units;

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Holds {
    /// A time; seconds in one unit when it is a number with a unit.
    Time(Option<f64>),
    Date,
    Latitude,
    Longitude,
    /// A value; multiply to get the unit of the samples.
    Value(Channel, f64),
}

/// The columns that are used: position in the row, and what it holds.
#[derive(Debug)]
pub(crate) struct Columns {
    pub(crate) used: Vec<(usize, Holds)>,
    pub(crate) width: usize,
}

/// A cell of the header taken apart.
struct Cell {
    words: Vec<String>,
    unit: Option<String>,
}

/// Whether a line can be the header: it names a time or a value we know, and holds no number where a value would stand.
pub(crate) fn is_header(cells: &[String]) -> bool {
    let known = cells.iter().filter(|c| kind(&cell(c).words).is_some()).count();
    let numbers = cells.iter().filter(|c| c.trim().parse::<f64>().is_ok()).count();
    known >= 1 && numbers == 0 && cells.len() >= 2
}

/// Whether a line under the header holds units only.
pub(crate) fn is_units(cells: &[String]) -> bool {
    let unit = |c: &str| units::UNITS.iter().any(|u| u.name == c || u.also.contains(&c)) || seconds_of(c).is_some();
    let mut filled = cells.iter().map(|c| bare(c)).filter(|c| !c.is_empty()).peekable();
    filled.peek().is_some() && filled.all(|c| unit(&c) || c == "UTC" || c == "-")
}

fn bare(cell: &str) -> String {
    cell.trim().trim_matches(['(', ')', '[', ']', '"']).trim().to_owned()
}

/// Splits `Speed over ground [kn]`, `sog_kn`, `engineSpeed (rpm)` into words and a unit.
fn cell(text: &str) -> Cell {
    let text = text.trim().trim_start_matches('\u{feff}');
    let (name, unit) = match (text.find(['(', '[']), text.rfind([')', ']'])) {
        (Some(open), Some(close)) if open < close => (&text[..open], Some(text[open + 1..close].trim().to_owned())),
        _ => (text, None),
    };
    let mut words: Vec<String> = Vec::new();
    let mut word = String::new();
    let mut last = ' ';
    for c in name.chars() {
        let breaks = c.is_uppercase() && last.is_lowercase() || c.is_ascii_digit() != last.is_ascii_digit();
        if (!c.is_alphanumeric() && c != '/' && c != '°' || breaks) && !word.is_empty() {
            words.push(std::mem::take(&mut word));
        }
        if c.is_alphanumeric() || c == '/' || c == '°' {
            word.push(c);
        }
        last = c;
    }
    if !word.is_empty() {
        words.push(word);
    }
    Cell { words, unit: unit.filter(|u| !u.is_empty()) }
}

/// What a column is about, before its unit is known.
#[derive(Clone, Copy, PartialEq, Debug)]
enum Kind {
    Time,
    Date,
    Latitude,
    Longitude,
    Channel(Channel),
}

fn kind(words: &[String]) -> Option<Kind> {
    let lower: Vec<String> = words.iter().map(|w| w.to_lowercase()).collect();
    let has = |any: &[&str]| lower.iter().any(|w| any.contains(&w.as_str()));
    if has(&[
        "wind",
        "aws",
        "tws",
        "temp",
        "temperature",
        "pressure",
        "heading",
        "max",
        "min",
        "target",
        "limit",
        "level",
        "used",
        "total",
        "trip",
        "magnetic",
        "accuracy",
        "vertical",
        "air",
        "age",
        "error",
        "set",
        "load",
        "remaining",
    ]) {
        return None;
    }
    let number = lower.iter().find_map(|w| w.parse::<usize>().ok());
    let engine = match number {
        Some(n) => n.saturating_sub(1),
        None if has(&["starboard", "stbd", "right"]) => 1,
        None => 0,
    };
    let named = |kind| (engine < ENGINES).then_some(kind);
    if has(&["shaft", "propeller", "prop"]) && has(&["rpm", "speed", "revs", "rotation", "revolutions"]) {
        return named(Kind::Channel(Channel::Shaft(engine)));
    }
    if has(&["rpm", "revs", "revolutions", "tach", "tacho", "tachometer"]) || has(&["engine"]) && has(&["speed"]) {
        return named(Kind::Channel(Channel::Engine(engine)));
    }
    if has(&["fuel"]) {
        return named(Kind::Channel(Channel::Fuel(engine)));
    }
    if has(&["depth", "sounding", "dbt", "dpt"]) {
        return Some(Kind::Channel(Channel::Depth));
    }
    if has(&["lat", "latitude"]) {
        return Some(Kind::Latitude);
    }
    if has(&["lon", "lng", "long", "longitude"]) {
        return Some(Kind::Longitude);
    }
    if has(&["stw", "log"]) || has(&["water", "paddle", "through"]) && has(&["speed"]) {
        return Some(Kind::Channel(Channel::ThroughWater));
    }
    if has(&["sog", "speed", "velocity"]) {
        return Some(Kind::Channel(Channel::OverGround));
    }
    if has(&["cog", "course", "track"]) {
        return Some(Kind::Channel(Channel::Course));
    }
    if has(&["time", "timestamp", "datetime", "utc", "epoch"]) {
        return Some(Kind::Time);
    }
    has(&["date"]).then_some(Kind::Date)
}

/// Seconds in one unit of time of a log.
fn seconds_of(unit: &str) -> Option<f64> {
    match unit {
        "s" | "sec" | "secs" | "second" | "seconds" => Some(1.0),
        "ms" | "msec" | "millisecond" | "milliseconds" => Some(1e-3),
        "min" | "mins" | "minute" | "minutes" => Some(60.0),
        "h" | "hr" | "hours" | "hour" => Some(3600.0),
        _ => None,
    }
}

/// The unit of a column: the one in parentheses, the one under the header, or the last word of its name.
fn unit_of(cell: &Cell, below: Option<&str>, dimension: Dimension) -> Option<String> {
    let is = |text: &str| units::find(text, dimension).is_some_and(|u| u.dimension == dimension);
    let joined = |n: usize| cell.words.len().checked_sub(n).filter(|at| *at > 0).map(|at| cell.words[at..].join("/"));
    cell.unit
        .clone()
        .or_else(|| below.map(bare).filter(|u| !u.is_empty()))
        .or_else(|| joined(2).filter(|u| is(u)))
        .or_else(|| cell.words.iter().skip(1).rev().find(|w| is(w)).cloned())
        .or_else(|| cell.words.first().filter(|w| dimension == Dimension::Rotation && is(w)).cloned())
}

/// Reads the header; `below` is a line of units under it. `density` turns fuel by mass into volume, kg/m³.
pub(crate) fn columns(
    header: &[String],
    below: Option<&[String]>,
    density: f64,
    doubts: &mut Vec<Doubt>,
) -> Result<Columns, Refusal> {
    let mut used: Vec<(usize, Holds)> = Vec::new();
    let mut left: Vec<&str> = Vec::new();
    for (at, text) in header.iter().enumerate() {
        let cell = cell(text);
        // `engine (rpm)` says by its unit what it is.
        let mut words = cell.words.clone();
        words.extend(cell.unit.iter().filter(|u| u.eq_ignore_ascii_case("rpm")).cloned());
        let Some(kind) = kind(&words) else {
            left.push(text.trim());
            continue;
        };
        let below = below.and_then(|b| b.get(at)).map(String::as_str);
        let holds = match kind {
            Kind::Time => Holds::Time(time_unit(&cell, below)),
            Kind::Date => Holds::Date,
            Kind::Latitude => Holds::Latitude,
            Kind::Longitude => Holds::Longitude,
            Kind::Channel(channel) => Holds::Value(channel, factor(text, &cell, below, channel, density, doubts)?),
        };
        let same = |other: &Holds| match (other, &holds) {
            (Holds::Value(a, _), Holds::Value(b, _)) => a == b,
            (a, b) => std::mem::discriminant(a) == std::mem::discriminant(b),
        };
        if used.iter().any(|(_, other)| same(other)) {
            let message = format!("two columns for the same quantity: `{}` is left out", text.trim());
            doubts.push(Doubt::new("same-column", message, "the first one is used"));
            continue;
        }
        used.push((at, holds));
    }
    if !left.is_empty() {
        let names: Vec<&str> = left.iter().copied().filter(|n| !n.is_empty()).take(8).collect();
        let message = format!("columns that are not used: {}", names.join(", "));
        doubts.push(Doubt::new(
            "columns-unused",
            message,
            "head a column `rpm`, `speed (kn)`, `course` or `depth (m)` if one of these was meant",
        ));
    }
    if !used.iter().any(|(_, h)| matches!(h, Holds::Time(_))) {
        return Err(Refusal::new(
            "no-time-column",
            "the table has no time column",
            "head one `time (s)` for seconds, or `time` for times such as 2026-05-02T10:11:12Z",
        ));
    }
    let values = used.iter().any(|(_, h)| matches!(h, Holds::Value(..) | Holds::Latitude));
    if !values {
        return Err(Refusal::new(
            "no-columns",
            "the table has no column that is known here",
            "head them `rpm`, `speed (kn)`, `speed through water (kn)`, `course (deg)`, `shaft rpm`, `depth (m)`, `fuel (L/h)`",
        ));
    }
    Ok(Columns { used, width: header.len() })
}

fn time_unit(cell: &Cell, below: Option<&str>) -> Option<f64> {
    let said = cell.unit.clone().or_else(|| below.map(bare));
    match said {
        Some(unit) => seconds_of(&unit),
        None => cell.words.iter().skip(1).rev().find_map(|w| seconds_of(&w.to_lowercase())),
    }
}

fn factor(
    text: &str,
    cell: &Cell,
    below: Option<&str>,
    channel: Channel,
    density: f64,
    doubts: &mut Vec<Doubt>,
) -> Result<f64, Refusal> {
    let (dimension, example) = match channel {
        Channel::OverGround | Channel::ThroughWater => (Dimension::Speed, "kn"),
        Channel::Engine(_) | Channel::Shaft(_) => (Dimension::Rotation, "rpm"),
        Channel::Depth => (Dimension::Length, "m"),
        Channel::Fuel(_) => (Dimension::FuelFlow, "L/h"),
        Channel::Course => (Dimension::Angle, "deg"),
    };
    let name = text.trim();
    let Some(said) = unit_of(cell, below, dimension) else {
        if channel == Channel::Course {
            return Ok(1.0);
        }
        let name = name.to_owned();
        return Err(Refusal::new(
            "needs-unit",
            format!("the column `{name}` needs a unit"),
            format!("write it in the header: `{name} ({example})`"),
        ));
    };
    let refused = |help: String| {
        Refusal::new("unknown-unit", format!("the column `{name}`: `{said}` is no unit of {}", dimension.noun()), help)
    };
    let lower = said.to_lowercase();
    if let Some((_, help)) = units::AMBIGUOUS.iter().find(|(word, _)| *word == lower) {
        return Err(refused((*help).to_owned()));
    }
    let Some(unit) = units::find(&said, dimension).filter(|u| u.dimension == dimension) else {
        let names: Vec<&str> = dimension.units().map(|u| u.name).collect();
        return Err(refused(format!("write one of {}", names.join(", "))));
    };
    if let Some((_, meaning, help)) = units::TAKEN.iter().find(|(word, ..)| *word == lower) {
        let message = format!("the column `{name}`: `{said}` is taken as {meaning}");
        doubts.push(Doubt::new("unit-taken", message, *help));
    }
    Ok(match dimension {
        Dimension::Rotation => unit.factor * 60.0,
        Dimension::FuelFlow if !unit.volume => unit.factor / density,
        _ => unit.factor,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_column_in_rpm_is_an_engine_or_a_shaft() {
        let header: Vec<String> = ["time (s)", "engine (rpm)", "shaft (rpm)"].map(str::to_owned).to_vec();
        let mut doubts = Vec::new();
        assert!(columns(&header, None, 840.0, &mut doubts).is_ok());
        assert!(doubts.is_empty(), "{doubts:?}");
    }
}
