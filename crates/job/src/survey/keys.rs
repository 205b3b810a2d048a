//! The keys of a survey, part of the table of keys.

use super::model::*;
use crate::complaint::Side;
use crate::keys::{Key, Measure, Shape, choice, key, measure, quantity, table, tables, text};
use crate::quantity::Dimension::{Angle, Length, Mass, Ratio};
use crate::words::Word;

// Ranges as everywhere: what can exist on small craft, generously (common practice, no source).
const TIP: Measure = measure(Length, 0.05, 1.5, &["mm", "in"]);
const RADIUS: Measure = measure(Length, 0.015, 1.5, &["mm", "in"]);
const RADIUS_RATIO: Measure = measure(Ratio, 0.1, 1.0, &[]);
const PITCH: Measure = measure(Length, 0.05, 4.0, &["mm", "in"]);
const RISE: Measure = measure(Length, 0.000_5, 1.5, &["mm", "in"]);
const RUN: Measure = measure(Length, 0.005, 1.5, &["mm", "in"]);
const CHORD: Measure = measure(Length, 0.01, 2.0, &["mm", "in"]);
const EDGE: Measure = measure(Length, -0.6, 1.5, &["mm", "in"]);
const AXIAL: Measure = measure(Length, -1.5, 1.5, &["mm", "in"]);
const BORE: Measure = measure(Length, 0.006, 0.25, &["mm", "in"]);
const FRACTION: Measure = measure(Ratio, 0.0, 1.0, &[]);

/// `[survey]`
#[rustfmt::skip]
pub const SURVEY: &[Key] = &[
    key("date", Shape::Date, "\"2026-04-18\"", "The day."),
    choice("side", Side::WORDS, "\"starboard\"", "Which propeller of a pair was measured; the other is as stamped."),
    text("surveyor", "\"yard, on the bench\"", "Who measured."),
    choice("tool", Tool::WORDS, "\"swing gauge\"", "What the pitch was measured with, where a section does not say otherwise; sets the spreads.").hints(&["gauge", "instrument"]),
    quantity("design_pitch", PITCH, "\"11 in\"", "Pitch the propeller was meant to have and is to be trued to. Without it the stamped pitch is the measure.").hints(&["target_pitch", "pitch"]),
    quantity("diameter_across", measure(Length, 0.1, 3.0, &["mm", "in"]), "\"405 mm\"", "Diameter taken tip to tip: even numbers of blades only. Better give each blade's tip_radius.").hints(&["diameter", "dia"]),
    choice("leading_edge", LeadingEdge::WORDS, "\"right\"", "The side on which the leading edge lies, blade upright, seen from astern: the hand, whatever the stamp says.").hints(&["leads", "hand"]),
    quantity("rake", measure(Angle, -45.0, 60.0, &["°", "rad"]), "\"8 deg\"", "Rake of the blades, positive aft."),
    quantity("skew", measure(Angle, -60.0, 90.0, &["°", "rad"]), "\"10 deg\"", "Skew angle of the blades."),
    quantity("mass", measure(Mass, 0.2, 3000.0, &["kg", "lb"]), "\"9.4 kg\"", "Mass of the propeller.").hints(&["weight"]),
    choice("ring", Ring::WORDS, "\"clear\"", "Sound of a blade tapped with a soft hammer, hub held free."),
    choice("colour", Colour::WORDS, "\"bright\"", "Colour of the metal after scraping.").hints(&["color"]),
    choice("surface", Surface::WORDS, "\"smooth\"", "Surface of the blades as they will run.").hints(&["finish"]),
    text("notes", "\"tip of blade B straightened before\"", "Anything else."),
    table("hub", HUB, "Hub, bore and keyway.").hints(&["boss", "bore"]),
    tables("design", DESIGN, "Pitch meant at one radius, where it is not one for the whole blade; two radii or more.").hints(&["target"]),
    table("photo", PHOTO, "The outline of one blade, clicked on a photograph taken from astern along the shaft, camera far off.").hints(&["picture", "trace", "outline"]),
    tables("blade", BLADE, "A blade; all blades counted the same way round.").hints(&["blades"]),
    tables("damage", DAMAGE, "A place of damage."),
];

#[rustfmt::skip]
const HUB: &[Key] = &[
    quantity("diameter", measure(Length, 0.02, 0.8, &["mm", "in"]), "\"70 mm\"", "Outside diameter of the hub."),
    quantity("length", measure(Length, 0.01, 0.8, &["mm", "in"]), "\"76 mm\"", "Length of the hub."),
    quantity("bore_large", BORE, "\"25.4 mm\"", "Bore at the large end."),
    quantity("bore_small", BORE, "\"20.65 mm\"", "Bore at the small end."),
    quantity("taper_length", measure(Length, 0.01, 0.8, &["mm", "in"]), "\"76 mm\"", "Length between those two readings, when it is not the length of the hub."),
    quantity("keyway_width", measure(Length, 0.001, 0.06, &["mm", "in"]), "\"6.35 mm\"", "Width of the keyway."),
    quantity("keyway_depth", measure(Length, 0.000_3, 0.03, &["mm", "in"]), "\"3.2 mm\"", "Depth of the keyway at its side."),
];

#[rustfmt::skip]
const DESIGN: &[Key] = &[
    quantity("radius_ratio", RADIUS_RATIO, "0.7", "Radius over tip radius."),
    quantity("pitch", PITCH, "\"356 mm\"", "Pitch meant there."),
];

const PIXEL: Measure = measure(Ratio, -100_000.0, 100_000.0, &[]);

#[rustfmt::skip]
const PHOTO: &[Key] = &[
    text("file", "\"astern.jpg\"", "The photograph."),
    quantity("centre_x", PIXEL, "812", "Shaft centre, pixels from the left."),
    quantity("centre_y", PIXEL, "1040", "Shaft centre, pixels from the top."),
    quantity("scale_length", measure(Length, 0.01, 3.0, &["mm", "in"]), "\"300 mm\"", "A known length in the plane of the disc: a rule held there, or the tip radius."),
    quantity("scale_pixels", measure(Ratio, 10.0, 100_000.0, &[]), "968", "That length in pixels."),
    quantity("click", measure(Ratio, 0.0, 100.0, &[]), "2", "How closely the edge was clicked, pixels (two when left out)."),
    tables("point", CLICK, "Points round one blade in order, from the hub out to the tip and back; either way round."),
];

#[rustfmt::skip]
const CLICK: &[Key] = &[
    quantity("x", PIXEL, "790", "Pixels from the left."),
    quantity("y", PIXEL, "655", "Pixels from the top."),
];

#[rustfmt::skip]
const BLADE: &[Key] = &[
    text("name", "\"A\"", "Its name, as chalked on it.").hints(&["number", "id"]),
    quantity("tip_radius", TIP, "\"202.5 mm\"", "Shaft centre to tip; the diameter is twice that.").hints(&["radius"]),
    quantity("tip_angle", measure(Angle, 0.0, 360.0, &["°", "rad"]), "\"120 deg\"", "Angular position of its tip or reference line."),
    choice("leading_edge_form", EdgeForm::WORDS, "\"round\"", "Form of the leading edge."),
    choice("trailing_edge_form", EdgeForm::WORDS, "\"bevelled\"", "Form of the trailing edge."),
    tables("section", SECTION, "What was measured at one radius of a blade: any of these, from the hub outward.").hints(&["sections", "station"]),
];

#[rustfmt::skip]
const SECTION: &[Key] = &[
    quantity("radius", RADIUS, "\"140 mm\"", "Radius of the section.").hints(&["r"]),
    quantity("radius_ratio", RADIUS_RATIO, "0.7", "The same over the tip radius; give one of the two.").hints(&["r_over_r"]),
    choice("by", Tool::WORDS, "\"protractor\"", "The tool used here, when it is another than the survey's."),
    quantity("pitch", PITCH, "\"279 mm\"", "Pitch read directly off a gauge."),
    quantity("arc_rise", RISE, "\"23.3 mm\"", "Rise along the shaft while the gauge swings over the arc: pitch = 360 x rise / arc.").hints(&["rise"]),
    quantity("arc", measure(Angle, 2.0, 180.0, &["°", "rad"]), "\"30 deg\"", "That arc about the shaft.").hints(&["arc_degrees", "sweep"]),
    quantity("face_angle", measure(Angle, 2.0, 80.0, &["°", "rad"]), "\"17.6 deg\"", "Angle of the face to the plane the tips run in: pitch = 2 pi r tan(angle).").hints(&["angle", "blade_angle"]),
    quantity("chord_rise", RISE, "\"25 mm\"", "Rise along the shaft between two points of the face at this radius: pitch = 2 pi x rise / angle, the angle being that of the run seen from the shaft."),
    quantity("chord_run", RUN, "\"80 mm\"", "The straight distance between the two points, square to the shaft.").hints(&["run"]),
    quantity("chord", CHORD, "\"118 mm\"", "Width of the blade along the face.").hints(&["width"]),
    quantity("leading_edge", EDGE, "\"62 mm\"", "Leading edge from the blade's reference line, positive ahead of it."),
    quantity("trailing_edge", EDGE, "\"56 mm\"", "Trailing edge from the reference line, positive behind it."),
    quantity("thickness", measure(Length, 0.000_5, 0.25, &["mm", "in"]), "\"9.5 mm\"", "Largest thickness."),
    quantity("track", AXIAL, "\"4 mm\"", "Axial position of the face on the reference line, from one plane for all blades, positive aft."),
    quantity("cup_drop", measure(Length, 0.0, 0.03, &["mm", "in"]), "\"1.5 mm\"", "Drop of the cup's lip from the line of the face.").hints(&["cup"]),
    quantity("cup_length", measure(Length, 0.0, 0.2, &["mm", "in"]), "\"10 mm\"", "Length of the cup along the chord."),
    tables("point", POINT, "A point of the face; two or more, from one edge to the other.").hints(&["points"]),
];

#[rustfmt::skip]
const POINT: &[Key] = &[
    quantity("angle", measure(Angle, -360.0, 360.0, &["°", "rad"]), "\"10 deg\"", "Angle about the shaft."),
    quantity("chord_fraction", FRACTION, "0.25", "Place along the chord from the leading edge, when there is no angle; wants chord too."),
    quantity("height", AXIAL, "\"7.8 mm\"", "Height along the shaft, growing toward the trailing edge: the after side up on the bench."),
];

#[rustfmt::skip]
const DAMAGE: &[Key] = &[
    text("blade", "\"B\"", "The blade's name."),
    choice("side", BladeSide::WORDS, "\"back\"", "Face or back."),
    quantity("radius_ratio", RADIUS_RATIO, "0.8", "Radius over tip radius."),
    quantity("chord_fraction", FRACTION, "\"40 %\"", "Place along the chord from the leading edge.").hints(&["chord_percent", "percent"]),
    choice("kind", DamageKind::WORDS, "\"pits\"", "What it is."),
    quantity("depth", measure(Length, 0.000_02, 0.3, &["mm", "in"]), "\"0.8 mm\"", "Depth."),
    text("notes", "\"a hand's breadth, like sponge\"", "Anything else."),
];
