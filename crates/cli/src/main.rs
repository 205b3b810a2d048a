//! The program `fairwake`.

use std::process::ExitCode;

fn main() -> ExitCode {
    fairwake::run(std::env::args_os())
}
