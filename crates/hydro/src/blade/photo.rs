//! A blade's outline from a photograph.

use super::estimate::Estimate;
use super::propeller::Hand;
use super::trouble::{Quantity, Trouble};
use crate::source::{Method, Trust};
use std::f64::consts::{PI, TAU};

/// Photo trace.
pub const METHOD: Method = Method {
    name: "photo-trace",
    quantity: "projected area (m^2), mid-chord line and skew (rad) of one blade",
    formula: "polygon area; at each radius the middle angle of the outline",
    range: "camera on the shaft's axis, far off against the blade's depth",
    error: "scale squared on the area; a near camera makes near parts large",
    source: "ours, plane geometry",
    trust: Trust::CommonPractice,
};

/// Points clicked around one blade on a photograph taken from astern.
#[derive(Clone, Debug, PartialEq)]
pub struct Photo {
    /// Outline in pixels (x right, y down), in order round the blade, from hub to tip to hub; either way round.
    pub outline: Vec<[f64; 2]>,
    /// Shaft centre, pixels.
    pub centre: [f64; 2],
    /// Scale, m per pixel.
    pub scale: f64,
    /// Hub radius, m: the outline inside it is cut off.
    pub hub_radius: f64,
    /// Hand, if known; else it is guessed from the skew (a blade's tip trails).
    pub hand: Option<Hand>,
    /// Standard deviation of a click, pixels.
    pub click_sd: f64,
    /// Relative standard deviation of the scale.
    pub scale_sd: f64,
}

/// What a photograph gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Traced {
    /// Tip radius, m.
    pub tip_radius: Estimate,
    /// Projected area of the blade outside the hub, m².
    pub projected: Estimate,
    /// Hand as given, or as the skew suggests; `None` if the blade is too even to tell.
    pub hand: Option<Hand>,
    /// Skew angle `θ_EXT`, rad.
    pub skew: Estimate,
    /// Angle of the tip behind the root's mid-chord, rad, by the hand (positive trailing).
    pub tip_behind_root: f64,
    /// Radius (m), mid-chord angle clockwise seen from astern (rad), angle covered (rad).
    pub line: Vec<(f64, f64, f64)>,
    /// Projected outline, m, seen from astern: right and up from the shaft axis.
    pub outline: Vec<[f64; 2]>,
}

/// Radii at which the outline is read.
const STEPS: u16 = 80;

/// Least lag of the tip from which the hand is guessed, rad (4°). Ours.
const TELLING_LAG: f64 = 0.07;

/// Reduces a trace.
///
/// A guessed hand supposes that the tip trails, as it does on nearly every skewed stock propeller (common practice, no
/// source), and that the photograph was taken from astern: one from ahead shows the other hand.
///
/// # Errors
/// [`Trouble`] when the points do not go round a blade.
pub fn trace(photo: &Photo) -> Result<Traced, Trouble> {
    let bad = |quantity, value| Trouble::NotPositive { blade: 0, station: None, quantity, value };
    let finite = photo.outline.iter().chain([&photo.centre]).flatten().all(|v| v.is_finite());
    if !(finite && photo.outline.len() >= 6) {
        return Err(bad(Quantity::Outline, f64::from(u8::from(finite))));
    }
    if !(photo.scale.is_finite() && photo.scale > 0.0) {
        return Err(bad(Quantity::Outline, photo.scale));
    }
    if !(photo.hub_radius.is_finite() && photo.hub_radius >= 0.0) {
        return Err(bad(Quantity::Hub, photo.hub_radius));
    }
    let outline: Vec<[f64; 2]> = photo
        .outline
        .iter()
        .map(|p| [photo.scale * (p[0] - photo.centre[0]), photo.scale * (photo.centre[1] - p[1])])
        .collect();
    let tip = outline.iter().map(|p| p[0].hypot(p[1])).fold(0.0, f64::max);
    let impossible = Trouble::Impossible { blade: 0, station: None, quantity: Quantity::Outline, value: tip };
    // Clicks begin where the blade leaves the hub: a little outside it, where fillets are.
    let nearest = outline.iter().map(|p| p[0].hypot(p[1])).fold(f64::INFINITY, f64::min);
    let inner = photo.hub_radius.max(1.001 * nearest);
    let middle = read(&outline, inner).ok_or(impossible)?;
    // Each click moved by its spread, across and up.
    let click = photo.click_sd.abs() * photo.scale;
    let (mut area, mut skew) = (0.0, 0.0);
    let mut work = outline.clone();
    for i in (0..outline.len()).filter(|_| click > 0.0) {
        for axis in 0..2 {
            work[i][axis] += click;
            if let Some(moved) = read(&work, inner) {
                area += (moved.area - middle.area).powi(2);
                skew += (moved.skew() - middle.skew()).powi(2);
            }
            work[i][axis] = outline[i][axis];
        }
    }
    let skew = Estimate::new(middle.skew(), skew.sqrt());
    let lag = -middle.lead();
    let hand = photo.hand.or_else(|| {
        (lag.abs() > TELLING_LAG.max(3.0 * skew.sd)).then_some(if lag > 0.0 { Hand::Right } else { Hand::Left })
    });
    Ok(Traced {
        tip_radius: Estimate::new(middle.tip, click.hypot(middle.tip * photo.scale_sd)),
        projected: Estimate::new(middle.area, area.sqrt().hypot(2.0 * middle.area * photo.scale_sd)),
        hand,
        skew,
        tip_behind_root: lag * hand.unwrap_or(Hand::Right).sign(),
        line: middle.line,
        outline,
    })
}

/// Share of the tip radius up to which the mid-chord line is read: beyond it the outline turns along the circle.
const READABLE: f64 = 0.97;

struct Read {
    tip: f64,
    area: f64,
    line: Vec<(f64, f64, f64)>,
    /// Mid-chord angle smoothed by a cubic, at even steps from the hub to the tip.
    smooth: Vec<f64>,
}

impl Read {
    fn skew(&self) -> f64 {
        let high = self.smooth.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        high - self.smooth.iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// Tip ahead of the root, clockwise.
    fn lead(&self) -> f64 {
        self.smooth.last().zip(self.smooth.first()).map_or(0.0, |(tip, root)| tip - root)
    }
}

/// Reads an outline in metres about the shaft; `None` if it does not cover every radius from the hub to the tip.
fn read(outline: &[[f64; 2]], hub: f64) -> Option<Read> {
    let tip = outline.iter().map(|p| p[0].hypot(p[1])).fold(0.0, f64::max);
    if tip <= hub {
        return None;
    }
    // Angles clockwise from the direction of the blade's middle, so that they do not wrap.
    let middle = outline.iter().fold([0.0, 0.0], |sum, p| [sum[0] + p[0], sum[1] + p[1]]);
    let upright = middle[0].atan2(middle[1]);
    let end = (1.0 - hub / tip).sqrt();
    let step = end / f64::from(STEPS);
    let mut line = Vec::with_capacity(usize::from(STEPS));
    let mut area = 0.0;
    for i in 0..STEPS {
        // Trapezoids in w, in which the outline rounds off smoothly; the tip itself adds nothing.
        let w = end - step * f64::from(i);
        let radius = tip * (1.0 - w * w);
        let (low, high) = covered(outline, radius, upright)?;
        area += if i == 0 { 0.5 } else { 1.0 } * step * 2.0 * tip * w * radius * (high - low);
        line.push((radius, upright + 0.5 * (low + high), high - low));
    }
    let inner: Vec<(f64, f64)> =
        line.iter().filter(|p| p.0 <= READABLE * tip).map(|p| ((p.0 - hub) / (tip - hub), p.1)).collect();
    let cubic = cubic(&inner)?;
    let smooth: Vec<f64> =
        (0..=40).map(|i| cubic.iter().rev().fold(0.0, |sum, c| sum * f64::from(i) / 40.0 + c)).collect();
    line.retain(|p| p.0 <= READABLE * tip);
    line.push((tip, *smooth.last()?, 0.0));
    Some(Read { tip, area, line, smooth })
}

/// Coefficients of the least squares cubic (normal equations, Gauss).
fn cubic(points: &[(f64, f64)]) -> Option<[f64; 4]> {
    let mut m = [[0.0; 5]; 4];
    for (x, y) in points {
        let powers = [1.0, *x, x * x, x * x * x];
        for (row, p) in m.iter_mut().zip(powers) {
            for (cell, q) in row.iter_mut().zip(powers) {
                *cell += p * q;
            }
            row[4] += p * y;
        }
    }
    for k in 0..4 {
        let pivot = m[k];
        if pivot[k].abs() < 1e-12 {
            return None;
        }
        for (i, row) in m.iter_mut().enumerate() {
            if i != k {
                let factor = row[k] / pivot[k];
                for (cell, p) in row.iter_mut().zip(pivot) {
                    *cell -= factor * p;
                }
            }
        }
    }
    let c = [0, 1, 2, 3].map(|k| m[k][4] / m[k][k]);
    c.iter().all(|v| v.is_finite()).then_some(c)
}

/// Within half a turn.
fn turn(angle: f64) -> f64 {
    (angle + PI).rem_euclid(TAU) - PI
}

/// Lowest and highest angle (clockwise from `upright`) at which the closed outline crosses a circle.
fn covered(outline: &[[f64; 2]], radius: f64, upright: f64) -> Option<(f64, f64)> {
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for (i, a) in outline.iter().enumerate() {
        let b = outline[(i + 1) % outline.len()];
        let d = [b[0] - a[0], b[1] - a[1]];
        let (dd, ad) = (d[0] * d[0] + d[1] * d[1], a[0] * d[0] + a[1] * d[1]);
        let root = ad * ad - dd * (a[0] * a[0] + a[1] * a[1] - radius * radius);
        if dd <= 0.0 || root < 0.0 {
            continue;
        }
        for t in [(-ad - root.sqrt()) / dd, (-ad + root.sqrt()) / dd] {
            if (0.0..=1.0).contains(&t) {
                let angle = turn((a[0] + t * d[0]).atan2(a[1] + t * d[1]) - upright);
                low = low.min(angle);
                high = high.max(angle);
            }
        }
    }
    (high > low).then_some((low, high))
}
