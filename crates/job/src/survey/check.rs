//! What cannot be in a survey: contradictions that would make its numbers wrong without anybody noticing.

use super::doubts;
use super::model::*;
use super::outline;
use crate::model::Job;
use crate::near::{list, nearest};
use crate::number::show;
use crate::problem::Problem;
use crate::quantity::Quantity;

/// Adds the errors and doubts a job's survey raises.
pub fn find_problems(job: &Job, problems: &mut Vec<Problem>) {
    let Some(survey) = &job.survey else { return };
    names(survey, problems);
    number_of_blades(job, survey, problems);
    across(job, survey, problems);
    for blade in &survey.blades {
        radii(survey, blade, problems);
        for section in &blade.sections {
            points(section, problems);
        }
    }
    bore(&survey.hub, problems);
    if let Some(photo) = &survey.photo {
        traced(photo, &survey.hub, problems);
    }
    doubts::find(job, survey, problems);
}

fn push(
    problems: &mut Vec<Problem>,
    code: &'static str,
    at: &std::ops::Range<usize>,
    message: impl Into<String>,
    help: impl Into<String>,
) {
    problems.push(Problem::error(code, at.clone(), message).help(help));
}

impl Survey {
    /// The name of blade `i`: as said, else its number.
    #[must_use]
    pub fn blade_name(&self, i: usize) -> String {
        self.blades.get(i).and_then(|b| b.name.clone()).unwrap_or_else(|| (i + 1).to_string())
    }

    /// Tip radius of a blade, m: its own, else the mean of the others, else half the diameter taken across.
    #[must_use]
    pub fn tip_radius(&self, blade: &SurveyBlade) -> Option<f64> {
        let mean = || {
            let radii: Vec<f64> = self.blades.iter().filter_map(|b| b.tip_radius.as_ref()).map(|q| q.middle).collect();
            (!radii.is_empty()).then(|| radii.iter().sum::<f64>() / radii.len() as f64)
        };
        let across = || self.diameter_across.as_ref().map(|q| 0.5 * q.middle);
        blade.tip_radius.as_ref().map(|q| q.middle).or_else(mean).or_else(across)
    }
}

impl SurveySection {
    /// Radius, m, given the tip radius where the section states a part of it.
    #[must_use]
    pub fn radius_m(&self, tip: Option<f64>) -> Option<f64> {
        self.radius.as_ref().map(|q| q.middle).or_else(|| Some(self.radius_ratio.as_ref()?.middle * tip?))
    }

    /// The quantity that says the radius.
    #[must_use]
    pub fn radius_stated(&self) -> Option<&Quantity> {
        self.radius.as_ref().or(self.radius_ratio.as_ref())
    }
}

/// A trace is worth nothing without its centre and its scale, and its points go round the blade once.
fn traced(photo: &Photo, hub: &Hub, problems: &mut Vec<Problem>) {
    for (lacks, name, help) in [
        (photo.centre_x.is_none(), "centre_x", "click the middle of the shaft too: centre_x and centre_y, pixels"),
        (photo.centre_y.is_none(), "centre_y", "click the middle of the shaft too: centre_x and centre_y, pixels"),
        (
            photo.scale_length.is_none(),
            "scale_length",
            "a rule held in the plane of the disc, or the tip radius, and how many pixels it covers",
        ),
        (photo.scale_pixels.is_none(), "scale_pixels", "how many pixels the scale_length covers"),
    ] {
        if lacks {
            push(problems, "incomplete", &photo.at, format!("a photograph without its {name}"), help);
        }
    }
    let count = photo.points.len();
    if count > 0 && count < outline::LEAST_POINTS {
        let help =
            format!("click {} points or more round one blade, from the hub to the tip and back", outline::LEAST_POINTS);
        push(problems, "too-few-points", &photo.at, format!("{count} points do not show a blade's outline"), help);
    }
    if count > 0 && hub.diameter.is_none() {
        problems.push(
            Problem::doubt(
                "no-hub",
                photo.at.clone(),
                "without the hub's diameter the outline cannot be cut off at the hub",
            )
            .help("give diameter in [survey.hub]; 0.2 of the propeller's diameter is taken"),
        );
    }
    if crosses(&photo.points) {
        push(
            problems,
            "outline-crosses",
            &photo.at,
            "the outline crosses itself",
            "click the points in order round the blade, once",
        );
    }
}

/// Whether two sides of the closed outline cross.
fn crosses(points: &[[f64; 2]]) -> bool {
    let n = points.len();
    let turn = |a: [f64; 2], b: [f64; 2], c: [f64; 2]| (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    (0..n).any(|i| {
        let (a, b) = (points[i], points[(i + 1) % n]);
        (i + 2..n).filter(|j| (j + 1) % n != i).any(|j| {
            let (c, d) = (points[j], points[(j + 1) % n]);
            turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0
        })
    })
}

fn names(survey: &Survey, problems: &mut Vec<Problem>) {
    let all: Vec<String> = (0..survey.blades.len()).map(|i| survey.blade_name(i)).collect();
    for (i, blade) in survey.blades.iter().enumerate() {
        if let Some(first) = all[..i].iter().position(|name| *name == all[i]) {
            problems.push(
                Problem::error("blade-twice", blade.at.clone(), format!("two blades with the name {}", all[i]))
                    .help("chalk each blade with a name of its own: A, B, C")
                    .with(&survey.blades[first].at, "the other one"),
            );
        }
    }
    for damage in &survey.damage {
        if let Some(name) = &damage.blade
            && !survey.blades.is_empty()
            && !all.contains(name)
        {
            let guess = nearest(name, all.iter().map(String::as_str))
                .map_or(String::new(), |n| format!("did you mean `{n}`? "));
            push(
                problems,
                "unknown-blade",
                &damage.at,
                format!("damage on blade `{name}`, which is not in the survey"),
                format!("{guess}the blades are {}", list(&all)),
            );
        }
    }
}

fn number_of_blades(job: &Job, survey: &Survey, problems: &mut Vec<Problem>) {
    let n = survey.blades.len();
    let (most, why) = match job.propeller.blades {
        Some(z) => (usize::from(z), format!("the propeller has {z}")),
        None => (7, "propellers of small craft have 2 to 7".to_owned()),
    };
    if n > most {
        let blade = &survey.blades[most];
        push(
            problems,
            "too-many-blades",
            &blade.at,
            format!("{n} blades in the survey, and {why}"),
            "one [[survey.blade]] for each blade; the sections of a blade follow it",
        );
    }
}

/// Tip to tip over an odd number of blades is a chord of the circle, not its diameter: for Z blades the two farthest tips
/// lie 2 R cos(90°/Z) apart.
fn across(job: &Job, survey: &Survey, problems: &mut Vec<Problem>) {
    let Some(q) = &survey.diameter_across else { return };
    let z = job.propeller.blades.map_or(survey.blades.len(), usize::from);
    if z >= 3 && z % 2 == 1 {
        let factor = (std::f64::consts::FRAC_PI_2 / z as f64).cos();
        push(
            problems,
            "across-odd",
            &q.at,
            format!("with {z} blades no tip stands opposite another: tip to tip is not the diameter"),
            format!(
                "measure from the shaft centre to each tip and give tip_radius; if {} mm is the widest distance between two tips, the radius is near {} mm",
                show(1000.0 * q.middle, 4),
                show(500.0 * q.middle / factor, 4)
            ),
        );
    }
}

fn radii(survey: &Survey, blade: &SurveyBlade, problems: &mut Vec<Problem>) {
    let tip = survey.tip_radius(blade);
    let mut last: Option<(f64, &Quantity)> = None;
    for section in &blade.sections {
        let Some(stated) = section.radius_stated() else { continue };
        let Some(r) = section.radius_m(tip) else {
            push(
                problems,
                "no-tip",
                &stated.at,
                "a part of the tip radius, and no tip radius is said",
                "give tip_radius for the blade, or the section's radius in millimetres",
            );
            return;
        };
        if let Some(tip) = tip
            && r > tip + 0.002
        {
            let problem = Problem::error(
                "beyond-tip",
                stated.at.clone(),
                format!("a radius of {} mm lies beyond the tip at {} mm", show(1000.0 * r, 4), show(1000.0 * tip, 4)),
            )
            .help("radii are taken from the shaft centre, not from the hub, and are not diameters");
            problems.push(match &blade.tip_radius {
                Some(q) => problem.with(&q.at, "the tip"),
                None => problem,
            });
        }
        if let Some((before, at)) = last
            && r <= before
        {
            problems.push(
                Problem::error("not-rising", stated.at.clone(), "the radii do not rise here")
                    .help("order a blade's sections from the hub outward, each radius once, then the next blade")
                    .with(&at.at, "the section before"),
            );
        }
        last = Some((r, stated));
    }
}

/// Points run one way along the face.
fn points(section: &SurveySection, problems: &mut Vec<Problem>) {
    let places: Vec<(f64, &Quantity)> = section
        .points
        .iter()
        .filter_map(|p| p.angle.as_ref().or(p.chord_fraction.as_ref()))
        .map(|q| (q.middle, q))
        .collect();
    let Some([first, second]) = places.first_chunk::<2>() else { return };
    let way = second.0 - first.0;
    for pair in places.windows(2) {
        if (pair[1].0 - pair[0].0) * way <= 0.0 {
            problems.push(
                Problem::error("not-rising", pair[1].1.at.clone(), "the points turn back here")
                    .help("order the points from one edge to the other, each place once")
                    .with(&pair[0].1.at, "the point before"),
            );
        }
    }
}

fn bore(hub: &Hub, problems: &mut Vec<Problem>) {
    if let (Some(large), Some(small)) = (&hub.bore_large, &hub.bore_small)
        && small.middle > large.middle
    {
        problems.push(
            Problem::error("bore-ends", small.at.clone(), "the bore is wider at its small end")
                .help("bore_large is the end that goes on first, toward the boat; look whether the two are swapped")
                .with(&large.at, "the large end"),
        );
    }
}
