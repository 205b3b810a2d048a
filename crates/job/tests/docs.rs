//! What is generated from the table of keys is what is checked in, and every example in it is right.

use job::keys::{self, Shape};
use job::{Job, manual::manual, schema::schema};
use std::collections::BTreeSet;
use std::path::PathBuf;

fn same(name: &str, made: &str) {
    let path: PathBuf = [env!("CARGO_MANIFEST_DIR"), "..", "..", "docs", name].iter().collect();
    if std::env::var_os("JOB_BLESS").is_some() {
        std::fs::write(&path, made).expect("written");
    }
    let there = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(there == made, "docs/{name} is not what the table of keys makes; run the tests once with JOB_BLESS=1");
}

#[test]
fn reference_page_is_up_to_date() {
    same("job-file.md", &manual());
}

#[test]
fn schema_is_up_to_date() {
    same("job.schema.json", &schema());
}

/// Every key stands in the reference page and the schema, at its place.
#[test]
fn every_key_is_described() {
    let page = manual();
    let schema: serde_json::Value = serde_json::from_str(&schema()).unwrap();
    let mut keys_seen = 0;
    keys::each(&mut |path, key| {
        keys_seen += 1;
        assert!(page.contains(key.name), "{path}.{}", key.name);
        let mut place = &schema;
        for name in path.split('.').filter(|p| !p.is_empty()) {
            place = &place["properties"][name];
            if place["type"] == "array" {
                place = &place["items"];
            }
        }
        assert!(place["properties"][key.name]["description"].is_string(), "{path}.{} is not in the schema", key.name);
    });
    assert!(keys_seen > 90);
}

/// The example of every key is accepted at its place, and changes the job.
#[test]
fn every_example_is_right_and_reaches_the_model() {
    let nothing = Job::default();
    keys::each(&mut |path, key| {
        if matches!(key.shape, Shape::Table(_) | Shape::Tables(_)) {
            return;
        }
        let line = format!("{} = {}", key.name, key.example);
        let toml = match path {
            "" => line,
            // A curve needs both values and several points; its keys are met in the full file.
            "boat.resistance" | "engine.curve" => return,
            // The same for what belongs together in a survey.
            p if p.starts_with("survey.blade.section") || p.starts_with("survey.photo") || p == "survey.design" => {
                return;
            }
            "survey.blade" | "survey.damage" => format!("[[{path}]]\n{line}"),
            p if p.starts_with("reading.") => format!("[[reading]]\n[{p}]\n{line}"),
            "reading" if key.name == "by" => format!("[[reading]]\nengine_speed = \"2900 rpm (dashboard)\"\n{line}"),
            "reading" if key.name == "speed_by" => format!("[[reading]]\nspeed = \"6 kn\"\n{line}"),
            "reading" => format!("[[reading]]\n{line}"),
            p => format!("[{p}]\n{line}"),
        };
        let read = Job::read(&toml).unwrap_or_else(|problems| panic!("{toml}\n{problems:?}"));
        let mut job = read.job;
        if let [reading] = job.readings.as_slice()
            && *reading == job::Reading::default()
        {
            job.readings.clear();
        }
        assert_ne!(job, nothing, "{toml} changes nothing");
    });
}

/// Names of units and choices do not collide, so that what is written has one meaning.
#[test]
fn words_are_unique() {
    let mut seen = BTreeSet::new();
    for unit in job::units::UNITS {
        for name in std::iter::once(&unit.name).chain(unit.also) {
            assert!(seen.insert((format!("{:?}", unit.dimension), *name)), "{name} is there twice");
        }
    }
    keys::each(&mut |path, key| {
        if let Shape::Choice(words) = key.shape {
            let set: BTreeSet<_> = words.iter().map(|(word, _)| word).collect();
            assert_eq!(set.len(), words.len(), "{path}.{}", key.name);
        }
    });
}

/// The first example of the reference page is a job file without a doubt.
#[test]
fn the_page_opens_with_a_good_file() {
    let page = manual();
    let toml = page.split("```toml\n").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    let read = Job::read(toml).unwrap();
    assert_eq!(read.doubts, []);
    assert_eq!(read.job.readings.len(), 1);
}

/// The full file of the other tests leaves no key out.
#[test]
fn the_full_file_is_full() {
    let document = job::Document::parse(crate::FULL).unwrap();
    keys::each(&mut |path, key| {
        if matches!(key.shape, Shape::Table(_) | Shape::Tables(_)) || path.ends_with(".propeller") {
            return;
        }
        let place = match path {
            "" => key.name.to_owned(),
            "boat.resistance" | "engine.curve" => format!("{path}.0.{}", key.name),
            // The full file's propeller has three blades: a diameter across would be refused.
            "survey" if key.name == "diameter_across" => return,
            // It states its pitch radius by radius.
            "survey" if key.name == "design_pitch" => return,
            "survey.design" | "survey.photo.point" => format!("{path}.0.{}", key.name),
            "reading" => format!("reading.0.{}", key.name),
            "reading.state" => format!("reading.1.state.{}", key.name),
            "survey.blade" | "survey.damage" => format!("{path}.0.{}", key.name),
            // One of two ways to say the radius in each of the two sections.
            "survey.blade.section" if matches!(key.name, "radius_ratio" | "arc_rise" | "arc") => {
                format!("survey.blade.0.section.0.{}", key.name)
            }
            "survey.blade.section" => format!("survey.blade.0.section.1.{}", key.name),
            "survey.blade.section.point" => format!("survey.blade.0.section.1.point.0.{}", key.name),
            _ => format!("{path}.{}", key.name),
        };
        assert!(document.get(&place).is_some(), "{place} is not in full.toml");
    });
}
