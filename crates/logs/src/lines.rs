//! Lines of a file of any size, in bounded memory.

use std::io::{self, Read};

/// A longer line is no line of a log.
pub(crate) const LONGEST: usize = 64 * 1024;
const BUFFER: usize = 4 * LONGEST;

/// One line, without its end.
pub(crate) struct Line<'a> {
    pub(crate) bytes: &'a [u8],
    /// It was longer than any line of a log can be; only its beginning is given.
    pub(crate) long: bool,
    /// The file ended before the line did.
    pub(crate) cut: bool,
}

pub(crate) struct Lines<R> {
    inner: R,
    buffer: Vec<u8>,
    start: usize,
    end: usize,
    done: bool,
}

impl<R: Read> Lines<R> {
    pub(crate) fn new(inner: R) -> Lines<R> {
        Lines { inner, buffer: vec![0; BUFFER], start: 0, end: 0, done: false }
    }

    fn refill(&mut self) -> io::Result<()> {
        self.buffer.copy_within(self.start..self.end, 0);
        (self.start, self.end) = (0, self.end - self.start);
        while self.end < self.buffer.len() && !self.done {
            match self.inner.read(&mut self.buffer[self.end..]) {
                Ok(0) => self.done = true,
                Ok(n) => {
                    self.end += n;
                    break;
                }
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                Err(error) => return Err(error),
            }
        }
        Ok(())
    }

    /// The next line; `None` at the end.
    pub(crate) fn next(&mut self) -> io::Result<Option<Line<'_>>> {
        let mut searched = self.start;
        loop {
            if let Some(at) = memchr::memchr(b'\n', &self.buffer[searched..self.end]) {
                let (from, to) = (self.start, searched + at);
                self.start = to + 1;
                let long = to - from > LONGEST;
                return Ok(Some(Line { bytes: trim(&self.buffer[from..to.min(from + LONGEST)]), long, cut: false }));
            }
            if self.end - self.start > LONGEST {
                return self.skip_long();
            }
            if self.done {
                let (from, to) = (self.start, self.end);
                self.start = to;
                return Ok((from < to).then(|| Line { bytes: trim(&self.buffer[from..to]), long: false, cut: true }));
            }
            let held = self.end - self.start;
            self.refill()?;
            searched = self.start + held;
        }
    }

    /// Reads on to the end of a line that does not end.
    fn skip_long(&mut self) -> io::Result<Option<Line<'_>>> {
        let head = self.buffer[self.start..self.start + LONGEST].to_vec();
        self.start = self.end;
        let cut = loop {
            self.refill()?;
            if let Some(at) = memchr::memchr(b'\n', &self.buffer[self.start..self.end]) {
                self.start += at + 1;
                break false;
            }
            self.start = self.end;
            if self.done {
                break true;
            }
        };
        // The rest of the buffer moves behind the head, which is shown in its place.
        let rest = self.buffer[self.start..self.end].to_vec();
        let room = LONGEST + rest.len();
        if self.buffer.len() < room {
            self.buffer.resize(room, 0);
        }
        self.buffer[..LONGEST].copy_from_slice(&head);
        self.buffer[LONGEST..room].copy_from_slice(&rest);
        (self.start, self.end) = (LONGEST, room);
        Ok(Some(Line { bytes: &self.buffer[..LONGEST], long: true, cut }))
    }
}

fn trim(line: &[u8]) -> &[u8] {
    match line {
        [line @ .., b'\r'] => line,
        line => line,
    }
}

/// A reader that says how far it is.
pub(crate) struct Watched<'a> {
    pub(crate) inner: &'a mut dyn Read,
    pub(crate) done: u64,
    pub(crate) told: u64,
    pub(crate) size: Option<u64>,
    pub(crate) tell: &'a mut dyn FnMut(u64, Option<u64>),
}

impl Read for Watched<'_> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let n = self.inner.read(buffer)?;
        self.done += n as u64;
        if self.done - self.told >= 1 << 20 || n == 0 && self.done != self.told {
            self.told = self.done;
            (self.tell)(self.done, self.size);
        }
        Ok(n)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Gives its bytes a few at a time.
    struct Drip<'a>(&'a [u8], usize);

    impl Read for Drip<'_> {
        fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
            let n = self.1.min(self.0.len()).min(buffer.len());
            buffer[..n].copy_from_slice(&self.0[..n]);
            self.0 = &self.0[n..];
            Ok(n)
        }
    }

    #[test]
    fn gives_the_lines_of_a_text_however_it_comes() {
        let long = "x".repeat(3 * LONGEST);
        let endless = "y".repeat(9 * LONGEST);
        let text = format!("one\r\n\ntwo\n{long}\nthree\n{endless}\nfour\n{long}\nfive");
        for step in [1000, 4096, 70_000, 1 << 20] {
            let mut lines = Lines::new(Drip(text.as_bytes(), step));
            let mut got = Vec::new();
            while let Some(line) = lines.next().unwrap() {
                let text = String::from_utf8(line.bytes[..line.bytes.len().min(5)].to_vec()).unwrap();
                got.push((text, line.long, line.cut));
            }
            let want: Vec<(String, bool, bool)> = [
                ("one", false, false),
                ("", false, false),
                ("two", false, false),
                ("xxxxx", true, false),
                ("three", false, false),
                ("yyyyy", true, false),
                ("four", false, false),
                ("xxxxx", true, false),
                ("five", false, true),
            ]
            .map(|(t, l, c)| (t.to_owned(), l, c))
            .to_vec();
            assert_eq!(got, want, "{step}");
        }
    }
}
