//! What a stamp on the hub says.

use crate::model::{Hand, Propeller};
use crate::quantity::{Dimension, Quantity, Source};
use crate::spread;
use std::ops::Range;

/// m
pub(crate) const INCH: f64 = 0.0254;

/// Takes diameter and pitch from the stamp where nobody stated them; `at` is where the stamp stands.
pub(crate) fn fill(propeller: &mut Propeller, at: &Range<usize>) {
    let Some((diameter, pitch)) = propeller.stamp.as_deref().and_then(read) else { return };
    let said = |inches: f64, key: &str| {
        let (low, middle, high) = spread::default(Some(Source::Stamp), Dimension::Length, key).band(inches * INCH);
        let text = format!("{inches} in (stamp)");
        Quantity { low, middle, high, source: Some(Source::Stamp), own_spread: false, text, at: at.clone() }
    };
    propeller.diameter.get_or_insert_with(|| said(diameter, "diameter"));
    propeller.pitch.get_or_insert_with(|| said(pitch, "pitch"));
}

/// Reads `16RH11`, `16 x 11 LH`, `R16x11`, ...: diameter and pitch in inches. Only what is plain: two numbers with nothing
/// between them but a cross or the hand, for `48-19` may be a part number.
pub(crate) fn read(stamp: &str) -> Option<(f64, f64)> {
    let upper = stamp.to_uppercase().replace(['"', '\u{2033}'], " ");
    let digit = |c: char| c.is_ascii_digit() || c == '.';
    let mut numbers: Vec<f64> = Vec::new();
    for part in upper.split(|c: char| !digit(c)).filter(|part| !part.is_empty()) {
        numbers.push(part.parse().ok()?);
    }
    let [diameter, pitch] = numbers[..] else { return None };
    let between = upper.trim_matches(|c: char| !digit(c)).trim_matches(digit).trim();
    let plain = matches!(between, "X" | "\u{d7}" | "R" | "RH" | "L" | "LH");
    // Inches of a small craft's propeller; a stamp in millimetres is left alone.
    (plain && (4.0..=60.0).contains(&diameter) && (3.0..=60.0).contains(&pitch)).then_some((diameter, pitch))
}

/// Hand in a stamp: a lone R, RH, L or LH between figures and signs. None where it says both.
#[must_use]
pub fn hand(stamp: &str) -> Option<Hand> {
    let upper = stamp.to_uppercase();
    let mut found = upper.split(|c: char| !c.is_ascii_alphabetic()).filter_map(|word| match word {
        "R" | "RH" => Some(Hand::Right),
        "L" | "LH" => Some(Hand::Left),
        _ => None,
    });
    let first = found.next()?;
    found.all(|next| next == first).then_some(first)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_plain_stamps_only() {
        assert_eq!((read("16RH11"), hand("16RH11")), (Some((16.0, 11.0)), Some(Hand::Right)));
        assert_eq!((read("17.5 x 12 LH"), hand("17.5 x 12 LH")), (Some((17.5, 12.0)), Some(Hand::Left)));
        assert_eq!((read("18x13"), hand("18x13")), (Some((18.0, 13.0)), None));
        assert_eq!(hand("16 RH 11 LH"), None);
        assert_eq!(read("16 RH 11 3B"), None);
        assert_eq!(read("16\" \u{d7} 11\""), Some((16.0, 11.0)));
        assert_eq!(read("R16x11"), Some((16.0, 11.0)));
        assert_eq!(read("400x280"), None);
        // A part number, a date, a fraction of a bore.
        assert_eq!([read("48-19"), read("19/48"), read("No. 16 11")], [None; 3]);
        assert_eq!(read("1.2.3 x 4"), None);
        assert_eq!(read("illegible"), None);
    }
}
