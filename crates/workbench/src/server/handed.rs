//! The papers to hand over, drawn up from a job as it stands.

use super::{Shared, away, look, missing, named, page};
use crate::pages;
use crate::store::Version;
use axum::extract::{Path, State};
use axum::http::{HeaderMap, HeaderValue, header};
use axum::response::{Html, IntoResponse, Response};
use counsel::Options;
use job::Job;
use papers::{Answers, Kind, Setting, Size};
use std::sync::{Arc, Mutex, PoisonError};

/// What a paper may load: its own style, nothing else.
const POLICY: &str =
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'; base-uri 'none'";

/// The answers of the job asked for last: its eight papers are opened one after the other. One is drawn up at a time.
#[derive(Default)]
pub struct Gathered(Mutex<Option<(Version, Arc<Answers>)>>);

impl Gathered {
    fn of(&self, job: &Job, text: &str, options: &Options) -> Arc<Answers> {
        let version = Version::of(text);
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((known, answers)) = kept.as_ref()
            && *known == version
        {
            return Arc::clone(answers);
        }
        let answers = Arc::new(Answers::gather(job, text, options));
        *kept = Some((version, Arc::clone(&answers)));
        answers
    }
}

/// The list of papers; what cannot be drawn up yet says why when it is opened.
pub async fn papers(State(bench): State<Shared>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let look = look(&headers);
    away(move || {
        let name = named(&name)?;
        bench.folder.read(&name)?;
        Ok(page(pages::papers(&look, &name)))
    })
    .await
}

/// One paper as a page of its own, ready to print.
pub async fn paper(
    State(bench): State<Shared>,
    Path((name, kind)): Path<(String, String)>,
    headers: HeaderMap,
) -> Response {
    let look = look(&headers);
    away(move || {
        let name = named(&name)?;
        let text = bench.folder.read(&name)?;
        let Some(kind) = Kind::ALL.into_iter().find(|one| one.file() == kind) else { return Ok(missing()) };
        let job = match Job::read(&text) {
            Ok(read) => read.job,
            Err(problems) => {
                let why = job::render(&problems, name.as_str(), &text, false);
                return Ok(page(pages::no_paper(&look, &name, kind, &why)));
            }
        };
        let answers = bench.gathered.of(&job, &text, &bench.options);
        let size = if look.imperial { Size::Letter } else { Size::A4 };
        let setting = Setting { language: look.language, size, date: papers::today() };
        let (made, left_out) = papers::papers(&answers, &setting, &[kind]);
        let Some(paper) = made.first() else {
            let why = left_out.first().map(|lack| look.speak(&lack.why)).unwrap_or_default();
            return Ok(page(pages::no_paper(&look, &name, kind, &why)));
        };
        let policy = [(header::CONTENT_SECURITY_POLICY, HeaderValue::from_static(POLICY))];
        Ok((policy, Html(papers::html::page(paper))).into_response())
    })
    .await
}
