//! Accuracy classes of propellers by ISO 484: what each allows, and in which one a measured deviation lies.
//!
//! Part 1 holds for diameters above 2.50 m, part 2 from 0.80 to 2.50 m. Below 0.80 m no standard covers the size; the trade
//! quotes the percentages and radii of part 2 and drops the millimetre minima (common practice, no source): with 400 mm of
//! pitch a minimum of 15 mm would be 3.75 %, more than class II allows.
//!
//! Trust. Percentages of pitch and thickness, the angular spacing, the rake and the radii: two public copies agree (first
//! edition, 1981; that the second of 2015 kept them is from memory). Section length: percentages in two copies, that they
//! are parts of D/Z is from memory. Extreme radius, balance and every millimetre minimum of pitch: from memory.

use hydro::source::{Method, Trust};
use serde::Serialize;
use std::fmt;

/// The classes.
pub const METHOD: Method = Method {
    name: "iso-484-classes",
    quantity: "accuracy class S, I, II, III of pitch, section length, thickness, spacing, rake, radius and balance",
    formula: "deviation over what is meant against the percentage of the class; the worst value decides",
    range: "diameters 0.80 to 2.50 m (part 2), above 2.50 m (part 1); below 0.80 m the trade applies the percentages of part 2",
    error: "percentages of pitch and thickness, spacing, rake and radii: two public copies agree; section length, tip radius and balance in part from memory; millimetre minima left out",
    source: "ISO 484-1 and ISO 484-2:1981, Shipbuilding - Ship screw propellers - Manufacturing tolerances",
    trust: Trust::OneCopy,
};

/// An accuracy class, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Class {
    /// Very high accuracy.
    S,
    /// High.
    I,
    /// Medium.
    #[serde(rename = "II")]
    II,
    /// Wide.
    #[serde(rename = "III")]
    III,
}

impl Class {
    /// All, best first.
    pub const ALL: [Class; 4] = [Class::S, Class::I, Class::II, Class::III];

    /// As it is written.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Class::S => "S",
            Class::I => "I",
            Class::II => "II",
            Class::III => "III",
        }
    }

    /// The radii this class asks for, as r/R, beside one near the hub (two public copies).
    #[must_use]
    pub const fn radii(self) -> &'static [f64] {
        match self {
            Class::S | Class::I => &[0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95],
            Class::II | Class::III => &[0.5, 0.7, 0.9],
        }
    }
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

/// What is judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Judged {
    /// Pitch between neighbouring points of one section; reference the design pitch at that radius.
    LocalPitch,
    /// Mean pitch of one radius of one blade; reference the design pitch at that radius.
    SectionPitch,
    /// Mean pitch of one blade; reference the design mean pitch.
    BladePitch,
    /// Mean pitch of the propeller; reference the design mean pitch.
    PropellerPitch,
    /// Greatest thickness of a section; reference the design thickness there.
    Thickness,
    /// Length of a section; reference D/Z.
    SectionLength,
    /// Angle between neighbouring blades, degrees; reference none.
    Spacing,
    /// Axial position of a blade (rake); reference the diameter.
    AxialPosition,
    /// Radius of the tip; reference the design radius.
    TipRadius,
}

/// How far a table is trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Copies {
    /// Two public copies agree.
    Two,
    /// Percentages in two copies, what they are a part of from memory.
    TwoReferenceMemory,
    /// From memory.
    Memory,
}

/// One row: plus and minus, percent of the reference (degrees for the spacing); `None`: no requirement in that class.
struct Row {
    judged: Judged,
    plus: [Option<f64>; 4],
    minus: [Option<f64>; 4],
    /// Least tolerances, mm, part 1 and part 2, upward and downward.
    least: [Option<Least>; 2],
    copies: Copies,
}

#[derive(Clone, Copy)]
struct Least {
    plus: [f64; 4],
    minus: [f64; 4],
}

const fn both(least: [f64; 4]) -> Option<Least> {
    Some(Least { plus: least, minus: least })
}

const fn all(v: [f64; 4]) -> [Option<f64>; 4] {
    [Some(v[0]), Some(v[1]), Some(v[2]), Some(v[3])]
}

const LOCAL: [Option<f64>; 4] = [Some(1.5), Some(2.0), Some(3.0), None];
const SECTION: [Option<f64>; 4] = all([1.0, 1.5, 2.0, 5.0]);
const BLADE: [Option<f64>; 4] = all([0.75, 1.0, 1.5, 4.0]);
const PROPELLER: [Option<f64>; 4] = all([0.5, 0.75, 1.0, 3.0]);
const LENGTH: [Option<f64>; 4] = all([1.5, 2.0, 3.0, 5.0]);
const SPACING: [Option<f64>; 4] = all([1.0, 1.0, 2.0, 2.0]);
const AXIAL: [Option<f64>; 4] = all([0.5, 1.0, 1.5, 3.0]);
const TIP: [Option<f64>; 4] = all([0.2, 0.3, 0.4, 0.5]);
/// Thickness: less is allowed downward, since thinner is weaker.
const THICKER: [Option<f64>; 4] = all([2.0, 2.5, 4.0, 6.0]);
const THINNER: [Option<f64>; 4] = all([1.0, 1.5, 2.0, 4.0]);
const THICKNESS_LEAST: Option<Least> = Some(Least { plus: [2.0, 2.5, 4.0, 6.0], minus: [1.0, 1.5, 2.0, 4.0] });

#[rustfmt::skip]
const TABLE: &[Row] = &[
    Row { judged: Judged::LocalPitch, plus: LOCAL, minus: LOCAL, least: [both([15.0, 20.0, 30.0, 0.0]), both([10.0, 15.0, 20.0, 0.0])], copies: Copies::Two },
    Row { judged: Judged::SectionPitch, plus: SECTION, minus: SECTION, least: [both([10.0, 15.0, 20.0, 50.0]), both([7.5, 10.0, 15.0, 25.0])], copies: Copies::Two },
    Row { judged: Judged::BladePitch, plus: BLADE, minus: BLADE, least: [both([7.5, 10.0, 15.0, 40.0]), both([5.0, 7.5, 10.0, 20.0])], copies: Copies::Two },
    Row { judged: Judged::PropellerPitch, plus: PROPELLER, minus: PROPELLER, least: [both([5.0, 7.5, 10.0, 30.0]), both([4.0, 5.0, 7.5, 15.0])], copies: Copies::Two },
    Row { judged: Judged::Thickness, plus: THICKER, minus: THINNER, least: [THICKNESS_LEAST, THICKNESS_LEAST], copies: Copies::Two },
    Row { judged: Judged::SectionLength, plus: LENGTH, minus: LENGTH, least: [both([7.0, 10.0, 13.0, 15.0]), both([7.0, 10.0, 13.0, 15.0])], copies: Copies::TwoReferenceMemory },
    Row { judged: Judged::Spacing, plus: SPACING, minus: SPACING, least: [None, None], copies: Copies::Two },
    Row { judged: Judged::AxialPosition, plus: AXIAL, minus: AXIAL, least: [None, None], copies: Copies::Two },
    Row { judged: Judged::TipRadius, plus: TIP, minus: TIP, least: [both([1.5, 1.5, 2.0, 2.5]), None], copies: Copies::Memory },
];

impl Judged {
    /// Everything that is judged.
    pub const ALL: [Judged; 9] = [
        Judged::LocalPitch,
        Judged::SectionPitch,
        Judged::BladePitch,
        Judged::PropellerPitch,
        Judged::Thickness,
        Judged::SectionLength,
        Judged::Spacing,
        Judged::AxialPosition,
        Judged::TipRadius,
    ];

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Judged::LocalPitch => "local pitch",
            Judged::SectionPitch => "pitch of a section",
            Judged::BladePitch => "mean pitch of a blade",
            Judged::PropellerPitch => "mean pitch of the propeller",
            Judged::Thickness => "thickness",
            Judged::SectionLength => "width of a section",
            Judged::Spacing => "spacing of the blades",
            Judged::AxialPosition => "track",
            Judged::TipRadius => "tip radius",
        }
    }

    /// What the percentages are a part of, in words.
    #[must_use]
    pub const fn reference(self) -> &'static str {
        match self {
            Judged::LocalPitch | Judged::SectionPitch => "design pitch at that radius",
            Judged::BladePitch | Judged::PropellerPitch => "design mean pitch",
            Judged::Thickness => "design thickness at that radius",
            Judged::SectionLength => "diameter over number of blades (from memory)",
            Judged::Spacing => "degrees",
            Judged::AxialPosition => "diameter",
            Judged::TipRadius => "design radius",
        }
    }

    /// How far the figures are trusted.
    #[must_use]
    pub fn copies(self) -> Copies {
        self.row().map_or(Copies::Memory, |row| row.copies)
    }

    fn row(self) -> Option<&'static Row> {
        TABLE.iter().find(|row| row.judged == self)
    }
}

/// Which part of the standard covers a diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Part {
    /// ISO 484-1: above 2.50 m.
    One,
    /// ISO 484-2: 0.80 to 2.50 m.
    Two,
    /// Neither: below 0.80 m.
    None,
}

impl Part {
    /// For a diameter, m.
    #[must_use]
    pub fn of(diameter: f64) -> Part {
        if diameter > 2.5 {
            Part::One
        } else if diameter >= 0.8 {
            Part::Two
        } else {
            Part::None
        }
    }

    /// One plain sentence.
    #[must_use]
    pub const fn statement(self) -> &'static str {
        match self {
            Part::One => "ISO 484-1 covers this size (above 2.50 m).",
            Part::Two => "ISO 484-2 covers this size (0.80 to 2.50 m).",
            Part::None => {
                "No standard covers propellers below 0.80 m: the percentages and radii of ISO 484-2 are applied, without its \
                 millimetre minima, as the trade does (common practice, no source)."
            }
        }
    }
}

/// How to judge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rules {
    /// The part that covers the diameter.
    pub part: Part,
    /// Let a tolerance be no less than its minimum in millimetres. Off by default: most of the minima are from memory.
    pub minima: bool,
}

impl Rules {
    /// For a diameter, m, percentages only.
    #[must_use]
    pub fn of(diameter: f64) -> Rules {
        Rules { part: Part::of(diameter), minima: false }
    }
}

/// What a class allows above and below a reference, in the reference's unit (m; degrees for [`Judged::Spacing`], whose
/// reference is ignored). `None` when that class asks nothing.
#[must_use]
pub fn tolerance(judged: Judged, class: Class, reference: f64, rules: Rules) -> Option<(f64, f64)> {
    let row = judged.row()?;
    let at = class as usize;
    let (plus, minus) = (row.plus[at]?, row.minus[at]?);
    if judged == Judged::Spacing {
        return Some((plus, minus));
    }
    let least = match rules.part {
        Part::One if rules.minima => row.least[0],
        Part::Two if rules.minima => row.least[1],
        _ => None,
    };
    let part = |percent: f64| 0.01 * percent * reference.abs();
    Some(match least {
        Some(least) => (part(plus).max(1e-3 * least.plus[at]), part(minus).max(1e-3 * least.minus[at])),
        None => (part(plus), part(minus)),
    })
}

/// The best class that allows a deviation (measured less reference), or `None`: outside class III. A deviation that equals
/// the tolerance is inside; a class that asks nothing allows everything.
#[must_use]
pub fn class_of(judged: Judged, deviation: f64, reference: f64, rules: Rules) -> Option<Class> {
    Class::ALL.into_iter().find(|class| match tolerance(judged, *class, reference, rules) {
        Some((plus, minus)) => {
            // A hair of room, so that a value printed at the limit is inside.
            let room = 1e-9 * reference.abs().max(1.0);
            deviation <= plus + room && -deviation <= minus + room
        }
        None => true,
    })
}

/// A class, or outside all, in words.
#[must_use]
pub fn word(class: Option<Class>) -> String {
    class.map_or("outside class III".to_owned(), |class| class.word().to_owned())
}

/// The worse of two, where `None` is outside class III.
#[must_use]
pub fn worse(a: Option<Class>, b: Option<Class>) -> Option<Class> {
    match (a, b) {
        (Some(a), Some(b)) => Some(a.max(b)),
        _ => None,
    }
}

/// Mass at the tip that static balance may ask for, and the rule that decides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balance {
    /// kg at the tip radius.
    pub allowed: f64,
    /// By `C m/(R N²)`, kg.
    pub by_speed: f64,
    /// By `K m`, kg.
    pub by_mass: f64,
    /// The same as a balance quality grade `G = e Ω`, mm/s (ISO 21940-11).
    pub grade: f64,
}

/// Permissible static unbalance: the smaller of `p = C m/(R N²)` and `K m`, `p` in kg at the tip radius `R`.
///
/// `mass` kg, `tip_radius` m, `turns` rev/s. C = 15, 25, 40, 75 and K = 0.0005, 0.001, 0.001, 0.001 for S, I, II, III with N
/// in rev/min. Source: ISO 484, from memory; nothing readable confirms it. `None` where an argument is not positive.
#[must_use]
pub fn balance(class: Class, mass: f64, tip_radius: f64, turns: f64) -> Option<Balance> {
    if !(mass > 0.0 && tip_radius > 0.0 && turns > 0.0) {
        return None;
    }
    let (c, k) = match class {
        Class::S => (15.0, 0.000_5),
        Class::I => (25.0, 0.001),
        Class::II => (40.0, 0.001),
        Class::III => (75.0, 0.001),
    };
    let rpm = 60.0 * turns;
    let by_speed = c * mass / (tip_radius * rpm * rpm);
    let by_mass = k * mass;
    let allowed = f64::min(by_speed, by_mass);
    let eccentricity = allowed * tip_radius / mass;
    Some(Balance { allowed, by_speed, by_mass, grade: 1000.0 * eccentricity * std::f64::consts::TAU * turns })
}

/// Permissible unbalance of a balance quality grade: `U = 9549 G m/n` g mm, given in kg m. `grade` mm/s, `mass` kg, `turns`
/// rev/s. Source: ISO 21940-11 (three public copies).
#[must_use]
pub fn unbalance_of_grade(grade: f64, mass: f64, turns: f64) -> Option<f64> {
    (grade > 0.0 && mass > 0.0 && turns > 0.0).then(|| 1e-3 * grade * mass / (std::f64::consts::TAU * turns))
}

#[cfg(test)]
mod tests;
