//! Stress in a blade, from first principles.

use crate::source::{Method, Trust};
use std::f64::consts::TAU;

/// Beam check of a blade.
pub const METHOD: Method = Method {
    name: "blade-stress",
    quantity: "tensile stress on the face of a blade section (Pa) at 0.25 R and 0.6 R",
    formula: "M = s (x_c - x) R ((T/Z) cos(phi) + (Q/(0.65 R Z)) sin(phi)), s and x_c share and centre of the load outside x of a load x^2 sqrt(1-x); stress = M/(W c t^2) + m w^2 rc/(A c t) + rake and skew bending of that pull; W 0.10, A 0.70 (ogival)",
    range: "solid blades, skew below 25 degrees; steady load ahead in open sea, no ice, no strike",
    error: "20 to 30 % on the steady stress: a cantilever stands for a shell; wake and sea add half as much again and are in the allowable stress",
    source: "derived here from the beam; levers and section factors as used in handbooks (section modulus 0.09 to 0.10 c t^2)",
    trust: Trust::CommonPractice,
};

/// A section of a blade under load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loaded {
    /// Number of blades.
    pub blades: u8,
    /// Thrust of the propeller, N.
    pub thrust: f64,
    /// Torque of the propeller, N m.
    pub torque: f64,
    /// Shaft speed, rev/s.
    pub turns: f64,
    /// Tip radius, m.
    pub tip: f64,
    /// Pitch, m.
    pub pitch: f64,
    /// Radius of the section over the tip radius.
    pub x: f64,
    /// Chord there, m.
    pub chord: f64,
    /// Greatest thickness there, m.
    pub thickness: f64,
    /// Mass of the blade outside the section, kg.
    pub mass: f64,
    /// Rake, rad, positive aft.
    pub rake: f64,
    /// Skew angle of the tip, rad.
    pub skew: f64,
}

/// What a section carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stress {
    /// Bending by thrust and torque, Pa.
    pub bending: f64,
    /// Centrifugal pull, Pa.
    pub pull: f64,
    /// Bending by that pull on rake and skew, Pa.
    pub offset: f64,
}

impl Stress {
    /// The whole on the face, Pa.
    #[must_use]
    pub fn whole(&self) -> f64 {
        self.bending + self.pull + self.offset
    }
}

/// Section modulus over `c t^2`, face in tension, and area over `c t` of an ogival section.
const MODULUS: f64 = 0.10;
const AREA: f64 = 0.70;
/// Centre of the mass outside a section, between it and the tip.
const CENTRE: f64 = 0.42;

/// Share of a blade's load outside radius `x`, and the radius at which it acts: a load rising as `x^2 sqrt(1-x)` from the
/// hub, whose centre lies at 0.675 R for the whole blade (0.7 is the handbooks' lever: 0.45 R to the root section against 0.425 R).
fn outside(x: f64) -> (f64, f64) {
    let (mut all, mut sum, mut moment) = (0.0, 0.0, 0.0);
    const STEPS: u32 = 200;
    for i in 0..STEPS {
        let s = (f64::from(i) + 0.5) / f64::from(STEPS);
        if s < 0.2 {
            continue;
        }
        let load = s * s * (1.0 - s).sqrt();
        all += load;
        if s >= x {
            sum += load;
            moment += load * s;
        }
    }
    (sum / all, if sum > 0.0 { moment / sum } else { x })
}

/// [`METHOD`].
#[must_use]
pub fn stress(at: &Loaded) -> Stress {
    let (blades, r) = (f64::from(at.blades.max(1)), at.x * at.tip);
    let modulus = MODULUS * at.chord * at.thickness * at.thickness;
    let area = AREA * at.chord * at.thickness;
    if !(modulus > 0.0 && area > 0.0 && at.tip > 0.0) {
        return Stress { bending: f64::INFINITY, pull: 0.0, offset: 0.0 };
    }
    let (share, centre) = outside(at.x);
    let lever = (centre - at.x) * at.tip;
    let angle = (at.pitch / (TAU * r)).atan();
    // Torque is the tangential force times the radius at which it acts, 0.65 R of the whole blade.
    let tangential = at.torque / (blades * 0.65 * at.tip);
    let moment = share * lever * (at.thrust / blades * angle.cos() + tangential * angle.sin());
    let speed = TAU * at.turns;
    let out = CENTRE * (1.0 - at.x) * at.tip;
    let pull = at.mass * speed * speed * (r + out);
    // The pull acts through the mass's centre: rake puts it aft of the section, skew behind it, seen across the section.
    let aft = out * at.rake.tan();
    let behind = (r + out) * (at.skew * CENTRE).sin();
    let across = (aft * angle.cos() + behind * angle.sin() * 0.5).abs();
    Stress { bending: moment / modulus, pull: pull / area, offset: pull * across / modulus }
}

/// Thickness at a radius by the straight line from `fraction` of the diameter at the shaft's axis to 0.003 D at the tip (the
/// series' rule), m.
#[must_use]
pub fn usual_thickness(diameter: f64, fraction: f64, x: f64) -> f64 {
    diameter * (fraction + (0.003 - fraction) * x)
}

#[cfg(test)]
mod tests {
    use super::*;

    const AT: Loaded = Loaded {
        blades: 3,
        thrust: 3000.0,
        torque: 200.0,
        turns: 20.0,
        tip: 0.25,
        pitch: 0.3,
        x: 0.25,
        chord: 0.12,
        thickness: 0.018,
        mass: 0.0,
        rake: 0.0,
        skew: 0.0,
    };

    /// By hand: a third of the thrust at 0.68 R bends with 0.11 m; W = 0.1 x 0.12 x 0.018^2.
    #[test]
    fn the_beam_by_hand() {
        let (share, centre) = outside(0.25);
        assert!((0.97..1.0).contains(&share) && (0.67..0.72).contains(&centre), "{share} {centre}");
        let phi = (0.3 / (TAU * 0.0625)).atan();
        let lever = (centre - 0.25) * 0.25;
        let moment = share * lever * (1000.0 * phi.cos() + 200.0 / (3.0 * 0.1625) * phi.sin());
        let got = stress(&AT);
        assert!((got.bending / (moment / (0.1 * 0.12 * 0.018 * 0.018)) - 1.0).abs() < 1e-12);
        assert_eq!((got.pull, got.offset), (0.0, 0.0));
    }

    /// A mass on a radius: m w^2 r is exact, and rake and skew can only add.
    #[test]
    fn the_pull_by_hand() {
        let heavy = Loaded { mass: 0.5, ..AT };
        let out = 0.0625 + CENTRE * 0.75 * 0.25;
        let got = stress(&heavy);
        assert!((got.pull * AREA * 0.12 * 0.018 / (0.5 * (TAU * 20.0).powi(2) * out) - 1.0).abs() < 1e-12);
        assert_eq!(got.offset, 0.0);
        let raked = stress(&Loaded { rake: 0.2, ..heavy });
        let skewed = stress(&Loaded { skew: 0.4, ..heavy });
        assert!(raked.offset > 0.0 && skewed.offset > 0.0);
        assert!(stress(&Loaded { thickness: 0.02, ..heavy }).whole() < got.whole());
    }
}
