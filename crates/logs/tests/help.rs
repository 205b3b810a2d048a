//! Made-up logs. The harbour Port Merrin and its positions are invented.

use logs::{Format, KNOT, Log, Options, Refusal};

/// Off Port Merrin (invented).
pub const MERRIN: (f64, f64) = (50.25, -4.5);
/// 2026-05-02T10:00:00Z, POSIX seconds.
pub const START: f64 = 1_777_716_000.0;

/// A small generator of equally distributed numbers in 0 to 1 (splitmix64), so that every run of a test is the same.
pub struct Dice(pub u64);

impl Dice {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// Normally distributed, mean 0, standard deviation 1 (Box-Muller).
    pub fn normal(&mut self) -> f64 {
        (-2.0 * self.unit().max(1e-300).ln()).sqrt() * (std::f64::consts::TAU * self.unit()).cos()
    }
}

pub fn read(name: &str, bytes: &[u8]) -> Result<Log, Refusal> {
    logs::read(name, &mut &bytes[..], Some(bytes.len() as u64), &Options::default(), &mut |_, _| {})
}

pub fn read_as(format: Format, bytes: &[u8]) -> Result<Log, Refusal> {
    let options = Options { format: Some(format), ..Options::default() };
    logs::read("a log", &mut &bytes[..], None, &options, &mut |_, _| {})
}

/// A sentence with its checksum: XOR of what stands between `$` and `*`.
pub fn sentence(body: &str) -> String {
    let sum = body.bytes().fold(0, |sum, c| sum ^ c);
    format!("${body}*{sum:02X}\r\n")
}

/// One moment of a made-up trial.
#[derive(Clone, Copy)]
pub struct Moment {
    pub t: f64,
    pub rpm: f64,
    /// Over ground, kn.
    pub ground: f64,
    /// Through water, kn.
    pub water: f64,
    pub course: f64,
    pub position: (f64, f64),
}

/// Legs of (seconds, rpm, water speed kn, course), a current of (kn, towards): what instruments without error would show.
/// Turns of 30 s lie between the legs, at 1200 rpm.
pub fn track(legs: &[(f64, f64, f64, f64)], current: (f64, f64)) -> Vec<Moment> {
    let mut out = Vec::new();
    let (mut lat, mut lon) = MERRIN;
    let mut t = 0.0;
    let mut step = |rpm: f64, water: f64, heading: f64| {
        let (he, hn) = heading.to_radians().sin_cos();
        let (ce, cn) = current.1.to_radians().sin_cos();
        let (east, north) = (water * he + current.0 * ce, water * hn + current.0 * cn);
        let (ground, course) = (east.hypot(north), east.atan2(north).to_degrees().rem_euclid(360.0));
        out.push(Moment { t: START + t, rpm, ground, water, course, position: (lat, lon) });
        // WGS 84 metres per degree near 50.25° N: 111 233 north, 71 305 east (radii of curvature).
        lat += north * KNOT / 111_233.0;
        lon += east * KNOT / 71_305.0;
        t += 1.0;
    };
    for (at, (seconds, rpm, water, course)) in legs.iter().enumerate() {
        for _ in 0..*seconds as usize {
            step(*rpm, *water, *course);
        }
        if let Some(next) = legs.get(at + 1) {
            for n in 0..30 {
                step(1200.0, 4.0, course + (next.3 - course) * f64::from(n) / 30.0);
            }
        }
    }
    out
}

pub fn clock(t: f64) -> String {
    let s = (t - START) as u64 + 36_000;
    format!("{:02}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60)
}

fn degrees(value: f64, wide: usize) -> String {
    let whole = value.abs().floor();
    format!("{:0wide$}{:07.4}", whole as u64, (value.abs() - whole) * 60.0)
}

pub fn nmea(moments: &[Moment]) -> String {
    let mut text = String::new();
    for m in moments {
        let hms = clock(m.t).replace(':', "");
        let (lat, lon) = (degrees(m.position.0, 2), degrees(m.position.1, 3));
        text += &sentence(&format!("GPRMC,{hms}.00,A,{lat},N,{lon},W,{:.2},{:.1},020526,,,A", m.ground, m.course));
        text += &sentence(&format!("IIVHW,,T,,M,{:.2},N,{:.2},K", m.water, m.water * 1.852));
        text += &sentence(&format!("IIRPM,E,0,{:.0},,A", m.rpm));
        text += &sentence("IIDPT,12.4,0.3,");
        text += &sentence("GPGSV,1,1,01,04,77,045,00");
    }
    text
}

pub fn csv(moments: &[Moment]) -> String {
    let mut text = "time,engine rpm,speed over ground (kn),STW [kn],COG (deg),depth (m),fuel (L/h)\n".to_owned();
    for m in moments {
        text += &format!(
            "2026-05-02T{}Z,{:.0},{:.3},{:.3},{:.2},12.7,4.1\n",
            clock(m.t),
            m.rpm,
            m.ground,
            m.water,
            m.course
        );
    }
    text
}

pub fn gpx(moments: &[Moment]) -> String {
    let mut text =
        "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>\n"
            .to_owned();
    for m in moments {
        text += &format!(
            "<trkpt lat=\"{:.7}\" lon=\"{:.7}\"><ele>0</ele><time>2026-05-02T{}Z</time></trkpt>\n",
            m.position.0,
            m.position.1,
            clock(m.t)
        );
    }
    text + "</trkseg></trk></gpx>\n"
}

pub fn signalk(moments: &[Moment]) -> String {
    let mut text = String::new();
    for m in moments {
        text += &format!(
            "{{\"context\":\"vessels.self\",\"updates\":[{{\"timestamp\":\"2026-05-02T{}.000Z\",\"$source\":\"a.b\",\"values\":[\
             {{\"path\":\"navigation.speedOverGround\",\"value\":{:.5}}},\
             {{\"path\":\"navigation.courseOverGroundTrue\",\"value\":{:.5}}},\
             {{\"path\":\"navigation.speedThroughWater\",\"value\":{:.5}}},\
             {{\"path\":\"propulsion.main.revolutions\",\"value\":{:.5}}},\
             {{\"path\":\"propulsion.main.fuel.rate\",\"value\":1.138889e-6}},\
             {{\"path\":\"environment.depth.belowTransducer\",\"value\":12.4}}]}}]}}\n",
            clock(m.t),
            m.ground * KNOT,
            m.course.to_radians(),
            m.water * KNOT,
            m.rpm / 60.0
        );
    }
    text
}

/// A trial of two settings, each both ways, in 0.4 kn of current.
pub fn trial() -> Vec<Moment> {
    let legs = [
        (120.0, 2900.0, 6.7, 40.0),
        (130.0, 2900.0, 6.7, 220.0),
        (100.0, 2300.0, 6.0, 40.0),
        (90.0, 2300.0, 6.0, 220.0),
    ];
    track(&legs, (0.4, 40.0))
}
