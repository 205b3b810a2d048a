//! Flat-faced segmental sections, second fit: the KCA series by Radojcic, open water and cavitating.
//!
//! Used to know the error of the first fit ([`super::flatfaced`]), for listing, and as the ground of the loss of thrust when
//! cavitating ([`crate::limits::breakdown`]).

use super::polynomial::{Polynomials, Powers, Term, term, within};
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};

/// The fit in open water.
pub const METHOD: Method = Method {
    name: "radojcic-1988",
    quantity: "thrust and torque coefficients KT, KQ of three-bladed flat-faced screws over the advance ratio J",
    formula: "KT = sum c J^s (P/D)^t (AD/A0)^u (16 terms), KQ likewise (17 terms)",
    range: "Z 3, AD/A0 0.5 to 1.1, P/D 0.8 to 1.8, J above 0.3 to 0.5; torque is wrong at low J and at P/D 0.6",
    error: "4 to 20 %: see blount-hubble-1981. Two public copies of the coefficients agree; no printed curve value was at hand",
    source: "D. Radojcic 1988, Mathematical model of segmental section propeller series for open-water and cavitating conditions \
             applicable in CAD, SNAME Propellers '88",
    trust: Trust::Checked,
};

/// What cavitation takes away.
pub const METHOD_CAVITATING: Method = Method {
    name: "radojcic-1988-cavitating",
    quantity: "loss of KT and KQ of three-bladed flat-faced screws when cavitating",
    formula: "dK = sum c (AD/A0)^s sigma^t KT^u (P/D)^v, subtracted; nothing from the first sigma where dKT vanishes",
    range: "as radojcic-1988; sigma on the speed at 0.7 R, about 0.05 to 0.25",
    error: "unknown. That dK is subtracted and which sigma it takes is inferred from its values: the copy did not say",
    source: "D. Radojcic 1988",
    trust: Trust::OneCopy,
};

/// Pitch ratios of the fit.
pub const PITCH_RATIOS: (f64, f64) = (0.8, 1.8);
/// Developed area ratios of the fit.
pub const DEVELOPED_AREA_RATIOS: (f64, f64) = (0.5, 1.1);

/// Expanded area ratio of a developed one: `AE/A0 = 0.34 (AD/A0) (2.75 + (AD/A0)/Z)`, as given with the KCA series.
#[must_use]
pub fn expanded_area_ratio(developed: f64, blades: u8) -> f64 {
    0.34 * developed * (2.75 + developed / f64::from(blades.max(1)))
}

/// Developed area ratio of an expanded one: the inverse of [`expanded_area_ratio`].
#[must_use]
pub fn developed_area_ratio(expanded: f64, blades: u8) -> f64 {
    let z = f64::from(blades.max(1));
    0.5 * z * ((2.75 * 2.75 + 4.0 * expanded.max(0.0) / (0.34 * z)).sqrt() - 2.75)
}

/// The polynomials as published, three blades, wherever they are asked. `developed` is `AD/A0`, not `AE/A0`.
#[must_use]
pub fn published(pitch_ratio: f64, developed: f64) -> Polynomials {
    let powers = Powers::new(pitch_ratio, developed, 3.0);
    Polynomials { kt: powers.reduce(&KT), kq: powers.reduce(&KQ) }
}

/// As [`published`], with notes when pitch or area lie outside the fit.
#[must_use]
pub fn reduce(pitch_ratio: f64, developed: f64) -> Noted<Polynomials> {
    let mut notes = Notes::NONE;
    notes.add_if(!within(pitch_ratio, PITCH_RATIOS), Note::PitchRatioOutsideSeries);
    notes.add_if(!within(developed, DEVELOPED_AREA_RATIOS), Note::AreaRatioOutsideSeries);
    Noted::new(published(pitch_ratio, developed), notes)
}

/// The loss polynomials `(dKT, dKQ)` as published, without the rule where they end.
///
/// `sigma` is the cavitation number on the speed at 0.7 R, `kt` the thrust coefficient at atmospheric pressure at the same `J`.
#[must_use]
pub fn published_loss(pitch_ratio: f64, developed: f64, sigma: f64, kt: f64) -> (f64, f64) {
    let sum = |terms: &[Term]| {
        terms
            .iter()
            .map(|x| {
                x.c * developed.powi(i32::from(x.s))
                    * sigma.powi(i32::from(x.t))
                    * kt.powi(i32::from(x.u))
                    * pitch_ratio.powi(i32::from(x.v))
            })
            .sum::<f64>()
    };
    (sum(&LOST_KT), sum(&LOST_KQ))
}

/// The loss `(dKT, dKQ)` to subtract, both at least nothing and at most all.
///
/// From the first `sigma` at which the thrust polynomial vanishes upward it turns up again without meaning, so nothing is lost
/// there. That `sigma` is searched in steps of 0.0025 from 0.05, where the data begin.
#[must_use]
pub fn loss(pitch_ratio: f64, developed: f64, sigma: f64, kt: f64, kq: f64) -> (f64, f64) {
    let ended = (0..)
        .map(|i| 0.05 + 0.0025 * f64::from(i))
        .take_while(|s| *s < sigma.min(0.5))
        .chain([sigma])
        .any(|s| published_loss(pitch_ratio, developed, s, kt).0 <= 0.0);
    if ended || sigma.is_nan() || sigma >= 0.5 {
        return (0.0, 0.0);
    }
    let (thrust, torque) = published_loss(pitch_ratio, developed, sigma, kt);
    (thrust.clamp(0.0, kt.max(0.0)), torque.clamp(0.0, kq.max(0.0)))
}

/// Thrust, 16 terms: `c, J, P/D, AD/A0` (powers).
const KT: [Term; 16] = [
    term(0.119_385_2, 0, 0, 0, 0),
    term(-0.657_468_2, 1, 0, 0, 0),
    term(0.349_329_4, 0, 1, 0, 0),
    term(0.411_936_6, 1, 1, 0, 0),
    term(-0.199_192_7, 1, 2, 0, 0),
    term(5.863_051e-2, 2, 2, 0, 0),
    term(-1.107_735e-2, 3, 2, 0, 0),
    term(-0.134_167_9, 0, 0, 1, 0),
    term(0.262_883_9, 1, 0, 1, 0),
    term(-0.521_702_3, 1, 1, 1, 0),
    term(0.297_072_8, 0, 2, 1, 0),
    term(6.152_58e-2, 3, 1, 2, 0),
    term(-2.470_84e-2, 3, 2, 2, 0),
    term(-4.080_166e-3, 0, 6, 1, 0),
    term(4.154_201e-3, 1, 6, 1, 0),
    term(-1.136_452e-3, 0, 6, 2, 0),
];

/// Torque, 17 terms.
const KQ: [Term; 17] = [
    term(1.541_166e-3, 0, 0, 0, 0),
    term(0.109_168_8, 1, 0, 0, 0),
    term(-0.310_242, 2, 0, 0, 0),
    term(0.154_742_8, 3, 0, 0, 0),
    term(-4.370_615e-2, 0, 1, 0, 0),
    term(0.249_029_5, 2, 1, 0, 0),
    term(-0.159_460_2, 3, 1, 0, 0),
    term(8.536_747e-2, 0, 2, 0, 0),
    term(-9.512_163e-2, 1, 2, 0, 0),
    term(-9.320_307e-3, 2, 2, 0, 0),
    term(3.287_805e-2, 3, 2, 0, 0),
    term(5.496_034e-2, 1, 0, 1, 0),
    term(-4.865_063e-2, 0, 1, 1, 0),
    term(-0.106_25, 1, 1, 1, 0),
    term(8.529_955e-2, 0, 2, 1, 0),
    term(1.101_023e-2, 3, 0, 2, 0),
    term(-3.151_756e-3, 2, 2, 2, 0),
];

/// Thrust lost, 20 terms: `c, AD/A0, σ, KT, P/D` (powers).
const LOST_KT: [Term; 20] = [
    term(6.688_144e-2, 0, 0, 0, 0),
    term(3.579_195, 0, 0, 2, 0),
    term(-5.700_35, 0, 0, 3, 0),
    term(-1.359_994, 1, 1, 0, 0),
    term(-8.111_903, 1, 1, 1, 0),
    term(4.770_548e1, 1, 1, 3, 0),
    term(-2.313_208e-1, 2, 1, 0, 0),
    term(-1.387_858e1, 2, 1, 2, 0),
    term(4.992_201e1, 2, 1, 3, 0),
    term(-7.161_204e1, 2, 1, 4, 0),
    term(1.721_436e1, 2, 2, 0, 0),
    term(2.322_218e1, 2, 2, 1, 0),
    term(-1.156_897e2, 2, 2, 2, 0),
    term(5.014_178e-2, 0, 0, 0, 2),
    term(-6.555_364e-2, 0, 0, 1, 2),
    term(2.852_867e-1, 1, 0, 1, 1),
    term(-8.081_759e-1, 1, 1, 0, 1),
    term(8.671_852e1, 3, 2, 5, 0),
    term(-3.727_835e1, 3, 3, 0, 0),
    term(8.043_97e1, 3, 3, 1, 0),
];

/// Torque lost, 18 terms.
const LOST_KQ: [Term; 18] = [
    term(4.024_475e-3, 0, 0, 0, 0),
    term(1.202_447e-1, 0, 0, 2, 0),
    term(-9.836_07e-2, 1, 1, 0, 0),
    term(-8.318_84e-1, 1, 1, 1, 0),
    term(5.098_177, 1, 1, 3, 0),
    term(-5.192_839e-1, 2, 1, 1, 0),
    term(2.641_109, 2, 2, 0, 0),
    term(-1.688_934e1, 2, 2, 3, 0),
    term(4.928_417e-2, 0, 0, 1, 1),
    term(1.024_274e-2, 0, 0, 0, 2),
    term(-1.194_521e-1, 0, 1, 1, 1),
    term(5.498_736e-2, 1, 0, 1, 1),
    term(-2.488_235e-1, 1, 1, 0, 1),
    term(-5.832_879e-1, 0, 0, 5, 0),
    term(1.503_955e-1, 0, 3, 0, 0),
    term(-3.316_121, 3, 3, 0, 0),
    term(3.890_792, 3, 3, 1, 0),
    term(1.682_032e1, 3, 3, 3, 0),
];
