//! Clearances round the propeller.

use crate::source::{Method, Trust};

/// Lloyd's Register.
pub const LLOYDS: Method = Method {
    name: "clearance-lloyds",
    quantity: "least clearances as parts of the diameter",
    formula: "a 1.20/1.00/0.85/0.75 K (Z 3/4/5/6), at least 0.10; b 1.80/1.50/1.275/1.125 K, at least 0.15; c 0.12; d 0.03; twin e as a, at least 0.20 (Z to 4), 0.16; f 1.20/1.20/0.85/0.75 K, at least 0.15; K = (0.1 + L/3050)(3.48 Cb P/L^2 + 0.3)",
    range: "ships and special service craft; on boats of little power (10 m, 30 kW) the least values govern, above that K does: 10 m, 100 kW and three blades give 0.35 for a single screw",
    error: "a rule; fewer than three blades are taken as three",
    source: "Lloyd's Register, Rules 2000 Table 6.7.2 and Special Service Craft Table 3.3.2 (three copies; one misprints c)",
    trust: Trust::Checked,
};

/// Handbook by shaft speed.
pub const HANDBOOK: Method = Method {
    name: "clearance-handbook",
    quantity: "tip clearance as a part of the diameter",
    formula: "0.08 below 500 rpm and V/sqrt(L) 1.2; 0.10 to 1800 rpm and 2.5; 0.15 above 2.5; 0.20 planing above 3000 rpm (V kn, L ft)",
    range: "boats",
    error: "wide",
    source: "D. Gerr 1989, Propeller Handbook (from memory)",
    trust: Trust::Memory,
};

/// The trade's rule.
pub const TRADE: Method = Method {
    name: "clearance-trade",
    quantity: "tip clearance as a part of the diameter; blade to deadwood; overhang",
    formula: "tips 0.15 (0.10 on sailing auxiliaries); deadwood to leading edge 1/12; overhang from the bearing at most one shaft diameter",
    range: "boats",
    error: "texts give 0.10 to 0.20",
    source: "three public texts for 0.15, two for 0.10 under sail, one maker for 1/12; the overhang from memory",
    trust: Trust::CommonPractice,
};

/// Where a propeller stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Boat {
    /// Number of blades.
    pub blades: u8,
    /// Screws.
    pub screws: u8,
    /// Waterline length, m.
    pub length: f64,
    /// Block coefficient.
    pub block: f64,
    /// Power of one shaft, W.
    pub power: f64,
    /// Shaft speed, rev/s.
    pub turns: f64,
    /// Boat speed, m/s.
    pub speed: f64,
    /// Planes.
    pub planing: bool,
    /// Sails.
    pub sailing: bool,
}

/// Least clearances as parts of the diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lloyds {
    /// The factor K.
    pub k: f64,
    /// Tip to hull.
    pub tip: f64,
    /// Blade at 0.7 R to sternpost or bracket ahead.
    pub ahead: f64,
    /// Blade to rudder.
    pub rudder: f64,
    /// Tip to sole piece; `None` for twins.
    pub sole: Option<f64>,
    /// The table's least values of tip, ahead and rudder, whatever K gives.
    pub least: [f64; 3],
}

/// [`LLOYDS`].
#[must_use]
pub fn lloyds(boat: &Boat) -> Lloyds {
    let l = boat.length.max(1.0);
    let k = (0.1 + l / 3050.0) * (3.48 * boat.block * boat.power / 1e3 / (l * l) + 0.3);
    let at = usize::from(boat.blades.clamp(3, 6) - 3);
    let [a, b, f] =
        [[1.20, 1.00, 0.85, 0.75], [1.80, 1.50, 1.275, 1.125], [1.20, 1.20, 0.85, 0.75]].map(|row| row[at] * k);
    if boat.screws > 1 {
        // e to the hull, f to bracket and rudder.
        let least = [if boat.blades <= 4 { 0.20 } else { 0.16 }, 0.15, 0.15];
        Lloyds { k, tip: a.max(least[0]), ahead: f.max(least[1]), rudder: f.max(least[2]), sole: None, least }
    } else {
        // b to the hull, a to the sternpost, c to the rudder.
        let least = [0.15, 0.10, 0.12];
        Lloyds { k, tip: b.max(least[0]), ahead: a.max(least[1]), rudder: least[2], sole: Some(0.03), least }
    }
}

/// [`HANDBOOK`]: tip clearance over diameter.
#[must_use]
pub fn handbook(boat: &Boat) -> f64 {
    let (rpm, ratio) = (60.0 * boat.turns, boat.speed / (1852.0 / 3600.0) / (boat.length / 0.3048).max(1.0).sqrt());
    if boat.planing && rpm > 3000.0 {
        0.20
    } else if ratio > 2.5 {
        0.15
    } else if rpm > 500.0 || ratio > 1.2 {
        0.10
    } else {
        0.08
    }
}

/// [`TRADE`]: tip clearance over diameter.
#[must_use]
pub const fn trade(sailing: bool) -> f64 {
    if sailing { 0.10 } else { 0.15 }
}

/// Deadwood to the blades' leading edge over diameter: one maker's twelfth ([`TRADE`]).
pub const DEADWOOD: f64 = 1.0 / 12.0;

/// The largest diameter whose tips keep `part` of it clear of something `reach` m from the shaft's centre.
#[must_use]
pub fn largest_diameter(reach: f64, part: f64) -> f64 {
    (reach / (0.5 + part)).max(0.0)
}

/// Distance, m, from the shaft's line back from the blades to a rudder turned by `angle` (rad): its leading edge swings
/// forward and aside on `balance` m ahead of a stock that stands `stock` m behind the blades.
#[must_use]
pub fn rudder_gap(stock: f64, balance: f64, angle: f64) -> f64 {
    // The nearest point of the balance stays on its circle: at hard over it has moved aft by 1 - cos.
    stock - balance.max(0.0) * angle.cos()
}

/// How far a raked blade's tip lies aft of its root at the shaft, m: `R tan(rake)`.
#[must_use]
pub fn raked_aft(radius: f64, rake: f64) -> f64 {
    radius * rake.tan()
}

/// Surface and length of a blade raked by `rake` (rad) over those of an upright one of equal diameter: `1/cos(rake)`.
#[must_use]
pub fn raked_longer(rake: f64) -> f64 {
    1.0 / rake.cos().max(0.1)
}
