//! The shortlist: work on what is fitted by its cost, then new propellers and ratios, best first.

use super::{Asked, Known, View};
use counsel::report::{Candidate, Step};
use counsel::{Change, Options};
use maud::{Markup, PreEscaped, html};

/// Lines shown at first.
const SHOWN: usize = 12;

/// The shortlist. Each line can be laid on the sliders.
#[must_use]
pub fn shortlist(view: &View, at: &str, known: &Known, options: &Options) -> Markup {
    let job = known.prepared.job();
    let chosen = match counsel::choose(job, options) {
        Ok(chosen) => chosen,
        Err(lack) => return super::lacking(view, at, &lack),
    };
    let sheet = draw::Sheet {
        boat: &job.title,
        date: &super::panel::last_date(job),
        width: view.width,
        language: view.language,
    };
    let picture = draw::shortlist::picture(&sheet, &chosen);
    html! {
        h3 { (view.say("follows-shortlist")) }
        p.sentence { (view.speak(&chosen.headline)) }
        figure.picture { (PreEscaped(View::bare(&picture.svg))) }
        ol.shortlist {
            @for candidate in chosen.shortlist.iter().take(SHOWN) {
                li {
                    strong { (view.speak(&candidate.what)) } " "
                    (view.speak(&candidate.why))
                    @if let Some(asked) = on_sliders(candidate) {
                        " " a href=(format!("{at}/follows?{}#try-title", asked.address())) data-try=(asked.address()) {
                            (view.say("follows-on-sliders"))
                        }
                    }
                }
            }
        }
    }
}

/// A candidate as a change of the sliders, where it is one of size.
fn on_sliders(candidate: &Candidate) -> Option<Asked> {
    let sized = Change {
        diameter: Some(candidate.diameter / 1000.0),
        pitch: Some(candidate.pitch / 1000.0),
        ..Change::default()
    };
    let change = match candidate.step {
        Step::Repitch => Change { diameter: None, ..sized },
        Step::Trim => Change { pitch: None, ..sized },
        Step::NewPropeller => {
            Change { blades: Some(candidate.blades), area_ratio: Some(candidate.area_ratio), ..sized }
        }
        Step::Ratio => Change {
            blades: Some(candidate.blades),
            area_ratio: Some(candidate.area_ratio),
            reduction: Some(candidate.reduction),
            ..sized
        },
        Step::Leave | Step::Clean | Step::TrueUp | Step::Cup => return None,
    };
    Some(Asked { change, ..Asked::default() })
}
