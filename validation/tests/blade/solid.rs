//! Volume, centre, inertia and areas against trimesh, scipy and shapely.

use hydro::blade::{
    BSeries, Fineness, FlatFaced, Hand, Propeller, Width, b_series, blade_areas, blade_mesh, flat_faced,
    mass_properties,
};
use validation::rows;

fn drawn(name: &str) -> Propeller {
    let b = |blades, expanded_area_ratio, pitch_ratio, diameter| {
        b_series(&BSeries { blades, expanded_area_ratio, pitch_ratio, diameter, hand: Hand::Right })
    };
    match &name[..2] {
        "B4" => b(4, 0.55, 0.9, 0.6),
        "B3" => b(3, 0.50, 0.8, 0.5),
        _ => flat_faced(&FlatFaced {
            blades: 3,
            width: Width::MeanWidthRatio(0.33),
            pitch_ratio: 0.75,
            thickness_fraction: 0.045,
            diameter: 0.45,
            hub_ratio: 0.2,
            rake: 10_f64.to_radians(),
            skew: 15_f64.to_radians(),
            hand: Hand::Right,
        }),
    }
}

#[test]
fn blades_weigh_what_trimesh_says() {
    let table = rows("trimesh_blades.csv");
    assert_eq!(table.len(), 3);
    for row in &table {
        let want: Vec<f64> = row[1..].iter().map(|cell| cell.parse().unwrap()).collect();
        let p = drawn(&row[0]);
        let mesh = blade_mesh(&p, 0, Fineness { radial: 120, chordwise: 80, around: 96 });
        assert!(mesh.is_watertight());
        let m = mesh.moments();
        let a = blade_areas(&p.blades[0], p.hub.radius());
        let got = [
            m.volume,
            m.centre[0],
            m.centre[1],
            m.centre[2],
            m.second[1] + m.second[2],
            mesh.surface(),
            a.projected,
            a.expanded,
        ];
        let off: Vec<f64> = got.iter().zip(&want).map(|(g, w)| 100.0 * (g / w - 1.0)).collect();
        println!("{}: volume, centre x y z, inertia, surface, projected, expanded off by {off:.3?} %", row[0]);
        let radius = 0.5 * p.diameter();
        // Both draw chords and ordinates by monotone splines, but through different points and on different grids.
        for (k, name) in [(0, "volume"), (4, "inertia"), (5, "surface"), (6, "projected"), (7, "expanded")] {
            assert!(off[k].abs() < 0.4, "{}: {name} off by {} %", row[0], off[k]);
        }
        for k in 1..4 {
            assert!((got[k] - want[k]).abs() < 0.001 * radius, "{}: centre {k}", row[0]);
        }
    }
}

#[test]
fn the_usual_mesh_is_fine_enough() {
    for name in ["B4", "B3", "flat"] {
        let p = drawn(name);
        let at = |radial, chordwise| blade_mesh(&p, 0, Fineness { radial, chordwise, around: 96 }).moments();
        let usual = Fineness::default();
        let (usual, fine) = (at(usual.radial, usual.chordwise), at(240, 160));
        println!("{name}: usual mesh against 240 x 160: volume {:.5}", usual.volume / fine.volume);
        assert!((usual.volume / fine.volume - 1.0).abs() < 0.003);
    }
}

#[test]
fn parts_add_up_and_equal_blades_balance() {
    let mut p = drawn("B4");
    let all = mass_properties(&p, 7600.0, Fineness::default());
    assert!((all.mass - all.hub_mass - all.blade_masses.iter().sum::<f64>()).abs() < 1e-9);
    assert!(all.unbalance < 1e-9 * all.mass);
    // A blade 2 % thicker: 2 % of a blade's mass out of balance at the radius of its centre, toward that blade.
    for s in &mut p.blades[1].sections {
        for o in &mut s.offsets {
            o.face *= 1.02;
            o.back *= 1.02;
        }
    }
    let odd = mass_properties(&p, 7600.0, Fineness::default());
    let blade = blade_mesh(&p, 0, Fineness::default()).moments();
    let want = 0.02 * 7600.0 * blade.volume * blade.centre[1].hypot(blade.centre[2]);
    assert!((odd.unbalance / want - 1.0).abs() < 0.01, "{} {want}", odd.unbalance);
    // A blade set 2 degrees off: the whole blade's moment turned by 2 degrees, so to the side of the way it was moved.
    let mut off = drawn("B4");
    off.angles[1] += 2_f64.to_radians();
    let odd = mass_properties(&off, 7600.0, Fineness::default());
    let moment = 7600.0 * blade.volume * blade.centre[1].hypot(blade.centre[2]);
    assert!((odd.unbalance / (moment * 2.0 * 1_f64.to_radians().sin()) - 1.0).abs() < 1e-6);
    // The blade's centre leads its reference line by 4.3 degrees (y -0.0101, z 0.136 in the table of trimesh).
    let lead = 0.010_139_423_f64.atan2(0.136_345_04);
    let want = std::f64::consts::PI + lead + 1_f64.to_radians();
    let turns = (odd.heavy_angle - want).rem_euclid(std::f64::consts::TAU);
    assert!(turns.min(std::f64::consts::TAU - turns) < 1e-3, "{} {want}", odd.heavy_angle);
}
