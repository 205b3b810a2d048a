//! `fairwake survey`: the gauge's table, and what is refused.

use std::fs;

use crate::command::{fairwake, json, root, said};

/// The pitches of Cormorant's blades as a gauge writes them.
fn gauge() -> String {
    let file = fs::read_to_string(root().join("examples/cormorant.toml")).expect("the example");
    let value = |line: &str| line.split_once('=').map(|(_, value)| value.trim().trim_matches('"').to_owned());
    let mut table = "blade,r/R,pitch mm,tip radius mm\n".to_owned();
    let (mut blade, mut tip, mut radius) = (String::new(), String::new(), String::new());
    let surveyed = file.split_once("[[survey.blade]]").map_or("", |(_, rest)| rest);
    for line in surveyed.lines() {
        match line.split_once(' ').map(|(key, _)| key) {
            Some("name") => blade = value(line).expect("a name"),
            Some("tip_radius") => tip = value(line).expect("a radius").replace(" mm", ""),
            Some("radius_ratio") => radius = value(line).expect("a radius"),
            Some("pitch") => {
                table.push_str(&format!(
                    "{blade},{radius},{},{tip}\n",
                    value(line).expect("a pitch").replace(" mm", "")
                ));
            }
            _ => {}
        }
    }
    table
}

#[test]
fn a_gauge_table_says_the_same_as_the_job_file() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let table = folder.path().join("gauge.csv");
    fs::write(&table, gauge()).expect("written");
    let whole = fs::read_to_string(root().join("examples/cormorant.toml")).expect("the example");
    let job = folder.path().join("cormorant.toml");
    let bare = whole.split_once("[[survey.blade]]").map_or("", |(before, _)| before);
    fs::write(&job, bare).expect("written");
    let (job_name, table) = (job.to_str().expect("a plain path"), table.to_str().expect("a plain path"));
    let of_file = json(&["survey", "examples/cormorant.toml"]);
    let of_table = json(&["survey", job_name, "--gauge", table]);
    assert_eq!(fs::read_to_string(&job).expect("there"), bare, "nothing is written unasked");
    for key in ["mean_pitch", "blade_spread", "hand", "diameter"] {
        assert_eq!(of_table[key], of_file[key], "{key}");
    }
    let added = json(&["survey", job_name, "--gauge", table, "--add"]);
    let after = fs::read_to_string(&job).expect("there");
    assert!(after.starts_with(bare.trim_end()), "what stood in the file is as it was");
    let again = json(&["survey", job_name]);
    assert_eq!(again["mean_pitch"], added["mean_pitch"]);
}

#[test]
fn what_cannot_be_surveyed() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let broken = folder.path().join("broken.csv");
    fs::write(&broken, "blade,radius mm,pitch mm\nA,280,-12\nA,two hundred,280\n").expect("written");
    let broken = broken.to_str().expect("a plain path");
    for (arguments, why) in [
        (vec!["survey", "examples/kittiwake.toml"], "survey is missing"),
        (vec!["survey", "examples/kittiwake.toml", "--gauge", "none.csv"], "there is no such file"),
        (vec!["survey", "examples/kittiwake.toml", "--add"], "no table was named"),
        (vec!["survey", "examples/kittiwake.toml", "--gauge", broken], "broken.csv"),
        (vec!["survey", "examples/kittiwake.toml", "--tool", "rule"], "--gauge"),
    ] {
        let said = said(&mut fairwake(&arguments));
        assert!(said.starts_with("code 2\n--- out\n--- err\n"), "{arguments:?}: {said}");
        assert!(said.contains(why), "{arguments:?}: {said}");
    }
}

/// Points clicked round a blade go into the job file, and its page then speaks of the photograph.
#[test]
fn a_clicked_outline_goes_into_the_job_file() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let (job, clicks) = (folder.path().join("a.toml"), folder.path().join("clicks.csv"));
    let before = "[propeller]\ndiameter = \"16 in\"\npitch = \"11 in\"\nblades = 3\n[survey.hub]\ndiameter = \"70 mm\"\n[survey.photo]\ncentre_x = 800\ncentre_y = 1000\nscale_length = \"203 mm\"\nscale_pixels = 812\n";
    fs::write(&job, before).expect("written");
    fs::write(
        &clicks,
        "x px,y px\n760,860\n690,700\n620,480\n640,300\n760,190\n860,200\n930,320\n960,480\n900,700\n840,860\n",
    )
    .expect("written");
    let paths = [&job, &clicks].map(|path| path.to_str().expect("a plain path"));
    let page = said(&mut fairwake(&["survey", paths[0], "--outline", paths[1], "--add"]));
    assert!(page.starts_with("code 0") && page.contains("One blade by the photograph"), "{page}");
    let after = fs::read_to_string(&job).expect("there");
    assert!(after.starts_with(before) && after.matches("[[survey.photo.point]]").count() == 10, "{after}");
    assert_eq!(said(&mut fairwake(&["survey", paths[0]])), page);
    let twice = said(&mut fairwake(&["survey", paths[0], "--outline", paths[1], "--add"]));
    assert!(twice.starts_with("code 2") && twice.contains("holds a clicked outline already"), "{twice}");
    fs::write(&clicks, "1,2\n3,four\n").expect("written");
    let bad = said(&mut fairwake(&["survey", paths[0], "--outline", paths[1]]));
    assert!(bad.starts_with("code 2") && bad.contains("3,four"), "{bad}");
    let nowhere = said(&mut fairwake(&["survey", "examples/cormorant.toml", "--outline", paths[1]]));
    assert!(nowhere.starts_with("code 2"), "{nowhere}");
}
