//! The views of the demo jobs on a bare page, for the browser tests: `cargo run -p workbench --example bare [PORT]`.

use axum::Router;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, header};
use axum::response::{Html, IntoResponse};
use axum::routing::get;
use maud::{DOCTYPE, Markup, html};
use std::collections::BTreeMap;
use std::io::Write as _;
use std::sync::Arc;
use words::Language;
use workbench::follows::{self, Asked, Units, View};
use workbench::views::{Jobs, Views};

struct Demos;

impl Jobs for Demos {
    fn text(&self, name: &str) -> Option<String> {
        if !name.bytes().all(|b| b.is_ascii_alphanumeric()) {
            return None;
        }
        std::fs::read_to_string(format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"))).ok()
    }

    fn view(&self, pairs: &BTreeMap<String, String>, headers: &HeaderMap) -> View {
        View {
            language: pairs.get("language").and_then(|l| Language::of_tag(l)).unwrap_or_default(),
            units: if pairs.get("units").is_some_and(|u| u == "imperial") { Units::Imperial } else { Units::Metric },
            width: View::width_for(pairs, headers),
        }
    }

    fn frame(&self, view: &View, title: &str, body: Markup) -> Markup {
        html! {
            (DOCTYPE)
            html lang=(view.language.tag()) {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    title { (title) }
                    link rel="icon" href="data:,";
                    link rel="stylesheet" href="/assets/views/views.css";
                    link rel="stylesheet" href="/assets/views/pictures.css";
                    link rel="stylesheet" href="/bare.css";
                }
                body { main { (body) } }
            }
        }
    }
}

async fn page(
    State((views, jobs)): State<(Views, Arc<Demos>)>,
    Path(name): Path<String>,
    Query(pairs): Query<BTreeMap<String, String>>,
    headers: HeaderMap,
) -> Html<String> {
    let view = jobs.view(&pairs, &headers);
    let text = jobs.text(&name).unwrap_or_default();
    let Ok(read) = job::Job::read(&text) else { return Html("no such job".to_owned()) };
    let body = match views.known(&text, &read.job) {
        Ok(known) => html! {
            h1 { (read.job.title) }
            (follows::panel(&view, &format!("/jobs/{name}"), &known, &Asked::of(&pairs)))
            script type="module" src="/assets/views/follows.js" {}
        },
        Err(lack) => follows::lacking(&view, &lack),
    };
    Html(jobs.frame(&view, &read.job.title, body).into_string())
}

async fn sheet() -> impl IntoResponse {
    let text = "body{margin:0;background:var(--fw-paper);color:var(--fw-ink);font:16px/1.5 system-ui,sans-serif}main{padding:1rem}";
    ([(header::CONTENT_TYPE, "text/css")], text)
}

#[tokio::main(flavor = "current_thread")]
async fn main() -> std::io::Result<()> {
    let port: u16 = std::env::args().nth(1).and_then(|p| p.parse().ok()).unwrap_or(0);
    let jobs = Arc::new(Demos);
    let views = Views::new(Arc::clone(&jobs) as Arc<dyn Jobs>, counsel::Options::default());
    let own = Router::new().route("/jobs/{name}", get(page)).with_state((views.clone(), jobs));
    let policy = axum::middleware::from_fn(|request, next: axum::middleware::Next| async move {
        let mut answer = next.run(request).await;
        let policy = header::HeaderValue::from_static("default-src 'self'; img-src 'self' data:; object-src 'none'");
        answer.headers_mut().insert(header::CONTENT_SECURITY_POLICY, policy);
        answer
    });
    let app = own.merge(views.router()).route("/bare.css", get(sheet)).layer(policy);
    let listener = tokio::net::TcpListener::bind(("127.0.0.1", port)).await?;
    writeln!(std::io::stdout(), "http://{}", listener.local_addr()?)?;
    axum::serve(listener, app).await
}
