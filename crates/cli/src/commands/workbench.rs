//! `fairwake workbench`: the local page.

use std::io::Write as _;
use std::path::Path;

use workbench::server::{self, Listen};
use workbench::store::Folder;

use crate::args::{Common, WorkbenchArgs};
use crate::failure::{Failure, shown};

/// Serves until interrupted.
pub fn run(args: &WorkbenchArgs, common: &Common) -> Result<(), Failure> {
    let folder = Folder::open(&args.folder).map_err(|cause| Failure::Asked {
        what: format!("cannot open the folder {}: {cause}", shown(&args.folder)),
        instead: "name a folder of job files; an empty one will do".to_owned(),
    })?;
    let options = counsel::Options { boats: common.boats as usize, seed: common.seed };
    let root = shown(folder.root());
    let bound =
        server::bind(folder, Listen { host: args.host, port: args.port }, options).map_err(|cause| Failure::Asked {
            what: format!("cannot listen: {cause}"),
            instead: "leave --port out to take any free one".to_owned(),
        })?;
    let mut out = std::io::stdout();
    // In one piece: whoever reads the address may not wait for the rest, and the server must not end for that.
    let told = format!("{}\nJobs in {root}. Ctrl-C ends.\n", bound.address);
    out.write_all(told.as_bytes()).map_err(Failure::Stream)?;
    out.flush().map_err(Failure::Stream)?;
    if !args.no_browser {
        open(&bound.address);
    }
    bound.run().map_err(Failure::Stream)
}

/// Opens the page; where there is no browser the address stands on the terminal.
fn open(address: &str) {
    let (program, first): (&str, &[&str]) = if cfg!(target_os = "macos") {
        ("open", &[])
    } else if cfg!(windows) {
        ("rundll32", &["url.dll,FileProtocolHandler"])
    } else if Path::new("/usr/bin/xdg-open").exists() {
        ("xdg-open", &[])
    } else {
        return;
    };
    use std::process::Stdio;
    let quiet = std::process::Command::new(program)
        .args(first)
        .arg(address)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn();
    // Without a browser the address is there to be opened by hand.
    let _ = quiet;
}
