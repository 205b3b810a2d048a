//! "Did you mean": the nearest of a few words.

/// Number of single-letter slips (insert, drop, change, swap of neighbours) between two words.
pub(crate) fn slips(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let width = b.len() + 1;
    let mut rows = vec![0usize; (a.len() + 1) * width];
    for i in 0..=a.len() {
        for j in 0..=b.len() {
            rows[i * width + j] = if i == 0 || j == 0 {
                i + j
            } else {
                let change = usize::from(a[i - 1] != b[j - 1]);
                let mut best = (rows[(i - 1) * width + j] + 1)
                    .min(rows[i * width + j - 1] + 1)
                    .min(rows[(i - 1) * width + j - 1] + change);
                if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                    best = best.min(rows[(i - 2) * width + j - 2] + 1);
                }
                best
            };
        }
    }
    rows[a.len() * width + b.len()]
}

/// The candidate most like `word`, if any is like enough to be worth naming.
pub(crate) fn nearest<'a>(word: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    if word.len() > 60 {
        return None;
    }
    let plain = |s: &str| s.to_lowercase().replace(['_', '-'], " ");
    let word = plain(word.trim());
    let allowed = (word.chars().count() / 3).clamp(1, 4);
    candidates
        .into_iter()
        .map(|candidate| (slips(&word, &plain(candidate)), candidate))
        .filter(|&(n, candidate)| n <= allowed && n < candidate.chars().count())
        .min_by_key(|&(n, _)| n)
        .map(|(_, candidate)| candidate)
}

/// `a`, `a or b`, `a, b or c`.
pub(crate) fn list<S: AsRef<str>>(words: &[S]) -> String {
    match words {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [head @ .., last] => {
            let head: Vec<&str> = head.iter().map(AsRef::as_ref).collect();
            format!("{} or {}", head.join(", "), last.as_ref())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_near_word_and_keeps_silent_on_the_far() {
        assert_eq!(slips("pitch", "pitch"), 0);
        assert_eq!(slips("ptich", "pitch"), 1);
        assert_eq!(nearest("diametre", ["pitch", "diameter"]), Some("diameter"));
        assert_eq!(nearest("length-waterline", ["length_waterline"]), Some("length_waterline"));
        assert_eq!(nearest("colour", ["pitch", "diameter"]), None);
        assert_eq!(nearest("x", ["y"]), None);
    }
}
