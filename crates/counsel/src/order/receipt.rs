//! What to measure when the propeller arrives, and what came of it.

use super::report::ReceiptRow;
use crate::phrase::plain;
use crate::survey::accuracy::{Class, Judged, Rules, tolerance};
use job::fit::AccuracyClass;
use job::survey::LeadingEdge;
use job::{Hand, Job, Word};

const fn class(class: AccuracyClass) -> Class {
    match class {
        AccuracyClass::S => Class::S,
        AccuracyClass::I => Class::I,
        AccuracyClass::II => Class::II,
        AccuracyClass::III => Class::III,
    }
}

/// The rows; what was received in words; whether it is accepted.
pub(super) fn check(job: &Job, with: &Job) -> (Vec<ReceiptRow>, Option<String>, Option<bool>) {
    let rows = rows(job, with);
    let said: Vec<&ReceiptRow> = rows.iter().filter(|r| r.said.is_some()).collect();
    if said.is_empty() {
        return (rows, None, None);
    }
    let back: Vec<&str> = said.iter().filter(|r| r.said == Some("send back")).map(|r| r.what).collect();
    let ask: Vec<&str> = said.iter().filter(|r| r.said == Some("ask the workshop")).map(|r| r.what).collect();
    let missing: Vec<&str> = rows.iter().filter(|r| r.said.is_none() && r.measured.is_none()).map(|r| r.what).collect();
    let words = if !back.is_empty() {
        format!("Send it back: {}.", back.join(", "))
    } else if !ask.is_empty() {
        format!("Ask the workshop before fitting: {}.", ask.join(", "))
    } else if missing.is_empty() {
        "It is what was ordered.".to_owned()
    } else {
        format!("So far it is what was ordered; not measured yet: {}.", missing.join(", "))
    };
    let accepted = back.is_empty() && ask.is_empty();
    (rows, Some(words), Some(accepted))
}

fn rows(job: &Job, with: &Job) -> Vec<ReceiptRow> {
    let (p, got) = (&with.propeller, &job.receipt);
    let ordered_class = class(job.order.class.unwrap_or_else(|| super::least_class(job)));
    let worse = Class::ALL.into_iter().find(|c| *c > ordered_class).unwrap_or(Class::III);
    let diameter = p.diameter.as_ref().map_or(0.5, |q| q.middle);
    let rules = Rules::of(diameter);
    let mut list = Vec::new();
    // Accept within the class ordered, send back beyond the next one.
    let band = |what, ordered: f64, judged: Judged, scale: f64, how, measured: Option<f64>| {
        let reference = if judged == Judged::TipRadius { 0.5 * ordered } else { ordered };
        let at = |c: Class| tolerance(judged, c, reference, rules).unwrap_or((0.01 * reference, 0.01 * reference));
        let (accept, reject) = (at(ordered_class), at(worse));
        let row = ReceiptRow {
            what,
            ordered: format!(
                "{} mm ({} in)",
                super::millimetres(1e3 * ordered),
                crate::phrase::number(ordered / 0.0254, 0.01)
            ),
            accept_from: Some(1e3 * (ordered - scale * accept.1)),
            accept_to: Some(1e3 * (ordered + scale * accept.0)),
            reject_below: Some(1e3 * (ordered - scale * reject.1)),
            reject_above: Some(1e3 * (ordered + scale * reject.0)),
            unit: "mm",
            how,
            measured: measured.map(|m| 1e3 * m),
            said: None,
        };
        judged_row(row)
    };
    if let Some(q) = &p.diameter {
        list.push(band(
            "diameter",
            q.middle,
            Judged::TipRadius,
            2.0,
            "twice the mean of the blades' radii, never tip to tip on an odd number of blades",
            got.diameter.as_ref().map(|q| q.middle),
        ));
    }
    if let Some(q) = &p.pitch {
        list.push(band(
            "mean pitch",
            q.middle,
            Judged::PropellerPitch,
            1.0,
            "face pitch of every blade at 0.5, 0.7 and 0.9 R; the plain mean",
            got.pitch.as_ref().map(|q| q.middle),
        ));
    }
    let spread = |c: Class| tolerance(Judged::BladePitch, c, 1.0, rules).map_or(2.0, |t| 100.0 * (t.0 + t.1));
    list.push(judged_row(ReceiptRow {
        what: "pitch from blade to blade",
        ordered: format!("class {}", ordered_class.word()),
        accept_from: Some(0.0),
        accept_to: Some(spread(ordered_class)),
        reject_below: None,
        reject_above: Some(spread(worse)),
        unit: "%",
        how: "largest less smallest blade mean over the mean",
        measured: got.pitch_spread.as_ref().map(|q| 100.0 * q.middle),
        said: None,
    }));
    if let Some(z) = p.blades {
        list.push(exact("blades", z.to_string(), f64::from(z), got.blades.map(f64::from), "count them"));
    }
    if let Some(hand) = p.hand.filter(|h| *h != Hand::Pair) {
        let (right, word) = (hand == Hand::Right, hand.word());
        let seen = got.leading_edge.map(|edge| f64::from(u8::from(edge == LeadingEdge::Right)));
        let mut row = exact(
            "hand",
            format!("{word}-hand"),
            f64::from(u8::from(right)),
            seen,
            "blade upright, seen from astern: the leading edge on the right is right-hand",
        );
        row.measured = None;
        list.push(row);
    }
    if p.hand == Some(Hand::Pair) {
        // One is written down; it is either of the two.
        let mut row = exact(
            "hand, each of the pair",
            "one right-hand, one left-hand".to_owned(),
            1.0,
            got.leading_edge.map(|_| 1.0),
            "blade upright, seen from astern: the one with its leading edge on the right is right-hand and goes to starboard; measure both",
        );
        row.measured = None;
        list.push(row);
    }
    let b = super::bore(job, with);
    for (what, ordered, measured) in [
        ("bore, large end", b.large, got.bore_large.as_ref()),
        ("bore, small end", b.small, got.bore_small.as_ref()),
        ("keyway width", b.key, got.key_width.as_ref()),
        ("hub length", b.length, got.hub_length.as_ref()),
    ] {
        let Some(mm) = ordered else { continue };
        // A taper bore is proved by blue; calipers tell a wrong one (common practice, no source).
        let (fine, gross) = if what == "hub length" { (1.0, 3.0) } else { (0.1, 0.3) };
        list.push(judged_row(ReceiptRow {
            what,
            ordered: format!("{} mm ({} in)", super::millimetres(mm), crate::phrase::number(mm / 25.4, 0.001)),
            accept_from: Some(mm - fine),
            accept_to: Some(mm + fine),
            reject_below: Some(mm - gross),
            reject_above: Some(mm + gross),
            unit: "mm",
            how: "inside calipers; then blue it on the shaft without the key: 70 to 80 % contact",
            measured: measured.map(|q| 1e3 * q.middle),
            said: None,
        }));
    }
    // No standard read bounds the mass: it is kept, for the balance and the next one.
    if let Some(mass) = &got.mass {
        list.push(ReceiptRow {
            what: "mass",
            ordered: p.mass.as_ref().map_or_else(|| "to be noted".to_owned(), |q| format!("{} kg", plain(q.middle, 3))),
            accept_from: None,
            accept_to: None,
            reject_below: None,
            reject_above: None,
            unit: "kg",
            how: "weigh it; blades thinner or wider than ordered show here first",
            measured: Some(mass.middle),
            said: None,
        });
    }
    list
}

fn exact(what: &'static str, ordered: String, value: f64, measured: Option<f64>, how: &'static str) -> ReceiptRow {
    judged_row(ReceiptRow {
        what,
        ordered,
        accept_from: Some(value),
        accept_to: Some(value),
        reject_below: Some(value),
        reject_above: Some(value),
        unit: "",
        how,
        measured,
        said: None,
    })
}

fn judged_row(mut row: ReceiptRow) -> ReceiptRow {
    row.said = row.measured.map(|m| {
        let inside = |low: Option<f64>, high: Option<f64>| {
            low.is_none_or(|low| m >= low - 1e-9) && high.is_none_or(|high| m <= high + 1e-9)
        };
        if inside(row.accept_from, row.accept_to) {
            "accept"
        } else if inside(row.reject_below, row.reject_above) {
            "ask the workshop"
        } else {
            "send back"
        }
    });
    row
}
