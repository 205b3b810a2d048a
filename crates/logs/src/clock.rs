//! Dates and times of day in UTC. Days of the proleptic Gregorian calendar; leap seconds are not counted, as in the logs.

/// Days from 1970-01-01; `None` for a date that does not exist or lies outside 1970 to 2199.
pub(crate) fn days(year: i64, month: i64, day: i64) -> Option<i64> {
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let longest = match month {
        2 => 28 + i64::from(leap),
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => return None,
    };
    if !(1970..2200).contains(&year) || !(1..=longest).contains(&day) {
        return None;
    }
    // Years run from March, so that the leap day is the last.
    let y = if month <= 2 { year - 1 } else { year };
    let m = (month + 9) % 12;
    Some(365 * y + y / 4 - y / 100 + y / 400 + (m * 306 + 5) / 10 + day - 1 - 719_468)
}

/// Year, month and day of a count of days from 1970-01-01.
fn civil(days: i64) -> (i64, i64, i64) {
    let z = days + 719_468;
    let era = z.div_euclid(146_097);
    let doe = z.rem_euclid(146_097);
    let yoe = (doe - doe / 1460 + doe / 36_524 - doe / 146_096) / 365;
    let doy = doe - (365 * yoe + yoe / 4 - yoe / 100);
    let mp = (5 * doy + 2) / 153;
    let month = if mp < 10 { mp + 3 } else { mp - 9 };
    (yoe + era * 400 + i64::from(month <= 2), month, doy - (153 * mp + 2) / 5 + 1)
}

/// `2026-05-02`; nothing for a log without a date.
#[must_use]
pub fn date_text(time: f64) -> Option<String> {
    if time < 3.0e8 {
        return None;
    }
    let (year, month, day) = civil((time / 86_400.0).floor() as i64);
    Some(format!("{year:04}-{month:02}-{day:02}"))
}

/// `10:11:12` UTC.
#[must_use]
pub fn time_text(time: f64) -> String {
    let second = time.rem_euclid(86_400.0).floor() as i64;
    format!("{:02}:{:02}:{:02}", second / 3600, second / 60 % 60, second % 60)
}

fn number(text: &[u8]) -> Option<i64> {
    if text.is_empty() || text.len() > 9 {
        return None;
    }
    text.iter().try_fold(0, |sum, c| c.is_ascii_digit().then(|| sum * 10 + i64::from(c - b'0')))
}

/// Days of `2026-05-02` or `20260502`.
pub(crate) fn date(text: &[u8]) -> Option<i64> {
    match text {
        [year @ .., b'-', m1, m2, b'-', d1, d2] if year.len() == 4 => {
            days(number(year)?, number(&[*m1, *m2])?, number(&[*d1, *d2])?)
        }
        _ if text.len() == 8 => days(number(&text[..4])?, number(&text[4..6])?, number(&text[6..])?),
        _ => None,
    }
}

/// Seconds of `10:11:12.5`, `10:11`.
pub(crate) fn time_of_day(text: &[u8]) -> Option<f64> {
    if text.len() < 4 || text.len() > 20 {
        return None;
    }
    let mut parts = text.split(|c| *c == b':');
    let (hour, minute) = (number(parts.next()?)?, number(parts.next()?)?);
    let second = match parts.next() {
        None => 0.0,
        Some(part) => {
            let mut pieces = part.splitn(2, |c| matches!(c, b'.' | b','));
            let whole = number(pieces.next()?)? as f64;
            let part = pieces.next().unwrap_or(b"0");
            let digits = part.get(..9.min(part.len()))?;
            if part.is_empty() || !part.iter().all(u8::is_ascii_digit) {
                return None;
            }
            whole + number(digits)? as f64 / 10f64.powi(digits.len() as i32)
        }
    };
    // 60 is a leap second.
    (parts.next().is_none() && hour < 24 && minute < 60 && second < 61.0)
        .then(|| (hour * 3600 + minute * 60) as f64 + second)
}

/// An ISO 8601 date and time: seconds since 1970, and whether its zone was said (else UTC is taken).
pub(crate) fn iso(text: &[u8]) -> Option<(f64, bool)> {
    let text = text.trim_ascii();
    let split = text.iter().position(|c| matches!(c, b'T' | b't' | b' '))?;
    let day = date(&text[..split])?;
    let rest = text[split + 1..].trim_ascii();
    let (clock, offset, said) = match rest {
        [clock @ .., b'Z' | b'z'] => (clock, 0.0, true),
        [clock @ .., sign @ (b'+' | b'-'), h1, h2, b':', m1, m2]
        | [clock @ .., sign @ (b'+' | b'-'), h1, h2, m1, m2] => {
            let away = (number(&[*h1, *h2])? * 3600 + number(&[*m1, *m2])? * 60) as f64;
            (clock, if *sign == b'-' { -away } else { away }, true)
        }
        [clock @ .., b'U', b'T', b'C'] => (clock.trim_ascii(), 0.0, true),
        clock => (clock, 0.0, false),
    };
    Some((day as f64 * 86_400.0 + time_of_day(clock)? - offset, said))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_iso_8601_times() {
        // 1 000 000 000 s is 2001-09-09T01:46:40Z, 951 782 400 s the leap day 2000-02-29 (POSIX seconds).
        assert_eq!(iso(b"2001-09-09T01:46:40Z"), Some((1e9, true)));
        assert_eq!(iso(b"2001-09-09 03:46:40.250+02:00"), Some((1e9 + 0.25, true)));
        assert_eq!(iso(b"2001-09-08T21:46:40-0400"), Some((1e9, true)));
        assert_eq!(iso(b"2000-02-29T00:00"), Some((951_782_400.0, false)));
        for bad in
            ["", "T", "2001-02-29T00:00:00Z", "2001-09-09", "2001-09-09T25:00:00Z", "2001-09-09T01:46:4aZ", "é-09T"]
        {
            assert_eq!(iso(bad.as_bytes()), None, "{bad}");
        }
    }

    #[test]
    fn days_and_back() {
        for day in (0..80_000).step_by(37) {
            let (y, m, d) = civil(day);
            assert_eq!(days(y, m, d), Some(day));
        }
        assert_eq!(date_text(1e9).as_deref(), Some("2001-09-09"));
        assert_eq!(time_text(1e9), "01:46:40");
    }
}
