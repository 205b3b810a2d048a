//! The name of a job: its file's name without `.toml`.

use std::fmt;

/// Longest name, bytes: file systems take 255 for a name, and ours get a suffix.
const LONGEST: usize = 180;

/// A name that cannot lead out of the folder.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Name(String);

impl Name {
    /// Takes a name if it can be the plain name of a file everywhere: no separators, no control or direction marks, not
    /// hidden, not reserved.
    #[must_use]
    pub fn of(text: &str) -> Option<Name> {
        let bad = |c: char| {
            c.is_control()
                || "/\\:*?\"<>|%#".contains(c)
                || matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
        };
        let plain = !text.is_empty()
            && text.len() <= LONGEST
            && !text.starts_with(['.', ' ', '-'])
            && !text.ends_with(['.', ' '])
            && !text.contains(bad);
        plain.then(|| Name(text.to_owned()))
    }

    /// A name made of a title.
    #[must_use]
    pub fn from_title(title: &str) -> Name {
        let mut name = String::new();
        // What stands before the colon is the boat.
        for c in title.split(':').next().unwrap_or_default().trim().to_lowercase().chars() {
            if name.len() > 60 {
                break;
            }
            if c.is_alphanumeric() {
                name.push(c);
            } else if !name.is_empty() && !name.ends_with('-') {
                name.push('-');
            }
        }
        let name = name.trim_end_matches('-');
        Name::of(name).unwrap_or_else(|| Name("job".to_owned()))
    }

    /// The same name with a number behind.
    #[must_use]
    pub fn numbered(&self, number: usize) -> Name {
        Name(format!("{}-{number}", self.0))
    }

    /// As text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// As it stands in an address.
    #[must_use]
    pub fn escaped(&self) -> String {
        use fmt::Write as _;
        self.0.bytes().fold(String::new(), |mut text, byte| {
            if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
                text.push(char::from(byte));
            } else {
                // Writing to a string cannot fail.
                let _ = write!(text, "%{byte:02X}");
            }
            text
        })
    }
}

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_name_leads_out_of_the_folder() {
        for bad in ["", "..", ".hidden", "a/b", "a\\b", "../x", "a\0b", "a\nb", "c:x", "%2e%2e", "\u{202e}lmot", "-rf"]
        {
            assert_eq!(Name::of(bad), None, "{bad:?}");
        }
        assert!(Name::of(&"a".repeat(300)).is_none());
        assert!(Name::of("Niña del Mar 2").is_some());
        assert!(Name::of("قارب").is_some());
    }

    #[test]
    fn a_title_gives_a_name() {
        assert_eq!(Name::from_title("Kittiwake: will not rev out").as_str(), "kittiwake");
        assert_eq!(Name::from_title("../../etc/passwd").as_str(), "etc-passwd");
        assert_eq!(Name::from_title("<script>").as_str(), "script");
        assert_eq!(Name::from_title("...").as_str(), "job");
    }
}
