//! What is measured on a propeller at work: slip, loading, cavitation.

use crate::panel::Run;
use hydro::limits;

/// Measures of one boat's propeller at full throttle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measures {
    /// On marked pitch and boat speed, share.
    pub apparent_slip: f64,
    /// On true pitch and speed of advance, share.
    pub real_slip: f64,
    /// Open-water efficiency.
    pub efficiency: f64,
    /// Part of the blades' back that cavitates, %.
    pub back_cavitation: f64,
    /// Share of thrust lost.
    pub thrust_lost: f64,
    /// m/s
    pub tip_speed: f64,
    /// Thrust over projected area, Pa.
    pub blade_loading: f64,
    /// N
    pub thrust: f64,
}

/// At the full-throttle point of a run.
#[must_use]
pub fn at_full_throttle(run: &Run) -> Measures {
    let point = &run.full.point;
    let f = &run.fitted;
    let n = point.shaft_speed.0;
    let va = point.speed * (1.0 - f.installation.stern.wake);
    let sigma = limits::burrill::sigma_07(f.installation.breakdown.head, f.installation.water.density, va, n, f.screw.diameter);
    let projected = limits::burrill::projected_area(&f.screw);
    let tau = limits::burrill::tau_c(point.thrust, f.installation.water.density, projected, va, n, f.screw.diameter);
    Measures {
        apparent_slip: limits::slip::apparent(f.marked_pitch, n, point.speed),
        real_slip: limits::slip::apparent(f.screw.pitch_ratio * f.screw.diameter, n, va),
        efficiency: point.efficiency,
        back_cavitation: limits::burrill::back_cavitation(sigma, tau).value,
        thrust_lost: point.thrust_lost,
        tip_speed: std::f64::consts::PI * f.screw.diameter * n,
        blade_loading: point.thrust / projected,
        thrust: point.thrust,
    }
}
