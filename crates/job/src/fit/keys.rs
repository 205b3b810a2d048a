//! The keys of what surrounds the propeller: stern, shaft, record of the fit, order and receipt.

use super::model::*;
use crate::keys::{Key, Shape, key, measure};
use crate::model::{Cup, Hand, Section, Width};
use crate::quantity::Dimension::{Angle, Length, Mass, Ratio, Speed};
use crate::survey::{EdgeForm, LeadingEdge};
use crate::words::Word;

// Ranges as everywhere: what can exist on small craft, generously (common practice, no source).

/// `[stern]`
#[rustfmt::skip]
pub const STERN: &[Key] = &[
    key("tip_clearance", Shape::Quantity(measure(Length, 0.0005, 1.0, &["mm", "in"])), "\"38 mm\"", "Blade tip to the hull above, blade upright.").hints(&["clearance", "tip"]),
    key("sole_clearance", Shape::Quantity(measure(Length, 0.0005, 1.0, &["mm", "in"])), "\"30 mm\"", "Blade tip to the sole piece, keel or skeg below."),
    key("ahead_clearance", Shape::Quantity(measure(Length, 0.0005, 1.0, &["mm", "in"])), "\"45 mm\"", "Leading edge at 0.7 R to deadwood, strut or bracket ahead."),
    key("aft_clearance", Shape::Quantity(measure(Length, 0.0005, 2.0, &["mm", "in"])), "\"60 mm\"", "Trailing edge at 0.7 R to the rudder or its horn, helm amidships."),
    key("hull_above", Shape::Quantity(measure(Length, 0.03, 3.0, &["mm", "in"])), "\"250 mm\"", "Shaft centre to the hull above."),
    key("sole_below", Shape::Quantity(measure(Length, 0.03, 3.0, &["mm", "in"])), "\"240 mm\"", "Shaft centre to the sole piece, keel or skeg below."),
    key("aperture_length", Shape::Quantity(measure(Length, 0.02, 2.0, &["mm", "in"])), "\"190 mm\"", "Length of the aperture fore and aft at 0.7 R.").hints(&["aperture"]),
    key("deadwood_thickness", Shape::Quantity(measure(Length, 0.005, 1.5, &["mm", "in"])), "\"90 mm\"", "Thickness of the deadwood or skeg just ahead."),
    key("strut_arms", Shape::Count { least: 0, most: 2 }, "1", "Arms of the strut ahead: 0 none, 2 a V.").hints(&["strut"]),
    key("strut_spread", Shape::Quantity(measure(Angle, 5.0, 120.0, &["°"])), "\"50 deg\"", "Angle between the arms of a V strut."),
    key("rudder_stock", Shape::Quantity(measure(Length, 0.02, 4.0, &["mm", "in"])), "\"260 mm\"", "Rudder stock behind the middle of the blades.").hints(&["rudder"]),
    key("rudder_balance", Shape::Quantity(measure(Length, 0.0, 1.5, &["mm", "in"])), "\"90 mm\"", "Rudder's leading edge ahead of its stock."),
    key("rudder_angle", Shape::Quantity(measure(Angle, 10.0, 80.0, &["°"])), "\"35 deg\"", "Rudder angle hard over."),
    key("removal_room", Shape::Quantity(measure(Length, 0.0, 3.0, &["mm", "in"])), "\"220 mm\"", "Free room aft of the shaft end, rudder as it stands, to draw the propeller.").hints(&["puller_room"]),
    key("squat", Shape::Quantity(measure(Length, 0.0, 1.5, &["mm", "in"])), "\"60 mm\"", "How far the stern sinks at full power."),
    key("plate_height", Shape::Quantity(measure(Length, -0.4, 0.4, &["mm", "in"])), "\"15 mm\"", "Outboards and drives: the plate over the propeller above the lowest line of the hull ahead of it; below is negative.").hints(&["plate"]),
    key("exhaust", Shape::Choice(Exhaust::WORDS), "\"hub\"", "Where the exhaust goes."),
];

/// `[shaft]`
#[rustfmt::skip]
pub const SHAFT: &[Key] = &[
    key("diameter", Shape::Quantity(measure(Length, 0.008, 0.3, &["mm", "in"])), "\"30 mm\"", "Diameter of the shaft in the bearing.").hints(&["dia"]),
    key("material", Shape::Text, "\"stainless steel 304\"", "Metal of the shaft."),
    key("taper", Shape::Choice(TaperRatio::WORDS), "\"1:16\"", "Taper of its end, on the diameter."),
    key("taper_length", Shape::Quantity(measure(Length, 0.01, 0.8, &["mm", "in"])), "\"80 mm\"", "Length of the taper."),
    key("small_end", Shape::Quantity(measure(Length, 0.005, 0.25, &["mm", "in"])), "\"25 mm\"", "Diameter at the small end of the taper."),
    key("key_width", Shape::Quantity(measure(Length, 0.001, 0.06, &["mm", "in"])), "\"8 mm\"", "Width of the key."),
    key("key_length", Shape::Quantity(measure(Length, 0.005, 0.5, &["mm", "in"])), "\"60 mm\"", "Length of the key."),
    key("key_depth", Shape::Quantity(measure(Length, 0.0003, 0.03, &["mm", "in"])), "\"3.3 mm\"", "Depth of the hub's keyway at its side."),
    key("bearing_spacing", Shape::Quantity(measure(Length, 0.05, 20.0, &["mm", "in"])), "\"1.4 m\"", "Longest distance between two bearings.").hints(&["spacing"]),
    key("overhang", Shape::Quantity(measure(Length, 0.0, 1.0, &["mm", "in"])), "\"40 mm\"", "After end of the last bearing to the hub."),
    key("thread_length", Shape::Quantity(measure(Length, 0.0, 0.5, &["mm", "in"])), "\"45 mm\"", "Length of the thread behind the taper."),
    key("nuts", Shape::Quantity(measure(Length, 0.0, 0.5, &["mm", "in"])), "\"32 mm\"", "Nut and locknut together, washers too.").hints(&["nut"]),
    key("anode_length", Shape::Quantity(measure(Length, 0.0, 0.5, &["mm", "in"])), "\"40 mm\"", "Anode behind the nuts.").hints(&["anode"]),
];

/// `[under_sail]`
#[rustfmt::skip]
pub const UNDER_SAIL: &[Key] = &[
    key("speed", Shape::Quantity(measure(Speed, 0.1, 15.0, &["kn", "m/s"])), "\"5.5 kn\"", "A usual speed under sail."),
];

/// `[fitting]`
#[rustfmt::skip]
pub const FITTING: &[Key] = &[
    key("date", Shape::Date, "\"2026-05-02\"", "The day."),
    key("seat_dry", Shape::Quantity(measure(Length, -0.3, 0.3, &["mm", "in"])), "\"12.0 mm\"", "Mark on the shaft to the hub, seated without the key."),
    key("seat_keyed", Shape::Quantity(measure(Length, -0.3, 0.3, &["mm", "in"])), "\"12.0 mm\"", "The same, seated with the key."),
    key("blue_contact", Shape::Quantity(measure(Ratio, 0.0, 1.0, &[])), "\"80 %\"", "Share of the taper that took the blue.").hints(&["contact"]),
    key("nut_order", Shape::Choice(NutOrder::WORDS), "\"thin first\"", "Which nut bears on the hub."),
    key("locked", Shape::Flag, "true", "Nuts locked: split pin, tab or lock washer."),
    key("anode_ohms", Shape::Quantity(measure(Ratio, 0.0, 1000000.0, &[])), "0.4", "Resistance between propeller and anode, ohms.").hints(&["ohms"]),
    key("turns_free", Shape::Flag, "true", "Turned by hand a whole turn, and with the rudder hard over both ways, without touching."),
];

/// `[order]`
#[rustfmt::skip]
pub const ORDER: &[Key] = &[
    key("diameter", Shape::Quantity(measure(Length, 0.1, 3.0, &["in", "mm"])), "\"16 in\"", "Diameter.").hints(&["dia"]),
    key("pitch", Shape::Quantity(measure(Length, 0.05, 4.0, &["in", "mm"])), "\"9 in\"", "Pitch of the face at 0.7 R."),
    key("blades", Shape::Count { least: 2, most: 7 }, "3", "Number of blades."),
    key("hand", Shape::Choice(Hand::WORDS), "\"right\"", "Hand, seen from astern."),
    key("area_ratio", Shape::Quantity(measure(Ratio, 0.15, 1.4, &[])), "0.5", "Expanded blade area over disc area.").hints(&["ear"]),
    key("width", Shape::Choice(Width::WORDS), "\"ordinary\"", "Blade width in words."),
    key("section", Shape::Choice(Section::WORDS), "\"flat-faced\"", "Blade sections."),
    key("cup", Shape::Choice(Cup::WORDS), "\"none\"", "Cup at the trailing edge."),
    key("rake", Shape::Quantity(measure(Angle, -30.0, 45.0, &["°"])), "\"8 deg\"", "Rake, positive aft."),
    key("skew", Shape::Quantity(measure(Angle, -10.0, 90.0, &["°"])), "\"10 deg\"", "Greatest skew."),
    key("shaft", Shape::Quantity(measure(Length, 0.008, 0.3, &["mm", "in"])), "\"1 1/4 in\"", "Shaft diameter the bore is for.").hints(&["bore"]),
    key("taper", Shape::Choice(TaperRatio::WORDS), "\"1:16\"", "Taper of the bore, on the diameter."),
    key("largest_bore", Shape::Quantity(measure(Length, 0.008, 0.3, &["mm", "in"])), "\"32 mm\"", "Largest shaft that the hubs to be had can be bored for.").hints(&["max_bore"]),
    key("bore_small", Shape::Quantity(measure(Length, 0.006, 0.25, &["mm", "in"])), "\"25.8 mm\"", "Bore at the small end."),
    key("hub_length", Shape::Quantity(measure(Length, 0.01, 0.8, &["mm", "in"])), "\"95 mm\"", "Length of the hub."),
    key("key_width", Shape::Quantity(measure(Length, 0.001, 0.06, &["mm", "in"])), "\"8 mm\"", "Width of the keyway."),
    key("material", Shape::Text, "\"manganese bronze\"", "Metal of the propeller."),
    key("class", Shape::Choice(AccuracyClass::WORDS), "\"I\"", "Accuracy class (ISO 484)."),
    key("balance", Shape::Quantity(measure(Ratio, 0.4, 40.0, &[])), "6.3", "Balance grade G (ISO 21940-11), mm/s."),
    key("edge", Shape::Choice(EdgeForm::WORDS), "\"bevelled\"", "Trailing edge."),
    key("repitch_room", Shape::Quantity(measure(Length, 0.0, 0.3, &["mm", "in"])), "\"1 in\"", "How far it must be possible to twist the pitch later, either way."),
    key("may_vary", Shape::Texts, "[\"outline\", \"hub diameter\"]", "What the workshop may choose."),
    key("notes", Shape::Text, "\"two off\"", "Anything else."),
];

/// `[receipt]`
#[rustfmt::skip]
pub const RECEIPT: &[Key] = &[
    key("date", Shape::Date, "\"2026-06-02\"", "The day."),
    key("diameter", Shape::Quantity(measure(Length, 0.1, 3.0, &["in", "mm"])), "\"406 mm\"", "Twice the mean radius."),
    key("pitch", Shape::Quantity(measure(Length, 0.05, 4.0, &["in", "mm"])), "\"229 mm\"", "Mean pitch of all blades."),
    key("pitch_spread", Shape::Quantity(measure(Ratio, 0.0, 0.5, &[])), "\"1.5 %\"", "Largest less smallest blade over the mean."),
    key("blades", Shape::Count { least: 2, most: 7 }, "3", "Number of blades."),
    key("leading_edge", Shape::Choice(LeadingEdge::WORDS), "\"right\"", "Side of the leading edge, blade upright, seen from astern."),
    key("bore_large", Shape::Quantity(measure(Length, 0.006, 0.25, &["mm", "in"])), "\"31.75 mm\"", "Bore at the large end."),
    key("bore_small", Shape::Quantity(measure(Length, 0.006, 0.25, &["mm", "in"])), "\"25.8 mm\"", "Bore at the small end."),
    key("hub_length", Shape::Quantity(measure(Length, 0.01, 0.8, &["mm", "in"])), "\"95 mm\"", "Length of the hub."),
    key("key_width", Shape::Quantity(measure(Length, 0.001, 0.06, &["mm", "in"])), "\"7.9 mm\"", "Width of the keyway."),
    key("mass", Shape::Quantity(measure(Mass, 0.2, 3000.0, &["kg", "lb"])), "\"9.4 kg\"", "Mass."),
];
