//! Room for the propeller: clearances, rudder, folded blades, removal, the stack on the shaft's end, water over the tips.

use super::Checks;
use super::loads::{Loads, Subject, band};
use crate::phrase::{number, plain, span};
use crate::report::{Band, Gravity};
use hydro::fitting::clearance::{self, Boat};
use hydro::limits::immersion;
use job::{Blades, Job, Quantity};

/// No clearance is less than this on the tightest sailing installation, m (one supplier).
const FLOOR: f64 = 0.012;

/// Least parts of the diameter a hard limit asks for: half of what the trade does, never less than [`FLOOR`].
const HARD: f64 = 0.5;

/// The tips' distance from something: stated, or from the shaft's centre.
fn tip(gap: &Option<Quantity>, reach: &Option<Quantity>, diameter: f64) -> Option<Band> {
    gap.as_ref().map(|q| band(q, 1e3, "mm")).or_else(|| {
        reach.as_ref().map(|q| {
            let Band { low, middle, high, unit } = band(q, 1e3, "mm");
            let r = 500.0 * diameter;
            Band { low: low - r, middle: middle - r, high: high - r, unit }
        })
    })
}

/// The largest diameter, m, that keeps a hard part of itself clear above and below, and what says so.
#[must_use]
pub(crate) fn largest_diameter(job: &Job, diameter: f64, sailing: bool) -> Option<(f64, &'static str)> {
    let stern = &job.stern;
    let part = clearance::trade(sailing);
    let reach = |gap: &Option<Quantity>, reach: &Option<Quantity>| {
        reach.as_ref().map(|q| q.middle).or_else(|| gap.as_ref().map(|q| q.middle + 0.5 * diameter))
    };
    let above = reach(&stern.tip_clearance, &stern.hull_above)
        .map(|r| (clearance::largest_diameter(r, part), "the tips' clearance to the hull"));
    let below = reach(&stern.sole_clearance, &stern.sole_below).map(|r| {
        (clearance::largest_diameter(r, 0.03).min(2.0 * (r - FLOOR)), "the tips' clearance to the sole piece")
    });
    [above, below].into_iter().flatten().min_by(|a, b| a.0.total_cmp(&b.0))
}

pub(super) fn checks(subject: &Subject, loads: &Loads, out: &mut Checks) {
    let stern = &subject.job.stern;
    let d = subject.diameter;
    if subject.leg {
        // The leg makes the room; its plate is another matter.
        return;
    }
    let boat = boat(subject, loads);
    let lloyds = clearance::lloyds(&boat);
    let screw = if subject.twin { "twins" } else { "one screw" };
    let (trade, handbook) = (clearance::trade(subject.sailing), clearance::handbook(&boat));
    gap(
        out,
        Gap {
            code: "tip-clearance",
            subject: "tip to hull",
            value: tip(&stern.tip_clearance, &stern.hull_above, d),
            want: trade,
            least: trade,
            diameter: d,
            rule: format!(
                "trade {} % of the diameter; handbook {} % at this speed (Gerr 1989, from memory); Lloyd's Register {} %",
                plain(100.0 * trade, 2),
                plain(100.0 * handbook, 2),
                plain(100.0 * lloyds.tip, 2)
            ),
            measure: "measure from the blade tip to the hull, blade upright (stern.tip_clearance), or from the shaft's centre (stern.hull_above)",
        },
    );
    // Nothing stands below the blades of twins, unless somebody measured to it.
    let below = tip(&stern.sole_clearance, &stern.sole_below, d);
    if lloyds.sole.is_some() || below.is_some() {
        gap(
            out,
            Gap {
                code: "sole-clearance",
                subject: "tip to sole piece or keel below",
                value: below,
                want: lloyds.sole.unwrap_or(0.03).max(FLOOR / d),
                least: lloyds.sole.unwrap_or(0.03).max(FLOOR / d),
                diameter: d,
                rule: format!(
                    "Lloyd's Register 3 % of the diameter; {} mm is the least one supplier allows",
                    number(1e3 * FLOOR, 1.0)
                ),
                measure: "measure from the blade tip to what stands below (stern.sole_clearance)",
            },
        );
    }
    gap(
        out,
        Gap {
            code: "ahead-clearance",
            subject: "leading edge to what stands ahead, at 0.7 R",
            value: stern.ahead_clearance.as_ref().map(|q| band(q, 1e3, "mm")),
            want: clearance::DEADWOOD.max(lloyds.ahead),
            least: clearance::DEADWOOD.max(lloyds.least[1]),
            diameter: d,
            rule: format!(
                "one maker 1/12 of the diameter to the deadwood; Lloyd's Register {} % for {screw} of this power and length, {} % at the least",
                plain(100.0 * lloyds.ahead, 2),
                plain(100.0 * lloyds.least[1], 2)
            ),
            measure: "measure from the leading edge at 0.7 R to deadwood, strut or bracket (stern.ahead_clearance)",
        },
    );
    gap(
        out,
        Gap {
            code: "aft-clearance",
            subject: "trailing edge to the rudder, helm amidships, at 0.7 R",
            value: stern.aft_clearance.as_ref().map(|q| band(q, 1e3, "mm")),
            want: lloyds.rudder,
            least: lloyds.least[2],
            diameter: d,
            rule: if subject.twin {
                format!(
                    "Lloyd's Register {} % of the diameter for {screw} of this power and length, {} % at the least; from memory 10 to 15 %",
                    plain(100.0 * lloyds.rudder, 2),
                    plain(100.0 * lloyds.least[2], 2)
                )
            } else {
                "Lloyd's Register 12 % of the diameter (one screw); from memory 10 to 15 %".to_owned()
            },
            measure: "measure from the trailing edge at 0.7 R to the rudder or its horn (stern.aft_clearance)",
        },
    );
    rudder(subject, out);
    removal(subject, out);
    stack(subject.job, out);
    folded(subject, out);
    immersed(subject, out);
}

pub(super) fn boat(subject: &Subject, loads: &Loads) -> Boat {
    let form = loads.form;
    Boat {
        blades: subject.blades,
        screws: if subject.twin { 2 } else { 1 },
        length: form.map_or(10.0, |f| f.length),
        block: form.map_or(0.4, |f| f.prismatic * f.midship),
        power: loads.power.middle,
        turns: loads.turns.middle,
        speed: loads.speed.middle,
        planing: subject.planing,
        sailing: subject.sailing,
    }
}

/// A clearance to be checked.
struct Gap {
    code: &'static str,
    subject: &'static str,
    value: Option<Band>,
    /// Part of the diameter wanted.
    want: f64,
    /// Part of it that even the least demanding rule wants: half of that is the hard limit. A ship rule's growth with power
    /// is good advice on a small craft and no bar to fitting a propeller.
    least: f64,
    diameter: f64,
    rule: String,
    measure: &'static str,
}

fn gap(out: &mut Checks, gap: Gap) {
    let Some(value) = gap.value else {
        return out.unknown(gap.code, gap.subject, &gap.rule, gap.measure);
    };
    let least = 1e3 * gap.want * gap.diameter;
    let part = 100.0 * value.middle / (1e3 * gap.diameter);
    let gravity = match value.middle {
        v if v <= 2.0 => Gravity::Stop,
        v if v < HARD * 1e3 * gap.least * gap.diameter => Gravity::Mend,
        v if v < 0.98 * least => Gravity::Watch,
        _ => Gravity::Well,
    };
    let words = match gravity {
        Gravity::Stop => "it touches or nearly does",
        Gravity::Mend => "far too little",
        // Between the least values and what the same table asks of more power.
        Gravity::Watch if value.middle >= 0.98e3 * gap.least * gap.diameter => {
            "less than a ship rule asks at this power: listen for noise and vibration"
        }
        Gravity::Watch => "less than is good: noise and vibration",
        Gravity::Well => "enough",
    };
    out.push(super::Check {
        code: gap.code,
        subject: gap.subject,
        gravity,
        known: true,
        hard: true,
        sentence: format!(
            "{}: {}, {} % of the diameter, where {} mm is wanted: {words}.",
            crate::phrase::capital(gap.subject),
            span(&value),
            plain(part.max(0.0), 2),
            number(least, 1.0)
        ),
        value: Some(value),
        least: Some(least),
        most: None,
        rule: gap.rule,
        measure: if gravity == Gravity::Well {
            String::new()
        } else {
            "a smaller diameter, rake aft, or fairing what stands near".to_owned()
        },
        caution: (gravity == Gravity::Stop)
            .then_some("Do not turn the engine in gear before it is clear by hand over a whole turn."),
    });
}

/// Hard over, the rudder's balance swings towards the blades.
fn rudder(subject: &Subject, out: &mut Checks) {
    let stern = &subject.job.stern;
    const CODE: &str = "rudder-hard-over";
    const SUBJECT: &str = "blades to the rudder hard over";
    let rule = "swing of the balance round the stock, half the blades' depth fore and aft taken off; to be tried by hand (common practice)";
    let (Some(stock), Some(balance)) = (&stern.rudder_stock, &stern.rudder_balance) else {
        return out.unknown(CODE, SUBJECT, rule, "measure the stock's distance behind the blades and the rudder's balance (stern.rudder_stock, stern.rudder_balance); swing it hard over both ways past the propeller");
    };
    let angle = stern.rudder_angle.as_ref().map_or(35.0, |q| q.middle).to_radians();
    let deep = subject.size().half_depth();
    let at = |stock: f64, balance: f64| {
        let over = clearance::rudder_gap(stock, balance, angle);
        let amidships = clearance::rudder_gap(stock, balance, 0.0);
        1e3 * (over.min(amidships) - deep)
    };
    let value = Band {
        low: at(stock.low, balance.high),
        middle: at(stock.middle, balance.middle),
        high: at(stock.high, balance.low),
        unit: "mm",
    };
    let least = 1e3 * 0.05 * subject.diameter;
    let gravity = if value.middle <= 0.0 {
        Gravity::Stop
    } else if value.middle < least {
        Gravity::Mend
    } else {
        Gravity::Well
    };
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity,
        known: true,
        hard: true,
        sentence: format!(
            "Rudder to blades at its nearest: {}, where {} mm is wanted.",
            span(&value),
            number(least, 1.0)
        ),
        value: Some(value),
        least: Some(least),
        most: None,
        rule: rule.to_owned(),
        measure: "swing the rudder hard over both ways past every blade by hand".to_owned(),
        caution: (gravity == Gravity::Stop).then_some("A rudder that meets the blades jams the steering."),
    });
}

/// The propeller has to come off again.
fn removal(subject: &Subject, out: &mut Checks) {
    let job = subject.job;
    const CODE: &str = "removal-room";
    const SUBJECT: &str = "room to draw the propeller";
    let rule = "hub length and thread, and 50 mm for the puller (common practice, no source)";
    let hub = job.propeller.hub_length.as_ref().or(job.survey.as_ref().and_then(|s| s.hub.length.as_ref()));
    let (Some(room), Some(hub)) = (&job.stern.removal_room, hub) else {
        return out.unknown(CODE, SUBJECT, rule, "measure the free room aft of the shaft end and the hub's length (stern.removal_room, propeller.hub_length)");
    };
    let need = 1e3 * (hub.middle + job.shaft.thread_length.as_ref().map_or(0.0, |q| q.middle) + 0.05);
    let value = band(room, 1e3, "mm");
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity: if value.middle < need { Gravity::Watch } else { Gravity::Well },
        known: true,
        hard: false,
        sentence: format!("Free room aft {}, where {} mm draw the hub.", span(&value), number(need, 1.0)),
        value: Some(value),
        least: Some(need),
        most: None,
        rule: rule.to_owned(),
        measure: if value.middle < need {
            "plan for the rudder to come off, or the shaft to go forward".to_owned()
        } else {
            String::new()
        },
        caution: None,
    });
}

/// Taper, nuts, pin and anode have to stand one behind the other.
fn stack(job: &Job, out: &mut Checks) {
    const CODE: &str = "shaft-end-stack";
    const SUBJECT: &str = "taper, nuts, pin and anode on the shaft's end";
    let rule = "thread as long as both nuts and 6 mm for the pin; hub longer than the taper so that the nut bears on it (SAE J755: 6 to 13 mm)";
    let shaft = &job.shaft;
    let (Some(thread), Some(nuts)) = (&shaft.thread_length, &shaft.nuts) else {
        return out.unknown(
            CODE,
            SUBJECT,
            rule,
            "measure the thread's length and the nuts together (shaft.thread_length, shaft.nuts)",
        );
    };
    let value = band(thread, 1e3, "mm");
    let need = 1e3 * nuts.middle + 6.0;
    let hub = job.propeller.hub_length.as_ref().or(job.survey.as_ref().and_then(|s| s.hub.length.as_ref()));
    let short = hub.zip(shaft.taper_length.as_ref()).is_some_and(|(hub, taper)| hub.middle <= taper.middle);
    let gravity = if value.middle < need || short { Gravity::Mend } else { Gravity::Well };
    let anode = shaft
        .anode_length
        .as_ref()
        .map_or(String::new(), |q| format!("; the anode takes {} mm more", number(1e3 * q.middle, 1.0)));
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity,
        known: true,
        hard: false,
        sentence: format!(
            "Thread {}, nuts and pin want {} mm{anode}.{}",
            span(&value),
            number(need, 1.0),
            if short {
                " The hub is no longer than the taper: the nut would bear on the shaft and not on the hub."
            } else {
                ""
            }
        ),
        value: Some(value),
        least: Some(need),
        most: None,
        rule: rule.to_owned(),
        measure: String::new(),
        caution: short.then_some("A nut that bears on the shaft leaves the propeller loose on its taper."),
    });
}

/// Folded blades reach aft.
fn folded(subject: &Subject, out: &mut Checks) {
    if subject.job.propeller.kind != Some(Blades::Folding) {
        return;
    }
    const CODE: &str = "folded-blades";
    const SUBJECT: &str = "folded blades to the rudder";
    let rule = "folded tips reach about half the diameter aft of the blades' pivots (estimate): try it by hand, rudder hard over both ways";
    let stern = &subject.job.stern;
    let (Some(stock), Some(balance)) = (&stern.rudder_stock, &stern.rudder_balance) else {
        return out.unknown(CODE, SUBJECT, rule, "measure the stock and the balance of the rudder (stern.rudder_stock, stern.rudder_balance); fold the blades by hand and swing the rudder");
    };
    let angle = stern.rudder_angle.as_ref().map_or(35.0, |q| q.middle).to_radians();
    let room = 1e3 * (stock.middle - balance.middle * angle.cos().max(0.0));
    let need = 500.0 * subject.diameter;
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity: if room < need { Gravity::Mend } else { Gravity::Well },
        known: true,
        hard: false,
        sentence: format!(
            "Room aft for folded blades {} mm, they reach about {} mm.",
            number(room, 1.0),
            number(need, 1.0)
        ),
        value: Some(Band { low: room, middle: room, high: room, unit: "mm" }),
        least: Some(need),
        most: None,
        rule: rule.to_owned(),
        measure: "fold the blades by hand and swing the rudder hard over both ways".to_owned(),
        caution: None,
    });
}

/// Water over the tips.
fn immersed(subject: &Subject, out: &mut Checks) {
    const CODE: &str = "tip-immersion";
    const SUBJECT: &str = "water over the blade tips";
    let rule = "a fifth of the diameter is ample, a tenth is little (common practice, no source)";
    let job = subject.job;
    let Some(depth) = &job.propeller.immersion else {
        return out.unknown(
            CODE,
            SUBJECT,
            rule,
            "measure the shaft's depth below the water as she floats (propeller.immersion)",
        );
    };
    let squat = job.stern.squat.as_ref().map_or(0.0, |q| q.middle);
    let over = |depth: f64| 1e3 * immersion::tip_immersion(depth, subject.diameter);
    let value = Band { low: over(depth.low), middle: over(depth.middle), high: over(depth.high), unit: "mm" };
    let least = 100.0 * subject.diameter;
    let gravity = match immersion::ventilation(depth.middle + squat, subject.diameter) {
        immersion::Ventilation::Unlikely | immersion::Ventilation::Possible => Gravity::Well,
        immersion::Ventilation::Likely => Gravity::Watch,
        immersion::Ventilation::Certain => Gravity::Mend,
    };
    let sinking = if squat > 0.0 {
        format!("; at full power the stern sinks {} mm", number(1e3 * squat, 1.0))
    } else {
        String::new()
    };
    out.push(super::Check {
        code: CODE,
        subject: SUBJECT,
        gravity,
        known: true,
        hard: false,
        sentence: format!(
            "Water over the tips at rest {}{sinking}; it draws air below about {} mm.",
            span(&value),
            number(least, 1.0)
        ),
        value: Some(value),
        least: Some(least),
        most: None,
        rule: rule.to_owned(),
        measure: if gravity == Gravity::Well {
            String::new()
        } else {
            "weight aft, a smaller diameter, or a plate over the propeller".to_owned()
        },
        caution: None,
    });
}
