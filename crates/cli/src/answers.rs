//! The one place where the program asks `counsel`.

use counsel::report::{Choice, Comparison, Diagnosis, Evidence, Judgement};
use counsel::survey::SurveyReport;
use counsel::{Change, Options, Prepared, ResistanceTable};
use job::Job;

use crate::args::Common;
use crate::failure::Failure;

/// The crowd asked for.
pub fn options(common: &Common) -> Options {
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

/// Causes ranked, and what to measure next.
pub fn diagnose(job: &Job, common: &Common) -> Result<Diagnosis, Failure> {
    Ok(counsel::diagnose(job, &options(common))?)
}

/// What the readings taught.
pub fn evidence(job: &Job, common: &Common) -> Result<Evidence, Failure> {
    Ok(counsel::evidence(job, &options(common))?)
}

/// The propeller in its place and on its shaft.
pub fn fit(job: &Job, common: &Common) -> Result<counsel::fit::report::Fit, Failure> {
    Ok(counsel::fit(job, &options(common))?)
}

/// What is to be ordered.
pub fn order(job: &Job, common: &Common) -> Result<counsel::order::report::OrderSheet, Failure> {
    Ok(counsel::order(job, &options(common))?)
}

/// The propeller as it was measured.
pub fn survey(job: &Job) -> Result<SurveyReport, Failure> {
    Ok(counsel::survey::survey(job)?)
}

/// A job with its crowd, for many questions.
pub fn prepared(job: &Job, common: &Common) -> Result<Prepared, Failure> {
    Ok(Prepared::new(job, &options(common))?)
}
