//! Published geometry tables.

use super::{blade_of, numbers, of_blade};
use hydro::blade::{
    BSeries, Blade, Hand, Offset, Section, Shape, areas, b_series, expanded_area, skew, thickness_fraction,
};
use std::f64::consts::PI;
use validation::{assert_close, rows};

fn drawn(blades: u8, area: f64) -> hydro::blade::Propeller {
    b_series(&BSeries { blades, expanded_area_ratio: area, pitch_ratio: 1.0, diameter: 1.0, hand: Hand::Right })
}

fn section(blade: &Blade, x: f64) -> &Section {
    blade.sections.iter().find(|s| (s.radius / blade.tip_radius - x).abs() < 1e-9).expect("a drawn radius")
}

#[test]
fn b_series_outline_is_the_table() {
    const SOURCE: &str = "Oosterveld & van Oossanen 1975";
    for (file, counts) in
        [("oosterveld1975_outline_z3.csv", &[3][..]), ("oosterveld1975_outline_z4to7.csv", &[4, 5, 6, 7])]
    {
        for &z in counts {
            let blade = &drawn(z, 0.6).blades[0];
            for row in numbers(file).iter().filter(|row| row[0] < 1.0) {
                let s = section(blade, row[0]);
                assert_close!(s.chord() * f64::from(z) / 0.6, row[1], 1e-9, SOURCE);
                assert_close!(s.leading / s.chord(), row[2], 1e-9, SOURCE);
                let thickest = s.offsets.iter().max_by(|a, b| (a.back - a.face).total_cmp(&(b.back - b.face))).unwrap();
                assert_close!(thickest.fraction, row[3], 1e-9, SOURCE);
            }
        }
    }
}

#[test]
fn b_series_thickness_is_the_table() {
    for z in 2..=7 {
        let blade = &drawn(z, 0.5).blades[0];
        for row in numbers("oosterveld1975_thickness.csv") {
            let want = row[1] - row[2] * f64::from(z);
            assert_close!(section(blade, row[0]).thickness(), want, 1e-9, "Oosterveld & van Oossanen 1975");
        }
        // 0.045 at the axis with 4 blades, 0.005 less per blade more: as the series is remembered.
        let at_axis = thickness_fraction(blade, 0.16);
        assert_close!(at_axis, 0.065 - 0.005 * f64::from(z), 5e-4, "thickness fraction of the series, from memory");
    }
}

#[test]
fn b_series_ordinates_are_the_tables() {
    const SOURCE: &str = "Oosterveld & van Oossanen 1975";
    let (one, two) = (rows("oosterveld1975_v1.csv"), rows("oosterveld1975_v2.csv"));
    let places = [
        -1.0, -0.95, -0.9, -0.8, -0.7, -0.6, -0.5, -0.4, -0.2, 0.0, 0.2, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 1.0,
    ];
    let mut seen = 0;
    for z in [3, 5] {
        let blade = &drawn(z, 0.6).blades[0];
        for (v1, v2) in one.iter().zip(&two) {
            let value = |row: &[String], k: usize| row[k + 1].parse::<f64>().unwrap();
            let x: f64 = v1[0].parse().unwrap();
            assert_eq!(v1[0], v2[0]);
            if x < 0.2 {
                continue;
            }
            let s = section(blade, x);
            let (t, edge) = (s.thickness(), 0.05 * s.thickness());
            let b = s.offsets.iter().max_by(|a, b| (a.back - a.face).total_cmp(&(b.back - b.face))).unwrap().fraction;
            for (k, &p) in places.iter().enumerate() {
                // Toward the leading edge P b from the thickest point, toward the trailing edge |P| (c - b).
                let fraction = if p > 0.0 { b - p * b } else { b - p * (1.0 - b) };
                let near = |o: &&Offset| (o.fraction - fraction).abs() < 1e-9;
                let o = s.offsets.iter().find(near).expect("a tabled place");
                assert_close!(o.face, value(v1, k) * (t - edge), 1e-12, SOURCE);
                assert_close!(o.back, (value(v1, k) + value(v2, k)) * (t - edge) + edge, 1e-12, SOURCE);
                seen += 1;
            }
        }
    }
    assert_eq!(seen, 2 * 12 * 20);
}

#[test]
fn b_series_area_integrates_to_what_the_table_does() {
    // 2/π ∫ cZ/(D AE/A0) dx from 0.167 to 1 is printed as 0.996 (3 blades) and 0.989 (4 to 7). A monotone spline over r/R gives
    // these digits, so that is how they were made; a blade's pitch runs over r/R on just such a spline.
    for (file, want) in [("oosterveld1975_outline_z3.csv", 0.996), ("oosterveld1975_outline_z4to7.csv", 0.989)] {
        let rows: Vec<[f64; 6]> = numbers(file).iter().map(|r| [r[0], 0.1, r[1], 0.0, 0.0, 0.0]).collect();
        let shape = Shape::of(&blade_of(&rows, 1.0));
        let n = 2000;
        let h = (1.0 - 0.167) / f64::from(n);
        let sum: f64 = (0..n).map(|i| shape.cut(0.167 + h * (f64::from(i) + 0.5)).pitch * h).sum();
        assert_close!(sum * 2.0 / PI, want, 0.000_5, "2/π integral of the tables");
    }
    // The drawn blade rounds its tip off (spline over the root of 1 - r/R) and then has the area it is named after outside its
    // own hub.
    for z in 2..=7 {
        let p = drawn(z, 0.6);
        let ratio = f64::from(z) * expanded_area(&p.blades[0], p.hub.radius()) / (0.25 * PI) / 0.6;
        println!("B-series Z {z}: expanded area over nominal {ratio:.4}");
        assert_close!(ratio, 1.0, 0.005, "nominal AE/A0");
    }
}

struct Design {
    file: &'static str,
    name: &'static str,
    area: f64,
    tip_skew_deg: f64,
}

#[test]
fn skew_series_area_and_skew() {
    let all = [
        Design { file: "boswell1971_p4381.csv", name: "P4381", area: 0.725, tip_skew_deg: 0.0 },
        Design { file: "boswell1971_p4382.csv", name: "P4382", area: 0.725, tip_skew_deg: 36.0 },
        Design { file: "boswell1971_p4383.csv", name: "P4383", area: 0.725, tip_skew_deg: 72.0 },
        Design { file: "boswell1971_p4384.csv", name: "P4384", area: 0.725, tip_skew_deg: 108.0 },
    ];
    let d = 0.3048;
    for design in all {
        let table = numbers(design.file);
        let wide = table[0].len() == 8;
        let rows: Vec<[f64; 6]> = table
            .iter()
            .map(|r| {
                let (thickness, skew) = if wide { (r[4], r[6]) } else { (r[3], r[5]) };
                [0.5 * d * r[0], d * r[1], d * r[2], d * thickness, skew.to_radians(), 0.0]
            })
            .collect();
        let p = of_blade(&blade_of(&rows, 0.5 * d), 5, 0.2);
        let a = areas(&p);
        let s = skew(&p.blades[0], 0.1 * d);
        println!(
            "{}: AE/A0 {:.4} (stated {}), AD/A0 {:.4}, AP/A0 {:.4} (Taylor {:.4}), skew {:.2} deg (stated {})",
            design.name,
            a.expanded_ratio,
            design.area,
            a.developed_ratio,
            a.projected_ratio,
            a.projected_ratio_taylor,
            s.angle.to_degrees(),
            design.tip_skew_deg
        );
        // Stated to three digits. The eleven chords give 0.7118 by trapezoids, 0.7185 by a spline over r/R and 0.7224 with the
        // tip drawn round: the shape of the last 0.05 R alone is worth 0.004.
        assert_close!(a.expanded_ratio, design.area, 0.005, "Boswell 1971");
        assert_close!(s.angle.to_degrees(), design.tip_skew_deg, 1e-6, "Boswell 1971");
        assert!(a.projected_ratio < a.developed_ratio);
    }
}

#[test]
fn denny_p4119_area() {
    let d = 0.3048;
    let rows: Vec<[f64; 6]> = numbers("denny1968_p4119.csv")
        .iter()
        .map(|r| [0.5 * d * r[0], d * r[1], d * r[2], d * r[4] * r[1], 0.0, 0.0])
        .collect();
    let p = of_blade(&blade_of(&rows, 0.5 * d), 3, 0.2);
    let a = areas(&p);
    println!(
        "P4119: AE/A0 {:.4} (second program 0.606), AP/A0 {:.4} (Taylor {:.4})",
        a.expanded_ratio, a.projected_ratio, a.projected_ratio_taylor
    );
    // 0.5986 by trapezoids, 0.6035 by a spline over r/R: again the tip.
    assert_close!(a.expanded_ratio, 0.606, 0.003, "chord integral of the table by a second program");
    // Unskewed elliptical blades: what Taylor's relation was made for.
    assert_close!(a.projected_ratio / a.projected_ratio_taylor, 1.0, 0.04, "Taylor");
}

#[test]
fn vp1304_area_and_skew() {
    const SOURCE: &str = "SVA Potsdam Report 3752, Table 1 (Barkmann 2011)";
    let mm = 1e-3;
    let sections = numbers("barkmann2011_vp1304.csv")
        .iter()
        .map(|r| Section {
            radius: 125.0 * mm * r[0],
            pitch: r[2] * mm,
            leading: r[3] * mm,
            trailing: (r[1] - r[3]) * mm,
            rake: r[6] * mm,
            offsets: hydro::blade::Form::Lens.offsets(r[0], r[5] * mm, 0.0),
        })
        .collect();
    let mut blade = blade_of(&[], 125.0 * mm);
    blade.sections = sections;
    let p = of_blade(&blade, 5, 0.3);
    let a = areas(&p);
    let s = skew(&p.blades[0], 37.5 * mm);
    let at = Shape::of(&p.blades[0]).cut(0.7 * 125.0 * mm);
    println!(
        "VP1304: AE/A0 {:.5} (stated 0.77896), skew {:.3} deg (stated 18.837), c0.7 {:.3} mm, AP/A0 {:.4}",
        a.expanded_ratio,
        s.angle.to_degrees(),
        at.chord / mm,
        a.projected_ratio
    );
    assert_close!(at.chord / mm, 104.167, 1e-6, SOURCE);
    assert_close!(at.pitch / 0.25, 1.635, 1e-9, SOURCE);
    // The stated figures are those of the table's rows alone: trapezoids, and the range of the rows' mid-chord angles.
    let rows = &p.blades[0].sections;
    let trapezoids: f64 =
        rows.windows(2).map(|s| 0.5 * (s[0].chord() + s[1].chord()) * (s[1].radius - s[0].radius)).sum();
    assert_close!(5.0 * trapezoids / a.disc, 0.77896, 5e-6, SOURCE);
    let angles: Vec<f64> = rows.iter().map(|s| s.skew_angle().to_degrees()).collect();
    let range = angles.iter().copied().fold(f64::MIN, f64::max) - angles.iter().copied().fold(f64::MAX, f64::min);
    assert_close!(range, 18.837, 0.001, SOURCE);
    // A smooth outline bulges over its chords and its skew line passes below its lowest row.
    assert!(a.expanded_ratio > 0.77896 && a.expanded_ratio < 1.01 * 0.77896, "{}", a.expanded_ratio);
    assert!(s.angle.to_degrees() >= range && s.angle.to_degrees() < range + 0.2, "{}", s.angle.to_degrees());
}
