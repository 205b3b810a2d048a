//! `choose`: the cheap changes first, then propellers in sizes that are sold, then another reduction.

mod fits;
mod merit;
mod sizes;

use crate::band::Accepted;
use crate::compare::{cruise_fuel, cruise_speed};
use crate::crowd::Crowd;
use crate::crowd::latent::Latent;
use crate::crowd::plan::Plan;
use crate::crowd::setup::Setup;
use crate::fit::exchange;
use crate::fit::loads::Loads;
use crate::hangs::hangs;
use crate::judge::{PANEL, crowd_report, judged_setup};
use crate::measures;
use crate::panel::{KNOT, Panel, Run};
use crate::phrase::{chance, number, span};
use crate::report::{Candidate, Choice, Step};
use crate::{Lack, Options};
use hydro::hull::Curve;
use job::{Duty, Job};
use merit::Aim;
use sizes::Offer;

/// Representatives a shortlisted candidate is judged on.
const JUDGED: usize = 320;
/// Representatives a size is screened on.
const SCREENED: usize = 32;
/// New propellers that reach the whole crowd.
const FINALISTS: usize = 10;

/// A panel with the resistances it is asked on.
pub(super) struct Ground<'a> {
    pub panel: Panel<'a>,
    pub hulls: Vec<Curve>,
    pub judged: Setup,
}

impl<'a> Ground<'a> {
    fn of(panel: Panel<'a>, judged: Setup) -> Ground<'a> {
        Ground { hulls: panel.resistance(&judged), panel, judged }
    }

    /// A few of them.
    pub fn few(&self, count: usize) -> Few<'_> {
        let step = (self.hulls.len() / count).max(1);
        Few { ground: self, step }
    }

    /// The panel at full throttle with an offer.
    pub fn run(&self, setup: &Setup) -> Vec<Run> {
        self.panel.run_on(&self.judged.with(setup), &self.hulls)
    }
}

/// A few boats of a panel.
pub(super) struct Few<'a> {
    ground: &'a Ground<'a>,
    step: usize,
}

impl Few<'_> {
    /// Mean full-throttle engine speed, rev/s.
    pub fn typical_engine_speed(&self, setup: &Setup) -> f64 {
        let ground = self.ground;
        let setup = ground.judged.with(setup);
        let plan = &ground.panel.crowd.plan;
        let (mut sum, mut count) = (0.0, 0.0);
        for (i, curve) in ground.panel.members.iter().zip(&ground.hulls).step_by(self.step) {
            let fitted = ground.panel.crowd.boats[*i].fitted_on(plan, &setup, *curve);
            sum += fitted.installation.full_throttle().point.engine_speed.0;
            count += 1.0;
        }
        sum / count
    }
}

/// Ranks what could be done.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn choose(job: &Job, options: &Options) -> Result<Choice, Lack> {
    let plan = Plan::new(job)?;
    let crowd = Crowd::draw(plan, options.boats, options.seed);
    let plan = &crowd.plan;
    let panel = Panel::of(&crowd, PANEL);
    let accepted = Accepted::of(job, plan);
    let judged = judged_setup(job);
    let duty = job.duty.unwrap_or(Duty::Mixed);
    let ground = Ground::of(panel.thinned(JUDGED), judged);
    let scouts = Ground::of(panel.thinned(SCREENED), judged);
    let fitted = ground.run(&Setup::default());
    let cruise = cruise_speed(&ground.panel, &fitted);
    let aim = Aim { duty, accepted: &accepted, cruise, reference: merit::values(&ground.panel, &fitted, cruise) };
    let (largest, largest_source) = sizes::largest_diameter(job, plan);

    let mut offers = sizes::cheap(job, plan);
    let loads = Loads::of(job, &ground.panel, &fitted);
    let plainly = |offer: &Offer| exchange::plainly_breaks(job, plan, &loads, &offer.setup);
    let screened = sizes::screen(job, plan, &scouts, &accepted, duty, cruise, largest, FINALISTS, &plainly);
    let considered = offers.len() + screened.considered;
    offers.extend(screened.offers);

    let mut shortlist: Vec<Candidate> = Vec::with_capacity(offers.len());
    let mut left_out = screened.left_out;
    for offer in &offers {
        let own = if offer.step > Step::Clean { ground.run(&offer.setup) } else { Vec::new() };
        if let Some(why) = fits::breaks(job, &ground.panel, offer, largest, &own) {
            left_out.one(why);
        } else {
            let mut one = candidate(offer, plan, &ground, &aim, &fitted, &own);
            fits::weigh_down(job, &mut one);
            shortlist.push(one);
        }
    }
    let top = shortlist.iter().map(|c| c.merit).fold(f64::NEG_INFINITY, f64::max);
    merit::rank(&mut shortlist, &accepted);
    for one in &mut shortlist {
        if let Some((_, why)) = fits::against(job, one) {
            one.why = format!("{}; but {why}", one.why);
        }
    }
    let told = job.propeller.largest_diameter.is_some() || job.stern != job::fit::Stern::default();
    let room = told.then(|| fits::room(job, (&ground, &scouts), &aim, largest, top, &shortlist, &fitted)).flatten();
    let speeds: Vec<f64> = fitted.iter().map(|r| r.full.point.engine_speed.rpm()).collect();
    Ok(Choice {
        title: job.title.clone(),
        headline: headline(&shortlist, &accepted),
        duty: duty_word(duty),
        cruise_speed: cruise / KNOT,
        considered,
        largest_diameter: 1000.0 * largest,
        largest_diameter_source: largest_source,
        room,
        misfits: left_out.count(),
        left_out: left_out.listed(),
        accepted_band: accepted.report.clone(),
        hangs_on: hangs(&ground.panel, &speeds, 8),
        crowd: crowd_report(&crowd),
        notes: crowd.notes(),
        shortlist,
    })
}

/// The duty's word.
pub(super) fn duty_word(duty: Duty) -> &'static str {
    match duty {
        Duty::TopSpeed => "top speed",
        Duty::Cruise => "cruise",
        Duty::Tow => "tow",
        Duty::Mixed => "mixed",
    }
}

/// Judges one offer on the whole panel; `own` are its runs where it changes the propeller or what turns it.
fn candidate(offer: &Offer, plan: &Plan, ground: &Ground, aim: &Aim, fitted: &[Run], own: &[Run]) -> Candidate {
    let panel = &ground.panel;
    let lying;
    let runs: &[Run] = match offer.step {
        // As it lies, growth and all; everything else is judged clean and loaded.
        Step::Leave => {
            lying = panel.run(&Setup::default());
            &lying
        }
        Step::Clean => fitted,
        _ => own,
    };
    let verdict = aim.accepted.verdict(panel, runs);
    let values = merit::values(panel, runs, aim.cruise);
    let back: Vec<f64> = runs.iter().map(|r| measures::at_full_throttle(r).back_cavitation).collect();
    let setup = &offer.setup;
    let reduction = setup.reduction.unwrap_or(plan.dists[Latent::Reduction as usize].middle);
    Candidate {
        step: offer.step,
        what: offer.what.clone(),
        diameter: 1000.0 * setup.diameter.unwrap_or(plan.dists[Latent::Diameter as usize].middle),
        pitch: 1000.0 * setup.pitch.unwrap_or(plan.marked_pitch),
        blades: setup.blades.unwrap_or(plan.knowledge.blades.0),
        area_ratio: setup.area_ratio.unwrap_or(plan.dists[Latent::AreaRatio as usize].middle),
        cup: setup.cup.map_or(plan.dists[Latent::Cup as usize].middle, |c| c.middle),
        reduction,
        full_throttle: panel.full_throttle(runs),
        in_band: verdict.right,
        verdict,
        cruise_fuel: panel.band(&cruise_fuel(panel, runs, aim.cruise), "L/h"),
        back_cavitation: panel.band(&back, "%"),
        tow_pull: (aim.duty == Duty::Tow).then(|| {
            let pulls: Vec<f64> = values.iter().map(|v| v.pull).collect();
            panel.band(&pulls, "N")
        }),
        merit: merit::robust(&aim.utilities(runs, &values, &back)) - merit::cost(offer.step),
        why: String::new(),
    }
}

fn headline(shortlist: &[Candidate], accepted: &Accepted) -> String {
    let Some(best) = shortlist.first() else { return "Nothing to choose from.".to_owned() };
    let band = format!("{} to {} rpm", number(accepted.report.low, 10.0), number(accepted.report.high, 10.0));
    match best.step {
        Step::Leave => format!(
            "Leave the propeller as it is: full throttle {}, inside {band} {}.",
            span(&best.full_throttle.engine_speed),
            chance(best.in_band)
        ),
        _ => {
            let cheap =
                shortlist.iter().find(|c| c.step < Step::NewPropeller && c.step > Step::Clean && c.merit > 60.0);
            let mut text = format!(
                "Best over the whole crowd: {}; clean and loaded {} at full throttle, inside {band} {}.",
                best.what,
                span(&best.full_throttle.engine_speed),
                chance(best.in_band)
            );
            if let Some(cheap) = cheap.filter(|c| c.what != best.what) {
                text.push_str(&format!(
                    " Cheapest that serves: {}, {}.",
                    cheap.what,
                    span(&cheap.full_throttle.engine_speed)
                ));
            }
            text
        }
    }
}
