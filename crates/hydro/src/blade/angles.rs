//! Rake, skew, thickness fraction.

use super::propeller::Blade;
use super::section::Section;
use super::shape::Shape;
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

/// A section nearer the hub than this stands in the fillet (and is drawn, not measured).
const CLEAR: f64 = 1.005;

/// Rake, see [`Rake`]. Sections at the hub and a pointed tip do not count.
#[must_use]
pub fn rake(blade: &Blade, hub_radius: f64) -> Rake {
    let outside = |s: &&Section| s.radius > hub_radius * CLEAR && s.chord() > 0.0;
    let (_, slope) = line(blade.sections.iter().filter(outside).map(|s| (s.radius, s.rake)));
    let at_tip = slope * blade.tip_radius;
    let tip = Shape::outline_of(blade).cut(blade.tip_radius);
    Rake {
        angle: slope.atan(),
        at_tip,
        ratio: if blade.tip_radius > 0.0 { 0.5 * at_tip / blade.tip_radius } else { 0.0 },
        total_at_tip: at_tip + tip.skew_back * tip.blade_angle().sin(),
    }
}

/// Skew, see [`Skew`].
#[must_use]
pub fn skew(blade: &Blade, hub_radius: f64) -> Skew {
    const STEPS: u8 = 64;
    let shape = Shape::outline_of(blade);
    let end = (1.0 - hub_radius / blade.tip_radius).max(0.0).sqrt();
    let line: Vec<(f64, f64)> = (0..=STEPS)
        .map(|i| {
            let w = end * (1.0 - f64::from(i) / f64::from(STEPS));
            let cut = shape.cut(blade.tip_radius * (1.0 - w * w));
            (cut.radius, cut.skew_angle())
        })
        .collect();
    let high = line.iter().map(|p| p.1).fold(f64::NEG_INFINITY, f64::max);
    let low = line.iter().map(|p| p.1).fold(f64::INFINITY, f64::min);
    let tip = shape.cut(blade.tip_radius);
    Skew { angle: high - low, tip_angle: tip.skew_angle(), tip_back: tip.skew_back, line }
}

/// Greatest thickness carried to the shaft axis in a straight line, over the diameter (least squares over the sections up to
/// 0.7 R that stand clear of the hub; over all if those are fewer than two).
#[must_use]
pub fn thickness_fraction(blade: &Blade, hub_radius: f64) -> f64 {
    let inner = |s: &&Section| s.radius > hub_radius * CLEAR && s.radius <= 0.7 * blade.tip_radius * (1.0 + 1e-9);
    let mut points: Vec<(f64, f64)> = blade.sections.iter().filter(inner).map(|s| (s.radius, s.thickness())).collect();
    if points.len() < 2 {
        points = blade.sections.iter().map(|s| (s.radius, s.thickness())).collect();
    }
    let (at_axis, _) = line(points);
    if blade.tip_radius > 0.0 { (0.5 * at_axis / blade.tip_radius).max(0.0) } else { 0.0 }
}

/// Least squares line: value at 0 and slope. Of one point: level.
pub(super) fn line(points: impl IntoIterator<Item = (f64, f64)>) -> (f64, f64) {
    let (mut n, mut sx, mut sy, mut sxx, mut sxy) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for (x, y) in points {
        n += 1.0;
        sx += x;
        sy += y;
        sxx += x * x;
        sxy += x * y;
    }
    let spread = n * sxx - sx * sx;
    if n < 1.0 {
        (0.0, 0.0)
    } else if spread <= 1e-12 * n * sxx {
        (sy / n, 0.0)
    } else {
        let slope = (n * sxy - sx * sy) / spread;
        ((sy - slope * sx) / n, slope)
    }
}
