//! A folder served for the browser tests: `cargo run -p workbench --example serve FOLDER [PORT]`. Prints its address.

use std::io::{Error, Write as _};
use std::path::Path;
use workbench::server::{Listen, bind};
use workbench::store::Folder;

fn main() -> std::io::Result<()> {
    let mut arguments = std::env::args().skip(1);
    let folder = arguments.next().ok_or_else(|| Error::other("name a folder of job files"))?;
    let port = arguments.next().and_then(|port| port.parse().ok()).unwrap_or(0);
    let bound = bind(Folder::open(Path::new(&folder))?, Listen { host: None, port }, counsel::Options::default())?;
    writeln!(std::io::stdout(), "{}", bound.address.trim_end_matches('/'))?;
    bound.run()
}
