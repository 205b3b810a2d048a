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
    /// The hull's proportions lie outside those the resistance method was made from.
    HullOutsideSeries,
    /// Length over beam at or below what a wave formula can take.
    HullTooBeamyForMethod,
    /// Hull far smaller than the ships a method was made from.
    HullSmallForMethod,
    /// Weight, main dimensions and form coefficients do not fit each other.
    HullCoefficientsDisagree,
    /// Speed above the range of the resistance method.
    SpeedAboveMethod,
    /// Speed below the range of the resistance method.
    SpeedBelowMethod,
    /// Method of a bare hull.
    BareHullOnly,
    /// Resistance worked back from power.
    EfficiencyAssumed,
    /// Speed outside the towed points.
    OutsideTowedSpeeds,
    /// Measured resistance scaled to another weight.
    TowedAtOtherWeight,
    /// Depth Froude number 0.6 to 0.8.
    ShallowWater,
    /// Depth Froude number above 0.8.
    TooShallowToJudge,
    /// Blade number of a flat-faced propeller other than three.
    FlatFacedBladesBorrowed,
    /// Two narrow blades of high pitch in the B-series.
    TwoBladedFitOptimistic,
    /// Ducted screw other than Ka 4-70.
    DuctedOtherScrew,
    /// Roughness beyond paint, slime and erosion.
    BladesRougherThanFormula,
    /// Cavitation number or loading outside the Burrill diagram.
    CavitationOutsideDiagram,
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
    /// No trim balances a planing hull's moments; it is held at the last the hull allows.
    TrimHeld,
    /// Trim, wetted length or speed outside what the planing equations were tested at.
    PlaningOutsideTests,
    /// Trim above the porpoising limit.
    Porpoising,
    /// Hull outside the pre-planing series.
    PrePlaningOutsideSeries,
    /// Speed outside the pre-planing series.
    PrePlaningOutsideSpeeds,
}

impl Note {
    /// Every note, in order of declaration.
    pub const ALL: &'static [Note] = &[
        Note::BladesOutsideSeries,
        Note::PitchRatioOutsideSeries,
        Note::AreaRatioOutsideSeries,
        Note::HullOutsideSeries,
        Note::HullTooBeamyForMethod,
        Note::HullSmallForMethod,
        Note::HullCoefficientsDisagree,
        Note::SpeedAboveMethod,
        Note::SpeedBelowMethod,
        Note::BareHullOnly,
        Note::EfficiencyAssumed,
        Note::OutsideTowedSpeeds,
        Note::TowedAtOtherWeight,
        Note::ShallowWater,
        Note::TooShallowToJudge,
        Note::FlatFacedBladesBorrowed,
        Note::TwoBladedFitOptimistic,
        Note::DuctedOtherScrew,
        Note::BladesRougherThanFormula,
        Note::CavitationOutsideDiagram,
        Note::WaterTemperatureOutside,
        Note::SalinityOutside,
        Note::DeratingOutsideRange,
        Note::CurveMissesRating,
        Note::BlockOutsideWakeTable,
        Note::TrimHeld,
        Note::PlaningOutsideTests,
        Note::Porpoising,
        Note::PrePlaningOutsideSeries,
        Note::PrePlaningOutsideSpeeds,
    ];

    /// What a person reads.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Note::BladesOutsideSeries => "the series was not tested with this number of blades",
            Note::PitchRatioOutsideSeries => "the pitch ratio lies outside what the series was tested at",
            Note::AreaRatioOutsideSeries => "the blade area ratio lies outside what the series was tested at",
            Note::HullOutsideSeries => "the hull's proportions lie outside those the resistance method was made from",
            Note::HullTooBeamyForMethod => "the hull is too beamy for the wave formula, which is held at its edge",
            Note::HullSmallForMethod => {
                "the resistance method was made from ships; for a hull below 15 m its friction and form parts are carried far beyond them"
            }
            Note::HullCoefficientsDisagree => {
                "weight, length, beam, draught and the form coefficients do not fit each other within 10 %"
            }
            Note::SpeedAboveMethod => "the speed lies above the range the resistance method was tested in",
            Note::SpeedBelowMethod => "the speed lies below the range the resistance method was tested in",
            Note::BareHullOnly => "the method is for the bare hull: the waves made by keel and rudder are not in it",
            Note::EfficiencyAssumed => "resistance worked back from a speed rule through an assumed overall efficiency",
            Note::OutsideTowedSpeeds => "the speed lies outside those that were towed; a square law was followed",
            Note::TowedAtOtherWeight => "the resistance was measured at another weight and scaled",
            Note::ShallowWater => "the water is shallow for this speed: the boat is slowed, read with care",
            Note::TooShallowToJudge => "the water is too shallow at this speed to judge boat or propeller",
            Note::FlatFacedBladesBorrowed => {
                "the flat-faced series was tested with three blades; the effect of another number is borrowed from the B-series"
            }
            Note::TwoBladedFitOptimistic => {
                "the series promises two narrow blades of this pitch more efficiency than is likely"
            }
            Note::DuctedOtherScrew => {
                "the only ducted screw with published curves here has four blades and an area ratio of 0.70; this one differs"
            }
            Note::BladesRougherThanFormula => "blades this rough are beyond the roughness formula",
            Note::CavitationOutsideDiagram => "the load lies outside the published cavitation diagram",
            Note::WaterTemperatureOutside => "the water temperature lies outside 0 to 30 °C",
            Note::SalinityOutside => "the salinity lies outside 0 to 42 g/kg",
            Note::DeratingOutsideRange => "heat or height lies outside the range of the power correction",
            Note::CurveMissesRating => "the maker's power curve does not pass through the rated power and speed",
            Note::BlockOutsideWakeTable => "the block coefficient lies outside the table of wake fractions",
            Note::TrimHeld => {
                "no trim balances this boat at this speed (centre of gravity too far aft or forward); it was held at the limit"
            }
            Note::PlaningOutsideTests => {
                "trim, wetted length or speed lies outside what the planing equations were tested at"
            }
            Note::Porpoising => "the boat runs at or above the trim where porpoising begins (limit curve from memory)",
            Note::PrePlaningOutsideSeries => {
                "the hull lies outside the series behind the resistance between displacement and planing speed; its limits were used"
            }
            Note::PrePlaningOutsideSpeeds => {
                "the speed lies outside the series behind the resistance between displacement and planing speed"
            }
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

    /// The set without `note`.
    #[must_use]
    pub const fn without(self, note: Note) -> Notes {
        Notes(self.0 & !(1 << (note as u8)))
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
