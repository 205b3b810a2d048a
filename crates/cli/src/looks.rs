//! How the pages look, on invented answers.

use counsel::report::Step;

use crate::answer::Report;
use crate::args::{Colour, Common, Format, Units};
use crate::commands::{change, choose, diagnose, judge};
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
fn the_shortlist_keeps_the_best_of_each_kind_of_work_on_what_is_fitted() {
    let mut list = fixture::choice().shortlist;
    list.insert(1, fixture::candidate(Step::Repitch, 16.0, 8.5, 3620.0, 0.7));
    choose::shorten(&mut list, 1);
    let kept: Vec<(Step, f64)> = list.iter().map(|c| (c.step, (c.pitch / 25.4).round())).collect();
    assert_eq!(kept, [(Step::Repitch, 9.0), (Step::NewPropeller, 10.0), (Step::Leave, 11.0)]);
}

#[test]
fn diagnose_warns_first_then_ranks() {
    let report = Report::Diagnose(Box::new(fixture::diagnosis()));
    insta::assert_snapshot!(plain(&diagnose::text(&report, &common(Units::Metric))));
    let mut lost = fixture::diagnosis();
    (lost.missing, lost.explained) = (Some(fixture::band(-260.0, -190.0, -120.0, "rpm")), false);
    let text = plain(&diagnose::text(&Report::Diagnose(Box::new(lost)), &common(Units::Metric)));
    assert!(text.contains("120 to 260 rpm more than the boat as stated should turn"), "{text}");
}
