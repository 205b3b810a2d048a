//! The propeller drawing: from astern, from the side, expanded, pitch.

pub(crate) mod astern;
mod dimensions;
mod expanded;
mod side;

use crate::pen::{Hang, Pen, Words};
use crate::shaped::{self, Bend};
use crate::sheet::{Drawing, Picture, Sheet};
use crate::style::{LEADING, MARGIN, TEXT};
use crate::words::{inches, length};
use counsel::phrase::number;
use hydro::blade::{self, BSeries, FlatFaced, Hand, Measured, Propeller, Shape, Width};
use job::Job;

/// A propeller ready to be drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The geometry.
    pub propeller: Propeller,
    /// Where the geometry comes from, one sentence.
    pub origin: String,
    /// Measured blade by blade; else blades, hub and bore are those of a series.
    pub surveyed: bool,
    /// Pitch as marked, m.
    pub marked_pitch: Option<f64>,
    /// The cup in a word, where there is one and its measures are unknown.
    pub cup: Option<String>,
    /// Damage found in the survey.
    pub damage: Vec<Spot>,
    /// What the blades are called, where that is not their number.
    pub names: Vec<String>,
}

/// A place of damage.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// r/R
    pub x: f64,
    /// Place along the chord from the leading edge, 0 to 1.
    pub chord: f64,
    /// The blade it is on, as the survey calls it.
    pub blade: Option<String>,
    /// Face or back.
    pub side: Option<&'static str>,
    /// What it is.
    pub kind: &'static str,
    /// How deep, m.
    pub depth: Option<f64>,
}

impl Spot {
    /// In short: `C face: bend 4 mm`.
    fn said(&self, pen: &Pen) -> Words {
        let place: Vec<String> = self.blade.clone().into_iter().chain(self.side.map(|side| pen.say(side))).collect();
        let depth = self.depth.map_or(String::new(), |m| pen.say(format!(" {} mm", crate::words::millimetres(m))));
        let place = if place.is_empty() { String::new() } else { place.join(" ") + ": " };
        Words::Said(format!("{place}{} {}", pen.say(self.kind), depth.trim()).trim_end().to_owned())
    }
}

/// The damage map of a survey; what has no place on the blade is left out.
fn spots(job: &Job) -> Vec<Spot> {
    let damage = job.survey.iter().flat_map(|s| &s.damage);
    damage
        .filter_map(|d| {
            Some(Spot {
                x: d.radius_ratio.as_ref()?.middle,
                chord: d.chord_fraction.as_ref().map_or(0.5, |q| q.middle),
                blade: d.blade.clone(),
                side: d.side.map(job::Word::word),
                kind: d.kind.map_or("damage", job::Word::word),
                depth: d.depth.as_ref().map(|q| q.middle),
            })
        })
        .collect()
}

impl Drawn {
    /// From a job: as surveyed where it was, else a blade of a systematic series with the diameter, pitch, blade number and area stated or assumed.
    /// `None` without a pitch or a diameter.
    #[must_use]
    pub fn of_job(job: &Job) -> Option<Drawn> {
        let marked = job.propeller.pitch.as_ref().map(|p| p.middle);
        if let Some(measured) = counsel::survey::measured(job) {
            let names = job.survey.as_ref().map(|s| (0..s.blades.len()).map(|i| s.blade_name(i)).collect());
            let names = names.unwrap_or_default();
            return Some(Drawn { damage: spots(job), names, ..Drawn::measured(&measured, marked) });
        }
        let k = job::assume::knowledge(job);
        let pitch = k.pitch.as_ref()?.dist.middle;
        let diameter = k.diameter.dist.middle;
        if !(diameter > 0.0 && pitch > 0.0) {
            return None;
        }
        let (blades, area) = (k.blades.0, k.area_ratio.dist.middle);
        let said = job.propeller.hand.or_else(|| job.propeller.stamp.as_deref().and_then(job::stamp::hand));
        let hand = if said == Some(job::Hand::Left) { Hand::Left } else { Hand::Right };
        let flat = k.flat_share.dist.middle > 0.5;
        let mut propeller = if flat {
            blade::flat_faced(&FlatFaced {
                blades,
                width: Width::ExpandedAreaRatio(area),
                pitch_ratio: pitch / diameter,
                thickness_fraction: 0.05,
                diameter,
                hub_ratio: 0.2,
                rake: 0.0,
                skew: 0.0,
                hand,
            })
        } else {
            blade::b_series(&BSeries {
                blades,
                expanded_area_ratio: area,
                pitch_ratio: pitch / diameter,
                diameter,
                hand,
            })
        };
        let degrees = |q: &Option<job::Quantity>| q.as_ref().map(|q| q.middle);
        let bend = Bend { rake: degrees(&job.propeller.rake), skew: degrees(&job.propeller.skew) };
        shaped::bent(&mut propeller, bend);
        let form = if flat { "flat-faced elliptical blades" } else { "Wageningen B-series blades" };
        let mut assumed = Vec::new();
        for (what, stated) in [
            ("diameter", k.diameter.stated),
            ("pitch", k.pitch.as_ref().is_some_and(|p| p.stated)),
            ("blade number", k.blades.1),
            ("hand", said.is_some()),
            ("blade area", k.area_ratio.stated),
        ] {
            if !stated {
                assumed.push(what);
            }
        }
        let assumed = if assumed.is_empty() { String::new() } else { format!(" Assumed: {}.", assumed.join(", ")) };
        Some(Drawn {
            propeller,
            origin: format!(
                "Not measured: {form} of this size and area, for a first look; hub, bore and thickness are usual ones.{assumed} Do not \
                 cut or bore by it."
            ),
            surveyed: false,
            marked_pitch: marked,
            damage: spots(job),
            names: Vec::new(),
            cup: job.propeller.cup.filter(|c| *c != job::Cup::None).map(|c| format!("{} cup", job::Word::word(c))),
        })
    }

    /// From a measured propeller.
    #[must_use]
    pub fn measured(measured: &Measured, marked_pitch: Option<f64>) -> Drawn {
        let assumed = measured.assumed.len();
        let rest = if assumed == 0 {
            String::new()
        } else {
            format!(" {assumed} values nobody measured were filled in from neighbours or usual ones.")
        };
        Drawn {
            propeller: measured.propeller.clone(),
            origin: format!("Drawn from measurements, blade by blade.{rest}"),
            surveyed: true,
            marked_pitch,
            cup: None,
            damage: Vec::new(),
            names: Vec::new(),
        }
    }

    /// What blade `i` is called: as the survey has it, else its number.
    fn name(&self, i: usize) -> String {
        self.names.get(i).cloned().unwrap_or_else(|| (i + 1).to_string())
    }

    /// Tip radius of the largest blade, m.
    pub(crate) fn radius(&self) -> f64 {
        self.propeller.blades.iter().map(|b| b.tip_radius).fold(0.0, f64::max)
    }

    /// Hub radius, m.
    pub(crate) fn hub(&self) -> f64 {
        self.propeller.hub.radius()
    }

    /// How the blades differ, one line each: which, in what; empty where they are alike.
    fn differences(&self) -> Vec<(String, Vec<String>)> {
        let p = &self.propeller;
        let count = p.count();
        if p.blades.len() < 2 {
            return Vec::new();
        }
        let values: Vec<(f64, f64, f64)> = p
            .blades
            .iter()
            .map(|b| (b.tip_radius, blade::effective_pitch(b, self.hub()), blade::expanded_area(b, self.hub())))
            .collect();
        let mean = |f: fn(&(f64, f64, f64)) -> f64| values.iter().map(f).sum::<f64>() / count;
        let (tip, pitch, area) = (mean(|v| v.0), mean(|v| v.1), mean(|v| v.2));
        let mut lines = Vec::new();
        for (i, v) in values.iter().enumerate() {
            let mut parts = Vec::new();
            let percent = |a: f64, b: f64| 100.0 * (a / b - 1.0);
            if (v.1 / pitch - 1.0).abs() > 0.005 {
                parts.push(format!("pitch {} mm, {} %", number(1000.0 * v.1, 1.0), signed(percent(v.1, pitch))));
            }
            if (v.0 / tip - 1.0).abs() > 0.002 {
                parts.push(format!("tip {} mm", signed(1000.0 * (v.0 - tip))));
            }
            if (v.2 / area - 1.0).abs() > 0.01 {
                parts.push(format!("area {} %", signed(percent(v.2, area))));
            }
            let expected = std::f64::consts::TAU * i as f64 / count;
            let off = p.angles.get(i).map_or(0.0, |a| (a - p.angles.first().unwrap_or(&0.0) - expected).to_degrees());
            if off.abs() > 0.5 {
                parts.push(format!("{}\u{b0} out of place", signed(off)));
            }
            if !parts.is_empty() {
                lines.push((self.name(i), parts));
            }
        }
        lines
    }
}

fn signed(value: f64) -> String {
    let text = number(value.abs(), 0.1);
    format!("{}{text}", if value < 0.0 { "\u{2212}" } else { "+" })
}

/// The picture.
#[must_use]
pub fn picture(sheet: &Sheet, drawn: &Drawn) -> Picture {
    let p = &drawn.propeller;
    if p.blades.is_empty() {
        let drawing = Drawing::open(sheet, "There is no blade to draw.");
        let bottom = drawing.top;
        return drawing.close("Propeller", "No blade.", bottom);
    }
    let pitch = p.blades.iter().map(|b| blade::effective_pitch(b, drawn.hub())).sum::<f64>() / p.count();
    let differences = drawn.differences();
    let mut drawing = Drawing::open(sheet, sentence(drawn, pitch, &differences));
    let narrow = sheet.width() < 760.0;
    let room = sheet.room();
    let top = drawing.top + 4.0;
    let pen = &mut drawing.pen;
    let mut bottom;
    if narrow {
        let disc = (room - 90.0).clamp(180.0, 330.0);
        let s = disc / (2.0 * drawn.radius());
        let cx = MARGIN + 0.5 * room;
        bottom = astern::view(pen, drawn, [cx, top + 34.0 + 0.5 * disc], s, [MARGIN, MARGIN + room]);
        bottom += 34.0;
        let low = bottom + 26.0 + 0.5 * disc;
        side::view(pen, drawn, [MARGIN + 0.3 * room, low], s, [MARGIN, MARGIN + 0.62 * room]);
        let hub_edge = low - s * drawn.hub();
        expanded::pitches(pen, drawn, [MARGIN + 0.72 * room, MARGIN + room - 6.0], low, s, hub_edge);
        bottom = low + s * drawn.hub() + 80.0;
        let height = 300.0;
        bottom = expanded::view(pen, drawn, [MARGIN, MARGIN + room], bottom + 14.0, height);
    } else {
        // Narrower, so that the sections beside keep a size that can be read.
        let disc = (room / if room < 1100.0 { 4.0 } else { 3.45 }).min(400.0);
        let s = disc / (2.0 * drawn.radius());
        let cx = MARGIN + 0.58 * disc;
        let cy = top + 40.0 + 0.5 * disc;
        bottom = astern::view(pen, drawn, [cx, cy], s, [MARGIN, MARGIN + 1.16 * disc]);
        let side_left = MARGIN + 1.22 * disc;
        side::view(pen, drawn, [side_left + 0.24 * disc, cy], s, [side_left, side_left + 0.5 * disc]);
        let right = MARGIN + room;
        let pitch_left = right - 0.38 * disc;
        let height = disc;
        let e_left = side_left + (0.56 * disc).max(160.0);
        let low = expanded::view(pen, drawn, [e_left, pitch_left - 44.0], top + 16.0, height);
        let scale = height / drawn.radius();
        let axis = top + 16.0 + 20.0 + height;
        expanded::pitches(pen, drawn, [pitch_left, right - 6.0], axis, scale, axis - scale * drawn.hub());
        bottom = bottom.max(low);
    }
    for line in differences_said(sheet, &differences) {
        bottom += LEADING;
        let words = pen.fit(Words::Said(format!("\u{25b2} {line}")), TEXT * 1.06, room);
        pen.text("q e", [MARGIN, bottom], Hang::Start, words);
    }
    bottom = dimensions::table(pen, sheet, drawn, bottom + 20.0);
    bottom = drawing.prose("s", &drawn.origin, bottom + 14.0, 6) - 12.0;
    drawing.close("Propeller", desc(sheet, drawn, pitch, &differences), bottom)
}

pub(crate) fn hand_word(hand: Hand) -> &'static str {
    match hand {
        Hand::Right => "right-handed",
        Hand::Left => "left-handed",
    }
}

/// The lines that say how the blades differ.
fn differences_said(sheet: &Sheet, differences: &[(String, Vec<String>)]) -> Vec<String> {
    let line = |(name, parts): &(String, Vec<String>)| {
        format!("{} {name}: {}", sheet.say("blade"), sheet.say_all(parts, ", "))
    };
    differences.iter().map(line).collect()
}

fn sentence(drawn: &Drawn, pitch: f64, differences: &[(String, Vec<String>)]) -> String {
    let p = &drawn.propeller;
    let alike = match (drawn.surveyed, differences.is_empty()) {
        (true, true) => " The blades are alike.",
        (true, false) => " The blades differ: see the marks.",
        (false, _) => "",
    };
    let marked = drawn.marked_pitch.map_or_else(String::new, |m| {
        if drawn.surveyed { format!(", marked {} in", inches(m)) } else { String::new() }
    });
    format!(
        "{} blades, {}, {} \u{d7} {} in: turns {} going ahead, seen from astern{marked}.{alike}",
        p.blades.len(),
        hand_word(p.hand),
        inches(p.diameter()),
        inches(drawn.marked_pitch.filter(|_| !drawn.surveyed).unwrap_or(pitch)),
        if p.hand == Hand::Right { "clockwise" } else { "anticlockwise" }
    )
}

fn desc(sheet: &Sheet, drawn: &Drawn, pitch: f64, differences: &[(String, Vec<String>)]) -> Words {
    let p = &drawn.propeller;
    let areas = blade::areas(p);
    let what = format!(
        "Propeller of {} blades from astern, from the side and as expanded blade with sections at their pitch angles and pitch over \
         the radius.",
        p.blades.len()
    );
    let facts = [
        hand_word(p.hand).to_owned(),
        format!("diameter {}", length(p.diameter())),
        format!("pitch that acts {}", length(pitch)),
        format!("expanded area ratio {}", number(areas.expanded_ratio, 0.01)),
    ];
    let (facts, marks) = (sheet.say_all(&facts, ", "), differences_said(sheet, differences).join("; "));
    Words::Said(format!("{} {facts}. {} {marks}", sheet.say(&what), sheet.say(&drawn.origin)))
}

/// A caption over a view.
pub(crate) fn caption(pen: &mut Pen, x: f64, y: f64, hang: Hang, text: &str, room: f64) {
    for (i, line) in (0_u8..).zip(pen.wrap(text, TEXT, room, 2)) {
        pen.text("i s", [x, y + LEADING * f64::from(i)], hang, line);
    }
}

/// A name with a leader to a part.
pub(crate) fn name(pen: &mut Pen, part: [f64; 2], text_at: [f64; 2], hang: Hang, text: &str) {
    let from = [
        text_at[0]
            + if hang == Hang::End {
                3.0
            } else if hang == Hang::Start {
                -3.0
            } else {
                0.0
            },
        text_at[1] - 4.0,
    ];
    pen.line("h", from, part);
    pen.circle("k", part, 1.6);
    pen.text("o", text_at, hang, text);
}

/// The first blade's shape.
pub(crate) fn shape(drawn: &Drawn) -> Option<Shape> {
    drawn.propeller.blades.first().map(Shape::of)
}
