//! Boats with a planted cause: is it named, and are the stated chances right?
//!
//! The cause is drawn by its chance before the readings ([`counsel::suspected`]); its size from spreads of our own,
//! moderately narrower than and off those the program suspects, so that it is not asked to find back its own numbers. What
//! the owner saw besides is drawn by the likelihoods stated here, not by the program's table.

use crate::synthetic::{Hidden, KITS, Stream, placeholder, put, templates};
use counsel::crowd::latent::Latent;
use counsel::crowd::plan::{Before, Plan, What};
use counsel::{Options, diagnose, suspected};
use job::assume::Dist;
use job::{Growth, Job, Onset, Propeller, Reading, State, Symptom};
use rayon::prelude::*;
use std::sync::Arc;

const KNOT: f64 = 1852.0 / 3600.0;

/// A new spread of a quantity.
#[derive(Clone, Copy)]
enum Put {
    /// As it stands, low, middle, high.
    To(f64, f64, f64),
    /// As factors on the middle.
    Times(f64, f64, f64),
}
use Put::{Times, To};

/// What a cause does to the boat; several rows: one of them, as likely each.
type Rows = &'static [&'static [(Latent, Put)]];

/// The cause's rows, and whether it may have come since an earlier reading.
fn planted(code: &str) -> (Rows, bool) {
    use Latent::*;
    match code {
        "growth-on-blades" => (
            &[&[
                (BladeRoughness, To(0.6e-3, 2.0e-3, 6e-3)),
                (ThrustError, To(-5.5, -3.2, -1.2)),
                (TorqueError, To(-1.5, 0.3, 2.0)),
            ]],
            true,
        ),
        "growth-on-hull" => (&[&[(HullRoughness, To(0.8e-3, 2.5e-3, 8e-3))]], true),
        "growth-on-both" => (
            &[&[
                (BladeRoughness, To(0.5e-3, 1.6e-3, 5e-3)),
                (HullRoughness, To(0.6e-3, 1.8e-3, 6e-3)),
                (ThrustError, To(-5.0, -2.6, -0.8)),
                (TorqueError, To(-1.5, 0.3, 2.0)),
            ]],
            true,
        ),
        "engine-down" => (&[&[(Condition, To(0.55, 0.72, 0.84))]], true),
        "stamp-wrong" => (&[&[(Pitch, Times(1.05, 1.08, 1.16))], &[(Pitch, Times(0.85, 0.92, 0.955))]], false),
        "blade-style" => (
            &[
                &[(AreaRatio, Times(1.1, 1.2, 1.3)), (TorqueError, To(1.0, 1.8, 2.8))],
                &[(AreaRatio, Times(0.7, 0.8, 0.9)), (TorqueError, To(-2.8, -1.8, -1.0))],
            ],
            false,
        ),
        "tachometer" => (&[&[(Tachometer, To(-6.5, -3.6, -2.4))], &[(Tachometer, To(2.4, 3.6, 6.5))]], true),
        "ratio" => (&[&[(Reduction, Times(1.08, 1.16, 1.32))], &[(Reduction, Times(0.75, 0.86, 0.93))]], false),
        "governor-low" => (&[&[(TopRatio, To(0.80, 0.90, 0.97))]], true),
        "overweight" => (&[&[(Weight, Times(1.12, 1.24, 1.42))]], true),
        "shallow-water" => (&[&[(HullErrorHump, To(1.8, 3.0, 4.8)), (HullErrorLow, To(0.7, 1.4, 2.5))]], true),
        "drag" => (&[&[(ShaftDrag, To(0.12, 0.22, 0.40))]], true),
        "blade-damaged" => (&[&[(ThrustError, To(-5.0, -2.8, -1.7)), (TorqueError, To(-2.0, 0.5, 2.5))]], true),
        "cavitation-ventilation" => (&[&[(CavitationHold, Times(0.3, 0.45, 0.68))]], true),
        // The speeds' error is put on the readings.
        "speeds" => (&[&[]], true),
        _ => (&[&[]], false),
    }
}

/// A symptom, how often it is seen with some causes, and with the rest.
type Seen = (Symptom, &'static [(&'static str, f64)], f64);

/// Chance that an owner reports a symptom: with these causes, and with any other. `estimate`.
const SEEN: &[Seen] = &[
    (
        Symptom::BlackSmoke,
        &[
            ("as-stated", 0.3),
            ("growth-on-blades", 0.3),
            ("growth-on-hull", 0.3),
            ("growth-on-both", 0.3),
            ("overweight", 0.28),
            ("tachometer", 0.1),
            ("governor-low", 0.08),
        ],
        0.2,
    ),
    (Symptom::GrowthOnBlades, &[("growth-on-blades", 0.45), ("growth-on-both", 0.4)], 0.04),
    (Symptom::GrowthOnBottom, &[("growth-on-hull", 0.4), ("growth-on-both", 0.4), ("growth-on-blades", 0.08)], 0.05),
    (Symptom::ExhaustCool, &[("engine-down", 0.2), ("governor-low", 0.1), ("as-stated", 0.02)], 0.05),
    (Symptom::ShaftStiff, &[("drag", 0.45)], 0.03),
    (Symptom::BladeBent, &[("blade-damaged", 0.6)], 0.03),
    (Symptom::ShaftRate, &[("blade-damaged", 0.4)], 0.08),
    (Symptom::Gravel, &[("cavitation-ventilation", 0.4)], 0.1),
];

/// How it began, by cause; what is left of 1 nobody knows. `estimate`.
fn onsets(code: &str) -> &'static [(Onset, f64)] {
    match code {
        "growth-on-blades" => &[(Onset::Sudden, 0.3), (Onset::Gradual, 0.4)],
        "growth-on-hull" | "growth-on-both" => &[(Onset::Sudden, 0.1), (Onset::Gradual, 0.4)],
        "engine-down" => &[(Onset::Sudden, 0.2), (Onset::Gradual, 0.2), (Onset::WithEngine, 0.08)],
        "drag" | "blade-damaged" => &[(Onset::Sudden, 0.55), (Onset::Gradual, 0.1)],
        "tachometer" => &[(Onset::WithInstruments, 0.2), (Onset::Sudden, 0.1), (Onset::Always, 0.2)],
        "governor-low" => &[(Onset::Sudden, 0.15), (Onset::WithEngine, 0.15)],
        "overweight" => &[(Onset::WithWeight, 0.25), (Onset::Gradual, 0.2)],
        "as-stated" | "stamp-wrong" | "blade-style" => {
            &[(Onset::WithPropeller, 0.25), (Onset::Always, 0.25), (Onset::WithEngine, 0.08)]
        }
        "ratio" => &[(Onset::WithEngine, 0.25), (Onset::Always, 0.25)],
        _ => &[(Onset::Sudden, 0.1), (Onset::Always, 0.2)],
    }
}

/// What was answered about one boat.
#[derive(Clone, Debug)]
pub struct Case {
    /// Template.
    pub title: String,
    /// The cause planted.
    pub truth: &'static str,
    /// Causes with their chances, likeliest first.
    pub told: Vec<(&'static str, f64)>,
    /// With an earlier reading in a clean state.
    pub earlier: bool,
    /// With symptoms and onset.
    pub seen: bool,
}

impl Case {
    /// Place of the truth among the causes told; 0 is first.
    #[must_use]
    pub fn place(&self) -> usize {
        self.told.iter().position(|(code, _)| *code == self.truth).unwrap_or(usize::MAX)
    }
}

/// Boats with one screw from every template in turn, a cause planted in each.
#[must_use]
pub fn cases(count: usize, seed: u64, options: &Options) -> Vec<Case> {
    let templates: Vec<Job> = templates().into_iter().filter(|job| job.boat.screws.unwrap_or(1) == 1).collect();
    (0..count)
        .into_par_iter()
        .filter_map(|i| case(&templates[i % templates.len()], &mut Stream::of(seed, i as u64), options))
        .collect()
}

fn case(template: &Job, stream: &mut Stream, options: &Options) -> Option<Case> {
    let (earlier, seen) = (stream.chance(0.5), stream.chance(0.5));
    let mut base = Plan::new(template).ok()?;
    // A boat with any other cause carries no shell: that would be two causes.
    for (latent, high) in [(Latent::BladeRoughness, 350e-6), (Latent::HullRoughness, 350e-6)] {
        let dist = &mut base.dists[latent as usize];
        if !base.origin[latent as usize].0 && dist.high > high {
            *dist = Dist::band(35e-6, 90e-6, high);
        }
    }
    let middle = Hidden::of(base.clone(), stream);
    let mut job = Job { readings: frame(&middle, earlier), ..template.clone() };
    let chances = suspected(&job);
    let mut target = stream.uniform();
    let truth = chances.iter().find(|(_, p)| {
        target -= p;
        target <= 0.0
    })?;
    let truth = truth.0;
    let (rows, came_since) = planted(truth);
    let mut plan = base.clone();
    let row = rows[stream.pick(rows.len())];
    for (latent, put) in row {
        let dist = &mut plan.dists[*latent as usize];
        *dist = match *put {
            To(low, middle, high) => Dist::band(low, middle, high),
            // Length over the cube root of volume falls with the cube root of the weight.
            Times(low, middle, high) if *latent == Latent::Weight && base.knowledge.weight_is_ratio => {
                spread(dist, high.cbrt().recip(), middle.cbrt().recip(), low.cbrt().recip())
            }
            Times(low, middle, high) => spread(dist, low, middle, high),
        };
    }
    if came_since {
        // A thing that breaks was as good as any before; damage adds to what the method gets wrong of this boat.
        let method = |l: &Latent| matches!(l, Latent::ThrustError | Latent::TorqueError);
        let own = row.first().map(|(latent, _)| *latent).filter(|l| !method(l));
        plan.before = Some(Arc::new(Before { plan: base, own }));
    }
    let hidden = Hidden::of(plan, stream);
    job.readings = frame(&hidden, earlier);
    let false_speeds = if truth == "speeds" {
        let size = (0.13 + 0.04 * stream.normal()).max(0.05);
        if stream.chance(0.5) { size } else { -size }
    } else {
        0.0
    };
    let asked = hidden.plan.asked(&job);
    for (o, shown) in asked.observations.iter().zip(hidden.shows(&asked)) {
        let off = if o.what == What::Speed && o.setup == 0 { false_speeds } else { 0.0 };
        put(&mut job.readings[o.reading], o, (shown + off + o.scatter * stream.normal()).exp());
    }
    if seen {
        for (symptom, with, without) in SEEN {
            let p = with.iter().find(|(code, _)| *code == truth).map_or(*without, |(_, p)| *p);
            if stream.chance(p) {
                job.call.symptoms.push(*symptom);
            }
        }
        let mut target = stream.uniform();
        job.call.onset = onsets(truth)
            .iter()
            .find(|(_, p)| {
                target -= p;
                target <= 0.0
            })
            .map(|(onset, _)| *onset);
    }
    noticed(&hidden, truth, &mut job, stream);
    let told = diagnose(&job, options).ok()?;
    let told = told.causes.iter().map(|c| (c.code, c.chance)).collect();
    Some(Case { title: job.title, truth, told, earlier, seen })
}

/// What an owner notes with a reading: an engine that hangs on its governor more often than not, the depth half of the
/// time. Chances are an `estimate`, as everything the owner sees here.
fn noticed(hidden: &Hidden, truth: &str, job: &mut Job, stream: &mut Stream) {
    let governed = hidden.governed() && stream.chance(0.7);
    let length = hidden.boat.form.length;
    let share = if truth == "shallow-water" { 0.15 + 0.25 * stream.uniform() } else { 0.3 + 2.7 * stream.uniform() };
    let depth = stream.chance(0.5).then(|| quantity(&format!("{:.1} m", (share * length).max(1.0))));
    for reading in job.readings.iter_mut().filter(|r| r.state == State::default()) {
        reading.governed = (governed && reading.full_throttle).then_some(true);
        reading.depth.clone_from(&depth);
    }
}

/// A depth as a job file would give it.
fn quantity(text: &str) -> job::Quantity {
    let text = format!("[[reading]]\ndepth = \"{text}\"\nengine_speed = \"1000 rpm\"\n");
    let depth = Job::read(&text).ok().and_then(|read| read.job.readings.into_iter().next()).and_then(|r| r.depth);
    depth.expect("a depth in metres is readable")
}

/// A spread moved by a factor that has one itself; both together, as shares of the middle.
fn spread(dist: &Dist, low: f64, middle: f64, high: f64) -> Dist {
    let m = dist.middle * middle;
    let below = (1.0 - dist.low / dist.middle).hypot(1.0 - low / middle).min(0.9);
    let above = (dist.high / dist.middle - 1.0).hypot(high / middle - 1.0);
    Dist::band(m * (1.0 - below), m, m * (1.0 + above))
}

/// The readings an owner has, with placeholders: full throttle by dashboard and GPS both ways, one at part throttle, and
/// perhaps an earlier one at full throttle with bottom and blades clean.
fn frame(hidden: &Hidden, earlier: bool) -> Vec<Reading> {
    let full = hidden.boat.full.point;
    let (rpm, knots) = (full.engine_speed.rpm(), (full.speed / KNOT).max(0.5));
    let mut text = placeholder(KITS[0], true, rpm, knots);
    text.push_str(&placeholder(KITS[0], false, 0.72 * rpm, 0.8 * knots));
    if earlier {
        text.push_str(&placeholder(KITS[0], true, rpm, knots));
    }
    let mut list = Job::read(&text).map(|read| read.job.readings).unwrap_or_default();
    if let Some(reading) = list.get_mut(2) {
        reading.state = State {
            growth: Some(Growth::Clean),
            propeller: Some(Propeller { growth: Some(Growth::Clean), ..Propeller::default() }),
            ..State::default()
        };
    }
    list
}

/// One row of the reliability table.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Decile {
    /// Causes told with a chance in this tenth.
    pub told: usize,
    /// Their mean chance.
    pub stated: f64,
    /// How many of them were true.
    pub true_ones: usize,
}

/// Stated chances against what was true, by tenths.
#[must_use]
pub fn reliability(cases: &[Case]) -> [Decile; 10] {
    let mut rows = [Decile::default(); 10];
    for case in cases {
        for (code, chance) in &case.told {
            let row = &mut rows[((10.0 * chance) as usize).min(9)];
            row.told += 1;
            row.stated += chance;
            row.true_ones += usize::from(*code == case.truth);
        }
    }
    for row in &mut rows {
        row.stated /= row.told.max(1) as f64;
    }
    rows
}
