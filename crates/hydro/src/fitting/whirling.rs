//! Bearing spacing and the first whirling speed.

use crate::source::{Method, Trust};
use std::f64::consts::PI;

/// The handbook's greatest spacing.
pub const SPACING: Method = Method {
    name: "bearing-spacing-handbook",
    quantity: "greatest distance between shaft bearings (m)",
    formula: "L[ft] = sqrt(3.21 d/N) (E/w)^(1/4), d in, E psi, w lb/in3",
    range: "bare shafts between two bearings",
    error: "it puts the first whirling speed exactly at shaft speed: there is no margin in it (derived: 3.215 d sqrt(E/w)/L^2 is the whirling speed)",
    source: "a handbook as quoted by one public page",
    trust: Trust::OneCopy,
};

/// The first whirling speed.
pub const METHOD: Method = Method {
    name: "whirling",
    quantity: "first whirling speed (rev/s) of a shaft span, with the overhung propeller",
    formula: "f1 = (pi/2) sqrt(E I/(m L^4)), m with the water the span carries along; 1/f^2 = 1/f1^2 + 1/f2^2 with f2 = sqrt(3 E I/(M a^2 (a+L)))/(2 pi) for the propeller on its overhang (Dunkerley 1894)",
    range: "one span between bearings that hold the line and not the slope; stiff bearings",
    error: "10 to 20 %: bearings give, and hold a little slope; gyroscopic stiffening is left out",
    source: "Euler-Bernoulli beam, closed form; S. Dunkerley 1894, On the whirling and vibration of shafts, Phil. Trans. R. Soc. A 185",
    trust: Trust::Checked,
};

/// A shaft span with its propeller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Shaft diameter, m.
    pub diameter: f64,
    /// Between bearings, m.
    pub length: f64,
    /// From the middle of the after bearing to the propeller's centre of mass, m; 0 without.
    pub overhang: f64,
    /// Mass of the propeller with the water it carries, kg; 0 without.
    pub propeller: f64,
    /// Young's modulus, Pa.
    pub modulus: f64,
    /// Density of the shaft, kg/m³.
    pub density: f64,
    /// Density of the water round the shaft, kg/m³; 0 in air.
    pub water: f64,
}

impl Span {
    fn stiffness(&self) -> f64 {
        self.modulus * PI * self.diameter.powi(4) / 64.0
    }

    /// First whirling speed of the bare span, rev/s. A round shaft carries along its own volume of water.
    #[must_use]
    pub fn bare(&self) -> f64 {
        let area = 0.25 * PI * self.diameter * self.diameter;
        let mass = (self.density + self.water) * area;
        if self.length > 0.0 {
            0.5 * PI * (self.stiffness() / (mass * self.length.powi(4))).sqrt()
        } else {
            f64::INFINITY
        }
    }

    /// Whirling speed of the propeller on the weightless shaft's overhang, rev/s.
    #[must_use]
    pub fn overhung(&self) -> f64 {
        let (a, l) = (self.overhang, self.length);
        if a <= 0.0 || self.propeller <= 0.0 {
            return f64::INFINITY;
        }
        // Deflection of an overhung end load: a^2 (a + L)/(3 E I).
        (3.0 * self.stiffness() / (self.propeller * a * a * (a + l))).sqrt() / (2.0 * PI)
    }

    /// Both together, rev/s ([`METHOD`]): a lower bound.
    #[must_use]
    pub fn first(&self) -> f64 {
        (self.bare().powi(-2) + self.overhung().powi(-2)).powf(-0.5)
    }

    /// The spacing, m, at which the bare span whirls at `turns` rev/s times `margin`; [`SPACING`] is margin 1 in air.
    #[must_use]
    pub fn spacing(&self, turns: f64, margin: f64) -> f64 {
        let one = Span { length: 1.0, ..*self }.bare();
        if turns > 0.0 { (one / (margin * turns)).sqrt() } else { f64::INFINITY }
    }
}
