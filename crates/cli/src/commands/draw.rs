//! `fairwake draw`: pictures as SVG (PNG where built in), blades as STL, templates as DXF.

use std::fs;
use std::path::Path;

use draw::{Drawn, Picture, Sheet, Theme};
use job::Job;
use serde::Serialize;

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, DrawArgs, DrawWhat};
use crate::commands::change::change;
use crate::failure::{Failure, shown};
use crate::page::Page;
use crate::{answers, load, sections};

/// Answer of `fairwake draw`.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Drawings {
    /// Title of the job.
    pub title: String,
    /// The files written.
    pub files: Vec<DrawnFile>,
    /// What could not be drawn, and why.
    pub left_out: Vec<String>,
}

/// A file written.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DrawnFile {
    /// Where.
    pub file: String,
    /// What it is.
    pub title: String,
    /// What it shows, in words.
    pub description: String,
}

/// Writes files into the folder and keeps the list of them.
struct Folder<'a> {
    path: &'a Path,
    force: bool,
    said: Drawings,
}

impl Folder<'_> {
    fn write(&mut self, name: &str, bytes: &[u8], title: &str, description: &str) -> Result<(), Failure> {
        let file = self.path.join(name);
        if !self.force && file.exists() {
            return Err(Failure::Exists(file));
        }
        fs::write(&file, bytes).map_err(|cause| Failure::Write { file: file.clone(), cause })?;
        self.said.files.push(DrawnFile {
            file: shown(&file),
            title: title.to_owned(),
            description: description.to_owned(),
        });
        Ok(())
    }
}

pub fn run(args: &DrawArgs, common: &Common, colour: bool) -> Result<Outcome, Failure> {
    if args.png && !cfg!(feature = "png") {
        return Err(Failure::Asked {
            what: "this build of the program cannot write PNG".to_owned(),
            instead: "leave --png out and take the SVG, or build with `cargo build --release --features png`"
                .to_owned(),
        });
    }
    let loaded = load::job(&args.job, colour)?;
    let job = &loaded.job;
    let date = args.date.clone().unwrap_or_else(|| last_date(job));
    let sheet =
        Sheet { boat: &job.title, date: &date, width: f64::from(args.width), language: args.language.language() };
    let wanted: Vec<DrawWhat> = if args.what.is_empty() { DrawWhat::ALL.to_vec() } else { args.what.clone() };
    let pictures = pictures(job, &sheet, &wanted, args, common)?;
    fs::create_dir_all(&args.output).map_err(|cause| Failure::Write { file: args.output.clone(), cause })?;
    let said = Drawings { title: job.title.clone(), files: Vec::new(), left_out: Vec::new() };
    let mut folder = Folder { path: &args.output, force: args.force, said };
    for (name, picture) in pictures {
        let Some(picture) = picture else {
            let why =
                if name == "bore" { "no shaft and no bore in the job" } else { "the job says no pitch or no diameter" };
            folder.said.left_out.push(format!("{name}: {why}"));
            continue;
        };
        let theme = if args.dark { Theme::Dark } else { Theme::Light };
        folder.write(&format!("{name}.svg"), picture.resolved(theme).as_bytes(), &picture.title, &picture.desc)?;
        if args.png {
            png(&mut folder, name, &picture, theme)?;
        }
    }
    if args.stl || args.dxf {
        geometry(&mut folder, job, args, &date)?;
    }
    Ok(Outcome { text: Box::new(text), report: Report::Draw(folder.said), doubts: loaded.doubts, reached: false })
}

/// The first picture asked for, on the light sheet: for documents that show it.
pub fn one(args: &DrawArgs, common: &Common) -> Result<Option<String>, Failure> {
    let job = load::job(&args.job, false)?.job;
    let date = args.date.clone().unwrap_or_else(|| last_date(&job));
    let sheet =
        Sheet { boat: &job.title, date: &date, width: f64::from(args.width), language: args.language.language() };
    let drawn = pictures(&job, &sheet, args.what.get(..1).unwrap_or_default(), args, common)?;
    Ok(drawn.into_iter().next().and_then(|(_, picture)| picture).map(|picture| picture.resolved(Theme::Light)))
}

/// The date of the last reading: the same job gives the same bytes.
fn last_date(job: &Job) -> String {
    job.readings.iter().filter_map(|r| r.date.clone()).max().unwrap_or_else(|| "no date".to_owned())
}

type Named = (&'static str, Option<Picture>);

fn pictures(
    job: &Job,
    sheet: &Sheet,
    wanted: &[DrawWhat],
    args: &DrawArgs,
    common: &Common,
) -> Result<Vec<Named>, Failure> {
    let wants = |list: &[DrawWhat]| wanted.iter().any(|w| list.contains(w));
    let change = change(&args.change);
    let changes = !change.is_empty();
    let options = answers::options(common);
    let curves = if wants(&[DrawWhat::Demand, DrawWhat::Flow, DrawWhat::Speeds, DrawWhat::Cavitation]) {
        Some(if changes { counsel::curves_after(job, &change, &options)? } else { counsel::curves(job, &options)? })
    } else {
        None
    };
    let mut drawn = Vec::new();
    for what in wanted {
        let picture = match (what, &curves) {
            (DrawWhat::Demand, Some(curves)) => {
                let comparison = if changes { Some(answers::compare(job, &change, common)?) } else { None };
                Some(draw::demand::picture(sheet, curves, comparison.as_ref()))
            }
            (DrawWhat::Flow, Some(curves)) => Some(draw::flow::picture(sheet, &curves.flows)),
            (DrawWhat::Speeds, Some(curves)) => Some(draw::speeds::picture(sheet, curves)),
            (DrawWhat::Cavitation, Some(curves)) => Some(draw::cavitation::picture(sheet, curves)),
            (DrawWhat::Shortlist, _) => Some(draw::shortlist::picture(sheet, &answers::choose(job, common)?)),
            (DrawWhat::Known, _) => Some(draw::known::picture(sheet, &counsel::evidence(job, &options)?)),
            (DrawWhat::Causes, _) => Some(draw::causes::picture(sheet, &answers::diagnose(job, common)?)),
            (DrawWhat::Rates, _) => Some(draw::rates::picture(sheet, &answers::fit(job, common)?)),
            (DrawWhat::Walk, _) => Some(draw::walk::picture(sheet, &answers::fit(job, common)?)),
            (DrawWhat::Bore, _) => draw::bore::picture(sheet, &answers::order(job, common)?.bore),
            (DrawWhat::Propeller, _) => Drawn::of_job(job).map(|d| draw::propeller::picture(sheet, &d)),
            (DrawWhat::Place, _) => draw::place::Place::of_job(job).map(|p| draw::place::picture(sheet, &p)),
            _ => None,
        };
        drawn.push((what.file(), picture));
    }
    Ok(drawn)
}

#[cfg(feature = "png")]
fn png(folder: &mut Folder, name: &str, picture: &Picture, theme: Theme) -> Result<(), Failure> {
    let bytes = draw::png::png(picture, 2.0, theme)
        .map_err(|error| Failure::Asked { what: error.to_string(), instead: "take the SVG beside it".to_owned() })?;
    folder.write(&format!("{name}.png"), &bytes, &picture.title, &picture.desc)
}

#[cfg(not(feature = "png"))]
fn png(_: &mut Folder, _: &str, _: &Picture, _: Theme) -> Result<(), Failure> {
    Ok(())
}

fn geometry(folder: &mut Folder, job: &Job, args: &DrawArgs, date: &str) -> Result<(), Failure> {
    let Some(drawn) = Drawn::of_job(job) else {
        folder.said.left_out.push("geometry: the job says no pitch or no diameter".to_owned());
        return Ok(());
    };
    let p = &drawn.propeller;
    if args.stl {
        folder.write("blade-1.stl", &draw::stl::blade(p, 0), "One blade, STL in mm", &drawn.origin)?;
        folder.write("hub.stl", &draw::stl::hub(p), "The hub, STL in mm", &drawn.origin)?;
        folder.write("propeller.stl", &draw::stl::propeller(p), "The propeller, STL in mm", &drawn.origin)?;
    }
    if args.dxf {
        // Blades alike need one file.
        let count = if drawn.surveyed { p.blades.len() } else { 1 };
        for i in 0..count {
            let text = draw::dxf::templates(p, i, &job.title, date);
            let title = "Expanded outline and pitch templates, full size, DXF R12 in mm";
            folder.write(&format!("templates-{}.dxf", i + 1), text.as_bytes(), title, &drawn.origin)?;
        }
    }
    Ok(())
}

pub fn text(report: &Report, _: &Common) -> String {
    let mut page = Page::new();
    let Report::Draw(said) = report else { return page.finish() };
    let count = said.files.len();
    let headline = match count {
        0 => "Nothing was drawn.".to_owned(),
        1 => "One file was written.".to_owned(),
        _ => format!("{count} files were written."),
    };
    sections::title(&mut page, &said.title);
    sections::headline(&mut page, &headline);
    for file in &said.files {
        page.hanging(&format!("{}  {}", file.file, file.title), crate::ink::Ink::Plain, "  ", "    ");
    }
    for why in &said.left_out {
        page.hanging(&format!("left out: {why}"), crate::ink::Ink::Plain, "  ", "    ");
    }
    page.finish()
}
