//! In place: the propeller under the boat, to scale as far as it is known.

mod around;
mod clear;

use crate::pen::{Hang, P, Pen, Words};
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
    /// What was measured round it.
    pub room: Room,
}

/// What was measured round the propeller, m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Room {
    /// Shaft centre to the hull above.
    pub above: Option<f64>,
    /// Shaft centre to what lies below.
    pub below: Option<f64>,
    /// Leading edge at 0.7 R to what stands ahead.
    pub ahead: Option<f64>,
    /// Trailing edge at 0.7 R to the rudder, helm amidships.
    pub aft: Option<f64>,
    /// The rudder's stock behind the blades, its leading edge ahead of the stock.
    pub rudder: Option<(f64, f64)>,
    /// How far the rudder goes over, rad.
    pub rudder_angle: Option<f64>,
}

impl Room {
    fn of_job(job: &Job, radius: f64) -> Room {
        let stern = &job.stern;
        let metres = |q: &Option<job::Quantity>| q.as_ref().map(|q| q.middle).filter(|m| m.is_finite());
        let from_tip = |q: &Option<job::Quantity>| metres(q).map(|gap| gap + radius);
        Room {
            above: metres(&stern.hull_above).or(from_tip(&stern.tip_clearance)),
            below: metres(&stern.sole_below).or(from_tip(&stern.sole_clearance)),
            ahead: metres(&stern.ahead_clearance),
            aft: metres(&stern.aft_clearance),
            rudder: metres(&stern.rudder_stock).zip(metres(&stern.rudder_balance)),
            rudder_angle: metres(&stern.rudder_angle).map(f64::to_radians),
        }
    }
}

impl Place {
    /// From a job; `None` without a diameter or pitch.
    #[must_use]
    pub fn of_job(job: &Job) -> Option<Place> {
        let drawn = Drawn::of_job(job)?;
        let k = job::assume::knowledge(job);
        let radius = 0.5 * drawn.propeller.diameter();
        Some(Place {
            room: Room::of_job(job, radius),
            drawn,
            arrangement: k.arrangement.0,
            arrangement_stated: k.arrangement.1,
            immersion: (k.immersion.dist.middle, k.immersion.stated),
            shaft_angle: (k.shaft_angle.dist.middle, k.shaft_angle.stated),
            largest: job.propeller.largest_diameter.as_ref().map(|q| q.middle),
        })
    }

    /// Whether anything round it was measured.
    fn measured(&self) -> bool {
        let r = &self.room;
        [self.largest, r.above, r.below, r.ahead, r.aft, r.rudder.map(|r| r.0)].iter().any(Option::is_some)
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
    let mut drawing = Drawing::open(sheet, sentence(place));
    let narrow = sheet.narrow();
    let diameter = place.drawn.propeller.diameter();
    let radius = 0.5 * diameter;
    let swing = place.largest.map_or(radius, |l| 0.5 * l).min(2.5 * radius).max(radius);
    let immersion = place.immersion.0.max(0.02);
    // From a little above the water to under the propeller.
    let within = |reach: Option<f64>| reach.map_or(0.0, |m| m.min(3.0 * swing) + 0.2 * swing);
    let high = (1.5 * swing).max(within(place.room.above));
    let up = immersion.max(high).min((4.5 * radius).max(high)) + 0.25 * radius;
    let down = (1.5 * swing).max(within(place.room.below));
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
    around::draw(pen, &ground, place, swing);
    propeller(pen, &ground, place);
    clear::draw(pen, &ground, place, radius);
    water(pen, &ground, place, immersion);
    let mut bottom = ground.bottom + 6.0;
    let (x, text_room, mut y) =
        if wide < room { (ground.right + 22.0, room - wide - 22.0, top - 4.0) } else { (MARGIN, room, bottom) };
    for note in notes(sheet, place, diameter) {
        for line in pen.wrap(Words::Said(note), TEXT, text_room, 9) {
            y += LEADING;
            pen.text("s", [x, y], Hang::Start, &line);
        }
        y += 5.0;
    }
    if wide >= room {
        bottom = y;
    }
    drawing.close("In place", Words::from(desc(place)), bottom)
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

/// Where an edge of the upright blade stands at 0.7 of the radius, m forward of the propeller's middle: half a chord ahead
/// (`0.5`, leading) or behind (`-0.5`).
fn edge_at(place: &Place, half: f64) -> f64 {
    let Some(blade) = place.drawn.propeller.blades.first() else { return 0.0 };
    let shape = Shape::of(blade);
    let cut = shape.cut(0.7 * shape.tip_radius());
    cut.place(half * cut.chord, 0.0).0
}

fn notes(sheet: &Sheet, place: &Place, diameter: f64) -> Vec<String> {
    let mut notes = vec![sheet.say(&format!(
        "Wanted between tip and hull: 10 to 20 % of the diameter, {} to {} mm (common practice, no source); rules of the maker or the \
         society go first.",
        number(100.0 * diameter, 1.0),
        number(200.0 * diameter, 1.0)
    ))];
    let leg = matches!(place.arrangement, Arrangement::Outboard | Arrangement::Sterndrive | Arrangement::Saildrive);
    let mut unknown = vec![if leg { "hull and leg" } else { "shape of hull, rudder and bearing" }];
    if !place.immersion.1 {
        unknown.push("depth");
    }
    if !place.shaft_angle.1 {
        unknown.push("shaft angle");
    }
    if !place.arrangement_stated {
        unknown.push("arrangement");
    }
    if place.room.rudder.is_some() && place.room.rudder_angle.is_none() {
        unknown.push("rudder angle");
    }
    let scale =
        if place.measured() { "To scale: the propeller and the room for it." } else { "To scale: the propeller." };
    let unknown: Vec<String> = unknown.into_iter().map(|what| sheet.say(what)).collect();
    let [scale, only] = [scale, "Not measured, drawn for place only:"].map(|text| sheet.say(text));
    notes.push(format!("{scale} {only} {}.", unknown.join(", ")));
    notes
}

fn sentence(place: &Place) -> String {
    let radius = 0.5 * place.drawn.propeller.diameter();
    let fits = match place.largest.map(|l| 0.5 * l - radius) {
        Some(spare) if spare >= 0.0 => format!("{} more radius would fit.", length(spare)),
        Some(spare) => format!("it is {} too large in radius for its place.", length(-spare)),
        None => match place.room.above.map(|above| above - radius) {
            Some(gap) => format!("the tip stands {} off the hull.", length(gap)),
            None => "the room for it was not measured; measure the clearance at the tip.".to_owned(),
        },
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
