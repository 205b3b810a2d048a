//! Hull resistance: one file per method, and the choice between them.

use crate::source::Method;

pub mod air;
pub mod appendages;
pub mod curve;
pub mod delft;
pub mod depth;
pub mod error;
pub mod form;
pub mod friction;
pub mod handbook;
pub mod holtrop;
mod interpolate;
pub mod measured;
pub mod preplaning;
mod rough_line;
pub mod roughness;
pub mod savitsky;
pub mod shape;
pub mod spray;
pub mod total;

pub use curve::Curve;
pub use form::{Form, Kind, Parts};
pub use shape::Shape;
pub use total::{Hull, total, with_handbook};

/// Methods of this room.
pub const METHODS: &[&Method] = &[
    &friction::METHOD,
    &friction::METHOD_SCHOENHERR,
    &roughness::METHOD,
    &roughness::METHOD_GRADES,
    &roughness::METHOD_GROWTH,
    &roughness::METHOD_BLADES,
    &holtrop::METHOD_1982,
    &holtrop::METHOD_1984,
    &delft::METHOD_1981,
    &delft::METHOD_1998,
    &delft::METHOD_2008,
    &handbook::METHOD_GERR,
    &handbook::METHOD_CROUCH,
    &handbook::METHOD_MAX_SL,
    &measured::METHOD,
    &depth::METHOD,
    &error::METHOD,
    &preplaning::METHOD,
    &savitsky::METHOD,
    &savitsky::METHOD_HUMP,
    &savitsky::METHOD_FLAP,
    &savitsky::METHOD_PORPOISING,
    &spray::METHOD,
    &air::METHOD,
    &appendages::METHOD,
    &appendages::METHOD_FACTOR,
    &appendages::METHOD_LOWER_UNIT,
    &total::METHOD,
];
