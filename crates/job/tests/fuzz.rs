//! Nothing that can be written makes the reader panic, point outside the file, or give a band out of order.

use job::{Dimension, Document, Job, Quantity, render};
use proptest::prelude::*;

fn survives(text: &str) {
    match Job::read(text) {
        Ok(read) => {
            let written = read.job.to_toml();
            assert!(Job::read(&written).is_ok() || written.is_empty(), "{written}");
            assert!(read.doubts.iter().all(|p| text.get(p.span.clone()).is_some()));
            let _ = render(&read.doubts, "t", text, false);
        }
        Err(problems) => {
            assert!(!problems.is_empty());
            for p in &problems {
                assert!(text.get(p.span.clone()).is_some(), "{p:?} outside of {text:?}");
            }
            let _ = render(&problems, "t", text, false);
        }
    }
    if let Ok(mut document) = Document::parse(text) {
        assert_eq!(document.to_string(), text);
        let _ = document.set("propeller.pitch", "11 in");
        let _ = document.set("reading.0.speed", "6 kn");
        let _ = document.remove("boat");
        let _ = document.to_string();
    }
}

/// What is put in: pieces that mean something somewhere.
const PIECES: &[&str] = &[
    "\"",
    "'",
    "[",
    "]",
    "[[",
    "]]",
    "=",
    ".",
    "..",
    "±",
    "+-",
    "(",
    ")",
    ",",
    "%",
    " ",
    "\n",
    "\r\n",
    "#",
    "{",
    "}",
    "\\",
    "\\u00e9",
    "é",
    "½",
    "°",
    "\u{0}",
    "\t",
    "\u{feff}",
    "\u{a0}",
    "1e309",
    "nan",
    "inf",
    "-",
    "0",
    "99999999999999999999",
    "in",
    "t",
    "kn",
    "[boat]",
    "[[reading]]",
    "[reading.state.propeller]",
    "kind",
    "\"\"\"",
    "'''",
    "2026-05-02",
    "true",
    "ft 6",
    "'6\"",
    "1/0",
    "3/4",
];

fn mutated() -> impl Strategy<Value = String> {
    let edit = (any::<prop::sample::Index>(), 0..6usize, 0..PIECES.len(), any::<prop::sample::Index>());
    prop::collection::vec(edit, 1..12).prop_map(|edits| {
        let mut text: Vec<char> = crate::FULL.chars().collect();
        for (at, kind, piece, other) in edits {
            if text.is_empty() {
                break;
            }
            let i = at.index(text.len());
            let j = other.index(text.len());
            let piece: Vec<char> = PIECES[piece].chars().collect();
            match kind {
                0 => drop(text.splice(i..i, piece)),
                1 => drop(text.drain(i..(i + 1 + j % 5).min(text.len()))),
                2 => drop(text.splice(i..(i + piece.len()).min(text.len()), piece)),
                3 => text.swap(i, j),
                4 => text.truncate(text.len() - (i % 40)),
                _ => {
                    let copy: Vec<char> = text[i..(i + j % 80).min(text.len())].to_vec();
                    text.splice(j..j, copy);
                }
            }
        }
        text.into_iter().collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn mutations_of_a_good_file(text in mutated()) {
        survives(&text);
    }

    #[test]
    fn any_text_at_all(text in "\\PC{0,200}") {
        survives(&text);
    }

    #[test]
    fn any_quantity_string(text in "[~±+.,()/:%'\"0-9a-z½°² -]{0,24}", which in 0..13usize) {
        use Dimension::*;
        let dimension = [Length, Area, Mass, Speed, Rotation, Power, Force, Angle, Temperature, Duration, FuelFlow, Pressure, Ratio][which];
        match Quantity::parse(&text, dimension, "pitch") {
            Ok(q) => prop_assert!(q.low <= q.middle && q.middle <= q.high && q.high.is_finite(), "{q:?}"),
            Err(p) => prop_assert!(text.get(p.span.clone()).is_some(), "{p:?}"),
        }
    }

    /// A value written with any spread and unit comes back within rounding.
    #[test]
    fn numbers_there_and_back(value in 100.0..9000.0f64, half in 0.0..90.0f64) {
        let toml = format!("[boat]\ndisplacement = \"{value} kg ± {half}\"\n");
        let q = Job::read(&toml).unwrap().job.boat.displacement.unwrap();
        prop_assert!((q.middle - value).abs() < 1e-9 && (q.high - q.middle - half).abs() < 1e-9);
    }
}

/// Every single character of a good file taken out, and every prefix of it.
#[test]
fn every_deletion_and_every_prefix() {
    let text = crate::FULL;
    for (at, c) in text.char_indices() {
        survives(&format!("{}{}", &text[..at], &text[at + c.len_utf8()..]));
        survives(&text[..at]);
    }
}

#[test]
fn huge_and_deep() {
    survives(&"[".repeat(5000));
    survives(&format!("a = {}1{}", "[".repeat(500), "]".repeat(500)));
    survives(&"x = 1\n".repeat(2000));
    survives(&"[[reading]]\nspeed = \"6 kn\"\n".repeat(3000));
    assert_eq!(Job::read(&"#\n".repeat(1 << 20)).unwrap_err()[0].code, "not-a-job");
}
