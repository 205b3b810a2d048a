//! Reading a job file from disk.

use std::fs::File;
use std::io::Read as _;
use std::path::Path;

use job::{Job, Problem};

use crate::failure::{Failure, LONGEST_JOB, shown};

/// A job, and what looks doubtful in it, laid out.
#[derive(Debug)]
pub struct Loaded {
    /// The job.
    pub job: Job,
    /// Doubts laid out with the lines they stand on; empty when there are none.
    pub doubts: String,
    /// The file as it is.
    pub text: String,
    /// Its name for people.
    pub name: String,
}

/// Reads and checks a job file. `-` reads standard input.
pub fn job(file: &Path, colour: bool) -> Result<Loaded, Failure> {
    let (text, name) = if file == Path::new("-") {
        (text(std::io::stdin().lock(), Path::new("standard input"), true)?, "standard input".to_owned())
    } else {
        (text_of(file, true)?, shown(file))
    };
    let lay_out = |problems: &[Problem]| job::render(problems, &name, &text, colour);
    match Job::read(&text) {
        Ok(read) => {
            let doubts = if read.doubts.is_empty() { String::new() } else { lay_out(&read.doubts) };
            Ok(Loaded { job: read.job, doubts, text, name })
        }
        Err(problems) => Err(Failure::Job(lay_out(&problems))),
    }
}

/// The text of a file that is no longer than a job may be; `job` says whether it is to be one.
pub fn text_of(file: &Path, job: bool) -> Result<String, Failure> {
    let wrap = |cause| Failure::Read { file: file.to_owned(), cause, job };
    let opened = File::open(file).map_err(wrap)?;
    let about = opened.metadata().map_err(wrap)?;
    if about.is_dir() {
        return Err(wrap(std::io::ErrorKind::IsADirectory.into()));
    }
    if about.len() > LONGEST_JOB {
        return Err(Failure::TooLong { file: file.to_owned(), bytes: about.len() });
    }
    text(opened, file, job)
}

fn text(from: impl std::io::Read, file: &Path, job: bool) -> Result<String, Failure> {
    let mut bytes = Vec::new();
    // One byte more than is read tells an endless stream from a long file.
    from.take(LONGEST_JOB + 1).read_to_end(&mut bytes).map_err(|cause| Failure::Read {
        file: file.to_owned(),
        cause,
        job,
    })?;
    if bytes.len() as u64 > LONGEST_JOB {
        return Err(Failure::TooLong { file: file.to_owned(), bytes: bytes.len() as u64 });
    }
    String::from_utf8(bytes)
        .map_err(|error| Failure::NotText { file: file.to_owned(), at: error.utf8_error().valid_up_to() })
}
