//! `fairwake survey`: the propeller as it was measured: pitches, accuracy class, repair sheet, bore.

mod page;

use std::path::Path;

use job::{Document, Job, survey};

use crate::Outcome;
use crate::answer::Report;
use crate::args::SurveyArgs;
use crate::failure::{Failure, shown};
use crate::load::{self, Loaded};
use crate::{answers, save};

pub use page::text;

pub fn run(args: &SurveyArgs, colour: bool) -> Result<Outcome, Failure> {
    let mut loaded = load::job(&args.job, colour)?;
    if let Some(gauge) = &args.gauge {
        import(gauge, args, &mut loaded, colour)?;
    }
    if let Some(outline) = &args.outline {
        clicked(outline, args, &mut loaded, colour)?;
    }
    if args.add && args.gauge.is_none() && args.outline.is_none() {
        return Err(Failure::Asked {
            what: "nothing to add: no table was named".to_owned(),
            instead: "name it with --gauge or --outline".to_owned(),
        });
    }
    let report = answers::survey(&loaded.job)?;
    Ok(Outcome {
        text: Box::new(text),
        report: Report::Survey(Box::new(report)),
        doubts: loaded.doubts,
        reached: false,
    })
}

/// Puts a gauge's blades into the job, and into its file when that is asked for.
fn import(gauge: &Path, args: &SurveyArgs, loaded: &mut Loaded, colour: bool) -> Result<(), Failure> {
    let table = load::text_of(gauge, false)?;
    let name = shown(gauge);
    let lay_out = |problems: &[job::Problem]| job::render(problems, &name, &table, colour);
    let imported =
        survey::csv::import(&table, &loaded.job, args.tool).map_err(|problems| Failure::Job(lay_out(&problems)))?;
    if !imported.doubts.is_empty() {
        loaded.doubts.push_str(&lay_out(&imported.doubts));
    }
    let blades = imported.blades;
    if args.add {
        add(&blades, args, loaded)?;
    }
    let measured = loaded.job.survey.get_or_insert_default();
    measured.tool = args.tool.or(measured.tool);
    measured.blades = blades;
    Ok(())
}

/// Puts the points clicked round a blade into the job, and into its file when that is asked for.
fn clicked(outline: &Path, args: &SurveyArgs, loaded: &mut Loaded, colour: bool) -> Result<(), Failure> {
    let table = load::text_of(outline, false)?;
    let points = survey::outline::points(&table)
        .map_err(|problems| Failure::Job(job::render(&problems, &shown(outline), &table, colour)))?;
    let Some(photo) = loaded.job.survey.as_mut().and_then(|survey| survey.photo.as_mut()) else {
        return Err(Failure::Asked {
            what: format!("{} does not say where the shaft's centre is on the photograph, and its scale", loaded.name),
            instead: "write [survey.photo] with centre_x, centre_y, scale_length and scale_pixels".to_owned(),
        });
    };
    if !photo.points.is_empty() {
        return Err(Failure::Asked {
            what: format!("{} holds a clicked outline already", loaded.name),
            instead: "take its points out first, or leave --outline out".to_owned(),
        });
    }
    photo.points = points;
    let mut problems = Vec::new();
    survey::find_problems(&loaded.job, &mut problems);
    if let Some(problem) = problems.iter().find(|p| p.code == "outline-crosses") {
        return Err(Failure::Asked {
            what: format!("{}: {}", shown(outline), problem.message),
            instead: problem.help.clone().unwrap_or_default(),
        });
    }
    if args.add {
        let mut rows = String::new();
        for [x, y] in loaded.job.survey.iter().flat_map(|s| &s.photo).flat_map(|p| &p.points) {
            rows.push_str(&format!("\n[[survey.photo.point]]\nx = {x}\ny = {y}\n"));
        }
        append(&rows, args, loaded)?;
    }
    Ok(())
}

/// Adds the blades at the end of the job file, without touching what stands in it.
fn add(blades: &[survey::SurveyBlade], args: &SurveyArgs, loaded: &Loaded) -> Result<(), Failure> {
    let asked = |what: String, instead: &str| Err(Failure::Asked { what, instead: instead.to_owned() });
    if loaded.job.survey.as_ref().is_some_and(|survey| !survey.blades.is_empty()) {
        let what = format!("{} holds surveyed blades already", loaded.name);
        return asked(what, "take them out first, or look at the gauge's table without --add");
    }
    // Where a [survey] stands already only blades can follow; their tool is then that survey's.
    let tool = if loaded.job.survey.is_none() { args.tool } else { None };
    let more = survey::Survey { tool, blades: blades.to_vec(), ..survey::Survey::default() }.to_toml();
    append(&more, args, loaded)
}

/// Adds a text at the end of the job file.
fn append(more: &str, args: &SurveyArgs, loaded: &Loaded) -> Result<(), Failure> {
    if args.job == Path::new("-") {
        return Err(Failure::Asked {
            what: "a job read from standard input cannot be added to".to_owned(),
            instead: "name the job file".to_owned(),
        });
    }
    let text = format!("{}\n{more}", loaded.text.trim_end());
    // Read before it is written: a job file is never left worse than it was.
    let refused = |problems: Vec<job::Problem>| Failure::Job(job::render(&problems, &loaded.name, &text, false));
    Document::parse(&text).map_err(refused)?;
    Job::read(&text).map_err(refused)?;
    save::replacing(&args.job, &text)
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;

    #[test]
    fn a_gauge_table_goes_into_the_job_file_once() {
        let folder = tempfile::tempdir().expect("a temporary folder");
        let (job, gauge) = (folder.path().join("a.toml"), folder.path().join("g.csv"));
        let before = "# mine\n[propeller]\ndiameter = \"16 in\"\npitch = \"11 in\"\nblades = 3\n";
        fs::write(&job, before).expect("written");
        let rows: String = ["A", "B", "C"].map(|b| format!("{b},0.7,280,203\n{b},0.9,281,203\n")).concat();
        fs::write(&gauge, format!("blade,r/R,pitch mm,tip radius mm\n{rows}")).expect("written");
        let args = SurveyArgs {
            job: job.clone(),
            gauge: Some(gauge),
            tool: Some(survey::Tool::SwingGauge),
            outline: None,
            add: true,
        };
        let mut loaded = load::job(&job, false).expect("a job");
        import(args.gauge.as_deref().expect("named"), &args, &mut loaded, false).expect("added");
        let after = fs::read_to_string(&job).expect("there");
        assert!(after.starts_with(before), "{after}");
        let again = load::job(&job, false).expect("still a job");
        let (of_file, of_table) = (again.job.survey.expect("a survey"), loaded.job.survey.expect("a survey"));
        assert_eq!(of_file.tool, of_table.tool);
        for (a, b) in of_file.blades.iter().zip(&of_table.blades) {
            for (a, b) in a.sections.iter().zip(&b.sections) {
                let (a, b) = (a.pitch.as_ref().expect("a pitch"), b.pitch.as_ref().expect("a pitch"));
                assert!((a.middle - b.middle).abs() < 1e-7 && (a.high - b.high).abs() < 1e-7, "{a:?} {b:?}");
            }
        }
        let mut once_more = load::job(&job, false).expect("a job");
        let refused = import(args.gauge.as_deref().expect("named"), &args, &mut once_more, false);
        assert!(matches!(refused, Err(Failure::Asked { .. })));
        assert_eq!(fs::read_to_string(&job).expect("there"), after);
    }
}
