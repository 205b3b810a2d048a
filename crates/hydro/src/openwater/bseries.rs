//! The Wageningen B-series: airfoil sections, 2 to 7 blades.

use super::Spread;
use super::polynomial::{Polynomials, Powers, Term, held, powers, term, within};
use super::stretch::{inside, stretch};
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};

/// The series at a Reynolds number of two million.
pub const METHOD: Method = Method {
    name: "b-series-1975",
    quantity: "thrust and torque coefficients KT, KQ over the advance ratio J",
    formula: "KT = sum c J^s (P/D)^t (AE/A0)^u Z^v (39 terms), KQ likewise (47 terms)",
    range: "Z 2 to 7, P/D 0.5 to 1.4, AE/A0 by blade number (3: 0.35 to 0.80, 4: 0.40 to 1.00), J from 0 to zero thrust",
    error: "3 % thrust, 2 % torque (one sd): two published fits of the same screw, B4-70, differ by 2 to 5 %",
    source: "M. W. C. Oosterveld & P. van Oossanen 1975, Further computer-analyzed data of the Wageningen B-screw series, Int. \
             Shipb. Progress 22; M. M. Bernitsas, D. Ray & P. Kinley 1981, Univ. of Michigan report 237, tables 1 and 2",
    trust: Trust::Checked,
};

/// The effect of the Reynolds number.
pub const METHOD_SCALE: Method = Method {
    name: "b-series-reynolds",
    quantity: "change of KT and KQ with the blade Reynolds number",
    formula: "dK = sum c L^l J^s (P/D)^t (AE/A0)^u Z^v, L = log10 Re - 0.301 (9 and 13 terms)",
    range: "Re at 0.75 R from 2e6 to 2e9; nothing is applied below",
    error: "at 2e6, where it should vanish, up to 0.0008 in KT and 0.00014 in KQ, mostly a tenth of that. Several copies of the coefficients agree; no printed curve value was at hand",
    source: "M. W. C. Oosterveld & P. van Oossanen 1975; M. M. Bernitsas, D. Ray & P. Kinley 1981",
    trust: Trust::Checked,
};

/// Pitch ratios the series was tested at.
pub const PITCH_RATIOS: (f64, f64) = (0.5, 1.4);
/// Reynolds number of the polynomials, at 0.75 R.
pub const REYNOLDS: f64 = 2e6;

/// Error of the series, as the standard deviation of the logarithm of thrust and torque.
///
/// The four-quadrant fit and the polynomials describe the same screw (B4-70, `P/D` 1.0) and differ by 2.1, 4.5 and 4.1 % in
/// thrust and 1.4, 1.8 and 2.1 % in torque at `J` 0, 0.4 and 0.8. A propeller from stock differs from the series besides;
/// that belongs to the propeller, not to the series.
pub const SPREAD: Spread =
    Spread { thrust: 0.03, torque: 0.02, reason: "disagreement of two published fits to the same screw, B4-70" };

/// One term of the Reynolds effect; `l` is the power of `L`.
struct ScaleTerm {
    l: u8,
    of: Term,
}

const fn scale(c: f64, l: u8, s: u8, t: u8, u: u8, v: u8) -> ScaleTerm {
    ScaleTerm { l, of: term(c, s, t, u, v) }
}

/// Expanded area ratios tested with a blade number (2 to 7; others count as the nearest).
///
/// Source: Oosterveld & van Oossanen 1975, table of the series' screws. Also the area ratios a propeller of this blade number
/// usually has. Outside them the polynomial extrapolates.
#[must_use]
pub const fn area_ratios(blades: u8) -> (f64, f64) {
    match blades {
        0..=2 => (0.30, 0.38),
        3 => (0.35, 0.80),
        4 => (0.40, 1.00),
        5 => (0.45, 1.05),
        6 => (0.50, 0.80),
        _ => (0.55, 0.85),
    }
}

/// How far the polynomials are followed beyond [`area_ratios`]: as long as thrust and torque fall steadily over `J` and the
/// efficiency goes on falling with area (looked at for every blade number). Stock two-bladed propellers lie there.
const fn followed(blades: u8) -> (f64, f64) {
    match blades {
        0..=2 => (0.30, 0.55),
        3 => (0.30, 0.90),
        4 => (0.35, 1.05),
        5 => (0.40, 1.05),
        6 => (0.45, 0.90),
        _ => (0.50, 0.90),
    }
}

/// The polynomials as published, at `Re = 2e6`, wherever they are asked.
///
/// `pitch_ratio`, `expanded_area_ratio` and `blades` are not checked: see [`reduce`] for that.
#[must_use]
pub fn published(pitch_ratio: f64, expanded_area_ratio: f64, blades: u8) -> Polynomials {
    let powers = Powers::new(pitch_ratio, expanded_area_ratio, f64::from(blades));
    Polynomials { kt: powers.reduce(&KT), kq: powers.reduce(&KQ) }
}

/// The published change of both coefficients at a Reynolds number (at 0.75 R, the full number), above 2e6.
///
/// Returned as polynomials to be added. Below 2e6 they are nothing; above 2e9 the value there.
#[must_use]
pub fn scale_effect(pitch_ratio: f64, expanded_area_ratio: f64, blades: u8, reynolds: f64) -> Polynomials {
    let mut change = Polynomials { kt: [0.0; 8], kq: [0.0; 8] };
    if reynolds.is_nan() || reynolds < REYNOLDS {
        return change;
    }
    let product = Powers::new(pitch_ratio, expanded_area_ratio, f64::from(blades));
    let l: [f64; 4] = powers(reynolds.min(2e9).log10() - 0.301);
    let sum = |terms: &[ScaleTerm], k: &mut [f64; 8]| {
        for ScaleTerm { l: power, of } in terms {
            k[usize::from(of.s & 7)] += of.c * l[usize::from(power & 3)] * product.product(of.t, of.u, of.v);
        }
    };
    sum(&D_KT, &mut change.kt);
    sum(&D_KQ, &mut change.kq);
    change
}

/// The series for one propeller at a Reynolds number, kept where the polynomials make sense, with notes when that moved them.
#[must_use]
pub fn reduce(pitch_ratio: f64, expanded_area_ratio: f64, blades: u8, reynolds: f64) -> Noted<Polynomials> {
    let z = blades.clamp(2, 7);
    let tested = area_ratios(z);
    let follow = followed(z);
    let area = held(expanded_area_ratio, follow.0, follow.1);
    let pitch = inside(pitch_ratio, PITCH_RATIOS);
    let mut notes = Notes::NONE;
    notes.add_if(z != blades, Note::BladesOutsideSeries);
    notes.add_if(!within(expanded_area_ratio, tested), Note::AreaRatioOutsideSeries);
    notes.add_if(!within(pitch_ratio, PITCH_RATIOS), Note::PitchRatioOutsideSeries);
    notes.add_if(z == 2 && area < 0.35 && pitch > 0.8, Note::TwoBladedFitOptimistic);

    let mut sum = published(pitch, area, z);
    if reynolds >= REYNOLDS {
        let change = scale_effect(pitch, area, z, reynolds);
        for i in 0..3 {
            sum.kt[i] += change.kt[i];
            sum.kq[i] += change.kq[i];
        }
    }
    Noted::new(stretch(sum, pitch_ratio, pitch), notes)
}

/// Thrust, 39 terms: `c, J, P/D, AE/A0, Z` (powers), at a Reynolds number of 2e6.
const KT: [Term; 39] = [
    term(0.008_804_96, 0, 0, 0, 0),
    term(-0.204_554, 1, 0, 0, 0),
    term(0.166_351, 0, 1, 0, 0),
    term(0.158_114, 0, 2, 0, 0),
    term(-0.147_581, 2, 0, 1, 0),
    term(-0.481_497, 1, 1, 1, 0),
    term(0.415_437, 0, 2, 1, 0),
    term(0.014_404_3, 0, 0, 0, 1),
    term(-0.053_005_4, 2, 0, 0, 1),
    term(0.014_348_1, 0, 1, 0, 1),
    term(0.060_682_6, 1, 1, 0, 1),
    term(-0.012_589_4, 0, 0, 1, 1),
    term(0.010_968_9, 1, 0, 1, 1),
    term(-0.133_698, 0, 3, 0, 0),
    term(0.006_384_07, 0, 6, 0, 0),
    term(-0.001_327_18, 2, 6, 0, 0),
    term(0.168_496, 3, 0, 1, 0),
    term(-0.050_721_4, 0, 0, 2, 0),
    term(0.085_455_9, 2, 0, 2, 0),
    term(-0.050_447_5, 3, 0, 2, 0),
    term(0.010_465, 1, 6, 2, 0),
    term(-0.006_482_72, 2, 6, 2, 0),
    term(-0.008_417_28, 0, 3, 0, 1),
    term(0.016_842_4, 1, 3, 0, 1),
    term(-0.001_022_96, 3, 3, 0, 1),
    term(-0.031_779_1, 0, 3, 1, 1),
    term(0.018_604, 1, 0, 2, 1),
    term(-0.004_107_98, 0, 2, 2, 1),
    term(-0.000_606_848, 0, 0, 0, 2),
    term(-0.004_981_9, 1, 0, 0, 2),
    term(0.002_598_3, 2, 0, 0, 2),
    term(-0.000_560_528, 3, 0, 0, 2),
    term(-0.001_636_52, 1, 2, 0, 2),
    term(-0.000_328_787, 1, 6, 0, 2),
    term(0.000_116_502, 2, 6, 0, 2),
    term(0.000_690_904, 0, 0, 1, 2),
    term(0.004_217_49, 0, 3, 1, 2),
    term(0.000_056_522_9, 3, 6, 1, 2),
    term(-0.001_465_64, 0, 3, 2, 2),
];

/// Torque, 47 terms. The term `J³ (P/D)³ Z` is 0.001 109 03; some prints have lost a digit there (0.001 090 3).
const KQ: [Term; 47] = [
    term(0.003_793_68, 0, 0, 0, 0),
    term(0.008_865_23, 2, 0, 0, 0),
    term(-0.032_241, 1, 1, 0, 0),
    term(0.003_447_78, 0, 2, 0, 0),
    term(-0.040_881_1, 0, 1, 1, 0),
    term(-0.108_009, 1, 1, 1, 0),
    term(-0.088_538_1, 2, 1, 1, 0),
    term(0.188_561, 0, 2, 1, 0),
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
    term(0.015_896, 0, 0, 2, 0),
    term(0.047_172_9, 1, 0, 2, 0),
    term(0.019_628_3, 3, 0, 2, 0),
    term(-0.050_278_2, 0, 1, 2, 0),
    term(-0.030_055, 3, 1, 2, 0),
    term(0.041_712_2, 2, 2, 2, 0),
    term(-0.039_772_2, 0, 3, 2, 0),
    term(-0.003_500_24, 0, 6, 2, 0),
    term(-0.010_685_4, 3, 0, 0, 1),
    term(0.001_109_03, 3, 3, 0, 1),
    term(-0.000_313_912, 0, 6, 0, 1),
    term(0.003_598_5, 3, 0, 1, 1),
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

/// Change of thrust, 9 terms: `c, L, J, P/D, AE/A0, Z` (powers).
const D_KT: [ScaleTerm; 9] = [
    scale(0.000_353_485, 0, 0, 0, 0, 0),
    scale(-0.003_337_58, 0, 2, 0, 1, 0),
    scale(-0.004_781_25, 0, 1, 1, 1, 0),
    scale(0.000_257_792, 2, 2, 0, 1, 0),
    scale(0.000_064_319_2, 1, 2, 6, 0, 0),
    scale(-0.000_011_063_6, 2, 2, 6, 0, 0),
    scale(-0.000_027_630_5, 2, 2, 0, 1, 1),
    scale(0.000_095_4, 1, 1, 1, 1, 1),
    scale(0.000_003_204_9, 1, 1, 3, 1, 2),
];

/// Change of torque, 13 terms.
const D_KQ: [ScaleTerm; 13] = [
    scale(-0.000_591_412, 0, 0, 0, 0, 0),
    scale(0.006_968_98, 0, 0, 1, 0, 0),
    scale(-0.000_066_665_4, 0, 0, 6, 0, 1),
    scale(0.016_081_8, 0, 0, 0, 2, 0),
    scale(-0.000_938_091, 1, 0, 1, 0, 0),
    scale(-0.000_595_93, 1, 0, 2, 0, 0),
    scale(0.000_078_209_9, 2, 0, 2, 0, 0),
    scale(0.000_005_219_9, 1, 2, 0, 1, 1),
    scale(-0.000_000_885_28, 2, 1, 1, 1, 1),
    scale(0.000_023_017_1, 1, 0, 6, 0, 1),
    scale(-0.000_001_843_41, 2, 0, 6, 0, 1),
    scale(-0.004_002_52, 1, 0, 0, 2, 0),
    scale(0.000_220_915, 2, 0, 0, 2, 0),
];
