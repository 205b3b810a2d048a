//! Wake fractions by formula and table.

use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};

/// What [`taylor_table`] is.
pub const TAYLOR: Method = Method {
    name: "taylor-wake-1943",
    quantity: "Taylor wake fraction, single and twin screw",
    formula: "table over block coefficient",
    range: "CB 0.50..0.90 single, 0.50..0.80 twin; ships of full length",
    error: "not stated; small craft scatter by 0.05 and more",
    source: "D. W. Taylor, The Speed and Power of Ships, 3rd ed. 1943, from memory",
    trust: Trust::Memory,
};
/// What [`taylor_line`] is.
pub const TAYLOR_LINE: Method = Method {
    name: "taylor-wake-line",
    quantity: "Taylor wake fraction, single and twin screw",
    formula: "w = 0.5 CB - 0.05 single; 0.55 CB - 0.20 twin",
    range: "CB 0.50..0.80",
    error: "0.03 single, but 0.04..0.12 above the table for twin screws (our comparison)",
    source: "straight lines quoted under Taylor's name, from memory",
    trust: Trust::Memory,
};
/// What [`gerr_block`] is.
pub const GERR_BLOCK: Method = Method {
    name: "gerr-6-4",
    quantity: "wake fraction of displacement boats",
    formula: "1 - w = 1.11 - 0.6 CB single; 1.06 - 0.4 CB twin",
    range: "displacement boats; sailing hulls: CB of the canoe body",
    error: "not stated",
    source: "D. Gerr, Propeller Handbook, 1989, formula 6-4, from memory",
    trust: Trust::Memory,
};
/// What [`gerr_speed`] is.
pub const GERR_SPEED: Method = Method {
    name: "gerr-6-6",
    quantity: "wake fraction of planing boats",
    formula: "1 - w = 0.83 V^0.047, V in knots",
    range: "about 6..45 knots",
    error: "not stated",
    source: "D. Gerr, Propeller Handbook, 1989, formula 6-6, from memory",
    trust: Trust::Memory,
};

/// Block coefficient, wake of a single screw, wake of twin screws.
const TABLE: [(f64, f64, f64); 9] = [
    (0.50, 0.230, -0.038),
    (0.55, 0.234, -0.021),
    (0.60, 0.243, 0.007),
    (0.65, 0.260, 0.045),
    (0.70, 0.283, 0.091),
    (0.75, 0.314, 0.143),
    (0.80, 0.354, 0.202),
    (0.85, 0.400, 0.202),
    (0.90, 0.477, 0.202),
];

/// Taylor wake fraction over block coefficient, straight between the table's points, its ends kept beyond with a note.
#[must_use]
pub fn taylor_table(block_coefficient: f64, screws: u8) -> Noted<f64> {
    let highest = if screws > 1 { 0.80 } else { 0.90 };
    let mut notes = Notes::NONE;
    notes.add_if(!(0.50..=highest).contains(&block_coefficient), Note::BlockOutsideWakeTable);
    let cb = if block_coefficient.is_finite() { block_coefficient.clamp(0.50, highest) } else { 0.50 };
    let i = (((cb - 0.50) / 0.05) as usize).min(TABLE.len() - 2);
    let (a, b) = (TABLE[i], TABLE[i + 1]);
    let share = (cb - a.0) / (b.0 - a.0);
    let (from, to) = if screws > 1 { (a.2, b.2) } else { (a.1, b.1) };
    Noted::new(from + share * (to - from), notes)
}

/// The lines quoted under Taylor's name: `0.5 CB - 0.05` single, `0.55 CB - 0.20` twin.
///
/// The single line stays within 0.03 of the table; the twin line lies 0.04 to 0.12 above it and is a different relation.
#[must_use]
pub fn taylor_line(block_coefficient: f64, screws: u8) -> f64 {
    if screws > 1 { 0.55 * block_coefficient - 0.20 } else { 0.5 * block_coefficient - 0.05 }
}

/// Wake fraction of displacement boats, Gerr 1989 formula 6-4: `1 - w = 1.11 - 0.6 CB` single, `1.06 - 0.4 CB` twin.
#[must_use]
pub fn gerr_block(block_coefficient: f64, screws: u8) -> f64 {
    if screws > 1 { 0.4 * block_coefficient - 0.06 } else { 0.6 * block_coefficient - 0.11 }
}

/// Wake fraction of planing boats, Gerr 1989 formula 6-6: `1 - w = 0.83 V^0.047`, `V` in knots; `speed` in m/s.
#[must_use]
pub fn gerr_speed(speed: f64) -> f64 {
    1.0 - 0.83 * (speed.max(0.1) * 3600.0 / 1852.0).powf(0.047)
}
