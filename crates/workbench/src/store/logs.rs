//! Trial logs brought to a job, kept as they came beside it: `.fairwake/logs/<job>/`.

use super::{Folder, Name, Version, disk};
use std::io;
use std::path::PathBuf;
use std::time::SystemTime;

/// Logs kept of one job; of more the oldest go.
pub const KEPT: usize = 12;

/// Longest name of a file that is kept, bytes.
const LONGEST: usize = 120;

/// A log kept.
#[derive(Clone, Debug)]
pub struct Kept {
    /// Names it in addresses: made of its content.
    pub id: String,
    /// As the file was called.
    pub name: String,
    /// When it came.
    pub when: Option<SystemTime>,
    file: PathBuf,
}

impl Kept {
    /// Its bytes.
    ///
    /// # Errors
    /// What the system said.
    pub fn bytes(&self) -> io::Result<Vec<u8>> {
        std::fs::read(&self.file)
    }
}

/// A file's own name without what a file system or a page could stumble over.
fn plain(name: &str) -> String {
    let last = name.rsplit(['/', '\\']).next().unwrap_or_default();
    let mut kept = String::new();
    for c in last.chars() {
        let c = if c.is_alphanumeric() || " ._-()".contains(c) { c } else { '-' };
        if kept.len() + c.len_utf8() > LONGEST {
            break;
        }
        kept.push(c);
    }
    let kept = kept.trim_matches(['.', ' ']).to_owned();
    if kept.is_empty() { "log".to_owned() } else { kept }
}

impl Folder {
    /// The logs kept of a job, the last one first.
    #[must_use]
    pub fn logs(&self, name: &Name) -> Vec<Kept> {
        let Ok(entries) = std::fs::read_dir(self.log_folder(name)) else { return Vec::new() };
        let mut kept: Vec<Kept> = entries
            .flatten()
            .filter_map(|entry| {
                let about = entry.metadata().ok().filter(std::fs::Metadata::is_file)?;
                let file = entry.file_name().into_string().ok()?;
                let (id, name) = file.split_once('.')?;
                Version::of_text(id).filter(|_| id.len() == 16)?;
                let when = about.modified().ok();
                Some(Kept { id: id.to_owned(), name: name.to_owned(), when, file: entry.path() })
            })
            .collect();
        kept.sort_by(|a, b| b.when.cmp(&a.when).then_with(|| a.id.cmp(&b.id)));
        kept
    }

    /// Keeps a log, and gives what names it.
    ///
    /// # Errors
    /// What the system said.
    pub fn keep_log(&self, name: &Name, called: &str, bytes: &[u8]) -> io::Result<String> {
        let _held = self.hold();
        let id = Version::of_bytes(bytes).to_string();
        let folder = self.log_folder(name);
        std::fs::create_dir_all(&folder)?;
        // The same log again is the same log, whatever it is called now.
        for kept in self.logs(name).iter().filter(|kept| kept.id == id) {
            std::fs::remove_file(&kept.file)?;
        }
        disk::replace_bytes(&folder.join(format!("{id}.{}", plain(called))), bytes)?;
        for old in self.logs(name).iter().skip(KEPT).filter(|old| old.id != id) {
            std::fs::remove_file(&old.file)?;
        }
        Ok(id)
    }

    /// Puts in the place of a job's text what `work` makes of it, keeping both states. `None` when `work` refuses.
    ///
    /// # Errors
    /// What the system said.
    pub fn rewrite<E>(
        &self,
        name: &Name,
        work: impl FnOnce(&str) -> Result<String, E>,
    ) -> io::Result<Result<Version, E>> {
        let _held = self.hold();
        let text = self.read(name)?;
        let new = match work(&text) {
            Ok(new) => new,
            Err(refused) => return Ok(Err(refused)),
        };
        if new != text {
            self.put(name, &text, &new, None)?;
        }
        Ok(Ok(Version::of(&new)))
    }

    fn log_folder(&self, name: &Name) -> PathBuf {
        self.hidden().join("logs").join(name.as_str())
    }
}

#[cfg(test)]
mod tests {
    use super::plain;

    #[test]
    fn a_files_name_stays_within_its_folder() {
        assert_eq!(plain("../../etc/passwd"), "passwd");
        assert_eq!(plain("C:\\logs\\run 1.gpx"), "run 1.gpx");
        assert_eq!(plain("<script>\u{202e}.csv"), "-script--.csv");
        assert_eq!(plain(".."), "log");
        assert_eq!(plain(&"é".repeat(300)).len(), 120);
    }
}
