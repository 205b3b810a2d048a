//! What an answer hangs on: how much of its variance goes with each drawn quantity.

use crate::crowd::latent::Latent;
use crate::panel::Panel;
use crate::phrase;
use crate::report::{Band, Hang};
use job::assume::BAND_Z;

/// Least share of the variance worth naming.
const LEAST: f64 = 0.02;

/// The quantities `values` hang on, most influential first, at most `most`.
///
/// The share is the squared correlation with the quantity's draws over the weighted crowd; shares need not sum to 1.
#[must_use]
pub fn hangs(panel: &Panel, values: &[f64], most: usize) -> Vec<Hang> {
    let plan = &panel.crowd.plan;
    let mut shares: Vec<(Latent, f64)> = Latent::ALL
        .iter()
        .filter(|latent| !plan.dists[**latent as usize].is_fixed())
        .map(|latent| (*latent, panel.shared_variance(*latent, values)))
        .filter(|(_, share)| *share >= LEAST)
        .collect();
    shares.sort_by(|a, b| b.1.total_cmp(&a.1));
    shares.truncate(most);
    shares
        .into_iter()
        .map(|(latent, share)| {
            let drawn: Vec<f64> = panel.boats().map(|b| b.row[latent as usize]).collect();
            let (stated, source) = &plan.origin[latent as usize];
            Hang {
                quantity: latent.word().to_owned(),
                value: value(latent, &panel.band(&drawn, "1"), plan),
                stated: *stated,
                source: if source.is_empty() { "the method's own error".to_owned() } else { source.clone() },
                share,
                measure: latent.measure().to_owned(),
            }
        })
        .collect()
}

/// The value used, with its band after weighing, in words.
pub(crate) fn value(latent: Latent, after: &Band, plan: &crate::crowd::plan::Plan) -> String {
    let with = |unit: &'static str, factor: f64| {
        let band = Band { low: factor * after.low, middle: factor * after.middle, high: factor * after.high, unit };
        format!("{}, {}", phrase::middle(&band), phrase::span(&band))
    };
    match latent {
        Latent::Weight if plan.knowledge.weight_is_ratio => with("length over cube root of volume", 1.0),
        Latent::Beam if plan.knowledge.beam_is_ratio => with("of the usual length over beam", 1.0),
        Latent::Length if matches!(plan.knowledge.length, job::assume::Length::OfWeight(_)) => {
            with("times the cube root of volume", 1.0)
        }
        Latent::Length | Latent::Beam => with("m", 1.0),
        Latent::Weight if after.high >= 2000.0 => with("t", 1e-3),
        Latent::Weight => with("kg", 1.0),
        Latent::Power => with("kW", 1e-3),
        Latent::RatedSpeed => with("rpm", 60.0),
        Latent::Diameter | Latent::Pitch => {
            let mm = with("mm", 1000.0);
            format!("{} in ({mm})", phrase::inches(after.middle))
        }
        Latent::Immersion => with("m", 1.0),
        Latent::HullRoughness | Latent::BladeRoughness => with("µm rough", 1e6),
        Latent::Deadrise | Latent::Entrance | Latent::ShaftAngle => with("°", 1.0),
        Latent::WaterTemperature | Latent::AirTemperature => with("°C", 1.0),
        Latent::Consumption => with("g/kWh", 3.6e9),
        Latent::HullErrorLow
        | Latent::HullErrorHump
        | Latent::HullErrorHigh
        | Latent::HullMethod
        | Latent::EngineShape
        | Latent::DriveLoss
        | Latent::ThrustError
        | Latent::TorqueError
        | Latent::Tachometer
        | Latent::SpeedInstrument => {
            let narrowed = (after.high - after.low) / (2.0 * BAND_Z);
            if narrowed < 0.8 { "narrowed by the readings".to_owned() } else { "as uncertain as the method".to_owned() }
        }
        _ => with("1", 1.0),
    }
}
