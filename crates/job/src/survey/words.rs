//! The words a survey uses for its choices.

use super::model::*;
use crate::words::{Word, words};

words! { Tool:
    SwingGauge = "swing gauge", "swing-arm pitch gauge: rise over an arc";
    Blocks = "blocks", "pitch blocks";
    DigitalLevel = "digital level", "digital level laid on the face, shaft vertical";
    Protractor = "protractor", "protractor or bevel on the face";
    Rule = "rule", "steel rule, square and protractor on a table";
    CoordinateMachine = "coordinate machine", "coordinate-measuring machine or arm";
}
words! { LeadingEdge:
    Right = "right", "on the right: a right-hand propeller";
    Left = "left", "on the left: a left-hand propeller";
}
words! { Ring:
    Clear = "clear", "rings";
    Dull = "dull", "a dull thud";
}
words! { Colour:
    Bright = "bright", "even and bright";
    PinkPatches = "pink patches", "pink or coppery in patches";
    Pink = "pink", "pink or coppery all over";
}
words! { Surface:
    Polished = "polished", "polished";
    Smooth = "smooth", "smooth to the finger nail";
    Dull = "dull", "dull, fine scratches";
    Pitted = "pitted", "pitted";
    Rough = "rough", "rough all over";
}
words! { EdgeForm:
    Round = "round", "round";
    Square = "square", "square";
    Bevelled = "bevelled", "bevelled on one side";
    Sharp = "sharp", "sharp";
    Torn = "torn", "bent or torn";
}
words! { BladeSide:
    Face = "face", "the pressure side, looking aft";
    Back = "back", "the suction side, looking forward";
}
words! { DamageKind:
    Nick = "nick", "nick or dent in an edge";
    Bend = "bend", "bent blade or tip";
    Crack = "crack", "crack";
    Pits = "pits", "pits";
    Erosion = "erosion", "sponge-like erosion";
    PinkMetal = "pink metal", "soft pink metal";
    Weld = "weld", "an earlier weld";
    Missing = "missing", "metal gone";
    Worn = "worn", "ground or worn thin";
}
