//! A server on a free port, and a small client.

use std::io::{Read as _, Write as _};
use std::net::TcpStream;
use std::path::Path;
use std::time::Duration;

use workbench::server::{self, Listen};
use workbench::store::Folder;

pub struct Bench {
    pub at: String,
    pub folder: tempfile::TempDir,
    stop: Option<tokio::sync::oneshot::Sender<()>>,
    thread: Option<std::thread::JoinHandle<()>>,
}

pub struct Answer {
    pub status: u16,
    pub head: String,
    pub body: String,
}

impl Answer {
    pub fn header(&self, name: &str) -> Option<&str> {
        self.head.lines().find_map(|line| {
            let (key, value) = line.split_once(':')?;
            key.eq_ignore_ascii_case(name).then_some(value.trim())
        })
    }
}

pub fn demo(name: &str) -> String {
    let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).expect("a demo")
}

impl Bench {
    pub fn new() -> Bench {
        Bench::with(Duration::from_secs(30), |folder| {
            std::fs::write(folder.join("kittiwake.toml"), demo("kittiwake")).expect("written");
        })
    }

    pub fn with(patience: Duration, fill: impl FnOnce(&Path)) -> Bench {
        let folder = tempfile::tempdir().expect("a folder");
        fill(folder.path());
        let store = Folder::open(folder.path()).expect("opens");
        let options = counsel::Options { boats: 200, seed: 1 };
        let mut bound = server::bind(store, Listen::default(), options).expect("a free port");
        bound.patience = patience;
        let at = bound.address.trim_start_matches("http://").trim_end_matches('/').to_owned();
        let (stop, stopped) = tokio::sync::oneshot::channel::<()>();
        let thread = std::thread::spawn(move || {
            let runtime =
                tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build().expect("a runtime");
            runtime.block_on(async move {
                tokio::select! {
                    served = bound.serve(std::future::pending()) => served.expect("serves"),
                    _ = stopped => {}
                }
            });
            runtime.shutdown_timeout(Duration::from_secs(1));
        });
        Bench { at, folder, stop: Some(stop), thread: Some(thread) }
    }

    pub fn raw(&self, request: &[u8]) -> Answer {
        let mut stream = TcpStream::connect(&self.at).expect("connects");
        stream.set_read_timeout(Some(Duration::from_secs(60))).expect("set");
        // A server may refuse before it has read everything.
        let _ = stream.write_all(request);
        let mut all = Vec::new();
        let _ = stream.read_to_end(&mut all);
        let all = String::from_utf8_lossy(&all).into_owned();
        let (head, body) = all.split_once("\r\n\r\n").unwrap_or((&all, ""));
        let status = head.split(' ').nth(1).and_then(|s| s.parse().ok()).unwrap_or(0);
        Answer { status, head: head.to_owned(), body: body.to_owned() }
    }

    pub fn get(&self, path: &str) -> Answer {
        self.raw(format!("GET {path} HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n", self.at).as_bytes())
    }

    pub fn post(&self, path: &str, fields: &[(&str, &str)], headers: &str) -> Answer {
        let pairs: Vec<String> = fields.iter().map(|(k, v)| format!("{}={}", escape(k), escape(v))).collect();
        let body = pairs.join("&");
        let request = format!(
            "POST {path} HTTP/1.1\r\nHost: {}\r\nConnection: close\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {}\r\n{headers}\r\n{body}",
            self.at,
            body.len()
        );
        self.raw(request.as_bytes())
    }

    /// Saves one field as the script does.
    pub fn set(&self, base: &str, path: &str, was: &str, now: &str) -> Answer {
        let (was_key, now_key) = (format!("w:{path}"), format!("v:{path}"));
        let fields = [("base", base), (was_key.as_str(), was), (now_key.as_str(), now)];
        self.post("/jobs/kittiwake/set", &fields, "Accept: application/json\r\n")
    }

    pub fn version(&self) -> String {
        let page = self.get("/jobs/kittiwake").body;
        let from = page.find("data-version=\"").expect("a version") + 14;
        page[from..from + 16].to_owned()
    }

    pub fn file(&self) -> String {
        std::fs::read_to_string(self.folder.path().join("kittiwake.toml")).expect("there")
    }
}

impl Drop for Bench {
    fn drop(&mut self) {
        drop(self.stop.take());
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

fn escape(text: &str) -> String {
    text.bytes()
        .map(|b| if b.is_ascii_alphanumeric() { char::from(b).to_string() } else { format!("%{b:02X}") })
        .collect()
}
