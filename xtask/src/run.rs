//! Running cargo.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The root of the workspace.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().map(Path::to_owned).unwrap_or_default()
}

/// Cargo, at the root.
pub fn command(arguments: &[&str]) -> Command {
    let mut cargo = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    cargo.current_dir(root()).args(arguments);
    cargo
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
