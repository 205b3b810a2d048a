//! Blades on a hub.

use super::section::Section;
use std::f64::consts::TAU;

/// Which way a propeller turns going ahead, seen from astern looking forward.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Hand {
    /// Clockwise; the leading edge is on the right of an upright blade.
    Right,
    /// Anticlockwise; the leading edge is on the left of an upright blade.
    Left,
}

impl Hand {
    /// +1 right, -1 left: the factor from an angle in the sense of rotation to one clockwise seen from astern.
    #[must_use]
    pub const fn sign(self) -> f64 {
        match self {
            Hand::Right => 1.0,
            Hand::Left => -1.0,
        }
    }

    /// From which edge leads, that is, which edge of an upright blade seen from astern lies farther forward (away from the
    /// eye). Common practice, no source; it follows from the helix.
    #[must_use]
    pub const fn from_leading_edge(on_the_right: bool) -> Hand {
        if on_the_right { Hand::Right } else { Hand::Left }
    }
}

/// How an edge is finished.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum EdgeForm {
    /// Not looked at.
    #[default]
    Unknown,
    /// Rounded.
    Round,
    /// Faired to a thin edge.
    Sharp,
    /// Square.
    Square,
    /// Bevelled against singing.
    Bevelled,
    /// Knocked about: nicked, rolled, bent.
    Damaged,
}

/// A cup as measured: the lip at the trailing edge. It is not in the ordinates of the sections.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cup {
    /// Drop of the edge below the face line, m.
    pub drop: f64,
    /// Length along the chord, m.
    pub length: f64,
    /// Innermost radius, m.
    pub from: f64,
    /// Outermost radius, m.
    pub to: f64,
}

/// One blade.
#[derive(Clone, Debug, PartialEq)]
pub struct Blade {
    /// Sections, radius rising. At least two; the last may stand at the tip with a chord of 0 or more.
    pub sections: Vec<Section>,
    /// Radius of the tip, m.
    pub tip_radius: f64,
    /// Leading edge.
    pub leading_edge: EdgeForm,
    /// Trailing edge.
    pub trailing_edge: EdgeForm,
    /// Cup, if there is one.
    pub cup: Option<Cup>,
}

/// The hub: a frustum with a tapered bore, coaxial with the shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hub {
    /// Axial position of the forward end, m, positive forward of the plane the rakes are counted from.
    pub forward: f64,
    /// Length, m.
    pub length: f64,
    /// Diameter at the forward end, m.
    pub fore_diameter: f64,
    /// Diameter at the after end, m.
    pub aft_diameter: f64,
    /// Bore at the forward end (the large end of a taper on an ordinary shaft), m.
    pub bore_fore: f64,
    /// Bore at the after end, m.
    pub bore_aft: f64,
}

impl Hub {
    /// A plain cylinder with a straight bore, amidships of the reference plane.
    #[must_use]
    pub const fn cylinder(diameter: f64, length: f64, bore: f64) -> Hub {
        Hub {
            forward: 0.5 * length,
            length,
            fore_diameter: diameter,
            aft_diameter: diameter,
            bore_fore: bore,
            bore_aft: bore,
        }
    }

    /// Mean outside radius, m.
    #[must_use]
    pub fn radius(&self) -> f64 {
        0.25 * (self.fore_diameter + self.aft_diameter)
    }

    /// Outside radius at an axial position (positive forward), m; held at the ends beyond them.
    #[must_use]
    pub fn radius_at(&self, x: f64) -> f64 {
        if self.length <= 0.0 {
            return self.radius();
        }
        let share = ((self.forward - x) / self.length).clamp(0.0, 1.0);
        0.5 * (self.fore_diameter + share * (self.aft_diameter - self.fore_diameter))
    }
}

/// A propeller. Blades may differ.
#[derive(Clone, Debug, PartialEq)]
pub struct Propeller {
    /// Blades, in the sense of rotation.
    pub blades: Vec<Blade>,
    /// Angle of each blade's reference line in the sense of rotation from upright, rad; as many as blades.
    pub angles: Vec<f64>,
    /// Hand.
    pub hand: Hand,
    /// Hub.
    pub hub: Hub,
}

impl Propeller {
    /// `count` equal blades, evenly spaced, the first upright.
    #[must_use]
    pub fn even(blade: &Blade, count: u8, hand: Hand, hub: Hub) -> Propeller {
        Propeller {
            blades: vec![blade.clone(); usize::from(count)],
            angles: (0..count).map(|i| TAU * f64::from(i) / f64::from(count)).collect(),
            hand,
            hub,
        }
    }

    /// Diameter `D`, m: twice the mean tip radius. (Never tip to tip: an odd number of blades has no opposite tips.)
    #[must_use]
    pub fn diameter(&self) -> f64 {
        if self.blades.is_empty() {
            return 0.0;
        }
        2.0 * self.blades.iter().map(|b| b.tip_radius).sum::<f64>() / self.count()
    }

    /// Number of blades as a number.
    #[must_use]
    pub fn count(&self) -> f64 {
        self.blades.iter().map(|_| 1.0).sum()
    }
}
