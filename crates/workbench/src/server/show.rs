//! What only reads.

use super::{Shared, away, look, missing, named, page};
use crate::pages;
use crate::store::Version;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, header};
use axum::response::{IntoResponse, Response};
use std::collections::BTreeMap;

type Pairs = Query<BTreeMap<String, String>>;

pub async fn jobs(State(bench): State<Shared>, Query(pairs): Pairs, headers: HeaderMap) -> Response {
    let look = look(&headers);
    away(move || {
        let asked = pairs.get("q").map(String::as_str).unwrap_or_default();
        let entries = bench.folder.list()?;
        Ok(page(pages::jobs(&look, &entries, asked, &|version| bench.verdicts.known(version))))
    })
    .await
}

pub async fn new(headers: HeaderMap) -> Response {
    page(pages::new(&look(&headers), &BTreeMap::new(), &[]))
}

pub async fn job(State(bench): State<Shared>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let look = look(&headers);
    away(move || {
        let name = named(&name)?;
        let text = bench.folder.read(&name)?;
        let drafts = bench.folder.drafts(&name);
        let said = bench.verdicts.known(Version::of(&text));
        let can_undo = bench.folder.states(&name).len() > 1;
        Ok(page(pages::job(
            &look,
            &pages::Open { name: &name, text: &text, drafts: &drafts, can_undo, said: said.as_deref() },
        )))
    })
    .await
}

pub async fn verdict(State(bench): State<Shared>, Path(name): Path<String>) -> Response {
    away(move || {
        let text = bench.folder.read(&named(&name)?)?;
        let said = bench.verdicts.of(&text, &bench.crowds);
        let kind = [(header::CONTENT_TYPE, "text/plain; charset=utf-8")];
        Ok((kind, said.sentence.clone()).into_response())
    })
    .await
}

pub async fn history(State(bench): State<Shared>, Path(name): Path<String>, headers: HeaderMap) -> Response {
    let look = look(&headers);
    away(move || {
        let name = named(&name)?;
        bench.folder.read(&name)?;
        Ok(page(pages::history(&look, &name, &bench.folder.states(&name))))
    })
    .await
}

pub async fn file(State(bench): State<Shared>, Path(name): Path<String>) -> Response {
    away(move || {
        let name = named(&name)?;
        let Ok(text) = bench.folder.read(&name) else { return Ok(missing()) };
        let held = format!("attachment; filename*=UTF-8''{}.toml", name.escaped());
        let headers =
            [(header::CONTENT_TYPE, "application/toml; charset=utf-8".to_owned()), (header::CONTENT_DISPOSITION, held)];
        Ok((headers, text).into_response())
    })
    .await
}
