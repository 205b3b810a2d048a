//! The list of terms and the page of one.

use super::{explained, picture, text};
use crate::follows::{self, Asked, Known, View};
use counsel::explain::Term;
use maud::{Markup, PreEscaped, html};

/// All terms, each with its line on this boat.
#[must_use]
pub fn terms(view: &View, at: &str, known: &Known) -> Markup {
    html! {
        section.explain {
            h1 { (view.say("explain-title")) }
            dl.terms {
                @for term in Term::ALL {
                    dt { a href=(format!("{at}/explain/{}", term.name())) { (text::title(view.language, term)) } }
                    dd { (text::line(view.language, &known.prepared.explain(term))) }
                }
            }
            p.more {
                a href=(format!("{at}/blade")) { (view.say("follows-blade-title")) } " "
                a href=(at) { (view.say("follows-to-job")) }
            }
        }
    }
}

/// One term: in words, with its picture, with something to move, with this boat's numbers.
#[must_use]
pub fn page(view: &View, at: &str, known: &Known, term: Term, asked: &Asked) -> Markup {
    let boat = known.prepared.explain(term);
    let said = explained(view.language, term, Some(&boat));
    html! {
        article.explain {
            h1 { (said.title) }
            p.sentence { (said.plain) }
            @if let Some(scene) = scene(term) { (moving(view, known, scene)) }
            @if let Some(picture) = picture::of(view, known, term) {
                figure.picture { (PreEscaped(View::bare(&picture.svg))) }
            }
            @if let Some(line) = &said.on_boat {
                h2 { (view.say("explain-on-boat")) }
                p { (line) }
            }
            @if let Some(key) = slider(term) {
                h2 #try-title { (view.say("explain-slide")) }
                (follows::one_slider(view, at, known, asked, key))
                div #tried { (follows::tried(view, known, asked)) }
                @if matches!(key, "rake" | "skew" | "area" | "blades" | "diameter" | "cup") {
                    div #tried-drawing { (follows::drawing(view, known.prepared.job(), asked)) }
                }
            }
            dl.said {
                dt { (view.say("explain-said")) } dd { (said.said) }
                dt { (view.say("explain-truth")) } dd { (said.holds) }
                dt { (view.say("explain-trust")) } dd { (said.trust) }
            }
            (follows::methods(view, &said.methods))
            p.more {
                a href=(format!("{at}/explain")) { (view.say("follows-all-terms")) } " "
                a href=(format!("{at}/blade")) { (view.say("follows-blade-title")) } " "
                a href=(at) { (view.say("follows-to-job")) }
            }
        }
        script type="module" src="/assets/views/follows.js" {}
        script type="module" src="/assets/views/motion.js" {}
    }
}

/// What stands in place of an answer when the file cannot be read.
#[must_use]
pub fn unread(view: &View, problems: &str) -> Markup {
    html! {
        section.follows id="follows" aria-label=(view.say("follows-follows")) {
            p.sentence { (view.say("follows-unread")) }
            pre tabindex="0" { (problems) }
        }
    }
}

/// The slider that teaches a term.
fn slider(term: Term) -> Option<&'static str> {
    match term {
        Term::Diameter => Some("diameter"),
        Term::Pitch | Term::Slip | Term::Measuring => Some("pitch"),
        Term::Areas | Term::Ventilation => Some("area"),
        Term::Blades => Some("blades"),
        Term::Cup => Some("cup"),
        Term::Curves => Some("weight"),
        Term::Rake => Some("rake"),
        Term::Skew => Some("skew"),
        Term::Parts | Term::Hand | Term::Paddlewheel | Term::Twin | Term::Sailing => None,
    }
}

/// The motion that shows a term.
fn scene(term: Term) -> Option<&'static str> {
    match term {
        Term::Pitch | Term::Slip => Some("helix"),
        Term::Hand | Term::Blades => Some("turning"),
        Term::Paddlewheel | Term::Twin => Some("walking"),
        _ => None,
    }
}

/// A scene drawn by the script from this boat's numbers; a person without script, or who wants stillness, has the words.
fn moving(view: &View, known: &Known, scene: &str) -> Markup {
    let job = known.prepared.job();
    let fitted = known.prepared.fitted();
    let left = job.propeller.hand == Some(job::Hand::Left);
    let advance = known.prepared.advance_per_turn();
    html! {
        figure.motion {
            canvas width="640" height="260" role="img" aria-label=(view.say(&format!("follows-scene-{scene}")))
                data-scene=(scene) data-pitch=(fitted.pitch) data-diameter=(fitted.diameter) data-blades=(fitted.blades)
                data-advance=(advance) data-left=(left) data-screws=(known.prepared.screws())
                data-words=(format!("{}|{}", view.say("follows-scene-pitch"), view.say("follows-scene-advance"))) {}
            figcaption { (view.say(&format!("follows-scene-{scene}"))) }
            button type="button" data-play=(view.say("follows-play")) data-pause=(view.say("follows-pause")) {
                (view.say("follows-play"))
            }
        }
    }
}
