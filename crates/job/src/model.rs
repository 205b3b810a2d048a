//! The job as typed values.

use crate::complaint::{Onset, Side, Smoke, Swapped, Symptom};
use crate::fit::{AccuracyClass, Fitting, Freewheel, Gearing, Order, Receipt, Shaft, Stern, Turning, UnderSail};
use crate::quantity::Quantity;
use crate::survey::Survey;

/// One job: a boat, what drives it, what was read on it, and what is wanted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Job {
    /// One line that names boat and trouble.
    pub title: String,
    /// What the choice of a propeller is for.
    pub duty: Option<Duty>,
    /// The call.
    pub call: Call,
    /// Hull and weight.
    pub boat: Boat,
    /// The water and air it runs in.
    pub place: Place,
    /// One engine (all engines alike).
    pub engine: Engine,
    /// Gearbox and shaft.
    pub drive: Drive,
    /// The propeller fitted.
    pub propeller: Propeller,
    /// What stands round the propeller.
    pub stern: Stern,
    /// The propeller shaft and its end.
    pub shaft: Shaft,
    /// Under sail with the engine stopped.
    pub under_sail: UnderSail,
    /// How the propeller went on: the record of the fit.
    pub fitting: Fitting,
    /// What is to be ordered; what is not said is as fitted.
    pub order: Order,
    /// What was measured on the propeller that arrived.
    pub receipt: Receipt,
    /// What the port side of a pair has of its own.
    pub port: Own,
    /// What the starboard side has of its own.
    pub starboard: Own,
    /// Readings taken on the boat.
    pub readings: Vec<Reading>,
    /// What was measured on the propeller out of the water.
    pub survey: Option<Survey>,
}

/// What one side of a pair has of its own.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Own {
    /// Its reduction.
    pub reduction: Option<Quantity>,
    /// Its propeller (only what differs).
    pub propeller: Option<Propeller>,
}

/// What a propeller is chosen for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Duty {
    /// Highest speed.
    TopSpeed,
    /// Least fuel at a working speed.
    Cruise,
    /// Pulling or pushing at low speed.
    Tow,
    /// A bit of everything.
    Mixed,
}

/// What the caller said.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Call {
    /// The complaint in the caller's words.
    pub complaint: Option<String>,
    /// Since when.
    pub since: Option<String>,
    /// What changed just before.
    pub changed: Vec<String>,
    /// How it began.
    pub onset: Option<Onset>,
    /// What was seen, heard or felt.
    pub symptoms: Vec<Symptom>,
    /// What is wanted, in words.
    pub wants: Option<String>,
    /// Anything else.
    pub notes: Option<String>,
}

/// The way a hull carries its weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Stays in displacement motion.
    Displacement,
    /// Sailing yacht under power.
    Sailing,
    /// Driven past hull speed without planing cleanly.
    SemiDisplacement,
    /// Planing.
    Planing,
}

/// Where the propeller works.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Arrangement {
    /// Aperture in a long keel or deadwood.
    Aperture,
    /// Fin keel, shaft and strut.
    FinKeelStrut,
    /// Behind a skeg.
    Skeg,
    /// Saildrive.
    Saildrive,
    /// Outboard.
    Outboard,
    /// Sterndrive.
    Sterndrive,
    /// Inclined shaft under a planing or semi-displacement hull.
    InclinedShaft,
    /// Propeller tunnel.
    Tunnel,
}

/// State of a hull's or a propeller's surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Growth {
    /// Clean and smooth.
    Clean,
    /// Light slime.
    LightSlime,
    /// Heavy slime.
    HeavySlime,
    /// Small shell or weed.
    SmallShell,
    /// Medium shell.
    MediumShell,
    /// Heavy shell.
    HeavyShell,
}

/// Hull and weight.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Boat {
    /// The way it carries its weight.
    pub kind: Option<Kind>,
    /// Length overall, m.
    pub length_overall: Option<Quantity>,
    /// Waterline length, m.
    pub length_waterline: Option<Quantity>,
    /// Greatest beam, m.
    pub beam: Option<Quantity>,
    /// Waterline beam, m.
    pub beam_waterline: Option<Quantity>,
    /// Beam over the chines, m.
    pub beam_chine: Option<Quantity>,
    /// Draught of the hull body without keel, m.
    pub hull_draught: Option<Quantity>,
    /// Mass in running trim at the readings, kg.
    pub displacement: Option<Quantity>,
    /// Mass ready for the longest trip, fuel, water and people aboard, kg: the weight the propeller is judged at.
    pub loaded_displacement: Option<Quantity>,
    /// Deadrise aft, degrees.
    pub deadrise: Option<Quantity>,
    /// Centre of gravity forward of the transom, m.
    pub centre_of_gravity: Option<Quantity>,
    /// Prismatic coefficient.
    pub prismatic_coefficient: Option<Quantity>,
    /// Block coefficient of the hull body.
    pub block_coefficient: Option<Quantity>,
    /// Half angle of entrance, degrees.
    pub half_entrance_angle: Option<Quantity>,
    /// Number of propellers.
    pub screws: Option<u8>,
    /// Where they work.
    pub arrangement: Option<Arrangement>,
    /// Time afloat since the bottom was last cleaned, s.
    pub since_scrub: Option<Quantity>,
    /// State of the bottom.
    pub growth: Option<Growth>,
    /// A towed resistance curve: speed, force.
    pub resistance: Vec<(Quantity, Quantity)>,
}

/// The water and air the boat runs in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Place {
    /// Fresh water (else sea).
    pub fresh: Option<bool>,
    /// Water temperature, °C.
    pub water_temperature: Option<Quantity>,
    /// Water depth, m.
    pub depth: Option<Quantity>,
    /// Air temperature at the engine's intake, °C.
    pub air_temperature: Option<Quantity>,
    /// Height above the sea, m.
    pub altitude: Option<Quantity>,
}

/// Kind of engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum EngineKind {
    /// Naturally aspirated diesel.
    NaturalDiesel,
    /// Turbocharged diesel.
    TurboDiesel,
    /// Petrol inboard.
    Petrol,
    /// Outboard.
    Outboard,
    /// Electric motor.
    Electric,
}

/// Where the declared power is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PowerAt {
    /// At the crankshaft.
    Crankshaft,
    /// At the propeller shaft.
    PropellerShaft,
}

/// Duty rating of an engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Rating {
    /// Pleasure.
    Pleasure,
    /// Light commercial.
    LightDuty,
    /// Medium continuous.
    MediumDuty,
    /// Continuous.
    Continuous,
}

/// One engine.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Engine {
    /// Maker's model, as said.
    pub model: Option<String>,
    /// Kind.
    pub kind: Option<EngineKind>,
    /// Rated power, W.
    pub rated_power: Option<Quantity>,
    /// Where that power is measured.
    pub rated_at: Option<PowerAt>,
    /// Rated speed, rev/s.
    pub rated_speed: Option<Quantity>,
    /// The maker's full-throttle band, rev/s (low, high).
    pub full_throttle_band: Option<(f64, f64)>,
    /// No-load governed speed or limiter, rev/s.
    pub no_load_speed: Option<Quantity>,
    /// Duty rating.
    pub rating: Option<Rating>,
    /// Number of cylinders.
    pub cylinders: Option<u8>,
    /// Fires every turn.
    pub two_stroke: Option<bool>,
    /// Maker's full-throttle curve: speed, power.
    pub curve: Vec<(Quantity, Quantity)>,
}

/// Gearbox and shaft.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drive {
    /// Reduction ahead.
    pub reduction: Option<Quantity>,
    /// Reduction astern.
    pub reduction_astern: Option<Quantity>,
    /// Shaft angle to the waterline, degrees.
    pub shaft_angle: Option<Quantity>,
    /// The way the flywheel end of the engine turns, seen from astern.
    pub engine_turns: Option<Turning>,
    /// The way the output turns against the engine, ahead.
    pub gearbox_turns: Option<Gearing>,
    /// The way the shaft was seen to turn in ahead, looked at from astern.
    pub shaft_turns: Option<Turning>,
    /// Greatest input power of the gearbox by its plate ...
    pub gearbox_power: Option<Quantity>,
    /// ... at this engine speed.
    pub gearbox_speed: Option<Quantity>,
    /// Greatest input torque of the gearbox, N m.
    pub gearbox_torque: Option<Quantity>,
    /// Greatest torque at its output flange, N m.
    pub gearbox_output_torque: Option<Quantity>,
    /// What the gearbox maker says of turning with the engine stopped.
    pub freewheel: Option<Freewheel>,
    /// Reductions the gearbox can be had with.
    pub other_reductions: Vec<f64>,
}

/// Hand of rotation going ahead, seen from astern.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Hand {
    /// Clockwise.
    Right,
    /// Anticlockwise.
    Left,
    /// A pair turning outward or inward.
    Pair,
}

/// Blade section style.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Section {
    /// Airfoil sections.
    Airfoil,
    /// Flat face, round back.
    FlatFaced,
    /// Kaplan blades in a nozzle.
    Ducted,
}

/// Blade outline in the trade's words, when the area ratio is not known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Width {
    /// Narrow.
    Narrow,
    /// Ordinary.
    Ordinary,
    /// Wide.
    Wide,
}

/// How the blades are carried.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Blades {
    /// Fixed.
    Fixed,
    /// Folding.
    Folding,
    /// Feathering.
    Feathering,
}

/// Cup in the trade's words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Cup {
    /// None.
    None,
    /// Light.
    Light,
    /// Medium.
    Medium,
    /// Heavy.
    Heavy,
}

/// The propeller fitted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Propeller {
    /// Diameter, m.
    pub diameter: Option<Quantity>,
    /// Pitch, m.
    pub pitch: Option<Quantity>,
    /// Number of blades.
    pub blades: Option<u8>,
    /// Hand.
    pub hand: Option<Hand>,
    /// Expanded area ratio.
    pub area_ratio: Option<Quantity>,
    /// Blade width in words.
    pub width: Option<Width>,
    /// Blade sections.
    pub section: Option<Section>,
    /// How the blades are carried.
    pub kind: Option<Blades>,
    /// Cup.
    pub cup: Option<Cup>,
    /// State of the blades' surface.
    pub growth: Option<Growth>,
    /// Shaft centre below the water, m.
    pub immersion: Option<Quantity>,
    /// Largest diameter that fits, m.
    pub largest_diameter: Option<Quantity>,
    /// Rake of the blades, positive aft.
    pub rake: Option<Quantity>,
    /// Skew of the blades.
    pub skew: Option<Quantity>,
    /// Outside diameter of the hub.
    pub hub_diameter: Option<Quantity>,
    /// Length of the hub.
    pub hub_length: Option<Quantity>,
    /// Mass.
    pub mass: Option<Quantity>,
    /// Accuracy class (ISO 484), as certified.
    pub class: Option<AccuracyClass>,
    /// Greatest thickness at 0.25 R.
    pub root_thickness: Option<Quantity>,
    /// Greatest thickness at 0.6 R.
    pub outer_thickness: Option<Quantity>,
    /// Thickness of the trailing edge.
    pub edge_thickness: Option<Quantity>,
    /// The stamp as read.
    pub stamp: Option<String>,
    /// Material, as said.
    pub material: Option<String>,
}

/// Something read on the boat under way.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reading {
    /// Name or date.
    pub label: Option<String>,
    /// Which engine of a pair.
    pub side: Option<Side>,
    /// How far the lever was forward, 0 to 1.
    pub throttle: Option<Quantity>,
    /// Throttle fully open.
    pub full_throttle: bool,
    /// The engine was held by its governor or limiter.
    pub governed: Option<bool>,
    /// Engine speed, rev/s; its `source` names the instrument.
    pub engine_speed: Option<Quantity>,
    /// Shaft speed, rev/s.
    pub shaft_speed: Option<Quantity>,
    /// Speed, mean over the directions given, m/s; spread already reduced for double runs.
    pub speed: Option<Quantity>,
    /// Speeds per direction as given.
    pub speeds: Vec<Quantity>,
    /// Fuel of all engines together, kg/s.
    pub fuel: Option<Quantity>,
    /// Water depth, m.
    pub depth: Option<Quantity>,
    /// Exhaust temperature where the engine's maker says, °C.
    pub exhaust_temperature: Option<Quantity>,
    /// Boost above atmosphere, Pa.
    pub boost: Option<Quantity>,
    /// Load by the engine's own display, share of full.
    pub engine_load: Option<Quantity>,
    /// Smoke.
    pub smoke: Option<Smoke>,
    /// Wind, as said.
    pub wind: Option<String>,
    /// Tanks, stores and people, as said.
    pub load: Option<String>,
    /// Date as written.
    pub date: Option<String>,
    /// Notes (wind, sea).
    pub notes: Option<String>,
    /// The state the boat was in, where it differs from the rest of the file.
    pub state: State,
}

/// A state of the boat that differs from the one described above.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct State {
    /// Mass, kg.
    pub displacement: Option<Quantity>,
    /// Time since the bottom was cleaned, s.
    pub since_scrub: Option<Quantity>,
    /// Growth on the bottom.
    pub growth: Option<Growth>,
    /// Another propeller (only what differs).
    pub propeller: Option<Propeller>,
    /// Another reduction.
    pub reduction: Option<Quantity>,
    /// What had been changed over between the sides of a pair.
    pub swapped: Option<Swapped>,
}
