//! Signal K delta messages, one JSON object a line. Values are SI: m/s, rad, Hz, m³/s, m.

use crate::clock::iso;
use crate::doubt::{Doubt, Refusal};
use crate::lines::Lines;
use crate::read::Sink;
use crate::sample::{Channel, ENGINES};
use serde::Deserialize;
use serde_json::value::RawValue;
use std::io::Read;

#[derive(Deserialize)]
struct Delta<'a> {
    #[serde(borrow)]
    context: Option<&'a str>,
    #[serde(borrow, default)]
    updates: Option<Vec<Update<'a>>>,
    #[serde(borrow, rename = "self")]
    own: Option<&'a str>,
}

#[derive(Deserialize)]
struct Update<'a> {
    #[serde(borrow)]
    timestamp: Option<&'a str>,
    #[serde(borrow, default)]
    values: Vec<Pair<'a>>,
}

#[derive(Deserialize)]
struct Pair<'a> {
    #[serde(borrow)]
    path: &'a str,
    #[serde(borrow)]
    value: &'a RawValue,
}

#[derive(Deserialize)]
struct Position {
    latitude: Option<f64>,
    longitude: Option<f64>,
}

#[derive(Default)]
struct State {
    /// The context of our own vessel, once known.
    own: Option<String>,
    /// It is only the first one seen.
    guessed: bool,
    others: u64,
    engines: Vec<String>,
    /// Best kind of depth seen: below surface 2, transducer 1, keel 0.
    depth_rank: u8,
    without_time: u64,
}

pub(crate) fn read(source: impl Read, sink: &mut Sink) -> Result<(), Refusal> {
    let mut lines = Lines::new(source);
    let mut state = State::default();
    let mut before: Vec<u8> = Vec::new();
    loop {
        let line = match lines.next() {
            Ok(Some(line)) => line,
            Ok(None) => break,
            Err(error) => {
                sink.stopped(&error);
                break;
            }
        };
        let text = line.bytes.trim_ascii();
        if text.is_empty() {
            continue;
        }
        sink.tally.counts.lines += 1;
        if line.long {
            sink.tally.refuse(text, "a line too long for a delta message");
            continue;
        }
        if text == before {
            sink.tally.counts.repeated += 1;
        }
        before.clear();
        before.extend_from_slice(text);
        // A recorder may put its own stamp before the message.
        let from = memchr::memchr(b'{', text).unwrap_or(0);
        match serde_json::from_slice::<Delta<'_>>(&text[from..]) {
            Ok(delta) => {
                if delta_of(&delta, text, &mut state, sink) {
                    sink.tally.counts.understood += 1;
                } else {
                    sink.tally.counts.unused += 1;
                }
            }
            Err(_) if line.cut => sink.tally.refuse(text, "the file ends within this line"),
            Err(error) if error.is_data() => sink.tally.refuse(text, "JSON, but no delta message"),
            Err(_) => sink.tally.refuse(text, "no JSON"),
        }
    }
    if state.others > 0 {
        let message = format!("{} messages are about other vessels", state.others);
        let help = if state.guessed {
            "the first vessel in the log is taken as ours, for the log does not say which is"
        } else {
            "left out"
        };
        sink.doubts.push(Doubt::new("other-vessels", message, help));
    }
    if state.without_time > 0 {
        let message = format!("{} values come without a time stamp", state.without_time);
        sink.doubts.push(Doubt::new("no-time", message, "left out"));
    }
    Ok(())
}

/// Takes a message; says whether anything in it was used.
fn delta_of(delta: &Delta<'_>, line: &[u8], state: &mut State, sink: &mut Sink) -> bool {
    let plain = |name: &str| name.strip_prefix("vessels.").unwrap_or(name).to_owned();
    if let Some(own) = delta.own {
        (state.own, state.guessed) = (Some(plain(own)), false);
    }
    let Some(updates) = &delta.updates else { return false };
    if let Some(context) = delta.context.map(|c| c.strip_prefix("vessels.").unwrap_or(c))
        && context != "self"
    {
        let machinery = || {
            let own = |p: &Pair<'_>| p.path.starts_with("propulsion.") || p.path == "navigation.speedThroughWater";
            updates.iter().any(|u| u.values.iter().any(own))
        };
        match &state.own {
            None => (state.own, state.guessed) = (Some(context.to_owned()), !machinery()),
            Some(own) if own == context => state.guessed = state.guessed && !machinery(),
            // What was taken so far came from somebody else.
            Some(_) if state.guessed && machinery() => {
                state.others += sink.tally.counts.understood;
                sink.bins = crate::bins::Bins::new();
                (state.own, state.guessed) = (Some(context.to_owned()), false);
            }
            Some(_) => {
                state.others += 1;
                return false;
            }
        }
    }
    let mut used = false;
    for update in updates {
        let time = update.timestamp.and_then(|t| iso(t.as_bytes())).map(|(time, _)| time);
        let Some(time) = time else {
            state.without_time += update.values.len() as u64;
            continue;
        };
        sink.bins.moment(time);
        for pair in &update.values {
            used |= value(pair, time, line, state, sink);
        }
    }
    used
}

fn value(pair: &Pair<'_>, time: f64, line: &[u8], state: &mut State, sink: &mut Sink) -> bool {
    let path = pair.path;
    if path == "navigation.position" {
        let Ok(Position { latitude: Some(lat), longitude: Some(lon) }) = serde_json::from_str(pair.value.get()) else {
            return false;
        };
        return sink.place(time, lat, lon, line);
    }
    let (channel, factor) = match path {
        "navigation.speedOverGround" => (Channel::OverGround, 1.0),
        "navigation.speedThroughWater" => (Channel::ThroughWater, 1.0),
        "navigation.courseOverGroundTrue" => (Channel::Course, 180.0 / std::f64::consts::PI),
        _ => {
            if let Some(kind) = path.strip_prefix("environment.depth.") {
                let rank = match kind {
                    "belowSurface" => 2,
                    "belowTransducer" => 1,
                    "belowKeel" => 0,
                    _ => return false,
                };
                if rank < state.depth_rank {
                    return false;
                }
                state.depth_rank = rank;
                (Channel::Depth, 1.0)
            } else if let Some((engine, quantity)) = path.strip_prefix("propulsion.").and_then(|p| p.split_once('.')) {
                if !matches!(quantity, "revolutions" | "fuel.rate") {
                    return false;
                }
                let Some(at) = state.engine(engine) else { return false };
                if quantity == "revolutions" { (Channel::Engine(at), 60.0) } else { (Channel::Fuel(at), 1.0) }
            } else {
                return false;
            }
        }
    };
    let text = pair.value.get();
    if text == "null" {
        return false;
    }
    match text.parse::<f64>() {
        Ok(value) => sink.add(time, channel, value * factor, line),
        Err(_) => {
            sink.tally.implausible(line, "a value that is not a number");
            false
        }
    }
}

impl State {
    fn engine(&mut self, name: &str) -> Option<usize> {
        if let Some(at) = self.engines.iter().position(|n| n == name) {
            return Some(at);
        }
        (self.engines.len() < ENGINES).then(|| {
            self.engines.push(name.to_owned());
            self.engines.len() - 1
        })
    }
}
