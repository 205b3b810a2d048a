//! Another propeller in the same place: what was measured to the blades of the old one, said of the new one.

use super::loads::{Loads, Subject};
use super::{Checks, blade, bore, room, shaft};
use crate::crowd::latent::Latent;
use crate::crowd::plan::Plan;
use crate::crowd::setup::Setup;
use crate::order::LARGER;
use crate::panel::{Panel, Run};
use crate::report::Gravity;
use job::fit::Stern;
use job::{Job, Quantity};

/// The size of a propeller, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Size {
    pub diameter: f64,
    pub pitch: f64,
    pub blades: u8,
    pub area_ratio: f64,
}

impl Size {
    /// As the job has it.
    pub fn of(plan: &Plan) -> Size {
        let at = |latent: Latent| plan.dists[latent as usize].middle;
        Size {
            diameter: at(Latent::Diameter),
            pitch: at(Latent::Pitch),
            blades: plan.knowledge.blades.0,
            area_ratio: at(Latent::AreaRatio),
        }
    }

    /// With what a setup puts in its place.
    pub fn with(self, setup: &Setup) -> Size {
        Size {
            diameter: setup.diameter.unwrap_or(self.diameter),
            pitch: setup.pitch.unwrap_or(self.pitch),
            blades: setup.blades.unwrap_or(self.blades),
            area_ratio: setup.area_ratio.unwrap_or(self.area_ratio),
        }
    }

    /// The series' chord at 0.7 R, m, `2.073 AE/A0 D/Z`, and the pitch angle there.
    fn chord(&self) -> (f64, f64) {
        let phi = (self.pitch / (0.7 * std::f64::consts::PI * self.diameter)).atan();
        (2.073 * self.area_ratio * self.diameter / f64::from(self.blades.max(1)), phi)
    }

    /// Half the depth of a blade fore and aft at 0.7 R, m: `c sin(phi)/2`.
    pub fn half_depth(&self) -> f64 {
        let (chord, phi) = self.chord();
        0.5 * chord * phi.sin()
    }

    /// The angle that a blade takes up round the shaft at 0.7 R, rad: `c cos(phi)/(0.7 R)`.
    pub fn wide(&self) -> f64 {
        let (chord, phi) = self.chord();
        chord * phi.cos() / (0.35 * self.diameter).max(1e-9)
    }
}

/// Clearances that were measured to the blades move with them; those from the shaft's centre and the stock stay. The middle of
/// the new blades is taken to stand where that of the old ones stood.
pub(crate) fn exchange(stern: &mut Stern, old: &Size, new: &Size) {
    let shift = |gap: &mut Option<Quantity>, nearer: f64| {
        if let Some(q) = gap {
            (q.low, q.middle, q.high) = (q.low - nearer, q.middle - nearer, q.high - nearer);
        }
    };
    let (tip, deep) = (0.5 * (new.diameter - old.diameter), new.half_depth() - old.half_depth());
    shift(&mut stern.tip_clearance, tip);
    shift(&mut stern.sole_clearance, tip);
    shift(&mut stern.ahead_clearance, deep);
    shift(&mut stern.aft_clearance, deep);
}

/// The job with a propeller of another size in its place. Of another propeller nothing measured on the old one is known.
fn exchanged(job: &Job, old: &Size, new: &Size, other: bool) -> Job {
    let mut with = job.clone();
    exchange(&mut with.stern, old, new);
    if other {
        let p = &mut with.propeller;
        (p.root_thickness, p.outer_thickness, p.edge_thickness, p.mass) = (None, None, None, None);
        p.hub_diameter = None;
        with.survey = None;
    }
    with
}

/// The crowd of a fit and that of a shortlist are two samples: a candidate is held to 3 % more load, so that what passes here
/// passes there.
const SAMPLING: f64 = 1.03;

/// Whether another propeller's hub is to be had with a bore for the shaft.
fn bored_too_small(job: &Job, setup: &Setup) -> Option<&'static str> {
    let shaft = job.order.shaft.as_ref().or(job.shaft.diameter.as_ref());
    let larger = shaft.zip(job.order.largest_bore.as_ref()).is_some_and(|(d, most)| d.middle > LARGER * most.middle);
    (setup.other_propeller && larger).then_some("bore of the hubs to be had")
}

/// The first hard limit that a propeller of a job breaks under the loads of these runs, in words.
pub(crate) fn breaks(job: &Job, panel: &Panel, runs: &[Run], setup: &Setup) -> Option<&'static str> {
    let plan = &panel.crowd.plan;
    let old = Size::of(plan);
    let new = old.with(setup);
    let with = exchanged(job, &old, &new, setup.other_propeller);
    let loads = Loads::of(&with, panel, runs).raised(SAMPLING);
    let subject = Subject::of(&with, plan).sized(&new);
    let mut out = Checks::default();
    room::checks(&subject, &loads, &mut out);
    shaft::checks(&subject, &loads, &mut out);
    blade::checks(&subject, &loads, &mut out);
    let hard = out.0.iter().find(|c| c.hard && c.known && c.gravity <= Gravity::Mend).map(|c| c.subject);
    hard.or_else(|| bored_too_small(job, setup))
}

/// The same before its loads are known, under those of the propeller fitted: the room, and the shaft where it fails clearly
/// (another reduction carries the engine's torque over, less a seventh for what the engine may not give there).
pub(crate) fn plainly_breaks(job: &Job, plan: &Plan, fitted: &Loads, setup: &Setup) -> Option<&'static str> {
    let old = Size::of(plan);
    let new = old.with(setup);
    let with = exchanged(job, &old, &new, setup.other_propeller);
    let subject = Subject::of(&with, plan).sized(&new);
    if subject.leg {
        return None;
    }
    if let Some(small) = bored_too_small(job, setup) {
        return Some(small);
    }
    let mut out = Checks::default();
    room::checks(&subject, fitted, &mut out);
    bore::hub(&subject, &mut out);
    let ratio = plan.dists[Latent::Reduction as usize].middle;
    let torque = 0.85 * fitted.torque.high * setup.reduction.map_or(1.0, |r| r / ratio.max(1e-9));
    let weak = job
        .shaft
        .diameter
        .as_ref()
        .is_some_and(|d| shaft::least_diameter(job, torque).is_some_and(|need| d.low < need));
    let hard = out.0.iter().find(|c| c.hard && c.known && c.gravity <= Gravity::Mend).map(|c| c.subject);
    hard.or(weak.then_some("shaft diameter"))
}

#[cfg(test)]
mod tests {
    use super::*;

    const OLD: Size = Size { diameter: 0.4, pitch: 0.28, blades: 3, area_ratio: 0.5 };

    /// By hand: chord 2.073 x 0.5 x 0.4/3 = 138.2 mm, phi = atan(0.28/(0.7 pi 0.4)) = 17.66 degrees: 20.96 mm.
    #[test]
    fn the_depth_of_a_blade_by_hand() {
        assert!((1e3 * OLD.half_depth() - 20.96).abs() < 0.02, "{}", OLD.half_depth());
    }

    #[test]
    fn measured_gaps_move_with_the_blades_and_the_rest_stays() {
        let gap = |mm: f64| Some(Quantity::exact(mm / 1e3, String::new()));
        let before =
            Stern { tip_clearance: gap(60.0), ahead_clearance: gap(50.0), hull_above: gap(260.0), ..Stern::default() };
        let mut after = before.clone();
        let new = Size { diameter: 0.44, area_ratio: 0.7, ..OLD };
        exchange(&mut after, &OLD, &new);
        let mm = |q: &Option<Quantity>| q.as_ref().map(|q| (1e6 * q.middle).round() / 1e3);
        assert_eq!((mm(&after.tip_clearance), mm(&after.hull_above)), (Some(40.0), Some(260.0)));
        let deeper = 1e3 * (new.half_depth() - OLD.half_depth());
        assert!(deeper > 5.0);
        assert!((mm(&after.ahead_clearance).expect("stated") - (50.0 - deeper)).abs() < 1e-3);
        assert_eq!(after.aft_clearance, None);
    }
}
