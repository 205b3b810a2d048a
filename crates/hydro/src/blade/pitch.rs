//! Local, sectional, blade and propeller pitch; the pitch that acts.

use super::estimate::Estimate;
use super::propeller::Blade;
use super::shape::Shape;
use crate::source::{Method, Trust};

/// Means as the standard takes them.
pub const METHOD_MEANS: Method = Method {
    name: "pitch-means",
    quantity: "mean pitch of a blade and of the propeller, m",
    formula: "blade: plain average over its radii; propeller: plain average over its blades",
    range: "blades measured at the same radii",
    error: "from the readings; errors common to all readings do not average out",
    source: "ISO 484-1 and -2 (1981); that the averages are plain is from memory",
    trust: Trust::Memory,
};

/// The pitch that acts.
pub const METHOD_EFFECTIVE: Method = Method {
    name: "pitch-effective",
    quantity: "constant pitch that thrusts like a pitch distribution, m",
    formula: "P = sum(w P)/sum(w), w = x^2 sqrt(1 - x) over x = r/R from the hub to the tip",
    range: "moderate variations of pitch",
    error: "first order; the centre of the weight lies at 0.675 R on a hub of 0.2 R, the trade reads pitch at 0.7 R",
    source: "ours: x^2 for the square of the speed of the section, sqrt(1 - x) for the circulation that ends at the tip",
    trust: Trust::CommonPractice,
};

/// Pitch between two neighbouring points of one section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LocalPitch {
    /// Middle of the two points: angle from the reference line in the sense of rotation, degrees.
    pub angle_deg: f64,
    /// Pitch, m.
    pub pitch: Estimate,
}

/// Pitch of one section as measured.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionPitch {
    /// Station of its blade, from 0 in order of radius (drawn root and tip not counted).
    pub station: usize,
    /// Radius, m.
    pub radius: f64,
    /// Sectional pitch (all readings joined), m.
    pub pitch: Estimate,
    /// Sectional pitch from first and last point as the standard takes it, m, when points were measured.
    pub by_ends: Option<Estimate>,
    /// Local pitches from leading to trailing edge.
    pub local: Vec<LocalPitch>,
    /// Relative change of pitch from leading to trailing edge.
    pub progression: Option<Estimate>,
}

/// Pitch of one blade.
#[derive(Clone, Debug, PartialEq)]
pub struct BladePitch {
    /// Sections with a reading, radius rising.
    pub sections: Vec<SectionPitch>,
    /// Blade mean pitch, m; `None` if no station was read. The error common to all readings is in it.
    pub mean: Option<Estimate>,
}

/// All pitches of a propeller.
#[derive(Clone, Debug, PartialEq)]
pub struct PitchTable {
    /// One per blade.
    pub blades: Vec<BladePitch>,
    /// Propeller mean pitch, m. The error common to all readings is in it.
    pub mean: Option<Estimate>,
}

/// How pitch runs over the radius.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Radial {
    /// Constant within what was measured.
    Constant,
    /// Rises toward the tip.
    RisesToTip,
    /// Falls toward the tip.
    FallsToTip,
    /// Varies, with no one direction.
    Varies,
    /// Too few radii to tell.
    Unknown,
}

/// How pitch runs along the chord.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Chordwise {
    /// Constant within what was measured.
    Constant,
    /// Progressive: rises from leading to trailing edge.
    Progressive,
    /// Falls from leading to trailing edge.
    Regressive,
    /// No points along the face were measured.
    Unknown,
}

/// Standard deviations from which a change is taken as real: 95 % of chance lies within.
const SURE: f64 = 1.96;

/// Least relative standard deviation of a pitch in a test for constancy: no face is truer. Ours.
const TRUEST: f64 = 0.001;

impl PitchTable {
    /// Whether pitch is constant over the radius, judged at 95 %: by the slope of a weighted line through all blades' sections
    /// (each over its blade's mean), then by their scatter.
    #[must_use]
    pub fn radial(&self) -> Radial {
        let points: Vec<(f64, f64, f64)> = self
            .blades
            .iter()
            .filter_map(|b| b.mean.map(|mean| (b, mean.value)))
            .flat_map(|(b, mean)| {
                b.sections
                    .iter()
                    .map(move |s| (s.radius, s.pitch.value / mean, (s.pitch.sd / mean).max(TRUEST).powi(-2)))
            })
            .collect();
        let sum = |f: &dyn Fn(&(f64, f64, f64)) -> f64| points.iter().map(f).sum::<f64>();
        let weight = sum(&|p| p.2);
        if points.len() < 2 {
            return Radial::Unknown;
        }
        let (x, y) = (sum(&|p| p.2 * p.0) / weight, sum(&|p| p.2 * p.1) / weight);
        let sxx = sum(&|p| p.2 * (p.0 - x).powi(2));
        if sxx <= 1e-9 * weight * x * x {
            return Radial::Unknown;
        }
        let slope = sum(&|p| p.2 * (p.0 - x) * (p.1 - y)) / sxx;
        let free = sum(&|_| 1.0) - 1.0;
        let scatter = sum(&|p| p.2 * (p.1 - y).powi(2));
        let bend = sum(&|p| p.2 * (p.1 - y - slope * (p.0 - x)).powi(2));
        // Upper 5 % of chi-squared (normal approximation).
        if scatter <= free + 1.645 * (2.0 * free).sqrt() && slope.abs() * sxx.sqrt() <= SURE {
            Radial::Constant
        } else if slope * slope * sxx < bend || slope.abs() * sxx.sqrt() <= SURE {
            Radial::Varies
        } else if slope > 0.0 {
            Radial::RisesToTip
        } else {
            Radial::FallsToTip
        }
    }

    /// Whether pitch is progressive along the chord, judged at 95 % on the joined sections.
    #[must_use]
    pub fn chordwise(&self) -> Chordwise {
        let all: Vec<Estimate> = self
            .blades
            .iter()
            .flat_map(|b| &b.sections)
            .filter_map(|s| s.progression)
            .map(|p| Estimate::new(p.value, p.sd.max(TRUEST)))
            .collect();
        match Estimate::combined(&all) {
            None => Chordwise::Unknown,
            Some(e) if e.value > SURE * e.sd => Chordwise::Progressive,
            Some(e) if e.value < -SURE * e.sd => Chordwise::Regressive,
            Some(_) => Chordwise::Constant,
        }
    }
}

/// Weight of radius `x = r/R` in the effective pitch: `x² √(1-x)`, 0 outside 0..1. Ours, see `METHOD_EFFECTIVE`.
#[must_use]
pub fn pitch_weight(x: f64) -> f64 {
    if (0.0..=1.0).contains(&x) { x * x * (1.0 - x).sqrt() } else { 0.0 }
}

/// The constant pitch that thrusts like this blade's distribution, m.
#[must_use]
pub fn effective_pitch(blade: &Blade, hub_radius: f64) -> f64 {
    let shape = Shape::outline_of(blade);
    let weight = |radius: f64| pitch_weight(radius / blade.tip_radius);
    let sum = shape.integral(hub_radius, |cut| weight(cut.radius) * cut.pitch);
    let whole = shape.integral(hub_radius, |cut| weight(cut.radius));
    if whole > 0.0 { sum / whole } else { shape.cut(0.7 * blade.tip_radius).pitch }
}
