//! The jobs of the folder.

use super::{Look, field, frame};
use crate::store::{Entry, Version};
use maud::{Markup, html};
use std::sync::Arc;

type Known<'a> = dyn Fn(Version) -> Option<Arc<crate::server::Said>> + 'a;

/// The list, with those whose title, name or open questions hold every word asked for.
#[must_use]
pub fn jobs(look: &Look, entries: &[Entry], asked: &str, known: &Known) -> Markup {
    let words: Vec<String> = asked.to_lowercase().split_whitespace().map(str::to_owned).collect();
    let held = |entry: &&Entry| {
        let text = format!("{} {}", entry.title, entry.name).to_lowercase();
        words.iter().all(|word| text.contains(word.as_str()))
    };
    let found: Vec<&Entry> = entries.iter().filter(held).collect();
    let body = html! {
        h1 { (look.say("workbench-jobs")) }
        div.tools {
            a.button href="/new" { (look.say("workbench-new")) }
            form method="get" action="/" role="search" {
                label { span { (look.say("workbench-search")) } input type="search" name="q" value=(asked); }
                button { (look.say("workbench-find")) }
            }
            form method="post" action="/import" enctype="multipart/form-data" {
                label { span { (look.say("workbench-import")) } input type="file" name="file" accept=".toml" required; }
                button { (look.say("workbench-import-do")) }
            }
        }
        p.quiet { (look.count("workbench-found", found.len())) }
        ul.jobs {
            @for entry in found { (row(look, entry, known)) }
        }
    };
    frame(look, &look.say("workbench-jobs"), body)
}

fn row(look: &Look, entry: &Entry, known: &Known) -> Markup {
    let at = format!("/jobs/{}", entry.name.escaped());
    let said = known(entry.version);
    html! {
        li {
            h2 { a href=(at) { bdi { (entry.title) } } }
            @if !entry.readable {
                p { span.mark aria-hidden="true" { "\u{25a0} " } (look.say("workbench-unreadable")) }
            } @else if let Some(said) = said {
                p { (look.speak(&said.sentence)) }
            } @else {
                // Asked for by the script when the row comes into sight.
                p.quiet data-verdict=(format!("{at}/verdict")) { (look.say("workbench-not-judged")) }
            }
            p.quiet {
                @if let Some(date) = &entry.last_reading { (look.with("workbench-last-reading", "date", date)) " " }
                @else if entry.readings == 0 { (look.say("workbench-no-reading")) " " }
                @if !entry.open.is_empty() {
                    (look.say("workbench-open")) " "
                    @for (i, path) in entry.open.iter().enumerate() {
                        @if i > 0 { ", " } (field::label(look, path.rsplit('.').next().unwrap_or(path)))
                    }
                    "."
                }
            }
        }
    }
}
