//! A job file brought from elsewhere.

use super::{Shared, away, look};
use crate::pages;
use crate::store::{Name, disk};
use axum::extract::{Multipart, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Redirect, Response};
use job::Job;

pub async fn import(State(bench): State<Shared>, headers: HeaderMap, mut form: Multipart) -> Response {
    let look = look(&headers);
    let mut file = None;
    loop {
        match form.next_field().await {
            Ok(Some(field)) if field.name() == Some("file") => {
                let name = field.file_name().unwrap_or("job.toml").to_owned();
                match field.bytes().await {
                    Ok(bytes) => file = Some((name, bytes)),
                    Err(error) => return error.into_response(),
                }
            }
            Ok(Some(_)) => {}
            Ok(None) => break,
            Err(error) => return error.into_response(),
        }
    }
    let refuse = move |why: String| {
        let shown = pages::refused(&look, &why);
        (StatusCode::UNPROCESSABLE_ENTITY, super::page(shown)).into_response()
    };
    let Some((name, bytes)) = file else { return refuse(look.say("workbench-import-none")) };
    if bytes.len() as u64 > disk::LONGEST {
        return refuse(look.say("workbench-import-long"));
    }
    let Ok(text) = String::from_utf8(bytes.to_vec()) else { return refuse(look.say("workbench-import-binary")) };
    away(move || {
        if let Err(problems) = Job::read(&text) {
            return Ok(refuse(job::render(&problems, &name, &text, false)));
        }
        let plain = name.rsplit(['/', '\\']).next().unwrap_or_default();
        let plain = plain.strip_suffix(".toml").unwrap_or(plain);
        let name = Name::of(plain).unwrap_or_else(|| Name::from_title(plain));
        let name = bench.folder.add(&name, &text)?;
        Ok(Redirect::to(&format!("/jobs/{}", name.escaped())).into_response())
    })
    .await
}
