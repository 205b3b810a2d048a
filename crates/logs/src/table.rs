//! CSV: a table with a header that names the columns and their units.

use crate::clock::{date, iso, time_of_day};
use crate::columns::{self, Columns, Holds};
use crate::doubt::{Doubt, Refusal};
use crate::lines::Lines;
use crate::read::Sink;
use std::io::Read;

/// Lines that may stand above the header.
const ABOVE: u64 = 40;
/// Columns of a row that are looked at.
const WIDEST: usize = 256;

/// How the time column is written.
#[derive(Clone, Copy, PartialEq)]
enum Times {
    /// `2026-05-02T10:11:12Z`.
    Iso,
    /// A number times a factor.
    Number(f64),
    /// `10:11:12`, with a date of its own or none.
    OfDay,
}

struct Table {
    columns: Columns,
    delimiter: u8,
    times: Option<Times>,
    /// Days added at midnight to a time of day without a date.
    rolled: f64,
    last: Option<f64>,
    zone_unsaid: bool,
    fields: Vec<(usize, usize)>,
}

pub(crate) fn read(source: impl Read, density: f64, sink: &mut Sink) -> Result<(), Refusal> {
    let mut lines = Lines::new(source);
    let mut table: Option<Table> = None;
    let mut waiting: Option<(u8, Vec<String>)> = None;
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
        let text = line.bytes.trim_ascii_end();
        if text.is_empty() || text[0] == b'#' {
            continue;
        }
        sink.tally.counts.lines += 1;
        if line.long {
            sink.tally.refuse(text, "a line too long for a table");
            continue;
        }
        let Some(table) = table.as_mut() else {
            // A line of units may follow the header, so the header waits for the line below it.
            match waiting.take() {
                None => {
                    sink.tally.counts.unused += 1;
                    waiting = header(text);
                    if waiting.is_none() && sink.tally.counts.lines >= ABOVE {
                        break;
                    }
                }
                Some((delimiter, names)) => {
                    let cells = split(text, delimiter);
                    let below = columns::is_units(&cells).then_some(cells);
                    let columns = columns::columns(&names, below.as_deref(), density, &mut sink.doubts)?;
                    let mut new = Table {
                        columns,
                        delimiter,
                        times: None,
                        rolled: 0.0,
                        last: None,
                        zone_unsaid: false,
                        fields: Vec::new(),
                    };
                    if below.is_some() {
                        sink.tally.counts.unused += 1;
                    } else {
                        new.take(text, line.cut, sink)?;
                    }
                    table = Some(new);
                }
            }
            continue;
        };
        if text == before {
            sink.tally.counts.repeated += 1;
        }
        before.clear();
        before.extend_from_slice(text);
        table.take(text, line.cut, sink)?;
    }
    let Some(table) = table else {
        return match waiting {
            Some((_, names)) => {
                columns::columns(&names, None, density, &mut sink.doubts)?;
                Err(Refusal::new("no-rows", "the table has a header and no rows", "record the run again"))
            }
            None => Err(Refusal::new(
                "no-header",
                "the table has no header that names its columns",
                "begin it with a line such as `time (s),rpm,speed (kn),course (deg)`",
            )),
        };
    };
    if table.zone_unsaid {
        let message = "the times say no zone: taken as UTC";
        sink.doubts.push(Doubt::new("no-zone", message, "end them in Z or +02:00 when other logs are joined"));
    }
    Ok(())
}

fn header(text: &[u8]) -> Option<(u8, Vec<String>)> {
    let text = text.strip_prefix(b"\xef\xbb\xbf").unwrap_or(text);
    [b'\t', b';', b','].into_iter().find_map(|delimiter| {
        let cells = split(text, delimiter);
        columns::is_header(&cells).then_some((delimiter, cells))
    })
}

/// The cells of a line.
fn split(text: &[u8], delimiter: u8) -> Vec<String> {
    let mut record = csv::ByteRecord::new();
    let mut reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).delimiter(delimiter).from_reader(text);
    match reader.read_byte_record(&mut record) {
        Ok(true) => record.iter().take(WIDEST).map(|c| String::from_utf8_lossy(c).trim().to_owned()).collect(),
        _ => Vec::new(),
    }
}

impl Table {
    fn take(&mut self, text: &[u8], cut: bool, sink: &mut Sink) -> Result<(), Refusal> {
        let outcome = if memchr::memchr(b'"', text).is_some() {
            // Rare: quotes are left to the reader that knows them.
            let cells = split(text, self.delimiter);
            let mut joined = Vec::with_capacity(text.len());
            self.fields.clear();
            for cell in &cells {
                let from = joined.len();
                joined.extend_from_slice(cell.as_bytes());
                self.fields.push((from, joined.len()));
            }
            self.row(&joined, text, sink)?
        } else {
            self.fields.clear();
            let mut from = 0;
            for at in memchr::memchr_iter(self.delimiter, text).take(WIDEST) {
                self.fields.push((from, at));
                from = at + 1;
            }
            self.fields.push((from, text.len()));
            self.row(text, text, sink)?
        };
        match outcome {
            Ok(true) => sink.tally.counts.understood += 1,
            Ok(false) => sink.tally.counts.unused += 1,
            Err(_) if cut => sink.tally.refuse(text, "the file ends within this line"),
            Err(why) => sink.tally.refuse(text, why),
        }
        Ok(())
    }

    /// Takes a row: whether anything in it was used, or why it is refused.
    fn row(&mut self, cells: &[u8], line: &[u8], sink: &mut Sink) -> Result<Result<bool, &'static str>, Refusal> {
        if self.fields.len() < self.columns.width.min(2) {
            return Ok(Err("fewer cells than the header has"));
        }
        let cell = |at: usize| self.fields.get(at).map_or(&[][..], |(from, to)| cells[*from..*to].trim_ascii());
        let mut time = None;
        let mut day = None;
        for (at, holds) in &self.columns.used {
            match holds {
                Holds::Time(unit) => time = Some((cell(*at), *unit)),
                Holds::Date => day = Some(cell(*at)),
                _ => {}
            }
        }
        let Some((text, unit)) = time else { return Ok(Err("no time")) };
        if text.is_empty() {
            return Ok(Err("no time"));
        }
        let times = match self.times {
            Some(times) => times,
            None => match times_of(text, unit) {
                Ok(times) => *self.times.insert(times),
                // A first row that is no row says nothing about the column.
                Err(refusal) if text.iter().any(u8::is_ascii_digit) => return Err(refusal),
                Err(_) => return Ok(Err("a time that cannot be read")),
            },
        };
        let moment = match times {
            Times::Iso => iso(text).map(|(time, said)| {
                self.zone_unsaid |= !said;
                time
            }),
            Times::Number(factor) => {
                number(text, self.delimiter).map(|v| v * factor).filter(|t| (0.0..7e9).contains(t))
            }
            Times::OfDay => match (time_of_day(text.strip_suffix(b"Z").unwrap_or(text)), day) {
                (Some(time), Some(day)) => date(day).map(|day| day as f64 * 86_400.0 + time),
                (Some(time), None) => {
                    if self.last.is_some_and(|last| time + self.rolled < last - 43_200.0) {
                        self.rolled += 86_400.0;
                    }
                    Some(time + self.rolled)
                }
                (None, _) => None,
            },
        };
        let Some(moment) = moment else { return Ok(Err("a time that cannot be read")) };
        self.last = Some(moment);
        sink.bins.moment(moment);
        let (mut used, mut bad) = (false, None);
        let (mut latitude, mut longitude) = (None, None);
        let mut read = |cell: &[u8]| match number(cell, self.delimiter) {
            None if !missing(cell) => {
                bad = Some("a value that is not a number");
                None
            }
            value => value,
        };
        for (at, holds) in &self.columns.used {
            match holds {
                Holds::Latitude => latitude = read(cell(*at)),
                Holds::Longitude => longitude = read(cell(*at)),
                Holds::Value(channel, factor) => {
                    if let Some(value) = read(cell(*at)) {
                        used |= sink.add(moment, *channel, value * factor, line);
                    }
                }
                Holds::Time(_) | Holds::Date => {}
            }
        }
        if let (Some(lat), Some(lon)) = (latitude, longitude) {
            used |= sink.place(moment, lat, lon, line);
        }
        if let Some(why) = bad {
            if !used {
                return Ok(Err(why));
            }
            sink.tally.implausible(line, why);
        }
        Ok(Ok(used))
    }
}

/// How a time is written, from the first one.
fn times_of(text: &[u8], unit: Option<f64>) -> Result<Times, Refusal> {
    let value = number(text, b',');
    if let (Some(_), Some(factor)) = (value, unit) {
        return Ok(Times::Number(factor));
    }
    if iso(text).is_some() {
        return Ok(Times::Iso);
    }
    if time_of_day(text.strip_suffix(b"Z").unwrap_or(text)).is_some() {
        return Ok(Times::OfDay);
    }
    match value {
        // Without a unit only seconds or milliseconds since 1970 can be told apart.
        Some(value) if (3e8..5e9).contains(&value) => Ok(Times::Number(1.0)),
        Some(value) if (3e11..5e12).contains(&value) => Ok(Times::Number(1e-3)),
        Some(_) => Err(Refusal::new(
            "needs-unit",
            "the time column needs a unit",
            "write it in the header: `time (s)`, `time (ms)` or `time (min)`",
        )),
        None => Err(Refusal::new(
            "time-form",
            format!("the time `{}` cannot be read", crate::tally::printable(text)),
            "write times as 2026-05-02T10:11:12Z, as 10:11:12, or as `time (s)`",
        )),
    }
}

fn missing(cell: &[u8]) -> bool {
    cell.is_empty()
        || [&b"-"[..], b"--", b"---", b"null", b"none", b"n/a", b"na"].iter().any(|m| cell.eq_ignore_ascii_case(m))
}

/// A finite number; a decimal comma where the comma does not separate cells.
fn number(cell: &[u8], delimiter: u8) -> Option<f64> {
    let text = std::str::from_utf8(cell).ok()?;
    match text.parse::<f64>() {
        Ok(value) => value.is_finite().then_some(value),
        Err(_) if delimiter != b',' && text.matches(',').count() == 1 => {
            text.replace(',', ".").parse().ok().filter(|v: &f64| v.is_finite())
        }
        Err(_) => None,
    }
}
