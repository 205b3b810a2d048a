//! Pictures: bytes, form, size, hostile input.
use crate::common::{Case, all, job, kittiwake};
use counsel::report::Band;
use draw::{Picture, Sheet, Theme};
use words::Language;

const WIDTHS: [f64; 2] = [360.0, 1200.0];
const LONGEST: usize = 40_000;

fn sheet(boat: &str, width: f64) -> Sheet<'_> {
    Sheet { boat, date: "2 May 2026", width, language: Language::English }
}

/// What must hold for any picture: well-formed, short, self-contained, nothing outside the sheet, no broken number.
pub fn sound(name: &str, picture: &Picture) {
    let svg = &picture.svg;
    assert!(svg.len() < LONGEST, "{name}: {} bytes", svg.len());
    assert!(!svg.contains("NaN") && !svg.contains("inf"), "{name} holds a broken number");
    assert!(!svg.contains("url(") && !svg.contains("href") && !svg.contains("@import"), "{name} refers elsewhere");
    let mut reader = quick_xml::Reader::from_str(svg);
    reader.config_mut().check_end_names = true;
    let (mut depth, mut elements, mut named) = (0, 0, (false, false));
    let mut size = (0.0, 0.0);
    // Where the text under way begins, and which way it runs: 0 to the right, 0.5 both ways, 1 to the left.
    let mut line: Option<(f64, f64)> = None;
    loop {
        use quick_xml::events::Event;
        let event = reader.read_event().unwrap_or_else(|e| panic!("{name}: {e}"));
        let start = match &event {
            Event::Start(e) => {
                depth += 1;
                Some(e.clone())
            }
            Event::Empty(e) => Some(e.clone()),
            Event::End(_) => {
                depth -= 1;
                None
            }
            Event::Eof => break,
            Event::Text(text) => {
                if let Some((x, hang)) = line.take() {
                    // Latin text of 12 px runs at least 5.5 px a character.
                    let wide = 5.5 * text.chars().filter(char::is_ascii).count() as f64;
                    let (left, right) = (x - hang * wide, x + (1.0 - hang) * wide);
                    assert!(left > -1.0 && right < size.0 + 1.0, "{name}: {:?} runs off the sheet", &**text);
                }
                None
            }
            _ => None,
        };
        let Some(e) = start else { continue };
        elements += 1;
        let get =
            |key: &str| e.attributes().map(|a| a.unwrap()).find(|a| a.key.as_ref() == key).map(|a| a.value.to_string());
        match e.name().as_ref() {
            "svg" => size = (get("width").unwrap().parse().unwrap(), get("height").unwrap().parse().unwrap()),
            "title" => named.0 = true,
            "desc" => named.1 = true,
            "text" => {
                let (x, y): (f64, f64) = (get("x").unwrap().parse().unwrap(), get("y").unwrap().parse().unwrap());
                line = Some((
                    x,
                    match get("text-anchor").as_deref() {
                        Some("middle") => 0.5,
                        Some("end") => 1.0,
                        _ => 0.0,
                    },
                ));
                assert!(x > -1.0 && x < size.0 + 1.0 && y > 0.0 && y < size.1, "{name}: text at {x} {y} of {size:?}");
            }
            _ => {}
        }
    }
    assert!(depth == 0 && elements > 5 && named == (true, true), "{name}");
    assert!(!picture.title.is_empty() && !picture.desc.is_empty());
}

#[test]
fn pictures_stay_as_they_were_looked_at() {
    for width in WIDTHS {
        for (name, picture) in all(kittiwake(), &sheet("Kittiwake", width)) {
            sound(name, &picture);
            insta::assert_snapshot!(format!("{name}_{width}"), picture.svg.replace("><", ">\n<"));
        }
    }
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let (a, b) = (all(kittiwake(), &sheet("Kittiwake", 700.0)), all(kittiwake(), &sheet("Kittiwake", 700.0)));
    assert!(a == b);
}

#[test]
fn strange_names_break_nothing() {
    let long = "The very long name of a boat that nobody could paint on a transom ".repeat(12);
    let names = [
        long.as_str(),
        "نورس من ميناء مِرّين",
        "שחף \u{202e}<script>alert(1)</script>\u{2066}",
        "A & B <\"'>\u{0}\u{7}\u{ffff}",
        "",
        "一艘名字很长很长很长很长很长很长很长很长很长很长很长很长很长很长的船",
    ];
    for name in names {
        let mut case = kittiwake().clone();
        for mark in &mut case.curves.marks {
            mark.label = name.to_owned();
        }
        for reading in &mut case.evidence.readings {
            reading.reading = name.to_owned();
        }
        case.choice.shortlist[0].what = name.to_owned();
        case.choice.headline = name.to_owned();
        case.diagnosis.causes[0].cause = name.to_owned();
        case.drawn.origin = name.to_owned();
        for width in [320.0, 360.0, 700.0, 1200.0, 2000.0] {
            for (which, picture) in all(&case, &Sheet { boat: name, date: name, width, language: Language::English }) {
                sound(which, &picture);
                assert!(!picture.svg.contains("<script") && !picture.svg.contains('\u{202e}'));
            }
        }
    }
}

fn stretched(case: &mut Case, factor: f64) {
    let scale = |b: &mut Band| {
        b.low *= factor;
        b.middle *= factor;
        b.high *= factor;
    };
    for p in case.curves.engine.iter_mut().chain(case.curves.demand.iter_mut().flat_map(|d| &mut d.points)) {
        scale(&mut p.power);
        p.engine_speed *= factor;
    }
    for r in &mut case.curves.speeds {
        r.speed *= factor;
        for b in [&mut r.engine_speed, &mut r.fuel, &mut r.apparent_slip, &mut r.sigma, &mut r.tau] {
            scale(b);
        }
    }
    for c in &mut case.choice.shortlist {
        scale(&mut c.full_throttle.engine_speed);
        scale(&mut c.cruise_fuel);
    }
    for r in &mut case.evidence.readings {
        scale(&mut r.engine_speed);
    }
    scale(&mut case.evidence.engine_speed_before);
    for f in &mut case.curves.flows {
        f.brake *= factor;
    }
    case.place.immersion.0 *= factor;
    case.place.largest = case.place.largest.map(|l| l * factor);
}

#[test]
fn extreme_values_break_nothing() {
    for factor in [0.0, 1e-6, 1e6, -1.0, f64::NAN, f64::INFINITY] {
        let mut case = kittiwake().clone();
        stretched(&mut case, factor);
        for width in WIDTHS {
            for (which, picture) in all(&case, &sheet("Kittiwake", width)) {
                let svg = &picture.svg;
                assert!(svg.len() < LONGEST && !svg.contains("NaN\"") && svg.ends_with("</svg>\n"), "{which} {factor}");
            }
        }
    }
}

#[test]
fn nothing_known_is_said_not_drawn() {
    let mut case = kittiwake().clone();
    case.curves.engine.clear();
    case.curves.demand.clear();
    case.curves.speeds.clear();
    case.curves.marks.clear();
    case.curves.flows.clear();
    case.choice.shortlist.clear();
    case.evidence.readings.clear();
    case.evidence.together.clear();
    case.diagnosis.causes.clear();
    case.drawn.propeller.blades.clear();
    for width in WIDTHS {
        for (name, picture) in all(&case, &sheet("Kittiwake", width)) {
            sound(name, &picture);
        }
    }
}

#[test]
fn every_demo_boat_has_a_propeller_and_a_place() {
    for boat in ["kittiwake", "gannet", "razorbill", "turnstone", "cormorant", "guillemot"] {
        let job = job(boat);
        for width in WIDTHS {
            let sheet = sheet(&job.title, width);
            if let Some(drawn) = draw::Drawn::of_job(&job) {
                sound(boat, &draw::propeller::picture(&sheet, &drawn));
            }
            if let Some(place) = draw::place::Place::of_job(&job) {
                sound(boat, &draw::place::picture(&sheet, &place));
            }
        }
    }
}

#[test]
fn a_theme_leaves_no_variable() {
    for (_, picture) in all(kittiwake(), &sheet("Kittiwake", 700.0)) {
        let (light, dark) = (picture.resolved(Theme::Light), picture.resolved(Theme::Dark));
        assert!(!light.contains("var(") && !dark.contains("var(") && light != dark);
    }
}

/// The parts of the power sum to the whole.
#[test]
fn power_is_all_accounted_for() {
    let flows = &kittiwake().curves.flows;
    assert_eq!(flows.len(), 2);
    for f in flows {
        let sum = f.drive + f.axial + f.swirl + f.friction + f.shaft_angle + f.interaction + f.hull;
        assert!((sum - f.brake).abs() < 1e-9 * f.brake, "{sum} of {}", f.brake);
        assert!(f.axial > 0.0 && f.swirl > 0.0 && f.friction > 0.0 && f.hull > 0.0);
    }
}
