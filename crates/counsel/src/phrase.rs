//! How numbers and chances are spoken: rounded to what the band allows.

use crate::report::Band;

/// The step a band's width allows: 1, 2 or 5 times a power of ten, about a tenth of the width.
#[must_use]
pub fn step(low: f64, high: f64) -> f64 {
    let width = (high - low).abs().max(1e-9 * high.abs()).max(1e-12) / 8.0;
    let decade = 10_f64.powf(width.log10().floor());
    let lead = width / decade;
    decade
        * if lead < 1.5 {
            1.0
        } else if lead < 3.5 {
            2.0
        } else if lead < 7.5 {
            5.0
        } else {
            10.0
        }
}

/// A number at a rounding step, thousands set apart by a space: `3 480`.
#[must_use]
pub fn number(value: f64, step: f64) -> String {
    let decimals = if step >= 1.0 { 0 } else { (-step.log10()).ceil().min(6.0) as usize };
    let rounded = (value / step).round() * step;
    let text = format!("{:.*}", decimals, rounded.abs());
    let (whole, fraction) = text.split_once('.').map_or((text.as_str(), ""), |(w, f)| (w, f));
    let mut grouped = String::new();
    for (i, digit) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i) % 3 == 0 && whole.len() > 3 {
            grouped.push(' ');
        }
        grouped.push(digit);
    }
    let is_zero = !text.chars().any(|c| ('1'..='9').contains(&c));
    let sign = if rounded < 0.0 && !is_zero { "-" } else { "" };
    if fraction.is_empty() { format!("{sign}{grouped}") } else { format!("{sign}{grouped}.{fraction}") }
}

/// A number with a given count of significant digits, for values without a band.
#[must_use]
pub fn plain(value: f64, digits: i32) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0".to_owned();
    }
    number(value, 10_f64.powi(value.abs().log10().floor() as i32 + 1 - digits))
}

/// The finest step worth speaking of in a unit: instruments and boats do not repeat better.
fn finest(unit: &str) -> f64 {
    match unit {
        "rpm" => 10.0,
        "kn" | "kW" | "L/h" | "m/s" | "%" => 0.1,
        "N" | "kg" | "mm" | "kPa" => 1.0,
        _ => 0.0,
    }
}

/// The step a band is rounded to.
#[must_use]
pub fn step_of(band: &Band) -> f64 {
    let step = step(band.low, band.high).max(finest(band.unit));
    // Halves of a decimal would print a digit the band does not hold.
    let decade = 10_f64.powf(step.log10().floor());
    if step < 1.0 && step > 4.0 * decade { 10.0 * decade } else { step }
}

/// A band in words: `3 480 to 3 640 rpm`.
#[must_use]
pub fn span(band: &Band) -> String {
    let step = step_of(band);
    let (low, high) = (number(band.low, step), number(band.high, step));
    let unit = if band.unit == "1" { String::new() } else { format!(" {}", band.unit) };
    if low == high { format!("{low}{unit}") } else { format!("{low} to {high}{unit}") }
}

/// The middle of a band, rounded to what the band allows, with its unit.
#[must_use]
pub fn middle(band: &Band) -> String {
    let unit = if band.unit == "1" { String::new() } else { format!(" {}", band.unit) };
    format!("{}{unit}", number(band.middle, step_of(band)))
}

/// A chance in words and figures: `9 chances in 10`.
#[must_use]
pub fn chance(p: f64) -> String {
    match p {
        p if p >= 0.985 => "more than 49 chances in 50".to_owned(),
        p if p >= 0.925 => "19 chances in 20".to_owned(),
        p if p <= 0.015 => "less than 1 chance in 50".to_owned(),
        p if p < 0.075 => "1 chance in 20".to_owned(),
        p => {
            let n = (10.0 * p).round().clamp(1.0, 9.0) as u8;
            if n == 1 { "1 chance in 10".to_owned() } else { format!("{n} chances in 10") }
        }
    }
}

/// A propeller's size as the trade writes it, inches first, millimetres behind: `16 x 11 in (406 x 279 mm)`.
#[must_use]
pub fn size(diameter: f64, pitch: f64) -> String {
    format!(
        "{} x {} in ({} x {} mm)",
        inches(diameter),
        inches(pitch),
        number(1000.0 * diameter, 1.0),
        number(1000.0 * pitch, 1.0)
    )
}

/// A length in inches to the quarter, without the unit: `10.25`.
#[must_use]
pub fn inches(metres: f64) -> String {
    let quarters = (metres / 0.0254 * 4.0).round();
    let text = format!("{:.2}", quarters / 4.0);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The first letter large.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounds_to_what_the_band_allows() {
        let band = |low, middle, high| Band { low, middle, high, unit: "rpm" };
        assert_eq!(span(&band(3482.3, 3560.0, 3641.9)), "3 480 to 3 640 rpm");
        assert_eq!(span(&band(2790.0, 3300.0, 3980.0)), "2 800 to 4 000 rpm");
        let knots = |low, middle, high| Band { low, middle, high, unit: "kn" };
        assert_eq!(middle(&knots(-0.3, -0.02, 0.3)), "0.0 kn");
        // Halves would print a digit the band does not hold.
        assert_eq!(span(&knots(6.72, 6.9, 7.18)), "6.7 to 7.2 kn");
        assert_eq!(span(&band(2202.0, 2214.0, 2224.0)), "2 200 to 2 220 rpm");
        assert_eq!(number(1234567.0, 1000.0), "1 235 000");
        assert_eq!(number(0.04, 0.1), "0.0");
        assert_eq!(number(-0.04, 0.1), "0.0");
    }

    #[test]
    fn chances_in_words() {
        assert_eq!(chance(0.9), "9 chances in 10");
        assert_eq!(chance(0.97), "19 chances in 20");
        assert_eq!(chance(0.11), "1 chance in 10");
        assert_eq!(chance(0.999), "more than 49 chances in 50");
    }

    #[test]
    fn sizes_as_the_trade_writes_them() {
        assert_eq!(size(0.4064, 0.2794), "16 x 11 in (406 x 279 mm)");
        assert_eq!(inches(0.0254 * 13.25), "13.25");
    }
}
