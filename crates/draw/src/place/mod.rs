//! In place: the propeller under the boat, to scale as far as it is known.

use crate::measure::wrap;
use crate::pen::{Hang, P, Pen};
use crate::propeller::Drawn;
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{LEADING, MARGIN, TEXT};
use crate::words::{length, millimetres};
use counsel::phrase::number;
use hydro::blade::Shape;
use job::{Arrangement, Job};

/// What is known of the place.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The propeller.
    pub drawn: Drawn,
    /// Where it works.
    pub arrangement: Arrangement,
    /// Whether that was stated.
    pub arrangement_stated: bool,
    /// Depth of the shaft's centre below the water, m, and whether it was stated.
    pub immersion: (f64, bool),
    /// Shaft angle, degrees, and whether it was stated.
    pub shaft_angle: (f64, bool),
    /// Largest diameter that fits, m.
    pub largest: Option<f64>,
}

impl Place {
    /// From a job; `None` without a diameter or pitch.
    #[must_use]
    pub fn of_job(job: &Job) -> Option<Place> {
        let drawn = Drawn::of_job(job)?;
        let k = job::assume::knowledge(job);
        Some(Place {
            drawn,
            arrangement: k.arrangement.0,
            arrangement_stated: k.arrangement.1,
            immersion: (k.immersion.dist.middle, k.immersion.stated),
            shaft_angle: (k.shaft_angle.dist.middle, k.shaft_angle.stated),
            largest: job.propeller.largest_diameter.as_ref().map(|q| q.middle),
        })
    }

    fn words(&self) -> &'static str {
        match self.arrangement {
            Arrangement::Aperture => "in an aperture",
            Arrangement::FinKeelStrut => "on a strut behind the keel",
            Arrangement::Skeg => "behind a skeg",
            Arrangement::Saildrive => "on a saildrive",
            Arrangement::Outboard => "on an outboard",
            Arrangement::Sterndrive => "on a sterndrive",
            Arrangement::InclinedShaft => "on an inclined shaft",
            Arrangement::Tunnel => "in a tunnel",
        }
    }
}

/// Ground the surroundings are drawn on: pixel of metres right (forward) and up from the propeller's centre.
struct Ground {
    at: P,
    s: f64,
    left: f64,
    right: f64,
    /// Lowest and highest drawn, px.
    top: f64,
    bottom: f64,
}

impl Ground {
    fn px(&self, x: f64, z: f64) -> P {
        [
            (self.at[0] + self.s * x).max(self.left).min(self.right),
            (self.at[1] - self.s * z).max(self.top).min(self.bottom),
        ]
    }

    fn line(&self, points: &[[f64; 2]]) -> Vec<P> {
        points.iter().map(|p| self.px(p[0], p[1])).collect()
    }
}

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, place: &Place) -> Picture {
    let mut drawing = Drawing::open(sheet, &sentence(place));
    let narrow = sheet.narrow();
    let diameter = place.drawn.propeller.diameter();
    let radius = 0.5 * diameter;
    let swing = place.largest.map_or(radius, |l| 0.5 * l).min(2.5 * radius).max(radius);
    let immersion = place.immersion.0.max(0.02);
    // From a little above the water to under the propeller.
    let up = immersion.max(1.5 * swing).min((4.5 * radius).max(1.5 * swing)) + 0.25 * radius;
    let down = 1.5 * swing;
    let room = sheet.room();
    // Beside the drawing the notes, where there is room.
    let wide = if sheet.width() < 760.0 { room } else { 0.62 * room };
    let s = ((if narrow { 300.0 } else { 420.0 }) / (up + down)).min(wide / (5.0 * radius));
    let top = drawing.top + 10.0;
    let at = [MARGIN + 0.44 * wide, top + s * up];
    let ground = Ground { at, s, left: MARGIN, right: MARGIN + wide, top, bottom: top + s * (up + down) };
    let pen = &mut drawing.pen;
    let surface = ground.at[1] - s * immersion;
    pen.shape(
        "w",
        &[
            [ground.left, surface.max(top)],
            [ground.right, surface.max(top)],
            [ground.right, ground.bottom],
            [ground.left, ground.bottom],
        ],
    );
    surroundings(pen, &ground, place, swing);
    propeller(pen, &ground, place);
    clearances(pen, &ground, place, radius);
    water(pen, &ground, place, immersion);
    let mut bottom = ground.bottom + 6.0;
    let (x, text_room, mut y) =
        if wide < room { (ground.right + 22.0, room - wide - 22.0, top - 4.0) } else { (MARGIN, room, bottom) };
    for note in notes(place, diameter) {
        for line in wrap(&note, TEXT, text_room, 9) {
            y += LEADING;
            pen.text("s", [x, y], Hang::Start, &line);
        }
        y += 5.0;
    }
    if wide >= room {
        bottom = y;
    }
    drawing.close("In place", &desc(place), bottom)
}

/// The water line and the depth of the shaft.
fn water(pen: &mut Pen, g: &Ground, place: &Place, immersion: f64) {
    let surface = g.at[1] - g.s * immersion;
    let shown = surface >= g.top + 2.0;
    let line = surface.max(g.top);
    if shown {
        pen.line(if place.immersion.1 { "l" } else { "l g" }, [g.left, line], [g.right, line]);
        pen.text("o s", [g.left + 4.0, line + 14.0], Hang::Start, "water line");
    }
    let assumed = if place.immersion.1 { "" } else { ", assumed" };
    let text = format!("{} mm under water{assumed}", millimetres(immersion));
    let x = g.right - 12.0;
    pen.line("h", [x - 14.0, g.at[1]], [x + 4.0, g.at[1]]);
    pen.line("h", [x, line], [x, g.at[1]]);
    pen.head("k", [x, line], [x, g.at[1]], 7.0);
    if shown {
        pen.head("k", [x, g.at[1]], [x, line], 7.0);
    }
    let leg = matches!(place.arrangement, Arrangement::Outboard | Arrangement::Sterndrive | Arrangement::Saildrive);
    let base = if leg { g.bottom - 8.0 } else { line + 14.0 };
    pen.text("o", [x - 6.0, base], Hang::End, &text);
}

/// A part of the boat, drawn for place only: filled, its edge drawn only inside the ground.
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

/// Hull, bearing and rudder, drawn for place only.
fn surroundings(pen: &mut Pen, g: &Ground, place: &Place, swing: f64) {
    let d = 2.0 * swing;
    let (fore, aft, high) = ((g.right - g.at[0]) / g.s, (g.left - g.at[0]) / g.s, (g.at[1] - g.top) / g.s);
    let low = (g.at[1] - g.bottom) / g.s;
    let slope = place.shaft_angle.0.to_radians().tan();
    let shaft = |x: f64| x * slope;
    let rod = (0.034 * d).max(0.012);
    let rudder = |pen: &mut Pen, points: &[[f64; 2]], at: P| {
        body(pen, g, points);
        pen.text("s", at, Hang::Middle, "rudder");
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
                    [aft, 0.74 * d],
                    [-0.44 * d, 0.64 * d],
                    [0.16 * d, 0.64 * d],
                    [0.3 * d, 0.58 * d],
                    [0.36 * d, 0.44 * d],
                    [0.36 * d, -0.52 * d],
                    [0.28 * d, -0.62 * d],
                    [-d, -0.64 * d],
                    [-d, low],
                    [fore, low],
                    [fore, high],
                ],
            );
            rudder(
                pen,
                &[[-0.46 * d, 0.645 * d], [-0.98 * d, 0.69 * d], [-1.08 * d, -0.62 * d], [-0.46 * d, -0.62 * d]],
                g.px(-0.74 * d, 0.3 * d),
            );
        }
        Arrangement::Skeg => {
            draw_shaft(pen, 0.46 * d);
            body(
                pen,
                g,
                &[
                    [aft, high],
                    [aft, 0.82 * d],
                    [0.24 * d, 0.68 * d],
                    [0.36 * d, 0.12 * d],
                    [0.36 * d, -0.12 * d],
                    [1.6 * d, 0.42 * d],
                    [fore, 0.4 * d],
                    [fore, high],
                ],
            );
            rudder(
                pen,
                &[[-0.5 * d, 0.74 * d], [-0.95 * d, 0.76 * d], [-0.98 * d, -0.6 * d], [-0.55 * d, -0.6 * d]],
                g.px(-0.75 * d, 0.3 * d),
            );
        }
        Arrangement::FinKeelStrut | Arrangement::InclinedShaft => {
            let bottom = |x: f64| 0.68 * d - 0.05 * x;
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
            rudder(
                pen,
                &[
                    [-0.62 * d, bottom(-0.62 * d) - 0.02 * d],
                    [-1.05 * d, bottom(-1.05 * d) - 0.02 * d],
                    [-1.02 * d, -0.4 * d],
                    [-0.68 * d, -0.4 * d],
                ],
                g.px(-0.84 * d, 0.2 * d),
            );
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
                    [-0.7 * d, 0.56 * d],
                    [0.0, 0.62 * d],
                    [0.6 * d, 0.55 * d],
                    [1.5 * d, 0.1 * d],
                    [fore, -0.1 * d],
                    [fore, high],
                ],
            );
            pen.text("s", g.px(-0.1 * d, 0.72 * d), Hang::Middle, "tunnel");
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

/// The propeller from the side, upright blade and the disc it sweeps.
fn propeller(pen: &mut Pen, g: &Ground, place: &Place) {
    let p = &place.drawn.propeller;
    let Some(blade) = p.blades.first() else { return };
    let shape = Shape::of(blade);
    let (sin, cos) = place.shaft_angle.0.to_radians().sin_cos();
    let put = |x: f64, z: f64| -> P { g.px(x * cos - z * sin, x * sin + z * cos) };
    let hub = p.hub.radius();
    let tip = shape.tip_radius();
    for side in [1.0, -1.0] {
        let mut ring: Vec<P> = Vec::new();
        for half in [0.5, -0.5] {
            let mut edge: Vec<P> = (0..=18)
                .map(|i| {
                    let w = (1.0 - hub / tip).max(0.0).sqrt() * (1.0 - f64::from(i) / 18.0);
                    let cut = shape.cut(tip * (1.0 - w * w));
                    let (x, turn) = cut.place(half * cut.chord, 0.0);
                    put(x, side * cut.radius * turn.cos())
                })
                .collect();
            if half < 0.0 {
                edge.reverse();
            }
            ring.extend(edge);
        }
        pen.shape(if side > 0.0 { "p m" } else { "h c" }, &ring);
    }
    let h = &p.hub;
    let (fore, aft) = (h.forward, h.forward - h.length);
    let (rf, ra) = (0.5 * h.fore_diameter, 0.5 * h.aft_diameter);
    pen.shape("p m", &[put(fore, rf), put(aft, ra), put(aft - 0.6 * ra, 0.0), put(aft, -ra), put(fore, -rf)]);
}

/// Diameter, the largest that fits, and what is to spare.
fn clearances(pen: &mut Pen, g: &Ground, place: &Place, radius: f64) {
    let (sin, cos) = place.shaft_angle.0.to_radians().sin_cos();
    let put = |x: f64, z: f64| -> P { g.px(x * cos - z * sin, x * sin + z * cos) };
    let half = 0.22 * radius;
    for z in [radius, -radius] {
        pen.line("h", put(-1.6 * half, z), put(half, z));
    }
    // Left of the propeller, where no shaft is.
    let x = -0.62 * radius;
    let text = format!("{} mm", millimetres(2.0 * radius));
    let (a, b) = (put(x, radius), put(x, -radius));
    for (z, end) in [(radius, a), (-radius, b)] {
        pen.line("h", put(0.0, z), end);
    }
    let label = put(x, -0.45 * radius);
    pen.dimension(a, b, [label[0] - 5.0, label[1]], Hang::End, &text);
    if let Some(largest) = place.largest {
        for z in [0.5 * largest, -0.5 * largest] {
            pen.line("r g", put(-0.45 * radius, z), put(0.45 * radius, z));
        }
        let spare = 0.5 * largest - radius;
        let at = put(0.5 * radius, -0.5 * largest);
        let text = if spare >= 0.0 {
            format!("largest that fits {}", length(largest))
        } else {
            format!("too large by {} at the tip", length(-spare))
        };
        let x = (at[0]).min(g.right - crate::measure::width(&text, TEXT));
        pen.text("o q", [x.max(g.left), at[1] + 16.0], Hang::Start, &text);
    }
}

fn notes(place: &Place, diameter: f64) -> Vec<String> {
    let mut notes = vec![format!(
        "Wanted between tip and hull: 10 to 20 % of the diameter, {} to {} mm (common practice, no source); rules of the maker or the \
         society go first.",
        number(100.0 * diameter, 1.0),
        number(200.0 * diameter, 1.0)
    )];
    let mut unknown = vec!["hull, rudder and bearing"];
    if !place.immersion.1 {
        unknown.push("depth");
    }
    if !place.shaft_angle.1 {
        unknown.push("shaft angle");
    }
    if !place.arrangement_stated {
        unknown.push("arrangement");
    }
    notes.push(format!(
        "To scale: the propeller{}. Not measured, drawn for place only: {}.",
        if place.largest.is_some() { " and the room for it" } else { "" },
        unknown.join(", ")
    ));
    notes
}

fn sentence(place: &Place) -> String {
    let radius = 0.5 * place.drawn.propeller.diameter();
    let fits = match place.largest.map(|l| 0.5 * l - radius) {
        Some(spare) if spare >= 0.0 => format!("{} more radius would fit.", length(spare)),
        Some(spare) => format!("it is {} too large in radius for its place.", length(-spare)),
        None => "the room for it was not measured; measure the clearance at the tip.".to_owned(),
    };
    format!("{} across {}: {fits}", length(2.0 * radius), place.words())
}

fn desc(place: &Place) -> String {
    format!(
        "The propeller seen from starboard {}. Shaft centre {} below the water{}, shaft angle {} degrees{}. {}",
        place.words(),
        length(place.immersion.0),
        if place.immersion.1 { "" } else { " (assumed)" },
        number(place.shaft_angle.0, 0.1),
        if place.shaft_angle.1 { "" } else { " (assumed)" },
        place.largest.map_or_else(
            || "Largest diameter not known.".to_owned(),
            |l| format!("Largest diameter that fits {}.", length(l))
        )
    )
}
