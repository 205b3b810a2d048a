//! The measurement worth making next: how much it may be expected to raise the chance of naming the right cause.
//!
//! Each suspicion foretells the result of each measurement as a normal distribution (its boats' spread and the
//! instrument's). The expected chance of the likeliest cause after the result is `∫ maxₖ pₖ fₖ(y) dy` over the causes; what
//! it gains over the present greatest chance is the worth. Exact for normal results, no simulation needed.

use super::hypothesis::Cause;
use super::weigh::Weighed;
use crate::crowd::Crowd;
use crate::crowd::definite::Definite;
use crate::crowd::latent::Latent;
use crate::crowd::setup::Setup;
use crate::crowd::stats::{Weighted, resample};
use crate::report::{Cost, NextMeasurement};
use hydro::speed::EngineSpeed;

/// Boats of each suspicion a measurement is foretold on.
const ASKED: usize = 96;

struct Measurement {
    code: &'static str,
    words: &'static str,
    cost: Cost,
    haul_out: bool,
    /// sd of the result (of its logarithm where it is one).
    sd: f64,
    result: fn(&Crowd, &Definite) -> f64,
    /// Only for more than one engine.
    pair: bool,
}

fn row(boat: &Definite, latent: Latent) -> f64 {
    boat.row[latent as usize]
}

const MEASUREMENTS: &[Measurement] = &[
    Measurement {
        code: "optical-tachometer",
        words: "read full-throttle engine speed with an optical tachometer on the crank pulley, the dashboard beside it",
        cost: Cost::Small,
        haul_out: false,
        sd: 0.01,
        result: |_, b| b.full.point.engine_speed.0.ln(),
        pair: false,
    },
    Measurement {
        code: "shaft-and-engine",
        words: "read engine and shaft speed together with an optical tachometer",
        cost: Cost::Small,
        haul_out: false,
        sd: 0.004,
        result: |_, b| row(b, Latent::Reduction).ln(),
        pair: false,
    },
    Measurement {
        code: "gps-double-run",
        words: "run full throttle both ways by GPS in deep water",
        cost: Cost::Free,
        haul_out: false,
        sd: 0.03,
        result: |_, b| b.full.point.speed.max(0.1).ln(),
        pair: false,
    },
    Measurement {
        code: "part-throttle-run",
        words: "run at 70 % of full-throttle engine speed both ways by GPS",
        cost: Cost::Free,
        haul_out: false,
        sd: 0.04,
        result: |c, b| {
            let n = EngineSpeed(0.7 * typical_speed(c));
            b.described.installation.at_engine_speed(n).point.speed.max(0.1).ln()
        },
        pair: false,
    },
    Measurement {
        code: "scrape-and-rerun",
        words: "have the blades scraped and the bottom scrubbed, run again the same day",
        cost: Cost::Middling,
        haul_out: false,
        sd: 0.012,
        result: |c, b| {
            let clean = Setup::clean(None);
            let then = b.fitted(&c.plan, &clean).installation.full_throttle().point.engine_speed.0;
            (then / b.full.point.engine_speed.0).ln()
        },
        pair: false,
    },
    Measurement {
        code: "look-at-blades",
        words: "look at the blades: diver, camera on a stick, or the beach at low water",
        cost: Cost::Small,
        haul_out: false,
        sd: 0.6,
        result: |_, b| row(b, Latent::BladeRoughness).ln(),
        pair: false,
    },
    Measurement {
        code: "look-at-bottom",
        words: "look at the bottom: diver or camera on a stick",
        cost: Cost::Small,
        haul_out: false,
        sd: 0.6,
        result: |_, b| row(b, Latent::HullRoughness).ln(),
        pair: false,
    },
    Measurement {
        code: "engine-power",
        words: "have lever travel, exhaust temperature, boost, load and back-pressure read at full throttle",
        cost: Cost::Middling,
        haul_out: false,
        sd: 0.07,
        result: |_, b| row(b, Latent::Condition).ln(),
        pair: false,
    },
    Measurement {
        code: "no-load-speed",
        words: "read the no-load speed in neutral with an optical tachometer",
        cost: Cost::Small,
        haul_out: false,
        sd: 0.01,
        result: |_, b| row(b, Latent::TopRatio).ln(),
        pair: false,
    },
    Measurement {
        code: "turn-the-shaft",
        words: "engine stopped, key out: turn the shaft by hand, feel gland and bearing",
        cost: Cost::Free,
        haul_out: false,
        sd: 0.05,
        result: |_, b| row(b, Latent::ShaftDrag),
        pair: false,
    },
    Measurement {
        code: "weigh",
        words: "weigh her: the lift has a scale",
        cost: Cost::Large,
        haul_out: true,
        sd: 0.015,
        result: |_, b| b.form.mass.ln(),
        pair: false,
    },
    Measurement {
        code: "measure-pitch",
        words: "measure pitch and tip radius of every blade",
        cost: Cost::Large,
        haul_out: true,
        sd: 0.012,
        result: |_, b| row(b, Latent::Pitch).ln(),
        pair: false,
    },
    Measurement {
        code: "trace-a-blade",
        words: "trace a blade for its area, lay a straight edge on face and trailing edge",
        cost: Cost::Large,
        haul_out: true,
        sd: 0.03,
        result: |_, b| row(b, Latent::AreaRatio).ln(),
        pair: false,
    },
    Measurement {
        code: "blade-by-blade",
        words: "compare the blades with each other: tip radius, track, edges",
        cost: Cost::Middling,
        haul_out: false,
        sd: 0.8,
        result: |_, b| row(b, Latent::ThrustError),
        pair: false,
    },
    Measurement {
        code: "swap-tachometers",
        words: "swap the two tachometers' feeds and run again",
        cost: Cost::Free,
        haul_out: false,
        sd: 0.02,
        result: |c, b| {
            let bias = c.plan.observations.iter().map(|o| o.bias).fold(0.0, f64::max);
            bias * row(b, Latent::Tachometer)
        },
        pair: true,
    },
    Measurement {
        code: "deep-water",
        words: "repeat the run in deep water",
        cost: Cost::Free,
        haul_out: false,
        sd: 0.6,
        result: |_, b| row(b, Latent::HullErrorHump),
        pair: false,
    },
];

fn typical_speed(crowd: &Crowd) -> f64 {
    crowd.plan.dists[Latent::RatedSpeed as usize].middle
}

/// Measurements, worthiest first.
pub(super) fn next(weighed: &[Weighed], screws: u8) -> Vec<NextMeasurement> {
    let top = weighed.iter().map(|w| w.log_weight).fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = weighed.iter().map(|w| (w.log_weight - top).exp()).collect();
    let total: f64 = weights.iter().sum();
    // Variants too unlikely to matter are left out of the sums.
    let kept: Vec<(&Weighed, f64)> =
        weighed.iter().zip(&weights).map(|(w, p)| (w, p / total)).filter(|(_, p)| *p > 0.003).collect();
    let samples: Vec<Vec<usize>> = kept.iter().map(|(w, _)| resample(&w.crowd.weights, ASKED)).collect();
    let now = Cause::ALL
        .iter()
        .map(|c| kept.iter().filter(|(w, _)| w.variant.cause == *c).map(|(_, p)| p).sum::<f64>())
        .fold(0.0, f64::max);
    let mut list: Vec<NextMeasurement> = MEASUREMENTS
        .iter()
        .filter(|m| !m.pair || screws > 1)
        .map(|m| {
            let foretold: Vec<(Cause, f64, f64, f64)> = kept
                .iter()
                .zip(&samples)
                .map(|((w, p), sample)| {
                    let results: Vec<f64> = sample.iter().map(|i| (m.result)(&w.crowd, &w.crowd.boats[*i])).collect();
                    let (mean, sd) = Weighted::new(&vec![1.0; results.len()]).moments(&results);
                    (w.variant.cause, *p, mean, sd.hypot(m.sd))
                })
                .collect();
            let worth = (expected_best(&foretold) - now).max(0.0);
            NextMeasurement {
                code: m.code,
                measurement: m.words.to_owned(),
                worth,
                because: format!(
                    "The chance of naming the right cause should rise from {} to {}.",
                    percent(now),
                    percent(now + worth)
                ),
                cost: m.cost,
                haul_out: m.haul_out,
            }
        })
        .collect();
    // What costs a haul-out must earn it: ranked by worth less a little for cost.
    let price = |m: &NextMeasurement| match m.cost {
        Cost::Free => 0.0,
        Cost::Small => 0.005,
        Cost::Middling => 0.015,
        Cost::Large => 0.03,
    };
    list.sort_by(|a, b| (b.worth - price(b)).total_cmp(&(a.worth - price(a))));
    list
}

fn percent(p: f64) -> String {
    format!("{} in 100", (100.0 * p).round())
}

/// `∫ max over causes of Σ p f(y) dy` for normal results, by an even grid over all of them.
fn expected_best(foretold: &[(Cause, f64, f64, f64)]) -> f64 {
    const STEPS: usize = 400;
    let low = foretold.iter().map(|(_, _, mean, sd)| mean - 5.0 * sd).fold(f64::INFINITY, f64::min);
    let high = foretold.iter().map(|(_, _, mean, sd)| mean + 5.0 * sd).fold(f64::NEG_INFINITY, f64::max);
    let step = (high - low) / STEPS as f64;
    if step.is_nan() || step <= 0.0 {
        return 0.0;
    }
    let mut sum = 0.0;
    for i in 0..STEPS {
        let y = low + (i as f64 + 0.5) * step;
        let mut best: f64 = 0.0;
        for cause in Cause::ALL {
            let density: f64 = foretold
                .iter()
                .filter(|(c, ..)| *c == cause)
                .map(|(_, p, mean, sd)| {
                    p * (-0.5 * ((y - mean) / sd).powi(2)).exp() / (sd * std::f64::consts::TAU.sqrt())
                })
                .sum();
            best = best.max(density);
        }
        sum += best * step;
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_measurement_that_tells_nothing_is_worth_nothing() {
        let same = [(Cause::AsStated, 0.6, 1.0, 0.1), (Cause::Stamp, 0.4, 1.0, 0.1)];
        assert!((expected_best(&same) - 0.6).abs() < 1e-3);
    }

    #[test]
    fn a_measurement_that_parts_two_causes_settles_them() {
        let apart = [(Cause::AsStated, 0.6, 0.0, 0.1), (Cause::Stamp, 0.4, 5.0, 0.1)];
        assert!((expected_best(&apart) - 1.0).abs() < 0.02, "{}", expected_best(&apart));
    }
}
