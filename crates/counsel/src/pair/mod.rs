//! Twins: two engines and propellers on one hull, each with its own readings, laid side by side.
//!
//! | file | what |
//! |---|---|
//! | `draw` | pairs of definite boats, weighed by what was read on either side |
//! | [`report`] | the answer as plain data |

mod draw;
pub mod report;

use crate::band::Accepted;
use crate::crowd::latent::Latent;
use crate::crowd::plan::{At, What};
use crate::crowd::setup::Setup;
use crate::crowd::stats::Weighted;
use crate::panel::{KNOT, Run};
use crate::phrase::{number, plain, span};
use crate::report::{Band, Verdict};
use crate::{Lack, Options};
use draw::{PairPlan, Pairs, Part};
use hydro::running::FullThrottle;
use hydro::running::pair::{self, Together};
use job::{Hand, Job, Side};
use rayon::prelude::*;
use report::{OddSide, PairCause, PairReport, SideSheet};

/// Pairs the questions are asked on.
const PANEL: usize = 400;
/// Full throttles closer than this are as good as alike: a reading repeats no better.
const ALIKE: f64 = 0.02;

/// Whether a job tells its two sides apart.
#[must_use]
pub fn told_apart(job: &Job) -> bool {
    job.boat.screws == Some(2)
        && (job.port != job::Own::default()
            || job.starboard != job::Own::default()
            || job.survey.as_ref().is_some_and(|s| s.side.is_some())
            || job.readings.iter().any(|r| r.side.is_some()))
}

/// One pair at full throttle.
struct Ran {
    together: Together,
    pitch: [f64; 2],
    /// ln of the tachometer's error, by the instrument's spread.
    tachometer: [f64; 2],
    /// ln of starboard over port as shown, by the part it lies in.
    parts: [f64; 4],
    places: [crate::band::Place; 2],
}

/// Lays the sides of a pair side by side; `None` for a boat whose job does not tell them apart.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn pair(job: &Job, options: &Options) -> Result<Option<PairReport>, Lack> {
    if !told_apart(job) {
        return Ok(None);
    }
    // A pair is two boats: half as many cost the same.
    let pairs = Pairs::draw(PairPlan::new(job)?, (options.boats / 2).max(1), options.seed);
    let accepted = Accepted::of(job, &pairs.plan.plans[0]);
    let members = pairs.representatives(PANEL.min(options.boats));
    let bias = tachometer_spread(&pairs);
    let ran: Vec<Ran> = members.par_iter().map(|i| run(&pairs, *i, &accepted, bias)).collect();
    let even = vec![1.0; ran.len()];
    let over = Weighted::new(&even);
    let of = |f: &dyn Fn(&Ran) -> f64, unit| over.band(&ran.iter().map(f).collect::<Vec<f64>>(), unit);
    let difference = of(&|r| rpm(r, 1) - rpm(r, 0), "rpm");
    let uneven = over.share(|i| (rpm(&ran[i], 1) / rpm(&ran[i], 0)).ln().abs() > ALIKE);
    let read = [Side::Port, Side::Starboard].map(|side| read(job, side));
    let sheet = |s: usize, side: Side| SideSheet {
        propeller: propeller(job, side),
        pitch: of(&|r| 1000.0 * r.pitch[s], "mm"),
        engine_speed: of(&|r| rpm(r, s), "rpm"),
        shown: of(&|r| rpm(r, s) * r.tachometer[s].exp(), "rpm"),
        read: read[s],
        tachometer: of(&|r| 100.0 * r.tachometer[s].exp_m1(), "%"),
        power: of(&|r| r.together.sides[s].brake_power / 1000.0, "kW"),
        load: of(&|r| 100.0 * r.together.sides[s].load().min(2.0), "%"),
        thrust: of(&|r| r.together.sides[s].thrust, "N"),
        verdict: {
            let share = |place| over.share(|i| ran[i].places[s] == place);
            use crate::band::Place::{Above, Below, Inside};
            Verdict { over_pitched: share(Below), right: share(Inside), under_pitched: share(Above) }
        },
    };
    let (port, starboard) = (sheet(0, Side::Port), sheet(1, Side::Starboard));
    let causes = causes(&ran, &over, 0.5 * (port.engine_speed.middle + starboard.engine_speed.middle));
    let odd_side = odd_side(&pairs);
    let headline = headline(&port, &starboard, &difference, uneven, odd_side, &causes);
    Ok(Some(PairReport {
        headline,
        measure_next: measure_next(&causes, uneven, job),
        speed: of(&|r| r.together.speed / KNOT, "kn"),
        power_difference: of(
            &|r| (r.together.sides[1].brake_power - r.together.sides[0].brake_power) / 1000.0,
            "kW",
        ),
        engine_speed_difference: difference,
        uneven,
        odd_side,
        causes,
        accepted_band: accepted.report.clone(),
        pairs: pairs.weights.len(),
        effective: pairs.effective,
        explained: pairs.explained(),
        notes: vec![
            "Hull, weight and bottom are common to both sides; what two engines or two propellers of one make have in common is an estimate."
                .to_owned(),
            "At part throttle both engines are taken to have been run in step. The rudder that unequal thrusts ask for is left out."
                .to_owned(),
        ],
        port,
        starboard,
    }))
}

fn rpm(r: &Ran, side: usize) -> f64 {
    r.together.sides[side].engine_speed.rpm()
}

fn run(pairs: &Pairs, i: usize, accepted: &Accepted, bias: [f64; 2]) -> Ran {
    let boats = pairs.boats(i);
    let fitted = [0, 1].map(|s| boats[s].described);
    let together = pair::full_throttle([&fitted[0].installation, &fitted[1].installation]);
    let tachometer = [0, 1].map(|s| bias[s] * boats[s].row[Latent::Tachometer as usize]);
    // What starboard would show if it differed from port in one part only; the hull moves with both, so the other side stands.
    let alone = |part: Part| {
        let boat = pairs.plan.with_parts_of(pairs.row(i), 1, |of| of == part);
        let all_port = pairs.plan.with_parts_of(pairs.row(i), 1, |_| false);
        let at = |boat: &crate::crowd::definite::Definite| {
            pair::full_throttle([&fitted[0].installation, &boat.described.installation]).sides[1].engine_speed.0
        };
        (at(&boat) / at(&all_port)).ln()
    };
    let parts =
        Part::ALL.map(|part| if part == Part::Tachometer { tachometer[1] - tachometer[0] } else { alone(part) });
    let places = [0, 1].map(|s| {
        let full = FullThrottle { point: together.sides[s], ..boats[s].full };
        accepted.place(&Run { fitted: fitted[s], full })
    });
    let pitch = [0, 1].map(|s| boats[s].row[Latent::Pitch as usize]);
    Ran { together, pitch, tachometer, parts, places }
}

/// The lasting spread of each side's instrument at full throttle, ln.
fn tachometer_spread(pairs: &Pairs) -> [f64; 2] {
    [0, 1].map(|side| {
        let of = pairs.plan.seen.iter().filter(|s| s.side == side && s.observation.what == What::EngineSpeed);
        of.map(|s| s.observation.bias).fold(0.0, f64::max)
    })
}

fn causes(ran: &[Ran], over: &Weighted, middle: f64) -> Vec<PairCause> {
    let mut list: Vec<PairCause> = Part::ALL
        .into_iter()
        .enumerate()
        .map(|(k, part)| {
            let chance = over.share(|i| {
                let parts = &ran[i].parts;
                let total: f64 = parts.iter().sum();
                parts.iter().enumerate().all(|(j, p)| j == k || p * total.signum() <= parts[k] * total.signum())
            });
            let values: Vec<f64> = ran.iter().map(|r| middle * r.parts[k].exp_m1()).collect();
            let (cause, remedy, cost) = words(part);
            PairCause { cause, chance, difference: over.band(&values, "rpm"), remedy: remedy.to_owned(), cost }
        })
        .collect();
    list.sort_by(|a, b| b.chance.total_cmp(&a.chance));
    list
}

const fn words(part: Part) -> (&'static str, &'static str, &'static str) {
    match part {
        Part::Propeller => (
            "propellers",
            "Clean both propellers, then measure both and true them up to each other before either is changed in pitch.",
            "a diver for the cleaning; a haul-out and a workshop for the pitch",
        ),
        Part::Engine => (
            "engines",
            "Have the lower engine looked at: full rack, filters, lift pump, boost, exhaust elbow and back-pressure.",
            "a mechanic's day, afloat",
        ),
        Part::Gear => (
            "gears",
            "Read shaft and engine on both sides with an optical tachometer, and turn both shafts by hand: ratio, slip, bearing, rope.",
            "an hour with an optical tachometer, afloat",
        ),
        Part::Tachometer => (
            "tachometers",
            "Prove both instruments with an optical tachometer before anything else is touched.",
            "an hour with an optical tachometer, afloat",
        ),
    }
}

/// Which side was read farther from what was expected of it before any reading was weighed.
fn odd_side(pairs: &Pairs) -> Option<OddSide> {
    let m = pairs.plan.seen.len();
    let off = |side: usize| {
        let (i, seen) = pairs.plan.seen.iter().enumerate().find(|(_, s)| {
            s.side == side
                && s.swapped.is_none()
                && s.setup == Setup::default()
                && s.observation.at == At::FullThrottle
                && s.observation.what == What::EngineSpeed
                && !s.observation.at_least
        })?;
        let shown: Vec<f64> = pairs
            .before
            .iter()
            .skip(i)
            .step_by(m)
            .filter(|x| x.is_finite())
            .map(|x| seen.observation.value.ln() - x)
            .collect();
        (!shown.is_empty()).then_some(shown)
    };
    let (port, starboard) = (off(0)?, off(1)?);
    let count = port.len().min(starboard.len());
    let starboard_odd = (0..count).filter(|i| starboard[*i].abs() > port[*i].abs()).count() as f64 / count as f64;
    Some(if starboard_odd >= 0.5 {
        OddSide { side: "starboard", chance: starboard_odd }
    } else {
        OddSide { side: "port", chance: 1.0 - starboard_odd }
    })
}

/// What was read at full throttle on one side as the boat is, rpm.
fn read(job: &Job, side: Side) -> Option<f64> {
    let as_is = job.readings.iter().filter(|r| r.full_throttle && r.state == job::State::default());
    let own = as_is.filter(|r| r.side == Some(side));
    own.filter_map(|r| r.engine_speed.as_ref()).next_back().map(|q| 60.0 * q.middle)
}

/// A side's propeller as stated: `19 x 17 in, 4 blades`.
fn propeller(job: &Job, side: Side) -> String {
    let own = draw::side_job(job, side);
    let p = &own.propeller;
    let inches = |q: &Option<job::Quantity>| {
        q.as_ref().map_or("?".to_owned(), |q| {
            let text = number(q.middle / 0.0254, 0.1);
            text.strip_suffix(".0").unwrap_or(&text).to_owned()
        })
    };
    let blades = p.blades.map_or(String::new(), |z| format!(", {z} blades"));
    format!("{} x {} in{blades}", inches(&p.diameter), inches(&p.pitch))
}

fn headline(
    port: &SideSheet,
    starboard: &SideSheet,
    difference: &Band,
    uneven: f64,
    odd: Option<OddSide>,
    causes: &[PairCause],
) -> String {
    if uneven < 0.5 {
        return format!(
            "The two sides pull alike: at full throttle port turns {}, starboard {}.",
            span(&port.engine_speed),
            span(&starboard.engine_speed)
        );
    }
    let (slow, lower) = if difference.middle < 0.0 { ("Starboard", "port") } else { ("Port", "starboard") };
    let size = Band {
        low: difference.low.abs().min(difference.high.abs()),
        middle: difference.middle.abs(),
        high: difference.low.abs().max(difference.high.abs()),
        unit: "rpm",
    };
    let size =
        if difference.low * difference.high < 0.0 { format!("up to {} rpm", plain(size.high, 2)) } else { span(&size) };
    let odd = odd.filter(|o| o.chance > 0.65).map_or(String::new(), |o| format!(" The odd one is {}.", o.side));
    let cause = causes.first().map_or(String::new(), |c| {
        format!(" Most likely it lies in the {}, {} chances in 10.", c.cause, plain(10.0 * c.chance, 1))
    });
    format!("{slow} turns {size} less than {lower} at full throttle.{odd}{cause}")
}

fn measure_next(causes: &[PairCause], uneven: f64, job: &Job) -> String {
    if uneven < 0.3 {
        return "nothing: keep both sides in the season's log".to_owned();
    }
    let chance = |name: &str| causes.iter().find(|c| c.cause == name).map_or(0.0, |c| c.chance);
    if chance("tachometers") > 0.12 {
        return "prove both tachometers with an optical one, or change the two instruments over and run again: a fault that follows the instrument is the instrument's".to_owned();
    }
    let swap = if job.propeller.hand == Some(Hand::Pair) || job.propeller.hand.is_none() {
        "the propellers of a handed pair cannot be changed over"
    } else {
        "or change the propellers over, both being of one hand, and run again: a fault that follows the propeller is the propeller's"
    };
    if chance("propellers") >= chance("engines") {
        format!("clean both propellers and run again, then measure the pitch of both; {swap}")
    } else {
        format!("read boost, exhaust temperature and back-pressure on both engines at full throttle; {swap}")
    }
}
