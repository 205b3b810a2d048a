//! What the papers are made of: the job, and the answers to every question asked of it.

use counsel::report::{Candidate, Choice, Diagnosis, Evidence, Judgement, Step};
use counsel::survey::SurveyReport;
use counsel::{Curves, Lack, Options};
use job::Job;
use serde::Serialize;
use words::Language;

/// Size of the sheets.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Size {
    /// 210 by 297 mm.
    #[default]
    A4,
    /// 8.5 by 11 in.
    Letter,
}

/// How the papers are to be laid out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Setting {
    /// Language.
    pub language: Language,
    /// Sheet.
    pub size: Size,
    /// Date of issue, as it is to be printed.
    pub date: String,
}

/// A job and what `counsel` says of it. What could not be answered holds the reason.
#[derive(Clone, Debug)]
pub struct Answers {
    /// The job file as it is.
    pub text: String,
    /// The job.
    pub job: Job,
    /// Answer of `judge`, or what it lacks.
    pub judgement: Result<Judgement, Lack>,
    /// Answer of `choose`.
    pub choice: Option<Choice>,
    /// Answer of `diagnose`.
    pub diagnosis: Option<Diagnosis>,
    /// What the readings taught; none without readings.
    pub evidence: Option<Evidence>,
    /// Curves for pictures.
    pub curves: Option<Curves>,
    /// The propeller as measured, or what was not measured.
    pub survey: Result<SurveyReport, Lack>,
    /// What is to be ordered; `None` where nothing needs to be.
    pub order: Option<Candidate>,
}

impl Answers {
    /// Asks every question once. The order is for the best of the shortlist, where the propeller fitted does
    /// not suit the engine anyway, unless [`Answers::ordering`] says otherwise.
    #[must_use]
    pub fn gather(job: &Job, text: &str, options: &Options) -> Answers {
        let judgement = counsel::judge(job, options);
        let able = judgement.is_ok();
        let ask = |able: bool| able.then_some(());
        let choice = ask(able).and_then(|()| counsel::choose(job, options).ok());
        let order =
            choice.as_ref().and_then(|choice| choice.shortlist.first()).filter(|c| c.step >= Step::Cup).cloned();
        Answers {
            text: text.to_owned(),
            job: job.clone(),
            choice,
            diagnosis: ask(able).and_then(|()| counsel::diagnose(job, options).ok()),
            evidence: ask(able && !job.readings.is_empty()).and_then(|()| counsel::evidence(job, options).ok()),
            curves: ask(able).and_then(|()| counsel::curves(job, options).ok()),
            survey: counsel::survey::survey(job),
            judgement,
            order,
        }
    }

    /// The same with the order made out for this candidate.
    #[must_use]
    pub fn ordering(mut self, candidate: Candidate) -> Answers {
        self.order = Some(candidate);
        self
    }
}
