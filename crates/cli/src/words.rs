//! Chances, gravity and small words.

use counsel::phrase;
use counsel::report::{Cost, Gravity};

/// A chance in figures a person can picture: `9 in 10`, as `counsel` says it in its sentences.
#[must_use]
pub fn chance(p: f64) -> String {
    if p.is_nan() { "unknown".to_owned() } else { phrase::chance(p).replace(" chances", "").replace(" chance", "") }
}

/// A chance for columns: `9 in 10`, `< 1 in 50`.
#[must_use]
pub fn short_chance(p: f64) -> String {
    chance(p).replace("less than", "<").replace("more than", ">")
}

/// The same chance in a word.
#[must_use]
pub fn likelihood(p: f64) -> &'static str {
    match p {
        p if p < 0.075 => "very unlikely",
        p if p < 0.35 => "unlikely",
        p if p < 0.65 => "about even",
        p if p < 0.85 => "likely",
        p if p < 0.965 => "very likely",
        _ => "almost surely",
    }
}

/// Mark and word of a gravity.
#[must_use]
pub const fn gravity(gravity: Gravity) -> (&'static str, &'static str) {
    match gravity {
        Gravity::Stop => ("■", "stop"),
        Gravity::Mend => ("▲", "mend"),
        Gravity::Watch => ("●", "watch"),
        Gravity::Well => ("✓", "well"),
    }
}

/// What a remedy or a measurement costs.
#[must_use]
pub const fn cost(cost: Cost) -> &'static str {
    match cost {
        Cost::Free => "nothing but time",
        Cost::Small => "an hour or a hand tool",
        Cost::Middling => "a diver or a mechanic's visit",
        Cost::Large => "a haul-out or parts",
    }
}

/// How far a reading lies from what was expected, in words; `deviations` in standard deviations.
#[must_use]
pub fn surprise(deviations: f64) -> &'static str {
    match deviations.abs() {
        d if d < 1.3 => "as expected",
        d if d < 2.0 => "a little off",
        d if d < 3.0 => "a surprise",
        _ => "does not fit",
    }
}

/// `1 boat`, `2 boats`, with the number grouped.
#[must_use]
pub fn count(number: usize, one: &str, many: &str) -> String {
    format!("{} {}", phrase::number(number as f64, 1.0), if number == 1 { one } else { many })
}

/// First letter large.
#[must_use]
pub fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// `a`, `a and b`, `a, b and c`.
#[must_use]
pub fn list<S: AsRef<str>>(items: &[S], last: &str) -> String {
    match items {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [firsts @ .., end] => {
            let firsts: Vec<&str> = firsts.iter().map(AsRef::as_ref).collect();
            format!("{} {last} {}", firsts.join(", "), end.as_ref())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chances_never_promise() {
        let said = [0.0, 0.05, 0.08, 0.5, 0.92, 0.95, 1.0].map(short_chance);
        assert_eq!(said, ["< 1 in 50", "1 in 20", "1 in 10", "5 in 10", "9 in 10", "19 in 20", "> 49 in 50"]);
        assert_eq!(chance(f64::NAN), "unknown");
    }

    #[test]
    fn lists_read_as_sentences() {
        assert_eq!(list::<&str>(&[], "and"), "");
        assert_eq!(list(&["a"], "and"), "a");
        assert_eq!(list(&["a", "b", "c"], "or"), "a, b or c");
    }
}
