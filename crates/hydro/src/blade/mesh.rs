//! Triangle meshes.

/// A triangle mesh, SI. Triangles run anticlockwise seen from outside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mesh {
    /// Points, m.
    pub vertices: Vec<[f64; 3]>,
    /// Triples of indices into `vertices`.
    pub triangles: Vec<[u32; 3]>,
}

/// Volume integrals of a closed mesh at density 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moments {
    /// Volume, m³.
    pub volume: f64,
    /// Centre of volume, m.
    pub centre: [f64; 3],
    /// `∫ x² dV`, `∫ y² dV`, `∫ z² dV` about the origin, m⁵.
    pub second: [f64; 3],
    /// `∫ xy dV`, `∫ yz dV`, `∫ zx dV` about the origin, m⁵.
    pub product: [f64; 3],
}
