//! Reading a log of any of the formats.

use crate::bins::Bins;
use crate::doubt::{Doubt, Refusal};
use crate::format::{Format, plain};
use crate::lines::Watched;
use crate::sample::{Channel, Sample};
use crate::tally::{Counts, Example, Tally};
use crate::{gpx, nmea, signalk, table, track};
use std::io::Read;

/// How a log is to be read.
#[derive(Clone, Debug, PartialEq)]
pub struct Options {
    /// The format, when it is not to be told from the content.
    pub format: Option<Format>,
    /// Density of the fuel, kg/m³, for logs that give it by mass (see [`job::quantity::fuel_density`]).
    pub fuel_density: f64,
}

impl Default for Options {
    fn default() -> Options {
        Options { format: None, fuel_density: job::quantity::fuel_density(None) }
    }
}

/// A log as read.
#[derive(Clone, Debug, PartialEq)]
pub struct Log {
    /// The name it was given by.
    pub name: String,
    /// What it was written in.
    pub format: Format,
    /// Its samples in order of time, one for each bin.
    pub samples: Vec<Sample>,
    /// Width of a bin, s: 1, or more for logs of many days.
    pub bin: u32,
    /// What its lines were.
    pub counts: Counts,
    /// The first lines that were refused.
    pub examples: Vec<Example>,
    /// What looks wrong about it.
    pub doubts: Vec<Doubt>,
}

/// What the readers of the formats write into.
pub(crate) struct Sink {
    pub(crate) bins: Bins,
    pub(crate) tally: Tally,
    pub(crate) doubts: Vec<Doubt>,
}

impl Sink {
    /// Adds a value; one that cannot be is counted. Says whether it was taken.
    pub(crate) fn add(&mut self, time: f64, channel: Channel, value: f64, line: &[u8]) -> bool {
        match channel.checked(value) {
            Ok(value) => {
                self.bins.add(time, channel, value);
                true
            }
            Err(why) => {
                self.tally.implausible(line, why);
                false
            }
        }
    }

    /// Adds a position; one that cannot be is counted. Says whether it was taken.
    pub(crate) fn place(&mut self, time: f64, latitude: f64, longitude: f64, line: &[u8]) -> bool {
        match self.bins.place(time, latitude, longitude) {
            Ok(()) => true,
            Err(why) => {
                self.tally.implausible(line, why);
                false
            }
        }
    }

    /// Notes that the file ended too early or could not be read on.
    pub(crate) fn stopped(&mut self, error: &std::io::Error) {
        let message = format!("reading stopped before the end: {error}");
        self.doubts.push(Doubt::new("stopped", message, "what came before is used; copy the file again"));
    }
}

/// Bytes looked at to tell the format.
const HEAD: usize = 64 * 1024;

/// Reads a log. `name` is shown in messages and its end compared with the content; `size` is the length in bytes when it
/// is known; `progress` is told the bytes read so far and `size`, about once a megabyte.
///
/// # Errors
/// When nothing in it can be used: why, and the way out. Single bad lines are counted, not fatal.
pub fn read(
    name: &str,
    source: &mut dyn Read,
    size: Option<u64>,
    options: &Options,
    progress: &mut dyn FnMut(u64, Option<u64>),
) -> Result<Log, Refusal> {
    let mut source = Watched { inner: source, done: 0, told: 0, size, tell: progress };
    let mut head = Vec::with_capacity(HEAD);
    if let Err(error) = (&mut source).take(HEAD as u64).read_to_end(&mut head) {
        return Err(Refusal::new("unreadable", format!("the file cannot be read: {error}"), "look at the file"));
    }
    let format = match options.format {
        Some(format) => plain(&head).map(|()| format)?,
        None => Format::detect(&head)?,
    };
    if head.trim_ascii().is_empty() {
        return Err(Refusal::new("empty", "the file is empty", "record the run again, or look for the right file"));
    }
    let mut sink = Sink { bins: Bins::new(), tally: Tally::default(), doubts: Vec::new() };
    if let Some(promised) = Format::of_name(name).filter(|f| *f != format) {
        let message = format!("named as {}, but its content is {}", promised.name(), format.name());
        sink.doubts.push(Doubt::new("wrong-name", message, "read by its content; give the format if that is wrong"));
    }
    let bare = head.strip_prefix(b"\xef\xbb\xbf".as_slice()).unwrap_or(&head);
    let whole = bare.chain(&mut source);
    match format {
        Format::Gpx => gpx::read(whole, &mut sink)?,
        Format::Nmea => nmea::read(whole, &mut sink)?,
        Format::Csv => table::read(whole, options.fuel_density, &mut sink)?,
        Format::SignalK => signalk::read(whole, &mut sink)?,
    }
    sink.tally.counts.bytes = source.done;
    finish(name, format, sink)
}

fn finish(name: &str, format: Format, sink: Sink) -> Result<Log, Refusal> {
    let Sink { bins, tally, mut doubts } = sink;
    let counts = tally.counts;
    if bins.is_empty() {
        let first = tally.examples.first().map_or(String::new(), |e| format!("; line {}: {}", e.line, e.why));
        return Err(Refusal::new(
            "nothing-used",
            format!("none of the {} lines of this {} log could be used{first}", counts.lines, format.name()),
            "look whether it is the right file, whole, and in the right format",
        ));
    }
    if bins.backward > 0 {
        let message = if bins.backward == 1 {
            "time goes back once".to_owned()
        } else {
            format!("time goes back {} times", bins.backward)
        };
        let help = if format == Format::Nmea && bins.backward > 2 {
            "put in order; but sentences without a time of their own are dated by the line before them, so their values are uncertain here"
        } else {
            "put in order; values of the same second are averaged"
        };
        doubts.push(Doubt::new("out-of-order", message, help));
    }
    if counts.repeated > 0 {
        let message = format!("{} lines repeat the line before", counts.repeated);
        doubts.push(Doubt::new("repeated", message, "counted once in each second's mean"));
    }
    if bins.width > 1 {
        let message = format!("a very long log: averaged over {} s instead of 1 s", bins.width);
        doubts.push(Doubt::new("long", message, "cut out the day of the trial for a finer picture"));
    }
    let bin = u32::try_from(bins.width).unwrap_or(u32::MAX);
    let mut samples = bins.finish();
    if samples.last().is_some_and(|s| s.time < 3.0e8) {
        doubts.push(Doubt::new("no-date", "the log has no date", "times count from its start or from midnight"));
    }
    if samples.iter().all(|s| s.over_ground.is_none()) && track::fill(&mut samples) {
        doubts.push(Doubt::new(
            "speed-from-positions",
            "no speed over ground is given: computed from the positions",
            "a receiver's own speed is sharper; the mean of a long steady run is as good",
        ));
    }
    Ok(Log { name: name.to_owned(), format, samples, bin, counts, examples: tally.examples, doubts })
}

/// One series out of several logs of the same time: each moment (a second) takes what the first log has to say about each
/// quantity. Their clocks have to agree.
#[must_use]
pub fn join(logs: &[Log]) -> Vec<Sample> {
    let mut all: Vec<(usize, Sample)> =
        logs.iter().enumerate().flat_map(|(at, log)| log.samples.iter().map(move |s| (at, *s))).collect();
    all.sort_by(|a, b| a.1.time.floor().total_cmp(&b.1.time.floor()).then(a.0.cmp(&b.0)));
    let mut joined: Vec<Sample> = Vec::with_capacity(all.len());
    for (_, sample) in all {
        match joined.last_mut() {
            Some(last) if last.time.floor() == sample.time.floor() => last.fill(&sample),
            _ => joined.push(sample),
        }
    }
    joined
}
