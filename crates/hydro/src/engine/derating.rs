//! Power on the day: heat and height.

use super::Kind;
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use crate::water::vapour;

/// What [`factor`] is.
pub const METHOD: Method = Method {
    name: "power-correction",
    quantity: "power on the day over power at 99 kPa dry air and 25 C",
    formula: "1/alpha, alpha = fa^fm, fa = (99/pd)^a (T/298)^b; natural diesel a 1 b 0.7, turbo a 0.7 b 1.2 (water-cooled charge \
              air b 0.7), fm 0.036 qc - 1.14 kept within 0.2..1.2; petrol alpha = (99/pd)^1.2 (T/298)^0.6",
    range: "alpha 0.9..1.1",
    error: "not stated; the engine factor fm is rarely known",
    source: "ISO 15550 form as printed in a workshop manual (exponents and petrol form from memory)",
    trust: Trust::Memory,
};

/// Engine factor taken when the fuel per stroke is not known: the middle of its range. With it a natural diesel loses
/// 0.9 % per 5.5 °C; the handbook rule says about 1 %.
pub const USUAL_ENGINE_FACTOR: f64 = 0.7;

/// Air an engine breathes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Intake {
    /// Temperature at the intake, °C.
    pub celsius: f64,
    /// Barometric pressure, Pa.
    pub pressure: f64,
    /// Relative humidity, 0 to 1.
    pub humidity: f64,
    /// Charge air cooled by water.
    pub water_cooled_charge: bool,
}

impl Intake {
    /// Reference air of ISO 8665: 100 kPa, 25 °C, 30 % humidity (dry pressure 99 kPa).
    pub const REFERENCE: Intake = Intake { celsius: 25.0, pressure: 100e3, humidity: 0.3, water_cooled_charge: false };
}

/// Engine factor `fm = 0.036 qc - 1.14`, 0.2 below 37.2 and 1.2 above 65.
///
/// `qc` is the fuel of one working cycle per litre of swept volume, mg, over the boost pressure ratio.
#[must_use]
pub fn engine_factor(qc: f64) -> f64 {
    if qc.is_finite() { (0.036 * qc - 1.14).clamp(0.2, 1.2) } else { USUAL_ENGINE_FACTOR }
}

/// Atmospheric factor `fa` of diesels: natural `(99/pd)(T/298)^0.7`; turbo `(99/pd)^0.7 (T/298)^1.2`, with water-cooled
/// charge air `(T/298)^0.7`. `dry_pressure` in Pa, `kelvin` in K.
#[must_use]
pub fn atmospheric_factor(turbo: bool, water_cooled_charge: bool, dry_pressure: f64, kelvin: f64) -> f64 {
    let (p, t) = (99e3 / dry_pressure, kelvin / 298.0);
    match (turbo, water_cooled_charge) {
        (false, _) => p * t.powf(0.7),
        (true, false) => p.powf(0.7) * t.powf(1.2),
        (true, true) => p.powf(0.7) * t.powf(0.7),
    }
}

/// Power on the day over power in reference air, with a note outside the range of the correction (0.9..1.1).
///
/// `engine_factor`: see [`engine_factor`], or [`USUAL_ENGINE_FACTOR`]; diesels only. An electric motor keeps its power.
#[must_use]
pub fn factor(kind: Kind, intake: &Intake, engine_factor: f64) -> Noted<f64> {
    if kind == Kind::Electric {
        return Noted::clean(1.0);
    }
    let or = |x: f64, usual: f64| if x.is_finite() { x } else { usual };
    let celsius = or(intake.celsius, 25.0).clamp(-30.0, 70.0);
    let pressure = or(intake.pressure, 100e3).clamp(40e3, 110e3);
    let vapour = vapour::pressure(celsius, 0.0) * or(intake.humidity, 0.3).clamp(0.0, 1.0);
    let (dry, kelvin) = (pressure - vapour, celsius + 273.15);
    let fm = or(engine_factor, USUAL_ENGINE_FACTOR).clamp(0.2, 1.2);
    let alpha = match kind {
        Kind::Petrol | Kind::Outboard => (99e3 / dry).powf(1.2) * (kelvin / 298.0).powf(0.6),
        _ => atmospheric_factor(kind == Kind::TurboDiesel, intake.water_cooled_charge, dry, kelvin).powf(fm),
    };
    let mut notes = Notes::NONE;
    notes.add_if(!(0.9..=1.1).contains(&alpha), Note::DeratingOutsideRange);
    Noted::new(1.0 / alpha, notes)
}
