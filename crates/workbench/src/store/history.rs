//! The earlier states of a job, each a file of its own in a hidden folder beside: `.fairwake/history/<job>/`.

use super::{Name, Version, disk};
use std::io;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

/// One state.
#[derive(Clone, Debug)]
pub struct State {
    /// Which in order.
    pub number: u64,
    /// What its text is.
    pub version: Version,
    /// The state it brought back, if it is an undo.
    pub of: Option<u64>,
    /// When.
    pub when: Option<SystemTime>,
    file: PathBuf,
}

impl State {
    /// Its text.
    ///
    /// # Errors
    /// What the system said.
    pub fn text(&self) -> io::Result<String> {
        disk::read(&self.file)
    }
}

/// The states of one job.
pub struct History {
    folder: PathBuf,
}

impl History {
    /// Of a job.
    #[must_use]
    pub fn of(hidden: &Path, name: &Name) -> History {
        History { folder: hidden.join("history").join(name.as_str()) }
    }

    /// All states, oldest first.
    #[must_use]
    pub fn states(&self) -> Vec<State> {
        let Ok(entries) = std::fs::read_dir(&self.folder) else { return Vec::new() };
        let mut states: Vec<State> = entries
            .flatten()
            .filter_map(|entry| {
                let name = entry.file_name().into_string().ok()?;
                let mut parts = name.strip_suffix(".toml")?.split('.');
                let number = parts.next()?.parse().ok()?;
                let version = Version::of_text(parts.next()?)?;
                let of = parts.next().and_then(|of| of.strip_prefix("of")?.parse().ok());
                let when = entry.metadata().ok().and_then(|about| about.modified().ok());
                Some(State { number, version, of, when, file: entry.path() })
            })
            .collect();
        states.sort_by_key(|state| state.number);
        states
    }

    /// Keeps a state, unless it is the last one kept already.
    ///
    /// # Errors
    /// What the system said.
    pub fn keep(&self, text: &str, of: Option<u64>) -> io::Result<()> {
        let version = Version::of(text);
        let states = self.states();
        let last = states.last();
        if of.is_none() && last.is_some_and(|state| state.version == version) {
            return Ok(());
        }
        std::fs::create_dir_all(&self.folder)?;
        let number = last.map_or(1, |state| state.number + 1);
        let of = of.map(|of| format!(".of{of:08}")).unwrap_or_default();
        disk::create(&self.folder.join(format!("{number:08}.{version}{of}.toml")), text)
    }

    /// The state before the one that stands now: what undo brings back.
    #[must_use]
    pub fn before(&self, now: Version) -> Option<State> {
        let states = self.states();
        let standing = states.iter().rev().find(|state| state.version == now)?;
        let at = standing.of.unwrap_or(standing.number);
        states.iter().rev().find(|state| state.number < at && state.of.is_none() && state.version != now).cloned()
    }

    /// The text of a version.
    #[must_use]
    pub fn text(&self, version: Version) -> Option<String> {
        self.states().iter().rev().find(|state| state.version == version)?.text().ok()
    }
}
