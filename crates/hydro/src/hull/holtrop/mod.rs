//! Resistance of displacement hulls by the regressions of Holtrop & Mennen 1982 and Holtrop 1984.
//!
//! Made from ship models: trawlers, coasters, tugs, cargo and container ships, in 1984 fast round-bilge hulls too. For a
//! small boat every part is an extrapolation in size and often in proportions; the notes say so.

pub mod factors;
pub mod shape;
pub mod wave;

pub use factors::{Factors, Stern};
pub use wave::Bulb;

use super::form::{Form, Parts};
use super::friction::ittc57_at;
use super::roughness::{PAINTED, added_friction_at};
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use crate::water::{GRAVITY, Water};

/// The 1982 method.
pub const METHOD_1982: Method = Method {
    name: "holtrop-mennen-1982",
    quantity: "resistance of a displacement hull, N; wake, thrust deduction and relative rotative efficiency",
    formula: "R = RF (1+k1) + RAPP + RW + RB + RTR + RA",
    range: "CP 0.55..0.85, L/B 3.9..9.5, B/T 2.1..4.0, Fn below 0.38 (full hulls) to 0.45 (slender)",
    error: "reproduces every printed item of the paper's ship; as a bare hull 13 % to 20 % below 17 yacht models with keel and rudder (Fn 0.2 .. 0.45), within 10 % of the Delft 2008 bare hull at Fn 0.45 .. 0.55",
    source: "J. Holtrop and G. G. J. Mennen 1982, An approximate power prediction method, Int. Shipbuilding Progress \
             29(335), 166-170; coefficients recalled and confirmed by the printed example",
    trust: Trust::Checked,
};

/// The 1984 re-analysis.
pub const METHOD_1984: Method = Method {
    name: "holtrop-1984",
    quantity: "resistance of a displacement hull, N",
    formula: "as 1982, with new form factor, wave exponent, and a second range from Fn 0.55; straight between 0.40 and 0.55",
    range: "CP 0.55..0.85, L/B 3.9..15, B/T 2.1..4.0, Fn to about 1",
    error: "as 1982 on boats to Fn 0.40; from there it falls to half of the Delft 2008 bare hull (a boat is far beamier than the fast hulls behind it): use 1982; no printed example was found to hold the 1984 items against",
    source: "J. Holtrop 1984, A statistical re-analysis of resistance and propulsion data, Int. Shipbuilding Progress \
             31(363), 272-276; form factor seen in two public copies, the rest recalled",
    trust: Trust::OneCopy,
};

/// What covers the roughness of the hull.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Allowance {
    /// The papers' `CA`, plus what the hull's `ks` adds beyond fresh paint. For ships.
    Published,
    /// The similarity shift with the hull's own `ks`, no `CA`. For boats: the papers' `CA` grows to 0.0008 at 10 m only
    /// because a curve fitted to ships is followed down there.
    Sand,
}

/// What [`Form`] does not hold; the default suits a small boat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extras {
    /// Bulb at the bow.
    pub bulb: Bulb,
    /// Draught at the forward perpendicular, m; `None`: the mean draught.
    pub draught_forward: Option<f64>,
    /// Stern shape `Cstern`: -25 pram with gondola, -10 V sections, 0 normal, +10 U sections with Hogner stern.
    pub stern: f64,
    /// Diameter of a bow-thruster tunnel, m; zero for none.
    pub thruster_diameter: f64,
    /// `CBTO` of the tunnel: 0.003 (well faired, in the flat of the side) .. 0.012.
    pub thruster_factor: f64,
    /// What covers roughness.
    pub allowance: Allowance,
}

impl Default for Extras {
    fn default() -> Extras {
        Extras {
            bulb: Bulb::default(),
            draught_forward: None,
            stern: 0.0,
            thruster_diameter: 0.0,
            thruster_factor: 0.006,
            allowance: Allowance::Sand,
        }
    }
}

/// Which of the two papers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Year {
    Y1982,
    Y1984,
}

/// A hull with everything that does not hang on speed worked out, so that a curve costs little.
#[derive(Clone, Copy, Debug)]
pub struct Prepared {
    year: Year,
    length: f64,
    density: f64,
    viscosity: f64,
    wetted: f64,
    appendages: f64,
    appendage_factor: f64,
    k1: f64,
    prismatic: f64,
    /// `c1 c2 c5 ∇ ρ g` and, from 1984, `c17 c2 c5 ∇ ρ g`, N.
    low: f64,
    high: f64,
    m1: f64,
    m3: f64,
    c15: f64,
    lambda: f64,
    wave_040: f64,
    wave_055: f64,
    bulb: Bulb,
    draught_forward: f64,
    transom_area: f64,
    transom_scale: f64,
    thruster: f64,
    allowance: f64,
    sand: Allowance,
    roughness: f64,
    /// `L³/∇` below 512, where `c15` stops following the hull.
    stout: bool,
    notes: Notes,
}

/// Ends of the straight piece between the two wave formulas of 1984.
const LOW_END: f64 = 0.40;
const HIGH_START: f64 = 0.55;
/// Below this Froude number waves are left out (they are below 1e-6 of the weight).
const NO_WAVES: f64 = 0.05;

impl Prepared {
    /// Works a hull out by the 1982 paper.
    #[must_use]
    pub fn new_1982(form: &Form, water: &Water, extras: &Extras) -> Prepared {
        Prepared::new(Year::Y1982, form, water, extras)
    }

    /// Works a hull out by the 1984 paper.
    #[must_use]
    pub fn new_1984(form: &Form, water: &Water, extras: &Extras) -> Prepared {
        Prepared::new(Year::Y1984, form, water, extras)
    }

    fn new(year: Year, form: &Form, water: &Water, extras: &Extras) -> Prepared {
        let (length, beam, draught) = (form.length.max(0.5), form.beam.max(0.1), form.draught.max(0.05));
        let volume = (form.mass / water.density).max(1e-3);
        let block = (volume / (length * beam * draught)).clamp(0.05, 1.0);
        let prismatic = form.prismatic.clamp(0.35, 0.93);
        let midship = form.midship.clamp(0.2, 1.0);
        let lcb = form.lcb_percent.clamp(-15.0, 10.0);
        let forward = extras.draught_forward.unwrap_or(draught).max(0.05);
        let slender = length * length * length / volume;
        let c2 = wave::c2(wave::c3(extras.bulb.area, extras.bulb.height, beam, draught, forward));
        let common = c2 * wave::c5(form.transom_ratio) * volume * water.density * GRAVITY;
        let mut hull = Prepared {
            year,
            length,
            density: water.density,
            viscosity: water.viscosity,
            wetted: shape::wetted_area(length, beam, draught, block, midship, form.waterplane, extras.bulb.area),
            appendages: form.appendage_area.max(0.0),
            appendage_factor: form.appendage_factor.max(0.0),
            k1: match year {
                Year::Y1982 => shape::form_factor_1982(length, beam, draught, prismatic, lcb, extras.stern),
                Year::Y1984 => shape::form_factor_1984(length, beam, draught, volume, prismatic, lcb, extras.stern),
            } - 1.0,
            prismatic,
            low: common * wave::c1(beam / length, draught / beam, form.half_entrance_deg),
            high: 0.0,
            m1: wave::m1(length, beam, draught, volume, prismatic),
            m3: 0.0,
            c15: wave::c15(slender),
            lambda: wave::lambda(length / beam, prismatic),
            wave_040: 0.0,
            wave_055: 0.0,
            bulb: extras.bulb,
            draught_forward: forward,
            transom_area: form.transom_ratio.clamp(0.0, 1.0) * beam * draught * midship,
            transom_scale: 0.0,
            thruster: water.density
                * std::f64::consts::PI
                * extras.thruster_diameter.powi(2)
                * extras.thruster_factor.max(0.0),
            allowance: 0.0,
            sand: extras.allowance,
            roughness: form.roughness,
            stout: slender < 512.0,
            notes: Prepared::judge(form, water, slender),
        };
        if hull.transom_area > 0.0 {
            hull.transom_scale = wave::transom_froude(1.0, hull.transom_area, beam, form.waterplane, GRAVITY);
        }
        if extras.allowance == Allowance::Published {
            hull.allowance = shape::correlation_allowance(length, forward, block, c2);
        }
        if year == Year::Y1984 {
            hull.high = common * wave::c17(midship, slender, length / beam);
            hull.m3 = wave::m3(beam / length, draught / beam);
            hull.wave_040 = hull.low_range(LOW_END);
            hull.wave_055 = hull.high_range(HIGH_START);
        }
        hull
    }

    /// What to say of a hull before it moves.
    fn judge(form: &Form, water: &Water, slender: f64) -> Notes {
        let mut notes = Notes::NONE;
        let (length_beam, beam_draught) = (form.length / form.beam, form.beam / form.draught);
        let block = form.mass / water.density / (form.length * form.beam * form.draught);
        notes.add_if(length_beam < 2.2, Note::HullTooBeamyForMethod);
        let inside = (3.9..=15.0).contains(&length_beam)
            && (2.1..=4.0).contains(&beam_draught)
            && (0.55..=0.85).contains(&form.prismatic)
            && slender.is_finite();
        notes.add_if(!inside, Note::HullOutsideSeries);
        notes.add_if(form.length < 15.0, Note::HullSmallForMethod);
        notes.add_if((form.prismatic * form.midship / block - 1.0).abs() > 0.10, Note::HullCoefficientsDisagree);
        notes
    }

    /// `1 + k1`.
    #[must_use]
    pub fn form_factor(&self) -> f64 {
        1.0 + self.k1
    }

    /// Wetted area of the bare hull, m².
    #[must_use]
    pub fn wetted_area(&self) -> f64 {
        self.wetted
    }

    /// The papers' correlation allowance; zero when the hull's own roughness is used instead.
    #[must_use]
    pub fn allowance(&self) -> f64 {
        self.allowance
    }

    /// Viscous coefficient `CV = (1+k) CF + CA` for the wake expressions, `1+k` weighted by area.
    #[must_use]
    pub fn viscous(&self, speed: f64) -> f64 {
        let re = speed.max(0.0) * self.length / self.viscosity;
        let all = self.wetted + self.appendages;
        let factor = ((1.0 + self.k1) * self.wetted + self.appendage_factor * self.appendages) / all;
        let ln_re = re.max(1.0).ln();
        factor * ittc57_at(ln_re) + self.rough(ln_re, re)
    }

    /// Coefficient of what lies above smooth friction.
    fn rough(&self, ln_re: f64, re: f64) -> f64 {
        let sand = |ks: f64| added_friction_at(ln_re, re, self.length, ks);
        match self.sand {
            Allowance::Sand => sand(self.roughness),
            Allowance::Published if self.roughness > PAINTED => self.allowance + sand(self.roughness) - sand(PAINTED),
            Allowance::Published => self.allowance,
        }
    }

    fn low_range(&self, froude: f64) -> f64 {
        let mc = match self.year {
            Year::Y1982 => wave::m2(self.c15, self.prismatic, froude),
            Year::Y1984 => wave::m4(self.c15, froude),
        };
        self.low * wave::swell(self.m1, mc, self.lambda, froude)
    }

    fn high_range(&self, froude: f64) -> f64 {
        self.high * wave::swell(self.m3, wave::m4(self.c15, froude), self.lambda, froude)
    }

    /// Wave resistance at a Froude number on the waterline length, N.
    #[must_use]
    pub fn wave(&self, froude: f64) -> f64 {
        if froude <= NO_WAVES {
            0.0
        } else if self.year == Year::Y1982 || froude <= LOW_END {
            self.low_range(froude)
        } else if froude >= HIGH_START {
            self.high_range(froude)
        } else {
            self.wave_040 + (10.0 * froude - 4.0) * (self.wave_055 - self.wave_040) / 1.5
        }
    }

    /// Resistance at a speed (m/s).
    #[must_use]
    pub fn at(&self, speed: f64) -> Noted<Parts> {
        let speed = if speed.is_finite() { speed.max(0.0) } else { 0.0 };
        let froude = speed / (GRAVITY * self.length).sqrt();
        let re = speed * self.length / self.viscosity;
        let pressure = 0.5 * self.density * speed * speed;
        let ln_re = re.max(1.0).ln();
        let plate = pressure * ittc57_at(ln_re);
        let mut notes = self.notes;
        // The fast hulls behind the second range are slender; on a boat's proportions it gives half the waves there are.
        let top = match self.year {
            Year::Y1982 => 0.45,
            Year::Y1984 if self.stout => LOW_END,
            Year::Y1984 => 1.0,
        };
        notes.add_if(froude > top, Note::SpeedAboveMethod);
        let parts = Parts {
            friction: plate * self.wetted,
            form: self.k1 * plate * self.wetted,
            roughness: pressure * (self.wetted + self.appendages) * self.rough(ln_re, re),
            appendages: plate * self.appendages * self.appendage_factor + self.thruster * speed * speed,
            wave: self.wave(froude) + self.bulb.resistance(self.draught_forward, speed, self.density, GRAVITY),
            transom: if self.transom_area > 0.0 {
                pressure * self.transom_area * wave::c6(speed * self.transom_scale)
            } else {
                0.0
            },
            spray: 0.0,
            air: 0.0,
        };
        Noted::new(parts, notes)
    }
}

/// Resistance by Holtrop & Mennen 1982 at a speed in m/s. For a whole curve use [`Prepared::new_1982`] once.
#[must_use]
pub fn resistance_1982(form: &Form, water: &Water, speed: f64, extras: &Extras) -> Noted<Parts> {
    Prepared::new_1982(form, water, extras).at(speed)
}

/// Resistance by Holtrop 1984 at a speed in m/s. For a whole curve use [`Prepared::new_1984`] once.
#[must_use]
pub fn resistance_1984(form: &Form, water: &Water, speed: f64, extras: &Extras) -> Noted<Parts> {
    Prepared::new_1984(form, water, extras).at(speed)
}

/// Published `1 + k2` of an appendage, low and high end (Holtrop & Mennen 1982, table; from memory).
pub const APPENDAGES: &[(&str, f64, f64)] = &[
    ("rudder behind skeg", 1.5, 2.0),
    ("rudder behind stern", 1.3, 1.5),
    ("twin-screw balance rudders", 2.8, 2.8),
    ("shaft brackets", 3.0, 3.0),
    ("skeg", 1.5, 2.0),
    ("strut bossings", 3.0, 3.0),
    ("hull bossings", 2.0, 2.0),
    ("shafts", 2.0, 4.0),
    ("stabilizer fins", 2.8, 2.8),
    ("dome", 2.7, 2.7),
    ("bilge keels", 1.4, 1.4),
];
