//! The whole way: a job file with a survey in, the report out.

use super::report::Class;
use super::*;
use crate::report::Gravity;
use std::fmt::Write as _;

const BOAT: &str = "title = \"Kittiwake of Port Merrin\"\n[engine]\nrated_speed = \"3600 rpm\"\n[drive]\nreduction = 2.6\n[propeller]\ndiameter = \"16 in\"\npitch = \"11 in\"\nblades = 3\nhand = \"right\"\nsection = \"flat-faced\"\nmaterial = \"manganese bronze\"\n";

fn report(toml: &str) -> SurveyReport {
    let job = job::Job::read(toml).unwrap_or_else(|p| panic!("{}", job::render(&p, "t", toml, false))).job;
    survey(&job).expect("a survey")
}

/// Three blades of the given mean pitches in mm, swing gauge at three radii.
fn gauge(pitches: [f64; 3], more: &str) -> String {
    let mut toml = format!("{BOAT}[survey]\ntool = \"swing gauge\"\n{more}");
    for (name, p) in ["A", "B", "C"].iter().zip(pitches) {
        let _ = write!(toml, "[[survey.blade]]\nname = \"{name}\"\ntip_radius = \"203.2 mm\"\n");
        for (x, wobble) in [(0.5, 0.4), (0.7, -0.2), (0.9, -0.2)] {
            let rise = (p + wobble) * 30.0 / 360.0;
            let _ = write!(
                toml,
                "[[survey.blade.section]]\nradius_ratio = {x}\narc_rise = \"{rise:.4} mm\"\narc = \"30 deg\"\n"
            );
        }
    }
    toml
}

fn code<'a>(r: &'a SurveyReport, code: &str) -> &'a crate::report::Finding {
    r.findings.iter().find(|f| f.code == code).unwrap_or_else(|| panic!("{code} is not among {:?}", r.findings))
}

/// Stamped 14, measures 13.1: the sentence the trade knows.
#[test]
fn the_stamp_is_wrong() {
    let toml = gauge([333.0, 333.5, 331.7], "").replace("pitch = \"11 in\"", "pitch = \"14 in\"");
    let r = report(&toml);
    let finding = code(&r, "stamp-pitch");
    // 332.73 mm; three blades of three readings at 0.5 % each and 0.3 % common: 0.34 %, 1.1 mm.
    assert_eq!(finding.sentence, "Stamped 14, measures 13.1 (13.05 to 13.15 in): 6.4 % less.");
    assert_eq!(finding.gravity, Gravity::Mend);
    assert!(r.headline.starts_with("Stamped 14 in, it measures 13.1 in: 6.4 % less"), "{}", r.headline);
    // 6.4 % is outside class III's 3 %, and the row says the propeller's mean does it.
    assert_eq!(r.accuracy.class, None);
    assert_eq!(r.accuracy.words, "outside class III");
    assert!(r.accuracy.among_blades.starts_with("S"), "{}", r.accuracy.among_blades);
    assert!(r.accuracy.rows.iter().any(|row| row.judged == report::Judged::PropellerPitch && row.class.is_none()));
    // The pitch is not to be changed unless somebody asks: the target is the blades' own mean.
    assert!(r.repair.target.contains("own mean"), "{}", r.repair.target);
    assert!(
        r.repair.rows.iter().all(|row| row.action.starts_with("leave") && row.after.is_none()),
        "{:?}",
        r.repair.rows
    );
}

/// One blade 5 % over: blade-to-blade comes before any change of pitch.
#[test]
fn one_blade_is_off() {
    let r = report(&gauge([279.0, 279.8, 293.2], "design_pitch = \"10.5 in\"\n"));
    let finding = code(&r, "pitch-spread");
    assert_eq!(finding.gravity, Gravity::Mend);
    assert!(finding.sentence.contains("5.0 % apart") && finding.sentence.contains("C 11.5"), "{}", finding.sentence);
    assert!(r.repair.true_up_first[0].starts_with("blade C, 9.9 % over"), "{:?}", r.repair.true_up_first);
    let at = |start: &str| {
        r.repair
            .steps
            .iter()
            .position(|s| s.starts_with(start))
            .unwrap_or_else(|| panic!("{start}: {:?}", r.repair.steps))
    };
    assert!(at("True up the blades") < at("Then, and not before the blades are alike"), "{:?}", r.repair.steps);
    let row = &r.repair.rows[7];
    assert_eq!((row.blade.as_str(), row.action), ("C", "twist"));
    assert!(
        (row.target - 266.7).abs() < 0.05 && (row.before - 293.0).abs() < 0.1 && (row.correction + 26.3).abs() < 0.1,
        "{row:?}"
    );
    // tan(phi) = P/(2 pi r), r 142.24 mm: 18.157° before, 16.618° after.
    assert!((row.twist + 1.54).abs() < 0.02, "{row:?}");
}

/// Every route measures the same helix.
#[test]
fn every_route_gives_the_same_pitch() {
    let r = 0.14224_f64;
    let p = 0.2794_f64;
    let angle = (p / (std::f64::consts::TAU * r)).atan().to_degrees();
    let run = 0.080_f64;
    let rise = p * 2.0 * (0.5 * run / r).asin() / std::f64::consts::TAU;
    let points = |sign: f64| {
        let at = |a: f64| format!("{{ angle = \"{} deg\", height = \"{:.4} mm\" }}", sign * a, 1000.0 * p * a / 360.0);
        format!("point = [{}, {}, {}, {}]", at(-20.0), at(-5.0), at(10.0), at(20.0))
    };
    let along = |s: f64| {
        let angle = s * 0.1 * angle.to_radians().cos() / r;
        format!("{{ chord_fraction = {s}, height = \"{:.5} mm\" }}", 1000.0 * p * angle / std::f64::consts::TAU)
    };
    for route in [
        format!("pitch = \"{} mm\"", 1000.0 * p),
        format!("arc_rise = \"{} mm\"\narc = \"30 deg\"", 1000.0 * p / 12.0),
        format!("face_angle = \"{angle} deg\""),
        format!("chord_rise = \"{} mm\"\nchord_run = \"80 mm\"", 1000.0 * rise),
        points(1.0),
        points(-1.0),
        format!("chord = \"100 mm\"\npoint = [{}, {}, {}]", along(0.1), along(0.5), along(0.9)),
    ] {
        let toml = format!(
            "{BOAT}[[survey.blade]]\ntip_radius = \"203.2 mm\"\n[[survey.blade.section]]\nradius = \"142.24 mm\"\n{route}\n"
        );
        let got = report(&toml).blades[0].sections[0].pitch.expect("a pitch");
        assert!((got.middle - 279.4).abs() < 0.05, "{route}: {got:?}");
        assert!(got.low < got.middle && got.high > got.middle, "{route}: {got:?}");
    }
}

/// Rule and protractor on the kitchen table: a wide band, no false alarm.
#[test]
fn the_kitchen_table_says_how_little_it_knows() {
    let mut toml = format!("{BOAT}[survey]\ntool = \"protractor\"\n");
    for (name, angle) in [("A", 17.0), ("B", 18.0), ("C", 17.5)] {
        let _ = write!(
            toml,
            "[[survey.blade]]\nname = \"{name}\"\ntip_radius = \"8 in\"\n[[survey.blade.section]]\nradius = \"5.6 in\"\nface_angle = \"{angle} deg\"\n"
        );
    }
    let r = report(&toml);
    let spread = code(&r, "pitch-spread");
    assert_eq!(spread.gravity, Gravity::Well);
    assert!(spread.sentence.contains("within what was measured"), "{}", spread.sentence);
    assert_eq!(code(&r, "stamp-pitch").gravity, Gravity::Well);
    assert!(r.repair.rows.iter().all(|row| row.action.starts_with("leave")));
    assert!(r.accuracy.within_spread.contains(" to "), "{}", r.accuracy.within_spread);
    // One radius makes no outline; that is a note, not a failure.
    assert!(r.areas.is_none() && !r.notes.is_empty());
}

/// The size decides which part is named; below 0.80 m none.
#[test]
fn no_standard_covers_a_small_propeller() {
    let r = report(&gauge([279.4; 3].map(|p| p), ""));
    assert_eq!(r.accuracy.part, report::Part::None);
    assert!(r.accuracy.statement.contains("No standard covers"));
    assert!(matches!(r.accuracy.class, Some(Class::S | Class::I)), "{:?}", r.accuracy.class);
    assert!(
        r.accuracy.missing_radii.iter().any(|m| m.contains("near the hub, 0.4, 0.6, 0.8, 0.95 R")),
        "{:?}",
        r.accuracy.missing_radii
    );
    let text = format!("{r:?}").to_lowercase();
    assert!(!text.contains("reject"), "a class is never a rejection");
}

/// 0.7 kW of danger: what can break comes first, and the headline says so.
#[test]
fn cracks_and_pink_metal_stop_everything() {
    let r = report(&gauge(
        [279.4, 279.9, 279.1],
        "ring = \"dull\"\ncolour = \"pink\"\n[[survey.damage]]\nblade = \"B\"\nside = \"back\"\nradius_ratio = 0.3\nchord_fraction = 0.3\nkind = \"crack\"\n",
    ));
    assert_eq!(r.findings[0].gravity, Gravity::Stop);
    assert!(r.findings.iter().take_while(|f| f.gravity == Gravity::Stop).any(|f| f.code == "crack"));
    assert!(r.findings.iter().filter(|f| f.gravity == Gravity::Stop).all(|f| f.caution.is_some()));
    assert!(r.headline.contains("Do not go to sea"), "{}", r.headline);
    assert!(r.repair.cautions.iter().any(|c| c.contains("do not straighten or weld")), "{:?}", r.repair.cautions);
    assert!(r.damage[0].root_zone && r.repair.steps[0].contains("Crack test"));
}

#[test]
fn hand_from_the_leading_edge() {
    let r = report(&gauge([279.4, 279.9, 279.1], "leading_edge = \"right\"\n"));
    assert_eq!((r.hand, code(&r, "hand").gravity), (Some("right"), Gravity::Well));
    let r = report(&gauge([279.4, 279.9, 279.1], "leading_edge = \"left\"\n"));
    let hand = code(&r, "hand");
    assert_eq!((r.hand, hand.gravity), (Some("left"), Gravity::Mend));
    assert!(
        hand.sentence.contains("it is left-hand, and right-hand is stated") && hand.caution.is_some(),
        "{}",
        hand.sentence
    );
    assert!(hand.advice.contains("end for end does not change its hand"));
}

/// A full survey of a flat-faced ellipse: its area, mass and rake come back, and the crowd gets them.
#[test]
fn a_full_survey_reaches_the_crowd() {
    let mut toml = format!(
        "{BOAT}[survey]\ntool = \"swing gauge\"\nleading_edge = \"right\"\nsurface = \"smooth\"\n[survey.hub]\ndiameter = \"72 mm\"\nlength = \"76 mm\"\nbore_large = \"25.4 mm\"\nbore_small = \"20.65 mm\"\ntaper_length = \"76 mm\"\nkeyway_width = \"6.35 mm\"\n"
    );
    let tip = 203.2_f64;
    for (name, by, angle) in [("A", -0.5, 0.0), ("B", 0.2, 120.0), ("C", 0.4, 240.0)] {
        let _ = write!(
            toml,
            "[[survey.blade]]\nname = \"{name}\"\ntip_radius = \"203.2 mm\"\ntip_angle = \"{angle} deg\"\n"
        );
        for x in [0.25, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95_f64] {
            let t = (x - 0.177) / (1.0 - 0.177);
            let chord = 2.0 * 62.0 * (1.0 - (2.0 * t - 1.0).powi(2)).sqrt().max(0.3);
            let rise = (279.4 + by) / 12.0;
            let thick = 0.045 * 2.0 * tip * (1.0 - x) + 2.0 * x;
            let track = tip * x * 8.0_f64.to_radians().tan();
            let _ = write!(
                toml,
                "[[survey.blade.section]]\nradius_ratio = {x}\narc_rise = \"{rise:.4} mm\"\narc = \"30 deg\"\nchord = \"{chord:.1} mm\"\nthickness = \"{thick:.2} mm\"\ntrack = \"{track:.1} mm\"\ncup_drop = \"1.5 mm\"\ncup_length = \"10 mm\"\n"
            );
        }
    }
    let r = report(&toml);
    let areas = r.areas.expect("areas");
    // Simpson's rule on the widths above, by hand: the ratio is the integral of three widths over the disc.
    let (n, from) = (2000, 36.0 / 203.2);
    let width = |x: f64| {
        let t = (x - 0.177) / (1.0 - 0.177);
        2.0 * 62.0 * (1.0 - (2.0 * t - 1.0).powi(2)).max(0.0).sqrt().max(0.3)
    };
    let sum: f64 =
        (0..n).map(|i| width(from + (1.0 - from) * (i as f64 + 0.5) / n as f64)).sum::<f64>() * (1.0 - from) * tip
            / n as f64;
    let want = 3.0 * sum / (std::f64::consts::PI * tip * tip);
    assert!((areas.expanded_ratio.middle / want - 1.0).abs() < 0.05, "{} {want}", areas.expanded_ratio.middle);
    assert!(areas.projected_ratio.middle < areas.developed_ratio.middle);
    let rake = r.shape.rake.expect("rake");
    assert!(rake.low < 8.0 && rake.high > 8.0, "{rake:?}");
    assert!(r.shape.mass.is_some_and(|m| m.middle > 3.0 && m.middle < 12.0), "{:?}", r.shape.mass);
    assert_eq!(
        r.bore.as_ref().and_then(|b| b.nearest.as_ref()).map(|n| n.shaft.as_str()),
        Some("1 in"),
        "{:?}",
        r.bore
    );
    let balance = r.repair.balance.as_ref().expect("balance");
    assert!((balance.shaft_speed - 3600.0 / 2.6).abs() < 1e-6);
    assert_eq!(r.radial, "constant within what was measured");
    assert!(matches!(r.accuracy.class, Some(Class::S | Class::I)), "{:?}", r.accuracy.decided_by);

    let job = job::Job::read(&toml).expect("good").job;
    let fitted = fitted(&job).expect("something for the crowd");
    let (low, middle, high) = fitted.pitch.expect("a pitch");
    assert!(low < 0.2794 && high > 0.2794 && (middle - 0.2794).abs() < 0.001, "{middle}");
    let (low, _, high) = fitted.area_ratio.expect("area");
    assert!(low < want && want < high, "{low} {want} {high}");
    let (low, _, high) = fitted.diameter.expect("diameter");
    assert!(low < 0.4064 && high > 0.4064);
    assert_eq!((fitted.blades, fitted.hand), (Some(3), Some(job::Hand::Right)));
    assert!(fitted.cup.is_some_and(|c| c.0 > 0.01 && c.2 < 0.13), "{:?}", fitted.cup);
    assert!(fitted.roughness.is_some() && fitted.blade_spread.is_some_and(|s| s.1 < 0.01));
}

/// Pieces of a survey are enough, and nothing panics on them.
#[test]
fn any_subset_is_accepted() {
    for part in [
        "[survey]\nring = \"clear\"\n",
        "[survey.hub]\nbore_large = \"25.4 mm\"\n",
        "[survey]\ndate = \"2026-04-18\"\n[[survey.blade]]\n",
        "[[survey.blade]]\ntip_radius = \"203 mm\"\n",
        "[[survey.blade]]\ntip_radius = \"203 mm\"\n[[survey.blade.section]]\nradius_ratio = 1.0\npitch = \"279 mm\"\n",
        "[[survey.blade]]\n[[survey.blade.section]]\nradius = \"142 mm\"\nthickness = \"9 mm\"\n",
        "[[survey.damage]]\nkind = \"pits\"\n",
    ] {
        let r = report(&format!("{BOAT}{part}"));
        assert!(!r.headline.is_empty());
        let job = job::Job::read(&part.replace("radius_ratio = 1.0", "radius = \"140 mm\"")).expect("good").job;
        let bare = survey(&job).expect("a survey");
        assert!(!bare.headline.is_empty());
        let _ = fitted(&job);
    }
    let job = job::Job::read(BOAT).expect("good").job;
    assert_eq!(survey(&job).expect_err("no survey").missing[0].key, "survey");
    assert!(fitted(&job).is_none());
}

/// Every number of a report is a number, whatever was left out.
#[test]
fn no_number_is_missing_its_value() {
    let toml = gauge(
        [279.0, 281.0, 284.0],
        "[survey.hub]\nbore_large = \"25.4 mm\"\nbore_small = \"20.65 mm\"\nlength = \"76 mm\"\n",
    );
    let text = format!("{:?}", report(&toml));
    assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
}

/// Numbers for a throw, spread evenly and the same every time.
struct Throws(u64);

impl Throws {
    fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }
    /// Normal, by twelve even numbers: tails are cut at six deviations.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }
    /// An error whose 80 % band is `half` to both sides.
    fn error(&mut self, half: f64) -> f64 {
        self.normal() * half / job::assume::BAND_Z
    }
}

/// Random propellers measured with each tool's own errors, the common one included: the 80 % band of the mean pitch holds the
/// true one about 8 times in 10. With 250 of a kind the count itself scatters by 2.5 in 100; 4 of these are allowed.
#[test]
fn the_bands_hold_the_truth_eight_times_in_ten() {
    let mut t = Throws(7);
    for (tool, common) in
        [("swing gauge", 0.003), ("digital level", 0.006), ("protractor", 0.015), ("rule", 0.010), ("points", 0.003)]
    {
        let (mut inside, all) = (0, 250);
        for _ in 0..all {
            let tip = 0.15 + 0.3 * t.even();
            let true_pitch = 2.0 * tip * (0.6 + 0.5 * t.even());
            let off = 1.0 + t.error(common);
            let mut toml = format!("[survey]\ntool = \"{}\"\n", if tool == "points" { "swing gauge" } else { tool });
            for name in ["A", "B", "C"] {
                let _ = write!(toml, "[[survey.blade]]\nname = \"{name}\"\ntip_radius = \"{tip} m\"\n");
                for x in [0.5, 0.7, 0.9] {
                    let r = x * tip;
                    let p = true_pitch * off;
                    let _ = write!(toml, "[[survey.blade.section]]\nradius_ratio = {x}\n");
                    let line = match tool {
                        "swing gauge" => {
                            format!("arc_rise = \"{} m\"\narc = \"30 deg\"", p / 12.0 * (1.0 + t.error(0.005)))
                        }
                        "rule" => {
                            let run = 0.9 * r;
                            let rise = p * 2.0 * 0.45_f64.asin() / std::f64::consts::TAU;
                            format!(
                                "chord_rise = \"{} m\"\nchord_run = \"{} m\"",
                                rise + t.error(0.001),
                                run + t.error(0.001)
                            )
                        }
                        "points" => {
                            let at = |a: f64, t: &mut Throws| {
                                format!(
                                    "{{ angle = \"{a} deg\", height = \"{} m\" }}",
                                    p * (a + t.error(0.1)) / 360.0 + t.error(0.000_2)
                                )
                            };
                            format!("point = [{}, {}, {}]", at(-20.0, &mut t), at(0.0, &mut t), at(20.0, &mut t))
                        }
                        level => {
                            let half = if level == "protractor" { 1.0 } else { 0.3 };
                            let angle = (p / (std::f64::consts::TAU * r)).atan().to_degrees() + t.error(half);
                            format!("face_angle = \"{angle} deg\"")
                        }
                    };
                    let _ = writeln!(toml, "{line}");
                }
            }
            let job = job::Job::read(&toml).unwrap_or_else(|p| panic!("{}", job::render(&p, "t", &toml, false))).job;
            let mean = Reduced::of(&job).and_then(|r| r.mean_whole()).expect("a mean");
            let (low, high) = mean.band();
            inside += usize::from(low <= true_pitch && true_pitch <= high);
        }
        let share = inside as f64 / f64::from(all);
        assert!((0.70..=0.90).contains(&share), "{tool}: {share}");
    }
}

/// The example on the bench: one blade hammered straight, the other two long gone soft.
#[test]
fn the_example_on_the_bench() {
    let toml = include_str!("../../../../examples/survey/dunlin.toml");
    let r = report(toml);
    assert_eq!(code(&r, "pitch-spread").gravity, Gravity::Mend);
    assert!(r.repair.true_up_first[0].starts_with("blade C"), "{:?}", r.repair.true_up_first);
    assert_eq!(r.bore.as_ref().and_then(|b| b.nearest.as_ref()).map(|n| n.shaft.as_str()), Some("1 1/4 in"));
    assert!(r.areas.is_some() && r.shape.rake.is_some() && r.shape.mass.is_some());
    let areas = r.areas.expect("areas");
    assert!(areas.expanded_ratio.middle > 0.35 && areas.expanded_ratio.middle < 0.75, "{areas:?}");
}

/// Chord and thickness of every blade, so that weights can be told apart.
fn solid(scale_of_c: f64, pitch_of_c: f64) -> String {
    let mut toml = format!(
        "{}[survey]\ntool = \"coordinate machine\"\n[survey.hub]\ndiameter = \"70 mm\"\nlength = \"76 mm\"\n",
        BOAT.replace("[engine]\n", "[engine]\nrated_power = \"29 hp\"\n")
    );
    for (i, name) in ["A", "B", "C"].iter().enumerate() {
        let (wide, pitch) = if i == 2 { (scale_of_c, pitch_of_c) } else { (1.0, 279.4) };
        let _ = write!(
            toml,
            "[[survey.blade]]\nname = \"{name}\"\ntip_radius = \"203.2 mm\"\ntip_angle = \"{} deg\"\n",
            120 * i
        );
        for (x, chord, thick) in [(0.4, 110.0, 12.0), (0.7, 125.0, 8.0), (0.9, 95.0, 5.0)] {
            let _ = write!(
                toml,
                "[[survey.blade.section]]\nradius_ratio = {x}\npitch = \"{pitch} mm\"\nchord = \"{0} mm\"\nleading_edge = \"{1} mm\"\ntrailing_edge = \"{1} mm\"\ntrack = \"0 mm\"\nthickness = \"{2} mm\"\n",
                chord * wide,
                0.5 * chord * wide,
                thick * wide
            );
        }
    }
    toml
}

/// What turns with the shaft: nothing for blades alike, and it points at the blade that is odd.
#[test]
fn unequal_blades_turn_a_force_with_the_shaft() {
    let even = report(&solid(1.0, 279.4)).turning;
    let odd = report(&solid(1.03, 290.0)).turning;
    assert_eq!(even.heavy_side, None, "{even:?}");
    assert_eq!(odd.heavy_side.as_deref(), Some("C"), "{odd:?}");
    let (even_u, odd_u) = (even.unbalance.expect("weighed"), odd.unbalance.expect("weighed"));
    // A tape tells a side of 1.5 g at the tip no better than that: blades alike are 0 within what was measured.
    assert!(even_u.middle < 1.0 && even_u.low == 0.0 && odd_u.low > 0.0, "{even_u:?} {odd_u:?}");
    // Blade C is 1.03^2 - 1 = 6.1 % heavier than the others, about 0.9 kg with their centre near 0.5 R: 0.055 kg at 100 mm.
    assert!(odd_u.middle > 4500.0 && odd_u.middle < 6500.0, "{odd_u:?}");
    let (even_f, odd_f) = (even.force.expect("rated"), odd.force.expect("rated"));
    assert!(odd_f.low > even_f.middle && odd.moment.expect("rated").low > 0.0, "{even_f:?} {odd_f:?}");
    // Rated 21.6 kW at 3600/2.6 rpm: 143 N m, 48 a blade; 3.8 % of pitch at twice its share over 0.142 m is about 26 N.
    assert!(odd_f.high > 10.0 && odd_f.high < 60.0, "{odd_f:?}");
    assert!((odd.shaft_speed.expect("rated") - 3600.0 / 2.6).abs() < 1e-6);
}

/// A blade drawn to scale as a photograph would show it gives back its area; without widths measured the crowd takes it.
#[test]
fn a_photograph_gives_the_area() {
    use std::f64::consts::{FRAC_PI_2, TAU};
    let (hub, tip, half) = (35.0_f64, 203.2_f64, 0.42_f64);
    // A sector of half angle `half` at mid span, closing to the tip: width 2 half sqrt(1 - s^2), straight skew of 12° to the right hand.
    let at = |s: f64, side: f64| {
        let r = hub + (tip - hub) * s;
        let angle = side * half * (1.0 - s * s).sqrt() - 12.0_f64.to_radians() * s;
        [800.0 + 4.0 * r * angle.sin(), 1000.0 - 4.0 * r * angle.cos()]
    };
    let steps = 24;
    let mut points: Vec<[f64; 2]> = (0..=steps).map(|i| at(f64::from(i) / f64::from(steps), -1.0)).collect();
    points.extend((0..steps).rev().map(|i| at(f64::from(i) / f64::from(steps), 1.0)));
    let listed: Vec<String> = points.iter().map(|p| format!("{{ x = {:.2}, y = {:.2} }}", p[0], p[1])).collect();
    let toml = format!(
        "{BOAT}[survey]\n[survey.hub]\ndiameter = \"70 mm\"\n[survey.photo]\ncentre_x = 800\ncentre_y = 1000\nscale_length = \"203.2 mm\"\nscale_pixels = 812.8\npoint = [{}]\n",
        listed.join(", ")
    )
    .replace("hand = \"right\"\n", "");
    let job = job::Job::read(&toml).unwrap_or_else(|p| panic!("{}", job::render(&p, "t", &toml, false))).job;
    let r = survey(&job).expect("a survey");
    let photo = r.photo.expect("traced");
    // Exact: the integral of 2 half sqrt(1 - s^2) (hub + span s) span ds = half span (hub pi/2 + 2 span/3).
    let span = tip - hub;
    let exact = half * span * (hub * FRAC_PI_2 + 2.0 * span / 3.0);
    assert!((photo.projected.middle * 100.0 / exact - 1.0).abs() < 0.01, "{photo:?} {exact}");
    assert!(photo.projected.low * 100.0 < exact && photo.projected.high * 100.0 > exact, "{photo:?} {exact}");
    let disc = TAU / 2.0 * tip * tip;
    assert!((photo.projected_ratio.middle - 3.0 * exact / disc).abs() < 0.005, "{photo:?}");
    assert!((photo.skew.middle - 12.0).abs() < 1.0, "{photo:?}");
    // The tip trails as on a right-hand propeller, which is said and not taken for measured.
    assert_eq!(photo.hand, Some("right"));
    assert!(r.notes.iter().any(|n| n.contains("look which edge leads")), "{:?}", r.notes);
    let seen = fitted(&job).expect("it bears on performance").area_ratio.expect("an area");
    let expanded = photo.expanded_ratio.expect("the pitch is stamped");
    assert!((seen.1 - expanded.middle).abs() < 1e-12 && expanded.middle > photo.projected_ratio.middle, "{seen:?}");
}

/// A pitch that was made to fall to the tip is the target at every radius, and the class is judged against it.
#[test]
fn a_meant_distribution_is_the_target() {
    let rows = "[[survey.design]]\nradius_ratio = 0.5\npitch = \"290 mm\"\n[[survey.design]]\nradius_ratio = 0.9\npitch = \"270 mm\"\n";
    let mut toml = format!("{BOAT}[survey]\ntool = \"swing gauge\"\n{rows}");
    for name in ["A", "B", "C"] {
        let _ = write!(toml, "[[survey.blade]]\nname = \"{name}\"\ntip_radius = \"203.2 mm\"\n");
        for (x, pitch) in [(0.5, 290.0), (0.7, 280.0), (0.9, 270.0)] {
            let _ = write!(toml, "[[survey.blade.section]]\nradius_ratio = {x}\npitch = \"{pitch} mm\"\n");
        }
    }
    let r = report(&toml);
    let targets: Vec<f64> = r.repair.rows.iter().take(3).map(|row| row.target).collect();
    for (got, want) in targets.iter().zip([290.0, 280.0, 270.0]) {
        assert!((got - want).abs() < 1e-6, "{targets:?}");
    }
    assert!(r.repair.rows.iter().all(|row| row.action.starts_with("leave")), "{:?}", r.repair.rows);
    assert_eq!(r.accuracy.words, "S", "{:?}", r.accuracy);
    assert!(r.repair.target.contains("as stated in [[survey.design]]"), "{}", r.repair.target);
}
