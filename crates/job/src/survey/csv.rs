//! Import of a gauge's or a coordinate machine's table.
//!
//! The first line names the columns with their units, in any order: `blade, radius mm, angle deg, height mm`, or
//! `blade, r/R, pitch in`, or `blade, x mm, y mm, z mm` with the shaft along `z`. Separators are comma, semicolon or tab;
//! lines that begin with `#` are remarks.

use super::check;
use super::model::*;
use crate::model::Job;
use crate::near::{list, nearest};
use crate::number;
use crate::problem::{Problem, Severity};
use crate::quantity::{Dimension, Quantity};
use crate::units;
use std::ops::Range;

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Column {
    Blade,
    Radius,
    RadiusRatio,
    Angle,
    Height,
    Pitch,
    FaceAngle,
    Chord,
    Thickness,
    Track,
    TipRadius,
    X,
    Y,
    Z,
}

impl Column {
    const NAMES: &'static [(&'static str, Column)] = &[
        ("blade", Column::Blade),
        ("radius", Column::Radius),
        ("r", Column::Radius),
        ("r/r", Column::RadiusRatio),
        ("radius ratio", Column::RadiusRatio),
        ("angle", Column::Angle),
        ("height", Column::Height),
        ("pitch", Column::Pitch),
        ("face angle", Column::FaceAngle),
        ("chord", Column::Chord),
        ("thickness", Column::Thickness),
        ("track", Column::Track),
        ("tip radius", Column::TipRadius),
        ("x", Column::X),
        ("y", Column::Y),
        ("z", Column::Z),
    ];

    /// The dimension and the range of what exists, SI; the same as in the table of keys.
    fn takes(self) -> Option<(Dimension, f64, f64)> {
        Some(match self {
            Column::Blade => return None,
            Column::RadiusRatio => (Dimension::Ratio, 0.1, 1.0),
            Column::Angle => (Dimension::Angle, -360.0, 360.0),
            Column::FaceAngle => (Dimension::Angle, 2.0, 80.0),
            Column::Radius => (Dimension::Length, 0.015, 1.5),
            Column::TipRadius => (Dimension::Length, 0.05, 1.5),
            Column::Pitch => (Dimension::Length, 0.05, 4.0),
            Column::Chord => (Dimension::Length, 0.01, 2.0),
            Column::Thickness => (Dimension::Length, 0.000_5, 0.25),
            Column::Height | Column::Track | Column::X | Column::Y | Column::Z => (Dimension::Length, -1.5, 1.5),
        })
    }
}

struct Head {
    column: Column,
    unit: Option<&'static units::Unit>,
    name: String,
}

/// A row: the cells' values in SI, with where they stand and how they were written.
struct Row {
    blade: String,
    cells: Vec<(Column, f64, String, Range<usize>)>,
    at: Range<usize>,
}

impl Row {
    fn value(&self, column: Column) -> Option<f64> {
        self.cells.iter().find(|c| c.0 == column).map(|c| c.1)
    }
    fn quantity(&self, column: Column) -> Option<Quantity> {
        let (_, value, text, at) = self.cells.iter().find(|c| c.0 == column)?;
        Some(Quantity { own_spread: false, at: at.clone(), ..Quantity::exact(*value, text.clone()) })
    }
}

const HELP: &str = "name the columns with their units in the first line: blade, radius mm, angle deg, height mm; or blade, radius mm, pitch mm; or blade, x mm, y mm, z mm";

/// After so many problems the rest of a table is not read.
const MOST_PROBLEMS: usize = 20;

/// A table that was accepted.
#[derive(Clone, Debug)]
pub struct Imported {
    /// The blades, in the order of the table.
    pub blades: Vec<SurveyBlade>,
    /// What looks wrong.
    pub doubts: Vec<Problem>,
}

/// Reads a table for a job: its propeller and survey are what the table is held against. `tool` sets the spreads; with
/// `x, y, z` columns it is a coordinate machine unless said otherwise.
///
/// # Errors
/// Everything wrong with the table, in order of place; spans count bytes of `text`.
pub fn import(text: &str, job: &Job, tool: Option<Tool>) -> Result<Imported, Vec<Problem>> {
    let mut problems = Vec::new();
    let rows = rows(text, &mut problems);
    let mut survey = Survey { tool, ..job.survey.clone().unwrap_or_default() };
    survey.tool = tool.or(job.survey.as_ref().and_then(|s| s.tool));
    // What stands elsewhere stands not in this text.
    survey.diameter_across = None;
    survey.hub = Hub::default();
    survey.damage.clear();
    let old = std::mem::take(&mut survey.blades);
    let coordinates = rows.iter().any(|row| row.value(Column::X).is_some());
    if coordinates && tool.is_none() {
        survey.tool = Some(Tool::CoordinateMachine);
    }
    survey.blades = blades(rows, coordinates);
    for blade in &mut survey.blades {
        if blade.tip_radius.is_none()
            && let Some(before) = old.iter().find(|b| b.name == blade.name)
        {
            blade.tip_radius = before.tip_radius.clone().map(|q| Quantity { at: 0..0, ..q });
        }
    }
    survey.settle_spreads();
    if survey.blades.is_empty() && problems.is_empty() {
        problems.push(Problem::error("empty", 0..0, "there is no row in this table").help(HELP));
    }
    let mut alone = Job { propeller: job.propeller.clone(), ..Job::default() };
    for q in [&mut alone.propeller.diameter, &mut alone.propeller.pitch].into_iter().flatten() {
        q.at = 0..0;
    }
    let tool = survey.tool;
    alone.survey = Some(survey);
    check::find_problems(&alone, &mut problems);
    problems.sort_by_key(|p| (p.span.start, p.severity, p.span.end));
    if problems.iter().any(|p| p.severity == Severity::Error) {
        return Err(problems);
    }
    let mut blades = alone.survey.map(|s| s.blades).unwrap_or_default();
    for section in blades.iter_mut().flat_map(|b| &mut b.sections) {
        section.by = tool;
    }
    Ok(Imported { blades, doubts: problems })
}

/// Cells of a line with their places, quotes taken off.
fn cells(line: &str, from: usize, separator: char) -> Vec<(&str, Range<usize>)> {
    let mut at = from;
    line.split(separator)
        .map(|cell| {
            let start = at + cell.len() - cell.trim_start().len();
            at += cell.len() + separator.len_utf8();
            let inner = cell.trim();
            let bare = inner.strip_prefix('"').and_then(|c| c.strip_suffix('"')).unwrap_or(inner);
            let shift = usize::from(bare.len() < inner.len());
            (bare, start + shift..start + shift + bare.len())
        })
        .collect()
}

fn rows(text: &str, problems: &mut Vec<Problem>) -> Vec<Row> {
    let mut head: Option<Vec<Head>> = None;
    let mut rows = Vec::new();
    let mut from = 0;
    let mut separator = ',';
    for line in text.split_inclusive('\n') {
        let (start, body) = (from, line.trim_end_matches(['\n', '\r']));
        from += line.len();
        let lead = body.len() - body.trim_start_matches('\u{feff}').len();
        let body = &body[lead..];
        if body.trim().is_empty() || body.trim_start().starts_with('#') {
            continue;
        }
        if head.is_none() {
            separator = [';', '\t'].into_iter().find(|s| body.contains(*s)).unwrap_or(',');
        }
        let cells = cells(body, start + lead, separator);
        match &head {
            None => {
                let before = problems.len();
                let columns: Vec<Option<Head>> = cells.iter().map(|(name, at)| heading(name, at, problems)).collect();
                let whole = start + lead..start + lead + body.len();
                let columns: Option<Vec<Head>> = columns.into_iter().collect();
                match columns {
                    Some(columns) => {
                        together(&columns, &whole, problems);
                        if problems.len() > before {
                            return rows;
                        }
                        head = Some(columns);
                    }
                    None => return rows,
                }
            }
            // A wrong column makes every row wrong: a page of messages is enough.
            Some(_) if problems.len() >= MOST_PROBLEMS => return rows,
            Some(columns) => {
                if let Some(row) = row(columns, &cells, start + lead..start + lead + body.len(), problems) {
                    rows.push(row);
                }
            }
        }
    }
    rows
}

/// `radius mm`, `radius [mm]`, `radius (mm)`, `radius_mm`.
fn heading(name: &str, at: &Range<usize>, problems: &mut Vec<Problem>) -> Option<Head> {
    let plain = name.to_lowercase().replace(['_', '[', ']', '(', ')'], " ");
    let plain = plain.split_whitespace().collect::<Vec<_>>().join(" ");
    let found = Column::NAMES
        .iter()
        .filter(|(word, _)| plain == *word || plain.strip_prefix(word).is_some_and(|rest| rest.starts_with(' ')))
        .max_by_key(|(word, _)| word.len());
    let Some((word, column)) = found else {
        let first: String = plain.split(' ').next().unwrap_or_default().to_owned();
        let names = Column::NAMES.iter().map(|(word, _)| *word);
        let help = nearest(&first, names).map_or(HELP.to_owned(), |near| format!("did you mean `{near}`?"));
        problems.push(Problem::error("unknown-key", at.clone(), format!("unknown column `{name}`")).help(help));
        return None;
    };
    let rest = plain[word.len()..].trim();
    let unit = match column.takes() {
        None => None,
        Some((Dimension::Ratio, ..)) if rest.is_empty() => None,
        Some((dimension, ..)) => {
            let unit = units::find(rest, dimension).filter(|unit| unit.dimension == dimension && !rest.is_empty());
            if unit.is_none() {
                let names: Vec<&str> = dimension.units().map(|u| u.name).collect();
                let (code, message) = if rest.is_empty() {
                    ("needs-unit", format!("column `{name}` needs a unit"))
                } else {
                    ("unknown-unit", format!("`{rest}` is not the unit of {}", dimension.noun()))
                };
                problems.push(Problem::error(code, at.clone(), message).help(format!(
                    "write it behind the name: `{word} {}`; it is one of {}",
                    if dimension == Dimension::Length { "mm" } else { "deg" },
                    list(&names)
                )));
                return None;
            }
            unit
        }
    };
    Some(Head { column: *column, unit, name: (*word).to_owned() })
}

/// Whether the columns make sense together.
fn together(columns: &[Head], whole: &Range<usize>, problems: &mut Vec<Problem>) {
    let has = |c: Column| columns.iter().any(|h| h.column == c);
    let mut lacks = |message: &str| {
        problems.push(Problem::error("incomplete", whole.clone(), message).help(HELP));
    };
    if let Some(twice) = columns.iter().enumerate().find(|(i, h)| columns[..*i].iter().any(|o| o.column == h.column)) {
        lacks(&format!("two columns `{}`", twice.1.name));
    }
    if !has(Column::Blade) {
        lacks("no column `blade`");
    }
    if has(Column::X) || has(Column::Y) || has(Column::Z) {
        if !(has(Column::X) && has(Column::Y) && has(Column::Z)) {
            lacks("a coordinate is missing: x, y and z belong together");
        }
        if has(Column::Radius) || has(Column::RadiusRatio) {
            lacks("coordinates and radii in one table");
        }
        return;
    }
    if has(Column::Radius) == has(Column::RadiusRatio) {
        lacks(if has(Column::Radius) { "two columns for the radius" } else { "no column for the radius" });
    }
    if has(Column::Angle) != has(Column::Height) {
        lacks("`angle` and `height` belong together");
    }
}

fn row(columns: &[Head], cells: &[(&str, Range<usize>)], at: Range<usize>, problems: &mut Vec<Problem>) -> Option<Row> {
    if cells.len() != columns.len() {
        let message = format!("{} cells under {} columns", cells.len(), columns.len());
        let help = "a decimal comma splits a cell in two: write decimal points, or separate the columns by semicolons";
        problems.push(Problem::error("wrong-cells", at, message).help(help));
        return None;
    }
    let mut row = Row { blade: String::new(), cells: Vec::new(), at };
    let before = problems.len();
    for (head, (text, place)) in columns.iter().zip(cells) {
        let Some((dimension, low, high)) = head.column.takes() else {
            if text.is_empty() {
                problems.push(
                    Problem::error("no-value", row.at.clone(), "a row without its blade")
                        .help("repeat the blade's name in every row"),
                );
            }
            row.blade = (*text).to_owned();
            continue;
        };
        if text.is_empty() {
            continue;
        }
        let point = text.replace(',', ".");
        let number = match number::read(text) {
            Ok((number, used)) if used == text.len() => number,
            _ => {
                let help = if text.contains(',') {
                    format!("write a decimal point: {point}")
                } else {
                    "a cell holds a number alone; its unit stands in the first line".to_owned()
                };
                problems
                    .push(Problem::error("bad-number", place.clone(), format!("`{text}` is not a number")).help(help));
                continue;
            }
        };
        let si = head.unit.map_or(number, |u| u.to_si(number));
        if !(low - 1e-12..=high + 1e-12).contains(&si) {
            let other = dimension.units().find(|u| {
                head.unit.is_some_and(|own| own.name != u.name)
                    && matches!(u.name, "mm" | "in" | "°" | "rad")
                    && (low..=high).contains(&u.to_si(number))
            });
            let unit = head.unit.map_or(String::new(), |u| format!(" {}", u.name));
            let help = other.map_or("look at the number and at the unit of its column".to_owned(), |u| {
                format!("it would fit if the column were in {}", spoken(u.name))
            });
            problems.push(
                Problem::error(
                    "out-of-range",
                    place.clone(),
                    format!("{}{unit} cannot be the {} of a blade", number::show(number, 6), head.name),
                )
                .help(help),
            );
            continue;
        }
        let unit = head.unit.map_or(String::new(), |u| format!(" {}", u.name));
        row.cells.push((head.column, si, format!("{text}{unit}"), place.clone()));
    }
    (problems.len() == before).then_some(row)
}

/// Rows to blades and sections. Neighbouring rows of one blade at one radius are points of one section.
fn blades(rows: Vec<Row>, coordinates: bool) -> Vec<SurveyBlade> {
    let mut blades: Vec<SurveyBlade> = Vec::new();
    let mut points: Vec<Vec<[f64; 3]>> = Vec::new();
    for row in &rows {
        // A blade that comes back later in the table is the same blade.
        let i = blades.iter().position(|b| b.name.as_deref() == Some(row.blade.as_str())).unwrap_or_else(|| {
            blades.push(SurveyBlade { name: Some(row.blade.clone()), at: row.at.clone(), ..SurveyBlade::default() });
            points.push(Vec::new());
            blades.len() - 1
        });
        let blade = &mut blades[i];
        if blade.tip_radius.is_none() {
            blade.tip_radius = row.quantity(Column::TipRadius);
        }
        if let (Some(x), Some(y), Some(z)) = (row.value(Column::X), row.value(Column::Y), row.value(Column::Z)) {
            points[i].push([x, y, z]);
            continue;
        }
        let radius = row.quantity(Column::Radius);
        let ratio = row.quantity(Column::RadiusRatio);
        let same = |s: &SurveySection| {
            let equal = |a: &Option<Quantity>, b: &Option<Quantity>| match (a, b) {
                (Some(a), Some(b)) => (a.middle - b.middle).abs() < 1e-9,
                (None, None) => true,
                _ => false,
            };
            equal(&s.radius, &radius) && equal(&s.radius_ratio, &ratio)
        };
        let point = row.quantity(Column::Height).map(|height| FacePoint {
            angle: row.quantity(Column::Angle),
            chord_fraction: None,
            height: Some(height),
            at: row.at.clone(),
        });
        let continues = blade.sections.last().is_some_and(same) && point.is_some();
        if !continues {
            blade.sections.push(SurveySection {
                radius: radius.clone(),
                radius_ratio: ratio.clone(),
                at: row.at.clone(),
                ..SurveySection::default()
            });
        }
        let Some(section) = blade.sections.last_mut() else { continue };
        section.points.extend(point);
        for (to, column) in [
            (&mut section.pitch, Column::Pitch),
            (&mut section.face_angle, Column::FaceAngle),
            (&mut section.chord, Column::Chord),
            (&mut section.thickness, Column::Thickness),
            (&mut section.track, Column::Track),
        ] {
            if to.is_none() {
                *to = row.quantity(column);
            }
        }
    }
    if coordinates {
        for (blade, points) in blades.iter_mut().zip(&points) {
            blade.sections = from_coordinates(points, &blade.at);
        }
    }
    for section in blades.iter_mut().flat_map(|b| &mut b.sections) {
        section.points.sort_by(|a, b| place(a).total_cmp(&place(b)));
    }
    blades
}

fn place(point: &FacePoint) -> f64 {
    point.angle.as_ref().map_or(0.0, |q| q.middle)
}

/// Points in space to sections: those whose radii lie within 1 % of the largest radius belong together.
fn from_coordinates(points: &[[f64; 3]], at: &Range<usize>) -> Vec<SurveySection> {
    let mut polar: Vec<(f64, f64, f64)> = points.iter().map(|[x, y, z]| (x.hypot(*y), y.atan2(*x), *z)).collect();
    polar.sort_by(|a, b| a.0.total_cmp(&b.0));
    let room = 0.01 * polar.last().map_or(0.0, |p| p.0);
    let mut sections = Vec::new();
    let mut from = 0;
    while from < polar.len() {
        let to = from + polar[from..].iter().take_while(|p| p.0 - polar[from].0 <= room).count();
        let group = &polar[from..to];
        from = to;
        if group.len() < 2 {
            continue;
        }
        let n = group.len() as f64;
        let radius = group.iter().map(|p| p.0).sum::<f64>() / n;
        // Angles from the middle of the section, so that none jumps at half a turn.
        let middle = group.iter().map(|p| p.1.sin()).sum::<f64>().atan2(group.iter().map(|p| p.1.cos()).sum());
        let made = |value: f64, unit: f64, name: &str| Quantity {
            own_spread: false,
            at: at.clone(),
            ..Quantity::exact(value, format!("{} {name}", number::show(value * unit, 7)))
        };
        let mut section =
            SurveySection { radius: Some(made(radius, 1000.0, "mm")), at: at.clone(), ..SurveySection::default() };
        for (_, angle, height) in group {
            let turn = std::f64::consts::TAU;
            let from_middle = (angle - middle + 1.5 * turn).rem_euclid(turn) - 0.5 * turn;
            section.points.push(FacePoint {
                angle: Some(made(from_middle.to_degrees(), 1.0, "deg")),
                chord_fraction: None,
                height: Some(made(*height, 1000.0, "mm")),
                at: at.clone(),
            });
        }
        sections.push(section);
    }
    sections
}

/// A unit as it is spoken.
fn spoken(unit: &str) -> &str {
    match unit {
        "in" => "inches",
        "mm" => "millimetres",
        "°" => "degrees",
        "rad" => "radians",
        other => other,
    }
}
