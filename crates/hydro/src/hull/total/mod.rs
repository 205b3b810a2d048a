//! The whole resistance of a boat: which method speaks at which speed, and how they pass into each other.

mod slow;

use self::slow::{Slow, held, wide};
use super::curve::Curve;
use super::delft::{self, CanoeBody, Residuary, Year};
use super::form::{Form, Kind, Parts};
use super::friction;
use super::preplaning::Regression;
use super::savitsky::{self, Bottom, Start};
use super::shape::{smooth, unit_speed};
use super::{air, appendages, handbook};
use crate::note::{Note, Noted, Notes};
use crate::source::{Method, Trust};
use crate::water::{GRAVITY, Water};

/// The register entry.
pub const METHOD: Method = Method {
    name: "resistance-choice",
    quantity: "resistance of a whole boat over speed, N",
    formula: "displacement: Holtrop 1984, waves of hulls below L/B 4.5 by degrees after Delft 2008; sailing: Delft 2008 with the waves of keel and rudder after Delft 1981; the others: as displacement, then the pre-planing regression, then Savitsky 1964, passing over about volume Froude numbers 1 and 2; air, appendages and roughness added once",
    range: "boats of 3 to 30 m",
    error: "see the error shape of each kind",
    source: "the choice and its limits are this program's own",
    trust: Trust::CommonPractice,
};

/// Volume Froude numbers over which displacement passes to the pre-planing regression.
const TO_PREPLANING: (f64, f64) = (0.85, 1.25);
/// Volume Froude numbers over which a planing hull passes from the regression to the planing equations.
const TO_PLANING: (f64, f64) = (1.5, 2.1);
/// The same for a semi-displacement hull, which is never clear of the water.
const TO_PLANING_SEMI: (f64, f64) = (1.9, 3.0);
/// Crouch's constant used for the handbook share of planing boats: between 150 (average runabouts and cruisers) and 190
/// (fast ones).
const CROUCH_CONSTANT: f64 = 170.0;

/// A definite hull with everything that does not hang on speed worked out.
#[derive(Clone, Copy, Debug)]
pub struct Hull {
    form: Form,
    water: Water,
    base: Base,
}

// One of these stands on the stack for as long as a curve is made: its size does not matter.
#[allow(clippy::large_enum_variant)]
#[derive(Clone, Copy, Debug)]
enum Base {
    Displacement(Slow),
    Sailing {
        bare: delft::Prepared,
        waves: Residuary,
        with_keel: Residuary,
        without: Residuary,
        length: f64,
        weight: f64,
    },
    Fast {
        slow: Slow,
        middle: Regression,
        planing: savitsky::Prepared,
        hand_over: (f64, f64),
    },
}

/// `value` inside `low..high`; not a number becomes `low`.
fn hold(value: f64, low: f64, high: f64) -> f64 {
    value.max(low).min(high)
}

/// A form every method can take: what no boat has is held at the nearest a boat has.
fn sane(form: &Form, water: &Water) -> Form {
    let length = hold(form.length, 1.0, 60.0);
    let beam = hold(form.beam, length / 20.0, length);
    let mass = hold(form.mass, 20.0, 0.5 * water.density * length * length * beam);
    // A hull floats at least on its own volume.
    let volume = mass / water.density;
    let draught = hold(form.draught, volume / (length * beam), length / 2.0).max(0.02);
    Form {
        length,
        beam,
        draught,
        mass,
        prismatic: hold(form.prismatic, 0.40, 0.90),
        midship: hold(form.midship, 0.30, 1.0),
        waterplane: hold(form.waterplane, 0.45, 1.0),
        lcb_percent: hold(form.lcb_percent, -15.0, 10.0),
        half_entrance_deg: hold(form.half_entrance_deg, 3.0, 60.0),
        transom_ratio: hold(form.transom_ratio, 0.0, 1.0),
        appendage_area: hold(form.appendage_area, 0.0, length * beam),
        appendage_factor: hold(form.appendage_factor, 0.0, 20.0),
        chine_beam: hold(form.chine_beam, 0.3 * beam, 1.5 * beam),
        deadrise_deg: hold(form.deadrise_deg, 0.0, 35.0),
        lcg: hold(form.lcg, 0.15 * length, 0.65 * length),
        vcg: hold(form.vcg, 0.0, 1.5 * beam),
        thrust_angle_deg: hold(form.thrust_angle_deg, -10.0, 25.0),
        air_area: hold(form.air_area, 0.0, length * length),
        air_drag: hold(form.air_drag, 0.0, 3.0),
        roughness: hold(form.roughness, 0.0, 0.05),
    }
}

impl Hull {
    /// Works a hull out. Values no boat has are held at the nearest a boat has.
    #[must_use]
    pub fn new(kind: Kind, form: &Form, water: &Water) -> Hull {
        let form = sane(form, water);
        let base = match kind {
            Kind::Displacement => Base::Displacement(Slow::new(&form, water)),
            Kind::Sailing => {
                let body = CanoeBody::new(&form, water);
                // The waves of keel and rudder, as a factor on the bare hull: 1981 over 2008 for the same hull, both
                // held inside the narrow range of 1981.
                let narrow = held(&body, (4.34, 5.14), (2.76, 3.64), (2.98, 5.35), (0.53, 0.60));
                Base::Sailing {
                    bare: delft::Prepared::new(&form, water, Year::Y2008),
                    waves: wide(&body).residuary(Year::Y2008),
                    with_keel: narrow.residuary(Year::Y1981),
                    without: narrow.residuary(Year::Y2008),
                    length: body.length,
                    weight: form.mass * GRAVITY,
                }
            }
            Kind::SemiDisplacement | Kind::Planing => {
                let middle = Regression::new(&form, water);
                Base::Fast {
                    slow: Slow::new(&form, water),
                    middle,
                    planing: Bottom::of(&form).prepare_beside(water, middle.roughness()),
                    hand_over: if kind == Kind::Planing { TO_PLANING } else { TO_PLANING_SEMI },
                }
            }
        };
        Hull { form, water: *water, base }
    }

    /// Resistance at `speed` (m/s), in parts. `start` carries the running state of a planing bottom from one speed to the
    /// next; begin with `None`.
    #[must_use]
    pub fn at(&self, speed: f64, start: &mut Option<Start>) -> Noted<Parts> {
        let speed = hold(speed, 0.0, 100.0);
        if speed <= 0.0 {
            return Noted::clean(Parts::default());
        }
        let mut noted = match &self.base {
            Base::Displacement(slow) => slow.at(speed),
            Base::Sailing { bare, waves, with_keel, without, length, weight } => {
                let Noted { value: mut parts, notes } = bare.at(speed);
                let froude = speed / (GRAVITY * length).sqrt();
                let both = hold(froude, 0.20, 0.45);
                let ratio = with_keel.at(both) / without.at(both).max(1e-6);
                parts.wave = weight * waves.at(froude) * hold(ratio, 1.0, 2.5);
                Noted::new(parts, notes.without(Note::BareHullOnly))
            }
            Base::Fast { slow, middle, planing, hand_over } => {
                let fnv = middle.volume_froude(speed);
                let to_middle = smooth(TO_PREPLANING.0, TO_PREPLANING.1, fnv);
                let to_planing = smooth(hand_over.0, hand_over.1, fnv);
                let mut sum = Noted::new(Parts::default(), Notes::NONE);
                if to_middle < 1.0 {
                    add(&mut sum, 1.0 - to_middle, slow.at(speed));
                }
                if to_middle > 0.0 && to_planing < 1.0 {
                    add(&mut sum, to_middle * (1.0 - to_planing), middle.parts(speed));
                }
                if to_planing > 0.0 {
                    add(&mut sum, to_planing, planing.parts(speed, start));
                }
                // Appendages by one rule at all speeds.
                let cf = friction::ittc57(speed * self.form.length / self.water.viscosity);
                sum.value.appendages = appendages::by_area(
                    self.form.appendage_area,
                    self.form.appendage_factor,
                    cf,
                    self.water.density,
                    speed,
                );
                sum
            }
        };
        noted.value.air = air::resistance(self.form.air_area, self.form.air_drag, speed);
        noted
    }

    /// Resistance over speed up to `top_speed`, m/s. Porpoising is left out of the notes: it belongs to a speed that is
    /// really run, ask [`total`] there.
    #[must_use]
    pub fn curve(&self, top_speed: f64) -> Noted<Curve> {
        let mut notes = Notes::NONE;
        let mut start = None;
        let curve = Curve::tabulate(hold(top_speed, 0.5, 100.0), |speed| {
            let noted = self.at(speed, &mut start);
            notes = notes.and(noted.notes);
            noted.value.total()
        });
        Noted::new(curve, notes.without(Note::Porpoising))
    }
}

/// Adds a share of `noted` to `sum`; notes of a share that hardly counts are left out.
fn add(sum: &mut Noted<Parts>, share: f64, noted: Noted<Parts>) {
    let (a, b) = (&mut sum.value, &noted.value);
    a.friction += share * b.friction;
    a.form += share * b.form;
    a.roughness += share * b.roughness;
    a.appendages += share * b.appendages;
    a.wave += share * b.wave;
    a.transom += share * b.transom;
    a.spray += share * b.spray;
    a.air += share * b.air;
    if share > 0.1 {
        sum.notes = sum.notes.and(noted.notes);
    }
}

/// Resistance of a whole boat at `speed` (m/s) in still air and deep water, in parts, N. See [`METHOD`].
#[must_use]
pub fn total(kind: Kind, form: &Form, water: &Water, speed: f64) -> Noted<Parts> {
    Hull::new(kind, form, water).at(speed, &mut None)
}

/// Resistance of a whole boat over speed up to `top_speed` (m/s): 24 points, even in speed.
#[must_use]
pub fn curve(kind: Kind, form: &Form, water: &Water, top_speed: f64) -> Noted<Curve> {
    Hull::new(kind, form, water).curve(top_speed)
}

/// The curve with `share` (0 to 1) of its logarithm from a handbook rule: Gerr's for displacement and semi-displacement
/// boats about and above hull speed, Crouch's for planing boats above volume Froude number 2.5; elsewhere unchanged.
/// The choice of method is uncertain too, and this is how a crowd of boats can say so.
#[must_use]
pub fn with_handbook(curve: &Curve, kind: Kind, form: &Form, water: &Water, share: f64) -> Curve {
    let share = hold(share, 0.0, 1.0);
    if share <= 0.0 || kind == Kind::Sailing {
        return *curve;
    }
    let form = sane(form, water);
    let unit = unit_speed(Kind::Planing, &form, water);
    curve.map(|speed, resistance| {
        let weight = if kind == Kind::Planing {
            smooth(2.2, 2.8, speed / unit)
        } else {
            let ratio = handbook::speed_length_ratio(speed, form.length);
            // Below it the cube says nothing, above it the wave wall of a displacement hull stands.
            let (fade, gone) = if kind == Kind::Displacement { (1.5, 1.8) } else { (2.4, 2.9) };
            smooth(0.9, 1.2, ratio) * (1.0 - smooth(fade, gone, ratio))
        };
        if weight <= 0.0 {
            return resistance;
        }
        let rule = if kind == Kind::Planing {
            handbook::crouch(&form, water, speed, CROUCH_CONSTANT, handbook::EFFICIENCY_PLANING)
        } else {
            handbook::gerr(&form, speed, handbook::EFFICIENCY_DISPLACEMENT)
        };
        let weight = share * weight;
        if resistance <= 0.0 || rule.value <= 0.0 {
            return resistance;
        }
        resistance * (weight * (rule.value / resistance).ln()).exp()
    })
}

#[cfg(test)]
mod tests;
