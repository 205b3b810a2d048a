//! Putting steady stretches at one throttle setting and opposite courses together.

use crate::average::{Mean, combined, mean_of_means, timed};
use crate::doubt::Doubt;
use crate::sample::{ENGINES, KNOT, turn};
use crate::steady::Stretch;

/// What belongs together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pairing {
    /// Engine speeds that are equal, as a part of themselves.
    pub rpm: f64,
    /// How far from opposite two courses may be, degrees.
    pub course: f64,
    /// Longest time from the end of one run to the start of the next, s.
    pub gap: f64,
}

impl Default for Pairing {
    fn default() -> Pairing {
        Pairing { rpm: 0.02, course: 25.0, gap: 3600.0 }
    }
}

/// Runs at one throttle setting, alternately there and back; or a single one.
#[derive(Clone, Debug, PartialEq)]
pub struct Runs {
    /// One for each direction in the order they were run.
    pub stretches: Vec<Stretch>,
    /// Speed through the water, m/s: mean of means over ground, or the log's where there is no speed over ground.
    pub speed: f64,
    /// Half the 80 % band of that mean from the scatter of the runs alone, m/s.
    pub scatter: f64,
    /// Half the 80 % band with instrument, wind, and an unknown or changing current, m/s.
    pub half: f64,
    /// Current along the first run's course at the middle of the runs, m/s.
    pub current: Option<f64>,
    /// How it changed, m/s per hour (three runs and more).
    pub drift: Option<f64>,
    /// Mean engine speed, rpm.
    pub rpm: Option<f64>,
    /// Mean speed by the log, m/s, where it was recorded as well.
    pub by_log: Option<f64>,
    /// What looks weak.
    pub doubts: Vec<Doubt>,
}

/// Most runs put together.
const MOST: usize = 4;

/// Half the 80 % band of a single run over ground: the current is in it.
const ONE_WAY: f64 = job::spread::ONE_RUN;

/// Puts stretches together, in order of time.
#[must_use]
pub fn pair(stretches: &[Stretch], pairing: &Pairing) -> Vec<Runs> {
    let mut legs = legs(stretches, pairing);
    let mut sets = Vec::new();
    while !legs.is_empty() {
        let mut chain = vec![legs.remove(0)];
        while chain.len() < MOST {
            let Some(last) = chain.last() else { break };
            // The next at this setting the other way; what lies between belongs to other sets.
            let next = legs.iter().position(|leg| {
                same_setting(&chain, leg, pairing) && leg.from - last.to <= pairing.gap && opposite(last, leg, pairing)
            });
            match next {
                Some(at) => chain.push(legs.remove(at)),
                None => break,
            }
        }
        sets.push(reduce(chain));
    }
    sets.sort_by(|a, b| a.stretches[0].from.total_cmp(&b.stretches[0].from));
    sets
}

fn same_rpm(a: Option<f64>, b: Option<f64>, part: f64) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => (a - b).abs() <= part * 0.5 * (a + b),
        (None, None) => true,
        _ => false,
    }
}

fn same_setting(chain: &[Stretch], leg: &Stretch, pairing: &Pairing) -> bool {
    let equal = chain.iter().all(|other| same_rpm(other.rpm.map(|m| m.value), leg.rpm.map(|m| m.value), pairing.rpm));
    if leg.rpm.is_some() {
        return equal;
    }
    // Without an engine speed the log tells the setting, and runs the same way have to be alike; two opposite ones may differ
    // by a current of 2 kn, and no more than half the speed.
    let near = |a: Option<Mean>, b: Option<Mean>, reach: &dyn Fn(f64) -> f64| match (a, b) {
        (Some(a), Some(b)) => (a.value - b.value).abs() <= reach(0.5 * (a.value + b.value)),
        _ => true,
    };
    equal
        && chain.iter().rev().enumerate().all(|(back, other)| {
            let reach: &dyn Fn(f64) -> f64 =
                if back % 2 == 0 { &|v| (0.5 * v).min(4.0 * KNOT) } else { &|v| (0.04 * v).max(0.2 * KNOT) };
            near(other.through_water, leg.through_water, &|v| 0.05 * v)
                && near(other.over_ground, leg.over_ground, reach)
        })
}

fn opposite(a: &Stretch, b: &Stretch, pairing: &Pairing) -> bool {
    matches!((a.course, b.course), (Some(a), Some(b)) if turn(a + 180.0, b).abs() <= pairing.course)
}

/// Stretches one behind the other on the same course at the same setting are one leg that was disturbed.
fn legs(stretches: &[Stretch], pairing: &Pairing) -> Vec<Stretch> {
    let mut legs: Vec<Stretch> = Vec::new();
    for stretch in stretches {
        let same = legs.last().is_some_and(|last| {
            let course = match (last.course, stretch.course) {
                (Some(a), Some(b)) => turn(a, b).abs() <= pairing.course,
                (None, None) => true,
                _ => false,
            };
            let speed = match (last.speed(), stretch.speed()) {
                (Some(a), Some(b)) => (a.value - b.value).abs() <= (0.03 * a.value).max(0.2 * KNOT),
                _ => false,
            };
            let rpm = same_rpm(last.rpm.map(|m| m.value), stretch.rpm.map(|m| m.value), pairing.rpm);
            course && speed && rpm && stretch.from - last.to <= 120.0
        });
        match legs.last_mut() {
            Some(last) if same => *last = joined(last, stretch),
            _ => legs.push(stretch.clone()),
        }
    }
    legs
}

fn joined(a: &Stretch, b: &Stretch) -> Stretch {
    let total = (a.seconds + b.seconds).max(f64::MIN_POSITIVE);
    let (wa, wb) = (a.seconds / total, b.seconds / total);
    let mean = |x: Option<Mean>, y: Option<Mean>| match (x, y) {
        (Some(x), Some(y)) => {
            let value = wa * x.value + wb * y.value;
            // Scatter within the pieces, and between them.
            let within = (wa * x.error).powi(2) + (wb * y.error).powi(2);
            let between = wa * wb * ((x.value - y.value).powi(2) - x.error.powi(2) - y.error.powi(2)).max(0.0);
            Some(Mean { value, error: (within + between).sqrt(), freedom: x.freedom + y.freedom })
        }
        (x, y) => x.or(y),
    };
    let plain = |x: Option<f64>, y: Option<f64>| match (x, y) {
        (Some(x), Some(y)) => Some(wa * x + wb * y),
        (x, y) => x.or(y),
    };
    let mut doubts = a.doubts.clone();
    doubts.extend(b.doubts.iter().filter(|d| !a.doubts.contains(d)).cloned());
    Stretch {
        from: a.from,
        to: b.to,
        seconds: a.seconds + b.seconds,
        rpm: mean(a.rpm, b.rpm),
        engine_rpm: std::array::from_fn::<_, ENGINES, _>(|e| plain(a.engine_rpm[e], b.engine_rpm[e])),
        shaft_rpm: plain(a.shaft_rpm, b.shaft_rpm),
        over_ground: mean(a.over_ground, b.over_ground),
        through_water: mean(a.through_water, b.through_water),
        course: match (a.course, b.course) {
            (Some(x), Some(y)) => Some((x + wb * turn(x, y)).rem_euclid(360.0)),
            (x, y) => x.or(y),
        },
        depth: match (a.depth, b.depth) {
            (Some(x), Some(y)) => Some(x.min(y)),
            (x, y) => x.or(y),
        },
        fuel: plain(a.fuel, b.fuel),
        trend: if a.trend.abs() > b.trend.abs() { a.trend } else { b.trend },
        outliers: a.outliers + b.outliers,
        doubts,
    }
}

fn reduce(stretches: Vec<Stretch>) -> Runs {
    let mut doubts = Vec::new();
    for doubt in stretches.iter().flat_map(|s| &s.doubts) {
        if !doubts.contains(doubt) {
            doubts.push(doubt.clone());
        }
    }
    let mean = |of: &dyn Fn(&Stretch) -> Option<f64>| {
        let values: Vec<f64> = stretches.iter().filter_map(of).collect();
        (values.len() == stretches.len()).then(|| values.iter().sum::<f64>() / values.len() as f64)
    };
    let rpm = mean(&|s| s.rpm.map(|m| m.value));
    let by_log =
        mean(&|s| s.through_water.map(|m| m.value)).filter(|_| stretches.iter().all(|s| s.over_ground.is_some()));
    let ground: Vec<Mean> = stretches.iter().filter_map(|s| s.over_ground).collect();
    let speeds: Vec<Mean> =
        if ground.len() == stretches.len() { ground } else { stretches.iter().filter_map(Stretch::speed).collect() };
    let by_ground = stretches.iter().all(|s| s.over_ground.is_some());
    let values: Vec<f64> = speeds.iter().map(|m| m.value).collect();
    let times: Vec<f64> = stretches.iter().map(Stretch::middle).collect();
    let speed = mean_of_means(&values).unwrap_or(0.0);
    let fitted = if by_ground { timed(&values, &times) } else { None };
    let current = fitted.as_ref().and_then(|(_, c)| c.first().copied());
    let drift = fitted.as_ref().and_then(|(_, c)| c.get(1).map(|v| v * 3600.0));
    let (scatter, mut half) = combined(&speeds, &times, current.unwrap_or(0.0));
    if by_ground && stretches.len() == 1 {
        half = half.hypot(ONE_WAY);
        doubts.push(Doubt::new(
            "one-way",
            "one direction only: the current is in the speed",
            "run the same throttle back on the opposite course",
        ));
    }
    if !by_ground {
        half = half.max(0.05 * speed);
    }
    if let Some((exact, _)) = &fitted
        && (exact - speed).abs() > 0.05 * KNOT
    {
        let message = format!(
            "the runs are unequally spaced in time: at their real times the speed comes out at {:.2} kn",
            exact / KNOT
        );
        half = half.hypot(exact - speed);
        doubts.push(Doubt::new("uneven-times", message, "turn at once, and run each way for the same time"));
    }
    if let Some(current) = current.filter(|c| c.abs() > 0.5 * KNOT && stretches.len() == 2) {
        let message = format!("a current of {:.1} kn between two runs", current.abs() / KNOT);
        doubts.push(Doubt::new("strong-current", message, "run three or four times, or at slack water"));
    }
    if rpm.is_none() && stretches.len() > 1 {
        doubts.push(Doubt::new(
            "no-rpm",
            "the log holds no engine speed: that the throttle was the same is assumed",
            "write the engine speed into the reading",
        ));
    }
    if let Some(log) = by_log.filter(|_| stretches.len() > 1)
        && (log / speed - 1.0).abs() > 0.05
    {
        let message = format!(
            "the boat's log shows {:.2} kn where satellites give {:.2} kn both ways ({:+.0} %)",
            log / KNOT,
            speed / KNOT,
            (log / speed - 1.0) * 100.0
        );
        doubts.push(Doubt::new("log-differs", message, "clean and calibrate the log"));
    }
    Runs { stretches, speed, scatter, half, current, drift, rpm, by_log, doubts }
}
