//! What a propeller costs under sail.

use super::{Ground, OnBoat, Term};
use crate::panel::KNOT;
use crate::phrase::{number, plain, span};
use crate::report::Band;
use hydro::source::{Method, Trust};
use job::{Blades, Kind};
use std::f64::consts::FRAC_PI_4;

/// Drag of a propeller that does not drive.
pub const METHOD: Method = Method {
    name: "propeller-under-sail",
    quantity: "drag of a propeller under sail, N",
    formula: "R = C rho V^2 A_E/2; C locked 0.9 to 1.3, turning freely half of it, folded or feathered 0.05 to 0.12",
    range: "fixed blades clear of the keel's shadow, 2 to 8 kn; blades hidden behind a deadwood drag less",
    error: "a third either way; a stiff shaft brings the turning propeller near the locked one",
    source: "locked and free: P. M. MacKenzie & M. A. Forrester 2008, Sailboat propeller drag, Ocean Engineering 35 (locked up to \
             twice the free one); coefficients after handbooks of yacht design (from memory)",
    trust: Trust::Memory,
};

/// Coefficients on the expanded blade area: low, middle, high.
const LOCKED: [f64; 3] = [0.9, 1.1, 1.3];
const FREE: [f64; 3] = [0.45, 0.6, 0.9];
const FOLDED: [f64; 3] = [0.05, 0.08, 0.12];

/// Drag, N: coefficient, density kg/m³, speed m/s, expanded area m².
#[must_use]
pub fn resistance(coefficient: f64, density: f64, speed: f64, area: f64) -> f64 {
    0.5 * coefficient * density * speed * speed * area
}

pub(super) fn drag(ground: &Ground) -> OnBoat {
    let plan = &ground.prepared.crowd.plan;
    let screws = f64::from(plan.knowledge.screws.0);
    if plan.knowledge.kind.0 != Kind::Sailing {
        return OnBoat::new(Term::Sailing, "motor", Vec::new(), &[METHOD.name]);
    }
    let speed = 5.0 * KNOT;
    let area = ground.middle(|r| FRAC_PI_4 * r.fitted.screw.diameter.powi(2) * r.fitted.screw.expanded_area_ratio);
    let density = ground.middle(|r| r.fitted.installation.water.density);
    let band = |c: [f64; 3]| {
        let [low, middle, high] = c.map(|c| screws * resistance(c, density, speed, area));
        Band { low, middle, high, unit: "N" }
    };
    let hull = ground.middle(|r| r.fitted.installation.resistance.at(speed));
    let kind = ground.prepared.job.propeller.kind;
    let case = match kind {
        Some(Blades::Folding | Blades::Feathering) => "folds",
        _ => "fixed",
    };
    let (locked, folded) = (band(LOCKED), band(FOLDED));
    let here = if case == "folds" { folded.middle } else { locked.middle };
    OnBoat::new(
        Term::Sailing,
        case,
        vec![
            ("locked", span(&locked)),
            ("free", span(&band(FREE))),
            ("folded", span(&folded)),
            ("share", number(100.0 * here / hull.max(1.0), 1.0)),
            ("hull", plain(hull, 2)),
        ],
        &[METHOD.name],
    )
}

#[cfg(test)]
mod tests {
    use super::{FREE, LOCKED, resistance};

    #[test]
    fn grows_with_the_square_of_speed() {
        assert!((resistance(1.0, 1025.0, 4.0, 0.05) / resistance(1.0, 1025.0, 2.0, 0.05) - 4.0).abs() < 1e-12);
    }

    #[test]
    fn a_locked_propeller_drags_up_to_twice_as_much_as_a_free_one() {
        // MacKenzie & Forrester 2008, abstract: locked more than free over the whole range, up to twice.
        let ratio = LOCKED[1] / FREE[1];
        assert!(ratio > 1.5 && ratio <= 2.0, "{ratio}");
    }
}
