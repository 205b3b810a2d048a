//! A change tried: its sentence, before and after, and the picture that shows it.

use super::{Asked, Known, View, origin, panel};
use counsel::report::{Band, Comparison};
use draw::Sheet;
use job::Job;
use maud::{Markup, PreEscaped, html};

/// What a change would do. This is what a slider fetches on every move.
#[must_use]
pub fn tried(view: &View, known: &Known, asked: &Asked) -> Markup {
    if asked.change.is_empty() {
        let bent = asked.bend.rake.is_some() || asked.bend.skew.is_some();
        return html! { p.quiet { (view.say(if bent { "follows-try-bent" } else { "follows-try-nothing" })) } };
    }
    let prepared = &known.prepared;
    let (answer, curves) = prepared.tried(&asked.change);
    let job = prepared.job();
    let sheet = Sheet { boat: &job.title, date: &panel::last_date(job), width: view.width, language: view.language };
    let picture = draw::demand::picture(&sheet, &curves, Some(&answer));
    html! {
        // The picture opens with the sentence; this one is for those who cannot see it.
        p.unseen role="status" { (view.speak(&answer.headline)) }
        figure.picture { (PreEscaped(View::bare(&picture.svg))) }
        (before_and_after(view, &answer))
        (origin::hangs_on(view, &answer.hangs_on))
    }
}

/// The propeller as the change would leave it: fetched beside the answer, and only when the blade was changed.
#[must_use]
pub fn drawing(view: &View, job: &Job, asked: &Asked) -> Markup {
    let Some(drawn) = draw::shaped::shaped(job, &asked.change, asked.bend) else {
        return html! { p.quiet { (view.say("follows-blade-none")) } };
    };
    let sheet = Sheet { boat: &job.title, date: &panel::last_date(job), width: view.width, language: view.language };
    let picture = draw::propeller::picture(&sheet, &drawn);
    html! { figure.picture { (PreEscaped(View::bare(&picture.svg))) } }
}

fn before_and_after(view: &View, answer: &Comparison) -> Markup {
    let (before, after) = (&answer.before, &answer.after);
    let chance = |p: f64| view.speak(&counsel::phrase::chance(p));
    let row = |name: &str, b: &Band, a: &Band, difference: Option<&Band>| {
        html! {
            tr {
                th scope="row" { (view.say(name)) }
                td.figure { (view.band(b)) }
                td.figure { (view.band(a)) }
                td.figure { @if let Some(d) = difference { (view.band(d)) } }
            }
        }
    };
    html! {
        div.wide tabindex="0" role="region" aria-label=(view.say("follows-before-after")) {
            table {
                caption { (view.speak(&before.what)) " \u{2192} " (view.speak(&after.what)) }
                thead { tr {
                    th scope="col" { (view.say("follows-quantity")) }
                    th scope="col" { (view.say("follows-before")) }
                    th scope="col" { (view.say("follows-after")) }
                    th scope="col" { (view.say("follows-difference")) }
                } }
                tbody {
                    (row("follows-engine-speed", &before.full_throttle.engine_speed, &after.full_throttle.engine_speed,
                        Some(&answer.difference.engine_speed)))
                    (row("follows-boat-speed", &before.full_throttle.speed, &after.full_throttle.speed,
                        Some(&answer.difference.speed)))
                    (row("follows-cruise-fuel", &before.cruise_fuel, &after.cruise_fuel,
                        Some(&answer.difference.cruise_fuel)))
                    (row("follows-slip", &before.limits.apparent_slip, &after.limits.apparent_slip, None))
                    (row("follows-cavitation", &before.limits.back_cavitation, &after.limits.back_cavitation, None))
                    @for (name, b, a) in [
                        ("follows-too-much", before.verdict.over_pitched, after.verdict.over_pitched),
                        ("follows-right", before.verdict.right, after.verdict.right),
                        ("follows-too-little", before.verdict.under_pitched, after.verdict.under_pitched),
                    ] {
                        tr { th scope="row" { (view.say(name)) } td { (chance(b)) } td { (chance(a)) } td {} }
                    }
                }
            }
        }
    }
}
