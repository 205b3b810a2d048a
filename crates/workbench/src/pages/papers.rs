//! The papers of a job, to be opened and printed.

use super::Look;
use super::frame::frame;
use crate::store::Name;
use maud::{Markup, html};
use papers::Kind;

/// The list.
#[must_use]
pub fn papers(look: &Look, name: &Name) -> Markup {
    let at = format!("/jobs/{}", name.escaped());
    let body = html! {
        h1 { (look.say("workbench-papers")) ": " bdi { (name) } }
        p { a href=(at) { (look.say("workbench-back-job")) } }
        p { (look.say("workbench-papers-hint")) }
        ul.papers {
            @for kind in Kind::ALL {
                li { a href={ (at) "/papers/" (kind.file()) } { (look.say(kind.name())) } }
            }
        }
    };
    frame(look, &look.say("workbench-papers"), body)
}

/// Why a paper cannot be drawn up.
#[must_use]
pub fn no_paper(look: &Look, name: &Name, kind: Kind, why: &str) -> Markup {
    let at = format!("/jobs/{}/papers", name.escaped());
    let body = html! {
        h1 { (look.say(kind.name())) ": " bdi { (name) } }
        p { (look.say("workbench-papers-not-yet")) }
        pre.wide tabindex="0" { (why) }
        p { a href=(at) { (look.say("workbench-papers")) } }
    };
    frame(look, &look.say(kind.name()), body)
}
