//! Displacement hulls: friction, roughness, Holtrop, Delft, handbook rules, and the error table against them.

#![allow(clippy::print_stdout)] // The figures are worth seeing with --nocapture.

mod delft;
mod errors;
mod holtrop;
mod skin;
mod wide;

use hydro::hull::Form;
use hydro::hull::delft::CanoeBody;
use hydro::hull::holtrop::shape;
use hydro::water::Water;
use std::collections::BTreeMap;
use validation::rows;

const KNOT: f64 = 1852.0 / 3600.0;

fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or(f64::NAN)
}

/// A boat with nothing set but what the tests below set.
fn plain() -> Form {
    Form {
        length: 10.0,
        beam: 3.2,
        draught: 0.7,
        mass: 8000.0,
        prismatic: 0.57,
        midship: 0.65,
        waterplane: 0.68,
        lcb_percent: -2.3,
        half_entrance_deg: 20.0,
        transom_ratio: 0.0,
        appendage_area: 0.0,
        appendage_factor: 1.0,
        chine_beam: 3.0,
        deadrise_deg: 15.0,
        lcg: 4.0,
        vcg: 0.5,
        thrust_angle_deg: 0.0,
        air_area: 0.0,
        air_drag: 0.8,
        roughness: 0.0,
    }
}

/// One measured model at 10 m, and what was measured: (Fn, Rr/W).
struct Model {
    body: CanoeBody,
    form: Form,
    measured: Vec<(f64, f64)>,
}

const SEA: Water = Water { density: 1025.0, viscosity: 1.188e-6, vapour_pressure: 1700.0 };

fn models() -> Vec<Model> {
    let mut models: BTreeMap<String, Model> = BTreeMap::new();
    for row in rows("gerritsma1981.csv") {
        let v: Vec<f64> = row.iter().map(|cell| number(cell)).collect();
        let (length, beam) = (10.0, 10.0 / v[4]);
        let (draught, volume) = (beam / v[3], (length / v[2]).powi(3));
        let form = Form {
            length,
            beam,
            draught,
            mass: volume * SEA.density,
            prismatic: v[1],
            midship: volume / (length * beam * draught * v[1]),
            lcb_percent: v[0],
            half_entrance_deg: shape::entrance_angle(length, beam, volume, v[1], 0.68, v[0]),
            ..plain()
        };
        models
            .entry(row[..5].join(" "))
            .or_insert_with(|| Model { body: CanoeBody::new(&form, &SEA), form, measured: Vec::new() })
            .measured
            .push((v[5], 1e-3 * v[6]));
    }
    models.into_values().collect()
}

/// Root mean square of the error over all models at each Froude number, with the mean measured.
fn rms(models: &[Model], error: impl Fn(&Model, f64, f64) -> f64) -> Vec<(f64, f64, f64)> {
    (0..14)
        .map(|i| {
            let (mut square, mut sum) = (0.0, 0.0);
            for model in models {
                let (froude, measured) = model.measured[i];
                square += error(model, froude, measured).powi(2);
                sum += measured;
            }
            let n = models.len() as f64;
            (models[0].measured[i].0, (square / n).sqrt(), sum / n)
        })
        .collect()
}
