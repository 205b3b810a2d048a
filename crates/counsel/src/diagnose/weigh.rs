//! How well each suspicion explains the readings.

use super::hypothesis::{Cause, Variant, variants};
use super::prior::Moved;
use crate::Options;
use crate::crowd::Crowd;
use crate::crowd::plan::{At, Plan, What};
use crate::crowd::stats::Weighted;
use job::{Job, Side};

/// Boats drawn for each suspicion, of those asked for: there are some thirty variants, and a chance needs fewer boats than a
/// band.
fn each(boats: usize) -> usize {
    (boats * 4 / 25).max(160)
}

/// One suspicion, weighed.
pub(super) struct Weighed {
    pub variant: Variant,
    pub crowd: Crowd,
    /// ln of chance beforehand times likelihood.
    pub log_weight: f64,
}

/// A cause with all its variants.
pub(super) struct Suspect {
    pub cause: Cause,
    pub prior: f64,
    pub chance: f64,
    /// Mean likelihood over that of the boat as stated.
    pub times_better: f64,
    /// Position of its likeliest variant.
    pub best: usize,
}

/// Weighs every variant.
pub(super) fn weigh(job: &Job, base: &Plan, moved: &[Moved], options: &Options) -> Vec<Weighed> {
    let pair = difference(job);
    variants(base)
        .into_iter()
        .filter_map(|variant| {
            let prior = prior_of(variant.cause, moved) * variant.share;
            (prior > 0.0).then(|| {
                let crowd = Crowd::draw(variant.apply(base), each(options.boats), options.seed);
                let log_weight =
                    prior.ln() + crowd.log_evidence + pair.map_or(0.0, |p| p.log_likelihood(variant.cause));
                Weighed { variant, crowd, log_weight }
            })
        })
        .collect()
}

/// Chance of a cause before the readings, not yet scaled to sum to 1.
pub(super) fn prior_of(cause: Cause, moved: &[Moved]) -> f64 {
    moved.iter().filter(|m| m.cause == cause).fold(cause.about().base, |p, m| p * m.factor)
}

/// Adds up the variants of each cause; likeliest first.
pub(super) fn suspects(weighed: &[Weighed], moved: &[Moved]) -> Vec<Suspect> {
    let top = weighed.iter().map(|w| w.log_weight).fold(f64::NEG_INFINITY, f64::max);
    let total: f64 = weighed.iter().map(|w| (w.log_weight - top).exp()).sum();
    let prior_total: f64 = Cause::ALL.iter().map(|c| prior_of(*c, moved)).sum();
    let stated = evidence(weighed, Cause::AsStated);
    let mut list: Vec<Suspect> = Cause::ALL
        .iter()
        .filter_map(|cause| {
            let own: Vec<(usize, &Weighed)> =
                weighed.iter().enumerate().filter(|(_, w)| w.variant.cause == *cause).collect();
            let best = own.iter().max_by(|a, b| a.1.log_weight.total_cmp(&b.1.log_weight))?.0;
            Some(Suspect {
                cause: *cause,
                prior: prior_of(*cause, moved) / prior_total,
                chance: own.iter().map(|(_, w)| (w.log_weight - top).exp()).sum::<f64>() / total,
                times_better: (evidence(weighed, *cause) - stated).exp(),
                best,
            })
        })
        .collect();
    list.sort_by(|a, b| b.chance.total_cmp(&a.chance));
    list
}

/// ln of the mean likelihood of a cause over its variants.
fn evidence(weighed: &[Weighed], cause: Cause) -> f64 {
    let own: Vec<&Weighed> = weighed.iter().filter(|w| w.variant.cause == cause).collect();
    let top = own.iter().map(|w| w.crowd.log_evidence).fold(f64::NEG_INFINITY, f64::max);
    let sum: f64 = own.iter().map(|w| w.variant.share * (w.crowd.log_evidence - top).exp()).sum();
    top + sum.ln()
}

/// What the two sides of a pair differ by at full throttle.
#[derive(Clone, Copy, Debug)]
pub(super) struct Difference {
    /// ln(port/starboard) of engine speed.
    pub ln: f64,
    /// Scatter of two tachometers read together.
    scatter: f64,
}

/// The difference of the sides, when both were read at full throttle as the boat is.
pub(super) fn difference(job: &Job) -> Option<Difference> {
    let read = |side: Side| {
        job.readings
            .iter()
            .filter(|r| r.full_throttle && r.side == Some(side) && r.state == job::State::default())
            .find_map(|r| r.engine_speed.as_ref())
    };
    let (port, starboard) = (read(Side::Port)?, read(Side::Starboard)?);
    let sd = |q: &job::Quantity| 0.5 * (q.high - q.low) / q.middle / job::assume::BAND_Z;
    Some(Difference { ln: (port.middle / starboard.middle).ln(), scatter: sd(port).hypot(sd(starboard)).hypot(0.015) })
}

impl Difference {
    /// Causes that strike one side let the sides differ by a tenth; the rest strike both alike.
    fn log_likelihood(self, cause: Cause) -> f64 {
        let one_sided = matches!(
            cause,
            Cause::Mismatch
                | Cause::Stamp
                | Cause::Style
                | Cause::GrowthBlades
                | Cause::EngineDown
                | Cause::Governor
                | Cause::Drag
                | Cause::BladeDamaged
                | Cause::Tachometer
        );
        let sd = if one_sided { self.scatter.hypot(0.08) } else { self.scatter };
        // A cause that may strike one side may also strike both: half and half.
        let at = |sd: f64| (-0.5 * (self.ln / sd).powi(2)).exp() / sd;
        if one_sided && cause != Cause::Mismatch { (0.5 * at(sd) + 0.5 * at(self.scatter)).ln() } else { at(sd).ln() }
    }
}

/// Full-throttle engine speed expected of the boat as stated less that read, rpm: values over the boats drawn before any
/// reading was weighed.
pub(super) fn missing(stated: &Crowd) -> Option<Vec<f64>> {
    let m = stated.plan.observations.len();
    let (i, o) = stated
        .plan
        .observations
        .iter()
        .enumerate()
        .find(|(_, o)| o.setup == 0 && o.at == At::FullThrottle && o.what == What::EngineSpeed)?;
    let expected = stated.before.iter().skip(i).step_by(m);
    Some(expected.map(|x| 60.0 * (x.exp() - o.value)).filter(|x| x.is_finite()).collect())
}

/// The typical boat's worst gap to a reading, in scatters.
pub(super) fn worst_gap(crowd: &Crowd) -> f64 {
    let m = crowd.plan.observations.len();
    if m == 0 {
        return 0.0;
    }
    let worst: Vec<f64> = crowd
        .shown
        .chunks(m)
        .map(|shown| {
            shown.iter().zip(&crowd.plan.observations).map(|(s, o)| crate::crowd::gap(o, *s).abs()).fold(0.0, f64::max)
        })
        .collect();
    Weighted::new(&crowd.weights).band(&worst, "1").middle
}
