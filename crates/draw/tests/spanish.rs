//! Pictures in Spanish: no English is left in them, and numbers take the decimal comma.
use crate::common::job;
use counsel::{Change, Options};
use draw::place::Place;
use draw::{Drawn, Picture, Sheet};
use job::Job;
use std::collections::BTreeSet;
use words::Language;

const BOATS: [&str; 7] = ["kittiwake", "gannet", "razorbill", "turnstone", "guillemot", "cormorant", "whimbrel"];

/// Words that both languages share, or that are signs, names of people and standards.
const ALIKE: [&str; 43] = [
    "rpm",
    "in",
    "mm",
    "kn",
    "kW",
    "Hz",
    "L/h",
    "kg",
    "t",
    "g/kWh",
    "\u{b5}m",
    "kPa",
    "m",
    "R",
    "\u{3c3}",
    "\u{3c4}",
    "x",
    "diesel",
    "motor",
    "total",
    "normal",
    "error",
    "usual",
    "no",
    "a",
    "e",
    "as",
    "A",
    "B",
    "C",
    "D",
    "II",
    "III",
    "S",
    "Burrill",
    "Emerson",
    "Birk",
    "Wageningen",
    "skeg",
    "compare",
    "metal",
    "V",
    "come",
];

/// Every picture that a job says enough for, in both languages.
fn pictures(job: &Job, width: f64) -> Vec<(&'static str, [Picture; 2])> {
    let options = Options { boats: 120, seed: 1 };
    let sheets = [Language::English, Language::Spanish].map(|language| Sheet {
        boat: &job.title,
        date: "2026-05-02",
        width,
        language,
    });
    let mut all: Vec<(&'static str, [Picture; 2])> = Vec::new();
    let mut add = |name, draw: &dyn Fn(&Sheet) -> Option<Picture>| {
        if let [Some(english), Some(spanish)] = sheets.map(|sheet| draw(&sheet)) {
            all.push((name, [english, spanish]));
        }
    };
    let curves = counsel::curves(job, &options).expect("curves");
    add("demand", &|s| Some(draw::demand::picture(s, &curves, None)));
    add("flow", &|s| Some(draw::flow::picture(s, &curves.flows)));
    add("speeds", &|s| Some(draw::speeds::picture(s, &curves)));
    add("cavitation", &|s| Some(draw::cavitation::picture(s, &curves)));
    let change = Change { pitch: job.propeller.pitch.as_ref().map(|p| 0.88 * p.middle), ..Change::default() };
    let after = counsel::curves_after(job, &change, &options).expect("curves after");
    let compared = counsel::compare(job, &change, &options).expect("compared");
    add("change", &|s| Some(draw::demand::picture(s, &after, Some(&compared))));
    let choice = counsel::choose(job, &options).ok();
    add("shortlist", &|s| choice.as_ref().map(|c| draw::shortlist::picture(s, c)));
    let evidence = counsel::evidence(job, &options).ok();
    add("known", &|s| evidence.as_ref().map(|e| draw::known::picture(s, e)));
    let diagnosis = counsel::diagnose(job, &options).ok();
    add("causes", &|s| diagnosis.as_ref().map(|d| draw::causes::picture(s, d)));
    let fit = counsel::fit(job, &options).ok();
    add("rates", &|s| fit.as_ref().map(|f| draw::rates::picture(s, f)));
    add("walk", &|s| fit.as_ref().map(|f| draw::walk::picture(s, f)));
    let order = counsel::order(job, &options).ok();
    add("bore", &|s| order.as_ref().and_then(|o| draw::bore::picture(s, &o.bore)));
    let drawn = Drawn::of_job(job);
    add("propeller", &|s| drawn.as_ref().map(|d| draw::propeller::picture(s, d)));
    let place = Place::of_job(job);
    add("place", &|s| place.as_ref().map(|p| draw::place::picture(s, p)));
    if let Some(drawn) = &drawn {
        let [english, spanish] = sheets.map(|sheet| crate::teach::all(&sheet, drawn));
        all.extend(english.into_iter().zip(spanish).map(|((name, english), (_, spanish))| (name, [english, spanish])));
    }
    all
}

/// Texts of a picture, its title and description among them.
fn texts(picture: &Picture) -> Vec<String> {
    let mut reader = quick_xml::Reader::from_str(&picture.svg);
    let (mut found, mut style) = (Vec::new(), false);
    loop {
        use quick_xml::events::Event;
        match reader.read_event().expect("well-formed") {
            Event::Start(e) => style = e.name().as_ref() == "style",
            Event::Text(text) if !style => found.push(text.to_string()),
            Event::Eof => break,
            _ => {}
        }
    }
    found
}

/// Words of letters alone.
fn worded(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !(c.is_alphabetic() || c == '/')).filter(|word| word.chars().any(char::is_alphabetic))
}

/// What people wrote in the job, and the names of its readings, stays as it is.
fn own_texts(job: &Job) -> Vec<String> {
    let labels = job.readings.iter().filter_map(|r| r.label.clone());
    std::iter::once(job.title.clone()).chain(labels).collect()
}

/// The text without what people wrote, without the names of commands, and without a word cut at its end.
fn ours(text: &str, own: &[String]) -> String {
    let mut text = text.split('`').step_by(2).collect::<Vec<_>>().join(" ");
    for name in own {
        text = text.replace(name.as_str(), " ");
        // Shortened to the room.
        if let Some((begin, rest)) = text.split_once('\u{2026}').map(|(a, b)| (a.to_owned(), b.to_owned())) {
            let cut =
                (4..name.len()).rev().filter(|at| name.is_char_boundary(*at)).find(|at| begin.ends_with(&name[..*at]));
            text = cut.map_or(format!("{begin}\u{2026}{rest}"), |at| begin[..begin.len() - at].to_owned() + &rest);
        }
    }
    match text.strip_suffix('\u{2026}').map(|cut| cut.rsplit_once(' ').map_or("", |(whole, _)| whole).to_owned()) {
        Some(whole) => whole,
        None => text,
    }
}

/// Every word of a Spanish picture that stands in the same picture in English is one that both languages share.
#[test]
fn no_english_is_left_in_spanish() {
    let mut left: BTreeSet<String> = BTreeSet::new();
    for boat in BOATS {
        let job = job(boat);
        let own = own_texts(&job);
        for width in [360.0, 900.0] {
            for (name, [english, spanish]) in pictures(&job, width) {
                let said: Vec<String> = texts(&english).iter().map(|text| ours(text, &own)).collect();
                let said: BTreeSet<&str> = said.iter().flat_map(|text| worded(text)).collect();
                for text in texts(&spanish).iter().map(|text| ours(text, &own)) {
                    let same: Vec<&str> =
                        worded(&text).filter(|word| said.contains(word) && !ALIKE.contains(word)).collect();
                    if !same.is_empty() {
                        left.insert(format!("{boat} {name}: {same:?} in `{text}`"));
                    }
                }
            }
        }
    }
    let list: Vec<String> = left.into_iter().collect();
    assert!(list.is_empty(), "{} texts:\n{}", list.len(), list.join("\n"));
}

/// A full stop between digits is a decimal point left over.
#[test]
fn numbers_take_the_comma() {
    for boat in ["kittiwake", "cormorant"] {
        let job = job(boat);
        for (name, [_, spanish]) in pictures(&job, 900.0) {
            for text in texts(&spanish) {
                let letters: Vec<char> = text.chars().collect();
                let point = letters.windows(3).any(|w| w[0].is_ascii_digit() && w[1] == '.' && w[2].is_ascii_digit());
                assert!(!point, "{boat} {name}: `{text}`");
            }
        }
    }
}
