//! Hull resistance: one file per method, and the choice between them.

use crate::source::Method;

pub mod curve;
pub mod form;

pub use curve::Curve;
pub use form::{Form, Kind, Parts};

/// Methods of this room.
pub const METHODS: &[&Method] = &[];
