//! Where the words of a job meet the physics: one place that turns what was said into what `hydro` computes with.

use super::definite::Hull;
use super::latent::Latent;
use super::plan::{Plan, Row};
use super::setup::Setup;
use hydro::drive::{DeclaredAt, Drive, Gear};
use hydro::engine::{self, Engine, Top, derating};
use hydro::hull::shape::{self, Shape};
use hydro::hull::{Curve, Form, roughness, total};
use hydro::note::Noted;
use hydro::openwater::{Curves, Screw, Spread, cup as cups};
use hydro::speed::EngineSpeed;
use hydro::stern::{self, typical};
use hydro::water::{Water, air};
use job::assume::{Dist, Knowledge, Known};
use job::{Arrangement, EngineKind, Growth, Job, Kind, Rating};

/// Whether the propeller sits on an outboard's or sterndrive's leg.
#[must_use]
pub fn is_leg(arrangement: Arrangement) -> bool {
    matches!(arrangement, Arrangement::Outboard | Arrangement::Sterndrive)
}

/// Kind of hull.
#[must_use]
pub fn hull_kind(kind: Kind) -> hydro::hull::Kind {
    match kind {
        Kind::Displacement => hydro::hull::Kind::Displacement,
        Kind::Sailing => hydro::hull::Kind::Sailing,
        Kind::SemiDisplacement => hydro::hull::Kind::SemiDisplacement,
        Kind::Planing => hydro::hull::Kind::Planing,
    }
}

fn arrangement(arrangement: Arrangement) -> stern::Arrangement {
    match arrangement {
        Arrangement::Aperture => stern::Arrangement::Aperture,
        Arrangement::FinKeelStrut => stern::Arrangement::FinKeelStrut,
        Arrangement::Skeg => stern::Arrangement::Skeg,
        Arrangement::Saildrive => stern::Arrangement::Saildrive,
        Arrangement::Outboard => stern::Arrangement::Outboard,
        Arrangement::Sterndrive => stern::Arrangement::Sterndrive,
        Arrangement::InclinedShaft => stern::Arrangement::InclinedShaft,
        Arrangement::Tunnel => stern::Arrangement::Tunnel,
    }
}

/// Kind of engine.
#[must_use]
pub fn engine_kind(kind: EngineKind) -> engine::Kind {
    match kind {
        EngineKind::NaturalDiesel => engine::Kind::NaturalDiesel,
        EngineKind::TurboDiesel => engine::Kind::TurboDiesel,
        EngineKind::Petrol => engine::Kind::Petrol,
        EngineKind::Outboard => engine::Kind::Outboard,
        EngineKind::Electric => engine::Kind::Electric,
    }
}

/// Duty rating.
#[must_use]
pub fn rating(rating: Rating) -> engine::Rating {
    match rating {
        Rating::Pleasure => engine::Rating::Pleasure,
        Rating::LightDuty => engine::Rating::LightDuty,
        Rating::MediumDuty => engine::Rating::MediumDuty,
        Rating::Continuous => engine::Rating::Continuous,
    }
}

/// Sand roughness of the bottom, m: by grade, else by time afloat (s), else unknown (`dry`: kept ashore between trips).
#[must_use]
pub fn hull_roughness(growth: Option<Growth>, afloat: Option<f64>, celsius: f64, dry: bool) -> Known {
    if let Some(growth) = growth {
        let grade = match growth {
            Growth::Clean => roughness::Growth::Painted,
            Growth::LightSlime => roughness::Growth::LightSlime,
            Growth::HeavySlime => roughness::Growth::HeavySlime,
            Growth::SmallShell => roughness::Growth::SmallShellOrWeed,
            Growth::MediumShell => roughness::Growth::MediumShell,
            Growth::HeavyShell => roughness::Growth::HeavyShell,
        };
        // About half-way to the neighbouring grades; as-applied paint on a boat is rougher than on a ship's panel.
        let ks = grade.roughness();
        let (low, high) = if growth == Growth::Clean { (0.8 * ks, 3.0 * ks) } else { (ks / 1.8, ks * 1.8) };
        let mut known = Known::assumed(low, ks, high, "grade of growth (Schultz 2007, from memory)");
        known.stated = true;
        return known;
    }
    if let Some(seconds) = afloat {
        let span = roughness::growth_after(seconds / (365.25 / 12.0 * 86_400.0), celsius);
        let mut known =
            Known::assumed(span.low, span.middle, span.high, "time since the last scrub; common practice, no source");
        known.stated = true;
        return known;
    }
    if dry {
        return Known::assumed(
            12e-6,
            30e-6,
            120e-6,
            "state of the bottom unknown; boats with outboards are mostly kept dry or clean",
        );
    }
    Known::assumed(35e-6, 120e-6, 1000e-6, "state of the bottom unknown: scrubbed yesterday or half a year ago")
}

/// Roughness height of the blades, m (`dry`: kept ashore between trips).
#[must_use]
pub fn blade_roughness(growth: Option<Growth>, dry: bool) -> Known {
    use roughness::BladeGrade::{Clean, Shell, Slime, Worn};
    let around = |kp: f64, by: f64, source: &str| Known::assumed(kp / by, kp, kp * by, source);
    let mut known = match growth {
        Some(Growth::Clean) => {
            let kp = roughness::blade_roughness(Clean);
            Known::assumed(0.8 * kp, kp, 2.5 * kp, "clean blades (ITTC 1978)")
        }
        Some(Growth::LightSlime) => around(roughness::blade_roughness(Worn), 2.0, "light slime on the blades"),
        Some(Growth::HeavySlime) => around(roughness::blade_roughness(Slime), 2.0, "slime on the blades"),
        Some(Growth::SmallShell) => around(roughness::blade_roughness(Shell), 2.0, "small shell on the blades"),
        Some(Growth::MediumShell) => {
            around(3.0 * roughness::blade_roughness(Shell), 2.0, "shell on the blades; estimate")
        }
        Some(Growth::HeavyShell) => around(7.0 * roughness::blade_roughness(Shell), 1.6, "heavy shell; estimate"),
        None if dry => Known::assumed(25e-6, 50e-6, 200e-6, "state of the blades unknown, boat mostly kept dry"),
        None => Known::assumed(
            30e-6,
            130e-6,
            1600e-6,
            "state of the blades unknown: clean to shell (sister boats scatter ± 14 % in rpm)",
        ),
    };
    known.stated = growth.is_some();
    known
}

/// Roughness height of blades that were cleaned with the bottom, m: what grows on the bottom in that time grows on them.
/// Moving blades shed some of it: half the bottom's in the middle, clean to as much as the bottom's (`estimate`).
#[must_use]
pub fn blade_roughness_after(seconds: f64, celsius: f64) -> Known {
    let span = roughness::growth_after(seconds / (365.25 / 12.0 * 86_400.0), celsius);
    let clean = roughness::blade_roughness(roughness::BladeGrade::Clean);
    let middle = (0.5 * span.middle).max(1.3 * clean);
    let mut known = Known::assumed(
        clean,
        middle,
        span.high.max(2.0 * middle),
        "time since the last scrub, blades with the bottom; estimate",
    );
    known.stated = true;
    known
}

/// Cup as a fraction of pitch.
#[must_use]
pub fn cup(cup: Option<job::Cup>, leg: bool) -> Known {
    let Some(cup) = cup else {
        return if leg {
            Known::assumed(0.0, 0.025, 0.06, "cup unknown: many propellers on legs carry some; common practice")
        } else {
            Known::assumed(0.0, 0.005, 0.025, "no cup spoken of")
        };
    };
    let guess = match cup {
        job::Cup::None => cups::Cup::None,
        job::Cup::Light => cups::Cup::Light,
        job::Cup::Medium => cups::Cup::Medium,
        job::Cup::Heavy => cups::Cup::Heavy,
    }
    .fraction();
    let mut known = Known::assumed(guess.low, guess.middle, guess.high, "cup as stated; its worth is common practice");
    known.stated = true;
    known
}

/// Spreads of what only the physics knows.
pub(super) fn spreads(job: &Job, k: &Knowledge, set: &mut impl FnMut(Latent, Dist, bool, &str)) {
    let leg = is_leg(k.arrangement.0);
    let dry = k.arrangement.0 == Arrangement::Outboard;
    let celsius = k.water_temperature.dist.middle;
    let mut known = |latent, known: Known| set(latent, known.dist, known.stated, &known.source);
    known(
        Latent::HullRoughness,
        hull_roughness(job.boat.growth, job.boat.since_scrub.as_ref().map(|q| q.middle), celsius, dry),
    );
    known(
        Latent::BladeRoughness,
        // A bottom scrubbed on a known day had its blades cleaned on that day too (common practice, no source).
        match (job.propeller.growth, job.boat.growth, &job.boat.since_scrub) {
            (None, None, Some(time)) if !dry => blade_roughness_after(time.middle, celsius),
            (growth, ..) => blade_roughness(growth, dry),
        },
    );
    known(Latent::Cup, cup(job.propeller.cup, leg));
    // Blades made for legs (cup, pitch rising aft) run cavitating by design. With the limits of the flat-faced series their
    // overall efficiency would fall far below the 0.55 to 0.65 outboards are known for (working value, from memory).
    let hold = if leg {
        Known::assumed(
            1.4,
            2.0,
            3.0,
            "blades made for legs hold longer than flat-faced ones; common practice, no source",
        )
    } else {
        Known::assumed(0.85, 1.05, 1.35, "limits of the flat-faced series and their scatter; estimate")
    };
    known(Latent::CavitationHold, hold);
    let block = (k.prismatic.dist.middle * k.midship.dist.middle).clamp(0.2, 0.9);
    let usual = typical::typical(arrangement(k.arrangement.0), k.screws.0, block);
    let mut band = |latent, (low, middle, high): (f64, f64, f64), source: &str| {
        set(latent, Dist::band(low, middle, high), false, source);
    };
    band(Latent::Wake, usual.wake, "usual for the arrangement");
    band(Latent::ThrustDeduction, usual.thrust_deduction, "usual for the arrangement");
    band(Latent::RelativeRotative, usual.relative_rotative, "usual for the arrangement");
    band(
        Latent::Consumption,
        engine::fuel::best_consumption(engine_kind(k.engine_kind.0)),
        "usual for the kind of engine",
    );
}

/// The water of a boat.
#[must_use]
pub fn water(fresh: bool, celsius: f64) -> Noted<Water> {
    if fresh { Water::fresh(celsius) } else { Water::sea(celsius) }
}

/// Atmosphere and water above the shaft, Pa.
#[must_use]
pub fn head(water: &Water, immersion: f64, altitude: f64) -> f64 {
    water.static_pressure(immersion, air::standard_pressure(altitude))
}

/// The maker's full-throttle curve of a job.
#[must_use]
pub fn maker_curve(job: &Job, k: &Knowledge) -> Option<engine::FullThrottleCurve> {
    let points: Vec<(EngineSpeed, f64)> =
        job.engine.curve.iter().map(|(n, p)| (EngineSpeed(n.middle), p.middle)).collect();
    let rated = EngineSpeed(k.rated_speed.dist.middle);
    engine::maker::curve(engine_kind(k.engine_kind.0), k.power.dist.middle, rated, &points).map(|curve| curve.value)
}

/// Error of the series at the propeller fitted.
#[must_use]
pub fn series_spread(k: &Knowledge, ducted: bool) -> Spread {
    let diameter = k.diameter.dist.middle;
    Screw {
        diameter,
        pitch_ratio: k.pitch.as_ref().map_or(0.7, |p| p.dist.middle / diameter),
        expanded_area_ratio: k.area_ratio.dist.middle,
        blades: k.blades.0,
        flat_share: k.flat_share.dist.middle,
        ducted,
        cup: 0.0,
        blade_roughness: 30e-6,
    }
    .spread()
    .with_stock()
}

/// A propeller from stock is not the series: outline, sections, thickness. Engine makers allow 5 % on the power a good new
/// propeller absorbs (Caterpillar LEGM4725, 2004); a little more is taken as one standard deviation, since style and
/// casting are seldom known (`estimate`).
const STOCK: f64 = 0.06;

trait Stock {
    fn with_stock(self) -> Self;
}

impl Stock for Spread {
    fn with_stock(self) -> Spread {
        Spread { thrust: self.thrust.hypot(0.8 * STOCK), torque: self.torque.hypot(STOCK), ..self }
    }
}

/// The engine of a boat on the day.
#[must_use]
pub fn engine(plan: &Plan, row: &Row) -> Engine {
    let k = &plan.knowledge;
    let get = |latent: Latent| row[latent as usize];
    let kind = engine_kind(k.engine_kind.0);
    let air = derating::Intake {
        celsius: get(Latent::AirTemperature),
        pressure: air::standard_pressure(k.altitude),
        ..derating::Intake::REFERENCE
    };
    let day = derating::factor(kind, &air, derating::USUAL_ENGINE_FACTOR).value;
    let power = get(Latent::Power) * get(Latent::Condition) * day;
    let rated = EngineSpeed(get(Latent::RatedSpeed));
    let ratio = get(Latent::TopRatio);
    let top = EngineSpeed(rated.0 * ratio);
    // A governor set below rated speed holds the engine there like a limiter.
    let top = if kind.governed() && ratio > 1.001 { Top::Governor { no_load: top } } else { Top::Limiter { at: top } };
    let mut engine = Engine::usual(kind, power, rated, top);
    engine.curve = plan.maker_curve.unwrap_or_else(|| engine::shape::usual_curve(kind, get(Latent::EngineShape)));
    engine.fuel = engine::fuel::Map::new(kind, get(Latent::Consumption));
    engine
}

/// Gear and shaft of a boat.
#[must_use]
pub fn drive(plan: &Plan, row: &Row) -> Drive {
    let k = &plan.knowledge;
    let gear = match k.arrangement.0 {
        Arrangement::Outboard | Arrangement::Sterndrive | Arrangement::Saildrive => Gear::Leg,
        _ if (row[Latent::Reduction as usize] - 1.0).abs() < 0.01 => Gear::Direct,
        _ => Gear::Reduction,
    };
    let declared = match plan.declared_at {
        Some(job::PowerAt::PropellerShaft) => DeclaredAt::PropellerShaft,
        Some(job::PowerAt::Crankshaft) => DeclaredAt::Crankshaft,
        // Outboards are declared at the propeller shaft (ISO 8665); others mostly at the crankshaft.
        None if k.engine_kind.0 == EngineKind::Outboard => DeclaredAt::PropellerShaft,
        None => DeclaredAt::Crankshaft,
    };
    let bearings = if gear == Gear::Leg { 0 } else { 1 };
    Drive {
        reduction: row[Latent::Reduction as usize],
        efficiency: hydro::drive::efficiency(gear, declared, bearings, row[Latent::DriveLoss as usize])
            * (1.0 - row[Latent::ShaftDrag as usize].clamp(0.0, 0.9)),
    }
}

/// Open water of a propeller behind this boat, the series' own error included.
#[must_use]
pub fn open_water(screw: &Screw, boat: &Hull, plan: &Plan, setup: &Setup) -> Noted<Curves> {
    let reduction = setup.reduction.unwrap_or(boat.row[Latent::Reduction as usize]);
    let n = boat.row[Latent::RatedSpeed as usize] / reduction;
    // Speed of advance at a third of slip: enough for the blade Reynolds number, which counts by its logarithm.
    let va = 0.65 * n * screw.pitch_ratio * screw.diameter;
    let mut curves = screw.curves(screw.reynolds(va, n, boat.water.viscosity));
    let thrust = (plan.series.thrust * boat.row[Latent::ThrustError as usize]).exp();
    let torque = (plan.series.torque * boat.row[Latent::TorqueError as usize]).exp();
    curves.value = curves.value.scaled(thrust, torque);
    curves
}

/// Resistance of a boat over speed, the method's own error included.
#[must_use]
pub fn curve(plan: &Plan, form: &Form, water: &Water, row: &Row) -> Noted<Curve> {
    let get = |latent: Latent| row[latent as usize];
    let kind = hull_kind(plan.knowledge.kind.0);
    let error = [get(Latent::HullErrorLow), get(Latent::HullErrorHump), get(Latent::HullErrorHigh)];
    let top = top_speed(plan, form, row);
    if let Some(towed) = &plan.towed {
        let mut curve = towed.curve(top);
        // A towed curve is off by a level for all speeds: a spring balance's scale; `estimate`.
        curve.value = curve.value.map(|_, r| r * (0.04 * error[1]).exp());
        return curve;
    }
    let mut noted = total::curve(kind, form, water, top);
    // No method is sure to be the right one: up to half of the logarithm may come from the handbook rule.
    let share = 0.5 * normal_share(get(Latent::HullMethod));
    noted.value = total::with_handbook(&noted.value, kind, form, water, share);
    noted.value = noted.value.with_error(&Shape::of(kind), shape::unit_speed(kind, form, water), error);
    noted
}

/// Distribution function of a standard normal number, to 1e-3: here it only places a share between 0 and 1.
fn normal_share(z: f64) -> f64 {
    0.5 * (1.0 + (0.797_884_560_8 * z * (1.0 + 0.044_715 * z * z)).tanh())
}

/// A speed the boat cannot pass, m/s: where the resistance's table may end.
fn top_speed(plan: &Plan, form: &Form, row: &Row) -> f64 {
    let power = row[Latent::Power as usize] * f64::from(plan.knowledge.screws.0);
    let froude = |f: f64| f * (hydro::water::GRAVITY * form.length).sqrt();
    // Crouch with a racing boat's constant bounds what power can do over the hump.
    let crouch = hydro::hull::handbook::crouch_speed(form.mass, power, 260.0);
    match plan.knowledge.kind.0 {
        Kind::Displacement | Kind::Sailing => froude(0.75),
        Kind::SemiDisplacement => crouch.clamp(froude(0.75), froude(1.8)),
        Kind::Planing => crouch.max(froude(1.2)),
    }
}
