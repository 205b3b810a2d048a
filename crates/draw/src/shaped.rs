//! The propeller of a job as a change would leave it, ready to be drawn.

use crate::Drawn;
use counsel::Change;
use hydro::blade;
use job::{Job, Quantity};

/// What a drawing shows and no judgement reckons with.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bend {
    /// Rake of the generator line, positive aft, degrees.
    pub rake: Option<f64>,
    /// Skew, from the foremost to the aftmost point of the mid-chord line, degrees.
    pub skew: Option<f64>,
}

/// Rake and skew of a propeller as drawn, degrees: those of its first blade.
#[must_use]
pub fn bend(drawn: &Drawn) -> Bend {
    let hub = drawn.propeller.hub.radius();
    let first = drawn.propeller.blades.first();
    Bend {
        rake: first.map(|b| blade::rake(b, hub).angle.to_degrees()),
        skew: first.map(|b| blade::skew(b, hub).angle.to_degrees()),
    }
}

/// The propeller after a change of size, area, number, cup, rake and skew. A change of size makes the drawing one of a series:
/// what a workshop would leave of the blades measured is not known. `None` without a pitch or a diameter.
#[must_use]
pub fn shaped(job: &Job, change: &Change, bend: Bend) -> Option<Drawn> {
    let mut job = job.clone();
    let fitted = &mut job.propeller;
    let sized = change.diameter.is_some()
        || change.pitch.is_some()
        || change.blades.is_some()
        || change.area_ratio.is_some()
        || change.cup.is_some();
    let exact = |value: f64| Some(Quantity::exact(value, String::new()));
    if let Some(value) = change.diameter {
        fitted.diameter = exact(value);
    }
    if let Some(value) = change.pitch {
        fitted.pitch = exact(value);
    }
    fitted.blades = change.blades.or(fitted.blades);
    if let Some(value) = change.area_ratio {
        fitted.area_ratio = exact(value);
    }
    fitted.cup = change.cup.or(fitted.cup);
    if sized {
        job.survey = None;
    }
    let mut drawn = Drawn::of_job(&job)?;
    bent(&mut drawn.propeller, bend);
    Some(drawn)
}

/// Bends the blades; the hub stays where it is.
pub(crate) fn bent(propeller: &mut blade::Propeller, bend: Bend) {
    let hub = propeller.hub.radius();
    for one in &mut propeller.blades {
        if let Some(rake) = bend.rake.filter(|r| r.is_finite() && r.abs() < 60.0) {
            let more = rake.to_radians().tan() - blade::rake(one, hub).angle.tan();
            for section in &mut one.sections {
                section.rake += more * section.radius;
            }
        }
        if let Some(skew) = bend.skew.filter(|s| s.is_finite() && s.abs() < 120.0) {
            let more = skew.to_radians() - blade::skew(one, hub).angle;
            let span = (one.tip_radius - hub).max(1e-6);
            for section in &mut one.sections {
                // As the flat-faced blades are skewed here: with the square of the way from hub to tip.
                let share = ((section.radius - hub) / span).clamp(0.0, 1.0).powi(2);
                let angle = section.skew_angle() + more * share;
                section.set_skew_angle(angle);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job(name: &str) -> Job {
        let path = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
        Job::read(&std::fs::read_to_string(path).expect("a demo")).expect("reads").job
    }

    #[test]
    fn every_slider_of_the_blade_shows_in_its_drawing() {
        let job = job("kittiwake");
        let fitted = shaped(&job, &Change::default(), Bend::default()).expect("a propeller");
        let change = Change { diameter: Some(0.4), pitch: Some(0.25), blades: Some(4), ..Change::default() };
        let after = shaped(&job, &change, Bend::default()).expect("a propeller");
        assert_eq!((after.propeller.blades.len(), fitted.propeller.blades.len()), (4, 3));
        assert!((after.propeller.diameter() - 0.4).abs() < 1e-9);
        let pitch = blade::effective_pitch(&after.propeller.blades[0], after.propeller.hub.radius());
        assert!((pitch - 0.25).abs() < 0.02, "the series' own pitch over the radius: {pitch}");
        let wide = Change { area_ratio: Some(0.8), ..Change::default() };
        let areas = blade::areas(&shaped(&job, &wide, Bend::default()).expect("a propeller").propeller);
        assert!((areas.expanded_ratio - 0.8).abs() < 0.03, "{}", areas.expanded_ratio);
        let cupped = Change { cup: Some(job::Cup::Heavy), ..Change::default() };
        assert!(shaped(&job, &cupped, Bend::default()).is_some_and(|d| d.cup.is_some_and(|c| c.contains("heavy"))));
    }

    #[test]
    fn rake_and_skew_come_out_as_they_were_asked_for() {
        let job = job("kittiwake");
        for (rake, skew) in [(0.0, 20.0), (20.0, 35.0), (-5.0, 50.0)] {
            let drawn = shaped(&job, &Change::default(), Bend { rake: Some(rake), skew: Some(skew) }).expect("one");
            let got = bend(&drawn);
            // Least squares through the sections' rakes: as good as exact for a straight line.
            assert!((got.rake.expect("rake") - rake).abs() < 0.01, "{got:?}");
            // The mid-chord line of the series is not straight to begin with: its extremes need not both move.
            assert!((got.skew.expect("skew") - skew).abs() < 0.15 * skew + 1.0, "{got:?} for {skew}");
        }
    }
}
