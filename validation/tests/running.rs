//! The running balance: its equations, its outcomes, published points of propulsion.

use std::f64::consts::TAU;

use hydro::drive::Drive;
use hydro::engine::{Engine, Kind, Top, shape};
use hydro::hull::Curve;
use hydro::limits::Breakdown;
use hydro::openwater::Screw;
use hydro::running::{Held, Installation};
use hydro::speed::EngineSpeed;
use hydro::stern::Stern;
use hydro::water::{ATMOSPHERE, Water};
use validation::assert_close;

fn screw(diameter: f64, pitch_ratio: f64, blades: u8, area: f64) -> Screw {
    Screw {
        diameter,
        pitch_ratio,
        expanded_area_ratio: area,
        blades,
        flat_share: 0.0,
        ducted: false,
        cup: 0.0,
        blade_roughness: 30e-6,
    }
}

/// Without cavitation: a head no propeller can pull down.
const DEEP: f64 = 1e9;

fn with_screw(mut boat: Installation, screw: &Screw, head: f64) -> Installation {
    boat.diameter = screw.diameter;
    boat.open_water = screw.curves(2e6).value;
    boat.breakdown = Breakdown::new(screw, &boat.water, head);
    boat
}

/// A launch of 6 t on 8.2 m of waterline: steep wave resistance above 3 m/s; 29 hp diesel, 2.6 : 1, 16 in.
fn launch(pitch_ratio: f64) -> Installation {
    let rated = EngineSpeed::from_rpm(3600.0);
    let engine =
        Engine::usual(Kind::NaturalDiesel, 21.6e3, rated, Top::Governor { no_load: EngineSpeed::from_rpm(3900.0) });
    let water = Water::sea(15.0).value;
    let propeller = screw(0.4064, pitch_ratio, 3, 0.5);
    let boat = Installation {
        water,
        resistance: Curve::tabulate(5.5, |v| 55.0 * v * v + 3.0 * v.powi(5)),
        tow: 0.0,
        screws: 1,
        stern: Stern { wake: 0.15, thrust_deduction: 0.12, relative_rotative: 1.0, shaft_angle_deg: 6.0 },
        diameter: propeller.diameter,
        open_water: propeller.curves(2e6).value,
        breakdown: Breakdown::new(&propeller, &water, DEEP),
        drive: Drive { reduction: 2.6, efficiency: 0.95 },
        engine,
    };
    with_screw(boat, &propeller, ATMOSPHERE + 5e3)
}

/// Thrust and torque by the definition of the coefficients, apart from the code under test.
fn by_definition(boat: &Installation, v: f64, n: f64) -> (f64, f64) {
    let (d, rho, stern) = (boat.diameter, boat.water.density, &boat.stern);
    let along = stern.shaft_angle_deg.to_radians().cos();
    let va = v * (1.0 - stern.wake);
    let j = va * along / (n * d);
    let (kt, kq) = (boat.open_water.thrust(j), boat.open_water.torque(j));
    let (kt, kq) = if j <= boat.open_water.zero_thrust { boat.breakdown.limit(va, n, kt, kq) } else { (kt, kq) };
    let pull = f64::from(boat.screws) * kt * rho * n * n * d.powi(4) * along * (1.0 - stern.thrust_deduction);
    (pull, kq * rho * n * n * d.powi(5) / stern.relative_rotative)
}

/// Repeatable numbers between 0 and 1 (a linear congruence with Knuth's MMIX constants).
struct Dice(u64);

impl Dice {
    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (high - low) * (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn boat(&mut self) -> Installation {
        let kind = Kind::ALL[(self.between(0.0, 4.999)) as usize];
        let rated_power = self.between(7.0, 400.0) * 1e3;
        let rated = EngineSpeed::from_rpm(self.between(1800.0, 6000.0));
        let top = shape::usual_top(kind, rated, None, self.between(0.0, 1.0) > 0.5, self.between(0.0, 1.0));
        let mut engine = Engine::usual(kind, rated_power, rated, top);
        engine.curve = shape::usual_curve(kind, self.between(-2.0, 2.0));
        // A propeller of the right order for the power at the shaft speed of the day, up to 30 % off in diameter.
        let reduction = self.between(1.2, 3.0);
        let n = rated.0 / reduction;
        let pitch_ratio = self.between(0.55, 1.3);
        let diameter = (rated_power / (1025.0 * n.powi(3) * TAU * 0.06 * pitch_ratio * pitch_ratio)).powf(0.2)
            * self.between(0.9, 1.4);
        let blades = if self.between(0.0, 1.0) > 0.5 { 3 } else { 4 };
        let propeller = screw(diameter, pitch_ratio, blades, self.between(0.45, 0.8));
        let water = Water::sea(self.between(2.0, 28.0)).value;
        let top_speed = self.between(0.7, 1.6) * pitch_ratio * diameter * n;
        // Resistance that takes the thrust to be had at about 0.8 of that speed, with a hump now and then.
        let typical = self.between(0.2, 0.7) * rated_power / top_speed;
        let (hump, at) = (self.between(-0.5, 0.9).max(0.0), self.between(0.25, 0.5));
        let screws = if self.between(0.0, 1.0) > 0.6 { 2 } else { 1 };
        let resistance = Curve::tabulate(1.3 * top_speed, |v| {
            let x = v / top_speed;
            f64::from(screws) * typical * (x * x + hump * (-((x - at) / 0.12).powi(2)).exp() * x / at)
        });
        let boat = Installation {
            water,
            resistance,
            tow: if self.between(0.0, 1.0) > 0.8 { 0.2 * typical } else { 0.0 },
            screws,
            stern: Stern {
                wake: self.between(-0.05, 0.3),
                thrust_deduction: self.between(0.0, 0.22),
                relative_rotative: self.between(0.95, 1.03),
                shaft_angle_deg: self.between(0.0, 14.0),
            },
            diameter,
            open_water: propeller.curves(2e6).value,
            breakdown: Breakdown::new(&propeller, &water, DEEP),
            drive: Drive { reduction, efficiency: self.between(0.92, 1.0) },
            engine,
        };
        let head = if self.between(0.0, 1.0) > 0.5 { DEEP } else { ATMOSPHERE + 5e3 };
        with_screw(boat, &propeller, head)
    }
}

#[test]
fn full_throttle_satisfies_both_equations() {
    let mut dice = Dice(1);
    let mut seen = [0_u32; 6];
    for case in 0..4000 {
        let boat = dice.boat();
        let full = boat.full_throttle();
        let p = full.point;
        let (pull, torque) = by_definition(&boat, p.speed, p.shaft_speed.0);
        let rated = boat.engine.rated_power;
        seen[full.held as usize] += 1;
        assert!(p.speed.is_finite() && p.fuel.is_finite() && p.quasi_propulsive.is_finite(), "{case}");
        if full.held == Held::Stalled {
            assert!(p.brake_power > p.available_power && p.speed == 0.0, "{case} {p:?} {:?}", boat.engine);
            continue;
        }
        let needed = boat.resistance.at(p.speed) + boat.tow;
        if p.speed > 0.0 {
            assert!((pull - needed).abs() <= 1e-6 * needed, "{case}: pull {pull}, needed {needed}");
        } else {
            seen[4] += 1;
            assert!(pull <= needed * (1.0 + 1e-6), "{case}");
        }
        let asked = TAU * p.shaft_speed.0 * torque / boat.drive.efficiency;
        assert!((asked - p.brake_power).abs() <= 1e-9 * rated, "{case}");
        match full.held {
            Held::EngineTorque | Held::Governor => {
                let has = boat.engine.power_at(p.engine_speed);
                assert!((asked - has).abs() <= 1e-6 * rated, "{case}: asked {asked}, has {has} {full:?}");
                assert_eq!(
                    full.held == Held::Governor,
                    p.engine_speed.0 > boat.engine.rated_speed.0 && boat_governed(&boat)
                );
            }
            Held::Limiter => {
                assert!((p.engine_speed.0 - boat.engine.top.speed().0).abs() < 1e-9);
                assert!(asked <= p.available_power * (1.0 + 1e-9), "{case} {full:?} {:?}", boat.engine);
            }
            Held::Stalled => {}
        }
        seen[5] += u32::from(!full.climbs);
        if p.speed > 0.0 {
            assert!(p.slip(&boat.open_water) > 0.0, "{case}: thrust without slip {full:?} {boat:?}");
        }
    }
    // Each outcome must have been met, or the test says nothing about it.
    assert!(seen[0] > 300 && seen[1] > 100 && seen[2] > 100 && seen[5] > 20, "{seen:?}");
}

fn boat_governed(boat: &Installation) -> bool {
    matches!(boat.engine.top, Top::Governor { .. })
}

#[test]
fn nothing_before_the_state_reached_holds_the_boat() {
    // Followed up in fine steps by its own solver (bisection), thrust exceeds resistance at every speed passed.
    let mut dice = Dice(7);
    for case in 0..1000 {
        let boat = dice.boat();
        let full = boat.full_throttle();
        if full.held == Held::Stalled || full.point.speed == 0.0 {
            continue;
        }
        for i in 1..60 {
            let v = full.point.speed * f64::from(i) / 60.0;
            // More than one shaft speed may fit a lagging turbo; the reached one is the first from idle at rest, and the
            // boat passes at least with the highest.
            let n = highest_shaft_speed(&boat, v);
            let (pull, _) = by_definition(&boat, v, n);
            let needed = boat.resistance.at(v) + boat.tow;
            assert!(pull > needed, "{case} at {i}/60: {pull} {needed}");
        }
    }
}

fn highest_shaft_speed(boat: &Installation, v: f64) -> f64 {
    let gap = |n: f64| {
        let (_, torque) = by_definition(boat, v, n);
        boat.engine.power_at(EngineSpeed(n * boat.drive.reduction)) * boat.drive.efficiency - TAU * n * torque
    };
    let top = boat.engine.top.speed().0 / boat.drive.reduction;
    if gap(top) > 0.0 {
        return top;
    }
    let (mut low, mut high) = (0.0, top);
    for i in (1..400).rev() {
        let n = top * f64::from(i) / 400.0;
        if gap(n) > 0.0 {
            (low, high) = (n, top * f64::from(i + 1) / 400.0);
            break;
        }
    }
    for _ in 0..60 {
        let n = 0.5 * (low + high);
        if gap(n) > 0.0 { low = n } else { high = n }
    }
    low
}

#[test]
fn part_load_satisfies_its_equation_and_comes_back() {
    let mut dice = Dice(3);
    let mut compared = 0;
    for case in 0..1500 {
        let boat = dice.boat();
        let share = dice.between(0.3, 1.0);
        let steady = boat.at_engine_speed(EngineSpeed(share * boat.engine.rated_speed.0));
        let p = steady.point;
        if p.speed == 0.0 {
            continue;
        }
        let (pull, _) = by_definition(&boat, p.speed, p.shaft_speed.0);
        let needed = boat.resistance.at(p.speed) + boat.tow;
        // Where nothing is needed, to a share of what the propeller gives at rest.
        let scale = needed.max(1e-6 * by_definition(&boat, 0.0, p.shaft_speed.0).0);
        assert!((pull - needed).abs() <= 1e-6 * scale, "{case}: {pull} {needed}");
        assert_eq!(steady.beyond_engine, p.brake_power > p.available_power * (1.0 + 1e-9));
        // Thrust rises with shaft speed, so the way back is unique while nothing cavitates away.
        if p.thrust_lost < 0.05 {
            let back = boat.at_speed(p.speed).unwrap();
            assert!((back.engine_speed.0 / p.engine_speed.0 - 1.0).abs() < 1e-6, "{case}");
            compared += 1;
        }
        let fast = boat.at_engine_speed_over_the_hump(p.engine_speed);
        assert_eq!(fast.point.speed > p.speed * (1.0 + 1e-9), steady.faster, "{case}");
    }
    assert!(compared > 800, "{compared}");
}

#[test]
fn a_light_propeller_runs_into_the_governor_and_a_limiter_holds_without_droop() {
    let mut boat = launch(0.45);
    let full = boat.full_throttle();
    assert_eq!(full.held, Held::Governor);
    assert!(full.point.engine_speed.rpm() > 3600.0 && full.point.engine_speed.rpm() < 3900.0);
    assert!(full.point.brake_power < boat.engine.ungoverned_power(full.point.engine_speed));

    boat.engine.top = Top::Limiter { at: EngineSpeed::from_rpm(3700.0) };
    let full = boat.full_throttle();
    assert_eq!(full.held, Held::Limiter);
    assert_close!(full.point.engine_speed.rpm(), 3700.0, 1e-9, "the limiter");
    assert!(full.point.load() < 1.0);
}

#[test]
fn less_pitch_frees_the_engine() {
    // Common practice, no source: less pitch, more engine speed; the over-pitched boat is slower for it.
    let mut before = launch(0.95).full_throttle();
    assert_eq!(before.held, Held::EngineTorque);
    for pitch in [0.85, 0.75, 0.65, 0.55] {
        let full = launch(pitch).full_throttle();
        assert!(full.point.engine_speed.0 > before.point.engine_speed.0, "{pitch}");
        before = full;
    }
    assert!(launch(0.7).full_throttle().point.speed > launch(1.1).full_throttle().point.speed);
}

#[test]
fn a_hump_that_cannot_be_climbed_is_a_value() {
    let mut boat = launch(0.7);
    let hump = |height: f64| move |v: f64| 40.0 * v * v + height * (-((v - 3.6_f64) / 0.7).powi(2)).exp() * (v / 3.6);
    boat.resistance = Curve::tabulate(9.0, hump(1200.0));
    let over = boat.full_throttle();
    assert!(over.climbs && over.point.speed > 4.5, "{over:?}");
    let margin = over.hump.unwrap();
    assert!(margin.margin > 1.0 && (margin.speed - 3.6).abs() < 0.6, "{margin:?}");

    boat.resistance = Curve::tabulate(9.0, hump(3000.0));
    let stuck = boat.full_throttle();
    assert!(!stuck.climbs && stuck.point.speed < 3.6, "{stuck:?}");
    assert!(stuck.hump.unwrap().margin < 1.0);
    // A tow from outside shows the state beyond: the propeller holds the boat there.
    let beyond = boat.at_engine_speed_over_the_hump(over.point.engine_speed);
    assert!(beyond.point.speed > 4.5 && !beyond.beyond_engine);

    // Raised step by step, the margin falls and passes 1 where the boat stops climbing.
    let mut last = f64::INFINITY;
    for i in 0..20 {
        boat.resistance = Curve::tabulate(9.0, hump(1000.0 + 130.0 * f64::from(i)));
        let full = boat.full_throttle();
        let margin = full.hump.unwrap_or_else(|| panic!("{i} {full:?}")).margin;
        assert!(margin < last, "{i}");
        assert_eq!(full.climbs, margin > 1.0, "{i}: {margin}");
        last = margin;
    }
}

#[test]
fn outcomes_without_a_running_point_are_values() {
    // Tow beyond the bollard pull: the boat stands.
    let mut boat = launch(0.7);
    boat.tow = 50e3;
    let held = boat.full_throttle();
    assert_eq!(held.point.speed, 0.0);
    assert!(held.point.thrust > 0.0);
    // A propeller far too heavy stalls the engine.
    let heavy = with_screw(launch(0.7), &screw(1.6, 1.4, 3, 0.5), DEEP);
    assert_eq!(heavy.full_throttle().held, Held::Stalled);
    assert!(heavy.bollard().load() > 1.0);
    // No propeller to speak of: no thrust, the governor holds an idle engine.
    let mut none = launch(0.7);
    none.open_water.kt = [0.0; 8];
    none.open_water.kq = [0.0; 8];
    none.open_water.zero_thrust = 0.0;
    let full = none.full_throttle();
    assert!(full.point.speed == 0.0 && full.point.thrust == 0.0 && full.point.fuel.is_finite());
    assert!(none.at_speed(2.0).is_none());
    // A hull without resistance and a table without extent end somewhere finite.
    let mut slippery = launch(0.7);
    slippery.resistance = Curve { step: 0.0, resistance: [0.0; hydro::hull::curve::POINTS] };
    assert!(slippery.full_throttle().point.speed.is_finite());
    assert!(launch(0.7).at_speed(f64::NAN).is_none() && launch(0.7).at_speed(-1.0).is_none());
}

#[test]
fn the_bollard_meets_the_printed_coefficients_of_b4_70() {
    let propeller = screw(0.5, 1.0, 4, 0.7);
    let mut boat = with_screw(launch(1.0), &propeller, DEEP);
    boat.stern = Stern { thrust_deduction: 0.05, ..Stern::OPEN };
    let p = boat.bollard();
    let unit = boat.water.density * p.shaft_speed.0.powi(2) * 0.5_f64.powi(4);
    // Four-quadrant measurements of the same screw; they and the series differ by 2..5 % (NSMB's own fits).
    assert_close!(p.thrust / unit, 0.445, 0.03 * 0.445, "Smogeli 2006: B4-70, P/D 1.0, KT0 0.445");
    assert_close!(p.torque / unit / 0.5, 0.0666, 0.03 * 0.0666, "Smogeli 2006: B4-70, P/D 1.0, KQ0 0.0666");
    assert_close!(p.pull / p.thrust, 0.98, 1e-12, "bollard deduction 0.02");
    assert_close!(p.brake_power, boat.engine.power_at(p.engine_speed), 1e-6 * 21.6e3, "full throttle");
}

#[test]
fn a_boat_whose_resistance_goes_with_the_square_asks_for_the_cube() {
    let mut boat = launch(0.7);
    boat.resistance = Curve::tabulate(9.0, |v| 90.0 * v * v);
    let exponent = |boat: &Installation, from: f64, to: f64| {
        let power = |rpm: f64| boat.at_engine_speed(EngineSpeed::from_rpm(rpm)).point.brake_power;
        (power(to) / power(from)).ln() / (to / from).ln()
    };
    // J is the same at every speed, so the cube is exact; the table's cubic between points is not quite a parabola near
    // rest, and the head is deep enough for no cavitation.
    boat = with_screw(boat, &screw(0.4064, 0.7, 3, 0.5), DEEP);
    assert_close!(exponent(&boat, 1800.0, 3600.0), 3.0, 1e-3, "similarity: same J, power as N^3; ISO 8178 E3");
    // Against rising wave resistance more than the cube, but not much.
    let real = exponent(&launch(0.7), 1800.0, 3600.0);
    assert!((3.0..3.5).contains(&real), "{real}");
    let asked = boat.demand(9);
    assert!(asked.windows(2).all(|w| w[1].asked > w[0].asked) && asked.len() == 9);
    let part = boat.part_load(6);
    assert_eq!(part.len(), 6);
    assert!(part.windows(2).all(|w| w[1].speed > w[0].speed && w[1].fuel > w[0].fuel));
}

#[test]
fn efficiencies_multiply_to_the_quasi_propulsive_coefficient() {
    let mut boat = launch(0.7);
    boat.stern.shaft_angle_deg = 0.0;
    let p = boat.full_throttle().point;
    let product = boat.stern.hull_efficiency() * p.behind_efficiency(&boat.stern);
    assert_close!(p.quasi_propulsive, product, 1e-6, "ITTC: eta_D = eta_H eta_0 eta_R");
}

#[test]
fn holtrop_and_mennens_ship_takes_the_printed_power() {
    // Holtrop & Mennen 1982, worked example: 25 kn, R 1793.26 kN, w 0.2584, t 0.1747, etaR 0.9931, D 8 m, Z 4, AE/A0 0.7393,
    // n 1.6594 rev/s, PS 32 621 kW at a shaft efficiency of 0.99. P/D is not printed: it is found here from n, so the
    // power alone is a check. The reading of their roughness term moves it by 0.1..1 %.
    let v = 25.0 * 1852.0 / 3600.0;
    let mut boat = launch(0.7);
    boat.water.density = 1025.0;
    boat.resistance = Curve::tabulate(1.2 * v, |speed| 1793.26e3 * (speed / v).powi(2));
    boat.stern = Stern { wake: 0.2584, thrust_deduction: 0.1747, relative_rotative: 0.9931, shaft_angle_deg: 0.0 };
    boat.drive = Drive { reduction: 1.0, efficiency: 0.99 };
    boat.engine.rated_speed = EngineSpeed(1.6594);
    boat.engine.top = Top::Limiter { at: EngineSpeed(2.0) };
    let at = |pitch_ratio: f64| with_screw(boat, &screw(8.0, pitch_ratio, 4, 0.7393), DEEP).at_speed(v).unwrap();
    let pitch = hydro::numeric::root(0.8, 1.3, 1e-9, |p| at(p).shaft_speed.0 - 1.6594).unwrap();
    let p = at(pitch);
    assert_close!(p.thrust, 2172.75e3, 0.2e3, "Holtrop & Mennen 1982: T");
    assert_close!(p.brake_power, 32_621e3, 0.01 * 32_621e3, "Holtrop & Mennen 1982: PS");
}

/// Two alike are the balance of one boat; two unlike share the resistance at a speed between those of either twice, and the
/// steeper propeller turns slower than its neighbour. (The definition of the balance, ITTC 7.5-02-03-01.4, for each side.)
#[test]
fn a_pair_shares_one_hull() {
    use hydro::running::pair;
    let twin = |pitch_ratio: f64| Installation { screws: 2, ..launch(pitch_ratio) };
    let (flat, steep) = (twin(0.6), twin(0.75));
    let alone = [flat, steep].map(|boat| boat.full_throttle().point);
    let alike = pair::full_throttle([&flat, &flat]);
    assert!((alike.speed / alone[0].speed - 1.0).abs() < 1e-6, "{alike:?}");
    assert!((alike.sides[1].engine_speed.0 / alone[0].engine_speed.0 - 1.0).abs() < 1e-6);
    assert!((alike.fuel() / alone[0].fuel - 1.0).abs() < 1e-6);
    let unlike = pair::full_throttle([&flat, &steep]);
    let (slow, fast) = (alone[0].speed.min(alone[1].speed), alone[0].speed.max(alone[1].speed));
    assert!((slow..=fast).contains(&unlike.speed), "{slow} {} {fast}", unlike.speed);
    assert!(unlike.sides[1].engine_speed.0 < unlike.sides[0].engine_speed.0);
    let pull: f64 = unlike.sides.iter().map(|side| 0.5 * side.pull).sum();
    assert!((pull / unlike.sides[0].resistance - 1.0).abs() < 1e-6, "{pull} {}", unlike.sides[0].resistance);
    // At part throttle the one driven faster pushes more, and together they carry the boat.
    let turns = [0.8, 0.6].map(|share| hydro::speed::EngineSpeed(share * flat.engine.rated_speed.0));
    let part = pair::at_engine_speeds([&flat, &flat], turns);
    assert!(part.sides[0].thrust > part.sides[1].thrust);
    let pull: f64 = part.sides.iter().map(|side| 0.5 * side.pull).sum();
    assert!((pull / part.sides[0].resistance - 1.0).abs() < 1e-6);
}

/// Where the steady state of a lower engine speed is known the search begins there, and finds the same: the definition of the
/// balance (lowest boat speed at which thrust carries resistance), with a hump in the resistance and without.
#[test]
fn a_search_begun_at_a_slower_state_finds_the_same() {
    let plain = launch(0.7);
    let humped = Installation {
        resistance: Curve::tabulate(12.0, |v| 60.0 * v * v + 2500.0 * (-(v - 4.0) * (v - 4.0)).exp()),
        ..launch(0.7)
    };
    let heavy = Installation { tow: 400.0, ..launch(0.7) };
    for boat in [plain, humped, heavy] {
        let mut slower = 0.0;
        for i in 2..45 {
            let turns = EngineSpeed::from_rpm(90.0 * f64::from(i));
            let (alone, begun) = (boat.at_engine_speed(turns), boat.at_engine_speed_beyond(turns, slower));
            assert!(
                (alone.point.speed - begun.point.speed).abs() <= 1e-9 * alone.point.speed,
                "{i}: {alone:?} {begun:?}"
            );
            assert_eq!(alone.faster, begun.faster);
            let surplus = alone.point.pull - alone.point.resistance;
            let carried = alone.point.speed == 0.0 || surplus.abs() <= 1e-8 * alone.point.resistance;
            assert!(carried && alone.point.speed >= slower * (1.0 - 1e-9), "{i}: {alone:?}");
            slower = alone.point.speed;
        }
        // A start that was too fast is taken back.
        let turns = EngineSpeed::from_rpm(1500.0);
        let (alone, begun) = (boat.at_engine_speed(turns), boat.at_engine_speed_beyond(turns, 5.0));
        assert!((alone.point.speed - begun.point.speed).abs() <= 1e-9, "{alone:?} {begun:?}");
    }
}
