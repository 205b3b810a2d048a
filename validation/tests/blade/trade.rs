//! Facts of the trade (common practice, no source), as far as geometry decides them.

use hydro::blade::{
    BSeries, Fineness, FlatFaced, Hand, Mesh, Propeller, Width, areas, b_series, blade_mesh, flat_faced,
    projected_outline,
};

fn stock(hand: Hand, rake_deg: f64, pitch_ratio: f64) -> Propeller {
    flat_faced(&FlatFaced {
        blades: 3,
        width: Width::MeanWidthRatio(0.33),
        pitch_ratio,
        thickness_fraction: 0.045,
        diameter: 0.45,
        hub_ratio: 0.2,
        rake: rake_deg.to_radians(),
        skew: 0.0,
        hand,
    })
}

/// Hand of a solid body, read off its surface alone: the sense in which the widest part of an upright blade climbs toward
/// `forward` (+1 or -1 along x). Seen from behind, a right-hand blade lies farther forward on its right side.
fn hand_of(mesh: &Mesh, forward: f64) -> Hand {
    let (mut sum, mut n) = (0.0, 0.0);
    let upright: Vec<&[f64; 3]> = mesh.vertices.iter().filter(|v| v[2] > 0.0).collect();
    let mean = upright.iter().map(|v| v[0] * forward).sum::<f64>() / upright.iter().map(|_| 1.0).sum::<f64>();
    for v in upright {
        // To the right of an eye that looks along `forward` with z up: -y for forward = +x, +y for forward = -x.
        let right = -v[1] * forward;
        sum += right * (v[0] * forward - mean);
        n += 1.0;
    }
    Hand::from_leading_edge(sum / n > 0.0)
}

#[test]
fn end_for_end_keeps_the_hand_and_a_mirror_turns_it() {
    for hand in [Hand::Right, Hand::Left] {
        let mesh = blade_mesh(&stock(hand, 0.0, 0.8), 0, Fineness::default());
        assert_eq!(hand_of(&mesh, 1.0), hand);
        // End for end: half a turn about the upright axis; what was forward now looks aft.
        let mut turned = mesh.clone();
        for v in &mut turned.vertices {
            *v = [-v[0], -v[1], v[2]];
        }
        assert_eq!(hand_of(&turned, 1.0), hand);
        // Seen from the other end without touching it: the same.
        assert_eq!(hand_of(&mesh, -1.0), hand);
        let mut mirrored = mesh.clone();
        for v in &mut mirrored.vertices {
            v[1] = -v[1];
        }
        assert_ne!(hand_of(&mirrored, 1.0), hand);
    }
}

#[test]
fn a_right_hand_blade_leads_on_the_right_and_forward() {
    for (hand, side) in [(Hand::Right, 1.0), (Hand::Left, -1.0)] {
        let p = b_series(&BSeries { blades: 3, expanded_area_ratio: 0.5, pitch_ratio: 0.8, diameter: 0.5, hand });
        let root = hydro::blade::Shape::of(&p.blades[0]).cut(0.7 * 0.25);
        let (x_lead, turn_lead) = root.place(0.5 * root.chord, 0.0);
        let (x_trail, turn_trail) = root.place(-0.5 * root.chord, 0.0);
        // The leading edge is ahead both along the shaft and in the sense of rotation; clockwise is to the right on top.
        assert!(x_lead > x_trail && turn_lead > turn_trail);
        assert!(hand.sign() * (turn_lead - turn_trail) * side > 0.0);
        let mesh = blade_mesh(&p, 0, Fineness::default());
        let foremost = mesh.vertices.iter().max_by(|a, b| a[0].total_cmp(&b[0])).unwrap();
        let right = -foremost[1];
        assert!(right * side > 0.0, "{hand:?}: the foremost point is at {right} to the right");
    }
}

#[test]
fn raked_blades_are_longer_and_have_more_surface_at_equal_diameter() {
    let length = |p: &Propeller| {
        let s = &p.blades[0].sections;
        let (root, tip) = (&s[0], &s[s.len() - 1]);
        (tip.radius - root.radius).hypot(tip.rake - root.rake)
    };
    let face = |p: &Propeller| blade_mesh(p, 0, Fineness::default()).surface();
    for pitch in [0.6, 1.0, 1.4] {
        let mut last: Option<(f64, f64)> = None;
        for rake in [0.0, 10.0, 20.0, 30.0] {
            let p = stock(Hand::Right, rake, pitch);
            assert!((p.diameter() - 0.45).abs() < 1e-12);
            let now = (length(&p), face(&p));
            if let Some(before) = last {
                assert!(now.0 > before.0 && now.1 > before.1, "rake {rake}, P/D {pitch}: {now:?} after {before:?}");
            }
            last = Some(now);
        }
    }
}

#[test]
fn projected_is_smaller_than_developed_and_shrinks_with_pitch() {
    let mut last = f64::INFINITY;
    for i in 0..10 {
        let pitch = 0.5 + 0.1 * f64::from(i);
        let a = areas(&stock(Hand::Right, 0.0, pitch));
        let share = a.projected_ratio / a.developed_ratio;
        assert!(share < 1.0 && share < last, "{pitch}");
        last = share;
        let taylor = a.projected_ratio_taylor / a.developed_ratio;
        println!(
            "P/D {pitch:.1}: AP/AD {share:.4}, Taylor {taylor:.4}, AD/AE {:.4}",
            a.developed_ratio / a.expanded_ratio
        );
        // The relation is a straight line through blades of its day, good to a few per cent.
        assert!((share / taylor - 1.0).abs() < 0.05, "{pitch}: {share} {taylor}");
    }
}

#[test]
fn the_mesh_casts_the_shadow_of_the_projected_outline() {
    for hand in [Hand::Right, Hand::Left] {
        let p = stock(hand, 15.0, 0.9);
        let o = projected_outline(&p.blades[0], p.hub.radius(), 60);
        let widest = o.leading.iter().map(|q| q[0]).fold(0.0, f64::max);
        let mesh = blade_mesh(&p, 0, Fineness::default());
        let right = mesh.vertices.iter().map(|v| -v[1] * hand.sign()).fold(0.0, f64::max);
        assert!((right - widest).abs() < 0.02 * widest, "{right} {widest}");
    }
}
