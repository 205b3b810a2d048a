//! Which picture of the boat shows a term.

use crate::follows::{Known, View};
use counsel::Options;
use counsel::explain::Term;
use draw::teach::{advance, advance::Advance, air, areas, cup, cup::Lip, hand, parts, pulses, rake, skew};
use draw::{Drawn, Picture, Sheet};

/// The picture, where the job says enough for one.
#[must_use]
pub fn of(view: &View, known: &Known, term: Term) -> Option<Picture> {
    let job = known.prepared.job();
    let date = crate::follows::last_date(job);
    let sheet = Sheet { boat: &job.title, date: &date, width: view.width, language: view.language };
    let drawn = || Drawn::of_job(job);
    match term {
        Term::Pitch => drawn().map(|drawn| draw::propeller::picture(&sheet, &drawn)),
        Term::Parts => parts::picture(&sheet, &drawn()?),
        Term::Areas => areas::picture(&sheet, &drawn()?),
        Term::Cup => cup::picture(&sheet, &lip(&drawn()?)?),
        Term::Rake => rake::picture(&sheet, &drawn()?, leaning(job)),
        Term::Skew => skew::picture(&sheet, &drawn()?),
        Term::Hand => hand::picture(&sheet, &drawn()?),
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
        Term::Ventilation => {
            let place = draw::place::Place::of_job(job)?;
            air::picture(&sheet, &place.drawn, place.immersion.0)
        }
        Term::Curves => Some(draw::demand::picture(&sheet, &known.prepared.curves(None), None)),
        Term::Measuring => Some(draw::speeds::picture(&sheet, &known.prepared.curves(None))),
    }
}

/// The rake stated, else the ten degrees an explanation is easily seen by.
fn leaning(job: &job::Job) -> f64 {
    let stated = job.propeller.rake.as_ref().map(|q| q.middle).filter(|degrees| degrees.abs() > 0.5);
    stated.unwrap_or(10.0)
}

/// A lip on the blade's own section at 0.7 R: as measured, else one fiftieth of the chord deep, large enough to be seen.
fn lip(drawn: &Drawn) -> Option<Lip> {
    let blade = drawn.propeller.blades.first()?;
    let shape = hydro::blade::Shape::of(blade);
    let cut = shape.cut(0.7 * shape.tip_radius());
    let (drop, length) = blade.cup.map_or((0.02 * cut.chord, 0.15 * cut.chord), |cup| (cup.drop, cup.length));
    Some(Lip { radius: cut.radius, pitch: cut.pitch, chord: cut.chord, thickness: cut.thickness, drop, length })
}
