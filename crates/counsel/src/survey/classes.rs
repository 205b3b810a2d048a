//! The survey held against the accuracy classes: value by value, and overall with what decides it.

use super::accuracy::{self, Class, Copies, Judged, Rules, class_of, tolerance};
use super::reduction::Reduced;
use super::report::{AccuracySheet, ClassRow};
use crate::phrase::plain;
use hydro::blade::Estimate;
use job::assume::BAND_Z;

/// Judges the survey; `design` is the pitch the propeller was meant to have, m.
pub(super) fn sheet(r: &Reduced, design: Option<f64>) -> AccuracySheet {
    let rules = Rules::of(r.diameter.map_or(0.0, |d| d.value));
    let rows = rows(r, design, rules);
    let among = match r.mean {
        Some(mean) => overall(&self::rows(r, None, rules), |row| row.class).map_or_else(
            || "not judged".to_owned(),
            |class| {
                let what = accuracy::word(class);
                format!("{what}, held against their own mean of {} mm", plain(1000.0 * mean.value, 4))
            },
        ),
        None => "not judged".to_owned(),
    };
    let class = overall(&rows, |row| row.class);
    let words = class.map_or("not judged".to_owned(), accuracy::word);
    AccuracySheet {
        part: rules.part,
        statement: statement(r, rules, design),
        class: class.flatten(),
        within_spread: spread_words(&rows),
        decided_by: class.map_or_else(Vec::new, |class| decided_by(&rows, class)),
        words,
        among_blades: among,
        missing_radii: missing(r),
        sources: sources(&rows),
        rows,
    }
}

fn statement(r: &Reduced, rules: Rules, design: Option<f64>) -> String {
    let mut text = rules.part.statement().to_owned();
    if design.is_none() && r.mean.is_some() {
        text.push_str(" No design pitch is stated: the pitches are held against the measured mean, so the propeller's own mean is not judged.");
    }
    text.push_str(
        " Design thickness and widths are not known: blades are held against the mean of the blades at each radius. Form of \
         sections and edges, surface and balance are not judged.",
    );
    text
}

/// The worst class of the rows; `None` without a row, `Some(None)`: outside class III.
fn overall(rows: &[ClassRow], of: impl Fn(&ClassRow) -> Option<Class>) -> Option<Option<Class>> {
    rows.iter().map(of).reduce(accuracy::worse)
}

fn rows(r: &Reduced, design: Option<f64>, rules: Rules) -> Vec<ClassRow> {
    let mut rows = Vec::new();
    pitches(r, design, rules, &mut rows);
    shapes(r, rules, &mut rows);
    spacing(r, rules, &mut rows);
    rows
}

/// What a row is about.
struct About<'a> {
    judged: Judged,
    blade: Option<&'a str>,
    x: Option<f64>,
}

fn row(about: About, measured: Estimate, meant: f64, reference: f64, rules: Rules) -> ClassRow {
    let deviation = measured.value - meant;
    let half = BAND_Z * measured.sd;
    let at = |d: f64| class_of(about.judged, d, reference, rules);
    let (best, worst) =
        (at(deviation.signum() * (deviation.abs() - half).max(0.0)), at(deviation + half.copysign(deviation)));
    let class = at(deviation);
    let degrees = about.judged == Judged::Spacing;
    let scale = if degrees { 1.0 } else { 1000.0 };
    ClassRow {
        judged: about.judged,
        what: about.judged.words().to_owned(),
        blade: about.blade.map(str::to_owned),
        radius_ratio: about.x,
        measured: scale * measured.value,
        meant: scale * meant,
        unit: if degrees { "deg" } else { "mm" },
        deviation: scale * deviation,
        spread: scale * half,
        percent: if degrees { deviation } else { 100.0 * deviation / reference },
        words: accuracy::word(class),
        within_spread: from_to(best, worst),
        class,
    }
}

fn from_to(best: Option<Class>, worst: Option<Class>) -> String {
    match (best, worst) {
        (a, b) if a == b => accuracy::word(a),
        (Some(a), Some(b)) => format!("{a} to {b}"),
        (Some(a), None) => format!("{a} to outside class III"),
        (None, _) => accuracy::word(None),
    }
}

fn pitches(r: &Reduced, design: Option<f64>, rules: Rules, rows: &mut Vec<ClassRow>) {
    let Some(own) = r.mean else { return };
    let meant = design.unwrap_or(own.value);
    // Against a stated design the error common to all readings counts; against their own mean it falls out.
    let whole = |e: Estimate| if design.is_some() { e.and_sd(r.common * e.value) } else { e };
    for blade in &r.blades {
        for s in &blade.sections {
            let here = meant * r.shape_at(s.x);
            let about = |judged| About { judged, blade: Some(&blade.name), x: Some(s.x) };
            let farthest = s.local.iter().max_by(|a, b| (a.value - here).abs().total_cmp(&(b.value - here).abs()));
            if let (Some(local), true) = (farthest, s.local.len() >= 2) {
                rows.push(row(about(Judged::LocalPitch), whole(*local), here, here, rules));
            }
            if let Some(p) = s.pitch {
                rows.push(row(about(Judged::SectionPitch), whole(p), here, here, rules));
            }
        }
        if let Some(mean) = blade.mean {
            rows.push(row(
                About { judged: Judged::BladePitch, blade: Some(&blade.name), x: None },
                whole(mean),
                meant,
                meant,
                rules,
            ));
        }
    }
    if design.is_some() {
        rows.push(row(About { judged: Judged::PropellerPitch, blade: None, x: None }, whole(own), meant, meant, rules));
    }
}

/// Thickness, width, track and tip radius against the mean of the blades.
fn shapes(r: &Reduced, rules: Rules, rows: &mut Vec<ClassRow>) {
    let Some(d) = r.diameter.map(|d| d.value) else { return };
    let per_blade = d / r.count.max(1) as f64;
    for blade in &r.blades {
        for s in &blade.sections {
            let mut against = |judged,
                               of: &dyn Fn(&super::reduction::SectionRow) -> Option<Estimate>,
                               reference: Option<f64>| {
                let (Some(e), Some((mean, n))) = (of(s), r.at_radius(s.x, |s| of(s).map(|e| e.value))) else { return };
                if n >= 2 {
                    rows.push(row(
                        About { judged, blade: Some(&blade.name), x: Some(s.x) },
                        e,
                        mean,
                        reference.unwrap_or(mean),
                        rules,
                    ));
                }
            };
            let some = |q: &Option<job::Quantity>| q.as_ref().map(super::convert::estimate);
            against(Judged::Thickness, &|s| some(&s.said.thickness), None);
            against(Judged::SectionLength, &|s| some(&s.said.chord), Some(per_blade));
            against(Judged::AxialPosition, &|s| some(&s.said.track), Some(d));
        }
    }
    let tips: Vec<f64> = r.blades.iter().filter_map(|b| b.tip).map(|t| t.value).collect();
    if tips.len() >= 2 {
        let mean = tips.iter().sum::<f64>() / tips.len() as f64;
        for blade in &r.blades {
            if let Some(tip) = blade.tip {
                rows.push(row(
                    About { judged: Judged::TipRadius, blade: Some(&blade.name), x: None },
                    tip,
                    mean,
                    mean,
                    rules,
                ));
            }
        }
    }
}

/// Angles between neighbours, when every blade's angle was taken.
fn spacing(r: &Reduced, rules: Rules, rows: &mut Vec<ClassRow>) {
    let mut all: Vec<(Estimate, &str)> = r
        .blades
        .iter()
        .filter_map(|b| b.angle.map(|a| (Estimate::new(a.value.rem_euclid(360.0), a.sd), b.name.as_str())))
        .collect();
    if all.len() < 2 || all.len() != r.count {
        return;
    }
    all.sort_by(|a, b| a.0.value.total_cmp(&b.0.value));
    let even = 360.0 / all.len() as f64;
    for i in 0..all.len() {
        let (here, next) = (all[i], all[(i + 1) % all.len()]);
        let gap = (next.0.value - here.0.value).rem_euclid(360.0);
        let pair = format!("{} to {}", here.1, next.1);
        let about = About { judged: Judged::Spacing, blade: Some(&pair), x: None };
        rows.push(row(about, Estimate::new(gap, here.0.sd.hypot(next.0.sd)), even, even, rules));
    }
}

fn spread_words(rows: &[ClassRow]) -> String {
    if rows.is_empty() {
        return "not judged".to_owned();
    }
    let parse = |word: &str| Class::ALL.into_iter().find(|c| c.word() == word);
    let ends = |row: &ClassRow| match row.within_spread.split_once(" to ") {
        Some((a, b)) => (parse(a), parse(b)),
        None => (parse(&row.within_spread), parse(&row.within_spread)),
    };
    let best = overall(rows, |row| ends(row).0).flatten();
    let worst = overall(rows, |row| ends(row).1).flatten();
    from_to(best, worst)
}

/// The rows of the overall class, the farthest off first, in words.
fn decided_by(rows: &[ClassRow], class: Option<Class>) -> Vec<String> {
    // Beside what the next better class allows, so that a degree and a per cent can stand in one list.
    let better = match class {
        Some(Class::S) => return Vec::new(),
        Some(Class::I) => Class::S,
        Some(Class::II) => Class::I,
        Some(Class::III) => Class::II,
        None => Class::III,
    };
    let beyond = |row: &ClassRow| {
        let allowed = tolerance(row.judged, better, 100.0, Rules::of(0.0));
        let side = allowed.map(|(plus, minus)| if row.deviation < 0.0 { minus } else { plus });
        side.map_or(0.0, |allowed| row.percent.abs() / allowed)
    };
    let mut deciding: Vec<&ClassRow> = rows.iter().filter(|row| row.class == class).collect();
    deciding.sort_by(|a, b| beyond(b).total_cmp(&beyond(a)));
    deciding.iter().take(4).map(|row| deviation_words(row)).collect()
}

/// `blade B at 0.70 R: pitch of a section 3.1 % over`.
pub(super) fn deviation_words(row: &ClassRow) -> String {
    let place = match (&row.blade, row.radius_ratio) {
        (Some(blade), Some(x)) => format!("blade {blade} at {x:.2} R: "),
        (Some(blade), None) => format!("blade {blade}: "),
        _ => String::new(),
    };
    let by = if row.unit == "deg" {
        format!("{} degrees", plain(row.percent.abs(), 2))
    } else {
        format!("{} %", plain(row.percent.abs(), 2))
    };
    format!("{place}{} {by} {}", row.what, if row.deviation < 0.0 { "under" } else { "over" })
}

fn missing(r: &Reduced) -> Vec<String> {
    let radii: Vec<f64> = r.radii();
    let mut out = Vec::new();
    for (classes, class) in [("S and I", Class::I), ("II and III", Class::II)] {
        let lacks: Vec<String> = class
            .radii()
            .iter()
            .filter(|x| !radii.iter().any(|y| (*y - **x).abs() < 0.02))
            .map(|x| x.to_string())
            .collect();
        let mut places = Vec::new();
        if !radii.iter().any(|x| *x < 0.38) {
            places.push("near the hub".to_owned());
        }
        if !lacks.is_empty() {
            places.push(format!("{} R", lacks.join(", ")));
        }
        if !places.is_empty() && !radii.is_empty() {
            out.push(format!("Classes {classes} ask for radii not measured here: {}.", places.join(", ")));
        }
    }
    out
}

fn sources(rows: &[ClassRow]) -> Vec<String> {
    let mut out = vec![
        "ISO 484-2:1981 percentages of pitch and thickness, spacing and rake, radii: two public copies agree; that the edition of \
         2015 kept them is from memory."
            .to_owned(),
    ];
    if rows.iter().any(|row| row.judged.copies() == Copies::TwoReferenceMemory) {
        out.push("Width of sections: percentages in two copies; that they are parts of diameter over number of blades is from memory.".to_owned());
    }
    if rows.iter().any(|row| row.judged == Judged::AxialPosition) {
        out.push("Track from blade to blade is held against the figures for rake; the standard has a row of its own that was not seen.".to_owned());
    }
    if rows.iter().any(|row| row.judged.copies() == Copies::Memory) {
        out.push("Tip radius: from memory.".to_owned());
    }
    out.push("Millimetre minima are left out: most of them are from memory.".to_owned());
    out
}
