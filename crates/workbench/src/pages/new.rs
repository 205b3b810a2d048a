//! A new job, by the call's questions.

use super::field::Held;
use super::{Look, frame};
use crate::store::{Drafts, Left};
use job::{Document, keys};
use maud::{Markup, html};
use std::collections::BTreeMap;

/// The call's questions, in the order in which they are asked.
const QUESTIONS: &[(&str, &[&str])] = &[
    ("call", &["title", "call.complaint", "call.since", "call.changed", "call.onset", "call.symptoms"]),
    (
        "engine",
        &[
            "engine.model",
            "engine.kind",
            "engine.rated_power",
            "engine.rated_speed",
            "engine.no_load_speed",
            "drive.reduction",
        ],
    ),
    ("fitted", &["propeller.stamp", "propeller.diameter", "propeller.pitch", "propeller.blades", "propeller.hand"]),
    ("boat", &["boat.kind", "boat.length_waterline", "boat.beam", "boat.displacement", "boat.since_scrub"]),
    (
        "readings",
        &["reading.0.full_throttle", "reading.0.engine_speed", "reading.0.by", "reading.0.speed", "reading.0.speed_by"],
    ),
    ("wants", &["duty", "call.wants"]),
];

/// The page, with what was entered and what was wrong with it.
#[must_use]
pub fn new(look: &Look, given: &BTreeMap<String, String>, wrong: &[(String, String)]) -> Markup {
    let Ok(document) = Document::parse("") else { return html! {} };
    let drafts: Drafts = given
        .iter()
        .filter_map(|(key, value)| {
            let path = key.strip_prefix("v:")?;
            let why = wrong.iter().find(|(at, _)| at == path).map(|(_, why)| why.clone()).unwrap_or_default();
            let source = given.get(&format!("s:{path}")).map_or("", String::as_str);
            let value = if value.is_empty() { String::new() } else { super::with_source(value, source) };
            Some((path.to_owned(), Left { path: path.to_owned(), value, why, help: None, theirs: None }))
        })
        .filter(|(_, left)| !left.value.is_empty() || !left.why.is_empty())
        .collect();
    let held = Held { look, document: &document, drafts: &drafts };
    let body = html! {
        h1 { (look.say("workbench-new")) }
        p { (look.say("workbench-new-lead")) }
        @if !wrong.is_empty() { p role="alert" { span aria-hidden="true" { "\u{25a0} " } (look.say("workbench-new-wrong")) } }
        form.call method="post" action="/new" autocomplete="off" {
            @for (part, paths) in QUESTIONS {
                section {
                    h2 { (look.say(&format!("workbench-part-{part}"))) }
                    @for path in *paths {
                        @if let Some(key) = keys::find(path) { (held.field(path, key)) }
                    }
                }
            }
            button.save { (look.say("workbench-new-do")) }
        }
    };
    frame(look, &look.say("workbench-new"), body)
}
