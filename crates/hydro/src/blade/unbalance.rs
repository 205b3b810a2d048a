//! Shaft-rate force and moment of blades that differ.

use super::outline::expanded_area;
use super::pitch::effective_pitch;
use super::propeller::Propeller;
use crate::source::{Method, Trust};

/// Hydrodynamic unbalance.
pub const METHOD: Method = Method {
    name: "hydrodynamic-unbalance",
    quantity: "force (N) and moment (N m) that turn with the shaft",
    formula: "blade thrust = T/Z (1 + a dP/P + b dA/A), torque alike; force = sum Q_i/r along the tangent, moment = sum T_i r; r = 0.7 R",
    range: "small differences between blades, quasi-steady, open water",
    error: "an estimate: blades act on each other, which evens differences out; half to once the value is likely",
    source: "ours, from blade-element reasoning",
    trust: Trust::CommonPractice,
};

/// Load of the whole propeller at one working point, and how a blade's share follows its pitch and area.
///
/// The exponents are logarithmic derivatives of the series at that point: `d ln KT/d ln(P/D)` and so on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BladeLoad {
    /// Thrust, N.
    pub thrust: f64,
    /// Torque, N m.
    pub torque: f64,
    /// `d ln T/d ln P`.
    pub thrust_by_pitch: f64,
    /// `d ln Q/d ln P`.
    pub torque_by_pitch: f64,
    /// `d ln T/d ln A`.
    pub thrust_by_area: f64,
    /// `d ln Q/d ln A`.
    pub torque_by_area: f64,
}

/// What turns with the shaft.
#[derive(Clone, Debug, PartialEq)]
pub struct ShaftRate {
    /// Force square to the shaft, N.
    pub force: f64,
    /// Bending moment, N m.
    pub moment: f64,
    /// Thrust of each blade, N.
    pub thrusts: Vec<f64>,
    /// Torque of each blade, N m.
    pub torques: Vec<f64>,
}

/// Radius at which a blade's forces act, `r/R`. Common practice, no source.
const LEVER: f64 = 0.7;

/// Estimates force and moment at shaft rate from the differences of effective pitch, area and spacing between blades.
///
/// Force and moment stay put on the shaft and turn with it: the hull feels them at shaft rate.
#[must_use]
pub fn shaft_rate(propeller: &Propeller, load: &BladeLoad) -> ShaftRate {
    let (hub, count) = (propeller.hub.radius(), propeller.count());
    let mut result = ShaftRate { force: 0.0, moment: 0.0, thrusts: Vec::new(), torques: Vec::new() };
    if count < 1.0 {
        return result;
    }
    let pitches: Vec<f64> = propeller.blades.iter().map(|b| effective_pitch(b, hub)).collect();
    let areas: Vec<f64> = propeller.blades.iter().map(|b| expanded_area(b, hub)).collect();
    let (pitch, area) = (pitches.iter().sum::<f64>() / count, areas.iter().sum::<f64>() / count);
    let off = |x: f64, mean: f64| if mean > 0.0 { x / mean - 1.0 } else { 0.0 };
    let (mut force, mut moment) = ([0.0; 2], [0.0; 2]);
    for (i, blade) in propeller.blades.iter().enumerate() {
        let (by_pitch, by_area) = (off(pitches[i], pitch), off(areas[i], area));
        let thrust = load.thrust / count * (1.0 + load.thrust_by_pitch * by_pitch + load.thrust_by_area * by_area);
        let torque = load.torque / count * (1.0 + load.torque_by_pitch * by_pitch + load.torque_by_area * by_area);
        let lever = LEVER * blade.tip_radius;
        let (sin, cos) = propeller.angles.get(i).copied().unwrap_or(0.0).sin_cos();
        // The drag of a blade acts square to it, its thrust bends the shaft about the line square to it.
        if lever > 0.0 {
            force[0] -= torque / lever * cos;
            force[1] += torque / lever * sin;
        }
        moment[0] += thrust * lever * sin;
        moment[1] += thrust * lever * cos;
        result.thrusts.push(thrust);
        result.torques.push(torque);
    }
    result.force = force[0].hypot(force[1]);
    result.moment = moment[0].hypot(moment[1]);
    result
}

#[cfg(test)]
mod tests {
    use super::{BladeLoad, shaft_rate};
    use crate::blade::{BSeries, Hand, b_series};

    const LOAD: BladeLoad = BladeLoad {
        thrust: 3000.0,
        torque: 250.0,
        thrust_by_pitch: 1.5,
        torque_by_pitch: 2.0,
        thrust_by_area: 0.3,
        torque_by_area: 0.4,
    };

    #[test]
    fn equal_blades_pull_evenly_and_one_steep_blade_does_not() {
        let mut p = b_series(&BSeries {
            blades: 3,
            expanded_area_ratio: 0.5,
            pitch_ratio: 0.8,
            diameter: 0.5,
            hand: Hand::Right,
        });
        let even = shaft_rate(&p, &LOAD);
        assert!(even.force < 1e-9 && even.moment < 1e-9);
        for s in &mut p.blades[1].sections {
            s.pitch *= 1.03;
        }
        // One blade 3 % over two: 2 % over the mean, the others 1 % under; the odd part is 3 % of a blade's share.
        let odd = shaft_rate(&p, &LOAD);
        let share = 0.03 / 1.01;
        assert!((odd.moment - 1000.0 * 1.5 * share * 0.175).abs() < 1e-6, "{}", odd.moment);
        assert!((odd.force - 250.0 / 3.0 * 2.0 * share / 0.175).abs() < 1e-6, "{}", odd.force);
        assert!((odd.thrusts.iter().sum::<f64>() - 3000.0).abs() < 1e-9);
    }
}
