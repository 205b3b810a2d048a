//! From what a surveyor measured to a propeller with spreads.

use super::estimate::Estimate;
use super::form::Form;
use super::pitch::PitchTable;
use super::propeller::{Cup, EdgeForm, Hand, Hub, Propeller};
use super::reading::PitchReading;
use super::trouble::{Quantity, Trouble};

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

/// Spread of one section: standard deviations, m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SectionSpread {
    /// Of the pitch.
    pub pitch: f64,
    /// Of the chord, mid-chord held.
    pub chord: f64,
    /// Of the mid-chord's distance from the reference line (skew-back), chord held.
    pub skew_back: f64,
    /// Of the rake.
    pub rake: f64,
    /// Of the greatest thickness.
    pub thickness: f64,
}

/// What had to be assumed because nobody measured it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AssumedWhat {
    /// Drawn from this blade's other stations.
    FromNeighbours,
    /// The mean of the other blades at this radius.
    FromOtherBlades,
    /// Nothing measured on any blade: a usual value.
    Usual,
}

/// One assumed value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assumed {
    /// Blade, from 0.
    pub blade: usize,
    /// Station of that blade in [`Measured`], from 0; `None` for the whole blade.
    pub station: Option<usize>,
    /// Which quantity.
    pub quantity: Quantity,
    /// How.
    pub what: AssumedWhat,
}

/// A measured propeller.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// The middle.
    pub propeller: Propeller,
    /// Spread of each blade's sections, same order as `propeller.blades[..].sections`.
    pub spreads: Vec<Vec<SectionSpread>>,
    /// Tip radius of each blade, m.
    pub tip_radii: Vec<Estimate>,
    /// Angle of each blade, rad.
    pub angles: Vec<Estimate>,
    /// Local, sectional, blade and propeller pitch as measured (stations without a pitch reading are not in it).
    pub pitch: PitchTable,
    /// Relative standard deviation common to all pitches.
    pub common_pitch_sd: f64,
    /// What was not measured.
    pub assumed: Vec<Assumed>,
}

/// Reduces readings to a propeller.
///
/// Values missing at a station are drawn from the blade's other stations, values missing on a whole blade from the other
/// blades; each is listed in [`Measured::assumed`] with a spread to match.
///
/// # Errors
/// [`Trouble`] when the readings cannot be of a propeller.
pub fn reduce(readings: &Readings) -> Result<Measured, Trouble> {
    let _ = readings;
    todo!()
}

impl Measured {
    /// Diameter, m: twice the mean tip radius.
    #[must_use]
    pub fn diameter(&self) -> Estimate {
        Estimate::mean(self.tip_radii.iter().copied()).unwrap_or(Estimate::exact(0.0)).times(2.0)
    }

    /// Any quantity of the propeller with its spread: the quantity at the middle, and the root of the summed squares of
    /// its changes when each measured value is moved by its standard deviation (independent errors, first order).
    #[must_use]
    pub fn estimate(&self, quantity: impl Fn(&Propeller) -> f64) -> Estimate {
        let _ = &quantity;
        todo!()
    }
}
