//! Keys: standard sizes, and what a key carries if the taper does not.

use crate::source::{Method, Trust};

/// Shear and bearing of a key.
pub const METHOD: Method = Method {
    name: "key-stress",
    quantity: "shear stress in a key and pressure on its side (Pa)",
    formula: "shear = 2 Q/(d b L); pressure = 2 Q/(d L t), d the mean diameter of the taper, t the depth of the keyway's side",
    range: "the whole torque on the key: a seated taper carries most of it, the key is the second line",
    error: "a bound, not a working stress",
    source: "strength of materials, textbook",
    trust: Trust::Checked,
};

/// A parallel key of DIN 6885-1 (ISO 773), mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Key {
    /// Shafts over this diameter ...
    pub over: f64,
    /// ... up to this one.
    pub to: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// Depth in the shaft.
    pub shaft: f64,
    /// Depth in the hub.
    pub hub: f64,
}

const fn key(over: f64, to: f64, width: f64, height: f64, shaft: f64, hub: f64) -> Key {
    Key { over, to, width, height, shaft, hub }
}

/// DIN 6885-1, high form; two to three public copies agree (hub depth of 5 and 6 mm keys: 2.3 and 2.8 both are seen).
pub const DIN_6885: [Key; 18] = [
    key(6.0, 8.0, 2.0, 2.0, 1.2, 1.0),
    key(8.0, 10.0, 3.0, 3.0, 1.8, 1.4),
    key(10.0, 12.0, 4.0, 4.0, 2.5, 1.8),
    key(12.0, 17.0, 5.0, 5.0, 3.0, 2.3),
    key(17.0, 22.0, 6.0, 6.0, 3.5, 2.8),
    key(22.0, 30.0, 8.0, 7.0, 4.0, 3.3),
    key(30.0, 38.0, 10.0, 8.0, 5.0, 3.3),
    key(38.0, 44.0, 12.0, 8.0, 5.0, 3.3),
    key(44.0, 50.0, 14.0, 9.0, 5.5, 3.8),
    key(50.0, 58.0, 16.0, 10.0, 6.0, 4.3),
    key(58.0, 65.0, 18.0, 11.0, 7.0, 4.4),
    key(65.0, 75.0, 20.0, 12.0, 7.5, 4.9),
    key(75.0, 85.0, 22.0, 14.0, 9.0, 5.4),
    key(85.0, 95.0, 25.0, 14.0, 9.0, 5.4),
    key(95.0, 110.0, 28.0, 16.0, 10.0, 6.4),
    key(110.0, 130.0, 32.0, 18.0, 11.0, 7.4),
    key(130.0, 150.0, 36.0, 20.0, 12.0, 8.4),
    key(150.0, 170.0, 40.0, 22.0, 13.0, 9.4),
];

/// The key of a straight shaft of this diameter (m); boats' taper bores mostly take the next smaller one, because the key
/// sits at the taper's mean diameter.
#[must_use]
pub fn din_6885(diameter: f64) -> Option<&'static Key> {
    let mm = 1e3 * diameter;
    DIN_6885.iter().find(|key| mm > key.over && mm <= key.to)
}

/// Shear stress in a key, Pa: torque N m, mean diameter of the taper, width and length of the key, m.
#[must_use]
pub fn shear(torque: f64, diameter: f64, width: f64, length: f64) -> f64 {
    let area = diameter * width * length;
    if area > 0.0 { 2.0 * torque / area } else { f64::INFINITY }
}

/// Pressure on the side of a key, Pa; `depth` of the side in the shallower keyway, m.
#[must_use]
pub fn pressure(torque: f64, diameter: f64, depth: f64, length: f64) -> f64 {
    shear(torque, diameter, depth, length)
}
