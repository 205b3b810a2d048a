//! One moment of a log, whatever it was written in.

/// Engines that are told apart.
pub const ENGINES: usize = 4;

/// One knot, m/s.
pub const KNOT: f64 = 1852.0 / 3600.0;

/// What a log says about one moment (the mean over a bin of one second or more).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sample {
    /// Seconds since 1970-01-01 UTC; since the start of the log (or since midnight) when the log has no date.
    pub time: f64,
    /// Speed over ground, m/s.
    pub over_ground: Option<f64>,
    /// Course over ground, degrees true, 0 to 360.
    pub course: Option<f64>,
    /// Speed through the water, m/s.
    pub through_water: Option<f64>,
    /// Speed of each engine, rpm.
    pub engine_rpm: [Option<f64>; ENGINES],
    /// Speed of each shaft, rpm.
    pub shaft_rpm: [Option<f64>; ENGINES],
    /// Water depth, m.
    pub depth: Option<f64>,
    /// Fuel of all engines together, m³/s.
    pub fuel: Option<f64>,
    /// Latitude and longitude, degrees.
    pub position: Option<(f64, f64)>,
}

impl Sample {
    /// Mean speed of the engines that were read, rpm; that of the shafts when no engine was.
    #[must_use]
    pub fn rpm(&self) -> Option<f64> {
        mean_of(&self.engine_rpm).or_else(|| mean_of(&self.shaft_rpm))
    }

    /// Takes from `other` what this one does not have.
    pub(crate) fn fill(&mut self, other: &Sample) {
        if self.over_ground.is_none() && self.course.is_none() {
            (self.over_ground, self.course) = (other.over_ground, other.course);
        } else {
            self.over_ground = self.over_ground.or(other.over_ground);
            self.course = self.course.or(other.course);
        }
        self.through_water = self.through_water.or(other.through_water);
        for at in 0..ENGINES {
            self.engine_rpm[at] = self.engine_rpm[at].or(other.engine_rpm[at]);
            self.shaft_rpm[at] = self.shaft_rpm[at].or(other.shaft_rpm[at]);
        }
        self.depth = self.depth.or(other.depth);
        self.fuel = self.fuel.or(other.fuel);
        self.position = self.position.or(other.position);
    }
}

fn mean_of(values: &[Option<f64>; ENGINES]) -> Option<f64> {
    let (mut sum, mut count) = (0.0, 0.0);
    for value in values.iter().flatten() {
        sum += value;
        count += 1.0;
    }
    (count > 0.0).then(|| sum / count)
}

/// The difference of two directions, degrees, -180 to 180.
#[must_use]
pub fn turn(from: f64, to: f64) -> f64 {
    (to - from + 180.0).rem_euclid(360.0) - 180.0
}

/// What a value in a log is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Channel {
    OverGround,
    ThroughWater,
    Course,
    Engine(usize),
    Shaft(usize),
    Depth,
    Fuel(usize),
}

impl Channel {
    /// The value as it is kept, or why it cannot be: what no small craft's instrument can mean.
    pub(crate) fn checked(self, value: f64) -> Result<f64, &'static str> {
        let (value, low, high, why) = match self {
            Channel::OverGround => (value, 0.0, 75.0, "a speed over ground outside 0 to 146 kn"),
            Channel::ThroughWater => (value, -10.0, 75.0, "a speed through the water outside -19 to 146 kn"),
            // The sign is a direction of rotation.
            Channel::Engine(_) | Channel::Shaft(_) => (value.abs(), 0.0, 15_000.0, "a rotation above 15000 rpm"),
            Channel::Depth => (value, 0.0, 12_000.0, "a depth outside 0 to 12000 m"),
            Channel::Fuel(_) => (value, 0.0, 1e-3, "a fuel rate outside 0 to 3600 L/h"),
            Channel::Course => (value, -360.0, 720.0, "a course that is no direction"),
        };
        if !value.is_finite() {
            return Err("a value that is not a number");
        }
        if (low..=high).contains(&value) { Ok(value) } else { Err(why) }
    }
}
