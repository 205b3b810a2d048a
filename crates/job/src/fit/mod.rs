//! What surrounds the propeller: the stern, the shaft, how it went on, what is ordered and what arrived.

pub(crate) mod assemble;
pub mod keys;
mod model;
mod words;
pub(crate) mod write;

pub use model::*;
