//! Flat-faced segmental sections: the Gawn-Burrill data as fitted by Blount & Hubble, the second fit beside it for the error.

use super::polynomial::{Polynomials, Powers, Term, held, term, within};
use super::stretch::{inside, stretch};
use super::{Spread, bseries, radojcic};
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};

/// The base fit of the flat-faced series.
pub const METHOD: Method = Method {
    name: "blount-hubble-1981",
    quantity: "thrust and torque coefficients KT, KQ of flat-faced screws over the advance ratio J",
    formula: "KT = sum c J^s (P/D)^t (AE/A0)^u Z^v (39 terms), KQ likewise (47); terms with Z are those of the B-series",
    range: "Z 3, AE/A0 0.5 to 1.1, P/D 0.6 to 1.4 here. The publication says 2.0, but from 1.6 its efficiency rises with blade \
            area and at 2.0 it exceeds 1, so that the curves are stretched from 1.4",
    error: "4 to 20 % by pitch and area: its disagreement with the second fit, Radojcic 1988",
    source: "D. L. Blount & E. N. Hubble 1981, Sizing segmental section commercially available propellers for small craft, SNAME \
             Propellers '81",
    trust: Trust::OneCopy,
};

/// Pitch ratios at which the fit is used as it is.
pub const PITCH_RATIOS: (f64, f64) = (0.6, 1.4);
/// Expanded area ratios of the data.
pub const AREA_RATIOS: (f64, f64) = (0.5, 1.1);

/// How far the polynomials are followed in area. With many blades and much area the borrowed blade terms run away.
const fn followed(blades: u8) -> (f64, f64) {
    match blades {
        0..=4 => (0.40, 1.15),
        5 => (0.40, 1.00),
        _ => (0.40, 0.85),
    }
}

/// The polynomials as published, wherever they are asked.
#[must_use]
pub fn published(pitch_ratio: f64, expanded_area_ratio: f64, blades: u8) -> Polynomials {
    let powers = Powers::new(pitch_ratio, expanded_area_ratio, f64::from(blades));
    Polynomials { kt: powers.reduce(&KT), kq: powers.reduce(&KQ) }
}

/// The series for one propeller, kept where the polynomials make sense, with notes when that moved them.
///
/// The data are of three blades. Another number is taken through the B-series ratio of thrust and of torque at the same pitch
/// and area, at `USUAL_LOADING`: the published terms with `Z` add the B-series difference instead, which on the larger
/// flat-faced torque puts four blades before two at equal load, against what the trade knows.
///
/// No effect of the Reynolds number: the fit does not say at which it holds.
#[must_use]
pub fn reduce(pitch_ratio: f64, expanded_area_ratio: f64, blades: u8) -> Noted<Polynomials> {
    let z = blades.clamp(2, 7);
    let follow = followed(z);
    let area = held(expanded_area_ratio, follow.0, follow.1);
    let pitch = inside(pitch_ratio, PITCH_RATIOS);
    let mut notes = Notes::NONE;
    notes.add_if(z != blades, Note::BladesOutsideSeries);
    notes.add_if(z != 3, Note::FlatFacedBladesBorrowed);
    notes.add_if(!within(expanded_area_ratio, AREA_RATIOS), Note::AreaRatioOutsideSeries);
    notes.add_if(!within(pitch_ratio, PITCH_RATIOS), Note::PitchRatioOutsideSeries);
    let mut sum = published(pitch, area, 3);
    if z != 3 {
        let (these, three) = (bseries::published(pitch, area, z), bseries::published(pitch, area, 3));
        let j = USUAL_LOADING * pitch;
        let ratio = |these: f64, three: f64| if three > 0.0 && these > 0.0 { these / three } else { 1.0 };
        let thrust = ratio(these.thrust(j), three.thrust(j));
        let torque = ratio(these.torque(j), three.torque(j));
        sum = Polynomials { kt: sum.kt.map(|c| c * thrust), kq: sum.kq.map(|c| c * torque) };
    }
    Noted::new(stretch(sum, pitch_ratio, pitch), notes)
}

/// `J/(P/D)` at which the B-series ratio between blade numbers is taken: between cruising and full load.
const USUAL_LOADING: f64 = 0.6;

/// The error of the fit at a pitch ratio and expanded area ratio, as the standard deviation of the logarithm of thrust and torque.
///
/// It is the root mean square of the disagreement between this fit and [`radojcic`], three blades, at five loadings
/// (`J/(P/D)` 0.4 to 0.8), and not less than that of the B-series. Outside the range both share, the value at its edge.
#[must_use]
pub fn spread(pitch_ratio: f64, expanded_area_ratio: f64) -> Spread {
    let pitch = held(pitch_ratio, 0.8, 1.4);
    let area = held(expanded_area_ratio, 0.5, 1.1);
    let here = published(pitch, area, 3);
    let there = radojcic::published(pitch, radojcic::developed_area_ratio(area, 3));
    let (mut thrust, mut torque) = (0.0, 0.0);
    for slip in [0.4, 0.5, 0.6, 0.7, 0.8] {
        let j = slip * pitch;
        thrust += (there.thrust(j) / here.thrust(j)).ln().powi(2) / 5.0;
        torque += (there.torque(j) / here.torque(j)).ln().powi(2) / 5.0;
    }
    Spread {
        thrust: f64::sqrt(thrust).max(bseries::SPREAD.thrust),
        torque: f64::sqrt(torque).max(bseries::SPREAD.torque),
        reason: "disagreement of two published fits to the flat-faced tests at this pitch and area",
    }
}

/// Thrust, 39 terms: `c, J, P/D, AE/A0, Z` (powers). Term `J² Z²` as printed (the B-series has 0.002 598 3).
const KT: [Term; 39] = [
    term(-0.055_863_63, 0, 0, 0, 0),
    term(-0.217_301_09, 1, 0, 0, 0),
    term(0.260_531_4, 0, 1, 0, 0),
    term(0.158_114, 0, 2, 0, 0),
    term(-0.147_581, 2, 0, 1, 0),
    term(-0.481_497, 1, 1, 1, 0),
    term(0.378_122_78, 0, 2, 1, 0),
    term(0.014_404_3, 0, 0, 0, 1),
    term(-0.053_005_4, 2, 0, 0, 1),
    term(0.014_348_1, 0, 1, 0, 1),
    term(0.060_682_6, 1, 1, 0, 1),
    term(-0.012_589_4, 0, 0, 1, 1),
    term(0.010_968_9, 1, 0, 1, 1),
    term(-0.133_698, 0, 3, 0, 0),
    term(0.002_411_57, 0, 6, 0, 0),
    term(-0.000_530_02, 2, 6, 0, 0),
    term(0.168_496, 3, 0, 1, 0),
    term(0.026_345_42, 0, 0, 2, 0),
    term(0.043_601_36, 2, 0, 2, 0),
    term(-0.031_184_93, 3, 0, 2, 0),
    term(0.012_492_15, 1, 6, 2, 0),
    term(-0.006_482_72, 2, 6, 2, 0),
    term(-0.008_417_28, 0, 3, 0, 1),
    term(0.016_842_4, 1, 3, 0, 1),
    term(-0.001_022_96, 3, 3, 0, 1),
    term(-0.031_779_1, 0, 3, 1, 1),
    term(0.018_604, 1, 0, 2, 1),
    term(-0.004_107_98, 0, 2, 2, 1),
    term(-0.000_606_848, 0, 0, 0, 2),
    term(-0.004_981_9, 1, 0, 0, 2),
    term(0.002_596_3, 2, 0, 0, 2),
    term(-0.000_560_528, 3, 0, 0, 2),
    term(-0.001_636_52, 1, 2, 0, 2),
    term(-0.000_328_787, 1, 6, 0, 2),
    term(0.000_116_502, 2, 6, 0, 2),
    term(0.000_690_904, 0, 0, 1, 2),
    term(0.004_217_49, 0, 3, 1, 2),
    term(0.000_056_522_9, 3, 6, 1, 2),
    term(-0.001_465_64, 0, 3, 2, 2),
];

/// Torque, 47 terms. Term `J³ AE/A0 Z` as printed (the B-series has 0.003 598 5).
const KQ: [Term; 47] = [
    term(0.005_158_98, 0, 0, 0, 0),
    term(0.016_066_68, 2, 0, 0, 0),
    term(-0.044_115_3, 1, 1, 0, 0),
    term(0.006_822_23, 0, 2, 0, 0),
    term(-0.040_881_1, 0, 1, 1, 0),
    term(-0.077_329_67, 1, 1, 1, 0),
    term(-0.088_538_1, 2, 1, 1, 0),
    term(0.169_375_02, 0, 2, 1, 0),
    term(-0.003_708_71, 1, 0, 0, 1),
    term(0.005_136_96, 0, 1, 0, 1),
    term(0.020_944_9, 1, 1, 0, 1),
    term(0.004_743_19, 2, 1, 0, 1),
    term(-0.007_234_08, 2, 0, 1, 1),
    term(0.004_383_88, 1, 1, 1, 1),
    term(-0.026_940_3, 0, 2, 1, 1),
    term(0.055_808_2, 3, 0, 1, 0),
    term(0.016_188_6, 0, 3, 1, 0),
    term(0.003_180_86, 1, 3, 1, 0),
    term(0.012_904_35, 0, 0, 2, 0),
    term(0.024_450_84, 1, 0, 2, 0),
    term(0.007_006_43, 3, 0, 2, 0),
    term(-0.027_190_46, 0, 1, 2, 0),
    term(-0.016_645_86, 3, 1, 2, 0),
    term(0.030_044_9, 2, 2, 2, 0),
    term(-0.033_697_49, 0, 3, 2, 0),
    term(-0.003_500_24, 0, 6, 2, 0),
    term(-0.010_685_4, 3, 0, 0, 1),
    term(0.001_109_03, 3, 3, 0, 1),
    term(-0.000_313_912, 0, 6, 0, 1),
    term(0.003_589_5, 3, 0, 1, 1),
    term(-0.001_421_21, 0, 6, 1, 1),
    term(-0.003_836_37, 1, 0, 2, 1),
    term(0.012_680_3, 0, 2, 2, 1),
    term(-0.003_182_78, 2, 3, 2, 1),
    term(0.003_342_68, 0, 6, 2, 1),
    term(-0.001_834_91, 1, 1, 0, 2),
    term(0.000_112_451, 3, 2, 0, 2),
    term(-0.000_029_722_8, 3, 6, 0, 2),
    term(0.000_269_551, 1, 0, 1, 2),
    term(0.000_832_65, 2, 0, 1, 2),
    term(0.001_553_34, 0, 2, 1, 2),
    term(0.000_302_683, 0, 6, 1, 2),
    term(-0.000_184_3, 0, 0, 2, 2),
    term(-0.000_425_399, 0, 3, 2, 2),
    term(0.000_086_924_3, 3, 3, 2, 2),
    term(-0.000_465_9, 0, 6, 2, 2),
    term(0.000_055_419_4, 1, 6, 2, 2),
];
