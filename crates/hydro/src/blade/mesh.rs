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

impl Mesh {
    /// Whether every edge of every triangle is met by exactly one triangle running the other way, and no triangle is without
    /// a third corner: the surface is closed and its triangles agree on what is outside.
    #[must_use]
    pub fn is_watertight(&self) -> bool {
        let mut edges: Vec<(u32, u32)> = Vec::with_capacity(3 * self.triangles.len());
        for &[a, b, c] in &self.triangles {
            if a == b || b == c || c == a {
                return false;
            }
            edges.extend([(a, b), (b, c), (c, a)]);
        }
        edges.sort_unstable();
        let once = edges.windows(2).all(|pair| pair[0] != pair[1]);
        let paired = edges.iter().all(|&(a, b)| edges.binary_search(&(b, a)).is_ok());
        let inside = edges.iter().all(|&(a, _)| usize::try_from(a).is_ok_and(|a| a < self.vertices.len()));
        !edges.is_empty() && once && paired && inside
    }

    /// The corners of each triangle.
    pub fn corners(&self) -> impl Iterator<Item = [[f64; 3]; 3]> + '_ {
        self.triangles.iter().filter_map(|t| {
            let corner = |i: u32| self.vertices.get(usize::try_from(i).ok()?).copied();
            Some([corner(t[0])?, corner(t[1])?, corner(t[2])?])
        })
    }

    /// Surface, m².
    #[must_use]
    pub fn surface(&self) -> f64 {
        self.corners().map(|[a, b, c]| 0.5 * norm(cross(sub(b, a), sub(c, a)))).sum()
    }

    /// Volume integrals by the divergence theorem (sums over the tetrahedra from the origin to each triangle; exact for the
    /// polyhedron).
    #[must_use]
    pub fn moments(&self) -> Moments {
        let mut m = Moments { volume: 0.0, centre: [0.0; 3], second: [0.0; 3], product: [0.0; 3] };
        for [a, b, c] in self.corners() {
            let six = dot(a, cross(b, c));
            let sum = [0, 1, 2].map(|i| a[i] + b[i] + c[i]);
            m.volume += six / 6.0;
            for i in 0..3 {
                let j = (i + 1) % 3;
                m.centre[i] += six * sum[i] / 24.0;
                // ∫ x_i x_j over a tetrahedron with a corner at the origin: 6V/120 (sum_i sum_j + Σ corners x_i x_j).
                m.second[i] += six / 120.0 * (sum[i] * sum[i] + a[i] * a[i] + b[i] * b[i] + c[i] * c[i]);
                m.product[i] += six / 120.0 * (sum[i] * sum[j] + a[i] * a[j] + b[i] * b[j] + c[i] * c[j]);
            }
        }
        if m.volume.abs() > 0.0 {
            m.centre = m.centre.map(|first| first / m.volume);
        }
        m
    }

    /// Adds another body.
    pub fn append(&mut self, other: &Mesh) {
        let offset = u32::try_from(self.vertices.len()).unwrap_or(u32::MAX);
        self.vertices.extend_from_slice(&other.vertices);
        self.triangles.extend(other.triangles.iter().map(|t| t.map(|i| i.saturating_add(offset))));
    }

    /// Adds a triangle unless two corners are the same point.
    pub(super) fn triangle(&mut self, a: u32, b: u32, c: u32) {
        if a != b && b != c && c != a {
            self.triangles.push([a, b, c]);
        }
    }

    /// Adds a four-sided patch `a b c d` as two triangles.
    pub(super) fn patch(&mut self, a: u32, b: u32, c: u32, d: u32) {
        self.triangle(a, b, c);
        self.triangle(a, c, d);
    }

    /// Adds a point and gives its index.
    pub(super) fn point(&mut self, at: [f64; 3]) -> u32 {
        self.vertices.push(at);
        u32::try_from(self.vertices.len() - 1).unwrap_or(u32::MAX)
    }

    /// Turns every triangle over if the body is inside out.
    pub(super) fn outward(mut self) -> Mesh {
        if self.moments().volume < 0.0 {
            for t in &mut self.triangles {
                t.swap(1, 2);
            }
        }
        self
    }
}

fn sub(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn norm(a: [f64; 3]) -> f64 {
    dot(a, a).sqrt()
}

#[cfg(test)]
mod tests {
    use super::Mesh;

    /// A box from the origin.
    fn block(x: f64, y: f64, z: f64) -> Mesh {
        let mut mesh = Mesh::default();
        for i in 0..8 {
            mesh.point([x * f64::from(i & 1), y * f64::from(i >> 1 & 1), z * f64::from(i >> 2)]);
        }
        for [a, b, c, d] in [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]] {
            mesh.patch(a, b, c, d);
        }
        mesh
    }

    #[test]
    fn a_box_has_its_known_integrals() {
        let mesh = block(1.0, 2.0, 3.0);
        assert!(mesh.is_watertight());
        let m = mesh.moments();
        assert!((m.volume - 6.0).abs() < 1e-12 && (mesh.surface() - 22.0).abs() < 1e-12);
        for i in 0..3 {
            let side = [1.0, 2.0, 3.0];
            assert!((m.centre[i] - 0.5 * side[i]).abs() < 1e-12);
            assert!((m.second[i] - 6.0 * side[i] * side[i] / 3.0).abs() < 1e-12);
            assert!((m.product[i] - 6.0 * side[i] * side[(i + 1) % 3] / 4.0).abs() < 1e-12);
        }
    }

    #[test]
    fn a_hole_or_a_turned_triangle_is_seen() {
        let mut open = block(1.0, 1.0, 1.0);
        open.triangles.pop();
        assert!(!open.is_watertight());
        let mut turned = block(1.0, 1.0, 1.0);
        turned.triangles[0].swap(0, 1);
        assert!(!turned.is_watertight());
        assert!(!Mesh::default().is_watertight());
    }
}
