//! A change to try on the crowd.

/// What is to be changed; `None` leaves it. SI.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Change {
    /// Diameter, m.
    pub diameter: Option<f64>,
    /// Face pitch, m.
    pub pitch: Option<f64>,
    /// Number of blades.
    pub blades: Option<u8>,
    /// Expanded area ratio.
    pub area_ratio: Option<f64>,
    /// Cup.
    pub cup: Option<job::Cup>,
    /// Reduction.
    pub reduction: Option<f64>,
    /// Mass, kg.
    pub displacement: Option<f64>,
    /// State of the bottom.
    pub hull_growth: Option<job::Growth>,
    /// State of the blades.
    pub blade_growth: Option<job::Growth>,
}

impl Change {
    /// Whether nothing is to be changed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Change::default()
    }
}
