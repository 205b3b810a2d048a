//! `survey`: the propeller as it was measured: pitches, areas, accuracy class, repair sheet, bore, findings.
//!
//! | file | what |
//! |---|---|
//! | [`accuracy`] | the classes of ISO 484 and what each allows |
//! | `convert`, `reduction` | readings to pitches and a measured propeller, with spreads |
//! | `classes`, `repair`, `turning`, `damage`, [`bore`] | what they mean, and what to do |
//! | `trace` | a blade on a photograph |
//! | `findings` | the same as plain sentences |
//! | `fitted` | the measured propeller for the crowd |
//! | [`report`] | the answer as plain data |

pub mod accuracy;
pub mod bore;
mod classes;
mod convert;
mod damage;
mod findings;
mod fitted;
mod meant;
mod reduction;
mod repair;
pub mod report;
mod trace;
mod turning;

pub use damage::ROOT_ZONE;
pub use fitted::{Low3, Surveyed, fitted};
pub use report::SurveyReport;

use crate::lack::{Lack, Missing};
use crate::phrase::plain;
use crate::report::Band;
use hydro::blade::{Alloy, Estimate, Fineness, Measured, mass_properties, rake, skew, thickness_fraction};
use job::Job;
use job::survey::Route;
use meant::{Meant, inches};
use reduction::{BladeRow, Reduced};
use report::{AreaSheet, BladeSheet, SectionSheet, ShapeSheet};

/// Reduces and judges a job's survey.
///
/// # Errors
/// When the job has no survey.
pub fn survey(job: &Job) -> Result<SurveyReport, Lack> {
    let Some(r) = Reduced::of(job) else {
        return Err(Lack {
            missing: vec![Missing {
                key: "survey",
                why: "there is nothing measured on the propeller",
                how: "write [survey] with the hub and each [[survey.blade]], or import a gauge's table",
            }],
        });
    };
    let meant = Meant::of(job, &r);
    let traced = trace::read(job, &r);
    let damage = damage::read(r.survey);
    let bore = bore_report(&r);
    let accuracy = classes::sheet(&r, meant.reference());
    let shape = shape(job, &r);
    let mass = r
        .survey
        .mass
        .as_ref()
        .map(|q| (q.middle, "weighed".to_owned()))
        .or_else(|| shape.mass.map(|m| (m.middle, "from the measured shape".to_owned())));
    let repair = repair::sheet(job, &r, &meant, &damage, mass);
    let case = findings::Case { job, r: &r, meant: &meant, accuracy: &accuracy, bore: bore.as_ref(), damage: &damage };
    let findings = findings::findings(&case);
    let mut notes = r.notes.clone();
    notes.extend(traced.iter().flat_map(|t| t.notes.iter().cloned()));
    notes.push("Spreads are those of the tools (common practice, no source) unless stated.".to_owned());
    Ok(SurveyReport {
        title: job.title.clone(),
        headline: headline(&r, &meant, &accuracy, &findings),
        date: r.survey.date.clone(),
        surveyor: r.survey.surveyor.clone(),
        blades_of: u8::try_from(r.count).unwrap_or(u8::MAX),
        blades_measured: u8::try_from(r.blades.len()).unwrap_or(u8::MAX),
        hand: convert::hand(job, r.survey).map(|h| if h.sign() > 0.0 { "right" } else { "left" }),
        diameter: r.diameter.map(|e| band(e, 1000.0, "mm")),
        mean_pitch: r.mean_whole().map(|e| band(e, 1000.0, "mm")),
        effective_pitch: r.effective().map(|e| band(e, 1000.0, "mm")),
        blade_spread: r.blade_spread().map(|e| band(e, 100.0, "%")),
        pitch_reference: meant.words(),
        reference_pitch: meant.reference().map(|p| 1000.0 * p),
        radial: fitted::radial(r.radial),
        chordwise: fitted::chordwise(r.chordwise),
        blades: r.blades.iter().map(|b| blade_sheet(b, &r)).collect(),
        areas: area_sheet(&r),
        shape,
        turning: turning::sheet(job, &r),
        photo: traced.as_ref().and_then(trace::sheet),
        accuracy,
        repair,
        bore,
        damage,
        findings,
        notes,
    })
}

/// The measured propeller of a job, where enough was measured to draw it.
#[must_use]
pub fn measured(job: &Job) -> Option<Measured> {
    Reduced::of(job)?.measured
}

fn band(e: Estimate, scale: f64, unit: &'static str) -> Band {
    let (low, high) = e.band();
    Band { low: scale * low, middle: scale * e.value, high: scale * high, unit }
}

fn blade_sheet(b: &BladeRow, r: &Reduced) -> BladeSheet {
    let mm = |q: &Option<job::Quantity>| q.as_ref().map(|q| band(convert::estimate(q), 1000.0, "mm"));
    BladeSheet {
        name: b.name.clone(),
        tip_radius: b.tip.map(|e| band(e, 1000.0, "mm")),
        mean_pitch: b.mean.map(|e| band(e, 1000.0, "mm")),
        from_mean: b.mean.zip(r.mean).map(|(b, m)| 100.0 * (b.value / m.value - 1.0)),
        sections: b
            .sections
            .iter()
            .map(|s| SectionSheet {
                radius_ratio: s.x,
                radius: 1000.0 * s.radius,
                measured_by: s.routes.iter().map(|route| route_words(*route)).collect(),
                pitch: s.pitch.map(|e| band(e, 1000.0, "mm")),
                local_pitches: s.local.iter().map(|e| 1000.0 * e.value).collect(),
                chord: mm(&s.said.chord),
                thickness: mm(&s.said.thickness),
                track: mm(&s.said.track),
                cup_drop: s.said.cup_drop.as_ref().map(|q| 1000.0 * q.middle),
                cup_length: s.said.cup_length.as_ref().map(|q| 1000.0 * q.middle),
            })
            .collect(),
    }
}

fn route_words(route: Route) -> &'static str {
    match route {
        Route::Direct => "read as pitch",
        Route::Arc => "rise over an arc",
        Route::FaceAngle => "angle of the face",
        Route::Chord => "rise over a run",
        Route::Points => "points along the face",
    }
}

fn area_sheet(r: &Reduced) -> Option<AreaSheet> {
    let (all, sd) = r.areas()?;
    let one = |value: f64| band(Estimate::new(value, sd * value), 1.0, "1");
    Some(AreaSheet {
        expanded_ratio: one(all.expanded_ratio),
        developed_ratio: one(all.developed_ratio),
        projected_ratio: one(all.projected_ratio),
        projected_ratio_taylor: all.projected_ratio_taylor,
        mean_width_ratio: one(all.mean_width_ratio),
        expanded: 1e4 * all.blades.expanded,
    })
}

/// Rake from the tracks, skew from the edges, mass from the thickness: each only where its readings are there; a value stated
/// in the survey goes before.
fn shape(job: &Job, r: &Reduced) -> ShapeSheet {
    let two = |of: fn(&job::survey::SurveySection) -> bool| {
        r.blades.iter().any(|b| b.sections.iter().filter(|s| of(s.said)).count() >= 2)
    };
    let measured = r.measured.as_ref();
    let mean = |m: &Measured, of: &dyn Fn(&hydro::blade::Blade, f64) -> f64| {
        let e = m.estimate(|p| p.blades.iter().map(|b| of(b, p.hub.radius())).sum::<f64>() / p.count());
        e.is_finite().then_some(e)
    };
    let degrees = |e: Estimate| band(e, 1.0_f64.to_degrees(), "deg");
    let stated = |q: &Option<job::Quantity>| q.as_ref().map(|q| band(convert::estimate(q), 1.0, "deg"));
    let thick = two(|s| s.thickness.is_some());
    let hub = &r.survey.hub;
    let massive = measured.filter(|_| thick && r.widths_known() && hub.diameter.is_some() && hub.length.is_some());
    let fine = Fineness { radial: 24, chordwise: 16, around: 48 };
    let properties = massive.map(|m| mass_properties(&m.propeller, alloy(job).density(), fine));
    // Fillets, density and the drawn outline: 8 % (estimate).
    let rough = |value: f64, unit| band(Estimate::from_band(value, 0.08 * value), 1.0, unit);
    ShapeSheet {
        rake: stated(&r.survey.rake).or_else(|| {
            measured.filter(|_| two(|s| s.track.is_some())).and_then(|m| mean(m, &|b, h| rake(b, h).angle)).map(degrees)
        }),
        skew: stated(&r.survey.skew).or_else(|| {
            let edges = two(|s| s.leading_edge.is_some() && (s.trailing_edge.is_some() || s.chord.is_some()));
            measured.filter(|_| edges).and_then(|m| mean(m, &|b, h| skew(b, h).angle)).map(degrees)
        }),
        thickness_fraction: measured
            .filter(|_| thick)
            .and_then(|m| mean(m, &thickness_fraction))
            .map(|e| band(e, 1.0, "1")),
        mass: match &r.survey.mass {
            Some(q) => Some(band(convert::estimate(q), 1.0, "kg")),
            None => properties.as_ref().filter(|p| p.mass > 0.0).map(|p| rough(p.mass, "kg")),
        },
        inertia: properties.as_ref().filter(|p| p.inertia > 0.0).map(|p| rough(p.inertia, "kg m2")),
    }
}

/// The alloy by its name in the job; manganese bronze when it is not said.
pub(crate) fn alloy(job: &Job) -> Alloy {
    let name = job.propeller.material.as_deref().unwrap_or_default().to_lowercase();
    let has = |word: &str| name.contains(word);
    match () {
        () if has("stainless") || has("steel") => Alloy::StainlessSteel,
        () if has("nickel") && has("manganese") => Alloy::NickelManganeseBronze,
        () if has("manganese") && has("alumin") => Alloy::ManganeseAluminiumBronze,
        () if has("nickel") || has("nibral") => Alloy::NickelAluminiumBronze,
        () if has("alumin") && !has("bronze") => Alloy::Aluminium,
        () => Alloy::ManganeseBronze,
    }
}

fn bore_report(r: &Reduced) -> Option<report::BoreReport> {
    let hub = &r.survey.hub;
    let some = |q: &Option<job::Quantity>| q.as_ref().map(convert::estimate);
    let (large, small) = (some(&hub.bore_large), some(&hub.bore_small));
    let length = some(&hub.taper_length).or(some(&hub.length));
    match (large, small, length) {
        (Some(large), Some(small), Some(length)) => {
            Some(bore::Bore { large, small, length, keyway: some(&hub.keyway_width) }.report())
        }
        (None, None, _) => None,
        _ => Some(report::BoreReport {
            taper: None,
            nearest: None,
            also_near: None,
            statement: "The bore's taper needs its two diameters and the length between them.".to_owned(),
            warning: None,
            notes: Vec::new(),
        }),
    }
}

fn headline(
    r: &Reduced,
    meant: &Meant,
    accuracy: &report::AccuracySheet,
    findings: &[crate::report::Finding],
) -> String {
    if let Some(stop) = findings.iter().find(|f| f.gravity == crate::report::Gravity::Stop) {
        return format!("{} Do not go to sea on it.", stop.sentence);
    }
    let Some(mean) = r.mean_whole() else {
        return "No pitch was measured: the survey says what is in its tables, no more.".to_owned();
    };
    let mut text = match (&meant.words(), meant.reference()) {
        (Some(words), Some(pitch)) => {
            let off = 100.0 * (mean.value / pitch - 1.0);
            let (low, high) = mean.band();
            let same = (low..=high).contains(&pitch);
            let how = if same {
                "as it should within what was measured".to_owned()
            } else {
                format!("{} % {}", plain(off.abs(), 2), if off < 0.0 { "less" } else { "more" })
            };
            format!("{}{}, it measures {}: {how}", words[..1].to_uppercase(), &words[1..], inches(mean.value))
        }
        _ => format!("It measures {} of pitch", inches(mean.value)),
    };
    if let Some(spread) = r.blade_spread() {
        text.push_str(&format!("; blades {} % apart", plain((100.0 * spread.value).max(0.05), 2)));
    }
    if !accuracy.rows.is_empty() {
        match accuracy.class {
            Some(class) => text.push_str(&format!("; class {class} as far as measured")),
            None => text.push_str("; outside class III"),
        }
    }
    text.push('.');
    text
}

#[cfg(test)]
mod tests;
