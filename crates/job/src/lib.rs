//! What was said about a boat: the job file, its units, spreads and sources, and the assumptions for what was not said.
//!
//! This crate reads and checks job files (TOML) and saves them without disturbing comments or order. It knows nothing
//! of physics. All quantities are SI; every quantity carries an 80 % band (8 chances in 10 of lying inside) and a source.

pub mod assume;
pub mod model;
pub mod quantity;

pub use model::*;
pub use quantity::{Dimension, Quantity, Source};
