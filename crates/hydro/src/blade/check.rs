//! Whether readings can be of a propeller at all.

use super::estimate::Estimate;
use super::propeller::Hub;
use super::survey::{BladeReading, Readings, Station};
use super::trouble::{Quantity, Trouble};
use std::f64::consts::TAU;

/// Pitch ratios between which every propeller lies. Ours, generous.
pub(super) const PITCH_RATIOS: std::ops::RangeInclusive<f64> = 0.15..=4.0;

/// Checks readings and gives the mean tip radius.
///
/// # Errors
/// The first value that cannot be.
pub(super) fn readings(readings: &Readings) -> Result<f64, Trouble> {
    let count = readings.blades.len();
    if !(1..=12).contains(&count) {
        return Err(Trouble::BladeCount(count));
    }
    for (blade, b) in readings.blades.iter().enumerate() {
        if let Some(tip) = b.tip_radius {
            positive(blade, None, Quantity::Radius, tip)?;
        }
    }
    let tip = Estimate::mean(readings.blades.iter().filter_map(|b| b.tip_radius)).ok_or(Trouble::NoTipRadius)?.value;
    hub(&readings.hub, tip)?;
    let mut last = 0.0;
    for (blade, b) in readings.blades.iter().enumerate() {
        if let Some(own) = b.tip_radius.filter(|own| !(0.8..=1.25).contains(&(own.value / tip))) {
            return Err(impossible(blade, None, Quantity::Radius, own.value));
        }
        if let Some(angle) = b.angle_deg {
            let rises = angle.value > last || (blade == 0 && angle.value.abs() < 360.0);
            if !(angle.is_finite() && rises && angle.value - last < 360.0) {
                return Err(impossible(blade, None, Quantity::Angle, angle.value));
            }
            last = angle.value;
        }
        stations(blade, b, tip, readings.hub.radius())?;
    }
    if readings.blades.iter().all(|b| b.stations.is_empty()) {
        return Err(Trouble::TooFewStations { blade: 0 });
    }
    if !(readings.common_pitch_sd.is_finite() && readings.common_pitch_sd >= 0.0) {
        return Err(impossible(0, None, Quantity::Pitch, readings.common_pitch_sd));
    }
    Ok(tip)
}

fn hub(hub: &Hub, tip: f64) -> Result<(), Trouble> {
    let measures = [hub.length, hub.fore_diameter, hub.aft_diameter, hub.bore_fore, hub.bore_aft];
    let fits = |d: f64, bore: f64| d < 2.0 * tip && bore <= d;
    let fine = measures.iter().all(|m| m.is_finite() && *m >= 0.0)
        && hub.forward.is_finite()
        && fits(hub.fore_diameter, hub.bore_fore)
        && fits(hub.aft_diameter, hub.bore_aft);
    if fine { Ok(()) } else { Err(impossible(0, None, Quantity::Hub, hub.fore_diameter)) }
}

fn stations(blade: usize, b: &BladeReading, mean_tip: f64, hub: f64) -> Result<(), Trouble> {
    let tip = b.tip_radius.map_or(mean_tip, |t| t.value);
    let mut last = 0.0;
    for (i, s) in b.stations.iter().enumerate() {
        positive(blade, Some(i), Quantity::Radius, s.radius)?;
        if s.radius.value <= last {
            return Err(Trouble::RadiiOutOfOrder { blade, station: i });
        }
        last = s.radius.value;
        if last >= tip * (1.0 - 1e-6) || last < 0.9 * hub {
            return Err(Trouble::RadiusOutside { blade, station: i });
        }
        station(blade, i, s, tip)?;
    }
    Ok(())
}

fn station(blade: usize, i: usize, s: &Station, tip: f64) -> Result<(), Trouble> {
    let at = Some(i);
    for (quantity, value) in [(Quantity::Chord, s.chord), (Quantity::Thickness, s.thickness)] {
        if let Some(value) = value {
            positive(blade, at, quantity, value)?;
        }
    }
    let both = s.leading.zip(s.trailing).map(|(l, t)| Estimate::exact(l.value + t.value));
    if let Some(chord) = both {
        positive(blade, at, Quantity::Chord, chord)?;
    }
    let chord = s.chord.or(both).map(|c| c.value);
    // A chord as long as a whole turn of a steep helix, or a section as thick as long, is no blade.
    if let Some(chord) = chord.filter(|c| *c > (TAU * s.radius.value).hypot(4.0 * tip)) {
        return Err(impossible(blade, at, Quantity::Chord, chord));
    }
    if let (Some(chord), Some(thickness)) = (chord, s.thickness)
        && thickness.value > chord
    {
        return Err(impossible(blade, at, Quantity::Thickness, thickness.value));
    }
    let signed = [(Quantity::Leading, s.leading), (Quantity::Trailing, s.trailing), (Quantity::Track, s.track)];
    for (quantity, value) in signed {
        if let Some(value) = value
            && !(value.is_finite() && value.value.abs() < 4.0 * tip)
        {
            return Err(impossible(blade, at, quantity, value.value));
        }
    }
    Ok(())
}

fn positive(blade: usize, station: Option<usize>, quantity: Quantity, value: Estimate) -> Result<(), Trouble> {
    if value.is_finite() && value.value > 0.0 {
        Ok(())
    } else {
        Err(Trouble::NotPositive { blade, station, quantity, value: value.value })
    }
}

pub(super) const fn impossible(blade: usize, station: Option<usize>, quantity: Quantity, value: f64) -> Trouble {
    Trouble::Impossible { blade, station, quantity, value }
}
