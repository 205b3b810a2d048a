//! Rake, skew, thickness fraction.

use super::propeller::Blade;
use crate::source::{Method, Trust};

/// Rake, skew, thickness fraction.
pub const METHOD: Method = Method {
    name: "blade-angles",
    quantity: "rake and skew angle (rad), thickness fraction",
    formula: "rake: slope of the reference line by least squares; skew: range of the mid-chord angle over the radius; thickness: extrapolated to the axis over D",
    range: "any blade",
    error: "of the sections",
    source: "ITTC symbols (skew angle theta_EXT); thickness fraction: common practice, no source",
    trust: Trust::Memory,
};

/// Rake of a blade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rake {
    /// Angle of the reference line to the plane of rotation, rad, positive aft (least squares over the sections).
    pub angle: f64,
    /// Axial position of the reference line at the tip less that carried to the axis, m, positive aft.
    pub at_tip: f64,
    /// `at_tip / D`.
    pub ratio: f64,
    /// The same with the axial shift that skew brings, at the tip, m.
    pub total_at_tip: f64,
}

/// Skew of a blade.
#[derive(Clone, Debug, PartialEq)]
pub struct Skew {
    /// Skew angle `θ_EXT`, rad: between the radii through the foremost and the aftmost point of the projected mid-chord line.
    pub angle: f64,
    /// Angle of the tip's mid-chord behind the reference line, rad.
    pub tip_angle: f64,
    /// Skew-back of the tip along its helix, m.
    pub tip_back: f64,
    /// The projected mid-chord line: radius (m), angle behind the reference line (rad), hub to tip.
    pub line: Vec<(f64, f64)>,
}

/// Rake, see [`Rake`].
#[must_use]
pub fn rake(blade: &Blade, hub_radius: f64) -> Rake {
    let _ = (blade, hub_radius);
    todo!()
}

/// Skew, see [`Skew`].
#[must_use]
pub fn skew(blade: &Blade, hub_radius: f64) -> Skew {
    let _ = (blade, hub_radius);
    todo!()
}

/// Greatest thickness carried to the shaft axis in a straight line, over the diameter (least squares over the sections up to
/// 0.7 R that lie outside the hub).
#[must_use]
pub fn thickness_fraction(blade: &Blade, hub_radius: f64) -> f64 {
    let _ = (blade, hub_radius);
    todo!()
}
