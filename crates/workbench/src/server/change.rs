//! What changes a job. Each answers a plain form with the page, and the script with what came of it.

use super::{Shared, away, look, named, page};
use crate::pages;
use crate::store::{Edit, Name, Saved, Version};
use axum::Form;
use axum::extract::{Path, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Redirect, Response};
use job::Document;
use std::collections::BTreeMap;

type Pairs = Vec<(String, String)>;

/// Fields of a form: `v:path` is what was entered, `w:path` what the page showed, `s:path` the source; `unknown` names a
/// path that nobody knows, `remove` a table to be taken out.
fn edits(pairs: &[(String, String)]) -> Vec<Edit> {
    let mut entered: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    let mut was: BTreeMap<&str, &str> = BTreeMap::new();
    let mut source: BTreeMap<&str, &str> = BTreeMap::new();
    let mut unknown: Vec<&str> = Vec::new();
    for (key, value) in pairs {
        match key.split_once(':') {
            Some(("v", path)) => entered.entry(path).or_default().push(value.trim()),
            Some(("w", path)) => drop(was.insert(path, value)),
            Some(("s", path)) => drop(source.insert(path, value.trim())),
            _ if key == "unknown" || key == "remove" => unknown.push(value),
            _ => {}
        }
    }
    for path in unknown {
        entered.insert(path, Vec::new());
    }
    entered
        .into_iter()
        .map(|(path, values)| {
            // Boxes and runs come one by one.
            let parts: Vec<&str> = values.into_iter().filter(|value| !value.is_empty()).collect();
            let mut now = parts.join(", ");
            if let Some(source) = source.get(path).filter(|_| !now.is_empty()) {
                now = pages::with_source(&now, source);
            }
            Edit { path: path.to_owned(), was: was.get(path).copied().unwrap_or_default().to_owned(), now }
        })
        .filter(|edit| edit.now != edit.was || pairs.iter().any(|(key, value)| key == "remove" && *value == edit.path))
        .collect()
}

pub async fn set(
    State(bench): State<Shared>,
    Path(name): Path<String>,
    headers: HeaderMap,
    Form(pairs): Form<Pairs>,
) -> Response {
    let look = look(&headers);
    let script = headers.get(header::ACCEPT).is_some_and(|accept| accept.as_bytes() == b"application/json");
    away(move || {
        let name = named(&name)?;
        let get = |key: &str| pairs.iter().find(|(k, _)| k == key).map(|(_, v)| v.as_str());
        let base = get("base").and_then(Version::of_text);
        let saved = bench.folder.save(&name, base, &edits(&pairs))?;
        if script {
            return Ok(answer(&look, &saved));
        }
        let place =
            get("section").filter(|s| s.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-')).unwrap_or("top");
        Ok(Redirect::to(&format!("/jobs/{}#{place}", name.escaped())).into_response())
    })
    .await
}

/// The propeller as the form has it now, drawn; nothing is saved. What cannot be read yet is left out of the drawing.
pub async fn drawing(
    State(bench): State<Shared>,
    Path(name): Path<String>,
    headers: HeaderMap,
    Form(pairs): Form<Pairs>,
) -> Response {
    let look = look(&headers);
    let width = pairs.iter().find(|(k, _)| k == "width").and_then(|(_, v)| v.parse().ok());
    away(move || {
        let name = named(&name)?;
        let text = bench.folder.read(&name)?;
        let typed = crate::store::apply_all(&text, &edits(&pairs));
        Ok(page(pages::drawn(&look, &typed.text, width)))
    })
    .await
}

fn answer(look: &pages::Look, saved: &Saved) -> Response {
    let left: Vec<serde_json::Value> = saved
        .left
        .iter()
        .map(|left| serde_json::json!({ "path": left.path, "says": pages::why(look, left), "theirs": left.theirs }))
        .collect();
    let status = if left.is_empty() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    let body = serde_json::json!({ "version": saved.version.to_string(), "left": left, "merged": saved.merged });
    (status, axum::Json(body)).into_response()
}

pub async fn undo(State(bench): State<Shared>, Path(name): Path<String>) -> Response {
    away(move || {
        let name = named(&name)?;
        bench.folder.undo(&name)?;
        Ok(Redirect::to(&format!("/jobs/{}", name.escaped())).into_response())
    })
    .await
}

pub async fn restore(State(bench): State<Shared>, Path(name): Path<String>, Form(pairs): Form<Pairs>) -> Response {
    away(move || {
        let name = named(&name)?;
        let number = pairs.iter().find(|(k, _)| k == "number").and_then(|(_, v)| v.parse().ok());
        if let Some(number) = number {
            bench.folder.restore(&name, number)?;
        }
        Ok(Redirect::to(&format!("/jobs/{}", name.escaped())).into_response())
    })
    .await
}

pub async fn duplicate(State(bench): State<Shared>, Path(name): Path<String>) -> Response {
    away(move || {
        let name = named(&name)?;
        let text = bench.folder.read(&name)?;
        let new = bench.folder.add(&name.numbered(2), &text)?;
        Ok(Redirect::to(&format!("/jobs/{}", new.escaped())).into_response())
    })
    .await
}

pub async fn new(State(bench): State<Shared>, headers: HeaderMap, Form(pairs): Form<Pairs>) -> Response {
    let look = look(&headers);
    away(move || {
        let mut given: BTreeMap<String, String> = BTreeMap::new();
        for (key, value) in &pairs {
            // Boxes and runs come one by one.
            let held = given.entry(key.clone()).or_default();
            if !held.is_empty() && !value.trim().is_empty() {
                held.push_str(", ");
            }
            held.push_str(value.trim());
        }
        if let Some(path) = given.remove("unknown") {
            // Somebody does not know after all: the questions stay open with the rest of the answers.
            given.retain(|key, _| !key.ends_with(&format!(":{path}")));
            return Ok(page(pages::new(&look, &given, &[])));
        }
        let title = given.get("v:title").map(|t| t.trim()).filter(|t| !t.is_empty()).unwrap_or("New job").to_owned();
        let Ok(mut document) = Document::parse("") else {
            return Ok(StatusCode::INTERNAL_SERVER_ERROR.into_response());
        };
        let mut left = Vec::new();
        if document.set("title", &title).is_err() {
            left.push(("title".to_owned(), look.say("workbench-title-refused")));
        }
        let applied = crate::store::apply_all(
            &document.to_string(),
            &edits(&pairs).into_iter().filter(|e| e.path != "title").collect::<Vec<_>>(),
        );
        left.extend(applied.left.iter().map(|l| (l.path.clone(), pages::why(&look, l))));
        if !left.is_empty() {
            let shown = pages::new(&look, &given, &left);
            return Ok((StatusCode::UNPROCESSABLE_ENTITY, page(shown)).into_response());
        }
        let name = bench.folder.add(&Name::from_title(&title), &applied.text)?;
        Ok(Redirect::to(&format!("/jobs/{}", name.escaped())).into_response())
    })
    .await
}

pub async fn settings(Form(pairs): Form<Pairs>) -> Response {
    let get = |key: &str| pairs.iter().find(|(k, _)| k == key).map(|(_, v)| v.as_str());
    let back = get("back")
        .filter(|b| b.starts_with('/') && !b.starts_with("//") && !b.contains(['\\', '\r', '\n']))
        .unwrap_or("/");
    let mut response = Redirect::to(back).into_response();
    let language = get("language").and_then(words::Language::of_tag).map(|l| format!("fairwake-language={}", l.tag()));
    let units = get("units").filter(|u| ["metric", "imperial"].contains(u)).map(|u| format!("fairwake-units={u}"));
    for cookie in language.into_iter().chain(units) {
        if let Ok(value) = format!("{cookie}; SameSite=Strict; Path=/; Max-Age=31536000").parse() {
            response.headers_mut().append(header::SET_COOKIE, value);
        }
    }
    response
}
