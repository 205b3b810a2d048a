//! The planing balance at its edges.

use super::balance::{SLOPE, Start};
use super::*;
use crate::note::Note;

fn boat(lcg: f64, deadrise_deg: f64) -> Bottom {
    Bottom {
        weight: 2000.0 * GRAVITY,
        beam: 2.1,
        deadrise_deg,
        lcg,
        vcg: 0.5,
        thrust_angle_deg: 0.0,
        thrust_lever: 0.6,
        longest_wetted_ratio: 3.0,
        roughness: 30e-6,
        flap: None,
    }
}

fn sea() -> Water {
    Water { density: 1025.976, viscosity: 1.1892e-6, vapour_pressure: 1674.0 }
}

#[test]
fn the_answer_does_not_depend_on_the_start() {
    for speed in [6.0, 9.0, 14.0, 22.0] {
        let cold = boat(2.2, 18.0).equilibrium(&sea(), speed).value;
        for ratio in [0.2, 1.0, 2.9, 7.0] {
            let (coefficient, reynolds_unit) = (0.003, 1.3e7);
            let mut start = Some(Start {
                ratio,
                last: ratio,
                change: 0.0,
                slope: SLOPE,
                flat_root: 0.9,
                coefficient,
                reynolds_unit,
            });
            let warm = boat(2.2, 18.0).prepare(&sea()).equilibrium(speed, &mut start).value;
            assert!((warm.drag / cold.drag - 1.0).abs() < 5e-5, "{speed} {ratio}: {} {}", warm.drag, cold.drag);
        }
    }
}

#[test]
fn extreme_centres_of_gravity_are_held_not_blown_up() {
    let (mut held, mut free) = (0, 0);
    for i in 0..40 {
        for speed in [4.0, 8.0, 12.0, 20.0, 30.0] {
            let noted = boat(0.15 + 0.15 * f64::from(i), 18.0).equilibrium(&sea(), speed);
            let state = noted.value;
            // No more than the whole bottom wetted at the highest trim, no less than friction of a small part.
            let skin = 0.5 * 1026.0 * speed * speed * 2.1 * 2.1 * 0.004;
            let most = 2000.0 * GRAVITY * 15.01_f64.to_radians().tan() + 3.3 * skin;
            assert!(state.drag > 0.05 * skin && state.drag < most, "{i} {speed}: {} {most}", state.drag);
            assert!(state.trim_deg > 0.0 && state.trim_deg < 15.01);
            assert_eq!(state.balanced, !noted.notes.has(Note::TrimHeld));
            if state.balanced { free += 1 } else { held += 1 }
        }
    }
    assert!(held > 5 && free > 50, "{held} {free}");
}

#[test]
fn weight_aft_porpoises_and_the_flat_bottom_has_no_deadrise_loss() {
    assert!(boat(1.2, 15.0).equilibrium(&sea(), 14.0).notes.has(Note::Porpoising));
    assert!((flat_lift(0.08, 0.0) - 0.08).abs() < 1e-12);
    assert!(flat_lift(0.08, 20.0) > 0.09);
}

#[test]
fn hump_factor_dies_away_with_speed() {
    assert!(hump_factor(1.2, 2.0) > hump_factor(1.2, 3.0));
    assert!((hump_factor(1.2, 6.0) - 0.98).abs() < 0.001);
}
