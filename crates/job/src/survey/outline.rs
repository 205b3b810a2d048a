//! Import of the points clicked round a blade on a photograph.

use crate::problem::Problem;

/// A blade's outline clicked by hand has tens of points; more than this is no such table.
const MOST_POINTS: usize = 2000;

const HELP: &str = "one point a line, pixels from the left and from the top: 790, 655";

/// Reads a table of points: two numbers a line, `x, y`, separated by comma, semicolon, tab or space. A first line of words
/// and lines that begin with `#` are passed over.
///
/// # Errors
/// Everything wrong with the table, in order of place; spans count bytes of `text`.
pub fn points(text: &str) -> Result<Vec<[f64; 2]>, Vec<Problem>> {
    let (mut points, mut problems) = (Vec::new(), Vec::new());
    let mut begin = 0;
    for line in text.split_inclusive('\n') {
        let at = begin..begin + line.trim_end().len();
        begin += line.len();
        let line = line.trim().trim_start_matches('\u{feff}');
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        let cells: Vec<&str> = line.split([',', ';', '\t', ' ']).filter(|cell| !cell.is_empty()).collect();
        let numbers: Vec<f64> =
            cells.iter().filter_map(|cell| cell.parse().ok()).filter(|n: &f64| n.is_finite()).collect();
        match numbers[..] {
            [x, y] if cells.len() == 2 => points.push([x, y]),
            [] if points.is_empty() && problems.is_empty() => {}
            _ => problems.push(
                Problem::error("bad-point", at, format!("`{}` is no point", line.chars().take(40).collect::<String>()))
                    .help(HELP),
            ),
        }
        if problems.len() >= 20 || points.len() > MOST_POINTS {
            break;
        }
    }
    if points.len() > MOST_POINTS {
        problems.push(Problem::error("not-an-outline", 0..0, format!("more than {MOST_POINTS} points")).help(HELP));
    } else if points.len() < LEAST_POINTS && problems.is_empty() {
        let help = format!("click {LEAST_POINTS} points or more round one blade, from the hub to the tip and back");
        problems.push(Problem::error("too-few-points", 0..0, format!("{} points", points.len())).help(help));
    }
    if problems.is_empty() { Ok(points) } else { Err(problems) }
}

/// Fewer points do not show a blade's form.
pub const LEAST_POINTS: usize = 8;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_are_read_and_what_is_none_is_refused_where_it_stands() {
        let good = "x px; y px\n# by hand\n1;2\n3\t4\n5 6\n7,8\n9,10\n11,12\n13,14\n-1.5,16\n";
        let read = points(good).expect("points");
        assert_eq!((read.len(), read[7]), (8, [-1.5, 16.0]));
        let bad = "1,2\n3,four\n5\n";
        let problems = points(bad).expect_err("refused");
        assert_eq!(problems.iter().map(|p| &bad[p.span.clone()]).collect::<Vec<_>>(), ["3,four", "5"]);
        assert_eq!(points("1,2\n3,4\n").expect_err("too few")[0].code, "too-few-points");
        assert_eq!(points("1,2\nnan,4\n").expect_err("no number")[0].code, "bad-point");
    }
}
