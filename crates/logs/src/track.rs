//! Speed and course over ground from positions.
//!
//! The velocity at a moment is the slope of a straight line laid through the positions around it (least squares), on the
//! WGS 84 ellipsoid (radii of curvature; semi-axis 6 378 137 m, flattening 1/298.257 223 563). A line through eleven points a
//! second apart takes a position noise of 1 m down to 0.1 m/s; the mean of a steady run is then as good as its two ends.

use crate::sample::Sample;

const AXIS: f64 = 6_378_137.0;
const FLATTENING: f64 = 1.0 / 298.257_223_563;

/// Half the window, s, when positions come often enough.
const HALF: f64 = 5.0;

/// Metres per degree of latitude and of longitude at a latitude (degrees): meridian and transverse radii of curvature.
fn metres(latitude: f64) -> (f64, f64) {
    let (sine, cosine) = latitude.to_radians().sin_cos();
    let squared = FLATTENING * (2.0 - FLATTENING);
    let w = (1.0 - squared * sine * sine).sqrt();
    let degree = std::f64::consts::PI / 180.0;
    (AXIS * (1.0 - squared) / (w * w * w) * degree, AXIS / w * cosine * degree)
}

/// Puts speed and course into samples that have positions. Says whether any was found.
pub(crate) fn fill(samples: &mut [Sample]) -> bool {
    let places: Vec<(usize, f64, f64, f64)> =
        samples.iter().enumerate().filter_map(|(at, s)| s.position.map(|(lat, lon)| (at, s.time, lat, lon))).collect();
    if places.len() < 3 {
        return false;
    }
    let mut steps: Vec<f64> = places.windows(2).map(|w| w[1].1 - w[0].1).collect();
    steps.sort_by(f64::total_cmp);
    let usual = steps[steps.len() / 2];
    let half = (2.5 * usual).clamp(HALF, 60.0);
    let gap = (3.0 * usual).clamp(10.0, 60.0);
    let mut found = false;
    let mut from = 0;
    while from < places.len() {
        let mut to = from + 1;
        while to < places.len() && places[to].1 - places[to - 1].1 <= gap {
            to += 1;
        }
        let piece = &places[from..to];
        let (mut low, mut high) = (0, 0);
        for point in piece {
            while piece[low].1 < point.1 - half {
                low += 1;
            }
            while high < piece.len() && piece[high].1 <= point.1 + half {
                high += 1;
            }
            if let Some((east, north)) = slope(&piece[low..high], half) {
                let sample = &mut samples[point.0];
                let speed = east.hypot(north);
                if speed < 75.0 {
                    sample.over_ground = Some(speed);
                    sample.course = Some(east.atan2(north).to_degrees().rem_euclid(360.0));
                    found = true;
                }
            }
        }
        from = to;
    }
    found
}

/// Velocity east and north, m/s, of points around a moment; a point far off the line is left out once.
fn slope(points: &[(usize, f64, f64, f64)], half: f64) -> Option<(f64, f64)> {
    let first = points.first()?;
    let last = points.last()?;
    if points.len() < 3 || last.1 - first.1 < half {
        return None;
    }
    let (north, east) = metres(first.2);
    let place = |p: &(usize, f64, f64, f64)| {
        let turn = (p.3 - first.3 + 180.0).rem_euclid(360.0) - 180.0;
        (p.1 - first.1, turn * east, (p.2 - first.2) * north)
    };
    let line = |skip: Option<usize>| {
        let (mut n, mut st, mut sx, mut sy) = (0.0, 0.0, 0.0, 0.0);
        let kept = || points.iter().enumerate().filter(move |(at, _)| Some(*at) != skip).map(|(_, p)| place(p));
        for (t, x, y) in kept() {
            (n, st, sx, sy) = (n + 1.0, st + t, sx + x, sy + y);
        }
        let (mt, mx, my) = (st / n, sx / n, sy / n);
        let (mut tt, mut tx, mut ty) = (0.0, 0.0, 0.0);
        for (t, x, y) in kept() {
            tt += (t - mt).powi(2);
            tx += (t - mt) * (x - mx);
            ty += (t - mt) * (y - my);
        }
        (tt > 0.0).then(|| (tx / tt, ty / tt, mx - tx / tt * mt, my - ty / tt * mt))
    };
    let (mut vx, mut vy, x0, y0) = line(None)?;
    if points.len() >= 5 {
        let mut off: Vec<(f64, usize)> = points
            .iter()
            .enumerate()
            .map(|(at, p)| {
                let (t, x, y) = place(p);
                ((x - x0 - vx * t).hypot(y - y0 - vy * t), at)
            })
            .collect();
        off.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (worst, at) = off[off.len() - 1];
        // A jump of the receiver: far beyond the others and beyond its ordinary noise.
        if worst > 3.0 * off[off.len() / 2].0 + 3.0 {
            (vx, vy, ..) = line(Some(at))?;
        }
    }
    (vx.is_finite() && vy.is_finite()).then_some((vx, vy))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn degrees_have_the_published_lengths() {
        // WGS 84: a degree of latitude is 110 574 m at the equator and 111 694 m at the poles, one of longitude 111 320 m
        // at the equator (from memory; printed in many tables to the metre).
        assert!((metres(0.0).0 - 110_574.0).abs() < 1.0);
        assert!((metres(90.0).0 - 111_694.0).abs() < 1.0);
        assert!((metres(0.0).1 - 111_320.0).abs() < 1.0);
    }
}
