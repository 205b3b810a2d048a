//! Back cavitation by load and cavitation number: the Burrill diagram.
//!
//! The diagram itself is a drawing; what stands here are fits others have made of its lines. Two independent fits agree within
//! 0.003 in `τc` from σ 0.2 to 0.6 and 0.009 to 1; readings of a third drawing differ more. The fit used is Birk's because it alone
//! has all lines; [`spread`] tells how the others differ.

use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use std::f64::consts::PI;

/// The lines.
pub const METHOD: Method = Method {
    name: "burrill-1943",
    quantity: "load coefficient tau_c at a given share of back cavitation",
    formula: "tau_c = a sigma^b + c, eight lines",
    range: "sigma_0.7R 0.15 to 2; below it the lines are shrunk like the merchant limit",
    error: "1 to 3 % of tau_c from sigma 0.2 to 1 between two fits, 3 to 25 % against readings of a third drawing",
    source: "L. C. Burrill 1943, Trans. NECIES; L. C. Burrill & A. Emerson 1963, Trans. NECIES 79; lines as fitted by L. Birk 2019, \
             Fundamentals of Ship Hydrodynamics, ch. 46",
    trust: Trust::OneCopy,
};

/// Projected area.
pub const METHOD_AREA: Method = Method {
    name: "projected-area-taylor",
    quantity: "projected over developed blade area",
    formula: "AP/AD = 1.067 - 0.229 P/D",
    range: "P/D 0.5 to 1.6; AD is taken equal to AE",
    error: "1.4 % against a handbook's formula",
    source: "D. W. Taylor, as printed in UFC 4-159-03, eq. 22",
    trust: Trust::Checked,
};

/// A line of the diagram.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Line {
    /// 2.5 % of the back cavitates.
    Back2,
    /// 5 %.
    Back5,
    /// 10 %.
    Back10,
    /// 20 %.
    Back20,
    /// 30 %.
    Back30,
    /// Lower limit, heavily loaded screws (tugs, trawlers).
    Lower,
    /// Upper limit, merchant screws.
    Merchant,
    /// Upper limit, naval and fast screws.
    Fast,
}

/// Projected area ratio `AP/A0 = AE/A0 (1.067 - 0.229 P/D)`.
#[must_use]
pub fn projected_area_ratio(expanded_area_ratio: f64, pitch_ratio: f64) -> f64 {
    expanded_area_ratio.max(0.0) * (1.067 - 0.229 * pitch_ratio.clamp(0.0, 2.5))
}

/// Square of the speed at 0.7 R, m²/s²: `V² = Va² + (0.7 π n D)²`.
#[must_use]
pub fn blade_speed_squared(va: f64, n: f64, diameter: f64) -> f64 {
    let around = 0.7 * PI * n * diameter;
    va * va + around * around
}

/// Cavitation number `σ = (p - pv)/(½ ρ V²)`; `head` = static pressure at the shaft less vapour pressure, Pa; `speed_squared` from
/// [`blade_speed_squared`]. Infinite at rest.
#[must_use]
pub fn sigma(head: f64, density: f64, speed_squared: f64) -> f64 {
    head / (0.5 * density * speed_squared)
}

/// Load coefficient `τc = T/(½ ρ AP V²)`; `projected_area` m².
#[must_use]
pub fn tau(thrust: f64, density: f64, projected_area: f64, speed_squared: f64) -> f64 {
    thrust / (0.5 * density * projected_area * speed_squared)
}

/// `τc` on a line by Birk's fit, as published (it falls to nothing near σ 0.07 for the percentage lines).
#[must_use]
pub fn birk(line: Line, sigma: f64) -> f64 {
    let (a, b, c) = match line {
        Line::Back2 => (0.611, 0.189, -0.372),
        Line::Back5 => (0.715, 0.184, -0.437),
        Line::Back10 => (1.267, 0.126, -0.912),
        Line::Back20 => (1.147, 0.195, -0.672),
        Line::Back30 => (0.91, 0.335, -0.346),
        Line::Lower => (0.527, 0.155, -0.324),
        Line::Merchant => (0.304, 0.497, -0.034),
        Line::Fast => (0.464, 0.497, -0.089),
    };
    a * sigma.max(0.0).powf(b) + c
}

/// `τc` on the three limit lines by A. F. Molland, S. R. Turnock & D. A. Hudson 2011, Ship Resistance and Propulsion:
/// `a (σ - c)^b`. The merchant line is confirmed by one copy, the others are from memory. None for the percentage lines.
#[must_use]
pub fn molland(line: Line, sigma: f64) -> Option<f64> {
    let (a, b, c) = match line {
        Line::Merchant => (0.28, 0.57, 0.03),
        Line::Lower => (0.21, 0.46, 0.04),
        Line::Fast => (0.43, 0.71, 0.02),
        _ => return None,
    };
    Some(a * (sigma - c).max(0.0).powf(b))
}

/// `τc` on the 2.5, 5 and 10 % lines by another digitisation (`a ln σ + c`, course work, one copy). None for the others.
#[must_use]
pub fn logarithmic(line: Line, sigma: f64) -> Option<f64> {
    let (a, c) = match line {
        Line::Back2 => (0.097_98, 0.234_26),
        Line::Back5 => (0.111_04, 0.271_04),
        Line::Back10 => (0.140_93, 0.345_8),
        _ => return None,
    };
    Some(a * sigma.ln() + c)
}

/// Readings `σ, τc at 5 %, at 10 %` from J. S. Carlton 2012, Marine Propellers and Propulsion, fig. 9.21.
const CARLTON: [(f64, f64, f64); 11] = [
    (0.1, 0.066, 0.086),
    (0.2, 0.118, 0.148),
    (0.3, 0.155, 0.188),
    (0.4, 0.181, 0.219),
    (0.5, 0.201, 0.242),
    (0.6, 0.218, 0.260),
    (0.8, 0.243, 0.287),
    (1.0, 0.260, 0.306),
    (1.5, 0.286, 0.336),
    (2.0, 0.301, 0.354),
    (3.0, 0.320, 0.380),
];

/// `τc` on the 5 and 10 % lines from the readings of Carlton's figure, straight between them in σ.
#[must_use]
pub fn carlton(line: Line, sigma: f64) -> Option<f64> {
    let pick = |row: &(f64, f64, f64)| match line {
        Line::Back5 => Some(row.1),
        Line::Back10 => Some(row.2),
        _ => None,
    };
    let pair = CARLTON.windows(2).find(|pair| sigma >= pair[0].0 && sigma <= pair[1].0)?;
    let share = (sigma - pair[0].0) / (pair[1].0 - pair[0].0);
    let (low, high) = (pick(&pair[0])?, pick(&pair[1])?);
    Some(low + share * (high - low))
}

/// Smallest σ at which the percentage fits are used as they are.
pub const LEAST_SIGMA: f64 = 0.15;
/// Largest σ of the fits.
pub const LARGEST_SIGMA: f64 = 2.0;

/// `τc` on a line as used here: Birk's fit, below σ 0.15 its value there shrunk like the merchant limit, which goes to zero smoothly.
#[must_use]
pub fn line(line: Line, sigma: f64) -> Noted<f64> {
    let mut notes = Notes::NONE;
    notes.add_if(!(LEAST_SIGMA..=LARGEST_SIGMA).contains(&sigma), Note::CavitationOutsideDiagram);
    // Birk's curves keep rising slowly; beyond 10 nothing cavitates.
    let s = if sigma > 0.0 { sigma.min(10.0) } else { 0.0 };
    let tau = if s >= LEAST_SIGMA {
        birk(line, s)
    } else {
        let shrink = ((s - 0.03).max(0.0) / (LEAST_SIGMA - 0.03)).powf(0.57);
        birk(line, LEAST_SIGMA) * shrink
    };
    Noted::new(tau, notes)
}

/// How the other fits of the 5 and 10 % lines differ from the one used: standard deviation of `ln τc` at a σ (held in 0.15 to 2).
#[must_use]
pub fn spread(sigma: f64) -> f64 {
    let s = if sigma > LEAST_SIGMA { sigma.min(LARGEST_SIGMA) } else { LEAST_SIGMA };
    let (mut sum, mut count) = (0.0, 0.0);
    for which in [Line::Back5, Line::Back10] {
        for other in [logarithmic(which, s), carlton(which, s)].into_iter().flatten() {
            let off = (other / birk(which, s)).ln();
            sum += off * off;
            count += 1.0;
        }
    }
    f64::sqrt(sum / count)
}

/// Share of the back that cavitates, percent, at a cavitation number and load.
///
/// Smooth and monotone between the lines (cubic of Fritsch & Carlson 1980, SIAM J. Numer. Anal. 17, through 0 at no load and the five
/// percentage lines), a straight line beyond 30 %, 100 at most; with a note outside the diagram.
#[must_use]
pub fn back_cavitation(sigma: f64, tau: f64) -> Noted<f64> {
    const PERCENT: [f64; 6] = [0.0, 2.5, 5.0, 10.0, 20.0, 30.0];
    let lines = [Line::Back2, Line::Back5, Line::Back10, Line::Back20, Line::Back30];
    let mut notes = line(Line::Back5, sigma).notes;
    let mut x = [0.0; 6];
    for (x, which) in x[1..].iter_mut().zip(lines) {
        *x = line(which, sigma).value;
    }
    let load = if tau > 0.0 { tau } else { return Noted::new(0.0, notes) };
    if x[1] <= 0.0 {
        // No pressure left: everything cavitates.
        return Noted::new(100.0, notes);
    }
    let secant = |i: usize| (PERCENT[i + 1] - PERCENT[i]) / (x[i + 1] - x[i]);
    if load >= x[5] {
        notes.add_if(load > x[5], Note::CavitationOutsideDiagram);
        return Noted::new((PERCENT[5] + secant(4) * (load - x[5])).min(100.0), notes);
    }
    let i = (0..5).find(|i| load < x[i + 1]).unwrap_or(4);
    let slope = |k: usize| match k {
        0 => 0.0,
        5 => secant(4),
        _ => {
            let (before, after) = (secant(k - 1), secant(k));
            2.0 * before * after / (before + after)
        }
    };
    let width = x[i + 1] - x[i];
    let t = (load - x[i]) / width;
    let u = 1.0 - t;
    let percent = PERCENT[i] * u * u * (1.0 + 2.0 * t)
        + PERCENT[i + 1] * t * t * (3.0 - 2.0 * t)
        + width * (slope(i) * t * u * u - slope(i + 1) * t * t * u);
    Noted::new(percent, notes)
}
