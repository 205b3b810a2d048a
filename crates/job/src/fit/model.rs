//! What surrounds the propeller as typed values. Lengths in m, angles in degrees.

use crate::model::{Cup, Hand, Section, Width};
use crate::quantity::Quantity;
use crate::survey::{EdgeForm, LeadingEdge};

/// What stands round the propeller.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stern {
    /// Blade tip to the hull above, blade upright.
    pub tip_clearance: Option<Quantity>,
    /// Blade tip to the sole piece, keel or skeg below.
    pub sole_clearance: Option<Quantity>,
    /// Leading edge at 0.7 R to deadwood, strut or bracket ahead.
    pub ahead_clearance: Option<Quantity>,
    /// Trailing edge at 0.7 R to the rudder or its horn, helm amidships.
    pub aft_clearance: Option<Quantity>,
    /// Shaft centre to the hull above.
    pub hull_above: Option<Quantity>,
    /// Shaft centre to the sole piece, keel or skeg below.
    pub sole_below: Option<Quantity>,
    /// Length of the aperture fore and aft at 0.7 R.
    pub aperture_length: Option<Quantity>,
    /// Thickness of the deadwood or skeg just ahead.
    pub deadwood_thickness: Option<Quantity>,
    /// Arms of the strut ahead: 0 none, 2 a V.
    pub strut_arms: Option<u8>,
    /// Angle between the arms of a V strut.
    pub strut_spread: Option<Quantity>,
    /// Rudder stock behind the middle of the blades.
    pub rudder_stock: Option<Quantity>,
    /// Rudder's leading edge ahead of its stock.
    pub rudder_balance: Option<Quantity>,
    /// Rudder angle hard over.
    pub rudder_angle: Option<Quantity>,
    /// Free room aft of the shaft end, rudder as it stands, to draw the propeller.
    pub removal_room: Option<Quantity>,
    /// How far the stern sinks at full power.
    pub squat: Option<Quantity>,
    /// Outboards and drives: the plate over the propeller above the lowest line of the hull ahead of it; below is negative.
    pub plate_height: Option<Quantity>,
    /// Where the exhaust goes.
    pub exhaust: Option<Exhaust>,
}

/// The propeller shaft and its end.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shaft {
    /// Diameter of the shaft in the bearing.
    pub diameter: Option<Quantity>,
    /// Metal of the shaft.
    pub material: Option<String>,
    /// Taper of its end, on the diameter.
    pub taper: Option<TaperRatio>,
    /// Length of the taper.
    pub taper_length: Option<Quantity>,
    /// Diameter at the small end of the taper.
    pub small_end: Option<Quantity>,
    /// Width of the key.
    pub key_width: Option<Quantity>,
    /// Length of the key.
    pub key_length: Option<Quantity>,
    /// Depth of the hub's keyway at its side.
    pub key_depth: Option<Quantity>,
    /// Longest distance between two bearings.
    pub bearing_spacing: Option<Quantity>,
    /// After end of the last bearing to the hub.
    pub overhang: Option<Quantity>,
    /// Length of the thread behind the taper.
    pub thread_length: Option<Quantity>,
    /// Nut and locknut together, washers too.
    pub nuts: Option<Quantity>,
    /// Anode behind the nuts.
    pub anode_length: Option<Quantity>,
}

/// Under sail with the engine stopped.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct UnderSail {
    /// A usual speed under sail.
    pub speed: Option<Quantity>,
}

/// How the propeller went on: the record of the fit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fitting {
    /// The day.
    pub date: Option<String>,
    /// Mark on the shaft to the hub, seated without the key.
    pub seat_dry: Option<Quantity>,
    /// The same, seated with the key.
    pub seat_keyed: Option<Quantity>,
    /// Share of the taper that took the blue.
    pub blue_contact: Option<Quantity>,
    /// Which nut bears on the hub.
    pub nut_order: Option<NutOrder>,
    /// Nuts locked: split pin, tab or lock washer.
    pub locked: Option<bool>,
    /// Resistance between propeller and anode, ohms.
    pub anode_ohms: Option<Quantity>,
    /// Turned by hand a whole turn, and with the rudder hard over both ways, without touching.
    pub turns_free: Option<bool>,
}

/// What is to be ordered; what is not said is as fitted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Order {
    /// Diameter.
    pub diameter: Option<Quantity>,
    /// Pitch of the face at 0.7 R.
    pub pitch: Option<Quantity>,
    /// Number of blades.
    pub blades: Option<u8>,
    /// Hand, seen from astern.
    pub hand: Option<Hand>,
    /// Expanded blade area over disc area.
    pub area_ratio: Option<Quantity>,
    /// Blade width in words.
    pub width: Option<Width>,
    /// Blade sections.
    pub section: Option<Section>,
    /// Cup at the trailing edge.
    pub cup: Option<Cup>,
    /// Rake, positive aft.
    pub rake: Option<Quantity>,
    /// Greatest skew.
    pub skew: Option<Quantity>,
    /// Shaft diameter the bore is for.
    pub shaft: Option<Quantity>,
    /// Taper of the bore, on the diameter.
    pub taper: Option<TaperRatio>,
    /// Largest shaft that the hubs to be had can be bored for.
    pub largest_bore: Option<Quantity>,
    /// Bore at the small end.
    pub bore_small: Option<Quantity>,
    /// Length of the hub.
    pub hub_length: Option<Quantity>,
    /// Width of the keyway.
    pub key_width: Option<Quantity>,
    /// Metal of the propeller.
    pub material: Option<String>,
    /// Accuracy class (ISO 484).
    pub class: Option<AccuracyClass>,
    /// Balance grade G (ISO 21940-11), mm/s.
    pub balance: Option<Quantity>,
    /// Trailing edge.
    pub edge: Option<EdgeForm>,
    /// How far it must be possible to twist the pitch later, either way.
    pub repitch_room: Option<Quantity>,
    /// What the workshop may choose.
    pub may_vary: Vec<String>,
    /// Anything else.
    pub notes: Option<String>,
}

/// What was measured on the propeller that arrived.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Receipt {
    /// The day.
    pub date: Option<String>,
    /// Twice the mean radius.
    pub diameter: Option<Quantity>,
    /// Mean pitch of all blades.
    pub pitch: Option<Quantity>,
    /// Largest less smallest blade over the mean.
    pub pitch_spread: Option<Quantity>,
    /// Number of blades.
    pub blades: Option<u8>,
    /// Side of the leading edge, blade upright, seen from astern.
    pub leading_edge: Option<LeadingEdge>,
    /// Bore at the large end.
    pub bore_large: Option<Quantity>,
    /// Bore at the small end.
    pub bore_small: Option<Quantity>,
    /// Length of the hub.
    pub hub_length: Option<Quantity>,
    /// Width of the keyway.
    pub key_width: Option<Quantity>,
    /// Mass.
    pub mass: Option<Quantity>,
}

/// Where the exhaust goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Exhaust {
    /// Through the hub.
    Hub,
    /// Under the boat.
    UnderWater,
    /// Through the transom.
    AboveWater,
}

/// Taper of a shaft's end, diameter lost over length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TaperRatio {
    /// 1:10
    Ten,
    /// 1:12
    Twelve,
    /// 1:16
    Sixteen,
    /// 1:20
    Twenty,
}

impl TaperRatio {
    /// Diameter lost per length.
    #[must_use]
    pub const fn value(self) -> f64 {
        match self {
            TaperRatio::Ten => 0.1,
            TaperRatio::Twelve => 1.0 / 12.0,
            TaperRatio::Sixteen => 1.0 / 16.0,
            TaperRatio::Twenty => 0.05,
        }
    }
}

/// A sense of turning seen from astern.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Turning {
    /// Clockwise.
    Right,
    /// Anticlockwise.
    Left,
}

/// How a gearbox's output turns against the engine, ahead.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Gearing {
    /// As the engine.
    Same,
    /// Against it.
    Opposite,
}

/// What a gearbox's maker says of turning with the engine stopped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Freewheel {
    /// May turn freely.
    Allowed,
    /// Must not turn.
    Forbidden,
    /// Must be held in gear.
    InGear,
}

/// Accuracy class of ISO 484.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AccuracyClass {
    /// S
    S,
    /// I
    I,
    /// II
    II,
    /// III
    III,
}

/// Which of two nuts bears on the hub.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum NutOrder {
    /// The half nut.
    ThinFirst,
    /// The full nut.
    ThickFirst,
}
