//! A blade between its sections.

use super::propeller::Blade;
use super::section::Section;
use super::spline::{Spline, integral};
use std::f64::consts::{PI, TAU};

/// Places along the chord at which ordinates are kept.
const PLACES: usize = 41;

/// Kept ordinates of the section inside, of the one outside, and the share of the way between them.
type Neighbours<'a> = (&'a [[f64; 2]], &'a [[f64; 2]], f64);

/// A section between the stated ones; see [`Section`] for the senses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// Radius, m.
    pub radius: f64,
    /// Pitch, m.
    pub pitch: f64,
    /// Chord, m.
    pub chord: f64,
    /// Mid-chord behind the reference line along the pitch line, m.
    pub skew_back: f64,
    /// Rake, m, positive aft.
    pub rake: f64,
    /// Greatest thickness, m.
    pub thickness: f64,
}

impl Cut {
    /// Blade angle, rad.
    #[must_use]
    pub fn blade_angle(&self) -> f64 {
        self.pitch.atan2(TAU * self.radius)
    }

    /// Angle of mid-chord behind the reference line seen along the shaft, rad.
    #[must_use]
    pub fn skew_angle(&self) -> f64 {
        self.skew_back * self.blade_angle().cos() / self.radius
    }

    /// A point of the section: `along` the pitch line from mid-chord toward the leading edge and `off` it toward the back, m.
    /// Gives the axial position (positive forward) and the angle from the reference line in the sense of rotation, rad.
    #[must_use]
    pub fn place(&self, along: f64, off: f64) -> (f64, f64) {
        let (sin, cos) = self.blade_angle().sin_cos();
        let s = along - self.skew_back;
        (-self.rake + s * sin + off * cos, (s * cos - off * sin) / self.radius)
    }
}

/// A blade interpolated over the radius, ready to be asked at any radius.
///
/// Chords run by a monotone spline over `√(1 - r/R)`, in which a rounded tip is smooth; the rest over `r`. A blade without a
/// section at the tip ends in a point there. Inside the innermost section everything runs on straight.
#[derive(Clone, Debug)]
pub struct Shape {
    tip: f64,
    chord: Spline,
    pitch: Spline,
    skew_back: Spline,
    rake: Spline,
    thickness: Spline,
    radii: Vec<f64>,
    /// Face and back over the thickness at [`PLACES`], per section.
    ordinates: Vec<Vec<[f64; 2]>>,
    places: Vec<f64>,
}

impl Shape {
    /// The blade's shape.
    #[must_use]
    pub fn of(blade: &Blade) -> Shape {
        let mut shape = Shape::outline_of(blade);
        shape.places = (0..PLACES).map(place).collect();
        shape.ordinates = blade.sections.iter().map(ordinates).collect();
        // A section without thickness (a sharp tip) has no form of its own: it borrows its neighbour's.
        for i in 1..shape.ordinates.len() {
            if blade.sections[i].thickness() <= 0.0 {
                shape.ordinates[i] = shape.ordinates[i - 1].clone();
            }
        }
        shape
    }

    /// The shape without ordinates: enough for chords, pitch, skew and rake, and cheap.
    pub(super) fn outline_of(blade: &Blade) -> Shape {
        let tip = blade.tip_radius;
        let over = |f: &dyn Fn(&Section) -> f64| Spline::through(blade.sections.iter().map(|s| (s.radius, f(s))));
        let ends_at_tip = blade.sections.last().is_some_and(|s| s.radius >= tip * (1.0 - 1e-9));
        let chords = blade.sections.iter().rev().map(|s| ((1.0 - s.radius / tip).max(0.0).sqrt(), s.chord()));
        let point = (!ends_at_tip).then_some((0.0, 0.0));
        Shape {
            tip,
            chord: Spline::through(point.into_iter().chain(chords)),
            pitch: over(&|s| s.pitch),
            skew_back: over(&Section::skew_back),
            rake: over(&|s| s.rake),
            thickness: over(&Section::thickness),
            radii: blade.sections.iter().map(|s| s.radius).collect(),
            ordinates: Vec::new(),
            places: Vec::new(),
        }
    }

    /// Tip radius, m.
    #[must_use]
    pub fn tip_radius(&self) -> f64 {
        self.tip
    }

    /// The section at `radius`.
    #[must_use]
    pub fn cut(&self, radius: f64) -> Cut {
        Cut {
            radius,
            pitch: self.pitch.at(radius),
            chord: self.chord.at((1.0 - radius / self.tip).max(0.0).sqrt()).max(0.0),
            skew_back: self.skew_back.at(radius),
            rake: self.rake.at(radius),
            thickness: self.thickness.at(radius).max(0.0),
        }
    }

    /// `∫ f(section) dr` from `hub` to the tip; fine where the tip rounds off.
    pub(super) fn integral(&self, hub: f64, mut f: impl FnMut(&Cut) -> f64) -> f64 {
        let end = (1.0 - hub / self.tip).max(0.0).sqrt();
        integral(0.0, end, 24, |w| {
            let radius = self.tip * (1.0 - w * w);
            2.0 * self.tip * w * f(&self.cut(radius))
        })
    }

    /// Ordinates of face and back at `radius`, m, at `fraction` of the chord from the leading edge.
    #[must_use]
    pub fn offset(&self, cut: &Cut, fraction: f64) -> [f64; 2] {
        let Some((before, after, share)) = self.between(cut.radius) else {
            return [0.0, 0.0];
        };
        let (a, b) = (along(before, fraction), along(after, fraction));
        [0, 1].map(|side| cut.thickness * (a[side] + share * (b[side] - a[side])))
    }

    /// Angle covered seen along the shaft, rad: lowest and highest angle of face and back from the reference line in the
    /// sense of rotation.
    pub(super) fn covered(&self, cut: &Cut) -> (f64, f64) {
        let (sin, cos) = cut.blade_angle().sin_cos();
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        let Some((before, after, share)) = self.between(cut.radius) else {
            return (0.0, 0.0);
        };
        for ((a, b), place) in before.iter().zip(after).zip(&self.places) {
            let s = (0.5 - place) * cut.chord - cut.skew_back;
            for side in 0..2 {
                let off = cut.thickness * (a[side] + share * (b[side] - a[side]));
                let across = s * cos - off * sin;
                low = low.min(across);
                high = high.max(across);
            }
        }
        (low / cut.radius, high / cut.radius)
    }

    /// The kept ordinates on both sides of a radius and where between them it lies, 0 to 1.
    fn between(&self, radius: f64) -> Option<Neighbours<'_>> {
        let last = self.ordinates.len().checked_sub(1)?;
        let i = self.radii.partition_point(|&r| r <= radius).clamp(1, last.max(1)).min(last);
        let before = i.saturating_sub(1);
        let span = self.radii[i] - self.radii[before];
        let share = if span > 0.0 { ((radius - self.radii[before]) / span).clamp(0.0, 1.0) } else { 0.0 };
        Some((&self.ordinates[before], &self.ordinates[i], share))
    }
}

/// Chord fraction of place `i`: dense at both edges.
#[expect(clippy::cast_precision_loss, reason = "a small count")]
fn place(i: usize) -> f64 {
    0.5 * (1.0 - (PI * i as f64 / (PLACES - 1) as f64).cos())
}

/// Interpolates kept ordinates at a chord fraction.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a small count"
)]
fn along(ordinates: &[[f64; 2]], fraction: f64) -> [f64; 2] {
    let last = ordinates.len() - 1;
    let u = (1.0 - 2.0 * fraction.clamp(0.0, 1.0)).clamp(-1.0, 1.0).acos() / PI * last as f64;
    let i = (u as usize).min(last.saturating_sub(1));
    let share = u - i as f64;
    [0, 1].map(|side| ordinates[i][side] + share * (ordinates[(i + 1).min(last)][side] - ordinates[i][side]))
}

fn ordinates(section: &Section) -> Vec<[f64; 2]> {
    let thickness = section.thickness();
    let scale = if thickness > 0.0 { thickness.recip() } else { 0.0 };
    let face = Spline::through(section.offsets.iter().map(|o| (o.fraction, o.face * scale)));
    let back = Spline::through(section.offsets.iter().map(|o| (o.fraction, o.back * scale)));
    (0..PLACES).map(|i| [face.at(place(i)), back.at(place(i))]).collect()
}
