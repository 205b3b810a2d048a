//! dev
fn main() {
    let path = std::env::args().nth(1).unwrap();
    let text = std::fs::read_to_string(&path).unwrap();
    let job = job::Job::read(&text).map_err(|p| job::render(&p, &path, &text, false)).unwrap().job;
    let t = std::time::Instant::now();
    let j = counsel::judge(&job, &counsel::Options::default());
    let t = t.elapsed();
    match j {
        Ok(j) => println!("{}", serde_json::to_string_pretty(&j).unwrap()),
        Err(l) => println!("{l}"),
    }
    eprintln!("{t:?}");
}
