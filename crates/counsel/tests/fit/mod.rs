//! Fit and order: every check on the demo boats and on one deliberately bad boat each; orders that contradict the job.

mod checking;
mod choosing;
mod ordering;

use counsel::fit::report::{Check, Fit};
use counsel::report::{Gravity, Step};
use counsel::{Options, choose, fit, order};

use crate::{example, job};

const OPTIONS: Options = Options { boats: 1000, seed: 1 };

/// A launch that fits in every respect.
const GOOD: &str = r#"
title = "Kittiwake"
[boat]
kind = "displacement"
length_waterline = "8.4 m"
displacement = "6.5 t (weighed)"
screws = 1
arrangement = "aperture"
growth = "clean"
[engine]
kind = "natural diesel"
rated_power = "29 hp"
rated_speed = "3600 rpm"
cylinders = 4
[drive]
reduction = 2.6
shaft_angle = "7 deg"
engine_turns = "left"
gearbox_turns = "opposite"
shaft_turns = "right"
gearbox_power = "30 kW"
gearbox_speed = "3600 rpm"
freewheel = "allowed"
[propeller]
diameter = "16 in (measured)"
pitch = "11 in (measured)"
blades = 3
hand = "right"
stamp = "16RH11"
growth = "clean"
material = "manganese bronze"
immersion = "0.6 m"
hub_length = "80 mm"
hub_diameter = "70 mm"
mass = "8.4 kg"
root_thickness = "17 mm"
outer_thickness = "10 mm"
edge_thickness = "0.8 mm"
[stern]
tip_clearance = "66 mm"
sole_clearance = "40 mm"
ahead_clearance = "60 mm"
aft_clearance = "70 mm"
rudder_stock = "260 mm"
rudder_balance = "40 mm"
rudder_angle = "35 deg"
removal_room = "220 mm"
[shaft]
diameter = "30 mm (measured)"
material = "stainless 304"
taper = "1:10"
taper_length = "72 mm"
key_width = "8 mm"
key_length = "60 mm"
bearing_spacing = "1.1 m"
overhang = "25 mm"
thread_length = "46 mm"
nuts = "34 mm"
[fitting]
seat_dry = "12 mm"
seat_keyed = "12 mm"
blue_contact = "80 %"
nut_order = "thin first"
locked = true
anode_ohms = 0.4
turns_free = true
[under_sail]
speed = "5 kn"
[order]
diameter = "16 in"
pitch = "11 in"
blades = 3
hand = "right"
width = "ordinary"
section = "flat-faced"
cup = "none"
shaft = "30 mm"
taper = "1:10"
key_width = "8 mm"
material = "manganese bronze"
class = "II"
"#;

const EXAMPLES: [&str; 7] = ["kittiwake", "gannet", "razorbill", "turnstone", "guillemot", "cormorant", "whimbrel"];

fn fitted(text: &str) -> Fit {
    fit(&job(text), &OPTIONS).expect("nothing is missing")
}

fn check<'a>(fit: &'a Fit, code: &str) -> &'a Check {
    fit.checks.iter().find(|c| c.code == code).unwrap_or_else(|| panic!("{code}: {:?}", fit.checks))
}
