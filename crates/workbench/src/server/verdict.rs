//! The sentences of jobs already judged, by the content of their files.

use crate::follows::Crowds;
use crate::store::Version;
use job::Job;
use std::collections::HashMap;
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use words::Language;

/// What is kept of a judgement.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// The sentence.
    pub sentence: String,
    /// What to measure next.
    pub measure_next: String,
    /// The picture that proves it, without its own style, in every language.
    pub pictures: Vec<(Language, String)>,
    /// Whether there is a verdict.
    pub judged: bool,
}

impl Said {
    /// The picture in a language.
    #[must_use]
    pub fn picture(&self, language: Language) -> Option<&str> {
        self.pictures.iter().find(|(of, _)| *of == language).map(|(_, svg)| svg.as_str())
    }
}

/// Judgements kept.
const KEPT: usize = 64;
/// Judgements made at once: a page must stay quick while others are worked out.
const AT_ONCE: usize = 2;

/// What is known by state, and the states in the order in which they came.
type Known = (HashMap<Version, Arc<Said>>, Vec<Version>);

/// The store.
#[derive(Default)]
pub struct Verdicts {
    known: Mutex<Known>,
    working: Mutex<usize>,
    free: Condvar,
}

impl Verdicts {
    /// What is known of a state.
    #[must_use]
    pub fn known(&self, version: Version) -> Option<Arc<Said>> {
        self.known.lock().unwrap_or_else(PoisonError::into_inner).0.get(&version).cloned()
    }

    /// The judgement of a text, made now unless it is known.
    #[must_use]
    pub fn of(&self, text: &str, crowds: &Crowds) -> Arc<Said> {
        let version = Version::of(text);
        if let Some(said) = self.known(version) {
            return said;
        }
        let mut working = self.working.lock().unwrap_or_else(PoisonError::into_inner);
        while *working >= AT_ONCE {
            working = self.free.wait(working).unwrap_or_else(PoisonError::into_inner);
        }
        *working += 1;
        drop(working);
        // Somebody else may have asked the same meanwhile.
        let said = self.known(version).unwrap_or_else(|| Arc::new(judge(text, crowds)));
        *self.working.lock().unwrap_or_else(PoisonError::into_inner) -= 1;
        self.free.notify_one();
        let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
        if known.0.insert(version, Arc::clone(&said)).is_none() {
            known.1.push(version);
        }
        if known.1.len() > KEPT {
            let oldest = known.1.remove(0);
            known.0.remove(&oldest);
        }
        said
    }
}

fn judge(text: &str, crowds: &Crowds) -> Said {
    let unjudged =
        |sentence: String| Said { sentence, measure_next: String::new(), pictures: Vec::new(), judged: false };
    let job = match Job::read(text) {
        Ok(read) => read.job,
        Err(problems) => return unjudged(problems.first().map(|p| p.message.clone()).unwrap_or_default()),
    };
    let known = match crowds.beside(text, &job) {
        Ok(known) => known,
        Err(lack) => return unjudged(lack.to_string()),
    };
    match known.judged() {
        Err(lack) => unjudged(lack.to_string()),
        Ok(judged) => {
            let curves = known.prepared.curves(None);
            let date = job.readings.iter().filter_map(|reading| reading.date.as_ref()).map(ToString::to_string).max();
            let date = date.as_deref().unwrap_or_default();
            let pictures = Language::ALL.into_iter().map(|language| {
                let sheet = draw::Sheet { boat: &job.title, date, width: 480.0, language };
                (language, styleless(&draw::demand::picture(&sheet, &curves, None).svg))
            });
            Said {
                sentence: judged.headline.clone(),
                measure_next: judged.measure_next.clone(),
                pictures: pictures.collect(),
                judged: true,
            }
        }
    }
}

/// The page has the pictures' style as a file: none stands inline.
fn styleless(svg: &str) -> String {
    match (svg.find("<style>"), svg.find("</style>")) {
        (Some(from), Some(to)) if from < to => format!("{}{}", &svg[..from], &svg[to + "</style>".len()..]),
        _ => svg.to_owned(),
    }
}
