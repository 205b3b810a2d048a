//! Reducing a reading of the job file: its mean speed, the current in it, and what is weak about it.

use crate::average::{mean_of_means, weights};
use crate::doubt::Doubt;
use crate::sample::KNOT;
use job::{Quantity, Reading, Source};

/// A reading reduced.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reduced {
    /// Mean speed over the directions, m/s: mean of means of the speeds, never of the times over a distance.
    pub speed: Option<f64>,
    /// Half the 80 % band of that mean, m/s, as the job file's own rules give it.
    pub half: Option<f64>,
    /// Current along the first run, m/s (runs by satellite there and back).
    pub current: Option<f64>,
    /// How the current changed from run to run, m/s (three runs and more).
    pub drift: Option<f64>,
    /// What the runs in one direction differ by at most, m/s: a drifting current, or unsteadiness.
    pub unsteady: Option<f64>,
    /// Mean speed by the log less that by satellite, m/s, where the list holds both.
    pub log_error: Option<f64>,
    /// What is weak about the reading.
    pub doubts: Vec<Doubt>,
}

/// Satellite speeds there and back that differ by more mean a current worth a third run, m/s.
const WAYS_DIFFER: f64 = KNOT;
/// Runs in one direction that differ by more were not the same, m/s.
const RUNS_DIFFER: f64 = 0.5 * KNOT;

/// Reduces a reading. It is told nothing of the boat; what needs her length (shallow water) is judged elsewhere.
#[must_use]
pub fn reduce(reading: &Reading) -> Reduced {
    let mut reduced = Reduced::default();
    speeds(reading, &mut reduced);
    turns(reading, &mut reduced);
    if reading.full_throttle && reading.engine_speed.is_none() && reading.shaft_speed.is_none() {
        reduced.doubts.push(Doubt::new(
            "no-rpm",
            "full throttle, and no engine speed",
            "the engine speed at full throttle is the one reading that says most: take it",
        ));
    }
    reduced
}

fn by(runs: &[Quantity], source: Source) -> Vec<f64> {
    runs.iter().filter(|r| r.source == Some(source)).map(|r| r.middle).collect()
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

fn speeds(reading: &Reading, reduced: &mut Reduced) {
    let runs: &[Quantity] = if reading.speeds.is_empty() { reading.speed.as_slice() } else { &reading.speeds };
    if runs.is_empty() {
        return;
    }
    let mut doubt = |code, message: String, help: &str| reduced.doubts.push(Doubt::new(code, message, help));
    let (gps, log) = (by(runs, Source::Gps), by(runs, Source::Log));
    let values: Vec<f64> = runs.iter().map(|r| r.middle).collect();
    let half = |q: &Quantity| 0.5 * (q.high - q.low);
    if !gps.is_empty() && !log.is_empty() {
        // The log's number carries no current: it is no second direction.
        let speed = mean_of_means(&gps).unwrap_or_else(|| mean(&gps));
        reduced.speed = Some(speed);
        let weights = weights(gps.len());
        let squares: f64 = runs
            .iter()
            .filter(|r| r.source == Some(Source::Gps))
            .zip(&weights)
            .map(|(r, w)| (w * half(r)).powi(2))
            .sum();
        reduced.half = Some(squares.sqrt());
        let error = mean(&log) - speed;
        reduced.log_error = Some(error);
        doubt(
            "log-and-gps",
            format!(
                "satellite and log speeds in one list; the log shows {:+.2} kn against the satellites",
                error / KNOT
            ),
            "give the runs by satellite as the speed, and the log's number in the notes",
        );
    } else {
        reduced.speed = mean_of_means(&values);
        reduced.half = match &reading.speed {
            Some(speed) => Some(half(speed)),
            None => {
                let parts = runs.iter().zip(weights(runs.len())).map(|(r, w)| (w * half(r)).powi(2));
                Some(parts.sum::<f64>().sqrt())
            }
        };
    }
    if log.is_empty() && values.len() >= 2 {
        currents(&values, reduced);
    }
    let mut doubt = |code, message: String, help: &str| reduced.doubts.push(Doubt::new(code, message, help));
    if gps.len() == 1 && log.is_empty() && values.len() == 1 {
        doubt(
            "one-way",
            "one direction only: the current is in the speed".to_owned(),
            "run the same throttle back on the opposite course",
        );
    }
    if gps.is_empty() && log.len() == values.len() {
        doubt(
            "log-only",
            "a speed by the log: paddle wheels foul and read wrong by 5 % and more".to_owned(),
            "run both ways by satellite",
        );
    }
    // A mean of runs equal to the last digit: the current would have to be nil and the sea flat.
    if values.len() >= 2 && log.is_empty() && runs.iter().all(|r| number(&r.text) == number(&runs[0].text)) {
        doubt(
            "equal-both-ways",
            format!("all runs show {} to the digit", number(&runs[0].text)),
            "rare on the water: was one copied, or read off a log, which does not see the current?",
        );
    }
    let half_knots =
        |r: &Quantity| r.text.contains("kn") && (r.middle / KNOT * 2.0 - (r.middle / KNOT * 2.0).round()).abs() < 1e-6;
    if runs.iter().all(half_knots) && !runs.iter().any(|r| r.own_spread) {
        doubt(
            "round-speed",
            "speeds in whole or half knots: rounded".to_owned(),
            "write what the receiver showed, averaged over a minute",
        );
    }
}

fn currents(values: &[f64], reduced: &mut Reduced) {
    let Some(speed) = reduced.speed else { return };
    let times: Vec<f64> = (0..values.len()).map(|at| at as f64).collect();
    if values.len() <= 4
        && let Some((_, c)) = crate::average::timed(values, &times)
    {
        reduced.current = c.first().copied();
        reduced.drift = c.get(1).copied();
    } else {
        let signed = values.iter().enumerate().map(|(at, v)| if at % 2 == 0 { v - speed } else { speed - v });
        reduced.current = Some(signed.sum::<f64>() / values.len() as f64);
    }
    let mut unsteady: f64 = 0.0;
    for way in 0..2 {
        let same = || values.iter().skip(way).step_by(2).copied();
        if let (Some(low), Some(high)) = (same().reduce(f64::min), same().reduce(f64::max)) {
            unsteady = unsteady.max(high - low);
        }
    }
    reduced.unsteady = (values.len() >= 3).then_some(unsteady);
    if unsteady > RUNS_DIFFER {
        let message = format!("runs in the same direction differ by {:.1} kn", unsteady / KNOT);
        reduced.doubts.push(Doubt::new(
            "unsteady",
            message,
            "the current turned, or the throttle was not the same: run again, quickly one after the other",
        ));
    }
    let differ = (values[0] - values[1]).abs();
    if values.len() == 2 && differ > WAYS_DIFFER {
        let message =
            format!("the two ways differ by {:.1} kn: a current of {:.1} kn", differ / KNOT, 0.5 * differ / KNOT);
        reduced.doubts.push(Doubt::new(
            "strong-current",
            message,
            "a current that strong changes between two runs: run three or four times, or at slack water",
        ));
    }
}

fn turns(reading: &Reading, reduced: &mut Reduced) {
    let Some(turns) = &reading.engine_speed else { return };
    let rpm = turns.middle * 60.0;
    let mut doubt = |code, message: String, help: &str| reduced.doubts.push(Doubt::new(code, message, help));
    match turns.source {
        Some(Source::Dashboard) if !turns.own_spread => doubt(
            "rpm-dashboard",
            format!("{rpm:.0} rpm by the dashboard: out by 100 rpm as often as not"),
            "check it with an optical tachometer at idle, midway and full throttle",
        ),
        Some(Source::Memory | Source::Estimate) => doubt(
            "rpm-remembered",
            format!("{rpm:.0} rpm is not read off an instrument"),
            "read it off, best with an optical tachometer",
        ),
        Some(Source::Optical | Source::Display)
            if rpm >= 500.0 && (rpm / 100.0 - (rpm / 100.0).round()).abs() < 1e-6 =>
        {
            doubt(
                "round-rpm",
                format!("{rpm:.0} rpm is a round number for an instrument that shows single turns"),
                "write what it showed",
            );
        }
        _ => {}
    }
}

/// The number at the start of a quantity as written, with its unit.
fn number(text: &str) -> &str {
    let end = text.find(['±', '(', '+']).unwrap_or(text.len());
    text[..end].trim()
}
