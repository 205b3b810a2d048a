//! The survey of a propeller out of the water: what was measured on blades and hub, with which tool.
//!
//! Kept as it was measured; the pitches, areas and classes that follow from it are another room's work.

mod assemble;
mod check;
pub mod csv;
mod doubts;
pub mod keys;
mod model;
pub mod outline;
mod shape_doubts;
mod spread;
mod words;
mod write;

pub(crate) use assemble::survey as assembled;
pub use check::find_problems;
pub use model::*;
pub use spread::{Route, Row, SURVEY_SPREADS, spread_of};
pub(crate) use write::survey as write_survey;
