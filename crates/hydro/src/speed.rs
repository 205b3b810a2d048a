//! Engine speed and shaft speed: two speeds that must not be mixed up, since the reduction lies between them.

macro_rules! rotation {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(
            /// Revolutions per second.
            pub f64,
        );

        impl $name {
            /// From revolutions per minute.
            #[must_use]
            pub const fn from_rpm(rpm: f64) -> Self {
                Self(rpm / 60.0)
            }

            /// In revolutions per minute.
            #[must_use]
            pub const fn rpm(self) -> f64 {
                self.0 * 60.0
            }

            /// In radians per second.
            #[must_use]
            pub const fn angular(self) -> f64 {
                self.0 * std::f64::consts::TAU
            }
        }
    };
}

rotation! {
    /// Speed of the engine's crankshaft.
    EngineSpeed
}
rotation! {
    /// Speed of the propeller shaft.
    ShaftSpeed
}
