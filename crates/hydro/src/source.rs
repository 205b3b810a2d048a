//! Where each number comes from: the register of methods.

/// How far a method or figure can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Trust {
    /// Held against numbers printed by somebody else; the check is in `validation/`.
    Checked,
    /// Found in one public copy only.
    OneCopy,
    /// From memory: no public copy was found to hold it against.
    Memory,
    /// A rule of the trade without a published source.
    CommonPractice,
}

impl Trust {
    /// What a person reads.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Trust::Checked => "checked against published numbers",
            Trust::OneCopy => "one public copy, not confirmed by a second",
            Trust::Memory => "from memory",
            Trust::CommonPractice => "common practice, no source",
        }
    }
}

/// One published method (or rule of the trade) as `fairwake sources` shows it.
#[derive(Clone, Copy, Debug)]
pub struct Method {
    /// Short name, unique, lower case with hyphens: `holtrop-1984`.
    pub name: &'static str,
    /// The quantity it gives, with its unit.
    pub quantity: &'static str,
    /// The formula in plain text (main relation when there are many).
    pub formula: &'static str,
    /// The range it was tested in.
    pub range: &'static str,
    /// Its own error, and how that is known.
    pub error: &'static str,
    /// Author, year, title, equation or table.
    pub source: &'static str,
    /// How far to trust it.
    pub trust: Trust,
}

/// All methods, room by room.
pub fn methods() -> impl Iterator<Item = &'static Method> {
    [
        crate::water::METHODS,
        crate::hull::METHODS,
        crate::stern::METHODS,
        crate::openwater::METHODS,
        crate::engine::METHODS,
        crate::drive::METHODS,
        crate::running::METHODS,
        crate::limits::METHODS,
        crate::blade::METHODS,
        crate::fitting::METHODS,
        crate::vibration::METHODS,
    ]
    .into_iter()
    .flatten()
    .copied()
}
