//! The page as a person uses it, in headless Chromium: `crates/workbench/browser`, against a server of a copy of the examples.

use std::fs;
use std::io::{BufRead as _, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc;
use std::time::{Duration, Instant};

use crate::run;

/// Longest time for one script; a script that hangs is ended. On a machine with nothing else to do it takes well under a minute;
/// beside other builds many times that, which is no fault of the page.
const PATIENCE: Duration = Duration::from_secs(300);
/// Longest time for packages to come.
const FETCHING: Duration = Duration::from_secs(600);

/// The scripts, each run against a server of its own.
const SCRIPTS: [&str; 3] = ["flow.mjs", "views.mjs", "crash.mjs"];

/// Whether the tests can be run here, after what is missing was installed where that may be done.
pub enum Ready {
    /// With this browser.
    Yes(PathBuf),
    /// What is missing, and how it is had.
    No(String),
}

fn answers(program: &str) -> bool {
    let mut command = Command::new(program);
    command.arg("--version").stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
    command.status().is_ok_and(|status| status.success())
}

/// A browser: the one named by `CHROMIUM`, else one of the system's.
fn chromium() -> Option<PathBuf> {
    let named = std::env::var_os("CHROMIUM").map(PathBuf::from);
    let usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].map(PathBuf::from);
    named.into_iter().chain(usual).find(|path| path.is_file())
}

/// Installs Debian packages, where one may.
fn install(packages: &[&str]) -> bool {
    let quietly = |arguments: &[&str]| {
        let mut command = Command::new("apt-get");
        command.args(arguments).env("DEBIAN_FRONTEND", "noninteractive");
        bounded(command.stdout(Stdio::null()).stderr(Stdio::null()), FETCHING).is_ok()
    };
    let mut arguments = vec!["install", "--yes", "--no-install-recommends"];
    arguments.extend(packages);
    quietly(&["update"]) && quietly(&arguments)
}

/// Sees to browser, node and the two packages of the tests.
pub fn ready() -> Ready {
    let mut missing = Vec::new();
    if chromium().is_none() {
        missing.push("chromium");
    }
    if !answers("node") {
        missing.push("nodejs");
    }
    if !answers("npm") {
        missing.push("npm");
    }
    if !missing.is_empty() {
        println!("installing {} for the browser tests", missing.join(", "));
        // Only the one who looks after the machine may install; elsewhere apt-get refuses.
        let _ = install(&missing);
    }
    let Some(browser) = chromium() else { return Ready::No(how(&missing)) };
    if !answers("node") || !answers("npm") {
        return Ready::No(how(&missing));
    }
    let folder = folder();
    if !modules_are_there(&folder) {
        let mut npm = Command::new("npm");
        npm.args(["ci", "--no-audit", "--no-fund", "--ignore-scripts", "--loglevel=error"]).current_dir(&folder);
        if let Err(why) = bounded(&mut npm, FETCHING) {
            return Ready::No(format!("npm ci in {} failed ({why}): is the npm registry reached?", folder.display()));
        }
    }
    Ready::Yes(browser)
}

/// Whether packages may be installed here.
pub fn may_install() -> bool {
    let id = Command::new("id").arg("-u").stderr(Stdio::null()).output();
    id.is_ok_and(|said| said.stdout.trim_ascii() == b"0") && answers("apt-get")
}

fn how(missing: &[&str]) -> String {
    format!(
        "missing: {0}. Install them as root (apt-get install {0}), or name a Chromium by the variable CHROMIUM",
        missing.join(" ")
    )
}

fn folder() -> PathBuf {
    run::root().join("crates/workbench/browser")
}

/// Whether what the lock file names was installed: npm writes a copy of it beside the packages.
fn modules_are_there(folder: &Path) -> bool {
    let changed = |file: PathBuf| fs::metadata(file).and_then(|about| about.modified()).ok();
    let (wanted, there) = (folder.join("package-lock.json"), folder.join("node_modules/.package-lock.json"));
    changed(there).zip(changed(wanted)).is_some_and(|(there, wanted)| there >= wanted)
}

/// Runs a program to its end, or ends it when its time is up.
fn bounded(command: &mut Command, most: Duration) -> Result<(), String> {
    let mut child = command.stdin(Stdio::null()).spawn().map_err(|error| error.to_string())?;
    let start = Instant::now();
    loop {
        match child.try_wait() {
            Ok(Some(status)) if status.success() => return Ok(()),
            Ok(Some(status)) => return Err(status.to_string()),
            Ok(None) if start.elapsed() < most => std::thread::sleep(Duration::from_millis(50)),
            Ok(None) => {
                end(&mut child);
                return Err(format!("not done after {} s: ended", most.as_secs()));
            }
            Err(error) => return Err(error.to_string()),
        }
    }
}

fn end(child: &mut Child) {
    let _ = child.kill();
    let _ = child.wait();
}

/// A server of a folder, ended with this value.
struct Server {
    child: Child,
    address: String,
}

impl Server {
    fn start(program: &Path, jobs: &Path) -> Result<Server, String> {
        let mut child = Command::new(program)
            .arg("workbench")
            .arg(jobs)
            .args(["--no-browser", "--boats", "400"])
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .map_err(|error| format!("{} does not start: {error}", program.display()))?;
        let (tell, told) = mpsc::channel();
        if let Some(out) = child.stdout.take() {
            std::thread::spawn(move || {
                let _ = BufReader::new(out).lines().next().map(|line| tell.send(line));
            });
        }
        match told.recv_timeout(Duration::from_secs(20)) {
            Ok(Ok(line)) => Ok(Server { child, address: line.trim().trim_end_matches('/').to_owned() }),
            _ => {
                end(&mut child);
                Err("the server printed no address within 20 s".to_owned())
            }
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        end(&mut self.child);
    }
}

/// A copy of the demo jobs that goes when it is done with.
struct Copy(PathBuf);

impl Copy {
    fn of_the_examples(name: &str) -> std::io::Result<Copy> {
        let to = std::env::temp_dir().join(format!("fairwake-browser-{}-{name}", std::process::id()));
        fs::create_dir_all(&to)?;
        for folder in ["examples", "examples/survey"] {
            for entry in fs::read_dir(run::root().join(folder))?.flatten() {
                let path = entry.path();
                if path.extension().is_some_and(|ending| ending == "toml") {
                    fs::copy(&path, to.join(entry.file_name()))?;
                }
            }
        }
        Ok(Copy(to))
    }
}

impl Drop for Copy {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// Runs the scripts.
pub fn all(browser: &Path) -> Vec<Result<(), String>> {
    let program = match program() {
        Ok(program) => program,
        Err(why) => return vec![Err(why)],
    };
    // Beside each other: each mostly waits for its own server.
    std::thread::scope(|scope| {
        let work = SCRIPTS.map(|script| {
            let program = &program;
            scope.spawn(move || one(script, program, browser).map_err(|why| format!("{script}: {why}")))
        });
        work.into_iter()
            .map(|thread| thread.join().unwrap_or_else(|_| Err("the task itself failed".to_owned())))
            .collect()
    })
}

fn one(script: &str, program: &Path, browser: &Path) -> Result<(), String> {
    let jobs = Copy::of_the_examples(script).map_err(|error| format!("the examples cannot be copied: {error}"))?;
    let server = Server::start(program, &jobs.0)?;
    let mut node = Command::new("node");
    node.arg(script)
        .arg(&server.address)
        .current_dir(folder())
        .env("CHROMIUM", browser)
        // For the script that ends a server amid its saves and starts it again.
        .env("FAIRWAKE", program)
        .env("FAIRWAKE_JOBS", &jobs.0);
    bounded(&mut node, PATIENCE)
}

/// The program as the tests built it, or the one named by `FAIRWAKE`. Built by itself it would have other features of its
/// dependencies, and all of them would be built again.
fn program() -> Result<PathBuf, String> {
    if let Some(named) = std::env::var_os("FAIRWAKE").map(PathBuf::from) {
        return Ok(named);
    }
    let mut arguments = vec!["test", "--workspace", "--no-run", "--quiet", "--message-format", "json"];
    arguments.extend(crate::test::FEATURES);
    run::output(&arguments)?.lines().find_map(executable).ok_or_else(|| "the build names no program".to_owned())
}

/// Where cargo put the program, if this message says so.
fn executable(line: &str) -> Option<PathBuf> {
    let message: serde_json::Value = serde_json::from_str(line).ok()?;
    let ours = message["target"]["name"] == "fairwake" && message["target"]["kind"][0] == "bin";
    let tests = message["profile"]["test"] == true;
    message["executable"].as_str().filter(|_| ours && !tests).map(PathBuf::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_hangs_is_ended_in_its_time() {
        let start = Instant::now();
        let ended = bounded(Command::new("sleep").arg("60"), Duration::from_millis(200));
        assert!(ended.is_err_and(|why| why.contains("ended")) && start.elapsed() < Duration::from_secs(5));
        assert!(bounded(&mut Command::new("true"), Duration::from_secs(5)).is_ok());
        assert!(bounded(&mut Command::new("false"), Duration::from_secs(5)).is_err());
    }

    #[test]
    fn what_is_missing_is_said_with_the_way_to_get_it() {
        assert!(how(&["chromium", "nodejs"]).contains("apt-get install chromium nodejs"));
    }

    #[test]
    fn the_program_is_told_from_its_tests() {
        let line = |test: bool| {
            format!(
                r#"{{"reason":"compiler-artifact","target":{{"name":"fairwake","kind":["bin"]}},"profile":{{"test":{test}}},"executable":"/t/fairwake"}}"#
            )
        };
        assert_eq!(executable(&line(false)), Some(PathBuf::from("/t/fairwake")));
        assert_eq!(executable(&line(true)), None);
        assert_eq!(executable("not json"), None);
    }
}
