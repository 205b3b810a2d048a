//! What stands round the propeller: hull, bearing, strut, leg and rudder.

use super::{Ground, Place, edge_at};
use crate::pen::{Hang, P, Pen};
use counsel::phrase::number;
use job::Arrangement;

/// A part of the boat: filled, its edge drawn only inside the ground.
fn body(pen: &mut Pen, g: &Ground, points: &[[f64; 2]]) {
    let ring = g.line(points);
    pen.shape("p", &ring);
    let field = crate::axis::Field::new([g.left, g.top, g.right, g.bottom], (0.0, 1.0), (0.0, 1.0));
    let inside = |p: &P| p[0] > g.left + 0.2 && p[0] < g.right - 0.2 && p[1] > g.top + 0.2 && p[1] < g.bottom - 0.2;
    for i in 0..ring.len() {
        let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
        // An edge that runs along the border of the ground is no edge of the boat.
        let along = !inside(&a) && !inside(&b) && ((a[0] - b[0]).abs() < 0.3 || (a[1] - b[1]).abs() < 0.3);
        if !along {
            pen.paths("l", &field.clip(&[a, b]));
        }
    }
}

/// Hull, bearing and rudder: where they were measured to scale, else for place only.
pub fn draw(pen: &mut Pen, g: &Ground, place: &Place, swing: f64) {
    let d = 2.0 * swing;
    let (fore, aft, high) = ((g.right - g.at[0]) / g.s, (g.left - g.at[0]) / g.s, (g.at[1] - g.top) / g.s);
    let low = (g.at[1] - g.bottom) / g.s;
    let slope = place.shaft_angle.0.to_radians().tan();
    let shaft = |x: f64| x * slope;
    let rod = (0.034 * d).max(0.012);
    let room = &place.room;
    let (top, sole) = (room.above.unwrap_or(0.64 * d), room.below.unwrap_or(0.62 * d));
    let rudder = |pen: &mut Pen, ahead: f64, chord: f64, [high, low]: [f64; 2]| {
        rudder(pen, g, place, d, ahead, chord, [high, low]);
    };
    // Where the blades' edges are at 0.7 of the radius, and what was measured from them.
    let post = room.ahead.map_or(0.36 * d, |gap| edge_at(place, 0.5) + gap);
    let rudder_at = |usual: f64| match (room.rudder, room.aft) {
        (Some((stock, balance)), _) => -(stock - balance),
        (None, Some(gap)) => edge_at(place, -0.5) - gap,
        (None, None) => usual,
    };
    let draw_shaft = |pen: &mut Pen, reach: f64| {
        let (a, b) = (-0.1 * d, reach.min(fore));
        body(pen, g, &[[a, shaft(a) + rod], [b, shaft(b) + rod], [b, shaft(b) - rod], [a, shaft(a) - rod]]);
    };
    match place.arrangement {
        Arrangement::Aperture => {
            // Stern of a long keel: counter, deadwood, sole piece.
            draw_shaft(pen, 0.46 * d);
            body(
                pen,
                g,
                &[
                    [aft, high],
                    [aft, top + 0.1 * d],
                    [-0.44 * d, top],
                    [post - 0.2 * d, top],
                    [post - 0.06 * d, top - 0.06 * d],
                    [post, top - 0.2 * d],
                    [post, 0.1 * d - sole],
                    [post - 0.08 * d, -sole],
                    [-d, -sole - 0.02 * d],
                    [-d, low],
                    [fore, low],
                    [fore, high],
                ],
            );
            rudder(pen, rudder_at(-0.46 * d), 0.56 * d, [top + 0.01 * d, -sole]);
        }
        Arrangement::Skeg => {
            draw_shaft(pen, 0.46 * d);
            body(
                pen,
                g,
                &[
                    [aft, high],
                    [aft, 0.82 * d],
                    [post - 0.12 * d, room.above.unwrap_or(0.68 * d)],
                    [post, 0.12 * d],
                    [post, -0.12 * d],
                    [1.6 * d, 0.42 * d],
                    [fore, 0.4 * d],
                    [fore, high],
                ],
            );
            rudder(pen, rudder_at(-0.52 * d), 0.45 * d, [room.above.map_or(0.72 * d, |top| top), -0.6 * d]);
        }
        Arrangement::FinKeelStrut | Arrangement::InclinedShaft => {
            let bottom = |x: f64| room.above.unwrap_or(0.68 * d) - 0.05 * x;
            draw_shaft(pen, 3.0 * d);
            let s0 = 0.28 * d;
            body(
                pen,
                g,
                &[
                    [s0, shaft(s0) - 0.06 * d],
                    [s0 + 0.24 * d, shaft(s0 + 0.24 * d) - 0.06 * d],
                    [s0 + 0.24 * d, bottom(s0) + 0.02 * d],
                    [s0 + 0.06 * d, bottom(s0) + 0.02 * d],
                ],
            );
            pen.text("o s", g.px(s0 + 0.3 * d, 0.45 * d), Hang::Start, "strut");
            body(pen, g, &[[aft, high], [aft, bottom(aft)], [fore, bottom(fore)], [fore, high]]);
            rudder(pen, rudder_at(-0.64 * d), 0.4 * d, [bottom(-0.8 * d) - 0.03 * d, -0.4 * d]);
        }
        Arrangement::Tunnel => {
            draw_shaft(pen, 2.0 * d);
            body(
                pen,
                g,
                &[
                    [aft, high],
                    [aft, 0.25 * d],
                    [-1.2 * d, 0.4 * d],
                    [-0.7 * d, top - 0.08 * d],
                    [0.0, top],
                    [0.6 * d, top - 0.07 * d],
                    [1.5 * d, 0.1 * d],
                    [fore, -0.1 * d],
                    [fore, high],
                ],
            );
            pen.text("s", g.px(-0.1 * d, top + 0.08 * d), Hang::Middle, "tunnel");
        }
        Arrangement::Saildrive => {
            body(
                pen,
                g,
                &[
                    [0.3 * d, 0.9 * d],
                    [0.36 * d, 0.14 * d],
                    [0.14 * d, 0.12 * d],
                    [0.14 * d, -0.12 * d],
                    [0.7 * d, -0.13 * d],
                    [0.92 * d, -0.04 * d],
                    [0.92 * d, 0.05 * d],
                    [0.76 * d, 0.13 * d],
                    [0.84 * d, 0.9 * d],
                ],
            );
            pen.text("s", g.px(0.57 * d, 0.45 * d), Hang::Middle, "leg");
            body(pen, g, &[[aft, high], [aft, 0.92 * d], [fore, 0.82 * d], [fore, high]]);
        }
        Arrangement::Outboard | Arrangement::Sterndrive => {
            body(pen, g, &[[1.02 * d, high], [1.02 * d, 0.62 * d], [fore, 0.56 * d], [fore, high]]);
            body(
                pen,
                g,
                &[
                    [0.22 * d, high],
                    [0.26 * d, 0.66 * d],
                    [-0.5 * d, 0.63 * d],
                    [-0.5 * d, 0.585 * d],
                    [0.3 * d, 0.585 * d],
                    [0.36 * d, 0.16 * d],
                    [0.14 * d, 0.13 * d],
                    [0.14 * d, -0.13 * d],
                    [0.36 * d, -0.16 * d],
                    [0.44 * d, -0.6 * d],
                    [0.7 * d, -0.5 * d],
                    [0.76 * d, -0.14 * d],
                    [0.94 * d, -0.04 * d],
                    [0.94 * d, 0.05 * d],
                    [0.78 * d, 0.15 * d],
                    [0.82 * d, high],
                ],
            );
            pen.text("s", g.px(0.57 * d, 0.35 * d), Hang::Middle, "leg");
        }
    }
    if matches!(place.arrangement, Arrangement::FinKeelStrut | Arrangement::InclinedShaft | Arrangement::Tunnel) {
        // The angle of the shaft to the water.
        let end = (1.5 * d).min(0.8 * fore);
        pen.line("h c", g.px(0.15 * d, 0.0), g.px(end, 0.0));
        let assumed = if place.shaft_angle.1 { "" } else { " (assumed)" };
        let text = format!("shaft {}\u{b0}{assumed}", number(place.shaft_angle.0, 0.1).trim_end_matches(".0"));
        pen.text("o", [g.px(0.5 * d, 0.0)[0], g.at[1] - 5.0], Hang::Start, &text);
    }
}

/// The rudder amidships, and broken as it stands hard over, where stock and balance were measured: seen from the side it
/// is as much shorter as it is turned.
fn rudder(pen: &mut Pen, g: &Ground, place: &Place, d: f64, ahead: f64, chord: f64, [high, low]: [f64; 2]) {
    let taper = 0.06 * d;
    let outline = |lead: f64, chord: f64| {
        [[lead, high], [lead - chord + taper, high + 0.02 * d], [lead - chord, low], [lead, low]]
    };
    body(pen, g, &outline(ahead, chord));
    let name = g.px(ahead - 0.5 * chord, 0.36 * d);
    let name = [name[0].max(g.left + 24.0), name[1]];
    pen.text("s", name, Hang::Middle, "rudder");
    let Some((stock, balance)) = place.room.rudder else { return };
    let turned = place.room.rudder_angle.unwrap_or_else(|| 35.0_f64.to_radians()).cos();
    let lead = -(stock - balance * turned);
    let ring = g.line(&outline(lead, (chord * turned).max(taper + 0.02 * d)));
    let mut closed = ring.clone();
    closed.extend(ring.first().copied());
    pen.path("h g", &closed);
    pen.line("h c", g.px(-stock, high + 0.08 * d), g.px(-stock, low));
    let degrees = number(turned.acos().to_degrees(), 1.0);
    let text = format!("hard over {degrees}\u{b0}");
    let x = name[0].max(g.left + 0.5 * pen.width(&text, crate::style::TEXT));
    pen.text("o s", [x, name[1] + 15.0], Hang::Middle, &text);
}
