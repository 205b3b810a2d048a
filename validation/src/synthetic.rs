//! Boats whose truth is known: drawn from the prior of a template, read with instruments that err as the plan says, judged
//! from those readings alone.
//!
//! This shows whether weighing is done right (the bands that come out are those the assumptions entail), not whether the
//! assumptions are; that is what the real boats are for.

use crate::boats;
use counsel::crowd::definite::Definite;
use counsel::crowd::latent::{COUNT, Latent};
use counsel::crowd::plan::{At, Observation, Plan, RUN_ENGINE_SPEED, RUN_SPEED, What};
use counsel::crowd::setup::Setup;
use counsel::crowd::{Crowd, normal};
use counsel::report::Band;
use counsel::{Change, Options, compare};
use hydro::running::Held;
use job::{Job, Quantity, Reading};
use rayon::prelude::*;

const KNOT: f64 = 1852.0 / 3600.0;

/// A small reproducible stream of numbers, SplitMix64 (Steele, Lea & Flood 2014); its own, so that truth shares nothing with
/// the sequence the judgement draws from.
#[derive(Clone, Copy, Debug)]
pub struct Stream(u64);

impl Stream {
    /// The stream of a boat.
    #[must_use]
    pub fn of(seed: u64, boat: u64) -> Stream {
        let mut stream = Stream(seed.wrapping_mul(0x2545_f491_4f6c_dd1d) ^ boat.wrapping_mul(0x9e37_79b9_7f4a_7c15));
        stream.next();
        stream
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Between 0 and 1.
    pub fn uniform(&mut self) -> f64 {
        ((self.next() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    /// Standard normal.
    pub fn normal(&mut self) -> f64 {
        normal::inverse_normal(self.uniform())
    }

    /// One of `count`.
    pub fn pick(&mut self, count: usize) -> usize {
        ((self.uniform() * count as f64) as usize).min(count - 1)
    }

    /// True with a chance.
    pub fn chance(&mut self, p: f64) -> bool {
        self.uniform() < p
    }
}

/// The templates: the demo boats and some of the replayed real boats, their readings taken away.
///
/// # Panics
/// When a file cannot be read.
#[must_use]
pub fn templates() -> Vec<Job> {
    let examples = ["kittiwake", "gannet", "turnstone", "razorbill"].map(|name| format!("../../examples/{name}.toml"));
    let others = ["ba06.toml", "workboat-31.toml", "trawler-yacht-34.toml", "t6-sisters.toml"].map(str::to_owned);
    examples
        .iter()
        .chain(&others)
        .map(|file| {
            let mut job = boats::job(file);
            job.readings.clear();
            job
        })
        .collect()
}

/// A definite boat nobody knows.
pub struct Hidden {
    /// What it was drawn from.
    pub plan: Plan,
    /// Its draws.
    pub z: Vec<f64>,
    /// The boat.
    pub boat: Definite,
}

impl Hidden {
    /// Draws one from the prior of a job without readings. `None` when something is missing that cannot be assumed.
    #[must_use]
    pub fn draw(job: &Job, stream: &mut Stream) -> Option<Hidden> {
        Some(Hidden::of(Plan::new(job).ok()?, stream))
    }

    /// Draws one from a plan without readings.
    #[must_use]
    pub fn of(plan: Plan, stream: &mut Stream) -> Hidden {
        // Of a few candidates one by its weight: what the kind of boat says counts as part of the prior.
        let seed = stream.next() as u32;
        let crowd = Crowd::draw(plan, 8, seed);
        let mut target = stream.uniform();
        let at = crowd.weights.iter().position(|w| {
            target -= w;
            target <= 0.0
        });
        let at = at.unwrap_or(0);
        let z = crowd.z[at * COUNT..(at + 1) * COUNT].to_vec();
        Hidden { z, boat: crowd.boats[at], plan: crowd.plan }
    }

    /// Whether it is held at full throttle, in a setup.
    #[must_use]
    pub fn governed(&self) -> bool {
        matches!(self.boat.full.held, Held::Governor | Held::Limiter)
    }

    /// Logarithm of what each observation of `asked` would show, instruments' lasting errors included.
    #[must_use]
    pub fn shows(&self, asked: &Plan) -> Vec<f64> {
        let crowd = Crowd {
            plan: self.plan.clone(),
            boats: vec![self.boat],
            z: self.z.clone(),
            weights: vec![1.0],
            effective: 1.0,
            shown: Vec::new(),
            before: Vec::new(),
            explained: true,
            log_evidence: 0.0,
            seed: 0,
        };
        crowd.would_show(asked)
    }

    /// Full-throttle engine speed (rpm) and speed (kn) in a setup.
    #[must_use]
    pub fn full_throttle(&self, setup: &Setup) -> (f64, f64) {
        let full = self.boat.fitted(&self.plan, setup).installation.full_throttle();
        (full.point.engine_speed.rpm(), full.point.speed / KNOT)
    }
}

/// With what the readings are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Kit {
    /// Source word of engine speed.
    pub engine: &'static str,
    /// Both ways by GPS, else one run.
    pub both_ways: bool,
    /// Fuel metered.
    pub fuel: bool,
}

/// Instruments owners have.
pub const KITS: [Kit; 5] = [
    Kit { engine: "dashboard", both_ways: true, fuel: false },
    Kit { engine: "dashboard", both_ways: false, fuel: false },
    Kit { engine: "dashboard", both_ways: true, fuel: true },
    Kit { engine: "optical", both_ways: true, fuel: false },
    Kit { engine: "display", both_ways: true, fuel: true },
];

/// The sharpest.
pub const SHARP: Kit = Kit { engine: "optical", both_ways: true, fuel: true };

/// Text of a reading with round placeholders, so that its spreads are those a job file would get.
#[must_use]
pub fn placeholder(kit: Kit, full: bool, rpm: f64, knots: f64) -> String {
    let ways =
        if kit.both_ways { format!("[\"{knots:.2} kn\", \"{knots:.2} kn\"]") } else { format!("\"{knots:.2} kn\"") };
    let fuel = if kit.fuel { "fuel = \"10 L/h\"\n" } else { "" };
    format!(
        "[[reading]]\nfull_throttle = {full}\nengine_speed = \"{rpm:.0} rpm\"\nby = \"{}\"\nspeed = {ways}\nspeed_by = \"gps\"\n{fuel}",
        kit.engine
    )
}

/// Readings of a hidden boat: the first at full throttle, the rest between 55 and 95 % of its engine speed.
///
/// # Panics
/// When a placeholder cannot be read: a fault of this file.
#[must_use]
pub fn readings(hidden: &Hidden, job: &Job, count: usize, kit: Kit, stream: &mut Stream) -> Vec<Reading> {
    let full = hidden.boat.full.point;
    let (rpm, knots) = (full.engine_speed.rpm(), (full.speed / KNOT).max(0.5));
    let mut text = placeholder(kit, true, rpm, knots);
    for i in 1..count {
        let share = 0.95 - 0.40 * (i as f64 - 1.0 + stream.uniform()) / (count as f64 - 1.0).max(1.0);
        text.push_str(&placeholder(kit, false, share * rpm, share * knots));
    }
    let mut list = Job::read(&text).expect("placeholders are readable").job.readings;
    fill(hidden, job, &mut list, stream);
    // An owner notices a limiter more often than not.
    if hidden.governed() && stream.chance(0.7) {
        list[0].governed = Some(true);
    }
    list
}

/// Puts what the hidden boat shows, with the run's own scatter, in the place of the placeholders.
pub fn fill(hidden: &Hidden, job: &Job, list: &mut [Reading], stream: &mut Stream) {
    let asked = hidden.plan.asked(&Job { readings: list.to_vec(), ..job.clone() });
    let shown = hidden.shows(&asked);
    for (o, shown) in asked.observations.iter().zip(shown) {
        let value = (shown + o.scatter * stream.normal()).exp();
        put(&mut list[o.reading], o, value);
    }
    // The engine speed of a part-throttle reading is where the lever was put: it stays as shown.
    debug_assert!(asked.observations.iter().all(|o| o.what != What::EngineSpeed || o.at == At::FullThrottle));
}

/// Puts a value in the place of an observed one; its relative spread stays.
pub fn put(reading: &mut Reading, o: &Observation, value: f64) {
    let factor = value / o.value;
    let scale = |q: &mut Quantity| {
        q.low *= factor;
        q.middle *= factor;
        q.high *= factor;
    };
    match o.what {
        What::EngineSpeed => reading.engine_speed.iter_mut().for_each(scale),
        What::ShaftSpeed => reading.shaft_speed.iter_mut().for_each(scale),
        What::Speed => {
            reading.speed.iter_mut().for_each(scale);
            reading.speeds.iter_mut().for_each(scale);
        }
        What::Fuel => reading.fuel.iter_mut().for_each(scale),
    }
}

/// What became of one hidden boat.
#[derive(Clone, Debug)]
pub struct Trial {
    /// Template.
    pub title: String,
    /// Readings given.
    pub readings: usize,
    /// Instruments.
    pub kit: Kit,
    /// Effective boats left.
    pub effective: f64,
    /// The readings were explained.
    pub explained: bool,
    /// Engine speed after the change as it would be read on a day, rpm, and its band.
    pub engine_speed: (f64, Band),
    /// Boat speed after the change, kn.
    pub speed: (f64, Band),
    /// Difference of engine speed by the change, rpm.
    pub difference: (f64, Band),
}

/// Whether a truth lies in its band.
#[must_use]
pub fn inside(of: &(f64, Band)) -> bool {
    of.1.low <= of.0 && of.0 <= of.1.high
}

/// Boats from every template in turn; one to ten readings, or ten sharp ones; judged after a change of pitch.
#[must_use]
pub fn coverage(count: usize, seed: u64, options: &Options, sharp: bool) -> Vec<Trial> {
    let templates = templates();
    (0..count)
        .into_par_iter()
        .filter_map(|i| {
            let mut stream = Stream::of(seed, i as u64);
            let job = &templates[i % templates.len()];
            let hidden = Hidden::draw(job, &mut stream)?;
            let (readings_count, kit) =
                if sharp { (10, SHARP) } else { (1 + stream.pick(10), KITS[stream.pick(KITS.len())]) };
            let known = Job { readings: readings(&hidden, job, readings_count, kit, &mut stream), ..job.clone() };
            let marked = hidden.plan.marked_pitch;
            let share = [-0.15, -0.1, -0.06, 0.06, 0.1, 0.15][stream.pick(6)];
            let change = Change { pitch: Some(marked * (1.0 + share)), ..Change::default() };
            let told = compare(&known, &change, options).ok()?;
            let diameter = hidden.plan.dists[Latent::Diameter as usize].middle;
            let setup = Setup::of_change(&change, diameter, hidden.plan.knowledge.blades.0);
            let ((was, _), (rpm, knots)) = (hidden.full_throttle(&Setup::default()), hidden.full_throttle(&setup));
            let day = |scatter: f64, stream: &mut Stream| (scatter * stream.normal()).exp();
            Some(Trial {
                title: job.title.clone(),
                readings: readings_count,
                kit,
                effective: told.crowd.effective,
                explained: told.crowd.explained,
                engine_speed: (rpm * day(RUN_ENGINE_SPEED, &mut stream), told.after.full_throttle.engine_speed),
                speed: (knots * day(RUN_SPEED, &mut stream), told.after.full_throttle.speed),
                difference: (rpm - was, told.difference.engine_speed),
            })
        })
        .collect()
}
