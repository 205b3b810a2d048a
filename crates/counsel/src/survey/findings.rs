//! What the survey found, as plain sentences in order of gravity.

use super::accuracy::{self, Class};
use super::meant::{Meant, inches};
use super::reduction::Reduced;
use super::report::{AccuracySheet, BoreReport, DamageRow};
use crate::phrase::{number, plain};
use crate::report::{Finding, Gravity};
use job::survey::{Colour, DamageKind, EdgeForm, LeadingEdge, Ring};
use job::{Hand, Job, Source, Word};

const STAY: &str =
    "Do not go to sea on it: a blade that breaks at sea can sink the boat or leave her without stopping power.";

/// Everything the findings look at.
pub(super) struct Case<'a> {
    pub job: &'a Job,
    pub r: &'a Reduced<'a>,
    pub meant: &'a Meant,
    pub accuracy: &'a AccuracySheet,
    pub bore: Option<&'a BoreReport>,
    pub damage: &'a [DamageRow],
}

/// All findings, gravest first.
pub(super) fn findings(case: &Case) -> Vec<Finding> {
    let mut list = Vec::new();
    metal(case, &mut list);
    hand(case, &mut list);
    pitch(case, &mut list);
    blades(case, &mut list);
    diameter(case, &mut list);
    class(case, &mut list);
    cup(case, &mut list);
    edges(case, &mut list);
    damage(case, &mut list);
    bore(case, &mut list);
    list.sort_by_key(|finding| finding.gravity);
    list
}

/// A finding without hangs and caution.
fn found(gravity: Gravity, code: &'static str, sentence: String, advice: &str, source: &str) -> Finding {
    Finding {
        gravity,
        code,
        sentence,
        advice: advice.to_owned(),
        hangs_on: Vec::new(),
        source: source.to_owned(),
        caution: None,
    }
}

fn metal(case: &Case, list: &mut Vec<Finding>) {
    let survey = case.r.survey;
    let kinds: Vec<DamageKind> = survey.damage.iter().filter_map(|d| d.kind).collect();
    let cracked = kinds.contains(&DamageKind::Crack);
    let dull = survey.ring == Some(Ring::Dull);
    let pink =
        kinds.contains(&DamageKind::PinkMetal) || matches!(survey.colour, Some(Colour::Pink | Colour::PinkPatches));
    if cracked {
        let place = case.damage.iter().find(|d| d.what.starts_with("crack")).map_or("a blade", |d| d.place.as_str());
        list.push(Finding {
            caution: Some(STAY.to_owned()),
            ..found(
                Gravity::Stop,
                "crack",
                format!("There is a crack: {place}."),
                "Dye test along its whole length; a licensed workshop decides between scrap and a certified repair.",
                "common practice, no source",
            )
        });
    }
    if dull {
        list.push(Finding {
            caution: Some(STAY.to_owned()),
            ..found(
                Gravity::Stop,
                "dull-ring",
                if pink { "It does not ring, and its metal is pink: the zinc has gone out of it.".to_owned() } else { "It does not ring when tapped.".to_owned() },
                "Tap every blade with the hub held free; dye test roots and edges; scrap it where it stays dull and the metal is pink or flakes.",
                "surveyors' practice, no authority",
            )
        });
    } else if pink {
        list.push(Finding {
            caution: Some("Soft pink metal breaks without warning: no straightening and no welding on it.".to_owned()),
            ..found(
                if survey.colour == Some(Colour::Pink) { Gravity::Stop } else { Gravity::Mend },
                "pink-metal",
                "The metal is pink: zinc has gone out of it.".to_owned(),
                "Scrape to sound metal and tap again; a blush that rings is on the surface. Check the anode and its contact: at most \
                 1 ohm from propeller to anode; renew anodes at half their weight.",
                "surveyor's note, one copy",
            )
        });
    }
}

fn hand(case: &Case, list: &mut Vec<Finding>) {
    let Some(seen) = case.r.survey.leading_edge else { return };
    let is = if seen == LeadingEdge::Right { Hand::Right } else { Hand::Left };
    let side = seen.word();
    match case.job.propeller.hand {
        Some(stated @ (Hand::Right | Hand::Left)) if stated != is => list.push(Finding {
            caution: Some("The wrong hand gives astern for ahead at the first touch of the lever: lines on, and somebody ready at the stop.".to_owned()),
            ..found(
                Gravity::Mend,
                "hand",
                format!("The leading edge lies on the {side} seen from astern: it is {}-hand, and {}-hand is stated.", is.word(), stated.word()),
                "Look again, blade upright, from astern; prove the shaft's rotation in ahead before it is fitted. Turning it end for \
                 end does not change its hand.",
                "definition: right-hand turns clockwise seen from astern going ahead (three sources)",
            )
        }),
        Some(Hand::Right | Hand::Left) => list.push(found(
            Gravity::Well,
            "hand",
            format!("Leading edge on the {side} seen from astern: {}-hand, as stated.", is.word()),
            "None.",
            "definition: right-hand turns clockwise seen from astern going ahead (three sources)",
        )),
        _ => {}
    }
}

/// Stamped or ordered against measured.
fn pitch(case: &Case, list: &mut Vec<Finding>) {
    let (Some(own), Some(meant)) = (case.r.mean_whole(), case.meant.stated.or(case.meant.ordered)) else { return };
    let word = if case.meant.stated.is_some() { case.meant.word.as_str() } else { "meant to have" };
    let off = own.value / meant - 1.0;
    let (low, high) = own.band();
    let certain = (meant < low || meant > high) && off.abs() > 0.01;
    let step = if high - low < 0.3 * 0.0254 { 0.05 } else { 0.1 };
    let mut sentence = format!(
        "{} {}, measures {} ({} to {} in)",
        capital(word),
        inches(meant).trim_end_matches(" in"),
        inches(own.value).trim_end_matches(" in"),
        number(low / 0.0254, step),
        number(high / 0.0254, step)
    );
    if certain {
        sentence.push_str(&format!(": {} % {}.", plain(100.0 * off.abs(), 2), if off < 0.0 { "less" } else { "more" }));
    } else {
        sentence.push_str(": they agree within what was measured.");
    }
    list.push(Finding {
        hangs_on: vec!["pitch readings".to_owned()],
        ..found(
            if certain && off.abs() > 0.03 {
                Gravity::Mend
            } else if certain {
                Gravity::Watch
            } else {
                Gravity::Well
            },
            "stamp-pitch",
            sentence,
            if certain {
                "Judge, compare and order with the measured pitch; stamp it anew after the next repair."
            } else {
                "None: the stamp can be used, with the measured band."
            },
            "plain averages over the radii and blades, as ISO 484 takes them (that they are plain: from memory)",
        )
    });
}

fn blades(case: &Case, list: &mut Vec<Finding>) {
    let r = case.r;
    if r.blades.len() < r.count && !r.blades.is_empty() {
        list.push(found(
            Gravity::Watch,
            "blades-missing",
            format!("{} of {} blades were measured.", r.blades.len(), r.count),
            "Measure the others: what differs from blade to blade shakes the boat.",
            "survey",
        ));
    }
    let (Some(spread), Some(mean)) = (r.blade_spread(), r.mean) else { return };
    let (low, high) = spread.band();
    let percent = 100.0 * spread.value;
    // Means of equal blades would still differ by what was measured; a difference counts where it clears that.
    let certain = low > 0.0 && spread.value > 1.5 * (high - spread.value);
    let each: Vec<String> = r
        .blades
        .iter()
        .filter_map(|b| b.mean.map(|m| format!("{} {}", b.name, number(m.value / 0.0254, 0.1))))
        .collect();
    let gravity = match percent {
        p if !certain || p < 1.5 => Gravity::Well,
        p if p < 4.0 => Gravity::Watch,
        _ => Gravity::Mend,
    };
    let sentence = format!(
        "Blade means lie {} % apart{}: {} in (mean {}).",
        plain(percent.max(0.05), 2),
        if certain { "" } else { ", within what was measured" },
        each.join(", "),
        inches(mean.value)
    );
    let advice = if gravity == Gravity::Well {
        "None."
    } else {
        "True the blades up against each other before any pitch is changed; unequal blades shake the boat once a turn, which \
         balancing does not cure."
    };
    list.push(Finding {
        hangs_on: vec!["pitch readings".to_owned()],
        ..found(
            gravity,
            "pitch-spread",
            sentence,
            advice,
            "ISO 484-2 allows a blade mean 1 % in class I, 4 % in class III (two copies)",
        )
    });
}

fn diameter(case: &Case, list: &mut Vec<Finding>) {
    let tips: Vec<(f64, &str)> =
        case.r.blades.iter().filter_map(|b| b.tip.map(|t| (t.value, b.name.as_str()))).collect();
    let (Some(d), Some(stated)) = (case.r.diameter, case.job.propeller.diameter.as_ref()) else { return };
    if tips.is_empty() {
        return;
    }
    let off = d.value / stated.middle - 1.0;
    if stated.source != Some(Source::Measured)
        && off.abs() > 0.005
        && !(d.band().0..=d.band().1).contains(&stated.middle)
    {
        list.push(found(
            if off.abs() > 0.02 { Gravity::Mend } else { Gravity::Watch },
            "diameter",
            format!("Diameter {} by the tip radii, {} stated: {} % {}.", inches(d.value), inches(stated.middle), plain(100.0 * off.abs(), 2), if off < 0.0 { "less" } else { "more" }),
            "Tips may be worn or cut; power goes with the fifth power of the diameter at the same revolutions. Judge with the measured one.",
            "twice the mean tip radius",
        ));
    }
    let by = |a: &&(f64, &str), b: &&(f64, &str)| a.0.total_cmp(&b.0);
    if let (Some(short), Some(long)) = (tips.iter().min_by(by), tips.iter().max_by(by))
        && long.0 / short.0 > 1.01
    {
        list.push(found(
            Gravity::Mend,
            "tip-radius",
            format!("Blade {} is {} mm shorter than blade {}.", short.1, plain(1000.0 * (long.0 - short.0), 2), long.1),
            "Find out whether it is bent, worn or cut; then balance.",
            "ISO 484: tip radius within 0.5 % even in class III (from memory)",
        ));
    }
}

fn class(case: &Case, list: &mut Vec<Finding>) {
    let a = case.accuracy;
    if a.rows.is_empty() {
        return;
    }
    let (gravity, sentence) = match a.class {
        Some(class @ (Class::S | Class::I)) => {
            (Gravity::Well, format!("Accuracy class {class} as far as it was measured."))
        }
        Some(class) => (
            if class == Class::II { Gravity::Watch } else { Gravity::Mend },
            format!(
                "Outside class {}, inside class {class}: {}.",
                better(class),
                a.decided_by.first().map_or("", String::as_str)
            ),
        ),
        None => (Gravity::Mend, format!("Outside class III: {}.", a.decided_by.first().map_or("", String::as_str))),
    };
    let mut sentence = sentence;
    if a.within_spread != a.words {
        sentence.push_str(&format!(" Within the spread of the measurement it is {}.", a.within_spread));
    }
    list.push(Finding {
        hangs_on: a.decided_by.iter().take(3).cloned().collect(),
        ..found(
            gravity,
            "accuracy-class",
            sentence,
            "A class is agreed between customer and workshop; say in the order which one, and at which radii it is measured.",
            match a.part {
                accuracy::Part::None => "ISO 484-2 percentages as the trade applies them; no standard covers this size",
                accuracy::Part::Two => "ISO 484-2, percentages",
                accuracy::Part::One => "ISO 484-1, percentages",
            },
        )
    });
}

fn better(class: Class) -> Class {
    match class {
        Class::III => Class::II,
        _ => Class::I,
    }
}

fn cup(case: &Case, list: &mut Vec<Finding>) {
    let Some((drop, share)) = case.r.cup() else { return };
    let stated = case.job.propeller.cup;
    let none = drop <= 0.0;
    let sentence = if none {
        "No cup on the sections looked at.".to_owned()
    } else {
        format!(
            "A cup of {} % of the chord on {} of the sections looked at.",
            plain(100.0 * drop, 2),
            if share > 0.95 { "all".to_owned() } else { format!("{} %", plain(100.0 * share, 2)) }
        )
    };
    let differs = matches!(
        (stated, none),
        (Some(job::Cup::None), false) | (Some(job::Cup::Light | job::Cup::Medium | job::Cup::Heavy), true)
    );
    list.push(found(
        if differs { Gravity::Mend } else { Gravity::Well },
        "cup",
        if differs { format!("{sentence} [propeller] says {}.", stated.map_or("", Word::word)) } else { sentence },
        "Cup is pitch by another name: measure it before and after every repair; it is easily ground off.",
        "common practice, no source",
    ));
}

fn edges(case: &Case, list: &mut Vec<Finding>) {
    let torn: Vec<&str> = case
        .r
        .survey
        .blades
        .iter()
        .zip(&case.r.blades)
        .filter(|(said, _)| said.trailing_edge_form == Some(EdgeForm::Torn))
        .map(|(_, row)| row.name.as_str())
        .collect();
    if !torn.is_empty() {
        list.push(found(
            Gravity::Mend,
            "edges",
            format!("Trailing edge bent or torn on blade {}.", torn.join(", ")),
            "Straighten and fair it; a bent trailing edge is a change of pitch.",
            "common practice, no source",
        ));
    }
}

fn damage(case: &Case, list: &mut Vec<Finding>) {
    for d in case.damage.iter().filter(|d| !d.what.starts_with("crack") && !d.what.starts_with("pink metal")) {
        list.push(Finding {
            caution: d.root_zone.then(|| "Root zone: no welding without a licensed procedure.".to_owned()),
            ..found(
                if d.root_zone { Gravity::Mend } else { Gravity::Watch },
                "damage",
                format!("{}: {}. Likely {}.", capital(&d.place), d.what, d.likely),
                &format!("{}.", capital(&d.remedy)),
                "owners', workshops' and surveyors' texts; common practice",
            )
        });
    }
}

fn bore(case: &Case, list: &mut Vec<Finding>) {
    let Some(bore) = case.bore else { return };
    list.push(Finding {
        caution: bore.warning.clone(),
        ..found(
            if bore.warning.is_some() { Gravity::Mend } else { Gravity::Well },
            "bore",
            bore.statement.clone(),
            "Fit it first without the key and mark where it seats, blue it for contact over 80 % of the taper (memory, trade), then fit \
             with the key: it has to go to the same mark.",
            "SAE J755 (two copies to 3 1/2 in), ISO 4566 (partial)",
        )
    });
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or(String::new(), |c| c.to_uppercase().chain(chars).collect())
}
