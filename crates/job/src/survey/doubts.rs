//! What was accepted in a survey but looks wrong. Bounds are common practice, no source, set wide.

use super::model::*;
use super::shape_doubts;
use crate::model::{Hand, Job};
use crate::number::show;
use crate::problem::Problem;
use crate::quantity::Quantity;
use std::f64::consts::TAU;
use std::ops::Range;

/// A pitch that follows from one way of measuring: middle, half width, m; where it stands; what it is.
struct Pitch<'a> {
    value: f64,
    half: f64,
    at: &'a Range<usize>,
    what: &'static str,
}

pub(super) fn find(job: &Job, survey: &Survey, problems: &mut Vec<Problem>) {
    blades(job, survey, problems);
    tips(job, survey, problems);
    hand(job, survey, problems);
    pitches(job, survey, problems);
    copies(survey, problems);
    shape_doubts::shapes(survey, problems);
    shape_doubts::hub(survey, problems);
}

pub(super) fn push(
    problems: &mut Vec<Problem>,
    code: &'static str,
    at: &Range<usize>,
    message: impl Into<String>,
    help: impl Into<String>,
    with: &[(&Range<usize>, &str)],
) {
    let problem = Problem::doubt(code, at.clone(), message).help(help);
    problems.push(with.iter().fold(problem, |problem, (at, words)| problem.with(at, *words)));
}

pub(super) fn mm(metres: f64) -> String {
    show(1000.0 * metres, 4)
}

fn blades(job: &Job, survey: &Survey, problems: &mut Vec<Problem>) {
    let (n, Some(z)) = (survey.blades.len(), job.propeller.blades.map(usize::from)) else { return };
    if (1..z).contains(&n) {
        let last = &survey.blades[n - 1].at;
        let message = format!("{n} of {z} blades measured");
        push(
            problems,
            "missing-blades",
            last,
            message,
            "measure every blade: what differs from blade to blade shakes the boat, and one blade cannot show it",
            &[],
        );
    }
}

fn tips(job: &Job, survey: &Survey, problems: &mut Vec<Problem>) {
    let radii: Vec<&Quantity> = survey.blades.iter().filter_map(|b| b.tip_radius.as_ref()).collect();
    if let (Some(first), Some(d)) = (radii.first(), &job.propeller.diameter) {
        let ratio = first.middle / d.middle;
        if (ratio - 1.0).abs() < 0.08 {
            push(
                problems,
                "tip-radius",
                &first.at,
                format!("a tip radius of {} mm is about the whole diameter", mm(first.middle)),
                "from the shaft centre to one tip: half the diameter",
                &[(&d.at, "the diameter")],
            );
            return;
        }
        if (2.0 * ratio - 1.0).abs() > 0.04 {
            push(
                problems,
                "tip-radius",
                &first.at,
                format!(
                    "twice the tip radius is {} mm, the stated diameter {} mm",
                    mm(2.0 * first.middle),
                    mm(d.middle)
                ),
                "tips may be cut or worn; look at both, and at their units",
                &[(&d.at, "the diameter")],
            );
        }
    }
    for q in radii.iter().skip(1) {
        let first = radii[0];
        if (q.middle / first.middle - 1.0).abs() > 0.03 {
            push(
                problems,
                "tip-radius",
                &q.at,
                format!("a tip radius of {} mm beside one of {} mm", mm(q.middle), mm(first.middle)),
                "a bent or cut tip, or a slip of the tape: measure again",
                &[(&first.at, "the first blade")],
            );
        }
    }
    let angles: Vec<&Quantity> = survey.blades.iter().filter_map(|b| b.tip_angle.as_ref()).collect();
    if angles.len() == survey.blades.len() && angles.len() > 1 {
        let z = angles.len();
        let even = 360.0 / z as f64;
        for i in 1..z {
            let gap = (angles[i].middle - angles[i - 1].middle).rem_euclid(360.0);
            let gap = gap.min(360.0 - gap);
            if (gap - even.min(360.0 - even)).abs() > 8.0 {
                push(
                    problems,
                    "tip-angle",
                    &angles[i].at,
                    format!("{}° from the blade before; {z} blades stand {}° apart", show(gap, 4), show(even, 4)),
                    "blades in order round the hub, all angles from one mark and the same way round",
                    &[(&angles[i - 1].at, "the blade before")],
                );
                break;
            }
        }
    }
}

fn hand(job: &Job, survey: &Survey, problems: &mut Vec<Problem>) {
    let (Some(seen), Some(stated)) = (survey.leading_edge, job.propeller.hand) else { return };
    let from_edge = if seen == LeadingEdge::Right { Hand::Right } else { Hand::Left };
    if matches!(stated, Hand::Right | Hand::Left) && stated != from_edge {
        let at = survey.blades.first().map_or(0..0, |b| b.at.clone());
        push(
            problems,
            "survey-hand",
            &at,
            "the leading edge makes it the other hand than [propeller] says",
            "seen from astern, blade upright: leading edge on the right is right-hand, and turning the propeller end for end does not change it",
            &[],
        );
    }
}

/// The pitches a section gives, one for each way it was measured; `r` in m.
fn ways(section: &SurveySection, r: f64) -> Vec<Pitch<'_>> {
    let part = |q: &Quantity| 0.5 * (q.high - q.low) / q.middle.abs().max(1e-12);
    let mut all = Vec::new();
    if let Some(q) = &section.pitch {
        all.push(Pitch { value: q.middle, half: q.middle * part(q), at: &q.at, what: "the pitch read" });
    }
    if let (Some(rise), Some(arc)) = (&section.arc_rise, &section.arc) {
        let value = 360.0 * rise.middle / arc.middle;
        all.push(Pitch {
            value,
            half: value * part(rise).hypot(part(arc)),
            at: &rise.at,
            what: "the rise over the arc",
        });
    }
    if let Some(q) = &section.face_angle {
        let at = |a: f64| TAU * r * a.clamp(0.0, 85.0).to_radians().tan();
        let value = at(q.middle);
        all.push(Pitch { value, half: 0.5 * (at(q.high) - at(q.low)), at: &q.at, what: "the angle of the face" });
    }
    if let (Some(rise), Some(run)) = (&section.chord_rise, &section.chord_run) {
        // The run is a chord of the circle, the pitch goes by the arc over it.
        let turn = 2.0 * (0.5 * run.middle / r).clamp(0.0, 1.0).asin();
        let value = TAU * rise.middle / turn.max(1e-9);
        all.push(Pitch {
            value,
            half: value * part(rise).hypot(part(run)),
            at: &rise.at,
            what: "the rise over the run",
        });
    }
    if let (Some(first), Some(last)) = (section.points.first(), section.points.last())
        && let (Some(h0), Some(h1)) = (&first.height, &last.height)
        && let Some(turn) = turned(section, first, last, r)
    {
        let rise = (h1.middle - h0.middle).abs();
        let value = rise / turn;
        let half = 0.5 * (h0.high - h0.low).hypot(h1.high - h1.low) / turn;
        all.push(Pitch { value, half, at: &h1.at, what: "the line of the points" });
    }
    all
}

/// Part of a turn between two points; by the chord, it is laid on the pitch line.
fn turned(section: &SurveySection, a: &FacePoint, b: &FacePoint, r: f64) -> Option<f64> {
    if let (Some(a), Some(b)) = (&a.angle, &b.angle) {
        let turn = (b.middle - a.middle).abs() / 360.0;
        return (turn > 1e-6).then_some(turn);
    }
    let along =
        (b.chord_fraction.as_ref()?.middle - a.chord_fraction.as_ref()?.middle).abs() * section.chord.as_ref()?.middle;
    let rise = b.height.as_ref()?.middle - a.height.as_ref()?.middle;
    let run = (along * along - rise * rise).max(0.0).sqrt();
    (run > 1e-6 && r > 0.0).then_some(run / (TAU * r))
}

fn pitches(job: &Job, survey: &Survey, problems: &mut Vec<Problem>) {
    let meant = survey.design_pitch.as_ref().or(job.propeller.pitch.as_ref());
    let diameter = job.propeller.diameter.as_ref().map(|q| q.middle);
    let mut at_radius: Vec<(f64, f64, Range<usize>)> = Vec::new();
    for blade in &survey.blades {
        let tip = survey.tip_radius(blade);
        let mut angle_before: Option<&Quantity> = None;
        for section in &blade.sections {
            let Some(r) = section.radius_m(tip) else { continue };
            let all = ways(section, r);
            for pair in all.windows(2) {
                if (pair[0].value - pair[1].value).abs() > 3.0 * pair[0].half.hypot(pair[1].half) {
                    push(
                        problems,
                        "ways-differ",
                        pair[1].at,
                        format!(
                            "{} gives a pitch of {} mm, {} one of {} mm",
                            pair[1].what,
                            mm(pair[1].value),
                            pair[0].what,
                            mm(pair[0].value)
                        ),
                        "one of the two was misread: measure again",
                        &[(pair[0].at, pair[0].what)],
                    );
                }
            }
            if let Some(way) = all.first() {
                far(way, section, r, meant, diameter, problems);
                at_radius.push((r / tip.unwrap_or(r), way.value, way.at.clone()));
            }
            if let Some(q) = &section.face_angle {
                if let Some(before) = angle_before
                    && q.middle > before.middle + 3.0
                {
                    push(
                        problems,
                        "face-angle",
                        &q.at,
                        "the face stands steeper here than nearer the hub",
                        "on nearly all propellers the angle falls toward the tip; look at the radius and the angle",
                        &[(&before.at, "nearer the hub")],
                    );
                }
                angle_before = Some(q);
            }
        }
    }
    odd_one_out(&at_radius, problems);
}

/// A pitch that cannot be this propeller's: first the usual slips, then the plain doubt.
fn far(
    way: &Pitch,
    section: &SurveySection,
    r: f64,
    meant: Option<&Quantity>,
    diameter: Option<f64>,
    problems: &mut Vec<Problem>,
) {
    let (reference, name, place) = match (meant, diameter) {
        (Some(q), _) => (q.middle, "the pitch stated", Some(&q.at)),
        (None, Some(d)) => (d, "the diameter", None),
        _ => return,
    };
    let ratio = way.value / reference;
    let wide = if meant.is_some() { 0.7..=1.45 } else { 0.35..=2.2 };
    if wide.contains(&ratio) {
        return;
    }
    let near = |x: f64| (x - 1.0).abs() < 0.15;
    let from_shaft = section
        .face_angle
        .as_ref()
        .filter(|q| std::ptr::eq(&q.at, way.at))
        .is_some_and(|q| near(TAU * r / q.middle.to_radians().tan() / reference));
    let help = if near(25.4 * ratio) {
        "it would fit if the millimetres were inches"
    } else if near(ratio / 25.4) {
        "it would fit if the inches were millimetres"
    } else if near(ratio * 180.0 / std::f64::consts::PI) || near(ratio * std::f64::consts::PI / 180.0) {
        "it would fit if degrees and radians were swapped"
    } else if from_shaft {
        "it would fit if the angle was taken from the shaft: give the angle to the plane the tips run in, 90° less that"
    } else if near(2.0 * ratio) || near(0.5 * ratio) {
        "twice or half: look whether a radius and a diameter were confused, or the arc"
    } else {
        "look at the reading, the radius and their units"
    };
    let with: Vec<(&Range<usize>, &str)> = place.map(|at| (at, name)).into_iter().collect();
    push(
        problems,
        "pitch-far",
        way.at,
        format!("{} gives a pitch of {} mm; {name} is {} mm", way.what, mm(way.value), mm(reference)),
        help,
        &with,
    );
}

/// One blade that reads far from the others at the same radius, when there are three or more.
fn odd_one_out(all: &[(f64, f64, Range<usize>)], problems: &mut Vec<Problem>) {
    for (i, (x, value, at)) in all.iter().enumerate() {
        let mut others: Vec<f64> =
            all.iter().enumerate().filter(|(j, o)| *j != i && (o.0 - x).abs() < 0.015).map(|(_, o)| o.1).collect();
        others.sort_by(f64::total_cmp);
        let (Some(low), Some(high)) = (others.first(), others.last()) else { continue };
        let middle = others[others.len() / 2];
        // The others agree among themselves, and this one does not.
        if others.len() >= 2 && high / low < 1.06 && (value / middle - 1.0).abs() > 0.15 {
            push(
                problems,
                "blade-differs",
                at,
                format!("this blade reads {} mm where the others read {} mm", mm(*value), mm(middle)),
                "a blade bent that far can be seen with the eye: look, and measure again",
                &[],
            );
        }
    }
}

/// Two blades with the same readings to the last digit.
fn copies(survey: &Survey, problems: &mut Vec<Problem>) {
    let reading = |s: &SurveySection| -> Option<Vec<u64>> {
        let all = [&s.pitch, &s.arc_rise, &s.face_angle, &s.chord_rise];
        let mut bits: Vec<u64> = all.into_iter().flatten().map(|q| q.middle.to_bits()).collect();
        bits.extend(s.points.iter().filter_map(|p| p.height.as_ref()).map(|q| q.middle.to_bits()));
        (!bits.is_empty()).then_some(bits)
    };
    let readings: Vec<Vec<Vec<u64>>> =
        survey.blades.iter().map(|b| b.sections.iter().filter_map(reading).collect()).collect();
    for (i, mine) in readings.iter().enumerate() {
        if mine.len() < 3 {
            continue;
        }
        if let Some(first) = readings[..i].iter().position(|other| other == mine) {
            push(
                problems,
                "copied-blade",
                &survey.blades[i].at,
                format!(
                    "blade {} reads as blade {} at every radius, to the last digit",
                    survey.blade_name(i),
                    survey.blade_name(first)
                ),
                "no two blades do: were the readings copied twice?",
                &[(&survey.blades[first].at, "the other blade")],
            );
        }
    }
}
