//! The local page, as a program that can be killed.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};

struct Server {
    child: Child,
    at: String,
}

fn serve(folder: &Path) -> Server {
    let mut child = Command::new(env!("CARGO_BIN_EXE_fairwake"))
        .args(["workbench", "--no-browser"])
        .arg(folder)
        .stdout(Stdio::piped())
        .spawn()
        .expect("starts");
    let mut line = String::new();
    BufReader::new(child.stdout.take().expect("piped")).read_line(&mut line).expect("an address");
    let at = line.trim().trim_start_matches("http://").trim_end_matches('/').to_owned();
    Server { child, at }
}

impl Drop for Server {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Saves a note; `true` when the server said that it was saved.
fn save(at: &str, was: &str, now: &str) -> bool {
    let body = format!("w%3Acall.notes={was}&v%3Acall.notes={now}");
    let request = format!(
        "POST /jobs/tern/set HTTP/1.1\r\nHost: {at}\r\nConnection: close\r\nAccept: application/json\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {}\r\n\r\n{body}",
        body.len()
    );
    let Ok(mut stream) = TcpStream::connect(at) else { return false };
    let mut answer = String::new();
    stream.write_all(request.as_bytes()).is_ok()
        && stream.read_to_string(&mut answer).is_ok()
        && answer.starts_with("HTTP/1.1 200")
}

#[test]
fn a_server_killed_amid_two_hundred_saves_loses_nothing_it_acknowledged() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("tern.toml");
    std::fs::write(&file, "title = \"Tern\" # hers\n[call]\nnotes = \"n0\"\n").expect("written");
    let mut last = 0;
    // Killed at four places of the two hundred, each time at another moment of a save.
    for (round, end) in [50, 100, 150, 200].into_iter().enumerate() {
        let mut server = serve(folder.path());
        let at = server.at.clone();
        let from = last;
        let (told, heard) = std::sync::mpsc::channel();
        let saving = std::thread::spawn(move || {
            for n in from + 1..=end + 50 {
                if !save(&at, &format!("n{}", n - 1), &format!("n{n}")) {
                    return;
                }
                if told.send(n).is_err() {
                    return;
                }
            }
        });
        for n in heard.iter() {
            last = n;
            if n >= end {
                break;
            }
        }
        std::thread::sleep(std::time::Duration::from_micros(700 * round as u64));
        server.child.kill().expect("killed");
        server.child.wait().expect("gone");
        saving.join().expect("ends");
        last = heard.try_iter().last().unwrap_or(last);
        assert!(last >= end, "{last}");
        let text = std::fs::read_to_string(&file).expect("there");
        job::Job::read(&text).expect("whole");
        // The save under way may have reached the disk without its answer reaching us.
        let standing =
            (last..=last + 1).find(|n| text == format!("title = \"Tern\" # hers\n[call]\nnotes = \"n{n}\"\n"));
        last = standing.unwrap_or_else(|| panic!("n{last} was acknowledged: {text}"));
    }
    let kept = std::fs::read_dir(folder.path().join(".fairwake/history/tern")).expect("a history").count();
    assert!(kept > 200, "{kept} states");
}

#[test]
fn a_network_is_served_only_with_the_token() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut child = Command::new(env!("CARGO_BIN_EXE_fairwake"))
        .args(["workbench", "--no-browser", "--host", "0.0.0.0"])
        .arg(folder.path())
        .stdout(Stdio::piped())
        .spawn()
        .expect("starts");
    let mut line = String::new();
    BufReader::new(child.stdout.take().expect("piped")).read_line(&mut line).expect("an address");
    let server = Server { child, at: line.trim().to_owned() };
    let (address, token) = server.at.split_once("/?token=").expect("a token");
    let port = address.rsplit(':').next().expect("a port");
    let ask = |path: &str, cookie: &str| {
        let mut stream = TcpStream::connect(format!("127.0.0.1:{port}")).expect("connects");
        let request = format!("GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nConnection: close\r\n{cookie}\r\n");
        stream.write_all(request.as_bytes()).expect("written");
        let mut answer = String::new();
        stream.read_to_string(&mut answer).expect("an answer");
        answer
    };
    assert!(ask("/", "").starts_with("HTTP/1.1 401"));
    assert!(ask("/?token=0", "").starts_with("HTTP/1.1 401"));
    let first = ask(&format!("/?token={token}"), "");
    assert!(first.starts_with("HTTP/1.1 303") && first.contains("HttpOnly; SameSite=Strict"), "{first}");
    assert!(ask("/", &format!("Cookie: fairwake-token={token}\r\n")).starts_with("HTTP/1.1 200"));
}
