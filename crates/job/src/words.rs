//! The words a job file uses for the choices of the model, in both directions.

use crate::complaint::*;
use crate::model::*;
use crate::quantity::Source;

/// A choice that is written as one of a few words.
pub trait Word: Copy + PartialEq + 'static {
    /// Every choice, in the order of [`Word::WORDS`].
    const ALL: &'static [Self];
    /// Each choice's word in a job file and what it means.
    const WORDS: &'static [(&'static str, &'static str)];

    /// The word for this choice.
    fn word(self) -> &'static str {
        Self::ALL.iter().zip(Self::WORDS).find(|(choice, _)| **choice == self).map_or("", |(_, (word, _))| word)
    }

    /// The choice for a word.
    fn from_word(word: &str) -> Option<Self> {
        Self::ALL.iter().zip(Self::WORDS).find(|(_, (w, _))| *w == word).map(|(choice, _)| *choice)
    }
}

macro_rules! words {
    ($choice:ident: $($variant:ident = $word:literal, $means:literal;)+) => {
        impl Word for $choice {
            const ALL: &'static [Self] = &[$($choice::$variant),+];
            const WORDS: &'static [(&'static str, &'static str)] = &[$(($word, $means)),+];
        }
    };
}
pub(crate) use words;

words! { Duty:
    TopSpeed = "top speed", "the highest speed";
    Cruise = "cruise", "the least fuel at a working speed";
    Tow = "tow", "pulling or pushing at low speed";
    Mixed = "mixed", "a bit of everything";
}
words! { Kind:
    Displacement = "displacement", "stays in displacement motion";
    Sailing = "sailing", "sailing yacht under power";
    SemiDisplacement = "semi-displacement", "driven past hull speed without planing cleanly";
    Planing = "planing", "planes";
}
words! { Arrangement:
    Aperture = "aperture", "in the aperture of a long keel or deadwood";
    FinKeelStrut = "fin keel and strut", "fin keel, shaft carried by a strut";
    Skeg = "skeg", "behind a skeg";
    Saildrive = "saildrive", "saildrive leg";
    Outboard = "outboard", "outboard leg";
    Sterndrive = "sterndrive", "sterndrive leg";
    InclinedShaft = "inclined shaft", "inclined shaft under a planing or semi-displacement hull";
    Tunnel = "tunnel", "in a tunnel of the bottom";
}
words! { Growth:
    Clean = "clean", "clean and smooth";
    LightSlime = "light slime", "light slime";
    HeavySlime = "heavy slime", "heavy slime";
    SmallShell = "small shell", "small shell or weed";
    MediumShell = "medium shell", "medium shell";
    HeavyShell = "heavy shell", "heavy shell";
}
words! { EngineKind:
    NaturalDiesel = "natural diesel", "diesel without turbocharger";
    TurboDiesel = "turbo diesel", "turbocharged diesel";
    Petrol = "petrol", "petrol inboard";
    Outboard = "outboard", "petrol outboard";
    Electric = "electric", "electric motor";
}
words! { PowerAt:
    Crankshaft = "crankshaft", "at the crankshaft, before the gearbox";
    PropellerShaft = "propeller shaft", "at the propeller shaft, behind the gearbox";
}
words! { Rating:
    Pleasure = "pleasure", "pleasure craft, full power for short times";
    LightDuty = "light duty", "light commercial";
    MediumDuty = "medium duty", "medium continuous";
    Continuous = "continuous", "full power without limit of time";
}
words! { Hand:
    Right = "right", "clockwise going ahead, seen from astern";
    Left = "left", "anticlockwise going ahead, seen from astern";
    Pair = "pair", "two propellers that turn opposite ways";
}
words! { Section:
    Airfoil = "airfoil", "airfoil sections";
    FlatFaced = "flat-faced", "flat face, round back";
    Ducted = "ducted", "broad-tipped blades in a nozzle";
}
words! { Width:
    Narrow = "narrow", "narrow blades";
    Ordinary = "ordinary", "ordinary blades";
    Wide = "wide", "wide blades";
}
words! { Blades:
    Fixed = "fixed", "fixed blades";
    Folding = "folding", "folding blades";
    Feathering = "feathering", "feathering blades";
}
words! { Cup:
    None = "none", "no cup";
    Light = "light", "light cup";
    Medium = "medium", "medium cup";
    Heavy = "heavy", "heavy cup";
}
words! { Source:
    Plate = "plate", "maker's rating plate";
    Sheet = "sheet", "maker's data sheet or manual";
    Brochure = "brochure", "sales brochure or class listing";
    Weighed = "weighed", "lifted on a scale";
    Measured = "measured", "measured with a proper tool";
    Stamp = "stamp", "stamped on the propeller hub";
    Dashboard = "dashboard", "the boat's own instrument panel";
    Optical = "optical", "optical tachometer or strobe";
    Gps = "gps", "satellite speed";
    Log = "log", "paddle-wheel or towed log";
    Display = "display", "electronic engine display";
    Memory = "memory", "somebody remembers";
    Estimate = "estimate", "an estimate";
    Published = "published", "published test or survey by somebody else";
}

/// Water: sea or fresh (the model keeps a yes or no).
pub const WATERS: &[(&str, &str)] = &[("sea", "salt water"), ("fresh", "fresh water: river, lake")];

words! { Onset:
    Sudden = "sudden", "from one trip to the next";
    Gradual = "gradual", "over weeks or a season";
    WithPropeller = "with the propeller", "with another or a repaired propeller";
    WithEngine = "with the engine", "with another engine or gearbox";
    WithInstruments = "with the instruments", "with work on instruments or alternator";
    WithWeight = "with weight", "with more weight aboard";
    Always = "always", "as long as anybody remembers";
}
words! { Smoke:
    None = "none", "no smoke";
    Black = "black", "black: fuel without air enough";
    White = "white", "white or grey: unburnt fuel or steam";
    Blue = "blue", "blue: oil";
}
words! { Side:
    Port = "port", "the port engine of a pair";
    Starboard = "starboard", "the starboard engine of a pair";
}
words! { Swapped:
    Tachometers = "tachometers", "each side's engine speed was read on the other side's instrument";
    Propellers = "propellers", "each side ran with the other side's propeller; only where both have the same hand";
}
words! { Symptom:
    BlackSmoke = "black smoke", "at steady high power";
    BlackSmokeAccelerating = "black smoke accelerating", "only while accelerating";
    WhiteSmoke = "white smoke", "white or grey";
    OverheatsPushed = "overheats when pushed", "coolant rises only at high power";
    ExhaustHot = "exhaust hot", "exhaust temperature above the maker's at full throttle";
    ExhaustCool = "exhaust cool", "exhaust temperature below the maker's at full throttle";
    BoostLow = "boost low", "boost below the maker's at full throttle";
    LoadBelowFull = "load below full", "the engine display shows less than full load at full throttle";
    MoreFuel = "more fuel", "burns more than it used to";
    SlowToPlane = "slow to plane", "takes long to plane, or will not";
    RevsFlare = "revs flare", "revs rise while speed dies, in turns or in a sea";
    ShaftRate = "shaft-rate vibration", "shakes once a turn of the shaft";
    BladeRate = "blade-rate vibration", "shakes at shaft rate times blades";
    EngineRate = "engine-rate vibration", "there in neutral too";
    Singing = "singing", "a pure tone over a narrow range of rpm";
    Gravel = "gravel", "crackle under the stern that grows with power";
    GoesWhenHelped = "goes when helped", "the noise goes when sail or tow takes part of the load";
    BackEaten = "back eaten", "suction side frosted or pitted, outer half";
    FaceEaten = "face eaten", "leading edge eaten on the pressure face";
    GrowthOnBlades = "growth on the blades", "seen by a diver or ashore";
    GrowthOnBottom = "growth on the bottom", "seen by a diver or ashore";
    ShaftStiff = "shaft stiff", "hard to turn by hand, or a hot gland";
    BladeBent = "blade bent", "bent, nicked or short";
    BladeMissing = "blade missing", "one blade gone";
    Crack = "crack", "a crack, or a dead ring";
    PinkMetal = "pink metal", "soft, pink, dull metal";
    LooseOnTaper = "loose on taper", "the propeller moves on its shaft";
    LockingMissing = "locking missing", "nut not locked, split pin missing";
    FollowsTachometer = "follows the tachometer", "the difference went over when the tachometers were swapped";
    FollowsPropeller = "follows the propeller", "the difference went over when the propellers were swapped";
    StaysWithEngine = "stays with the engine", "the difference stayed when propellers or tachometers were swapped";
    FreeRevsFine = "free revs fine", "no-load speed is reached in neutral";
}
