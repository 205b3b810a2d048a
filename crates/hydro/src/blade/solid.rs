//! Closed meshes of blades and hub.

use super::mesh::Mesh;
use super::propeller::{Hub, Propeller};

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
    fn default() -> Fineness {
        Fineness { radial: 48, chordwise: 32, around: 96 }
    }
}

/// One blade in its place on the propeller, closed, from the hub's surface to the tip.
#[must_use]
pub fn blade_mesh(propeller: &Propeller, blade: usize, fineness: Fineness) -> Mesh {
    let _ = (propeller, blade, fineness);
    todo!()
}

/// The hub with its bore, closed.
#[must_use]
pub fn hub_mesh(hub: &Hub, fineness: Fineness) -> Mesh {
    let _ = (hub, fineness);
    todo!()
}

/// Blades and hub together: closed bodies that touch, in one mesh.
#[must_use]
pub fn propeller_mesh(propeller: &Propeller, fineness: Fineness) -> Mesh {
    let _ = (propeller, fineness);
    todo!()
}
