//! Stress in a blade, from first principles.

use crate::source::{Method, Trust};
use std::f64::consts::TAU;

/// Beam check of a blade.
pub const METHOD: Method = Method {
    name: "blade-stress",
    quantity: "tensile stress on the face of a blade section (Pa) at 0.25 R and 0.6 R",
    formula: "M = s (x_c - x) R ((T/Z) cos(phi) + (Q/(0.65 R Z)) sin(phi)), s and x_c share and centre of the load outside x of a load x^2 sqrt(1-x); stress = M/(W c t^2) + F/(A c t) + F a cos(phi)/(W c t^2) + F r th/(cos(phi) V t c^2); F = m w^2 rc, a rake and th skew angle of the mass outside; W 0.10, A 0.70 (ogival), V 1/15 (parabolic)",
    range: "solid blades, skew below 25 degrees and along the helix; steady load ahead in open sea, no ice, no strike",
    error: "20 to 30 % on the steady stress: a cantilever stands for a shell; wake and sea add half as much again and are in the allowable stress",
    source: "derived here from the beam (see the module's `offset`); levers and section factors as used in handbooks (section modulus 0.09 to 0.10 c t^2)",
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
    /// Bending across the chord by that pull on a raked blade, Pa.
    pub rake: f64,
    /// Bending along the chord by that pull on a skewed blade, Pa: greatest at one edge.
    pub skew: f64,
}

impl Stress {
    /// The whole where the face is worst off, Pa.
    #[must_use]
    pub fn whole(&self) -> f64 {
        self.bending + self.pull + self.rake + self.skew
    }
}

/// Section modulus over `c t^2`, face in tension, and area over `c t` of an ogival section.
const MODULUS: f64 = 0.10;
const AREA: f64 = 0.70;
/// Section modulus along the chord over `t c^2` of a section whose thickness falls as a parabola from the middle to both edges:
/// `I = int t(s) s^2 ds = t c^3/30`, over half a chord.
const EDGEWISE: f64 = 1.0 / 15.0;
/// Centre of the mass outside a section, between it and the tip.
const CENTRE: f64 = 0.42;
/// Where skew starts: the hub's radius over the tip's.
const HUB: f64 = 0.2;

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
        return Stress { bending: f64::INFINITY, pull: 0.0, rake: 0.0, skew: 0.0 };
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
    let (across, along) = offset(at, out, angle);
    Stress {
        bending: moment / modulus,
        pull: pull / area,
        rake: pull * across / modulus,
        skew: pull * along / (EDGEWISE * at.thickness * at.chord * at.chord),
    }
}

/// The levers, m, with which the centrifugal pull of the mass outside a section bends it across and along its chord; `out` from
/// the section to the mass along the radius, `phi` the pitch angle.
///
/// The pull goes through the shaft's axis and the centre of the mass. Let that centre lie `a` aft of the section and turned back
/// by `th` about the shaft. With the section's centre at radius `r`, the mass at `rc`, the axes aft, back and out along the radius:
/// arm `(a, rc sin th, rc cos th - r)`, pull `F (0, sin th, cos th)`, moment their product:
///
/// - about the axis aft: `F r sin th`: not `rc`, the line of the pull goes through the shaft;
/// - about the axis back: `-F a cos th`;
/// - about the radius: `F a sin th`, a torsion of the second order, left out.
///
/// The chord stands at `phi` to the plane of the disc. About it the section is weak, and there
/// `M = F (a cos th cos phi - r sin th sin phi)`. A blade that is skewed is skewed along its helix, and goes aft by `th P/2 pi =
/// th r tan phi`: to the first order that takes the second part away, and rake alone, `a = out tan(rake)`, bends across the
/// chord. At right angles to it, edgewise, skew leaves `M = F r th (cos phi + tan phi sin phi) = F r th/cos phi`; on a face of
/// ogival sections that tension stands at an edge with the full bending beside it.
///
/// Aft rake pulls a blade straight, the way thrust bends it going ahead; forward rake eases it ahead and adds astern, where
/// thrust turns round and the pull does not: it is counted alike.
///
/// Skew is taken to grow evenly from the hub to the tip, which puts more of it inside than the usual bow does.
fn offset(at: &Loaded, out: f64, phi: f64) -> (f64, f64) {
    let back = at.skew.abs() * (out / at.tip) / (1.0 - HUB);
    let across = (out * at.rake.tan() * back.cos() * phi.cos()).abs();
    (across, at.x * at.tip * back / phi.cos().max(0.1))
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
        assert_eq!((got.pull, got.rake, got.skew), (0.0, 0.0, 0.0));
    }

    /// A mass on a radius: m w^2 r is exact.
    #[test]
    fn the_pull_by_hand() {
        let heavy = Loaded { mass: 0.5, ..AT };
        let out = 0.0625 + CENTRE * 0.75 * 0.25;
        let got = stress(&heavy);
        assert!((got.pull * AREA * 0.12 * 0.018 / (0.5 * (TAU * 20.0).powi(2) * out) - 1.0).abs() < 1e-12);
        assert_eq!((got.rake, got.skew), (0.0, 0.0));
        assert!(stress(&Loaded { thickness: 0.02, ..heavy }).whole() < got.whole());
    }

    /// The levers against the moment of a point mass worked out with vectors, nothing taken as small: across the chord to 3 % of
    /// rake's own where skew goes along the helix, and along it to 3 %.
    #[test]
    fn rake_and_skew_against_vectors() {
        let (r, rake, skew) = (AT.x * AT.tip, 0.15_f64, 0.35);
        let at = Loaded { mass: 0.5, rake, skew, ..AT };
        let out = CENTRE * (1.0 - AT.x) * AT.tip;
        let phi = (AT.pitch / (TAU * r)).atan();
        let th = skew * out / AT.tip / (1.0 - HUB);
        let aft = out * rake.tan() + th * AT.pitch / TAU;
        let (arm, pull) = ([aft, (r + out) * th.sin(), (r + out) * th.cos() - r], [0.0, th.sin(), th.cos()]);
        let cross = |a: [f64; 3], b: [f64; 3]| {
            [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
        };
        let moment = cross(arm, pull);
        let (chord, normal) = ([phi.sin(), phi.cos(), 0.0], [phi.cos(), -phi.sin(), 0.0]);
        let along = |axis: [f64; 3]| (0..3).map(|i| moment[i] * axis[i]).sum::<f64>().abs();
        let (across, edgewise) = offset(&at, out, phi);
        assert!((across - along(chord)).abs() < 0.03 * across, "{across} {}", along(chord));
        // Rake adds its part to the edgewise moment, out tan(rake) sin(phi).
        let of_skew = along(normal) - out * rake.tan() * phi.sin() * th.cos();
        assert!((edgewise - of_skew).abs() < 0.03 * edgewise, "{edgewise} {of_skew}");
        // No rake: nothing bends across to the first order.
        let none = offset(&Loaded { rake: 0.0, ..at }, out, phi);
        assert_eq!(none.0, 0.0);
        let got = stress(&at);
        assert!(got.rake > 0.0 && got.skew > 0.0 && got.whole() > stress(&Loaded { rake: 0.0, ..at }).whole());
        assert_eq!(stress(&Loaded { rake: -rake, ..at }).rake, got.rake, "astern the other way round");
    }

    /// The modulus along the chord, by its integral over a parabola.
    #[test]
    fn the_edgewise_modulus() {
        const STEPS: u32 = 20_000;
        let inertia: f64 = (0..STEPS)
            .map(|i| {
                let s = (f64::from(i) + 0.5) / f64::from(STEPS) - 0.5;
                (1.0 - 4.0 * s * s) * s * s / f64::from(STEPS)
            })
            .sum();
        assert!((inertia / 0.5 - EDGEWISE).abs() < 1e-8, "{inertia}");
    }
}
