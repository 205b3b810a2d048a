//! `fairwake completions`: a completion script on standard output.

use std::io::Write as _;

use crate::args::CompletionsArgs;
use crate::failure::Failure;

pub fn run(args: &CompletionsArgs) -> Result<(), Failure> {
    // Written to memory first: the generator panics on a broken pipe.
    let mut script = Vec::new();
    clap_complete::generate(args.shell, &mut crate::command(), "fairwake", &mut script);
    let mut out = std::io::stdout().lock();
    out.write_all(&script).and_then(|()| out.flush()).map_err(Failure::Stream)
}
