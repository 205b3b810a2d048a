//! The form of the changes: sliders for what is measured, choices for what has words. Without a script it is sent with a
//! button; with one every move is asked at once.

use super::{Asked, Known, Units, View};
use counsel::Change;
use draw::shaped::Bend;
use job::words::Word;
use job::{Cup, Growth, Job};
use maud::{Markup, html};

/// One slider, SI.
struct Slider {
    key: &'static str,
    name: &'static str,
    fitted: f64,
    /// Whether somebody said or measured it.
    stated: bool,
    low: f64,
    high: f64,
    step: f64,
    asked: Option<f64>,
    spoken: Spoken,
}

/// How a slider's value is written.
#[derive(Clone, Copy)]
enum Spoken {
    Length,
    Mass,
    Whole,
    Degrees,
    Hundredths,
}

impl Spoken {
    fn word(self) -> &'static str {
        match self {
            Spoken::Length => "length",
            Spoken::Mass => "mass",
            Spoken::Whole => "whole",
            Spoken::Degrees => "degrees",
            Spoken::Hundredths => "hundredths",
        }
    }

    fn text(self, view: &View, value: f64) -> String {
        match self {
            Spoken::Length => view.length(value),
            Spoken::Mass => view.mass(value),
            Spoken::Whole => format!("{value:.0}"),
            Spoken::Degrees => format!("{value:.0}\u{b0}"),
            Spoken::Hundredths => words::number(view.language, &format!("{value:.2}")),
        }
    }
}

/// Whether a slider starts from what somebody said or measured, and not from what is usual.
fn stated(job: &Job, key: &str) -> bool {
    let p = &job.propeller;
    let measured = job.survey.is_some();
    match key {
        "pitch" => measured || p.pitch.is_some(),
        "diameter" => measured || p.diameter.is_some(),
        "blades" => measured || p.blades.is_some(),
        "area" => measured || p.area_ratio.is_some(),
        "rake" => measured || p.rake.is_some(),
        "skew" => measured || p.skew.is_some(),
        "ratio" => job.drive.reduction.is_some(),
        "weight" => job.boat.displacement.is_some(),
        _ => true,
    }
}

fn sliders(view: &View, known: &Known, asked: &Asked) -> Vec<Slider> {
    let fitted = known.prepared.fitted();
    let c = &asked.change;
    // A quarter of an inch or five millimetres: no workshop works finer by a number on a page.
    let step = if view.units == Units::Imperial { 0.00635 } else { 0.005 };
    // The fitted value is on the scale, so that the slider can be brought back to it.
    let around = |value: f64, low: f64, high: f64, step: f64| {
        let down = ((value * (1.0 - low)) / step).round() * step;
        let up = ((value * (high - 1.0)) / step).round() * step;
        (value - down, value + up)
    };
    let mut list = Vec::new();
    let mut add = |key, name, fitted: f64, (low, high): (f64, f64), step, asked, spoken| {
        list.push(Slider {
            key,
            name,
            fitted,
            stated: stated(known.prepared.job(), key),
            low,
            high,
            step,
            asked,
            spoken,
        });
    };
    let (p, d, m) = (fitted.pitch, fitted.diameter, fitted.mass);
    add("pitch", "follows-pitch", p, around(p, 0.6, 1.5, step), step, c.pitch, Spoken::Length);
    add("diameter", "follows-diameter", d, around(d, 0.75, 1.25, step), step, c.diameter, Spoken::Length);
    let blades = f64::from(fitted.blades);
    add("blades", "follows-blades", blades, (2.0, 6.0), 1.0, c.blades.map(f64::from), Spoken::Whole);
    let area = fitted.area_ratio;
    add("area", "follows-area", area, around(area, 0.6, 1.8, 0.01), 0.01, c.area_ratio, Spoken::Hundredths);
    let ratio = fitted.reduction;
    add("ratio", "follows-ratio", ratio, around(ratio, 0.6, 1.6, 0.05), 0.05, c.reduction, Spoken::Hundredths);
    let tenth = 10_f64.powf((m / 50.0).log10().floor()).max(1.0);
    if let Some(drawn) = draw::shaped::shaped(known.prepared.job(), &Change::default(), Bend::default()) {
        let fitted = draw::shaped::bend(&drawn);
        for (key, name, value, (low, high), asked) in [
            ("rake", "follows-rake", fitted.rake, (-10.0_f64, 30.0_f64), asked.bend.rake),
            ("skew", "follows-skew", fitted.skew, (0.0, 60.0), asked.bend.skew),
        ] {
            if let Some(value) = value.map(f64::round) {
                add(key, name, value, (low.min(value), high.max(value)), 1.0, asked, Spoken::Degrees);
            }
        }
    }
    add("weight", "follows-weight", m, around(m, 0.7, 1.4, tenth), tenth, c.displacement, Spoken::Mass);
    list
}

/// The form.
#[must_use]
pub(super) fn form(view: &View, at: &str, known: &Known, asked: &Asked) -> Markup {
    let c = &asked.change;
    let body = html! {
        @for slider in sliders(view, known, asked) { (range(view, &slider)) }
        (cup(view, asked))
        (choice(view, "growth", "follows-growth", Growth::WORDS, c.hull_growth.map(Word::word)))
        (choice(view, "blade-growth", "follows-blade-growth", Growth::WORDS, c.blade_growth.map(Word::word)))
    };
    around(view, at, &format!("{at}/follows"), &body)
}

/// One of them, on a page of its own.
#[must_use]
pub(crate) fn one(view: &View, at: &str, known: &Known, asked: &Asked, key: &str) -> Markup {
    let body = html! {
        @if key == "cup" { (cup(view, asked)) }
        @for slider in sliders(view, known, asked).iter().filter(|s| s.key == key) { (range(view, slider)) }
    };
    around(view, at, "", &body)
}

/// `page` is the address the form is sent to without a script; empty for the page it stands on.
fn around(view: &View, at: &str, page: &str, body: &Markup) -> Markup {
    let units = if view.units == Units::Imperial { "imperial" } else { "metric" };
    html! {
        form #try method="get" action=[(!page.is_empty()).then_some(page)] aria-labelledby="try-title"
            data-fetch=(format!("{at}/try")) data-drawing=(format!("{at}/try/drawing")) data-units=(units) data-decimal=(words::number(view.language, "0.5")) {
            (body)
            div.buttons {
                button type="submit" { (view.say("follows-try-it")) }
                button type="reset" { (view.say("follows-as-fitted")) }
            }
        }
    }
}

fn range(view: &View, s: &Slider) -> Markup {
    let value = s.asked.unwrap_or(s.fitted);
    html! {
        div.slider {
            label for=(format!("try-{}", s.key)) { (view.say(s.name)) }
            output for=(format!("try-{}", s.key)) { (s.spoken.text(view, value)) }
            input type="range" id=(format!("try-{}", s.key)) name=(s.key) min=(short(s.low)) max=(short(s.high))
                step=(short(s.step)) value=(short(value)) data-fitted=(short(s.fitted)) data-spoken=(s.spoken.word())
                aria-valuetext=(s.spoken.text(view, value));
            span.fitted {
                (view.say(if s.stated { "follows-fitted" } else { "follows-not-said" })) " " (s.spoken.text(view, s.fitted))
            }
        }
    }
}

fn cup(view: &View, asked: &Asked) -> Markup {
    choice(view, "cup", "follows-cup", Cup::WORDS, asked.change.cup.map(Word::word))
}

fn choice(view: &View, key: &str, name: &str, words: &[(&str, &str)], asked: Option<&str>) -> Markup {
    html! {
        div.slider {
            label for=(format!("try-{key}")) { (view.say(name)) }
            select id=(format!("try-{key}")) name=(key) {
                option value="" selected[asked.is_none()] { (view.say("follows-as-it-is")) }
                @for (word, _) in words {
                    option value=(word) selected[asked == Some(word)] { (view.speak(word)) }
                }
            }
        }
    }
}

/// A number in an attribute: six decimals are a thousandth of a millimetre.
fn short(value: f64) -> String {
    let text = format!("{value:.6}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
