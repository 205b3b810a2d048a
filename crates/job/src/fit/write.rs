//! Writing what surrounds the propeller as part of a job file.

use crate::model::Job;
use crate::write::Out;

/// All its tables.
pub(crate) fn write(job: &Job, out: &mut Out) {
    let stern = &job.stern;
    out.table("stern")
        .quantity("tip_clearance", stern.tip_clearance.as_ref())
        .quantity("sole_clearance", stern.sole_clearance.as_ref())
        .quantity("ahead_clearance", stern.ahead_clearance.as_ref())
        .quantity("aft_clearance", stern.aft_clearance.as_ref())
        .quantity("hull_above", stern.hull_above.as_ref())
        .quantity("sole_below", stern.sole_below.as_ref())
        .quantity("aperture_length", stern.aperture_length.as_ref())
        .quantity("deadwood_thickness", stern.deadwood_thickness.as_ref())
        .count("strut_arms", stern.strut_arms)
        .quantity("strut_spread", stern.strut_spread.as_ref())
        .quantity("rudder_stock", stern.rudder_stock.as_ref())
        .quantity("rudder_balance", stern.rudder_balance.as_ref())
        .quantity("rudder_angle", stern.rudder_angle.as_ref())
        .quantity("removal_room", stern.removal_room.as_ref())
        .quantity("squat", stern.squat.as_ref())
        .quantity("plate_height", stern.plate_height.as_ref())
        .word("exhaust", stern.exhaust);
    let shaft = &job.shaft;
    out.table("shaft")
        .quantity("diameter", shaft.diameter.as_ref())
        .text("material", shaft.material.as_deref())
        .word("taper", shaft.taper)
        .quantity("taper_length", shaft.taper_length.as_ref())
        .quantity("small_end", shaft.small_end.as_ref())
        .quantity("key_width", shaft.key_width.as_ref())
        .quantity("key_length", shaft.key_length.as_ref())
        .quantity("key_depth", shaft.key_depth.as_ref())
        .quantity("bearing_spacing", shaft.bearing_spacing.as_ref())
        .quantity("overhang", shaft.overhang.as_ref())
        .quantity("thread_length", shaft.thread_length.as_ref())
        .quantity("nuts", shaft.nuts.as_ref())
        .quantity("anode_length", shaft.anode_length.as_ref());
    let under_sail = &job.under_sail;
    out.table("under_sail").quantity("speed", under_sail.speed.as_ref());
    let fitting = &job.fitting;
    out.table("fitting")
        .text("date", fitting.date.as_deref())
        .quantity("seat_dry", fitting.seat_dry.as_ref())
        .quantity("seat_keyed", fitting.seat_keyed.as_ref())
        .quantity("blue_contact", fitting.blue_contact.as_ref())
        .word("nut_order", fitting.nut_order)
        .flag("locked", fitting.locked)
        .quantity("anode_ohms", fitting.anode_ohms.as_ref())
        .flag("turns_free", fitting.turns_free);
    let order = &job.order;
    out.table("order")
        .quantity("diameter", order.diameter.as_ref())
        .quantity("pitch", order.pitch.as_ref())
        .count("blades", order.blades)
        .word("hand", order.hand)
        .quantity("area_ratio", order.area_ratio.as_ref())
        .word("width", order.width)
        .word("section", order.section)
        .word("cup", order.cup)
        .quantity("rake", order.rake.as_ref())
        .quantity("skew", order.skew.as_ref())
        .quantity("shaft", order.shaft.as_ref())
        .word("taper", order.taper)
        .quantity("largest_bore", order.largest_bore.as_ref())
        .quantity("bore_small", order.bore_small.as_ref())
        .quantity("hub_length", order.hub_length.as_ref())
        .quantity("key_width", order.key_width.as_ref())
        .text("material", order.material.as_deref())
        .word("class", order.class)
        .quantity("balance", order.balance.as_ref())
        .word("edge", order.edge)
        .quantity("repitch_room", order.repitch_room.as_ref())
        .texts("may_vary", &order.may_vary)
        .text("notes", order.notes.as_deref());
    let receipt = &job.receipt;
    out.table("receipt")
        .text("date", receipt.date.as_deref())
        .quantity("diameter", receipt.diameter.as_ref())
        .quantity("pitch", receipt.pitch.as_ref())
        .quantity("pitch_spread", receipt.pitch_spread.as_ref())
        .count("blades", receipt.blades)
        .word("leading_edge", receipt.leading_edge)
        .quantity("bore_large", receipt.bore_large.as_ref())
        .quantity("bore_small", receipt.bore_small.as_ref())
        .quantity("hub_length", receipt.hub_length.as_ref())
        .quantity("key_width", receipt.key_width.as_ref())
        .quantity("mass", receipt.mass.as_ref());
}
