//! Which way it turns, which way the stern goes, what draws air, what drags under sail.

use super::Checks;
use super::loads::{Loads, Subject};
use super::report::{Fact, HandSheet, SailRow, Walk};
use crate::panel::KNOT;
use crate::phrase::{plain, span};
use crate::report::{Band, Gravity};
use hydro::fitting::sailing::{Carried, drag};
use hydro::limits::burrill;
use job::fit::{Exhaust, Freewheel, Gearing, Turning};
use job::{Arrangement, Blades, Hand, Job};

const STATED: &str = "the propeller fitted, as stated";
const STAMP: &str = "the stamp";
const STATED_AND_STAMPED: &str = "the propeller fitted, as stated and stamped";
const EDGE: &str = "the leading edge, seen in the survey";
const SHAFT: &str = "the shaft as it was seen to turn in ahead";

const RIGHT: &str = "right";
const LEFT: &str = "left";

const fn word(turning: Turning) -> &'static str {
    match turning {
        Turning::Right => RIGHT,
        Turning::Left => LEFT,
    }
}

/// Facts about the hand, each from its own source.
fn facts(job: &Job) -> Vec<Fact> {
    let mut list = Vec::new();
    let mut add = |from, says| list.push(Fact { from, says });
    if let Some(turns) = job.drive.shaft_turns {
        add(SHAFT, word(turns));
    }
    if let (Some(engine), Some(gearing)) = (job.drive.engine_turns, job.drive.gearbox_turns) {
        let same = gearing == Gearing::Same;
        add(
            "engine and gearbox",
            word(if same == (engine == Turning::Right) { Turning::Right } else { Turning::Left }),
        );
    }
    match job.propeller.hand {
        Some(Hand::Right) => add(STATED, RIGHT),
        Some(Hand::Left) => add(STATED, LEFT),
        _ => {}
    }
    if let Some(edge) = job.survey.as_ref().and_then(|s| s.leading_edge) {
        add(EDGE, if edge == job::survey::LeadingEdge::Right { RIGHT } else { LEFT });
    }
    if let Some(says) = job.propeller.stamp.as_deref().and_then(stamped) {
        add(STAMP, says);
    }
    list
}

/// Hand in a stamp.
fn stamped(stamp: &str) -> Option<&'static str> {
    match job::stamp::hand(stamp)? {
        Hand::Left => Some(LEFT),
        _ => Some(RIGHT),
    }
}

const RULE: &str = "right-hand turns clockwise going ahead, seen from astern; its leading edge is on the right, blade upright; turning a propeller end for end does not change its hand";
const WRONG: &str =
    "A propeller of the wrong hand drives astern when ahead is engaged. First engagement with lines on.";

/// What is said of a pair by its stamps.
struct Sides {
    gravity: Gravity,
    sentence: String,
    measure: &'static str,
}

/// A pair as stated, each side by its own stamp or hand; nothing where no pair is stated.
fn both_sides(job: &Job, twin: bool) -> Option<Sides> {
    if !twin || job.propeller.hand != Some(Hand::Pair) {
        return None;
    }
    let of = |own: &job::Own| {
        let propeller = own.propeller.as_ref()?;
        match propeller.hand {
            Some(Hand::Right) => Some(RIGHT),
            Some(Hand::Left) => Some(LEFT),
            _ => propeller.stamp.as_deref().and_then(stamped),
        }
    };
    Some(match (of(&job.port), of(&job.starboard)) {
        (Some(port), Some(starboard)) if port == starboard => Sides {
            gravity: Gravity::Stop,
            sentence: format!(
                "A pair is stated, but port and starboard are both {port}-hand: look again before anything is ordered or fitted."
            ),
            measure: "look at the leading edge of each, blade upright, from astern",
        },
        (Some(port), Some(starboard)) => Sides {
            gravity: Gravity::Well,
            sentence: format!(
                "A pair, as stated and as each is marked: {port}-hand to port, {starboard}-hand to starboard; going ahead they turn {}.",
                if starboard == RIGHT { "outward" } else { "inward" }
            ),
            measure: "",
        },
        _ => Sides {
            gravity: Gravity::Watch,
            sentence: "A pair, as stated; which hand is on which side is not said.".to_owned(),
            measure: "read the stamp of each (port.propeller.stamp, starboard.propeller.stamp), and look at the leading edges from astern",
        },
    })
}

pub(super) fn hand(job: &Job, twin: bool, out: &mut Checks) -> HandSheet {
    let facts = facts(job);
    let right = facts.iter().filter(|f| f.says == RIGHT).count();
    let left = facts.len() - right;
    let pair = twin.then(|| {
        "A pair turns outward by default: right-handed to starboard, left-handed to port, tops going out ahead; then paddlewheel effect and lever arm add when one goes ahead and one astern. Inward they work against each other: less turning on the spot, and a little more push on some hulls.".to_owned()
    });
    let conflict = right > 0 && left > 0;
    if let Some(said) = both_sides(job, twin && facts.is_empty()) {
        out.push(super::Check {
            code: "hand",
            subject: "hand",
            gravity: said.gravity,
            known: true,
            hard: true,
            sentence: said.sentence.clone(),
            value: None,
            least: None,
            most: None,
            rule: RULE.to_owned(),
            measure: said.measure.to_owned(),
            caution: (said.gravity == Gravity::Stop).then_some(WRONG),
        });
        let proven = said.gravity == Gravity::Well;
        let needed = (said.gravity != Gravity::Stop).then_some("pair");
        return HandSheet { needed, facts, proven, sentence: said.sentence, pair };
    }
    let needed = match (conflict, twin, right > left) {
        (true, ..) => None,
        (_, true, _) => Some("pair"),
        (_, _, true) => Some(RIGHT),
        _ if left > 0 => Some(LEFT),
        _ => None,
    };
    let listed: Vec<String> = facts.iter().map(|f| format!("{}: {}", f.from, f.says)).collect();
    // Counted as they are listed, by source. A stamp and what is said after it are one source; the blades' edge, the shaft and the gearbox are others.
    let source = |f: &Fact| match f.from {
        STATED | STAMP => 0,
        EDGE => 1,
        SHAFT => 2,
        _ => 3,
    };
    let mut sources: Vec<i32> = facts.iter().map(source).collect();
    sources.sort_unstable();
    sources.dedup();
    let proven = !conflict && sources.len() >= 2;
    let by_source: Vec<String> = sources
        .iter()
        .map(|of| {
            let from: Vec<&str> = facts.iter().filter(|f| source(f) == *of).map(|f| f.from).collect();
            let says = facts.iter().find(|f| source(f) == *of).map_or("", |f| f.says);
            let from = if from.len() > 1 { STATED_AND_STAMPED } else { from.first().copied().unwrap_or("") };
            format!("{from}: {says}")
        })
        .collect();
    let sentence = if conflict {
        format!(
            "The facts about the hand do not agree ({}): look again before anything is ordered or fitted.",
            listed.join("; ")
        )
    } else if facts.is_empty() {
        "Nothing is said of the hand: look which way the shaft turns in ahead, seen from astern, and which edge of the blades leads.".to_owned()
    } else if proven {
        format!(
            "{}-hand by {} independent facts ({}).",
            crate::phrase::capital(facts[0].says),
            by_source.len(),
            by_source.join("; ")
        )
    } else {
        format!(
            "{}-hand by one source only ({}): find a second, the shaft's turning in ahead or the leading edge.",
            crate::phrase::capital(facts[0].says),
            by_source.join("; ")
        )
    };
    out.push(super::Check {
        code: "hand",
        subject: "hand",
        gravity: if conflict {
            Gravity::Stop
        } else if proven || twin {
            Gravity::Well
        } else {
            Gravity::Watch
        },
        known: !facts.is_empty(),
        hard: true,
        sentence: sentence.clone(),
        value: None,
        least: None,
        most: None,
        rule: RULE.to_owned(),
        measure: if proven {
            String::new()
        } else {
            "watch the shaft in ahead from astern, at idle, alongside with lines on".to_owned()
        },
        caution: conflict.then_some(WRONG),
    });
    HandSheet { needed, facts, proven, sentence, pair }
}

/// Paddlewheel effect, in words for this boat.
pub(super) fn walk(subject: &Subject, loads: &Loads, hand: &HandSheet) -> Walk {
    let job = subject.job;
    let needed = hand.needed.or(match (job.propeller.hand, hand.facts.first()) {
        (Some(Hand::Pair), _) => Some("pair"),
        (_, Some(fact)) if !hand.sentence.contains("do not agree") => Some(fact.says),
        _ => None,
    });
    if subject.twin || needed == Some("pair") {
        return Walk {
            ahead: "neither",
            astern: "neither",
            size: "small",
            because: vec!["two screws turning opposite ways hold each other's effect".to_owned()],
            sentence: "With both engines alike the stern goes neither way; with one engine it walks the way of that propeller, to its side astern when the pair turns outward.".to_owned(),
        };
    }
    let Some(hand) = needed else {
        return Walk {
            ahead: "not known",
            astern: "not known",
            size: "not known",
            because: Vec::new(),
            sentence:
                "The hand decides which way the stern goes: right-handed to starboard ahead from rest, to port astern."
                    .to_owned(),
        };
    };
    let (ahead, astern) = if hand == RIGHT { ("starboard", "port") } else { ("port", "starboard") };
    // Points for what makes it strong (common practice, no source).
    let mut points = 0_i32;
    let mut because = Vec::new();
    let length = loads.form.map_or(10.0, |form| form.length);
    let part = subject.diameter / length;
    let mut say = |worth: i32, text: String| {
        points += worth;
        because.push(text);
    };
    if part > 0.055 {
        say(1, "a large propeller for her length".to_owned());
    } else if part < 0.035 {
        say(-1, "a small propeller for her length".to_owned());
    }
    let angle = job.drive.shaft_angle.as_ref().map(|q| q.middle);
    if let Some(angle) = angle {
        if angle > 9.0 {
            say(1, format!("the shaft falls {} degrees: the blade going down bites more", plain(angle, 2)));
        } else if angle < 4.0 {
            say(-1, "the shaft lies nearly level".to_owned());
        }
    }
    let gap = job.stern.tip_clearance.as_ref().map(|q| q.middle / subject.diameter);
    if gap.is_some_and(|gap| gap < 0.12) {
        say(1, "the tips run close under the hull: the wash climbs one side".to_owned());
    }
    match job.boat.arrangement {
        Some(Arrangement::Aperture) => say(1, "astern the wash strikes the deadwood's side".to_owned()),
        Some(Arrangement::Saildrive | Arrangement::Outboard | Arrangement::Sterndrive) => {
            say(-2, "a level leg, clear of the hull".to_owned())
        }
        Some(Arrangement::FinKeelStrut) => say(0, "nothing ahead for the wash to strike".to_owned()),
        _ => {}
    }
    let size = match points {
        i32::MIN..=-1 => "small",
        0 | 1 => "moderate",
        _ => "strong",
    };
    Walk {
        ahead,
        astern,
        size,
        sentence: format!(
            "{}-handed: ahead from rest the stern goes a little to {ahead}, astern to {astern}, {size} on this boat. Short bursts of throttle before she moves use it; way on and rudder wash hide it.",
            crate::phrase::capital(hand)
        ),
        because: because
            .into_iter()
            .chain(["The texts give other reasons too (depth, density of the water): a stern walks alike in deep and shallow water, density is not it. Prove it: ten seconds astern from rest, no wind, and measure the swing.".to_owned()])
            .collect(),
    }
}

/// Air: plate, exhaust, depth.
pub(super) fn ventilation(subject: &Subject, out: &mut Checks) {
    if !subject.leg {
        return;
    }
    const CODE: &str = "plate-height";
    const SUBJECT: &str = "mount height of the leg";
    let rule = "the plate over the propeller level with the lowest line of the hull ahead of it, to 25 mm above on fast boats (common practice, no source)";
    let job = subject.job;
    let hub = job.stern.exhaust == Some(Exhaust::Hub);
    let Some(height) = &job.stern.plate_height else {
        return out.unknown(
            CODE,
            SUBJECT,
            rule,
            "lay a straight edge along the hull's lowest line aft and measure to the plate (stern.plate_height)",
        );
    };
    let mm = 1e3 * height.middle;
    let gravity = if mm > 50.0 {
        Gravity::Mend
    } else if !(-40.0..=30.0).contains(&mm) {
        Gravity::Watch
    } else {
        Gravity::Well
    };
    let words = if mm > 30.0 {
        "high: it draws air in turns and waves"
    } else if mm < -40.0 {
        "deep: drag and spray, no air"
    } else {
        "right"
    };
    let exhaust = if hub { " Exhaust through the hub: blown back over the blades when going astern." } else { "" };
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity,
        known: true,
        hard: false,
        sentence: format!("Plate {} mm above the hull's line: {words}.{exhaust}", plain(mm, 2)),
        value: Some(super::loads::band(height, 1e3, "mm")),
        least: Some(-40.0),
        most: Some(30.0),
        rule: rule.to_owned(),
        measure: "test: trim in, or a notch lower, and watch whether the rpm stop jumping in a turn".to_owned(),
        caution: None,
    });
}

const DRAG: &str = "flat-plate drag on the projected area, held against tank tests (diameters assumed); free about half of locked (MacKenzie & Forrester 2008, as quoted)";

/// Drag under sail, and what the gearbox says.
pub(super) fn under_sail(subject: &Subject, loads: &Loads, out: &mut Checks) -> Vec<SailRow> {
    let Some((slope, speed)) = loads.sailing else {
        // Asked only of boats that sail.
        if subject.sailing {
            out.unknown("under-sail", "drag under sail", DRAG, "say a usual speed under sail (under_sail.speed)");
        }
        return Vec::new();
    };
    let projected = burrill::projected_area_ratio(subject.area_ratio, subject.pitch / subject.diameter);
    let rows: Vec<SailRow> = Carried::ALL
        .into_iter()
        .map(|carried| {
            let [low, middle, high] = drag(carried, subject.blades, subject.diameter, projected, loads.water, speed);
            let lost = |drag: f64| drag / slope.max(1.0) / KNOT;
            SailRow {
                carried: match carried {
                    Carried::Locked => "locked",
                    Carried::Free => "free",
                    Carried::Folded => "folded",
                    Carried::Feathered => "feathered",
                },
                drag: Band { low, middle, high, unit: "N" },
                lost: Band { low: lost(low), middle: lost(middle), high: lost(high), unit: "kn" },
            }
        })
        .collect();
    let now = match subject.job.propeller.kind {
        Some(Blades::Folding) => "folded",
        Some(Blades::Feathering) => "feathered",
        _ => "locked",
    };
    let row = rows.iter().find(|r| r.carried == now).or(rows.first());
    let permission = match subject.job.drive.freewheel {
        Some(Freewheel::Allowed) => "The gearbox may turn freely.",
        Some(Freewheel::Forbidden) => "The gearbox must not turn with the engine stopped: lock the shaft.",
        Some(Freewheel::InGear) => "The gearbox is to be held in gear as its maker says.",
        None => {
            "Ask the gearbox's maker whether it may turn freely: some are ruined by it, some by being locked in gear."
        }
    };
    if let Some(row) = row {
        out.push(super::Check {
            code: "under-sail",
            subject: "drag under sail",
            gravity: Gravity::Well,
            known: true,
            hard: false,
            sentence: format!(
                "At {} kn under sail, {}: {}, {} lost. {permission}",
                plain(speed / KNOT, 2),
                row.carried,
                span(&row.drag),
                span(&row.lost)
            ),
            value: Some(row.drag),
            least: None,
            most: None,
            rule: DRAG.to_owned(),
            measure: String::new(),
            caution: None,
        });
    }
    rows
}
