//! What is said of a pitch distribution, and the pitch that acts.

use super::of_blade;
use hydro::blade::{
    BladeReading, Chordwise, Estimate, FacePoint, Form, Hand, Hub, PitchReading, Radial, Readings, Station,
    effective_pitch, pitch_weight, reduce,
};

#[test]
fn the_weight_of_pitch_stands_at_the_trades_radius() {
    let n = 4000;
    let at = |i: i32| 0.2 + 0.8 * (f64::from(i) + 0.5) / f64::from(n);
    let whole: f64 = (0..n).map(|i| pitch_weight(at(i))).sum();
    let first: f64 = (0..n).map(|i| at(i) * pitch_weight(at(i))).sum();
    // The trade reads pitch at 0.7 R (common practice, no source).
    assert!((first / whole - 0.7).abs() < 0.03, "{}", first / whole);
    assert_eq!(pitch_weight(1.2) + pitch_weight(-0.1) + pitch_weight(1.0), 0.0);
}

#[test]
fn a_straight_line_of_pitch_acts_like_its_value_at_that_radius() {
    let rows: Vec<[f64; 6]> =
        (0..9).map(|i| 0.2 + 0.1 * f64::from(i)).map(|x| [0.3 * x, 0.1, 0.4 + 0.1 * x, 0.01, 0.0, 0.0]).collect();
    let p = of_blade(&super::blade_of(&rows, 0.3), 3, 0.2);
    let acts = effective_pitch(&p.blades[0], p.hub.radius());
    let radius = (acts - 0.4) / 0.1;
    assert!((radius - 0.7).abs() < 0.03, "{radius}");
}

#[test]
fn constant_and_progressive_are_told_apart() {
    let blade = |curve: f64, tilt: f64| BladeReading {
        tip_radius: Some(Estimate::new(0.25, 0.0005)),
        stations: [0.1, 0.15, 0.2, 0.23]
            .map(|r: f64| {
                let pitch = 0.4 * (1.0 + tilt * (r - 0.17) / 0.25);
                // Pitch rises by `curve` from leading to trailing edge over 50 degrees.
                let points = (0..6)
                    .map(|i| {
                        let angle = 10.0 * f64::from(i);
                        let u = angle / 50.0;
                        let height = pitch * 50.0 / 360.0 * ((1.0 + 0.5 * curve) * u - 0.5 * curve * u * u);
                        FacePoint { angle_deg: angle, height }
                    })
                    .collect();
                Station {
                    pitch: vec![PitchReading::Points { points, height_sd: 0.000_2, angle_sd_deg: 0.05 }],
                    chord: Some(Estimate::new(0.12, 0.001)),
                    ..Station::at(Estimate::exact(r))
                }
            })
            .to_vec(),
        ..BladeReading::default()
    };
    let table = |curve: f64, tilt: f64| {
        let readings = Readings {
            blades: vec![blade(curve, tilt); 3],
            hand: Hand::Right,
            hub: Hub::cylinder(0.1, 0.15, 0.03),
            form: Form::FlatFaced,
            common_pitch_sd: 0.005,
        };
        reduce(&readings).unwrap().pitch
    };
    assert_eq!((table(0.0, 0.0).radial(), table(0.0, 0.0).chordwise()), (Radial::Constant, Chordwise::Constant));
    assert_eq!(table(0.06, 0.0).chordwise(), Chordwise::Progressive);
    assert_eq!(table(-0.06, 0.0).chordwise(), Chordwise::Regressive);
    assert_eq!(table(0.0, 0.1).radial(), Radial::RisesToTip);
    assert_eq!(table(0.0, -0.1).radial(), Radial::FallsToTip);
    // Error common to all readings stays in the mean of them all.
    let mean = table(0.0, 0.0).mean.unwrap();
    assert!(mean.sd > 0.005 * mean.value);
}
