//! Which picture of the boat shows a term.

use crate::follows::{Known, View};
use counsel::explain::Term;
use draw::{Drawn, Picture, Sheet};

/// The picture, where the job says enough for one.
#[must_use]
pub fn of(view: &View, known: &Known, term: Term) -> Option<Picture> {
    let job = known.prepared.job();
    let date = crate::follows::last_date(job);
    let sheet = Sheet { boat: &job.title, date: &date, width: view.width };
    let propeller = || Drawn::of_job(job).map(|drawn| draw::propeller::picture(&sheet, &drawn));
    match term {
        Term::Parts | Term::Pitch | Term::Areas | Term::Blades | Term::Cup | Term::Rake | Term::Skew | Term::Hand => {
            propeller()
        }
        Term::Diameter | Term::Paddlewheel | Term::Twin | Term::Sailing => {
            draw::place::Place::of_job(job).map(|place| draw::place::picture(&sheet, &place))
        }
        Term::Slip => Some(draw::flow::picture(&sheet, &known.prepared.curves(None).flows)),
        Term::Ventilation => Some(draw::cavitation::picture(&sheet, &known.prepared.curves(None))),
        Term::Curves => Some(draw::demand::picture(&sheet, &known.prepared.curves(None), None)),
        Term::Measuring => Some(draw::speeds::picture(&sheet, &known.prepared.curves(None))),
    }
}
