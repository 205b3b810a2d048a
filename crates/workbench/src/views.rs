//! Routes of what follows from a job, of the explained terms, and of the propeller in the round. They only read: which jobs
//! there are and what frames a page is told by [`Jobs`].

use crate::explain;
use crate::follows::{self, Asked, Crowds, Known, View};
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use axum::routing::{MethodRouter, get};
use counsel::explain::Term;
use counsel::{Lack, Options};
use job::Job;
use maud::Markup;
use std::collections::BTreeMap;
use std::sync::Arc;

/// The jobs a page is about, and the frame it stands in.
pub trait Jobs: Send + Sync + 'static {
    /// The text of the job's file; `None` where there is no such job.
    fn text(&self, name: &str) -> Option<String>;
    /// For whom a page is laid out, by its address and the browser's cookies and languages.
    fn view(&self, pairs: &BTreeMap<String, String>, headers: &HeaderMap) -> View;
    /// A whole page around its body.
    fn frame(&self, view: &View, title: &str, body: Markup) -> Markup;
}

/// What the routes share.
#[derive(Clone)]
pub struct Views {
    jobs: Arc<dyn Jobs>,
    crowds: Arc<Crowds>,
    options: Options,
}

type Pairs = BTreeMap<String, String>;

/// What a part is laid out from.
struct Ask<'a> {
    view: &'a View,
    /// The job's address.
    at: &'a str,
    known: &'a Known,
    pairs: &'a Pairs,
}

/// A route that lays one part out.
fn part(title: &'static str, part: fn(&Views, &Ask) -> Markup) -> MethodRouter<Views> {
    get(move |State(views): State<Views>, Path(name): Path<String>, Query(pairs): Query<Pairs>, headers: HeaderMap| {
        views.answer(name, pairs, headers, title, part)
    })
}

impl Views {
    /// For these jobs.
    #[must_use]
    pub fn new(jobs: Arc<dyn Jobs>, crowds: Arc<Crowds>, options: Options) -> Views {
        Views { jobs, crowds, options }
    }

    /// The crowd of a job whose file has this text.
    ///
    /// # Errors
    /// When something is missing that cannot be assumed.
    pub fn known(&self, text: &str, job: &Job) -> Result<Arc<Known>, Lack> {
        self.crowds.get(text, job)
    }

    /// The routes.
    pub fn router(self) -> Router {
        Router::new()
            .route(
                "/jobs/{name}/follows",
                part("follows-follows", |_, ask| follows::panel(ask.view, ask.at, ask.known, &Asked::of(ask.pairs))),
            )
            .route(
                "/jobs/{name}/try",
                part("follows-try", |_, ask| follows::tried(ask.view, ask.known, &Asked::of(ask.pairs))),
            )
            .route(
                "/jobs/{name}/try/drawing",
                part("follows-blade-title", |_, ask| {
                    follows::drawing(ask.view, ask.known.prepared.job(), &Asked::of(ask.pairs))
                }),
            )
            .route(
                "/jobs/{name}/causes",
                part("follows-causes", |views, ask| follows::causes(ask.view, ask.at, ask.known, &views.options)),
            )
            .route(
                "/jobs/{name}/shortlist",
                part("follows-shortlist", |views, ask| follows::shortlist(ask.view, ask.at, ask.known, &views.options)),
            )
            .route(
                "/jobs/{name}/fits",
                part("follows-fits", |views, ask| {
                    follows::fits(ask.view, ask.at, ask.known.prepared.job(), &views.options)
                }),
            )
            .route("/jobs/{name}/explain", part("explain-title", |_, ask| explain::terms(ask.view, ask.at, ask.known)))
            .route("/jobs/{name}/explain/{term}", get(term))
            .route(
                "/jobs/{name}/blade",
                part("follows-blade-title", |_, ask| explain::round(ask.view, ask.at, ask.known)),
            )
            .route("/jobs/{name}/blade.json", get(mesh))
            .route("/assets/views/{file}", get(asset))
            .with_state(self)
    }

    /// Works a page out away from the thread that answers others.
    async fn answer(
        self,
        name: String,
        pairs: Pairs,
        headers: HeaderMap,
        title: &'static str,
        part: impl FnOnce(&Views, &Ask) -> Markup + Send + 'static,
    ) -> Response {
        let view = self.jobs.view(&pairs, &headers);
        let work = move || {
            let text = self.jobs.text(&name)?;
            let at = format!("/jobs/{}", escape(&name));
            let body = match Job::read(&text) {
                Ok(read) => match self.known(&text, &read.job) {
                    Ok(known) => part(&self, &Ask { view: &view, at: &at, known: &known, pairs: &pairs }),
                    Err(lack) => follows::lacking(&view, &at, &lack),
                },
                Err(problems) => explain::unread(&view, &job::render(&problems, &name, &text, false)),
            };
            // A part is asked for by the script and stands in a page that is there already.
            let whole = if pairs.contains_key("part") { body } else { self.jobs.frame(&view, &view.say(title), body) };
            Some(whole)
        };
        match tokio::task::spawn_blocking(work).await {
            Ok(Some(page)) => Html(page.into_string()).into_response(),
            Ok(None) => StatusCode::NOT_FOUND.into_response(),
            Err(_) => StatusCode::INTERNAL_SERVER_ERROR.into_response(),
        }
    }
}

/// A name as it stands in an address.
fn escape(name: &str) -> String {
    use std::fmt::Write as _;
    name.bytes().fold(String::new(), |mut text, byte| {
        if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
            text.push(char::from(byte));
        } else {
            // Writing to a string cannot fail.
            let _ = write!(text, "%{byte:02X}");
        }
        text
    })
}

async fn term(
    State(v): State<Views>,
    Path((name, term)): Path<(String, String)>,
    Query(pairs): Query<Pairs>,
    headers: HeaderMap,
) -> Response {
    let Some(term) = Term::of_name(&term) else { return StatusCode::NOT_FOUND.into_response() };
    v.answer(name, pairs, headers, "explain-title", move |_, ask| {
        explain::page(ask.view, ask.at, ask.known, term, &Asked::of(ask.pairs))
    })
    .await
}

async fn mesh(State(v): State<Views>, Path(name): Path<String>) -> Response {
    let work = move || {
        let read = Job::read(&v.jobs.text(&name)?).ok()?;
        explain::mesh(&read.job)
    };
    match tokio::task::spawn_blocking(work).await {
        Ok(Some(json)) => ([(header::CONTENT_TYPE, "application/json")], json).into_response(),
        Ok(None) => StatusCode::NOT_FOUND.into_response(),
        Err(_) => StatusCode::INTERNAL_SERVER_ERROR.into_response(),
    }
}

async fn asset(Path(file): Path<String>) -> Response {
    let script = "text/javascript; charset=utf-8";
    let style = "text/css; charset=utf-8";
    let (kind, text) = match file.as_str() {
        "follows.js" => (script, include_str!("../assets/follows.js").to_owned()),
        "blade.js" => (script, include_str!("../assets/blade.js").to_owned()),
        "motion.js" => (script, include_str!("../assets/motion.js").to_owned()),
        "views.css" => (style, include_str!("../assets/views.css").to_owned()),
        "pictures.css" => (style, draw::style_sheet()),
        _ => return StatusCode::NOT_FOUND.into_response(),
    };
    ([(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, "no-cache")], text).into_response()
}

#[cfg(test)]
mod tests {
    use super::escape;

    #[test]
    fn a_name_cannot_leave_its_place_in_an_address() {
        assert_eq!(escape("kittiwake"), "kittiwake");
        assert_eq!(escape("../a b?\"<ñ"), "..%2Fa%20b%3F%22%3C%C3%B1");
    }
}
