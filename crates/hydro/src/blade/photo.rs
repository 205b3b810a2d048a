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
    if tip <= photo.hub_radius {
        return Err(impossible);
    }
    // Angles clockwise from the direction of the blade's middle, so that they do not wrap.
    let middle = outline.iter().fold([0.0, 0.0], |sum, p| [sum[0] + p[0], sum[1] + p[1]]);
    let upright = middle[0].atan2(middle[1]);
    let end = (1.0 - photo.hub_radius / tip).sqrt();
    let mut line = Vec::with_capacity(usize::from(STEPS) + 1);
    for i in 0..STEPS {
        let w = end * (1.0 - f64::from(i) / f64::from(STEPS));
        let radius = tip * (1.0 - w * w);
        let (low, high) = covered(&outline, radius, upright).ok_or_else(|| impossible.clone())?;
        line.push((radius, upright + 0.5 * (low + high), high - low));
    }
    let last = outline.iter().max_by(|a, b| a[0].hypot(a[1]).total_cmp(&b[0].hypot(b[1]))).unwrap_or(&middle);
    line.push((tip, upright + turn(last[0].atan2(last[1]) - upright), 0.0));
    // Trapezoids in w, where the outline rounds off smoothly.
    let step = end / f64::from(STEPS);
    let area: f64 = line
        .iter()
        .enumerate()
        .map(|(i, p)| {
            let w = (1.0 - p.0 / tip).max(0.0).sqrt();
            let share = if i == 0 || i == usize::from(STEPS) { 0.5 } else { 1.0 };
            share * step * 2.0 * tip * w * p.0 * p.2
        })
        .sum();
    let by_clicks: f64 = (0..outline.len())
        .map(|i| {
            let (a, b) = (outline[(i + outline.len() - 1) % outline.len()], outline[(i + 1) % outline.len()]);
            0.25 * ((b[0] - a[0]).powi(2) + (b[1] - a[1]).powi(2))
        })
        .sum();
    let click = photo.click_sd.abs() * photo.scale;
    let (high, low) = (extreme(&line, |a, b| a > b), extreme(&line, |a, b| a < b));
    let skew_sd = click * std::f64::consts::FRAC_1_SQRT_2 * high.0.recip().hypot(low.0.recip());
    let lag = line.first().map_or(0.0, |root| root.1) - line.last().map_or(0.0, |tip| tip.1);
    let hand = photo.hand.or_else(|| {
        (lag.abs() > TELLING_LAG.max(3.0 * skew_sd)).then(|| if lag > 0.0 { Hand::Right } else { Hand::Left })
    });
    Ok(Traced {
        tip_radius: Estimate::new(tip, click.hypot(tip * photo.scale_sd)),
        projected: Estimate::new(area, (click * by_clicks.sqrt()).hypot(2.0 * area * photo.scale_sd)),
        hand,
        skew: Estimate::new(high.1 - low.1, skew_sd),
        tip_behind_root: lag * hand.unwrap_or(Hand::Right).sign(),
        line,
        outline,
    })
}

fn extreme(line: &[(f64, f64, f64)], better: fn(f64, f64) -> bool) -> (f64, f64, f64) {
    line.iter().copied().reduce(|a, b| if better(b.1, a.1) { b } else { a }).unwrap_or((1.0, 0.0, 0.0))
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
