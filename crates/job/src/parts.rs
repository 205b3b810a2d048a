//! Pieces of a quantity string, and what to say about one that lacks its unit.

use crate::keys::Measure;
use crate::near::list;
use crate::number::show;
use crate::quantity::Dimension;
use crate::units;

/// Density used only to hold a fuel volume against its physical range, kg/m³.
pub(crate) const FUEL_FOR_RANGE: f64 = 800.0;

/// What a bare number could have been: the usual units in which it can exist.
pub(crate) fn unit_help(measure: &Measure, number: f64) -> String {
    let (low, high) = measure.range;
    let could: Vec<String> = measure
        .usual
        .iter()
        .filter_map(|name| {
            let unit = units::find(name, measure.dimension)?;
            let si = unit.to_si(number) * if unit.volume { FUEL_FOR_RANGE } else { 1.0 };
            (low..=high).contains(&si).then(|| format!("\"{} {}\"", show(number, 6), unit.name))
        })
        .collect();
    if could.is_empty() { example(measure) } else { format!("write {}", list(&could)) }
}

pub(crate) fn example(measure: &Measure) -> String {
    let names: Vec<&str> = measure.dimension.units().map(|u| u.name).collect();
    match measure.dimension {
        Dimension::Ratio => "write a plain number".to_owned(),
        dimension => format!("{} is a number and a unit: {}", dimension.noun(), list(&names)),
    }
}

/// Takes `about` and its like off the front.
pub(crate) fn about(body: &str) -> (&str, bool) {
    if let Some(rest) = body.strip_prefix(['~', '≈']) {
        return (rest.trim_start(), true);
    }
    let word_end = body.find(' ').unwrap_or(body.len());
    let word = body[..word_end].to_lowercase();
    if matches!(
        word.trim_end_matches('.'),
        "about" | "ca" | "circa" | "approx" | "approximately" | "around" | "roughly"
    ) {
        return (body[word_end..].trim_start(), true);
    }
    (body, false)
}

pub(crate) fn split_at_first<'a>(body: &'a str, marks: &[&str]) -> Option<(&'a str, &'a str)> {
    marks
        .iter()
        .filter_map(|mark| body.find(mark).map(|at| (at, mark.len())))
        .min_by_key(|&(at, len)| (at, usize::MAX - len))
        .map(|(at, len)| (body[..at].trim(), body[at + len..].trim()))
}

/// Splits `ft 6 in` after a unit of feet, when a number follows.
pub(crate) fn feet_and_inches(word: &str) -> Option<(&str, &str)> {
    let end = word.find(|c: char| c.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(c))?;
    let feet = word[..end].trim().trim_end_matches('.');
    (units::find(feet, Dimension::Length)?.name == "ft").then(|| (feet, &word[end..]))
}
