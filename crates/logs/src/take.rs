//! Readings of a log put into a job file, as they were chosen.

use crate::propose::Proposal;
use job::{Document, Job, Problem};

/// A proposal that a person takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Taken {
    /// Its place among the proposals, from 0.
    pub at: usize,
    /// Said to have been at full throttle.
    pub full_throttle: bool,
}

/// The text of the job file with the readings taken behind those it holds; nothing else of it is touched, and what it holds
/// already is not added again. The result was read: a job file is never left worse than it was.
///
/// # Errors
/// Why the file takes no readings, or could not be read with them.
pub fn take(text: &str, offered: &[Proposal], taken: &[Taken]) -> Result<String, Vec<Problem>> {
    let mut document = Document::parse(text)?;
    let mut held = Job::read(text)?.job;
    for one in taken {
        let Some(proposal) = offered.get(one.at).filter(|proposal| !proposal.is_in(&held)) else { continue };
        let reading = if one.full_throttle { proposal.at_full_throttle() } else { proposal.reading.clone() };
        document.append_reading(&reading)?;
        held.readings.push(reading);
    }
    let text = document.to_string();
    Job::read(&text)?;
    Ok(text)
}
