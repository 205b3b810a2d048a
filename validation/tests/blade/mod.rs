//! Blades against published tables, a second computation, and themselves measured again.
#![expect(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "measured figures are shown with --nocapture; tests may fail"
)]

mod broken;
mod photo;
mod pitch;
mod round_trip;
mod solid;
mod tables;
mod trade;

use hydro::blade::{Blade, EdgeForm, Form, Hand, Hub, Propeller, Section};

/// A blade from rows of radius, chord, pitch, thickness, skew angle (rad), rake, all m.
pub(crate) fn blade_of(rows: &[[f64; 6]], tip_radius: f64) -> Blade {
    let sections = rows
        .iter()
        .map(|&[radius, chord, pitch, thickness, skew, rake]| {
            let mut section = Section {
                radius,
                pitch,
                leading: 0.5 * chord,
                trailing: 0.5 * chord,
                rake,
                offsets: Form::Lens.offsets(radius / tip_radius, thickness, 0.0),
            };
            section.set_skew_angle(skew);
            section
        })
        .collect();
    Blade { sections, tip_radius, leading_edge: EdgeForm::Unknown, trailing_edge: EdgeForm::Unknown, cup: None }
}

/// A propeller of such blades.
pub(crate) fn of_blade(blade: &Blade, count: u8, hub_ratio: f64) -> Propeller {
    let d = 2.0 * blade.tip_radius;
    Propeller::even(blade, count, Hand::Right, Hub::cylinder(hub_ratio * d, 0.4 * d, 0.05 * d))
}

/// Numbers of a data file.
pub(crate) fn numbers(file: &str) -> Vec<Vec<f64>> {
    let rows = validation::rows(file);
    assert!(!rows.is_empty(), "{file}");
    rows.iter().map(|row| row.iter().map(|cell| cell.parse().expect("a number")).collect()).collect()
}

/// A small generator of even numbers (Marsaglia 2003, xorshift), so that runs repeat.
pub(crate) struct Dice(pub u64);

impl Dice {
    /// In 0..1.
    #[expect(clippy::cast_precision_loss, reason = "53 bits fit")]
    pub(crate) fn even(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// In `low..high`.
    pub(crate) fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    /// Normal, standard deviation 1 (Box and Muller 1958).
    pub(crate) fn normal(&mut self) -> f64 {
        let (u, v) = (self.even().max(1e-300), self.even());
        (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
    }
}
