//! Usual shapes of the full-throttle curve by kind of engine, and what holds the top.

use super::{CURVE, FullThrottleCurve, Kind, Top};
use crate::source::{Method, Trust};
use crate::speed::EngineSpeed;

/// What [`usual_curve`] is.
pub const METHOD: Method = Method {
    name: "engine-curve",
    quantity: "full-throttle power over rated power, by speed over rated speed",
    formula: "eight-point table of torque per kind, tilted by a deviation: torque x (1 + z s (1 - N/N0))",
    range: "a quarter of rated speed to 1.15 of it",
    error: "one standard deviation 4..12 % of torque at rest, nothing at rated speed; use the maker's curve where there is one",
    source: "the usual look of makers' sheets, no source",
    trust: Trust::CommonPractice,
};
/// What [`usual_top`] is.
pub const TOP: Method = Method {
    name: "engine-top",
    quantity: "no-load speed of a governor over rated speed; limiter over the top of the full-throttle band",
    formula: "mechanical governor 1.07..1.11, electronic 1.02..1.05; limiter 1.03..1.05",
    range: "marine engines",
    error: "the bands (80 %)",
    source: "about 10 % for mechanical governors is stated in the trade; the rest no source",
    trust: Trust::CommonPractice,
};

/// (speed over rated, torque over rated torque).
type Torque = [(f64, f64); CURVE];

const NATURAL_DIESEL: Torque =
    [(0.25, 0.90), (0.35, 0.99), (0.45, 1.05), (0.60, 1.09), (0.70, 1.08), (0.80, 1.06), (0.90, 1.03), (1.0, 1.0)];
const TURBO_DIESEL: Torque =
    [(0.25, 0.58), (0.35, 0.78), (0.45, 1.00), (0.55, 1.13), (0.65, 1.17), (0.78, 1.13), (0.90, 1.06), (1.0, 1.0)];
const PETROL: Torque =
    [(0.25, 0.92), (0.40, 1.03), (0.55, 1.10), (0.70, 1.13), (0.85, 1.08), (1.0, 1.0), (1.08, 0.93), (1.15, 0.85)];
const OUTBOARD: Torque =
    [(0.25, 0.78), (0.40, 0.93), (0.55, 1.04), (0.70, 1.10), (0.85, 1.07), (1.0, 1.0), (1.08, 0.94), (1.15, 0.86)];
/// Even torque up to base speed (taken as rated speed), even power above.
const ELECTRIC: Torque = [
    (0.10, 1.0),
    (0.25, 1.0),
    (0.40, 1.0),
    (0.60, 1.0),
    (0.80, 1.0),
    (1.0, 1.0),
    (1.08, 1.0 / 1.08),
    (1.15, 1.0 / 1.15),
];

/// The usual full-throttle curve of a kind of engine.
///
/// `shape` tilts it: 0 the middle, +1 one standard deviation more torque at low speed, -1 less (kept within ±3);
/// power at rated speed stays 1.
#[must_use]
pub fn usual_curve(kind: Kind, shape: f64) -> FullThrottleCurve {
    let (torque, spread) = match kind {
        Kind::NaturalDiesel => (&NATURAL_DIESEL, 0.08),
        Kind::TurboDiesel => (&TURBO_DIESEL, 0.12),
        Kind::Petrol => (&PETROL, 0.10),
        Kind::Outboard => (&OUTBOARD, 0.12),
        Kind::Electric => (&ELECTRIC, 0.04),
    };
    let z = if shape.is_finite() { shape.clamp(-3.0, 3.0) } else { 0.0 };
    torque.map(|(x, q)| (x, x * q * (1.0 + z * spread * (1.0 - x))))
}

/// No-load speed over rated speed: low, middle, high (80 % band). Mechanical: about 10 % is stated in the trade.
#[must_use]
pub const fn no_load_ratio(electronic: bool) -> (f64, f64, f64) {
    if electronic { (1.02, 1.04, 1.05) } else { (1.07, 1.09, 1.11) }
}

/// Limiter over the top of the full-throttle band: low, middle, high (80 % band).
pub const LIMITER_RATIO: (f64, f64, f64) = (1.03, 1.04, 1.05);

/// What usually holds an engine of this kind.
///
/// `band_top` is the top of the maker's full-throttle band where known (petrol, outboard), else 1.08 of rated speed is
/// taken; an electric motor is held a little above rated speed. `share` places it in its band: 0.5 the middle, 0.1 and
/// 0.9 its ends.
#[must_use]
pub fn usual_top(
    kind: Kind,
    rated_speed: EngineSpeed,
    band_top: Option<EngineSpeed>,
    electronic: bool,
    share: f64,
) -> Top {
    let place = |(low, middle, high): (f64, f64, f64)| {
        let z = if share.is_finite() { (share.clamp(0.0, 1.0) - 0.5) / 0.4 } else { 0.0 };
        if z < 0.0 { middle + z * (middle - low) } else { middle + z * (high - middle) }
    };
    match kind {
        Kind::NaturalDiesel | Kind::TurboDiesel => {
            Top::Governor { no_load: EngineSpeed(rated_speed.0 * place(no_load_ratio(electronic))) }
        }
        Kind::Petrol | Kind::Outboard => {
            let band_top = band_top.map_or(1.08 * rated_speed.0, |speed| speed.0);
            Top::Limiter { at: EngineSpeed(band_top * place(LIMITER_RATIO)) }
        }
        Kind::Electric => Top::Limiter { at: EngineSpeed(rated_speed.0 * place((1.0, 1.03, 1.06))) },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shape_gives_rated_power_at_rated_speed_and_positive_rising_speeds() {
        for &kind in Kind::ALL {
            for shape in [-9.0, -1.0, 0.0, 1.0, 9.0] {
                let curve = usual_curve(kind, shape);
                assert!(curve.windows(2).all(|w| w[0].0 < w[1].0), "{kind:?}");
                assert!(curve.iter().all(|point| point.1 > 0.0), "{kind:?}");
                let rated = curve.iter().find(|point| point.0 == 1.0).unwrap();
                assert!((rated.1 - 1.0).abs() < 1e-12, "{kind:?}");
            }
        }
    }

    #[test]
    fn shape_tilts_towards_low_speed() {
        let (weak, strong) = (usual_curve(Kind::TurboDiesel, -1.0), usual_curve(Kind::TurboDiesel, 1.0));
        assert!(strong[0].1 / weak[0].1 > strong[4].1 / weak[4].1);
    }
}
