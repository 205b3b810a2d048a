//! Sentences by name, out of the Fluent files.

use std::collections::HashMap;
use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

use crate::Language;

/// The files of one language: name of the room and text.
pub(crate) fn files(language: Language) -> &'static [(&'static str, &'static str)] {
    match language {
        Language::English => &[
            ("common", include_str!("../ftl/en/common.ftl")),
            ("draw", include_str!("../ftl/en/draw.ftl")),
            ("explain", include_str!("../ftl/en/explain.ftl")),
            ("follows", include_str!("../ftl/en/follows.ftl")),
            ("papers", include_str!("../ftl/en/papers.ftl")),
            ("workbench", include_str!("../ftl/en/workbench.ftl")),
        ],
        Language::Spanish => &[
            ("common", include_str!("../ftl/es/common.ftl")),
            ("draw", include_str!("../ftl/es/draw.ftl")),
            ("explain", include_str!("../ftl/es/explain.ftl")),
            ("follows", include_str!("../ftl/es/follows.ftl")),
            ("papers", include_str!("../ftl/es/papers.ftl")),
            ("workbench", include_str!("../ftl/es/workbench.ftl")),
        ],
    }
}

/// A value put into a sentence.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value<'a> {
    /// Text, already in the language.
    Text(&'a str),
    /// A count: chooses singular or plural.
    Count(usize),
}

/// What stands under this name.
#[must_use]
pub fn say(language: Language, name: &str) -> String {
    say_with(language, name, &[])
}

/// What stands under this name, with values put in. A name that does not stand in the files is shown as it is; a test
/// holds the names of both languages against each other.
#[must_use]
pub fn say_with(language: Language, name: &str, values: &[(&str, Value)]) -> String {
    let bundle = bundle(language);
    let Some(pattern) = bundle.get_message(name).and_then(|message| message.value()) else {
        return name.to_owned();
    };
    let mut arguments = FluentArgs::new();
    for (key, value) in values {
        let value: FluentValue = match value {
            Value::Text(text) => FluentValue::from((*text).to_owned()),
            Value::Count(count) => FluentValue::from(*count),
        };
        arguments.set((*key).to_owned(), value);
    }
    let mut errors = Vec::new();
    bundle.format_pattern(pattern, Some(&arguments), &mut errors).into_owned()
}

type Bundle = FluentBundle<FluentResource>;

fn bundle(language: Language) -> &'static Bundle {
    static BUNDLES: OnceLock<HashMap<Language, Bundle>> = OnceLock::new();
    let bundles =
        BUNDLES.get_or_init(|| Language::ALL.into_iter().map(|language| (language, load(language))).collect());
    &bundles[&language]
}

fn load(language: Language) -> Bundle {
    let tag: LanguageIdentifier = language.tag().parse().unwrap_or_default();
    let mut bundle = FluentBundle::new_concurrent(vec![tag]);
    // The marks that set a value apart show as boxes in many fonts; the page isolates names with its own element.
    bundle.set_use_isolating(false);
    for (_, text) in files(language) {
        // What cannot be read is left out; a test reads every file strictly.
        let resource = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(part, _)| part);
        bundle.add_resource_overriding(resource);
    }
    bundle
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};

    use super::*;

    fn variables(pattern: &Pattern<&str>, found: &mut Vec<String>) {
        for element in &pattern.elements {
            if let PatternElement::Placeable { expression } = element {
                let selector = match expression {
                    Expression::Inline(inline) => inline,
                    Expression::Select { selector, variants } => {
                        for variant in variants {
                            variables(&variant.value, found);
                        }
                        selector
                    }
                };
                if let InlineExpression::VariableReference { id } = selector {
                    found.push(id.name.to_owned());
                }
            }
        }
        found.sort();
        found.dedup();
    }

    fn names(language: Language) -> BTreeMap<String, Vec<String>> {
        let mut all = BTreeMap::new();
        for (file, text) in files(language) {
            let resource =
                fluent_syntax::parser::parse(*text).unwrap_or_else(|(_, errors)| panic!("{file}.ftl: {errors:?}"));
            for entry in resource.body {
                if let Entry::Message(message) = entry {
                    let mut found = Vec::new();
                    if let Some(pattern) = &message.value {
                        variables(pattern, &mut found);
                    }
                    let twice = all.insert(message.id.name.to_owned(), found);
                    assert!(twice.is_none(), "{} stands twice in {}", message.id.name, language.tag());
                }
            }
        }
        all
    }

    #[test]
    fn every_language_says_the_same_things_with_the_same_values() {
        let english = names(Language::English);
        let spanish = names(Language::Spanish);
        for (name, values) in &english {
            assert_eq!(spanish.get(name), Some(values), "{name}");
        }
        assert_eq!(english.len(), spanish.len(), "Spanish has names that English has not");
    }

    #[test]
    fn a_count_chooses_its_form() {
        let one = say_with(Language::Spanish, "common-blades", &[("count", Value::Count(1))]);
        let three = say_with(Language::Spanish, "common-blades", &[("count", Value::Count(3))]);
        assert_eq!((one.as_str(), three.as_str()), ("1 pala", "3 palas"));
        assert_eq!(say(Language::English, "no-such-name"), "no-such-name");
    }
}
