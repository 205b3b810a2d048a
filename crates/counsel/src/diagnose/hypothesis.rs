//! Suspected causes as changes to the crowd.

use crate::crowd::latent::Latent;
use crate::crowd::plan::{Before, Observation, Plan, What};
use crate::report::Cost;
use job::assume::{BAND_Z, Dist};
use job::spread::DASHBOARD;
use std::sync::Arc;

/// A cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) enum Cause {
    /// The boat is as stated: the propeller itself is too much, right, or too little.
    AsStated,
    Stamp,
    Style,
    Tachometer,
    Ratio,
    EngineDown,
    Governor,
    GrowthBlades,
    GrowthHull,
    GrowthBoth,
    Overweight,
    Shallow,
    Speeds,
    Drag,
    BladeDamaged,
    Cavitation,
    Mismatch,
}

/// What a person needs to know of a cause.
pub(super) struct About {
    pub code: &'static str,
    pub words: &'static str,
    pub remedy: &'static str,
    pub cost: Cost,
    /// Share of complaints before anything is known of this one; ours, after the cases collected from public reports
    /// (`common practice, no source`): growth and the engine lead, a wrong stamp comes before a wrong ratio.
    pub base: f64,
    /// May have come since an earlier reading in another state; else it was always so.
    pub came_since: bool,
}

impl Cause {
    pub const ALL: [Cause; 17] = [
        Cause::AsStated,
        Cause::GrowthBlades,
        Cause::GrowthHull,
        Cause::GrowthBoth,
        Cause::EngineDown,
        Cause::Stamp,
        Cause::Style,
        Cause::Tachometer,
        Cause::Ratio,
        Cause::Governor,
        Cause::Overweight,
        Cause::Shallow,
        Cause::Speeds,
        Cause::Drag,
        Cause::BladeDamaged,
        Cause::Cavitation,
        Cause::Mismatch,
    ];

    pub fn about(self) -> About {
        let about = |code, words, remedy, cost, base, came_since| About { code, words, remedy, cost, base, came_since };
        match self {
            Cause::AsStated => about(
                "as-stated",
                "everything is as stated",
                "change the propeller as `choose` lists it, the cheapest step first",
                Cost::Large,
                0.30,
                false,
            ),
            Cause::GrowthBlades => about(
                "growth-on-blades",
                "growth on the blades",
                "scrape and polish the blades, run again the same day",
                Cost::Small,
                0.10,
                true,
            ),
            Cause::GrowthHull => about(
                "growth-on-hull",
                "growth on the bottom",
                "scrub the bottom, run again the same day",
                Cost::Middling,
                0.05,
                true,
            ),
            Cause::GrowthBoth => about(
                "growth-on-both",
                "growth on bottom and blades together",
                "scrape the blades and scrub the bottom, run again the same day",
                Cost::Middling,
                0.09,
                true,
            ),
            Cause::EngineDown => about(
                "engine-down",
                "the engine gives less than its rating, or the throttle does not open fully",
                "check full travel of the lever at the pump, then filters, air, exhaust back-pressure, injectors, boost",
                Cost::Middling,
                0.12,
                true,
            ),
            Cause::Stamp => about(
                "stamp-wrong",
                "the pitch is not what is stamped",
                "have every blade measured; true up or re-pitch to what is needed",
                Cost::Large,
                0.08,
                false,
            ),
            Cause::Style => about(
                "blade-style",
                "blade area, sections or cup are not as thought",
                "trace a blade, lay a straight edge on face and trailing edge; state style and area when ordering",
                Cost::Large,
                0.07,
                false,
            ),
            Cause::Tachometer => about(
                "tachometer",
                "the tachometer is out",
                "prove it with an optical tachometer on the crank pulley; correct every earlier reading",
                Cost::Small,
                0.09,
                true,
            ),
            Cause::Ratio => about(
                "ratio",
                "the gearbox ratio is not as plated",
                "read engine and shaft speed together with an optical tachometer",
                Cost::Small,
                0.03,
                false,
            ),
            Cause::Governor => about(
                "governor-low",
                "the governor or stop screw is set low",
                "read the no-load speed; have the setting restored by the maker's people",
                Cost::Small,
                0.02,
                true,
            ),
            Cause::Overweight => about(
                "overweight",
                "the boat is heavier than thought",
                "weigh her at the next lift; take out what is not needed, then judge again at the true weight",
                Cost::Large,
                0.05,
                true,
            ),
            Cause::Shallow => {
                about("shallow-water", "the water was shallow", "repeat the run in deep water", Cost::Free, 0.02, true)
            }
            Cause::Speeds => about(
                "speeds",
                "current or the log falsified the speeds",
                "repeat both ways by GPS at one throttle setting",
                Cost::Free,
                0.04,
                true,
            ),
            Cause::Drag => about(
                "drag",
                "bearing, gland or a rope drags on the shaft",
                "engine stopped and key out: turn the shaft by hand, feel the gland, have a diver look",
                Cost::Small,
                0.02,
                true,
            ),
            Cause::BladeDamaged => about(
                "blade-damaged",
                "a blade is bent, short or gone",
                "look at every blade, compare tip radius and pitch blade by blade; do not run on a cracked blade",
                Cost::Middling,
                0.03,
                true,
            ),
            Cause::Cavitation => about(
                "cavitation-ventilation",
                "the blades cavitate or draw air",
                "more area or depth, trim and tabs, fair what stands ahead of the propeller",
                Cost::Large,
                0.03,
                true,
            ),
            Cause::Mismatch => about(
                "mismatch",
                "the two propellers or engines of the pair differ",
                "swap the tachometers, then compare the propellers blade by blade, then the engines",
                Cost::Middling,
                0.01,
                true,
            ),
        }
    }
}

/// One way a cause can be: it may have a heavier and a lighter side.
pub(super) struct Variant {
    pub cause: Cause,
    /// Share of the cause's chance beforehand.
    pub share: f64,
    /// The quantity that tells what would have to be true.
    pub tells: Option<Latent>,
    change: Vec<(Latent, Change)>,
    /// Lasting error put on every speed read, sd of the logarithm.
    speed_bias: f64,
}

enum Change {
    /// A new spread.
    Spread(Dist),
    /// The old one times a factor, with a spread of its own.
    Times(f64, f64, f64),
}

impl Variant {
    /// The plan under this suspicion.
    pub fn apply(&self, base: &Plan) -> Plan {
        let base = &without_growth(base);
        let mut plan = base.clone();
        for (latent, change) in &self.change {
            let dist = &mut plan.dists[*latent as usize];
            *dist = match change {
                Change::Spread(spread) => *spread,
                Change::Times(low, middle, high) => {
                    let m = dist.middle * middle;
                    // Both spreads together, as shares of the middle.
                    let below = (1.0 - dist.low / dist.middle).hypot(1.0 - low / middle);
                    let above = (dist.high / dist.middle - 1.0).hypot(high / middle - 1.0);
                    Dist::band(m * (1.0 - below.min(0.9)), m, m * (1.0 + above))
                }
            };
        }
        if self.speed_bias > 0.0 {
            for o in plan.observations.iter_mut().filter(|o| o.what == What::Speed) {
                o.bias = o.bias.max(self.speed_bias);
            }
        }
        if self.cause.about().came_since {
            // The method's own errors stay the boat's: damage adds to them.
            let method = |l: &Latent| matches!(l, Latent::ThrustError | Latent::TorqueError);
            let own = self.change.first().map(|(latent, _)| *latent).filter(|l| !method(l));
            plan.before = Some(Arc::new(Before { plan: base.clone(), own }));
        }
        plan
    }
}

/// The plan with bottom and blades no worse than slime where nobody stated them: shell is a cause of its own here, and a
/// boat "as stated" that hides it in what is unknown would take its chance away.
pub(super) fn without_growth(base: &Plan) -> Plan {
    let mut plan = base.clone();
    for (latent, low, middle, high) in
        [(Latent::BladeRoughness, 30e-6, 90e-6, 400e-6), (Latent::HullRoughness, 35e-6, 100e-6, 400e-6)]
    {
        let dist = &mut plan.dists[latent as usize];
        if !plan.origin[latent as usize].0 && dist.high > high {
            *dist = Dist::band(low, middle, high);
        }
    }
    plan
}

/// Everything that can be suspected of this boat.
pub(super) fn variants(plan: &Plan) -> Vec<Variant> {
    let one = |cause, share, tells, change| Variant { cause, share, tells, change, speed_bias: 0.0 };
    let spread = |low, middle, high| Change::Spread(Dist::band(low, middle, high));
    let z = |low: f64, middle: f64, high: f64| Change::Spread(Dist::band(low, middle, high));
    // A wrong tachometer is out by so much of what it shows, whatever is expected of a right one: a diesel's dashboard has
    // the wider spread of its own (never the narrower of an optical one, which is not suspected of this).
    let usual = 0.9 * DASHBOARD / BAND_Z;
    let lasting = |o: &Observation| if o.what == What::EngineSpeed { o.bias } else { 0.0 };
    let units = usual / plan.observations.iter().map(lasting).fold(usual, f64::max);
    let mut list = vec![
        one(Cause::AsStated, 1.0, Some(Latent::Pitch), vec![]),
        one(
            Cause::GrowthBlades,
            1.0,
            Some(Latent::BladeRoughness),
            vec![
                (Latent::BladeRoughness, spread(0.7e-3, 2.5e-3, 9e-3)),
                // Shell spoils the lift of the sections besides; the roughness formula knows only drag. Estimate, from boats
                // that lost two fifths of their speed with a quarter of their rpm.
                (Latent::ThrustError, z(-7.0, -3.5, -0.8)),
                (Latent::TorqueError, z(-2.0, 0.0, 2.5)),
            ],
        ),
        one(
            Cause::GrowthHull,
            1.0,
            Some(Latent::HullRoughness),
            vec![(Latent::HullRoughness, spread(0.8e-3, 3e-3, 12e-3))],
        ),
        // What grows on both is no worse on either than where it grows alone.
        one(
            Cause::GrowthBoth,
            1.0,
            Some(Latent::BladeRoughness),
            vec![
                (Latent::BladeRoughness, spread(0.5e-3, 1.8e-3, 7e-3)),
                (Latent::HullRoughness, spread(0.5e-3, 2e-3, 9e-3)),
                (Latent::ThrustError, z(-6.0, -2.8, -0.4)),
                (Latent::TorqueError, z(-2.0, 0.0, 2.5)),
            ],
        ),
        one(Cause::EngineDown, 1.0, Some(Latent::Condition), vec![(Latent::Condition, spread(0.5, 0.70, 0.86))]),
        one(Cause::Stamp, 0.5, Some(Latent::Pitch), vec![(Latent::Pitch, Change::Times(1.04, 1.09, 1.20))]),
        one(Cause::Stamp, 0.5, Some(Latent::Pitch), vec![(Latent::Pitch, Change::Times(0.82, 0.91, 0.96))]),
        one(
            Cause::Style,
            0.5,
            Some(Latent::AreaRatio),
            vec![(Latent::AreaRatio, Change::Times(1.05, 1.2, 1.4)), (Latent::TorqueError, z(0.8, 2.0, 3.2))],
        ),
        one(
            Cause::Style,
            0.5,
            Some(Latent::AreaRatio),
            vec![(Latent::AreaRatio, Change::Times(0.65, 0.8, 0.95)), (Latent::TorqueError, z(-3.2, -2.0, -0.8))],
        ),
        // In units of the instrument's own lasting error: 6 to 22 % of what is shown.
        one(
            Cause::Tachometer,
            0.5,
            Some(Latent::Tachometer),
            vec![(Latent::Tachometer, z(-8.0 * units, -4.0 * units, -2.2 * units))],
        ),
        one(
            Cause::Tachometer,
            0.5,
            Some(Latent::Tachometer),
            vec![(Latent::Tachometer, z(2.2 * units, 4.0 * units, 8.0 * units))],
        ),
        one(Cause::Ratio, 0.5, Some(Latent::Reduction), vec![(Latent::Reduction, Change::Times(1.06, 1.18, 1.40))]),
        one(Cause::Ratio, 0.5, Some(Latent::Reduction), vec![(Latent::Reduction, Change::Times(0.70, 0.85, 0.95))]),
        one(Cause::Governor, 1.0, Some(Latent::TopRatio), vec![(Latent::TopRatio, spread(0.78, 0.90, 0.99))]),
        one(Cause::Drag, 1.0, Some(Latent::ShaftDrag), vec![(Latent::ShaftDrag, spread(0.10, 0.25, 0.5))]),
        one(
            Cause::BladeDamaged,
            1.0,
            Some(Latent::ThrustError),
            vec![(Latent::ThrustError, z(-6.0, -3.0, -1.5)), (Latent::TorqueError, z(-2.5, 0.0, 3.0))],
        ),
        one(
            Cause::Cavitation,
            1.0,
            Some(Latent::CavitationHold),
            vec![(Latent::CavitationHold, Change::Times(0.25, 0.45, 0.75))],
        ),
        one(
            Cause::Shallow,
            1.0,
            None,
            vec![(Latent::HullErrorHump, z(1.5, 3.0, 6.0)), (Latent::HullErrorLow, z(0.5, 1.5, 3.0))],
        ),
        one(Cause::Mismatch, 1.0, None, vec![]),
    ];
    let heavier = if plan.knowledge.weight_is_ratio {
        // The drawn quantity is length over the cube root of volume.
        Change::Times(0.87, 0.93, 0.97)
    } else {
        Change::Times(1.10, 1.25, 1.5)
    };
    list.push(one(Cause::Overweight, 1.0, Some(Latent::Weight), vec![(Latent::Weight, heavier)]));
    for (low, middle, high) in [(-2.4, -1.4, -0.8), (0.8, 1.4, 2.4)] {
        list.push(Variant {
            cause: Cause::Speeds,
            share: 0.5,
            tells: None,
            change: vec![(Latent::SpeedInstrument, z(low, middle, high))],
            speed_bias: 0.09,
        });
    }
    list
}
