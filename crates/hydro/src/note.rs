//! Warnings that travel with a value.

/// One warning. The text is what a person reads; the code is stable for machines.
///
/// To add one: add a variant, its text in [`Note::text`], and its entry in [`Note::ALL`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[repr(u8)]
pub enum Note {
    /// Number of blades outside the series.
    BladesOutsideSeries,
    /// Pitch ratio outside the range the series was tested in.
    PitchRatioOutsideSeries,
    /// Expanded area ratio outside the range the series was tested in.
    AreaRatioOutsideSeries,
    /// Water temperature outside what the formulas were held against.
    WaterTemperatureOutside,
    /// Salinity outside what the formulas were held against.
    SalinityOutside,
    /// Air, height or engine outside the range of the power correction.
    DeratingOutsideRange,
    /// The maker's power curve does not pass through the rated point.
    CurveMissesRating,
    /// Block coefficient outside the table of wake fractions.
    BlockOutsideWakeTable,
}

impl Note {
    /// Every note, in order of declaration.
    pub const ALL: &'static [Note] = &[
        Note::BladesOutsideSeries,
        Note::PitchRatioOutsideSeries,
        Note::AreaRatioOutsideSeries,
        Note::WaterTemperatureOutside,
        Note::SalinityOutside,
        Note::DeratingOutsideRange,
        Note::CurveMissesRating,
        Note::BlockOutsideWakeTable,
    ];

    /// What a person reads.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Note::BladesOutsideSeries => "the series was not tested with this number of blades",
            Note::PitchRatioOutsideSeries => "the pitch ratio lies outside what the series was tested at",
            Note::AreaRatioOutsideSeries => "the blade area ratio lies outside what the series was tested at",
            Note::WaterTemperatureOutside => "the water temperature lies outside 0 to 30 °C",
            Note::SalinityOutside => "the salinity lies outside 0 to 42 g/kg",
            Note::DeratingOutsideRange => "heat or height lies outside the range of the power correction",
            Note::CurveMissesRating => "the maker's power curve does not pass through the rated power and speed",
            Note::BlockOutsideWakeTable => "the block coefficient lies outside the table of wake fractions",
        }
    }
}

/// A set of notes, cheap to copy and to join inside a loop.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Notes(u128);

impl Notes {
    /// No note.
    pub const NONE: Notes = Notes(0);

    /// Adds one note.
    pub const fn add(&mut self, note: Note) {
        self.0 |= 1 << (note as u8);
    }

    /// Adds `note` if `condition` holds.
    pub const fn add_if(&mut self, condition: bool, note: Note) {
        if condition {
            self.add(note);
        }
    }

    /// The notes of both.
    #[must_use]
    pub const fn and(self, other: Notes) -> Notes {
        Notes(self.0 | other.0)
    }

    /// Whether `note` is in the set.
    #[must_use]
    pub const fn has(self, note: Note) -> bool {
        self.0 & (1 << (note as u8)) != 0
    }

    /// Whether there is no note.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// The notes in order of declaration.
    pub fn iter(self) -> impl Iterator<Item = Note> {
        Note::ALL.iter().copied().filter(move |note| self.has(*note))
    }
}

/// A value with the warnings that travel with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Noted<T> {
    /// The value.
    pub value: T,
    /// What to know about it.
    pub notes: Notes,
}

impl<T> Noted<T> {
    /// A value without any warning.
    pub const fn clean(value: T) -> Noted<T> {
        Noted { value, notes: Notes::NONE }
    }

    /// A value with notes.
    pub const fn new(value: T, notes: Notes) -> Noted<T> {
        Noted { value, notes }
    }
}
