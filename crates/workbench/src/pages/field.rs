//! One key as a field: what was entered, its unit and source, what is wrong with it, and `don't know`.

use super::Look;
use crate::store::{Drafts, Left, shown};
use job::keys::{Key, Measure, Shape};
use job::{Document, Source, Word as _};
use maud::{Markup, html};

/// What people call a key.
#[must_use]
pub fn label(look: &Look, key: &str) -> String {
    let name = format!("workbench-key-{}", key.replace('_', "-"));
    let said = look.say(&name);
    if said != name {
        return said;
    }
    let mut text = key.replace('_', " ");
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}

/// Why something was not saved, in one sentence.
#[must_use]
pub fn why(look: &Look, left: &Left) -> String {
    if let Some(theirs) = &left.theirs {
        let theirs = if theirs.is_empty() { look.say("workbench-nothing") } else { theirs.clone() };
        return look.with("workbench-both", "theirs", &theirs);
    }
    let mut text = look.speak(&left.why);
    if let Some(help) = &left.help {
        text.push_str(": ");
        text.push_str(&look.speak(help));
    }
    text
}

/// The value and its source apart: `6.5 t (weighed)`.
fn parted(value: &str) -> (&str, Option<Source>) {
    let found = value.strip_suffix(')').and_then(|rest| rest.rsplit_once('('));
    match found.and_then(|(before, word)| Some((before.trim_end(), Source::from_word(word.trim())?))) {
        Some((before, source)) => (before, Some(source)),
        None => (value, None),
    }
}

/// The value with this source behind it; an empty source is none.
#[must_use]
pub fn with_source(value: &str, source: &str) -> String {
    let (bare, own) = parted(value);
    match (own, source) {
        (Some(_), _) | (None, "") => value.to_owned(),
        (None, source) => format!("{bare} ({source})"),
    }
}

/// What a field is laid out from.
pub struct Held<'a> {
    /// For whom.
    pub look: &'a Look,
    /// The file.
    pub document: &'a Document,
    /// What could not be saved.
    pub drafts: &'a Drafts,
}

/// Sources that a person at the boat can name.
const SOURCES: [Source; 10] = [
    Source::Plate,
    Source::Sheet,
    Source::Brochure,
    Source::Weighed,
    Source::Measured,
    Source::Stamp,
    Source::Dashboard,
    Source::Optical,
    Source::Memory,
    Source::Estimate,
];

impl Held<'_> {
    /// The field of a key at a path.
    #[must_use]
    pub fn field(&self, path: &str, key: &Key) -> Markup {
        let saved = shown(self.document, path);
        let left = self.drafts.get(path);
        let value = left.map_or(saved.as_str(), |left| left.value.as_str());
        let id = format!("f-{}", path.replace(['.', '_'], "-"));
        let hint = format!("{id}-hint");
        let says = left.map(|left| why(self.look, left));
        let fault = says.as_ref().map(|_| format!("{id}-says"));
        let described = [Some(hint.clone()), fault.clone()].into_iter().flatten().collect::<Vec<_>>().join(" ");
        let group = matches!(key.shape, Shape::Choices(_));
        // What only says the label again is left out.
        let doc = self.look.speak(key.doc);
        let doc = if doc.trim_end_matches('.') == label(self.look, key.name) { String::new() } else { doc };
        html! {
            div.field data-path=(path) data-open[value.is_empty()] {
                input type="hidden" name={ "w:" (path) } value=(saved);
                @if group {
                    fieldset aria-describedby=(described) {
                        legend { (label(self.look, key.name)) }
                        (self.input(path, key, value, &id, &described, left.is_some()))
                    }
                } @else {
                    label for=(id) { (label(self.look, key.name)) }
                    (self.input(path, key, value, &id, &described, left.is_some()))
                }
                p.hint id=(hint) { (doc) }
                p.fault id=(format!("{id}-says")) { @if let Some(says) = &says { span aria-hidden="true" { "\u{25a0} " } (says) } }
                @if !value.is_empty() && !matches!(key.shape, Shape::Choice(_) | Shape::Flag) && path != "title" {
                    button.quiet name="unknown" value=(path) formnovalidate { (self.look.say("workbench-unknown")) }
                }
            }
        }
    }

    fn input(&self, path: &str, key: &Key, value: &str, id: &str, described: &str, wrong: bool) -> Markup {
        let name = format!("v:{path}");
        let invalid = wrong.then_some("true");
        let unknown = self.look.say("workbench-unknown");
        match key.shape {
            Shape::Choice(words) => html! {
                select id=(id) name=(name) aria-describedby=(described) aria-invalid=[invalid] {
                    option value="" { (unknown) }
                    @for (word, means) in words { option value=(word) selected[*word == value] { (self.look.speak(means)) } }
                }
            },
            Shape::Flag => html! {
                select id=(id) name=(name) aria-describedby=(described) {
                    option value="" { (unknown) }
                    option value="true" selected[value == "true"] { (self.look.say("workbench-yes")) }
                    option value="false" selected[value == "false"] { (self.look.say("workbench-no")) }
                }
            },
            Shape::Choices(words) => {
                let chosen: Vec<&str> = value.split(',').map(str::trim).collect();
                html! {
                    // An empty one, so that no box ticked is an answer too.
                    input type="hidden" name=(name) value="";
                    div.boxes {
                        @for (word, _) in words {
                            label { input type="checkbox" name=(name) value=(word) checked[chosen.contains(word)]; " " (self.look.speak(word)) }
                        }
                    }
                }
            }
            Shape::Quantity(measure) => {
                let (bare, source) = parted(value);
                html! {
                    div.pair {
                        (self.typed(&name, bare, id, described, wrong, &self.example(&measure, key), "decimal"))
                        select name={ "s:" (path) } aria-label=(self.look.with("workbench-source-of", "what", &label(self.look, key.name))) {
                            option value="" { (self.look.say("workbench-source")) }
                            @for one in sources(source) {
                                option value=(one.word()) selected[source == Some(one)] { (self.look.speak(one.word())) }
                            }
                        }
                    }
                }
            }
            Shape::Runs(measure) => {
                let mut runs = value.split(',').map(str::trim);
                let (there, back) = (runs.next().unwrap_or_default(), runs.collect::<Vec<_>>().join(", "));
                html! {
                    div.pair {
                        (self.typed(&name, there, id, described, wrong, &self.example(&measure, key), "decimal"))
                        input type="text" name=(name) value=(back) inputmode="decimal" autocomplete="off" dir="auto"
                            aria-label=(self.look.with("workbench-back-run", "what", &label(self.look, key.name)))
                            placeholder=(self.look.say("workbench-other-way"));
                    }
                }
            }
            Shape::Date => {
                html! { input type="date" id=(id) name=(name) value=(value) aria-describedby=(described) aria-invalid=[invalid]; }
            }
            Shape::Count { .. } => self.typed(&name, value, id, described, wrong, key.example, "numeric"),
            Shape::Text if matches!(key.name, "complaint" | "notes") => html! {
                textarea id=(id) name=(name) rows="2" dir="auto" aria-describedby=(described) aria-invalid=[invalid] { (value) }
            },
            Shape::Band(_) | Shape::Numbers(_) => self.typed(&name, value, id, described, wrong, key.example, "text"),
            _ => self.typed(&name, value, id, described, wrong, "", "text"),
        }
    }

    #[allow(clippy::too_many_arguments)]
    fn typed(
        &self,
        name: &str,
        value: &str,
        id: &str,
        described: &str,
        wrong: bool,
        example: &str,
        keyboard: &str,
    ) -> Markup {
        html! {
            input type="text" id=(id) name=(name) value=(value) placeholder=(example.trim_matches('"')) inputmode=(keyboard)
                autocomplete="off" dir="auto" aria-describedby=(described) aria-invalid=[wrong.then_some("true")];
        }
    }

    /// An example, in the units of the page where the trade uses both.
    fn example(&self, measure: &Measure, key: &Key) -> String {
        let given = key.example.trim_matches(['"', '[', ']']);
        let imperial = ["in", "ft", "lb", "hp"];
        let wanted = measure.usual.iter().find(|unit| imperial.contains(unit) == self.look.imperial);
        match wanted {
            Some(unit) if !given.contains(unit) => format!("\u{2026} {unit}"),
            _ => given.split(" (").next().unwrap_or(given).to_owned(),
        }
    }
}

fn sources(own: Option<Source>) -> impl Iterator<Item = Source> {
    let other = own.filter(|own| !SOURCES.contains(own));
    SOURCES.into_iter().chain(other)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_source_is_put_behind_once() {
        assert_eq!(with_source("6.5 t", "weighed"), "6.5 t (weighed)");
        assert_eq!(with_source("6.5 t (brochure)", "weighed"), "6.5 t (brochure)");
        assert_eq!(with_source("6.5 t", ""), "6.5 t");
        assert_eq!(parted("11 in (about)").1, None);
    }
}
