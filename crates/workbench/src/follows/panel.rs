//! The right side of a job's page.

use super::{Asked, Known, View, origin, sliders, tried};
use counsel::Lack;
use counsel::report::{Gravity, Judgement};
use draw::Sheet;
use maud::{Markup, PreEscaped, html};

/// Everything that follows from a job, in the order in which it is asked about: the sentence, the picture that proves it,
/// findings, what to measure next, what a change would do. `at` is the job's address, `/jobs/name`.
#[must_use]
pub fn panel(view: &View, at: &str, known: &Known, asked: &Asked) -> Markup {
    let judged = match known.judged() {
        Ok(judged) => judged,
        Err(lack) => return lacking(view, at, lack),
    };
    let job = known.prepared.job();
    let sheet = Sheet { boat: &job.title, date: &last_date(job), width: view.width, language: view.language };
    let picture = draw::demand::picture(&sheet, &known.prepared.curves(None), None);
    html! {
        section.follows id="follows" aria-labelledby="follows-head" data-at=(at) {
            h2 #follows-head { (view.say("follows-follows")) }
            p.sentence #verdict { (view.speak(&judged.headline)) }
            figure.picture { (PreEscaped(View::bare(&picture.svg))) }
            (chances(view, judged))
            (numbers(view, judged))
            (origin::hangs_on(view, &judged.hangs_on))
            (findings(view, judged))
            h3 { (view.say("follows-measure-next")) }
            p { (view.speak(&judged.measure_next)) }
            p.more {
                a href=(format!("{at}/causes")) data-part="causes" { (view.say("follows-causes")) }
                " "
                a href=(format!("{at}/shortlist")) data-part="shortlist" { (view.say("follows-shortlist")) }
                " "
                a href=(format!("{at}/fits")) data-part="fits" { (view.say("follows-fits")) }
            }
            div #part aria-live="polite" {}
            h3 #try-title { (view.say("follows-try")) }
            (sliders::form(view, at, known, asked))
            div #tried { (tried::tried(view, known, asked)) }
            h3 { (view.say("follows-drawing")) }
            div #tried-drawing { (tried::drawing(view, job, asked)) }
            (origin::methods(view, &["running-balance", "full-throttle-band"]))
            @if !judged.notes.is_empty() {
                h3 { (view.say("follows-notes")) }
                ul { @for note in &judged.notes { li { (view.speak(note)) } } }
            }
            p.quiet { (view.speak(&judged.crowd.statement)) }
            p.quiet { (view.say("follows-caution")) }
        }
    }
}

/// What is missing before anything can follow, each with the way to its field.
#[must_use]
pub fn lacking(view: &View, at: &str, lack: &Lack) -> Markup {
    let look = crate::pages::Look { language: view.language, imperial: view.units == super::Units::Imperial };
    let label = |key: &str| crate::pages::label(&look, key.rsplit('.').next().unwrap_or(key));
    let field = |key: &str| format!("{at}#f-{}", key.replace(['.', '_'], "-"));
    html! {
        section.follows id="follows" aria-labelledby="follows-head" {
            h2 #follows-head { (view.say("follows-follows")) }
            p.sentence #verdict { (view.say("follows-lacking")) }
            ul {
                @for missing in &lack.missing {
                    li { a href=(field(missing.key)) { strong { (label(missing.key)) } } ": " (view.speak(missing.why)) "; " (view.speak(missing.how)) }
                }
            }
        }
    }
}

fn chances(view: &View, judged: &Judgement) -> Markup {
    let v = &judged.verdict;
    html! {
        ul.chances aria-label=(view.say("follows-chances")) {
            @for (name, p) in [
                ("follows-too-much", v.over_pitched),
                ("follows-right", v.right),
                ("follows-too-little", v.under_pitched),
            ] {
                li { span { (view.say(name)) } " " strong { (view.speak(&counsel::phrase::chance(p))) } }
            }
        }
    }
}

fn numbers(view: &View, judged: &Judgement) -> Markup {
    let (full, limits) = (&judged.full_throttle, &judged.limits);
    html! {
        dl.numbers {
            @for (name, band) in [
                ("follows-engine-speed", &full.engine_speed),
                ("follows-boat-speed", &full.speed),
                ("follows-power", &full.power),
                ("follows-fuel", &full.fuel),
                ("follows-slip", &limits.apparent_slip),
                ("follows-efficiency", &limits.efficiency),
                ("follows-cavitation", &limits.back_cavitation),
            ] {
                div { dt { (view.say(name)) } dd { (view.band(band)) } }
            }
            div {
                dt { (view.say("follows-accepted")) }
                dd title=(judged.accepted_band.source) {
                    (view.speak(&format!(
                        "{} to {} rpm",
                        counsel::phrase::number(judged.accepted_band.low, 10.0),
                        counsel::phrase::number(judged.accepted_band.high, 10.0)
                    )))
                }
            }
        }
    }
}

/// Mark and word of a finding's gravity.
pub(super) fn gravity(gravity: Gravity) -> (&'static str, &'static str) {
    match gravity {
        Gravity::Stop => ("\u{25a0}", "follows-stop"),
        Gravity::Mend => ("\u{25b2}", "follows-mend"),
        Gravity::Watch => ("\u{25cf}", "follows-watch"),
        Gravity::Well => ("\u{2713}", "follows-well"),
    }
}

fn findings(view: &View, judged: &Judgement) -> Markup {
    html! {
        h3 { (view.say("follows-findings")) }
        ul.findings {
            @for finding in &judged.findings {
                @let (mark, word) = gravity(finding.gravity);
                li {
                    p {
                        span.mark aria-hidden="true" { (mark) } " "
                        strong { (view.say(word)) } " "
                        (view.speak(&finding.sentence))
                    }
                    @if !finding.advice.is_empty() { p { (view.speak(&finding.advice)) } }
                    @if let Some(caution) = &finding.caution { p.caution { (view.speak(caution)) } }
                    details.origin {
                        summary { (view.say("follows-where-from")) }
                        p { (view.speak(&finding.source)) }
                        @if !finding.hangs_on.is_empty() {
                            p {
                                (view.say("follows-hangs-on")) ": "
                                @for (i, quantity) in finding.hangs_on.iter().enumerate() {
                                    @if i > 0 { ", " }
                                    (view.speak(quantity))
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// The date of the last reading.
pub(crate) fn last_date(job: &job::Job) -> String {
    job.readings.iter().filter_map(|r| r.date.clone()).max().unwrap_or_default()
}
