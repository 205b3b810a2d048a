//! Counting what a log's lines were, with examples of those refused.

/// What the lines (or track points) of a log were.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Bytes read.
    pub bytes: u64,
    /// Lines, or track points of a GPX file.
    pub lines: u64,
    /// Lines with something we use.
    pub understood: u64,
    /// Lines in order, with nothing we use.
    pub unused: u64,
    /// Lines that could not be read.
    pub refused: u64,
    /// Values that no instrument of a small craft can mean; the rest of their line was used.
    pub implausible: u64,
    /// Lines equal to the one before.
    pub repeated: u64,
}

/// A line (or value) that was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Example {
    /// Its number, from 1.
    pub line: u64,
    /// Its beginning, printable.
    pub text: String,
    /// Why.
    pub why: String,
}

/// Examples kept in all, and of one kind.
const EXAMPLES: usize = 6;
const OF_ONE_KIND: usize = 2;
const SHOWN: usize = 72;

#[derive(Debug, Default)]
pub(crate) struct Tally {
    pub(crate) counts: Counts,
    pub(crate) examples: Vec<Example>,
}

impl Tally {
    pub(crate) fn refuse(&mut self, line: &[u8], why: &str) {
        self.counts.refused += 1;
        self.example(line, why);
    }

    pub(crate) fn implausible(&mut self, line: &[u8], why: &str) {
        self.counts.implausible += 1;
        self.example(line, why);
    }

    fn example(&mut self, line: &[u8], why: &str) {
        if self.examples.len() >= EXAMPLES || self.examples.iter().filter(|e| e.why == why).count() >= OF_ONE_KIND {
            return;
        }
        self.examples.push(Example { line: self.counts.lines, text: printable(line), why: why.to_owned() });
    }
}

/// The beginning of a line without anything a terminal could take for a command.
pub(crate) fn printable(line: &[u8]) -> String {
    let head = String::from_utf8_lossy(&line[..line.len().min(4 * SHOWN)]);
    let mut text: String = head.chars().take(SHOWN).map(|c| if c.is_control() { '·' } else { c }).collect();
    if head.chars().nth(SHOWN).is_some() {
        text.push('…');
    }
    text
}
