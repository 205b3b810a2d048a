//! Displacement motion: the ship regression, and the yacht series where the ships were too slender.

use super::hold;
use crate::hull::delft::{CanoeBody, Residuary, Year};
use crate::hull::form::{Form, Parts};
use crate::hull::holtrop;
use crate::hull::shape::smooth;
use crate::note::{Note, Noted, Notes};
use crate::water::{GRAVITY, Water};

/// Length over beam from which the ship regression alone gives the waves (its own tests begin at 3.9), and up to which
/// the yacht series alone does. The ship regression's high-speed factor `(L/B - 2)^1.4` vanishes with beam while the
/// waves of a beamy boat do not: for 8.4 m on 2.9 m it gives half of what the yacht series and the pre-planing
/// regression, independent of each other, give at Fn 0.5 to 0.6. Own choice.
const SHIP_WAVES: (f64, f64) = (3.0, 4.5);
/// Slenderness `L/vol^(1/3)` below which the second range of the ship regression (from Froude number 0.40) is not used,
/// and from which it is: the fast hulls behind it are slender. Own choice.
const STOUT: (f64, f64) = (6.5, 8.0);
/// A canoe body held inside ranges of `L/vol^(1/3)`, `L/B`, `B/T` and `CP`; midship coefficient and centre of buoyancy
/// inside what all the yacht series have.
pub(super) fn held(
    body: &CanoeBody,
    slenderness: (f64, f64),
    length_beam: (f64, f64),
    beam_draught: (f64, f64),
    prismatic: (f64, f64),
) -> CanoeBody {
    let length = body.length;
    let volume = hold(body.volume, (length / slenderness.1).powi(3), (length / slenderness.0).powi(3));
    let beam = hold(body.beam, length / length_beam.1, length / length_beam.0);
    let draught = beam / hold(body.beam / body.draught, beam_draught.0, beam_draught.1);
    let midship = hold(body.midship, 0.65, 0.79);
    let lcb = hold(body.lcb, 0.50 * length, 0.55 * length);
    // The tests had Aw/vol^(2/3) of 3.78 to 12.67.
    let square = volume.cbrt() * volume.cbrt();
    CanoeBody {
        length,
        beam,
        draught,
        volume,
        prismatic: hold(body.prismatic, prismatic.0, prismatic.1),
        midship,
        lcb,
        lcf: lcb + 0.015 * length,
        waterplane: hold(body.waterplane, 3.78 * square, 12.67 * square),
        wetted: body.wetted,
    }
}

/// A body held inside the series of 2008, a little beyond for heavy and full boats.
pub(super) fn wide(body: &CanoeBody) -> CanoeBody {
    held(body, (4.0, 8.5), (2.73, 5.88), (2.46, 19.3), (0.52, 0.63))
}

/// A hull in displacement motion: the ship regression, its waves by degrees replaced by the yacht series' for beamy hulls.
#[derive(Clone, Copy, Debug)]
pub(super) struct Slow {
    ship: holtrop::Prepared,
    yacht: Residuary,
    /// Share of the ship regression in the waves by `L/B`.
    share: f64,
    /// How far the hull is too stout for the ship regression's second range, 0 to 1.
    stout: f64,
    froude_unit: f64,
    weight: f64,
    notes: Notes,
}

impl Slow {
    /// Works a hull out.
    pub(super) fn new(form: &Form, water: &Water) -> Slow {
        let share = smooth(SHIP_WAVES.0, SHIP_WAVES.1, form.length / form.beam);
        let body = CanoeBody::new(form, water);
        let mut notes = Notes::NONE;
        notes.add_if(share < 0.5, Note::HullTooBeamyForMethod);
        Slow {
            ship: holtrop::Prepared::new_1984(form, water, &holtrop::Extras::default()),
            yacht: wide(&body).residuary(Year::Y2008),
            share,
            stout: 1.0 - smooth(STOUT.0, STOUT.1, form.length / body.volume.cbrt()),
            froude_unit: 1.0 / (GRAVITY * form.length).sqrt(),
            weight: form.mass * GRAVITY,
            notes,
        }
    }

    /// Resistance at a speed, m/s.
    pub(super) fn at(&self, speed: f64) -> Noted<Parts> {
        let mut noted = self.ship.at(speed);
        let froude = speed * self.froude_unit;
        let share = self.share * (1.0 - self.stout * smooth(0.36, 0.46, froude));
        if share < 1.0 {
            let yacht = self.weight * self.yacht.at(froude);
            noted.value.wave = share * noted.value.wave + (1.0 - share) * yacht;
        }
        Noted::new(noted.value, noted.notes.and(self.notes))
    }
}
