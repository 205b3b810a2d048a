//! Resistance of transom-stern hulls between displacement and planing: the regression of Mercier and Savitsky.

use super::form::{Form, Parts};
use super::rough_line::RoughLine;
use super::{friction, interpolate};
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use crate::water::{GRAVITY, Water};

/// The register entry.
pub const METHOD: Method = Method {
    name: "mercier-savitsky-1973",
    quantity: "resistance of transom-stern hulls in the pre-planing regime, N",
    formula: "R/W = A1 + A2 X + A4 U + A5 W + A6 XZ + A7 XU + A8 XW + A9 ZU + A10 ZW + A15 W² + A18 XW² + A19 ZX² + A24 UW² + A27 WU²",
    range: "volume Froude number 1.0 to 2.0; L/vol^(1/3) 3.07 to 12.4, L/B from 2.52, B/T 1.7 to 9.8, iE 3.7 to 28.6°, AT/AX 0 to 1",
    error: "no printed example was found; the regression runs smoothly over its eleven independent speeds",
    source: "J.A. Mercier and D. Savitsky, 1973, Resistance of transom-stern craft in the pre-planing regime, Davidson Laboratory SIT-DL-73-1667; table 1 in D. Savitsky and P.W. Brown, 1976, Marine Technology 13(4), 381-400; from memory",
    trust: Trust::Memory,
};

/// Rows of the table: volume Froude number 1.0 to 2.0 by 0.1.
pub const ROWS: usize = 11;
/// Lowest volume Froude number of the table.
pub const FIRST: f64 = 1.0;
/// Highest volume Froude number of the table.
pub const LAST: f64 = 2.0;
/// Volume Froude numbers of the rows.
const FROUDE: [f64; ROWS] = [1.0, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2.0];
/// Volume of 100 000 lb of sea water at 59 °F, m³ (1562.5 ft³): the size the regression stands for.
const REFERENCE_VOLUME: f64 = 44.245;
/// Kinematic viscosity of sea water at 59 °F, m²/s (1.2791e-5 ft²/s).
const REFERENCE_VISCOSITY: f64 = 1.188e-6;

/// `A1 A2 A4 A5 A6 A7 A8 A9 A10 A15 A18 A19 A24 A27` at each volume Froude number.
pub const COEFFICIENTS: [[f64; 14]; ROWS] = [
    [
        0.06473, -0.4868, -0.0103, -0.0649, 0.0, 0.10628, 0.9731, -0.00272, 0.01089, 0.0, -1.40962, 0.29136, 0.02971,
        -0.0015,
    ],
    [
        0.10776, -0.88787, -0.01634, -0.13444, 0.0, 0.18186, 1.8308, -0.00389, 0.01467, 0.0, -2.46696, 0.47305,
        0.05877, -0.00356,
    ],
    [
        0.09483, -0.6372, -0.0154, -0.1358, -0.16046, 0.16803, 1.55972, -0.00309, 0.03481, 0.0, -2.15556, 1.02992,
        0.05198, -0.00303,
    ],
    [
        0.03475, 0.0, -0.00978, -0.05097, -0.2188, 0.10434, 0.4351, -0.00198, 0.04113, 0.0, -0.92663, 1.06392, 0.02209,
        -0.00105,
    ],
    [
        0.03013, 0.0, -0.00664, -0.0554, -0.19359, 0.09612, 0.5182, -0.00215, 0.03901, 0.0, -0.95276, 0.97757, 0.02413,
        -0.0014,
    ],
    [0.03163, 0.0, 0.0, -0.10543, -0.2054, 0.06007, 0.5823, -0.00372, 0.04794, 0.08317, -0.70895, 1.19737, 0.0, 0.0],
    [0.03194, 0.0, 0.0, -0.08599, -0.19442, 0.06191, 0.52049, -0.0036, 0.04436, 0.07366, -0.72057, 1.18119, 0.0, 0.0],
    [0.04343, 0.0, 0.0, -0.13289, -0.18062, 0.05487, 0.78195, -0.00332, 0.04187, 0.12147, -0.95929, 1.01562, 0.0, 0.0],
    [0.05036, 0.0, 0.0, -0.15597, -0.17813, 0.05099, 0.92859, -0.00308, 0.04111, 0.14928, -1.12178, 0.93144, 0.0, 0.0],
    [0.05612, 0.0, 0.0, -0.18661, -0.18288, 0.04744, 1.18569, -0.00244, 0.04124, 0.1809, -1.38644, 0.78414, 0.0, 0.0],
    [0.05967, 0.0, 0.0, -0.19758, -0.20152, 0.04645, 1.30026, -0.00212, 0.04343, 0.19769, -1.55127, 0.78282, 0.0, 0.0],
];

/// `R/W` of the 100 000 lb hull at the eleven speeds, from `X = vol^(1/3)/L`, `Z = vol/B³`, `U = (2 iE)^0.5` (degrees)
/// and `W = AT/AX`. The regression itself: no limits. Source: [`METHOD`].
#[must_use]
pub fn regression(x: f64, z: f64, u: f64, w: f64) -> [f64; ROWS] {
    let w2 = w * w;
    let terms = [1.0, x, u, w, x * z, x * u, x * w, z * u, z * w, w2, x * w2, z * x * x, u * w2, w * u * u];
    COEFFICIENTS.map(|row| row.iter().zip(terms).map(|(a, term)| a * term).sum())
}

/// Wetted surface over `vol^(2/3)`: `2.262 (L/vol^(1/3))^0.5 {1 + 0.046 B/T + 0.00287 (B/T)²}`; same source, from memory.
#[must_use]
pub fn wetted_surface_ratio(slenderness: f64, beam_over_draught: f64) -> f64 {
    let bt = beam_over_draught;
    2.262 * slenderness.sqrt() * (1.0 + bt * (0.046 + 0.00287 * bt))
}

/// The regression for one hull, ready to be asked at any speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Regression {
    /// Residuary resistance over weight at the rows.
    residuary: [f64; ROWS],
    /// Slopes there, per unit of volume Froude number.
    slope: [f64; ROWS],
    /// Power of the volume Froude number below the first row.
    power: f64,
    /// Speed at volume Froude number 1, m/s.
    unit_speed: f64,
    weight: f64,
    length: f64,
    wetted: f64,
    density: f64,
    viscosity: f64,
    roughness: RoughLine,
    /// Inputs outside the series.
    notes: Notes,
}

impl Regression {
    /// Works the regression out for a hull. Inputs outside the series are held at its limits, with
    /// [`Note::PrePlaningOutsideSeries`].
    #[must_use]
    pub fn new(form: &Form, water: &Water) -> Regression {
        let volume = form.mass / water.density;
        let edge = volume.cbrt();
        let mut outside = false;
        let mut hold = |value: f64, low: f64, high: f64| {
            // A thousandth of slack: a value at the limit is inside.
            outside |= value < low * 0.999 || value > high * 1.001;
            value.clamp(low, high)
        };
        let slenderness = hold(form.length / edge, 3.07, 12.4);
        let length_beam = hold(form.length / form.beam, 2.52, 18.3);
        let beam_draught = hold(form.beam / form.draught, 1.7, 9.8);
        let entrance = hold(form.half_entrance_deg, 3.7, 28.6);
        let w = hold(form.transom_ratio, 0.0, 1.0);
        let beam_edge = length_beam / slenderness;
        let z = hold((beam_edge * beam_edge * beam_edge).clamp(1e-6, 1e6), 0.05, 0.6);
        // Fine entrance with a full transom was not in the series either, and the polynomial goes astray there.
        let u = (2.0 * entrance).sqrt().max(4.0 + 2.0 * w);
        let raw = regression(1.0 / slenderness, z, u, w);
        let wetted_ratio = wetted_surface_ratio(slenderness, beam_draught);
        let reference_edge = REFERENCE_VOLUME.cbrt();
        let reference_unit = (GRAVITY * reference_edge).sqrt() * slenderness * reference_edge / REFERENCE_VISCOSITY;
        let mut residuary = [0.0; ROWS];
        for (i, (residuary, raw)) in residuary.iter_mut().zip(raw).enumerate() {
            let fnv = FIRST + 0.1 * i as f64;
            let friction = 0.5 * friction::ittc57(fnv * reference_unit) * wetted_ratio * fnv * fnv;
            // Never less wave drag than a fair share of friction or one in a hundred of the weight:
            // a polynomial knows nothing of that.
            *residuary = (raw - friction).max(0.01 + 0.002 * i as f64).max(0.2 * friction);
        }
        let mut slope = [0.0; ROWS];
        interpolate::slopes(&FROUDE, &residuary, &mut slope);
        let unit_speed = (GRAVITY * edge).sqrt();
        let mut notes = Notes::NONE;
        notes.add_if(outside, Note::PrePlaningOutsideSeries);
        Regression {
            residuary,
            slope,
            power: (slope[0] / residuary[0]).clamp(3.0, 7.0),
            unit_speed,
            weight: form.mass * GRAVITY,
            length: form.length,
            wetted: wetted_surface_ratio(form.length / edge, beam_draught) * edge * edge,
            density: water.density,
            viscosity: water.viscosity,
            roughness: RoughLine::new(form.roughness, form.length, water.viscosity, unit_speed),
            notes,
        }
    }

    /// Added friction of the hull's roughness over speed.
    pub(super) fn roughness(&self) -> RoughLine {
        self.roughness
    }

    /// Volume Froude number at `speed`, m/s.
    #[must_use]
    pub fn volume_froude(&self, speed: f64) -> f64 {
        speed / self.unit_speed
    }

    /// Residuary resistance over weight at a volume Froude number: monotone cubic through the rows; below the first a
    /// power of speed, beyond the last its value held.
    #[must_use]
    pub fn residuary_ratio(&self, volume_froude: f64) -> f64 {
        let x = (volume_froude - FIRST) * 10.0;
        if x <= 0.0 {
            return self.residuary[0] * volume_froude.max(0.0).powf(self.power);
        }
        let last = ROWS - 1;
        if x >= last as f64 {
            return self.residuary[last];
        }
        let i = x as usize;
        let (a, b) = (self.residuary[i], self.residuary[i + 1]);
        interpolate::hermite(x - i as f64, 0.1, a, b, self.slope[i], self.slope[i + 1])
    }

    /// Resistance of the bare hull at `speed` (m/s), in parts: own friction (ITTC-57) and roughness at the boat's size
    /// instead of the 100 000 lb hull's, which is the correction the paper prescribes.
    #[must_use]
    pub fn parts(&self, speed: f64) -> Noted<Parts> {
        let volume_froude = self.volume_froude(speed);
        let reynolds = speed * self.length / self.viscosity;
        let pressure = 0.5 * self.density * speed * speed * self.wetted;
        let parts = Parts {
            friction: pressure * friction::ittc57(reynolds),
            roughness: pressure * self.roughness.at(speed),
            wave: self.residuary_ratio(volume_froude) * self.weight,
            ..Parts::default()
        };
        let mut notes = self.notes;
        notes.add_if(!(0.999 * FIRST..=1.001 * LAST).contains(&volume_froude), Note::PrePlaningOutsideSpeeds);
        Noted::new(parts, notes)
    }
}

/// Resistance of a bare transom-stern hull at `speed` (m/s), in parts, N.
#[must_use]
pub fn resistance(form: &Form, water: &Water, speed: f64) -> Noted<Parts> {
    Regression::new(form, water).parts(speed)
}
