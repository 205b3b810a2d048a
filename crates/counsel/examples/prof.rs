#![allow(missing_docs)]
use std::time::Instant;
use counsel::crowd::{*, plan::Plan, latent::COUNT, definite::Definite};
fn main() {
    let path = std::env::args().nth(1).unwrap();
    let text = std::fs::read_to_string(&path).unwrap();
    let job = job::Job::read(&text).ok().unwrap().job;
    let plan = Plan::new(&job).unwrap();
    let n = 4000;
    for _ in 0..2 {
    let t = Instant::now();
    let z: Vec<f64> = (0..n).flat_map(|i| (0..COUNT).map(move |d| normal::draw(i as u32, d as u32, 1))).collect();
    println!("draw {:?}", t.elapsed());
    let t = Instant::now();
    let rows: Vec<_> = z.chunks(COUNT).map(|r| plan.values(r)).collect();
    println!("values {:?}", t.elapsed());
    let t = Instant::now();
    let boats: Vec<Definite> = rows.iter().map(|r| Definite::new(&plan, *r)).collect();
    println!("boats {:?}", t.elapsed());
    let t = Instant::now();
    let f: f64 = boats.iter().map(|b| b.fitted(&plan, &plan.setups[0]).installation.diameter).sum();
    println!("fitted {:?} {f}", t.elapsed());
    let fs: Vec<_> = boats.iter().map(|b| b.fitted(&plan, &plan.setups[0]).installation).collect();
    let t = Instant::now();
    let f: f64 = fs.iter().map(|b| b.full_throttle().point.speed).sum();
    println!("ft {:?} {f}", t.elapsed());
    let t = Instant::now();
    let c = Crowd::draw(plan.clone(), n, 1);
    println!("crowd {:?} eff {}", t.elapsed(), c.effective);
    let t = Instant::now();
    let j = counsel::judge(&job, &counsel::Options::default());
    println!("judge {:?} {}", t.elapsed(), j.is_ok());
    let t = Instant::now();
    let j = counsel::choose(&job, &counsel::Options::default());
    println!("choose {:?} {}", t.elapsed(), j.is_ok());
    }
}
