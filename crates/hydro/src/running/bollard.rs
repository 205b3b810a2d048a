//! Full throttle against the bollard.

use super::balance::Frame;
use super::{Installation, Point};
use crate::stern::shaft_angle;

impl Installation {
    /// Full throttle at no speed; `pull` uses the thrust deduction of the bollard. An engine that stalls stands at idle
    /// with more power asked than available (see [`Point::load`]).
    #[must_use]
    pub fn bollard(&self) -> Point {
        let frame = Frame::new(self);
        let met = frame.meet_at_rest(true);
        let along = shaft_angle::along(self.stern.shaft_angle_deg);
        let pull = along * (1.0 - self.stern.bollard_deduction()) * f64::from(self.screws);
        frame.point(0.0, met.n, pull)
    }
}
