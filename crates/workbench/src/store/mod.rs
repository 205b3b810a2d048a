//! A folder of job files. Every save is one step and goes by key: a change says which value it saw, so that two pages or
//! an outside editor merge where they touch different keys, and are asked where they touch the same.

pub mod disk;
mod edit;
mod history;
mod list;
mod logs;
mod name;

pub use edit::{Edit, Left, Saved, shown};
pub use history::State;
pub use list::Entry;
pub use logs::{KEPT as LOGS_KEPT, Kept};
pub use name::Name;

/// Answers put into a text that nobody else can be changing.
#[must_use]
pub fn apply_all(text: &str, edits: &[Edit]) -> Answered {
    let applied = apply(text, None, edits);
    Answered { text: applied.text, left: applied.left }
}

/// What came of [`apply_all`].
pub struct Answered {
    /// The text.
    pub text: String,
    /// What was not taken.
    pub left: Vec<Left>,
}

use edit::apply;
use history::History;
use list::Listing;
use std::collections::BTreeMap;
use std::fmt;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// What a text is, by its content.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Version(u64);

impl Version {
    /// Of a text (FNV-1a, 64 bit).
    #[must_use]
    pub fn of(text: &str) -> Version {
        Version::of_bytes(text.as_bytes())
    }

    /// Of bytes.
    #[must_use]
    pub fn of_bytes(bytes: &[u8]) -> Version {
        let hash = bytes.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
            (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
        });
        Version(hash)
    }

    /// As it was written down.
    #[must_use]
    pub fn of_text(text: &str) -> Option<Version> {
        u64::from_str_radix(text, 16).ok().map(Version)
    }
}

impl fmt::Display for Version {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

/// Values as they were entered that could not be saved, by path.
pub type Drafts = BTreeMap<String, Left>;

/// The folder.
pub struct Folder {
    root: PathBuf,
    saving: Mutex<()>,
    listing: Mutex<Listing>,
}

impl Folder {
    /// Opens a folder.
    ///
    /// # Errors
    /// When it is none.
    pub fn open(root: &Path) -> io::Result<Folder> {
        let root = root.canonicalize()?;
        if !root.is_dir() {
            return Err(io::Error::new(io::ErrorKind::NotADirectory, "not a folder"));
        }
        Ok(Folder { root, saving: Mutex::new(()), listing: Mutex::default() })
    }

    /// Where it is.
    #[must_use]
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The text of a job.
    ///
    /// # Errors
    /// What the system said.
    pub fn read(&self, name: &Name) -> io::Result<String> {
        disk::read(&self.file(name))
    }

    /// All jobs, the last changed first.
    ///
    /// # Errors
    /// What the system said.
    pub fn list(&self) -> io::Result<Vec<Entry>> {
        let mut listing = self.listing.lock().unwrap_or_else(PoisonError::into_inner);
        listing.refresh(&self.root)
    }

    /// Saves changes, made on a page that showed the state `base`.
    ///
    /// # Errors
    /// What the system said; then nothing was changed.
    pub fn save(&self, name: &Name, base: Option<Version>, edits: &[Edit]) -> io::Result<Saved> {
        let _held = self.hold();
        let text = self.read(name)?;
        let history = History::of(&self.hidden(), name);
        let seen = base.filter(|base| *base != Version::of(&text)).map(|base| history.text(base));
        let mut drafts = self.drafts(name);
        let before = drafts.clone();
        let applied = apply(&text, seen, edits);
        for edit in edits {
            drafts.remove(&edit.path);
        }
        for left in &applied.left {
            drafts.insert(left.path.clone(), left.clone());
        }
        // What was refused is safe before what was taken is told.
        if drafts != before {
            self.keep_drafts(name, &drafts)?;
        }
        if applied.text != text {
            self.put(name, &text, &applied.text, None)?;
        }
        Ok(Saved { version: Version::of(&applied.text), left: applied.left, merged: applied.merged })
    }

    /// Puts a whole text in the place of the job's, keeping both states.
    fn put(&self, name: &Name, old: &str, new: &str, of: Option<u64>) -> io::Result<()> {
        let history = History::of(&self.hidden(), name);
        history.keep(old, None)?;
        history.keep(new, of)?;
        disk::replace(&self.file(name), new)
    }

    /// Brings the state before back. `false` when there is none.
    ///
    /// # Errors
    /// What the system said.
    pub fn undo(&self, name: &Name) -> io::Result<bool> {
        let _held = self.hold();
        let text = self.read(name)?;
        let Some(state) = History::of(&self.hidden(), name).before(Version::of(&text)) else { return Ok(false) };
        self.put(name, &text, &state.text()?, Some(state.number))?;
        Ok(true)
    }

    /// Brings an earlier state back. `false` when there is no such state.
    ///
    /// # Errors
    /// What the system said.
    pub fn restore(&self, name: &Name, number: u64) -> io::Result<bool> {
        let _held = self.hold();
        let text = self.read(name)?;
        let Some(state) = self.states(name).into_iter().find(|state| state.number == number) else { return Ok(false) };
        self.put(name, &text, &state.text()?, None)?;
        Ok(true)
    }

    /// The states kept, oldest first.
    #[must_use]
    pub fn states(&self, name: &Name) -> Vec<State> {
        History::of(&self.hidden(), name).states()
    }

    /// Writes a new job, under this name or the next free one behind it.
    ///
    /// # Errors
    /// What the system said.
    pub fn add(&self, name: &Name, text: &str) -> io::Result<Name> {
        let _held = self.hold();
        let mut free = name.clone();
        let mut number = 1;
        loop {
            match disk::create(&self.file(&free), text) {
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists && number < 10_000 => {
                    number += 1;
                    free = name.numbered(number);
                }
                Err(error) => return Err(error),
                Ok(()) => return Ok(free),
            }
        }
    }

    /// What was entered and could not be saved.
    #[must_use]
    pub fn drafts(&self, name: &Name) -> Drafts {
        let text = disk::read(&self.draft_file(name)).unwrap_or_default();
        serde_json::from_str(&text).unwrap_or_default()
    }

    fn keep_drafts(&self, name: &Name, drafts: &Drafts) -> io::Result<()> {
        std::fs::create_dir_all(self.hidden().join("drafts"))?;
        let text = serde_json::to_string_pretty(drafts).map_err(io::Error::other)?;
        disk::replace(&self.draft_file(name), &text)
    }

    fn draft_file(&self, name: &Name) -> PathBuf {
        self.hidden().join("drafts").join(format!("{name}.json"))
    }

    fn file(&self, name: &Name) -> PathBuf {
        self.root.join(format!("{name}.toml"))
    }

    fn hidden(&self) -> PathBuf {
        self.root.join(".fairwake")
    }

    fn hold(&self) -> std::sync::MutexGuard<'_, ()> {
        self.saving.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
