//! Values gathered into bins of one second while a log is read, so that memory does not grow with the length of a file.

use crate::sample::{Channel, ENGINES, Sample};
use std::collections::HashMap;

/// Bins held before they are made twice as wide: three days at one second.
const MOST: usize = 1 << 18;

/// Channels kept as plain means: over ground, through water, engines, shafts, depth, fuel per engine.
const PLAIN: usize = 3 + 3 * ENGINES;

#[derive(Clone, Copy)]
struct Bin {
    key: i64,
    time: f64,
    sums: [f64; PLAIN],
    counts: [u32; PLAIN],
    /// Sums of sine and cosine of the course.
    course: (f64, f64),
    /// Sums of latitude, longitude and time, number.
    place: (f64, f64, f64, u32),
    times: u32,
}

impl Bin {
    fn new(key: i64) -> Bin {
        Bin {
            key,
            time: 0.0,
            sums: [0.0; PLAIN],
            counts: [0; PLAIN],
            course: (0.0, 0.0),
            place: (0.0, 0.0, 0.0, 0),
            times: 0,
        }
    }

    fn merge(&mut self, other: &Bin) {
        for at in 0..PLAIN {
            self.sums[at] += other.sums[at];
            self.counts[at] = self.counts[at].saturating_add(other.counts[at]);
        }
        self.course = (self.course.0 + other.course.0, self.course.1 + other.course.1);
        let (a, b, c, n) = other.place;
        self.place = (self.place.0 + a, self.place.1 + b, self.place.2 + c, self.place.3.saturating_add(n));
        self.time += other.time;
        self.times = self.times.saturating_add(other.times);
    }

    fn sample(&self) -> Sample {
        let mean = |at: usize| (self.counts[at] > 0).then(|| self.sums[at] / f64::from(self.counts[at]));
        let (sine, cosine) = self.course;
        let fuel: Vec<f64> = (0..ENGINES).filter_map(|e| mean(3 + 2 * ENGINES + e)).collect();
        let (lat, lon, time, places) = self.place;
        let n = f64::from(places.max(1));
        Sample {
            // A position belongs to its own moment within the bin.
            time: if places > 0 { time / n } else { self.time / f64::from(self.times.max(1)) },
            over_ground: mean(0),
            through_water: mean(1),
            depth: mean(2),
            course: (sine != 0.0 || cosine != 0.0).then(|| sine.atan2(cosine).to_degrees().rem_euclid(360.0)),
            engine_rpm: std::array::from_fn(|e| mean(3 + e)),
            shaft_rpm: std::array::from_fn(|e| mean(3 + ENGINES + e)),
            fuel: (!fuel.is_empty()).then(|| fuel.iter().sum()),
            position: (places > 0).then(|| (lat / n, (lon / n + 180.0).rem_euclid(360.0) - 180.0)),
        }
    }
}

/// The bins of a log being read.
pub(crate) struct Bins {
    bins: Vec<Bin>,
    at: HashMap<i64, usize>,
    last: Option<(i64, usize)>,
    /// Width, s.
    pub(crate) width: i64,
    latest: f64,
    /// How often time went back by more than a second.
    pub(crate) backward: u64,
    /// How many moments were seen.
    pub(crate) moments: u64,
}

impl Bins {
    pub(crate) fn new() -> Bins {
        Bins {
            bins: Vec::new(),
            at: HashMap::new(),
            last: None,
            width: 1,
            latest: f64::NEG_INFINITY,
            backward: 0,
            moments: 0,
        }
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.bins.is_empty()
    }

    /// Says that a new moment of the log is at hand (for counting; values follow).
    pub(crate) fn moment(&mut self, time: f64) {
        self.moments += 1;
        if time < self.latest - 1.0 {
            self.backward += 1;
        }
        self.latest = time;
    }

    fn bin(&mut self, time: f64) -> &mut Bin {
        let key = (time.floor() as i64).div_euclid(self.width);
        let index = match self.last {
            Some((last, index)) if last == key => index,
            _ => {
                if self.bins.len() >= MOST && !self.at.contains_key(&key) {
                    self.widen();
                    return self.bin(time);
                }
                let next = self.bins.len();
                let index = *self.at.entry(key).or_insert(next);
                if index == next {
                    self.bins.push(Bin::new(key));
                }
                self.last = Some((key, index));
                index
            }
        };
        &mut self.bins[index]
    }

    /// Makes the bins twice as wide.
    fn widen(&mut self) {
        self.width *= 2;
        self.rekey(|key| key.div_euclid(2));
    }

    fn rekey(&mut self, new: impl Fn(i64) -> i64) {
        let old = std::mem::take(&mut self.bins);
        self.at.clear();
        self.last = None;
        for mut bin in old {
            bin.key = new(bin.key);
            match self.at.get(&bin.key) {
                Some(index) => self.bins[*index].merge(&bin),
                None => {
                    self.at.insert(bin.key, self.bins.len());
                    self.bins.push(bin);
                }
            }
        }
    }

    /// Moves everything by whole days: a date that became known only later.
    pub(crate) fn shift(&mut self, days: i64) {
        let (seconds, width) = (days * 86_400, self.width);
        for bin in &mut self.bins {
            bin.time += seconds as f64 * f64::from(bin.times);
            bin.place.2 += seconds as f64 * f64::from(bin.place.3);
        }
        self.rekey(|key| (key * width + seconds).div_euclid(width));
        self.latest += seconds as f64;
    }

    /// Adds a value in the unit of [`Sample`], already checked.
    pub(crate) fn add(&mut self, time: f64, channel: Channel, value: f64) {
        let bin = self.bin(time);
        bin.time += time;
        bin.times += 1;
        let at = match channel {
            Channel::OverGround => 0,
            Channel::ThroughWater => 1,
            Channel::Depth => 2,
            Channel::Engine(e) => 3 + e.min(ENGINES - 1),
            Channel::Shaft(e) => 3 + ENGINES + e.min(ENGINES - 1),
            Channel::Fuel(e) => 3 + 2 * ENGINES + e.min(ENGINES - 1),
            Channel::Course => {
                let angle = value.to_radians();
                bin.course = (bin.course.0 + angle.sin(), bin.course.1 + angle.cos());
                return;
            }
        };
        bin.sums[at] += value;
        bin.counts[at] += 1;
    }

    /// Adds a position, degrees. Says why when it is none.
    pub(crate) fn place(&mut self, time: f64, latitude: f64, longitude: f64) -> Result<(), &'static str> {
        if !(latitude.abs() <= 90.0 && longitude.abs() <= 180.0) {
            return Err("a position outside the globe");
        }
        if latitude == 0.0 && longitude == 0.0 {
            return Err("a position of 0, 0: the receiver had none");
        }
        let bin = self.bin(time);
        // Across the date line the first longitude in the bin leads.
        let first = if bin.place.3 == 0 { longitude } else { bin.place.1 / f64::from(bin.place.3) };
        let near = longitude + 360.0 * ((first - longitude) / 360.0).round();
        bin.place = (bin.place.0 + latitude, bin.place.1 + near, bin.place.2 + time, bin.place.3 + 1);
        Ok(())
    }

    /// The samples in order of time.
    pub(crate) fn finish(mut self) -> Vec<Sample> {
        self.bins.sort_unstable_by_key(|bin| bin.key);
        let mut samples: Vec<Sample> = self.bins.iter().map(Bin::sample).collect();
        samples.sort_by(|a, b| a.time.total_cmp(&b.time));
        samples
    }
}
