//! The longest windows of a series in which speed, engine speed and course stay within their limits.

use crate::sample::KNOT;
use crate::steady::Limits;
use std::collections::VecDeque;

/// One moment as the search sees it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Row {
    /// Index of the sample.
    pub(crate) at: usize,
    pub(crate) time: f64,
    pub(crate) speed: f64,
    pub(crate) rpm: Option<f64>,
    /// Course, unwound.
    pub(crate) course: Option<f64>,
    /// Rows of one piece have the same quantities and no gap between them.
    pub(crate) piece: usize,
}

/// Half the width of the running median, s: single outliers and the rhythm of small waves vanish, steps stay sharp.
const HALF: f64 = 5.0;

/// Replaces speed, engine speed and course by their running medians within each piece.
pub(crate) fn smooth(rows: &mut [Row]) {
    let raw = rows.to_vec();
    let (mut low, mut high) = (0, 0);
    let mut values: Vec<f64> = Vec::with_capacity(16);
    for at in 0..raw.len() {
        let here = raw[at];
        while raw[low].piece != here.piece || raw[low].time < here.time - HALF {
            low += 1;
        }
        high = high.max(at);
        while high < raw.len() && raw[high].piece == here.piece && raw[high].time <= here.time + HALF {
            high += 1;
        }
        let mut middle = |of: &dyn Fn(&Row) -> Option<f64>| {
            values.clear();
            values.extend(raw[low..high].iter().filter_map(of));
            values.sort_by(f64::total_cmp);
            values.get(values.len() / 2).copied()
        };
        let speed = middle(&|r| Some(r.speed)).unwrap_or(here.speed);
        let (rpm, course) = (middle(&|r| r.rpm), middle(&|r| r.course));
        rows[at] = Row { speed, rpm, course, ..here };
    }
}

/// Highest and lowest of a sliding window.
#[derive(Default)]
struct Extent {
    high: VecDeque<(usize, f64)>,
    low: VecDeque<(usize, f64)>,
}

impl Extent {
    fn push(&mut self, at: usize, value: f64) {
        while self.high.back().is_some_and(|b| b.1 <= value) {
            self.high.pop_back();
        }
        self.high.push_back((at, value));
        while self.low.back().is_some_and(|b| b.1 >= value) {
            self.low.pop_back();
        }
        self.low.push_back((at, value));
    }

    fn drop_before(&mut self, at: usize) {
        while self.high.front().is_some_and(|f| f.0 < at) {
            self.high.pop_front();
        }
        while self.low.front().is_some_and(|f| f.0 < at) {
            self.low.pop_front();
        }
    }

    /// Lowest and highest once `value` is in; of the window as it is without.
    fn with(&self, value: Option<f64>) -> (f64, f64) {
        let low = self.low.front().map_or(f64::INFINITY, |f| f.1);
        let high = self.high.front().map_or(f64::NEG_INFINITY, |f| f.1);
        value.map_or((low, high), |v| (low.min(v), high.max(v)))
    }
}

/// Non-overlapping windows (from, behind) of one piece, longest first, each at least as long as the limit says.
pub(crate) fn longest_windows(rows: &[Row], limits: &Limits) -> Vec<(usize, usize)> {
    let ends = ends(rows, limits);
    let lasts = |a: usize, b: usize| rows[b - 1].time - rows[a].time;
    let mut found = Vec::new();
    let mut open = vec![(0, rows.len())];
    while let Some((from, behind)) = open.pop() {
        if behind - from < 3 || lasts(from, behind) < limits.seconds {
            continue;
        }
        let mut best = (from, from + 1);
        for (start, end) in ends.iter().enumerate().take(behind).skip(from) {
            let end = (*end).min(behind);
            if end > start && lasts(start, end) > lasts(best.0, best.1) {
                best = (start, end);
            }
        }
        if lasts(best.0, best.1) < limits.seconds {
            continue;
        }
        open.push((from, best.0));
        open.push((best.1, behind));
        found.push(trimmed(rows, best, limits));
    }
    found
}

/// For each row the row behind the last that still fits with it.
fn ends(rows: &[Row], limits: &Limits) -> Vec<usize> {
    let mut ends = vec![0; rows.len()];
    let (mut speed, mut rpm, mut course) = (Extent::default(), Extent::default(), Extent::default());
    let mut behind = 0;
    for (start, end) in ends.iter_mut().enumerate() {
        for extent in [&mut speed, &mut rpm, &mut course] {
            extent.drop_before(start);
        }
        behind = behind.max(start);
        while let Some(row) = rows.get(behind) {
            let (low, high) = speed.with(Some(row.speed));
            let allowed = (limits.speed * (low + high)).max(2.0 * limits.speed_floor);
            let (slow, fast) = rpm.with(row.rpm);
            let (left, right) = course.with(row.course);
            let fits = row.speed >= limits.slowest.max(0.01 * KNOT)
                && high - low <= allowed
                && (row.rpm.is_none() || fast - slow <= (limits.rpm * (slow + fast)).max(2.0))
                && (row.course.is_none() || right - left <= 2.0 * limits.course);
            if !fits {
                break;
            }
            speed.push(behind, row.speed);
            if let Some(value) = row.rpm {
                rpm.push(behind, value);
            }
            if let Some(value) = row.course {
                course.push(behind, value);
            }
            behind += 1;
        }
        *end = behind;
    }
    ends
}

/// Cuts the ends, where the throttle or the helm was already moving, as far as the stretch stays long enough.
fn trimmed(rows: &[Row], (mut from, mut behind): (usize, usize), limits: &Limits) -> (usize, usize) {
    let room = rows[behind - 1].time - rows[from].time - limits.seconds;
    let cut = (0.5 * room).min(HALF);
    let (first, last) = (rows[from].time + cut, rows[behind - 1].time - cut);
    if from > 0 {
        while rows[from].time < first {
            from += 1;
        }
    }
    if behind < rows.len() {
        while rows[behind - 1].time > last {
            behind -= 1;
        }
    }
    (from, behind)
}
