//! `order`: one line nobody can get wrong, what may vary, what to measure on arrival, and a refusal of what contradicts the
//! job.

mod receipt;
pub mod report;

use crate::band::Accepted;
use crate::crowd::plan::Plan;
use crate::crowd::setup::Setup;
use crate::fit::exchange::{Size, exchange};
use crate::fit::report::Fit;
use crate::judge::judged_setup;
use crate::panel::Panel;
use crate::phrase::{number, plain};
use crate::report::{FullThrottle, Gravity};
use crate::{Lack, Options};
use job::fit::AccuracyClass;
use job::{Hand, Job, Kind, Quantity, Rating, Source, Word};
use report::{BoreDrawing, OrderField, OrderSheet};

/// The job with the propeller ordered in place of the one fitted.
#[must_use]
pub fn ordered(job: &Job) -> Job {
    let mut with = job.clone();
    let (o, p) = (&job.order, &mut with.propeller);
    let sheet = |q: &Option<Quantity>, to: &mut Option<Quantity>| {
        if let Some(q) = q {
            *to = Some(Quantity { source: Some(q.source.unwrap_or(Source::Sheet)), ..q.clone() });
        }
    };
    let changed = o.diameter.is_some() || o.pitch.is_some() || o.blades.is_some();
    if changed {
        // Another propeller: what was measured and seen on the old one is not true of it, nor are its readings of it.
        with.survey = None;
        p.stamp = None;
        p.growth = None;
        p.mass = None;
        p.hub_diameter = None;
        (p.root_thickness, p.outer_thickness, p.edge_thickness) = (None, None, None);
    }
    sheet(&o.diameter, &mut p.diameter);
    sheet(&o.pitch, &mut p.pitch);
    sheet(&o.area_ratio, &mut p.area_ratio);
    sheet(&o.rake, &mut p.rake);
    sheet(&o.skew, &mut p.skew);
    sheet(&o.hub_length, &mut p.hub_length);
    p.blades = o.blades.or(p.blades);
    p.hand = o.hand.or(p.hand);
    p.width = o.width.or(p.width);
    p.section = o.section.or(p.section);
    p.cup = o.cup.or(p.cup);
    p.class = o.class.or(p.class);
    p.material = o.material.clone().or(p.material.clone());
    // Clearances were measured to the blades of the old one. A job that lacks something is told so when it is judged.
    if let (Ok(old), Ok(new)) = (Plan::new(job), Plan::new(&with)) {
        exchange(&mut with.stern, &Size::of(&old), &Size::of(&new));
    }
    with
}

/// The class a boat wants (common practice, no source): I where she planes or works without a break, II otherwise.
#[must_use]
pub fn least_class(job: &Job) -> AccuracyClass {
    let hard = matches!(job.engine.rating, Some(Rating::MediumDuty | Rating::Continuous));
    if job.boat.kind == Some(Kind::Planing) || hard { AccuracyClass::I } else { AccuracyClass::II }
}

/// The order of a job: as its `[order]` says, and as fitted where it says nothing.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn order(job: &Job, options: &Options) -> Result<OrderSheet, Lack> {
    considered(job, options).map(|considered| considered.sheet)
}

/// An order with what it was made out from.
#[derive(Clone, Debug)]
pub struct Considered {
    /// Answer of `order`.
    pub sheet: OrderSheet,
    /// Answer of `fit` for the propeller ordered.
    pub fit: Fit,
    /// What it would do at full throttle, clean and loaded.
    pub full_throttle: FullThrottle,
}

/// The same with the fit and the full throttle it looked at, each worked out once.
///
/// # Errors
/// As [`order`].
pub fn considered(job: &Job, options: &Options) -> Result<Considered, Lack> {
    let with = ordered(job);
    let fit = crate::fit::fit(&with, options)?;
    // Readings taken with the old propeller weigh the boat; the new one is a change to it.
    let change = crate::Change {
        diameter: with.propeller.diameter.as_ref().map(|q| q.middle),
        pitch: with.propeller.pitch.as_ref().map(|q| q.middle),
        blades: with.propeller.blades,
        area_ratio: job.order.area_ratio.as_ref().map(|q| q.middle),
        cup: job.order.cup,
        ..crate::Change::default()
    };
    let plan = Plan::new(job)?;
    let crowd = crate::crowd::Crowd::draw(plan, options.boats, options.seed);
    let panel = Panel::of(&crowd, crate::judge::PANEL);
    let accepted = Accepted::of(job, &crowd.plan);
    let at = |latent: crate::crowd::latent::Latent| crowd.plan.dists[latent as usize].middle;
    let fitted = at(crate::crowd::latent::Latent::Diameter);
    let changed = job.order.diameter.is_some() || job.order.pitch.is_some() || job.order.blades.is_some();
    let setup =
        if changed { Setup::of_change(&change, fitted, crowd.plan.knowledge.blades.0) } else { Setup::default() };
    let runs = panel.run(&judged_setup(job).with(&setup));
    let verdict = accepted.verdict(&panel, &runs);
    let full_throttle = panel.full_throttle(&runs);
    let engine_speed = full_throttle.engine_speed;
    let fields = fields(job, &with, &fit);
    let (receipt, received, ok) = receipt::check(job, &with);
    let mut doubts = doubts(job, &fields);
    if verdict.right < 0.4 {
        doubts.push(format!(
            "It would be {} {} chances in 10: see `choose` before this goes out.",
            if verdict.over_pitched > verdict.under_pitched { "too much propeller" } else { "too little propeller" },
            plain(10.0 * verdict.over_pitched.max(verdict.under_pitched), 1)
        ));
    }
    let sheet = OrderSheet {
        title: job.title.clone(),
        refused: refusals(job, &with, &fit),
        line: line(&fields),
        may_vary: if job.order.may_vary.is_empty() { vec!["nothing".to_owned()] } else { job.order.may_vary.clone() },
        must_not_vary: "No equivalent without asking: same diameter and pitch are not the same propeller. Width, section and cup are part of the order.".to_owned(),
        doubts,
        receipt,
        received,
        accepted: ok,
        engine_speed,
        verdict,
        bore: bore(job, &with),
        cautions: vec![
            "First engagement with lines on: a propeller of the wrong hand drives the wrong way.".to_owned(),
            "Hoisting, welding, shaft and taper work are for people who do it for a living; engine and gearbox makers' sheets outrank this one.".to_owned(),
        ],
        fields,
    };
    Ok(Considered { sheet, fit, full_throttle })
}

fn both(q: &Quantity) -> String {
    let inches = crate::phrase::number(q.middle / 0.0254, 0.01);
    let inches = inches.trim_end_matches('0').trim_end_matches('.');
    format!("{} mm ({inches} in)", millimetres(1e3 * q.middle))
}

/// Millimetres as a workshop reads them: to the hundredth where a bore is meant, to the tenth on blades.
fn millimetres(mm: f64) -> String {
    number(mm, if mm.abs() < 120.0 { 0.01 } else { 0.1 })
}

/// The bore: as ordered, else as the shaft was measured, else by the standard it is nearest to.
fn bore(job: &Job, with: &Job) -> BoreDrawing {
    let (o, s) = (&job.order, &job.shaft);
    let mm = |q: &Option<Quantity>| q.as_ref().map(|q| 1e3 * q.middle);
    let hub = job.survey.as_ref().map(|s| s.hub.clone()).unwrap_or_default();
    let taper = o.taper.or(s.taper).map(job::fit::TaperRatio::value);
    let large = mm(&o.shaft).or(mm(&s.diameter)).or(mm(&hub.bore_large));
    let length = mm(&o.hub_length).or(mm(&with.propeller.hub_length)).or(mm(&hub.length));
    let small = mm(&o.bore_small).or(mm(&hub.bore_small)).or_else(|| Some(large? - taper? * length?));
    BoreDrawing {
        large,
        small,
        length,
        taper,
        key: mm(&o.key_width).or(mm(&s.key_width)).or(mm(&hub.keyway_width)),
        hub: mm(&with.propeller.hub_diameter).or(mm(&hub.diameter)),
    }
}

fn fields(job: &Job, with: &Job, fit: &Fit) -> Vec<OrderField> {
    let (o, p) = (&job.order, &with.propeller);
    let worked_out = o.bore_small.is_none() && job.survey.as_ref().is_none_or(|s| s.hub.bore_small.is_none());
    let mut list = Vec::new();
    let mut add = |what, value: Option<String>, ordered: bool| {
        if let Some(value) = value {
            let from = match (ordered, what) {
                (true, _) => "order",
                (_, "accuracy" | "balance") => "taken as usual",
                (_, "bore, small end") if worked_out => "taper and hub",
                _ => "fitted",
            };
            list.push(OrderField { what, value, from });
        }
    };
    add("diameter", p.diameter.as_ref().map(both), o.diameter.is_some());
    add("pitch", p.pitch.as_ref().map(|q| format!("{}, of the face at 0.7 R", both(q))), o.pitch.is_some());
    add("blades", p.blades.map(|z| z.to_string()), o.blades.is_some());
    let hand = match o.hand.or(p.hand) {
        Some(Hand::Right) => Some("right-hand: clockwise going ahead, seen from astern"),
        Some(Hand::Left) => Some("left-hand: anticlockwise going ahead, seen from astern"),
        Some(Hand::Pair) => Some("a pair: right-hand to starboard, left-hand to port, seen from astern"),
        None => fit.hand.needed.filter(|_| fit.hand.proven).map(|h| {
            if h == "right" {
                "right-hand: clockwise going ahead, seen from astern"
            } else {
                "left-hand: anticlockwise going ahead, seen from astern"
            }
        }),
    };
    add("hand", hand.map(str::to_owned), o.hand.is_some());
    let style = match (&p.area_ratio, p.width) {
        (Some(q), _) => Some(format!("expanded area ratio {}", number(q.middle, 0.01))),
        (None, Some(width)) => Some(format!("{} blades", width.word())),
        _ => None,
    };
    add("blade area", style, o.area_ratio.is_some() || o.width.is_some());
    add("sections", p.section.map(|s| s.word().to_owned()), o.section.is_some());
    add(
        "cup",
        p.cup.map(|c| {
            if c == job::Cup::None { "none".to_owned() } else { format!("{}, counted in the pitch as cup", c.word()) }
        }),
        o.cup.is_some(),
    );
    let degrees = |q: &Quantity| format!("{} degrees", plain(q.middle, 2));
    add("rake", p.rake.as_ref().map(|q| format!("{} aft", degrees(q))), o.rake.is_some());
    add("skew", p.skew.as_ref().map(|q| format!("at most {}", degrees(q))), o.skew.is_some());
    let b = bore(job, with);
    let mm = |v: f64| format!("{} mm ({} in)", millimetres(v), number(v / 25.4, 0.001));
    add("bore, large end", b.large.map(mm), o.shaft.is_some());
    add("bore, small end", b.small.map(mm), o.bore_small.is_some());
    add("taper", b.taper.map(|t| format!("1 in {} on the diameter", plain(1.0 / t, 2))), o.taper.is_some());
    add("keyway", b.key.map(|k| format!("{} wide", mm(k))), o.key_width.is_some());
    add("hub length", b.length.map(mm), o.hub_length.is_some());
    add("material", p.material.clone(), o.material.is_some());
    let class = o.class.unwrap_or_else(|| least_class(job));
    add(
        "accuracy",
        Some(format!("class {} of ISO 484-2 (percentages; below 0.80 m the trade applies them)", class.word())),
        o.class.is_some(),
    );
    let grade = o.balance.as_ref().map_or(6.3, |q| q.middle);
    add("balance", Some(format!("static, grade G {} (ISO 21940-11)", plain(grade, 2))), o.balance.is_some());
    add("trailing edge", o.edge.map(|e| e.word().to_owned()), true);
    add("room to twist later", o.repitch_room.as_ref().map(|q| format!("{} either way", both(q))), true);
    add("remarks", o.notes.clone(), true);
    list
}

/// The one line: everything a workshop cuts by.
fn line(fields: &[OrderField]) -> String {
    let get = |what: &str| fields.iter().find(|f| f.what == what).map(|f| f.value.as_str());
    let short = |value: &str| value.split(':').next().unwrap_or(value).to_owned();
    let mut parts: Vec<String> = Vec::new();
    if let (Some(d), Some(p)) = (get("diameter"), get("pitch")) {
        parts.push(format!("{d} x {p}"));
    }
    parts.extend(get("blades").map(|z| format!("{z} blades")));
    parts.extend(get("hand").map(short));
    for what in ["blade area", "sections"] {
        parts.extend(get(what).map(str::to_owned));
    }
    for what in ["cup", "rake", "skew"] {
        parts.extend(get(what).map(|v| format!("{what} {v}")));
    }
    if let (Some(large), Some(small)) = (get("bore, large end"), get("bore, small end")) {
        parts.push(format!("bore {large} to {small}"));
    } else {
        parts.extend(get("bore, large end").map(|v| format!("bore {v}")));
    }
    for (what, word) in [("taper", "taper"), ("keyway", "keyway"), ("hub length", "hub")] {
        parts.extend(get(what).map(|v| format!("{word} {v}")));
    }
    parts.extend(get("material").map(str::to_owned));
    parts.extend(get("accuracy").map(|v| v.split(" (").next().unwrap_or(v).to_owned()));
    parts.extend(get("balance").map(|v| format!("balance {}", v.split(" (").next().unwrap_or(v))));
    for what in ["trailing edge", "room to twist later"] {
        parts.extend(get(what).map(|v| format!("{what} {v}")));
    }
    format!("{}.", parts.join("; "))
}

fn doubts(job: &Job, fields: &[OrderField]) -> Vec<String> {
    let has = |what: &str| fields.iter().any(|f| f.what == what);
    let mut list = Vec::new();
    for (what, why) in [
        ("blade area", "same diameter and pitch with wider blades takes more power: say the area ratio or the width"),
        ("sections", "say flat-faced or airfoil"),
        ("cup", "say the cup, or that there is none: cup is pitch by another name"),
        ("material", "say the metal"),
        ("keyway", "measure the key"),
        ("hub length", "measure the hub or the taper"),
    ] {
        if !has(what) {
            list.push(format!("Not settled, {what}: {why}."));
        }
    }
    if job.order.pitch.is_some() && job.order.cup.is_some_and(|c| c != job::Cup::None) {
        list.push(
            "Agree with the workshop whether the pitch is meant with or without the cup; here it is without."
                .to_owned(),
        );
    }
    list
}

/// A shaft is larger than a bore when it is so by more than rounding (an inch size said in millimetres).
pub(crate) const LARGER: f64 = 1.002;

/// What forbids sending it.
fn refusals(job: &Job, with: &Job, fit: &Fit) -> Vec<String> {
    let mut list = Vec::new();
    let p = &with.propeller;
    for (lacks, what) in [
        (p.diameter.is_none(), "the diameter"),
        (p.pitch.is_none(), "the pitch"),
        (p.blades.is_none(), "the number of blades"),
    ] {
        if lacks {
            list.push(format!("{what} is not said: state it in [order] or [propeller]."));
        }
    }
    hand(job, fit, &mut list);
    shaft_end(job, with, &mut list);
    for check in fit.checks.iter().filter(|c| c.hard && c.known && c.gravity <= Gravity::Mend && c.code != "hand") {
        list.push(check.sentence.clone());
    }
    let (class, least) = (job.order.class.unwrap_or_else(|| least_class(job)), least_class(job));
    if class > least {
        list.push(format!(
            "class {} is below the duty, which asks for class {} (common practice, no source).",
            class.word(),
            least.word()
        ));
    }
    list
}

fn hand(job: &Job, fit: &Fit, list: &mut Vec<String>) {
    let word = |h: Hand| match h {
        Hand::Right => "right",
        Hand::Left => "left",
        Hand::Pair => "pair",
    };
    let ordered = job.order.hand.map(word);
    let facts: Vec<&crate::fit::report::Fact> =
        fit.hand.facts.iter().filter(|f| !f.from.starts_with("the propeller fitted")).collect();
    if ordered == Some("pair") && job.boat.screws.unwrap_or(1) < 2 {
        list.push("a pair is ordered, the boat has one screw.".to_owned());
    }
    // Against the propeller fitted nothing else speaks: then it is the only fact there is.
    if let (Some(o), Some(fitted)) = (ordered, job.propeller.hand.map(word))
        && facts.is_empty()
        && o != "pair"
        && fitted != "pair"
        && o != fitted
    {
        list.push(format!("{o}-hand is ordered, the propeller fitted is {fitted}-hand and nothing else speaks for {o}: look which way the shaft turns in ahead (drive.shaft_turns)."));
    }
    match (ordered, fit.hand.needed) {
        (Some(o), _) if o != "pair" && facts.iter().any(|f| f.says != o) => {
            let against: Vec<String> = facts.iter().filter(|f| f.says != o).map(|f| format!("{} says {}", f.from, f.says)).collect();
            list.push(format!("{o}-hand is ordered, but {}.", against.join(" and ")));
        }
        (None, None) => list.push("the hand is not settled: give two facts, the shaft's turning in ahead (drive.shaft_turns) and the leading edge or the stamp.".to_owned()),
        _ if job.order.hand.is_none() && !fit.hand.proven && job.boat.screws.unwrap_or(1) < 2 => {
            list.push("the hand rests on one fact: look which way the shaft turns in ahead (drive.shaft_turns), or say the hand in [order].".to_owned());
        }
        _ => {}
    }
}

fn shaft_end(job: &Job, with: &Job, list: &mut Vec<String>) {
    let (o, s) = (&job.order, &job.shaft);
    let leg = matches!(
        job.boat.arrangement,
        Some(job::Arrangement::Outboard | job::Arrangement::Sterndrive | job::Arrangement::Saildrive)
    );
    if leg {
        return;
    }
    let b = bore(job, with);
    if b.large.is_none() || b.taper.is_none() && b.small.is_none() {
        list.push("the bore is not settled: measure two diameters of the taper and the length between (shaft.diameter, shaft.small_end, shaft.taper_length) or state it in [order].".to_owned());
    }
    if let (Some(most), Some(shaft)) = (&o.largest_bore, o.shaft.as_ref().or(s.diameter.as_ref()))
        && shaft.middle > LARGER * most.middle
    {
        list.push(format!(
            "the shaft is {} mm, and the hubs to be had are bored for {} mm at the most.",
            plain(1e3 * shaft.middle, 4),
            plain(1e3 * most.middle, 4)
        ));
    }
    if let (Some(ordered), Some(shaft)) = (&o.shaft, &s.diameter)
        && (ordered.middle / shaft.middle - 1.0).abs() > 0.005
    {
        list.push(format!(
            "the bore is ordered for a shaft of {} mm, the shaft measures {} mm.",
            plain(1e3 * ordered.middle, 4),
            plain(1e3 * shaft.middle, 4)
        ));
    }
    if let (Some(ordered), Some(said)) = (o.taper, s.taper)
        && ordered != said
    {
        list.push(format!("a taper of {} is ordered, the shaft has {}.", ordered.word(), said.word()));
    }
    if let (Some(ordered), Some(key)) = (&o.key_width, &s.key_width)
        && (ordered.middle - key.middle).abs() > 2e-4
    {
        list.push(format!(
            "a keyway of {} mm is ordered, the key is {} mm.",
            plain(1e3 * ordered.middle, 3),
            plain(1e3 * key.middle, 3)
        ));
    }
}
