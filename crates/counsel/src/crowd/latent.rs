//! What differs from one definite boat to the next: the list of drawn quantities.

macro_rules! latents {
    ($($(#[$doc:meta])* $name:ident = $word:literal, $measure:literal;)*) => {
        /// A drawn quantity; its position in a boat's row of draws.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        #[repr(usize)]
        pub enum Latent {
            $($(#[$doc])* $name,)*
        }

        impl Latent {
            /// All, in order.
            pub const ALL: &'static [Latent] = &[$(Latent::$name,)*];

            /// What a person calls it.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Latent::$name => $word,)* }
            }

            /// What would narrow it.
            #[must_use]
            pub const fn measure(self) -> &'static str {
                match self { $(Latent::$name => $measure,)* }
            }
        }
    };
}

latents! {
    /// m
    Length = "waterline length", "measure the waterline afloat";
    /// LWL/LOA
    LengthRatio = "waterline length from length overall", "measure the waterline afloat";
    /// kg
    Weight = "displacement", "weigh the boat: the lift at the next haul-out has a scale";
    /// m or factor
    Beam = "waterline beam", "measure the beam at the waterline";
    /// of waterline beam
    ChineRatio = "chine beam", "measure the beam over the chines";
    /// CP
    Prismatic = "prismatic coefficient", "take it from the lines plan";
    /// CM
    Midship = "midship coefficient", "take it from the lines plan";
    /// %
    Lcb = "centre of buoyancy", "take it from the lines plan";
    /// degrees
    Entrance = "angle of entrance", "take it from the lines plan";
    /// AT/AX
    Transom = "immersed transom", "measure the transom's immersion afloat";
    /// degrees
    Deadrise = "deadrise", "lay a level across the bottom ashore";
    /// of L
    Lcg = "centre of gravity", "find the balance point in the lifting slings";
    /// of L B
    Appendages = "keel and appendages", "measure keel, rudder and struts ashore";
    /// of B²
    Windage = "windage", "measure the face the boat shows to the wind";
    /// m
    HullRoughness = "growth on the bottom", "scrub the bottom and run again";
    /// normal
    HullErrorLow = "hull resistance at low speed (method's own error)", "run full throttle both ways by GPS";
    /// normal
    HullErrorHump = "hull resistance near hull speed (method's own error)", "run full throttle both ways by GPS";
    /// normal
    HullErrorHigh = "hull resistance at high speed (method's own error)", "run full throttle both ways by GPS";
    /// normal
    HullMethod = "choice of resistance method", "run full throttle both ways by GPS";
    /// °C
    WaterTemperature = "water temperature", "take the water temperature";
    /// °C
    AirTemperature = "air temperature at the engine", "take the air temperature at the intake";
    /// W
    Power = "rated power", "photograph the rating plate";
    /// rev/s
    RatedSpeed = "rated speed", "photograph the rating plate";
    /// ratio
    TopRatio = "governed no-load speed", "read the engine speed in neutral, full throttle, with an optical tachometer";
    /// ratio
    Condition = "power the engine still gives", "have exhaust temperature and boost read at full throttle";
    /// normal
    EngineShape = "shape of the full-throttle curve", "get the maker's power curve";
    /// ratio
    Reduction = "reduction", "read engine and shaft with an optical tachometer";
    /// normal
    DriveLoss = "losses of gear and bearings", "none: small";
    /// share
    ShaftDrag = "drag in bearing or gland", "turn the shaft by hand, feel gland and bearing";
    /// degrees
    ShaftAngle = "shaft angle", "lay a level on the shaft";
    /// m
    Diameter = "diameter", "measure the radius to each tip and double it";
    /// m
    Pitch = "pitch", "measure the pitch of every blade: the stamp is often wrong";
    /// ratio
    AreaRatio = "blade area", "trace a blade, or measure its width at three radii";
    /// share
    FlatShare = "blade sections", "look whether the pressure face is flat";
    /// of pitch
    Cup = "cup", "lay a straight edge on the trailing edge";
    /// m
    BladeRoughness = "growth on the blades", "clean the blades and run again";
    /// m
    Immersion = "depth of the shaft", "measure the shaft's depth below the water";
    /// normal
    ThrustError = "thrust of the series (its own error)", "run full throttle both ways by GPS";
    /// normal
    TorqueError = "torque of the series (its own error)", "read full-throttle engine speed with an optical tachometer";
    /// factor
    CavitationHold = "how long the blades hold when cavitating", "run full throttle both ways by GPS";
    /// w
    Wake = "wake", "run at part throttle both ways by GPS";
    /// t
    ThrustDeduction = "thrust deduction", "run at part throttle both ways by GPS";
    /// ηR
    RelativeRotative = "relative rotative efficiency", "none: small";
    /// kg/J
    Consumption = "specific fuel consumption", "meter the fuel over an hour at steady speed";
    /// normal
    Tachometer = "the engine's tachometer", "prove the tachometer with an optical one";
    /// normal
    SpeedInstrument = "the speed instrument", "take the speed both ways by GPS";
    /// factor
    OtherPitch = "true pitch of another propeller against its mark", "have the new propeller measured on arrival";
    /// factor
    OtherArea = "blade area of another propeller", "state the blade area in the order";
}

/// Number of drawn quantities.
pub const COUNT: usize = Latent::ALL.len();
