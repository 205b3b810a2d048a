//! The judgement as its callers meet it.

mod answers;
mod explain;
mod garbage;

/// Reads a job given as text.
fn job(text: &str) -> job::Job {
    match job::Job::read(text) {
        Ok(read) => read.job,
        Err(problems) => panic!("{}", job::render(&problems, "job", text, false)),
    }
}

/// A demo job.
fn example(name: &str) -> job::Job {
    let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    job(&std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}")))
}
mod fit;
mod pair;
mod prepared;
