//! What the papers are made of: the job, and the answers to every question asked of it.

use counsel::fit::report::Fit;
use counsel::order::report::OrderSheet;
use counsel::report::{Band, Candidate, Choice, Diagnosis, Evidence, FullThrottle, Judgement, Step};
use counsel::survey::SurveyReport;
use counsel::{Curves, Lack, Options, Prepared};
use job::{Cup, Job, Quantity};
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
    /// What is to be ordered or done; `None` where nothing needs to be.
    pub order: Option<Ordered>,
    /// Answer of `order`: of what is to be ordered, else of the propeller fitted, for a spare.
    pub sheet: Option<OrderSheet>,
    /// Answer of `fit` for what is to go on the shaft.
    pub fit: Option<Fit>,
    /// The job with what is to go on the shaft in place of what is fitted.
    pub(crate) fitting: Job,
    options: Options,
}

/// What is to be ordered or done.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ordered {
    /// In words: `re-pitch to 16 x 9 in`.
    pub what: String,
    /// Kind of step, where it is of the shortlist.
    pub step: Option<Step>,
    /// Diameter, mm.
    pub diameter: Option<f64>,
    /// Reduction it needs, where that is another one.
    pub reduction: Option<f64>,
    /// Engine speed at full throttle, clean and loaded.
    pub engine_speed: Band,
    /// Boat speed there, where it was worked out.
    pub speed: Option<Band>,
    /// Chance of lying in the accepted band.
    pub right: f64,
}

impl Answers {
    /// Asks every question once. Ordered is what the job's `[order]` says; without one the best of the shortlist, where the
    /// propeller fitted does not suit the engine; see also [`Answers::ordering`].
    #[must_use]
    pub fn gather(job: &Job, text: &str, options: &Options) -> Answers {
        // The questions do not hang on one another, but all lack the same where the first lacks something.
        let prepared = Prepared::new(job, options);
        let ((judged, choice), (diagnosis, evidence)) = rayon::join(
            || {
                rayon::join(
                    || prepared.as_ref().map(|p| (p.judge(), p.curves(None))).map_err(Clone::clone),
                    || prepared.as_ref().ok().and_then(|_| counsel::choose(job, options).ok()),
                )
            },
            || {
                rayon::join(
                    || prepared.as_ref().ok().and_then(|_| counsel::diagnose(job, options).ok()),
                    || {
                        let asked = prepared.as_ref().ok().filter(|_| !job.readings.is_empty());
                        asked.and_then(|_| counsel::evidence(job, options).ok())
                    },
                )
            },
        );
        let (judgement, curves) = match judged {
            Ok((judgement, curves)) => (judgement, Some(curves)),
            Err(lack) => (Err(lack), None),
        };
        let able = judgement.is_ok();
        let mut answers = Answers {
            text: text.to_owned(),
            job: job.clone(),
            choice: choice.filter(|_| able),
            diagnosis: diagnosis.filter(|_| able),
            evidence: evidence.filter(|_| able),
            curves: curves.filter(|_| able),
            survey: counsel::survey::survey(job),
            judgement,
            order: None,
            sheet: None,
            fit: None,
            fitting: job.clone(),
            options: *options,
        };
        let stated = job.order.diameter.is_some() || job.order.pitch.is_some() || job.order.blades.is_some();
        // What suits the engine is left alone, however little better something else might be.
        let suits = answers.judgement.as_ref().is_ok_and(|judgement| judgement.verdict.right > 0.5);
        let best = answers.choice.as_ref().and_then(|choice| choice.shortlist.first());
        let best = best.filter(|candidate| !stated && !suits && candidate.step >= Step::Cup).cloned();
        if let Some(best) = best {
            return answers.ordering(&best);
        }
        let full_throttle = answers.ask_order(job, able);
        answers.order = answers.sheet.as_ref().filter(|_| stated).map(|sheet| {
            let with = counsel::order::ordered(job).propeller;
            let metres = |q: &Option<Quantity>| q.as_ref().map(|q| q.middle);
            let (diameter, pitch) = (metres(&with.diameter), metres(&with.pitch));
            let size = diameter.zip(pitch).map(|(d, p)| counsel::phrase::size(d, p)).unwrap_or_default();
            Ordered {
                what: size,
                step: None,
                diameter: diameter.map(|d| 1000.0 * d),
                reduction: None,
                engine_speed: sheet.engine_speed,
                speed: full_throttle.map(|full| full.speed),
                right: sheet.verdict.right,
            }
        });
        answers
    }

    /// The same with the order made out for this candidate.
    #[must_use]
    pub fn ordering(mut self, candidate: &Candidate) -> Answers {
        let mut job = self.job.clone();
        let metres = |mm: f64| Some(Quantity::exact(mm / 1000.0, format!("{mm:.1} mm")));
        job.order.diameter = metres(candidate.diameter);
        job.order.pitch = metres(candidate.pitch);
        job.order.blades = Some(candidate.blades);
        job.order.area_ratio = Some(Quantity::exact(candidate.area_ratio, format!("{:.2}", candidate.area_ratio)));
        job.order.width = None;
        if candidate.step == Step::NewPropeller || candidate.step == Step::Ratio {
            job.order.cup = Some(Cup::None);
        }
        if candidate.step == Step::Ratio {
            // What was read was read with the gearbox that is in her.
            if let Some(old) = job.drive.reduction.clone() {
                for reading in &mut job.readings {
                    reading.state.reduction.get_or_insert_with(|| old.clone());
                }
            }
            job.drive.reduction = Some(Quantity::exact(candidate.reduction, format!("{:.2}", candidate.reduction)));
        }
        let _ = self.ask_order(&job, true);
        self.order = Some(Ordered {
            what: candidate.what.clone(),
            step: Some(candidate.step),
            diameter: Some(candidate.diameter),
            reduction: (candidate.step == Step::Ratio).then_some(candidate.reduction),
            engine_speed: candidate.full_throttle.engine_speed,
            speed: Some(candidate.full_throttle.speed),
            right: candidate.in_band,
        });
        self
    }

    /// The order and its fit; what it would do at full throttle.
    fn ask_order(&mut self, job: &Job, able: bool) -> Option<FullThrottle> {
        let asked = able.then(|| counsel::order::considered(job, &self.options).ok()).flatten();
        self.fitting = counsel::order::ordered(job);
        let full_throttle = asked.as_ref().map(|c| c.full_throttle);
        (self.sheet, self.fit) = asked.map(|c| (c.sheet, c.fit)).unzip();
        full_throttle
    }
}
