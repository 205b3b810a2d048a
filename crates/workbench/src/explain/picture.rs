//! Which picture of the boat shows a term.

use crate::follows::{Known, View};
use counsel::Options;
use counsel::explain::Term;
use draw::teach::{advance, advance::Advance, pulses};
use draw::{Drawn, Picture, Sheet};

/// The picture, where the job says enough for one.
#[must_use]
pub fn of(view: &View, known: &Known, term: Term) -> Option<Picture> {
    let job = known.prepared.job();
    let date = crate::follows::last_date(job);
    let sheet = Sheet { boat: &job.title, date: &date, width: view.width };
    let propeller = || Drawn::of_job(job).map(|drawn| draw::propeller::picture(&sheet, &drawn));
    match term {
        Term::Parts | Term::Pitch | Term::Areas | Term::Cup | Term::Rake | Term::Skew | Term::Hand => propeller(),
        Term::Diameter | Term::Twin | Term::Sailing => {
            draw::place::Place::of_job(job).map(|place| draw::place::picture(&sheet, &place))
        }
        Term::Slip => {
            let fitted = known.prepared.fitted();
            let gone = known.prepared.advance_per_turn();
            advance::picture(&sheet, &Advance { diameter: fitted.diameter, pitch: fitted.pitch, gone })
        }
        Term::Blades => pulses::picture(&sheet, u32::from(known.prepared.fitted().blades), 0.0),
        Term::Paddlewheel => counsel::fit(job, &Options::default()).ok().map(|fit| draw::walk::picture(&sheet, &fit)),
        Term::Ventilation => Some(draw::cavitation::picture(&sheet, &known.prepared.curves(None))),
        Term::Curves => Some(draw::demand::picture(&sheet, &known.prepared.curves(None), None)),
        Term::Measuring => Some(draw::speeds::picture(&sheet, &known.prepared.curves(None))),
    }
}
