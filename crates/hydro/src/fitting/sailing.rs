//! Drag of a propeller under sail.

use crate::source::{Method, Trust};
use std::f64::consts::PI;

/// Drag under sail.
pub const METHOD: Method = Method {
    name: "propeller-drag-under-sail",
    quantity: "drag (N) of a propeller dragged through the water",
    formula: "D = Cd 0.5 rho V^2 A; fixed and locked: A the projected blade area, Cd 1.0 (0.6 to 1.3); free: half of it; A the disc: folded Cd 0.007 with two blades (0.004 to 0.012), 0.033 with three (0.02 to 0.05); feathered 0.025 (0.015 to 0.05)",
    range: "1 to 5 m/s, shaft within 15 degrees of the flow, behind an ordinary keel",
    error: "a third; what stands ahead of it shelters a two-bladed propeller lined up behind",
    source: "locked: a flat plate is 1.2, the fixed two-bladed propeller of Lurie & Taylor 1995 (tertiary copy; diameter not given, 0.34 to 0.41 m assumed) 0.5 to 1.0; free over locked about one half: P. M. MacKenzie & M. A. Forrester 2008, Sailboat propeller drag, Ocean Engineering 35 (as quoted); folded and feathered: Maddock 2009, thesis, University of Strathclyde (diameter not given, 0.44 m assumed)",
    trust: Trust::OneCopy,
};

/// How it is carried.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Carried {
    /// Fixed blades, shaft held.
    Locked,
    /// Fixed blades, shaft turning freely.
    Free,
    /// Folded.
    Folded,
    /// Feathered.
    Feathered,
}

impl Carried {
    /// All.
    pub const ALL: [Carried; 4] = [Carried::Locked, Carried::Free, Carried::Folded, Carried::Feathered];

    /// Low, middle and high drag coefficient, and whether it goes with the blades' projected area (else with the disc).
    const fn coefficient(self, blades: u8) -> ([f64; 3], bool) {
        match self {
            Carried::Locked => ([0.6, 1.0, 1.3], true),
            Carried::Free => ([0.3, 0.5, 0.75], true),
            // Two folded blades lie in line, three do not close (Maddock 2009: 5.6 N against 33 N at 3.5 m/s).
            Carried::Folded => (if blades <= 2 { [0.004, 0.007, 0.012] } else { [0.020, 0.033, 0.050] }, false),
            Carried::Feathered => ([0.015, 0.025, 0.050], false),
        }
    }
}

/// Low, middle and high drag, N ([`METHOD`]); `speed` m/s, `projected` area of the blades over the disc.
#[must_use]
pub fn drag(carried: Carried, blades: u8, diameter: f64, projected: f64, density: f64, speed: f64) -> [f64; 3] {
    let disc = 0.25 * PI * diameter * diameter;
    let (coefficient, of_blades) = carried.coefficient(blades);
    let area = if of_blades { projected.clamp(0.0, 1.0) * disc } else { disc };
    coefficient.map(|c| c * 0.5 * density * speed * speed * area)
}
