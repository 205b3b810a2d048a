//! Trial logs: brought to a job, looked at, and the readings taken that a person ticks.

use super::{Shared, away, look, missing, named, page};
use crate::pages::{self, Brought, Look};
use crate::store::{Kept, Name};
use axum::Form;
use axum::extract::{Multipart, Path, Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use job::{Job, Source, Word as _};
use logs::{Limits, Log, Proposing, Refusal, Settings, Taken};
use std::io;

type Pairs = Vec<(String, String)>;

/// Logs of one trial at most.
const MOST: usize = 4;

/// What a person says of the logs.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    /// The logs, by what names them.
    pub logs: Vec<String>,
    /// What the engine speed was read by.
    pub by: Source,
    /// How long throttle and course must have been held, s.
    pub steady: f64,
}

impl Said {
    fn of(pairs: &[(String, String)]) -> Said {
        let get = |key: &str| pairs.iter().find(|(k, _)| k == key).map(|(_, v)| v.trim());
        let steady = get("steady").and_then(|s| s.replace(',', ".").parse().ok());
        Said {
            logs: pairs.iter().filter(|(k, _)| k == "log").map(|(_, v)| v.clone()).take(MOST).collect(),
            by: get("by").and_then(Source::from_word).unwrap_or(Source::Dashboard),
            steady: steady.filter(|s| (10.0..=3600.0).contains(s)).unwrap_or(Limits::default().seconds),
        }
    }

    fn settings(&self, job: &Job) -> Settings {
        Settings {
            limits: Limits { seconds: self.steady, ..Limits::default() },
            proposing: Proposing { from: String::new(), rpm_by: self.by, engine: job.engine.kind },
            ..Settings::default()
        }
    }
}

fn read(name: &str, bytes: &[u8], job: &Job) -> Result<Log, Refusal> {
    let options = logs::Options { format: None, fuel_density: job::quantity::fuel_density(job.engine.kind) };
    logs::read(name, &mut &bytes[..], Some(bytes.len() as u64), &options, &mut |_, _| {})
}

/// The logs named, read again as they were kept; `None` when one of them is there no more.
fn read_kept(kept: &[Kept], wanted: &[String], job: &Job) -> io::Result<Option<Vec<Log>>> {
    let mut read_logs = Vec::new();
    for id in wanted {
        let Some(one) = kept.iter().find(|one| one.id == *id) else { return Ok(None) };
        match read(&one.name, &one.bytes()?, job) {
            Ok(log) => read_logs.push(log),
            // It was read when it came: the file was changed since.
            Err(_) => return Ok(None),
        }
    }
    Ok(Some(read_logs))
}

/// The page: what was brought before, and what the logs named offer.
pub async fn show(
    State(bench): State<Shared>,
    Path(name): Path<String>,
    Query(pairs): Query<Pairs>,
    headers: HeaderMap,
) -> Response {
    let look = look(&headers);
    let width =
        crate::follows::View::width_for(&pairs.iter().filter(|(k, _)| k == "width").cloned().collect(), &headers);
    away(move || {
        let name = named(&name)?;
        let text = bench.folder.read(&name)?;
        let kept = bench.folder.logs(&name);
        let said = Said::of(&pairs);
        let job = match Job::read(&text) {
            Ok(read) => read.job,
            Err(problems) => {
                return Ok(page(pages::refused(&look, &job::render(&problems, name.as_str(), &text, false))));
            }
        };
        let brought = match read_kept(&kept, &said.logs, &job)? {
            Some(logs) if !logs.is_empty() => {
                let trial = logs::trial(&logs, &said.settings(&job));
                Some(Brought { logs, trial, said, width })
            }
            Some(_) => None,
            None => return Ok(missing()),
        };
        Ok(page(pages::log(&look, &name, &job, &kept, brought.as_ref())))
    })
    .await
}

/// Takes files in. What cannot be read is refused with its reason, and then none of them is kept.
pub async fn bring(
    State(bench): State<Shared>,
    Path(name): Path<String>,
    headers: HeaderMap,
    mut form: Multipart,
) -> Response {
    let look = look(&headers);
    let mut files = Vec::new();
    loop {
        match form.next_field().await {
            Ok(Some(field)) if field.name() == Some("log") => {
                let called = field.file_name().unwrap_or("log").to_owned();
                match field.bytes().await {
                    // A form without a file chosen sends an empty one without a name.
                    Ok(bytes) if bytes.is_empty() && called.is_empty() => {}
                    Ok(bytes) => files.push((called, bytes)),
                    Err(error) => return error.into_response(),
                }
            }
            Ok(Some(_)) => {}
            Ok(None) => break,
            Err(error) => return error.into_response(),
        }
    }
    away(move || {
        let name = named(&name)?;
        let text = bench.folder.read(&name)?;
        if files.is_empty() {
            return Ok(refuse(&look, &look.say("workbench-import-none")));
        }
        if files.len() > MOST {
            return Ok(refuse(&look, &look.say("workbench-log-many")));
        }
        let job = Job::read(&text).map(|read| read.job).unwrap_or_default();
        for (called, bytes) in &files {
            if let Err(refusal) = read(called, bytes, &job) {
                let why = format!("{called}: {}.\n{}.", look.speak(&refusal.message), look.speak(&refusal.help));
                return Ok(refuse(&look, &why));
            }
        }
        let mut ids = Vec::new();
        for (called, bytes) in &files {
            ids.push(format!("log={}", bench.folder.keep_log(&name, called, bytes)?));
        }
        Ok(Redirect::to(&format!("{}?{}", at(&name), ids.join("&"))).into_response())
    })
    .await
}

/// Adds the readings ticked to the job.
pub async fn take(
    State(bench): State<Shared>,
    Path(name): Path<String>,
    headers: HeaderMap,
    Form(pairs): Form<Pairs>,
) -> Response {
    let look = look(&headers);
    away(move || {
        let name = named(&name)?;
        let said = Said::of(&pairs);
        let ticked = |key: &str, number: usize| pairs.iter().any(|(k, v)| k == key && v.parse() == Ok(number));
        let kept = bench.folder.logs(&name);
        let text = bench.folder.read(&name)?;
        let job = Job::read(&text).map(|read| read.job).unwrap_or_default();
        let Some(logs) = read_kept(&kept, &said.logs, &job)?.filter(|logs| !logs.is_empty()) else {
            return Ok(missing());
        };
        let offered = logs::trial(&logs, &said.settings(&job)).proposals;
        let taken: Vec<Taken> = (0..offered.len())
            .filter(|at| ticked("take", at + 1))
            .map(|at| Taken { at, full_throttle: ticked("full", at + 1) })
            .collect();
        if taken.is_empty() {
            return Ok(refuse(&look, &look.say("workbench-log-none-ticked")));
        }
        let mut seen = String::new();
        let done = bench.folder.rewrite(&name, |text| {
            text.clone_into(&mut seen);
            logs::take(text, &offered, &taken)
        })?;
        match done {
            Ok(_) => Ok(Redirect::to(&format!("/jobs/{}#readings", name.escaped())).into_response()),
            Err(problems) => Ok(refuse(&look, &job::render(&problems, name.as_str(), &seen, false))),
        }
    })
    .await
}

fn at(name: &Name) -> String {
    format!("/jobs/{}/log", name.escaped())
}

fn refuse(look: &Look, why: &str) -> Response {
    (StatusCode::UNPROCESSABLE_ENTITY, page(pages::refused(look, why))).into_response()
}
