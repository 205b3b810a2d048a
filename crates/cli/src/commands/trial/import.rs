//! Reading logs from disk, with a progress bar for the long ones.

use std::fs::File;
use std::path::Path;
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use logs::{Log, Options};

use crate::failure::{Failure, shown};

/// Reads all logs in turn.
///
/// # Errors
/// The first that cannot be read or used.
pub fn all<'a>(files: impl IntoIterator<Item = &'a Path>, options: &Options) -> Result<Vec<Log>, Failure> {
    let mut opened = Vec::new();
    for file in files {
        let fail = |cause: std::io::Error| Failure::Read { file: file.to_owned(), cause, job: false };
        let source = File::open(file).map_err(fail)?;
        let about = source.metadata().map_err(fail)?;
        if about.is_dir() {
            return Err(fail(std::io::ErrorKind::IsADirectory.into()));
        }
        // A pipe has no length.
        opened.push((file, source, about.is_file().then_some(about.len())));
    }
    let total = opened.iter().map(|(_, _, size)| *size).sum::<Option<u64>>();
    let mut bar = Bar::new(total);
    let mut logs = Vec::new();
    for (file, mut source, size) in opened {
        let name = shown(file);
        let log = logs::read(&name, &mut source, size, options, &mut |done, _| bar.at(&name, done))
            .map_err(|refusal| Failure::Log { file: file.to_owned(), refusal })?;
        bar.before += log.counts.bytes;
        logs.push(log);
    }
    Ok(logs)
}

/// Work shorter than this is not worth a bar.
const PATIENCE: Duration = Duration::from_millis(500);

/// A bar on standard error that appears when it is worth it, and only before a person.
struct Bar {
    start: Instant,
    total: Option<u64>,
    /// Bytes of the logs that are done.
    before: u64,
    shown: Option<ProgressBar>,
}

impl Bar {
    fn new(total: Option<u64>) -> Bar {
        Bar { start: Instant::now(), total, before: 0, shown: None }
    }

    fn at(&mut self, name: &str, done: u64) {
        if self.shown.is_none() && self.start.elapsed() < PATIENCE {
            return;
        }
        let (total, before) = (self.total, self.before);
        let bar = self.shown.get_or_insert_with(|| {
            let bar = ProgressBar::with_draw_target(total, ProgressDrawTarget::stderr());
            let template = match total {
                Some(_) => "reading {msg} {bar:30} {percent} %, {bytes_per_sec}, {eta} to go",
                None => "reading {msg} {spinner} {bytes}, {bytes_per_sec}",
            };
            // A template that does not parse leaves the usual one.
            if let Ok(style) = ProgressStyle::with_template(template) {
                bar.set_style(style.progress_chars("▒▒╌"));
            }
            // What was read before the bar appeared took its time too: the speed shown starts here.
            bar.set_position(before + done);
            bar.reset_eta();
            bar
        });
        bar.set_message(name.to_owned());
        bar.set_position(self.before + done);
    }
}

impl Drop for Bar {
    fn drop(&mut self) {
        if let Some(bar) = self.shown.take() {
            bar.finish_and_clear();
        }
    }
}
