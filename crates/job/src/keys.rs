//! Every key of a job file: its place, what it takes, its physical range and its meaning. One table, from which the
//! reader, the saver, the schema and the reference page are all made.

use crate::complaint::{Onset, Side, Smoke, Swapped, Symptom};
use crate::fit::{AccuracyClass, Freewheel, Gearing, Turning};
use crate::model::*;
use crate::quantity::Dimension::{self, *};
use crate::quantity::Source;
use crate::survey::keys::SURVEY;
use crate::words::{WATERS, Word};

/// A key of a table.
#[derive(Clone, Copy, Debug)]
pub struct Key {
    /// Its name.
    pub name: &'static str,
    /// What it takes.
    pub shape: Shape,
    /// What it means, one line.
    pub doc: &'static str,
    /// An example value as written in TOML (empty for tables).
    pub example: &'static str,
    /// What people write when they mean this key; used only to guess.
    pub hints: &'static [&'static str],
}

/// What a key takes.
#[derive(Clone, Copy, Debug)]
pub enum Shape {
    /// Any text.
    Text,
    /// One or more texts.
    Texts,
    /// `true` or `false`.
    Flag,
    /// A day, `2026-05-02`.
    Date,
    /// A whole number.
    Count {
        /// Least.
        least: u8,
        /// Most.
        most: u8,
    },
    /// One of a few words, each with its meaning.
    Choice(&'static [(&'static str, &'static str)]),
    /// Any number of a few words.
    Choices(&'static [(&'static str, &'static str)]),
    /// A quantity with its spread and source.
    Quantity(Measure),
    /// A band of a quantity: `"5000..6000 rpm"`.
    Band(Measure),
    /// One run, or one per direction.
    Runs(Measure),
    /// A list of plain numbers.
    Numbers(Measure),
    /// A table.
    Table(&'static [Key]),
    /// Tables that repeat.
    Tables(&'static [Key]),
}

/// What kind of quantity, within what range.
#[derive(Clone, Copy, Debug)]
pub struct Measure {
    /// Its dimension.
    pub dimension: Dimension,
    /// Physical range in SI, both ends included.
    pub range: (f64, f64),
    /// The units the trade uses here, for examples and guesses.
    pub usual: &'static [&'static str],
    /// The source when none is said.
    pub source: Option<Source>,
    /// The key beside it that can name the source instead.
    pub by: Option<&'static str>,
}

pub(crate) const fn measure(dimension: Dimension, low: f64, high: f64, usual: &'static [&'static str]) -> Measure {
    Measure { dimension, range: (low, high), usual, source: None, by: None }
}

impl Measure {
    const fn from(self, source: Source) -> Measure {
        Measure { source: Some(source), ..self }
    }
    const fn or(self, by: &'static str) -> Measure {
        Measure { by: Some(by), ..self }
    }
}

pub(crate) const fn key(name: &'static str, shape: Shape, example: &'static str, doc: &'static str) -> Key {
    Key { name, shape, doc, example, hints: &[] }
}

impl Key {
    pub(crate) const fn hints(self, hints: &'static [&'static str]) -> Key {
        Key { hints, ..self }
    }
}

pub(crate) const fn quantity(name: &'static str, measure: Measure, example: &'static str, doc: &'static str) -> Key {
    key(name, Shape::Quantity(measure), example, doc)
}
pub(crate) const fn choice(
    name: &'static str,
    words: &'static [(&'static str, &'static str)],
    example: &'static str,
    doc: &'static str,
) -> Key {
    key(name, Shape::Choice(words), example, doc)
}
pub(crate) const fn text(name: &'static str, example: &'static str, doc: &'static str) -> Key {
    key(name, Shape::Text, example, doc)
}
pub(crate) const fn table(name: &'static str, keys: &'static [Key], doc: &'static str) -> Key {
    key(name, Shape::Table(keys), "", doc)
}
pub(crate) const fn tables(name: &'static str, keys: &'static [Key], doc: &'static str) -> Key {
    key(name, Shape::Tables(keys), "", doc)
}

const RPM: f64 = 1.0 / 60.0;
const KNOT: f64 = 1852.0 / 3600.0;
const YEAR: f64 = 365.25 * 86_400.0;

// Ranges: what can exist on small craft, generously (common practice, no source). Half as much again is an odd boat; ten
// times is a slip of the pen, and that is what these bounds are for.
const HULL: Measure = measure(Length, 2.0, 60.0, &["m", "ft"]).from(Source::Sheet);
const BREADTH: Measure = measure(Length, 0.4, 20.0, &["m", "ft"]).from(Source::Sheet);
const BLADE: Measure = measure(Length, 0.1, 3.0, &["in", "mm"]).from(Source::Stamp);
const WEIGHT: Measure = measure(Mass, 50.0, 500_000.0, &["t", "kg", "lb"]);
const TURNS: Measure = measure(Rotation, 100.0 * RPM, 12_000.0 * RPM, &["rpm"]);
const PLATE_TURNS: Measure = TURNS.from(Source::Plate);
const POWER: Measure = measure(Power, 200.0, 3.0e6, &["kW", "hp", "PS"]);
const RUN: Measure = measure(Speed, 0.0, 80.0 * KNOT, &["kn", "km/h", "mph"]);
const GEAR: Measure = measure(Ratio, 0.3, 12.0, &[]).from(Source::Plate);
const SEA: Measure = measure(Length, 0.3, 12_000.0, &["m", "ft"]);
const AFLOAT: Measure = measure(Duration, 0.0, 20.0 * YEAR, &["months", "weeks", "days"]).from(Source::Memory);

/// The top of the file.
#[rustfmt::skip]
pub const ROOT: &[Key] = &[
    text("title", "\"Kittiwake: will not rev out since the refit\"", "One line that names boat and trouble."),
    choice("duty", Duty::WORDS, "\"mixed\"", "What a propeller is to be chosen for."),
    table("call", CALL, "The call, in the caller's words."),
    table("boat", BOAT, "Hull and weight."),
    table("place", PLACE, "The water and air it runs in."),
    table("engine", ENGINE, "One engine; all engines are taken as alike."),
    table("drive", DRIVE, "Gearbox and shaft."),
    table("propeller", PROPELLER, "The propeller fitted.").hints(&["prop", "screw"]),
    table("port", OWN, "What the port side of a pair has of its own; what is not said is as in the rest of the file."),
    table("starboard", OWN, "What the starboard side of a pair has of its own."),
    table("stern", crate::fit::keys::STERN, "What stands round the propeller."),
    table("shaft", crate::fit::keys::SHAFT, "The propeller shaft and its end."),
    table("under_sail", crate::fit::keys::UNDER_SAIL, "Under sail with the engine stopped."),
    table("fitting", crate::fit::keys::FITTING, "How the propeller went on: the record of the fit."),
    table("order", crate::fit::keys::ORDER, "What is to be ordered; what is not said is as fitted."),
    table("receipt", crate::fit::keys::RECEIPT, "What was measured on the propeller that arrived."),
    tables("reading", READING, "Something read on the boat under way; one block for each throttle setting.").hints(&["readings", "trial", "run"]),
    table("survey", SURVEY, "What was measured on the propeller out of the water.").hints(&["measured"]),
];

const CALL: &[Key] = &[
    text("complaint", "\"will not go over 2900 rpm\"", "The complaint in the caller's words."),
    text("since", "\"the refit in April\"", "Since when."),
    key("changed", Shape::Texts, "[\"new propeller\", \"bottom painted\"]", "What changed just before."),
    choice("onset", Onset::WORDS, "\"sudden\"", "How it began."),
    key(
        "symptoms",
        Shape::Choices(Symptom::WORDS),
        "[\"black smoke\", \"growth on the blades\"]",
        "What was seen, heard or felt, in these words.",
    ),
    text("wants", "\"hull speed without black smoke\"", "What is wanted."),
    text("notes", "\"left her on a mud berth all winter\"", "Anything else."),
];

#[rustfmt::skip]
const BOAT: &[Key] = &[
    choice("kind", Kind::WORDS, "\"displacement\"", "The way the hull carries its weight.").hints(&["type", "hull"]),
    quantity("length_overall", HULL, "\"9.6 m\"", "Length overall, without bowsprit and platform.").hints(&["loa", "length"]),
    quantity("length_waterline", HULL, "\"8.4 m\"", "Length on the waterline as she floats.").hints(&["lwl", "waterline"]),
    quantity("beam", BREADTH, "\"3.1 m\"", "Greatest beam.").hints(&["width", "breadth"]),
    quantity("beam_waterline", BREADTH, "\"2.8 m\"", "Beam on the waterline.").hints(&["bwl"]),
    quantity("beam_chine", BREADTH, "\"2.6 m\"", "Beam over the chines (planing hulls).").hints(&["chine_beam"]),
    quantity("hull_draught", measure(Length, 0.05, 6.0, &["m", "ft"]).from(Source::Sheet), "\"0.7 m\"", "Draught of the hull body, without the keel.").hints(&["draught", "draft", "hull_draft"]),
    quantity("displacement", WEIGHT.from(Source::Brochure), "\"6.5 t ± 0.4 (weighed)\"", "Mass as she was at the readings: tanks, stores and people included.").hints(&["weight", "mass"]),
    quantity("loaded_displacement", WEIGHT.from(Source::Estimate), "\"7.1 t\"", "Mass ready for the longest trip; the propeller is judged at it.").hints(&["loaded"]),
    quantity("deadrise", measure(Angle, 0.0, 45.0, &["°"]), "\"18 deg\"", "Deadrise aft (planing hulls)."),
    quantity("centre_of_gravity", measure(Length, 0.2, 40.0, &["m", "ft"]), "\"2.9 m\"", "Centre of gravity, distance forward of the transom.").hints(&["lcg", "center_of_gravity"]),
    quantity("prismatic_coefficient", measure(Ratio, 0.4, 0.95, &[]), "0.58", "Prismatic coefficient of the hull body.").hints(&["cp"]),
    quantity("block_coefficient", measure(Ratio, 0.2, 0.9, &[]), "0.40", "Block coefficient of the hull body.").hints(&["cb"]),
    quantity("half_entrance_angle", measure(Angle, 3.0, 70.0, &["°"]), "\"22 deg\"", "Half the angle of the waterline at the stem."),
    key("screws", Shape::Count { least: 1, most: 4 }, "1", "Number of propellers.").hints(&["engines", "propellers"]),
    choice("arrangement", Arrangement::WORDS, "\"aperture\"", "Where the propeller works."),
    quantity("since_scrub", AFLOAT, "\"5 months\"", "Time afloat since the bottom was last cleaned."),
    choice("growth", Growth::WORDS, "\"light slime\"", "What grows on the bottom.").hints(&["fouling"]),
    tables("resistance", RESISTANCE, "A towed resistance curve; four points or more."),
];

#[rustfmt::skip]
const RESISTANCE: &[Key] = &[
    quantity("speed", RUN.from(Source::Measured), "\"4 kn\"", "Speed through the water."),
    quantity("force", measure(Force, 1.0, 1.0e6, &["N", "kgf", "lbf"]).from(Source::Measured), "\"300 N\"", "Pull in the tow line."),
];

#[rustfmt::skip]
const PLACE: &[Key] = &[
    choice("water", WATERS, "\"sea\"", "Sea or fresh water."),
    quantity("water_temperature", measure(Temperature, -2.0, 40.0, &["°C", "°F"]), "\"14 °C\"", "Water temperature."),
    quantity("depth", SEA, "\"12 m\"", "Water depth where she usually runs."),
    quantity("air_temperature", measure(Temperature, -30.0, 70.0, &["°C", "°F"]), "\"25 °C\"", "Temperature of the air the engine breathes."),
    quantity("altitude", measure(Length, -450.0, 6000.0, &["m", "ft"]), "\"0 m\"", "Height above the sea."),
];

#[rustfmt::skip]
const ENGINE: &[Key] = &[
    text("model", "\"three cylinders, 1.1 litres\"", "Maker's model, as said."),
    choice("kind", EngineKind::WORDS, "\"natural diesel\"", "Kind of engine; also sets the fuel's density.").hints(&["type", "fuel"]),
    quantity("rated_power", POWER.from(Source::Plate), "\"29 hp\"", "Rated power of one engine. hp is 745.7 W, PS is 735.5 W.").hints(&["power", "hp", "kw"]),
    choice("rated_at", PowerAt::WORDS, "\"crankshaft\"", "Where that power is measured."),
    quantity("rated_speed", PLATE_TURNS, "\"3600 rpm\"", "Engine speed at which that power is given.").hints(&["rpm", "speed", "rated_rpm", "max_rpm"]),
    key("full_throttle_band", Shape::Band(PLATE_TURNS), "\"5000..6000 rpm\"", "The maker's band for full throttle."),
    quantity("no_load_speed", PLATE_TURNS, "\"3900 rpm\"", "Governed speed without load, or the limiter."),
    choice("rating", Rating::WORDS, "\"pleasure\"", "Duty rating."),
    key("cylinders", Shape::Count { least: 1, most: 16 }, "3", "Number of cylinders."),
    key("two_stroke", Shape::Flag, "false", "Fires every turn."),
    tables("curve", CURVE, "The maker's full-throttle curve; two points or more, in rising speed."),
];

const CURVE: &[Key] = &[
    quantity("speed", TURNS.from(Source::Sheet), "\"2000 rpm\"", "Engine speed."),
    quantity("power", POWER.from(Source::Sheet), "\"12 kW\"", "Power at full throttle at that speed."),
];

#[rustfmt::skip]
const DRIVE: &[Key] = &[
    quantity("reduction", GEAR, "2.6", "Engine turns for one turn of the propeller, ahead.").hints(&["ratio", "gear", "gear_ratio"]),
    quantity("reduction_astern", GEAR, "2.5", "The same, astern."),
    quantity("shaft_angle", measure(Angle, 0.0, 25.0, &["°"]), "\"8 deg\"", "Angle of the shaft to the waterline."),
    key("engine_turns", Shape::Choice(Turning::WORDS), "\"left\"", "The way the flywheel end of the engine turns, seen from astern.").hints(&["rotation"]),
    key("gearbox_turns", Shape::Choice(Gearing::WORDS), "\"opposite\"", "The way the output turns against the engine, ahead."),
    key("shaft_turns", Shape::Choice(Turning::WORDS), "\"right\"", "The way the shaft was seen to turn in ahead, looked at from astern."),
    key("gearbox_power", Shape::Quantity(measure(Power, 200.0, 3.0e6, &["kW", "hp"])), "\"25 kW\"", "Greatest input power of the gearbox by its plate ...; a rating of so many kW for each 100 rpm is that power at 100 rpm."),
    key("gearbox_speed", Shape::Quantity(measure(Rotation, 100.0 * RPM, 12_000.0 * RPM, &["rpm"])), "\"3000 rpm\"", "... at this engine speed."),
    key("gearbox_torque", Shape::Quantity(measure(Torque, 5.0, 100_000.0, &["N m", "lbf ft"])), "\"90 N m\"", "Greatest input torque of the gearbox, where its sheet gives a torque.").hints(&["gearbox_input_torque", "input_torque"]),
    key("gearbox_output_torque", Shape::Quantity(measure(Torque, 5.0, 1.0e6, &["N m", "lbf ft"])), "\"230 N m\"", "Greatest torque at the gearbox's output flange.").hints(&["output_torque"]),
    key("freewheel", Shape::Choice(Freewheel::WORDS), "\"allowed\"", "What the gearbox maker says of turning with the engine stopped."),
    key("other_reductions", Shape::Numbers(GEAR), "[2.0, 3.0]", "Reductions the same gearbox can be had with."),
];

#[rustfmt::skip]
const PROPELLER: &[Key] = &[
    quantity("diameter", BLADE, "\"16 in\"", "Diameter.").hints(&["dia", "d"]),
    quantity("pitch", measure(Length, 0.05, 4.0, &["in", "mm"]).from(Source::Stamp), "\"11 in (measured)\"", "Pitch."),
    key("blades", Shape::Count { least: 2, most: 7 }, "3", "Number of blades.").hints(&["z", "blade_number"]),
    choice("hand", Hand::WORDS, "\"right\"", "Which way it turns going ahead, seen from astern.").hints(&["rotation"]),
    quantity("area_ratio", measure(Ratio, 0.15, 1.4, &[]), "0.5", "Expanded blade area over disc area.").hints(&["ear", "bar", "dar"]),
    choice("width", Width::WORDS, "\"ordinary\"", "Blade width in words, when the area ratio is not known."),
    choice("section", Section::WORDS, "\"flat-faced\"", "Blade sections."),
    choice("kind", Blades::WORDS, "\"fixed\"", "How the blades are carried.").hints(&["type"]),
    choice("cup", Cup::WORDS, "\"none\"", "Cup at the trailing edge."),
    choice("growth", Growth::WORDS, "\"clean\"", "What grows on the blades.").hints(&["fouling"]),
    quantity("immersion", measure(Length, 0.02, 6.0, &["m", "in", "ft"]), "\"0.6 m\"", "Shaft centre below the water."),
    quantity("largest_diameter", measure(Length, 0.1, 3.0, &["in", "mm"]).from(Source::Measured), "\"17 in\"", "Largest diameter that fits with its clearances.").hints(&["max_diameter"]),
    key("rake", Shape::Quantity(measure(Angle, -30.0, 45.0, &["°"])), "\"5 deg\"", "Rake of the blades, positive aft."),
    key("skew", Shape::Quantity(measure(Angle, -10.0, 90.0, &["°"])), "\"8 deg\"", "Skew of the blades."),
    key("hub_diameter", Shape::Quantity(measure(Length, 0.02, 0.8, &["mm", "in"])), "\"70 mm\"", "Outside diameter of the hub."),
    key("hub_length", Shape::Quantity(measure(Length, 0.01, 0.8, &["mm", "in"])), "\"76 mm\"", "Length of the hub."),
    key("mass", Shape::Quantity(measure(Mass, 0.2, 3000.0, &["kg", "lb"])), "\"9.4 kg\"", "Mass.").hints(&["weight"]),
    key("class", Shape::Choice(AccuracyClass::WORDS), "\"II\"", "Accuracy class (ISO 484), as certified."),
    key("root_thickness", Shape::Quantity(measure(Length, 0.001, 0.3, &["mm", "in"])), "\"16 mm\"", "Greatest thickness at 0.25 R."),
    key("outer_thickness", Shape::Quantity(measure(Length, 0.001, 0.2, &["mm", "in"])), "\"9 mm\"", "Greatest thickness at 0.6 R."),
    key("edge_thickness", Shape::Quantity(measure(Length, 0.0003, 0.05, &["mm", "in"])), "\"2 mm\"", "Thickness of the trailing edge."),
    text("stamp", "\"16RH11\"", "The stamp as read, both ends of the hub; a diameter or a pitch nobody stated is taken from it."),
    text("material", "\"manganese bronze\"", "Material, as said."),
];

const OWN: &[Key] = &[
    quantity("reduction", GEAR, "2.5", "Its own reduction."),
    table("propeller", PROPELLER, "Its own propeller; say only what differs."),
];

#[rustfmt::skip]
const READING: &[Key] = &[
    text("label", "\"before the scrub\"", "A name for it."),
    key("date", Shape::Date, "\"2026-05-02\"", "The day."),
    choice("side", Side::WORDS, "\"port\"", "Which engine of a pair this was read on."),
    quantity("throttle", measure(Ratio, 0.0, 1.0, &[]), "\"60 %\"", "How far the lever was forward, where it has a scale: for the record, rpm is what counts."),
    key("full_throttle", Shape::Flag, "true", "The lever was right forward.").hints(&["wot"]),
    key("governed", Shape::Flag, "true", "The engine was held by its governor or limiter."),
    quantity("engine_speed", TURNS.from(Source::Dashboard).or("by"), "\"2900 rpm\"", "Engine speed.").hints(&["rpm", "revs"]),
    choice("by", BY, "\"dashboard\"", "What the engine speed was read on."),
    quantity("shaft_speed", measure(Rotation, 20.0 * RPM, 12_000.0 * RPM, &["rpm"]).from(Source::Optical), "\"1115 rpm\"", "Speed of the propeller shaft."),
    key("speed", Shape::Runs(RUN.from(Source::Gps).or("speed_by")), "[\"6.5 kn\", \"6.1 kn\"]", "Speed: one run, or one per direction in the order they were run."),
    choice("speed_by", SPEED_BY, "\"gps\"", "What the speed was read on."),
    quantity("fuel", measure(FuelFlow, 0.05 / 3600.0, 1000.0 / 3600.0, &["L/h", "US gal/h", "kg/h"]), "\"4.1 L/h\"", "Fuel rate, all engines together.").hints(&["consumption"]),
    quantity("depth", SEA, "\"9 m\"", "Water depth."),
    quantity("exhaust_temperature", measure(Temperature, 20.0, 1200.0, &["°C", "°F"]).from(Source::Measured), "\"420 °C\"", "Exhaust temperature, where the engine's maker says."),
    quantity("boost", measure(Pressure, 0.0, 5.0e5, &["bar", "kPa"]).from(Source::Dashboard), "\"1.2 bar\"", "Boost above atmosphere."),
    quantity("engine_load", measure(Ratio, 0.0, 1.3, &[]).from(Source::Display), "\"97 %\"", "Load by the engine's own display."),
    choice("smoke", Smoke::WORDS, "\"black\"", "Smoke."),
    text("wind", "\"10 kn on the bow\"", "Wind and sea."),
    text("load", "\"tanks full, four aboard\"", "Tanks, stores, people."),
    text("notes", "\"flat sea\"", "Anything else."),
    table("state", STATE, "What was different then from the rest of the file."),
];

// Quantity sources that make sense for an instrument; the words are those of `Source`.
const BY: &[(&str, &str)] = &[
    ("dashboard", "the boat's own instrument panel"),
    ("optical", "optical tachometer or strobe"),
    ("display", "electronic engine display"),
    ("measured", "measured with another proper tool"),
    ("memory", "somebody remembers"),
    ("estimate", "an estimate"),
    ("published", "published test or survey by somebody else"),
];
const SPEED_BY: &[(&str, &str)] = &[
    ("gps", "satellite speed"),
    ("log", "paddle-wheel or towed log"),
    ("measured", "measured distance and stopwatch"),
    ("memory", "somebody remembers"),
    ("estimate", "an estimate"),
    ("published", "published test or survey by somebody else"),
];

#[rustfmt::skip]
const STATE: &[Key] = &[
    quantity("displacement", WEIGHT, "\"7.1 t\"", "Mass then. Without a source of its own it takes the source of the boat's."),
    quantity("since_scrub", AFLOAT, "\"2 days\"", "Time afloat since the bottom was cleaned."),
    choice("growth", Growth::WORDS, "\"heavy slime\"", "What grew on the bottom."),
    quantity("reduction", GEAR, "2.0", "Another reduction."),
    choice("swapped", Swapped::WORDS, "\"tachometers\"", "What had been changed over between the sides of a pair."),
    table("propeller", PROPELLER, "Another propeller; say only what differed."),
];

/// Visits every key with the path of its table (`""` for the top, `reading.state` and so on).
pub fn each(visit: &mut dyn FnMut(&str, &'static Key)) {
    fn walk(path: &str, keys: &'static [Key], visit: &mut dyn FnMut(&str, &'static Key)) {
        for key in keys {
            visit(path, key);
            if let Shape::Table(inner) | Shape::Tables(inner) = key.shape {
                let below = if path.is_empty() { key.name.to_owned() } else { format!("{path}.{}", key.name) };
                walk(&below, inner, visit);
            }
        }
    }
    walk("", ROOT, visit);
}

/// The measure of the first quantity key of that name, wherever it stands.
#[must_use]
pub fn measure_of(name: &str) -> Option<Measure> {
    let mut found = None;
    each(&mut |_, key| {
        if let Shape::Quantity(m) | Shape::Band(m) | Shape::Runs(m) | Shape::Numbers(m) = key.shape
            && key.name == name
            && found.is_none()
        {
            found = Some(m);
        }
    });
    found
}

/// The key at a path such as `boat.kind` or `reading.0.state.pitch` (list positions are skipped).
#[must_use]
pub fn find(path: &str) -> Option<&'static Key> {
    let mut keys = ROOT;
    let mut found = None;
    for name in path.split('.').filter(|part| part.parse::<usize>().is_err()) {
        let key = keys.iter().find(|key| key.name == name)?;
        keys = match key.shape {
            Shape::Table(inner) | Shape::Tables(inner) => inner,
            _ => &[],
        };
        found = Some(key);
    }
    found
}
