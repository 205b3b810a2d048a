//! The day of issue.

/// Today by the machine's clock, in universal time: `2026-05-02`.
#[must_use]
pub fn today() -> String {
    let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH).unwrap_or_default();
    let [year, month, day] = civil(i64::try_from(since.as_secs() / 86_400).unwrap_or_default());
    format!("{year:04}-{month:02}-{day:02}")
}

/// Year, month and day in the Gregorian calendar of so many days after 1 January 1970: counts eras of 400 years from 1 March,
/// so that the leap day comes last.
fn civil(days: i64) -> [i64; 3] {
    let from_march = days + 719_468;
    let era = from_march.div_euclid(146_097);
    let day_of_era = from_march.rem_euclid(146_097);
    let year_of_era = (day_of_era - day_of_era / 1_460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * month + 2) / 5 + 1;
    let month = if month < 10 { month + 3 } else { month - 9 };
    [year_of_era + 400 * era + i64::from(month <= 2), month, day]
}

#[cfg(test)]
mod tests {
    #[test]
    fn days_become_dates() {
        // Days from 1970-01-01 as `date -u -d @N` of GNU coreutils gives them.
        for (days, date) in [
            (0, [1970, 1, 1]),
            (11_016, [2000, 2, 29]),
            (20_575, [2026, 5, 2]),
            (47_540, [2100, 2, 28]),
            (47_541, [2100, 3, 1]),
        ] {
            assert_eq!(super::civil(days), date, "{days}");
        }
    }
}
