//! Numbers as the pictures speak them.

use counsel::phrase::number;
use counsel::report::Band;

pub use counsel::phrase::span;

/// A length in mm and inches: `432 mm, 17 in`.
pub fn length(metres: f64) -> String {
    format!("{} mm, {} in", millimetres(metres), inches(metres))
}

/// Millimetres: whole above 100, to the tenth below.
pub fn millimetres(metres: f64) -> String {
    let mm = 1000.0 * metres;
    if mm.abs() >= 99.95 { number(mm, 1.0) } else { number(mm, 0.1).trim_end_matches(".0").to_owned() }
}

/// Inches to the hundredth, to the thousandth below one.
pub fn inches(metres: f64) -> String {
    let inches = metres / 0.0254;
    let text = if inches.abs() < 1.0 { format!("{inches:.3}") } else { format!("{inches:.2}") };
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" || text.is_empty() { "0".to_owned() } else { text.to_owned() }
}

/// Kilowatts to what they allow.
pub fn kilowatts(kw: f64) -> String {
    let step = if kw.abs() >= 100.0 {
        1.0
    } else if kw.abs() >= 0.95 {
        0.1
    } else {
        0.01
    };
    number(kw, step)
}

/// A chance of so many in ten, short: `9 in 10`.
pub fn short_chance(p: f64) -> String {
    match p {
        p if p >= 0.985 => "over 49 in 50".to_owned(),
        p if p >= 0.925 => "19 in 20".to_owned(),
        p if p <= 0.015 => "under 1 in 50".to_owned(),
        p if p < 0.075 => "1 in 20".to_owned(),
        p => format!("{} in 10", (10.0 * p).round().clamp(1.0, 9.0)),
    }
}

/// A band without its unit.
pub fn bare(band: &Band) -> String {
    span(&Band { unit: "1", ..*band }).replace("e0", "")
}

/// A tick's number.
pub fn tick(value: f64, step: f64) -> String {
    number(value, step)
}
