//! What a photograph of a blade gives.

use super::convert;
use super::reduction::Reduced;
use super::report::PhotoSheet;
use super::{band, fitted::Low3};
use hydro::blade::{Estimate, Hand, Photo, Traced, taylor_projected, trace};
use job::Job;
use job::assume::BAND_Z;
use std::f64::consts::PI;

/// Clicks on an edge scatter by this much, pixels (80 % band; common practice, no source).
const CLICK: f64 = 2.0;

/// Hub over propeller diameter where the hub was not measured (common practice, no source).
const HUB: f64 = 0.2;

/// Relative standard deviation of Taylor's relation between projected and developed area on stock blades (estimate).
const TAYLOR: f64 = 0.03;

/// A photograph reduced.
#[derive(Clone, Debug)]
pub(super) struct Trace {
    pub traced: Traced,
    /// Projected area of all blades over the disc.
    pub projected_ratio: Estimate,
    /// Expanded area of all blades over the disc, by Taylor's relation; `None` without a pitch.
    pub expanded_ratio: Option<Estimate>,
    pub notes: Vec<String>,
}

/// Reduces the photograph of a survey, if there is one with points.
pub(super) fn read(job: &Job, r: &Reduced) -> Option<Trace> {
    let said = r.survey.photo.as_ref().filter(|photo| !photo.points.is_empty())?;
    let (length, pixels) = (said.scale_length.as_ref()?, said.scale_pixels.as_ref()?);
    let (length, pixels) = (convert::estimate(length), convert::estimate(pixels));
    let scale = length.value / pixels.value;
    let centre = [said.centre_x.as_ref()?.middle, said.centre_y.as_ref()?.middle];
    let reach = said.points.iter().map(|p| scale * (p[0] - centre[0]).hypot(p[1] - centre[1])).fold(0.0, f64::max);
    let mut notes = vec![
        "Photo: the camera on the shaft's line and far off; a near camera makes the near parts of a raked blade large."
            .to_owned(),
        "Photo: one blade was traced and all are taken as alike.".to_owned(),
    ];
    let hub_radius = match &r.survey.hub.diameter {
        Some(q) => 0.5 * q.middle,
        None => {
            notes.push(format!("Photo: the hub is taken as {HUB} of the diameter (common practice, no source)."));
            HUB * reach
        }
    };
    let photo = Photo {
        outline: said.points.clone(),
        centre,
        scale,
        hub_radius,
        hand: convert::hand(job, r.survey),
        click_sd: said.click.as_ref().map_or(CLICK, |q| q.middle) / BAND_Z,
        scale_sd: (length.sd / length.value).hypot(pixels.sd / pixels.value),
    };
    let traced = match trace(&photo) {
        Ok(traced) => traced,
        Err(_) => {
            notes.push(
                "Photo: the points do not go round a blade from the hub to the tip and back; click them again in order."
                    .to_owned(),
            );
            return Some(Trace {
                traced: Traced {
                    tip_radius: Estimate::exact(0.0),
                    projected: Estimate::exact(0.0),
                    hand: None,
                    skew: Estimate::exact(0.0),
                    tip_behind_root: 0.0,
                    line: Vec::new(),
                    outline: Vec::new(),
                },
                projected_ratio: Estimate::exact(0.0),
                expanded_ratio: None,
                notes,
            });
        }
    };
    let tip = traced.tip_radius.value;
    let disc = PI * tip * tip;
    let ratio = r.count.max(1) as f64 * traced.projected.value / disc;
    // The scale's error cancels between area and disc; what is left is that of the clicks.
    let clicks = (traced.projected.sd / traced.projected.value).powi(2) - (2.0 * photo.scale_sd).powi(2);
    let projected_ratio = Estimate::new(ratio, ratio * clicks.max(0.0).sqrt());
    let pitch = r.effective().map(|e| e.value).or_else(|| job.propeller.pitch.as_ref().map(|q| q.middle));
    let expanded_ratio = pitch.and_then(|pitch| {
        let share = taylor_projected(1.0, pitch / (2.0 * tip));
        let spread = (projected_ratio.sd / ratio).hypot(TAYLOR);
        (share > 0.0).then(|| Estimate::new(ratio / share, ratio / share * spread))
    });
    if convert::hand(job, r.survey).is_none()
        && let Some(hand) = traced.hand
    {
        notes.push(format!(
            "Photo: the tip trails as on a {}-hand propeller, if it was taken from astern; look which edge leads before ordering.",
            if hand == Hand::Right { "right" } else { "left" }
        ));
    }
    Some(Trace { traced, projected_ratio, expanded_ratio, notes })
}

/// The sheet of the report; `None` when the points were no blade.
pub(super) fn sheet(trace: &Trace) -> Option<PhotoSheet> {
    let t = &trace.traced;
    (t.tip_radius.value > 0.0).then(|| PhotoSheet {
        tip_radius: band(t.tip_radius, 1000.0, "mm"),
        projected: band(t.projected, 1e4, "cm²"),
        projected_ratio: band(trace.projected_ratio, 1.0, "1"),
        expanded_ratio: trace.expanded_ratio.map(|e| band(e, 1.0, "1")),
        skew: band(t.skew, 1.0_f64.to_degrees(), "deg"),
        hand: t.hand.map(|h| if h == Hand::Right { "right" } else { "left" }),
        outline: t.outline.iter().map(|p| p.map(|v| (10_000.0 * v).round() / 10.0)).collect(),
    })
}

/// Area ratio for the crowd, where widths were not measured.
pub(super) fn area_ratio(job: &Job, r: &Reduced) -> Option<Low3> {
    read(job, r)?.expanded_ratio.filter(|e| e.value > 0.1 && e.value < 1.5).map(super::fitted::band)
}
