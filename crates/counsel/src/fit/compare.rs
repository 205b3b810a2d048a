//! Blade numbers, rakes and skews side by side for this boat.

use super::exchange::Size;
use super::loads::{Loads, Subject};
use super::report::{BladeRow, RakeRow, SkewRow};
use super::shake;
use hydro::fitting::clearance;
use hydro::openwater::Screw;
use hydro::vibration::{gust, orders};

/// Diameters that take the same torque at the same pitch ratio, shaft speed and speed of advance.
pub(super) fn blades(subject: &Subject, loads: &Loads) -> Vec<BladeRow> {
    let n = loads.turns.middle;
    let advance = loads.advance * n * subject.diameter;
    let screw = |blades: u8, diameter: f64| Screw {
        diameter,
        pitch_ratio: subject.pitch / subject.diameter,
        // The same width of blade: area goes with their number.
        expanded_area_ratio: subject.area_ratio * f64::from(blades) / f64::from(subject.blades.max(1)),
        blades,
        flat_share: 0.0,
        ducted: false,
        cup: 0.0,
        blade_roughness: 30e-6,
    };
    let at = |blades: u8, diameter: f64| {
        let s = screw(blades, diameter);
        let curves = s.curves(s.reynolds(advance, n, loads.viscosity)).value;
        let j = advance / (n * diameter);
        (curves.torque(j) * diameter.powi(5), curves.efficiency(j))
    };
    let wanted = at(subject.blades, subject.diameter).0;
    let ahead = shake::Shadows::of(subject.job);
    (2..=5)
        .map(|z| {
            // Torque grows steeply with the diameter at a fixed speed of advance.
            let (mut low, mut high) = (0.5 * subject.diameter, 1.8 * subject.diameter);
            for _ in 0..50 {
                let middle = 0.5 * (low + high);
                if at(z, middle).0 < wanted { low = middle } else { high = middle }
            }
            let diameter = 0.5 * (low + high);
            let size = Size {
                diameter,
                pitch: diameter * subject.pitch / subject.diameter,
                blades: z,
                area_ratio: screw(z, diameter).expanded_area_ratio,
            };
            let times = |z: u8| f64::from(z).powf(-1.5);
            BladeRow {
                blades: z,
                diameter: 1e3 * diameter,
                efficiency: 100.0 * at(z, diameter).1,
                blade_rate: orders::blade_rate(n, z),
                pulse: times(z) / times(subject.blades.max(1)) * (diameter / subject.diameter).powi(2),
                in_shadow: ahead.meet(&size),
            }
        })
        .collect()
}

pub(super) fn rake(subject: &Subject) -> Vec<RakeRow> {
    [0.0, 5.0, 10.0, 15.0_f64]
        .map(|degrees| {
            let rake = degrees.to_radians();
            RakeRow {
                rake: degrees,
                longer: 100.0 * (clearance::raked_longer(rake) - 1.0),
                tip_aft: 1e3 * clearance::raked_aft(0.5 * subject.diameter, rake),
            }
        })
        .to_vec()
}

pub(super) fn skew(subject: &Subject, loads: &Loads) -> Vec<SkewRow> {
    let ahead = shake::Shadows::of(subject.job).wake;
    let chord = 2.073 * subject.area_ratio / f64::from(subject.blades.max(1));
    let at = gust::InWake {
        blades: subject.blades,
        diameter: subject.diameter,
        pitch_ratio: subject.pitch / subject.diameter,
        chord_ratio: chord.min(0.6),
        advance_ratio: loads.advance / loads.inflow.max(0.3),
        thrust_coefficient: loads.kt,
    };
    let force = |degrees: f64| 100.0 * gust::blade_rate_thrust(&at, &ahead, degrees.to_radians());
    let none = force(0.0);
    [0.0, 10.0, 20.0, 30.0, 45.0_f64]
        .map(|skew| SkewRow {
            skew,
            blade_rate_thrust: force(skew),
            left: if none > 1e-6 { 100.0 * force(skew) / none } else { 100.0 },
        })
        .to_vec()
}
