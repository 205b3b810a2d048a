//! A definite boat: one row of drawn values turned into a hull, a propeller, an engine that can be run.

use super::latent::Latent;
use super::physics;
use super::plan::{Plan, Row};
use super::setup::Setup;
use hydro::engine::Engine;
use hydro::hull::{Curve, Form};
use hydro::limits::Breakdown;
use hydro::note::Notes;
use hydro::openwater::Screw;
use hydro::running::{FullThrottle, Installation};
use hydro::stern::Stern;
use hydro::water::Water;
use job::assume::Length;

/// One definite boat.
#[derive(Clone, Copy, Debug)]
pub struct Definite {
    /// What stays the same in every setup.
    hull: Hull,
    /// As described.
    pub described: Fitted,
    /// As described, at full throttle.
    pub full: FullThrottle,
    /// Warnings.
    pub notes: Notes,
}

impl std::ops::Deref for Definite {
    type Target = Hull;

    fn deref(&self) -> &Hull {
        &self.hull
    }
}

/// The boat without its propeller: what was drawn, and what follows from it in every setup.
#[derive(Clone, Copy, Debug)]
pub struct Hull {
    /// What was drawn.
    pub row: Row,
    /// The hull, afloat.
    pub form: Form,
    /// The water.
    pub water: Water,
    /// Atmosphere plus water above the shaft, Pa.
    pub head: f64,
    /// Hull and propeller interaction.
    pub stern: Stern,
    /// The engine on the day.
    pub engine: Engine,
    /// Resistance as described.
    pub curve: Curve,
}

/// A definite boat in a setup.
#[derive(Clone, Copy, Debug)]
pub struct Fitted {
    /// Ready to run.
    pub installation: Installation,
    /// The propeller, its true pitch.
    pub screw: Screw,
    /// Pitch as marked, m.
    pub marked_pitch: f64,
}

impl Definite {
    /// Builds the boat.
    #[must_use]
    pub fn new(plan: &Plan, row: Row) -> Definite {
        let k = &plan.knowledge;
        let get = |latent: Latent| row[latent as usize];
        let water = physics::water(k.fresh, get(Latent::WaterTemperature));
        let form = form(plan, &row, &water.value);
        let engine = physics::engine(plan, &row);
        let stern = Stern {
            wake: get(Latent::Wake),
            thrust_deduction: get(Latent::ThrustDeduction),
            relative_rotative: get(Latent::RelativeRotative),
            shaft_angle_deg: get(Latent::ShaftAngle),
        };
        let curve = physics::curve(plan, &form, &water.value, &row);
        let head = physics::head(&water.value, get(Latent::Immersion), k.altitude);
        let hull = Hull { row, form, water: water.value, head, stern, engine, curve: curve.value };
        let (described, open_water) = hull.fit(plan, &Setup::default(), curve.value);
        let full = described.installation.full_throttle();
        Definite { hull, described, full, notes: water.notes.and(curve.notes).and(open_water) }
    }

    /// The boat in a setup, ready to run.
    #[must_use]
    pub fn fitted(&self, plan: &Plan, setup: &Setup) -> Fitted {
        if *setup == Setup::default() {
            return self.described;
        }
        self.fitted_on(plan, setup, self.resistance(plan, setup))
    }

    /// At full throttle in a setup.
    #[must_use]
    pub fn full_throttle(&self, fitted: &Fitted, setup: &Setup) -> FullThrottle {
        if *setup == Setup::default() { self.full } else { fitted.installation.full_throttle() }
    }
}

impl Hull {
    fn screw_alone(&self, plan: &Plan, setup: &Setup) -> Screw {
        let get = |latent: Latent| self.row[latent as usize];
        let k = &plan.knowledge;
        let marked_pitch = plan.marked_pitch;
        // What its kind of blade makes of the mark: 1 but for folding and feathering ones.
        let acts_like = plan.dists[Latent::Pitch as usize].middle / marked_pitch;
        let fitted_diameter = plan.dists[Latent::Diameter as usize].middle;
        // The propeller fitted keeps its own error when it is worked over; another one has an error of its own.
        let pitch = match (setup.pitch, setup.other_propeller) {
            // A workshop that measures every blade holds a third of the error of an unmeasured propeller; `estimate`.
            (marked, false) if setup.trued => {
                marked.unwrap_or(marked_pitch) * acts_like * get(Latent::OtherPitch).cbrt()
            }
            (Some(marked), true) => marked * get(Latent::OtherPitch),
            (None, true) => marked_pitch * get(Latent::OtherPitch),
            (Some(marked), false) => marked * get(Latent::Pitch) / marked_pitch,
            (None, false) => get(Latent::Pitch),
        };
        let diameter = match (setup.diameter, setup.other_propeller) {
            (Some(d), true) => d,
            (None, true) => fitted_diameter,
            (Some(d), false) => d * get(Latent::Diameter) / fitted_diameter,
            (None, false) => get(Latent::Diameter),
        };
        let area = match (setup.area_ratio, setup.other_propeller) {
            (Some(a), _) => a * get(Latent::OtherArea),
            (None, true) => plan.dists[Latent::AreaRatio as usize].middle * get(Latent::OtherArea),
            (None, false) => get(Latent::AreaRatio),
        };
        let draw = |dist: Option<job::assume::Dist>, latent: Latent| {
            dist.map_or_else(|| get(latent), |d| same_place(&d, &plan.dists[latent as usize], get(latent)))
        };
        Screw {
            diameter,
            pitch_ratio: pitch / diameter,
            expanded_area_ratio: area,
            blades: setup.blades.unwrap_or(k.blades.0),
            flat_share: get(Latent::FlatShare).clamp(0.0, 1.0),
            ducted: plan.ducted,
            cup: draw(setup.cup, Latent::Cup),
            blade_roughness: draw(setup.blade_roughness, Latent::BladeRoughness),
        }
    }

    /// Resistance in a setup.
    #[must_use]
    pub fn resistance(&self, plan: &Plan, setup: &Setup) -> Curve {
        if setup.same_hull() {
            return self.curve;
        }
        let get = |latent: Latent| self.row[latent as usize];
        let mut form = self.form;
        if let Some(mass) = setup.mass {
            form = afloat(form, same_place(&mass, &plan.dists[Latent::Weight as usize], get(Latent::Weight)));
        }
        if let Some(roughness) = setup.hull_roughness {
            let drawn = same_place(&roughness, &plan.dists[Latent::HullRoughness as usize], get(Latent::HullRoughness));
            form.roughness = drawn;
        }
        physics::curve(plan, &form, &self.water, &self.row).value
    }

    /// The boat in a setup whose resistance is known already.
    #[must_use]
    pub fn fitted_on(&self, plan: &Plan, setup: &Setup, resistance: Curve) -> Fitted {
        self.fit(plan, setup, resistance).0
    }

    fn fit(&self, plan: &Plan, setup: &Setup, resistance: Curve) -> (Fitted, Notes) {
        let screw = self.screw_alone(plan, setup);
        let open_water = physics::open_water(&screw, self, plan, setup);
        let mut drive = physics::drive(plan, &self.row);
        if let Some(reduction) = setup.reduction {
            drive.reduction = reduction;
        }
        let installation = Installation {
            water: self.water,
            resistance,
            tow: 0.0,
            screws: plan.knowledge.screws.0,
            stern: self.stern,
            diameter: screw.diameter,
            open_water: open_water.value,
            breakdown: Breakdown::new(&screw, &self.water, self.head).eased(self.row[Latent::CavitationHold as usize]),
            drive,
            engine: self.engine,
        };
        let marked_pitch = setup.pitch.unwrap_or(plan.marked_pitch);
        (Fitted { installation, screw, marked_pitch }, open_water.notes)
    }

    /// Mass in a setup, kg.
    #[must_use]
    pub fn mass(&self, plan: &Plan, setup: &Setup) -> f64 {
        setup.mass.map_or(self.form.mass, |m| {
            same_place(&m, &plan.dists[Latent::Weight as usize], self.row[Latent::Weight as usize])
        })
    }
}

/// The value of `dist` at the place in the spread where `value` stands in `other`.
fn same_place(dist: &job::assume::Dist, other: &job::assume::Dist, value: f64) -> f64 {
    if dist.is_fixed() || other.is_fixed() {
        return dist.middle;
    }
    let side = |low: f64, middle: f64, high: f64, x: f64| {
        let width = if x > middle { high - middle } else { middle - low };
        if width > 0.0 { job::assume::BAND_Z * (x - middle) / width } else { 0.0 }
    };
    let z = if other.log {
        side(other.low.ln(), other.middle.ln(), other.high.ln(), value.ln())
    } else {
        side(other.low, other.middle, other.high, value)
    };
    dist.at(z)
}

/// The hull drawn, afloat at its weight.
fn form(plan: &Plan, row: &Row, water: &Water) -> Form {
    let k = &plan.knowledge;
    let get = |latent: Latent| row[latent as usize];
    let weight = get(Latent::Weight);
    let (length, mass) = match &k.length {
        Length::OfWeight(_) => (get(Latent::Length) * (weight / water.density).cbrt(), weight),
        _ => {
            let length = get(Latent::Length) * get(Latent::LengthRatio);
            (length, if k.weight_is_ratio { water.density * (length / weight).powi(3) } else { weight })
        }
    };
    // L/B = 1.45 cube root of L in metres where the beam is not stated.
    let beam = if k.beam_is_ratio {
        length / (1.45 * length.cbrt() * get(Latent::Beam)).max(1.6)
    } else {
        get(Latent::Beam).min(0.6 * length)
    };
    let prismatic = get(Latent::Prismatic).clamp(0.45, 0.9);
    let mut form = Form {
        length,
        beam,
        draught: 0.0,
        mass,
        prismatic,
        midship: get(Latent::Midship).clamp(0.4, 0.98),
        waterplane: (0.18 + 0.86 * prismatic).clamp(0.55, 0.95),
        lcb_percent: get(Latent::Lcb),
        half_entrance_deg: get(Latent::Entrance),
        transom_ratio: get(Latent::Transom).clamp(0.0, 1.0),
        appendage_area: get(Latent::Appendages) * length * beam,
        appendage_factor: 1.5,
        chine_beam: get(Latent::ChineRatio) * beam,
        deadrise_deg: get(Latent::Deadrise).clamp(0.0, 30.0),
        lcg: get(Latent::Lcg) * length,
        vcg: 0.25 * beam,
        thrust_angle_deg: get(Latent::ShaftAngle),
        air_area: get(Latent::Windage) * beam * beam,
        air_drag: 0.8,
        roughness: get(Latent::HullRoughness),
    };
    form.draught = draught(&form, water.density);
    form
}

/// Draught of the hull body that floats the weight, `T = ∇/(L B CP CM)`.
fn draught(form: &Form, density: f64) -> f64 {
    form.mass / density / (form.length * form.beam * form.prismatic * form.midship)
}

/// The same hull at another weight: length, beam and coefficients stay, the draught follows.
fn afloat(mut form: Form, mass: f64) -> Form {
    form.draught *= mass / form.mass;
    form.mass = mass;
    form
}
