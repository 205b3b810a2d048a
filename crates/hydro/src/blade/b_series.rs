//! Blades of the B-series.

use super::b_tables::{OUTLINE_3, OUTLINE_4_TO_7, OutlineRow, PITCH_4, PLACES, THICKNESS, V1, V2};
use super::form::EDGE_SHARE;
use super::propeller::{Blade, EdgeForm, Hand, Hub, Propeller};
use super::section::{Offset, Section};
use super::shape::Shape;
use super::spline::Spline;
use crate::source::{Method, Trust};

/// B-series geometry.
pub const METHOD: Method = Method {
    name: "b-series-geometry",
    quantity: "outline, ordinates, thickness of B-series blades",
    formula: "chord c Z/(D AE/A0), generator and thickest point by tables; t/D = A - B Z; y = V1, V2 (tmax - te)",
    range: "3 to 7 blades; 2 blades drawn with the table of 3",
    error: "expanded area outside the hub within 0.5 % of the nominal; the tip beyond 0.9 R is not in the table",
    source: "M. W. C. Oosterveld & P. van Oossanen 1975, Int. Shipb. Progress 22; rake 15 deg and root pitch of 4 blades: memory",
    trust: Trust::Checked,
};

/// What to draw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BSeries {
    /// Blades.
    pub blades: u8,
    /// `AE/A0`.
    pub expanded_area_ratio: f64,
    /// `P/D` at the tip (with 4 blades the root has less).
    pub pitch_ratio: f64,
    /// Diameter, m.
    pub diameter: f64,
    /// Hand.
    pub hand: Hand,
}

/// Rake of the generator, degrees. Memory.
const RAKE_DEG: f64 = 15.0;

/// Radii at which sections are drawn, `r/R`.
const RADII: [f64; 12] = [0.167, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95];

const fn outline(blades: u8) -> &'static [OutlineRow] {
    if blades <= 3 { &OUTLINE_3 } else { &OUTLINE_4_TO_7 }
}

/// Hub diameter over `D`: 0.180 up to 3 blades, 0.167 above. Memory.
#[must_use]
pub const fn hub_ratio(blades: u8) -> f64 {
    if blades <= 3 { 0.180 } else { 0.167 }
}

/// `t/D = A - B Z` at `x = r/R` (straight between the table's rows and inside them).
#[must_use]
pub fn thickness_ratio(x: f64, blades: u8) -> f64 {
    let row = |r: &(f64, f64, f64)| (r.0, r.1 - r.2 * f64::from(blades));
    let last = THICKNESS.len() - 2;
    let i = THICKNESS.partition_point(|r| r.0 <= x).saturating_sub(1).min(last);
    let ((x0, t0), (x1, t1)) = (row(&THICKNESS[i]), row(&THICKNESS[i + 1]));
    (t0 + (x - x0) / (x1 - x0) * (t1 - t0)).max(0.0)
}

/// `c Z/(D AE/A0)` by `x = r/R`, monotone over `√(1 - x)`, 0 at the tip.
fn chords(blades: u8) -> Spline {
    Spline::through([(0.0, 0.0)].into_iter().chain(outline(blades).iter().rev().map(|r| ((1.0 - r.x).sqrt(), r.chord))))
}

/// Mid-chord behind the generator in the unit of the chord table. The table ends at 0.9 R; the tip is put where the second
/// difference of the last three rows leads, 0.199 and 0.147 of the chord at 0.6 R (4 to 7 blades, 3 blades). The older table
/// of the series puts it at 0.2014 (memory).
fn mid_chords(blades: u8) -> Spline {
    let rows = outline(blades);
    let mid = |i: usize| (0.5 - rows[i].generator) * rows[i].chord;
    let tip = 3.0 * mid(7) - 3.0 * mid(6) + mid(5);
    Spline::through((0..rows.len()).map(|i| (rows[i].x, mid(i))).chain([(1.0, tip)]))
}

/// Leading edge to the thickest point over the chord; 0.5 at the tip.
pub(super) fn thickest(x: f64, blades: u8) -> f64 {
    Spline::through(outline(blades).iter().map(|r| (r.x, r.thickest)).chain([(1.0, 0.5)])).at(x)
}

/// Ordinates: `y_face = V1 (tmax - te)`, `y_back = (V1 + V2)(tmax - te) + te`, straight between the table's radii.
pub(super) fn offsets(x: f64, thickness: f64, edge: f64, thickest: f64) -> Vec<Offset> {
    let i = V1.partition_point(|r| r.0 <= x).clamp(1, V1.len() - 1);
    let share = ((x - V1[i - 1].0) / (V1[i].0 - V1[i - 1].0)).clamp(0.0, 1.0);
    let at = |table: &[(f64, [f64; 20]); 13], k: usize| table[i - 1].1[k] + share * (table[i].1[k] - table[i - 1].1[k]);
    (0..PLACES.len())
        .rev()
        .map(|k| {
            let p = PLACES[k];
            let fraction = if p > 0.0 { thickest * (1.0 - p) } else { thickest - p * (1.0 - thickest) };
            let (v1, v2) = (at(&V1, k), at(&V2, k));
            let body = thickness - edge;
            Offset { fraction, face: v1 * body, back: (v1 + v2) * body + edge }
        })
        .collect()
}

/// A B-series propeller with 15° of rake and the series' hub ratio (both memory). Two blades take the table of three.
/// The edges are [`Form`](super::Form)'s usual share of the thickness (ours); hub length and bore are usual values (ours).
#[must_use]
pub fn b_series(what: &BSeries) -> Propeller {
    let (d, radius) = (what.diameter, 0.5 * what.diameter);
    let unit = d * what.expanded_area_ratio / f64::from(what.blades.max(1));
    let (chords, mids) = (chords(what.blades), mid_chords(what.blades));
    let pitch_4 = Spline::through(PITCH_4);
    let hub = hub_ratio(what.blades);
    let radii = std::iter::once(hub).chain(RADII.into_iter().filter(|&x| x > hub + 0.005)).chain([1.0]);
    let sections = radii
        .map(|x| {
            let (half, back) = (0.5 * unit * chords.at((1.0 - x).max(0.0).sqrt()), unit * mids.at(x));
            let thickness = d * thickness_ratio(x, what.blades);
            let factor = if what.blades == 4 { pitch_4.at(x).min(1.0) } else { 1.0 };
            Section {
                radius: x * radius,
                pitch: what.pitch_ratio * d * factor,
                leading: half - back,
                trailing: half + back,
                rake: x * radius * RAKE_DEG.to_radians().tan(),
                offsets: offsets(x, thickness, EDGE_SHARE * thickness, thickest(x, what.blades)),
            }
        })
        .collect();
    finish(sections, radius, what.blades, what.hand, hub * d)
}

/// Puts equal blades on a usual hub: long enough for the root, bored 0.07 D (ours).
pub(super) fn finish(sections: Vec<Section>, tip_radius: f64, count: u8, hand: Hand, hub_diameter: f64) -> Propeller {
    let blade =
        Blade { sections, tip_radius, leading_edge: EdgeForm::Round, trailing_edge: EdgeForm::Round, cup: None };
    let root = Shape::outline_of(&blade).cut(0.5 * hub_diameter);
    let (fore, aft) = (root.place(0.5 * root.chord, 0.0).0, root.place(-0.5 * root.chord, 0.0).0);
    let length = (1.1 * (fore - aft)).max(0.4 * tip_radius);
    let mut hub = Hub::cylinder(hub_diameter, length, (0.14 * tip_radius).min(0.6 * hub_diameter));
    hub.forward = 0.5 * (fore + aft) + 0.5 * length;
    Propeller::even(&blade, count, hand, hub)
}
