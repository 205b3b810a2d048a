//! `diagnose`: causes ranked by how well they explain the readings, and the measurement worth making next.

mod hypothesis;
mod next;
mod prior;
mod weigh;

use crate::band::Accepted;
use crate::crowd::latent::Latent;
use crate::crowd::plan::Plan;
use crate::crowd::setup::Setup;
use crate::judge::{crowd_report, judged_setup};
use crate::panel::Panel;
use crate::phrase::{chance, inches, number, plain, span};
use crate::report::{Band, Cause as Answer, Diagnosis, Verdict};
use crate::{Lack, Options};
use hypothesis::Cause;
use job::Job;
use prior::Moved;
use weigh::{Suspect, Weighed};

/// Ranks the causes of a complaint.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn diagnose(job: &Job, options: &Options) -> Result<Diagnosis, Lack> {
    let base = Plan::new(job)?;
    let moved = prior::moved(job);
    let weighed = weigh::weigh(job, &base, &moved, options);
    let suspects = weigh::suspects(&weighed, &moved);
    let stated = &weighed.iter().find(|w| w.variant.cause == Cause::AsStated).unwrap_or(&weighed[0]).crowd;
    let panel = Panel::of(stated, 320);
    let accepted = Accepted::of(job, &base);
    let judged = judged_setup(job);
    let verdict = accepted.verdict(&panel, &panel.run(&judged));
    let inch = inch_of_pitch(&panel, &judged, base.marked_pitch);
    let missing = weigh::missing(stated)
        .map(|values| crate::crowd::stats::Weighted::new(&vec![1.0; values.len()]).band(&values, "rpm"));
    let explained = suspects.iter().filter(|s| s.chance > 0.03).any(|s| weigh::worst_gap(&weighed[s.best].crowd) < 3.0);
    let case = Case { base: &base, weighed: &weighed, moved: &moved, verdict, inch, missing };
    let causes: Vec<Answer> = suspects.iter().map(|s| case.answer(s)).collect();
    let next_measurements = next::next(&weighed, base.knowledge.screws.0);
    let best = &weighed[suspects.first().map_or(0, |s| s.best)].crowd;
    Ok(Diagnosis {
        title: job.title.clone(),
        headline: case.headline(&causes, explained, next_measurements.first().map(|m| m.measurement.as_str())),
        stop: prior::stop(job),
        missing,
        causes,
        explained,
        next_measurements,
        pair: crate::pair::pair(job, options)?,
        inch_of_pitch: inch,
        crowd: crowd_report(best),
        notes: best.notes(),
    })
}

/// Chance of each cause (by its code) before the readings are weighed: from what the caller said and which instruments were used.
#[must_use]
pub fn suspected(job: &Job) -> Vec<(&'static str, f64)> {
    let moved = prior::moved(job);
    let chances: Vec<f64> = Cause::ALL.iter().map(|c| weigh::prior_of(*c, &moved)).collect();
    let total: f64 = chances.iter().sum();
    Cause::ALL.iter().zip(chances).map(|(c, p)| (c.about().code, p / total)).collect()
}

fn inch_of_pitch(panel: &Panel, judged: &Setup, pitch: f64) -> Band {
    let hulls = panel.resistance(judged);
    let at = |p: f64| panel.run_on(&Setup { pitch: Some(p), ..*judged }, &hulls);
    let gain: Vec<f64> = at(pitch)
        .iter()
        .zip(&at(pitch - 0.0254))
        .map(|(b, a)| a.full.point.engine_speed.rpm() - b.full.point.engine_speed.rpm())
        .collect();
    panel.band(&gain, "rpm")
}

struct Case<'a> {
    base: &'a Plan,
    weighed: &'a [Weighed],
    moved: &'a [Moved],
    verdict: Verdict,
    inch: Band,
    missing: Option<Band>,
}

impl Case<'_> {
    fn answer(&self, suspect: &Suspect) -> Answer {
        let about = suspect.cause.about();
        let best = &self.weighed[suspect.best];
        let mut speaks_for = Vec::new();
        let mut against = Vec::new();
        if !self.base.observations.is_empty() && suspect.cause != Cause::AsStated {
            let times = suspect.times_better;
            if times > 2.0 {
                speaks_for.push(format!(
                    "explains the readings {} times better than the boat as stated",
                    plain(times.min(1e4), 2)
                ));
            } else if times < 0.5 {
                against.push(format!(
                    "explains the readings {} times worse than the boat as stated",
                    plain((1.0 / times.max(1e-4)).min(1e4), 2)
                ));
            }
        }
        let gap = weigh::worst_gap(&best.crowd);
        if gap > 3.0 {
            against.push(format!("even so some reading lies {} scatters off", plain(gap, 2)));
        }
        self.size(suspect.cause, &mut speaks_for, &mut against);
        for m in self.moved.iter().filter(|m| m.cause == suspect.cause) {
            if m.factor > 1.05 {
                speaks_for.push(m.why.clone());
            } else if m.factor < 0.95 {
                against.push(m.why.clone());
            }
        }
        Answer {
            code: about.code,
            cause: self.words(suspect.cause),
            chance: suspect.chance,
            prior: suspect.prior,
            would_need: self.would_need(best),
            speaks_for,
            against,
            remedy: about.remedy.to_owned(),
            cost: about.cost,
        }
    }

    /// The cause in words; the boat as stated says which way its propeller is wrong.
    fn words(&self, cause: Cause) -> String {
        let v = &self.verdict;
        match cause {
            Cause::AsStated if v.over_pitched > 0.6 => {
                "everything is as stated, and the propeller is too much for it".to_owned()
            }
            Cause::AsStated if v.under_pitched > 0.6 => {
                "everything is as stated, and the propeller is too little for it".to_owned()
            }
            Cause::AsStated if v.right > 0.6 => "everything is as stated, and the propeller suits it".to_owned(),
            _ => cause.about().words.to_owned(),
        }
    }

    /// Size of the cause against size of the complaint.
    fn size(&self, cause: Cause, speaks_for: &mut Vec<String>, against: &mut Vec<String>) {
        let Some(missing) = self.missing else { return };
        let gone = missing.middle;
        let inch = self.inch.middle.max(1.0);
        if matches!(cause, Cause::Stamp | Cause::Style) && gone.abs() > 100.0 {
            let needed = gone.abs() / inch;
            let text = format!(
                "an inch of pitch is worth {} on this boat; {} rpm are {}",
                span(&self.inch),
                number(gone.abs(), 10.0),
                if gone > 0.0 { "missing" } else { "too many" }
            );
            if needed > 2.2 {
                against.push(format!("{text}: it would take {} inches", plain(needed, 2)));
            } else {
                speaks_for.push(text);
            }
        }
    }

    /// What would have to be true, from the boats that explain the readings.
    fn would_need(&self, best: &Weighed) -> String {
        let Some(latent) = best.variant.tells else { return String::new() };
        let crowd = &best.crowd;
        let values = crowd.values(latent);
        let raw = crate::crowd::stats::Weighted::new(&crowd.weights).band(&values, "1");
        let scaled = |factor: f64, unit: &'static str| Band {
            low: factor * raw.low,
            middle: factor * raw.middle,
            high: factor * raw.high,
            unit,
        };
        match latent {
            Latent::Pitch => {
                let (low, high) = (inches(raw.low), inches(raw.high));
                let range = if low == high { low } else { format!("{low} to {high}") };
                format!("a true pitch of {range} in (stated {})", inches(self.base.marked_pitch))
            }
            Latent::BladeRoughness => format!("blades rough by {}", span(&scaled(1000.0, "mm as of sand"))),
            Latent::HullRoughness => format!("a bottom rough by {}", span(&scaled(1000.0, "mm as of sand"))),
            Latent::Condition => format!("an engine that gives {} of its rating", span(&scaled(100.0, "%"))),
            Latent::AreaRatio => format!("a blade area ratio of {}", span(&raw)),
            Latent::Reduction => {
                format!("a ratio of {} (stated {})", span(&raw), number(self.base.dists[latent as usize].middle, 0.01))
            }
            Latent::TopRatio => format!(
                "a no-load speed of {}",
                span(&scaled(60.0 * self.base.dists[Latent::RatedSpeed as usize].middle, "rpm"))
            ),
            Latent::ShaftDrag => format!("{} of the torque lost in bearing or gland", span(&scaled(100.0, "%"))),
            Latent::Weight if self.base.knowledge.weight_is_ratio => {
                let mass: Vec<f64> = crowd.boats.iter().map(|b| b.form.mass).collect();
                let band = crate::crowd::stats::Weighted::new(&crowd.weights).band(&mass, "kg");
                format!("a displacement of {}", span(&band))
            }
            Latent::Weight => format!("a displacement of {}", span(&Band { unit: "kg", ..raw })),
            Latent::Tachometer => {
                let bias = self.base.observations.iter().map(|o| o.bias).fold(0.0, f64::max);
                let off = |z: f64| 100.0 * (bias * z).exp_m1();
                let band = Band { low: off(raw.low), middle: off(raw.middle), high: off(raw.high), unit: "%" };
                let size = Band {
                    low: band.low.abs().min(band.high.abs()),
                    middle: band.middle.abs(),
                    high: band.low.abs().max(band.high.abs()),
                    unit: "%",
                };
                format!("a tachometer that reads {} {}", span(&size), if band.middle < 0.0 { "low" } else { "high" })
            }
            Latent::CavitationHold => format!(
                "a thrust limit {} of the usual",
                span(&scaled(100.0 / self.base.dists[latent as usize].middle, "%"))
            ),
            Latent::ThrustError => {
                let lost = |z: f64| 100.0 * (1.0 - (self.base.series.thrust * z).exp());
                format!(
                    "a thrust {} less than the series'",
                    span(&Band { low: lost(raw.high), middle: lost(raw.middle), high: lost(raw.low), unit: "%" })
                )
            }
            _ => String::new(),
        }
    }

    fn headline(&self, causes: &[Answer], explained: bool, next: Option<&str>) -> String {
        let mut text = String::new();
        if !explained {
            text.push_str(
                "No single cause on the list explains these readings; two may be mixed, or a figure is false. ",
            );
        }
        let Some(first) = causes.first() else { return text };
        let leading: Vec<&Answer> = causes.iter().take(3).filter(|c| c.chance > 0.15).collect();
        match leading.as_slice() {
            [] => text.push_str("Nothing stands out yet."),
            [only] => text.push_str(&format!("Most likely {}, {}.", only.cause, chance(only.chance))),
            [first, rest @ ..] => {
                let others: Vec<String> = rest.iter().map(|c| format!("{} ({})", c.cause, chance(c.chance))).collect();
                text.push_str(&format!(
                    "Most likely {}, {}; then {}.",
                    first.cause,
                    chance(first.chance),
                    others.join("; ")
                ));
            }
        }
        if let Some(missing) = &self.missing
            && missing.middle.abs() > 2.5 * self.inch.middle.max(1.0)
            && missing.middle.abs() > 300.0
        {
            text.push_str(&format!(
                " {} rpm are {}: no error of an inch or two in pitch does that (an inch is worth {}).",
                number(missing.middle.abs(), 50.0),
                if missing.middle > 0.0 { "missing" } else { "too many" },
                span(&self.inch)
            ));
        }
        if first.chance < 0.9
            && let Some(next) = next
        {
            text.push_str(&format!(" Next: {next}."));
        }
        text
    }
}
