//! What every page stands in.

use maud::{DOCTYPE, Markup, html};
use words::{Language, Value, number, say, say_with, sentence};

/// For whom a page is laid out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Look {
    /// Spoken.
    pub language: Language,
    /// Inches and pounds.
    pub imperial: bool,
}

impl Look {
    /// What stands under a name.
    #[must_use]
    pub fn say(&self, name: &str) -> String {
        say(self.language, name)
    }

    /// What stands under a name, with a count.
    #[must_use]
    pub fn count(&self, name: &str, count: usize) -> String {
        say_with(self.language, name, &[("count", Value::Count(count))])
    }

    /// What stands under a name, with a text put in.
    #[must_use]
    pub fn with(&self, name: &str, key: &str, text: &str) -> String {
        say_with(self.language, name, &[(key, Value::Text(text))])
    }

    /// What stands under a name, with texts put in.
    #[must_use]
    pub fn with_all(&self, name: &str, values: &[(&str, &str)]) -> String {
        let values: Vec<(&str, Value)> = values.iter().map(|(key, text)| (*key, Value::Text(text))).collect();
        say_with(self.language, name, &values)
    }

    /// A sentence made by the judgement or the reader.
    #[must_use]
    pub fn speak(&self, english: &str) -> String {
        number(self.language, &sentence(self.language, english))
    }
}

/// A whole page.
#[must_use]
pub fn frame(look: &Look, title: &str, body: Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang=(look.language.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (title) " \u{2014} Fairwake" }
                link rel="icon" href="data:,";
                link rel="stylesheet" href="/assets/pictures.css";
                link rel="stylesheet" href="/assets/views/views.css";
                link rel="stylesheet" href="/assets/page.css";
                script type="module" src="/assets/page.js" {}
                script type="module" src="/assets/views/follows.js" {}
            }
            body {
                a.skip href="#main" { (look.say("workbench-skip")) }
                header.head {
                    a.home href="/" { "Fairwake" }
                    (settings(look))
                }
                main #main { (body) }
                p #told role="status" aria-live="polite" {}
            }
        }
    }
}

fn settings(look: &Look) -> Markup {
    html! {
        form.settings method="post" action="/settings" data-back {
            input type="hidden" name="back" value="/";
            label { span { (look.say("workbench-language")) }
                select name="language" {
                    @for language in Language::ALL {
                        option value=(language.tag()) lang=(language.tag()) selected[language == look.language] { (language.name()) }
                    }
                }
            }
            label { span { (look.say("workbench-units")) }
                select name="units" {
                    option value="metric" selected[!look.imperial] { (look.say("workbench-metric")) }
                    option value="imperial" selected[look.imperial] { (look.say("workbench-imperial")) }
                }
            }
            button { (look.say("workbench-use")) }
        }
    }
}

/// Why something was not done.
#[must_use]
pub fn refused(look: &Look, why: &str) -> Markup {
    let body = html! {
        h1 { (look.say("workbench-refused")) }
        pre.wide tabindex="0" { (why) }
        p { a href="/" { (look.say("workbench-back")) } }
    };
    frame(look, &look.say("workbench-refused"), body)
}
