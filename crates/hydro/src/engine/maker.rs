//! A full-throttle curve from the maker's points.

use super::{CURVE, FullThrottleCurve, Kind, shape};
use crate::note::{Note, Noted, Notes};
use crate::speed::EngineSpeed;

/// The full-throttle curve through a maker's points (speed, power in W), `None` when they make no curve: fewer than two
/// different speeds, or a speed or power that is not positive.
///
/// Up to eight points are kept as they are, more are thinned to eight even steps. Where the maker's points start above
/// 0.4 of rated speed the usual shape of the kind is set below them, scaled to meet the lowest. A note says when the
/// curve misses the rated point by more than 3 %.
#[must_use]
pub fn curve(
    kind: Kind,
    rated_power: f64,
    rated_speed: EngineSpeed,
    points: &[(EngineSpeed, f64)],
) -> Option<Noted<FullThrottleCurve>> {
    let positive = |x: f64| x.is_finite() && x > 0.0;
    if !positive(rated_power) || !positive(rated_speed.0) {
        return None;
    }
    let mut given: Vec<(f64, f64)> = Vec::with_capacity(points.len() + 2);
    for (speed, power) in points {
        if !positive(speed.0) || !positive(*power) {
            return None;
        }
        given.push((speed.0 / rated_speed.0, power / rated_power));
    }
    given.sort_by(|a, b| a.0.total_cmp(&b.0));
    given.dedup_by(|b, a| (b.0 - a.0).abs() < 1e-6);
    if given.len() < 2 {
        return None;
    }
    let mut notes = Notes::NONE;
    notes.add_if((interpolate(&given, 1.0) - 1.0).abs() > 0.03, Note::CurveMissesRating);
    if given[0].0 > 0.4 {
        let usual = shape::usual_curve(kind, 0.0);
        let meet = given[0].1 / interpolate(&usual, given[0].0);
        let below = [0.25, 0.40].map(|x| (x, meet * interpolate(&usual, x)));
        given.splice(0..0, below.into_iter().filter(|point| point.0 < 0.95 * points_start(points, rated_speed)));
    }
    Some(Noted::new(to_eight(given), notes))
}

fn points_start(points: &[(EngineSpeed, f64)], rated_speed: EngineSpeed) -> f64 {
    points.iter().map(|point| point.0.0 / rated_speed.0).fold(f64::INFINITY, f64::min)
}

/// Straight between points, level outside.
fn interpolate(points: &[(f64, f64)], x: f64) -> f64 {
    let after = points.partition_point(|point| point.0 <= x);
    match (after.checked_sub(1).and_then(|i| points.get(i)), points.get(after)) {
        (Some(a), Some(b)) => a.1 + (x - a.0) / (b.0 - a.0) * (b.1 - a.1),
        (Some(end), None) | (None, Some(end)) => end.1,
        (None, None) => 0.0,
    }
}

fn to_eight(mut points: Vec<(f64, f64)>) -> FullThrottleCurve {
    // A point in the middle of a straight stretch changes nothing.
    while points.len() < CURVE {
        let widest = (1..points.len())
            .max_by(|&i, &j| (points[i].0 - points[i - 1].0).total_cmp(&(points[j].0 - points[j - 1].0)))
            .unwrap_or(1);
        let (a, b) = (points[widest - 1], points[widest]);
        points.insert(widest, (0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1)));
    }
    if points.len() == CURVE {
        return std::array::from_fn(|i| points[i]);
    }
    let (low, high) = (points[0].0, points[points.len() - 1].0);
    let mut curve = std::array::from_fn(|i| {
        let x = low + (high - low) * i as f64 / (CURVE - 1) as f64;
        (x, interpolate(&points, x))
    });
    // The rated point decides; move the nearest inner step onto it.
    if low < 1.0 && 1.0 < high {
        let nearest = (1..CURVE - 1)
            .min_by(|&i, &j| (curve[i].0 - 1.0_f64).abs().total_cmp(&(curve[j].0 - 1.0_f64).abs()))
            .unwrap_or(1);
        curve[nearest] = (1.0, interpolate(&points, 1.0));
    }
    curve
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rpm(points: &[(f64, f64)]) -> Vec<(EngineSpeed, f64)> {
        points.iter().map(|p| (EngineSpeed::from_rpm(p.0), p.1)).collect()
    }

    const RATED: EngineSpeed = EngineSpeed::from_rpm(3000.0);

    #[test]
    fn passes_through_the_points_given() {
        let points = rpm(&[(3000.0, 30e3), (1000.0, 10.5e3), (2000.0, 22e3)]);
        let curve = curve(Kind::NaturalDiesel, 30e3, RATED, &points).unwrap();
        assert!(curve.notes.is_empty());
        for (speed, power) in points {
            let got = interpolate(&curve.value, speed.0 / RATED.0) * 30e3;
            assert!((got - power).abs() < 1e-6, "{got} {power}");
        }
    }

    #[test]
    fn fills_below_the_lowest_point_by_the_usual_shape() {
        let points = rpm(&[(1800.0, 20e3), (2400.0, 26e3), (3000.0, 30e3)]);
        let curve = curve(Kind::NaturalDiesel, 30e3, RATED, &points).unwrap().value;
        assert_eq!(curve[0].0, 0.25);
        assert!(curve.windows(2).all(|w| w[0].0 < w[1].0));
        let torque_ratio = (curve[0].1 / 0.25) / (20.0 / 30.0 / 0.6);
        assert!((torque_ratio - 0.90 / 1.09).abs() < 1e-9, "{torque_ratio}");
    }

    #[test]
    fn thins_many_points_and_keeps_the_rated_one() {
        let points: Vec<_> =
            (10..=33).map(|i| (EngineSpeed::from_rpm(f64::from(i) * 100.0), 1e3 * f64::from(i))).collect();
        let curve = curve(Kind::TurboDiesel, 30e3, RATED, &points).unwrap().value;
        assert!(curve.iter().any(|point| point.0 == 1.0 && (point.1 - 1.0).abs() < 1e-12));
    }

    #[test]
    fn refuses_what_is_no_curve_and_notes_a_missed_rating() {
        assert!(curve(Kind::Petrol, 30e3, RATED, &rpm(&[(3000.0, 30e3)])).is_none());
        assert!(curve(Kind::Petrol, 30e3, RATED, &rpm(&[(3000.0, 30e3), (3000.0, 31e3)])).is_none());
        assert!(curve(Kind::Petrol, 30e3, RATED, &rpm(&[(1000.0, f64::NAN), (3000.0, 30e3)])).is_none());
        let missed = curve(Kind::Petrol, 30e3, RATED, &rpm(&[(1000.0, 9e3), (3000.0, 25e3)])).unwrap();
        assert!(missed.notes.has(Note::CurveMissesRating));
    }
}
