//! Binary STL in millimetres.

use hydro::blade::{Fineness, Mesh, Propeller, blade_mesh, hub_mesh, propeller_mesh};

/// A mesh (m) as binary STL (mm). Empty for a mesh too large for the format.
#[must_use]
pub fn write(mesh: &Mesh, name: &str) -> Vec<u8> {
    let Ok(count) = u32::try_from(mesh.triangles.len()) else { return Vec::new() };
    let mut out = Vec::with_capacity(84 + 50 * mesh.triangles.len());
    // A binary file must not begin like a text one.
    let head = format!("binary, mm: {name}");
    let head: Vec<u8> = head.bytes().filter(u8::is_ascii_graphic).take(80).collect();
    out.extend_from_slice(&head);
    out.resize(80, b' ');
    out.extend_from_slice(&count.to_le_bytes());
    for corners in mesh.corners() {
        let mm = corners.map(|p| p.map(|x| (1000.0 * x) as f32));
        let [a, b, c] = corners;
        let (u, v) = ([0, 1, 2].map(|i| b[i] - a[i]), [0, 1, 2].map(|i| c[i] - a[i]));
        let n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
        let length = n.iter().map(|x| x * x).sum::<f64>().sqrt();
        let normal = n.map(|x| if length > 0.0 { (x / length) as f32 } else { 0.0 });
        for value in normal.iter().chain(mm.iter().flatten()) {
            out.extend_from_slice(&value.to_le_bytes());
        }
        out.extend_from_slice(&[0, 0]);
    }
    out
}

/// One blade, closed.
#[must_use]
pub fn blade(propeller: &Propeller, index: usize) -> Vec<u8> {
    write(&blade_mesh(propeller, index, Fineness::default()), "blade")
}

/// The hub with its bore, closed.
#[must_use]
pub fn hub(propeller: &Propeller) -> Vec<u8> {
    write(&hub_mesh(&propeller.hub, Fineness::default()), "hub")
}

/// All blades and the hub: closed bodies that touch at the roots.
#[must_use]
pub fn propeller(propeller: &Propeller) -> Vec<u8> {
    write(&propeller_mesh(propeller, Fineness::default()), "propeller")
}
