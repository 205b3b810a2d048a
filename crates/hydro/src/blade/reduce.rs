//! From readings to a propeller with spreads.

use super::check::{self, PITCH_RATIOS, impossible};
use super::estimate::Estimate;
use super::fill::{Columns, Rule};
use super::form::EDGE_SHARE;
use super::measured::{Assumed, AssumedWhat, Measured, SectionSpread};
use super::pitch::{BladePitch, PitchTable, SectionPitch};
use super::propeller::{Blade, Propeller};
use super::reading::ReducedPitch;
use super::section::Section;
use super::survey::{Readings, Station};
use super::tip;
use super::trouble::{Quantity, Trouble};
use std::f64::consts::TAU;

/// Where a blade of fewer than four stations is given more, `r/R`.
const USUAL_RADII: [f64; 6] = [0.3, 0.45, 0.6, 0.75, 0.85, 0.95];

/// A narrow ellipse of mean width ratio 0.30 on a hub of 0.2 D, 20 %. Ours.
fn usual_chord(x: f64) -> (f64, f64) {
    let chord = 0.409 * (1.0 - x * x).max(0.0).sqrt();
    (chord, 0.2 * chord)
}

/// Thickness fraction 0.045, 25 %. Ours, from what bronze blades usually have (common practice, no source).
fn usual_thickness(x: f64) -> (f64, f64) {
    let thickness = 0.045 - 0.041 * x;
    (thickness, 0.25 * thickness)
}

const PITCH: Rule = Rule { quantity: Quantity::Pitch, need: 1, rounds_off: false, gap: (0.015, 0.0), usual: None };
const CHORD: Rule =
    Rule { quantity: Quantity::Chord, need: 2, rounds_off: true, gap: (0.03, 0.0), usual: Some(usual_chord) };
const SKEW: Rule =
    Rule { quantity: Quantity::Leading, need: 1, rounds_off: false, gap: (0.0, 0.01), usual: Some(|_| (0.0, 0.03)) };
const RAKE: Rule =
    Rule { quantity: Quantity::Track, need: 1, rounds_off: false, gap: (0.0, 0.005), usual: Some(|_| (0.0, 0.03)) };
const THICKNESS: Rule =
    Rule { quantity: Quantity::Thickness, need: 2, rounds_off: false, gap: (0.08, 0.0), usual: Some(usual_thickness) };

/// Reduces readings to a propeller.
///
/// Values missing at a station are drawn from the blade's other stations, values missing on a whole blade from the other
/// blades, and what nobody measured is set to a usual value; each is listed in [`Measured::assumed`] with a spread to match.
/// A blade of fewer than four stations is given further ones. Every blade is closed by a section of no chord at the tip and run
/// on to the hub; these two are drawn and are not counted as stations.
///
/// # Errors
/// [`Trouble`] when the readings cannot be of a propeller.
pub fn reduce(readings: &Readings) -> Result<Measured, Trouble> {
    let mean_tip = check::readings(readings)?;
    let diameter = 2.0 * mean_tip;
    let mut assumed = Vec::new();
    let tips = tips(readings, mean_tip, &mut assumed);
    let stations = complete(readings, &tips);
    let mut pitches = Vec::with_capacity(stations.len());
    for (blade, list) in stations.iter().enumerate() {
        pitches.push(read_pitches(blade, list, diameter)?);
    }
    let columns = |of: &dyn Fn(usize, usize, &Station) -> Option<Estimate>| -> Columns {
        stations
            .iter()
            .enumerate()
            .map(|(b, list)| {
                list.iter().enumerate().map(|(i, s)| (s.radius.value / tips[b].value, of(b, i, s))).collect()
            })
            .collect()
    };
    let mut fill = |rule: &Rule, columns: &Columns| rule.fill(columns, diameter, &mut assumed);
    let pitch = fill(&PITCH, &columns(&|b, i, _| pitches[b][i].as_ref().map(|p| p.pitch)))?;
    let chord = fill(&CHORD, &columns(&|_, _, s| chord(s)))?;
    let skew = fill(&SKEW, &columns(&|b, i, s| skew_back(s, chord[b][i])))?;
    let rake = fill(&RAKE, &columns(&|_, _, s| s.track))?;
    let thickness = fill(&THICKNESS, &columns(&|_, _, s| s.thickness))?;
    let mut blades = Vec::with_capacity(stations.len());
    let mut spreads = Vec::with_capacity(stations.len());
    let mut pulls: Vec<Vec<(usize, usize, tip::Pull)>> = Vec::with_capacity(stations.len());
    for (b, list) in stations.iter().enumerate() {
        let tip_radius = tips[b].value;
        let mut rows: Vec<tip::Row> = (0..list.len())
            .map(|i| tip::Row {
                radius: list[i].radius.value,
                values: [pitch[b][i], chord[b][i], skew[b][i], rake[b][i], thickness[b][i]],
                pulls: Vec::new(),
            })
            .collect();
        let root = tip::open(&rows, readings.hub.radius(), tip_radius);
        rows.push(tip::close(&rows, tip_radius));
        let first = usize::from(root.is_some());
        rows.splice(0..0, root);
        let drawn = rows.iter().enumerate();
        pulls.push(drawn.flat_map(|(to, r)| r.pulls.iter().map(move |p| (first + p.from, to, *p))).collect());
        blades.push(Blade {
            sections: rows.iter().map(|row| section(row, tip_radius, readings)).collect(),
            tip_radius,
            leading_edge: readings.blades[b].leading_edge,
            trailing_edge: readings.blades[b].trailing_edge,
            cup: readings.blades[b].cup,
        });
        spreads.push(rows.iter().map(spread).collect());
    }
    let angles = angles(readings, &mut assumed);
    Ok(Measured {
        propeller: Propeller {
            blades,
            angles: angles.iter().map(|a| a.value).collect(),
            hand: readings.hand,
            hub: readings.hub,
        },
        spreads,
        pulls,
        tip_radii: tips,
        angles,
        pitch: table(&stations, pitches, readings.common_pitch_sd),
        common_pitch_sd: readings.common_pitch_sd,
        assumed,
    })
}

fn tips(readings: &Readings, mean: f64, assumed: &mut Vec<Assumed>) -> Vec<Estimate> {
    let known = Estimate::mean(readings.blades.iter().filter_map(|b| b.tip_radius));
    let usual = known.unwrap_or(Estimate::exact(mean)).and_sd(0.005 * mean);
    let of = |(blade, b): (usize, &super::survey::BladeReading)| {
        b.tip_radius.unwrap_or_else(|| {
            let what = AssumedWhat::FromOtherBlades;
            assumed.push(Assumed { blade, station: None, x: None, quantity: Quantity::Radius, what });
            usual
        })
    };
    readings.blades.iter().enumerate().map(of).collect()
}

/// Blades without a station take the radii of the blade with the most; few stations are joined by usual ones.
fn complete(readings: &Readings, tips: &[Estimate]) -> Vec<Vec<Station>> {
    let hub = readings.hub.radius();
    let most = readings.blades.iter().zip(tips).max_by_key(|(b, _)| b.stations.len());
    readings
        .blades
        .iter()
        .zip(tips)
        .map(|(b, tip)| {
            let mut list = b.stations.clone();
            if let (true, Some((other, own))) = (list.is_empty(), most) {
                let like = |s: &Station| Station::at(s.radius.times(tip.value / own.value));
                list = other.stations.iter().map(like).collect();
            }
            if list.len() < 4 {
                for radius in USUAL_RADII.map(|x| x * tip.value) {
                    let near = list.iter().any(|s| (s.radius.value - radius).abs() < 0.06 * tip.value);
                    if !near && radius > hub {
                        list.push(Station::at(Estimate::exact(radius)));
                    }
                }
                list.sort_by(|a, b| a.radius.value.total_cmp(&b.radius.value));
            }
            list
        })
        .collect()
}

/// Joins the readings of pitch at each station.
fn read_pitches(blade: usize, list: &[Station], diameter: f64) -> Result<Vec<Option<ReducedPitch>>, Trouble> {
    list.iter()
        .enumerate()
        .map(|(i, s)| {
            let mut all = Vec::with_capacity(s.pitch.len());
            for reading in &s.pitch {
                let none = impossible(blade, Some(i), Quantity::Pitch, reading.main_value());
                let one = reading.reduce(s.radius).ok_or(none)?;
                if !PITCH_RATIOS.contains(&(one.pitch.value / diameter)) || !one.pitch.sd.is_finite() {
                    return Err(impossible(blade, Some(i), Quantity::Pitch, one.pitch.value));
                }
                all.push(one);
            }
            let pitches: Vec<Estimate> = all.iter().map(|p| p.pitch).collect();
            Ok(Estimate::combined(&pitches).map(|pitch| {
                let points = all.into_iter().find(|p| p.by_ends.is_some());
                let (by_ends, local, progression) =
                    points.map_or((None, Vec::new(), None), |p| (p.by_ends, p.local, p.progression));
                ReducedPitch { pitch, by_ends, local, progression }
            }))
        })
        .collect()
}

fn chord(s: &Station) -> Option<Estimate> {
    let sum = s.leading.zip(s.trailing).map(|(l, t)| Estimate::new(l.value + t.value, l.sd.hypot(t.sd)));
    let all: Vec<Estimate> = s.chord.into_iter().chain(sum).collect();
    Estimate::combined(&all)
}

fn skew_back(s: &Station, chord: Estimate) -> Option<Estimate> {
    let half = chord.times(0.5);
    match (s.leading, s.trailing) {
        (Some(l), Some(t)) => Some(Estimate::new(0.5 * (t.value - l.value), 0.5 * l.sd.hypot(t.sd))),
        (Some(l), None) => Some(Estimate::new(half.value - l.value, half.sd.hypot(l.sd))),
        (None, Some(t)) => Some(Estimate::new(t.value - half.value, half.sd.hypot(t.sd))),
        (None, None) => None,
    }
}

fn section(row: &tip::Row, tip_radius: f64, readings: &Readings) -> Section {
    let [pitch, chord, skew, rake, thickness] = row.values.map(|e| e.value);
    let thickness = thickness.max(0.0);
    Section {
        radius: row.radius,
        pitch,
        leading: 0.5 * chord - skew,
        trailing: 0.5 * chord + skew,
        rake,
        offsets: readings.form.offsets(row.radius / tip_radius, thickness, EDGE_SHARE * thickness),
    }
}

fn spread(row: &tip::Row) -> SectionSpread {
    let [pitch, chord, skew_back, rake, thickness] = row.values.map(|e| e.sd);
    SectionSpread { pitch, chord, skew_back, rake, thickness }
}

/// Angles in rad, even where nobody measured.
fn angles(readings: &Readings, assumed: &mut Vec<Assumed>) -> Vec<Estimate> {
    let count: f64 = readings.blades.iter().map(|_| 1.0).sum();
    let mut even = 0.0;
    let mut result = Vec::with_capacity(readings.blades.len());
    for (blade, b) in readings.blades.iter().enumerate() {
        let angle = b.angle_deg.unwrap_or_else(|| {
            // The first blade is where angles are counted from.
            if blade > 0 {
                let what = AssumedWhat::Usual;
                assumed.push(Assumed { blade, station: None, x: None, quantity: Quantity::Angle, what });
            }
            Estimate::new(even, if blade > 0 { 1.0 } else { 0.0 })
        });
        result.push(angle.times(TAU / 360.0));
        even += 360.0 / count;
    }
    result
}

fn table(stations: &[Vec<Station>], pitches: Vec<Vec<Option<ReducedPitch>>>, common: f64) -> PitchTable {
    let mean = |of: Vec<Estimate>| Estimate::mean(of);
    let with_common = |e: Estimate| e.and_sd(common * e.value);
    let mut means = Vec::new();
    let blades = pitches
        .into_iter()
        .zip(stations)
        .map(|(list, stations)| {
            let section = |(station, p): (usize, Option<ReducedPitch>)| {
                let radius = stations[station].radius.value;
                p.map(|p| SectionPitch {
                    station,
                    radius,
                    pitch: p.pitch,
                    by_ends: p.by_ends,
                    local: p.local,
                    progression: p.progression,
                })
            };
            let sections: Vec<SectionPitch> = list.into_iter().enumerate().filter_map(section).collect();
            let own = mean(sections.iter().map(|s| s.pitch).collect());
            means.extend(own);
            BladePitch { sections, mean: own.map(with_common) }
        })
        .collect();
    PitchTable { blades, mean: mean(means).map(with_common) }
}
