//! A blade's outline from a photograph.

use super::propeller::Hand;
use super::trouble::Trouble;
use crate::source::{Method, Trust};

/// Photo trace.
pub const METHOD: Method = Method {
    name: "photo-trace",
    quantity: "projected area (m^2), mid-chord line and skew (rad) of one blade",
    formula: "polygon area; at each radius the middle angle of the outline",
    range: "camera on the shaft's axis, far off against the blade's depth",
    error: "scale squared on the area; a near camera makes near parts large",
    source: "ours, plane geometry",
    trust: Trust::CommonPractice,
};

/// Points clicked around one blade on a photograph taken from astern.
#[derive(Clone, Debug, PartialEq)]
pub struct Photo {
    /// Outline in pixels (x right, y down), in order round the blade, from hub to tip to hub; either way round.
    pub outline: Vec<[f64; 2]>,
    /// Shaft centre, pixels.
    pub centre: [f64; 2],
    /// Scale, m per pixel.
    pub scale: f64,
    /// Hub radius, m: the outline inside it is cut off.
    pub hub_radius: f64,
    /// Hand, if known; else it is guessed from the skew (a blade's tip trails).
    pub hand: Option<Hand>,
    /// Standard deviation of a click, pixels.
    pub click_sd: f64,
    /// Relative standard deviation of the scale.
    pub scale_sd: f64,
}

/// What a photograph gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Traced {
    /// Tip radius, m.
    pub tip_radius: super::Estimate,
    /// Projected area of the blade outside the hub, m².
    pub projected: super::Estimate,
    /// Hand as given, or as the skew suggests; `None` if the blade is too even to tell.
    pub hand: Option<Hand>,
    /// Skew angle `θ_EXT`, rad.
    pub skew: super::Estimate,
    /// Angle of the tip behind the root's mid-chord, rad, by the hand (positive trailing).
    pub tip_behind_root: f64,
    /// Radius (m), mid-chord angle clockwise seen from astern (rad), angle covered (rad).
    pub line: Vec<(f64, f64, f64)>,
    /// Projected outline, m, seen from astern: right and up from the shaft axis.
    pub outline: Vec<[f64; 2]>,
}

/// Reduces a trace.
///
/// # Errors
/// [`Trouble`] when the points do not go round a blade.
pub fn trace(photo: &Photo) -> Result<Traced, Trouble> {
    let _ = photo;
    todo!()
}
