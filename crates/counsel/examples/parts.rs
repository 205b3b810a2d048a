fn main() {
    let path = std::env::args().nth(1).unwrap();
    let text = std::fs::read_to_string(&path).unwrap();
    let mut job = job::Job::read(&text).ok().unwrap().job;
    job.readings.clear();
    let plan = counsel::crowd::plan::Plan::new(&job).unwrap();
    let z = vec![0.0; counsel::crowd::latent::COUNT];
    let b = counsel::crowd::definite::Definite::new(&plan, plan.values(&z));
    println!("{:#?}", b.form);
    println!("{:?} {:?}", b.stern, plan.series);
    let k = counsel::crowd::physics::hull_kind(plan.knowledge.kind.0);
    let f = b.fitted(&plan, &Default::default());
    println!("screw {:?}", f.screw);
    let ft = f.installation.full_throttle();
    println!("FT {:?}", ft);
    println!("kn  R/W  fr form rough app wave trans spray air | curve | thrust avail");
    for kn in [4.,6.,8.,10.,12.,14.,16.,18.,20.,24.,28.,32.,36.,40.] {
        let v = kn*0.514444;
        let p = hydro::hull::total::total(k, &b.form, &b.water, v).value;
        let w = b.form.mass*9.81;
        let pt = f.installation.at_speed(v);
        println!("{kn:4} {:.3} {:.0} {:.0} {:.0} {:.0} {:.0} {:.0} {:.0} {:.0} | {:.0} | rpm {:.0} P {:.1} eta {:.3} lost {:.3} opc {:.3}", p.total()/w, p.friction,p.form,p.roughness,p.appendages,p.wave,p.transom,p.spray,p.air, f.installation.resistance.at(v), pt.map_or(0., |p| p.engine_speed.rpm()), pt.map_or(0., |p| p.brake_power/1000.), pt.map_or(0., |p| p.efficiency), pt.map_or(0., |p| p.thrust_lost), pt.map_or(0., |q| p.total()*v/q.brake_power/ f.installation.screws as f64));
    }
}
