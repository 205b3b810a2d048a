//! A drawn blade, photographed and traced.

use super::Dice;
use hydro::blade::{FlatFaced, Hand, Photo, Propeller, Width, areas, flat_faced, projected_outline, skew, trace};

fn stock(hand: Hand, skew_deg: f64) -> Propeller {
    flat_faced(&FlatFaced {
        blades: 4,
        width: Width::MeanWidthRatio(0.3),
        pitch_ratio: 0.8,
        thickness_fraction: 0.02,
        diameter: 0.5,
        hub_ratio: 0.2,
        rake: 0.1,
        skew: skew_deg.to_radians(),
        hand,
    })
}

/// Clicks round the blade after a turn of `turn` rad clockwise, 0.5 mm to the pixel, centre at (700, 500).
fn photograph(p: &Propeller, turn: f64, noise: f64, dice: &mut Dice) -> Photo {
    let o = projected_outline(&p.blades[0], p.hub.radius(), 24);
    let sign = p.hand.sign();
    let outline = o
        .leading
        .iter()
        .chain(o.trailing.iter().rev().skip(1))
        .map(|q| {
            let (radius, angle) = (q[0].hypot(q[1]), sign * q[0].atan2(q[1]) + turn);
            let px = 2000.0 * radius;
            [700.0 + px * angle.sin() + noise * dice.normal(), 500.0 - px * angle.cos() + noise * dice.normal()]
        })
        .collect();
    Photo {
        outline,
        centre: [700.0, 500.0],
        scale: 0.0005,
        hub_radius: p.hub.radius() * 1.02,
        hand: None,
        click_sd: noise,
        scale_sd: 0.0,
    }
}

#[test]
fn a_trace_gives_back_area_skew_and_hand_wherever_the_blade_stands() {
    let mut dice = Dice(7);
    for hand in [Hand::Right, Hand::Left] {
        for turn in [0.0, 1.0, 3.1, 4.0, 5.5] {
            let p = stock(hand, 25.0);
            let t = trace(&photograph(&p, turn, 0.0, &mut dice)).unwrap();
            let hub = p.hub.radius() * 1.02;
            let mut inside = p.clone();
            inside.hub.fore_diameter = 2.0 * hub;
            inside.hub.aft_diameter = 2.0 * hub;
            let want = areas(&inside).blades.projected / 4.0;
            assert_eq!(t.hand, Some(hand));
            // 24 clicks a side cut the corners of a round outline: a share of (step/R)²/6.
            assert!((t.projected.value / want - 1.0).abs() < 0.005, "{} {want}", t.projected.value);
            assert!((t.tip_radius.value - 0.25).abs() < 1e-6);
            let s = skew(&p.blades[0], hub);
            assert!((t.skew.value - s.angle).abs() < 0.01, "{} {}", t.skew.value, s.angle);
            assert!(t.tip_behind_root > 0.4);
        }
    }
}

#[test]
fn an_even_blade_keeps_its_hand_to_itself() {
    let mut dice = Dice(8);
    let t = trace(&photograph(&stock(Hand::Right, 0.0), 0.4, 0.0, &mut dice)).unwrap();
    assert_eq!(t.hand, None);
}

#[test]
fn spreads_hold_what_they_promise() {
    let mut dice = Dice(0x5eed_1234);
    let (mut area_in, mut skew_in) = (0, 0);
    let p = stock(Hand::Left, 20.0);
    let exact = trace(&photograph(&p, 0.7, 0.0, &mut dice)).unwrap();
    let n = 400;
    for _ in 0..n {
        let t = trace(&photograph(&p, 0.7, 2.0, &mut dice)).unwrap();
        let inside = |e: hydro::blade::Estimate, truth: f64| e.band().0 <= truth && truth <= e.band().1;
        area_in += i32::from(inside(t.projected, exact.projected.value));
        skew_in += i32::from(inside(t.skew, exact.skew.value));
    }
    println!("photo: 80 % bands hold area {area_in}, skew {skew_in} of {n}");
    // 74 to 86 %.
    assert!((296..=344).contains(&area_in), "{area_in}");
    assert!((296..=344).contains(&skew_in), "{skew_in}");
}

#[test]
fn what_is_no_blade_is_refused() {
    let mut dice = Dice(9);
    let good = photograph(&stock(Hand::Right, 10.0), 0.0, 0.0, &mut dice);
    assert!(trace(&Photo { scale: 0.0, ..good.clone() }).is_err());
    assert!(trace(&Photo { scale: f64::NAN, ..good.clone() }).is_err());
    assert!(trace(&Photo { hub_radius: 1.0, ..good.clone() }).is_err());
    assert!(trace(&Photo { outline: good.outline[..3].to_vec(), ..good.clone() }).is_err());
    assert!(trace(&Photo { centre: [f64::INFINITY, 0.0], ..good }).is_err());
}
