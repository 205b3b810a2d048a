//! Writing a file in one step: a crash leaves either the old one or the new one.

use std::fs::{self, Permissions};
use std::io::{self, Write as _};
use std::path::Path;

use crate::failure::Failure;

/// Writes a file that must not be there yet.
pub fn new(file: &Path, text: &str) -> Result<(), Failure> {
    let fail = |cause: io::Error| Failure::Write { file: file.to_owned(), cause };
    let written = beside(file, text, None).map_err(fail)?;
    written.persist_noclobber(file).map(drop).map_err(|error| match error.error.kind() {
        io::ErrorKind::AlreadyExists => Failure::Exists(file.to_owned()),
        _ => fail(error.error),
    })
}

/// Writes a file, in the place of one that may be there. A link stays a link; who may read the file stays as it was.
pub fn replacing(file: &Path, text: &str) -> Result<(), Failure> {
    let fail = |cause: io::Error| Failure::Write { file: file.to_owned(), cause };
    let target = fs::canonicalize(file).unwrap_or_else(|_| file.to_owned());
    let permissions = fs::metadata(&target).map(|about| about.permissions()).ok();
    if permissions.as_ref().is_some_and(Permissions::readonly) {
        return Err(fail(io::ErrorKind::PermissionDenied.into()));
    }
    let written = beside(&target, text, permissions).map_err(fail)?;
    written.persist(&target).map(drop).map_err(|error| fail(error.error))
}

/// A temporary file in the same folder, written through to the disk.
fn beside(file: &Path, text: &str, permissions: Option<Permissions>) -> io::Result<tempfile::NamedTempFile> {
    let folder = file.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // Ordinary permissions, less what the user's mask takes away: temporary files are private by default.
        builder.permissions(Permissions::from_mode(0o666));
    }
    let mut new = builder.tempfile_in(folder)?;
    new.write_all(text.as_bytes())?;
    if let Some(permissions) = permissions {
        new.as_file().set_permissions(permissions)?;
    }
    new.as_file().sync_all()?;
    Ok(new)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn replaces_in_place_and_never_by_accident() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let file = folder.path().join("boat.toml");
        new(&file, "one").expect("written");
        assert!(matches!(new(&file, "two"), Err(Failure::Exists(_))));
        assert_eq!(fs::read_to_string(&file).expect("there"), "one");
        replacing(&file, "three").expect("replaced");
        assert_eq!(fs::read_to_string(&file).expect("there"), "three");
        assert_eq!(fs::read_dir(folder.path()).expect("a folder").count(), 1, "a temporary file was left behind");
    }

    #[cfg(unix)]
    #[test]
    fn links_and_permissions_stay() {
        use std::os::unix::fs::{PermissionsExt as _, symlink};
        let folder = tempfile::tempdir().expect("a temporary folder");
        let (file, link) = (folder.path().join("boat.toml"), folder.path().join("link.toml"));
        fs::write(&file, "one").expect("written");
        fs::set_permissions(&file, Permissions::from_mode(0o640)).expect("set");
        symlink(&file, &link).expect("linked");
        replacing(&link, "two").expect("replaced");
        assert!(fs::symlink_metadata(&link).expect("there").file_type().is_symlink());
        assert_eq!(fs::read_to_string(&file).expect("there"), "two");
        assert_eq!(fs::metadata(&file).expect("there").permissions().mode() & 0o777, 0o640);
        fs::set_permissions(&file, Permissions::from_mode(0o440)).expect("set");
        assert!(matches!(replacing(&file, "three"), Err(Failure::Write { .. })), "read-only is meant");
    }
}
