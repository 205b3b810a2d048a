//! Weighed crowds kept in memory. A job file's text names its crowd: another text is another crowd, an undone edit finds the
//! old one again.

use counsel::report::Judgement;
use counsel::{Lack, Options, Prepared};
use job::Job;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

/// Jobs kept. A crowd of 4 000 boats takes some tens of megabytes.
const KEPT: usize = 4;

/// A job read, weighed, and judged when first asked.
pub struct Known {
    /// The crowd.
    pub prepared: Prepared,
    judged: OnceLock<Result<Judgement, Lack>>,
}

impl Known {
    /// The judgement.
    ///
    /// # Errors
    /// When something is missing.
    pub fn judged(&self) -> Result<&Judgement, &Lack> {
        self.judged.get_or_init(|| self.prepared.judge()).as_ref()
    }
}

/// What stands in one place of the store; the first who asks works it out, others wait for that one job only.
type Place = Arc<OnceLock<Result<Arc<Known>, Lack>>>;

/// The store, the last used last.
#[derive(Default)]
pub struct Crowds {
    options: Options,
    places: Mutex<Vec<(String, Place)>>,
}

impl Crowds {
    /// A store for crowds of this size.
    #[must_use]
    pub fn new(options: Options) -> Crowds {
        Crowds { options, places: Mutex::new(Vec::new()) }
    }

    /// The crowd of a job, drawn and weighed now unless it is kept. `text` is the file the job was read from.
    ///
    /// # Errors
    /// When something is missing that cannot be assumed.
    pub fn get(&self, text: &str, job: &Job) -> Result<Arc<Known>, Lack> {
        let place = self.place(text);
        place.get_or_init(|| self.draw(job)).clone()
    }

    /// The same without keeping it: a list of many jobs must not drive out the one that is worked on.
    ///
    /// # Errors
    /// As [`Crowds::get`].
    pub fn beside(&self, text: &str, job: &Job) -> Result<Arc<Known>, Lack> {
        let kept = self.places.lock().unwrap_or_else(PoisonError::into_inner);
        let known = kept.iter().find(|(t, _)| t == text).and_then(|(_, place)| place.get().cloned());
        drop(kept);
        known.unwrap_or_else(|| self.draw(job))
    }

    fn draw(&self, job: &Job) -> Result<Arc<Known>, Lack> {
        Prepared::new(job, &self.options).map(|prepared| Arc::new(Known { prepared, judged: OnceLock::new() }))
    }

    fn place(&self, text: &str) -> Place {
        let mut places = self.places.lock().unwrap_or_else(PoisonError::into_inner);
        let found = places.iter().position(|(t, _)| t == text);
        let entry = match found {
            Some(at) => places.remove(at),
            None => (text.to_owned(), Place::default()),
        };
        let place = Arc::clone(&entry.1);
        places.push(entry);
        if places.len() > KEPT {
            places.remove(0);
        }
        place
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(name: &str) -> String {
        let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
        std::fs::read_to_string(path).expect("a demo")
    }

    #[test]
    fn a_text_known_is_not_weighed_again_and_the_oldest_is_let_go() {
        let crowds = Crowds::new(Options { boats: 200, seed: 1 });
        let text = text("kittiwake");
        let job = Job::read(&text).expect("well formed").job;
        let first = crowds.get(&text, &job).expect("a whole job");
        assert!(Arc::ptr_eq(&first, &crowds.get(&text, &job).expect("a whole job")));
        for i in 0..KEPT {
            let other = format!("{text}\n# {i}\n");
            crowds.get(&other, &job).expect("a whole job");
        }
        assert!(!Arc::ptr_eq(&first, &crowds.get(&text, &job).expect("a whole job")));
        assert!(crowds.places.lock().expect("unpoisoned").len() <= KEPT);
    }
}
