//! From a job to what is drawn and what was observed.

use super::latent::{COUNT, Latent};
use super::physics;
use super::setup::Setup;
use crate::lack::{self, Lack};
use crate::survey::{self, Surveyed};
use hydro::engine::FullThrottleCurve;
use hydro::hull::depth::Depth;
use hydro::hull::measured::Towed;
use hydro::openwater::Spread;
use job::Job;
use job::assume::{self, Dist, Knowledge, Length};

/// The drawn values of one boat.
pub type Row = [f64; COUNT];

/// What is drawn, and the readings to weigh with.
#[derive(Clone, Debug)]
pub struct Plan {
    /// What was stated or assumed.
    pub knowledge: Knowledge,
    /// A spread per latent.
    pub dists: [Dist; COUNT],
    /// Whether stated, and the source, per latent.
    pub origin: Vec<(bool, String)>,
    /// The states readings were taken in; the first is the boat as described.
    pub setups: Vec<Setup>,
    /// What was read.
    pub observations: Vec<Observation>,
    /// What held when readings in another state were taken, where something is suspected to have come since.
    pub before: Option<std::sync::Arc<Before>>,
    /// Pitch as stamped or set, m. Flat folding or feathering blades act like another pitch than their mark, and a mark of the
    /// middle of [`Latent::Pitch`] would be another propeller.
    pub marked_pitch: f64,
    /// In a nozzle.
    pub ducted: bool,
    /// A towed resistance curve, if there is one.
    pub towed: Option<Towed>,
    /// The maker's full-throttle curve, if there is one.
    pub maker_curve: Option<FullThrottleCurve>,
    /// Where the engine's power is declared, if that was said.
    pub declared_at: Option<job::PowerAt>,
    /// Error of the propeller series at the propeller fitted.
    pub series: Spread,
}

/// The same boat before something came.
#[derive(Clone, Debug)]
pub struct Before {
    /// What was stated or assumed of it then.
    pub plan: Plan,
    /// What came since says nothing of how good the thing was: of this quantity the boat then has a value of its own.
    pub own: Option<Latent>,
}

impl Before {
    /// The row of the boat then; `z` are the standard normal values of the boat now.
    #[must_use]
    pub fn values(&self, z: &[f64]) -> Row {
        let mut row = self.plan.values(z);
        if let Some(latent) = self.own {
            // Any value that says nothing of the thing will do. This one is the blade area of another propeller: where the
            // earlier reading was taken with one, the two go together, which is worth less than the reading's own scatter.
            row[latent as usize] = self.plan.dists[latent as usize].at(z[Latent::OtherArea as usize]);
        }
        row
    }
}

/// What was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Observation {
    /// Position of the reading in the job.
    pub reading: usize,
    /// Position of its state in [`Plan::setups`].
    pub setup: usize,
    /// At full throttle; else at this shown engine speed, rev/s.
    pub at: At,
    /// What was read.
    pub what: What,
    /// The value read, SI.
    pub value: f64,
    /// Standard deviation of the logarithm of the value, scatter only.
    pub scatter: f64,
    /// Standard deviation of the logarithm of the instrument's own lasting error, drawn once for the boat.
    pub bias: f64,
    /// The engine was held by its governor: the reading says only "at least".
    pub at_least: bool,
}

/// At what throttle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum At {
    /// Fully open.
    FullThrottle,
    /// At this engine speed as shown, rev/s, with the lasting error (sd of the logarithm) of the instrument.
    Shown(f64, f64),
    /// At this engine speed as derived from the shaft, rev/s of the shaft.
    Shaft(f64),
}

/// What was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Engine speed, rev/s.
    EngineSpeed,
    /// Shaft speed, rev/s.
    ShaftSpeed,
    /// Boat speed, m/s.
    Speed,
    /// Fuel, kg/s.
    Fuel,
}

impl What {
    /// What a person calls it, its unit, and the factor from SI; fuel weighs `fuel_density` kg/L.
    #[must_use]
    pub const fn told(self, fuel_density: f64) -> (&'static str, &'static str, f64) {
        match self {
            What::EngineSpeed => ("engine speed", "rpm", 60.0),
            What::ShaftSpeed => ("shaft speed", "rpm", 60.0),
            What::Speed => ("speed", "kn", 3600.0 / 1852.0),
            What::Fuel => ("fuel", "L/h", 3600.0 / fuel_density),
        }
    }
}

/// Scatter of engine speed from run to run that no instrument is to blame for: sea, helm, load. `estimate`.
pub const RUN_ENGINE_SPEED: f64 = 0.01;
/// The same for boat speed at full throttle; `estimate`.
pub const RUN_SPEED: f64 = 0.03;
/// The same at part throttle, where the smooth error of the hull's curve has more freedom; `estimate`.
const RUN_SPEED_PART: f64 = 0.04;
/// Fuel at a steady speed; `estimate`.
const RUN_FUEL: f64 = 0.07;

/// Water deeper than so many waterline lengths is deep at any speed: a planing boat outruns the waves that feel the bottom.
/// Common practice, no source.
pub const DEEP_LENGTHS: f64 = 1.5;

impl Plan {
    /// What is drawn and observed for a job.
    ///
    /// # Errors
    /// When something is missing that cannot be assumed.
    pub fn new(job: &Job) -> Result<Plan, Lack> {
        let surveyed = survey::fitted(job);
        lack::check(job, surveyed.as_ref().is_some_and(|s| s.pitch.is_some()))?;
        let mut knowledge = assume::knowledge(job);
        if let Some(surveyed) = &surveyed {
            measured(&mut knowledge, surveyed);
        }
        let (mut dists, mut origin) = spreads(job, &knowledge);
        if let Some(surveyed) = &surveyed {
            for (latent, band) in [
                (Latent::Cup, surveyed.cup),
                (Latent::BladeRoughness, surveyed.roughness.filter(|_| job.propeller.growth.is_none())),
            ] {
                if let Some((low, middle, high)) = band {
                    dists[latent as usize] = Dist::band(low, middle, high);
                    origin[latent as usize] = (true, MEASURED.to_owned());
                }
            }
        }
        let mut plan = Plan {
            ducted: matches!(job.propeller.section, Some(job::Section::Ducted)),
            towed: towed(job),
            maker_curve: physics::maker_curve(job, &knowledge),
            declared_at: job.engine.rated_at,
            series: physics::series_spread(&knowledge, matches!(job.propeller.section, Some(job::Section::Ducted))),
            // A measured pitch takes the place of the mark.
            marked_pitch: job
                .propeller
                .pitch
                .as_ref()
                .filter(|_| surveyed.as_ref().is_none_or(|s| s.pitch.is_none()))
                .map_or(dists[Latent::Pitch as usize].middle, |q| q.middle),
            before: None,
            setups: vec![Setup::default()],
            observations: Vec::new(),
            dists,
            origin,
            knowledge,
        };
        plan.add_readings(job);
        Ok(plan)
    }

    /// The same boats asked for other readings: `job` is the same but for its readings.
    #[must_use]
    pub fn asked(&self, job: &Job) -> Plan {
        let mut plan = Plan { observations: Vec::new(), ..self.clone() };
        plan.add_readings(job);
        plan
    }

    fn add_readings(&mut self, job: &Job) {
        let leg = physics::is_leg(self.knowledge.arrangement.0);
        let blades = self.knowledge.blades.0;
        for (i, reading) in job.readings.iter().enumerate() {
            let depth = reading.depth.as_ref().or(job.place.depth.as_ref()).map(|q| q.middle);
            let speed = reading.speed.as_ref().map(|q| q.middle);
            if let (Some(depth), Some(speed)) = (depth, speed)
                && Depth::of(speed, depth) == Depth::Refuse
                && depth < DEEP_LENGTHS * self.typical_length()
            {
                continue;
            }
            let setup = Setup::of_state(&reading.state, blades, leg);
            let setup = self.setups.iter().position(|s| *s == setup).unwrap_or_else(|| {
                self.setups.push(setup);
                self.setups.len() - 1
            });
            observe(&mut self.observations, i, reading, setup);
        }
    }

    /// Waterline length of the middle boat, m; 10 m when it hangs on the weight.
    fn typical_length(&self) -> f64 {
        match &self.knowledge.length {
            Length::Waterline(l) => l.dist.middle,
            Length::OfOverall { overall, ratio } => overall.dist.middle * ratio.dist.middle,
            Length::OfWeight(_) => 10.0,
        }
    }

    /// Values drawn at a row of standard normal numbers.
    #[must_use]
    pub fn values(&self, z: &[f64]) -> Row {
        let mut row = [0.0; COUNT];
        for (value, (dist, z)) in row.iter_mut().zip(self.dists.iter().zip(z)) {
            *value = dist.at(*z);
        }
        row
    }
}

/// What the answer says of a surveyed value.
const MEASURED: &str = "measured in the survey";

/// A surveyed propeller in place of the stamp.
fn measured(knowledge: &mut Knowledge, surveyed: &Surveyed) {
    let known = |(low, middle, high): (f64, f64, f64)| assume::Known {
        dist: Dist::band(low, middle, high),
        stated: true,
        source: MEASURED.to_owned(),
    };
    if let Some(pitch) = surveyed.pitch {
        knowledge.pitch = Some(known(pitch));
    }
    if let Some(diameter) = surveyed.diameter {
        knowledge.diameter = known(diameter);
    }
    if let Some(area) = surveyed.area_ratio {
        knowledge.area_ratio = known(area);
    }
    if let Some(flat) = surveyed.flat_share {
        knowledge.flat_share = known(flat);
    }
    if let Some(blades) = surveyed.blades {
        knowledge.blades = (blades, true);
    }
}

/// The towed curve of a job; points that make no curve are left out of account.
fn towed(job: &Job) -> Option<Towed> {
    let points: Vec<(f64, f64)> = job.boat.resistance.iter().map(|(v, r)| (v.middle, r.middle)).collect();
    Towed::new(&points).ok()
}

/// Splits a reading into what was observed. An 80 % band of an instrument is mostly lasting (a wrong scale stays wrong),
/// partly scatter; the split is an `estimate`.
fn observe(list: &mut Vec<Observation>, index: usize, reading: &job::Reading, setup: usize) {
    let sd = |q: &job::Quantity| (0.5 * (q.high - q.low) / assume::BAND_Z / q.middle).max(1e-4);
    let governed = reading.governed == Some(true);
    let engine = reading.engine_speed.as_ref().filter(|q| q.middle > 0.0);
    let shaft = reading.shaft_speed.as_ref().filter(|q| q.middle > 0.0);
    let at = if reading.full_throttle {
        At::FullThrottle
    } else if let Some(q) = engine {
        At::Shown(q.middle, 0.9 * sd(q))
    } else if let Some(q) = shaft {
        At::Shaft(q.middle)
    } else {
        return;
    };
    let mut push = |what, value: f64, scatter: f64, bias: f64| {
        list.push(Observation {
            reading: index,
            setup,
            at,
            what,
            value,
            scatter,
            bias,
            at_least: governed && matches!(what, What::EngineSpeed | What::ShaftSpeed),
        });
    };
    if reading.full_throttle {
        if let Some(q) = engine {
            push(What::EngineSpeed, q.middle, (0.44 * sd(q)).hypot(RUN_ENGINE_SPEED), 0.9 * sd(q));
        }
        if let Some(q) = shaft {
            push(What::ShaftSpeed, q.middle, sd(q).hypot(RUN_ENGINE_SPEED), 0.0);
        }
    }
    if let Some(q) = reading.speed.as_ref().filter(|q| q.middle > 0.0) {
        let run = if reading.full_throttle { RUN_SPEED } else { RUN_SPEED_PART };
        let lasting = matches!(q.source, Some(job::Source::Log | job::Source::Dashboard));
        let (scatter, bias) = if lasting { (0.44 * sd(q), 0.9 * sd(q)) } else { (sd(q), 0.0) };
        push(What::Speed, q.middle, scatter.hypot(run), bias);
    }
    if let Some(q) = reading.fuel.as_ref().filter(|q| q.middle > 0.0) {
        push(What::Fuel, q.middle, sd(q).hypot(RUN_FUEL), 0.0);
    }
}

fn spreads(job: &Job, k: &Knowledge) -> ([Dist; COUNT], Vec<(bool, String)>) {
    let normal = Dist::band(-assume::BAND_Z, 0.0, assume::BAND_Z);
    let mut dists = [normal; COUNT];
    let mut origin = vec![(false, String::new()); COUNT];
    let mut set = |latent: Latent, dist: Dist, stated: bool, source: &str| {
        dists[latent as usize] = dist;
        origin[latent as usize] = (stated, source.to_owned());
    };
    let nothing = Dist::fixed(1.0);
    match &k.length {
        Length::Waterline(l) => {
            set(Latent::Length, l.dist, l.stated, &l.source);
            set(Latent::LengthRatio, nothing, true, "");
        }
        Length::OfOverall { overall, ratio } => {
            set(Latent::Length, overall.dist, overall.stated, &overall.source);
            set(Latent::LengthRatio, ratio.dist, ratio.stated, &ratio.source);
        }
        Length::OfWeight(ratio) => {
            set(Latent::Length, ratio.dist, false, &ratio.source);
            set(Latent::LengthRatio, nothing, true, "");
        }
    }
    for (latent, known) in [
        (Latent::Weight, &k.weight),
        (Latent::Beam, &k.beam),
        (Latent::ChineRatio, &k.chine_ratio),
        (Latent::Prismatic, &k.prismatic),
        (Latent::Midship, &k.midship),
        (Latent::Lcb, &k.lcb),
        (Latent::Entrance, &k.entrance),
        (Latent::Transom, &k.transom),
        (Latent::Deadrise, &k.deadrise),
        (Latent::Lcg, &k.lcg),
        (Latent::Appendages, &k.appendages),
        (Latent::Windage, &k.windage),
        (Latent::WaterTemperature, &k.water_temperature),
        (Latent::AirTemperature, &k.air_temperature),
        (Latent::Power, &k.power),
        (Latent::RatedSpeed, &k.rated_speed),
        (Latent::TopRatio, &k.top_ratio),
        (Latent::Condition, &k.condition),
        (Latent::Reduction, &k.reduction),
        (Latent::ShaftAngle, &k.shaft_angle),
        (Latent::Diameter, &k.diameter),
        (Latent::AreaRatio, &k.area_ratio),
        (Latent::FlatShare, &k.flat_share),
        (Latent::Immersion, &k.immersion),
    ] {
        set(latent, known.dist, known.stated, &known.source);
    }
    set(Latent::ShaftDrag, Dist::fixed(0.0), false, "none spoken of");
    if let Some(pitch) = &k.pitch {
        set(Latent::Pitch, pitch.dist, pitch.stated, &pitch.source);
    }
    // Another propeller's mark is as wrong as this one's may be; castings of one mark differ by several per cent.
    set(Latent::OtherPitch, Dist::band(0.96, 1.0, 1.04), false, "stamps and styles differ; common practice, no source");
    set(Latent::OtherArea, Dist::band(0.93, 1.0, 1.08), false, "blade area of the same mark differs; common practice");
    physics::spreads(job, k, &mut set);
    (dists, origin)
}
