//! Odd but readable jobs: every answer stays finite and none panics.

use crate::job;
use counsel::{Change, Options, choose, compare, diagnose, judge};

const FEW: Options = Options { boats: 96, seed: 7 };

/// A small generator of whole numbers, so that a failure can be repeated (constants of Knuth's MMIX generator).
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, n: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % n
    }

    fn pick<'a>(&mut self, list: &[&'a str]) -> &'a str {
        list[self.below(list.len() as u64) as usize]
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.below(1000) as f64 / 999.0)
    }
}

fn odd(n: &mut Numbers) -> String {
    let mut text = String::from("[boat]\n");
    text += &format!("kind = \"{}\"\n", n.pick(&["displacement", "sailing", "semi-displacement", "planing"]));
    text += &format!("length_overall = \"{:.1} m\"\n", n.between(3.0, 30.0));
    if n.below(2) == 0 {
        text += &format!("displacement = \"{:.0} kg\"\n", n.between(200.0, 80_000.0));
    }
    if n.below(3) == 0 {
        text += &format!("growth = \"{}\"\n", n.pick(&["clean", "heavy slime", "heavy shell"]));
    }
    text += &format!("screws = {}\n", 1 + n.below(2));
    text += &format!("[engine]\nrated_power = \"{:.1} kW\"\n", n.between(2.0, 600.0));
    if n.below(2) == 0 {
        text += &format!("rated_speed = \"{:.0} rpm\"\n", n.between(1200.0, 6000.0));
    }
    text += &format!("[drive]\nreduction = {:.2}\n", n.between(0.8, 5.0));
    let diameter = n.between(0.15, 1.5);
    text += &format!(
        "[propeller]\ndiameter = \"{:.0} mm\"\npitch = \"{:.0} mm\"\nblades = {}\n",
        1000.0 * diameter,
        (1000.0 * diameter * n.between(0.4, 1.8)).clamp(110.0, 2900.0),
        2 + n.below(5)
    );
    if n.below(2) == 0 {
        text += &format!(
            "[[reading]]\nfull_throttle = true\nengine_speed = \"{:.0} rpm\"\nspeed = \"{:.1} kn\"\n",
            n.between(800.0, 6000.0),
            n.between(3.0, 45.0)
        );
    }
    text
}

#[test]
fn every_answer_to_an_odd_job_is_finite() {
    let mut numbers = Numbers(2026);
    for i in 0..120 {
        let text = odd(&mut numbers);
        let job = job(&text);
        let answer = judge(&job, &FEW).unwrap_or_else(|lack| panic!("{lack}\n{text}"));
        // serde writes a number that is not finite as null.
        let json = serde_json::to_string(&answer).unwrap();
        assert!(!json.contains(":null,\"middle\"") && !json.contains("\"low\":null"), "{i}:\n{text}\n{json}");
        let change = Change { pitch: Some(0.4), blades: Some(4), ..Change::default() };
        let json = serde_json::to_string(&compare(&job, &change, &FEW).unwrap()).unwrap();
        assert!(!json.contains("\"low\":null"), "{i}:\n{text}\n{json}");
        if i % 12 == 0 {
            let json = serde_json::to_string(&choose(&job, &FEW).unwrap()).unwrap();
            assert!(!json.contains("\"low\":null") && !json.contains("\"merit\":null"), "{i}:\n{text}\n{json}");
            let json = serde_json::to_string(&diagnose(&job, &FEW).unwrap()).unwrap();
            assert!(!json.contains("\"chance\":null") && !json.contains("\"worth\":null"), "{i}:\n{text}\n{json}");
        }
    }
}
