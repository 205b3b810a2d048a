//! Surveys that are right: what they say arrives with the spread of its tool, from a job file and from a gauge's table.

use job::survey::*;
use job::*;

const BOAT: &str = "[propeller]\ndiameter = \"16 in\"\npitch = \"11 in\"\nblades = 3\n";

fn survey(lines: &str) -> Survey {
    let toml = format!("{BOAT}{lines}");
    Job::read(&toml).unwrap_or_else(|p| panic!("{}", render(&p, "t", &toml, false))).job.survey.expect("a survey")
}

/// Half width of the band, SI.
fn half(q: &Option<Quantity>) -> f64 {
    let q = q.as_ref().expect("there");
    0.5 * (q.high - q.low)
}

fn near(got: f64, want: f64) {
    assert!((got - want).abs() <= 1e-9 * want.abs().max(1e-6), "{got} is not {want}");
}

fn section(lines: &str) -> SurveySection {
    survey(&format!(
        "[[survey.blade]]\ntip_radius = \"203 mm\"\n[[survey.blade.section]]\nradius = \"142 mm\"\n{lines}"
    ))
    .blades
    .remove(0)
    .sections
    .remove(0)
}

/// The spreads that were asked for: gauge 0.5 %, level 0.3°, protractor 1°, rule 1 mm, tape 2 mm, calipers 0.1 mm.
#[test]
fn each_way_of_measuring_has_its_spread() {
    let gauge = section("arc_rise = \"23.3 mm\"\narc = \"30 deg\"");
    near(half(&gauge.arc_rise), 0.005 * 0.0233);
    near(half(&gauge.arc), 0.0);
    let rule = section("by = \"rule\"\narc_rise = \"23.3 mm\"\narc = \"30 deg\"");
    near(half(&rule.arc_rise), 0.001);
    near(half(&rule.arc), 0.5);
    near(half(&section("face_angle = \"17.4 deg\"").face_angle), 1.0);
    near(half(&section("by = \"digital level\"\nface_angle = \"17.4 deg\"").face_angle), 0.3);
    near(half(&section("chord_rise = \"25 mm\"\nchord_run = \"80 mm\"").chord_rise), 0.001);
    near(half(&section("by = \"blocks\"\nchord_rise = \"25 mm\"\nchord_run = \"80 mm\"").chord_rise), 0.000_3);
    near(half(&section("chord = \"118 mm\"").chord), 0.002);
    near(half(&section("thickness = \"9.5 mm\"").thickness), 0.000_1);
    near(half(&section("pitch = \"280 mm\"").pitch), 0.005 * 0.28);
    // A spread or a source of its own goes before the tool's.
    near(half(&section("thickness = \"9.5 mm ± 0.3\"").thickness), 0.000_3);
    near(half(&section("thickness = \"10 mm (estimate)\"").thickness), 0.001_5);
    // A survey's tool that cannot read that way is passed over: a swing gauge reads no face angle.
    let mixed = survey(
        "[survey]\ntool = \"swing gauge\"\n[[survey.blade]]\n[[survey.blade.section]]\nradius = \"142 mm\"\nface_angle = \"17.4 deg\"",
    );
    near(half(&mixed.blades[0].sections[0].face_angle), 1.0);
}

/// A rule and a protractor on the kitchen table are enough.
#[test]
fn the_kitchen_table_is_enough() {
    let toml = format!(
        "{BOAT}[survey]\ntool = \"rule\"\n{}",
        ["A", "B", "C"].map(|name| format!(
            "[[survey.blade]]\nname = \"{name}\"\ntip_radius = \"8 in\"\n[[survey.blade.section]]\nradius = \"5.6 in\"\nchord_rise = \"31 mm\"\nchord_run = \"4 in\"\n"
        ))
        .concat()
    );
    let read = Job::read(&toml).unwrap();
    assert_eq!(read.doubts, [], "{}", render(&read.doubts, "t", &toml, false));
    assert_eq!(read.job.survey.unwrap().blades.len(), 3);
}

#[test]
fn an_empty_survey_is_none() {
    assert_eq!(Job::read("title = \"x\"\n[survey]\n").unwrap().job.survey, None);
}

fn import(table: &str, tool: Option<Tool>) -> csv::Imported {
    let job = Job::read(BOAT).expect("good").job;
    let imported = csv::import(table, &job, tool).unwrap_or_else(|p| panic!("{}", render(&p, "t.csv", table, false)));
    assert_eq!(imported.doubts, [], "{}", render(&imported.doubts, "t.csv", table, false));
    imported
}

#[test]
fn a_gauge_table_arrives_whatever_its_separator_and_unit() {
    let rows = |f: &dyn Fn(usize, f64) -> String| -> String {
        (0..3).flat_map(|b| [0.5, 0.7, 0.9].map(|x| f(b, x))).collect()
    };
    let comma = format!(
        "blade,r/R,pitch mm,tip radius mm\n{}",
        rows(&|b, x| format!("{},{x},{},203\n", ["A", "B", "C"][b], 278 + b))
    );
    let tab = format!(
        "# bench\nBlade\tr/R\tPitch [in]\ttip_radius_mm\r\n{}",
        rows(&|b, x| format!("{}\t{x}\t{}\t203\r\n", ["A", "B", "C"][b], (278.0 + b as f64) / 25.4))
    );
    for table in [&comma, &tab] {
        let blades = import(table, Some(Tool::SwingGauge)).blades;
        assert_eq!(blades.len(), 3);
        for (i, blade) in blades.iter().enumerate() {
            assert_eq!(blade.sections.len(), 3);
            for section in &blade.sections {
                let pitch = section.pitch.as_ref().unwrap();
                assert!((pitch.middle - 0.001 * (278.0 + i as f64)).abs() < 1e-9);
                assert!((half(&section.pitch) / pitch.middle - 0.005).abs() < 1e-9);
            }
        }
    }
}

/// A true helix of 279.4 mm cut by three radii on three blades, as points of a gauge and as coordinates: both give back the
/// pitch, and the imported blades survive being written into a job file.
#[test]
fn points_and_coordinates_give_back_the_helix() {
    let mut gauge = "blade,radius mm,angle deg,height mm\n".to_owned();
    let mut machine = "blade;x mm;y mm;z mm\n".to_owned();
    for (b, name) in ["A", "B", "C"].iter().enumerate() {
        for r in [101.5, 142.1, 182.7_f64] {
            for a in [-20.0, -5.0, 10.0, 20.0_f64] {
                let h = 279.4 * a / 360.0;
                gauge += &format!("{name},{r},{a},{h:.4}\n");
                // The third blade lies across the half turn, where an angle would jump.
                let t = (a + 60.0 + 120.0 * b as f64).to_radians();
                machine += &format!("{name};{:.4};{:.4};{h:.4}\n", r * t.cos(), r * t.sin());
            }
        }
    }
    // The copies doubt is right here: the blades are made alike.
    let job = Job::read(BOAT).expect("good").job;
    for table in [&gauge, &machine] {
        let blades =
            csv::import(table, &job, None).unwrap_or_else(|p| panic!("{}", render(&p, "t.csv", table, false))).blades;
        assert_eq!(blades.iter().map(|b| b.sections.len()).collect::<Vec<_>>(), [3, 3, 3]);
        for s in blades.iter().flat_map(|b| &b.sections) {
            let (first, last) = (&s.points[0], &s.points[3]);
            let turn = (last.angle.as_ref().unwrap().middle - first.angle.as_ref().unwrap().middle) / 360.0;
            let rise = last.height.as_ref().unwrap().middle - first.height.as_ref().unwrap().middle;
            assert!((rise / turn - 0.2794).abs() < 1e-5, "{}", rise / turn);
        }
        let toml = Survey { blades: blades.clone(), ..Survey::default() }.to_toml();
        let again =
            Job::read(&toml).unwrap_or_else(|p| panic!("{}", render(&p, "t", &toml, false))).job.survey.unwrap();
        for (a, b) in again.blades.iter().zip(&blades) {
            assert_eq!(a.sections.len(), b.sections.len());
            for (a, b) in a.sections.iter().zip(&b.sections) {
                assert_eq!(a.by, b.by);
                for (a, b) in a.points.iter().zip(&b.points) {
                    assert!((a.height.as_ref().unwrap().middle - b.height.as_ref().unwrap().middle).abs() < 1e-7);
                }
            }
        }
    }
}

/// The example on the bench, as a job file and as its gauge's table.
#[test]
fn the_example_on_the_bench() {
    let toml = include_str!("../../../examples/survey/dunlin.toml");
    let read = Job::read(toml).unwrap_or_else(|p| panic!("{}", render(&p, "dunlin.toml", toml, false)));
    assert_eq!(read.doubts, [], "{}", render(&read.doubts, "dunlin.toml", toml, false));
    let blades = read.job.survey.as_ref().expect("a survey").blades.clone();
    let table = include_str!("../../../examples/survey/dunlin_gauge.csv");
    let imported = csv::import(table, &read.job, None)
        .unwrap_or_else(|p| panic!("{}", render(&p, "dunlin_gauge.csv", table, false)));
    assert_eq!(imported.doubts, [], "{}", render(&imported.doubts, "dunlin_gauge.csv", table, false));
    for (a, b) in blades.iter().zip(&imported.blades) {
        assert_eq!(a.sections.len(), b.sections.len());
        for (a, b) in a.sections.iter().zip(&b.sections) {
            let pitch = 12.0 * a.arc_rise.as_ref().expect("a rise").middle;
            // The table's tenths of a millimetre, and the rise's hundredths twelve times.
            assert!((pitch - b.pitch.as_ref().expect("a pitch").middle).abs() < 0.000_12);
        }
    }
}
