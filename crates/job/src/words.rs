//! The words a job file uses for the choices of the model, in both directions.

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
