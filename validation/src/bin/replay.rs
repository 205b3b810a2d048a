//! Replays the real boats and writes the table.
fn main() {
    let t = std::time::Instant::now();
    let outcomes = validation::boats::replay(&counsel::Options::default());
    eprintln!("{:?}", t.elapsed());
    for o in &outcomes {
        println!("{}\t{}\t{}\t{:?}\t{}\t{}\t{:.1}\t{:.1}\t{:.1}\t{:.1}\t{}\t{}", o.id, o.family, o.used, o.way, o.quantity, o.at, o.measured, o.band.low, o.band.middle, o.band.high, o.inside(), o.doubted);
    }
}
