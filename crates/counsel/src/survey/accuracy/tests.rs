//! Boundary cases worked by hand from the percentages, and the cases derived with them.

use super::Judged::*;
use super::*;

const S: Option<Class> = Some(Class::S);
const I: Option<Class> = Some(Class::I);
const II: Option<Class> = Some(Class::II);
const III: Option<Class> = Some(Class::III);
const OUT: Option<Class> = None;

const SMALL: Rules = Rules { part: Part::None, minima: false };
const TWO: Rules = Rules { part: Part::Two, minima: false };
const TWO_MM: Rules = Rules { part: Part::Two, minima: true };
const ONE_MM: Rules = Rules { part: Part::One, minima: true };

/// Reference and deviation in mm (degrees for the spacing), the class a hand calculation gives.
#[test]
fn boundary_cases() {
    #[rustfmt::skip]
    let cases: &[(Judged, f64, f64, Rules, Option<Class>)] = &[
        // Local pitch: 1.5, 2, 3 %, class III asks nothing.
        (LocalPitch, 1000.0, 15.0, TWO, S),
        (LocalPitch, 1000.0, 15.1, TWO, I),
        (LocalPitch, 1000.0, -20.0, TWO, I),
        (LocalPitch, 1000.0, -20.1, TWO, II),
        (LocalPitch, 1000.0, 30.0, TWO, II),
        (LocalPitch, 1000.0, 30.1, TWO, III),
        (LocalPitch, 1000.0, 400.0, TWO, III),
        // A section: 1, 1.5, 2, 5 %.
        (SectionPitch, 279.4, 2.79, SMALL, S),
        (SectionPitch, 279.4, 2.80, SMALL, I),
        (SectionPitch, 279.4, -4.19, SMALL, I),
        (SectionPitch, 279.4, -4.20, SMALL, II),
        (SectionPitch, 279.4, 5.58, SMALL, II),
        (SectionPitch, 279.4, 5.59, SMALL, III),
        (SectionPitch, 279.4, -13.97, SMALL, III),
        (SectionPitch, 279.4, -13.98, SMALL, OUT),
        // A blade: 0.75, 1, 1.5, 4 %.
        (BladePitch, 400.0, 3.0, SMALL, S),
        (BladePitch, 400.0, 3.01, SMALL, I),
        (BladePitch, 400.0, -4.0, SMALL, I),
        (BladePitch, 400.0, 4.01, SMALL, II),
        (BladePitch, 400.0, 6.0, SMALL, II),
        (BladePitch, 400.0, -6.01, SMALL, III),
        (BladePitch, 400.0, 16.0, SMALL, III),
        (BladePitch, 400.0, 16.01, SMALL, OUT),
        // The propeller: 0.5, 0.75, 1, 3 %. Stamped 14 in (355.6 mm), measures 13.1 in (332.7 mm): 6.4 % short.
        (PropellerPitch, 355.6, 1.77, SMALL, S),
        (PropellerPitch, 355.6, 1.79, SMALL, I),
        (PropellerPitch, 355.6, -2.66, SMALL, I),
        (PropellerPitch, 355.6, -2.67, SMALL, II),
        (PropellerPitch, 355.6, 3.55, SMALL, II),
        (PropellerPitch, 355.6, 3.56, SMALL, III),
        (PropellerPitch, 355.6, 10.66, SMALL, III),
        (PropellerPitch, 355.6, 10.67, SMALL, OUT),
        (PropellerPitch, 355.6, -22.9, SMALL, OUT),
        // Thickness: +2, 2.5, 4, 6 %, but only -1, 1.5, 2, 4 %: thinner is weaker.
        (Thickness, 10.0, 0.20, SMALL, S),
        (Thickness, 10.0, -0.20, SMALL, II),
        (Thickness, 10.0, -0.10, SMALL, S),
        (Thickness, 10.0, -0.11, SMALL, I),
        (Thickness, 10.0, 0.25, SMALL, I),
        (Thickness, 10.0, -0.25, SMALL, III),
        (Thickness, 10.0, 0.60, SMALL, III),
        (Thickness, 10.0, -0.60, SMALL, OUT),
        (Thickness, 10.0, 0.61, SMALL, OUT),
        // Width of a section, of D/Z = 406.4/3 = 135.47: 2.03, 2.71, 4.06, 6.77 mm.
        (SectionLength, 135.466_7, 2.03, SMALL, S),
        (SectionLength, 135.466_7, 2.04, SMALL, I),
        (SectionLength, 135.466_7, -2.70, SMALL, I),
        (SectionLength, 135.466_7, 2.71, SMALL, II),
        (SectionLength, 135.466_7, -6.77, SMALL, III),
        (SectionLength, 135.466_7, 6.78, SMALL, OUT),
        // Spacing: 1, 1, 2, 2 degrees; S and I, II and III cannot be told apart by it.
        (Spacing, 120.0, 1.0, SMALL, S),
        (Spacing, 120.0, -1.01, SMALL, II),
        (Spacing, 120.0, 2.0, SMALL, II),
        (Spacing, 120.0, 2.01, SMALL, OUT),
        // Track, of the diameter: 0.5, 1, 1.5, 3 %.
        (AxialPosition, 400.0, 2.0, SMALL, S),
        (AxialPosition, 400.0, -2.1, SMALL, I),
        (AxialPosition, 400.0, 6.0, SMALL, II),
        (AxialPosition, 400.0, 12.0, SMALL, III),
        (AxialPosition, 400.0, 12.1, SMALL, OUT),
        // Tip radius: 0.2, 0.3, 0.4, 0.5 %.
        (TipRadius, 200.0, 0.4, SMALL, S),
        (TipRadius, 200.0, -0.5, SMALL, I),
        (TipRadius, 200.0, 0.8, SMALL, II),
        (TipRadius, 200.0, 1.0, SMALL, III),
        (TipRadius, 200.0, -1.1, SMALL, OUT),
        // The millimetre minima, where somebody asks for them: class S of part 2 allows 10 mm of local pitch at least.
        (LocalPitch, 400.0, 10.0, TWO_MM, S),
        (LocalPitch, 400.0, 10.0, TWO, II),
        (LocalPitch, 1000.0, 15.0, TWO_MM, S),
        (SectionPitch, 1000.0, 10.0, TWO_MM, S),
        (SectionPitch, 400.0, 7.5, TWO_MM, S),
        (SectionPitch, 400.0, 25.0, TWO_MM, III),
        (BladePitch, 3000.0, 22.5, ONE_MM, S),
        (BladePitch, 800.0, 7.5, ONE_MM, S),
        (Thickness, 50.0, -1.0, TWO_MM, S),
        (Thickness, 50.0, -1.0, TWO, II),
        // Below 0.80 m they are dropped even if asked for.
        (LocalPitch, 400.0, 10.0, Rules { part: Part::None, minima: true }, II),
        // Nothing off is class S everywhere.
        (SectionLength, 135.0, 0.0, TWO, S),
    ];
    assert!(cases.len() >= 40, "{}", cases.len());
    for (judged, reference, deviation, rules, want) in cases {
        let scale = if *judged == Spacing { 1.0 } else { 1e-3 };
        let got = class_of(*judged, deviation * scale, reference * scale, *rules);
        assert_eq!(got, *want, "{judged:?}: {deviation} of {reference}, {rules:?}");
    }
}

/// Cases derived with the tolerance tables: P = 1000 mm.
#[test]
fn a_metre_of_pitch() {
    for (class, want) in [(Class::I, [20.0, 15.0, 10.0, 7.5]), (Class::S, [15.0, 10.0, 7.5, 5.0])] {
        for (judged, want) in [LocalPitch, SectionPitch, BladePitch, PropellerPitch].into_iter().zip(want) {
            let (plus, minus) = tolerance(judged, class, 1.0, TWO).unwrap();
            assert!((1000.0 * plus - want).abs() < 1e-9 && (plus - minus).abs() < 1e-15, "{judged:?} {class}: {plus}");
        }
    }
}

/// Blades at 0, 118.8, 240.5 degrees: gaps 118.8, 121.7, 119.5, outside S and I, inside II.
#[test]
fn three_blades_out_of_step() {
    let gaps = [118.8, 121.7, 119.5];
    let worst = gaps.iter().map(|g| class_of(Spacing, g - 120.0, 120.0, TWO)).fold(S, worse);
    assert_eq!(worst, II);
}

/// Class I, 40 kg, R 0.35 m, 900 rpm: 3.53 g by the speed, 40 g by the mass; grades and crossover as derived with it.
#[test]
fn balance_cases() {
    let b = balance(Class::I, 40.0, 0.35, 15.0).unwrap();
    assert!((1000.0 * b.by_speed - 3.53).abs() < 0.005, "{b:?}");
    assert!((1000.0 * b.by_mass - 40.0).abs() < 1e-9 && b.allowed == b.by_speed);
    for (rpm, grade) in [(300.0, 8.7), (600.0, 4.4), (900.0, 2.9), (1500.0, 1.75), (2500.0, 1.05)] {
        let b = balance(Class::I, 10.0, 0.2, rpm / 60.0).unwrap();
        let by_speed = 1000.0 * b.by_speed * 0.2 / 10.0 * std::f64::consts::TAU * rpm / 60.0;
        assert!((by_speed - grade).abs() < 0.051, "{rpm}: {by_speed}");
    }
    // K m governs below sqrt(C/(K R)): 289 rpm for class I and R 0.3 m.
    let at = |rpm: f64| balance(Class::I, 10.0, 0.3, rpm / 60.0).unwrap();
    assert!(at(288.0).by_mass < at(288.0).by_speed && at(290.0).by_mass > at(290.0).by_speed);
    // ISO 21940-11: 40 kg, 900 rpm, G 6.3 -> 2674 g mm, 7.6 g at 350 mm.
    let u = unbalance_of_grade(6.3, 40.0, 15.0).unwrap();
    assert!((1e6 * u - 2674.0).abs() < 0.6, "{u}");
    assert!((1000.0 * u / 0.35 - 7.6).abs() < 0.05);
    assert!(balance(Class::S, 0.0, 0.3, 15.0).is_none() && unbalance_of_grade(6.3, 40.0, 0.0).is_none());
}

#[test]
fn parts_by_diameter() {
    assert_eq!(Part::of(0.406), Part::None);
    assert_eq!(Part::of(0.799_9), Part::None);
    assert_eq!(Part::of(0.80), Part::Two);
    assert_eq!(Part::of(2.50), Part::Two);
    assert_eq!(Part::of(2.51), Part::One);
    assert!(Part::None.statement().contains("No standard covers"));
}

/// A better class never allows more, in any quantity, part or direction; asked minima never tighten.
#[test]
fn classes_widen_in_order() {
    for judged in Judged::ALL {
        for rules in [SMALL, TWO, TWO_MM, ONE_MM] {
            let mut before = (0.0, 0.0);
            for class in Class::ALL {
                let Some((plus, minus)) = tolerance(judged, class, 0.5, rules) else { continue };
                assert!(plus >= before.0 && minus >= before.1, "{judged:?} {class}");
                let bare = tolerance(judged, class, 0.5, Rules { minima: false, ..rules }).unwrap();
                assert!(plus >= bare.0 && minus >= bare.1);
                before = (plus, minus);
            }
        }
    }
}
