//! Running cargo.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The root of the workspace.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().map(Path::to_owned).unwrap_or_default()
}

/// Cargo, at the root. Where nobody says where to build, it builds in a cache outside the clone, so that a fresh clone does not
/// build the typesetting library again.
pub fn command(arguments: &[&str]) -> Command {
    let mut cargo = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    cargo.current_dir(root()).args(arguments);
    if let Some(folder) = cache() {
        cargo.env("CARGO_TARGET_DIR", folder);
    }
    cargo
}

/// The folder to build in: `fairwake/target` in the user's cache, when nothing else was said and it can be written. This
/// program itself stays where cargo built it.
pub fn cache() -> Option<PathBuf> {
    if ["CARGO_TARGET_DIR", "CARGO_BUILD_TARGET_DIR"].iter().any(|name| std::env::var_os(name).is_some()) {
        return None;
    }
    let home =
        || std::env::var_os("HOME").filter(|home| !home.is_empty()).map(|home| PathBuf::from(home).join(".cache"));
    let base = std::env::var_os("XDG_CACHE_HOME").map(PathBuf::from).filter(|path| path.is_absolute()).or_else(home)?;
    writable(&base.join("fairwake").join("target"))
}

/// The folder, made where it is not there, when it can be written.
fn writable(folder: &Path) -> Option<PathBuf> {
    std::fs::create_dir_all(folder).ok()?;
    let trial = folder.join(format!(".write-{}", std::process::id()));
    std::fs::write(&trial, b"").ok()?;
    let _ = std::fs::remove_file(&trial);
    Some(folder.to_owned())
}

/// Runs cargo with these arguments; its output is seen as it comes.
pub fn cargo(arguments: &[&str]) -> Result<(), String> {
    let status = command(arguments).status().map_err(|error| format!("cargo does not start: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("failed: cargo {}", arguments.join(" "))) }
}

/// Runs cargo and returns what it printed.
pub fn output(arguments: &[&str]) -> Result<String, String> {
    let output = command(arguments)
        .stderr(Stdio::inherit())
        .output()
        .map_err(|error| format!("cargo does not start: {error}"))?;
    if !output.status.success() {
        return Err(format!("failed: cargo {}", arguments.join(" ")));
    }
    String::from_utf8(output.stdout).map_err(|_| "what was printed is not text".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_folder_that_can_be_written_is_taken() {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml");
        assert_eq!(writable(&file.join("inside-a-file")), None);
        let folder = std::env::temp_dir().join(format!("fairwake-cache-{}", std::process::id()));
        assert_eq!(writable(&folder), Some(folder.clone()));
        let _ = std::fs::remove_dir_all(&folder);
    }
}
