//! Geometry of definite and measured blades.
//!
//! **Axes.** `x` along the shaft, positive forward (the way the boat goes); `z` up; `y` to port; right-handed. Seen from
//! astern (looking forward) starboard is on the right. An angle `θ` is counted from `z`, positive clockwise seen from
//! astern, so a point at radius `r` stands at `y = -r sin θ`, `z = r cos θ`. A right-handed propeller turns clockwise
//! seen from astern going ahead: its leading edge is the one on the right of an upright blade.
//!
//! **On a blade.** The *pitch line* of a section is the helix of its face line (for airfoil tables: of its nose-tail
//! line), `tan φ = P/(2πr)`. Distances along it are counted from the *reference line* (generator): `leading` to the
//! leading edge, `trailing` to the trailing edge. **Rake** is the axial position of the pitch line where it crosses the
//! reference line, positive **aft**. **Skew** is positive toward the trailing edge, against the rotation. Ordinates of
//! face and back stand square on the pitch line, positive toward the back (the forward, suction side).
//!
//! These are the usual senses of ITTC and ISO 3715; where tables differ (skew-induced rake in or out of the rake
//! column) the caller must say which: here the section slides along its helix, so skew brings its own axial shift and
//! `rake` does not hold it.
//!
//! | file | what |
//! |---|---|
//! | [`Section`], [`Blade`], [`Propeller`] | the thing itself |
//! | [`Readings`], [`reduce`] | from what was measured to a [`Measured`] propeller with spreads |
//! | [`PitchTable`], [`effective_pitch`] | local, sectional, blade, propeller pitch; the pitch that acts |
//! | [`areas`], [`Outline`] | expanded, developed, projected |
//! | [`skew`], [`rake`], [`thickness_fraction`] | angles and ratios |
//! | [`Mesh`], [`blade_mesh`], [`hub_mesh`] | closed triangle surface |
//! | [`mass_properties`], [`shaft_rate`] | weight, inertia, static and hydrodynamic unbalance |
//! | [`trace`] | outline from a photograph |
//! | [`b_series`], [`flat_faced`] | systematic blades |

use crate::source::Method;

mod angles;
mod b_series;
mod b_tables;
mod check;
mod estimate;
mod fill;
mod flat_faced;
mod form;
mod mass;
mod measured;
mod mesh;
mod outline;
mod photo;
mod pitch;
mod propeller;
mod reading;
mod reduce;
mod section;
mod shape;
mod solid;
mod spline;
mod survey;
mod tip;
mod trouble;
mod unbalance;

pub use angles::{Rake, Skew, rake, skew, thickness_fraction};
pub use b_series::{BSeries, b_series};
pub use estimate::Estimate;
pub use flat_faced::{FlatFaced, Width, flat_faced};
pub use form::Form;
pub use mass::{Alloy, MassProperties, mass_properties};
pub use measured::{Assumed, AssumedWhat, Measured, SectionSpread};
pub use mesh::{Mesh, Moments};
pub use outline::{
    Areas, BladeAreas, Outline, areas, blade_areas, developed_area, developed_outline, expanded_area, expanded_outline,
    projected_outline, taylor_projected,
};
pub use photo::{Photo, Traced, trace};
pub use pitch::{BladePitch, Chordwise, LocalPitch, PitchTable, Radial, SectionPitch, effective_pitch, pitch_weight};
pub use propeller::{Blade, Cup, EdgeForm, Hand, Hub, Propeller};
pub use reading::{
    FacePoint, PitchReading, ReducedPitch, pitch_of_arc, pitch_of_chord, pitch_of_face_angle, pitch_of_points,
};
pub use reduce::reduce;
pub use section::{Offset, Section};
pub use shape::{Cut, Shape};
pub use solid::{Fineness, blade_mesh, hub_mesh, propeller_mesh};
pub use survey::{BladeReading, Readings, Station};
pub use trouble::{Quantity, Trouble};
pub use unbalance::{BladeLoad, ShaftRate, shaft_rate};

/// Methods of this room.
pub const METHODS: &[&Method] = &[
    &reading::METHOD,
    &pitch::METHOD_MEANS,
    &pitch::METHOD_EFFECTIVE,
    &outline::METHOD,
    &outline::METHOD_TAYLOR,
    &angles::METHOD,
    &mass::METHOD,
    &unbalance::METHOD,
    &photo::METHOD,
    &b_series::METHOD,
    &flat_faced::METHOD,
];
