//! Ways of measuring pitch at one radius, and how their errors come through.

use super::estimate::Estimate;
use super::pitch::LocalPitch;
use crate::source::{Method, Trust};
use std::f64::consts::TAU;

/// Pitch from rise over an arc, face angle, rise over a chord, points of the face.
pub const METHOD: Method = Method {
    name: "pitch-measured",
    quantity: "pitch of a section, m",
    formula: "rise over arc: P = 360 h/a; face angle: P = 2 pi r tan(phi); rise over a level chord k: a = 2 asin(k/(2r)); points: least squares helix",
    range: "arc above 0, face angle 0 to 90 deg, chord below 2 r",
    error: "first order from the spreads of the readings",
    source: "ISO 484-1 and -2 (1981, 2015), pitch measuring methods, principle read in copies; the rest is geometry of the helix",
    trust: Trust::OneCopy,
};

/// A point of the face on one cylinder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FacePoint {
    /// Angle from the reference line in the sense of rotation (toward the leading edge), degrees.
    pub angle_deg: f64,
    /// Height along the shaft, m, positive forward (any zero).
    pub height: f64,
}

/// One reading of pitch.
#[derive(Clone, Debug, PartialEq)]
pub enum PitchReading {
    /// Swing gauge: height gained along the shaft over an arc at the station's radius.
    RiseOverArc {
        /// Rise, m.
        rise: Estimate,
        /// Arc, degrees.
        arc_deg: Estimate,
    },
    /// Protractor or digital level held on the face along the arc: angle to the plane of rotation.
    FaceAngle {
        /// Angle, degrees.
        angle_deg: Estimate,
    },
    /// Blocks under the blade: rise between two points of the face at the station's radius.
    RiseOverChord {
        /// Rise along the shaft, m.
        rise: Estimate,
        /// Straight distance between the two points, m: level (square to the shaft), or along the slope if `slant`.
        span: Estimate,
        /// Whether `span` was taken along the slope.
        slant: bool,
    },
    /// Points along the face.
    Points {
        /// At least two, any order.
        points: Vec<FacePoint>,
        /// Standard deviation of each height, m.
        height_sd: f64,
        /// Standard deviation of each angle, degrees.
        angle_sd_deg: f64,
    },
    /// A pitch somebody else worked out, m.
    Stated(Estimate),
}

/// A reading reduced.
#[derive(Clone, Debug, PartialEq)]
pub struct ReducedPitch {
    /// Sectional pitch, m. Of points: by least squares.
    pub pitch: Estimate,
    /// Sectional pitch from first and last point, as the standard takes it, m; points only.
    pub by_ends: Option<Estimate>,
    /// Pitch between neighbouring points, from leading to trailing edge; points only (three or more).
    pub local: Vec<LocalPitch>,
    /// Relative change of pitch from leading to trailing edge, `(P_TE - P_LE)/P`, by a least squares parabola; points only
    /// (four or more).
    pub progression: Option<Estimate>,
}

impl PitchReading {
    /// The number a person would look at first when the reading is doubted: rise (m), angle (degrees) or pitch (m).
    #[must_use]
    pub fn main_value(&self) -> f64 {
        match self {
            PitchReading::RiseOverArc { rise, .. } | PitchReading::RiseOverChord { rise, .. } => rise.value,
            PitchReading::FaceAngle { angle_deg } => angle_deg.value,
            PitchReading::Points { points, .. } => points.first().map_or(0.0, |p| p.height),
            PitchReading::Stated(pitch) => pitch.value,
        }
    }

    /// The pitch at `radius`, or `None` if the reading cannot be of a propeller (no arc, no positive pitch, ...).
    #[must_use]
    pub fn reduce(&self, radius: Estimate) -> Option<ReducedPitch> {
        let one = |pitch| ReducedPitch { pitch, by_ends: None, local: Vec::new(), progression: None };
        match self {
            PitchReading::RiseOverArc { rise, arc_deg } => pitch_of_arc(*rise, *arc_deg).map(one),
            PitchReading::FaceAngle { angle_deg } => pitch_of_face_angle(radius, *angle_deg).map(one),
            PitchReading::RiseOverChord { rise, span, slant } => pitch_of_chord(radius, *rise, *span, *slant).map(one),
            PitchReading::Points { points, height_sd, angle_sd_deg } => {
                pitch_of_points(points, *height_sd, *angle_sd_deg)
            }
            PitchReading::Stated(pitch) => positive(*pitch).map(one),
        }
    }
}

fn positive(pitch: Estimate) -> Option<Estimate> {
    (pitch.is_finite() && pitch.value > 0.0).then_some(pitch)
}

/// `P = 360 h/a`, m; rise in m, arc in degrees (above 0, at most 360).
#[must_use]
pub fn pitch_of_arc(rise: Estimate, arc_deg: Estimate) -> Option<Estimate> {
    if !(arc_deg.value > 0.0 && arc_deg.value <= 360.0) {
        return None;
    }
    let pitch = 360.0 * rise.value / arc_deg.value;
    let sd = (360.0 * rise.sd / arc_deg.value).hypot(pitch * arc_deg.sd / arc_deg.value);
    positive(Estimate::new(pitch, sd))
}

/// `P = 2πr tan φ`, m; angle to the plane of rotation in degrees, between 0 and 90.
#[must_use]
pub fn pitch_of_face_angle(radius: Estimate, angle_deg: Estimate) -> Option<Estimate> {
    if !(angle_deg.value > 0.0 && angle_deg.value < 90.0 && radius.value > 0.0) {
        return None;
    }
    let angle = angle_deg.value.to_radians();
    let pitch = TAU * radius.value * angle.tan();
    let by_angle = TAU * radius.value / angle.cos().powi(2) * angle_deg.sd.to_radians();
    positive(Estimate::new(pitch, by_angle.hypot(pitch * radius.sd / radius.value)))
}

/// Pitch of a rise between two points of one cylinder a straight `span` apart, m: the arc is `2 asin(k/2r)` over the level
/// distance `k`, `k² = span² - rise²` for a span taken along the slope.
#[must_use]
pub fn pitch_of_chord(radius: Estimate, rise: Estimate, span: Estimate, slant: bool) -> Option<Estimate> {
    let level_squared = if slant { span.value.powi(2) - rise.value.powi(2) } else { span.value.powi(2) };
    if !(level_squared > 0.0 && radius.value > 0.0) {
        return None;
    }
    let level = level_squared.sqrt();
    let u = level / (2.0 * radius.value);
    if u >= 1.0 {
        return None;
    }
    let arc = 2.0 * u.asin();
    let pitch = TAU * rise.value / arc;
    let arc_by_level = (radius.value * (1.0 - u * u).sqrt()).recip();
    let arc_by_radius = -level / radius.value * arc_by_level;
    let (level_by_rise, level_by_span) = if slant { (-rise.value / level, span.value / level) } else { (0.0, 1.0) };
    let by_arc = -pitch / arc;
    let by_rise = TAU / arc + by_arc * arc_by_level * level_by_rise;
    let by_span = by_arc * arc_by_level * level_by_span;
    let sd = (by_rise * rise.sd).hypot(by_span * span.sd).hypot(by_arc * arc_by_radius * radius.sd);
    positive(Estimate::new(pitch, sd))
}

/// Sectional and local pitches of points on one cylinder; `None` of fewer than two places or a face that does not climb.
#[must_use]
pub fn pitch_of_points(points: &[FacePoint], height_sd: f64, angle_sd_deg: f64) -> Option<ReducedPitch> {
    if points.iter().any(|p| !(p.angle_deg.is_finite() && p.height.is_finite())) {
        return None;
    }
    // From leading to trailing edge: falling angle.
    let mut at: Vec<(f64, f64)> = points.iter().map(|p| (p.angle_deg.to_radians(), p.height)).collect();
    at.sort_by(|a, b| b.0.total_cmp(&a.0));
    let (first, last) = (*at.first()?, *at.last()?);
    let arc = first.0 - last.0;
    if arc <= 1e-9 {
        return None;
    }
    let n = at.iter().map(|_| 1.0).sum::<f64>();
    let mean = at.iter().map(|p| p.0).sum::<f64>() / n;
    let mean_height = at.iter().map(|p| p.1).sum::<f64>() / n;
    let sxx = at.iter().map(|p| (p.0 - mean).powi(2)).sum::<f64>();
    let slope = at.iter().map(|p| (p.0 - mean) * (p.1 - mean_height)).sum::<f64>() / sxx;
    // An error of angle shows as one of height along the helix.
    let sd = height_sd.hypot(slope * angle_sd_deg.to_radians());
    let pitch = positive(Estimate::new(TAU * slope, TAU * sd / sxx.sqrt()))?;
    let between = |a: (f64, f64), b: (f64, f64)| {
        Estimate::new(TAU * (a.1 - b.1) / (a.0 - b.0), TAU * sd * std::f64::consts::SQRT_2 / (a.0 - b.0))
    };
    let local = if at.len() < 3 {
        Vec::new()
    } else {
        at.windows(2)
            .filter(|p| p[0].0 - p[1].0 > 1e-9)
            .map(|p| LocalPitch { angle_deg: (0.5 * (p[0].0 + p[1].0)).to_degrees(), pitch: between(p[0], p[1]) })
            .collect()
    };
    let progression = (at.len() >= 4).then(|| progression(&at, mean, sxx, slope, sd)).flatten();
    Some(ReducedPitch { pitch, by_ends: Some(between(first, last)), local, progression })
}

/// `(P_TE - P_LE)/P` by a least squares parabola: only its part square to the straight line bends the pitch.
fn progression(at: &[(f64, f64)], mean: f64, sxx: f64, slope: f64, sd: f64) -> Option<Estimate> {
    let n = at.iter().map(|_| 1.0).sum::<f64>();
    let cube = at.iter().map(|p| (p.0 - mean).powi(3)).sum::<f64>() / sxx;
    let bend = |angle: f64| (angle - mean).powi(2) - cube * (angle - mean) - sxx / n;
    let sqq = at.iter().map(|p| bend(p.0).powi(2)).sum::<f64>();
    let arc = at.first()?.0 - at.last()?.0;
    if sqq <= 1e-12 * arc.powi(4) {
        return None;
    }
    let curve = at.iter().map(|p| bend(p.0) * p.1).sum::<f64>() / sqq;
    let scale = -2.0 * arc / slope;
    Some(Estimate::new(scale * curve, scale * sd / sqq.sqrt()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(got: Option<Estimate>, value: f64, sd: f64) {
        let got = got.unwrap();
        assert!((got.value - value).abs() < 1e-9 && (got.sd - sd).abs() < 1e-6, "{got:?}");
    }

    #[test]
    fn every_way_reads_the_same_helix() {
        // r 150 mm, P 360 mm, 40 degrees of arc: 40 mm of rise.
        let (r, rise) = (Estimate::exact(0.150), Estimate::exact(0.040));
        let arc = 40_f64.to_radians();
        near(pitch_of_arc(rise, Estimate::exact(40.0)), 0.360, 0.0);
        let face = (0.360 / (TAU * 0.150)).atan().to_degrees();
        near(pitch_of_face_angle(r, Estimate::exact(face)), 0.360, 0.0);
        let level = 2.0 * 0.150 * (0.5 * arc).sin();
        near(pitch_of_chord(r, rise, Estimate::exact(level), false), 0.360, 0.0);
        near(pitch_of_chord(r, rise, Estimate::exact(level.hypot(0.040)), true), 0.360, 0.0);
        let points: Vec<FacePoint> =
            (0..5).map(|i| FacePoint { angle_deg: 10.0 * f64::from(i), height: 0.01 * f64::from(i) }).collect();
        let got = pitch_of_points(&points, 0.0, 0.0).unwrap();
        assert!((got.pitch.value - 0.360).abs() < 1e-12);
        assert_eq!(got.local.len(), 4);
        assert!(got.progression.unwrap().value.abs() < 1e-9);
    }

    #[test]
    fn spreads_follow_a_small_change() {
        let (r, h, k) = (Estimate::new(0.150, 1e-4), Estimate::new(0.040, 2e-4), Estimate::new(0.110, 3e-4));
        let at = |r: f64, h: f64, k: f64| {
            pitch_of_chord(Estimate::exact(r), Estimate::exact(h), Estimate::exact(k), true).unwrap().value
        };
        let base = at(r.value, h.value, k.value);
        let moved = [
            at(r.value + r.sd, h.value, k.value) - base,
            at(r.value, h.value + h.sd, k.value) - base,
            at(r.value, h.value, k.value + k.sd) - base,
        ];
        let want = moved.iter().map(|d| d * d).sum::<f64>().sqrt();
        let got = pitch_of_chord(r, h, k, true).unwrap().sd;
        assert!((got - want).abs() < 0.01 * want, "{got} {want}");
    }

    #[test]
    fn a_progressive_face_is_seen() {
        // Pitch from 0.95 P at the leading edge to 1.05 P at the trailing edge.
        let points: Vec<FacePoint> = (0..9)
            .map(|i| {
                let a = 5.0 * f64::from(i);
                let u = a / 40.0;
                // dh/da = (P/360)(1.05 - 0.1 u)
                FacePoint { angle_deg: a, height: 0.001 * 40.0 * (1.05 * u - 0.05 * u * u) }
            })
            .collect();
        let got = pitch_of_points(&points, 1e-5, 0.0).unwrap();
        assert!((got.progression.unwrap().value - 0.1).abs() < 1e-9);
        assert!((got.by_ends.unwrap().value - 0.360).abs() < 1e-9);
        assert!(got.local[0].pitch.value < got.local[7].pitch.value);
    }

    #[test]
    fn refuses_what_is_no_propeller() {
        let e = Estimate::exact;
        assert!(pitch_of_arc(e(0.04), e(0.0)).is_none());
        assert!(pitch_of_arc(e(-0.04), e(20.0)).is_none());
        assert!(pitch_of_face_angle(e(0.1), e(90.0)).is_none());
        assert!(pitch_of_chord(e(0.1), e(0.04), e(0.25), false).is_none());
        assert!(pitch_of_chord(e(0.1), e(0.3), e(0.25), true).is_none());
        assert!(pitch_of_points(&[FacePoint { angle_deg: 1.0, height: 0.0 }], 0.0, 0.0).is_none());
        assert!(pitch_of_arc(e(f64::NAN), e(20.0)).is_none());
    }
}
