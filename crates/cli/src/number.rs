//! Numbers for people: rounded to what the band allows, grouped in threes, with their unit.

use counsel::report::Band;

use crate::args::Units;

/// The thin space between groups of three digits; lines are not broken at it.
pub const THIN: char = '\u{202f}';

/// Horsepower, W: 550 ft·lbf/s.
const HORSEPOWER: f64 = 550.0 * 0.3048 * POUND_FORCE;
/// Pound-force, N: avoirdupois pound times standard gravity.
const POUND_FORCE: f64 = POUND * 9.806_65;
/// Pound, kg.
const POUND: f64 = 0.453_592_37;
/// US gallon, L: 231 cubic inches.
const GALLON: f64 = 231.0 * 0.0254 * 0.0254 * 0.0254 * 1000.0;
/// Pounds per square inch, kPa.
const PSI: f64 = POUND_FORCE / (0.0254 * 0.0254) / 1000.0;

/// How a unit of the reports is shown: factor, name, and the power of ten of the finest step worth printing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// Multiplies the reported value.
    pub factor: f64,
    /// Name of the unit shown; empty for pure numbers.
    pub unit: &'static str,
    /// 1: tens, 0: ones, -1: tenths.
    pub finest: i32,
}

/// The unit to show for a unit of the reports.
#[must_use]
pub fn shown(unit: &'static str, units: Units) -> Shown {
    let of = |factor, unit, finest| Shown { factor, unit, finest };
    match (unit, units) {
        ("kW", Units::Imperial) => of(1000.0 / HORSEPOWER, "hp", -1),
        ("L/h", Units::Imperial) => of(1.0 / GALLON, "US gal/h", -1),
        ("mm", Units::Imperial) => of(1.0 / 25.4, "in", -1),
        ("m/s", Units::Imperial) => of(1.0 / 0.3048, "ft/s", 0),
        ("kPa", Units::Imperial) => of(1.0 / PSI, "psi", -1),
        ("N", Units::Imperial) => of(1.0 / POUND_FORCE, "lbf", 0),
        ("kg", Units::Imperial) => of(1.0 / POUND, "lb", 0),
        ("rpm", _) => of(1.0, unit, 1),
        ("N", _) => of(1.0, unit, 1),
        ("kn" | "kW" | "L/h" | "m/s", _) => of(1.0, unit, -1),
        ("1", _) => of(1.0, "", -2),
        _ => of(1.0, unit, 0),
    }
}

/// The power of ten of the step a band of this width allows: the largest step not above a third of the width, and never
/// finer than `finest`. Without a width: three significant digits of `value`.
#[must_use]
pub fn step(width: f64, value: f64, finest: i32) -> i32 {
    let exponent = if width > 0.0 {
        (width / 3.0).log10().floor()
    } else if value != 0.0 {
        value.abs().log10().floor() - 2.0
    } else {
        return finest;
    };
    if exponent.is_finite() { (exponent.clamp(-12.0, 12.0) as i32).max(finest) } else { finest }
}

/// A number rounded to a power of ten and grouped: `3 480`, `6.2`, `−0.3`.
#[must_use]
pub fn rounded(value: f64, exponent: i32) -> String {
    if !value.is_finite() {
        return "unknown".to_owned();
    }
    let size = 10f64.powi(exponent.max(0));
    let decimals = usize::try_from(-exponent).unwrap_or(0);
    let steps = if exponent < 0 { value } else { (value / size).round() * size };
    let digits = format!("{steps:.decimals$}");
    let (sign, digits) = match digits.strip_prefix('-') {
        Some(rest) if rest.chars().any(|c| c.is_ascii_digit() && c != '0') => ("\u{2212}", rest),
        Some(rest) => ("", rest),
        None => ("", digits.as_str()),
    };
    let (whole, fraction) = digits.split_once('.').map_or((digits, None), |(w, f)| (w, Some(f)));
    let mut text = String::from(sign);
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at).is_multiple_of(3) {
            text.push(THIN);
        }
        text.push(digit);
    }
    if let Some(fraction) = fraction {
        text.push('.');
        text.push_str(fraction);
    }
    text
}

/// A lone number without a band, with three significant digits at most: settings and rows of tables.
#[must_use]
pub fn plain(value: f64, unit: &'static str, units: Units) -> String {
    let how = shown(unit, units);
    let value = value * how.factor;
    with_unit(rounded(value, step(0.0, value, how.finest)), how.unit)
}

/// A length of the trade, mm in, both ways: `406 mm (16 in)`, or `16 in (406 mm)`.
#[must_use]
pub fn trade_length(mm: f64, units: Units) -> String {
    let metric = with_unit(rounded(mm, 0), "mm");
    let imperial = with_unit(inches(mm), "in");
    match units {
        Units::Metric => format!("{metric} ({imperial})"),
        Units::Imperial => format!("{imperial} ({metric})"),
    }
}

/// Inches, to the quarter when it is one, else to the tenth.
#[must_use]
pub fn inches(mm: f64) -> String {
    let inches = mm / 25.4;
    let quarters = inches * 4.0;
    if (quarters - quarters.round()).abs() < 0.02 {
        let text = format!("{:.2}", quarters.round() / 4.0);
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        rounded(inches, -1)
    }
}

/// A band as `3 480 to 3 640 rpm`.
#[must_use]
pub fn band(band: &Band, units: Units) -> String {
    let how = shown(band.unit, units);
    with_unit(range(band, units), how.unit)
}

/// A band without its unit, for columns whose head names it.
#[must_use]
pub fn range(band: &Band, units: Units) -> String {
    let how = shown(band.unit, units);
    let (low, high) = (band.low * how.factor, band.high * how.factor);
    let exponent = step(high - low, band.middle * how.factor, how.finest);
    let (low, high) = (rounded(low, exponent), rounded(high, exponent));
    if low == high { low } else { format!("{low} to {high}") }
}

/// A difference with its signs: `+210 to +260 rpm`; `no difference that counts` when it rounds away.
#[must_use]
pub fn difference(band: &Band, units: Units) -> String {
    let how = shown(band.unit, units);
    let (low, high) = (band.low * how.factor, band.high * how.factor);
    let exponent = step(high - low, band.middle * how.factor, how.finest);
    let sign = |value: f64| {
        let text = rounded(value, exponent);
        let nothing = !text.chars().any(|c| c.is_ascii_digit() && c != '0');
        if nothing || text.starts_with('\u{2212}') { text } else { format!("+{text}") }
    };
    let (low, high) = (sign(low), sign(high));
    if low == high && !low.starts_with(['+', '\u{2212}']) {
        return "no difference that counts".to_owned();
    }
    let text = if low == high { low } else { format!("{low} to {high}") };
    with_unit(text, how.unit)
}

/// Joins number and unit.
#[must_use]
pub fn with_unit(number: String, unit: &str) -> String {
    match unit {
        "" => number,
        "%" => format!("{number}{THIN}%"),
        _ => format!("{number} {unit}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(low: f64, middle: f64, high: f64, unit: &'static str) -> Band {
        Band { low, middle, high, unit }
    }

    fn spaced(text: String) -> String {
        text.replace(THIN, " ")
    }

    #[test]
    fn digits_follow_the_band() {
        let metric = |band: &Band| spaced(super::band(band, Units::Metric));
        assert_eq!(metric(&of(3478.2, 3561.0, 3643.9, "rpm")), "3 480 to 3 640 rpm");
        assert_eq!(metric(&of(3501.0, 3507.0, 3509.0, "rpm")), "3 500 to 3 510 rpm");
        assert_eq!(metric(&of(6.14, 6.31, 6.52, "kn")), "6.1 to 6.5 kn");
        assert_eq!(metric(&of(18.2, 24.0, 33.1, "kn")), "18 to 33 kn");
        assert_eq!(metric(&of(1234.0, 1900.0, 2611.0, "N")), "1 200 to 2 600 N");
        assert_eq!(metric(&of(12.3, 18.1, 22.7, "%")), "12 to 23 %");
        assert_eq!(metric(&of(0.021, 0.022, 0.0221, "kn")), "0.0 kn");
    }

    #[test]
    fn large_numbers_are_grouped_and_signs_are_real_minus_signs() {
        assert_eq!(spaced(rounded(1_234_567.8, 0)), "1 234 568");
        assert_eq!(rounded(-0.04, -1), "0.0");
        assert_eq!(rounded(-0.26, -1), "\u{2212}0.3");
        assert_eq!(spaced(rounded(-12_345.0, 2)), "\u{2212}12 300");
        assert_eq!(rounded(f64::NAN, 0), "unknown");
    }

    #[test]
    fn differences_carry_their_signs() {
        let metric = |band: &Band| spaced(difference(band, Units::Metric));
        assert_eq!(metric(&of(208.0, 233.0, 262.0, "rpm")), "+210 to +260 rpm");
        assert_eq!(metric(&of(-0.32, -0.1, 0.21, "kn")), "\u{2212}0.3 to +0.2 kn");
        assert_eq!(metric(&of(-0.01, 0.0, 0.02, "kn")), "no difference that counts");
    }

    #[test]
    fn imperial_factors_are_the_exact_ones() {
        // 1 hp = 745.699 871 582 27 W, 1 US gal = 3.785 411 784 L, 1 lbf = 4.448 221 615 260 5 N, 1 psi = 6.894 757 kPa:
        // NIST Special Publication 811 (2008), appendix B.
        assert!((HORSEPOWER - 745.699_871_582_27).abs() < 1e-10);
        assert!((GALLON - 3.785_411_784).abs() < 1e-12);
        assert!((POUND_FORCE - 4.448_221_615_260_5).abs() < 1e-12);
        assert!((PSI - 6.894_757).abs() < 5e-7);
        assert_eq!(band(&of(20.0, 21.6, 23.0, "kW"), Units::Imperial), "27 to 31 hp");
    }

    #[test]
    fn lengths_of_the_trade_stand_in_both_units() {
        assert_eq!(trade_length(406.4, Units::Metric), "406 mm (16 in)");
        assert_eq!(trade_length(393.7, Units::Imperial), "15.5 in (394 mm)");
        assert_eq!(trade_length(400.0, Units::Metric), "400 mm (15.75 in)");
        assert_eq!(trade_length(410.0, Units::Metric), "410 mm (16.1 in)");
    }
}
