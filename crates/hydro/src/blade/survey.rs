//! What a surveyor measured.

use super::estimate::Estimate;
use super::form::Form;
use super::propeller::{Cup, EdgeForm, Hand, Hub};
use super::reading::PitchReading;

/// What was measured at one radius of one blade. Anything but the radius may be missing.
#[derive(Clone, Debug, PartialEq)]
pub struct Station {
    /// Radius, m.
    pub radius: Estimate,
    /// Pitch, by as many ways as were used (joined by inverse variance).
    pub pitch: Vec<PitchReading>,
    /// Chord along the face, m.
    pub chord: Option<Estimate>,
    /// Reference line to leading edge along the face, m.
    pub leading: Option<Estimate>,
    /// Reference line to trailing edge along the face, m.
    pub trailing: Option<Estimate>,
    /// Greatest thickness, m.
    pub thickness: Option<Estimate>,
    /// Axial position of the face at the reference line, m, positive aft (rake; "track" when blades are compared).
    pub track: Option<Estimate>,
}

impl Station {
    /// A station of which only the radius is known yet.
    #[must_use]
    pub const fn at(radius: Estimate) -> Station {
        Station { radius, pitch: Vec::new(), chord: None, leading: None, trailing: None, thickness: None, track: None }
    }
}

/// What was measured on one blade.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct BladeReading {
    /// Shaft axis to tip, m.
    pub tip_radius: Option<Estimate>,
    /// Angle of the reference line in the sense of rotation from the first blade's, degrees.
    pub angle_deg: Option<Estimate>,
    /// Stations, radius rising.
    pub stations: Vec<Station>,
    /// Leading edge.
    pub leading_edge: EdgeForm,
    /// Trailing edge.
    pub trailing_edge: EdgeForm,
    /// Cup.
    pub cup: Option<Cup>,
}

/// A whole survey.
#[derive(Clone, Debug, PartialEq)]
pub struct Readings {
    /// Blades in the sense of rotation; every blade of the propeller has an entry, measured or not.
    pub blades: Vec<BladeReading>,
    /// Hand, see [`Hand::from_leading_edge`].
    pub hand: Hand,
    /// Hub as measured.
    pub hub: Hub,
    /// Kind of section, gives the ordinates between the edges.
    pub form: Form,
    /// Relative standard deviation common to every pitch reading (scale of the gauge, tilt of the table): it does not
    /// average out over radii and blades.
    pub common_pitch_sd: f64,
}
