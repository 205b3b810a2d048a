//! The words of what surrounds the propeller.

use super::model::*;
use crate::words::{Word, words};

words! { Exhaust:
    Hub = "hub", "through the hub";
    UnderWater = "under water", "under the boat, not through the hub";
    AboveWater = "above water", "through transom or side";
}
words! { TaperRatio:
    Ten = "1:10", "one in ten (ISO 4566)";
    Twelve = "1:12", "one in twelve";
    Sixteen = "1:16", "one in sixteen, 3/4 in to the foot (SAE J755, ISO 8845)";
    Twenty = "1:20", "one in twenty";
}
words! { Turning:
    Right = "right", "clockwise, seen from astern";
    Left = "left", "anticlockwise, seen from astern";
}
words! { Gearing:
    Same = "same", "the output turns as the engine";
    Opposite = "opposite", "the output turns against the engine";
}
words! { Freewheel:
    Allowed = "allowed", "may turn freely under sail or tow";
    Forbidden = "forbidden", "must not turn with the engine stopped";
    InGear = "in gear", "to be held in gear";
}
words! { AccuracyClass:
    S = "S", "very high accuracy";
    I = "I", "high accuracy";
    II = "II", "medium accuracy";
    III = "III", "wide tolerances";
}
words! { NutOrder:
    ThinFirst = "thin first", "half nut against the hub, full nut behind";
    ThickFirst = "thick first", "full nut against the hub, half nut behind";
}
