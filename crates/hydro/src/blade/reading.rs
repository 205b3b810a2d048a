//! Ways of measuring pitch at one radius, and how their errors come through.

use super::estimate::Estimate;
use super::pitch::LocalPitch;
use crate::source::{Method, Trust};

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
    /// The pitch at `radius`, or `None` if the reading cannot be of a propeller (no arc, no positive pitch, ...).
    #[must_use]
    pub fn reduce(&self, radius: Estimate) -> Option<ReducedPitch> {
        let _ = radius;
        todo!()
    }
}

/// `P = 360 h/a`, m; rise in m, arc in degrees.
#[must_use]
pub fn pitch_of_arc(rise: Estimate, arc_deg: Estimate) -> Option<Estimate> {
    let _ = (rise, arc_deg);
    todo!()
}

/// `P = 2πr tan φ`, m; angle to the plane of rotation in degrees, between 0 and 90.
#[must_use]
pub fn pitch_of_face_angle(radius: Estimate, angle_deg: Estimate) -> Option<Estimate> {
    let _ = (radius, angle_deg);
    todo!()
}

/// Pitch of a rise between two points of one cylinder a straight `span` apart, m.
#[must_use]
pub fn pitch_of_chord(radius: Estimate, rise: Estimate, span: Estimate, slant: bool) -> Option<Estimate> {
    let _ = (radius, rise, span, slant);
    todo!()
}

/// Sectional and local pitches of points on one cylinder.
#[must_use]
pub fn pitch_of_points(points: &[FacePoint], height_sd: f64, angle_sd_deg: f64) -> Option<ReducedPitch> {
    let _ = (points, height_sd, angle_sd_deg);
    todo!()
}
