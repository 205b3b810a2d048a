//! One boat's answers, worked out once, and every picture of it.
use counsel::report::{Choice, Comparison, Diagnosis, Evidence};
use counsel::{Change, Curves, Options};
use draw::place::Place;
use draw::{Drawn, Picture, Sheet};
use job::Job;
use std::sync::OnceLock;

#[derive(Clone)]
pub struct Case {
    pub curves: Curves,
    pub changed: Curves,
    pub comparison: Comparison,
    pub choice: Choice,
    pub evidence: Evidence,
    pub diagnosis: Diagnosis,
    pub drawn: Drawn,
    pub place: Place,
    pub fit: counsel::fit::report::Fit,
    pub bore: counsel::order::report::BoreDrawing,
}

pub fn job(name: &str) -> Job {
    let file = format!("{}/../../examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    Job::read(&std::fs::read_to_string(file).unwrap()).unwrap().job
}

pub fn case(name: &str) -> Case {
    let job = job(name);
    let options = Options { boats: 400, seed: 1 };
    let change = Change { pitch: job.propeller.pitch.as_ref().map(|p| 0.88 * p.middle), ..Change::default() };
    Case {
        curves: counsel::curves(&job, &options).unwrap(),
        changed: counsel::curves_after(&job, &change, &options).unwrap(),
        comparison: counsel::compare(&job, &change, &options).unwrap(),
        choice: counsel::choose(&job, &options).unwrap(),
        evidence: counsel::evidence(&job, &options).unwrap(),
        diagnosis: counsel::diagnose(&job, &options).unwrap(),
        drawn: Drawn::of_job(&job).unwrap(),
        place: Place::of_job(&job).unwrap(),
        fit: counsel::fit(&job, &options).unwrap(),
        bore: counsel::order(&job, &options).unwrap().bore,
    }
}

pub fn kittiwake() -> &'static Case {
    static CASE: OnceLock<Case> = OnceLock::new();
    CASE.get_or_init(|| case("kittiwake"))
}

pub fn all(case: &Case, sheet: &Sheet) -> Vec<(&'static str, Picture)> {
    vec![
        ("demand", draw::demand::picture(sheet, &case.curves, None)),
        ("change", draw::demand::picture(sheet, &case.changed, Some(&case.comparison))),
        ("flow", draw::flow::picture(sheet, &case.curves.flows)),
        ("speeds", draw::speeds::picture(sheet, &case.curves)),
        ("cavitation", draw::cavitation::picture(sheet, &case.curves)),
        ("shortlist", draw::shortlist::picture(sheet, &case.choice)),
        ("known", draw::known::picture(sheet, &case.evidence)),
        ("causes", draw::causes::picture(sheet, &case.diagnosis)),
        ("propeller", draw::propeller::picture(sheet, &case.drawn)),
        ("place", draw::place::picture(sheet, &case.place)),
        ("rates", draw::rates::picture(sheet, &case.fit)),
        ("walk", draw::walk::picture(sheet, &case.fit)),
        ("bore", draw::bore::picture(sheet, &case.bore).unwrap()),
    ]
}
