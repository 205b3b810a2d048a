//! Kinds of section: ordinates from chord and thickness.

use super::b_series;
use super::section::Offset;

/// Kind of section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Form {
    /// Flat face, parabolic back, square-cut thin edges.
    FlatFaced,
    /// B-series airfoil inside, flat-faced outside 0.7 R.
    BSeries,
    /// Symmetrical lens about the pitch line (both sides parabolic).
    Lens,
}

/// Places of a plain section.
const PLACES: u8 = 20;

/// Share of the greatest thickness left at the edges when nobody measured it. Ours: edges as usually dressed.
pub(super) const EDGE_SHARE: f64 = 0.05;

impl Form {
    /// Ordinates of a section at `x = r/R` with the greatest `thickness` and the thickness `edge` of both edges, m.
    #[must_use]
    pub fn offsets(self, x: f64, thickness: f64, edge: f64) -> Vec<Offset> {
        let edge = edge.clamp(0.0, thickness.max(0.0));
        let plain = |face: fn(f64) -> f64, back: fn(f64) -> f64| {
            (0..=PLACES)
                .map(|i| {
                    let fraction = f64::from(i) / f64::from(PLACES);
                    let local = edge + (thickness - edge) * 4.0 * fraction * (1.0 - fraction);
                    Offset { fraction, face: face(local), back: back(local) }
                })
                .collect()
        };
        match self {
            Form::FlatFaced => plain(|_| 0.0, |t| t),
            Form::Lens => plain(|t| -0.5 * t, |t| 0.5 * t),
            Form::BSeries => b_series::offsets(x, thickness, edge, b_series::thickest(x, 3)),
        }
    }
}
