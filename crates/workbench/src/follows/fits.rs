//! Whether it fits and holds, which way it turns and walks, and the order: for the propeller ordered where an order stands in the
//! job, else for the one fitted.

use super::View;
use super::panel::{gravity, lacking, last_date};
use counsel::Options;
use counsel::fit::report::Check;
use draw::Sheet;
use job::Job;
use maud::{Markup, PreEscaped, html};

/// Fit, hand, paddlewheel effect and order, with the aperture as it is measured now.
#[must_use]
pub fn fits(view: &View, at: &str, job: &Job, options: &Options) -> Markup {
    let fit = match counsel::fit(&counsel::order::ordered(job), options) {
        Ok(fit) => fit,
        Err(lack) => return lacking(view, at, &lack),
    };
    let sheet = Sheet { boat: &job.title, date: &last_date(job), width: view.width, language: view.language };
    let place = draw::place::Place::of_job(job).map(|place| draw::place::picture(&sheet, &place));
    let (known, wanted): (Vec<&Check>, Vec<&Check>) = fit.checks.iter().partition(|check| check.known);
    html! {
        h3 { (view.say("follows-fits")) }
        p.sentence { (view.speak(&fit.headline)) }
        @if let Some(picture) = place { figure.picture { (PreEscaped(View::bare(&picture.svg))) } }
        ul.findings { @for check in known { (one(view, check)) } }
        @if !wanted.is_empty() {
            h3 { (view.say("follows-fits-unknown")) }
            ul { @for check in wanted { li { (view.speak(check.subject)) ": " (view.speak(&check.measure)) } } }
        }
        h3 { (view.say("follows-fits-hand")) }
        p { (view.speak(&fit.hand.sentence)) }
        @if let Some(pair) = &fit.hand.pair { p { (view.speak(pair)) } }
        p { (view.speak(&fit.walk.sentence)) }
        ul { @for reason in &fit.walk.because { li { (view.speak(reason)) } } }
        (order(view, at, job, options))
    }
}

fn one(view: &View, check: &Check) -> Markup {
    let (mark, word) = gravity(check.gravity);
    html! {
        li {
            p { span.mark aria-hidden="true" { (mark) } " " strong { (view.say(word)) } " " (view.speak(&check.sentence)) }
            @if !check.measure.is_empty() { p { (view.speak(&check.measure)) } }
            @if let Some(caution) = check.caution { p.caution { (view.speak(caution)) } }
            details.origin { summary { (view.say("follows-where-from")) } p { (view.speak(&check.rule)) } }
        }
    }
}

fn order(view: &View, at: &str, job: &Job, options: &Options) -> Markup {
    let Ok(order) = counsel::order::order(job, options) else { return html! {} };
    html! {
        h3 { (view.say("follows-order")) }
        @if order.refused.is_empty() {
            p.sentence { (view.speak(&order.line)) }
        } @else {
            p { strong { (view.say("follows-order-refused")) } }
            ul { @for why in &order.refused { li { (view.speak(why)) } } }
        }
        @if !order.doubts.is_empty() {
            p { (view.say("follows-order-open")) }
            ul { @for doubt in &order.doubts { li { (view.speak(doubt)) } } }
        }
        p.more { a href=(format!("{at}/papers")) { (view.say("workbench-papers")) } }
    }
}
