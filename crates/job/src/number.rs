//! Numbers as people write them: `1500`, `1 500`, `1,500`, `1_500`, `2.6`, `15 1/2`, `15½`. A decimal comma is refused.

/// Why a number could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Bad {
    /// There is no number at the start.
    None,
    /// `1,5`: which of two things it means cannot be known. Holds the number with a point, and its length in bytes.
    DecimalComma(String, usize),
    /// `1,50,000` and the like. Holds its length in bytes.
    Malformed(usize),
}

/// Reads the number at the start of `s`; gives it with the number of bytes used.
pub(crate) fn read(s: &str) -> Result<(f64, usize), Bad> {
    let sign = s.chars().next().filter(|c| matches!(c, '+' | '-' | '−'));
    let start = sign.map_or(0, char::len_utf8);
    let rest = &s[start..];
    let factor = if matches!(sign, Some('-' | '−')) { -1.0 } else { 1.0 };
    let finish = |value: f64, used: usize| Ok((factor * value, start + used));
    if let Some((value, used)) = fraction(rest) {
        return finish(value, used);
    }
    let first = digits(rest);
    if first == 0 && !rest.starts_with('.') {
        return Err(Bad::None);
    }
    let mut whole = rest[..first].to_owned();
    let mut at = first;
    let mut separator = None;
    // Groups of exactly three digits behind the first one to three.
    while (1..=3).contains(&first) {
        let Some(sep) =
            rest[at..].chars().next().filter(|c| matches!(c, ',' | ' ' | '_' | '\u{a0}' | '\u{202f}' | '\u{2009}'))
        else {
            break;
        };
        if separator.is_some_and(|s| s != sep) {
            break;
        }
        let next = at + sep.len_utf8();
        // `15 100/200` would be a fraction, not a group.
        if digits(&rest[next..]) != 3 || rest[next + 3..].starts_with('/') {
            break;
        }
        separator = Some(sep);
        whole.push_str(&rest[next..next + 3]);
        at = next + 3;
    }
    let leading_zero = whole.len() > 1 && whole.starts_with('0') && separator.is_some();
    if (rest[at..].starts_with(',') && digits(&rest[at + 1..]) > 0) || leading_zero {
        let mut end = at;
        while rest[end..].starts_with(',') && digits(&rest[end + 1..]) > 0 {
            end += 1 + digits(&rest[end + 1..]);
        }
        let number = rest[..end].trim();
        return Err(match number.matches(',').count() {
            1 if separator.is_none() || leading_zero => Bad::DecimalComma(number.replace(',', "."), start + end),
            _ => Bad::Malformed(start + end),
        });
    }
    // A point belongs to the number only with digits behind it, and `..` is a range.
    if rest[at..].starts_with('.') && digits(&rest[at + 1..]) > 0 {
        let decimals = digits(&rest[at + 1..]);
        whole.push_str(&rest[at..at + 1 + decimals]);
        at += 1 + decimals;
    } else {
        if first == 0 {
            return Err(Bad::None);
        }
        if let Some((part, used)) = fraction(rest[at..].trim_start_matches([' ', '-', '\u{a0}', '+'])) {
            let skipped = rest[at..].len() - rest[at..].trim_start_matches([' ', '-', '\u{a0}', '+']).len();
            if part < 1.0 && skipped <= 3 {
                let value: f64 = whole.parse().map_err(|_| Bad::None)?;
                return finish(value + part, at + skipped + used);
            }
        }
    }
    let value: f64 = whole.parse().map_err(|_| Bad::None)?;
    if value.is_finite() { finish(value, at) } else { Err(Bad::Malformed(start + at)) }
}

/// `1/2` or `½` at the start.
fn fraction(s: &str) -> Option<(f64, usize)> {
    const SIGNS: &[(char, f64)] =
        &[('½', 0.5), ('¼', 0.25), ('¾', 0.75), ('⅛', 0.125), ('⅜', 0.375), ('⅝', 0.625), ('⅞', 0.875)];
    let first = s.chars().next()?;
    if let Some((sign, value)) = SIGNS.iter().find(|(sign, _)| *sign == first) {
        return Some((*value, sign.len_utf8()));
    }
    let top = digits(s);
    if top == 0 || top > 3 || !s[top..].starts_with('/') {
        return None;
    }
    let bottom = digits(&s[top + 1..]);
    if bottom == 0 || bottom > 3 {
        return None;
    }
    let (a, b): (f64, f64) = (s[..top].parse().ok()?, s[top + 1..top + 1 + bottom].parse().ok()?);
    (b > 0.0).then(|| (a / b, top + 1 + bottom))
}

fn digits(s: &str) -> usize {
    s.bytes().take_while(u8::is_ascii_digit).count()
}

/// A number for a person: as many digits as matter (up to `digits` significant ones), no trailing zeros.
pub(crate) fn show(value: f64, digits: usize) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0".to_owned();
    }
    if value.abs() >= 1e12 {
        return format!("{value:.2e}");
    }
    let size = value.abs().log10().floor() as i32;
    let places = (digits as i32 - 1 - size).clamp(0, 12) as usize;
    let text = format!("{value:.places$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_the_forms_people_write() {
        for (text, value, used) in [
            ("1500 rpm", 1500.0, 4),
            ("1 500 rpm", 1500.0, 5),
            ("1,500 rpm", 1500.0, 5),
            ("1_500", 1500.0, 5),
            ("12 345 678", 12_345_678.0, 10),
            ("1,234.5", 1234.5, 7),
            ("2.6", 2.6, 3),
            (".5 m", 0.5, 2),
            ("15 1/2 in", 15.5, 6),
            ("15-1/2 in", 15.5, 6),
            ("15½ in", 15.5, 4),
            ("3/4 in", 0.75, 3),
            ("1/min", 1.0, 1),
            ("-2 °C", -2.0, 2),
            ("5..6", 5.0, 1),
            ("16 in", 16.0, 2),
            ("27 6 in", 27.0, 2),
        ] {
            assert_eq!(read(text), Ok((value, used)), "{text}");
        }
        assert_eq!(read("1,5 m"), Err(Bad::DecimalComma("1.5".into(), 3)));
        assert_eq!(read("0,500 m"), Err(Bad::DecimalComma("0.500".into(), 5)));
        assert_eq!(read("1,50,000"), Err(Bad::Malformed(8)));
        assert_eq!(read("in"), Err(Bad::None));
        assert_eq!(read(""), Err(Bad::None));
        assert_eq!(read("."), Err(Bad::None));
    }

    #[test]
    fn shows_what_matters() {
        assert_eq!(show(0.1, 4), "0.1");
        assert_eq!(show(1234.56, 4), "1235");
        assert_eq!(show(100.0, 3), "100");
        assert_eq!(show(25.4, 2), "25");
        assert_eq!(show(0.0254, 3), "0.0254");
    }
}
