//! Surveys against the tables of shaft ends and of tolerances.

use counsel::survey::accuracy::{Class, Judged, Part, Rules, tolerance};
use counsel::survey::bore::{SAE_J755, sae_j755};
use validation::{assert_close, rows};

const INCH: f64 = 0.0254;

/// All 20 rows of 1:16 by the rules; the table prints thousandths, so half of one is the tolerance.
#[test]
fn sae_j755_by_its_rules() {
    let source = "SAE J755 (reaffirmed 2015), two copies to 3 1/2 in";
    let mut seen = 0;
    for row in rows("sae_j755.csv").iter().filter(|row| row[1] == "1:16") {
        let cell = |i: usize| row[i].parse::<f64>().unwrap();
        let shaft = cell(0);
        let (_, key) =
            SAE_J755.iter().find(|(d, _)| (d - shaft).abs() < 1e-9).copied().unwrap_or_else(|| panic!("{shaft} in"));
        assert_close!(key, cell(7), 1e-9, source);
        let end = sae_j755(shaft, key);
        assert_close!(end.taper_length.unwrap() / INCH, cell(2), 1e-9, source);
        assert_close!(end.shaft_small.unwrap() / INCH, cell(3), 0.000_51, source);
        assert_close!(end.small.unwrap() / INCH, cell(6), 0.000_51, source);
        assert_close!(end.hub_length.unwrap() / INCH, cell(13), 1e-9, source);
        // The shaft's small end lies inside its printed limits, where they are printed.
        if let (Ok(low), Ok(high)) = (row[4].parse::<f64>(), row[5].parse::<f64>()) {
            let small = end.shaft_small.unwrap() / INCH;
            assert!(low <= small && small <= high, "{shaft} in: {small}");
        }
        seen += 1;
    }
    assert_eq!(seen, SAE_J755.len());
    assert_eq!(seen, 20);
}

/// Every percentage and millimetre minimum of the file is what the program uses.
#[test]
fn iso_484_tolerances() {
    let percent: &[(&str, Judged, bool)] = &[
        ("pitch local", Judged::LocalPitch, true),
        ("pitch mean per radius per blade", Judged::SectionPitch, true),
        ("pitch mean per blade", Judged::BladePitch, true),
        ("pitch mean propeller", Judged::PropellerPitch, true),
        ("thickness plus", Judged::Thickness, true),
        ("thickness minus", Judged::Thickness, false),
        ("section length", Judged::SectionLength, true),
        ("angular spacing", Judged::Spacing, true),
        ("rake axial position", Judged::AxialPosition, true),
        ("extreme radius", Judged::TipRadius, true),
    ];
    let minima: &[(&str, &str, Judged, bool, Part)] = &[
        ("ISO 484-1", "pitch local minimum", Judged::LocalPitch, true, Part::One),
        ("ISO 484-1", "pitch mean per radius minimum", Judged::SectionPitch, true, Part::One),
        ("ISO 484-1", "pitch mean per blade minimum", Judged::BladePitch, true, Part::One),
        ("ISO 484-1", "pitch mean propeller minimum", Judged::PropellerPitch, true, Part::One),
        ("ISO 484-2", "pitch local minimum", Judged::LocalPitch, true, Part::Two),
        ("ISO 484-2", "pitch mean per radius minimum", Judged::SectionPitch, true, Part::Two),
        ("ISO 484-2", "pitch mean per blade minimum", Judged::BladePitch, true, Part::Two),
        ("ISO 484-2", "pitch mean propeller minimum", Judged::PropellerPitch, true, Part::Two),
        ("ISO 484-2:1981", "thickness plus minimum", Judged::Thickness, true, Part::Two),
        ("ISO 484-2:1981", "thickness minus minimum", Judged::Thickness, false, Part::Two),
        ("ISO 484-2:1981", "section length minimum", Judged::SectionLength, true, Part::Two),
    ];
    let source = "ISO 484-2:1981; trust by row of the file";
    let mut seen = 0;
    for row in rows("iso484_tolerances.csv") {
        let side = |t: (f64, f64), up: bool| if up { t.0 } else { t.1 };
        for (class, cell) in Class::ALL.into_iter().zip(&row[3..7]) {
            if let Some((_, judged, up)) = percent.iter().find(|p| p.0 == row[1]) {
                let rules = Rules { part: Part::Two, minima: false };
                let got = tolerance(*judged, class, 100.0, rules).map(|t| side(t, *up));
                assert_eq!(got.is_some(), !cell.is_empty(), "{} {class}", row[1]);
                if let Some(got) = got {
                    assert_close!(got, cell.parse().unwrap(), 1e-12, source);
                    seen += 1;
                }
            }
            if let Some((_, _, judged, up, part)) = minima.iter().find(|m| m.0 == row[0] && m.1 == row[1]) {
                // A reference of a micrometre leaves the minimum alone.
                let rules = Rules { part: *part, minima: true };
                if let (Some(t), false) = (tolerance(*judged, class, 1e-6, rules), cell.is_empty()) {
                    assert_close!(1000.0 * side(t, *up), cell.parse().unwrap(), 1e-3, source);
                    seen += 1;
                }
            }
        }
    }
    assert_eq!(seen, 39 + 42);
}

/// The radii of the classes, two copies.
#[test]
fn iso_484_radii() {
    let rows = rows("iso484_tolerances.csv");
    for (name, class, column) in [("radii S and I", Class::I, 3), ("radii II and III", Class::III, 5)] {
        let row = rows.iter().find(|row| row[1] == name).unwrap();
        let want: Vec<f64> = row[column].split(';').filter_map(|x| x.parse().ok()).collect();
        assert_eq!(class.radii(), want, "{name}");
        assert!(row[column].starts_with("near hub"));
    }
}
