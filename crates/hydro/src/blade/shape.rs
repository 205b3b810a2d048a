//! A blade between its sections.

/// A blade interpolated over the radius, ready to be asked at any radius.
#[derive(Clone, Debug)]
pub struct Shape {}
