//! Facts of the trade on the demo boats: common practice, no source, except where one is named. What needs no boat stands in
//! `openwater.rs`.

use counsel::report::Comparison;
use counsel::{Change, Options, compare, judge};
use job::{Cup, Job};
use validation::boats;

const INCH: f64 = 0.0254;
const OPTIONS: Options = Options { boats: 600, seed: 1 };
const DEMOS: [&str; 4] = ["kittiwake", "gannet", "turnstone", "razorbill"];

/// A demo boat, not weighed by its readings.
fn demo(name: &str) -> Job {
    let mut job = boats::job(&format!("../../examples/{name}.toml"));
    job.readings.clear();
    job
}

/// One with so coarse a propeller that nothing holds its engine but torque.
fn torque_limited(name: &str) -> Job {
    let mut job = demo(name);
    if let Some(pitch) = job.propeller.pitch.as_mut() {
        for value in [&mut pitch.low, &mut pitch.middle, &mut pitch.high] {
            *value *= if name == "turnstone" { 1.5 } else { 1.15 };
        }
    }
    job
}

fn tried(job: &Job, change: Change) -> Comparison {
    compare(job, &change, &OPTIONS).unwrap_or_else(|e| panic!("{e}"))
}

fn marked(job: &Job) -> (f64, f64) {
    let p = &job.propeller;
    (p.diameter.as_ref().expect("stated").middle, p.pitch.as_ref().expect("stated").middle)
}

#[test]
fn less_pitch_frees_the_engine() {
    for name in DEMOS {
        let job = torque_limited(name);
        let (_, pitch) = marked(&job);
        let less = tried(&job, Change { pitch: Some(0.92 * pitch), ..Change::default() }).difference.engine_speed;
        let more = tried(&job, Change { pitch: Some(1.08 * pitch), ..Change::default() }).difference.engine_speed;
        assert!(less.middle > 0.0 && less.low >= 0.0, "{name}: {less:?}");
        assert!(more.middle < 0.0 && more.high <= 0.0, "{name}: {more:?}");
    }
}

/// An inch of pitch is worth 1 to 11 % of full-throttle engine speed on boats whose engine is held by torque (collected
/// reports, before and after).
#[test]
fn what_an_inch_is_worth() {
    for name in DEMOS {
        let job = torque_limited(name);
        let (_, pitch) = marked(&job);
        let told = tried(&job, Change { pitch: Some(pitch - INCH), ..Change::default() });
        let share = told.difference.engine_speed.middle / told.before.full_throttle.engine_speed.middle;
        assert!((0.01..0.11).contains(&share), "{name}: {share}");
    }
}

#[test]
fn more_diameter_holds_the_engine_down() {
    for name in DEMOS {
        let job = torque_limited(name);
        let (diameter, _) = marked(&job);
        let more = tried(&job, Change { diameter: Some(diameter + INCH), ..Change::default() }).difference.engine_speed;
        // A larger propeller is another one, with errors of its own: the band may touch nothing, its middle may not.
        assert!(more.middle < 0.0 && -more.low > 2.0 * more.high, "{name}: {more:?}");
    }
}

/// A smaller diameter needs more pitch for the same engine speed: an inch of diameter against one to three and a half of
/// pitch, depending on size (one text says two).
#[test]
fn a_smaller_diameter_needs_more_pitch() {
    for name in DEMOS {
        let job = torque_limited(name);
        let (diameter, pitch) = marked(&job);
        let off = |inches: f64| {
            let change =
                Change { diameter: Some(diameter - INCH), pitch: Some(pitch + inches * INCH), ..Change::default() };
            tried(&job, change).difference.engine_speed.middle
        };
        assert!(off(0.0) > 0.0, "{name}: {}", off(0.0));
        let needed = (1..=20).map(|i| 0.25 * f64::from(i)).find(|i| off(*i) <= 0.0);
        assert!(needed.is_some_and(|i| (0.75..=3.5).contains(&i)), "{name}: {needed:?} in");
    }
}

/// A medium cup acts like 1 in or 5 % more pitch, so that much less is ordered: within half of it.
#[test]
fn a_cup_wants_less_pitch() {
    for name in ["kittiwake", "gannet", "razorbill"] {
        let mut job = torque_limited(name);
        job.propeller.cup = Some(Cup::None);
        let (_, pitch) = marked(&job);
        let cupped = Change { cup: Some(Cup::Medium), ..Change::default() };
        let lost = -tried(&job, cupped).difference.engine_speed.middle;
        assert!(lost > 0.0, "{name}: {lost}");
        let back = |share: f64| {
            tried(&job, Change { pitch: Some((1.0 - share) * pitch), ..cupped }).difference.engine_speed.middle
        };
        assert!(back(0.025) < 0.0 && back(0.075) > 0.0, "{name}: {} {}", back(0.025), back(0.075));
    }
}

/// Apparent slip of ordinary planing boats lies around 15 %, 10 to 20 % is called fine and 25 to 35 % bad: so read on the
/// real boats of the replay whose ratio and pitch are stated.
#[test]
fn slip_of_ordinary_planing_boats_as_read() {
    let (entries, _) = boats::index();
    let mut slips: Vec<f64> = entries
        .iter()
        .filter(|e| e.used == "test" && matches!(e.family.as_str(), "outboard" | "planing inboard"))
        .filter_map(|e| {
            let job = boats::job(&e.file);
            let (ratio, pitch) = (job.drive.reduction?.middle, job.propeller.pitch?.middle);
            let full = job.readings.iter().filter(|r| r.full_throttle && r.state == job::State::default());
            full.filter_map(|r| {
                let (n, v) = (r.engine_speed.as_ref()?.middle, r.speed.as_ref()?.middle);
                hydro::limits::slip::slip(v, n / ratio, pitch)
            })
            .next()
        })
        .collect();
    slips.sort_unstable_by(f64::total_cmp);
    assert!(slips.len() >= 20, "{}", slips.len());
    let at = |share: f64| slips[(share * slips.len() as f64) as usize];
    assert!((0.10..0.20).contains(&at(0.5)), "{slips:?}");
    assert!(at(0.9) < 0.35, "{slips:?}");
}

/// Slow heavy boats run at 30 to 60 % of apparent slip with nothing wrong. Real slip is never nothing when thrust is made.
#[test]
fn slip_of_the_demo_boats() {
    for name in DEMOS {
        let told = judge(&demo(name), &OPTIONS).unwrap().limits;
        let usual = if matches!(name, "turnstone" | "razorbill") { 3.0..25.0 } else { 25.0..60.0 };
        assert!(usual.contains(&told.apparent_slip.middle), "{name}: {:?}", told.apparent_slip);
        assert!(told.real_slip.low > 0.0 && told.thrust.low > 0.0, "{name}: {:?}", told.real_slip);
    }
}

/// At the same pitch and diameter more blades load the engine more: about an inch (collected: half an inch more pitch and a
/// fourth blade cost 250 of 4750 rpm).
#[test]
fn a_blade_more_loads_like_pitch() {
    for name in ["kittiwake", "turnstone"] {
        let job = torque_limited(name);
        let told = tried(&job, Change { blades: Some(4), ..Change::default() });
        let share = told.difference.engine_speed.middle / told.before.full_throttle.engine_speed.middle;
        assert!((-0.08..0.0).contains(&share), "{name}: {share}");
    }
}

#[test]
fn weight_and_growth_cost_speed() {
    for name in DEMOS {
        let job = torque_limited(name);
        let mass = job.boat.displacement.as_ref().unwrap().middle;
        let heavy = tried(&job, Change { displacement: Some(1.15 * mass), ..Change::default() }).difference;
        let grown = tried(
            &job,
            Change {
                hull_growth: Some(job::Growth::SmallShell),
                blade_growth: Some(job::Growth::SmallShell),
                ..Change::default()
            },
        )
        .difference;
        for d in [heavy, grown] {
            assert!(d.speed.high < 0.0 && d.engine_speed.middle < 0.0, "{name}: {d:?}");
        }
    }
}
