//! Speed and power from weight and length alone, for owners who know no more.
//!
//! These rules speak of shaft power at full speed; [`gerr`] and [`crouch`] turn that into a resistance through an assumed
//! overall efficiency. Speed is worth about a tenth, resistance a quarter to a third; see the error table.

use super::form::Form;
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use crate::water::{GRAVITY, Water};

/// Speed-length rule.
pub const METHOD_GERR: Method = Method {
    name: "gerr-displacement-speed",
    quantity: "speed-length ratio SL = kn/sqrt(ft) of a displacement or semi-displacement boat",
    formula: "SL = 10.665 / (lb per shaft hp)^(1/3)",
    range: "SL to about 2.8; not planing boats, not barge forms",
    error: "speed -9 .. +8 % on ten lifeboats and launches (rms 5 %), +35 % on a loaded landing craft, -23 % on a planing boat",
    source: "D. Gerr 1989, Propeller Handbook, International Marine, formula 2-1; constant seen in a second public worksheet",
    trust: Trust::OneCopy,
};

/// Planing speed rule.
pub const METHOD_CROUCH: Method = Method {
    name: "crouch",
    quantity: "speed of a planing boat, kn",
    formula: "V = C / sqrt(lb per shaft hp)",
    range: "fully planing, above about 20 kn",
    error: "C implied by four boats at 18 .. 26 kn: 151 .. 178, so speed about 10 %; C rises with speed on one and the same boat",
    source: "G. Crouch's formula after D. Gerr 1989, Propeller Handbook, formula 2-4; constants from memory",
    trust: Trust::Memory,
};

/// Greatest speed-length ratio for a displacement-length ratio.
pub const METHOD_MAX_SL: Method = Method {
    name: "gerr-max-speed-length",
    quantity: "highest speed-length ratio a form can be driven to without planing",
    formula: "SL_max = 8.26 / DL^0.311",
    range: "DL 50 .. 400",
    error: "unknown",
    source: "D. Gerr 1989, Propeller Handbook, formula 2-3; from memory",
    trust: Trust::Memory,
};

/// Foot, m (exact).
const FOOT: f64 = 0.3048;
/// Pound, kg (exact).
const POUND: f64 = 0.453_592_37;
/// Knot, m/s (exact).
const KNOT: f64 = 1852.0 / 3600.0;
/// Horsepower of 550 ft·lbf/s, W.
const HORSEPOWER: f64 = 550.0 * FOOT * POUND * GRAVITY;
/// One `kn/√ft` in `(m/s)/√m`.
const SPEED_LENGTH: f64 = 0.9318178;
/// Long ton, lb (exact).
const LONG_TON: f64 = 2240.0;

/// Shaft power to thrust power of a plain displacement boat: 0.50, believed within 0.40..0.60. Common practice, no source.
pub const EFFICIENCY_DISPLACEMENT: f64 = 0.50;
/// Shaft power to thrust power of a planing boat: 0.55, believed within 0.45..0.65. Common practice, no source.
pub const EFFICIENCY_PLANING: f64 = 0.55;

/// Crouch's constants by type of boat (from memory; an older list gives 150, 180, 200-230).
pub const CROUCH: &[(&str, f64)] = &[
    ("average runabouts, cruisers, passenger boats", 150.0),
    ("high-speed runabouts, very light cruisers", 190.0),
    ("race boats", 210.0),
    ("three-point and stepped hydroplanes", 220.0),
    ("racing catamarans, sea sleds", 230.0),
];

/// Speed-length ratio `V/√L` in `kn/√ft` from SI.
#[must_use]
pub fn speed_length_ratio(speed: f64, length: f64) -> f64 {
    if length > 0.0 { speed / length.sqrt() / SPEED_LENGTH } else { 0.0 }
}

/// Displacement-length ratio `(long tons) / (0.01 L_ft)³` from mass in kg and waterline length in m. Gerr 1989, 2-2.
#[must_use]
pub fn displacement_length_ratio(mass: f64, length: f64) -> f64 {
    if length > 0.0 { mass / POUND / LONG_TON / (0.01 * length / FOOT).powi(3) } else { 0.0 }
}

/// Highest speed-length ratio of a form, `8.26 / DL^0.311` (Gerr 1989, 2-3, from memory).
#[must_use]
pub fn max_speed_length_ratio(displacement_length: f64) -> f64 {
    8.26 / displacement_length.max(1.0).powf(0.311)
}

/// Speed (m/s) of a displacement or semi-displacement boat, `SL = 10.665 / (lb/hp)^(1/3)` (Gerr 1989, 2-1).
///
/// `mass` kg, `power` at the shaft W, `length` of waterline m.
#[must_use]
pub fn gerr_speed(mass: f64, power: f64, length: f64) -> f64 {
    if !(mass > 0.0 && power > 0.0 && length > 0.0) {
        return 0.0;
    }
    10.665 / (mass / POUND / (power / HORSEPOWER)).cbrt() * SPEED_LENGTH * length.sqrt()
}

/// Shaft power (W) at a speed (m/s) by the same rule: `hp = lb (SL/10.665)³`.
#[must_use]
pub fn gerr_power(mass: f64, speed: f64, length: f64) -> f64 {
    mass.max(0.0) / POUND * (speed_length_ratio(speed.max(0.0), length) / 10.665).powi(3) * HORSEPOWER
}

/// Speed (m/s) of a planing boat, `V_kn = C / √(lb/hp)`; `c` as in [`CROUCH`].
#[must_use]
pub fn crouch_speed(mass: f64, power: f64, c: f64) -> f64 {
    if !(mass > 0.0 && power > 0.0) {
        return 0.0;
    }
    c / (mass / POUND / (power / HORSEPOWER)).sqrt() * KNOT
}

/// Shaft power (W) at a speed (m/s) by the same rule: `hp = lb (V_kn/C)²`.
#[must_use]
pub fn crouch_power(mass: f64, speed: f64, c: f64) -> f64 {
    let ratio = speed.max(0.0) / KNOT / c.max(1.0);
    mass.max(0.0) / POUND * ratio * ratio * HORSEPOWER
}

/// Resistance (N) a displacement boat must have if the speed rule and an overall `efficiency` (shaft to thrust power)
/// hold: `R = η P / V`, so `R ~ V²`. Always noted: the efficiency is assumed. No parts known, so a bare total.
///
/// The rule is about top speeds and is no resistance curve: against 17 yacht models it is right within a quarter at
/// Fn 0.43..0.45 and several times too high at half that speed; a note below `SL` 1.4 (Fn 0.42) and above 2.8 says so.
#[must_use]
pub fn gerr(form: &Form, speed: f64, efficiency: f64) -> Noted<f64> {
    let mut notes = Notes::NONE;
    notes.add(Note::EfficiencyAssumed);
    let ratio = speed_length_ratio(speed, form.length);
    notes.add_if(ratio > 2.8, Note::SpeedAboveMethod);
    notes.add_if(ratio < 1.4, Note::SpeedBelowMethod);
    let resistance =
        if speed > 0.0 { efficiency.clamp(0.1, 0.9) * gerr_power(form.mass, speed, form.length) / speed } else { 0.0 };
    Noted::new(resistance, notes)
}

/// Resistance (N) a planing boat must have if Crouch's rule with constant `c` and an overall `efficiency` hold:
/// `R = η P / V`, so `R ~ V`. Below volume Froude number 2.5 or so (about 20 kn on a 10 m boat) the rule has nothing to say
/// and a note does.
#[must_use]
pub fn crouch(form: &Form, water: &Water, speed: f64, c: f64, efficiency: f64) -> Noted<f64> {
    let mut notes = Notes::NONE;
    notes.add(Note::EfficiencyAssumed);
    let volume = (form.mass / water.density).max(1e-3);
    let froude = speed / (GRAVITY * volume.cbrt()).sqrt();
    notes.add_if(froude < 2.5, Note::SpeedBelowMethod);
    let resistance =
        if speed > 0.0 { efficiency.clamp(0.1, 0.9) * crouch_power(form.mass, speed, c) / speed } else { 0.0 };
    Noted::new(resistance, notes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_unit_of_speed_length_is_right() {
        assert!((SPEED_LENGTH - KNOT / FOOT.sqrt()).abs() < 1e-6);
        assert!((HORSEPOWER - 745.699_871_6).abs() < 1e-6);
    }

    #[test]
    fn speed_and_power_are_inverse() {
        let speed = gerr_speed(6500.0, 21_000.0, 8.4);
        assert!((gerr_power(6500.0, speed, 8.4) / 21_000.0 - 1.0).abs() < 1e-6);
        let speed = crouch_speed(3000.0, 150_000.0, 150.0);
        assert!((crouch_power(3000.0, speed, 150.0) / 150_000.0 - 1.0).abs() < 1e-9);
        assert_eq!(gerr_speed(0.0, 1.0, 1.0), 0.0);
        assert_eq!(crouch_speed(1.0, f64::NAN, 150.0), 0.0);
    }
}
