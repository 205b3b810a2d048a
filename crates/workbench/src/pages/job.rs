//! The page of a job: left the work in the order of the visits, right what follows from it.

use super::field::{Held, label};
use super::layout::{PARTS, READING};
use super::{Look, frame};
use crate::server::Said;
use crate::store::{Drafts, Name, State, Version, shown};
use job::Document;
use job::keys::{self, Key, ROOT, Shape};
use maud::{Markup, PreEscaped, html};

/// A job opened.
pub struct Open<'a> {
    /// Its name.
    pub name: &'a Name,
    /// Its file.
    pub text: &'a str,
    /// What could not be saved.
    pub drafts: &'a Drafts,
    /// Whether there is an earlier state.
    pub can_undo: bool,
    /// The judgement, where it is known already.
    pub said: Option<&'a Said>,
}

/// The page.
#[must_use]
pub fn job(look: &Look, open: &Open) -> Markup {
    let at = format!("/jobs/{}", open.name.escaped());
    let document = match Document::parse(open.text) {
        Ok(document) => document,
        Err(problems) => {
            let body = html! {
                h1 { bdi { (open.name) } }
                p { span aria-hidden="true" { "\u{25a0} " } (look.say("workbench-unreadable")) }
                pre.wide tabindex="0" { (job::render(&problems, open.name.as_str(), open.text, false)) }
                (tools(look, &at, open.can_undo))
            };
            return frame(look, open.name.as_str(), body);
        }
    };
    let title =
        Some(shown(&document, "title")).filter(|t| !t.trim().is_empty()).unwrap_or_else(|| open.name.to_string());
    let held = Held { look, document: &document, drafts: open.drafts };
    let version = Version::of(open.text);
    let body = html! {
        h1 { bdi { (title) } }
        (tools(look, &at, open.can_undo))
        nav.parts aria-label=(look.say("workbench-parts")) {
            @for part in PARTS { a href={ "#" (part.id) } { (look.say(&format!("workbench-part-{}", part.id))) } " " }
        }
        div.sides {
            div.work data-at=(at) data-version=(version) data-gone=(look.say("workbench-gone")) {
                @for part in PARTS {
                    section id=(part.id) aria-labelledby={ (part.id) "-title" } {
                        h2 id={ (part.id) "-title" } { (look.say(&format!("workbench-part-{}", part.id))) }
                        @if part.id == "fitted" {
                            figure.picture.drawn data-drawing={ (at) "/drawing" } tabindex="0" aria-label=(look.say("workbench-drawn")) {
                                (super::drawn(look, open.text, None))
                            }
                        }
                        form method="post" action={ (at) "/set" } autocomplete="off" {
                            input type="hidden" name="base" value=(version);
                            input type="hidden" name="section" value=(part.id);
                            // Return in a field saves: the first button of a form is the one it presses.
                            button.first tabindex="-1" aria-hidden="true" { (look.say("workbench-save")) }
                            @for (table, first) in part.tables { (top(&held, table, first)) }
                            button.save { (look.say("workbench-save")) }
                        }
                        @if part.id == "readings" { (super::log::bring(look, &at)) }
                    }
                }
            }
            aside.right aria-label=(look.say("workbench-follows")) {
                // On a phone the sentence stays at the foot; the rest comes up by this button.
                button.fold type="button" aria-expanded="false" aria-controls="right" hidden aria-label=(look.say("workbench-fold")) { "+" }
                div #right data-follows={ (at) "/follows" } {
                    @if let Some(said) = open.said {
                        (follows(look, said))
                    } @else {
                        section.follows { h2 { (look.say("workbench-follows")) } p #verdict { a href={ (at) "/follows" } { (look.say("workbench-judge")) } } }
                    }
                }
            }
        }
    };
    frame(look, &title, body)
}

fn tools(look: &Look, at: &str, can_undo: bool) -> Markup {
    html! {
        div.tools {
            form method="post" action={ (at) "/undo" } { button data-undo disabled[!can_undo] { (look.say("workbench-undo")) } }
            a.button href={ (at) "/papers" } { (look.say("workbench-papers")) }
            a.button href={ (at) "/history" } { (look.say("workbench-history")) }
            form method="post" action={ (at) "/duplicate" } { button { (look.say("workbench-duplicate")) } }
            a.button href={ (at) "/file" } download { (look.say("workbench-export")) }
        }
    }
}

fn top(held: &Held, table: &str, first: &[&str]) -> Markup {
    if table.is_empty() {
        let keys = ROOT.iter().filter(|key| first.contains(&key.name));
        return html! { @for key in keys { (held.field(key.name, key)) } };
    }
    match keys::find(table).map(|key| (key, key.shape)) {
        Some((key, Shape::Table(inner))) => html! {
            @if first.is_empty() {
                details open[has_any(held, table, inner)] { summary { (label(held.look, key.name)) } p.hint { (held.look.speak(key.doc)) } (keyed(held, table, inner, &[])) }
            } @else { (keyed(held, table, inner, first)) }
        },
        Some((_, Shape::Tables(inner))) => numbered(held, table, inner, first),
        _ => html! {},
    }
}

fn is_table(key: &Key) -> bool {
    matches!(key.shape, Shape::Table(_) | Shape::Tables(_))
}

fn has_any(held: &Held, table: &str, keys: &[Key]) -> bool {
    let below = format!("{table}.");
    held.drafts.keys().any(|path| path.starts_with(&below))
        || keys.iter().any(|key| {
            let path = format!("{table}.{}", key.name);
            match key.shape {
                Shape::Table(inner) => has_any(held, &path, inner),
                Shape::Tables(inner) => has_any(held, &format!("{path}.0"), inner),
                _ => held.document.get(&path).is_some(),
            }
        })
}

/// The fields of a table: those asked first in their order, then the others folded, unless one of them says something.
fn keyed(held: &Held, table: &str, keys: &'static [Key], first: &[&str]) -> Markup {
    let path = |key: &Key| format!("{table}.{}", key.name);
    let leading = first.iter().filter_map(|name| keys.iter().find(|key| key.name == *name));
    let others: Vec<&'static Key> = keys.iter().filter(|key| !first.contains(&key.name)).collect();
    let plain: Vec<&&Key> = others.iter().filter(|key| !is_table(key)).collect();
    let said = plain.iter().any(|key| held.document.get(&path(key)).is_some() || held.drafts.contains_key(&path(key)));
    html! {
        @for key in leading { (held.field(&path(key), key)) }
        @if first.is_empty() {
            @for key in &plain { (held.field(&path(key), key)) }
        } @else if !plain.is_empty() {
            details open[said] {
                summary { (held.look.say("workbench-more")) }
                @for key in &plain { (held.field(&path(key), key)) }
            }
        }
        @for key in others.iter().filter(|key| is_table(key)) {
            @match key.shape {
                Shape::Tables(inner) => (numbered(held, &path(key), inner, &[])),
                Shape::Table(inner) => details open[has_any(held, &path(key), inner)] {
                    summary { (label(held.look, key.name)) }
                    (keyed(held, &path(key), inner, &[]))
                },
                _ => {}
            }
        }
    }
}

/// Tables that repeat, and an empty one behind them for the next.
fn numbered(held: &Held, table: &str, keys: &'static [Key], first: &[&str]) -> Markup {
    let count = (0..500).take_while(|n| has_any(held, &format!("{table}.{n}"), keys)).count();
    let name = table.rsplit('.').next().unwrap_or(table);
    let first = if table == "reading" { &READING[..] } else { first };
    html! {
        @for n in 0..=count {
            @let path = format!("{table}.{n}");
            @let called = shown(held.document, &format!("{path}.label"));
            details.numbered data-numbered=(path) data-next[n == count] open[n < count && table == "reading"] {
                summary {
                    @if n < count { (label(held.look, name)) " " (n + 1) @if !called.is_empty() { ": " bdi { (called) } } }
                    @else { (held.look.with("workbench-add", "what", &label(held.look, name))) }
                }
                (keyed(held, &path, keys, first))
                @if n < count { button.quiet name="remove" value=(path) { (held.look.say("workbench-remove")) } }
            }
        }
    }
}

/// What follows, in short.
#[must_use]
pub(super) fn follows(look: &Look, said: &Said) -> Markup {
    html! {
        section.follows {
            h2 { (look.say("workbench-follows")) }
            p.sentence #verdict { (look.speak(&said.sentence)) }
            @if let Some(picture) = said.picture(look.language) { figure.picture { (PreEscaped(picture)) } }
            @if !said.measure_next.is_empty() {
                h3 { (look.say("workbench-measure-next")) }
                p { (look.speak(&said.measure_next)) }
            }
        }
    }
}

/// The earlier states.
#[must_use]
pub fn history(look: &Look, name: &Name, states: &[State]) -> Markup {
    let at = format!("/jobs/{}", name.escaped());
    let texts: Vec<String> = states.iter().map(|state| state.text().unwrap_or_default()).collect();
    let body = html! {
        h1 { (look.say("workbench-history")) ": " bdi { (name) } }
        p { a href=(at) { (look.say("workbench-back-job")) } }
        @if states.is_empty() { p { (look.say("workbench-history-none")) } }
        ol.states reversed {
            @for (n, state) in states.iter().enumerate().rev() {
                li value=(state.number) {
                    (changed(if n == 0 { "" } else { &texts[n - 1] }, &texts[n], n == 0, look))
                    form method="post" action={ (at) "/restore" } {
                        button name="number" value=(state.number) { (look.say("workbench-restore")) }
                    }
                }
            }
        }
    };
    frame(look, &look.say("workbench-history"), body)
}

/// The lines in which a state differs from the one before.
fn changed(before: &str, now: &str, first: bool, look: &Look) -> Markup {
    if first {
        return html! { p { (look.say("workbench-first-state")) } };
    }
    let gone: Vec<&str> =
        before.lines().filter(|line| !line.is_empty() && !now.lines().any(|other| other == *line)).collect();
    let new: Vec<&str> =
        now.lines().filter(|line| !line.is_empty() && !before.lines().any(|other| other == *line)).collect();
    html! {
        @for line in gone.iter().take(8) { p.line { del { (line) } } }
        @for line in new.iter().take(8) { p.line { ins { (line) } } }
    }
}
