//! The sections nobody can measure: the tip, and the root in its fillet.

use super::estimate::Estimate;

/// Pitch, chord, skew-back, rake, thickness of one station.
pub(super) struct Row {
    /// Radius, m.
    pub radius: f64,
    /// Pitch, chord, skew-back, rake, thickness, m. Of a drawn section the spreads are those of the drawing alone.
    pub values: [Estimate; 5],
    /// What a drawn section takes from the stations.
    pub pulls: Vec<Pull>,
}

/// A drawn section moves by `weight` when station `from` moves by 1 in quantity `part`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pull {
    /// Station, from 0.
    pub from: usize,
    /// Quantity, in the order of [`Row::values`].
    pub part: usize,
    /// Share.
    pub weight: f64,
}

/// How a quantity is carried on beyond the stations.
struct Carry {
    /// Stations it is carried on from.
    reach: usize,
    /// Power of the curve.
    power: usize,
    /// Spread besides that of the stations, of the value and of the tip radius.
    spread: (f64, f64),
}

const fn carry(reach: usize, power: usize, of_value: f64, of_radius: f64) -> Carry {
    Carry { reach, power, spread: (of_value, of_radius) }
}

/// To the tip, from 0.95 R and inside. Spreads of skew and thickness are the root mean square misses on the tables of P4381 to
/// P4384, VP1304 and the B-series with their tips taken away; pitch misses them by 0.1 %, but VP1304, whose tip is unloaded, by
/// 7 %. Rake: ours.
const TO_TIP: [Carry; 5] = [
    carry(4, 1, 0.01, 0.0),
    carry(0, 0, 0.0, 0.0),
    carry(5, 2, 0.0, 0.002),
    carry(5, 1, 0.0, 0.004),
    carry(4, 1, 0.0, 0.001),
];

/// To the hub, per 0.05 R; misses on the same tables with their root rows taken away. Rake: ours.
const TO_HUB: [Carry; 5] = [
    carry(3, 1, 0.007, 0.0),
    carry(4, 2, 0.016, 0.0),
    carry(3, 2, 0.0, 0.0008),
    carry(5, 1, 0.0, 0.002),
    carry(3, 1, 0.0, 0.0015),
];

/// A section of no chord at the tip, the rest carried on from the outer stations by least squares.
pub(super) fn close(rows: &[Row], tip: f64) -> Row {
    let mut row = run_on(&TO_TIP, tip, tip, |reach| rows.len().saturating_sub(reach)..rows.len(), rows, 1.0);
    // Pitch never leaves what the blade has by much, thickness never vanishes below nothing.
    if let Some(last) = rows.last() {
        row.values[0].value = row.values[0].value.clamp(0.8 * last.values[0].value, 1.25 * last.values[0].value);
        row.values[4].value = row.values[4].value.clamp(0.2 * last.values[4].value, last.values[4].value.max(0.0));
    }
    row
}

/// A section at the hub, if the innermost station stands clear of it.
pub(super) fn open(rows: &[Row], hub: f64, tip: f64) -> Option<Row> {
    let first = rows.first()?;
    let clear = (first.radius - hub) / tip;
    if clear < 0.005 || hub <= 0.0 {
        return None;
    }
    let mut row = run_on(&TO_HUB, hub, tip, |reach| 0..reach.min(rows.len()), rows, clear / 0.05);
    for k in [0, 1, 4] {
        row.values[k].value = row.values[k].value.clamp(0.6 * first.values[k].value, 1.5 * first.values[k].value);
    }
    Some(row)
}

fn run_on(
    carries: &[Carry; 5],
    to: f64,
    tip: f64,
    range: impl Fn(usize) -> std::ops::Range<usize>,
    rows: &[Row],
    far: f64,
) -> Row {
    let mut row = Row { radius: to, values: [Estimate::exact(0.0); 5], pulls: Vec::new() };
    for (k, how) in carries.iter().enumerate().filter(|(_, how)| how.reach > 0) {
        let from = range(how.reach);
        let places: Vec<f64> = rows[from.clone()].iter().map(|r| (r.radius - to) / tip).collect();
        let mut value = 0.0;
        for (i, weight) in from.zip(weights(&places, how.power.min(places.len().saturating_sub(1)))) {
            value += weight * rows[i].values[k].value;
            row.pulls.push(Pull { from: i, part: k, weight });
        }
        row.values[k] = Estimate::new(value, far * (how.spread.0 * value).hypot(how.spread.1 * tip));
    }
    row
}

/// Least squares polynomial of `power` 0, 1 or 2 read at 0, as weights of the values: `Σ w f(u) = f(0)` for every polynomial of
/// that power with the smallest `Σ w²`, `w = A (AᵀA)⁻¹ (1, 0, 0)`.
fn weights(places: &[f64], power: usize) -> Vec<f64> {
    let moment = |k: i32| places.iter().map(|u| u.powi(k)).sum::<f64>();
    let s: [f64; 5] = [moment(0), moment(1), moment(2), moment(3), moment(4)];
    let row = match power {
        2 => {
            let det = s[0] * (s[2] * s[4] - s[3] * s[3]) - s[1] * (s[1] * s[4] - s[3] * s[2])
                + s[2] * (s[1] * s[3] - s[2] * s[2]);
            [(s[2] * s[4] - s[3] * s[3]) / det, (s[2] * s[3] - s[1] * s[4]) / det, (s[1] * s[3] - s[2] * s[2]) / det]
        }
        1 => {
            let det = s[0] * s[2] - s[1] * s[1];
            [s[2] / det, -s[1] / det, 0.0]
        }
        _ => [s[0].recip(), 0.0, 0.0],
    };
    let weights: Vec<f64> = places.iter().map(|u| row[0] + row[1] * u + row[2] * u * u).collect();
    if weights.iter().all(|w| w.is_finite()) {
        weights
    } else {
        // Stations on top of each other: their mean.
        places.iter().map(|_| s[0].recip()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::weights;

    #[test]
    fn polynomials_are_carried_on_exactly() {
        let places = [-0.5, -0.4, -0.3, -0.2, -0.1, -0.05];
        let read = |power: usize, f: fn(f64) -> f64| {
            weights(&places, power).iter().zip(places).map(|(w, u)| w * f(u)).sum::<f64>()
        };
        assert!((read(2, |u| 6.0 + 8.0 * u + 5.0 * u * u) - 6.0).abs() < 1e-9);
        assert!((read(1, |u| 2.0 - 3.0 * u) - 2.0).abs() < 1e-12);
        assert!((read(0, |_| 4.0) - 4.0).abs() < 1e-12);
        assert_eq!(weights(&[0.1, 0.1], 1), vec![0.5, 0.5]);
    }
}
