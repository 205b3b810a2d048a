//! NMEA 0183: RMC, VTG, VHW, RPM, DPT, DBT for values; RMC, ZDA, GGA, GLL for the time.
//!
//! Sentences that the `nmea` crate knows are read by it; RPM, DBT and a VTG without knots are read here. Layout of RPM,
//! `S|E,number,rpm,pitch %,A|V`: three makers' manuals read, one of which prints A and V the wrong way round; A is valid.

use crate::clock::days;
use crate::doubt::{Doubt, Refusal};
use crate::lines::Lines;
use crate::read::Sink;
use crate::sample::{Channel, ENGINES, KNOT};
use chrono::{Datelike, Timelike};
use nmea::sentences::{self as known, rmc::RmcStatusOfFix};
use std::io::Read;

/// The time of the last sentence that told one.
#[derive(Default)]
struct Clock {
    day: Option<i64>,
    now: Option<f64>,
    /// Values were dated before the date was known.
    dateless: bool,
}

#[derive(Default)]
struct Seen {
    without_checksum: u64,
    without_time: u64,
    without_fix: u64,
    turns_valid: u64,
    turns_not_valid: u64,
}

/// What a sentence was.
enum Outcome {
    Understood,
    Unused,
    Refused(&'static str),
}

pub(crate) fn read(source: impl Read, sink: &mut Sink) -> Result<(), Refusal> {
    let mut lines = Lines::new(source);
    let (mut clock, mut seen) = (Clock::default(), Seen::default());
    let mut before: Vec<u8> = Vec::new();
    let mut scratch = String::new();
    loop {
        let line = match lines.next() {
            Ok(Some(line)) => line,
            Ok(None) => break,
            Err(error) => {
                sink.stopped(&error);
                break;
            }
        };
        if line.bytes.trim_ascii().is_empty() {
            continue;
        }
        sink.tally.counts.lines += 1;
        if line.long {
            sink.tally.refuse(line.bytes, "longer than a sentence may be");
            continue;
        }
        if line.bytes == before {
            sink.tally.counts.repeated += 1;
        }
        before.clear();
        before.extend_from_slice(line.bytes);
        match sentence(line.bytes, &mut scratch, &mut clock, &mut seen, sink) {
            Outcome::Understood => sink.tally.counts.understood += 1,
            Outcome::Unused => sink.tally.counts.unused += 1,
            Outcome::Refused(_) if line.cut => sink.tally.refuse(line.bytes, "the file ends within this line"),
            Outcome::Refused(why) => sink.tally.refuse(line.bytes, why),
        }
    }
    let mut doubt = |code, count: u64, message: &str, help: &str| {
        if count > 0 {
            sink.doubts.push(Doubt::new(code, format!("{count} sentences {message}"), help));
        }
    };
    doubt("no-checksum", seen.without_checksum, "carry no checksum", "accepted; a garbled digit would go unseen");
    doubt("no-time", seen.without_time, "come before any time is known", "left out; log RMC or ZDA as well");
    doubt("no-fix", seen.without_fix, "say that the receiver had no fix", "left out");
    if seen.turns_not_valid > 0 && seen.turns_valid == 0 {
        doubt(
            "rpm-not-valid",
            seen.turns_not_valid,
            "give an engine speed, every one marked as not valid",
            "left out; one maker's manual prints the marks the wrong way round: ask the maker of the converter",
        );
    }
    Ok(())
}

fn sentence(line: &[u8], scratch: &mut String, clock: &mut Clock, seen: &mut Seen, sink: &mut Sink) -> Outcome {
    let Some(at) = memchr::memchr2(b'$', b'!', line) else {
        return Outcome::Refused("no sentence: neither `$` nor `!` in it");
    };
    if line[at] == b'!' {
        return Outcome::Unused;
    }
    let (prefix, text) = (&line[..at], line[at..].trim_ascii_end());
    let Some(text) = std::str::from_utf8(text).ok().filter(|t| t.is_ascii()) else {
        return Outcome::Refused("a sentence holds plain characters only");
    };
    let Some((address, _)) = text[1..].split_once(',') else {
        return Outcome::Refused("no fields");
    };
    if !address.bytes().all(|c| c.is_ascii_alphanumeric()) || address.is_empty() {
        return Outcome::Refused("no sentence: its name is garbled");
    }
    let (body, sum) = match text.rsplit_once('*') {
        Some((body, sum)) => (body, Some(sum)),
        None => (text, None),
    };
    let check = body.as_bytes()[1..].iter().fold(0, |sum, c| sum ^ c);
    match sum.map(|sum| (sum.len() == 2).then(|| u8::from_str_radix(sum, 16).ok()).flatten()) {
        None => seen.without_checksum += 1,
        Some(None) => return Outcome::Refused("the checksum is garbled"),
        Some(Some(sum)) if sum != check => return Outcome::Refused("the checksum does not fit"),
        Some(Some(_)) => {}
    }
    // A maker's own sentences begin with P; `PxRMC` is none of ours.
    if address.len() != 5 || address.starts_with('P') {
        return Outcome::Unused;
    }
    let kind = &address[2..];
    if !matches!(kind, "RMC" | "VTG" | "VHW" | "RPM" | "DPT" | "DBT" | "ZDA" | "GGA" | "GLL") {
        return Outcome::Unused;
    }
    let full = if sum.is_some() {
        text
    } else {
        use std::fmt::Write as _;
        scratch.clear();
        let _ = write!(scratch, "{body}*{check:02X}");
        scratch.as_str()
    };
    let data = body.split_once(',').map_or("", |(_, data)| data);
    values(kind, full, data, prefix, line, clock, seen, sink)
}

#[expect(clippy::too_many_arguments, reason = "the state of one pass")]
fn values(
    kind: &str,
    full: &str,
    data: &str,
    prefix: &[u8],
    line: &[u8],
    clock: &mut Clock,
    seen: &mut Seen,
    sink: &mut Sink,
) -> Outcome {
    let Ok(parsed) = nmea::parse_nmea_sentence(full) else {
        return Outcome::Refused("longer than a sentence may be, or without its parts");
    };
    match kind {
        "RMC" => {
            let Ok(rmc) = known::parse_rmc(parsed) else { return Outcome::Refused("an RMC that cannot be read") };
            if rmc.status_of_fix == RmcStatusOfFix::Invalid {
                seen.without_fix += 1;
                // The clock goes on without a fix, as long as it is the same clock.
                let date = rmc.fix_date.and_then(day);
                if let (Some(time), true) = (rmc.fix_time, clock.day.is_some() && date == clock.day) {
                    clock.set(seconds(time), date, sink);
                }
                return Outcome::Unused;
            }
            let Some(time) = rmc.fix_time else { return Outcome::Refused("an RMC without a time") };
            clock.set(seconds(time), rmc.fix_date.and_then(day), sink);
            let Some(now) = clock.now else { return Outcome::Unused };
            let mut used = false;
            if let Some(speed) = rmc.speed_over_ground {
                used |= sink.add(now, Channel::OverGround, f64::from(speed) * KNOT, line);
                if let Some(course) = rmc.true_course {
                    used |= sink.add(now, Channel::Course, f64::from(course), line);
                }
            }
            if let (Some(lat), Some(lon)) = (rmc.lat, rmc.lon) {
                used |= sink.place(now, lat, lon, line);
            }
            outcome(used)
        }
        "ZDA" => {
            let Ok(zda) = known::parse_zda(parsed) else { return Outcome::Refused("a ZDA that cannot be read") };
            let date = match (zda.year, zda.month, zda.day) {
                (Some(y), Some(m), Some(d)) => days(i64::from(y), i64::from(m), i64::from(d)),
                _ => None,
            };
            if let Some(time) = zda.utc_time {
                clock.set(seconds(time), date, sink);
            }
            Outcome::Unused
        }
        "GGA" => {
            let Ok(gga) = known::parse_gga(parsed) else { return Outcome::Refused("a GGA that cannot be read") };
            if let Some(time) = gga.fix_time {
                clock.set(seconds(time), None, sink);
            }
            let (Some(now), Some(lat), Some(lon)) = (clock.now, gga.latitude, gga.longitude) else {
                return Outcome::Unused;
            };
            outcome(sink.place(now, lat, lon, line))
        }
        "GLL" => {
            let Ok(gll) = known::parse_gll(parsed) else { return Outcome::Refused("a GLL that cannot be read") };
            if let Some(time) = gll.fix_time.filter(|_| gll.valid) {
                clock.set(seconds(time), None, sink);
            }
            Outcome::Unused
        }
        _ => {
            let Some(now) = clock.now.or_else(|| stamp(prefix)) else {
                seen.without_time += 1;
                return Outcome::Unused;
            };
            if clock.now.is_none() {
                sink.bins.moment(now);
            }
            undated(kind, parsed, data, now, line, seen, sink)
        }
    }
}

/// Sentences that carry no time of their own.
fn undated(
    kind: &str,
    parsed: nmea::NmeaSentence<'_>,
    data: &str,
    now: f64,
    line: &[u8],
    seen: &mut Seen,
    sink: &mut Sink,
) -> Outcome {
    let mut fields = data.split(',');
    match kind {
        "VTG" => {
            let Ok(vtg) = known::parse_vtg(parsed) else { return Outcome::Refused("a VTG that cannot be read") };
            // The mode, where there is one: N is not valid.
            if fields.clone().nth(8) == Some("N") {
                seen.without_fix += 1;
                return Outcome::Unused;
            }
            let knots = vtg.speed_over_ground.map(|v| f64::from(v) * KNOT);
            let other = fields.nth(6).and_then(number).map(|v| v / 3.6);
            let Some(speed) = knots.or(other) else { return Outcome::Unused };
            let mut used = sink.add(now, Channel::OverGround, speed, line);
            if let Some(course) = vtg.true_course {
                used |= sink.add(now, Channel::Course, f64::from(course), line);
            }
            outcome(used)
        }
        "VHW" => {
            let Ok(vhw) = known::parse_vhw(parsed) else { return Outcome::Refused("a VHW that cannot be read") };
            let speed = vhw.relative_speed_knots.map(|v| v * KNOT).or(vhw.relative_speed_kmph.map(|v| v / 3.6));
            speed.map_or(Outcome::Unused, |v| outcome(sink.add(now, Channel::ThroughWater, v, line)))
        }
        "DPT" => {
            let Ok(dpt) = known::parse_dpt(parsed) else { return Outcome::Refused("a DPT that cannot be read") };
            // A positive offset is the transducer's depth below the water; a negative one points to the keel.
            let Some(depth) = dpt.water_depth else { return Outcome::Unused };
            let depth = depth + dpt.offset.unwrap_or(0.0).max(0.0);
            outcome(sink.add(now, Channel::Depth, depth, line))
        }
        "DBT" => {
            let values: [Option<f64>; 3] = std::array::from_fn(|at| {
                let value = fields.next().and_then(number);
                value.filter(|_| fields.next() == Some(["f", "M", "F"][at]))
            });
            let depth = values[1].or(values[0].map(|v| v * 0.3048)).or(values[2].map(|v| v * 1.8288));
            depth.map_or(Outcome::Unused, |v| outcome(sink.add(now, Channel::Depth, v, line)))
        }
        _ => {
            let (source, engine, turns) = (fields.next(), fields.next(), fields.next().and_then(number));
            let status = fields.nth(1);
            let Some(engine) = engine.and_then(|n| n.parse::<usize>().ok()).filter(|n| *n < ENGINES) else {
                return Outcome::Refused("an RPM without an engine number from 0 to 3");
            };
            if status != Some("A") {
                seen.turns_not_valid += 1;
                return Outcome::Unused;
            }
            let channel = match (source, turns) {
                (_, None) => return Outcome::Unused,
                (Some("E"), _) => Channel::Engine(engine),
                (Some("S"), _) => Channel::Shaft(engine),
                _ => return Outcome::Refused("an RPM of neither engine (E) nor shaft (S)"),
            };
            let used = turns.is_some_and(|turns| sink.add(now, channel, turns, line));
            seen.turns_valid += u64::from(used);
            outcome(used)
        }
    }
}

fn outcome(used: bool) -> Outcome {
    if used { Outcome::Understood } else { Outcome::Unused }
}

fn number(field: &str) -> Option<f64> {
    field.trim().parse().ok().filter(|v: &f64| v.is_finite())
}

fn seconds(time: chrono::NaiveTime) -> f64 {
    f64::from(time.num_seconds_from_midnight()) + f64::from(time.nanosecond()) * 1e-9
}

fn day(date: chrono::NaiveDate) -> Option<i64> {
    days(i64::from(date.year()), i64::from(date.month()), i64::from(date.day()))
}

impl Clock {
    fn set(&mut self, seconds: f64, date: Option<i64>, sink: &mut Sink) {
        if let Some(date) = date {
            if self.day.is_none() && self.dateless {
                // What was dated from midnight belongs to this day; sentences around midnight may be a day out.
                let rolled = self.now.map_or(0, |now| (now / 86_400.0).floor() as i64);
                sink.bins.shift(date - rolled);
            }
            self.day = Some(date);
            self.now = Some(date as f64 * 86_400.0 + seconds);
        } else {
            // The day nearest to the last moment.
            let near = self.now.unwrap_or(self.day.unwrap_or(0) as f64 * 86_400.0 + seconds);
            let days = ((near - seconds) / 86_400.0).round().max(0.0);
            self.now = Some(days * 86_400.0 + seconds);
            self.dateless |= self.day.is_none();
        }
        if let Some(now) = self.now {
            sink.bins.moment(now);
        }
    }
}

/// The time stamp a recorder put before the sentence: seconds or milliseconds since 1970, an ISO time, or a tag block
/// with `c:`.
fn stamp(prefix: &[u8]) -> Option<f64> {
    let text = std::str::from_utf8(prefix).ok()?.trim();
    let digits = text.split_once("c:").map_or(text, |(_, rest)| rest);
    let end = digits.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(digits.len());
    if let Ok(value) = digits[..end].parse::<f64>() {
        if (1e8..5e9).contains(&value) {
            return Some(value);
        }
        if (1e11..5e12).contains(&value) {
            return Some(value / 1000.0);
        }
    }
    let word = text.trim_end_matches([';', ',', ':', '|']);
    crate::clock::iso(word.trim().as_bytes()).map(|(time, _)| time)
}
