//! What a resistance method needs to know of a hull, and the parts it answers with.

/// The way a hull carries its weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Round-bilge or hard-chine hull that stays in displacement motion (Froude number below about 0.45).
    Displacement,
    /// Sailing yacht under power.
    Sailing,
    /// Driven past hull speed without planing cleanly.
    SemiDisplacement,
    /// Planing hull.
    Planing,
}

/// A definite hull form, afloat at a definite weight. All lengths in metres.
///
/// Every field has a value: what the owner cannot know has been drawn from an assumption before it comes here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Form {
    /// Waterline length `L`, m.
    pub length: f64,
    /// Waterline beam `B`, m.
    pub beam: f64,
    /// Draught of the hull body (canoe body, without keel) `T`, m.
    pub draught: f64,
    /// Displaced mass, kg (volume = mass / water density).
    pub mass: f64,
    /// Prismatic coefficient `CP`.
    pub prismatic: f64,
    /// Midship section coefficient `CM`.
    pub midship: f64,
    /// Waterplane area coefficient `CWP`.
    pub waterplane: f64,
    /// Longitudinal centre of buoyancy, % of `L` forward of midships (aft negative).
    pub lcb_percent: f64,
    /// Half angle of entrance of the waterline `iE`, degrees.
    pub half_entrance_deg: f64,
    /// Immersed transom area over greatest section area at rest, `AT/AX`.
    pub transom_ratio: f64,
    /// Wetted area of keel, rudder, struts, shafts, skegs, lower units, m².
    pub appendage_area: f64,
    /// Equivalent form factor of the appendages, `(1+k2)eq`.
    pub appendage_factor: f64,
    /// Beam over the chines `b` (planing), m.
    pub chine_beam: f64,
    /// Deadrise amidships-to-transom `β`, degrees.
    pub deadrise_deg: f64,
    /// Centre of gravity forward of the transom, m.
    pub lcg: f64,
    /// Centre of gravity above the keel, m.
    pub vcg: f64,
    /// Angle of the thrust line to the keel `ε`, degrees (thrust pushing the bow up positive).
    pub thrust_angle_deg: f64,
    /// Area facing the wind, m².
    pub air_area: f64,
    /// Drag coefficient of that area.
    pub air_drag: f64,
    /// Equivalent sand-grain roughness height of the bottom `ks`, m (growth included).
    pub roughness: f64,
}

/// The parts of a resistance, N. What a method does not know apart is zero.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Parts {
    /// Friction of the smooth bare hull, form effect not included.
    pub friction: f64,
    /// Viscous form effect, `k1` times friction.
    pub form: f64,
    /// Added friction from roughness and growth, and correlation allowance.
    pub roughness: f64,
    /// Appendages.
    pub appendages: f64,
    /// Wave or residuary resistance, or pressure drag of a planing bottom.
    pub wave: f64,
    /// Immersed transom.
    pub transom: f64,
    /// Spray.
    pub spray: f64,
    /// Air.
    pub air: f64,
}

impl Parts {
    /// The sum, N.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.friction + self.form + self.roughness + self.appendages + self.wave + self.transom + self.spray + self.air
    }
}
