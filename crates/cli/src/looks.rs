//! How the pages look, on invented answers.

use crate::answer::Report;
use crate::args::{Colour, Common, Format, Units};
use crate::commands::{change, choose, judge};
use crate::strip::{Row, Shape};
use crate::{fixture, page};

fn common(units: Units) -> Common {
    Common { format: Format::Text, units, seed: 1, boats: 4000, colour: Colour::Never }
}

/// Without colour, and held to the page's width.
fn plain(text: &str) -> String {
    let text = anstream::adapter::strip_str(text).to_string();
    for line in text.lines() {
        assert!(page::width(line) <= page::COLUMNS, "{} columns: {line}", page::width(line));
        assert_eq!(line, line.trim_end(), "blank at the end of a line");
    }
    text
}

#[test]
fn judge_speaks_first_shows_second_lists_last() {
    let read = Row {
        label: "read".to_owned(),
        at: [2784.0, 2900.0, 3016.0],
        shape: Shape::Cross,
        says: "2 900 rpm".to_owned(),
    };
    let report = Report::Judge(Box::new(fixture::judgement()));
    insta::assert_snapshot!(plain(&judge::text(&report, &[read], &common(Units::Metric))));
}

#[test]
fn try_shows_before_and_after() {
    let report = Report::Try(Box::new(fixture::comparison()));
    insta::assert_snapshot!(plain(&change::text(&report, &common(Units::Metric))));
}

#[test]
fn choose_shows_the_shortlist() {
    let report = Report::Choose(Box::new(fixture::choice()));
    insta::assert_snapshot!(plain(&choose::text(&report, &common(Units::Imperial))));
}

#[test]
fn the_shortlist_keeps_the_propeller_fitted() {
    let mut list = fixture::choice().shortlist;
    choose::shorten(&mut list, 2);
    let pitches: Vec<f64> = list.iter().map(|c| (c.pitch / 25.4).round()).collect();
    assert_eq!(pitches, [9.0, 11.0]);
}
