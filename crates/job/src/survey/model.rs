//! A propeller survey as typed values: what was measured on the blades and the hub, with which tool.

use crate::complaint::Side;
use crate::quantity::Quantity;
use std::ops::Range;

/// What a surveyor measured on a propeller out of the water. Everything is optional; lengths in m, angles in degrees.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Survey {
    /// The day, as written.
    pub date: Option<String>,
    /// Which propeller of a pair.
    pub side: Option<Side>,
    /// Who measured.
    pub surveyor: Option<String>,
    /// The tool the pitch was measured with, where a section does not say otherwise.
    pub tool: Option<Tool>,
    /// Pitch the propeller was meant to have and is to be trued to, m, where it is not the stamp.
    pub design_pitch: Option<Quantity>,
    /// Pitch meant over the radius, where it is not one: r/R and m, from the hub outward.
    pub design: Vec<(f64, f64)>,
    /// Diameter taken tip to tip, m: possible with an even number of blades only.
    pub diameter_across: Option<Quantity>,
    /// The side on which the leading edge lies, blade upright, seen from astern.
    pub leading_edge: Option<LeadingEdge>,
    /// Rake, degrees, positive aft.
    pub rake: Option<Quantity>,
    /// Skew, degrees.
    pub skew: Option<Quantity>,
    /// Mass of the propeller, kg.
    pub mass: Option<Quantity>,
    /// Sound when tapped.
    pub ring: Option<Ring>,
    /// Colour of the scraped metal.
    pub colour: Option<Colour>,
    /// Surface of the blades.
    pub surface: Option<Surface>,
    /// Anything else.
    pub notes: Option<String>,
    /// Hub and bore.
    pub hub: Hub,
    /// The outline of a blade clicked on a photograph.
    pub photo: Option<Photo>,
    /// The blades measured.
    pub blades: Vec<SurveyBlade>,
    /// The damage map.
    pub damage: Vec<Damage>,
}

/// Hub, bore and keyway.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Hub {
    /// Outside diameter, m.
    pub diameter: Option<Quantity>,
    /// Length, m.
    pub length: Option<Quantity>,
    /// Bore at the large (forward) end, m.
    pub bore_large: Option<Quantity>,
    /// Bore at the small (after) end, m.
    pub bore_small: Option<Quantity>,
    /// Length between the two bore readings, m; the hub's length when not said.
    pub taper_length: Option<Quantity>,
    /// Keyway width, m.
    pub keyway_width: Option<Quantity>,
    /// Keyway depth at its side, m.
    pub keyway_depth: Option<Quantity>,
}

/// The outline of one blade on a photograph taken from astern. Pixels: x to the right, y down.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Photo {
    /// The photograph.
    pub file: Option<String>,
    /// Shaft centre, pixels from the left.
    pub centre_x: Option<Quantity>,
    /// Shaft centre, pixels from the top.
    pub centre_y: Option<Quantity>,
    /// A known length in the plane of the disc, m.
    pub scale_length: Option<Quantity>,
    /// That length, pixels.
    pub scale_pixels: Option<Quantity>,
    /// How closely the edge was clicked, pixels.
    pub click: Option<Quantity>,
    /// The points clicked, in order round the blade.
    pub points: Vec<[f64; 2]>,
    /// Bytes in the file.
    pub at: Range<usize>,
}

/// One blade.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SurveyBlade {
    /// Its name: A, B, 1, 2, ...
    pub name: Option<String>,
    /// Shaft centre to tip, m.
    pub tip_radius: Option<Quantity>,
    /// Angular position of its reference line or tip, degrees, all blades counted the same way round.
    pub tip_angle: Option<Quantity>,
    /// Form of the leading edge.
    pub leading_edge_form: Option<EdgeForm>,
    /// Form of the trailing edge.
    pub trailing_edge_form: Option<EdgeForm>,
    /// Sections, from the hub outward.
    pub sections: Vec<SurveySection>,
    /// Bytes in the file.
    pub at: Range<usize>,
}

/// What was measured at one radius of one blade.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SurveySection {
    /// Radius, m.
    pub radius: Option<Quantity>,
    /// Radius over tip radius.
    pub radius_ratio: Option<Quantity>,
    /// The tool here.
    pub by: Option<Tool>,
    /// Pitch read directly, m.
    pub pitch: Option<Quantity>,
    /// Rise along the shaft over an arc, m.
    pub arc_rise: Option<Quantity>,
    /// That arc, degrees about the shaft.
    pub arc: Option<Quantity>,
    /// Angle of the face to the plane of the disc, degrees.
    pub face_angle: Option<Quantity>,
    /// Rise along the shaft over a straight run, m.
    pub chord_rise: Option<Quantity>,
    /// That run, square to the shaft, m.
    pub chord_run: Option<Quantity>,
    /// Points along the face, leading edge to trailing edge or the other way round.
    pub points: Vec<FacePoint>,
    /// Chord, m.
    pub chord: Option<Quantity>,
    /// Leading edge from the blade's reference line, m, positive ahead of it.
    pub leading_edge: Option<Quantity>,
    /// Trailing edge from the blade's reference line, m, positive behind it.
    pub trailing_edge: Option<Quantity>,
    /// Largest thickness, m.
    pub thickness: Option<Quantity>,
    /// Axial position of the face on the reference line, m from a plane common to all blades, positive aft.
    pub track: Option<Quantity>,
    /// Drop of the cup's lip from the line of the face, m.
    pub cup_drop: Option<Quantity>,
    /// Length of the cup along the chord, m.
    pub cup_length: Option<Quantity>,
    /// Bytes in the file.
    pub at: Range<usize>,
}

/// One point on the face of a section.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FacePoint {
    /// Angle about the shaft, degrees.
    pub angle: Option<Quantity>,
    /// Place along the chord from the leading edge, 0 to 1.
    pub chord_fraction: Option<Quantity>,
    /// Height along the shaft, m.
    pub height: Option<Quantity>,
    /// Bytes in the file.
    pub at: Range<usize>,
}

/// One place of damage.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Damage {
    /// The blade's name.
    pub blade: Option<String>,
    /// Face or back.
    pub side: Option<BladeSide>,
    /// Radius over tip radius.
    pub radius_ratio: Option<Quantity>,
    /// Place along the chord from the leading edge, 0 to 1.
    pub chord_fraction: Option<Quantity>,
    /// What.
    pub kind: Option<DamageKind>,
    /// Depth, m.
    pub depth: Option<Quantity>,
    /// Anything else.
    pub notes: Option<String>,
    /// Bytes in the file.
    pub at: Range<usize>,
}

/// What the pitch was measured with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Tool {
    /// Swing-arm pitch gauge.
    SwingGauge,
    /// Pitch blocks.
    Blocks,
    /// Digital level on the face.
    DigitalLevel,
    /// Protractor on the face.
    Protractor,
    /// Steel rule, square and protractor on a table.
    Rule,
    /// Coordinate-measuring machine or arm.
    CoordinateMachine,
}

/// Where the leading edge lies, blade upright, seen from astern.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LeadingEdge {
    /// On the right: a right-hand propeller.
    Right,
    /// On the left: a left-hand propeller.
    Left,
}

/// Sound when the blade is tapped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Ring {
    /// Rings.
    Clear,
    /// Dull thud.
    Dull,
}

/// Colour of the scraped metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Colour {
    /// Even and bright.
    Bright,
    /// Pink or coppery in patches.
    PinkPatches,
    /// Pink or coppery all over.
    Pink,
}

/// Surface of the blades.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Surface {
    /// Polished.
    Polished,
    /// Smooth.
    Smooth,
    /// Dull, fine scratches.
    Dull,
    /// Pitted.
    Pitted,
    /// Rough all over.
    Rough,
}

/// Form of a trailing edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum EdgeForm {
    /// Round.
    Round,
    /// Square.
    Square,
    /// Bevelled on one side.
    Bevelled,
    /// Sharp.
    Sharp,
    /// Bent or torn.
    Torn,
}

/// Side of a blade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BladeSide {
    /// The pressure side, looking aft.
    Face,
    /// The suction side, looking forward.
    Back,
}

/// Kind of damage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DamageKind {
    /// Nick or dent in an edge.
    Nick,
    /// Bent blade or tip.
    Bend,
    /// Crack.
    Crack,
    /// Pits.
    Pits,
    /// Sponge-like erosion.
    Erosion,
    /// Soft pink metal.
    PinkMetal,
    /// Earlier weld.
    Weld,
    /// Metal gone.
    Missing,
    /// Ground or worn thin.
    Worn,
}
