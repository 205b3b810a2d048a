//! The one place where the program asks `counsel`.

use counsel::report::{Choice, Comparison, Judgement};
use counsel::{Change, Options, ResistanceTable};
use job::Job;

use crate::args::Common;
use crate::failure::Failure;

fn options(common: &Common) -> Options {
    Options { boats: common.boats as usize, seed: common.seed }
}

/// The propeller fitted.
pub fn judge(job: &Job, common: &Common) -> Result<Judgement, Failure> {
    Ok(counsel::judge(job, &options(common))?)
}

/// Before and after a change.
pub fn compare(job: &Job, change: &Change, common: &Common) -> Result<Comparison, Failure> {
    Ok(counsel::compare(job, change, &options(common))?)
}

/// A shortlist.
pub fn choose(job: &Job, common: &Common) -> Result<Choice, Failure> {
    Ok(counsel::choose(job, &options(common))?)
}

/// Resistance over speed.
pub fn resistance(job: &Job, common: &Common) -> Result<ResistanceTable, Failure> {
    Ok(counsel::resistance(job, &options(common))?)
}
