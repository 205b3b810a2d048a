//! Open-water propeller series: thrust and torque coefficients over the advance ratio.
//!
//! | file | what |
//! |---|---|
//! | [`bseries`] | airfoil sections, 2 to 7 blades, Reynolds number |
//! | [`flatfaced`] | flat-faced sections, base fit and its error |
//! | [`radojcic`] | flat-faced sections, second fit, and the loss when cavitating |
//! | [`ducted`] | the screw Ka 4-70 in nozzle 19A |
//! | [`stretch`] | pitch ratios outside the tested ones |
//! | [`roughness`], [`cup`] | rough blades, bent trailing edges |
//! | [`quadrants`] | one screw ahead and astern |
//! | [`bp_delta`] | coordinates of the older charts |

use crate::note::{Note, Noted};
use crate::source::Method;
use std::f64::consts::PI;

pub mod bp_delta;
pub mod bseries;
pub mod cup;
mod curves;
pub mod ducted;
pub mod flatfaced;
mod polynomial;
pub mod quadrants;
pub mod radojcic;
pub mod roughness;
pub mod stretch;

pub use curves::Curves;
pub use polynomial::Polynomials;

/// Methods of this room.
pub const METHODS: &[&Method] = &[
    &bseries::METHOD,
    &bseries::METHOD_SCALE,
    &flatfaced::METHOD,
    &radojcic::METHOD,
    &radojcic::METHOD_CAVITATING,
    &ducted::METHOD,
    &stretch::METHOD,
    &roughness::METHOD,
    &cup::METHOD,
    &quadrants::METHOD,
    &bp_delta::METHOD,
];

/// A systematic series of propellers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Series {
    /// Wageningen B-series, airfoil sections, 2-7 blades.
    B,
    /// Flat-faced segmental sections (Gawn-Burrill data).
    FlatFaced,
    /// Ka 4-70 in nozzle 19A. Thrust coefficient is the total of screw and nozzle.
    Ducted,
}

/// How far a series may be off, as standard deviations of the natural logarithm, and how that is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Of the thrust coefficient.
    pub thrust: f64,
    /// Of the torque coefficient.
    pub torque: f64,
    /// Why.
    pub reason: &'static str,
}

/// A definite propeller as the open-water series see it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// Diameter `D`, m.
    pub diameter: f64,
    /// Pitch ratio `P/D` of the face pitch (at 0.7 R when it varies), cup not included.
    pub pitch_ratio: f64,
    /// Expanded area ratio `AE/A0`.
    pub expanded_area_ratio: f64,
    /// Number of blades `Z`.
    pub blades: u8,
    /// Share of flat-faced behaviour, 0 (B-series) to 1 (flat-faced); between them the two are mixed. Ignored when ducted.
    pub flat_share: f64,
    /// In a nozzle 19A.
    pub ducted: bool,
    /// Cup, as a fraction added to the pitch (0.05: acts like 5 % more pitch).
    pub cup: f64,
    /// Blade roughness height `kp`, m (30e-6 for a new propeller).
    pub blade_roughness: f64,
}

impl Screw {
    /// Pitch ratio with the cup counted as pitch.
    #[must_use]
    pub fn effective_pitch_ratio(&self) -> f64 {
        self.pitch_ratio * (1.0 + self.cup)
    }

    /// Chord at 0.75 R, m: `c = 2.073 (AE/A0) D/Z`.
    ///
    /// Source: J. Holtrop & G. G. J. Mennen 1982, An approximate power prediction method, Int. Shipb. Progress 29 (B-series outline).
    #[must_use]
    pub fn chord(&self) -> f64 {
        2.073 * self.expanded_area_ratio * self.diameter / f64::from(self.blades.max(1))
    }

    /// Thickness over chord at 0.75 R: `t/c = (0.0185 - 0.00125 Z) D/c`, up to seven blades. Source as [`Screw::chord`].
    #[must_use]
    pub fn thickness_ratio(&self) -> f64 {
        let chord = self.chord();
        if chord > 0.0 { (0.0185 - 0.00125 * f64::from(self.blades.clamp(2, 7))) * self.diameter / chord } else { 0.0 }
    }

    /// Blade Reynolds number at 0.75 R: `Re = c √(Va² + (0.75 π n D)²)/ν`, `va` in m/s, `n` in rev/s, `nu` in m²/s.
    #[must_use]
    pub fn reynolds(&self, va: f64, n: f64, nu: f64) -> f64 {
        self.chord() * va.hypot(0.75 * PI * n * self.diameter) / nu
    }

    /// The series behind most of its behaviour.
    #[must_use]
    pub fn series(&self) -> Series {
        if self.ducted {
            Series::Ducted
        } else if self.flat_share > 0.5 {
            Series::FlatFaced
        } else {
            Series::B
        }
    }

    /// Reduces the series to polynomials in `J` at a blade Reynolds number (0.75 R), cup and blade roughness included.
    ///
    /// Never a panic or a NaN: pitch, area and blade number outside what was tested are held or extrapolated, with notes.
    #[must_use]
    pub fn curves(&self, reynolds: f64) -> Noted<Curves> {
        let pitch = self.effective_pitch_ratio();
        let (area, blades) = (self.expanded_area_ratio, self.blades);
        let Noted { value: mut sum, mut notes } = if self.ducted {
            ducted::reduce(pitch, area, blades)
        } else if self.flat_share.is_nan() || self.flat_share <= 0.0 {
            bseries::reduce(pitch, area, blades, reynolds)
        } else if self.flat_share >= 1.0 {
            flatfaced::reduce(pitch, area, blades)
        } else {
            let b = bseries::reduce(pitch, area, blades, reynolds);
            let flat = flatfaced::reduce(pitch, area, blades);
            Noted::new(b.value.mixed(&flat.value, self.flat_share), b.notes.and(flat.notes))
        };
        let solidity = 2.073 * polynomial::held(area, 0.2, 1.3);
        let pitch = polynomial::held(pitch, stretch::SPAN.0, stretch::SPAN.1);
        let (kt, kq) = roughness::change(pitch, solidity, self.thickness_ratio(), self.chord(), self.blade_roughness);
        sum.kt[0] += kt;
        sum.kq[0] += kq;
        notes.add_if(self.blade_roughness > 1e-3, Note::BladesRougherThanFormula);
        Noted::new(Curves::new(&sum, pitch), notes)
    }

    /// The error of the series behind [`Screw::curves`]; wider where the propeller lies outside it.
    ///
    /// Outside the tested pitch, area or blade number 0.04 is added in quadrature for each (assumed, no source).
    #[must_use]
    pub fn spread(&self) -> Spread {
        let flat = flatfaced::spread(self.effective_pitch_ratio(), self.expanded_area_ratio);
        let share = polynomial::held(self.flat_share, 0.0, 1.0);
        let base = match self.series() {
            Series::Ducted => ducted::SPREAD,
            Series::B | Series::FlatFaced => Spread {
                thrust: bseries::SPREAD.thrust + share * (flat.thrust - bseries::SPREAD.thrust),
                torque: bseries::SPREAD.torque + share * (flat.torque - bseries::SPREAD.torque),
                reason: if share > 0.5 { flat.reason } else { bseries::SPREAD.reason },
            },
        };
        let notes = self.curves(0.0).notes;
        let outside = OUTSIDE.iter().filter(|note| notes.has(**note)).count();
        let more = f64::from(u8::try_from(outside).unwrap_or(u8::MAX)) * 0.04 * 0.04;
        Spread {
            thrust: (base.thrust * base.thrust + more).sqrt(),
            torque: (base.torque * base.torque + more).sqrt(),
            reason: base.reason,
        }
    }
}

/// Notes that say a propeller lies outside its series.
const OUTSIDE: [Note; 6] = [
    Note::BladesOutsideSeries,
    Note::PitchRatioOutsideSeries,
    Note::AreaRatioOutsideSeries,
    Note::FlatFacedBladesBorrowed,
    Note::TwoBladedFitOptimistic,
    Note::DuctedOtherScrew,
];

/// Area ratios a propeller of this blade number usually has: those the B-series was tested with.
#[must_use]
pub const fn usual_area_ratios(blades: u8) -> (f64, f64) {
    bseries::area_ratios(blades)
}
