//! The screw Ka 4-70 in nozzle 19A.

use super::Spread;
use super::polynomial::{Polynomials, Powers, Term, term, value, within};
use super::stretch::{inside, stretch};
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};

/// The one ducted screw at hand.
pub const METHOD: Method = Method {
    name: "ka-4-70-nozzle-19a",
    quantity: "total thrust, nozzle thrust and torque coefficients KT, KTN, KQ over the advance ratio J",
    formula: "KT = sum c (P/D)^x J^y (8 terms), KTN (18 terms), KQ (10 terms)",
    range: "P/D 0.6 to 1.4, J from 0 to zero total thrust; four blades, area ratio 0.70, nozzle 19A only",
    error: "5 % assumed; other screws and nozzles differ more",
    source: "M. W. C. Oosterveld 1970, Wake adapted ducted propellers, NSMB publication 345",
    trust: Trust::OneCopy,
};

/// Pitch ratios of the fit.
pub const PITCH_RATIOS: (f64, f64) = (0.6, 1.4);

/// Error of the fit, as the standard deviation of the logarithm of thrust and torque. No second fit was found to measure it.
pub const SPREAD: Spread = Spread {
    thrust: 0.05,
    torque: 0.05,
    reason: "assumed: one published fit of one ducted screw, nothing to compare it with",
};

/// The polynomials as published: total thrust and torque.
#[must_use]
pub fn published(pitch_ratio: f64) -> Polynomials {
    let powers = Powers::new(pitch_ratio, 1.0, 1.0);
    Polynomials { kt: powers.reduce(&KT), kq: powers.reduce(&KQ) }
}

/// Thrust coefficient `KTN` of the nozzle alone; that of the screw is the total less this. Range as [`METHOD`].
#[must_use]
pub fn nozzle_thrust(pitch_ratio: f64, advance_ratio: f64) -> f64 {
    value(&Powers::new(pitch_ratio, 1.0, 1.0).reduce(&KTN), advance_ratio)
}

/// Total thrust and torque for one propeller, with notes on what it is not.
#[must_use]
pub fn reduce(pitch_ratio: f64, expanded_area_ratio: f64, blades: u8) -> Noted<Polynomials> {
    let pitch = inside(pitch_ratio, PITCH_RATIOS);
    let mut notes = Notes::NONE;
    notes.add_if(!within(pitch_ratio, PITCH_RATIOS), Note::PitchRatioOutsideSeries);
    let other = blades != 4 || !within(expanded_area_ratio, (0.65, 0.75));
    notes.add_if(other, Note::DuctedOtherScrew);
    Noted::new(stretch(published(pitch), pitch_ratio, pitch), notes)
}

/// Total thrust of screw and nozzle, 8 terms: `c, J, P/D` (powers).
const KT: [Term; 8] = [
    term(0.030_550, 0, 0, 0, 0),
    term(-0.148_687, 1, 0, 0, 0),
    term(-0.391_137, 3, 0, 0, 0),
    term(-0.432_612, 1, 1, 0, 0),
    term(0.667_657, 0, 2, 0, 0),
    term(0.285_076, 2, 2, 0, 0),
    term(-0.172_529, 0, 3, 0, 0),
    term(-0.017_283, 1, 6, 0, 0),
];

/// Thrust of the nozzle alone, 18 terms.
const KTN: [Term; 18] = [
    term(0.076_594, 0, 0, 0, 0),
    term(0.075_223, 1, 0, 0, 0),
    term(-0.061_881, 2, 0, 0, 0),
    term(-0.138_094, 3, 0, 0, 0),
    term(-0.370_620, 5, 0, 0, 0),
    term(0.323_447, 6, 0, 0, 0),
    term(-0.271_337, 0, 1, 0, 0),
    term(-0.687_921, 1, 1, 0, 0),
    term(0.225_189, 2, 1, 0, 0),
    term(-0.081_101, 6, 1, 0, 0),
    term(0.666_028, 0, 2, 0, 0),
    term(0.734_285, 2, 2, 0, 0),
    term(-0.202_467, 0, 3, 0, 0),
    term(-0.542_490, 2, 3, 0, 0),
    term(-0.016_149, 6, 3, 0, 0),
    term(0.099_819, 3, 4, 0, 0),
    term(0.030_084, 1, 5, 0, 0),
    term(-0.001_876, 2, 6, 0, 0),
];

/// Torque, 10 terms.
const KQ: [Term; 10] = [
    term(0.006_735, 0, 0, 0, 0),
    term(-0.016_306, 2, 0, 0, 0),
    term(-0.007_244, 4, 0, 0, 0),
    term(-0.024_012, 2, 1, 0, 0),
    term(0.005_193, 2, 2, 0, 0),
    term(0.046_605, 0, 3, 0, 0),
    term(-0.007_366, 0, 4, 0, 0),
    term(-0.001_730, 0, 6, 0, 0),
    term(-0.000_337, 1, 6, 0, 0),
    term(0.000_861, 2, 6, 0, 0),
];
