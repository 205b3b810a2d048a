//! `resistance`: what the hull asks for over speed, on the same weighted crowd as every other answer.

use crate::crowd::Crowd;
use crate::crowd::physics::hull_kind;
use crate::crowd::plan::Plan;
use crate::crowd::setup::Setup;
use crate::judge::PANEL;
use crate::panel::{KNOT, Panel};
use crate::report::Band;
use crate::{Lack, Options};
use hydro::hull::Kind;
use hydro::hull::total;
use hydro::water::GRAVITY;
use job::Job;
use serde::Serialize;

/// Answer of `resistance`.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ResistanceTable {
    /// Title of the job.
    pub title: String,
    /// The method, in words.
    pub method: String,
    /// By speed.
    pub rows: Vec<ResistanceRow>,
    /// Warnings that travelled with the numbers.
    pub notes: Vec<String>,
}

/// One speed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ResistanceRow {
    /// Boat speed, kn.
    pub speed: f64,
    /// Froude number on the middle boat's waterline.
    pub froude: f64,
    /// Total resistance, N.
    pub resistance: Band,
    /// Power to tow the boat, kW.
    pub effective_power: Band,
    /// Parts of the middle boat's resistance by the method as published, N; what the crowd's middle differs from their sum
    /// by stands as `correction`. Empty for a towed curve.
    pub parts: Vec<(String, f64)>,
}

/// Resistance over speed as the boat is described, to a little beyond what it reaches at full throttle.
///
/// # Errors
/// When something is missing that cannot be assumed.
pub fn resistance(job: &Job, options: &Options) -> Result<ResistanceTable, Lack> {
    let plan = Plan::new(job)?;
    let crowd = Crowd::draw(plan, options.boats, options.seed);
    let panel = Panel::of(&crowd, PANEL);
    let setup = Setup::default();
    let curves = panel.resistance(&setup);
    let reached = panel.full_throttle(&panel.run_on(&setup, &curves)).speed;
    // The boat nearest the middle of what full throttle meets.
    let there: Vec<f64> = curves.iter().map(|curve| curve.at(reached.middle * KNOT)).collect();
    let typical = panel.band(&there, "N").middle;
    let middle = panel
        .boats()
        .zip(&there)
        .min_by(|a, b| (a.1 - typical).abs().total_cmp(&(b.1 - typical).abs()))
        .map(|(boat, _)| *boat);
    let kind = hull_kind(crowd.plan.knowledge.kind.0);
    let stride = stride(reached.high);
    let last = (1.15 * reached.high / stride).ceil() as usize;
    let rows = (1..=last).map(|step| {
        let speed = step as f64 * stride;
        let metres = speed * KNOT;
        let forces: Vec<f64> = curves.iter().map(|curve| curve.at(metres)).collect();
        let powers: Vec<f64> = forces.iter().map(|force| force * metres / 1000.0).collect();
        let resistance = panel.band(&forces, "N");
        let parts = match middle {
            Some(boat) if crowd.plan.towed.is_none() => {
                let parts = total::total(kind, &boat.form, &boat.water, metres).value;
                let named = [
                    ("friction", parts.friction + parts.form),
                    ("roughness", parts.roughness),
                    ("appendages", parts.appendages),
                    ("waves", parts.wave),
                    ("transom", parts.transom),
                    ("spray", parts.spray),
                    ("air", parts.air),
                    ("correction", resistance.middle - parts.total()),
                ];
                named.map(|(name, force)| (name.to_owned(), force)).to_vec()
            }
            _ => Vec::new(),
        };
        let length = middle.map_or(f64::NAN, |boat| boat.form.length);
        ResistanceRow {
            speed,
            froude: metres / (GRAVITY * length).sqrt(),
            resistance,
            effective_power: panel.band(&powers, "kW"),
            parts,
        }
    });
    Ok(ResistanceTable {
        title: job.title.clone(),
        method: method(kind, crowd.plan.towed.is_some()).to_owned(),
        rows: rows.collect(),
        notes: crowd.notes(),
    })
}

/// Knots from one row to the next: a dozen rows or so.
fn stride(top: f64) -> f64 {
    match top {
        t if t < 9.0 => 0.5,
        t if t < 18.0 => 1.0,
        t if t < 36.0 => 2.0,
        _ => 5.0,
    }
}

fn method(kind: Kind, towed: bool) -> &'static str {
    match (towed, kind) {
        (true, _) => "the towed curve in the job",
        (_, Kind::Displacement) => "Holtrop 1984, the waves of beamy hulls after Delft 2008",
        (_, Kind::Sailing) => "Delft 2008 with the waves of keel and rudder after Delft 1981",
        (_, Kind::SemiDisplacement | Kind::Planing) => {
            "Holtrop 1984 at displacement speed, the pre-planing regression, then Savitsky 1964"
        }
    }
}
