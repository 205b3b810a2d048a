//! Finding the stretches of a log in which nothing changed.

use crate::average::{Mean, block_mean};
use crate::doubt::Doubt;
use crate::sample::{ENGINES, KNOT, Sample, turn};
use crate::windows::{Row, longest_windows, smooth};

/// What counts as steady. Limits are half widths: everything stays within ± the limit of the stretch's middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Shortest stretch, s.
    pub seconds: f64,
    /// Engine speed, as a part of itself.
    pub rpm: f64,
    /// Boat speed, as a part of itself.
    pub speed: f64,
    /// Boat speed, m/s, where that is more.
    pub speed_floor: f64,
    /// Course, degrees.
    pub course: f64,
    /// Slower than this is lying still or manoeuvring, m/s.
    pub slowest: f64,
}

impl Default for Limits {
    fn default() -> Limits {
        Limits { seconds: 60.0, rpm: 0.015, speed: 0.03, speed_floor: 0.15 * KNOT, course: 15.0, slowest: KNOT }
    }
}

/// A steady stretch.
#[derive(Clone, Debug, PartialEq)]
pub struct Stretch {
    /// Its first and last moment, as in [`Sample::time`].
    pub from: f64,
    /// Last moment.
    pub to: f64,
    /// Time actually run steadily, s (less than `to - from` when pieces were put together).
    pub seconds: f64,
    /// Mean engine speed over all engines, rpm.
    pub rpm: Option<Mean>,
    /// Mean speed of each engine, rpm.
    pub engine_rpm: [Option<f64>; ENGINES],
    /// Mean shaft speed over all shafts, rpm.
    pub shaft_rpm: Option<f64>,
    /// Speed over ground, m/s.
    pub over_ground: Option<Mean>,
    /// Speed through the water, m/s.
    pub through_water: Option<Mean>,
    /// Course over ground, degrees true.
    pub course: Option<f64>,
    /// Water depth, m: the least within the stretch.
    pub depth: Option<f64>,
    /// Fuel of all engines together, m³/s.
    pub fuel: Option<f64>,
    /// How much the speed rose over the stretch, by a straight line through it, m/s.
    pub trend: f64,
    /// Single values left out as outliers.
    pub outliers: usize,
    /// What looks weak about it.
    pub doubts: Vec<Doubt>,
}

impl Stretch {
    /// Its middle in time.
    #[must_use]
    pub fn middle(&self) -> f64 {
        0.5 * (self.from + self.to)
    }

    /// The speed it is judged by: over ground, else through the water.
    #[must_use]
    pub fn speed(&self) -> Option<Mean> {
        self.over_ground.or(self.through_water)
    }
}

/// Finds the steady stretches of a series in order of time.
#[must_use]
pub fn stretches(samples: &[Sample], limits: &Limits) -> Vec<Stretch> {
    let rows = rows(samples);
    let mut found: Vec<Stretch> = Vec::new();
    let mut from = 0;
    while from < rows.len() {
        let mut to = from + 1;
        while to < rows.len() && rows[to].piece == rows[from].piece {
            to += 1;
        }
        for (a, b) in longest_windows(&rows[from..to], limits) {
            let (first, last) = (rows[from + a].at, rows[from + b - 1].at);
            found.extend(stretch(&samples[first..=last], limits));
        }
        from = to;
    }
    found.sort_by(|a, b| a.from.total_cmp(&b.from));
    found
}

/// The series with what is needed to judge steadiness, cut at gaps and where a quantity comes or goes.
fn rows(samples: &[Sample]) -> Vec<Row> {
    let ground = samples.iter().filter(|s| s.over_ground.is_some()).count();
    let water = samples.iter().filter(|s| s.through_water.is_some()).count();
    let by_ground = ground >= water.min(samples.len() / 2);
    let every = |has: &dyn Fn(&Sample) -> bool| {
        let times: Vec<f64> = samples.iter().filter(|s| has(s)).map(|s| s.time).collect();
        let mut steps: Vec<f64> = times.windows(2).map(|w| w[1] - w[0]).collect();
        steps.sort_by(f64::total_cmp);
        steps.get(steps.len() / 2).copied().unwrap_or(1.0)
    };
    // A value holds until three more are missed, but never longer than half a minute beyond the log's own pace.
    let hold = |step: f64| (3.5 * step).clamp(5.0, 30.0_f64.max(2.0 * step));
    let speed_of = |s: &Sample| if by_ground { s.over_ground } else { s.through_water };
    let (hold_speed, hold_rpm) = (hold(every(&|s| speed_of(s).is_some())), hold(every(&|s| s.rpm().is_some())));
    let hold_course = hold(every(&|s| s.course.is_some()));
    let mut rows: Vec<Row> = Vec::with_capacity(samples.len());
    let mut last_speed = (f64::NEG_INFINITY, 0.0);
    let mut last_rpm = (f64::NEG_INFINITY, 0.0);
    let mut last_course = (f64::NEG_INFINITY, 0.0);
    for (at, sample) in samples.iter().enumerate() {
        let t = sample.time;
        if let Some(v) = speed_of(sample) {
            last_speed = (t, v);
        }
        if let Some(v) = sample.rpm() {
            last_rpm = (t, v);
        }
        if let Some(course) = sample.course {
            // Unwound, so that north is no step.
            let base = if last_course.0.is_finite() { last_course.1 + turn(last_course.1, course) } else { course };
            last_course = (t, base);
        }
        if t - last_speed.0 > hold_speed {
            continue;
        }
        let held = |last: (f64, f64), hold: f64| (t - last.0 <= hold).then_some(last.1);
        let row = Row {
            at,
            time: t,
            speed: last_speed.1,
            rpm: held(last_rpm, hold_rpm),
            course: held(last_course, hold_course),
            piece: 0,
        };
        let piece = match rows.last() {
            None => 0,
            Some(before) => {
                let same = row.rpm.is_some() == before.rpm.is_some()
                    && row.course.is_some() == before.course.is_some()
                    && t - before.time <= hold_speed.max(10.0);
                before.piece + usize::from(!same)
            }
        };
        rows.push(Row { piece, ..row });
    }
    smooth(&mut rows);
    rows
}

/// Middle value of a list; 0 for none.
fn median(values: &mut [f64]) -> f64 {
    values.sort_by(f64::total_cmp);
    values.get(values.len() / 2).copied().unwrap_or(0.0)
}

/// Takes single values far from the others out: more than four times the usual distance from the middle value (1.4826 makes
/// the median distance the standard deviation of a normal scatter), and more than `least`.
fn cleaned(record: Vec<(f64, f64)>, least: f64) -> (Vec<(f64, f64)>, usize) {
    let before = record.len();
    let middle = median(&mut record.iter().map(|r| r.1).collect::<Vec<_>>());
    let usual = median(&mut record.iter().map(|r| (r.1 - middle).abs()).collect::<Vec<_>>());
    let reach = (4.0 * 1.4826 * usual).max(least);
    let kept: Vec<(f64, f64)> = record.into_iter().filter(|r| (r.1 - middle).abs() <= reach).collect();
    let out = before - kept.len();
    (kept, out)
}

fn record(samples: &[Sample], of: impl Fn(&Sample) -> Option<f64>) -> Vec<(f64, f64)> {
    samples.iter().filter_map(|s| of(s).map(|v| (s.time, v))).collect()
}

fn plain_mean(samples: &[Sample], of: impl Fn(&Sample) -> Option<f64>) -> Option<f64> {
    let (kept, _) = cleaned(record(samples, of), 0.0);
    (!kept.is_empty()).then(|| kept.iter().map(|r| r.1).sum::<f64>() / kept.len() as f64)
}

fn stretch(samples: &[Sample], limits: &Limits) -> Option<Stretch> {
    let (first, last) = (samples.first()?, samples.last()?);
    let floor = limits.speed_floor;
    let (ground, out) = cleaned(record(samples, |s| s.over_ground), floor);
    let (water, more) = cleaned(record(samples, |s| s.through_water), floor);
    let (turns, and) = cleaned(record(samples, Sample::rpm), 1.0);
    let used = if ground.is_empty() { &water } else { &ground };
    let speed = block_mean(used)?;
    let trend = slope(used) * (last.time - first.time);
    let mut sums = (0.0, 0.0);
    for course in samples.iter().filter_map(|s| s.course) {
        let angle = course.to_radians();
        sums = (sums.0 + angle.sin(), sums.1 + angle.cos());
    }
    let mut found = Stretch {
        from: first.time,
        to: last.time,
        seconds: last.time - first.time,
        rpm: block_mean(&turns),
        engine_rpm: std::array::from_fn(|e| plain_mean(samples, |s| s.engine_rpm[e])),
        shaft_rpm: plain_mean(samples, |s| {
            let shafts: Vec<f64> = s.shaft_rpm.iter().flatten().copied().collect();
            (!shafts.is_empty()).then(|| shafts.iter().sum::<f64>() / shafts.len() as f64)
        }),
        over_ground: block_mean(&ground),
        through_water: block_mean(&water),
        course: (sums != (0.0, 0.0)).then(|| sums.0.atan2(sums.1).to_degrees().rem_euclid(360.0)),
        depth: samples.iter().filter_map(|s| s.depth).reduce(f64::min),
        fuel: plain_mean(samples, |s| s.fuel),
        trend,
        outliers: out + more + and,
        doubts: Vec::new(),
    };
    if trend.abs() > (limits.speed * speed.value).max(floor) {
        let word = if trend > 0.0 { "rises" } else { "falls" };
        let message = format!("the speed still {word} by {:.2} kn over the stretch", trend.abs() / KNOT);
        found.doubts.push(Doubt::new("trend", message, "hold each setting until the speed no longer changes"));
    }
    if found.outliers * 20 > samples.len() {
        let message = format!("{} of {} values were left out as outliers", found.outliers, samples.len());
        found.doubts.push(Doubt::new("outliers", message, "look at the receiver or the sender"));
    }
    let engines: Vec<f64> = found.engine_rpm.iter().flatten().copied().collect();
    if let (Some(high), Some(low)) =
        (engines.iter().copied().reduce(f64::max), engines.iter().copied().reduce(f64::min))
        && high > 1.02 * low
    {
        let message = format!("the engines turn at {low:.0} and {high:.0} rpm");
        found.doubts.push(Doubt::new(
            "engines-differ",
            message,
            "swap the tachometers, then look which side it follows",
        ));
    }
    Some(found)
}

/// Slope of a straight line through a record (least squares), per second.
fn slope(record: &[(f64, f64)]) -> f64 {
    let n = record.len() as f64;
    let (mt, mv) = (record.iter().map(|r| r.0).sum::<f64>() / n, record.iter().map(|r| r.1).sum::<f64>() / n);
    let (mut tt, mut tv) = (0.0, 0.0);
    for (t, v) in record {
        tt += (t - mt).powi(2);
        tv += (t - mt) * (v - mv);
    }
    if tt > 0.0 { tv / tt } else { 0.0 }
}
