//! Published data and the tests that replay it.

pub mod boats;
pub mod causes;
pub mod page;
pub mod synthetic;

/// Asserts that `got` lies within `tolerance` of `want` (absolute), naming the source of `want`.
#[macro_export]
macro_rules! assert_close {
    ($got:expr, $want:expr, $tolerance:expr, $source:expr) => {{
        let (got, want, tolerance): (f64, f64, f64) = ($got, $want, $tolerance);
        assert!(
            (got - want).abs() <= tolerance,
            "{}: got {got}, want {want} ± {tolerance} ({})",
            stringify!($got),
            $source
        );
    }};
}

/// Rows of a data file in `validation/data`, comments (`#`) and the header left out, split at commas.
///
/// # Panics
/// When the file cannot be read: a test without its data must fail.
#[must_use]
pub fn rows(file: &str) -> Vec<Vec<String>> {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(file);
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    text.lines()
        .filter(|line| !line.starts_with('#') && !line.trim().is_empty())
        .skip(1)
        .map(|line| line.split(',').map(|cell| cell.trim().to_owned()).collect())
        .collect()
}
