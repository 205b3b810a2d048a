//! A trial log looked at: speed and engine speed over time, the readings it offers, and what is doubtful about them.

use super::field::label;
use super::{Look, frame};
use crate::follows::View;
use crate::server::LogSaid;
use crate::store::{Kept, LOGS_KEPT, Name};
use counsel::report::Band;
use draw::stretches::{Moment, Steady, Words};
use job::keys::{self, Shape};
use job::{Job, Word as _};
use logs::{Doubt, KNOT, Log, Proposal, Trial};
use maud::{Markup, PreEscaped, html};

/// Logs read, and what they offer.
pub struct Brought {
    /// The logs.
    pub logs: Vec<Log>,
    /// What they offer.
    pub trial: Trial,
    /// What was said of them.
    pub said: LogSaid,
    /// Width of the picture, px.
    pub width: f64,
}

/// The form that takes a log in. It stands on the job's page too.
#[must_use]
pub fn bring(look: &Look, at: &str) -> Markup {
    html! {
        form.bring method="post" action={ (at) "/log" } enctype="multipart/form-data" {
            label for="bring-log" { (look.say("workbench-log-bring")) }
            input #bring-log type="file" name="log" multiple required accept=".gpx,.nmea,.csv,.txt,.log,.json,.jsonl,.ndjson,.tsv"
                aria-describedby="bring-hint";
            p.hint #bring-hint { (look.say("workbench-log-hint")) }
            button { (look.say("workbench-log-look")) }
        }
    }
}

/// The page.
#[must_use]
pub fn log(look: &Look, name: &Name, job: &Job, kept: &[Kept], brought: Option<&Brought>) -> Markup {
    let at = format!("/jobs/{}", name.escaped());
    let body = html! {
        h1 { (look.say("workbench-log")) ": " bdi { (if job.title.is_empty() { name.as_str() } else { &job.title }) } }
        p { a href={ (at) "#readings" } { (look.say("workbench-back-job")) } }
        @if let Some(brought) = brought { (looked_at(look, &at, job, brought)) }
        section.logs aria-labelledby="logs-more" {
            h2 #logs-more { (look.say(if brought.is_some() { "workbench-log-another" } else { "workbench-log-one" })) }
            (bring(look, &at))
            @if !kept.is_empty() {
                h3 { (look.say("workbench-log-kept")) }
                p.hint { (look.with("workbench-log-kept-hint", "count", &LOGS_KEPT.to_string())) }
                ul.kept { @for one in kept { li { a href={ (at) "/log?log=" (one.id) } { bdi { (one.name) } } } } }
            }
        }
    };
    frame(look, &look.say("workbench-log"), body)
}

fn looked_at(look: &Look, at: &str, job: &Job, brought: &Brought) -> Markup {
    let trial = &brought.trial;
    html! {
        figure.picture { (PreEscaped(View::bare(&picture(look, job, brought)))) }
        (doubts(look, &trial.doubts))
        form.settings-of-log method="get" action={ (at) "/log" } {
            @for id in &brought.said.logs { input type="hidden" name="log" value=(id); }
            label { span { (label(look, "by")) } (by(look, brought)) }
            label { span { (look.say("workbench-log-steady")) }
                input type="text" inputmode="numeric" name="steady" value=(format!("{:.0}", brought.said.steady)); }
            button { (look.say("workbench-log-again")) }
        }
        @if !trial.proposals.is_empty() {
            form.offers method="post" action={ (at) "/log/take" } {
                h2 { (look.count("workbench-log-offers", trial.proposals.len())) }
                @for id in &brought.said.logs { input type="hidden" name="log" value=(id); }
                input type="hidden" name="by" value=(brought.said.by.word());
                input type="hidden" name="steady" value=(brought.said.steady);
                ol { @for (number, proposal) in (1..).zip(&trial.proposals) { (offer(look, job, number, proposal)) } }
                @if trial.proposals.iter().any(|proposal| !proposal.is_in(job)) {
                    button { (look.say("workbench-log-take")) }
                }
            }
        }
        @for log in &brought.logs { (read(look, log)) }
    }
}

/// By what the engine speed was read: the choices of a reading.
fn by(look: &Look, brought: &Brought) -> Markup {
    let words: &[(&str, &str)] = match keys::find("reading.0.by").map(|key| key.shape) {
        Some(Shape::Choice(words)) => words,
        _ => &[],
    };
    html! {
        select name="by" {
            @for (word, means) in words { option value=(word) selected[*word == brought.said.by.word()] { (look.speak(means)) } }
        }
    }
}

fn offer(look: &Look, job: &Job, number: usize, proposal: &Proposal) -> Markup {
    let (reading, runs) = (&proposal.reading, &proposal.runs);
    let there = proposal.is_in(job);
    let (low, high) = ((runs.speed - runs.half) / KNOT, (runs.speed + runs.half) / KNOT);
    let speed = Band { low, middle: runs.speed / KNOT, high, unit: "kn" };
    let quality = look.say(&format!("workbench-log-{}", proposal.quality.word()));
    let legs: Vec<String> = runs
        .stretches
        .iter()
        .map(|s| {
            let course = s.course.map(|c| format!(", {c:03.0}\u{b0}")).unwrap_or_default();
            format!("{:.0} s{course}", s.seconds)
        })
        .collect();
    html! {
        li value=(number) {
            @if there {
                p { span aria-hidden="true" { "\u{2713} " } strong { (look.say("workbench-log-there")) } }
            } @else {
                label.tick { input type="checkbox" name="take" value=(number) checked[proposal.quality != logs::Quality::Weak]; " "
                    (look.with("workbench-log-take-one", "number", &number.to_string())) }
            }
            p { bdi { (reading.label.as_deref().unwrap_or_default()) } @if let Some(date) = &reading.date { ", " (date) } }
            dl.numbers {
                @if let Some(rpm) = runs.rpm {
                    div { dt { (label(look, "engine_speed")) } dd { (look.speak(&format!("{} rpm", counsel::phrase::number(rpm, 1.0)))) } }
                }
                div { dt { (look.say("workbench-log-speed")) } dd { (look.speak(&counsel::phrase::span(&speed))) } }
                @if let Some(current) = runs.current {
                    div { dt { (look.say("workbench-log-current")) } dd { (look.speak(&format!("{:.1} kn", current.abs() / KNOT))) } }
                }
                div { dt { (look.count("workbench-log-runs", legs.len())) } dd { (legs.join("; ")) } }
                div { dt { (look.say("workbench-log-worth")) } dd { (quality) } }
            }
            (doubts(look, &proposal.doubts))
            @if !there {
                label.tick { input type="checkbox" name="full" value=(number); " " (look.say("workbench-log-full")) }
                p.hint { (look.say(if proposal.full_throttle { "workbench-log-highest" } else { "workbench-log-not-highest" })) }
            }
        }
    }
}

fn doubts(look: &Look, list: &[Doubt]) -> Markup {
    html! {
        @if !list.is_empty() {
            ul.doubts {
                @for doubt in list { li { span.mark aria-hidden="true" { "\u{25cf}" } " " (look.speak(&doubt.message)) "; " (look.speak(&doubt.help)) "." } }
            }
        }
    }
}

/// What a log was, and what of it could not be read.
fn read(look: &Look, log: &Log) -> Markup {
    let counts = &log.counts;
    let (lines, used, refused) =
        (counts.lines.to_string(), counts.understood.to_string(), (counts.refused + counts.implausible).to_string());
    html! {
        section.read {
            h3 { bdi { (log.name) } }
            p.quiet {
                (look.with_all("workbench-log-read", &[
                    ("format", log.format.name()), ("lines", &lines), ("used", &used), ("refused", &refused),
                ]))
            }
            (doubts(look, &log.doubts))
            @if !log.examples.is_empty() {
                details { summary { (look.say("workbench-log-refused")) }
                    @for example in &log.examples {
                        p.line { (example.line) ": " bdi { (example.text) } " \u{2014} " (look.speak(&example.why)) }
                    }
                }
            }
        }
    }
}

fn picture(look: &Look, job: &Job, brought: &Brought) -> String {
    let samples = logs::join(&brought.logs);
    let moments: Vec<Moment> = samples
        .iter()
        .map(|s| Moment {
            time: s.time,
            speed: s.over_ground.or(s.through_water).map(|v| v / KNOT),
            engine_speed: s.rpm(),
        })
        .collect();
    let steady: Vec<Steady> = (1..)
        .zip(&brought.trial.proposals)
        .flat_map(|(number, proposal)| proposal.runs.stretches.iter().map(move |s| (number, s)))
        .map(|(number, s)| Steady {
            from: s.from,
            to: s.to,
            number,
            course: s.course.map(|c| format!("{c:03.0}\u{b0}")).unwrap_or_default(),
            speed: s.speed().map(|mean| mean.value / KNOT),
            engine_speed: s.rpm.map(|mean| mean.value),
        })
        .collect();
    let mut steady = steady;
    steady.sort_by(|a, b| a.from.total_cmp(&b.from));
    let dated = samples.last().is_some_and(|s| logs::date_text(s.time).is_some());
    let day: Option<draw::stretches::Day> = if dated { Some(logs::date_text) } else { None };
    let date = samples.first().and_then(|s| logs::date_text(s.time)).unwrap_or_default();
    let sentence = look.count("workbench-log-sentence", brought.trial.proposals.len());
    let say = |name: &str| look.say(name);
    let (name, desc) = (say("workbench-log-picture"), say("workbench-log-picture-says"));
    let (speed, engine) = (say("workbench-log-axis-speed"), say("workbench-log-axis-rpm"));
    let (clock, elapsed) = (say("workbench-log-axis-clock"), say("workbench-log-axis-elapsed"));
    let words = Words {
        sentence: &sentence,
        name: &name,
        desc: &desc,
        speed: &speed,
        engine_speed: &engine,
        clock: &clock,
        elapsed: &elapsed,
    };
    let sheet = draw::Sheet { boat: &job.title, date: &date, width: brought.width, language: look.language };
    draw::stretches::picture(&sheet, &moments, &steady, day, &words).svg
}
