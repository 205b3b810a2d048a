//! How fast logs are read, and how fast steady stretches are found: megabytes and samples a second.
//!
//! Each log is made once, about 20 MB of a boat's day; the read includes finding the format, binning and sorting.

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use logs::{Limits, Options};
use std::hint::black_box;

fn sentence(body: &str) -> String {
    let sum = body.bytes().fold(0, |sum, c| sum ^ c);
    format!("${body}*{sum:02X}\r\n")
}

/// Text of at least `size` bytes made of `line` for the seconds 0, 1, 2, ...
fn fill(head: &str, size: usize, line: impl Fn(u64, &mut String)) -> String {
    let mut text = head.to_owned();
    let mut second = 0;
    while text.len() < size {
        line(second, &mut text);
        second += 1;
    }
    text
}

fn hms(second: u64) -> (u64, u64, u64, u64) {
    (second / 86_400, second / 3600 % 24, second / 60 % 60, second % 60)
}

fn reading(c: &mut Criterion) {
    const SIZE: usize = 20 << 20;
    let speed = |t: u64| 6.5 + 0.1 * ((t % 17) as f64 - 8.0) / 8.0;
    let nmea = fill("", SIZE, |t, text| {
        let (d, h, m, s) = hms(t);
        *text += &sentence(&format!(
            "GPRMC,{h:02}{m:02}{s:02}.00,A,5015.{:04},N,00430.{:04},W,{:.2},{:.1},{:02}0526,,,A",
            t % 10_000,
            t % 9973,
            speed(t),
            40.0 + (t % 5) as f64,
            1 + d
        ));
        *text += &sentence(&format!("GPVTG,{:.1},T,,M,{:.2},N,{:.2},K,A", 40.0, speed(t), speed(t) * 1.852));
        *text += &sentence(&format!("IIVHW,,T,,M,{:.2},N,,K", speed(t)));
        *text += &sentence(&format!("IIRPM,E,0,{},,A", 2900 + t % 7));
        *text += &sentence("GPGSV,3,1,11,03,03,111,00,04,15,270,00,06,01,010,00,13,06,292,00");
        *text += &sentence("IIMWV,041.0,R,12.3,N,A");
    });
    let csv = fill("time,rpm,speed (kn),course (deg),depth (m)\n", SIZE, |t, text| {
        let (d, h, m, s) = hms(t);
        *text += &format!(
            "2026-05-{:02}T{h:02}:{m:02}:{s:02}Z,{},{:.2},{:.1},12.7\n",
            1 + d % 28,
            2900 + t % 7,
            speed(t),
            40.0
        );
    });
    let numbers = fill("time (s),rpm,speed (kn),course (deg),depth (m)\n", SIZE, |t, text| {
        *text += &format!("{:.1},{},{:.2},{:.1},12.7\n", t as f64 * 0.2, 2900 + t % 7, speed(t), 40.0);
    });
    let gpx = fill("<gpx version=\"1.1\"><trk><trkseg>\n", SIZE, |t, text| {
        let (d, h, m, s) = hms(t);
        *text += &format!(
            "<trkpt lat=\"{:.7}\" lon=\"{:.7}\"><ele>0.4</ele><time>2026-05-{:02}T{h:02}:{m:02}:{s:02}Z</time></trkpt>\n",
            50.0 + t as f64 * 2e-6,
            -4.5 + t as f64 * 3e-6,
            1 + d % 28
        );
    }) + "</trkseg></trk></gpx>";
    let signalk = fill("", SIZE, |t, text| {
        let (d, h, m, s) = hms(t);
        *text += &format!(
            "{{\"context\":\"vessels.self\",\"updates\":[{{\"timestamp\":\"2026-05-{:02}T{h:02}:{m:02}:{s:02}.000Z\",\"$source\":\"a.b\",\"values\":[{{\"path\":\"navigation.speedOverGround\",\"value\":{:.3}}},{{\"path\":\"propulsion.main.revolutions\",\"value\":48.3}}]}}]}}\n",
            1 + d % 28,
            speed(t) * logs::KNOT
        );
    });
    let mut group = c.benchmark_group("read");
    group.sample_size(10);
    for (name, text) in
        [("nmea", &nmea), ("csv", &csv), ("csv, seconds, 5 Hz", &numbers), ("gpx", &gpx), ("signalk", &signalk)]
    {
        group.throughput(Throughput::Bytes(text.len() as u64));
        group.bench_function(name, |b| {
            b.iter(|| {
                let options = Options::default();
                logs::read("a log", &mut black_box(text.as_bytes()), None, &options, &mut |_, _| {})
            });
        });
    }
    group.finish();

    let log = logs::read("a log", &mut csv.as_bytes(), None, &Options::default(), &mut |_, _| {});
    if let Ok(log) = log {
        let mut group = c.benchmark_group("steady");
        group.sample_size(10).throughput(Throughput::Elements(log.samples.len() as u64));
        group.bench_function("stretches", |b| b.iter(|| logs::stretches(black_box(&log.samples), &Limits::default())));
        group.finish();
    }
}

criterion_group!(benches, reading);
criterion_main!(benches);
