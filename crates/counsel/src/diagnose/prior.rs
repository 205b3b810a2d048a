//! Chances before the readings are looked at: a base for every cause, moved by what the caller said.
//!
//! The tables are ours, after the cases collected from public reports (`common practice, no source`); every row has its
//! reason, which the answer shows.

use super::hypothesis::Cause;
use job::{Growth, Job, Onset, Smoke, Source, Symptom};

/// A factor on a cause's chance, with its reason.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Moved {
    pub cause: Cause,
    pub factor: f64,
    pub why: String,
}

/// Everything that moves chances before the readings.
pub(super) fn moved(job: &Job) -> Vec<Moved> {
    let mut list = Vec::new();
    let mut push = |cause, factor, why: &str| list.push(Moved { cause, factor, why: why.to_owned() });
    let onset = job.call.onset.or_else(|| guessed_onset(job));
    if let Some(onset) = onset {
        for (cause, factor, why) in by_onset(onset) {
            push(*cause, *factor, why);
        }
    }
    for symptom in symptoms(job) {
        for (cause, factor, why) in by_symptom(symptom) {
            push(*cause, *factor, why);
        }
    }
    known(job, &mut push);
    list
}

/// Onset from what the caller says changed just before, when it was not put in the listed words.
fn guessed_onset(job: &Job) -> Option<Onset> {
    let said = job.call.changed.join(" ").to_lowercase();
    let has = |words: &[&str]| words.iter().any(|w| said.contains(w));
    if has(&["propeller", "prop ", "repitch", "re-pitch", "blade"]) {
        Some(Onset::WithPropeller)
    } else if has(&["alternator", "tach", "instrument"]) {
        Some(Onset::WithInstruments)
    } else if has(&["engine", "gearbox", "gear box"]) {
        Some(Onset::WithEngine)
    } else if has(&["weight", "heavier", "batter", "generator", "tank"]) {
        Some(Onset::WithWeight)
    } else {
        None
    }
}

/// The symptoms stated, and those that stand at a reading.
pub(super) fn symptoms(job: &Job) -> Vec<Symptom> {
    let mut list = job.call.symptoms.clone();
    let mut add = |symptom| {
        if !list.contains(&symptom) {
            list.push(symptom);
        }
    };
    for reading in job.readings.iter().filter(|r| r.full_throttle) {
        match reading.smoke {
            Some(Smoke::Black) => add(Symptom::BlackSmoke),
            Some(Smoke::White) => add(Symptom::WhiteSmoke),
            _ => {}
        }
        if reading.governed != Some(true) && reading.engine_load.as_ref().is_some_and(|q| q.middle < 0.93) {
            add(Symptom::LoadBelowFull);
        }
    }
    list
}

type Row = (Cause, f64, &'static str);

fn by_onset(onset: Onset) -> &'static [Row] {
    use Cause::*;
    match onset {
        Onset::Sudden => &[
            (AsStated, 0.08, "it came suddenly with the same propeller: that is almost never pitch"),
            (Stamp, 0.05, "it came suddenly: a stamp does not change"),
            (Style, 0.05, "it came suddenly: the blades are the same as before"),
            (Ratio, 0.05, "it came suddenly: the ratio is the same as before"),
            (Overweight, 0.3, "weight seldom comes suddenly"),
            (GrowthBlades, 2.5, "growth on blades shows from one trip to the next"),
            (GrowthBoth, 1.3, "growth on blades shows from one trip to the next"),
            (EngineDown, 1.5, "filters, cables and hoses fail suddenly"),
            (Drag, 4.0, "a rope or a seized bearing comes suddenly"),
            (BladeDamaged, 5.0, "a strike comes suddenly"),
            (Governor, 1.5, "a cable that slipped comes suddenly"),
        ],
        Onset::Gradual => &[
            (AsStated, 0.1, "it came gradually with the same propeller"),
            (Stamp, 0.05, "it came gradually: a stamp does not change"),
            (Style, 0.1, "it came gradually: only a cup wears"),
            (Ratio, 0.05, "it came gradually: the ratio is the same as before"),
            (GrowthBlades, 3.0, "growth comes gradually"),
            (GrowthHull, 3.0, "growth comes gradually"),
            (GrowthBoth, 3.5, "growth comes gradually, on bottom and blades alike"),
            (EngineDown, 1.5, "wear and coked elbows come gradually"),
            (Overweight, 1.5, "boats gain weight over the years"),
        ],
        Onset::WithPropeller => &[
            (AsStated, 2.0, "it began with another or a repaired propeller"),
            (Stamp, 3.0, "it began with another or a repaired propeller: is it what was ordered?"),
            (Style, 3.0, "it began with another propeller: same stamp is not same blade"),
            (EngineDown, 0.5, "it began with the propeller, not with the engine"),
            (Tachometer, 0.5, "it began with the propeller"),
        ],
        Onset::WithEngine => &[
            (AsStated, 2.0, "it began with another engine or gearbox: the old propeller may not suit it"),
            (Ratio, 4.0, "it began with another engine or gearbox"),
            (Governor, 3.0, "it began with another engine"),
            (EngineDown, 2.0, "it began with another engine: cables, air and exhaust are new too"),
            (Tachometer, 2.0, "it began with another engine: the tachometer may not be set to it"),
        ],
        Onset::WithInstruments => &[
            (Tachometer, 8.0, "it began with work on alternator or instruments"),
            (AsStated, 0.3, "it began with the instruments"),
        ],
        Onset::WithWeight => &[(Overweight, 6.0, "it began with more weight aboard")],
        Onset::Always => &[
            (GrowthBlades, 0.3, "it was always so, clean or not"),
            (GrowthHull, 0.3, "it was always so, clean or not"),
            (GrowthBoth, 0.2, "it was always so, clean or not"),
            (Stamp, 1.5, "it was always so"),
            (Drag, 0.3, "it was always so"),
            (BladeDamaged, 0.3, "it was always so"),
        ],
    }
}

fn by_symptom(symptom: Symptom) -> &'static [Row] {
    use Cause::*;
    match symptom {
        Symptom::BlackSmoke => &[
            (AsStated, 1.8, "black smoke at steady power: the engine is loaded beyond its air"),
            (GrowthBlades, 1.5, "black smoke: overload"),
            (GrowthHull, 1.5, "black smoke: overload"),
            (GrowthBoth, 1.5, "black smoke: overload"),
            (Overweight, 1.4, "black smoke: overload"),
            (EngineDown, 1.0, "black smoke is overload or want of air"),
            (Tachometer, 0.5, "a wrong tachometer does not smoke"),
            (Governor, 0.4, "a governor set low keeps the engine from smoking"),
        ],
        Symptom::BlackSmokeAccelerating => &[(AsStated, 1.1, "smoke only while accelerating says little")],
        Symptom::WhiteSmoke => &[(EngineDown, 2.0, "white or grey smoke: injection or compression")],
        Symptom::OverheatsPushed => &[
            (AsStated, 1.5, "overheating only when pushed: overload"),
            (GrowthBlades, 1.3, "overheating only when pushed: overload"),
            (GrowthBoth, 1.3, "overheating only when pushed: overload"),
            (EngineDown, 1.2, "overheating only when pushed: or a dirty cooler"),
        ],
        Symptom::ExhaustHot => &[
            (AsStated, 2.0, "hot exhaust: the engine is fed and overloaded"),
            (GrowthBlades, 1.7, "hot exhaust: overload"),
            (GrowthBoth, 1.7, "hot exhaust: overload"),
            (EngineDown, 0.7, "hot exhaust speaks for overload before an engine not fed"),
            (Tachometer, 0.4, "hot exhaust: the load is real"),
        ],
        Symptom::ExhaustCool => &[
            (EngineDown, 4.0, "cool exhaust: the engine is not being fed"),
            (AsStated, 0.3, "cool exhaust: no overload"),
            (GrowthBlades, 0.3, "cool exhaust: no overload"),
            (GrowthBoth, 0.3, "cool exhaust: no overload"),
            (Governor, 2.0, "cool exhaust: held back"),
        ],
        Symptom::BoostLow => &[(EngineDown, 3.0, "low boost: air, fuel or turbocharger"), (AsStated, 0.6, "low boost")],
        Symptom::LoadBelowFull => &[
            (
                EngineDown,
                2.5,
                "the display shows less than full load at full throttle: not being fed, or throttle not open",
            ),
            (Governor, 3.0, "less than full load at full throttle: held by its governor"),
            (AsStated, 0.4, "an overloaded engine shows full load"),
            (GrowthBlades, 0.4, "an overloaded engine shows full load"),
            (GrowthBoth, 0.4, "an overloaded engine shows full load"),
        ],
        Symptom::MoreFuel => &[
            (GrowthBlades, 1.5, "more fuel: more drag"),
            (GrowthHull, 1.7, "more fuel: more drag"),
            (GrowthBoth, 1.8, "more fuel: more drag"),
        ],
        Symptom::SlowToPlane => &[
            (AsStated, 1.3, "slow to plane: pitch or area"),
            (Overweight, 1.7, "slow to plane: weight"),
            (Cavitation, 2.0, "slow to plane: the blades may let go"),
        ],
        Symptom::RevsFlare => &[(Cavitation, 8.0, "revs flare while speed dies: air")],
        Symptom::ShaftRate => &[(BladeDamaged, 5.0, "shakes once a turn: one blade differs, or the shaft is bent")],
        Symptom::BladeRate => &[(Cavitation, 1.5, "shakes at blade rate: clearance, wake or cavitation")],
        Symptom::EngineRate => &[(EngineDown, 2.0, "there in neutral too: the engine")],
        Symptom::Singing => &[],
        Symptom::Gravel => &[(Cavitation, 4.0, "gravel that grows with power: cavitation")],
        Symptom::GoesWhenHelped => &[
            (Cavitation, 5.0, "the noise goes when helped along: load, not bearing"),
            (Drag, 0.2, "a bearing would go on"),
        ],
        Symptom::BackEaten => &[(Cavitation, 4.0, "backs eaten outside: overload or too little area")],
        Symptom::FaceEaten => &[(Cavitation, 1.5, "faces eaten at the leading edge: too little pitch for the speed")],
        Symptom::GrowthOnBlades => &[
            (GrowthBlades, 12.0, "growth was seen on the blades"),
            (GrowthBoth, 10.0, "growth was seen on the blades"),
        ],
        Symptom::GrowthOnBottom => &[
            (GrowthHull, 8.0, "growth was seen on the bottom"),
            (GrowthBlades, 1.5, "where the bottom is grown the blades are seldom clean"),
            (GrowthBoth, 10.0, "growth was seen on the bottom, and the blades are seldom clean then"),
        ],
        Symptom::ShaftStiff => &[(Drag, 15.0, "the shaft is stiff or the gland hot")],
        Symptom::BladeBent | Symptom::BladeMissing => &[(BladeDamaged, 20.0, "a blade was seen bent or gone")],
        Symptom::Crack | Symptom::PinkMetal | Symptom::LooseOnTaper | Symptom::LockingMissing => &[],
        Symptom::FollowsTachometer => &[
            (Tachometer, 20.0, "the difference went over with the tachometer"),
            (Mismatch, 0.1, "the difference went over with the tachometer"),
        ],
        Symptom::FollowsPropeller => &[
            (Mismatch, 6.0, "the difference went over with the propeller"),
            (Stamp, 3.0, "the difference went over with the propeller"),
            (EngineDown, 0.1, "the difference went over with the propeller"),
            (Tachometer, 0.1, "the difference went over with the propeller"),
        ],
        Symptom::StaysWithEngine => &[
            (EngineDown, 6.0, "the difference stayed with the engine"),
            (Stamp, 0.1, "the difference stayed with the engine"),
            (Mismatch, 0.5, "the difference stayed with the engine"),
        ],
        Symptom::FreeRevsFine => {
            &[(Governor, 0.1, "no-load speed is reached: the governor is set right; it says nothing of power")]
        }
    }
}

/// What the particulars themselves rule out or bring near.
fn known(job: &Job, push: &mut impl FnMut(Cause, f64, &str)) {
    let optical = job
        .readings
        .iter()
        .filter_map(|r| r.engine_speed.as_ref())
        .any(|q| matches!(q.source, Some(Source::Optical | Source::Display)));
    if optical {
        push(Cause::Tachometer, 0.04, "engine speed was read with an optical tachometer or the engine's own display");
    }
    if job.readings.iter().any(|r| r.shaft_speed.is_some() && r.engine_speed.is_some()) {
        push(Cause::Ratio, 0.05, "engine and shaft speed were read together");
    }
    let p = &job.propeller;
    if p.pitch.as_ref().is_some_and(|q| q.source == Some(Source::Measured)) {
        push(Cause::Stamp, 0.05, "the pitch was measured");
    }
    if p.area_ratio.is_some() {
        push(Cause::Style, 0.4, "the blade area is known");
    }
    if let Some(surveyed) = crate::survey::fitted(job) {
        if surveyed.pitch.is_some() {
            push(Cause::Stamp, 0.05, "the pitch was measured in the survey");
        }
        if surveyed.area_ratio.is_some() {
            push(Cause::Style, 0.2, "the blades were measured in the survey");
        }
    }
    match p.growth {
        Some(Growth::Clean) => {
            push(Cause::GrowthBlades, 0.1, "the blades are said to be clean");
            push(Cause::GrowthBoth, 0.1, "the blades are said to be clean");
        }
        Some(_) => {
            push(Cause::GrowthBlades, 4.0, "growth is stated on the blades");
            push(Cause::GrowthBoth, 4.0, "growth is stated on the blades");
        }
        None => {}
    }
    match job.boat.growth {
        Some(Growth::Clean) => {
            push(Cause::GrowthHull, 0.1, "the bottom is said to be clean");
            push(Cause::GrowthBoth, 0.1, "the bottom is said to be clean");
            if p.growth.is_none() {
                push(Cause::GrowthBlades, 0.3, "the bottom is said to be clean, the blades with it");
            }
        }
        Some(_) => {
            push(Cause::GrowthHull, 3.0, "growth is stated on the bottom");
            push(Cause::GrowthBoth, 3.0, "growth is stated on the bottom");
        }
        None => {}
    }
    const DAY: f64 = 86_400.0;
    match job.boat.since_scrub.as_ref().map(|q| q.middle / DAY) {
        Some(days) if days < 14.0 => {
            push(Cause::GrowthHull, 0.2, "scrubbed less than two weeks ago");
            push(Cause::GrowthBlades, 0.3, "scrubbed less than two weeks ago");
            push(Cause::GrowthBoth, 0.2, "scrubbed less than two weeks ago");
        }
        Some(days) if days > 42.0 => {
            push(Cause::GrowthHull, 1.5, "six weeks or more since the last scrub");
            push(Cause::GrowthBlades, 1.8, "six weeks or more since the last scrub");
            push(Cause::GrowthBoth, 2.5, "six weeks or more since the last scrub");
        }
        _ => {}
    }
    if job.boat.displacement.as_ref().is_some_and(|q| q.source == Some(Source::Weighed)) {
        push(Cause::Overweight, 0.1, "the boat was weighed");
    }
    if job.boat.screws.unwrap_or(1) < 2 {
        push(Cause::Mismatch, 0.0, "one propeller only");
    }
    let two_ways = job.readings.iter().any(|r| r.speeds.len() >= 2);
    if two_ways {
        push(Cause::Speeds, 0.3, "speed was taken both ways");
    }
    let rated = job.engine.rated_speed.as_ref().map(|q| q.middle);
    let held_low = job.readings.iter().any(|r| {
        let engine = r.engine_speed.as_ref().map(|q| q.high);
        r.full_throttle && r.governed == Some(true) && engine.zip(rated).is_some_and(|(n, rated)| n < rated)
    });
    if held_low {
        push(Cause::Governor, 25.0, "the engine was held by its governor below its rated speed");
    }
    let no_load = job
        .engine
        .no_load_speed
        .as_ref()
        .filter(|q| matches!(q.source, Some(Source::Optical | Source::Display | Source::Measured)));
    if let (Some(no_load), Some(rated)) = (no_load, rated) {
        if no_load.high < 1.01 * rated {
            push(Cause::Governor, 12.0, "the no-load speed was measured no higher than the rated speed");
        } else {
            push(Cause::Governor, 0.1, "the no-load speed was measured above the rated speed");
        }
    }
    depth(job, push);
    if job.readings.is_empty() {
        push(Cause::Speeds, 0.2, "no reading is given");
    }
}

/// What the depths stated say of shallow water. At hull speed, `V/√(g L)` 0.4, the depth Froude number is 0.63 over four tenths
/// of the length and 0.4 over a whole one: between them a loss begins to be felt (limits: `hydro::hull::depth`).
fn depth(job: &Job, push: &mut impl FnMut(Cause, f64, &str)) {
    let length = job.boat.length_waterline.as_ref().or(job.boat.length_overall.as_ref()).map(|q| q.middle);
    let depths = job.readings.iter().map(|r| r.depth.as_ref().or(job.place.depth.as_ref()).map(|q| q.middle));
    let depths: Vec<f64> = depths.flatten().chain(job.place.depth.as_ref().map(|q| q.middle)).collect();
    let Some(least) = depths.iter().copied().reduce(f64::min) else { return };
    if length.is_some_and(|length| least < 0.4 * length) {
        push(Cause::Shallow, 8.0, "the depth stated is less than four tenths of her length");
    } else if least > 15.0 || length.is_some_and(|length| least > length) {
        push(Cause::Shallow, 0.05, "the water was deep");
    }
}

/// What must stop the boat whatever the performance question.
pub(super) fn stop(job: &Job) -> Vec<String> {
    symptoms(job)
        .into_iter()
        .filter_map(|symptom| match symptom {
            Symptom::Crack => Some("A crack was reported: do not go to sea on this propeller. Dye test and a licensed repairer decide."),
            Symptom::PinkMetal => Some(
                "Soft, pink or dull metal was reported: the zinc may be gone from the alloy. Do not go to sea before it is scraped, rung and judged by somebody who answers for it.",
            ),
            Symptom::LooseOnTaper => Some("The propeller is loose on its taper: do not run the engine in gear. Refit by the maker's instructions."),
            Symptom::LockingMissing => Some("The nut is not locked: do not run the engine in gear before it is."),
            Symptom::BladeMissing => Some("A blade is missing: do not run; the unbalance ruins bearing, strut and gearbox."),
            _ => None,
        })
        .map(str::to_owned)
        .collect()
}
