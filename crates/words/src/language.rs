//! The languages shipped.

/// A language that everything can be said in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// Spanish.
    Spanish,
}

impl Language {
    /// All of them.
    pub const ALL: [Language; 2] = [Language::English, Language::Spanish];

    /// Its tag (BCP 47): `en`, `es`.
    #[must_use]
    pub fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::Spanish => "es",
        }
    }

    /// The language of a tag such as `es` or `es-MX`.
    #[must_use]
    pub fn of_tag(tag: &str) -> Option<Language> {
        let main = tag.split(['-', '_']).next().unwrap_or_default();
        Language::ALL.into_iter().find(|language| language.tag().eq_ignore_ascii_case(main))
    }

    /// Its own name for itself.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::Spanish => "Español",
        }
    }
}
