//! Holtrop & Mennen: what follows from the hull's shape alone (form factor, wetted area, entrance).
//!
//! Coefficients of the two papers were recalled and then held against the ship both papers print; the 1984 form factor
//! was seen in two public copies. `L`, `B`, `T` in metres, `∇` m³, `lcb` % of `L` forward of midships. Arguments outside
//! a formula's domain are moved to its edge, so a result is always a number.

/// A base of a fractional power, kept away from zero and below.
fn base(x: f64) -> f64 {
    x.max(0.01)
}

/// Length of the run `LR = L (1 - CP + 0.06 CP lcb / (4 CP - 1))`, m. Holtrop & Mennen 1982.
#[must_use]
pub fn length_of_run(length: f64, prismatic: f64, lcb_percent: f64) -> f64 {
    let run = 1.0 - prismatic + 0.06 * prismatic * lcb_percent / (4.0 * prismatic - 1.0).max(0.1);
    length * run.clamp(0.05, 1.0)
}

/// `c12` of the 1982 form factor from `T/L`.
#[must_use]
pub fn c12(draught_length: f64) -> f64 {
    if draught_length > 0.05 {
        draught_length.powf(0.222_844_6)
    } else if draught_length > 0.02 {
        48.20 * (draught_length - 0.02).powf(2.078) + 0.479_948
    } else {
        0.479_948
    }
}

/// Form factor `1 + k1` of 1982:
/// `c13 {0.93 + c12 (B/LR)^0.92497 (0.95 - CP)^-0.521448 (1 - CP + 0.0225 lcb)^0.6906}`, `c13 = 1 + 0.003 Cstern`.
#[must_use]
pub fn form_factor_1982(length: f64, beam: f64, draught: f64, prismatic: f64, lcb_percent: f64, stern: f64) -> f64 {
    let run = length_of_run(length, prismatic, lcb_percent);
    (1.0 + 0.003 * stern)
        * (0.93
            + c12(draught / length)
                * (beam / run).powf(0.924_97)
                * base(0.95 - prismatic).powf(-0.521_448)
                * base(1.0 - prismatic + 0.0225 * lcb_percent).powf(0.6906))
}

/// Form factor `1 + k1` of 1984:
/// `0.93 + 0.487118 c14 (B/L)^1.06806 (T/L)^0.46106 (L/LR)^0.121563 (L³/∇)^0.36486 (1 - CP)^-0.604247`,
/// `c14 = 1 + 0.011 Cstern`.
#[must_use]
pub fn form_factor_1984(
    length: f64,
    beam: f64,
    draught: f64,
    volume: f64,
    prismatic: f64,
    lcb_percent: f64,
    stern: f64,
) -> f64 {
    let run = length_of_run(length, prismatic, lcb_percent);
    0.93 + 0.487_118
        * (1.0 + 0.011 * stern)
        * (beam / length).powf(1.068_06)
        * (draught / length).powf(0.461_06)
        * (length / run).powf(0.121_563)
        * (length * length * length / volume).powf(0.364_86)
        * base(1.0 - prismatic).powf(-0.604_247)
}

/// Wetted area of the hull, m²:
/// `L (2T + B) √CM (0.453 + 0.4425 CB - 0.2862 CM - 0.003467 B/T + 0.3696 CWP) + 2.38 ABT/CB`.
#[must_use]
pub fn wetted_area(
    length: f64,
    beam: f64,
    draught: f64,
    block: f64,
    midship: f64,
    waterplane: f64,
    bulb_area: f64,
) -> f64 {
    let factor = 0.453 + 0.4425 * block - 0.2862 * midship - 0.003_467 * beam / draught + 0.3696 * waterplane;
    length * (2.0 * draught + beam) * midship.max(0.05).sqrt() * factor.max(0.1) + 2.38 * bulb_area / block
}

/// Half angle of entrance `iE`, degrees, for a hull whose lines are not known:
/// `1 + 89 exp{-(L/B)^0.80856 (1 - CWP)^0.30484 (1 - CP - 0.0225 lcb)^0.6367 (LR/B)^0.34574 (100 ∇/L³)^0.16302}`.
#[must_use]
pub fn entrance_angle(length: f64, beam: f64, volume: f64, prismatic: f64, waterplane: f64, lcb_percent: f64) -> f64 {
    let run = length_of_run(length, prismatic, lcb_percent);
    1.0 + 89.0
        * (-(length / beam).powf(0.808_56)
            * base(1.0 - waterplane).powf(0.304_84)
            * base(1.0 - prismatic - 0.0225 * lcb_percent).powf(0.6367)
            * (run / beam).powf(0.345_74)
            * (100.0 * volume / (length * length * length)).powf(0.163_02))
        .exp()
}

/// Correlation allowance
/// `CA = 0.006 (L + 100)^-0.16 - 0.00205 + 0.003 √(L/7.5) CB⁴ c2 (0.04 - c4)`, `c4 = min(TF/L, 0.04)`.
///
/// `c2` is the bulb's factor on waves (1 without bulb). For ships at 150 µm mean hull roughness; below about 15 m an
/// extrapolation.
#[must_use]
pub fn correlation_allowance(length: f64, draught_forward: f64, block: f64, c2: f64) -> f64 {
    let c4 = (draught_forward / length).min(0.04);
    0.006 * (length + 100.0).powf(-0.16) - 0.002_05 + 0.003 * (length / 7.5).sqrt() * block.powi(4) * c2 * (0.04 - c4)
}
