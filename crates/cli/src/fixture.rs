//! Invented answers that exercise every part of the pages.

use counsel::report::*;

pub fn band(low: f64, middle: f64, high: f64, unit: &'static str) -> Band {
    Band { low, middle, high, unit }
}

pub fn throttle(rpm: f64) -> FullThrottle {
    FullThrottle {
        engine_speed: band(rpm - 81.3, rpm, rpm + 82.9, "rpm"),
        speed: band(6.12, 6.31, 6.54, "kn"),
        governed: 0.002,
        power: band(15.21, 16.83, 18.4, "kW"),
        fuel: band(4.61, 5.13, 5.72, "L/h"),
        stuck_at_hump: 0.0,
    }
}

pub fn limits() -> Limits {
    Limits {
        apparent_slip: band(31.2, 35.5, 39.9, "%"),
        real_slip: band(38.8, 43.1, 47.0, "%"),
        efficiency: band(44.1, 47.2, 50.3, "%"),
        back_cavitation: band(1.8, 3.9, 8.1, "%"),
        thrust_lost: band(0.0, 0.0, 0.4, "%"),
        tip_speed: band(22.9, 23.7, 24.6, "m/s"),
        blade_loading: band(38.7, 43.9, 50.2, "kPa"),
        thrust: band(1523.0, 1711.0, 1930.0, "N"),
    }
}

pub fn crowd(explained: bool) -> Crowd {
    Crowd {
        boats: 4000,
        effective: 812.4,
        explained,
        statement: if explained { String::new() } else { "No boat explains the readings.".to_owned() },
        seed: 1,
    }
}

pub fn accepted() -> AcceptedBand {
    AcceptedBand { low: 3600.0, high: 3700.0, unit: "rpm", source: "rated speed, up to 100 rpm above it".to_owned() }
}

pub fn hangs() -> Vec<Hang> {
    let hang = |quantity: &str, value: &str, stated, source: &str, share| Hang {
        quantity: quantity.to_owned(),
        value: value.to_owned(),
        stated,
        source: source.to_owned(),
        share,
        measure: "measure it".to_owned(),
    };
    vec![
        hang("pitch", "11 in, 10.6 to 11.4", true, "stamp", 0.41),
        hang(
            "resistance method",
            "factor 1, 0.9 to 1.1",
            false,
            "comparison with 17 measured models of yachts, one series",
            0.22,
        ),
        hang("wake", "0.1 to 0.3", false, "handbook", 0.001),
    ]
}

pub fn finding(gravity: Gravity, caution: Option<&str>) -> Finding {
    Finding {
        gravity,
        code: "over-pitched",
        sentence:
            "The engine cannot reach its rated speed: 2 820 to 2 980 rpm of the 3 600 it is rated at, with the bottom \
                   clean and the boat loaded."
                .to_owned(),
        advice: "take pitch out of it.".to_owned(),
        hangs_on: vec!["pitch".to_owned(), "tachometer".to_owned()],
        source: "common practice, no source".to_owned(),
        caution: caution.map(str::to_owned),
    }
}

pub fn judgement() -> Judgement {
    let now = throttle(2900.0);
    Judgement {
        pair: None,
        title: "Kittiwake: will not rev out since the refit".to_owned(),
        headline: "Too much pitch, 9 chances in 10.".to_owned(),
        full_throttle: now,
        clean_loaded: FullThrottle { stuck_at_hump: 0.2, ..throttle(2960.0) },
        accepted_band: accepted(),
        verdict: Verdict { over_pitched: 0.91, right: 0.08, under_pitched: 0.01 },
        limits: limits(),
        load: vec![LoadRow {
            engine_speed: 2000.0,
            speed: band(4.9, 5.1, 5.3, "kn"),
            power: band(5.5, 6.1, 6.8, "kW"),
            load: band(48.0, 55.0, 61.0, "%"),
            fuel: band(1.6, 1.8, 2.1, "L/h"),
            apparent_slip: band(25.0, 30.0, 33.0, "%"),
        }],
        findings: vec![
            finding(Gravity::Stop, Some("hands off the shaft while the engine can start.")),
            finding(Gravity::Well, None),
        ],
        hangs_on: hangs(),
        measure_next: "Measure the pitch ashore at 0.7 R on every blade.".to_owned(),
        readings: vec![ReadingFit {
            reading: "full throttle".to_owned(),
            quantity: "engine speed",
            measured: 2900.0,
            expected: band(2710.0, 2990.0, 3280.0, "rpm"),
            weighed: band(2830.0, 2900.0, 2970.0, "rpm"),
            surprise: -0.4,
        }],
        crowd: crowd(false),
        notes: vec!["the pitch ratio lies outside what the series was tested at".to_owned()],
    }
}

pub fn comparison() -> Comparison {
    let side = |what: &str, rpm, over_pitched| Side {
        what: what.to_owned(),
        full_throttle: throttle(rpm),
        verdict: Verdict { over_pitched, right: 1.0 - over_pitched, under_pitched: 0.0 },
        limits: limits(),
        cruise_fuel: band(2.4, 2.6, 2.9, "L/h"),
    };
    Comparison {
        title: "Kittiwake".to_owned(),
        headline: "With 9 in instead of 11 the engine should turn 540 to 690 rpm faster.".to_owned(),
        cruise_speed: 5.5,
        before: side("16 x 11 in, 3 blades", 2900.0, 0.91),
        after: side("16 x 9 in, 3 blades", 3520.0, 0.4),
        difference: Difference {
            engine_speed: band(541.0, 620.0, 688.0, "rpm"),
            speed: band(-0.02, 0.11, 0.24, "kn"),
            cruise_fuel: band(-0.01, 0.0, 0.01, "L/h"),
        },
        accepted_band: accepted(),
        hangs_on: hangs(),
        crowd: crowd(true),
        notes: vec![],
    }
}

pub fn candidate(step: Step, diameter: f64, pitch: f64, rpm: f64, in_band: f64) -> Candidate {
    Candidate {
        step,
        what: "some step".to_owned(),
        diameter: diameter * 25.4,
        pitch: pitch * 25.4,
        blades: 3,
        area_ratio: 0.5,
        cup: 0.0,
        reduction: 2.6,
        full_throttle: throttle(rpm),
        in_band,
        verdict: Verdict { over_pitched: 1.0 - in_band, right: in_band, under_pitched: 0.0 },
        cruise_fuel: band(2.4, 2.6, 2.9, "L/h"),
        back_cavitation: band(1.8, 3.9, 8.1, "%"),
        tow_pull: Some(band(2100.0, 2400.0, 2650.0, "N")),
        merit: 50.0,
        why: "it lies in the band.".to_owned(),
    }
}

pub fn choice() -> Choice {
    Choice {
        title: "Kittiwake".to_owned(),
        headline: "Re-pitch to 9 in.".to_owned(),
        duty: "mixed",
        cruise_speed: 5.5,
        shortlist: vec![
            candidate(Step::Repitch, 16.0, 9.0, 3610.0, 0.8),
            candidate(Step::NewPropeller, 15.5, 9.5, 3580.0, 0.6),
            candidate(Step::Ratio, 16.0, 11.0, 3300.0, 0.3),
            candidate(Step::Leave, 16.0, 11.0, 2900.0, 0.02),
        ],
        considered: 1234,
        largest_diameter: 431.8,
        largest_diameter_source: "stated in the job".to_owned(),
        room: None,
        misfits: 0,
        left_out: vec![],
        accepted_band: accepted(),
        hangs_on: hangs(),
        crowd: crowd(true),
        notes: vec![],
    }
}

pub fn cause(cause: &str, chance: f64, prior: f64, cost: Cost) -> Cause {
    Cause {
        code: "growth-on-blades",
        cause: cause.to_owned(),
        chance,
        prior,
        would_need: "blades as rough as 300 to 700 µm.".to_owned(),
        speaks_for: vec![
            "it began within a season and nothing else changed.".to_owned(),
            "growth of that kind costs 350 to 620 rpm on this boat; 480 to 560 are missing.".to_owned(),
        ],
        against: vec!["the boat was scrubbed three weeks before the reading.".to_owned()],
        remedy: "Dive and scrub the blades, then read full throttle again.".to_owned(),
        cost,
    }
}

pub fn diagnosis() -> Diagnosis {
    let measurement = |what: &str, worth, cost, haul_out| NextMeasurement {
        code: "scrub-and-rerun",
        measurement: what.to_owned(),
        worth,
        because: "The chance of naming the right cause should rise from 61 in 100 to 78 in 100.".to_owned(),
        cost,
        haul_out,
    };
    Diagnosis {
        pair: None,
        title: "Guillemot: lost 500 rpm over the summer".to_owned(),
        headline: "Growth on the blades, 6 chances in 10; the bottom next.".to_owned(),
        stop: vec!["a crack in a blade root: do not run it.".to_owned()],
        missing: Some(band(481.0, 520.0, 562.0, "rpm")),
        causes: vec![
            cause("growth on the blades", 0.61, 0.18, Cost::Small),
            cause("growth on the bottom beyond what is stated in the job file", 0.22, 0.3, Cost::Large),
            cause("tachometer out", 0.08, 0.1, Cost::Free),
            cause("pitch too great", 0.02, 0.12, Cost::Large),
            cause("reduction not as plated", 0.001, 0.02, Cost::Large),
        ],
        explained: true,
        next_measurements: vec![
            measurement("scrub the blades and run full throttle again.", 0.17, Cost::Small, false),
            measurement("measure the pitch of every blade", 0.001, Cost::Large, true),
        ],
        inch_of_pitch: band(92.0, 121.0, 158.0, "rpm"),
        crowd: crowd(true),
        notes: vec!["the speed lies above the range the method was tested in".to_owned()],
    }
}
