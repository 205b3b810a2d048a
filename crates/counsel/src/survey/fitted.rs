//! What the survey says of the propeller fitted, for the crowd: measured values with their bands in place of the stamp.

use super::reduction::Reduced;
use hydro::blade::{Chordwise, Estimate, Hand, Radial};
use job::Job;
use job::survey::{DamageKind, Surface};

/// An 80 % band: low, middle, high.
pub type Low3 = (f64, f64, f64);

/// The surveyed propeller as the crowd draws it. What was not measured is `None`: the job and its assumptions hold there.
#[derive(Clone, Debug, PartialEq)]
pub struct Surveyed {
    /// Pitch that acts, without cup, m.
    pub pitch: Option<Low3>,
    /// Expanded area ratio.
    pub area_ratio: Option<Low3>,
    /// Diameter, m.
    pub diameter: Option<Low3>,
    /// Number of blades.
    pub blades: Option<u8>,
    /// Hand, from the leading edge.
    pub hand: Option<job::Hand>,
    /// Share of flat-faced sections, 0 airfoil to 1 flat; where the face was measured by points.
    pub flat_share: Option<Low3>,
    /// Cup as a fraction of pitch.
    pub cup: Option<Low3>,
    /// Roughness height of the blades, m.
    pub roughness: Option<Low3>,
    /// Largest less smallest blade mean pitch over the mean.
    pub blade_spread: Option<Low3>,
    /// What was left out, assumed or is rough.
    pub notes: Vec<String>,
}

/// The survey of a job for the crowd; `None` when there is none, or nothing in it bears on performance.
#[must_use]
pub fn fitted(job: &Job) -> Option<Surveyed> {
    let r = Reduced::of(job)?;
    let surveyed = from(job, &r);
    let Surveyed { pitch, area_ratio, diameter, cup, roughness, hand, .. } = &surveyed;
    let any = pitch.is_some()
        || area_ratio.is_some()
        || diameter.is_some()
        || cup.is_some()
        || roughness.is_some()
        || hand.is_some();
    any.then_some(surveyed)
}

pub(super) fn band(e: Estimate) -> Low3 {
    let (low, high) = e.band();
    (low, e.value, high)
}

fn from(job: &Job, r: &Reduced) -> Surveyed {
    let survey = r.survey;
    let mut notes = r.notes.clone();
    let tips = survey.blades.iter().any(|b| b.tip_radius.is_some()) || survey.diameter_across.is_some();
    let cup = cup_worth(r, &mut notes);
    Surveyed {
        pitch: r.effective().map(band),
        area_ratio: r
            .areas()
            .map(|(a, sd)| band(Estimate::new(a.expanded_ratio, sd * a.expanded_ratio)))
            .or_else(|| super::trace::area_ratio(job, r)),
        diameter: r.diameter.filter(|_| tips).map(band),
        blades: u8::try_from(survey.blades.len()).ok().filter(|n| *n >= 2 && usize::from(*n) == r.count),
        hand: survey.leading_edge.map(|edge| match Hand::from_leading_edge(edge == job::survey::LeadingEdge::Right) {
            Hand::Right => job::Hand::Right,
            Hand::Left => job::Hand::Left,
        }),
        flat_share: flat_share(r, &mut notes),
        cup,
        roughness: roughness(r),
        blade_spread: r.blade_spread().map(|e| {
            let (low, middle, high) = band(e);
            (low.max(0.0), middle, high)
        }),
        notes,
    }
}

/// What a measured cup is worth as a part of the pitch: four times the drop over the chord, half to nearly twice that
/// (estimate, no source: it sets a drop of 1.3 % of the chord against what the trade calls a medium cup), less where only part
/// of the radii carry it.
fn cup_worth(r: &Reduced, notes: &mut Vec<String>) -> Option<Low3> {
    let (drop, share) = r.cup()?;
    if drop <= 0.0 {
        return Some((0.0, 0.0, 0.005));
    }
    notes.push("What the measured cup is worth as pitch is an estimate, half to nearly twice the middle.".to_owned());
    let worth = |times: f64| (times * drop * share).min(0.15);
    Some((worth(2.0), worth(4.0), worth(7.0)))
}

/// The face seen by points: how far local pitches scatter about a straight pitch line. A flat face has one pitch from edge to
/// edge; an airfoil's face lifts at the leading edge, which reads as less pitch there.
fn flat_share(r: &Reduced, notes: &mut Vec<String>) -> Option<Low3> {
    match r.chordwise {
        Chordwise::Unknown => None,
        Chordwise::Constant => {
            notes.push("The face is straight within what was measured: taken as flat-faced sections.".to_owned());
            Some((0.75, 0.95, 1.0))
        }
        // A lifted edge or pitch that rises aft: the points alone do not tell them apart.
        Chordwise::Progressive | Chordwise::Regressive => None,
    }
}

/// Roughness from the surface in words, and the damage map.
fn roughness(r: &Reduced) -> Option<Low3> {
    let survey = r.survey;
    let eroded =
        survey.damage.iter().filter(|d| matches!(d.kind, Some(DamageKind::Pits | DamageKind::Erosion))).count();
    let worn = eroded > r.count;
    // Roughness heights as the crowd takes them: 30 um is a clean new blade (ITTC 1978); the rest are estimates from
    // comparator grades (one public page).
    Some(match (survey.surface?, worn) {
        (Surface::Polished, false) => (10e-6, 20e-6, 40e-6),
        (Surface::Smooth, false) | (Surface::Polished, true) => (20e-6, 30e-6, 75e-6),
        (Surface::Dull, false) | (Surface::Smooth, true) => (40e-6, 75e-6, 150e-6),
        (Surface::Pitted, _) | (Surface::Dull, true) => (100e-6, 200e-6, 450e-6),
        (Surface::Rough, _) => (200e-6, 400e-6, 900e-6),
    })
}

/// In words.
pub(super) fn radial(r: Radial) -> &'static str {
    match r {
        Radial::Constant => "constant within what was measured",
        Radial::RisesToTip => "rises toward the tip",
        Radial::FallsToTip => "falls toward the tip",
        Radial::Varies => "varies",
        Radial::Unknown => "not known: too few radii",
    }
}

/// In words.
pub(super) fn chordwise(c: Chordwise) -> &'static str {
    match c {
        Chordwise::Constant => "constant within what was measured",
        Chordwise::Progressive => "progressive: rises toward the trailing edge",
        Chordwise::Regressive => "falls toward the trailing edge",
        Chordwise::Unknown => "not known: no points along the face",
    }
}
