//! Kinds of section: ordinates from chord and thickness.

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

impl Form {
    /// Ordinates of a section at `x = r/R` with the greatest thickness and the edge thickness, m.
    #[must_use]
    pub fn offsets(self, x: f64, thickness: f64, edge: f64) -> Vec<Offset> {
        let _ = (x, thickness, edge);
        todo!()
    }
}
