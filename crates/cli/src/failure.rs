//! Why the program could not do what was asked, in words, and its exit code.

use std::fmt;
use std::path::{Path, PathBuf};

/// Why it could not be done. Every one exits with code 2.
#[derive(Debug)]
pub enum Failure {
    /// A file could not be read.
    Read {
        /// Which file.
        file: PathBuf,
        /// What the system said.
        cause: std::io::Error,
        /// It was to be a job file.
        job: bool,
    },
    /// A file is too long to be a job.
    TooLong {
        /// Which file.
        file: PathBuf,
        /// Its length, bytes.
        bytes: u64,
    },
    /// A file is not text.
    NotText {
        /// Which file.
        file: PathBuf,
        /// Offset of the first byte that is not UTF-8.
        at: usize,
    },
    /// A job file with errors, already laid out with the lines they stand on.
    Job(String),
    /// The job says too little.
    Lack(counsel::Lack),
    /// A file could not be written.
    Write {
        /// Which file.
        file: PathBuf,
        /// What the system said.
        cause: std::io::Error,
    },
    /// There is a file already.
    Exists(PathBuf),
    /// A log could not be used.
    Log {
        /// Which file.
        file: PathBuf,
        /// Why, and the way out.
        refusal: logs::Refusal,
    },
    /// Asked for something that cannot be answered; with a way out.
    Asked {
        /// What is wrong.
        what: String,
        /// What would be right.
        instead: String,
    },
    /// The answers on standard input ended too early.
    EndOfAnswers,
    /// Standard output or input failed.
    Stream(std::io::Error),
}

/// Longest job file read, bytes. A full season of readings is a tenth of it.
pub const LONGEST_JOB: u64 = 1024 * 1024;

impl Failure {
    /// What to do about it.
    #[must_use]
    pub fn way_out(&self) -> Option<String> {
        match self {
            Failure::Read { file, cause, job } => match cause.kind() {
                std::io::ErrorKind::NotFound if *job => Some(format!("`fairwake new {}` writes one", shown(file))),
                std::io::ErrorKind::IsADirectory if *job => Some("name the job file in it".to_owned()),
                std::io::ErrorKind::IsADirectory => Some("name a file in it".to_owned()),
                _ => None,
            },
            Failure::TooLong { .. } => Some("a job file is a few pages of TOML; this is something else".to_owned()),
            Failure::NotText { .. } => Some("save it as UTF-8 text".to_owned()),
            Failure::Exists(_) => Some("choose another name, or --force to replace it".to_owned()),
            Failure::Log { refusal, .. } => Some(refusal.help.clone()),
            Failure::Asked { instead, .. } => Some(instead.clone()),
            _ => None,
        }
    }

    /// Whether the reader has gone away: nothing to say to anybody.
    #[must_use]
    pub fn is_broken_pipe(&self) -> bool {
        matches!(self, Failure::Stream(cause) if cause.kind() == std::io::ErrorKind::BrokenPipe)
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Failure::Read { file, cause, .. } => write!(f, "cannot read {}: {}", shown(file), cause_in_words(cause)),
            Failure::TooLong { file, bytes } => {
                write!(f, "{} is too long for a job file: {bytes} bytes, at most {LONGEST_JOB} are read", shown(file))
            }
            Failure::NotText { file, at } => write!(f, "{} is not text: byte {at} is not UTF-8", shown(file)),
            Failure::Job(laid_out) => f.write_str(laid_out.trim_end()),
            Failure::Lack(lack) => lack.fmt(f),
            Failure::Write { file, cause } => write!(f, "cannot write {}: {}", shown(file), cause_in_words(cause)),
            Failure::Exists(file) => write!(f, "{} is there already", shown(file)),
            Failure::Log { file, refusal } => write!(f, "{}: {}", shown(file), refusal.message),
            Failure::Asked { what, .. } => f.write_str(what),
            Failure::EndOfAnswers => f.write_str("the answers ended before the first question was answered"),
            Failure::Stream(cause) => write!(f, "cannot write the answer: {}", cause_in_words(cause)),
        }
    }
}

impl From<counsel::Lack> for Failure {
    fn from(lack: counsel::Lack) -> Failure {
        Failure::Lack(lack)
    }
}

/// A path as people see it.
#[must_use]
pub fn shown(file: &Path) -> String {
    file.display().to_string()
}

/// The common causes in plain words; the rest as the system says it.
fn cause_in_words(cause: &std::io::Error) -> String {
    use std::io::ErrorKind as Kind;
    match cause.kind() {
        Kind::NotFound => "there is no such file".to_owned(),
        Kind::PermissionDenied => "not allowed".to_owned(),
        Kind::IsADirectory => "it is a folder".to_owned(),
        Kind::NotADirectory => "a part of its path is not a folder".to_owned(),
        Kind::StorageFull => "the disk is full".to_owned(),
        Kind::ReadOnlyFilesystem => "the disk is read-only".to_owned(),
        Kind::BrokenPipe => "the reader has gone".to_owned(),
        _ => cause.to_string(),
    }
}
