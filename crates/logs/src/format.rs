//! What a log is written in, told from its content.

use crate::doubt::Refusal;
use crate::tally::printable;

/// What a log is written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Format {
    /// GPX 1.1 or 1.0: a track.
    Gpx,
    /// NMEA 0183: one sentence a line.
    Nmea,
    /// A table with a header: values separated by commas, semicolons or tabs.
    Csv,
    /// Signal K: one delta message (JSON) a line.
    SignalK,
}

impl Format {
    /// All formats.
    pub const ALL: [Format; 4] = [Format::Gpx, Format::Nmea, Format::Csv, Format::SignalK];

    /// The word that names it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Format::Gpx => "gpx",
            Format::Nmea => "nmea",
            Format::Csv => "csv",
            Format::SignalK => "signalk",
        }
    }

    /// The name to show.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Format::Gpx => "GPX",
            Format::Nmea => "NMEA 0183",
            Format::Csv => "CSV",
            Format::SignalK => "Signal K delta lines",
        }
    }

    /// The format a word names.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Format> {
        Format::ALL.into_iter().find(|f| f.word() == word.to_lowercase())
    }

    /// What the end of a file's name promises, when it promises one of these.
    pub(crate) fn of_name(name: &str) -> Option<Format> {
        match name.rsplit_once('.')?.1.to_lowercase().as_str() {
            "gpx" => Some(Format::Gpx),
            "nmea" | "nma" => Some(Format::Nmea),
            "csv" | "tsv" => Some(Format::Csv),
            _ => None,
        }
    }

    /// Tells the format from the beginning of a file (64 kB are plenty).
    ///
    /// # Errors
    /// Why it cannot be one of them.
    pub fn detect(head: &[u8]) -> Result<Format, Refusal> {
        plain(head)?;
        let body = start(head);
        if body.is_empty() {
            return Err(Refusal::new("empty", "the file is empty", "record the run again, or look for the right file"));
        }
        if body[0] == b'<' {
            let early = &body[..body.len().min(8192)];
            return if memchr::memmem::find(early, b"<gpx").is_some() || memchr::memmem::find(early, b":gpx").is_some() {
                Ok(Format::Gpx)
            } else {
                Err(Refusal::new("not-gpx", "this is XML or HTML but not GPX", "export the track as GPX"))
            };
        }
        let (mut nmea, mut json, mut other) = (0, 0, 0);
        for line in body.split(|c| *c == b'\n').map(<[u8]>::trim_ascii).filter(|l| !l.is_empty()).take(200) {
            if is_sentence(line) {
                nmea += 1;
            } else if memchr::memchr(b'{', &line[..line.len().min(40)]).is_some() {
                json += 1;
            } else {
                other += 1;
            }
        }
        if nmea > 0 && nmea >= json && 4 * nmea >= other {
            return Ok(Format::Nmea);
        }
        if json > 0 && 4 * json >= other {
            return if memchr::memmem::find(body, b"\"updates\"").is_some() {
                Ok(Format::SignalK)
            } else {
                Err(Refusal::new(
                    "not-signalk",
                    "this is JSON but holds no Signal K delta messages",
                    "write one delta message with its `updates` on each line",
                ))
            };
        }
        let separated = body.split(|c| *c == b'\n').take(60).any(|line| {
            line.iter().any(u8::is_ascii_alphabetic) && line.iter().any(|c| matches!(c, b',' | b';' | b'\t'))
        });
        if separated {
            return Ok(Format::Csv);
        }
        Err(Refusal::new(
            "no-log",
            format!("this is no log of a kind that is read here; it begins `{}`", printable(body.trim_ascii_start())),
            "give GPX, NMEA 0183, CSV with a header, or Signal K delta lines",
        ))
    }
}

/// Refuses what is no text.
pub(crate) fn plain(head: &[u8]) -> Result<(), Refusal> {
    let packed = |name: &str| {
        Err(Refusal::new("packed", format!("this file is packed ({name})"), "unpack it and give the file inside"))
    };
    match head {
        [0x1f, 0x8b, ..] => return packed("gzip"),
        [b'P', b'K', 3, 4, ..] => return packed("zip"),
        [0x28, 0xb5, 0x2f, 0xfd, ..] => return packed("zstd"),
        [0xff, 0xfe, ..] | [0xfe, 0xff, ..] => {
            return Err(Refusal::new("utf-16", "this text is in UTF-16", "save it as UTF-8 or plain text"));
        }
        _ => {}
    }
    let odd = head.iter().filter(|c| **c < 9 || (14..32).contains(*c) && **c != 27).count();
    if 50 * odd > head.len() {
        return Err(Refusal::new(
            "binary",
            "this is not a text file",
            "give GPX, NMEA 0183, CSV with a header, or Signal K delta lines",
        ));
    }
    Ok(())
}

/// The text behind a byte order mark and white space.
fn start(head: &[u8]) -> &[u8] {
    head.strip_prefix(b"\xef\xbb\xbf").unwrap_or(head).trim_ascii_start()
}

/// `$GPRMC,` or `!AIVDM,`, perhaps behind a time stamp.
fn is_sentence(line: &[u8]) -> bool {
    let Some(at) = memchr::memchr2(b'$', b'!', line) else { return false };
    let rest = &line[at + 1..];
    rest.len() > 6
        && rest[..5].iter().all(u8::is_ascii_alphanumeric)
        && rest[2..5].iter().any(u8::is_ascii_uppercase)
        && rest[5..].iter().take(4).any(|c| *c == b',')
}
