//! The drive between engine and propeller: reduction and losses.

use crate::source::{Method, Trust};
use crate::speed::{EngineSpeed, ShaftSpeed};

/// Methods of this room.
pub const METHODS: &[&Method] = &[&LOSSES, &DEMAND];

/// What [`efficiency`] is.
pub const LOSSES: Method = Method {
    name: "drive-losses",
    quantity: "power at the propeller over declared power",
    formula: "product of (1 - loss): gear 3 %, V-drive or down-angle gear 4.5 %, each shaft bearing 1.25 %",
    range: "reverse-reduction gears of small craft",
    error: "80 % band: gear 2..4 %, V-drive 4..5 %, bearing 1..1.5 %; belt-driven generators and pumps come on top",
    source: "gear: makers declare propeller-shaft power as 97 % of rated (conditions of ISO 8665); the rest from memory",
    trust: Trust::Memory,
};
/// What [`demand_exponent`] is.
pub const DEMAND: Method = Method {
    name: "propeller-demand",
    quantity: "power a propeller asks for at part speed, over that at full speed",
    formula: "(N/N0)^x, x = 3.0 displacement diesel (E3), 2.5 light petrol craft (E4)",
    range: "40..100 % of speed; a planing boat over its hump follows no power law",
    error: "E4's printed torques are met within 0.5 %",
    source: "ISO 8178-4 cycles E3 (from memory) and E4 (40 CFR Part 1045, Appendix II)",
    trust: Trust::Checked,
};

/// A definite drive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drive {
    /// Engine revolutions per shaft revolution, ahead.
    pub reduction: f64,
    /// Power at the propeller over power at the place the engine's power is declared, gear and bearings.
    pub efficiency: f64,
}

impl Drive {
    /// Shaft speed at an engine speed.
    #[must_use]
    #[inline]
    pub fn shaft(&self, engine: EngineSpeed) -> ShaftSpeed {
        ShaftSpeed(engine.0 / self.reduction)
    }

    /// Engine speed at a shaft speed.
    #[must_use]
    #[inline]
    pub fn engine(&self, shaft: ShaftSpeed) -> EngineSpeed {
        EngineSpeed(shaft.0 * self.reduction)
    }
}

/// What stands between crankshaft and propeller shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Gear {
    /// Nothing: the shaft is bolted to the crankshaft or motor.
    Direct,
    /// Reverse-reduction gear in line or dropped.
    Reduction,
    /// Down-angle gear or V-drive.
    VDrive,
    /// Leg with bevel gears: saildrive, outboard, sterndrive.
    Leg,
}

/// Where an engine's power is declared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DeclaredAt {
    /// At the crankshaft (flywheel).
    Crankshaft,
    /// At the propeller shaft: behind the gear; of outboards and sterndrives at the propeller (ISO 8665).
    PropellerShaft,
}

/// Power at the propeller over declared power.
///
/// `bearings` counts those between gear and propeller (stern tube, strut); `deviation` moves every loss together within
/// its band: 0 the middle, ±1 one standard deviation (kept within ±3). A leg holds its own bearings.
#[must_use]
pub fn efficiency(gear: Gear, declared: DeclaredAt, bearings: u8, deviation: f64) -> f64 {
    // Half a width of the 80 % band is 1.28 standard deviations.
    let z = if deviation.is_finite() { deviation.clamp(-3.0, 3.0) / 1.28 } else { 0.0 };
    let gear_loss: f64 = match gear {
        Gear::Direct => 0.0,
        Gear::Reduction => 0.03 + 0.01 * z,
        Gear::VDrive => 0.045 + 0.005 * z,
        // Two bevel pairs: as a V-drive, wider (assumption).
        Gear::Leg => 0.045 + 0.01 * z,
    };
    let gear_loss = if declared == DeclaredAt::PropellerShaft { 0.0 } else { gear_loss.max(0.0) };
    let outside = if gear == Gear::Leg { 0 } else { bearings };
    let bearing_loss = 0.0125 + 0.0025 * z;
    (1.0 - gear_loss) * (1.0 - bearing_loss).powi(i32::from(outside))
}

/// The exponent of the demand law by service.
#[must_use]
pub const fn demand_exponent(light_planing: bool) -> f64 {
    if light_planing { 2.5 } else { 3.0 }
}

/// Power asked for at a share of full speed, over that at full speed: `ratio^exponent`.
#[must_use]
pub fn demand(speed_ratio: f64, exponent: f64) -> f64 {
    speed_ratio.max(0.0).powf(exponent)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn propeller_shaft_power_has_the_gear_behind_it() {
        let crank = efficiency(Gear::Reduction, DeclaredAt::Crankshaft, 1, 0.0);
        let shaft = efficiency(Gear::Reduction, DeclaredAt::PropellerShaft, 1, 0.0);
        assert!((crank / shaft - 0.97).abs() < 1e-12);
        assert_eq!(efficiency(Gear::Leg, DeclaredAt::PropellerShaft, 2, 0.0), 1.0);
    }

    #[test]
    fn losses_stay_losses_over_the_whole_band() {
        for z in [-9.0, -1.28, 0.0, 1.28, 9.0, f64::NAN] {
            for gear in [Gear::Direct, Gear::Reduction, Gear::VDrive, Gear::Leg] {
                let e = efficiency(gear, DeclaredAt::Crankshaft, 2, z);
                assert!(e > 0.85 && e <= 1.0, "{gear:?} {z}: {e}");
            }
        }
    }
}
