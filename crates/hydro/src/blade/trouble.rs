//! Why readings do not make a propeller.

/// A quantity a survey states.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Radius of a station or of the tip.
    Radius,
    /// A pitch reading.
    Pitch,
    /// Chord along the pitch line.
    Chord,
    /// Distance of the leading edge from the reference line.
    Leading,
    /// Distance of the trailing edge from the reference line.
    Trailing,
    /// Greatest thickness.
    Thickness,
    /// Axial position of the reference line (track, rake).
    Track,
    /// Angular position of the blade.
    Angle,
    /// Hub or bore.
    Hub,
    /// Outline on a photograph.
    Outline,
}

impl Quantity {
    /// What a person reads.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Quantity::Radius => "radius",
            Quantity::Pitch => "pitch",
            Quantity::Chord => "chord",
            Quantity::Leading => "leading edge from the reference line",
            Quantity::Trailing => "trailing edge from the reference line",
            Quantity::Thickness => "thickness",
            Quantity::Track => "track",
            Quantity::Angle => "angular position",
            Quantity::Hub => "hub",
            Quantity::Outline => "outline",
        }
    }
}

/// Why readings cannot be reduced. Blades and stations are counted from 0.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Trouble {
    /// No blade was measured, or more than can be.
    BladeCount(usize),
    /// Fewer than two stations on every blade.
    TooFewStations {
        /// Blade.
        blade: usize,
    },
    /// The radii of a blade do not rise.
    RadiiOutOfOrder {
        /// Blade.
        blade: usize,
        /// First station whose radius is not above the one before.
        station: usize,
    },
    /// A station at or beyond the tip, or inside the hub.
    RadiusOutside {
        /// Blade.
        blade: usize,
        /// Station.
        station: usize,
    },
    /// No tip radius on any blade.
    NoTipRadius,
    /// A value that must be positive and finite is not.
    NotPositive {
        /// Blade.
        blade: usize,
        /// Station, `None` for a value of the whole blade.
        station: Option<usize>,
        /// Which.
        quantity: Quantity,
        /// The value.
        value: f64,
    },
    /// No blade has the quantity at two stations or more, so no blade can be drawn.
    Unknown(Quantity),
    /// A quantity lies where no propeller's can (a face angle of 90°, an arc of 0°, a blade wider than its circle).
    Impossible {
        /// Blade.
        blade: usize,
        /// Station, `None` for a value of the whole blade.
        station: Option<usize>,
        /// Which.
        quantity: Quantity,
        /// The value.
        value: f64,
    },
}
