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
        [(self.at[0] + self.s * x).clamp(self.left, self.right), (self.at[1] - self.s * z).clamp(self.top, self.bottom)]
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
    let swing = place.largest.map_or(radius, |l| 0.5 * l).max(radius);
    let immersion = place.immersion.0.max(0.02);
    // From a little above the water to under the propeller.
    let up = immersion.clamp(1.5 * swing, 4.5 * radius) + 0.25 * radius;
    let down = 1.5 * swing;
    let room = sheet.room();
    let s = ((if narrow { 300.0 } else { 400.0 }) / (up + down)).min(room / (5.4 * radius));
    let top = drawing.top + 10.0;
    let ground = Ground {
        at: [MARGIN + if narrow { 0.43 } else { 0.40 } * room, top + s * up],
        s,
        left: MARGIN,
        right: sheet.width() - MARGIN,
        top,
        bottom: top + s * (up + down),
    };
    let pen = &mut drawing.pen;
    water(pen, &ground, place, immersion);
    surroundings(pen, &ground, place, swing);
    propeller(pen, &ground, place);
    clearances(pen, &ground, place, radius);
    let mut bottom = ground.bottom + 6.0;
    for note in notes(place, diameter) {
        for line in wrap(&note, TEXT, room, 4) {
            bottom += LEADING;
            pen.text("s", [MARGIN, bottom], Hang::Start, &line);
        }
    }
    drawing.close("In place", &desc(place), bottom)
}

/// The water line and the depth of the shaft.
fn water(pen: &mut Pen, g: &Ground, place: &Place, immersion: f64) {
    let surface = g.px(0.0, immersion)[1];
    pen.shape("w", &[[g.left, surface], [g.right, surface], [g.right, g.bottom], [g.left, g.bottom]]);
    let shown = g.at[1] - g.s * immersion >= g.top;
    pen.line(if place.immersion.1 { "l" } else { "l g" }, [g.left, surface], [g.right, surface]);
    let x = g.right - 0.06 * (g.right - g.left);
    let words = if shown { "water line" } else { "water line, farther up" };
    pen.text("o s", [g.right - 2.0, surface + 14.0], Hang::End, words);
    let text = format!("{} mm{}", millimetres(immersion), if place.immersion.1 { "" } else { " (assumed)" });
    let x = x.min(g.right - 8.0);
    pen.line("h", [g.at[0] + 0.3 * (x - g.at[0]), g.at[1]], [x + 4.0, g.at[1]]);
    let middle = 0.5 * (surface + g.at[1]);
    pen.dimension([x, surface], [x, g.at[1]], [x - 6.0, middle + 4.0], Hang::End, &text);
}

/// Hull, bearing and rudder, drawn for place only.
fn surroundings(pen: &mut Pen, g: &Ground, place: &Place, swing: f64) {
    let d = 2.0 * swing;
    let (fore, aft, high) = (60.0 * d, -60.0 * d, 60.0 * d);
    let slope = place.shaft_angle.0.to_radians().tan();
    let shaft = |x: f64| x * slope;
    let body = |pen: &mut Pen, points: &[[f64; 2]]| pen.shape("p h", &g.line(points));
    // The shaft lies under what carries it.
    let leg = matches!(place.arrangement, Arrangement::Saildrive | Arrangement::Outboard | Arrangement::Sterndrive);
    let reach = match place.arrangement {
        Arrangement::Aperture | Arrangement::Skeg => 0.6 * d,
        _ => 3.0 * d,
    };
    let rod = (0.034 * d).max(0.012);
    let draw_shaft = |pen: &mut Pen| {
        if !leg {
            pen.shape("p l", &g.line(&[[-0.12 * d, shaft(-0.12 * d) + rod], [reach, shaft(reach) + rod], [reach, shaft(reach) - rod], [-0.12 * d, shaft(-0.12 * d) - rod]]));
        }
    };
    match place.arrangement {
        Arrangement::Aperture => {
            body(pen, &[[aft, high], [aft, 0.66 * d], [-0.45 * d, 0.64 * d], [0.2 * d, 0.64 * d], [0.36 * d, 0.5 * d], [0.36 * d, -0.62 * d], [-0.42 * d, -0.66 * d], [-0.42 * d, -0.8 * d], [fore, -0.9 * d], [fore, high]]);
            body(pen, &[[-0.44 * d, 0.6 * d], [-1.0 * d, 0.6 * d], [-1.06 * d, -0.64 * d], [-0.44 * d, -0.64 * d]]);
            let at = g.px(-0.75 * d, 0.3 * d);
            pen.text("s", at, Hang::Middle, "rudder");
            draw_shaft(pen);
        }
        Arrangement::Skeg => {
            body(pen, &[[aft, high], [aft, 0.78 * d], [0.3 * d, 0.68 * d], [0.36 * d, 0.1 * d], [0.36 * d, -0.12 * d], [2.2 * d, 0.5 * d], [fore, 0.5 * d], [fore, high]]);
            body(pen, &[[-0.5 * d, 0.7 * d], [-0.95 * d, 0.72 * d], [-0.98 * d, -0.7 * d], [-0.55 * d, -0.7 * d]]);
            pen.text("s", g.px(-0.75 * d, 0.3 * d), Hang::Middle, "rudder");
            draw_shaft(pen);
        }
        Arrangement::FinKeelStrut | Arrangement::InclinedShaft => {
            let rise = 0.06;
            let bottom = |x: f64| 0.68 * d - rise * x;
            draw_shaft(pen);
            body(pen, &[[aft, high], [aft, bottom(-3.0 * d)], [-3.0 * d, bottom(-3.0 * d)], [6.0 * d, bottom(6.0 * d)], [fore, bottom(6.0 * d)], [fore, high]]);
            let s0 = 0.30 * d;
            body(pen, &[[s0, shaft(s0) - 0.06 * d], [s0 + 0.26 * d, shaft(s0 + 0.26 * d) - 0.06 * d], [s0 + 0.24 * d, bottom(s0)], [s0 + 0.08 * d, bottom(s0)]]);
            pen.text("o s", [g.px(s0 + 0.3 * d, 0.0)[0], g.px(0.0, 0.42 * d)[1]], Hang::Start, "strut");
            body(pen, &[[-0.6 * d, bottom(-0.6 * d)], [-1.05 * d, bottom(-1.05 * d)], [-1.05 * d, -0.45 * d], [-0.65 * d, -0.45 * d]]);
            pen.text("s", g.px(-0.83 * d, 0.2 * d), Hang::Middle, "rudder");
        }
        Arrangement::Tunnel => {
            draw_shaft(pen);
            body(pen, &[[aft, high], [aft, 0.2 * d], [-1.4 * d, 0.3 * d], [-0.7 * d, 0.55 * d], [0.0, 0.62 * d], [0.8 * d, 0.5 * d], [2.0 * d, 0.0], [fore, -0.3 * d], [fore, high]]);
            pen.text("s", g.px(-0.2 * d, 0.8 * d), Hang::Middle, "tunnel");
        }
        Arrangement::Saildrive => {
            body(pen, &[[aft, high], [aft, 0.95 * d], [fore, 0.85 * d], [fore, high]]);
            body(pen, &[[0.3 * d, 0.9 * d], [0.38 * d, 0.12 * d], [0.12 * d, 0.11 * d], [0.12 * d, -0.11 * d], [0.7 * d, -0.12 * d], [0.95 * d, 0.0], [0.8 * d, 0.12 * d], [0.86 * d, 0.9 * d]]);
            pen.text("s", g.px(0.6 * d, 0.45 * d), Hang::Middle, "leg");
        }
        Arrangement::Outboard | Arrangement::Sterndrive => {
            body(pen, &[[0.95 * d, high], [0.95 * d, 0.62 * d], [fore, 0.45 * d], [fore, high]]);
            body(pen, &[[0.2 * d, high], [0.24 * d, 0.66 * d], [-0.5 * d, 0.62 * d], [-0.5 * d, 0.57 * d], [0.3 * d, 0.57 * d], [0.34 * d, 0.13 * d], [0.14 * d, 0.12 * d], [0.14 * d, -0.12 * d], [0.4 * d, -0.14 * d], [0.5 * d, -0.6 * d], [0.72 * d, -0.55 * d], [0.74 * d, -0.14 * d], [0.95 * d, 0.0], [0.76 * d, 0.14 * d], [0.78 * d, high]]);
            pen.text("s", g.px(0.55 * d, 0.35 * d), Hang::Middle, "leg");
        }
    }
    if !leg && reach * g.s > 30.0 {
        // The angle of the shaft to the water.
        let from = 0.9 * d;
        let a = g.px(from, shaft(from));
        if place.arrangement != Arrangement::Aperture && place.arrangement != Arrangement::Skeg {
            let end = g.px(2.4 * d, 0.0);
            pen.line("h c", g.px(0.15 * d, 0.0), end);
            let assumed = if place.shaft_angle.1 { "" } else { " (assumed)" };
            let text = format!("shaft {}\u{b0}{assumed}", number(place.shaft_angle.0, 0.1).trim_end_matches(".0"));
            pen.text("o", [a[0], g.px(0.0, 0.0)[1] + 16.0], Hang::Start, &text);
        }
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
        Some(spare) => format!("It is {} too large in radius for its place.", length(-spare)),
        None => "The room for it was not measured: measure the clearance at the tip.".to_owned(),
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
        place.largest.map_or_else(|| "Largest diameter not known.".to_owned(), |l| format!("Largest diameter that fits {}.", length(l)))
    )
}
