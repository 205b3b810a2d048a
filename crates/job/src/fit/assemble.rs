//! From checked fields to typed values.

use super::model::*;
use crate::read::Fields;
use crate::value::Node;

pub(crate) fn stern(f: &Fields) -> Stern {
    Stern {
        tip_clearance: f.quantity("tip_clearance"),
        sole_clearance: f.quantity("sole_clearance"),
        ahead_clearance: f.quantity("ahead_clearance"),
        aft_clearance: f.quantity("aft_clearance"),
        hull_above: f.quantity("hull_above"),
        sole_below: f.quantity("sole_below"),
        aperture_length: f.quantity("aperture_length"),
        deadwood_thickness: f.quantity("deadwood_thickness"),
        strut_arms: f.count("strut_arms"),
        strut_spread: f.quantity("strut_spread"),
        rudder_stock: f.quantity("rudder_stock"),
        rudder_balance: f.quantity("rudder_balance"),
        rudder_angle: f.quantity("rudder_angle"),
        removal_room: f.quantity("removal_room"),
        squat: f.quantity("squat"),
        plate_height: f.quantity("plate_height"),
        exhaust: f.choice("exhaust"),
    }
}

pub(crate) fn shaft(f: &Fields) -> Shaft {
    Shaft {
        diameter: f.quantity("diameter"),
        material: f.text("material"),
        taper: f.choice("taper"),
        taper_length: f.quantity("taper_length"),
        small_end: f.quantity("small_end"),
        key_width: f.quantity("key_width"),
        key_length: f.quantity("key_length"),
        key_depth: f.quantity("key_depth"),
        bearing_spacing: f.quantity("bearing_spacing"),
        overhang: f.quantity("overhang"),
        thread_length: f.quantity("thread_length"),
        nuts: f.quantity("nuts"),
        anode_length: f.quantity("anode_length"),
    }
}

pub(crate) fn under_sail(f: &Fields) -> UnderSail {
    UnderSail { speed: f.quantity("speed") }
}

pub(crate) fn fitting(f: &Fields) -> Fitting {
    Fitting {
        date: f.text("date"),
        seat_dry: f.quantity("seat_dry"),
        seat_keyed: f.quantity("seat_keyed"),
        blue_contact: f.quantity("blue_contact"),
        nut_order: f.choice("nut_order"),
        locked: f.flag("locked"),
        anode_ohms: f.quantity("anode_ohms"),
        turns_free: f.flag("turns_free"),
    }
}

pub(crate) fn order(f: &Fields) -> Order {
    Order {
        diameter: f.quantity("diameter"),
        pitch: f.quantity("pitch"),
        blades: f.count("blades"),
        hand: f.choice("hand"),
        area_ratio: f.quantity("area_ratio"),
        width: f.choice("width"),
        section: f.choice("section"),
        cup: f.choice("cup"),
        rake: f.quantity("rake"),
        skew: f.quantity("skew"),
        shaft: f.quantity("shaft"),
        taper: f.choice("taper"),
        largest_bore: f.quantity("largest_bore"),
        bore_small: f.quantity("bore_small"),
        hub_length: f.quantity("hub_length"),
        key_width: f.quantity("key_width"),
        material: f.text("material"),
        class: f.choice("class"),
        balance: f.quantity("balance"),
        edge: f.choice("edge"),
        repitch_room: f.quantity("repitch_room"),
        may_vary: if let Some(Node::Texts(texts)) = f.node("may_vary") { texts.clone() } else { Vec::new() },
        notes: f.text("notes"),
    }
}

pub(crate) fn receipt(f: &Fields) -> Receipt {
    Receipt {
        date: f.text("date"),
        diameter: f.quantity("diameter"),
        pitch: f.quantity("pitch"),
        pitch_spread: f.quantity("pitch_spread"),
        blades: f.count("blades"),
        leading_edge: f.choice("leading_edge"),
        bore_large: f.quantity("bore_large"),
        bore_small: f.quantity("bore_small"),
        hub_length: f.quantity("hub_length"),
        key_width: f.quantity("key_width"),
        mass: f.quantity("mass"),
    }
}
