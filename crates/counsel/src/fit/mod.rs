//! `fit`: everything between a good choice on paper and a propeller on the shaft.
//!
//! | file | what |
//! |---|---|
//! | [`report`] | the answer as plain data |
//! | `loads` | what the crowd puts on shaft and blades |
//! | `exchange` | another propeller in the same place, and the hard limits it breaks |
//! | `room` | clearances, rudder, removal, stack, immersion |
//! | `shaft` | shaft, key, bearings, gearbox, bore, seating |
//! | `blade` | stress in the blades |
//! | `shake` | orders, beats, shadow, hull pulse, balance, singing |
//! | `turn` | hand, paddlewheel effect, ventilation, drag under sail |
//! | `compare` | blade numbers, rakes and skews side by side |

mod blade;
mod bore;
mod compare;
pub(crate) mod exchange;
mod gearbox;
pub(crate) mod loads;
pub mod report;
mod room;
mod shaft;
mod shake;
mod turn;

pub(crate) use bore::{HUB_OVER_BORE, usual_hub};
pub(crate) use room::largest_diameter;
pub(crate) use shake::Shadows;

use crate::crowd::Crowd;
use crate::crowd::plan::Plan;
use crate::judge::{crowd_report, judged_setup};
use crate::panel::Panel;
use crate::report::Gravity;
use crate::{Lack, Options};
use job::Job;
use loads::{Loads, Subject};
use report::{Check, Fit, Place};

/// Representatives the loads are taken on.
const LOADED: usize = 320;

/// Checks as they come in.
#[derive(Default)]
struct Checks(Vec<Check>);

impl Checks {
    fn push(&mut self, check: Check) {
        self.0.push(check);
    }

    /// A check that cannot be made, with what is wanted for it.
    fn unknown(&mut self, code: &'static str, subject: &'static str, rule: &str, measure: &str) {
        self.0.push(Check {
            code,
            subject,
            gravity: Gravity::Watch,
            known: false,
            hard: false,
            sentence: format!("{}: not known.", crate::phrase::capital(subject)),
            value: None,
            least: None,
            most: None,
            rule: rule.to_owned(),
            measure: measure.to_owned(),
            caution: None,
        });
    }
}

/// Checks the propeller of a job in its place and on its shaft.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn fit(job: &Job, options: &Options) -> Result<Fit, Lack> {
    let crowd = Crowd::draw(Plan::new(job)?, options.boats, options.seed);
    let panel = Panel::of(&crowd, LOADED);
    let loads = Loads::of(job, &panel, &panel.run(&judged_setup(job)));
    let subject = Subject::of(job, &crowd.plan);
    let mut out = Checks::default();
    let hand = turn::hand(job, subject.twin, &mut out);
    room::checks(&subject, &loads, &mut out);
    shaft::checks(&subject, &loads, &mut out);
    blade::checks(&subject, &loads, &mut out);
    let avoid = shake::checks(&subject, &loads, &mut out);
    turn::ventilation(&subject, &mut out);
    let under_sail = turn::under_sail(&subject, &loads, &mut out);
    let walk = turn::walk(&subject, &loads, &hand);
    let mut checks = out.0;
    // What is known first, gravest first; then what is wanted.
    checks.sort_by_key(|c| (!c.known, c.gravity));
    let mm = |q: &Option<job::Quantity>| q.as_ref().map(|q| 1e3 * q.middle);
    let half = 500.0 * subject.diameter;
    let stern = &job.stern;
    Ok(Fit {
        title: job.title.clone(),
        headline: headline(&checks),
        propeller: subject.words(),
        orders: shake::table(&subject, &loads),
        avoid,
        blades: compare::blades(&subject, &loads),
        rake: compare::rake(&subject),
        skew: compare::skew(&subject, &loads),
        under_sail,
        place: Place {
            diameter: 1e3 * subject.diameter,
            above: mm(&stern.tip_clearance).or(mm(&stern.hull_above).map(|v| v - half)),
            below: mm(&stern.sole_clearance).or(mm(&stern.sole_below).map(|v| v - half)),
            ahead: mm(&stern.ahead_clearance),
            aft: mm(&stern.aft_clearance),
            immersion: mm(&job.propeller.immersion),
            shaft: mm(&job.shaft.diameter),
        },
        hand,
        walk,
        crowd: crowd_report(&crowd),
        notes: vec![
            "Loads are those of full throttle, clean and loaded, on the crowd; steady, in open water.".to_owned(),
            "Skew: strips with the Sears function in a synthetic wake: an estimate; the ratio counts, not the level."
                .to_owned(),
        ],
        checks,
    })
}

fn headline(checks: &[Check]) -> String {
    let count = |gravity: Gravity| checks.iter().filter(|c| c.known && c.gravity == gravity).count();
    let unknown = checks.iter().filter(|c| !c.known).count();
    let worst = checks.iter().find(|c| c.known && c.gravity <= Gravity::Mend);
    let things = |n: usize| if n == 1 { "1 thing".to_owned() } else { format!("{n} things") };
    let first = match worst {
        Some(check) if check.gravity == Gravity::Stop => format!("Stop: {}", check.sentence),
        Some(check) => format!("It does not fit yet: {}", check.sentence),
        None => {
            let are = |n: usize| if n == 1 { "1 thing is".to_owned() } else { format!("{n} things are") };
            match (count(Gravity::Watch), unknown) {
                (0, 0) => "It fits, by everything that was looked at.".to_owned(),
                (0, unknown) => format!("Nothing known speaks against it; {} not measured yet.", are(unknown)),
                (watch, 0) => format!("Nothing known forbids it; {} to be watched.", are(watch)),
                (watch, unknown) => {
                    format!(
                        "Nothing known forbids it; {} to be watched, {} not measured yet.",
                        are(watch),
                        are(unknown)
                    )
                }
            }
        }
    };
    let rest = count(Gravity::Stop) + count(Gravity::Mend);
    if rest > 1 { format!("{first} And {} more to mend.", things(rest - 1)) } else { first }
}
