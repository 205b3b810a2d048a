//! `fairwake openwater`: thrust, torque and efficiency of a propeller by a published series.

use hydro::openwater::{Screw, bseries, cup, roughness};
use job::{Cup, Section};
use serde::Serialize;

use crate::Outcome;
use crate::answer::Report;
use crate::args::{Common, OpenWaterArgs, SeriesWord, Units};
use crate::failure::Failure;
use crate::ink::Ink;
use crate::page::{Cell, Page};
use crate::{load, number, words};

/// Answer of `openwater`.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OpenWater {
    /// The series.
    pub series: &'static str,
    /// Number of blades.
    pub blades: u8,
    /// Pitch over diameter, cup not included.
    pub pitch_ratio: f64,
    /// Expanded area ratio.
    pub area_ratio: f64,
    /// Cup as a fraction added to the pitch.
    pub cup: f64,
    /// Blade Reynolds number at 0.75 R; null when the series knows none.
    pub reynolds: Option<f64>,
    /// Advance ratio at which the thrust ends.
    pub zero_thrust: f64,
    /// The table.
    pub rows: Vec<OpenWaterRow>,
    /// Warnings that travelled with the numbers.
    pub notes: Vec<String>,
}

/// One advance ratio.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OpenWaterRow {
    /// J = Va/(n D).
    pub advance_ratio: f64,
    /// KT = T/(rho n² D⁴); screw and nozzle together when ducted.
    pub thrust_coefficient: f64,
    /// KQ = Q/(rho n² D⁵).
    pub torque_coefficient: f64,
    /// J KT/(2 pi KQ); null where no torque is taken.
    pub efficiency: Option<f64>,
}

/// Most rows in a table.
const MOST_ROWS: f64 = 10_000.0;

pub fn run(args: &OpenWaterArgs, colour: bool) -> Result<Outcome, Failure> {
    let (screw, series, doubts) = screw(args, colour)?;
    // Only the B-series has an effect of the Reynolds number.
    let reynolds = (series == SeriesWord::B).then(|| args.reynolds.unwrap_or(bseries::REYNOLDS));
    let noted = screw.curves(reynolds.unwrap_or(bseries::REYNOLDS));
    let curves = noted.value;
    let last = args.to.unwrap_or(curves.zero_thrust);
    let steps = ((last - args.from) / args.step + 1e-9).floor();
    if !(0.0..MOST_ROWS).contains(&steps) {
        return Err(Failure::Asked {
            what: format!("no table from {} to {last:.4} in steps of {}", args.from, args.step),
            instead: format!("--to above --from, and at most {MOST_ROWS} rows"),
        });
    }
    let rows = (0..=steps as u32).map(|step| {
        let j = args.step.mul_add(f64::from(step), args.from);
        let (kt, kq) = (curves.thrust(j), curves.torque(j));
        let efficiency = (kq > 0.0).then(|| curves.efficiency(j)).filter(|eta| eta.is_finite());
        OpenWaterRow { advance_ratio: j, thrust_coefficient: kt, torque_coefficient: kq, efficiency }
    });
    let answer = OpenWater {
        series: match series {
            SeriesWord::B => "b",
            SeriesWord::FlatFaced => "flat-faced",
            SeriesWord::Ducted => "ducted",
        },
        blades: screw.blades,
        pitch_ratio: screw.pitch_ratio,
        area_ratio: screw.expanded_area_ratio,
        cup: screw.cup,
        reynolds,
        zero_thrust: curves.zero_thrust,
        rows: rows.collect(),
        notes: noted.notes.iter().map(|note| note.text().to_owned()).collect(),
    };
    Ok(Outcome { report: Report::OpenWater(answer), text: Box::new(text), doubts, reached: false })
}

/// The propeller asked for: the job's, with the options on top.
fn screw(args: &OpenWaterArgs, colour: bool) -> Result<(Screw, SeriesWord, String), Failure> {
    let loaded = args.job.as_deref().map(|file| load::job(file, colour)).transpose()?;
    let (propeller, doubts) = match loaded {
        Some(loaded) => (loaded.job.propeller, loaded.doubts),
        None => Default::default(),
    };
    let series = args.series.unwrap_or(match propeller.section {
        Some(Section::FlatFaced) => SeriesWord::FlatFaced,
        Some(Section::Ducted) => SeriesWord::Ducted,
        Some(Section::Airfoil) | None => SeriesWord::B,
    });
    let ducted = series == SeriesWord::Ducted;
    let of_job = match (&propeller.pitch, &propeller.diameter) {
        (Some(pitch), Some(diameter)) => Some(pitch.middle / diameter.middle),
        _ => None,
    };
    let of_lengths = args.pitch.zip(args.diameter).map(|(pitch, diameter)| pitch / diameter);
    let pitch_ratio = args.pitch_ratio.or(of_lengths).or(of_job);
    // The ducted series is one screw: four blades, area ratio 0.70.
    let blades = args.blades.or(propeller.blades).or(ducted.then_some(4));
    let area_ratio = args.area_ratio.or(propeller.area_ratio.map(|area| area.middle)).or(ducted.then_some(0.70));
    let missing: Vec<&str> = [
        (blades.is_none(), "--blades"),
        (pitch_ratio.is_none(), "--pitch-ratio (or --pitch and --diameter)"),
        (area_ratio.is_none(), "--area-ratio"),
    ]
    .into_iter()
    .filter_map(|(missing, option)| missing.then_some(option))
    .collect();
    let (Some(blades), Some(pitch_ratio), Some(area_ratio)) = (blades, pitch_ratio, area_ratio) else {
        let job = if args.job.is_some() { "; the job file does not say" } else { "" };
        return Err(Failure::Asked {
            what: format!("the propeller is not fully described{job}"),
            instead: format!("add {}", words::list(&missing, "and")),
        });
    };
    let cup = match args.cup.or(propeller.cup) {
        None | Some(Cup::None) => cup::Cup::None,
        Some(Cup::Light) => cup::Cup::Light,
        Some(Cup::Medium) => cup::Cup::Medium,
        Some(Cup::Heavy) => cup::Cup::Heavy,
    };
    let screw = Screw {
        // The series are dimensionless and the blades new: the diameter has no say.
        diameter: 1.0,
        pitch_ratio,
        expanded_area_ratio: area_ratio,
        blades,
        flat_share: if series == SeriesWord::FlatFaced { 1.0 } else { 0.0 },
        ducted,
        cup: cup.fraction().middle,
        blade_roughness: roughness::NEW_BLADE,
    };
    Ok((screw, series, doubts))
}

fn text(report: &Report, _: &Common) -> String {
    let mut page = Page::new();
    let Report::OpenWater(answer) = report else { return page.finish() };
    let name = match answer.series {
        "flat-faced" => "Flat-faced series",
        "ducted" => "Screw in nozzle 19A",
        _ => "Wageningen B-series",
    };
    let best = answer
        .rows
        .iter()
        .filter(|row| row.thrust_coefficient > 0.0)
        .filter_map(|row| row.efficiency.map(|eta| (eta, row.advance_ratio)))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    let best = best.map_or_else(String::new, |(eta, j)| format!(" Best efficiency here {eta:.3}, at J {j:.2}."));
    let ends = format!("Thrust ends at J {:.3}.", answer.zero_thrust);
    page.sentences(
        &format!(
            "{name}, {} blades, pitch ratio {:.3}, area ratio {:.3}. {ends}{best}",
            answer.blades, answer.pitch_ratio, answer.area_ratio
        ),
        Ink::Speak,
    );
    if answer.cup > 0.0 {
        let pitch =
            format!("The cup counts as {:.1} % more pitch (common practice, widely spread).", answer.cup * 100.0);
        page.sentences(&pitch, Ink::Plain);
    }
    if let Some(reynolds) = answer.reynolds {
        let reynolds = number::plain(reynolds, "", Units::Metric);
        page.sentences(&format!("Blade Reynolds number at 0.75 R: {reynolds}."), Ink::Quiet);
    }
    page.gap();
    let rows: Vec<Vec<Cell>> = answer
        .rows
        .iter()
        .map(|row| {
            vec![
                format!("{:.3}", row.advance_ratio).into(),
                format!("{:.4}", row.thrust_coefficient).into(),
                format!("{:.4}", 10.0 * row.torque_coefficient).into(),
                row.efficiency.map_or_else(|| "none".to_owned(), |eta| format!("{eta:.4}")).into(),
            ]
        })
        .collect();
    page.table("rrrr", &["J = Va/(nD)", "KT", "10 KQ", "efficiency"], &rows);
    crate::sections::notes(&mut page, &answer.notes);
    page.finish()
}
