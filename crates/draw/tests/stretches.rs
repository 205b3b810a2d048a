//! A trial log over time.

use draw::Sheet;
use draw::stretches::{Moment, Steady, Words, picture};

const WORDS: Words = Words {
    sentence: "Two readings are offered.",
    name: "The log over time",
    desc: "Speed and engine speed.",
    speed: "speed, kn",
    engine_speed: "engine speed, rpm",
    clock: "time, UTC",
    elapsed: "time from the start",
};

/// An hour's ladder both ways; where nothing is held, everything wanders.
fn ladder(seconds: u32) -> Vec<Moment> {
    (0..seconds)
        .map(|t| {
            let step = f64::from(t / 300);
            let ripple = (f64::from(t) * 0.7).sin();
            Moment {
                time: 1.789e9 + f64::from(t),
                speed: Some(4.0 + 0.3 * step + 0.1 * ripple),
                engine_speed: (t % 7 != 0).then_some(1200.0 + 150.0 * step + 10.0 * ripple),
            }
        })
        .collect()
}

fn steady() -> Vec<Steady> {
    (0..10_u32)
        .map(|n| Steady {
            from: 1.789e9 + f64::from(300 * n) + 20.0,
            to: 1.789e9 + f64::from(300 * n) + 250.0,
            number: n as usize / 2 + 1,
            course: if n % 2 == 0 { "045\u{b0}" } else { "225\u{b0}" }.to_owned(),
            speed: Some(4.0 + 0.3 * f64::from(n)),
            engine_speed: Some(1200.0 + 150.0 * f64::from(n)),
        })
        .collect()
}

#[test]
fn an_hour_is_drawn_short_with_every_stretch_shaded_in_both_fields() {
    for width in [360.0, 1200.0] {
        let sheet = Sheet { boat: "Guillemot", date: "13 September 2026", width, language: words::Language::English };
        let drawn = picture(&sheet, &ladder(3600), &steady(), Some(|_| None), &WORDS);
        assert!(drawn.svg.len() < 40_000, "{}", drawn.svg.len());
        assert_eq!(drawn.svg.matches("class=\"w\"").count(), 20);
        assert_eq!(drawn.svg.matches("class=\"r\"").count(), 20, "a mean in each");
        assert!(!drawn.svg.contains("NaN") && !drawn.svg.contains("inf"));
        for number in 1..=5 {
            assert!(
                drawn.svg.contains(&format!(">{number}<")) || drawn.svg.contains(&format!(">{number}: 0")),
                "{number}"
            );
        }
    }
}

#[test]
fn nothing_one_moment_and_broken_values_are_drawn_without_a_broken_number() {
    let sheet = Sheet { boat: "A", date: "", width: 360.0, language: words::Language::English };
    let bad = Moment { time: 3.0, speed: Some(f64::NAN), engine_speed: Some(f64::INFINITY) };
    for log in [vec![], vec![bad], vec![Moment { time: f64::NAN, ..bad }], ladder(1)] {
        let svg = picture(&sheet, &log, &steady(), None, &WORDS).svg;
        assert!(!svg.contains("NaN") && !svg.contains(">inf"), "{svg}");
    }
}
