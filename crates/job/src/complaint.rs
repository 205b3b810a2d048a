//! The complaint in words that can be weighed: symptoms, onset, smoke, side.

/// Something seen, heard or felt.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Symptom {
    /// Black smoke at steady high power.
    BlackSmoke,
    /// Black smoke only while accelerating.
    BlackSmokeAccelerating,
    /// White or grey smoke.
    WhiteSmoke,
    /// Overheats only when pushed.
    OverheatsPushed,
    /// Exhaust temperature high at full throttle.
    ExhaustHot,
    /// Exhaust temperature low at full throttle.
    ExhaustCool,
    /// Boost low at full throttle.
    BoostLow,
    /// The engine display shows less than full load at full throttle.
    LoadBelowFull,
    /// More fuel than it used to.
    MoreFuel,
    /// Slow to plane.
    SlowToPlane,
    /// Revs flare while speed dies, in turns or in a sea.
    RevsFlare,
    /// Vibration once a shaft turn.
    ShaftRate,
    /// Vibration at shaft rate times blades.
    BladeRate,
    /// Vibration that is there in neutral too.
    EngineRate,
    /// A pure tone over a narrow range of rpm.
    Singing,
    /// Gravel under the stern that grows with power.
    Gravel,
    /// Noise that goes when the boat is helped along by sail or tow.
    GoesWhenHelped,
    /// Back of the blades frosted or pitted, outer half.
    BackEaten,
    /// Leading edge eaten on the pressure face.
    FaceEaten,
    /// Growth seen on the blades.
    GrowthOnBlades,
    /// Growth seen on the bottom.
    GrowthOnBottom,
    /// Shaft hard to turn by hand, or gland hot.
    ShaftStiff,
    /// A blade bent or nicked.
    BladeBent,
    /// A blade missing.
    BladeMissing,
    /// A crack.
    Crack,
    /// Soft, pink, dull metal.
    PinkMetal,
    /// Loose on its taper.
    LooseOnTaper,
    /// Locking or split pin missing.
    LockingMissing,
    /// The difference followed the tachometer when the two were swapped.
    FollowsTachometer,
    /// The difference followed the propeller when the two were swapped.
    FollowsPropeller,
    /// The difference stayed with the engine when propellers were swapped.
    StaysWithEngine,
    /// Engine reaches its no-load speed in neutral.
    FreeRevsFine,
}

/// How it began.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Onset {
    /// From one trip to the next.
    Sudden,
    /// Over weeks or a season.
    Gradual,
    /// With another or a repaired propeller.
    WithPropeller,
    /// With another engine or gearbox.
    WithEngine,
    /// With work on instruments or alternator.
    WithInstruments,
    /// With more weight aboard.
    WithWeight,
    /// As long as anybody remembers.
    Always,
}

/// Smoke at a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Smoke {
    /// None.
    None,
    /// Black.
    Black,
    /// White or grey.
    White,
    /// Blue.
    Blue,
}

/// Which engine of a pair a reading belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Side {
    /// Port.
    Port,
    /// Starboard.
    Starboard,
}

/// What had been changed over between the sides of a pair when a reading was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Swapped {
    /// The tachometers, or their senders.
    Tachometers,
    /// The propellers.
    Propellers,
}
