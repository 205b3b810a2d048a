//! A known propeller, measured again with noise, by every way.

use super::Dice;
use hydro::blade::{
    BSeries, Blade, BladeReading, Cut, Estimate, FacePoint, FlatFaced, Form, Hand, Measured, PitchReading, Propeller,
    Readings, Shape, Station, Width, areas, b_series, blade_areas, developed_area, effective_pitch, flat_faced, rake,
    reduce, skew, thickness_fraction,
};
use std::f64::consts::TAU;

/// Radii of the finest class of ISO 484-2 (1981), `r/R`: one near the hub, then these.
const RADII: [f64; 7] = [0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95];

fn radii(p: &Propeller, tip: f64) -> Vec<f64> {
    std::iter::once(p.hub.radius() / tip + 0.04).chain(RADII).collect()
}

/// Standard deviations of a careful hand with simple tools. Ours.
const RULE: f64 = 0.000_5;
const DEPTH: f64 = 0.000_3;
const LEVEL_DEG: f64 = 0.2;
const ARC_DEG: f64 = 0.1;
const CALIPER: f64 = 0.000_2;

#[derive(Clone, Copy, Debug, PartialEq)]
enum Way {
    Arc,
    Face,
    Blocks,
    Points,
}

/// A random propeller whose blades differ a little.
fn random(dice: &mut Dice) -> (Propeller, Form) {
    let hand = if dice.even() < 0.5 { Hand::Right } else { Hand::Left };
    let diameter = dice.within(0.3, 0.8);
    let pitch_ratio = dice.within(0.5, 1.3);
    let toss = dice.even();
    let blades = if toss < 0.25 {
        2
    } else if toss < 0.5 {
        3
    } else if toss < 0.75 {
        4
    } else {
        5
    };
    let (mut p, form) = if dice.even() < 0.5 {
        let expanded_area_ratio = dice.within(0.15, 0.2) * f64::from(blades);
        (b_series(&BSeries { blades, expanded_area_ratio, pitch_ratio, diameter, hand }), Form::BSeries)
    } else {
        let what = FlatFaced {
            blades,
            width: Width::MeanWidthRatio(dice.within(0.22, 0.4)),
            pitch_ratio,
            thickness_fraction: dice.within(0.035, 0.055),
            diameter,
            hub_ratio: dice.within(0.16, 0.24),
            rake: dice.within(0.0, 15.0).to_radians(),
            skew: dice.within(0.0, 30.0).to_radians(),
            hand,
        };
        (flat_faced(&what), Form::FlatFaced)
    };
    for blade in &mut p.blades {
        // Blades as the trade leaves them: a couple of per cent in pitch, and a little more toward one end.
        let (level, tilt) = (1.0 + 0.02 * dice.normal(), 0.02 * dice.normal());
        let tip = blade.tip_radius;
        for s in &mut blade.sections {
            s.pitch *= level * (1.0 + tilt * (s.radius / tip - 0.7));
        }
    }
    (p, form)
}

fn noisy(dice: &mut Dice, truth: f64, sd: f64) -> Estimate {
    Estimate::new(truth + sd * dice.normal(), sd)
}

/// One reading of the pitch line of a section over the middle 80 % of its chord, or 100 degrees where that is less (a root may
/// go half round the hub, where blocks no longer tell).
fn read(way: Way, cut: &Cut, dice: &mut Dice) -> PitchReading {
    let at = |share: f64| cut.place(share * cut.chord, 0.0);
    let whole = cut.place(0.5 * cut.chord, 0.0).1 - cut.place(-0.5 * cut.chord, 0.0).1;
    let reach = 0.4_f64.min(0.5 * 100_f64.to_radians() / whole);
    let ((x1, turn1), (x0, turn0)) = (at(reach), at(-reach));
    let (rise, arc) = (x1 - x0, turn1 - turn0);
    match way {
        Way::Arc => PitchReading::RiseOverArc {
            rise: noisy(dice, rise, DEPTH),
            arc_deg: noisy(dice, arc.to_degrees(), ARC_DEG),
        },
        Way::Face => {
            let angle = cut.pitch.atan2(TAU * cut.radius).to_degrees();
            PitchReading::FaceAngle { angle_deg: noisy(dice, angle, LEVEL_DEG) }
        }
        Way::Blocks => {
            let level = 2.0 * cut.radius * (0.5 * arc).sin();
            let slant = dice.even() < 0.5;
            let span = if slant { level.hypot(rise) } else { level };
            PitchReading::RiseOverChord { rise: noisy(dice, rise, RULE), span: noisy(dice, span, RULE), slant }
        }
        Way::Points => PitchReading::Points {
            points: (0..7)
                .map(|i| {
                    let (x, turn) = at(reach * (1.0 - f64::from(i) / 3.0));
                    FacePoint {
                        angle_deg: turn.to_degrees() + ARC_DEG * dice.normal(),
                        height: x + 1.0 + DEPTH * dice.normal(),
                    }
                })
                .collect(),
            height_sd: DEPTH,
            angle_sd_deg: ARC_DEG,
        },
    }
}

fn measure(p: &Propeller, form: Form, way: Way, dice: &mut Dice) -> Readings {
    let blades = p
        .blades
        .iter()
        .zip(&p.angles)
        .enumerate()
        .map(|(i, (blade, angle))| {
            let shape = Shape::of(blade);
            let stations: Vec<Station> = radii(p, blade.tip_radius)
                .into_iter()
                .map(|x| {
                    let cut = shape.cut(x * blade.tip_radius);
                    Station {
                        radius: Estimate::new(cut.radius, 0.0),
                        pitch: vec![read(way, &cut, dice)],
                        chord: None,
                        leading: Some(noisy(dice, 0.5 * cut.chord - cut.skew_back, RULE)),
                        trailing: Some(noisy(dice, 0.5 * cut.chord + cut.skew_back, RULE)),
                        thickness: Some(noisy(dice, cut.thickness, CALIPER)),
                        track: Some(noisy(dice, cut.rake, RULE)),
                    }
                })
                .collect();
            BladeReading {
                tip_radius: Some(noisy(dice, blade.tip_radius, RULE)),
                angle_deg: (i > 0).then(|| noisy(dice, angle.to_degrees(), 0.3)),
                stations,
                ..BladeReading::default()
            }
        })
        .collect();
    Readings { blades, hand: p.hand, hub: p.hub, form, common_pitch_sd: 0.0 }
}

fn mean(p: &Propeller, f: impl Fn(&Blade) -> f64) -> f64 {
    p.blades.iter().map(f).sum::<f64>() / p.count()
}

/// What is compared: truth and estimate.
fn compared(p: &Propeller, m: &Measured) -> Vec<(&'static str, f64, Estimate)> {
    let hub = p.hub.radius();
    let one = |f: &dyn Fn(&Blade) -> f64| (f(&p.blades[0]), m.estimate_of_blade(0, f).unwrap());
    let mut list = vec![("diameter", p.diameter(), m.diameter())];
    let at_station = |b: &Blade| {
        let shape = Shape::of(b);
        radii(p, b.tip_radius).iter().map(|x| shape.cut(x * b.tip_radius).pitch).sum::<f64>() / 8.0
    };
    list.push(("blade mean pitch", at_station(&p.blades[0]), m.pitch.blades[0].mean.unwrap()));
    list.push(("propeller mean pitch", mean(p, at_station), m.pitch.mean.unwrap()));
    list.push(("effective pitch", mean(p, |b| effective_pitch(b, hub)), m.effective_pitch()));
    list.push(("expanded area ratio", areas(p).expanded_ratio, m.expanded_area_ratio()));
    for (name, f) in [
        ("developed area", (&|b: &Blade| developed_area(b, hub)) as &dyn Fn(&Blade) -> f64),
        ("projected area", &|b: &Blade| blade_areas(b, hub).projected),
        ("rake angle", &|b: &Blade| rake(b, hub).angle),
        ("skew angle", &|b: &Blade| skew(b, hub).angle),
        ("thickness fraction", &|b: &Blade| thickness_fraction(b, hub)),
    ] {
        let (truth, got) = one(f);
        list.push((name, truth, got));
    }
    list
}

#[test]
fn a_thousand_propellers_come_back() {
    let mut dice = Dice(0x9e37_79b9_7f4a_7c15);
    let n = 1000;
    let mut inside: Vec<(&str, u32, f64, f64)> = Vec::new();
    let mut by_way = [0_u32; 4];
    for i in 0..n {
        let (p, form) = random(&mut dice);
        let way = [Way::Arc, Way::Face, Way::Blocks, Way::Points][i % 4];
        let m = reduce(&measure(&p, form, way, &mut dice)).expect("good readings");
        assert_eq!(m.propeller.hand, p.hand);
        assert!(m.assumed.is_empty(), "{:?}", m.assumed);
        for (k, (name, truth, got)) in compared(&p, &m).into_iter().enumerate() {
            if inside.len() <= k {
                inside.push((name, 0, 0.0, 0.0));
            }
            let (low, high) = got.band();
            let hit = low <= truth && truth <= high;
            inside[k].1 += u32::from(hit);
            inside[k].2 += (got.value - truth) / got.sd;
            inside[k].3 += got.sd / truth.abs().max(1e-9);
            if name == "propeller mean pitch" {
                by_way[i % 4] += u32::from(hit);
            }
        }
    }
    let hundredth = f64::from(u32::try_from(n).unwrap()) / 100.0;
    for (name, hits, bias, spread) in &inside {
        println!(
            "{name}: 80 % band holds {:.1} %, mean error {:+.2} sd, mean sd {:.2} % of the value",
            f64::from(*hits) / hundredth,
            bias / (100.0 * hundredth),
            spread / hundredth
        );
    }
    println!("propeller mean pitch by swing, protractor, blocks, points: {by_way:?} of {}", n / 4);
    for (name, hits, ..) in &inside {
        let share = f64::from(*hits) / hundredth;
        assert!((74.0..=86.0).contains(&share), "{name}: {share} %");
    }
    // 250 each: 80 % is 200, and 3 standard deviations of chance are 19.
    assert!(by_way.iter().all(|hits| (181..=219).contains(hits)), "{by_way:?}");
}

#[test]
fn without_noise_everything_comes_back() {
    let mut dice = Dice(77);
    for i in 0..60 {
        let (p, form) = random(&mut dice);
        let mut exact = measure(&p, form, [Way::Arc, Way::Face, Way::Blocks, Way::Points][i % 4], &mut dice);
        for (b, blade) in exact.blades.iter_mut().zip(&p.blades) {
            let shape = Shape::of(blade);
            b.tip_radius = Some(Estimate::exact(blade.tip_radius));
            for s in &mut b.stations {
                let cut = shape.cut(s.radius.value);
                s.pitch = vec![PitchReading::Stated(Estimate::exact(cut.pitch))];
                s.leading = Some(Estimate::exact(0.5 * cut.chord - cut.skew_back));
                s.trailing = Some(Estimate::exact(0.5 * cut.chord + cut.skew_back));
                s.thickness = Some(Estimate::exact(cut.thickness));
                s.track = Some(Estimate::exact(cut.rake));
            }
        }
        let m = reduce(&exact).unwrap();
        let (a, b) = (areas(&p), areas(&m.propeller));
        // What splines through eight radii and a drawn tip leave: a third of a per cent.
        assert!((b.expanded_ratio / a.expanded_ratio - 1.0).abs() < 0.004, "{} {}", a.expanded_ratio, b.expanded_ratio);
        assert!(
            (b.projected_ratio / a.projected_ratio - 1.0).abs() < 0.006,
            "{} {}",
            a.projected_ratio,
            b.projected_ratio
        );
        let hub = p.hub.radius();
        let pitch = |p: &Propeller| effective_pitch(&p.blades[0], hub);
        assert!((pitch(&m.propeller) / pitch(&p) - 1.0).abs() < 0.002);
        assert!((skew(&m.propeller.blades[0], hub).angle - skew(&p.blades[0], hub).angle).abs() < 0.01);
    }
}
