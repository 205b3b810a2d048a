//! Where a number comes from: formula, range, error, source.

use super::View;
use hydro::source::Method;
use maud::{Markup, html};

/// Every method the program rests on.
fn all() -> impl Iterator<Item = &'static Method> {
    hydro::source::methods().chain(counsel::methods())
}

/// The methods of these names, each to be opened.
#[must_use]
pub fn methods(view: &View, names: &[&str]) -> Markup {
    html! {
        @for method in all().filter(|m| names.contains(&m.name)) {
            details.origin {
                summary { (view.say("follows-origin")) ": " (view.speak(method.quantity)) }
                dl {
                    dt { (view.say("follows-formula")) } dd { code { (method.formula) } }
                    dt { (view.say("follows-range")) } dd { (view.speak(method.range)) }
                    dt { (view.say("follows-error")) } dd { (view.speak(method.error)) }
                    dt { (view.say("follows-source")) } dd { (method.source) " (" (view.speak(method.trust.text())) ")" }
                }
            }
        }
    }
}

/// What an answer hangs on.
#[must_use]
pub(super) fn hangs_on(view: &View, list: &[counsel::report::Hang]) -> Markup {
    html! {
        @if !list.is_empty() {
            details.origin {
                summary { (view.say("follows-hangs-on")) }
                div.wide tabindex="0" role="region" aria-label=(view.say("follows-hangs-on")) {
                    table {
                        thead { tr {
                            th scope="col" { (view.say("follows-quantity")) }
                            th scope="col" { (view.say("follows-used")) }
                            th scope="col" { (view.say("follows-share")) }
                            th scope="col" { (view.say("follows-from")) }
                            th scope="col" { (view.say("follows-narrow")) }
                        } }
                        tbody {
                            @for hang in list {
                                tr {
                                    th scope="row" { (view.speak(&hang.quantity)) }
                                    td { (view.speak(&hang.value)) }
                                    td.figure { (format!("{:.0} %", 100.0 * hang.share)) }
                                    td {
                                        (view.say(if hang.stated { "follows-stated" } else { "follows-assumed" }))
                                        ": " (view.speak(&hang.source))
                                    }
                                    td { (view.speak(&hang.measure)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
