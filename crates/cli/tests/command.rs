//! Running the program.

use std::path::{Path, PathBuf};

use assert_cmd::Command;

/// The root of the workspace.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// The program, run at the root of the workspace, without any wish about colour from outside.
pub fn fairwake(arguments: &[&str]) -> Command {
    let mut command = Command::cargo_bin("fairwake").expect("the program is built with its tests");
    command.current_dir(root()).args(arguments);
    for name in ["NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE"] {
        command.env_remove(name);
    }
    command
}

/// Exit code, standard output and standard error, as one text for a snapshot.
pub fn said(command: &mut Command) -> String {
    let output = command.output().expect("the program starts");
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).expect("the program writes UTF-8");
    let (out, err) = (text(&output.stdout), text(&output.stderr));
    for line in out.lines().chain(err.lines()) {
        assert!(!line.contains("panicked"), "{err}");
    }
    let code = output.status.code().map_or("none".to_owned(), |code| code.to_string());
    format!("code {code}\n--- out\n{out}--- err\n{err}")
}

/// Standard output of a command that must succeed.
pub fn out(arguments: &[&str]) -> String {
    let assert = fairwake(arguments).assert().success();
    String::from_utf8(assert.get_output().stdout.clone()).expect("the program writes UTF-8")
}

/// The JSON answer of a command that must succeed.
pub fn json(arguments: &[&str]) -> serde_json::Value {
    let mut all = arguments.to_vec();
    all.extend(["--format", "json"]);
    serde_json::from_str(&out(&all)).expect("the answer is JSON")
}
