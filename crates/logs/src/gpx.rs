//! GPX 1.1 (and 1.0): track points with a time; speed and course where the file gives them.
//!
//! GPX 1.1 has no speed element; receivers put one into the point's extensions. GPX 1.0 has `speed` (m/s) and `course`.

use crate::clock::iso;
use crate::doubt::{Doubt, Refusal};
use crate::read::Sink;
use crate::sample::Channel;
use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};
use std::io::{self, BufRead, BufReader, Read};

/// A text without a tag that is longer than this is no track.
const LONGEST: usize = 1 << 20;

/// A track point being read.
#[derive(Default)]
struct Point {
    latitude: Option<f64>,
    longitude: Option<f64>,
    time: Option<f64>,
    speed: Option<f64>,
    course: Option<f64>,
    depth: Option<f64>,
    bad: Option<&'static str>,
    /// The position as written, to show.
    shown: Vec<u8>,
}

#[derive(Clone, Copy, PartialEq)]
enum Field {
    Time,
    Speed,
    Course,
    Depth,
}

pub(crate) fn read(source: impl Read, sink: &mut Sink) -> Result<(), Refusal> {
    let guarded = Guard { inner: BufReader::with_capacity(1 << 18, source), bare: 0 };
    let mut reader = Reader::from_reader(guarded);
    let config = reader.config_mut();
    config.check_end_names = false;
    config.allow_unmatched_ends = true;
    let mut buffer = Vec::new();
    let mut point: Option<Point> = None;
    let mut field = None;
    let mut closed = false;
    loop {
        buffer.clear();
        match reader.read_event_into(&mut buffer) {
            Ok(Event::Start(tag)) => match tag.local_name().as_ref() {
                "trkpt" => point = Some(begin(&tag, sink)),
                name => field = field_of(name),
            },
            Ok(Event::Empty(tag)) if tag.local_name().as_ref() == "trkpt" => {
                let point = begin(&tag, sink);
                end(&point, sink);
            }
            Ok(Event::End(tag)) => match tag.local_name().as_ref() {
                "trkpt" => {
                    if let Some(point) = point.take() {
                        end(&point, sink);
                    }
                }
                "gpx" => closed = true,
                _ => field = None,
            },
            Ok(Event::Text(text)) => {
                if let (Some(point), Some(field)) = (point.as_mut(), field) {
                    value(point, field, text.as_ref());
                }
            }
            Ok(Event::Eof) => break,
            Ok(_) => {}
            Err(error) => {
                let message = format!("reading stopped at byte {}: {error}", reader.error_position());
                sink.doubts.push(Doubt::new("stopped", message, "what came before is used; export the track again"));
                return Ok(());
            }
        }
    }
    if !closed {
        let message = "the file ends before its end tag: it is cut off";
        sink.doubts.push(Doubt::new("cut", message, "what came before is used; copy the file again"));
    }
    Ok(())
}

fn begin(tag: &BytesStart<'_>, sink: &mut Sink) -> Point {
    sink.tally.counts.lines += 1;
    let mut point = Point { shown: Vec::with_capacity(40), ..Point::default() };
    for attribute in tag.attributes().with_checks(false).flatten() {
        let value = number(&attribute.value);
        point.shown.extend_from_slice(attribute.value.as_bytes());
        point.shown.push(b' ');
        match attribute.key.local_name().as_ref() {
            "lat" => point.latitude = value,
            "lon" => point.longitude = value,
            _ => {}
        }
    }
    point
}

fn field_of(name: &str) -> Option<Field> {
    match name {
        "time" => Some(Field::Time),
        "speed" => Some(Field::Speed),
        "course" => Some(Field::Course),
        "depth" => Some(Field::Depth),
        _ => None,
    }
}

fn number(text: &str) -> Option<f64> {
    text.trim().parse().ok().filter(|v: &f64| v.is_finite())
}

fn value(point: &mut Point, field: Field, text: &str) {
    let text = text.trim();
    if text.is_empty() {
        return;
    }
    let (slot, value, why) = match field {
        Field::Time => (&mut point.time, iso(text.as_bytes()).map(|(time, _)| time), "a time that cannot be read"),
        Field::Speed => (&mut point.speed, number(text), "a speed that is no number"),
        Field::Course => (&mut point.course, number(text), "a course that is no number"),
        Field::Depth => (&mut point.depth, number(text), "a depth that is no number"),
    };
    if value.is_none() {
        point.bad = Some(why);
    }
    *slot = slot.or(value);
}

fn end(point: &Point, sink: &mut Sink) {
    let shown = point.shown.as_slice();
    let Some(time) = point.time else {
        sink.tally.refuse(shown, point.bad.unwrap_or("a track point without a time"));
        return;
    };
    sink.bins.moment(time);
    let mut used = false;
    match (point.latitude, point.longitude) {
        (Some(lat), Some(lon)) => used |= sink.place(time, lat, lon, shown),
        _ => {
            sink.tally.refuse(shown, "a track point without a position");
            return;
        }
    }
    if let Some(speed) = point.speed {
        // Receivers write -1 for a speed they don't know.
        used |= speed == -1.0 || sink.add(time, Channel::OverGround, speed, shown);
        if let Some(course) = point.course.filter(|c| *c >= 0.0) {
            used |= sink.add(time, Channel::Course, course, shown);
        }
    }
    if let Some(depth) = point.depth {
        used |= sink.add(time, Channel::Depth, depth, shown);
    }
    if let Some(why) = point.bad {
        sink.tally.implausible(shown, why);
    }
    if used {
        sink.tally.counts.understood += 1;
    } else {
        sink.tally.counts.unused += 1;
    }
}

/// Stops reading where a text goes on without a tag, so that no file can fill the memory.
struct Guard<R> {
    inner: R,
    bare: usize,
}

impl<R: BufRead> Read for Guard<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        self.inner.read(buffer)
    }
}

impl<R: BufRead> BufRead for Guard<R> {
    fn fill_buf(&mut self) -> io::Result<&[u8]> {
        let held = self.inner.fill_buf()?;
        match memchr::memrchr2(b'<', b'>', held) {
            Some(_) => self.bare = 0,
            None if self.bare > LONGEST => {
                return Err(io::Error::new(io::ErrorKind::InvalidData, "a megabyte without a tag"));
            }
            None => self.bare += held.len(),
        }
        Ok(held)
    }

    fn consume(&mut self, amount: usize) {
        self.inner.consume(amount);
    }
}
