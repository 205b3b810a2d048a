//! Causes of what is wrong, likeliest first, and the measurements that would part them.

use super::{Known, View};
use counsel::Options;
use maud::{Markup, PreEscaped, html};

/// The causes. Each suspected cause has a crowd of its own: this takes seconds, and is asked for on its own.
#[must_use]
pub fn causes(view: &View, at: &str, known: &Known, options: &Options) -> Markup {
    let job = known.prepared.job();
    let found = match counsel::diagnose(job, options) {
        Ok(found) => found,
        Err(lack) => return super::lacking(view, at, &lack),
    };
    let sheet = draw::Sheet {
        boat: &job.title,
        date: &super::panel::last_date(job),
        width: view.width,
        language: view.language,
    };
    let picture = draw::causes::picture(&sheet, &found);
    html! {
        h3 { (view.say("follows-causes")) }
        @for stop in &found.stop {
            p.caution { span.mark aria-hidden="true" { "\u{25a0}" } " " strong { (view.say("follows-stop")) } " " (view.speak(stop)) }
        }
        p.sentence { (view.speak(&found.headline)) }
        figure.picture { (PreEscaped(View::bare(&picture.svg))) }
        h4 { (view.say("follows-would-part")) }
        ol {
            @for next in &found.next_measurements {
                li { (view.speak(&next.measurement)) " " span.quiet { (view.speak(&next.because)) } }
            }
        }
        h4 { (view.say("follows-remedy")) }
        ol {
            @for cause in found.causes.iter().filter(|c| !c.remedy.is_empty()).take(5) {
                li {
                    strong { (view.speak(&cause.cause)) } ", " (view.speak(&counsel::phrase::chance(cause.chance))) ". "
                    (view.speak(&cause.remedy))
                }
            }
        }
    }
}
