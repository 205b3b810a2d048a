//! The torque through the gearbox, in and out, against the limits somebody read.

use super::Checks;
use super::loads::Loads;
use crate::phrase::{plain, span};
use crate::report::{Band, Gravity};
use hydro::fitting::shaft;
use job::Job;

pub(super) fn gearbox(job: &Job, loads: &Loads, out: &mut Checks) {
    let drive = &job.drive;
    let by_power = drive.gearbox_power.as_ref().zip(drive.gearbox_speed.as_ref()).map(|(power, at)| {
        (shaft::torque(power.middle, at.middle), "the maker's limit: its power at its speed, as torque")
    });
    let by_torque = drive.gearbox_torque.as_ref().map(|q| (q.middle, "the maker's limit of the input torque"));
    // Both said: the lower one holds.
    let limit = by_power.into_iter().chain(by_torque).min_by(|a, b| a.0.total_cmp(&b.0));
    match (limit, &drive.gearbox_output_torque) {
        (None, None) => {
            out.unknown(
                "gearbox",
                "gearbox torque",
                "the maker's limit: of the power at a speed, of the input torque or of the output torque",
                "read the gearbox's plate or sheet: greatest input power and at which engine speed (drive.gearbox_power, drive.gearbox_speed), or a torque (drive.gearbox_torque, drive.gearbox_output_torque)",
            );
        }
        (limit, output) => {
            if let Some((most, rule)) = limit {
                gearbox_input(loads, most, rule, out);
            }
            if let Some(output) = output {
                gearbox_output(loads, output.middle, out);
            }
        }
    }
}

/// How a gearbox stands to a limit.
fn strained(value: &Band, most: f64) -> Gravity {
    if value.middle > 1.1 * most {
        Gravity::Mend
    } else if value.high > most {
        Gravity::Watch
    } else {
        Gravity::Well
    }
}

fn gearbox_check(
    code: &'static str,
    subject: &'static str,
    sentence: String,
    value: Band,
    most: f64,
    rule: &str,
) -> super::Check {
    let gravity = strained(&value, most);
    super::Check {
        code,
        subject,
        gravity,
        known: true,
        hard: false,
        sentence,
        value: Some(value),
        least: None,
        most: Some(most),
        rule: rule.to_owned(),
        measure: if gravity == Gravity::Well {
            String::new()
        } else {
            "ask the gearbox's maker before she is run hard".to_owned()
        },
        caution: None,
    }
}

fn gearbox_input(loads: &Loads, most: f64, rule: &str, out: &mut Checks) {
    // What the propeller takes at full throttle, brought back to the engine's side.
    let back = |torque: f64| torque * loads.turns.middle / loads.engine.middle.max(1e-9) / 0.96;
    let value = Band {
        low: back(loads.torque.low),
        middle: back(loads.torque.middle),
        high: back(loads.torque.high),
        unit: "N m",
    };
    let sentence = format!(
        "The engine puts {} into the gearbox, its limit is {} N m; on the shaft that is {} where {} N m come of the limit.",
        span(&value),
        plain(most, 3),
        span(&loads.torque),
        plain(most / back(1.0).max(1e-9), 3)
    );
    out.push(gearbox_check("gearbox", "gearbox input torque", sentence, value, most, rule));
}

fn gearbox_output(loads: &Loads, most: f64, out: &mut Checks) {
    let value = loads.torque;
    let sentence =
        format!("The propeller takes {} from the gearbox's output, its limit is {} N m.", span(&value), plain(most, 3));
    out.push(gearbox_check(
        "gearbox-output",
        "gearbox output torque",
        sentence,
        value,
        most,
        "the maker's limit at the output flange; a larger reduction raises what goes out and not what goes in",
    ));
}
