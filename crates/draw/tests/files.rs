//! Geometry files, read back.
use crate::common::kittiwake;
use hydro::blade::{Fineness, Hand, Shape, blade_mesh, expanded_outline, hub_mesh};
use std::collections::HashMap;

/// Triangles of a binary STL, mm.
fn read(bytes: &[u8]) -> Vec<[[f32; 3]; 3]> {
    assert!(!bytes.starts_with(b"solid"));
    let count = u32::from_le_bytes(bytes[80..84].try_into().unwrap()) as usize;
    assert_eq!(bytes.len(), 84 + 50 * count);
    let number = |at: usize| f32::from_le_bytes(bytes[at..at + 4].try_into().unwrap());
    (0..count).map(|i| [0, 1, 2].map(|c| [0, 1, 2].map(|k| number(84 + 50 * i + 12 + 12 * c + 4 * k)))).collect()
}

/// Closed: every edge, by the bits of its ends, is met once in each direction. Volume by tetrahedra, mm³.
fn closed_volume(triangles: &[[[f32; 3]; 3]]) -> f64 {
    let bits = |p: [f32; 3]| p.map(f32::to_bits);
    let mut edges: HashMap<_, i32> = HashMap::new();
    let mut volume = 0.0;
    for t in triangles {
        for (a, b) in [(0, 1), (1, 2), (2, 0)] {
            *edges.entry((bits(t[a]), bits(t[b]))).or_default() += 1;
        }
        let [a, b, c] = t.map(|p| p.map(f64::from));
        volume += (a[0] * (b[1] * c[2] - b[2] * c[1])
            + a[1] * (b[2] * c[0] - b[0] * c[2])
            + a[2] * (b[0] * c[1] - b[1] * c[0]))
            / 6.0;
    }
    for ((a, b), count) in &edges {
        assert_eq!(edges.get(&(*b, *a)), Some(count), "an open edge");
    }
    volume
}

#[test]
fn stl_is_watertight_and_holds_the_volume() {
    let p = &kittiwake().drawn.propeller;
    let blade = blade_mesh(p, 0, Fineness::default()).moments().volume * 1e9;
    let hub = hub_mesh(&p.hub, Fineness::default()).moments().volume * 1e9;
    // Single precision holds 432 mm to 3e-5 mm.
    let near = |a: f64, b: f64| (a / b - 1.0).abs() < 1e-5;
    assert!(near(closed_volume(&read(&draw::stl::blade(p, 0))), blade));
    assert!(near(closed_volume(&read(&draw::stl::hub(p))), hub));
    let whole = closed_volume(&read(&draw::stl::propeller(p)));
    assert!(near(whole, 3.0 * blade + hub), "{whole}");
    // The hub against the formula of a bored cylinder: 144 sides lose 1 - sin(2π/144)/(2π/144) = 0.032 %.
    let h = &p.hub;
    let cylinder = 0.25 * std::f64::consts::PI * (h.fore_diameter.powi(2) - h.bore_fore.powi(2)) * h.length * 1e9;
    assert!((closed_volume(&read(&draw::stl::hub(p))) / cylinder - 1.0).abs() < 4e-4);
}

fn parse(text: &str) -> dxf::Drawing {
    dxf::Drawing::load(&mut std::io::Cursor::new(text.as_bytes())).unwrap()
}

/// Corners of the polylines on a layer.
fn polylines(drawing: &dxf::Drawing, layer: &str) -> Vec<Vec<[f64; 2]>> {
    drawing
        .entities()
        .filter(|e| e.common.layer == layer)
        .filter_map(|e| match &e.specific {
            dxf::entities::EntityType::Polyline(p) => {
                Some(p.vertices().map(|v| [v.location.x, v.location.y]).collect())
            }
            _ => None,
        })
        .collect()
}

fn distance(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

#[test]
fn dxf_reads_back_within_a_hundredth_of_a_millimetre() {
    for hand in [Hand::Right, Hand::Left] {
        let mut p = kittiwake().drawn.propeller.clone();
        p.hand = hand;
        let text = draw::dxf::templates(&p, 0, "Kittiwake \u{648}", "2 May 2026");
        assert!(text.is_ascii());
        let drawing = parse(&text);
        let shape = Shape::of(&p.blades[0]);
        // Templates: the sloping edge is as long as the chord, its slope the pitch.
        let templates = polylines(&drawing, "TEMPLATE");
        assert_eq!(templates.len(), 7);
        for (t, share) in templates.iter().zip([0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]) {
            let cut = shape.cut(share * shape.tip_radius());
            assert!((distance(t[2], t[3]) - 1000.0 * cut.chord).abs() < 0.01);
            let slope = (t[2][1] - t[3][1]) / (t[2][0] - t[3][0]).abs();
            let pitch = std::f64::consts::TAU * 1000.0 * cut.radius * slope;
            assert!((pitch - 1000.0 * cut.pitch).abs() < 0.01 * 1000.0 * cut.pitch / (1000.0 * cut.chord), "{pitch}");
        }
        // Outline: every point, against the geometry.
        let outline = polylines(&drawing, "OUTLINE");
        assert_eq!(outline.len(), 1);
        let want = expanded_outline(&p.blades[0], p.hub.radius(), 120);
        let want: Vec<[f64; 2]> = want.leading.iter().copied().chain(want.trailing.iter().rev().copied()).collect();
        assert_eq!(outline[0].len(), want.len());
        for (got, want) in outline[0].iter().zip(&want) {
            assert!(distance(*got, [hand.sign() * 1000.0 * want[0], 1000.0 * want[1]]) < 0.01);
        }
        // The square to prove the print by.
        let square = &polylines(&drawing, "AXIS")[0];
        assert!(
            (distance(square[0], square[1]) - 100.0).abs() < 0.01
                && (distance(square[1], square[2]) - 100.0).abs() < 0.01
        );
    }
}

#[test]
fn no_blade_no_file() {
    let p = &kittiwake().drawn.propeller;
    assert!(draw::dxf::templates(p, 9, "", "").is_empty());
    assert_eq!(read(&draw::stl::blade(p, 9)).len(), 0);
}

/// What trimesh and ezdxf read from the files of the demo boats (`validation/scripts/exports.py`): every solid closed, the
/// volume that of the geometry within the digits printed, the lengths of the DXF's lines within 0.01 mm of what was written.
#[test]
fn outside_readers_read_the_same() {
    use std::collections::BTreeMap;
    let file = format!("{}/../../validation/data/exports.csv", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(file).expect("recorded");
    let rows: Vec<Vec<&str>> = text.lines().skip(2).map(|line| line.split(',').collect()).collect();
    let mut lengths: BTreeMap<(String, String), BTreeMap<String, f64>> = BTreeMap::new();
    for row in &rows {
        let [boat, name, quantity, value] = row[..] else { panic!("{row:?}") };
        let value: f64 = value.parse().expect("a number");
        let drawn = draw::Drawn::of_job(&crate::common::job(boat)).expect("drawn");
        let p = &drawn.propeller;
        match quantity {
            "watertight" => assert!(value == 1.0, "{row:?}"),
            "volume" => {
                let bytes = match name {
                    "blade-1.stl" => draw::stl::blade(p, 0),
                    "hub.stl" => draw::stl::hub(p),
                    _ => draw::stl::propeller(p),
                };
                let own = closed_volume(&read(&bytes));
                // Recorded to a tenth of a cubic millimetre; coordinates are single precision.
                assert!((own / value - 1.0).abs() < 1e-5, "{row:?} {own}");
            }
            "reach" => {
                let tip = p.blades.iter().map(|b| 1000.0 * b.tip_radius).fold(0.0, f64::max);
                assert!(name == "hub.stl" || value <= tip + 0.01, "{row:?} {tip}");
            }
            _ => {
                let layer = quantity.trim_start_matches("length ").to_owned();
                lengths.entry((boat.to_owned(), name.to_owned())).or_default().insert(layer, value);
            }
        }
    }
    assert!(!lengths.is_empty());
    for ((boat, name), want) in lengths {
        let drawn = draw::Drawn::of_job(&crate::common::job(&boat)).expect("drawn");
        let index: usize = name.trim_start_matches("templates-").trim_end_matches(".dxf").parse().expect("a number");
        let title = crate::common::job(&boat).title;
        let text = draw::dxf::templates(&drawn.propeller, index - 1, &title, "no date");
        let got = layer_lengths(&text);
        for (layer, value) in want {
            assert!((got[&layer] - value).abs() < 0.01, "{boat} {name} {layer}: {} {value}", got[&layer]);
        }
    }
}

/// Length of the lines and polylines of each layer.
fn layer_lengths(text: &str) -> std::collections::BTreeMap<String, f64> {
    use dxf::entities::EntityType;
    let drawing = dxf::Drawing::load(&mut text.as_bytes()).expect("a drawing");
    let mut sums = std::collections::BTreeMap::new();
    let far = |a: &dxf::Point, b: &dxf::Point| ((a.x - b.x).powi(2) + (a.y - b.y).powi(2) + (a.z - b.z).powi(2)).sqrt();
    for entity in drawing.entities() {
        let length = match &entity.specific {
            EntityType::Line(line) => far(&line.p1, &line.p2),
            EntityType::Polyline(line) => {
                let mut points: Vec<dxf::Point> = line.vertices().map(|v| v.location.clone()).collect();
                if line.is_closed() {
                    points.extend(points.first().cloned());
                }
                points.windows(2).map(|w| far(&w[0], &w[1])).sum()
            }
            _ => continue,
        };
        *sums.entry(entity.common.layer.clone()).or_insert(0.0) += length;
    }
    sums
}
