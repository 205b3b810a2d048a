//! What paint, slime and growth add to friction, and how fast they come.

use super::friction::{SCHOENHERR, schoenherr_y};
use crate::source::{Method, Trust};

/// Added friction by the similarity shift.
pub const METHOD: Method = Method {
    name: "granville-shift",
    quantity: "added friction coefficient dCF of a rough hull",
    formula: "CF_rough(Re) = CF_smooth(Re / exp(kappa dU+)), dU+ = ln(1 + 0.26 k+)/kappa, k+ = ks V sqrt(cf/2)/nu at the trailing edge",
    range: "any length and speed; ks 30 um .. 10 mm as long as it stays a small part of the boundary layer",
    error: "with two fitted shares of friction it follows the ten table cells of Schultz 2007 from ks 100 um within 1.3 \
            points; about 15 % of dCF, far less than what is not known of ks itself; as-applied paint (30 um) is \
            overstated two- to three-fold because paint has a roughness function of its own",
    source: "P. S. Granville 1958, The frictional resistance and turbulent boundary layer of rough surfaces, J. Ship \
             Research 2; roughness function of Colebrook's type; smooth line Schoenherr 1932",
    trust: Trust::Checked,
};

/// Equivalent roughness of growth grades.
pub const METHOD_GRADES: Method = Method {
    name: "schultz-2007",
    quantity: "equivalent sand roughness ks of hull conditions, m",
    formula: "table: 30 um painted, 100 light slime, 300 heavy slime, 1 mm small shell or weed, 3 mm, 10 mm heavy shell",
    range: "naval coatings and fouling ratings; the drag percentages of the paper are for one 124 m frigate and are not used",
    error: "a grade spans about a factor of three in ks",
    source: "M. P. Schultz 2007, Effects of coating roughness and biofouling on ship resistance and powering, Biofouling \
             23(5), 331-341, table values from memory, consistent with the similarity shift",
    trust: Trust::Memory,
};

/// Growth against time afloat.
pub const METHOD_GROWTH: Method = Method {
    name: "growth-afloat",
    quantity: "equivalent sand roughness ks after months afloat, low, middle and high, m",
    formula: "log-linear table over months times 2^((T - 15)/10)",
    range: "0 .. 36 months at 15 C, sea water",
    error: "the span low..high is the honest answer: paint, place and use decide",
    source: "common practice, no source",
    trust: Trust::CommonPractice,
};

/// Blade roughness grades.
pub const METHOD_BLADES: Method = Method {
    name: "blade-roughness",
    quantity: "roughness height kp of propeller blades, m",
    formula: "new 30 um; worn 100 um; slime 300 um; shell 1 mm",
    range: "for the drag term of the ITTC 1978 blade correction",
    error: "a factor of three",
    source: "30 um: ITTC 1978 performance prediction method; the others common practice, no source",
    trust: Trust::CommonPractice,
};

/// Roughness a freshly painted hull has, m; what the correlation allowance of ship methods already contains.
pub const PAINTED: f64 = 30e-6;
/// `√(0.558/2)`: wall speed from Schoenherr's local friction.
const WALL: f64 = 0.528_204_5;
/// Colebrook-type roughness function: shift factor per unit of `k+`.
const SHIFT: f64 = 0.26;

/// Friction coefficient added by an equivalent sand roughness, on wetted area and dynamic pressure; never negative.
///
/// At equal `CF` the rough curve lies at `Re_rough = Re_smooth exp(κ ΔU⁺) = Re_smooth (1 + 0.26 k⁺)`, with
/// `k⁺ = (ks/L) Re √(cf/2)` at the trailing edge and `cf` Schoenherr's local friction. `reynolds` and `length` (m) on
/// the same length, `ks` in m. Solved for `1/√CF` by two Newton steps on a nearly straight function
/// (within 1e-4 of `CF` for a boat, 1e-3 at the extremes).
/// Source: Granville 1958. Zero for a length, speed or roughness that is not positive.
#[must_use]
pub fn added_friction(reynolds: f64, length: f64, ks: f64) -> f64 {
    if !(reynolds > 1e4 && length > 0.0 && ks > 0.0 && reynolds.is_finite()) {
        return 0.0;
    }
    added_friction_at(reynolds.ln(), reynolds, length, ks)
}

/// The same with `ln Re` known and every argument already in order.
pub(crate) fn added_friction_at(ln_re: f64, reynolds: f64, length: f64, ks: f64) -> f64 {
    if !(ks > 0.0 && reynolds > 1e4) {
        return 0.0;
    }
    // Roughness higher than a thousandth of the length is no longer roughness: hold it there.
    let height = (ks / length).min(2e-3) * reynolds * (SHIFT * WALL);
    let smooth = schoenherr_y(ln_re);
    let mut y = smooth;
    for _ in 0..2 {
        let s = y * (0.558 * y + 2.0);
        let q = height / s.sqrt();
        let f = SCHOENHERR * y + (y * y * (1.0 + q)).ln() - ln_re;
        let slope = SCHOENHERR + 2.0 / y - q / (1.0 + q) * (0.558 * y + 1.0) / s;
        y = (y - f / slope).max(2.0);
    }
    (1.0 / (y * y) - 1.0 / (smooth * smooth)).max(0.0)
}

/// What grows on a hull, in the steps of the naval fouling ratings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Growth {
    /// Polished, nothing on it.
    Smooth,
    /// Antifouling as applied.
    Painted,
    /// Worn paint or light slime.
    LightSlime,
    /// Heavy slime.
    HeavySlime,
    /// Small shell or weed.
    SmallShellOrWeed,
    /// Medium shell.
    MediumShell,
    /// Heavy shell.
    HeavyShell,
}

impl Growth {
    /// Every grade, cleanest first.
    pub const ALL: [Growth; 7] = [
        Growth::Smooth,
        Growth::Painted,
        Growth::LightSlime,
        Growth::HeavySlime,
        Growth::SmallShellOrWeed,
        Growth::MediumShell,
        Growth::HeavyShell,
    ];

    /// Equivalent sand roughness `ks`, m. Source: Schultz 2007, table of hull conditions (from memory).
    #[must_use]
    pub const fn roughness(self) -> f64 {
        match self {
            Growth::Smooth => 0.0,
            Growth::Painted => PAINTED,
            Growth::LightSlime => 100e-6,
            Growth::HeavySlime => 300e-6,
            Growth::SmallShellOrWeed => 1e-3,
            Growth::MediumShell => 3e-3,
            Growth::HeavyShell => 10e-3,
        }
    }
}

/// A figure nobody measured, with the span it is believed in (about 80 %).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Low end.
    pub low: f64,
    /// Middle.
    pub middle: f64,
    /// High end.
    pub high: f64,
}

/// Months at 15 °C and `ks` in µm: good paint on a boat that moves; usual paint and use; little paint or lying still.
const AFLOAT: [(f64, [f64; 3]); 7] = [
    (0.0, [20.0, 30.0, 60.0]),
    (1.0, [30.0, 50.0, 150.0]),
    (3.0, [40.0, 100.0, 500.0]),
    (6.0, [60.0, 200.0, 2000.0]),
    (12.0, [100.0, 500.0, 6000.0]),
    (24.0, [200.0, 1500.0, 10000.0]),
    (36.0, [300.0, 3000.0, 15000.0]),
];

/// Equivalent sand roughness (m) of a hull so many months after it was cleaned and painted, in water of a mean
/// temperature in °C. Growth is taken to go twice as fast every 10 °C. Common practice, no source: the span is wide
/// because antifouling, harbour and use decide, and a look under the boat beats it.
#[must_use]
pub fn growth_after(months: f64, celsius: f64) -> Span {
    let celsius = if celsius.is_finite() { celsius.clamp(0.0, 35.0) } else { 15.0 };
    let months = if months.is_finite() { months.max(0.0) } else { 12.0 };
    let (time, last) = (months * ((celsius - 15.0) / 10.0).exp2(), AFLOAT.len() - 1);
    let i = AFLOAT.iter().rposition(|row| row.0 <= time).unwrap_or(0).min(last - 1);
    let ((from, a), (to, b)) = (AFLOAT[i], AFLOAT[i + 1]);
    let t = ((time - from) / (to - from)).clamp(0.0, 1.0);
    let at = |k: usize| 1e-6 * a[k] * (b[k] / a[k]).powf(t);
    Span { low: at(0), middle: at(1), high: at(2) }
}

/// What a propeller's blades look like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum BladeGrade {
    /// New or polished.
    Clean,
    /// Worn, scratched, old paint.
    Worn,
    /// Slime or chalk film.
    Slime,
    /// Barnacles or worm shell.
    Shell,
}

/// Roughness height `kp` of the blades, m: 30 µm new is the ITTC 1978 value, the rest common practice, no source.
#[must_use]
pub const fn blade_roughness(grade: BladeGrade) -> f64 {
    match grade {
        BladeGrade::Clean => 30e-6,
        BladeGrade::Worn => 100e-6,
        BladeGrade::Slime => 300e-6,
        BladeGrade::Shell => 1e-3,
    }
}

#[cfg(test)]
mod tests {
    use super::super::friction::{schoenherr, schoenherr_local};
    use super::*;

    /// The same equations by plain bisection.
    fn bisected(re: f64, length: f64, ks: f64) -> f64 {
        let rest = |cf: f64| {
            let k = ks / length * re * (schoenherr_local(cf) / 2.0).sqrt();
            0.242 / cf.sqrt() * std::f64::consts::LN_10 - cf.ln() + (1.0 + 0.26 * k).ln() - re.ln()
        };
        let (mut low, mut high) = (1e-4f64, 0.2f64);
        for _ in 0..200 {
            let mid = (low * high).sqrt();
            if rest(mid) > 0.0 { low = mid } else { high = mid }
        }
        low - schoenherr(re)
    }

    #[test]
    fn newton_agrees_with_bisection() {
        for re in [1e6, 1e7, 1e8, 1e9] {
            for ks in [10e-6, 30e-6, 100e-6, 1e-3, 10e-3] {
                let (fast, slow) = (added_friction(re, 10.0, ks), bisected(re, 10.0, ks));
                let limit = if ks / 10.0 < 5e-4 { 1e-4 } else { 7e-4 };
                assert!((fast - slow).abs() < limit * (schoenherr(re) + slow), "Re {re:e} ks {ks}: {fast} {slow}");
            }
        }
    }

    #[test]
    fn rises_with_roughness_and_never_fails() {
        for re in [0.0, 1.0, 1e5, 1e7, 1e9, 1e11, f64::NAN, f64::INFINITY] {
            let mut last = 0.0;
            for ks in [-1.0, 0.0, 1e-6, 1e-4, 1e-2, 1.0] {
                let now = added_friction(re, 8.0, ks);
                assert!(now.is_finite() && now >= last, "Re {re} ks {ks}: {now} after {last}");
                last = now;
            }
        }
        assert_eq!(added_friction(1e7, 0.0, 1e-4), 0.0);
    }

    #[test]
    fn growth_keeps_its_order() {
        let mut last = 0.0;
        for month in 0..60 {
            let span = growth_after(f64::from(month), 18.0);
            assert!(span.low < span.middle && span.middle < span.high && span.middle >= last);
            last = span.middle;
        }
        assert!(growth_after(6.0, 25.0).middle > growth_after(6.0, 10.0).middle);
        assert!(growth_after(f64::NAN, f64::NAN).high.is_finite());
        assert!(Growth::ALL.windows(2).all(|pair| pair[0].roughness() < pair[1].roughness()));
    }
}
