//! From a survey as recorded to readings the physics can reduce.

use hydro::blade::{
    BladeReading, Cup, EdgeForm, Estimate, FacePoint, Form, Hand, Hub, PitchReading, Readings, Station,
};
use job::survey::{self as said, Route, Survey, SurveySection, Tool};
use job::{Job, Quantity, Section};
use std::f64::consts::TAU;

/// A stated quantity as an estimate: its band is 80 %.
pub(super) fn estimate(q: &Quantity) -> Estimate {
    Estimate::from_band(q.middle, 0.5 * (q.high - q.low))
}

/// The number of blades: as stated, else as surveyed.
pub(super) fn blade_count(job: &Job, survey: &Survey) -> usize {
    job.propeller.blades.map_or(survey.blades.len(), usize::from).max(survey.blades.len())
}

/// Hand: from the leading edge first, since that was seen; else as stated.
pub(super) fn hand(job: &Job, survey: &Survey) -> Option<Hand> {
    match survey.leading_edge {
        Some(edge) => Some(Hand::from_leading_edge(edge == said::LeadingEdge::Right)),
        None => match job.propeller.hand {
            Some(job::Hand::Right) => Some(Hand::Right),
            Some(job::Hand::Left) => Some(Hand::Left),
            _ => None,
        },
    }
}

/// Tip radius of a blade: its own; else the mean of the others; else half the diameter taken across or stated.
pub(super) fn tip(job: &Job, survey: &Survey, blade: usize) -> Option<Estimate> {
    let own = survey.blades.get(blade).and_then(|b| b.tip_radius.as_ref()).map(estimate);
    let others = || Estimate::mean(survey.blades.iter().filter_map(|b| b.tip_radius.as_ref()).map(estimate));
    let half = |q: &Quantity| estimate(q).times(0.5);
    own.or_else(others)
        .or_else(|| survey.diameter_across.as_ref().map(half))
        .or_else(|| job.propeller.diameter.as_ref().map(half))
}

/// Radius of a section.
pub(super) fn radius(section: &SurveySection, tip: Option<Estimate>) -> Option<Estimate> {
    match (&section.radius, &section.radius_ratio, tip) {
        (Some(q), _, _) => Some(estimate(q)),
        (None, Some(q), Some(tip)) => Some(tip.times(q.middle)),
        _ => None,
    }
}

/// Every way the pitch of a section was measured, with its tool and reading.
pub(super) fn readings(
    section: &SurveySection,
    radius: Estimate,
    survey: Option<Tool>,
) -> Vec<(Route, Tool, PitchReading)> {
    let mut all = Vec::new();
    let mut add = |route, reading| all.push((route, section.tool_for(route, survey), reading));
    if let Some(q) = &section.pitch {
        add(Route::Direct, PitchReading::Stated(estimate(q)));
    }
    if let (Some(rise), Some(arc)) = (&section.arc_rise, &section.arc) {
        add(Route::Arc, PitchReading::RiseOverArc { rise: estimate(rise), arc_deg: estimate(arc) });
    }
    if let Some(q) = &section.face_angle {
        add(Route::FaceAngle, PitchReading::FaceAngle { angle_deg: estimate(q) });
    }
    if let (Some(rise), Some(run)) = (&section.chord_rise, &section.chord_run) {
        add(Route::Chord, PitchReading::RiseOverChord { rise: estimate(rise), span: estimate(run), slant: false });
    }
    if let Some(reading) = points(section, radius.value) {
        add(Route::Points, reading);
    }
    all
}

/// Points of a face: heights grow toward the trailing edge as a bench shows them (after side up), so the lowest end leads.
/// The physics counts angles toward the leading edge and heights forward.
fn points(section: &SurveySection, r: f64) -> Option<PitchReading> {
    let by_angle = section.points.iter().all(|p| p.angle.is_some());
    let places: Vec<(f64, &Quantity, f64)> = if by_angle {
        let place = |p: &'_ said::FacePoint| p.angle.as_ref().map(estimate);
        let all = section.points.iter().map(|p| Some((place(p)?.value, p.height.as_ref()?, place(p)?.sd)));
        all.collect::<Option<Vec<_>>>()?
    } else {
        along_the_chord(section, r)?
    };
    if places.len() < 2 {
        return None;
    }
    let (first, last) = (places.first()?, places.last()?);
    let rises = last.1.middle >= first.1.middle;
    // Which end leads: by the chord it is said; by angles alone the lower end does.
    let leading_first = if by_angle { rises } else { last.0 >= first.0 };
    let (leading, trailing) = if leading_first { (first, last) } else { (last, first) };
    let up = if trailing.1.middle >= leading.1.middle { 1.0 } else { -1.0 };
    let n = places.len() as f64;
    let height_sd = places.iter().map(|p| estimate(p.1).sd).sum::<f64>() / n;
    let angle_sd_deg = places.iter().map(|p| p.2).sum::<f64>() / n;
    let points = places
        .iter()
        .map(|(angle, height, _)| FacePoint {
            angle_deg: -(angle - leading.0).abs(),
            height: -up * (height.middle - leading.1.middle),
        })
        .collect();
    Some(PitchReading::Points { points, height_sd, angle_sd_deg })
}

/// Places along the chord as angles about the shaft: what is left of the step along the face when the rise is taken off lies
/// along the circle.
fn along_the_chord(section: &SurveySection, r: f64) -> Option<Vec<(f64, &Quantity, f64)>> {
    let chord = section.chord.as_ref()?.middle;
    let mut angle = 0.0;
    let mut before: Option<(f64, f64)> = None;
    let mut out = Vec::new();
    for p in &section.points {
        let (s, height) = (p.chord_fraction.as_ref()?.middle * chord, p.height.as_ref()?);
        if let Some((s0, h0)) = before {
            let (along, rise) = (s - s0, height.middle - h0);
            let flat = (along * along - rise * rise).max(0.0).sqrt();
            angle += (flat / (TAU * r) * 360.0).copysign(along);
        }
        before = Some((s, height.middle));
        out.push((angle, height, 0.0));
    }
    Some(out)
}

/// Relative half width (80 %) of an error a tool makes alike at every radius and blade: scale of the gauge, tilt of the
/// table, zero of the level. It does not average out. Estimate, no source.
fn common(tool: Tool) -> f64 {
    match tool {
        Tool::CoordinateMachine => 0.001,
        Tool::SwingGauge => 0.003,
        Tool::Blocks => 0.005,
        Tool::DigitalLevel => 0.006,
        Tool::Rule => 0.010,
        Tool::Protractor => 0.015,
    }
}

/// The common error of a whole survey, as a standard deviation: that of its worst tool.
pub(super) fn common_sd(survey: &Survey) -> f64 {
    let mut worst = 0.0_f64;
    for section in survey.blades.iter().flat_map(|b| &b.sections) {
        for (route, there) in [
            (Route::Direct, section.pitch.is_some()),
            (Route::Arc, section.arc_rise.is_some()),
            (Route::FaceAngle, section.face_angle.is_some()),
            (Route::Chord, section.chord_rise.is_some()),
            (Route::Points, !section.points.is_empty()),
        ] {
            if there {
                worst = worst.max(common(section.tool_for(route, survey.tool)));
            }
        }
    }
    worst / job::assume::BAND_Z
}

/// The whole survey as readings; notes say what was left out or assumed.
pub(super) fn convert(job: &Job, survey: &Survey, notes: &mut Vec<String>) -> Readings {
    let count = blade_count(job, survey);
    let diameter = tip(job, survey, 0).map_or(0.0, |t| 2.0 * t.value);
    let mut blades: Vec<BladeReading> = (0..survey.blades.len()).map(|i| blade(job, survey, i, notes)).collect();
    blades.resize_with(count, BladeReading::default);
    Readings {
        blades,
        hand: hand(job, survey).unwrap_or_else(|| {
            notes
                .push("The hand is not said: taken as right-hand for the areas, which do not depend on it.".to_owned());
            Hand::Right
        }),
        hub: hub(survey, count, diameter, notes),
        form: form(job, notes),
        common_pitch_sd: common_sd(survey),
    }
}

fn form(job: &Job, notes: &mut Vec<String>) -> Form {
    match job.propeller.section {
        Some(Section::Airfoil) => Form::BSeries,
        Some(Section::FlatFaced | Section::Ducted) => Form::FlatFaced,
        None => {
            notes
                .push("Kind of section not said: taken as flat-faced; it bears on mass and thickness only.".to_owned());
            Form::FlatFaced
        }
    }
}

fn hub(survey: &Survey, count: usize, diameter: f64, notes: &mut Vec<String>) -> Hub {
    let said = &survey.hub;
    let middle = |q: &Option<Quantity>| q.as_ref().map(|q| q.middle);
    let outer = middle(&said.diameter).unwrap_or_else(|| {
        let ratio = if count <= 3 { 0.18 } else { 0.167 };
        notes.push(format!("Hub diameter not measured: taken as {ratio} of the diameter (from memory)."));
        ratio * diameter
    });
    let length = middle(&said.length).unwrap_or(1.05 * outer);
    let bore = middle(&said.bore_large).or(middle(&said.bore_small)).unwrap_or(0.36 * outer).min(0.9 * outer);
    let small = middle(&said.bore_small).unwrap_or(bore).min(0.9 * outer);
    Hub { bore_fore: bore, bore_aft: small, ..Hub::cylinder(outer, length, bore) }
}

fn blade(job: &Job, survey: &Survey, i: usize, notes: &mut Vec<String>) -> BladeReading {
    let Some(blade) = survey.blades.get(i) else { return BladeReading::default() };
    let tip = tip(job, survey, i);
    let mut stations = Vec::new();
    for section in &blade.sections {
        let Some(r) = radius(section, tip) else { continue };
        if tip.is_some_and(|t| r.value > 0.995 * t.value) {
            notes.push(format!(
                "Blade {}: the section at the very tip is left out of areas and pitch.",
                survey.blade_name(i)
            ));
            continue;
        }
        let some = |q: &Option<Quantity>| q.as_ref().map(estimate);
        stations.push(Station {
            pitch: readings(section, r, survey.tool).into_iter().map(|(_, _, reading)| reading).collect(),
            chord: some(&section.chord),
            leading: some(&section.leading_edge),
            trailing: some(&section.trailing_edge),
            thickness: some(&section.thickness),
            track: some(&section.track),
            ..Station::at(r)
        });
    }
    let first_angle = survey.blades.first().and_then(|b| b.tip_angle.as_ref()).map(|q| q.middle);
    BladeReading {
        tip_radius: blade.tip_radius.as_ref().map(estimate).or(tip),
        angle_deg: match (&blade.tip_angle, first_angle) {
            (Some(q), Some(first)) => {
                let e = estimate(q);
                Some(Estimate::new((q.middle - first).rem_euclid(360.0), e.sd))
            }
            _ => None,
        },
        stations,
        leading_edge: edge(blade.leading_edge_form),
        trailing_edge: edge(blade.trailing_edge_form),
        cup: cup(blade, tip),
    }
}

fn edge(form: Option<said::EdgeForm>) -> EdgeForm {
    match form {
        Some(said::EdgeForm::Round) => EdgeForm::Round,
        Some(said::EdgeForm::Square) => EdgeForm::Square,
        Some(said::EdgeForm::Bevelled) => EdgeForm::Bevelled,
        Some(said::EdgeForm::Sharp) => EdgeForm::Sharp,
        Some(said::EdgeForm::Torn) => EdgeForm::Damaged,
        None => EdgeForm::Unknown,
    }
}

/// The cup of a blade: mean drop and length over the sections that have one, from the first to the last of them.
fn cup(blade: &said::SurveyBlade, tip: Option<Estimate>) -> Option<Cup> {
    let cupped: Vec<(f64, f64, f64)> = blade
        .sections
        .iter()
        .filter_map(|s| {
            let drop = s.cup_drop.as_ref()?.middle;
            Some((radius(s, tip)?.value, drop, s.cup_length.as_ref().map_or(0.0, |q| q.middle)))
        })
        .filter(|(_, drop, _)| *drop > 0.0)
        .collect();
    let n = cupped.len() as f64;
    let (first, last) = (cupped.first()?, cupped.last()?);
    Some(Cup {
        drop: cupped.iter().map(|c| c.1).sum::<f64>() / n,
        length: cupped.iter().map(|c| c.2).sum::<f64>() / n,
        from: first.0,
        to: last.0,
    })
}
