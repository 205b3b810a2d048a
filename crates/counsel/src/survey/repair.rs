//! What a workshop is to do: target pitches, order of work, cup, edges, where not to weld, balance.

use super::accuracy::{Class, Judged, Rules, balance, tolerance, unbalance_of_grade};
use super::damage::ROOT_ZONE;
use super::meant::Meant;
use super::reduction::Reduced;
use super::report::{BalanceRow, BalanceSheet, DamageRow, RepairRow, RepairSheet};
use crate::phrase::plain;
use hydro::blade::Radial;
use job::Job;
use job::assume::BAND_Z;
use job::survey::{Colour, DamageKind, EdgeForm, Ring, Survey};
use std::f64::consts::TAU;

/// The sheet. Blades are made alike first, at their own mean; a change of pitch only where a design pitch is stated.
pub(super) fn sheet(
    job: &Job,
    r: &Reduced,
    meant: &Meant,
    damage: &[DamageRow],
    mass: Option<(f64, String)>,
) -> RepairSheet {
    let own = r.mean.map(|m| m.value);
    let (target, mut words) = match (meant.ordered, own) {
        (Some(pitch), _) => {
            (Some(pitch), format!("design pitch {} mm ({})", plain(1000.0 * pitch, 4), super::meant::inches(pitch)))
        }
        (None, Some(pitch)) => (
            Some(pitch),
            format!(
                "the blades made alike at their own mean, {} mm ({}); no change of pitch is asked for",
                plain(1000.0 * pitch, 4),
                super::meant::inches(pitch)
            ),
        ),
        (None, None) => (None, "no pitch was measured".to_owned()),
    };
    if target.is_some() {
        words.push_str(&over_the_radius(r));
    }
    let rows = target.map_or_else(Vec::new, |target| rows(r, target));
    let true_up_first = true_up(r, target);
    RepairSheet {
        target: words,
        steps: steps(r, meant, &rows, &true_up_first, damage),
        rows,
        true_up_first,
        no_weld: format!(
            "Inside {ROOT_ZONE} R, both sides and the fillets, nobody welds without a licensed procedure for this alloy; some shops \
             draw the line at 0.4 R (common practice, no source)."
        ),
        balance: mass.and_then(|(mass, from)| balance_sheet(job, r, mass, from)),
        cautions: cautions(r.survey),
    }
}

/// How the target runs over the radius, so that nobody trues a blade flat that was made with less pitch at the tip.
fn over_the_radius(r: &Reduced) -> String {
    let factors: Vec<f64> = r.radii().into_iter().map(|x| r.shape_at(x)).collect();
    let [low, high] = [f64::min, f64::max].map(|pick| factors.iter().copied().fold(1.0, pick));
    if !r.survey.design.is_empty() {
        return "; over the radius as stated in [[survey.design]], see the table".to_owned();
    }
    if high - low > 0.001 {
        return "; over the radius as the blades have it in the mean, see the table: check against the maker's drawing"
            .to_owned();
    }
    match r.radial {
        Radial::Constant | Radial::Unknown => "; alike at every radius".to_owned(),
        Radial::RisesToTip | Radial::FallsToTip | Radial::Varies => {
            "; alike at every radius: the run over the radius that was measured is under 3 % and may be wear or the tool. If the blade \
             was made with a varying pitch, state it in [[survey.design]]"
                .to_owned()
        }
    }
}

fn rows(r: &Reduced, target: f64) -> Vec<RepairRow> {
    let mut rows = Vec::new();
    for blade in &r.blades {
        for s in &blade.sections {
            let Some(p) = s.pitch else { continue };
            let to = target * r.shape_at(s.x);
            let correction = to - p.value;
            let half = BAND_Z * p.sd;
            let angle = |pitch: f64| pitch.atan2(TAU * s.radius).to_degrees();
            let allowed = tolerance(Judged::SectionPitch, Class::I, to, Rules::of(0.0)).map_or(0.0, |t| t.0);
            rows.push(RepairRow {
                blade: blade.name.clone(),
                radius_ratio: s.x,
                radius: 1000.0 * s.radius,
                target: 1000.0 * to,
                before: 1000.0 * p.value,
                spread: 1000.0 * half,
                correction: 1000.0 * correction,
                twist: angle(to) - angle(p.value),
                action: if correction.abs() <= half {
                    "leave, within what was measured"
                } else if correction.abs() <= allowed {
                    "leave"
                } else {
                    "twist"
                },
                after: None,
            });
        }
    }
    rows
}

/// Blades whose mean lies off the target by more than class I allows, the farthest first.
fn true_up(r: &Reduced, target: Option<f64>) -> Vec<String> {
    let Some(target) = target else { return Vec::new() };
    let mut off: Vec<(f64, f64, &str)> = r
        .blades
        .iter()
        .filter_map(|b| b.mean.map(|m| ((m.value - target) / target, BAND_Z * m.sd / target, b.name.as_str())))
        .filter(|(off, half, _)| off.abs() > 0.01 && off.abs() > *half)
        .collect();
    off.sort_by(|a, b| b.0.abs().total_cmp(&a.0.abs()));
    off.iter()
        .map(|(off, _, name)| {
            format!("blade {name}, {} % {}", plain(100.0 * off.abs(), 2), if *off > 0.0 { "over" } else { "under" })
        })
        .collect()
}

fn steps(r: &Reduced, meant: &Meant, rows: &[RepairRow], first: &[String], damage: &[DamageRow]) -> Vec<String> {
    let mut steps = Vec::new();
    let bent =
        r.survey.damage.iter().any(|d| matches!(d.kind, Some(DamageKind::Bend | DamageKind::Crack | DamageKind::Weld)));
    if bent {
        steps.push(
            "Crack test (dye) at roots, welds and bends before anything is heated or straightened, and again after."
                .to_owned(),
        );
    }
    for d in damage.iter().filter(|d| d.root_zone) {
        steps.push(format!("Root zone, {}: {}.", d.place, d.remedy));
    }
    if !first.is_empty() {
        steps.push(format!("True up the blades against each other, in this order: {}.", first.join("; ")));
    } else if rows.iter().any(|row| row.action == "twist") {
        steps.push("The blades' means agree; true up the single radii marked in the table.".to_owned());
    } else if !rows.is_empty() {
        steps.push("Pitch: leave it, the blades agree within class I or within what was measured.".to_owned());
    }
    if let (Some(pitch), Some(own)) = (meant.ordered, r.mean)
        && (own.value / pitch - 1.0).abs() > 0.0075
    {
        steps.push(format!(
            "Then, and not before the blades are alike, change the pitch by {} % to {}; measure again at every radius of the table.",
            plain(100.0 * (pitch / own.value - 1.0), 2),
            super::meant::inches(pitch)
        ));
    }
    cup(r, &mut steps);
    edges(r.survey, &mut steps);
    steps.push("Balance last: metal comes off the middle of the heavy blade outside 0.5 R, spread wide, never off edges or root (common practice, no source).".to_owned());
    steps.push(
        "Enter the pitch of every radius in the column `after`, and stamp what was measured, not what was ordered."
            .to_owned(),
    );
    steps
}

/// Cup is pitch by another name: one drop and length on all blades.
fn cup(r: &Reduced, steps: &mut Vec<String>) {
    let mut per_blade: Vec<(f64, &str)> = Vec::new();
    let mut looked = false;
    for blade in &r.blades {
        let drops: Vec<f64> =
            blade.sections.iter().filter_map(|s| s.said.cup_drop.as_ref()).map(|q| q.middle).collect();
        looked |= !drops.is_empty();
        // The mean of where there is one: how far in it begins is another matter.
        let there = drops.iter().filter(|d| **d > 0.0).count().max(1);
        if !drops.is_empty() {
            per_blade.push((1000.0 * drops.iter().sum::<f64>() / there as f64, &blade.name));
        }
    }
    if !looked {
        steps.push(
            "Cup: not measured; lay a straight edge on the trailing edge of every blade before and after.".to_owned(),
        );
        return;
    }
    let by = |a: &&(f64, &str), b: &&(f64, &str)| a.0.total_cmp(&b.0);
    if let (Some(least), Some(most)) = (per_blade.iter().min_by(by), per_blade.iter().max_by(by))
        && most.0 > 0.0
    {
        if most.0 - least.0 > 0.4 {
            steps.push(format!(
                "Cup alike on all blades: mean drop {} mm on blade {}, {} mm on blade {}.",
                plain(least.0, 2),
                least.1,
                plain(most.0, 2),
                most.1
            ));
        } else {
            steps.push(format!(
                "Keep the cup: mean drop {} mm, alike on the blades measured.",
                plain(0.5 * (least.0 + most.0), 2)
            ));
        }
    } else {
        steps.push("No cup: put none on unless it is ordered, and do not grind the trailing edges.".to_owned());
    }
}

fn edges(survey: &Survey, steps: &mut Vec<String>) {
    let forms: Vec<EdgeForm> = survey.blades.iter().filter_map(|b| b.trailing_edge_form).collect();
    if forms.contains(&EdgeForm::Torn) {
        steps.push("Trailing edges: straighten and fair the torn ones to the form of the others.".to_owned());
    }
    if survey.blades.iter().any(|b| b.leading_edge_form == Some(EdgeForm::Torn)) {
        steps.push("Leading edges: straighten the bent ones first, crack-tested before and after.".to_owned());
    }
    let whole: Vec<&EdgeForm> = forms.iter().filter(|f| **f != EdgeForm::Torn).collect();
    if whole.windows(2).any(|w| w[0] != w[1]) {
        steps.push(
            "Trailing edges: bring all to one form; a bevel on one side guards against singing (common practice)."
                .to_owned(),
        );
    }
    steps.push(
        "Leading edges: fair nicks in shallow, keep the radius; take nothing off the leading edge for singing."
            .to_owned(),
    );
}

fn cautions(survey: &Survey) -> Vec<String> {
    let mut out = Vec::new();
    let kinds: Vec<DamageKind> = survey.damage.iter().filter_map(|d| d.kind).collect();
    if kinds.contains(&DamageKind::Crack) {
        out.push("Cracked: do not go to sea on it.".to_owned());
    }
    if survey.ring == Some(Ring::Dull) {
        out.push("It does not ring: do not go to sea on it until it is crack-tested and its metal judged.".to_owned());
    }
    if matches!(survey.colour, Some(Colour::Pink | Colour::PinkPatches)) || kinds.contains(&DamageKind::PinkMetal) {
        out.push("Pink, soft metal has lost its zinc and its strength: do not straighten or weld it; do not go to sea on it where it is dull or flakes.".to_owned());
    }
    out.push("Straightening, heating and welding a propeller is licensed work; a blade lost at sea can sink the boat or leave her without stopping power.".to_owned());
    out
}

fn balance_sheet(job: &Job, r: &Reduced, mass: f64, from: String) -> Option<BalanceSheet> {
    let tip = 0.5 * r.diameter?.value;
    let turns = shaft_speed(job)?;
    let rows: Vec<BalanceRow> = Class::ALL
        .into_iter()
        .filter_map(|class| {
            let b = balance(class, mass, tip, turns)?;
            let rule = if b.by_speed <= b.by_mass { "speed" } else { "mass" };
            Some(BalanceRow { class, allowed: 1000.0 * b.allowed, rule, grade: b.grade })
        })
        .collect();
    let grade_6_3 = 1000.0 * unbalance_of_grade(6.3, mass, turns)? / tip;
    let one = rows.iter().find(|row| row.class == Class::I)?;
    Some(BalanceSheet {
        mass,
        mass_from: from,
        shaft_speed: 60.0 * turns,
        statement: format!(
            "Static balance, class I: {} g at the tip of {} mm at {} rpm on the shaft (ISO 484, from memory); a general grade of G 6.3 \
             would allow {} g (ISO 21940-11).",
            plain(one.allowed, 2),
            plain(1000.0 * tip, 3),
            plain(60.0 * turns, 3),
            plain(grade_6_3, 2)
        ),
        rows,
        grade_6_3,
    })
}

/// Shaft speed at rated engine speed, rev/s.
pub(super) fn shaft_speed(job: &Job) -> Option<f64> {
    let engine = job
        .engine
        .rated_speed
        .as_ref()
        .map(|q| q.middle)
        .or(job.engine.full_throttle_band.map(|(a, b)| 0.5 * (a + b)))?;
    let reduction = job.drive.reduction.as_ref()?.middle;
    (reduction > 0.0).then(|| engine / reduction)
}
