//! The picture of a diagnosis: chances as bars of ink over one scale, and where each stood before.

use crate::ink::Ink;
use crate::page::{width, wrap};
use crate::words;

/// One bar.
#[derive(Clone, Debug)]
pub struct Bar {
    /// Name at the left.
    pub label: String,
    /// Chance, 0 to 1.
    pub chance: f64,
    /// Chance before anything was weighed, 0 to 1.
    pub before: Option<f64>,
    /// How it is inked.
    pub ink: Ink,
}

/// Width of the names.
const LABEL: usize = 36;
/// Width of the scale: ten chances, four columns each.
const WIDTH: usize = 40;

/// Draws bars of chance, 0 to 10 in 10. A name too long for one line goes on below it.
#[must_use]
pub fn draw(bars: &[Bar]) -> String {
    let mut out = String::new();
    for bar in bars {
        let chance = if bar.chance.is_finite() { bar.chance.clamp(0.0, 1.0) } else { continue };
        let mut lines = wrap(&bar.label, LABEL).into_iter();
        let label = lines.next().unwrap_or_default();
        let blank = " ".repeat(LABEL - width(&label));
        let inked = column(chance);
        // A chance too small for a column still leaves a hair of ink.
        let mut row: String = if inked == 0 { "▏".to_owned() } else { "▒".repeat(inked) };
        let mut shown = bar.ink.on(&row);
        if let Some(before) = bar.before.filter(|before| before.is_finite()) {
            let at = column(before.clamp(0.0, 1.0)).saturating_sub(1);
            if at < inked {
                let marked: String = row.chars().enumerate().map(|(i, c)| if i == at { '│' } else { c }).collect();
                shown = bar.ink.on(&marked);
            } else {
                let gap = "╌".repeat(at - width(&row).min(at));
                shown.push_str(&Ink::Quiet.on(&format!("{gap}│")));
                row.push_str(&format!("{gap}│"));
            }
        }
        let after = " ".repeat((WIDTH + 1).saturating_sub(width(&row)) + 1);
        out.push_str(&format!("  {}{blank} {shown}{after}{}\n", bar.ink.on(&label), words::chance(bar.chance)));
        for more in lines {
            out.push_str(&format!("  {}\n", bar.ink.on(&more)));
        }
    }
    if out.is_empty() {
        return out;
    }
    let indent = " ".repeat(LABEL + 3);
    let axis: String = (0..=WIDTH).map(|at| if at % 20 == 0 { '┴' } else { '─' }).collect();
    let names = "0                5 in 10         10 in 10";
    out.push_str(&format!("{}\n", Ink::Quiet.on(&format!("{indent}{axis}"))));
    out.push_str(&format!("{}\n", Ink::Quiet.on(&format!("{indent}{names}"))));
    out
}

fn column(chance: f64) -> usize {
    (chance * WIDTH as f64).round() as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bar(chance: f64, before: f64) -> Bar {
        Bar { label: "growth on the blades".to_owned(), chance, before: Some(before), ink: Ink::Plain }
    }

    #[test]
    fn ink_goes_with_the_chance_and_the_mark_with_what_was_before() {
        let drawn = draw(&[bar(0.8, 0.2), bar(0.1, 0.5), bar(0.0, 0.0), bar(1.0, 1.0)]);
        let lines: Vec<String> = drawn.lines().map(|line| anstream::adapter::strip_str(line).to_string()).collect();
        let ink = |line: &str| line.chars().filter(|c| *c == '▒').count();
        assert_eq!([ink(&lines[0]), ink(&lines[1]), ink(&lines[2]), ink(&lines[3])], [31, 4, 0, 39]);
        let mark = |line: &str| line.chars().position(|c| c == '│');
        assert!(mark(&lines[0]) < mark(&lines[1]), "{drawn}");
        assert!(lines.iter().all(|line| width(line) <= crate::page::COLUMNS), "{drawn}");
    }

    #[test]
    fn nothing_to_draw_draws_nothing() {
        assert_eq!(draw(&[]), "");
        assert_eq!(draw(&[bar(f64::NAN, 0.1)]), "");
    }
}
