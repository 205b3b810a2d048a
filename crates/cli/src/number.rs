//! Numbers for people, by the same rounding as the sentences of `counsel`: to what the band allows, grouped in threes, with
//! the reader's unit.

use counsel::phrase;
use counsel::report::Band;

use crate::args::Units;

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

/// How a unit of the reports is shown: factor, name, and the finest step worth printing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// Multiplies the reported value.
    pub factor: f64,
    /// Name of the unit shown; empty for pure numbers.
    pub unit: &'static str,
    /// In the unit shown.
    pub finest: f64,
}

/// The unit to show for a unit of the reports.
#[must_use]
pub fn shown(unit: &'static str, units: Units) -> Shown {
    let of = |factor, unit, finest| Shown { factor, unit, finest };
    match (unit, units) {
        ("kW", Units::Imperial) => of(1000.0 / HORSEPOWER, "hp", 0.1),
        ("L/h", Units::Imperial) => of(1.0 / GALLON, "US gal/h", 0.1),
        ("mm", Units::Imperial) => of(1.0 / 25.4, "in", 0.1),
        ("m/s", Units::Imperial) => of(1.0 / 0.3048, "ft/s", 1.0),
        ("kPa", Units::Imperial) => of(1.0 / PSI, "psi", 0.1),
        ("N", Units::Imperial) => of(1.0 / POUND_FORCE, "lbf", 1.0),
        ("kg", Units::Imperial) => of(1.0 / POUND, "lb", 1.0),
        ("rpm", _) => of(1.0, unit, 5.0),
        ("N", _) => of(1.0, unit, 10.0),
        ("kn" | "kW" | "L/h" | "m/s", _) => of(1.0, unit, 0.1),
        ("1", _) => of(1.0, "", 0.01),
        _ => of(1.0, unit, 1.0),
    }
}

/// The step a band allows, never finer than `finest`. Without a width: three significant digits of `value`.
#[must_use]
pub fn step(low: f64, value: f64, high: f64, finest: f64) -> f64 {
    let step = if high > low {
        phrase::step(low, high)
    } else if value != 0.0 && value.is_finite() {
        10f64.powf(value.abs().log10().floor() - 2.0)
    } else {
        finest
    };
    step.max(finest)
}

/// A number rounded to a step and grouped: `3 480`, `6.2`, `−0.3`.
#[must_use]
pub fn rounded(value: f64, step: f64) -> String {
    if value.is_finite() { phrase::number(value, step).replace('-', "\u{2212}") } else { "unknown".to_owned() }
}

/// A lone number without a band, with three significant digits at most: settings and rows of tables.
#[must_use]
pub fn plain(value: f64, unit: &'static str, units: Units) -> String {
    let how = shown(unit, units);
    let value = value * how.factor;
    with_unit(rounded(value, step(value, value, value, how.finest)), how.unit)
}

/// A length of the trade, mm in, both ways: `406 mm (16 in)`, or `16 in (406 mm)`.
#[must_use]
pub fn trade_length(mm: f64, units: Units) -> String {
    let metric = with_unit(rounded(mm, 1.0), "mm");
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
        rounded(inches, 0.1)
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
    let step = step(low, band.middle * how.factor, high, how.finest);
    let (low, high) = (rounded(low, step), rounded(high, step));
    if low == high { low } else { format!("{low} to {high}") }
}

/// A band that may lie on both sides of nothing, each end with its own sign: `−40 to +120 rpm`; a plain one otherwise.
#[must_use]
pub fn signed(band: &Band, units: Units) -> String {
    if band.low < 0.0 { difference(band, units) } else { self::band(band, units) }
}

/// A difference with its signs: `+210 to +260 rpm`; `no difference that counts` when it rounds away.
#[must_use]
pub fn difference(band: &Band, units: Units) -> String {
    let how = shown(band.unit, units);
    let (low, high) = (band.low * how.factor, band.high * how.factor);
    let step = step(low, band.middle * how.factor, high, how.finest);
    let sign = |value: f64| {
        let text = rounded(value, step);
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
        _ => format!("{number} {unit}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(low: f64, middle: f64, high: f64, unit: &'static str) -> Band {
        Band { low, middle, high, unit }
    }

    #[test]
    fn digits_follow_the_band() {
        let metric = |band: &Band| super::band(band, Units::Metric);
        assert_eq!(metric(&of(3478.2, 3561.0, 3643.9, "rpm")), "3 480 to 3 640 rpm");
        assert_eq!(metric(&of(3501.0, 3507.0, 3509.0, "rpm")), "3 500 to 3 510 rpm");
        assert_eq!(metric(&of(6.14, 6.31, 6.52, "kn")), "6.1 to 6.5 kn");
        assert_eq!(metric(&of(18.2, 24.0, 33.1, "kn")), "18 to 34 kn");
        assert_eq!(metric(&of(1234.0, 1900.0, 2611.0, "N")), "1 200 to 2 600 N");
        assert_eq!(metric(&of(12.3, 18.1, 22.7, "%")), "12 to 23 %");
        assert_eq!(metric(&of(0.021, 0.022, 0.0221, "kn")), "0.0 kn");
        assert_eq!(metric(&of(5.0, 5.0, 5.0, "kn")), "5.0 kn");
    }

    #[test]
    fn a_page_and_its_sentences_round_alike() {
        for band in [of(2861.0, 2940.0, 3024.9, "rpm"), of(71.3, 80.0, 93.0, "kW")] {
            assert_eq!(super::band(&band, Units::Metric), phrase::span(&band));
        }
    }

    #[test]
    fn large_numbers_are_grouped_and_signs_are_real_minus_signs() {
        assert_eq!(rounded(1_234_567.8, 1.0), "1 234 568");
        assert_eq!(rounded(-0.04, 0.1), "0.0");
        assert_eq!(rounded(-0.26, 0.1), "\u{2212}0.3");
        assert_eq!(rounded(-12_345.0, 100.0), "\u{2212}12 300");
        assert_eq!(rounded(f64::NAN, 1.0), "unknown");
    }

    #[test]
    fn differences_carry_their_signs() {
        let metric = |band: &Band| difference(band, Units::Metric);
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
        assert_eq!(band(&of(20.0, 21.6, 23.0, "kW"), Units::Imperial), "27.0 to 31.0 hp");
    }

    #[test]
    fn lengths_of_the_trade_stand_in_both_units() {
        assert_eq!(trade_length(406.4, Units::Metric), "406 mm (16 in)");
        assert_eq!(trade_length(393.7, Units::Imperial), "15.5 in (394 mm)");
        assert_eq!(trade_length(400.0, Units::Metric), "400 mm (15.75 in)");
        assert_eq!(trade_length(410.0, Units::Metric), "410 mm (16.1 in)");
    }
}
