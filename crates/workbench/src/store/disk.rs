//! Files in one step: a crash leaves either the old one or the new one.

use std::fs::{self, File};
use std::io::{self, Read as _, Write as _};
use std::path::Path;

/// Longest job file read, bytes.
pub const LONGEST: u64 = 1 << 20;

/// The text of a plain file; links are not followed, long files and bytes that are no text refused.
///
/// # Errors
/// What the system said, or why it is not taken.
pub fn read(file: &Path) -> io::Result<String> {
    let about = fs::symlink_metadata(file)?;
    if !about.is_file() {
        return Err(io::Error::new(io::ErrorKind::NotFound, "not a plain file"));
    }
    if about.len() > LONGEST {
        return Err(io::Error::new(io::ErrorKind::InvalidData, "too long for a job file"));
    }
    let mut text = String::new();
    File::open(file)?.take(LONGEST + 1).read_to_string(&mut text)?;
    Ok(text)
}

/// Writes a file in the place of one that may be there, through to the disk.
///
/// # Errors
/// What the system said.
pub fn replace(file: &Path, text: &str) -> io::Result<()> {
    replace_bytes(file, text.as_bytes())
}

/// The same for what need not be text.
///
/// # Errors
/// What the system said.
pub fn replace_bytes(file: &Path, bytes: &[u8]) -> io::Result<()> {
    let permissions = fs::symlink_metadata(file).ok().filter(fs::Metadata::is_file).map(|about| about.permissions());
    if permissions.as_ref().is_some_and(fs::Permissions::readonly) {
        return Err(io::ErrorKind::PermissionDenied.into());
    }
    let new = beside(file, bytes, permissions)?;
    new.persist(file).map_err(|error| error.error)?;
    settle(file)
}

/// Writes a file that must not be there yet.
///
/// # Errors
/// What the system said; `AlreadyExists` where there is one.
pub fn create(file: &Path, text: &str) -> io::Result<()> {
    beside(file, text.as_bytes(), None)?.persist_noclobber(file).map_err(|error| error.error)?;
    settle(file)
}

fn beside(file: &Path, bytes: &[u8], permissions: Option<fs::Permissions>) -> io::Result<tempfile::NamedTempFile> {
    let folder = file.parent().ok_or(io::ErrorKind::NotFound)?;
    let mut builder = tempfile::Builder::new();
    builder.prefix(".saving-");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // Ordinary permissions, less what the user's mask takes away: temporary files are private by default.
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    let mut new = builder.tempfile_in(folder)?;
    new.write_all(bytes)?;
    if let Some(permissions) = permissions {
        new.as_file().set_permissions(permissions)?;
    }
    new.as_file().sync_all()?;
    Ok(new)
}

/// The name has to reach the disk too.
fn settle(file: &Path) -> io::Result<()> {
    #[cfg(unix)]
    if let Some(folder) = file.parent() {
        File::open(folder)?.sync_all()?;
    }
    #[cfg(not(unix))]
    let _ = file;
    Ok(())
}
