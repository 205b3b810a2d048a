//! The survey's answer as plain data. Lengths in millimetres, angles in degrees, masses in kilograms; every [`Band`] is an
//! 80 % band as everywhere.

pub use super::accuracy::{Class, Copies, Judged, Part};
use crate::report::{Band, Finding};
use serde::Serialize;

/// Answer of `survey`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SurveyReport {
    /// Title of the job.
    pub title: String,
    /// One plain sentence.
    pub headline: String,
    /// The day of the survey, as written.
    pub date: Option<String>,
    /// Who measured.
    pub surveyor: Option<String>,
    /// Number of blades the propeller has, and how many were measured.
    pub blades_of: u8,
    /// How many of them were measured.
    pub blades_measured: u8,
    /// Hand from the leading edge, else as stated: `right` or `left`.
    pub hand: Option<&'static str>,
    /// Diameter, mm: twice the mean tip radius.
    pub diameter: Option<Band>,
    /// Mean pitch of the propeller, mm: plain average of the blades' plain averages.
    pub mean_pitch: Option<Band>,
    /// Pitch that thrusts like the measured blades, without their cup, mm.
    pub effective_pitch: Option<Band>,
    /// Largest less smallest blade mean over the mean, %.
    pub blade_spread: Option<Band>,
    /// What the pitch is held against: `stamped 14 in`, `design pitch 355.6 mm`.
    pub pitch_reference: Option<String>,
    /// That pitch, mm.
    pub reference_pitch: Option<f64>,
    /// Over the radius: `constant`, `rises toward the tip`, ...
    pub radial: &'static str,
    /// Along the chord: `constant`, `progressive`, ...
    pub chordwise: &'static str,
    /// Each blade with its sections.
    pub blades: Vec<BladeSheet>,
    /// Areas, where widths were measured.
    pub areas: Option<AreaSheet>,
    /// Rake, skew, thickness fraction, where they follow from what was measured.
    pub shape: ShapeSheet,
    /// What turns with the shaft.
    pub turning: TurningSheet,
    /// What a photograph of a blade gave.
    pub photo: Option<PhotoSheet>,
    /// Accuracy class.
    pub accuracy: AccuracySheet,
    /// What a workshop is to do.
    pub repair: RepairSheet,
    /// Hub and bore.
    pub bore: Option<BoreReport>,
    /// The damage map, read.
    pub damage: Vec<DamageRow>,
    /// Findings in order of gravity.
    pub findings: Vec<Finding>,
    /// Warnings and assumptions that travelled with the numbers.
    pub notes: Vec<String>,
}

/// One blade.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BladeSheet {
    /// Its name.
    pub name: String,
    /// Tip radius, mm.
    pub tip_radius: Option<Band>,
    /// Mean pitch, mm.
    pub mean_pitch: Option<Band>,
    /// Mean pitch less that of the propeller, %.
    pub from_mean: Option<f64>,
    /// Sections, from the hub outward.
    pub sections: Vec<SectionSheet>,
}

/// One section.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SectionSheet {
    /// r/R
    pub radius_ratio: f64,
    /// mm
    pub radius: f64,
    /// How the pitch was measured.
    pub measured_by: Vec<&'static str>,
    /// Pitch, mm.
    pub pitch: Option<Band>,
    /// Pitches between neighbouring points, mm, from leading to trailing edge.
    pub local_pitches: Vec<f64>,
    /// Width, mm.
    pub chord: Option<Band>,
    /// Greatest thickness, mm.
    pub thickness: Option<Band>,
    /// Track, mm.
    pub track: Option<Band>,
    /// Drop of the cup, mm.
    pub cup_drop: Option<f64>,
    /// Length of the cup, mm.
    pub cup_length: Option<f64>,
}

/// Areas.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AreaSheet {
    /// Expanded area over disc area.
    pub expanded_ratio: Band,
    /// Developed area over disc area.
    pub developed_ratio: Band,
    /// Projected area over disc area, by integrating the surface.
    pub projected_ratio: Band,
    /// The same by Taylor's relation, as a check.
    pub projected_ratio_taylor: f64,
    /// Mean width ratio.
    pub mean_width_ratio: Band,
    /// Expanded area of all blades, cm².
    pub expanded: f64,
}

/// Angles and ratios.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ShapeSheet {
    /// Rake angle, degrees, positive aft.
    pub rake: Option<Band>,
    /// Skew angle, degrees.
    pub skew: Option<Band>,
    /// Blade thickness fraction.
    pub thickness_fraction: Option<Band>,
    /// Mass, kg.
    pub mass: Option<Band>,
    /// Moment of inertia about the shaft, dry, kg m².
    pub inertia: Option<Band>,
}

/// Unequal weights and unequal blades.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TurningSheet {
    /// Static unbalance from the measured shape, g mm.
    pub unbalance: Option<Band>,
    /// The blade on the heavy side, where one stands out.
    pub heavy_side: Option<String>,
    /// Force that turns with the shaft at full power because blades pull unequally, N.
    pub force: Option<Band>,
    /// Moment that turns with it, N m.
    pub moment: Option<Band>,
    /// Shaft speed of both, rpm.
    pub shaft_speed: Option<f64>,
    /// In words.
    pub statement: String,
}

/// One blade traced on a photograph.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PhotoSheet {
    /// Shaft centre to tip, mm.
    pub tip_radius: Band,
    /// Projected area of the blade, cm².
    pub projected: Band,
    /// Projected area of all blades over disc area.
    pub projected_ratio: Band,
    /// Expanded area ratio by Taylor's relation, where the pitch is known.
    pub expanded_ratio: Option<Band>,
    /// Skew angle, degrees.
    pub skew: Band,
    /// Hand as stated, or as the trailing tip suggests.
    pub hand: Option<&'static str>,
    /// The outline, mm right and up of the shaft centre, seen from astern.
    pub outline: Vec<[f64; 2]>,
}

/// Accuracy class against ISO 484.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AccuracySheet {
    /// Which part covers the size.
    pub part: Part,
    /// The same in a sentence.
    pub statement: String,
    /// Overall class against the design, or `None`: outside class III (or nothing to judge, see `decided_by`).
    pub class: Option<Class>,
    /// Class in words: `II`, `outside class III`, `not judged`.
    pub words: String,
    /// Best and worst class within the spread of the measurement, in words.
    pub within_spread: String,
    /// What decides it.
    pub decided_by: Vec<String>,
    /// Class of the blades among themselves: the same judgement with the measured mean for the design.
    pub among_blades: String,
    /// Every value judged.
    pub rows: Vec<ClassRow>,
    /// Radii a class asks for that were not measured.
    pub missing_radii: Vec<String>,
    /// Where the figures come from.
    pub sources: Vec<String>,
}

/// One value judged.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClassRow {
    /// What.
    pub judged: Judged,
    /// In words.
    pub what: String,
    /// Blade, if it is of one.
    pub blade: Option<String>,
    /// r/R, if it is of one radius.
    pub radius_ratio: Option<f64>,
    /// Measured, in `unit`.
    pub measured: f64,
    /// Meant, in `unit`.
    pub meant: f64,
    /// `mm` or `deg`.
    pub unit: &'static str,
    /// Measured less meant, in `unit`.
    pub deviation: f64,
    /// Half the 80 % band of the deviation, in `unit`.
    pub spread: f64,
    /// The same as a part of what the tolerance is a part of, %; degrees for the spacing.
    pub percent: f64,
    /// Class, `None`: outside class III.
    pub class: Option<Class>,
    /// Class in words.
    pub words: String,
    /// Best and worst within the spread, in words.
    pub within_spread: String,
}

/// What a workshop is to do, and room to say what was done.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RepairSheet {
    /// What the target is: `the propeller's own mean, blades made alike`, `design pitch 355.6 mm`.
    pub target: String,
    /// Row by row.
    pub rows: Vec<RepairRow>,
    /// Blades to true up, the farthest off first.
    pub true_up_first: Vec<String>,
    /// Steps in order.
    pub steps: Vec<String>,
    /// Where not to weld.
    pub no_weld: String,
    /// Balance.
    pub balance: Option<BalanceSheet>,
    /// Cautions.
    pub cautions: Vec<String>,
}

/// One radius of one blade.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RepairRow {
    /// Blade.
    pub blade: String,
    /// r/R
    pub radius_ratio: f64,
    /// mm
    pub radius: f64,
    /// Pitch to be had, mm.
    pub target: f64,
    /// Pitch before, mm.
    pub before: f64,
    /// Half the 80 % band of the pitch before, mm.
    pub spread: f64,
    /// Target less before, mm.
    pub correction: f64,
    /// The same as a twist of the face, degrees; positive steeper.
    pub twist: f64,
    /// `leave`, `leave, within what was measured`, `twist`.
    pub action: &'static str,
    /// Pitch after, mm: room for the workshop.
    pub after: Option<f64>,
}

/// Allowed unbalance.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BalanceSheet {
    /// Mass of the propeller used, kg, and where it is from.
    pub mass: f64,
    /// Where that mass is from.
    pub mass_from: String,
    /// Shaft speed used, rpm.
    pub shaft_speed: f64,
    /// Each class: grams allowed at the tip, the rule that decides, the same as a balance quality grade.
    pub rows: Vec<BalanceRow>,
    /// Grams at the tip that a grade of 6.3 would allow, for comparison.
    pub grade_6_3: f64,
    /// In words.
    pub statement: String,
}

/// One class of balance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BalanceRow {
    /// Class.
    pub class: Class,
    /// Grams at the tip.
    pub allowed: f64,
    /// `speed` or `mass`: the rule that decides.
    pub rule: &'static str,
    /// Balance quality grade G, mm/s.
    pub grade: f64,
}

/// The bore against the standards.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BoreReport {
    /// Diameter lost per length; `None` if it was not measured.
    pub taper: Option<f64>,
    /// The nearest size.
    pub nearest: Option<TaperMatch>,
    /// A second one that cannot be told from it.
    pub also_near: Option<TaperMatch>,
    /// One plain sentence.
    pub statement: String,
    /// Warning.
    pub warning: Option<String>,
    /// What the tables hold and what not.
    pub notes: Vec<String>,
}

/// A size of shaft end.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TaperMatch {
    /// `SAE J755` or `ISO 4566`.
    pub standard: &'static str,
    /// `1 1/4 in`, `25 mm`.
    pub shaft: String,
    /// `1:16`
    pub taper: String,
    /// Measured less expected, mm.
    pub off: f64,
    /// Distance in standard deviations of the measurement.
    pub distance: f64,
    /// Key width of that size, mm.
    pub key: Option<f64>,
    /// How far the row is trusted.
    pub trust: &'static str,
}

/// One place of damage, read.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DamageRow {
    /// Where, in words.
    pub place: String,
    /// What, in words.
    pub what: String,
    /// What it likely comes from.
    pub likely: String,
    /// What to do.
    pub remedy: String,
    /// It lies in the root zone, where nobody welds without a licensed procedure.
    pub root_zone: bool,
}
