//! Expanded, developed and projected outline and area.

use super::propeller::{Blade, Propeller};
use super::shape::{Cut, Shape};
use crate::source::{Method, Trust};
use std::f64::consts::{PI, TAU};

/// Areas.
pub const METHOD: Method = Method {
    name: "blade-areas",
    quantity: "expanded, developed and projected area, m^2, outside the hub",
    formula: "AE = int c dr; AD: each section laid on its osculating circle r/cos^2(phi); AP = int r (angle covered seen along the shaft) dr",
    range: "any blade; developed area is counted from mid-chord, so skew does not enter",
    error: "against a second computation: expanded 0.01 %, projected 0.2 %; a published ratio may leave out the rounding of the tip, 1 %",
    source: "definitions of ITTC and ISO 3715 (from memory); developed: classical construction",
    trust: Trust::Memory,
};

/// Taylor's relation.
pub const METHOD_TAYLOR: Method = Method {
    name: "taylor-projected",
    quantity: "projected over developed area",
    formula: "AP/AD = 1.067 - 0.229 P/D",
    range: "P/D 0.6 to 2.0, elliptical blades without much skew",
    error: "a few per cent",
    source: "D. W. Taylor; three copies, one UFC 4-159-03 eq. 22",
    trust: Trust::Checked,
};

/// Areas of one blade outside the hub, m².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BladeAreas {
    /// Expanded.
    pub expanded: f64,
    /// Developed.
    pub developed: f64,
    /// Projected on the plane of rotation.
    pub projected: f64,
}

/// Areas of a propeller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Areas {
    /// Of all blades, m².
    pub blades: BladeAreas,
    /// `A0 = πD²/4`, m².
    pub disc: f64,
    /// `AE/A0`.
    pub expanded_ratio: f64,
    /// `AD/A0`.
    pub developed_ratio: f64,
    /// `AP/A0`.
    pub projected_ratio: f64,
    /// Mean width ratio: expanded area of a blade over its length outside the hub, over `D`.
    pub mean_width_ratio: f64,
    /// `AP/A0` by Taylor's relation from the developed area and the pitch at 0.7 R, as a check.
    pub projected_ratio_taylor: f64,
}

/// A drawn outline of one blade, m: across (positive toward the leading edge) and up from the shaft axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    /// Leading edge, hub to tip.
    pub leading: Vec<[f64; 2]>,
    /// Trailing edge, hub to tip.
    pub trailing: Vec<[f64; 2]>,
}

/// `AP = AD (1.067 - 0.229 P/D)`; any unit of area.
#[must_use]
pub fn taylor_projected(developed: f64, pitch_ratio: f64) -> f64 {
    developed * (1.067 - 0.229 * pitch_ratio)
}

/// Areas of one blade outside `hub_radius`.
#[must_use]
pub fn blade_areas(blade: &Blade, hub_radius: f64) -> BladeAreas {
    let shape = Shape::of(blade);
    BladeAreas {
        expanded: expanded(&shape, hub_radius),
        developed: shape.integral(hub_radius, developed_width),
        projected: shape.integral(hub_radius, |cut| {
            let (low, high) = shape.covered(cut);
            cut.radius * (high - low)
        }),
    }
}

fn expanded(shape: &Shape, hub_radius: f64) -> f64 {
    shape.integral(hub_radius, |cut| cut.chord)
}

/// Area per length of radius of a chord laid on its osculating circle, radius `ρ = r + p²/r`, `p = P/2π`: at an angle `β` from
/// mid-chord a strip is `ρ' + (1 - ρ') cos β` wide, with `ρ' = 1 - p²/r²`.
fn developed_width(cut: &Cut) -> f64 {
    let steepness = (cut.pitch / (TAU * cut.radius)).powi(2);
    let circle = cut.radius * (1.0 + steepness);
    let growth = 1.0 - steepness;
    let half = 0.5 * cut.chord;
    growth * cut.chord + (1.0 - growth) * 2.0 * circle * (half / circle).sin()
}

/// Expanded area of one blade outside `hub_radius`, m²: cheap.
#[must_use]
pub fn expanded_area(blade: &Blade, hub_radius: f64) -> f64 {
    expanded(&Shape::outline_of(blade), hub_radius)
}

/// Developed area of one blade outside `hub_radius`, m²: cheap.
#[must_use]
pub fn developed_area(blade: &Blade, hub_radius: f64) -> f64 {
    Shape::outline_of(blade).integral(hub_radius, developed_width)
}

/// Areas and ratios of a propeller.
#[must_use]
pub fn areas(propeller: &Propeller) -> Areas {
    let hub = propeller.hub.radius();
    let diameter = propeller.diameter();
    let disc = 0.25 * PI * diameter * diameter;
    let mut blades = BladeAreas { expanded: 0.0, developed: 0.0, projected: 0.0 };
    let mut pitch = 0.0;
    for blade in &propeller.blades {
        let one = blade_areas(blade, hub);
        blades.expanded += one.expanded;
        blades.developed += one.developed;
        blades.projected += one.projected;
        pitch += Shape::outline_of(blade).cut(0.7 * blade.tip_radius).pitch / propeller.count();
    }
    let over = |area: f64, by: f64| if by > 0.0 { area / by } else { 0.0 };
    Areas {
        blades,
        disc,
        expanded_ratio: over(blades.expanded, disc),
        developed_ratio: over(blades.developed, disc),
        projected_ratio: over(blades.projected, disc),
        mean_width_ratio: over(blades.expanded, propeller.count() * (0.5 * diameter - hub) * diameter),
        projected_ratio_taylor: over(taylor_projected(blades.developed, over(pitch, diameter)), disc),
    }
}

/// Walks from hub to tip, dense at the tip, and keeps what `edges` gives for leading and trailing edge.
fn walk(blade: &Blade, hub: f64, points: usize, edges: impl Fn(&Cut) -> [[f64; 2]; 2]) -> Outline {
    let shape = Shape::outline_of(blade);
    let end = (1.0 - hub / blade.tip_radius).max(0.0).sqrt();
    let last = points.max(2) - 1;
    let mut outline = Outline { leading: Vec::with_capacity(last + 1), trailing: Vec::with_capacity(last + 1) };
    for i in (0..=last).rev() {
        #[expect(clippy::cast_precision_loss, reason = "a small count")]
        let w = end * i as f64 / last as f64;
        let [leading, trailing] = edges(&shape.cut(blade.tip_radius * (1.0 - w * w)));
        outline.leading.push(leading);
        outline.trailing.push(trailing);
    }
    outline
}

/// Expanded outline: chords laid straight across at their radius.
#[must_use]
pub fn expanded_outline(blade: &Blade, hub_radius: f64, points: usize) -> Outline {
    walk(blade, hub_radius, points, |cut| [1.0, -1.0].map(|side| [side * 0.5 * cut.chord - cut.skew_back, cut.radius]))
}

/// Developed outline: chords laid on their osculating circles.
#[must_use]
pub fn developed_outline(blade: &Blade, hub_radius: f64, points: usize) -> Outline {
    walk(blade, hub_radius, points, |cut| {
        let circle = cut.radius / cut.blade_angle().cos().powi(2);
        [1.0, -1.0].map(|side| {
            let (sin, cos) = ((side * 0.5 * cut.chord - cut.skew_back) / circle).sin_cos();
            [circle * sin, cut.radius - circle * (1.0 - cos)]
        })
    })
}

/// Projected outline: the blade upright, seen along the shaft, leading edge to the positive side (mirror it for the hand).
#[must_use]
pub fn projected_outline(blade: &Blade, hub_radius: f64, points: usize) -> Outline {
    walk(blade, hub_radius, points, |cut| {
        [1.0, -1.0].map(|side| {
            let (sin, cos) = cut.place(side * 0.5 * cut.chord, 0.0).1.sin_cos();
            [cut.radius * sin, cut.radius * cos]
        })
    })
}
