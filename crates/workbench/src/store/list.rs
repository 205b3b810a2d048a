//! The list of jobs, read again only where a file changed.

use super::{Name, Version, disk};
use job::Job;
use std::collections::HashMap;
use std::io;
use std::path::Path;
use std::time::SystemTime;

/// A job in the list.
#[derive(Clone, Debug)]
pub struct Entry {
    /// Its name.
    pub name: Name,
    /// Its title; the name where it has none.
    pub title: String,
    /// Its state.
    pub version: Version,
    /// What matters and is not known yet, as paths.
    pub open: Vec<&'static str>,
    /// The last reading's day.
    pub last_reading: Option<String>,
    /// Readings.
    pub readings: usize,
    /// Whether the file can be read.
    pub readable: bool,
    changed: Option<SystemTime>,
    length: u64,
}

/// What a judgement cannot do without, or is much the better for.
pub const MATTERS: [&str; 8] = [
    "boat.kind",
    "boat.length_waterline",
    "boat.displacement",
    "engine.rated_power",
    "engine.rated_speed",
    "drive.reduction",
    "propeller.diameter",
    "propeller.pitch",
];

#[derive(Default)]
pub(super) struct Listing {
    known: HashMap<Name, Entry>,
}

impl Listing {
    pub fn refresh(&mut self, root: &Path) -> io::Result<Vec<Entry>> {
        let mut found = Vec::new();
        let mut stale = Vec::new();
        for file in std::fs::read_dir(root)?.flatten() {
            let Ok(about) = file.metadata() else { continue };
            let path = file.file_name();
            let Some(name) = path.to_str().and_then(|name| name.strip_suffix(".toml")).and_then(Name::of) else {
                continue;
            };
            // A link's own metadata: links are not followed out of the folder.
            if !about.is_file() || about.len() > disk::LONGEST {
                continue;
            }
            let (changed, length) = (about.modified().ok(), about.len());
            match self.known.get(&name) {
                Some(entry) if entry.changed == changed && entry.length == length => found.push(entry.clone()),
                _ => stale.push((name, changed, length)),
            }
        }
        let threads = std::thread::available_parallelism().map_or(2, std::num::NonZero::get).min(8);
        let share = stale.len().div_ceil(threads).max(1);
        let read: Vec<Entry> = std::thread::scope(|scope| {
            let work: Vec<_> = stale
                .chunks(share)
                .map(|part| scope.spawn(move || part.iter().filter_map(|s| entry(root, s)).collect::<Vec<_>>()))
                .collect();
            work.into_iter().flat_map(|thread| thread.join().unwrap_or_default()).collect()
        });
        found.extend(read);
        self.known = found.iter().map(|entry| (entry.name.clone(), entry.clone())).collect();
        found.sort_by(|a, b| b.changed.cmp(&a.changed).then_with(|| a.name.cmp(&b.name)));
        Ok(found)
    }
}

fn entry(root: &Path, (name, changed, length): &(Name, Option<SystemTime>, u64)) -> Option<Entry> {
    let text = disk::read(&root.join(format!("{name}.toml"))).ok()?;
    let mut entry = Entry {
        name: name.clone(),
        title: name.to_string(),
        version: Version::of(&text),
        open: Vec::new(),
        last_reading: None,
        readings: 0,
        readable: false,
        changed: *changed,
        length: *length,
    };
    match Job::read(&text) {
        Ok(read) => say(&mut entry, &read.job),
        // What cannot be judged is listed by what stands in it.
        Err(_) => say_unread(&mut entry, &text),
    }
    Some(entry)
}

/// What a job that reads says.
fn say(entry: &mut Entry, job: &Job) {
    entry.readable = true;
    if !job.title.trim().is_empty() {
        entry.title.clone_from(&job.title);
    }
    let known = [
        job.boat.kind.is_some(),
        job.boat.length_waterline.is_some(),
        job.boat.displacement.is_some(),
        job.engine.rated_power.is_some(),
        job.engine.rated_speed.is_some(),
        job.drive.reduction.is_some(),
        job.propeller.diameter.is_some(),
        job.propeller.pitch.is_some(),
    ];
    entry.open = MATTERS.into_iter().zip(known).filter(|(_, known)| !known).map(|(path, _)| path).collect();
    entry.readings = job.readings.len();
    entry.last_reading = job.readings.iter().filter_map(|reading| reading.date.clone()).max();
}

fn say_unread(entry: &mut Entry, text: &str) {
    let Ok(document) = job::Document::parse(text) else { return };
    let has = |path: &str| document.get(path).is_some();
    entry.open = MATTERS.into_iter().filter(|path| !has(path)).collect();
    let title = super::shown(&document, "title");
    if !title.trim().is_empty() {
        entry.title = title;
    }
    let keys = ["label", "date", "engine_speed", "speed", "full_throttle", "notes"];
    let count = (0..).take_while(|n| keys.iter().any(|k| has(&format!("reading.{n}.{k}")))).count();
    entry.readings = count;
    entry.last_reading =
        (0..count).map(|n| super::shown(&document, &format!("reading.{n}.date"))).filter(|d| !d.is_empty()).max();
}
