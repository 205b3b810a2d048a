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
    let density = f.installation.water.density;
    let diameter = f.screw.diameter;
    let square = limits::burrill::blade_speed_squared(va, n, diameter);
    let sigma = limits::burrill::sigma(f.installation.breakdown.head, density, square);
    let disc = std::f64::consts::FRAC_PI_4 * diameter * diameter;
    let pitch = f.screw.effective_pitch_ratio();
    let projected = disc * limits::burrill::projected_area_ratio(f.screw.expanded_area_ratio, pitch);
    let tau = limits::burrill::tau(point.thrust, density, projected, square);
    Measures {
        apparent_slip: limits::slip::slip(point.speed, n, f.marked_pitch).unwrap_or(0.0),
        real_slip: limits::slip::slip(va, n, f.screw.pitch_ratio * diameter).unwrap_or(0.0),
        efficiency: point.efficiency,
        back_cavitation: limits::burrill::back_cavitation(sigma, tau).value,
        thrust_lost: point.thrust_lost,
        tip_speed: limits::tip_speed::tip_speed(n, diameter),
        blade_loading: limits::loading::actual(point.thrust, projected),
        thrust: point.thrust,
    }
}
