//! Closed meshes of blades and hub.

use super::mesh::Mesh;
use super::propeller::{Hub, Propeller};
use super::shape::Shape;
use std::f64::consts::{PI, TAU};

/// How fine a mesh is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fineness {
    /// Strips from hub to tip.
    pub radial: u16,
    /// Strips from leading to trailing edge.
    pub chordwise: u16,
    /// Segments around the hub.
    pub around: u16,
}

impl Default for Fineness {
    /// Volume within 0.3 % of that of the smooth body.
    fn default() -> Fineness {
        Fineness { radial: 64, chordwise: 48, around: 144 }
    }
}

/// Radius where a line of the blade's surface meets the hub: the hub may taper and the root may overhang its ends.
fn root_radius(shape: &Shape, hub: &Hub, fraction: f64, side: usize) -> f64 {
    let mut radius = hub.radius();
    for _ in 0..6 {
        let cut = shape.cut(radius);
        let (x, _) = cut.place((0.5 - fraction) * cut.chord, shape.offset(&cut, fraction)[side]);
        radius = hub.radius_at(x);
    }
    radius
}

/// One blade in its place on the propeller, closed, from the hub's surface to the tip; empty if there is no such blade.
///
/// The root is closed by a patch that lies on the hub.
#[must_use]
pub fn blade_mesh(propeller: &Propeller, blade: usize, fineness: Fineness) -> Mesh {
    let mut mesh = Mesh::default();
    let (Some(blade), Some(&angle)) = (propeller.blades.get(blade), propeller.angles.get(blade)) else {
        return mesh;
    };
    let shape = Shape::of(blade);
    let (tip, sign) = (shape.tip_radius(), propeller.hand.sign());
    let (rows, columns) = (fineness.radial.max(2), fineness.chordwise.max(2));
    let mut place = |radius: f64, fraction: f64, side: usize| {
        let cut = shape.cut(radius);
        let (x, turn) = cut.place((0.5 - fraction) * cut.chord, shape.offset(&cut, fraction)[side]);
        let (sin, cos) = (sign * (angle + turn)).sin_cos();
        mesh.point([x, -radius * sin, radius * cos])
    };
    // A ring runs along the face from leading to trailing edge and back along the back.
    let ring: Vec<(f64, usize)> = (0..=columns)
        .map(|i| (i, 0))
        .chain((0..=columns).rev().map(|i| (i, 1)))
        .map(|(i, side)| (0.5 * (1.0 - (PI * f64::from(i) / f64::from(columns)).cos()), side))
        .collect();
    let roots: Vec<f64> =
        ring.iter().map(|&(fraction, side)| root_radius(&shape, &propeller.hub, fraction, side)).collect();
    let pointed = shape.cut(tip).chord < 1e-6 * tip;
    let rings: Vec<Vec<u32>> = (0..rows)
        .map(|j| {
            let w = 1.0 - f64::from(j) / f64::from(rows);
            ring.iter()
                .zip(&roots)
                .map(|(&(fraction, side), &root)| place(tip - (tip - root) * w * w, fraction, side))
                .collect()
        })
        .collect();
    let end: Vec<u32> = if pointed {
        vec![place(tip, 0.5, 0); ring.len()]
    } else {
        ring.iter().map(|&(fraction, side)| place(tip, fraction, side)).collect()
    };
    close(&mut mesh, rings, end, usize::from(columns));
    mesh.outward()
}

/// Joins rings to a skin, closes both ends with strips from face to back; sharp edges are welded.
fn close(mesh: &mut Mesh, mut rings: Vec<Vec<u32>>, end: Vec<u32>, columns: usize) {
    rings.push(end);
    let around = 2 * columns + 2;
    for ring in &mut rings {
        for (face, back) in [(0, around - 1), (columns, columns + 1)] {
            if same(mesh, ring[face], ring[back]) {
                ring[back] = ring[face];
            }
        }
    }
    for pair in rings.windows(2) {
        for k in 0..around {
            let next = (k + 1) % around;
            mesh.patch(pair[0][k], pair[0][next], pair[1][next], pair[1][k]);
        }
    }
    if let (Some(root), Some(tip)) = (rings.first(), rings.last()) {
        for k in 0..columns {
            let back = around - 1 - k;
            mesh.patch(root[k], root[back], root[back - 1], root[k + 1]);
            mesh.patch(tip[k], tip[k + 1], tip[back - 1], tip[back]);
        }
    }
}

fn same(mesh: &Mesh, a: u32, b: u32) -> bool {
    let at = |i: u32| usize::try_from(i).ok().and_then(|i| mesh.vertices.get(i));
    match (at(a), at(b)) {
        (Some(p), Some(q)) => p.iter().zip(q).all(|(p, q)| (p - q).abs() < 1e-9),
        _ => false,
    }
}

/// The hub with its bore, closed; solid if it has no bore.
#[must_use]
pub fn hub_mesh(hub: &Hub, fineness: Fineness) -> Mesh {
    let mut mesh = Mesh::default();
    let segments = fineness.around.max(3);
    let (fore, aft) = (hub.forward, hub.forward - hub.length);
    let mut circle = |x: f64, diameter: f64| -> Vec<u32> {
        let radius = 0.5 * diameter.max(0.0);
        if radius < 1e-9 {
            return vec![mesh.point([x, 0.0, 0.0]); usize::from(segments)];
        }
        (0..segments)
            .map(|i| {
                let (sin, cos) = (TAU * f64::from(i) / f64::from(segments)).sin_cos();
                mesh.point([x, -radius * sin, radius * cos])
            })
            .collect()
    };
    let profile = [
        circle(fore, hub.fore_diameter),
        circle(aft, hub.aft_diameter),
        circle(aft, hub.bore_aft),
        circle(fore, hub.bore_fore),
    ];
    let bored = hub.bore_aft >= 2e-9 && hub.bore_fore >= 2e-9;
    for (i, j) in [(0, 1), (1, 2), (2, 3), (3, 0)] {
        if (i, j) == (2, 3) && !bored {
            continue;
        }
        for k in 0..usize::from(segments) {
            let next = (k + 1) % usize::from(segments);
            mesh.patch(profile[i][k], profile[i][next], profile[j][next], profile[j][k]);
        }
    }
    mesh.outward()
}

/// Blades and hub together: closed bodies that touch, in one mesh.
#[must_use]
pub fn propeller_mesh(propeller: &Propeller, fineness: Fineness) -> Mesh {
    let mut mesh = hub_mesh(&propeller.hub, fineness);
    for i in 0..propeller.blades.len() {
        mesh.append(&blade_mesh(propeller, i, fineness));
    }
    mesh
}

#[cfg(test)]
mod tests {
    use super::{Fineness, blade_mesh, hub_mesh};
    use crate::blade::{BSeries, FlatFaced, Hand, Hub, Width, b_series, flat_faced};
    use std::f64::consts::PI;

    #[test]
    fn every_body_is_closed() {
        for z in 2..=7 {
            let p = b_series(&BSeries {
                blades: z,
                expanded_area_ratio: 0.6,
                pitch_ratio: 0.9,
                diameter: 0.5,
                hand: Hand::Left,
            });
            assert!(blade_mesh(&p, 0, Fineness::default()).is_watertight(), "{z}");
            assert!(blade_mesh(&p, 0, Fineness::default()).moments().volume > 0.0);
            assert!(hub_mesh(&p.hub, Fineness::default()).is_watertight());
            assert!(blade_mesh(&p, usize::from(z), Fineness::default()).triangles.is_empty());
        }
        let mut p = flat_faced(&FlatFaced {
            blades: 3,
            width: Width::MeanWidthRatio(0.33),
            pitch_ratio: 0.8,
            thickness_fraction: 0.045,
            diameter: 0.4,
            hub_ratio: 0.2,
            rake: 0.1,
            skew: 0.3,
            hand: Hand::Right,
        });
        p.hub.aft_diameter *= 0.7;
        assert!(blade_mesh(&p, 1, Fineness::default()).is_watertight());
        p.blades[0].sections.pop();
        assert!(blade_mesh(&p, 0, Fineness::default()).is_watertight());
    }

    #[test]
    fn a_hub_weighs_what_a_tube_does() {
        let fine = Fineness { around: 720, ..Fineness::default() };
        let hub = hub_mesh(&Hub::cylinder(0.1, 0.2, 0.04), fine);
        let want = 0.25 * PI * (0.01 - 0.0016) * 0.2;
        assert!((hub.moments().volume / want - 1.0).abs() < 2e-5);
        let solid = hub_mesh(&Hub::cylinder(0.1, 0.2, 0.0), fine);
        assert!(solid.is_watertight());
        assert!((solid.moments().volume / (0.25 * PI * 0.01 * 0.2) - 1.0).abs() < 2e-5);
    }
}
