//! One blade section on its cylinder.

use std::f64::consts::TAU;

/// Ordinates of face and back at one place along the chord.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offset {
    /// Place along the chord, 0 at the leading edge, 1 at the trailing edge.
    pub fraction: f64,
    /// Ordinate of the face above the pitch line, m, positive toward the back.
    pub face: f64,
    /// Ordinate of the back above the pitch line, m, positive toward the back.
    pub back: f64,
}

/// A section at one radius.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Radius, m.
    pub radius: f64,
    /// Pitch of the pitch line, m, positive.
    pub pitch: f64,
    /// Distance along the pitch line from the reference line to the leading edge, m; negative if the edge lies behind it.
    pub leading: f64,
    /// Distance along the pitch line from the reference line to the trailing edge, m; `leading + trailing` is the chord.
    pub trailing: f64,
    /// Axial position of the pitch line at the reference line, m, positive aft; skew-induced rake is not in it.
    pub rake: f64,
    /// Face and back, from leading to trailing edge; fractions rise from 0 to 1.
    pub offsets: Vec<Offset>,
}

impl Section {
    /// Length along the pitch line, m.
    #[must_use]
    pub fn chord(&self) -> f64 {
        self.leading + self.trailing
    }

    /// Greatest thickness, m.
    #[must_use]
    pub fn thickness(&self) -> f64 {
        self.offsets.iter().map(|o| o.back - o.face).fold(0.0, f64::max)
    }

    /// Blade angle `φ = atan(P/(2πr))`, rad.
    #[must_use]
    pub fn blade_angle(&self) -> f64 {
        self.pitch.atan2(TAU * self.radius)
    }

    /// Distance along the pitch line from the reference line to mid-chord, m, positive toward the trailing edge
    /// (skew-back of the section).
    #[must_use]
    pub fn skew_back(&self) -> f64 {
        0.5 * (self.trailing - self.leading)
    }

    /// Angle of mid-chord behind the reference line seen along the shaft, rad: `skew-back cos φ / r`.
    #[must_use]
    pub fn skew_angle(&self) -> f64 {
        self.skew_back() * self.blade_angle().cos() / self.radius
    }

    /// Sets the mid-chord at `angle` rad behind the reference line, keeping the chord.
    pub fn set_skew_angle(&mut self, angle: f64) {
        let (half, back) = (0.5 * self.chord(), angle * self.radius / self.blade_angle().cos());
        self.leading = half - back;
        self.trailing = half + back;
    }
}
